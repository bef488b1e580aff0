"""A section: one subject of the farm, with its inputs and its lines."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import ClassVar, Protocol, TypeVar

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.functions import all_of, any_of, is_word, negation, total
from farmbook.expr.nodes import (
    Choose,
    Constant,
    Expr,
    Filled,
    IsNumber,
    Label,
    Line,
    Multiply,
    Raw,
    RawInput,
    SameText,
    Used,
    wrap,
)
from farmbook.expr.sentences import STRIP_PLACES, STRIP_SPAN, Strip
from farmbook.sections.declare import Check, Choice, Declared, Input, LineOf, NumberInput, Option, TextInput, Uses
from farmbook.units import Unit, unit

__all__ = [
    "ABOVE",
    "BELOW",
    "IMPOSSIBLE",
    "NOT_AN_OPTION",
    "NOT_A_NUMBER",
    "NOT_GIVEN",
    "SPARE",
    "AxisLines",
    "Bound",
    "Section",
    "Whole",
]

S = TypeVar("S")

NOT_A_NUMBER = "▲ no number"
IMPOSSIBLE = "▲ cannot be"
SPARE = "(spare)"
NOT_AN_OPTION = "▲ not in the list"
BELOW, ABOVE = "▼ below usual", "▲ above usual"
NOT_GIVEN = "not given"
FINE = "·"
"""Hardly anything is said of what is as it should be."""
NO_UNIT = Unit(())


@dataclass(frozen=True, eq=False)
class Bound:
    """An input of a model: its cells, and the lines that every input has.

    `low` and `high` are the usual limits, `least` and `most` the hard ones; `built` repeats what stood in the cell when the book
    was made.
    """

    declared: Input
    cell: RawInput
    basis: RawInput | None = None
    low: RawInput | None = None
    high: RawInput | None = None
    least: RawInput | None = None
    most: RawInput | None = None
    built: RawInput | None = None
    used: Line | None = None
    flag: Line | None = None


@dataclass(frozen=True)
class AxisLines:
    """What a named axis has: the cells of its names, and the lines that say which rows are in use and repeat the names."""

    names: RawInput
    present: Line
    label: Line


class Whole(Protocol):
    """What a section asks of the model that it is part of."""

    axes: dict[Axis, AxisLines]

    def count(self, axis: Axis) -> Constant:
        """How many members a sized axis has."""

    def section(self, kind: type[S]) -> S:
        """An earlier section."""

    def presents(self, axes: Iterable[Axis]) -> tuple[Line, ...]:
        """The "in use" lines of the named axes among these."""

    def line(self, declared: LineOf) -> Line:
        """The line of a declaration in any earlier section."""

    def used(self, declared: NumberInput) -> Line:
        """The number of an input of any earlier section that the sums use."""

    def in_order(self, lines: Iterable[Line]) -> list[Line]:
        """Some lines in reading order."""


class Section:
    """Subclasses declare inputs and lines in their bodies.

    `title` heads the section; `table` is the scenario file's table for its single inputs where that is not the section's own name;
    `most_give` names those of them that nearly every farm gives.
    """

    title: ClassVar[str] = ""
    table: ClassVar[str] = ""
    most_give: ClassVar[tuple[str, ...]] = ()
    declared: ClassVar[tuple[Declared, ...]] = ()

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        found = [
            value for base in reversed(cls.__mro__) for value in vars(base).values() if isinstance(value, Declared)
        ]
        own = {*vars(Section), "model", "says", "bound"}
        for declaration in found:
            if declaration.name in own:
                raise ModelFault(
                    f"`{declaration.name}` is a section's own word; call it something else", where=cls.__qualname__
                )
        cls.declared = tuple(found)

    @classmethod
    def key(cls) -> str:
        """The section's name in dotted names: the class name in lower case with underscores."""
        return re.sub(r"(?<!^)(?=[A-Z])", "_", cls.__name__).lower()

    @classmethod
    def scenario_table(cls) -> str:
        """The table of a scenario file that holds the section's single inputs."""
        return cls.table or cls.key()

    def __init__(self, model: Whole) -> None:
        self.model = model
        self._lines: dict[Declared, Line] = {}
        self.says: dict[Line, Line] = {}
        self.bound: dict[Input, Bound] = {}
        for declaration in self.declared:
            if isinstance(declaration, Input):
                self.bound[declaration] = self._bind(declaration)
            elif isinstance(declaration, LineOf):
                self._lines[declaration] = self._make(declaration)
                if isinstance(declaration, Check):
                    self.says[self._lines[declaration]] = self._says(declaration)
            elif isinstance(declaration, Uses):
                setattr(self, declaration.name, model.section(declaration.section))

    def used(self, declaration: NumberInput) -> Line:
        """The number that the sums use: what is typed, or zero where no number is typed or the row is spare."""
        used = self.bound[declaration].used
        assert used is not None
        return used

    def raw(self, declaration: Input) -> RawInput:
        """The cell itself, for texts and choices."""
        return self.bound[declaration].cell

    def line(self, declaration: LineOf) -> Line:
        """This model's line of a declaration."""
        return self._lines[declaration]

    @property
    def lines(self) -> list[Line]:
        """The section's worked lines in the order of their declaration."""
        return list(self._lines.values())

    def chose(self, cell: RawInput, option: Option) -> Expr:
        """1 where this option is chosen; raises ModelFault for one that is not among the choice's options."""
        declaration = next((declared for declared, bound in self.bound.items() if bound.cell is cell), None)
        if not isinstance(declaration, Choice) or option not in declaration.options:
            raise ModelFault(f"{option.label!r} is not an option of `{cell.name}`")
        return is_word(cell, option.label)

    def given(self, used: Line) -> Expr:
        """1 where a number is typed for an optional input."""
        for declared, bound in self.bound.items():
            if isinstance(declared, NumberInput) and self.used(declared) is used:
                return IsNumber(bound.cell)
        raise ModelFault(f"`{used.name}` is not an input of section `{self.key()}`")

    def _make(self, declaration: LineOf) -> Line:
        name = f"{self.key()}.{declaration.name}"
        return Line(
            name,
            declaration.label,
            declaration.measure,
            declaration.axes,
            lambda: wrap(declaration.method(self)),
            declaration.note,
            declaration.source.key if declaration.source else "",
            declaration.where,
            declaration.kind if isinstance(declaration, Check) else "worked",
            zero_is_none=declaration.zero_is_none,
        )

    def _says(self, declaration: Check) -> Line:
        """The line that puts a check's result in words."""
        result = self._lines[declaration]
        return Line(
            f"{result.name}_says",
            f"{result.label} (in words)",
            NO_UNIT,
            (),
            lambda: Choose(1 + result, (declaration.says, "ok")),
            where=result.where,
            kind="says",
        )

    def _bind(self, declared: Input) -> Bound:
        name = declared.dotted
        if any(axis.sized for axis in declared.axes):
            raise ModelFault(f"`{name}` is typed for each member of a list whose length the scenario sets")
        if isinstance(declared, NumberInput):
            return self._bind_number(declared, name)
        kind = (
            "choice" if isinstance(declared, Choice) or (isinstance(declared, TextInput) and declared.picks) else "text"
        )
        cell = RawInput(name, declared.label, kind, NO_UNIT, declared.axes)
        if isinstance(declared, TextInput) and declared.names:
            axis = declared.axes[0]
            self.model.axes[axis] = AxisLines(cell, present_line(axis, cell), label_line(axis, cell))
        built = RawInput(f"{name}_built", f"{declared.label} as built", "built text", NO_UNIT, declared.axes)
        if kind == "text":
            return Bound(declared, cell, built=built)
        basis = RawInput(f"{name}_basis", f"{declared.label} basis", "basis", NO_UNIT, declared.axes)
        flag = Line(
            f"{name}_flag",
            f"{declared.label} (flag)",
            NO_UNIT,
            (),
            lambda: self._word_flag(declared, cell),
            kind="flag",
        )
        return Bound(declared, cell, basis, flag=flag, built=built)

    def _word_flag(self, declared: Input, cell: RawInput) -> Choose:
        """Whether the word typed is one of the options, or the name of exactly one member in use."""
        if isinstance(declared, Choice):
            return Choose(
                1 + negation(any_of(*(is_word(cell, label) for label in declared.labels))), (FINE, NOT_AN_OPTION)
            )
        assert isinstance(declared, TextInput) and declared.picks is not None
        axis = self.model.axes[declared.picks]
        found = total(SameText(axis.names, cell) * axis.present, declared.picks)
        return Choose(1 + negation(all_of(found >= 1, found <= 1)), (FINE, NOT_AN_OPTION))

    def _bind_number(self, declared: NumberInput, name: str) -> Bound:
        own = declared.measure

        def cell(ending: str, kind: str, axes: tuple[Axis, ...]) -> RawInput:
            ending_words = ending.replace("_", " ")
            return RawInput(name + ending, declared.label + ending_words, kind, own, axes)

        number = cell("", "number", declared.axes)
        low, high = cell("_usual_low", "low", ()), cell("_usual_high", "high", ())
        least, most = cell("_hard_low", "least", ()), cell("_hard_high", "most", ())

        def line(kind: str, of: Unit, build: Callable[[], Expr], note: str) -> Line:
            return Line(
                f"{name}_{kind}",
                f"{declared.label} ({kind})",
                of,
                declared.axes,
                build,
                note,
                where=declared.dotted,
                kind=kind,
            )

        used = line("used", own, lambda: Used(number, self.model.presents(declared.axes)), _used_note(declared))
        flag = line("flag", NO_UNIT, lambda: self._flag_expr(declared, number, (least, low, high, most)), "")
        basis, built = cell("_basis", "basis", declared.axes), cell("_built", "built", declared.axes)
        return Bound(declared, number, basis, low, high, least, most, built, used, flag)

    def _flag_expr(self, declared: NumberInput, cell: RawInput, limits: tuple[RawInput, ...]) -> Choose:
        """No number, past a hard limit, outside the usual range, or where in it; a spare row of a list is not judged."""
        raw = Raw(cell)
        least, low, high, most = (Raw(each) for each in limits)
        possible = Multiply(raw >= least, raw <= most)
        state: Expr = 1 + IsNumber(cell) * (1 + possible * (1 + (raw >= low) + (raw > high)))
        missing = NOT_GIVEN if declared.optional else NOT_A_NUMBER
        if not declared.axes:
            return Choose(
                state, (missing, IMPOSSIBLE, BELOW, Strip(raw, low, high, wrap(STRIP_PLACES), wrap(STRIP_SPAN)), ABOVE)
            )
        said = (missing, IMPOSSIBLE, BELOW, FINE, ABOVE)
        presents = self.model.presents(declared.axes)
        if not presents:
            return Choose(state, said)
        product: Expr = presents[0]
        for present in presents[1:]:
            product = Multiply(product, present)
        return Choose(1 + product * state, (SPARE, *said))


def _used_note(declared: NumberInput) -> str:
    if declared.axes:
        return "What is typed on the inputs sheet; zero for a spare row or where no number stands."
    return "What is typed on the inputs sheet; zero where no number stands."


def present_line(axis: Axis, cell: RawInput) -> Line:
    """The line that says which rows of a named axis are in use."""
    return Line(
        f"{axis.name}.present",
        f"{axis.label.capitalize()} in use",
        unit("flag"),
        (axis,),
        lambda: Filled(cell),
        "1 as soon as a name is typed in the row; spare rows count as zero.",
        kind="used",
    )


def label_line(axis: Axis, cell: RawInput) -> Line:
    """The line that repeats a named axis's names on the worked sheets."""
    return Line(
        f"{axis.name}.label",
        f"{axis.label.capitalize()}, by name",
        NO_UNIT,
        (axis,),
        lambda: Label(cell, "(spare)"),
        "",
        kind="label",
    )
