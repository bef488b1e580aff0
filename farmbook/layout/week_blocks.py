"""Weekly workings: all lines over the weeks side by side in one table, as wide as it needs to be."""

from __future__ import annotations

from collections.abc import Sequence

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Home, Text
from farmbook.layout.grid import WEEK_WIDTH
from farmbook.layout.list_blocks import entries
from farmbook.layout.month_blocks import head_axis, lines_of
from farmbook.layout.page import Page
from farmbook.layout.table_blocks import grid_cells
from farmbook.layout.template import Block

__all__ = ["week_heads", "weeks_block"]

TITLE, NUMBERS, LABELS, MEMBERS, UNITS, BEFORE, FIRST = range(7)
"""Rows of the table, from its first one down; in the one before the first week stand opening values."""


def week_heads(page: Page, heads: Sequence[str]) -> None:
    """Lines over the weeks in the first columns, which stay on the screen; charts name weeks by the last of them."""
    lines = entries(page.plan, Block("weeks", lines=tuple(heads)), page.where)
    axis = head_axis(page, lines, "down")
    page.over, page.top = axis, page.row
    page.put(page.top + BEFORE, 0, Text("before"), "column_head")
    for line, home in lines:
        column = page.next_column
        _column(page, line, home)
        page.plan.call(axis, line, (page.sheet.name, page.top + FIRST, column), home=home)
        page.columns += [line] if home else []
    page.sheet.frozen = (page.top + BEFORE, len(lines))
    page.row = page.top + FIRST + page.plan.sizes[axis]


def weeks_block(page: Page, block: Block) -> None:
    """Lines over the weeks, right of those before; one with another list takes a column for each of its members."""
    page.words(page.top + TITLE, page.next_column, block.title, "beside")
    for line, home in lines_of(page, block):
        axes = ordered_axes(line.axes)
        if axes[-1:] != (page.over,) or len(axes) > 2:
            raise ModelFault(f"`{line.name}` does not run over the weeks of its sheet", where=page.where)
        _column(page, line, home)
        if home and not line.case:
            page.columns.append(line)


def _column(page: Page, line: Line, home: bool) -> None:
    """One line: its number, label, members and unit, and its cells below them."""
    axes = ordered_axes(line.axes)
    counts = tuple(page.plan.sizes[axis] for axis in axes)
    width = counts[0] if len(axes) > 1 else 1
    column, top = page.next_column, page.top
    page.next_column += width
    page.sheet.widths += [WEEK_WIDTH] * max(0, page.next_column - len(page.sheet.widths))
    place = page.plan.places.get(line.name)
    number = str(place.number) if place is not None and place.sheet == page.sheet.name else ""
    page.put(top + NUMBERS, column, Text(number), "column_number", across=width)
    page.put(top + LABELS, column, Text(page.label(line.head)), "column_head_right", across=width)
    turned = _turned(axes)
    if len(axes) > 1:
        page.member_labels(axes[0], top + MEMBERS, column, "column_head_right", turned=bool(turned))
    for each in range(column, column + width):
        page.put(top + UNITS, each, Text(page.plan.unit_words(line.unit)), "column_head_right")
    grid_cells(page, line, home, Home(page.sheet.name, top + FIRST, column, axes, counts, 0, turned))


def _turned(axes: Sequence[Axis]) -> tuple[Axis, ...]:
    """Of two lists that usually run down, the first runs across here."""
    return tuple(axis for axis in axes[:-1] if axis.direction == "down")
