"""What a finished layout is made of: sheets of cells, and the home of every line and input."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import NamedTuple

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Constant, Line, RawInput
from farmbook.layout.grid import COMMON, Grid

__all__ = [
    "Area",
    "Book",
    "Cell",
    "Chart",
    "Content",
    "Home",
    "Index",
    "Lowest",
    "Mark",
    "Sheet",
    "Spot",
    "Summed",
    "SwingChart",
    "a1",
    "column_letters",
]

Index = tuple[int, ...]
Spot = tuple[str, int, int]
"""Sheet, row and column of a cell, counted from 0."""
Area = tuple[str, int, int, int, int]
"""Sheet, first row and column, last row and column of a block of cells, counted from 0."""


@dataclass(frozen=True)
class Home:
    """Where a line or input stands: its first cell, and for each of its axes which way the members run.

    Of two axes that both run down (flush and week) one is `turned`: here its members run the other way.
    """

    sheet: str
    row: int
    column: int
    axes: tuple[Axis, ...] = ()
    counts: tuple[int, ...] = ()
    label_column: int = 0
    turned: tuple[Axis, ...] = ()

    def way(self, axis: Axis) -> str:
        """Which way an axis runs here: "down" or "across"."""
        if axis not in self.turned:
            return axis.direction
        return "across" if axis.direction == "down" else "down"

    def place(self, index: Mapping[Axis, int]) -> tuple[int, int]:
        """Row and column of one member; -1 on an ordered axis is the opening cell."""
        row, column = self.row, self.column
        for axis in self.axes:
            if self.way(axis) == "down":
                row += index[axis]
            else:
                column += index[axis]
        return row, column


@dataclass(frozen=True)
class Text:
    """Words written by the book itself."""

    words: str


@dataclass(frozen=True)
class Note(Text):
    """What a person wrote beside a cell that is typed into, and may write there."""

    source: RawInput
    index: Index


@dataclass(frozen=True)
class Figure:
    """A number written by the book itself (a limit, a coefficient, an exact factor)."""

    value: float


@dataclass(frozen=True)
class Worked:
    """A cell of a line at its home; `opening` for the cell before the first step."""

    line: Line
    index: Index
    opening: bool = False


@dataclass(frozen=True)
class Shown:
    """A cell that repeats a line from its home; `opening` for the cell before the first step."""

    line: Line
    index: Index
    opening: bool = False


@dataclass(frozen=True)
class Summed:
    """The sum of cells that stand side by side on this sheet, from `first` to `last`, and show these members of a line."""

    line: Line
    shown: tuple[Index, ...]
    first: tuple[int, int]
    last: tuple[int, int]

    @property
    def text(self) -> str:
        """The formula."""
        return f"SUM({a1(*self.first)}:{a1(*self.last)})"


@dataclass(frozen=True)
class Typed:
    """A cell that a person types into."""

    source: RawInput
    index: Index


@dataclass(frozen=True)
class Formula:
    """A formula made by the layout itself (a factor out of base factors), with its result."""

    text: str
    value: float


@dataclass(frozen=True)
class Link:
    """Words that lead to another sheet."""

    words: str
    sheet: str


Content = Text | Figure | Worked | Shown | Summed | Typed | Formula | Link


class Cell(NamedTuple):
    """One cell; `across` cells are merged into one where it is more than 1. `wrap` is for words in place of a number."""

    row: int
    column: int
    content: Content
    look: str
    format: str = ""
    across: int = 1
    wrap: bool = False


@dataclass(frozen=True)
class Series:
    """One series of a chart: its name, the line, and of a line with two lists the member of the first.

    Where a person names the members, the name is what `called` says for the member.
    """

    name: str
    line: Line
    member: int = 0
    called: Line | None = None


@dataclass(frozen=True)
class Mark:
    """One point among curves: its name, how far along it stands and how high, each a single line."""

    name: str
    along: Line
    height: Line


@dataclass(frozen=True)
class Chart:
    """A picture of lines over one axis, or, without one, of single lines whose figures stand in rows from `figures` down.

    A `signed` one has bars that may reach below zero; `lowest` is drawn dark over the columns, 0 but for one of them. Lines have
    their names at their end, or their `start`.

    `kind`: "bars" lie, "columns" stand, "lines" run over the axis, "curves" over the figures of the line `across`.
    """

    row: int
    column: int
    width: int
    height: int
    kind: str
    words: str
    series: tuple[Series, ...]
    axis: Axis | None = None
    figures: int = 0
    across: Line | None = None
    axis_title: str = ""
    marks: tuple[Mark, ...] = ()
    signed: bool = False
    lowest: Line | None = None
    start: bool = False


@dataclass(frozen=True)
class SwingChart:
    """Bars left and right of one zero, `count` of them, whose two columns of figures stand in rows from `figures` down.

    `least` and `most` are the ends of what is drawn.
    """

    row: int
    column: int
    width: int
    height: int
    words: str
    count: int
    least: float
    most: float
    figures: int = 0


@dataclass(frozen=True)
class Lowest:
    """A row of cells that shows a line, of which the one as low as the line ever is stands out."""

    row: int
    first: int
    last: int
    line: Line


@dataclass
class Sheet:
    """One sheet of the book, in pixels.

    `starts` are the lower of the two empty rows above its blocks; only the first `printed_rows` print. So many rows and columns
    stay on the screen as are `frozen`.
    """

    name: str
    title: str
    question: str
    kind: str
    widths: list[int]
    cells: list[Cell] = field(default_factory=list)
    heights: dict[int, float] = field(default_factory=dict)
    charts: list[Chart] = field(default_factory=list)
    swing_charts: list[SwingChart] = field(default_factory=list)
    starts: list[int] = field(default_factory=list)
    printed_rows: int = 0
    prints: bool = True
    grid: Grid = COMMON
    frozen: tuple[int, int] = (2, 0)
    lowest: list[Lowest] = field(default_factory=list)


@dataclass
class Book:
    """All sheets in reading order, and where everything stands.

    `typed` has every cell that a person may type into: ("value", "basis" or "note", the input's dotted name, the place of the
    members in its lists) and where that stands. `areas` are the names of those that are lists. The members of lists that are
    `dated` are called by dates.
    """

    sheets: list[Sheet]
    homes: dict[Line | RawInput, Home]
    names: dict[str, Spot]
    constants: dict[str, Constant]
    labels: dict[Axis, Spot]
    typed: Mapping[tuple[str, str, Index], Spot]
    areas: Mapping[str, Area]
    dated: Collection[Axis] = frozenset()


@cache
def column_letters(column: int) -> str:
    """The letters of a column counted from 0."""
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def a1(row: int, column: int, *, row_fixed: bool = False, column_fixed: bool = False) -> str:
    """A cell address, rows and columns counted from 0."""
    return f"{'$' if column_fixed else ''}{column_letters(column)}{'$' if row_fixed else ''}{row + 1}"
