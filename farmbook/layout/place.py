"""Placement: templates and a model become sheets of cells; every line and input is placed exactly once, or the build stops."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from farmbook.errors import ModelFault
from farmbook.layout.book import Book, Sheet, Shown
from farmbook.layout.case_blocks import case_block
from farmbook.layout.input_blocks import INPUT_WIDTHS, TABLE_WIDTHS, input_table_block, inputs_block
from farmbook.layout.page import WORKED_WIDTHS, Page, Plan
from farmbook.layout.reference_blocks import (
    cautions_block,
    checks_block,
    constants_block,
    contents_block,
    legend_block,
    sources_block,
    stamp_block,
    text_block,
)
from farmbook.layout.template import Block, Template
from farmbook.layout.worked_blocks import (
    across_block,
    chart_block,
    compare_block,
    list_block,
    matrix_block,
    table_block,
)

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
    "contents": contents_block,
    "constants": constants_block,
    "sources": sources_block,
    "legend": legend_block,
    "stamp": stamp_block,
    "chart": chart_block,
    "compare": compare_block,
    "case": case_block,
}


EXTRA_WIDTH = 12.5
"""Columns past the common grid, for lists that run far across."""


def place(plan: Plan, templates: Sequence[Template], *, title_line: str, verdict_line: str) -> Book:
    """Lay out every sheet. `title_line` and `verdict_line` name the lines shown at the head of each sheet.

    Raises ModelFault for lines or inputs that no template places, and for names that no section declares.
    """
    plan.sheets = [(template.sheet, template.title, template.question) for template in templates]
    plan.lives_on = {name: template.sheet for template in templates for name in template.homes}
    sheets = [_sheet(plan, template, title_line, verdict_line) for template in templates]
    _all_placed(plan)
    return Book(sheets, plan.homes, plan.names, plan.constants)


def _sheet(plan: Plan, template: Template, title_line: str, verdict_line: str) -> Sheet:
    widths = WORKED_WIDTHS
    if template.kind == "inputs":
        tables = any(block.kind == "input_table" for block in template.blocks)
        widths = TABLE_WIDTHS if tables else INPUT_WIDTHS
    wide = max(
        (plan.sizes[plan.axis(block.axis, template.path)] for block in template.blocks if block.kind == "across"),
        default=0,
    )
    widths = [*widths, *[EXTRA_WIDTH] * max(0, wide + 3 - len(widths))]
    sheet = Sheet(template.sheet, template.title, template.question, template.kind, list(widths))
    page = Page(sheet, plan, template.path)
    page.words(0, 0, template.title, "title")
    page.put(1, 0, Shown(plan.line(title_line, template.path), ()), "farm")
    page.put(1, 1, Shown(plan.line(verdict_line, template.path), ()), "verdict", across=6)
    page.words(2, 0, template.question, "question")
    page.grow(0, 24)
    for block in template.blocks:
        try:
            BLOCKS[block.kind](page, block)
        except ModelFault as fault:
            raise ModelFault(fault.what, where=fault.where or template.path, why=fault.why) from None
    return sheet


def _all_placed(plan: Plan) -> None:
    """Rule: a line has one home; an input one cell."""
    missing = [f"{line.name} ({line.where})" for line in plan.roots if line not in plan.homes]
    missing += [bound.cell.name for bound in plan.model.inputs.values() if bound.cell not in plan.homes]
    if missing:
        raise ModelFault(f"{len(missing)} lines or inputs are placed on no sheet", why="\n".join(missing))
