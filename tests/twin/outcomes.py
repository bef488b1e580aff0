"""What the twin must work out: whatever an answer, a comparison, a chart or a check of the book shows, and what ends a sum."""

from __future__ import annotations

from functools import cache

from farmbook.expr.nodes import Line
from farmbook.layout.template import Template, read_templates
from farmbook.results import whole_farm
from tests.twin.farms import compared_lines

__all__ = ["outcomes", "shown_of"]


@cache
def outcomes() -> frozenset[str]:
    """The names of the lines that a reader is answered by. Every other line feeds one of these."""
    read = _read()
    named = {line.name: line for line in compared_lines()}
    shown = {name for template in read_templates() for name in shown_of(template)}
    return frozenset(name for name, line in named.items() if name in shown or line.kind != "worked" or line not in read)


def _read() -> set[Line]:
    """The lines from which a further figure is worked out."""
    graph = whole_farm().graph
    return {source for line in compared_lines() for source in graph.needs(line) if source is not line}


def shown_of(template: Template) -> set[str]:
    """The lines that a sheet shows as answers: all of the first sheet, what is repeated, set side by side, or drawn."""
    found: set[str] = set()
    for block in template.blocks:
        compared = [name for row in block.rows for name in row[1:]]
        repeated = [name for name in block.lines if template.kind == "start" or name.startswith("show:")]
        found |= {name.removeprefix("show:") for name in (*compared, *repeated)}
        found |= {one["line"] for one in block.series} | {name for mark in block.marks for name in mark[1:]}
    return found
