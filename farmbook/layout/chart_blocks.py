"""Charts: lines over one axis, or single lines as bars. The words above a chart say what it shows; figures stand below."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Chart, Mark, Series, Shown, Text
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, ROW_HEIGHT, UNIT, VALUE, WORKED
from farmbook.layout.page import Page
from farmbook.layout.template import Block

__all__ = ["chart_at", "chart_block", "chart_figures", "charts_beside"]

WIDTH, HEIGHT, LOW = 980, 240, 150
"""Pixels; a chart over the months leaves room for the first year on the same side."""
COLUMN_WIDTH = WORKED[HOW]


def chart_block(page: Page, block: Block) -> None:
    """A chart across the sheet."""
    if block.beside:
        return
    page.heading(_caption(page, block))
    height = LOW if page.sheet.kind == "years" else HEIGHT
    _drawn(page, block, page.row, LABEL, WIDTH, height)
    page.row += height // ROW_HEIGHT + 1


def charts_beside(page: Page, blocks: Sequence[Block], row: int, height: int) -> None:
    """Charts right of what a sheet comes to, as wide as there is room for beside one another, the words of each above it."""
    across = HOW_COLUMNS // max(1, len(blocks))
    for place, block in enumerate(blocks):
        column = HOW + place * across
        page.put(row, column, Text(_caption(page, block)), "caption", across=across)
        _drawn(page, block, row + 1, column, COLUMN_WIDTH * across, height)


def chart_at(page: Page, block: Block, row: int, height: int) -> None:
    """A chart in the right half of a sheet from a row down."""
    _drawn(page, block, row, HOW, COLUMN_WIDTH * HOW_COLUMNS, height)


def _drawn(page: Page, block: Block, row: int, column: int, width: int, height: int) -> None:
    """Draw lines over an axis now; single lines wait until their figures have a place."""
    series = tuple(_series(page, block))
    kind = "bars" if block.bars else "curves" if block.across else block.form
    axis = page.plan.axis(block.axis, page.where) if block.axis else None
    across = page.plan.line(block.across, page.where) if block.across else None
    marks = tuple(
        Mark(name, page.plan.line(along, page.where), page.plan.line(up, page.where)) for name, along, up in block.marks
    )
    lowest = page.plan.line(block.lowest, page.where) if block.lowest else None
    chart = Chart(
        row, column, width, height, kind, _caption(page, block), series, axis, 0, across, block.axis_title, marks,
        signed=block.signed, lowest=lowest, start=block.start,
    )  # fmt: skip
    if axis is None:
        page.pending.append(chart)
        return
    for line in (*(each.line for each in series), *([lowest] if lowest is not None else [])):
        if ordered_axes(line.axes)[-1:] != (axis,):
            raise ModelFault(f"`{line.name}` does not run over {axis.label}; it cannot be drawn so", where=page.where)
    page.sheet.charts.append(chart)


def _named(block: Block) -> list[tuple[str, str]]:
    """What each series is called, and its line."""
    return [(one["name"], one["line"]) for one in block.series] or [(label, name) for label, name in block.bars]


def _caption(page: Page, block: Block) -> str:
    """The words above a chart, `{unit}` in them being that of its figures in this book."""
    _, first = _named(block)[0]
    return block.title.replace("{unit}", page.plan.unit_after(page.plan.line(first, page.where).unit))


def _series(page: Page, block: Block) -> Iterator[Series]:
    for name, of in _named(block):
        line = page.plan.line(of, page.where)
        if page.plan.words_instead(line):
            raise ModelFault(f"`{line.name}` may hold words in place of a number; it cannot be drawn", where=page.where)
        yield from _members(page, name, line)


def _members(page: Page, name: str, line: Line) -> Iterator[Series]:
    """A line of two lists is drawn once for each member of the first, by the member's name."""
    axes = ordered_axes(line.axes)
    if len(axes) < 2:
        yield Series(name, line)
        return
    named = page.plan.model.axes.get(axes[0])
    for member in range(page.plan.sizes[axes[0]]):
        if named is None:
            yield Series(axes[0].called(member).replace("_", " "), line, member)
        else:
            yield Series("", line, member, named.label)


def chart_figures(page: Page) -> None:
    """The figures that charts of single lines are drawn from, under what is printed."""
    for chart in page.pending:
        page.heading(f"Figures of the chart: {chart.words}")
        first = page.row
        for each in chart.series:
            page.put(page.row, LABEL, Text(each.name), "label")
            page.put(page.row, VALUE, Shown(each.line, ()), "worked", form=page.plan.line_format(each.line))
            page.put(page.row, UNIT, Text(page.plan.unit_after(each.line.unit)), "unit")
            page.row += 1
        page.sheet.charts.append(replace_figures(chart, first))
    page.pending.clear()


def replace_figures(chart: Chart, first: int) -> Chart:
    """The chart with the row of its first figure."""
    return Chart(**{**vars(chart), "figures": first})
