"""Blocks of worked lines with lists: tables whose members run down, rows whose members run across, tables of two lists."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import replace

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Home, Shown, Text, Worked
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, NUMBER, VALUE
from farmbook.layout.list_blocks import WORDS_COLUMNS, Entry, entries, how, worked_out
from farmbook.layout.page import Page
from farmbook.layout.template import PLAIN, Block

__all__ = ["across_block", "columns_explained", "grid_cells", "matrix_block", "table_block"]

COLUMNS = HOW + HOW_COLUMNS - VALUE
"""Columns of a table, the names of its rows aside."""


def table_block(page: Page, block: Block) -> None:
    """One row for each member of an axis that runs down, one column for each line.

    A line that has another list too, which runs across, takes a column for each of its members; any other so many as `spans`
    says. Where only the `first` rows are to print, the print ends with them.
    """
    plan = page.plan
    axis = plan.axis(block.axis, page.where)
    lines = entries(plan, block, page.where)
    spans = block.spans or (1,) * len(lines)
    grids = _columns(page, axis, lines, spans)
    _fits(page, block, grids[-1].column + max(_width(grids[-1]), spans[-1]) - VALUE)
    page.heading(block.title)
    members = any(len(grid.axes) > 1 for grid in grids)
    _head(page, lines[0][0], axis.label.capitalize())
    for (line, _), grid, span in zip(lines, grids, spans, strict=True):
        _table_head(page, line, grid, members, span)
    first = page.row + (3 if members else 2)
    if any(plan.opening(line) for line, _ in lines):
        page.words(first, LABEL, "before the first", "unit")
        first += 1
    page.member_labels(axis, first, LABEL, "label")
    for (line, home), grid, span in zip(lines, grids, spans, strict=True):
        grid_cells(page, line, home, replace(grid, row=first), across=span)
    page.row = first + plan.sizes[axis]
    if block.first and block.first < plan.sizes[axis]:
        page.sheet.printed_rows = first + block.first
    page.columns += [line for line, home in lines if home]


def _head(page: Page, line: Line, words: str) -> None:
    """The number of a table on its sheet, and what its rows are."""
    page.put(page.row, LABEL, Text(words), "column_head")
    place = page.plan.places.get(line.name)
    if place is not None and place.sheet == page.sheet.name:
        page.put(page.row, NUMBER, Text(str(place.number)), "number")


def _columns(page: Page, axis: Axis, lines: Sequence[Entry], spans: Sequence[int]) -> list[Home]:
    """Where in a table each line stands, side by side; its row is still open."""
    grids: list[Home] = []
    column = VALUE
    for (line, _), span in zip(lines, spans, strict=True):
        axes = ordered_axes(line.axes)
        across = [each.direction for each in axes[:-1]]
        if axes[-1:] != (axis,) or axis.direction != "down" or across not in ([], ["across"]):
            what = f"`{line.name}` does not run down over {axis.label}, alone or with one list that runs across"
            raise ModelFault(what, where=page.where)
        counts = tuple(page.plan.sizes[each] for each in axes)
        grids.append(Home(page.sheet.name, 0, column, axes, counts, LABEL))
        column += max(_width(grids[-1]), span)
    return grids


def _width(grid: Home) -> int:
    """Columns that a line takes in a table."""
    return grid.counts[0] if len(grid.axes) > 1 else 1


def _table_head(page: Page, line: Line, grid: Home, members: bool, span: int) -> None:
    """Label and unit above a line's columns, and between them the names of the members that stand side by side."""
    width = _width(grid)
    look = "column_head_text" if span > 1 else "column_head_right"
    page.put(page.row, grid.column, Text(page.label(line.head)), look, across=max(width, span))
    if len(grid.axes) > 1:
        page.member_labels(grid.axes[0], page.row + 1, grid.column, "column_head_right")
    for column in range(grid.column, grid.column + width):
        unit_row = page.row + (2 if members else 1)
        page.put(unit_row, column, Text(page.plan.unit_words(line.unit)), look, across=span)


def grid_cells(
    page: Page,
    line: Line,
    home: bool,
    grid: Home,
    *,
    form: str = "",
    look: str = "",
    across: int = 1,
    before: bool = False,
) -> None:
    """The cells of a line over the lists of a grid, whose corner is its first one; before it stand opening values.

    Of a line that is repeated they stand only where there is room `before` it.
    """
    opening = (home or before) and page.plan.opening(line)
    form = form or page.plan.line_format(line, table=True)
    for index in _indices(grid, opening=opening):
        _grid_cell(page, line, grid, index, form, home=home, look=look, across=across)
    if home:
        page.plan.settle(line, grid)


def across_block(page: Page, block: Block) -> None:
    """One column for each member of an axis that runs across, one row for each line; its words stand below where it is plain."""
    plan = page.plan
    axis = plan.axis(block.axis, page.where)
    lines = entries(plan, block, page.where)
    for line, _ in lines:
        if tuple(line.axes) != (axis,) or axis.direction != "across":
            raise ModelFault(f"`{line.name}` does not run across over {axis.label} alone", where=page.where)
    page.heading(block.title)
    opening = axis.ordered and any(plan.opening(line) for line, _ in lines)
    first = VALUE + (1 if opening else 0)
    unit_column = first + plan.sizes[axis]
    words_column = HOW + HOW_COLUMNS - WORDS_COLUMNS
    wide = block.look != PLAIN and unit_column < words_column
    page.put(page.row, LABEL, Text(""), "column_head")
    if opening:
        page.put(page.row, VALUE, Text("before"), "column_head_right")
    page.member_labels(axis, page.row, first, "column_head_right")
    page.row += 1
    for line, home in lines:
        page.number(page.row, line.name)
        page.put(page.row, LABEL, Text(page.label(line.head)), "label")
        grid = Home(page.sheet.name, page.row, first, (axis,), (plan.sizes[axis],), LABEL)
        grid_cells(page, line, home, grid, look="worked_words" if line.is_text else "", before=opening)
        rest = max(1, (words_column if wide else HOW + HOW_COLUMNS) - unit_column)
        page.put(page.row, unit_column, Text(plan.unit_words(line.unit)), "unit", across=rest)
        if wide:
            worked_out(page, words_column, line, home=home)
        elif home:
            page.columns.append(line)
        if unit_column < NAME:
            page.words(page.row, NAME, workbook_name(line), "name")
        page.row += 1


def matrix_block(page: Page, block: Block) -> None:
    """One line with two axes: one runs down, the other across. Of two that usually run down, the first is turned."""
    plan = page.plan
    for line, home in entries(plan, block, page.where):
        axes = ordered_axes(line.axes)
        if len(axes) != 2:
            raise ModelFault(f"`{line.name}` does not have two lists", where=page.where)
        turned = axes[:1] if axes[0].direction == axes[1].direction else ()
        opening = plan.opening(line)
        counts = tuple(plan.sizes[axis] for axis in axes)
        page.heading(", ".join(filter(None, [line.head, plan.unit_words(line.unit)])))
        grid = Home(page.sheet.name, page.row + 1, VALUE, axes, counts, LABEL, turned)
        before = grid.way(axes[-1]) if opening else ""
        grid = replace(grid, row=grid.row + (before == "down"), column=grid.column + (before == "across"))
        _grid_heads(page, line, grid, before)
        grid_cells(page, line, home, grid)
        page.row = grid.row + next(plan.sizes[axis] for axis in axes if grid.way(axis) == "down")
        page.columns += [line] if home else []


def _grid_heads(page: Page, line: Line, grid: Home, before: str) -> None:
    """The names of the members of a table of two lists; `before` is the way to the opening values."""
    for axis in grid.axes:
        if grid.way(axis) == "down":
            _head(page, line, axis.label.capitalize())
            page.member_labels(axis, grid.row, LABEL, "label", turned=axis in grid.turned)
        else:
            page.member_labels(axis, page.row, grid.column, "column_head_right", turned=axis in grid.turned)
    if before == "down":
        page.words(grid.row - 1, LABEL, "before the first", "unit")
    elif before == "across":
        page.put(page.row, VALUE, Text("before"), "column_head_right")


def _indices(grid: Home, *, opening: bool) -> Iterator[tuple[int, ...]]:
    """The members of every cell; -1 on the last axis is the opening value."""
    *others, last = grid.counts
    return itertools.product(*map(range, others), range(-1 if opening else 0, last))


def _grid_cell(
    page: Page, line: Line, grid: Home, index: tuple[int, ...], form: str, *, home: bool, look: str, across: int
) -> None:
    opening = index[-1] < 0
    at = grid.place(dict(zip(grid.axes, index, strict=True)))
    look = "opening" if opening else look or "worked" + ("_text" if line.is_text else "")
    content = Worked(line, index, opening=opening) if home else Shown(line, index, opening=opening)
    page.put(*at, content, look, form=form, across=across)


def columns_explained(page: Page) -> None:
    """How each column of the tables above is worked out, with its name; and each line that paper has no room to tell whole."""
    if not page.columns:
        return
    page.heading("In full: how columns and lines are worked out")
    grid = page.sheet.grid
    for line in page.columns:
        page.number(page.row, line.name)
        page.put(page.row, LABEL, Text(line.head), "label", across=grid.told - LABEL)
        words = how(page.plan, line, home=True)
        page.ruled(page.row, grid.told, words, "words", across=grid.ends - grid.told)
        page.words(page.row, grid.ends, workbook_name(line), "name")
        page.row += 1


def _fits(page: Page, block: Block, columns: int) -> None:
    if columns > COLUMNS:
        raise ModelFault(f"table `{block.title}` has {columns} columns; {COLUMNS} fit", where=page.where)
