"""Blocks of single inputs: one a row, with all that a reader needs to judge each."""

from __future__ import annotations

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Home, Note, Text, Typed, Worked
from farmbook.layout.forms import limit_code
from farmbook.layout.grid import LABEL, UNIT, VALUE
from farmbook.layout.list_blocks import sentences
from farmbook.layout.page import Page, cited
from farmbook.layout.template import Block
from farmbook.sections.declare import NumberInput
from farmbook.sections.section import Bound

__all__ = ["fixed_cell", "inputs_block", "limit_pair", "note_cell"]

HIGH, FLAG, BASIS, MEASURE, NOTE, USED, SCREEN_NAME, SOURCE, LEAST, MOST, BUILT = range(5, 16)
LOW = HIGH - 1


def inputs_block(page: Page, block: Block) -> None:
    """Single inputs; in the screen margin the number the sums use, the hard limits, and what stood there when the book was made."""
    if not page.sheet.starts:
        _heads(page)
    page.heading(block.title)
    for name in block.inputs:
        _input_row(page, page.plan.input(name, page.where))
        page.row += 1


def _heads(page: Page) -> None:
    """What the columns are, once at the head of the sheet."""
    heads = {LABEL: "", VALUE: "yours", UNIT: "", LOW: "usual, from", HIGH: "to", FLAG: "", BASIS: "how known"}
    heads |= {MEASURE: "how to measure it", NOTE: "your note"}
    for column, words in heads.items():
        right = column in (VALUE, LOW, HIGH)
        page.put(page.row, column, Text(words), "column_head_right" if right else "column_head")
    beside = {USED: "the book uses", SCREEN_NAME: "name in formulas", SOURCE: "to know, and source of the range"}
    beside |= {LEAST: "at least", MOST: "at most", BUILT: "as built"}
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
        limit_pair(page, (bound.low, bound.high), ((row, LOW), (row, HIGH)), plan.limit_format(bound.cell.unit))
        limit_pair(page, (bound.least, bound.most), ((row, LEAST), (row, MOST)), limit_code(bound.cell.unit))
    if bound.flag is not None:
        _line(page, bound.flag, FLAG, "flag")
        for words in sentences(bound.flag):
            page.room(row, FLAG, words, "flag")
    if bound.basis is not None:
        _single(page, bound.basis, BASIS, "input_choice")
    page.ruled(row, MEASURE, declared.how, "words")
    note_cell(page, bound.cell, (), row, NOTE)
    page.name(f"{workbook_name(bound.cell)}_note", row, NOTE)
    if bound.used is not None:
        _line(page, bound.used, USED, "used", form=form)
    page.words(row, SCREEN_NAME, workbook_name(bound.cell), "name")
    page.words(row, SOURCE, " ".join(part for part in (declared.note, cited(declared.source)) if part), "name")
    fixed_cell(page, bound.built, (row, BUILT), form)


def note_cell(page: Page, cell: RawInput, index: tuple[int, ...], row: int, column: int) -> None:
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


def fixed_cell(page: Page, cell: RawInput | None, at: tuple[int, int], form: str) -> None:
    """A cell that the book fills in beside an input."""
    assert cell is not None
    page.put(*at, Typed(cell, ()), "limit", form=form)
    page.plan.settle(cell, Home(page.sheet.name, *at, label_column=LABEL))


def limit_pair(
    page: Page, limits: tuple[RawInput | None, RawInput | None], at: tuple[tuple[int, int], tuple[int, int]], form: str
) -> None:
    """Two limits of a number."""
    for cell, place in zip(limits, at, strict=True):
        fixed_cell(page, cell, place, form)
