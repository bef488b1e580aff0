"""Blocks of worked lines: lists, tables whose members run down, rows whose members run across, and tables of two lists."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import replace

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Choose, Line
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.words import sentence_of
from farmbook.layout.book import Chart, Home, Shown, Text, Worked
from farmbook.layout.line_numbers import numbered_way
from farmbook.layout.looks import LOOKS
from farmbook.layout.page import HOW, LABEL, NAME, NOTE, UNIT, VALUE, Page, Plan, needed_height
from farmbook.layout.template import Block

__all__ = ["across_block", "chart_block", "compare_block", "list_block", "matrix_block", "table_block"]

Entry = tuple[Line, bool]
"""A line, and whether this is its home (else it is only repeated)."""


def entries(plan: Plan, block: Block, where: str) -> list[Entry]:
    """The lines of a block; `show:` before a name repeats a line that lives elsewhere."""
    found = []
    for name in block.lines:
        shown = name.startswith("show:")
        found.append((plan.line(name.removeprefix("show:"), where), not shown))
    return found


def list_block(page: Page, block: Block) -> None:
    """Single-valued lines, one a row."""
    page.heading(block.title)
    heads = [
        (VALUE, "Value", 1),
        (UNIT, "Unit", 1),
        (HOW, "How it is worked out", 4),
        (NOTE, "Note", 3),
        (NAME, "Name", 1),
    ]
    page.put(page.row, VALUE, Text("Value"), "column_head_right")
    page.heads(page.row, [(LABEL, "Line", 1), *heads[1:]])
    page.row += 1
    for line, home in entries(page.plan, block, page.where):
        _list_row(page, line, home, block.look)
        page.row += 1
    page.row += 1


def _list_row(page: Page, line: Line, home: bool, look: str) -> None:
    plan, row = page.plan, page.row
    if line.axes:
        raise ModelFault(
            f"`{line.name}` has a value for each {line.axes[0].label}; it cannot stand in a list", where=page.where
        )
    page.words(row, LABEL, line.label, "label")
    content = Worked(line, ()) if home else Shown(line, ())
    if line.is_text:
        page.put(row, VALUE, content, "worked_text" if home else "shown_text", across=6)
        sentences = line.expr.sentences if isinstance(line.expr, Choose) else ("",)
        width = sum(page.sheet.widths[VALUE : VALUE + 6])
        page.grow(row, max(needed_height(sentence, width, LOOKS["worked_text"].size) for sentence in sentences))
        page.words(row, NOTE, line.note, "words", across=3)
    else:
        page.put(row, VALUE, content, look or ("worked" if home else "shown"), form=plan.line_format(line))
        page.words(row, UNIT, plan.unit_after(line.unit), "unit")
        page.words(row, HOW, how(plan, line, home), "words", across=4)
        page.words(row, NOTE, line.note if home else "", "words", across=3)
    page.words(row, NAME, workbook_name(line), "name")
    if home:
        plan.settle(line, Home(page.sheet.name, row, VALUE, label_column=LABEL))
        page.name(workbook_name(line), row, VALUE)


def how(plan: Plan, line: Line, home: bool) -> str:
    """How a line is worked out, in words; for a repeated line, where it comes from."""
    if not home:
        return f"From the sheet {plan.lives_on.get(line.name, '')}."
    if line.kind == "used":
        return "From the inputs sheet."
    return (numbered_way(line, plan.places) if line.name in plan.places else sentence_of(line.expr)) + "."


def table_block(page: Page, block: Block) -> None:
    """One row for each member of an axis that runs down, one column for each line.

    A line that has another list too, which runs across, takes a column for each of its members.
    """
    plan = page.plan
    axis = plan.axis(block.axis, page.where)
    lines = entries(plan, block, page.where)
    grids = _columns(page, axis, lines)
    _fits(page, block, grids[-1].column + _width(grids[-1]) - VALUE)
    page.heading(block.title)
    members = any(len(grid.axes) > 1 for grid in grids)
    page.put(page.row, LABEL, Text(axis.label.capitalize()), "column_head")
    for (line, _), grid in zip(lines, grids, strict=True):
        _table_head(page, line, grid, members)
    first = page.row + (3 if members else 2)
    if any(plan.opening(line) for line, _ in lines):
        page.words(first, LABEL, "before the first", "unit")
        first += 1
    page.member_labels(axis, first, LABEL, "label")
    for (line, home), grid in zip(lines, grids, strict=True):
        _cells(page, line, home, replace(grid, row=first))
    page.row = first + plan.sizes[axis]
    _legend(page, lines)


def _columns(page: Page, axis: Axis, lines: Sequence[Entry]) -> list[Home]:
    """Where in a table each line stands, side by side; its row is still open."""
    grids: list[Home] = []
    column = VALUE
    for line, _ in lines:
        axes = ordered_axes(line.axes)
        across = [each.direction for each in axes[:-1]]
        if axes[-1:] != (axis,) or axis.direction != "down" or across not in ([], ["across"]):
            what = f"`{line.name}` does not run down over {axis.label}, alone or with one list that runs across"
            raise ModelFault(what, where=page.where)
        counts = tuple(page.plan.sizes[each] for each in axes)
        grids.append(Home(page.sheet.name, 0, column, axes, counts, LABEL))
        column += _width(grids[-1])
    return grids


def _width(grid: Home) -> int:
    """Columns that a line takes in a table."""
    return grid.counts[0] if len(grid.axes) > 1 else 1


def _table_head(page: Page, line: Line, grid: Home, members: bool) -> None:
    """Label and unit above a line's columns, and between them the names of the members that stand side by side."""
    width = _width(grid)
    page.put(page.row, grid.column, Text(line.head), "column_head_right", across=width)
    if len(grid.axes) > 1:
        page.member_labels(grid.axes[0], page.row + 1, grid.column, "column_head_right")
    for column in range(grid.column, grid.column + width):
        page.put(page.row + (2 if members else 1), column, Text(page.plan.unit_words(line.unit)), "unit")


def _cells(page: Page, line: Line, home: bool, grid: Home) -> None:
    """The cells of a line over the lists of a grid, whose corner is its first one; before it stand opening values."""
    opening = home and page.plan.opening(line)
    form = page.plan.line_format(line, table=True)
    for index in _indices(grid, opening=opening):
        _grid_cell(page, line, grid, index, form, home=home)
    if home:
        page.plan.settle(line, grid)


def across_block(page: Page, block: Block) -> None:
    """One column for each member of an axis that runs across, one row for each line."""
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
    page.put(page.row, LABEL, Text("Line"), "column_head")
    if opening:
        page.put(page.row, VALUE, Text("before"), "column_head_right")
    page.member_labels(axis, page.row, first, "column_head_right")
    wide = unit_column + 2 <= NOTE
    page.put(page.row, unit_column, Text("Unit"), "column_head")
    if wide:
        page.heads(
            page.row, [(unit_column + 1, "How it is worked out, and note", NAME - unit_column - 1), (NAME, "Name", 1)]
        )
    page.row += 1
    for line, home in lines:
        page.words(page.row, LABEL, line.head, "label")
        _cells(page, line, home, Home(page.sheet.name, page.row, first, (axis,), (plan.sizes[axis],), LABEL))
        page.words(page.row, unit_column, plan.unit_words(line.unit), "unit")
        if wide:
            words = " ".join(part for part in (how(plan, line, home), line.note if home else "") if part)
            page.words(page.row, unit_column + 1, words, "words", across=NAME - unit_column - 1)
            page.words(page.row, NAME, workbook_name(line), "name")
        page.row += 1
    if wide:
        page.row += 1
    else:
        _legend(page, lines)


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
        grid = Home(page.sheet.name, page.row + 2, VALUE, axes, counts, LABEL, turned)
        before = grid.way(axes[-1]) if opening else ""
        grid = replace(grid, row=grid.row + (before == "down"), column=grid.column + (before == "across"))
        _grid_heads(page, line, grid, before)
        _cells(page, line, home, grid)
        page.row = grid.row + next(plan.sizes[axis] for axis in axes if grid.way(axis) == "down")
        _legend(page, [(line, home)])


def _grid_heads(page: Page, line: Line, grid: Home, before: str) -> None:
    """The heading of a table of two lists and the names of their members; `before` is the way to the opening values."""
    page.heading(", ".join(filter(None, [line.head, page.plan.unit_words(line.unit)])))
    for axis in grid.axes:
        if grid.way(axis) == "down":
            page.put(page.row, LABEL, Text(axis.label.capitalize()), "column_head")
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


def _grid_cell(page: Page, line: Line, grid: Home, index: tuple[int, ...], form: str, *, home: bool) -> None:
    opening = index[-1] < 0
    at = grid.place(dict(zip(grid.axes, index, strict=True)))
    look = "opening" if opening else ("worked" if home else "shown") + ("_text" if line.is_text else "")
    content = Worked(line, index, opening=opening) if home else Shown(line, index)
    page.put(*at, content, look, form=form)


CHART_ROWS = 20


def chart_block(page: Page, block: Block) -> None:
    """Lines over one axis, drawn; the figures stand in a table above."""
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
    if axis not in plan.labels:
        raise ModelFault(f"a chart over {axis.label} stands before any table of it", where=page.where)
    page.heading(block.title)
    page.sheet.charts.append(
        Chart(page.row, block.title, block.axis_title, block.value_title, axis, series, plan.labels[axis])
    )
    page.row += CHART_ROWS


def compare_block(page: Page, block: Block) -> None:
    """Alternatives side by side: each row has a label and one single-valued line for each alternative."""
    unit_column = VALUE + len(block.heads)
    page.heading(block.title)
    page.put(page.row, LABEL, Text("Line"), "column_head")
    for column, head in enumerate(block.heads, VALUE):
        page.put(page.row, column, Text(head), "column_head_right")
    page.heads(page.row, [(unit_column, "Unit", 1)])
    if not all(row[-1].startswith("show:") for row in block.rows):
        words = f"{block.heads[-1]}: how it is worked out, and note"
        page.heads(page.row, [(unit_column + 1, words, NAME - unit_column)])
    page.row += 1
    for label, *names in block.rows:
        if len(names) != len(block.heads):
            raise ModelFault(
                f"row `{label}` of `{block.title}` has {len(names)} lines for {len(block.heads)} columns",
                where=page.where,
            )
        _compared(page, label, names, unit_column)
        page.row += 1
    page.row += 1


def _compared(page: Page, label: str, names: Sequence[str], unit_column: int) -> None:
    plan, row = page.plan, page.row
    page.words(row, LABEL, label, "label")
    for column, name in enumerate(names, VALUE):
        line, home = plan.line(name.removeprefix("show:"), page.where), not name.startswith("show:")
        look = ("worked" if home else "shown") + ("_text" if line.is_text else "")
        page.put(row, column, Worked(line, ()) if home else Shown(line, ()), look, form=plan.line_format(line))
        if home:
            plan.settle(line, Home(page.sheet.name, row, column, label_column=LABEL))
            page.name(workbook_name(line), row, column)
    if home:
        words = " ".join(part for part in (how(plan, line, home), line.note) if part)
        page.words(row, unit_column + 1, words, "words", across=NAME - unit_column)
    page.words(row, unit_column, plan.unit_after(line.unit), "unit")


def _legend(page: Page, lines: Sequence[Entry]) -> None:
    """How each column of a table is worked out, under the table."""
    plan = page.plan
    page.heads(
        page.row, [(LABEL, "Column", 1), (VALUE, "How it is worked out", 5), (VALUE + 5, "Note", 4), (NAME, "Name", 1)]
    )
    page.row += 1
    for line, home in lines:
        page.words(page.row, LABEL, line.head, "words")
        page.words(page.row, VALUE, how(plan, line, home), "words", across=5)
        page.words(page.row, VALUE + 5, line.note if home else "", "words", across=4)
        page.words(page.row, NAME, workbook_name(line), "name")
        page.row += 1
    page.row += 1


def _fits(page: Page, block: Block, columns: int) -> None:
    if columns > NAME - VALUE:
        raise ModelFault(f"table `{block.title}` has {columns} columns; {NAME - VALUE} fit", where=page.where)
