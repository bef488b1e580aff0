"""The expression language: some thirty frozen classes. A node holds its arguments; no number and no text is made in it.

Lines are leaves of each other's expressions. Arithmetic operators build nodes; a bare number other than 0, 1 and -1
(2 and 10 in powers) is refused (rule 4): give it a name, a unit and a source as a `Constant`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import ClassVar, Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.constant import Constant
from farmbook.units import Unit

__all__ = [
    "Add", "At", "Before", "Call", "Choose", "Compare", "Constant", "CountChanged", "CountUsed", "CountWord",
    "Divide", "Expr", "Extreme", "Factor", "Filled", "FirstLabel", "InternalRate", "IsNumber", "Joined", "Label", "Line",
    "Logic", "Multiply", "Named", "Nth", "Number", "Power", "Previous", "Ratio", "Raw", "RawInput", "Running",
    "SameText", "Shown", "Starting", "Subtract", "Total", "Used", "Where", "Word", "wrap",
]  # fmt: skip

Operand = object


class Expr:
    """Anything that has a value in the model."""

    __array_ufunc__ = None  # an array beside a node is refused, not turned into an array of nodes

    def __add__(self, other: Operand) -> Expr:
        return Add(self, wrap(other))

    def __radd__(self, other: Operand) -> Expr:
        return Add(wrap(other), self)

    def __sub__(self, other: Operand) -> Expr:
        return Subtract(self, wrap(other))

    def __rsub__(self, other: Operand) -> Expr:
        return Subtract(wrap(other), self)

    def __mul__(self, other: Operand) -> Expr:
        return Multiply(self, wrap(other))

    def __rmul__(self, other: Operand) -> Expr:
        return Multiply(wrap(other), self)

    def __truediv__(self, other: Operand) -> Expr:
        return Divide(self, wrap(other))

    def __rtruediv__(self, other: Operand) -> Expr:
        return Divide(wrap(other), self)

    def __pow__(self, other: Operand) -> Expr:
        return Power(self, wrap(other, powers=True))

    def __rpow__(self, other: Operand) -> Expr:
        return Power(wrap(other, powers=True), self)

    def __neg__(self) -> Expr:
        return Multiply(Number(-1), self)

    def __lt__(self, other: Operand) -> Expr:
        return Compare("<", self, wrap(other))

    def __le__(self, other: Operand) -> Expr:
        return Compare("<=", self, wrap(other))

    def __gt__(self, other: Operand) -> Expr:
        return Compare(">", self, wrap(other))

    def __ge__(self, other: Operand) -> Expr:
        return Compare(">=", self, wrap(other))

    def __bool__(self) -> bool:
        raise ModelFault("a line was used as a Python condition", why="write where(condition, yes, no)")


@dataclass(frozen=True, eq=False)
class Number(Expr):
    """A bare 0, 1 or -1, or 2 or 10 in a power."""

    value: int


@dataclass(frozen=True, eq=False)
class Named(Expr):
    """A constant standing in an expression."""

    constant: Constant


@dataclass(frozen=True, eq=True)
class Factor(Expr):
    """A conversion factor, made by lowering: 1 of the `source` unit is this many of the `target` unit."""

    powers: tuple[tuple[str, int], ...]


@dataclass(frozen=True, eq=False)
class Add(Expr):
    """Left plus right."""

    left: Expr
    right: Expr


@dataclass(frozen=True, eq=False)
class Subtract(Expr):
    """Left less right."""

    left: Expr
    right: Expr


@dataclass(frozen=True, eq=False)
class Multiply(Expr):
    """Left times right."""

    left: Expr
    right: Expr


@dataclass(frozen=True, eq=False)
class Divide(Expr):
    """Division by something that can never be zero (a constant); otherwise use Ratio (rule 7)."""

    left: Expr
    right: Expr


@dataclass(frozen=True, eq=False)
class Ratio(Expr):
    """`top / bottom`, or `otherwise` where the bottom is zero."""

    top: Expr
    bottom: Expr
    otherwise: Expr


@dataclass(frozen=True, eq=False)
class Power(Expr):
    """The base raised to the exponent."""

    base: Expr
    exponent: Expr


@dataclass(frozen=True, eq=False)
class Compare(Expr):
    """1 where the comparison holds, else 0."""

    sign: str
    left: Expr
    right: Expr


@dataclass(frozen=True, eq=False)
class Logic(Expr):
    """`all`, `any` or `not` of conditions that are 0 or 1."""

    kind: str
    terms: tuple[Expr, ...]


@dataclass(frozen=True, eq=False)
class Where(Expr):
    """`yes` where the condition is not zero, else `no`."""

    condition: Expr
    yes: Expr
    no: Expr


@dataclass(frozen=True, eq=False)
class Call(Expr):
    """A function of the closed list in `functions`."""

    function: str
    arguments: tuple[Expr, ...]


@dataclass(frozen=True, eq=False)
class Total(Expr):
    """Sum over an axis."""

    expr: Expr
    axis: Axis


@dataclass(frozen=True, eq=False)
class Previous(Expr):
    """A line's value one step earlier on an ordered axis; its opening value at the first step."""

    line: Line
    axis: Axis


@dataclass(frozen=True, eq=False)
class Starting(Expr):
    """Stands only at the root of a line: the opening value, and the rule for every step."""

    opening: Expr
    step: Expr


@dataclass(frozen=True, eq=False)
class Running(Expr):
    """Stands only at the root of a line: running sum ("+") or product ("*") along an ordered axis."""

    sign: str
    expr: Expr
    axis: Axis


@dataclass(frozen=True, eq=False)
class At(Expr):
    """A line's value at a whole position (1 is the first) along an ordered axis."""

    line: Line
    axis: Axis
    position: Expr

    @property
    def is_text(self) -> bool:
        """Whether it gives a text: that of a line of texts, such as the names of a list."""
        return self.line.is_text


@dataclass(frozen=True, eq=False)
class Before(Expr):
    """What the rows of a list whose key is lower have of an amount together."""

    amount: Line
    key: Line
    axis: Axis


@dataclass(frozen=True, eq=False)
class Nth(Expr):
    """The value (or with `labels` the label) of the line that ranks as number `place` by its key, the largest first.

    `keys` and `shown` are single lines that each stand one under another in the same order, or one line each over a list
    that runs down. Of `many` that count there may be fewer than `place`: then `otherwise`, or 0 for a number.
    """

    keys: tuple[Line, ...]
    place: Expr
    many: Expr
    shown: tuple[Line, ...]
    labels: bool = False
    otherwise: str = ""

    @property
    def is_text(self) -> bool:
        """Whether it gives a text."""
        return self.labels or self.shown[0].is_text


@dataclass(frozen=True, eq=False)
class Extreme(Expr):
    """The least, or the `most`, that a line over one axis alone comes to along it."""

    line: Line
    axis: Axis
    most: bool


@dataclass(frozen=True, eq=False)
class InternalRate(Expr):
    """The rate for each step at which a line's flows along an axis are worth nothing together; 0 if none is found."""

    line: Line
    axis: Axis


@dataclass(frozen=True, eq=False)
class Joined(Expr):
    """The same amount as another kind of quantity (dry mix out of wet mix): changes the kind and nothing else."""

    expr: Expr
    unit: Unit


@dataclass(frozen=True, eq=False)
class RawInput(Expr):
    """A cell that a person types into ("number", "text", "choice", "basis"), or one that the book fills in beside it.

    Those are the usual limits ("low", "high"), the hard ones ("least", "most") and what stood in the cell when the book was made
    ("built", of words "built text").
    """

    name: str
    label: str
    kind: str
    unit: Unit
    axes: tuple[Axis, ...]


@dataclass(frozen=True, eq=False)
class Raw(Expr):
    """The number as typed; only for limits and flags, which guard it by IsNumber."""

    source: RawInput


@dataclass(frozen=True, eq=False)
class Used(Expr):
    """Stands only at the root of a line: the number typed, or 0 where none stands or the row of a list is not in use."""

    source: RawInput
    presents: tuple[Line, ...] = ()


@dataclass(frozen=True, eq=False)
class IsNumber(Expr):
    """1 where a number stands in the cell."""

    source: RawInput


@dataclass(frozen=True, eq=False)
class Filled(Expr):
    """1 where something is typed in the cell."""

    source: RawInput


@dataclass(frozen=True, eq=False)
class Word(Expr):
    """A word of a list of options."""

    text: str


@dataclass(frozen=True, eq=False)
class SameText(Expr):
    """1 where two texts agree, upper or lower case alike."""

    left: RawInput | Word
    right: RawInput | Word


@dataclass(frozen=True, eq=False)
class CountWord(Expr):
    """How many of these cells, which stand in one block of a sheet, hold this word or number."""

    sources: tuple[RawInput | Line, ...]
    word: str | int


@dataclass(frozen=True, eq=False)
class CountChanged(Expr):
    """How many of these cells differ from what stood in them when the book was made; with `bases`, only those that say `word`.

    Each group stands in one block, and the groups lie alike. A blank cell differs from a zero.
    """

    now: tuple[RawInput, ...]
    built: tuple[RawInput, ...]
    bases: tuple[RawInput, ...] = ()
    word: str = ""


@dataclass(frozen=True, eq=False)
class CountUsed(Expr):
    """How many cells of these tables, which stand in one block and share their axes, hold this word where in use."""

    sources: tuple[RawInput, ...]
    word: str
    presents: tuple[Line, ...]


@dataclass(frozen=True, eq=False)
class FirstLabel(Expr):
    """The label of the first of these lines or cells, down their column, that holds this word or number; else other words."""

    is_text: ClassVar[bool] = True
    lines: tuple[Line | RawInput, ...]
    labels: tuple[str, ...]
    word: str | int
    otherwise: str


@dataclass(frozen=True, eq=False)
class Label(Expr):
    """The text typed in a cell, or other words where it is empty."""

    is_text: ClassVar[bool] = True
    source: RawInput
    otherwise: str


@dataclass(frozen=True, eq=False)
class Choose(Expr):
    """One of several sentences, by a state that is 1 for the first."""

    is_text: ClassVar[bool] = True
    state: Expr
    sentences: tuple[str | Expr, ...]


@dataclass(frozen=True, eq=False)
class Shown(Expr):
    """Stands only at the root of a line that is shown and from which nothing is worked out: a figure where `when` is not
    zero, else words that say why there is none."""

    value: Expr
    when: Expr
    words: str


@dataclass(eq=False)
class Line(Expr):
    """One line of the workbook: declared once, read as a number, a formula, a unit check and a sentence.

    `build` gives the expression when it is first asked for, so that lines may refer to each other in any order.
    `zero_is_none` says that a result of 0 stands for no figure at all, and is to be shown in words. A line of a case is called
    `short` where what stands around it says which case it is.
    """

    name: str
    label: str
    unit: Unit
    axes: tuple[Axis, ...]
    build: Callable[[], Expr]
    note: str = ""
    source: str = ""
    where: str = ""
    kind: str = "worked"
    case: str = ""
    zero_is_none: bool = False
    short: str = ""

    @property
    def hands_on(self) -> RawInput | None:
        """The cell whose number the line hands on to the sums, if that is all it does."""
        return self.expr.source if isinstance(self.expr, Used) else None

    @property
    def head(self) -> str:
        """Its label where a value stands or is spoken of; a number typed in goes by the label of its cell."""
        return self.label if self.hands_on is None else self.hands_on.label

    @property
    def called(self) -> str:
        """Its label among lines of the same case."""
        return self.short or self.head

    @cached_property
    def expr(self) -> Expr:
        """What the line is worked out from."""
        return self.build()

    @cached_property
    def is_text(self) -> bool:
        """Whether its value is always a text."""
        return bool(getattr(self.expr, "is_text", False))

    def __repr__(self) -> str:
        return f"<{self.name}>"


_LITERALS: Final = (0, 1, -1)
_POWER_LITERALS: Final = (0, 1, -1, 2, 10)


def wrap(value: Operand, *, powers: bool = False) -> Expr:
    """Turn an operand into a node; a bare number that rule 4 forbids raises ModelFault."""
    if isinstance(value, Expr):
        return value
    if isinstance(value, Constant):
        return Named(value)
    if isinstance(value, bool):
        why = "nodes are compared by <, <=, > and >= alone; == is Python's own"
        raise ModelFault(f"{value} in an expression", why=why)
    if isinstance(value, (int, float)) and value in (_POWER_LITERALS if powers else _LITERALS):
        return Number(int(value))
    raise ModelFault(
        f"a bare {value!r} in an expression", why="rule 4: give it a name, a unit and a source as a Constant"
    )


def children(expr: Expr) -> Sequence[Expr]:
    """The nodes directly below one node (a line is a leaf; what it is worked out from is `line.expr`)."""
    if isinstance(expr, Line):
        return ()
    found: list[Expr] = []
    for value in vars(expr).values():
        if isinstance(value, Expr):
            found.append(value)
        elif isinstance(value, tuple):
            found.extend(item for item in value if isinstance(item, Expr))
    return found
