"""Numbers of lines: each sheet counts its own lines from 1, as a tax form does, so that one line can cite another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from farmbook.layout.line_numbers import Place
from farmbook.layout.page import Plan
from farmbook.layout.template import Block, Template, reading_order

__all__ = ["numbered"]


def numbered(plan: Plan, templates: Sequence[Template]) -> dict[str, Place]:
    """The place of every line and cell that has a number, by its dotted name."""
    found: dict[str, Place] = {}
    for template in templates:
        rows = [[(name, "")] for name in template.heads if not name.startswith("show:")]
        for block in reading_order(template):
            rows += _rows(plan, block, template.path)
        for number, row in enumerate(rows, 1):
            found.update({name: Place(template.sheet, number, head) for name, head in row})
        found.update(_titled(found, template))
    return found


def _titled(found: Mapping[str, Place], template: Template) -> dict[str, Place]:
    """The places of what is typed into tables, with the title that a reader finds each table by."""
    tables = (block for block in template.blocks if block.kind == "input_table")
    return {name: replace(found[name], table=block.title) for block in tables for name in block.inputs}


def _rows(plan: Plan, block: Block, where: str) -> Iterator[list[tuple[str, str]]]:
    """What goes by one number, each name with the head by which its column is told from the others."""
    if block.kind == "compare":
        for _, *names in block.rows:
            heads = zip(names, block.heads, strict=False)
            yield [(name, head) for name, head in heads if not name.startswith("show:")]
    elif block.kind == "inputs":
        for name in block.inputs:
            used = plan.input(name, where).used
            yield [(name, ""), *([(used.name, "")] if used is not None else [])]
    elif block.kind == "input_table":
        yield [(name, plan.input(name, where).declared.label) for name in block.inputs]
    elif block.kind in ("list", "across", "matrix", "table", "months", "weeks"):
        homes = [name for name in block.lines if not name.startswith("show:")]
        if block.kind == "table":
            yield [(name, plan.line(name, where).head) for name in homes]
        else:
            yield from ([(name, "")] for name in homes)
