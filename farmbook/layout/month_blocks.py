"""Monthly workings: every sheet of them has the same month in the same column, under heads that stay on the screen."""

from __future__ import annotations

from collections.abc import Sequence

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Home, Shown, Text, Worked
from farmbook.layout.forms import MONTH
from farmbook.layout.grid import BEFORE, FIRST_MONTH, LABEL, MONTH_UNIT, MONTH_WIDTH
from farmbook.layout.list_blocks import Entry, entries
from farmbook.layout.page import Page
from farmbook.layout.table_blocks import grid_cells
from farmbook.layout.template import Block

__all__ = ["head_axis", "lines_of", "month_heads", "months_block"]


def month_heads(page: Page, heads: Sequence[str]) -> None:
    """Lines over the months at the head of a sheet; charts name months by the last of them."""
    lines = entries(page.plan, Block("months", lines=tuple(heads)), page.where)
    axis = head_axis(page, lines, "across")
    page.sheet.widths += [MONTH_WIDTH] * max(0, FIRST_MONTH + page.plan.sizes[axis] - len(page.sheet.widths))
    for line, home in lines:
        _label(page, line, "column_head", unit="column_head", words=page.plan.unit_words(line.unit))
        _cells(page, line, home, (axis,), look="month_head", before="before" if line is lines[-1][0] else "")
        page.plan.call(axis, line, (page.sheet.name, page.row, FIRST_MONTH), home=home)
        page.columns += [line] if home else []
        page.row += 1
    page.over = axis
    page.sheet.frozen = (page.row, MONTH_UNIT)


def head_axis(page: Page, lines: Sequence[Entry], direction: str) -> Axis:
    """The one list over which all heads of a sheet run, this way."""
    found = {line.axes for line, _ in lines}
    if len(found) > 1 or any(len(axes) != 1 or axes[0].direction != direction for axes in found):
        raise ModelFault(f"the heads do not run {direction} over one list", where=page.where)
    ((axis,),) = found
    return axis


def months_block(page: Page, block: Block) -> None:
    """One row for each line over the months; of a line with another list, one for each of its members under its label.

    A single value stands where other lines have what was before the first month.
    """
    page.heading(block.title)
    for line, home in lines_of(page, block):
        axes = ordered_axes(line.axes)
        if axes and (axes[-1:] != (page.over,) or len(axes) > 2):
            raise ModelFault(f"`{line.name}` does not run over the months of its sheet", where=page.where)
        if not axes:
            _single(page, line, home)
        else:
            _rows(page, line, home, axes)
        if home and not line.case:
            page.columns.append(line)


def lines_of(page: Page, block: Block) -> list[Entry]:
    """The lines of a block; or of a case, those over the list of the sheet that have no home yet."""
    if not block.of:
        return entries(page.plan, block, page.where)
    homes = page.plan.homes
    found = [line for line in page.plan.roots if line.case == block.of and line not in homes]
    over = [(line, True) for line in found if line.axes and ordered_axes(line.axes)[-1] == page.over]
    if not over:
        raise ModelFault(f"there is no case called `{block.of}` with lines to place here", where=page.where)
    return over


def _single(page: Page, line: Line, home: bool) -> None:
    _label(page, line, "label", words=page.plan.unit_after(line.unit))
    content = Worked(line, ()) if home else Shown(line, ())
    page.put(page.row, BEFORE, content, "worked", form=page.plan.line_format(line))
    if home:
        page.plan.settle(line, Home(page.sheet.name, page.row, BEFORE, label_column=LABEL))
        page.name(workbook_name(line), page.row, BEFORE)
    page.row += 1


def _rows(page: Page, line: Line, home: bool, axes: tuple[Axis, ...]) -> None:
    unit = page.plan.unit_words(line.unit)
    _label(page, line, "label_bold" if len(axes) > 1 else "label", words="" if len(axes) > 1 else unit)
    if len(axes) > 1:
        page.row += 1
        for row in range(page.row, page.row + page.plan.sizes[axes[0]]):
            page.put(row, MONTH_UNIT, Text(unit), "unit")
        page.member_labels(axes[0], page.row, LABEL, "member", turned=axes[0].direction == "across")
    _cells(page, line, home, axes)
    page.row += page.plan.sizes[axes[0]] if len(axes) > 1 else 1


def _label(page: Page, line: Line, look: str, *, words: str, unit: str = "unit") -> None:
    """Number, label and the words of the unit of a row."""
    page.number(page.row, line.name)
    page.put(page.row, LABEL, Text(page.label(line.head)), look)
    page.put(page.row, MONTH_UNIT, Text(words), unit)


def _cells(page: Page, line: Line, home: bool, axes: tuple[Axis, ...], *, look: str = "", before: str = "") -> None:
    """The months of a line, and before the first what it opens with, or these words."""
    counts = tuple(page.plan.sizes[axis] for axis in axes)
    turned = axes[:-1] if axes[0].direction == "across" else ()
    grid = Home(page.sheet.name, page.row, FIRST_MONTH, axes, counts, LABEL, turned)
    if not (home and page.plan.opening(line)):
        for row in range(page.row, page.row + (counts[0] if len(axes) > 1 else 1)):
            page.ruled(row, BEFORE, before, look or "opening")
    grid_cells(page, line, home, grid, form=MONTH if line.unit.date else "", look=look)
