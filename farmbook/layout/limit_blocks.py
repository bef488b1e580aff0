"""What is judged by limits: how each is worked out in words, the limits themselves, and where they come from."""

from __future__ import annotations

from itertools import accumulate

from farmbook.errors import ModelFault
from farmbook.layout.book import Shown, Text
from farmbook.layout.grid import LABEL, VALUE
from farmbook.layout.page import Page
from farmbook.layout.template import Block

__all__ = ["limits_block"]


def limits_block(page: Page, block: Block) -> None:
    """One row for each: its label, how it is worked out, its limits, which may be none, and the source of these."""
    columns = list(accumulate(block.spans[:-1], initial=VALUE))
    page.heading(block.title)
    page.put(page.row, LABEL, Text(""), "column_head")
    last = len(block.heads) - 1
    for place, (column, span, head) in enumerate(zip(columns, block.spans, block.heads, strict=True)):
        look = "column_head_text" if place in (0, last) else "column_head_right"
        page.put(page.row, column, Text(head), look, across=span)
    page.row += 1
    if len(block.told) != len(block.rows):
        raise ModelFault(f"`{block.title}` has words for {len(block.told)} rows of {len(block.rows)}", where=page.where)
    for (label, *names), (way, source) in zip(block.rows, block.told, strict=True):
        page.ruled(page.row, 0, "", "number")
        page.put(page.row, LABEL, Text(label), "label")
        for place, (column, span) in enumerate(zip(columns, block.spans, strict=True)):
            if place in (0, last):
                page.put(page.row, column, Text(source if place else way), "unit", across=span)
            elif names:
                line = page.plan.line(names[place - 1].removeprefix("show:"), page.where)
                page.put(page.row, column, Shown(line, ()), "worked", form=page.plan.line_format(line), across=span)
            else:
                page.put(page.row, column, Text("-"), "worked", across=span)
        page.row += 1
