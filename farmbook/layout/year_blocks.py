"""Sheets for reading months: the years of a plan one under another, twelve months and the year side by side."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Content, Lowest, Shown, Summed, Text
from farmbook.layout.forms import MONTH
from farmbook.layout.grid import HEADING_HEIGHT, LABEL, MONTHS_A_YEAR, VALUE, YEAR
from farmbook.layout.list_blocks import entries, how
from farmbook.layout.page import Page
from farmbook.layout.template import Block

__all__ = ["years_block"]


@dataclass(frozen=True)
class _Row:
    """One row of a year: the label, the line, and of a line with two lists the member of the first; or what `heads` these."""

    label: Content
    line: Line
    member: tuple[int, ...] = ()
    heads: bool = False


def years_block(page: Page, block: Block) -> None:
    """For each year of the plan the same rows: the months repeat the workings, the year is what its row says."""
    head = page.plan.line(block.heads[0].removeprefix("show:"), page.where)
    axis = _axis(page, head)
    rows = list(_rows(page, block, axis))
    _known(page, block, rows)
    for year in range(page.plan.sizes[axis] // MONTHS_A_YEAR):
        _heads(page, block, head, year)
        for row in rows:
            _row(page, block, row, year)
            page.row += 1


def _axis(page: Page, head: Line) -> Axis:
    axes = head.axes
    if len(axes) != 1 or axes[0].direction != "across" or page.plan.sizes[axes[0]] % MONTHS_A_YEAR:
        raise ModelFault(f"`{head.name}` does not run across over the months of whole years", where=page.where)
    return axes[0]


def _rows(page: Page, block: Block, axis: Axis) -> Iterator[_Row]:
    for line, home in entries(page.plan, block, page.where):
        axes = ordered_axes(line.axes)
        if home:
            raise ModelFault(
                f"`{line.name}` cannot live where years are read; write `show:` before it", where=page.where
            )
        if axes[-1:] != (axis,) or len(axes) > 2:
            raise ModelFault(f"`{line.name}` does not run over the {axis.label}s", where=page.where)
        yield _Row(Text(page.label(line.head)), line, heads=len(axes) > 1)
        if len(axes) > 1:
            yield from (_Row(label, line, (place,)) for place, label in enumerate(page.member_names(axes[0])))


def _known(page: Page, block: Block, rows: list[_Row]) -> None:
    """What is said of rows is said of rows that are there."""
    names = {row.line.name for row in rows}
    for name in (*block.levels, *block.rates, *block.totals, *([block.lowest] if block.lowest else [])):
        if name not in names:
            raise ModelFault(f"`{name}` is no row of `{block.title}`", where=page.where)


def _heads(page: Page, block: Block, head: Line, year: int) -> None:
    unit = page.plan.unit_words(page.plan.line(block.lines[0].removeprefix("show:"), page.where).unit)
    page.heading("")
    title = block.title.replace("{year}", str(year + 1)).replace("{unit}", unit)
    page.put(page.row, 0, Text(title), "band_title")
    page.put(page.row, LABEL, Text(""), "band_title")
    for month in range(MONTHS_A_YEAR):
        content = Shown(head, (year * MONTHS_A_YEAR + month,))
        page.put(page.row, VALUE + month, content, "band_head", form=MONTH)
    page.put(page.row, YEAR, Text(f"year {year + 1}"), "band_year")
    page.grow(page.row, HEADING_HEIGHT)
    page.row += 1


def _row(page: Page, block: Block, row: _Row, year: int) -> None:
    line, last = row.line, VALUE + MONTHS_A_YEAR - 1
    total = "_total" if line.name in block.totals else ""
    form = page.plan.line_format(line, table=True)
    months = tuple((*row.member, year * MONTHS_A_YEAR + month) for month in range(MONTHS_A_YEAR))
    page.ruled(page.row, 0, "", f"month_label{total}")
    page.put(page.row, LABEL, row.label, "month_member" if row.member else f"month_label{total}")
    page.words(page.row, YEAR + 1, how(page.plan, line, home=False), "name")
    for column, index in enumerate(months, VALUE):
        page.put(page.row, column, Text("") if row.heads else Shown(line, index), f"month{total}", form=form)
    whole: Content = Summed(line, months, (page.row, VALUE), (page.row, last))
    if line.name in block.levels:
        whole = Shown(line, months[-1])
    if line.name in block.rates or row.heads:
        whole = Text("")
    page.put(page.row, YEAR, whole, f"year{total}", form=form)
    if line.name == block.lowest:
        page.sheet.lowest.append(Lowest(page.row, VALUE, last, line))
