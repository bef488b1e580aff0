"""Blocks of the first sheet, whose columns A to D read alone on a phone: the answers in figures beside a chart, and in words."""

from __future__ import annotations

from farmbook.expr.sentences import longest
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Home, Link, Shown, Text, Worked
from farmbook.layout.chart_blocks import chart_at
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, NUMBER, UNIT, VALUE
from farmbook.layout.list_blocks import entries
from farmbook.layout.page import Page
from farmbook.layout.template import PLAIN, Block

__all__ = ["FRONT_ANSWER_HEIGHT", "front_block", "says_block"]

FRONT_ANSWER_HEIGHT, FIGURE_HEIGHT, SAID_HEIGHT = 79, 24, 24
"""Room for a band of four lines, a figure and a sentence of one."""


def front_block(page: Page, block: Block) -> None:
    """Figures, each with a link to its sheet; the chart stands right of them, its caption right of the answer."""
    page.put(page.row - 1, HOW, Text(block.title), "caption", across=HOW_COLUMNS)
    chart_at(page, block, page.row, FIGURE_HEIGHT * len(block.rows))
    for label, name in block.rows:
        line = page.plan.line(name.removeprefix("show:"), page.where)
        page.ruled(page.row, NUMBER, "", "number")
        page.put(page.row, LABEL, Link(label, page.plan.lives_on[line.name]), "front_link")
        page.put(page.row, VALUE, Shown(line, ()), "headline", form=page.plan.line_format(line))
        page.put(page.row, UNIT, Text(page.plan.unit_after(line.unit)), "unit")
        page.grow(page.row, FIGURE_HEIGHT)
        page.row += 1


def says_block(page: Page, block: Block) -> None:
    """Sentences, one a row, and right of each what to know of it; that stands below where they are plain, across the sheet."""
    plain = block.look == PLAIN
    across = HOW + HOW_COLUMNS if plain else HOW
    page.heading(block.title)
    for line, home in entries(page.plan, block, page.where):
        page.put(page.row, NUMBER, Worked(line, ()) if home else Shown(line, ()), "said", across=across)
        if not plain:
            page.ruled(page.row, HOW, line.note, "unit", across=HOW_COLUMNS)
        elif home:
            page.columns.append(line)
        page.words(page.row, NAME, workbook_name(line), "name")
        if home:
            page.plan.settle(line, Home(page.sheet.name, page.row, NUMBER, label_column=NUMBER))
            page.name(workbook_name(line), page.row, NUMBER)
        page.grow(page.row, SAID_HEIGHT)
        page.room(page.row, NUMBER, longest(line.expr), "said", across=across)
        page.row += 1
