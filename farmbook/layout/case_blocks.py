"""The block of a case: all of its lines that have no home yet, single ones in a list and the others by their lists."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.walk import ordered_axes
from farmbook.layout.list_blocks import list_block
from farmbook.layout.page import Page
from farmbook.layout.table_blocks import across_block, matrix_block, table_block
from farmbook.layout.template import Block

__all__ = ["case_block"]

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
