"""A sheet being filled from top to bottom, and what the blocks need to know of the model."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Constant, Expr, Line, RawInput, Running, Starting
from farmbook.expr.walk import walk
from farmbook.layout.book import Cell, Chart, Content, Home, Sheet, Shown, Spot, SwingChart, Text, Worked
from farmbook.layout.forms import NOTHING, change_form, form_of, limit_form, line_form, money_sign, typed_form
from farmbook.layout.grid import HEADING_HEIGHT, HOW, NUMBER, ROW_HEIGHT, SPACE
from farmbook.layout.line_numbers import Place
from farmbook.layout.looks import LOOKS
from farmbook.layout.measure import height_of
from farmbook.layout.swings import NONE_SWUNG, Swings
from farmbook.sections.model import Model
from farmbook.sections.section import Bound
from farmbook.sources import Source
from farmbook.units import Unit, displayed

__all__ = ["TWO_LINES", "Page", "Plan", "cited", "no_figure"]


@dataclass
class Plan:
    """The model as it is to be laid out: names, lowered lines, sizes, what was fixed when the book was made; and the homes
    given so far.

    Lines with a place in `places` are worked out in the numbers of lines, the others in labels. `quiet` ones, which charts draw over
    others, show nothing for 0.
    """

    model: Model
    system: str
    currency: str
    sizes: Mapping[Axis, int]
    roots: Mapping[Line, Expr]
    notes: Mapping[RawInput, Mapping[tuple[int, ...], str]]
    stamp: Mapping[str, str]
    swings: Swings = NONE_SWUNG
    homes: dict[Line | RawInput, Home] = field(default_factory=dict)
    names: dict[str, tuple[str, int, int]] = field(default_factory=dict)
    constants: dict[str, Constant] = field(default_factory=dict)
    sheets: list[tuple[str, str, str]] = field(default_factory=list)
    labels: dict[Axis, tuple[str, int, int]] = field(default_factory=dict)
    dated: set[Axis] = field(default_factory=set)
    lives_on: dict[str, str] = field(default_factory=dict)
    places: Mapping[str, Place] = field(default_factory=dict)
    quiet: Collection[str] = ()

    def __post_init__(self) -> None:
        self.lines = {line.name: line for line in self.roots}
        self.bound = {bound.cell.name: bound for bound in self.model.inputs.values()}

    def line(self, name: str, where: str) -> Line:
        """The line a template names; raises ModelFault naming the template."""
        if name not in self.lines:
            raise ModelFault(f"there is no line called `{name}`", where=where)
        return self.lines[name]

    def input(self, name: str, where: str) -> Bound:
        """The input a template names; raises ModelFault naming the template."""
        if name not in self.bound:
            raise ModelFault(f"there is no input called `{name}`", where=where)
        return self.bound[name]

    def axis(self, name: str, where: str) -> Axis:
        """The axis a template names."""
        for axis in self.sizes:
            if axis.name == name:
                return axis
        raise ModelFault(f"there is no list called `{name}`", where=where)

    def unit_words(self, unit: Unit) -> str:
        """A unit as the head of a table says it, where amounts of money stand without their sign."""
        return displayed(unit, self.system).said(self.sign.strip())

    def unit_after(self, unit: Unit) -> str:
        """A unit as it is said after a figure, whose sign says the money."""
        return displayed(unit, self.system).said()

    @property
    def sign(self) -> str:
        """What stands before amounts of money."""
        return money_sign(self.currency)

    def format(self, unit: Unit) -> str:
        """The number format of a unit in this book, where money has its sign elsewhere."""
        return form_of(displayed(unit, self.system)).code

    def typed_format(self, unit: Unit, *, table: bool = False) -> str:
        """The number format of cells typed into."""
        return typed_form(displayed(unit, self.system), "" if table else self.sign).code

    def limit_format(self, unit: Unit, *, table: bool = False) -> str:
        """The number format of a usual limit."""
        return limit_form(unit, displayed(unit, self.system), "" if table else self.sign).code

    def line_format(self, line: Line, *, table: bool = False) -> str:
        """The number format of a line's cells in this book."""
        code = line_form(line, displayed(line.unit, self.system), self.sign, table=table).code
        return code.replace(f'"{NOTHING}"', '""') if line.name in self.quiet else code

    def change_format(self, line: Line, zero: str = NOTHING) -> str:
        """The number format of more or less of a line, in a table whose head says its unit; `zero` stands in place of 0."""
        return change_form(line_form(line, displayed(line.unit, self.system)), zero).code

    def words_instead(self, line: Line) -> str:
        """The words that may stand in place of a number in a line's cells; nothing for most lines."""
        root = self.roots[line]
        return root.words if isinstance(root, n.Shown) else ""

    def settle(self, of: Line | RawInput, home: Home) -> None:
        """Give a line or input its one home; a second one is a fault."""
        if of in self.homes:
            raise ModelFault(f"`{of.name}` is placed twice: on {self.homes[of].sheet} and on {home.sheet}")
        self.homes[of] = home

    def call(self, axis: Axis, line: Line, spot: Spot, *, home: bool) -> None:
        """Let charts call the members of a list by a line, whose first cell stands here; by the last that is at home."""
        if home or axis not in self.labels:
            self.labels[axis] = spot
            self.dated = self.dated - {axis} | ({axis} if line.unit.date else set())

    @cached_property
    def nodes(self) -> list[Expr]:
        """Every node of every lowered line, in reading order."""
        return [node for root in self.roots.values() for node in walk(root)]

    def opening(self, line: Line) -> bool:
        """Whether a line has an opening value."""
        return isinstance(self.roots[line], (Starting, Running))


def no_figure(line: Line, value: float) -> bool:
    """Whether a result stands for no figure at all, to be said in words."""
    return line.zero_is_none and value == 0


def cited(source: Source | None) -> str:
    """A source as it stands beside a line: author and year, or its title."""
    if source is None:
        return ""
    return f"{source.author} {source.year}" if source.author and source.year else source.title


TWO_LINES: Final = 34
"""Height of a row for words that a person types, which may need a second line."""


class Page:
    """One sheet, filled downwards; `row` is the next free row, `bold` names the lines that the sheet comes to.

    `unsaid` are words that labels leave out here, as the sheet's title says them. Where a sheet is one table of a list, that list
    is what it runs `over`, `top` its first row, and `next_column` its next free column.
    """

    def __init__(self, sheet: Sheet, plan: Plan, where: str) -> None:
        self.sheet, self.plan, self.where, self.row = sheet, plan, where, 3
        self.bold: frozenset[str] = frozenset()
        self.unsaid: tuple[str, ...] = ()
        self.columns: list[Line] = []
        self.asked: list[Bound] = []
        self.pending: list[Chart] = []
        self.swung: list[SwingChart] = []
        self.over: Axis | None = None
        self.top, self.next_column = 0, 0
        self._said_how = False

    def put(self, row: int, column: int, content: Content, look: str, *, form: str = "", across: int = 1) -> None:
        """Put one cell; the row grows to hold wrapped words."""
        instead = self.plan.words_instead(content.line) if isinstance(content, (Worked, Shown)) else ""
        self.sheet.cells.append(Cell(row, column, content, look, form, across, wrap=bool(instead)))
        if instead or (isinstance(content, Text) and LOOKS[look].wrap):
            self.room(row, column, content.words if isinstance(content, Text) else instead, look, across=across)

    def room(self, row: int, column: int, words: str, look: str, *, across: int = 1) -> None:
        """Make a row high enough for words in these columns; columns past the grid are as wide as its last."""
        widths = self.sheet.widths
        widths += widths[-1:] * (column + across - len(widths))
        width = sum(widths[column : column + across]) - 10 * LOOKS[look].indent
        self.grow(row, height_of(words, width, LOOKS[look].size, bold=LOOKS[look].bold))

    @property
    def prints(self) -> bool:
        """Whether what is put now stands above the end of what is printed."""
        return not self.sheet.printed_rows

    def as_fits(self, row: int, column: int, sentences: Sequence[str], *, across: int) -> str:
        """As many of these sentences as the row has room for without growing; the first in any case."""
        width, room = sum(self.sheet.widths[column : column + across]), self.sheet.heights.get(row, ROW_HEIGHT)
        counts = range(len(sentences), 1, -1)
        said = (" ".join(sentences[:count]) for count in counts)
        return next((words for words in said if height_of(words, width, LOOKS["words"].size) <= room), sentences[0])

    def words(self, row: int, column: int, words: str, look: str, *, across: int = 1) -> None:
        """Put fixed words; nothing where there are none."""
        if words:
            self.put(row, column, Text(words), look, across=across)

    def ruled(self, row: int, column: int, words: str, look: str, *, across: int = 1) -> None:
        """Put fixed words, or an empty cell, so that the rule under a line runs on."""
        self.put(row, column, Text(words), look, across=across)

    def label(self, label: str) -> str:
        """A label without what the sheet's title says already."""
        for words in self.unsaid:
            label = label.replace(words, "")
        return label[:1].upper() + label[1:]

    def number(self, row: int, of: str) -> None:
        """The number of a line on its sheet, as on a tax form; nothing where it has none here."""
        place = self.plan.places.get(of)
        self.ruled(row, NUMBER, str(place.number) if place and place.sheet == self.sheet.name else "", "number")

    def grow(self, row: int, height: float) -> None:
        """Make a row at least this high, in pixels."""
        self.sheet.heights[row] = max(self.sheet.heights.get(row, ROW_HEIGHT), height)

    def heading(self, title: str, *, side: str = "") -> None:
        """A heading across the grid over two empty rows, where a page may break."""
        for _ in range(2):
            self.sheet.heights[self.row] = SPACE / 2
            self.row += 1
        self.sheet.starts.append(self.row - 1)
        if not title:
            return
        if side and not self._said_how:
            self._said_how, side = True, f"{side}: numbers alone are lines of this sheet, on paper or below"
        for column in range(self.sheet.grid.printed):
            look = "heading_side" if column >= HOW else "heading"
            self.put(self.row, column, Text(title if column == 0 else side if column == HOW else ""), look)
        self.grow(self.row, HEADING_HEIGHT)
        self.row += 1

    def heads(self, row: int, heads: Sequence[tuple[int, str, int]], look: str = "column_head") -> None:
        """Column heads: (column, words, columns across)."""
        for column, words, across in heads:
            self.put(row, column, Text(words), look, across=across)

    def name(self, of: str, row: int, column: int) -> None:
        """Register a defined name of a single cell."""
        if of in self.plan.names:
            raise ModelFault(f"two cells would be called `{of}`", where=self.where)
        self.plan.names[of] = (self.sheet.name, row, column)

    def member_labels(self, axis: Axis, row: int, column: int, look: str, *, turned: bool = False) -> None:
        """Write the names of an axis's members downwards or across from a cell; `turned` the other way than usual."""
        down = (axis.direction == "down") != turned
        lines = self.plan.model.axes.get(axis)
        if not turned:
            self.plan.labels.setdefault(axis, (self.sheet.name, row, column))
        if lines is not None and not down:
            self.grow(row, TWO_LINES)
        for member, name in enumerate(self.member_names(axis)):
            self.put(*((row + member, column) if down else (row, column + member)), name, look)
        if lines is not None and lines.label not in self.plan.homes:
            sizes, swapped = (self.plan.sizes[axis],), (axis,) if turned else ()
            self.plan.settle(lines.label, Home(self.sheet.name, row, column, (axis,), sizes, column, swapped))

    def member_names(self, axis: Axis) -> list[Content]:
        """What says the names of an axis's members: fixed words, or the cells where they are worked out."""
        lines = self.plan.model.axes.get(axis)
        members = range(self.plan.sizes[axis])
        if lines is None:
            return [Text(axis.called(member).replace("_", " ").capitalize()) for member in members]
        known = lines.label in self.plan.homes
        return [Shown(lines.label, (member,)) if known else Worked(lines.label, (member,)) for member in members]
