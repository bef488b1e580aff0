"""Placement: templates and a model become sheets of cells; every line and input is placed exactly once, or the build stops."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.graph import sources_of
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Book, Cell, Home, Link, Sheet, Shown, Text, Worked
from farmbook.layout.card_blocks import card_block
from farmbook.layout.case_blocks import case_block, cases_block
from farmbook.layout.chart_blocks import chart_block, chart_figures, charts_beside
from farmbook.layout.front_blocks import FRONT_ANSWER_HEIGHT, front_block, says_block
from farmbook.layout.grid import ANSWER_HEIGHT, COMMON, GRIDS, HOW, INPUTS, LISTS, TITLE_HEIGHT, VALUE, WORKED
from farmbook.layout.input_blocks import inputs_block
from farmbook.layout.input_tables import input_table_block, inputs_explained
from farmbook.layout.limit_blocks import limits_block
from farmbook.layout.list_blocks import COMES_TO_HEIGHT, comes_to, compare_block, list_block
from farmbook.layout.matter_blocks import left_out_block, matters_block, matters_chart_block, matters_figures
from farmbook.layout.month_blocks import month_heads, months_block
from farmbook.layout.numbering import numbered
from farmbook.layout.page import Page, Plan
from farmbook.layout.reference_blocks import (
    cautions_block,
    checks_block,
    constants_block,
    contents_block,
    glance_block,
    legend_block,
    sources_block,
    stamp_block,
    text_block,
)
from farmbook.layout.table_blocks import across_block, columns_explained, matrix_block, table_block
from farmbook.layout.template import Block, Template, reading_order
from farmbook.layout.typed import areas_of, typed_cells
from farmbook.layout.week_blocks import week_heads, weeks_block
from farmbook.layout.year_blocks import years_block

__all__ = ["BLOCKS", "place"]

BLOCKS: Final[dict[str, Callable[[Page, Block], None]]] = {
    "list": list_block,
    "table": table_block,
    "across": across_block,
    "matrix": matrix_block,
    "text": text_block,
    "cautions": cautions_block,
    "inputs": inputs_block,
    "input_table": input_table_block,
    "checks": checks_block,
    "glance": glance_block,
    "contents": contents_block,
    "constants": constants_block,
    "sources": sources_block,
    "legend": legend_block,
    "stamp": stamp_block,
    "chart": chart_block,
    "compare": compare_block,
    "case": case_block,
    "cases": cases_block,
    "front": front_block,
    "says": says_block,
    "matters": matters_block,
    "matters_chart": matters_chart_block,
    "matters_left_out": left_out_block,
    "months": months_block,
    "years": years_block,
    "weeks": weeks_block,
    "card": card_block,
    "limits": limits_block,
}
HEADS: Final = {"months": month_heads, "weeks": week_heads}
"""What stands above, or left of, all blocks of a sheet that is one table."""


EXTRA_WIDTH = 88
"""Columns past the common grid, for lists that run far across."""
NEIGHBOURS = 3
"""Sheets that the screen margin names as those that a sheet rests on, and those that rest on it."""


def place(plan: Plan, templates: Sequence[Template], *, title_line: str, verdict_line: str) -> Book:
    """Lay out every sheet. `title_line` and `verdict_line` name the lines shown at the head of each sheet.

    Raises ModelFault for lines or inputs that no template places, and for names that no section declares.
    """
    plan.sheets = [(template.sheet, template.title, template.question) for template in templates]
    plan.lives_on = {name: template.sheet for template in templates for name in template.homes}
    plan.quiet = {block.lowest for template in templates for block in template.blocks if block.kind == "chart"}
    plan.places = numbered(plan, templates)
    sheets = [_sheet(plan, template, title_line, verdict_line) for template in templates]
    _all_placed(plan)
    read = _read_between(plan)
    for sheet in sheets:
        _links(plan, sheet, read)
    typed = typed_cells(plan.model, sheets)
    return Book(sheets, plan.homes, plan.names, plan.constants, plan.labels, typed, areas_of(plan, typed), plan.dated)


def _sheet(plan: Plan, template: Template, title_line: str, verdict_line: str) -> Sheet:
    sheet = Sheet(template.sheet, template.title, template.question, template.kind, _widths(plan, template))
    sheet.prints, sheet.grid = template.prints, GRIDS.get(template.kind, COMMON)
    page = Page(sheet, plan, template.path)
    page.bold, page.unsaid = frozenset(template.comes_to), template.unsaid
    _title(page, template, title_line, verdict_line)
    if template.kind in HEADS:
        HEADS[template.kind](page, template.heads)
    blocks = [(block.below, partial(BLOCKS[block.kind], page, block)) for block in reading_order(template)]
    if template.comes_to:
        blocks.insert(0, (False, partial(_head, page, template)))
    blocks += [
        (True, partial(columns_explained, page)),
        (True, partial(inputs_explained, page)),
        (True, partial(chart_figures, page)),
        (True, partial(matters_figures, page)),
    ]
    for below, work in blocks:
        if below and not sheet.printed_rows:
            sheet.printed_rows = page.row
        try:
            work()
        except ModelFault as fault:
            raise ModelFault(fault.what, where=fault.where or template.path, why=fault.why) from None
    _one_to_a_cell(sheet, template)
    return sheet


def _one_to_a_cell(sheet: Sheet, template: Template) -> None:
    """A fault in the templates or the layout: of two things in one cell, one would be lost in silence."""
    taken = Counter((cell.row, cell.column) for cell in sheet.cells)
    for (row, column), times in taken.items():
        if times > 1:
            raise ModelFault(f"{times} things stand in row {row + 1}, column {column + 1}", where=template.path)


def _head(page: Page, template: Template) -> None:
    """What a sheet comes to, and the chart beside it."""
    page.heading("")
    beside = [block for block in template.blocks if block.beside]
    charts_beside(page, beside, page.row, COMES_TO_HEIGHT * max(len(template.comes_to), LEAST_ROWS))
    first = page.row
    comes_to(page, template.comes_to)
    if beside:
        page.row = max(page.row, first + 1 + LEAST_ROWS)


LEAST_ROWS = 7
"""Rows that a chart needs beside it."""


def _title(page: Page, template: Template, title_line: str, verdict_line: str) -> None:
    """Two rows that stay on the screen and stand on every printed side, and the answer of the sheet under them.

    On the first sheet question and answer keep to the columns that a phone shows.
    """
    front, side, end = template.kind == "start", page.sheet.grid.side, page.sheet.grid.printed
    title, verdict = (Shown(page.plan.line(name, template.path), ()) for name in (title_line, verdict_line))
    page.words(0, 0, template.title, "title")
    page.put(0, side, title, "farm", across=end - side)
    page.put(1, 0, Text(template.question), "question", across=HOW if front else side)
    if front:
        page.put(1, HOW, Text(""), "question", across=side - HOW)
    page.put(1, side, verdict, "verdict", across=end - side)
    page.grow(0, TITLE_HEIGHT)
    page.row = 2
    if template.answer:
        answer = page.plan.line(template.answer, template.path)
        page.put(page.row, 0, Worked(answer, ()), "answer", across=HOW if front else end)
        page.plan.settle(answer, Home(page.sheet.name, page.row, 0, label_column=0))
        page.name(workbook_name(answer), page.row, 0)
        page.grow(page.row, FRONT_ANSWER_HEIGHT if front else ANSWER_HEIGHT)
        page.row += 1


def _widths(plan: Plan, template: Template) -> list[int]:
    if template.kind in GRIDS:
        return list(GRIDS[template.kind].widths)
    if template.kind == "inputs":
        return list(LISTS if any(block.kind == "input_table" for block in template.blocks) else INPUTS)
    across = [plan.sizes[plan.axis(block.axis, template.path)] for block in template.blocks if block.kind == "across"]
    return [*WORKED, *[EXTRA_WIDTH] * max(0, max(across, default=0) + VALUE + 2 - len(WORKED))]


def _links(plan: Plan, sheet: Sheet, read: Counter[tuple[str, str]]) -> None:
    """The way on, in the screen margin: the sheets beside this one, those it rests on, those that rest on it."""
    names = [name for name, _, _ in plan.sheets]
    at = names.index(sheet.name)
    ways = [(f"\u2039 {names[0]}", names[0])] if at else []
    ways += [(f"next: {names[at + 1]} \u203a", names[at + 1])] if at + 1 < len(names) else []
    sources = Counter({source: times for (reader, source), times in read.items() if reader == sheet.name})
    readers = Counter({reader: times for (reader, source), times in read.items() if source == sheet.name})
    ways += [(f"comes from: {name}", name) for name, _ in sources.most_common(NEIGHBOURS)]
    ways += [(f"goes to: {name}", name) for name, _ in readers.most_common(NEIGHBOURS)]
    for (row, column), (words, name) in zip(_free(sheet), ways, strict=False):
        sheet.cells.append(Cell(row, column, Link(words, name), "link"))


def _free(sheet: Sheet) -> Iterator[tuple[int, int]]:
    """Where links may stand: down the screen margin, or, on a sheet that runs on to the right, beside its title."""
    margin = len(INPUTS) if sheet.kind == "inputs" else sheet.grid.printed
    if sheet.grid.wide:
        return ((row, margin + column) for column in range(0, 20, 2) for row in range(2))
    taken = {cell.row for cell in sheet.cells if cell.column == margin}
    return ((row, margin) for row in range(200) if row not in taken)


def _read_between(plan: Plan) -> Counter[tuple[str, str]]:
    """How many lines of another sheet each sheet reads: by the sheet that reads and the one that is read."""
    found: Counter[tuple[str, str]] = Counter()
    for line, root in plan.roots.items():
        reader = plan.homes[line].sheet
        for source in sources_of(root):
            home = plan.homes.get(source)
            if home is not None and home.sheet != reader:
                found[reader, home.sheet] += 1
    return found


def _all_placed(plan: Plan) -> None:
    """Rule: a line has one home; an input one cell."""
    missing = [f"{line.name} ({line.where})" for line in plan.roots if line not in plan.homes]
    missing += [bound.cell.name for bound in plan.model.inputs.values() if bound.cell not in plan.homes]
    if missing:
        raise ModelFault(f"{len(missing)} lines or inputs are placed on no sheet", why="\n".join(missing))
