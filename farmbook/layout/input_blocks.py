"""Blocks of inputs: lists of single cells, and tables of cells for the members of an axis. Every cell typed in is one of these."""

from __future__ import annotations

from collections.abc import Sequence

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Home, Note, Text, Typed, Worked
from farmbook.layout.grid import LABEL, UNIT, VALUE
from farmbook.layout.list_blocks import sentences
from farmbook.layout.page import Page, cited
from farmbook.layout.template import Block
from farmbook.sections.declare import NumberInput, TextInput
from farmbook.sections.section import Bound

__all__ = ["input_table_block", "inputs_block"]

HIGH, FLAG, BASIS, MEASURE, NOTE, USED, SCREEN_NAME, SOURCE = range(5, 13)
LOW = HIGH - 1


def inputs_block(page: Page, block: Block) -> None:
    """Single inputs, one a row, with all that a reader needs to judge each; in the screen margin the number the sums use."""
    if not page.sheet.starts:
        _heads(page)
    page.heading(block.title)
    for name in block.inputs:
        _input_row(page, page.plan.input(name, page.where))
        page.row += 1


def _heads(page: Page) -> None:
    """What the columns are, once at the head of the sheet."""
    heads = {LABEL: "", VALUE: "yours", UNIT: "", LOW: "from", HIGH: "to", FLAG: "usual range", BASIS: "how known"}
    heads |= {MEASURE: "how to measure it", NOTE: "your note"}
    for column, words in heads.items():
        right = column in (VALUE, LOW, HIGH)
        page.put(page.row, column, Text(words), "column_head_right" if right else "column_head")
    beside = {USED: "the book uses", SCREEN_NAME: "name in formulas", SOURCE: "to know, and source of the range"}
    for column, words in beside.items():
        page.put(page.row, column, Text(words), "name")
    page.row += 1


def _input_row(page: Page, bound: Bound) -> None:
    plan, row, declared = page.plan, page.row, bound.declared
    if declared.axes:
        raise ModelFault(f"`{bound.cell.name}` is a table; it cannot stand in a list of inputs", where=page.where)
    number = isinstance(declared, NumberInput)
    page.number(row, bound.cell.name)
    page.put(row, LABEL, Text(declared.label), "label")
    form = plan.typed_format(bound.cell.unit) if number else ""
    _single(
        page, bound.cell, VALUE, "input" if number else "input_text", form=form, across=1 if number else TEXT_COLUMNS
    )
    if number:
        page.put(row, UNIT, Text(plan.unit_after(bound.cell.unit)), "unit")
        _limits(page, bound, (row, LOW), (row, HIGH))
    if bound.flag is not None:
        _line(page, bound.flag, FLAG, "flag")
        for words in sentences(bound.flag):
            page.room(row, FLAG, words, "flag")
    if bound.basis is not None:
        _single(page, bound.basis, BASIS, "input_choice")
    page.ruled(row, MEASURE, declared.how, "words")
    _note(page, bound.cell, (), row, NOTE)
    page.name(f"{workbook_name(bound.cell)}_note", row, NOTE)
    if bound.used is not None:
        _line(page, bound.used, USED, "used", form=form)
    page.words(row, SCREEN_NAME, workbook_name(bound.cell), "name")
    page.words(row, SOURCE, " ".join(part for part in (declared.note, cited(declared.source)) if part), "name")


def _note(page: Page, cell: RawInput, index: tuple[int, ...], row: int, column: int) -> None:
    """The cell for a note on one value: each has its own, so that no note is ever mixed with another."""
    page.put(row, column, Note(page.plan.notes.get(cell, {}).get(index, ""), cell, index), "input_note")


TEXT_COLUMNS = 4
"""Columns of a cell for words."""


def _single(page: Page, cell: RawInput, column: int, look: str, *, form: str = "", across: int = 1) -> None:
    """A cell to type into, with its home and its name."""
    page.put(page.row, column, Typed(cell, ()), look, form=form, across=across)
    page.plan.settle(cell, Home(page.sheet.name, page.row, column, label_column=LABEL))
    page.name(workbook_name(cell), page.row, column)


def _line(page: Page, line: Line, column: int, look: str, *, form: str = "") -> None:
    """A worked cell beside an input, with its home and its name."""
    page.put(page.row, column, Worked(line, ()), look, form=form)
    page.plan.settle(line, Home(page.sheet.name, page.row, column, label_column=LABEL))
    page.name(workbook_name(line), page.row, column)


def _limits(page: Page, bound: Bound, low: tuple[int, int], high: tuple[int, int]) -> None:
    assert bound.low is not None and bound.high is not None
    form = page.plan.limit_format(bound.cell.unit, table=bool(bound.cell.axes))
    for cell, place in ((bound.low, low), (bound.high, high)):
        page.put(*place, Typed(cell, ()), "limit", form=form)
        page.plan.settle(cell, Home(page.sheet.name, *place, label_column=LABEL))


def input_table_block(page: Page, block: Block) -> None:
    """Inputs that have a value for each member of one axis (or of two): values and their bases, then flags, then how to measure."""
    bound = [page.plan.input(name, page.where) for name in block.inputs]
    axes = ordered_axes(bound[0].cell.axes)
    if any(ordered_axes(one.cell.axes) != axes for one in bound) or not axes:
        raise ModelFault(f"the inputs of table `{block.title}` do not share their lists", where=page.where)
    numbers = [one for one in bound if isinstance(one.declared, NumberInput)]
    names = next((one for one in bound if isinstance(one.declared, TextInput) and one.declared.names), None)
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, LABEL, paragraph, "paragraph", across=10)
        page.row += 1
    if len(axes) == 2:
        for one in numbers:
            _matrix(page, one, axes)
    elif axes[0].direction == "down":
        _down(page, numbers, names, axes[0])
    else:
        _across(page, numbers, names, axes[0])
    _how(page, bound)


def _down(page: Page, numbers: Sequence[Bound], names: Bound | None, axis: Axis) -> None:
    """Members down, one column for each input, then one for each basis, then one for the notes on each, that on the name last."""
    plan, count = page.plan, page.plan.sizes[axis]
    basis_column = VALUE + len(numbers)
    note_column = basis_column + len(numbers)
    page.put(page.row, LABEL, Text(axis.label.capitalize()), "column_head")
    noted = [*numbers, names] if names else numbers
    for column, one in enumerate(noted, note_column):
        page.put(page.row, column, Text(f"Note: {_small(one.declared.label)}"), "column_head")
        for member in range(count):
            _note(page, one.cell, (member,), page.row + 4 + member, column)
    for at, words in enumerate(("Unit", "Usual, from", "Usual, to"), page.row + 1):
        page.words(at, LABEL, words, "unit")
    first = page.row + 4
    for offset, one in enumerate(numbers):
        column = VALUE + offset
        page.put(page.row, column, Text(one.declared.label), "column_head_right")
        page.put(
            page.row,
            basis_column + offset,
            Text(f"Basis: {_small(one.declared.label)}"),
            "column_head",
        )
        page.words(page.row + 1, column, plan.unit_words(one.cell.unit), "unit")
        _limits(page, one, (page.row + 2, column), (page.row + 3, column))
        _column(page, one.cell, first, column, (axis,), "input", plan.typed_format(one.cell.unit, table=True))
        assert one.basis is not None
        _column(page, one.basis, first, basis_column + offset, (axis,), "input_choice", "")
    _names(page, names, axis, first, LABEL)
    page.row = first + count + 1
    _flags_down(page, numbers, axis)


def _names(page: Page, names: Bound | None, axis: Axis, row: int, column: int) -> None:
    """The names of the members: typed in where they belong to this table, else repeated."""
    look = "label" if axis.direction == "down" else "column_head_right"
    if names is None:
        page.member_labels(axis, row, column, look)
        return
    _column(page, names.cell, row, column, (axis,), "input_text", "")


def _column(page: Page, cell: RawInput, row: int, column: int, axes: tuple[Axis, ...], look: str, form: str) -> None:
    axis, plan = axes[0], page.plan
    for member in range(plan.sizes[axis]):
        at = (row + member, column) if axis.direction == "down" else (row, column + member)
        page.put(*at, Typed(cell, (member,)), look, form=form)
    plan.settle(cell, Home(page.sheet.name, row, column, axes, (plan.sizes[axis],), LABEL))


def _small(label: str) -> str:
    """A label as it stands after a colon."""
    return f"{label[:1].lower()}{label[1:]}"


def _flags_down(page: Page, numbers: Sequence[Bound], axis: Axis) -> None:
    """What the book says of each number, in the same columns."""
    page.put(page.row, LABEL, Text("What the book says of each number"), "column_head")
    for column, one in enumerate(numbers, VALUE):
        page.put(page.row, column, Text(one.declared.label), "column_head")
    page.row += 1
    page.member_labels(axis, page.row, LABEL, "label")
    for column, one in enumerate(numbers, VALUE):
        assert one.flag is not None
        _flag_cells(page, one.flag, page.row, column, (axis,))
    page.row += page.plan.sizes[axis] + 1


def _flag_cells(page: Page, flag: Line, row: int, column: int, axes: tuple[Axis, ...]) -> None:
    plan = page.plan
    counts = tuple(plan.sizes[axis] for axis in axes)
    home = Home(page.sheet.name, row, column, axes, counts, LABEL)
    for index in _indices(counts):
        page.put(*home.place(dict(zip(axes, index, strict=True))), Worked(flag, index), "flag")
        page.grow(home.place(dict(zip(axes, index, strict=True)))[0], 34)
    plan.settle(flag, home)


def _indices(counts: Sequence[int]) -> list[tuple[int, ...]]:
    found: list[tuple[int, ...]] = [()]
    for count in counts:
        found = [(*index, member) for index in found for member in range(count)]
    return found


def _across(page: Page, numbers: Sequence[Bound], names: Bound | None, axis: Axis) -> None:
    """Members across, one row for each input; bases and notes to the right, the flags below."""
    plan, count = page.plan, page.plan.sizes[axis]
    unit_column = VALUE + count
    basis_column = unit_column + 3
    page.put(page.row, LABEL, Text("Input"), "column_head")
    _names(page, names, axis, page.row, VALUE)
    page.heads(
        page.row, [(unit_column, "Unit", 1), (unit_column + 1, "Usual, from", 1), (unit_column + 2, "Usual, to", 1)]
    )
    for member in range(count):
        page.put(page.row, basis_column + member, Text(f"Basis, {axis.label} {member + 1}"), "column_head")
        page.put(page.row, basis_column + count + member, Text(f"Note, {axis.label} {member + 1}"), "column_head")
    page.row += 1
    for one in numbers:
        page.words(page.row, LABEL, one.declared.label, "label")
        _column(page, one.cell, page.row, VALUE, (axis,), "input", plan.typed_format(one.cell.unit, table=True))
        page.words(page.row, unit_column, plan.unit_words(one.cell.unit), "unit")
        _limits(page, one, (page.row, unit_column + 1), (page.row, unit_column + 2))
        assert one.basis is not None
        _column(page, one.basis, page.row, basis_column, (axis,), "input_choice", "")
        for member in range(count):
            _note(page, one.cell, (member,), page.row, basis_column + count + member)
        page.row += 1
    if names:
        page.words(page.row, LABEL, "Note on the name", "label")
        for member in range(count):
            _note(page, names.cell, (member,), page.row, VALUE + member)
        page.row += 1
    page.row += 1
    page.put(page.row, LABEL, Text("What the book says of each number"), "column_head")
    page.member_labels(axis, page.row, VALUE, "column_head")
    page.row += 1
    for one in numbers:
        assert one.flag is not None
        page.words(page.row, LABEL, one.declared.label, "label")
        _flag_cells(page, one.flag, page.row, VALUE, (axis,))
        page.row += 1
    page.row += 1


def _matrix(page: Page, one: Bound, axes: tuple[Axis, ...]) -> None:
    """One input with a list down and a list across: values, bases and notes to the right, flags further down."""
    plan = page.plan
    down = next(axis for axis in axes if axis.direction == "down")
    across = next(axis for axis in axes if axis.direction == "across")
    high, wide = plan.sizes[down], plan.sizes[across]
    counts = tuple(plan.sizes[axis] for axis in axes)
    page.put(
        page.row,
        LABEL,
        Text(", ".join(filter(None, [one.declared.label, plan.unit_words(one.cell.unit)]))),
        "column_head",
    )
    page.member_labels(across, page.row, VALUE, "column_head_right")
    basis_column = VALUE + wide + 1
    for member in range(wide):
        page.put(page.row, basis_column + member, Text(f"Basis, {across.label} {member + 1}"), "column_head")
        page.put(page.row, basis_column + wide + member, Text(f"Note, {across.label} {member + 1}"), "column_head")
    limit_column = VALUE + wide
    page.put(page.row, limit_column, Text("Usual range"), "column_head")
    first = page.row + 1
    _limits(page, one, (first, limit_column), (first + 1, limit_column))
    page.member_labels(down, first, LABEL, "label")
    assert one.basis is not None and one.flag is not None
    for cell, column, look, form in (
        (one.cell, VALUE, "input", plan.typed_format(one.cell.unit, table=True)),
        (one.basis, basis_column, "input_choice", ""),
    ):
        home = Home(page.sheet.name, first, column, axes, counts, LABEL)
        for index in _indices(counts):
            page.put(*home.place(dict(zip(axes, index, strict=True))), Typed(cell, index), look, form=form)
        plan.settle(cell, home)
    notes = Home(page.sheet.name, first, basis_column + wide, axes, counts)
    for index in _indices(counts):
        _note(page, one.cell, index, *notes.place(dict(zip(axes, index, strict=True))))
    page.row = first + high + 1
    page.put(page.row, LABEL, Text("What the book says of each number"), "column_head")
    page.member_labels(across, page.row, VALUE, "column_head")
    page.member_labels(down, page.row + 1, LABEL, "label")
    _flag_cells(page, one.flag, page.row + 1, VALUE, axes)
    page.row += high + 2


def _how(page: Page, bound: Sequence[Bound]) -> None:
    """How to measure each input of a table, and its source."""
    page.heads(
        page.row,
        [
            (LABEL, "Input", 1),
            (VALUE, "How to measure it", 6),
            (VALUE + 6, "Source of the range", 3),
            (VALUE + 9, "Name", 3),
        ],
    )
    page.row += 1
    for one in bound:
        declared = one.declared
        page.words(page.row, LABEL, declared.label, "words")
        page.words(page.row, VALUE, " ".join(part for part in (declared.how, declared.note) if part), "words", across=6)
        page.words(page.row, VALUE + 6, cited(declared.source), "words", across=3)
        page.words(page.row, VALUE + 9, workbook_name(one.cell), "name", across=3)
        page.row += 1
    page.row += 1
