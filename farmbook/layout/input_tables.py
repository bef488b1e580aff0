"""Tables of inputs: a cell for each member of a list, or of two lists; beside them, past the print, all that is said of each."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Content, Home, Text, Typed, Worked
from farmbook.layout.forms import limit_code
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, PRINTED, VALUE
from farmbook.layout.input_blocks import limit_pair, note_cell
from farmbook.layout.page import TWO_LINES, Page, cited
from farmbook.layout.template import Block
from farmbook.sections.declare import NumberInput, TextInput
from farmbook.sections.section import Bound

__all__ = ["input_table_block", "inputs_explained"]

SAYS: Mapping[str, str] = {"basis": "How known", "note": "Note", "flag": "The book says", "built": "As built"}
"""What stands in the screen margin for each column of a table, and its heads."""
SAYS_OF_TEXTS: Final = ("Note", "As built")
"""The same for a text."""
TEXT_COLUMNS: Final = 2
"""Columns of the grid that a text of each row takes."""


@dataclass(frozen=True)
class _Grid:
    """Where the cells of one input stand, and how far right its twin of each kind stands in the screen margin."""

    bound: Bound
    first: Home
    aside: Mapping[str, int]

    def home(self, what: str) -> Home:
        """The home of the same cells in the margin."""
        at = self.first
        return Home(at.sheet, at.row, self.aside[what], at.axes, at.counts, LABEL)

    def indices(self) -> Iterator[tuple[int, ...]]:
        """The places of all members."""
        return itertools.product(*map(range, self.first.counts))


def input_table_block(page: Page, block: Block) -> None:
    """Inputs with a value for each member of one list, or of two. Usual limits stand once, in the heading."""
    bound = [page.plan.input(name, page.where) for name in block.inputs]
    axes = ordered_axes(bound[0].cell.axes)
    if any(ordered_axes(one.cell.axes) != axes for one in bound) or not axes:
        raise ModelFault(f"the inputs of table `{block.title}` do not share their lists", where=page.where)
    numbers = [one for one in bound if isinstance(one.declared, NumberInput)]
    names = next((one for one in bound if isinstance(one.declared, TextInput) and one.declared.names), None)
    texts = [one for one in bound if isinstance(one.declared, TextInput) and one is not names]
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, LABEL, paragraph, "paragraph", across=PRINTED - LABEL)
        page.row += 1
    page.number(page.row, block.inputs[0])
    if len(axes) == 2:
        for one in numbers:
            _matrix(page, one, axes)
    elif axes[0].direction == "down":
        _down(page, numbers, names, texts, axes[0])
    else:
        _across(page, numbers, names, texts, axes[0])
    page.asked += bound


def _down(page: Page, numbers: Sequence[Bound], names: Bound | None, texts: Sequence[Bound], axis: Axis) -> None:
    """Members down, one column for each number, under its unit and usual limits, and some for each text."""
    plan, count, row = page.plan, page.plan.sizes[axis], page.row
    end = VALUE + len(numbers) + TEXT_COLUMNS * len(texts)
    if end > PRINTED:
        raise ModelFault(
            f"a table of {len(numbers)} numbers and {len(texts)} texts is wider than a side", where=page.where
        )
    margin = _margin(end)
    page.put(row, LABEL, Text(axis.label.capitalize()), "column_head")
    for at, words in enumerate(("", "usual, from", "to") if numbers else (), row + 1):
        page.put(at, LABEL, Text(words), "unit")
    first = row + (4 if numbers else 1)
    for offset, one in enumerate(numbers):
        column = VALUE + offset
        page.put(row, column, Text(_head(one)), "column_head_right")
        page.put(row + 1, column, Text(plan.unit_words(one.cell.unit)), "unit_head")
        form = plan.limit_format(one.cell.unit, table=True)
        limit_pair(page, (one.low, one.high), ((row + 2, column), (row + 3, column)), form)
        home = Home(page.sheet.name, first, column, (axis,), (count,), LABEL)
        aside = {what: margin + group * len(numbers) + offset for group, what in enumerate(SAYS)}
        grid = _Grid(one, home, aside)
        _grid(page, grid)
        for what, words in SAYS.items():
            page.put(row, aside[what], Text(f"{words}: {_small(_head(one))}"), "column_head")
        _hard_limits(page, one, (row + 2, aside["flag"]), (row + 3, aside["flag"]))
    if names is None:
        page.member_labels(axis, first, LABEL, "label")
    else:
        _names(
            page,
            names,
            Home(page.sheet.name, first, LABEL, (axis,), (count,), LABEL),
            margin + len(SAYS) * len(numbers),
        )
    aside_texts = margin + len(SAYS) * len(numbers) + len(SAYS_OF_TEXTS)
    for offset, one in enumerate(texts):
        column = VALUE + len(numbers) + TEXT_COLUMNS * offset
        page.put(row, column, Text(_head(one)), "column_head", across=TEXT_COLUMNS)
        home = Home(page.sheet.name, first, column, (axis,), (count,), LABEL)
        _text_cells(page, one, home, aside_texts + len(SAYS_OF_TEXTS) * offset, across=TEXT_COLUMNS)
    page.row = first + count


def _across(page: Page, numbers: Sequence[Bound], names: Bound | None, texts: Sequence[Bound], axis: Axis) -> None:
    """Members across, one row for each input, with its unit and usual limits behind."""
    plan, count = page.plan, page.plan.sizes[axis]
    unit_column = VALUE + count
    margin = _margin(unit_column + 3)
    aside = {what: margin + group * count for group, what in enumerate(SAYS)}
    right = margin + len(SAYS) * count
    page.put(page.row, LABEL, Text(axis.label.capitalize()), "column_head")
    for column, words in enumerate(("", "usual, from", "to"), unit_column):
        page.put(page.row, column, Text(words), "column_head")
    for what, member in itertools.product(SAYS, range(count)):
        page.put(page.row, aside[what] + member, Text(f"{SAYS[what]}, {axis.label} {member + 1}"), "column_head")
    if names is None:
        page.member_labels(axis, page.row, VALUE, "column_head_right")
    else:
        home = Home(page.sheet.name, page.row, VALUE, (axis,), (count,), LABEL)
        _names(page, names, home, right + 2)
    page.row += 1
    for one in numbers:
        page.put(page.row, LABEL, Text(one.declared.label), "label")
        page.put(page.row, unit_column, Text(plan.unit_words(one.cell.unit)), "unit")
        form, row = plan.limit_format(one.cell.unit, table=True), page.row
        limit_pair(page, (one.low, one.high), ((row, unit_column + 1), (row, unit_column + 2)), form)
        _grid(page, _Grid(one, Home(page.sheet.name, row, VALUE, (axis,), (count,), LABEL), aside))
        _hard_limits(page, one, (row, right), (row, right + 1))
        page.row += 1
    for one in texts:
        page.put(page.row, LABEL, Text(one.declared.label), "label")
        _text_cells(page, one, Home(page.sheet.name, page.row, VALUE, (axis,), (count,), LABEL), right + 2 + 2 * count)
        page.row += 1


def _matrix(page: Page, one: Bound, axes: tuple[Axis, ...]) -> None:
    """One input with a list down and a list across; its usual limits stand behind the names across."""
    plan, row = page.plan, page.row
    down = next(axis for axis in axes if axis.direction == "down")
    across = next(axis for axis in axes if axis.direction == "across")
    high, wide = plan.sizes[down], plan.sizes[across]
    head = ", ".join(filter(None, [_head(one), plan.unit_words(one.cell.unit)]))
    page.put(row, LABEL, Text(head), "column_head")
    page.member_labels(across, row, VALUE, "column_head_right")
    page.member_labels(down, row + 1, LABEL, "label")
    for offset, words in enumerate(("usual, from", "to")):
        page.put(row, VALUE + wide + offset, Text(words), "column_head_right")
    places = ((row + 1, VALUE + wide), (row + 1, VALUE + wide + 1))
    limit_pair(page, (one.low, one.high), places, plan.limit_format(one.cell.unit, table=True))
    margin = _margin(VALUE + wide + 2)
    aside = {what: margin + group * wide for group, what in enumerate(SAYS)}
    for what, member in itertools.product(SAYS, range(wide)):
        page.put(row, aside[what] + member, Text(f"{SAYS[what]}, {across.label} {member + 1}"), "column_head")
    counts = tuple(plan.sizes[axis] for axis in axes)
    _grid(page, _Grid(one, Home(page.sheet.name, row + 1, VALUE, axes, counts, LABEL), aside))
    right = margin + len(SAYS) * wide
    _hard_limits(page, one, (row + 1, right), (row + 1, right + 1))
    page.row = row + 1 + high


def _grid(page: Page, grid: _Grid) -> None:
    """The cells of an input, and beside them how each is known, a note on it, what the book says of it, and how it was built."""
    bound, form = grid.bound, page.plan.typed_format(grid.bound.cell.unit, table=True)
    assert bound.basis is not None and bound.flag is not None and bound.built is not None
    flag, notes = bound.flag, grid.home("note")
    _settled(
        page, bound.cell, grid.first, ((index, Typed(bound.cell, index)) for index in grid.indices()), "input", form
    )
    known = ((index, Typed(bound.basis, index)) for index in grid.indices())
    _settled(page, bound.basis, grid.home("basis"), known, "input_choice", "")
    _settled(page, flag, grid.home("flag"), ((index, Worked(flag, index)) for index in grid.indices()), "flag", "")
    built = ((index, Typed(bound.built, index)) for index in grid.indices())
    _settled(page, bound.built, grid.home("built"), built, "limit", form)
    for index in grid.indices():
        note_cell(page, bound.cell, index, *notes.place(dict(zip(notes.axes, index, strict=True))))


def _settled(
    page: Page, of: Line | RawInput, home: Home, cells: Iterable[tuple[tuple[int, ...], Content]], look: str, form: str
) -> None:
    """Cells of one home."""
    for index, content in cells:
        page.put(*home.place(dict(zip(home.axes, index, strict=True))), content, look, form=form)
    page.plan.settle(of, home)


def _text_cells(page: Page, one: Bound, home: Home, aside: int, *, across: int = 1) -> None:
    """The cells of a text for each member; in the margin a note on each, and the text as built."""
    built = one.built
    assert built is not None
    along = 1 if home.axes[0].direction == "down" else home.counts[0]
    head = home.row - 1
    for offset, words in enumerate(SAYS_OF_TEXTS):
        page.put(head, aside + along * offset, Text(f"{words}: {_small(_head(one))}"), "column_head")
    for member in range(home.counts[0]):
        at = home.place({home.axes[0]: member})
        page.put(*at, Typed(one.cell, (member,)), "input_text", across=across)
        page.grow(at[0], TWO_LINES)
    page.plan.settle(one.cell, home)
    noted = Home(home.sheet, home.row, aside, home.axes, home.counts, LABEL)
    for member in range(home.counts[0]):
        note_cell(page, one.cell, (member,), *noted.place({home.axes[0]: member}))
    beside = Home(home.sheet, home.row, aside + along, home.axes, home.counts, LABEL)
    _settled(
        page, built, beside, (((member,), Typed(built, (member,))) for member in range(home.counts[0])), "limit", ""
    )


def _names(page: Page, names: Bound, home: Home, aside: int) -> None:
    """The names of the members are typed in; in the margin a note on each, and the name as built."""
    built = names.built
    assert built is not None
    along = 1 if home.axes[0].direction == "down" else home.counts[0]
    others = [("note", aside), ("as built", aside + along)]
    for words, column in others:
        page.put(home.row - 1, column, Text(f"Name: {words}"), "column_head")
    members = [(member,) for member in range(home.counts[0])]
    _settled(page, names.cell, home, ((index, Typed(names.cell, index)) for index in members), "input_text", "")
    noted = Home(home.sheet, home.row, aside, home.axes, home.counts, LABEL)
    for index in members:
        note_cell(page, names.cell, index, *noted.place({home.axes[0]: index[0]}))
    beside = Home(home.sheet, home.row, aside + along, home.axes, home.counts, LABEL)
    _settled(page, built, beside, ((index, Typed(built, index)) for index in members), "limit", "")


def _margin(end: int) -> int:
    """The first column of the screen margin beside a table that ends before this column, however wide that is."""
    return max(PRINTED, end)


def _hard_limits(page: Page, one: Bound, low: tuple[int, int], high: tuple[int, int]) -> None:
    limit_pair(page, (one.least, one.most), (low, high), limit_code(one.cell.unit))


def _head(one: Bound) -> str:
    """A label as the head of a column, without the name of its subject before a colon."""
    words = one.declared.label.rpartition(": ")[2]
    return f"{words[:1].upper()}{words[1:]}"


def _small(label: str) -> str:
    """A label as it stands after a colon."""
    return f"{label[:1].lower()}{label[1:]}"


def inputs_explained(page: Page) -> None:
    """How to measure each input of the tables above, its source and its name; every cell says it too when it is picked."""
    if not page.asked:
        return
    page.heading("How to measure what stands in the tables")
    for one in page.asked:
        declared = one.declared
        page.put(page.row, LABEL, Text(declared.label), "label")
        said = (declared.how, declared.note, cited(declared.source))
        page.ruled(page.row, VALUE, " ".join(filter(None, said)), "words", across=HOW + HOW_COLUMNS - VALUE)
        page.words(page.row, NAME, workbook_name(one.cell), "name")
        page.row += 1
