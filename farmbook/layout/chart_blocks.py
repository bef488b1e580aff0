"""Charts: lines over one axis, drawn; the figures stand in a table above."""

from __future__ import annotations

from farmbook.errors import ModelFault
from farmbook.layout.book import Chart
from farmbook.layout.page import Page
from farmbook.layout.template import Block

__all__ = ["chart_block"]

CHART_ROWS = 19


def chart_block(page: Page, block: Block) -> None:
    """A chart of lines over one axis."""
    plan = page.plan
    axis = plan.axis(block.axis, page.where)
    series = tuple((one["name"], plan.line(one["line"], page.where)) for one in block.series)
    for _, line in series:
        if tuple(line.axes) != (axis,):
            raise ModelFault(
                f"`{line.name}` does not run over {axis.label} alone; it cannot be drawn so", where=page.where
            )
        if plan.words_instead(line):
            raise ModelFault(f"`{line.name}` may hold words in place of a number; it cannot be drawn", where=page.where)
    page.heading(block.title)
    page.sheet.charts.append(Chart(page.row, block.title, block.axis_title, block.value_title, axis, series))
    page.row += CHART_ROWS
