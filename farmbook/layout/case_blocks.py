"""Blocks of cases: all lines of one that have no home yet, or of several side by side."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, Nth
from farmbook.expr.walk import ordered_axes, walk
from farmbook.layout.book import Home, Text, Worked
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, VALUE
from farmbook.layout.list_blocks import list_block
from farmbook.layout.page import Page
from farmbook.layout.table_blocks import across_block, matrix_block, table_block
from farmbook.layout.template import Block

__all__ = ["case_block", "cases_block"]

EACH: Final = "Each figure is worked out as the line of its name on its own sheet, from the figures of its case here."
CHANGED: Final = "what is changed in this case"
COLUMNS: Final = 8
"""Lines side by side in one table; more go into a table of their own."""


def case_block(page: Page, block: Block) -> None:
    """Every line of the case named `of` that no block before this one has placed."""
    groups: dict[tuple[Axis, ...], list[str]] = {}
    for line in page.plan.roots:
        if line.case == block.of and line not in page.plan.homes:
            groups.setdefault(ordered_axes(line.axes), []).append(line.name)
    if not groups:
        raise ModelFault(f"there is no case called `{block.of}` with lines to place", where=page.where)
    page.heading(block.title)
    for axes, names in groups.items():
        _group(page, replace(block, title=""), axes, names)


def cases_block(page: Page, block: Block) -> None:
    """Single lines of several cases, one row for each with a column for each case; then the lists of each case."""
    page.heading(block.title)
    page.heads(page.row, [(LABEL, "", 1), *((VALUE + place, head, 1) for place, head in enumerate(block.heads))])
    page.row += 1
    page.put(page.row, LABEL, Text(EACH), "paragraph", across=HOW + HOW_COLUMNS - LABEL)
    page.row += 1
    found = {case: _of_case(page, case) for case in block.cases}
    for plain in _ranked_first(page, found):
        _single_row(page, plain, [lines.get(plain) for lines in found.values()])
        page.row += 1
    for head, (case, lines) in zip(block.heads, found.items(), strict=True):
        groups: dict[tuple[Axis, ...], list[str]] = {}
        for line in lines.values():
            if line.axes:
                groups.setdefault(ordered_axes(line.axes), []).append(line.name)
        for axes, names in groups.items():
            page.heading(f"{block.title}: {head}")
            _group(page, Block("case", of=case), axes, names)
            page.columns = [line for line in page.columns if line.case != case]


def _of_case(page: Page, case: str) -> dict[str, Line]:
    """The lines of a case that have no home yet, by what they are called without it."""
    found = {
        line.name.removesuffix(f"_{case}"): line
        for line in page.plan.roots
        if line.case == case and line not in page.plan.homes
    }
    if not found:
        raise ModelFault(f"there is no case called `{case}` with lines to place", where=page.where)
    return found


def _ranked_first(page: Page, found: dict[str, dict[str, Line]]) -> list[str]:
    """The names of single lines: those that are ranked together stand one under another, before all others."""
    plain = {line: name for lines in found.values() for name, line in lines.items() if not line.axes}
    first: dict[str, None] = {}
    for line in plain:
        for node in walk(page.plan.roots[line]):
            if isinstance(node, Nth):
                first.update({plain[each]: None for column in (node.keys, node.shown) for each in column})
    return list(first | dict.fromkeys(plain.values()))


def _single_row(page: Page, plain: str, lines: list[Line | None]) -> None:
    """One line in all cases that have it."""
    some = next(line for line in lines if line is not None)
    page.put(page.row, LABEL, Text(page.label(some.called)), "label")
    for column, line in enumerate(lines, VALUE):
        if line is not None:
            look = "worked_text" if line.is_text else "worked"
            page.put(page.row, column, Worked(line, ()), look, form=page.plan.line_format(line))
            page.plan.settle(line, Home(page.sheet.name, page.row, column, label_column=LABEL))
    after = VALUE + len(lines)
    page.put(page.row, after, Text(page.plan.unit_after(some.unit)), "unit")
    words = HOW + HOW_COLUMNS - after - 1
    page.ruled(page.row, after + 1, _as_elsewhere(page, plain), "words", across=words)
    page.words(page.row, NAME, plain.replace(".", "_"), "name")


def _as_elsewhere(page: Page, plain: str) -> str:
    """Where the same is worked out for the farm as it is."""
    place = page.plan.places.get(plain)
    return CHANGED if place is None or plain.endswith("_used") else f"as {place.sheet}, line {place.number}"


def _group(page: Page, block: Block, axes: tuple[Axis, ...], names: list[str]) -> None:
    whole = replace(block, lines=tuple(names), axis=axes[0].name if axes else "")
    if not axes:
        list_block(page, whole)
    elif len(axes) == 2:
        matrix_block(page, whole)
    elif axes[0].direction == "across":
        across_block(page, whole)
    else:
        for first in range(0, len(names), COLUMNS):
            table_block(page, replace(whole, lines=tuple(names[first : first + COLUMNS])))
