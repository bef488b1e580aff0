"""What a section may declare: numbers, choices, texts and names to be typed in, lines and checks to be worked out.

A declaration is made once, in the class body. On the class it is the declaration itself (typed, and the key by which a case
is shocked); on a section of a model it is the node to be used in expressions.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property, wraps
from typing import Any, Final, Protocol, Self, TypeVar, overload

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Expr, Line, RawInput, wrap
from farmbook.expr.texts import fold
from farmbook.sources import Source
from farmbook.units import Unit, unit

__all__ = [
    "BASES",
    "Check",
    "Choice",
    "Holder",
    "Input",
    "LineOf",
    "NumberInput",
    "Option",
    "Shock",
    "TextInput",
    "Uses",
    "check",
    "choice",
    "line",
    "member",
    "names",
    "number",
    "shock",
    "text",
    "uses",
]

NAME_KEY: Final = "name"
"""The key of a row's own name in a scenario file."""
BASES = ("measured", "quoted", "published", "common practice", "guess", "assumed")
"""How the person at the keyboard knows a number, best first; "assumed" is what the book filled in by itself."""

S = TypeVar("S")


class Holder(Protocol):
    """What a declaration asks of the section that it is declared in."""

    @classmethod
    def key(cls) -> str:
        """The section's name in dotted names."""

    @classmethod
    def scenario_table(cls) -> str:
        """The table of a scenario file that holds the section's single inputs."""

    def used(self, declaration: NumberInput) -> Line:
        """The number that the sums use."""

    def raw(self, declaration: Input) -> RawInput:
        """The cell itself."""

    def line(self, declaration: LineOf) -> Line:
        """The line of a declaration."""


class Declared:
    """Anything declared in a section's class body."""

    name: str = ""
    owner: type[Holder]

    def __set_name__(self, owner: type[Holder], name: str) -> None:
        self.name, self.owner = name, owner

    @property
    def dotted(self) -> str:
        """The name by which files, templates and commands know it."""
        return f"{self.owner.key()}.{self.name}"


class Measured(Declared):
    """What has a number with a unit: an input, or a worked line."""

    unit: str

    @property
    def where(self) -> str:
        """File and line of the declaration, or the section where these are not known."""
        return f"{self.owner.__module__}.{self.owner.__qualname__}"

    @cached_property
    def measure(self) -> Unit:
        """The unit, read once; raises ModelFault naming the declaration for a symbol that is not in the table."""
        try:
            return unit(self.unit)
        except ModelFault as fault:
            raise ModelFault(f"{fault.what} (line `{self.dotted}`)", where=self.where) from None


@dataclass(eq=False)
class Input(Declared):
    """A cell, or a row or table of cells, that a person fills in."""

    label: str
    how: str
    axes: tuple[Axis, ...] = ()
    source: Source | None = None
    note: str = ""

    @property
    def row_axis(self) -> Axis | None:
        """The named axis in whose rows of a scenario file it stands: of two, the one that runs across."""
        named = [axis for axis in self.axes if axis.named]
        across = [axis for axis in named if axis.direction == "across"]
        return next(iter([*across, *named]), None)

    @property
    def table(self) -> str:
        """The table of a scenario file in which it stands."""
        return self.row_axis.name if self.row_axis else self.owner.scenario_table()

    @property
    def key(self) -> str:
        """What it is called there."""
        return self.name

    @property
    def dotted(self) -> str:
        """One name everywhere: the place in the scenario file, without the key of a row."""
        return f"{self.table}.{self.key}"

    @property
    def older(self) -> str:
        """The name by its section, as earlier versions had it."""
        return f"{self.owner.key()}.{self.name}"


@dataclass(eq=False)
class NumberInput(Input, Measured):
    """A number with a unit, a usual range, hard limits and a default; `optional` ones may stay blank.

    Of several defaults, one for each member of an axis, None leaves that member blank. A `decided` one is set by whoever runs
    the farm, or 0 on purpose: there is nothing to measure.
    """

    unit: str = "1"
    usual: tuple[float, float] = (0, 0)
    hard: tuple[float, float] = (0, float("inf"))
    default: float | tuple[float | None, ...] | None = None
    optional: bool = False
    decided: bool = False
    default_basis: str = "assumed"

    @overload
    def __get__(self, instance: None, owner: type[Holder]) -> Self: ...
    @overload
    def __get__(self, instance: Holder, owner: type[Holder]) -> Line: ...
    def __get__(self, instance: Holder | None, owner: type[Holder]) -> Self | Line:
        return self if instance is None else instance.used(self)


@dataclass(eq=False)
class TextInput(Input):
    """Words: a free text, or the `names` of an axis's members, or one name picked out of an axis."""

    default: str = ""
    names: bool = False
    picks: Axis | None = None

    @property
    def key(self) -> str:
        """A row's own name is called so, whatever the input that holds the names is called."""
        return NAME_KEY if self.names else self.name

    @overload
    def __get__(self, instance: None, owner: type[Holder]) -> Self: ...
    @overload
    def __get__(self, instance: Holder, owner: type[Holder]) -> RawInput: ...
    def __get__(self, instance: Holder | None, owner: type[Holder]) -> Self | RawInput:
        return self if instance is None else instance.raw(self)


@dataclass(frozen=True)
class Option:
    """One answer of a choice: `key` is what code names, `label` the words in the cell; a file may hold either."""

    key: str
    label: str


@dataclass(eq=False)
class Choice(TextInput):
    """One of a few options; the cell holds its label."""

    options: tuple[Option, ...] = ()

    @property
    def labels(self) -> tuple[str, ...]:
        """The words that may stand in the cell."""
        return tuple(option.label for option in self.options)


@dataclass(eq=False)
class LineOf(Measured):
    """A worked line: the method that declares it gives its expression, the method's docstring its note."""

    method: Callable[[Any], Expr]
    label: str
    unit: str
    axes: tuple[Axis, ...] = ()
    source: Source | None = None
    zero_is_none: bool = False

    @property
    def note(self) -> str:
        """What the reader sees beside the line."""
        return " ".join((self.method.__doc__ or "").split())

    @property
    def where(self) -> str:
        """File and line of the declaration."""
        code = inspect.unwrap(self.method).__code__
        return f"{code.co_filename.rpartition('farmbook/')[2]}:{code.co_firstlineno}"

    @overload
    def __get__(self, instance: None, owner: type[Holder]) -> Self: ...
    @overload
    def __get__(self, instance: Holder, owner: type[Holder]) -> Line: ...
    def __get__(self, instance: Holder | None, owner: type[Holder]) -> Self | Line:
        return self if instance is None else instance.line(self)


@dataclass(eq=False)
class Check(LineOf):
    """A line that is 1 when all is well and 0 when not; an "error" means the sums are wrong, an "alert" that the news is bad."""

    kind: str = "error"
    says: str = ""


@dataclass(eq=False)
class Shock(LineOf):
    """What a case may change: a line that is 0 or 1 in the plan itself, and stands in one line of the model."""


class Uses(Declared):
    """Another section of the same model."""

    def __init__(self, section: type[Any]) -> None:
        self.section = section


def number(
    label: str,
    *,
    unit: str,
    usual: tuple[float, float],
    how: str,
    default: float | tuple[float | None, ...] | None = None,
    hard: tuple[float, float] = (0, float("inf")),
    axes: tuple[Axis, ...] = (),
    source: Source | None = None,
    optional: bool = False,
    decided: bool = False,
    tried: bool = False,
    note: str = "",
) -> NumberInput:
    """Declare a number to be typed in. `default` None means that the scenario must give it (unless `optional`).

    A `tried` one says nothing of the farm: it is there to be compared with, and its default says nothing of how it is known.
    """
    return NumberInput(
        label,
        how,
        axes,
        source,
        note,
        unit=unit,
        usual=usual,
        hard=hard,
        default=default,
        optional=optional,
        decided=decided or tried,
        default_basis="" if tried else "assumed",
    )


def text(label: str, *, default: str, how: str, axes: tuple[Axis, ...] = ()) -> TextInput:
    """Declare a free text."""
    return TextInput(label, how, axes, default=default)


def names(axis: Axis, label: str, *, how: str) -> TextInput:
    """Declare the names of an axis's members: a row is present as soon as it has one."""
    return TextInput(label, how, (axis,), names=True)


def member(axis: Axis, label: str, *, how: str) -> TextInput:
    """Declare a choice of one member of a named axis, by its name."""
    return TextInput(label, how, picks=axis)


def choice(label: str, *options: Option, default: Option, how: str, source: Source | None = None) -> Choice:
    """Declare a choice among options; the default is one of them, and no word stands for two."""
    if default not in options:
        raise ModelFault(f"the default {default.label!r} of `{label}` is not among its options")
    words = [word for option in options for word in {fold(option.key), fold(option.label)}]
    if len(set(words)) < len(words):
        raise ModelFault(f"two options of `{label}` share a word")
    return Choice(label, how, (), source, default=default.label, options=options)


def line(
    label: str, *, unit: str, axes: Sequence[Axis] = (), source: Source | None = None, zero_is_none: bool = False
) -> Callable[[Callable[[Any], Expr]], LineOf]:
    """Declare a worked line; `unit` is the metric one, shown in the book's own system.

    With `zero_is_none` a result of 0 means that there is no such figure, and is shown in words: a cost for each weight
    sold where nothing is sold is not a low cost.
    """

    def declare(method: Callable[[Any], Expr]) -> LineOf:
        return LineOf(method, label, unit, tuple(axes), source, zero_is_none)

    return declare


def check(label: str, *, kind: str, says: str) -> Callable[[Callable[[Any], Expr]], Check]:
    """Declare a check; `says` tells the reader, when it fails, what is wrong and where to look."""

    def declare(method: Callable[[Any], Expr]) -> Check:
        return Check(method, label, "flag", kind=kind, says=says)

    return declare


def shock(label: str, *, unit: str, neutral: int) -> Callable[[Callable[[Any], None]], Shock]:
    """Declare a shock; `neutral`, 0 or 1, is what leaves the plan as it is. The method's docstring is the note."""

    def declare(method: Callable[[Any], None]) -> Shock:
        @wraps(method)
        def plan(_section: Any) -> Expr:
            return wrap(neutral)

        return Shock(plan, label, unit)

    return declare


def uses(section: type[S]) -> S:
    """Declare that a section reads another; on a section of a model it is that model's own section."""
    return Uses(section)  # type: ignore[return-value]  # the attribute is replaced by the section itself
