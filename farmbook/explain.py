"""Explaining a line: its formula in words, its value, and what feeds it, down to the inputs."""

from __future__ import annotations

import difflib
from collections.abc import Iterator

from farmbook.errors import FarmbookError, visible
from farmbook.expr.nodes import Line, Named
from farmbook.expr.walk import ordered_axes, walk
from farmbook.figures import is_number, spoken, spoken_constant, unit_words
from farmbook.interpret.words import sentence_of
from farmbook.results import Computed

__all__ = ["NoSuchLine", "explanation"]


class NoSuchLine(FarmbookError):
    """No line goes by this name."""

    def __init__(self, name: str, near: list[str]) -> None:
        self.name, self.near = name, near
        self.hint = (
            f"did you mean {' or '.join(f'`{one}`' for one in near)}?"
            if near
            else "`farmbook show SCENARIO --all` lists every line"
        )
        super().__init__(f"there is no line called `{visible(name)}`")


def explanation(computed: Computed, name: str) -> str:
    """A line and all that feeds it, each line once, indented by its distance.

    `name` is its dotted name, its name in the workbook, or that of the cell it is typed into. Raises NoSuchLine with near misses.
    """
    wanted = name.strip()
    if wanted not in computed.named:
        near = difflib.get_close_matches(wanted, [line.name for line in computed.roots], n=3, cutoff=0.5)
        raise NoSuchLine(name, near)
    return "\n".join(_told(computed, computed.line(wanted), 0, set()))


def _told(computed: Computed, line: Line, depth: int, told: set[Line]) -> Iterator[str]:
    pad = "  " * depth
    yield f"{pad}{line.label}: {_value(computed, line)}   [{line.name}]"
    if line in told:
        yield f"{pad}  (explained above)"
        return
    told.add(line)
    if line.kind == "used":
        yield from (f"{pad}  typed in as `{cell.name}`" for cell in computed.graph.cells(line)[:1])
        return
    yield f"{pad}  = {sentence_of(line.expr)}"
    for node in walk(computed.roots[line]):
        if isinstance(node, Named):
            constant = node.constant
            yield f"{pad}  {constant.label}: {spoken_constant(computed, constant)}   [{constant.name}]"
    for other in computed.graph.needs(line):
        if other is not line:
            yield from _told(computed, other, depth + 1, told)


def _value(computed: Computed, line: Line) -> str:
    values = computed.values[line].reshape(-1)
    said = [spoken(computed, line, value) for value in values]
    if line.is_text:
        return "; ".join(said)
    axes = ordered_axes(line.axes)
    each = f" for each {' and '.join(axis.label for axis in axes)}" if axes else ""
    words = unit_words(computed, line) if any(is_number(line, value) for value in values) else ""
    unit = f" {words}" if words else ""
    return f"{', '.join(said[:12])}{', ...' if len(said) > 12 else ''}{unit}{each}"
