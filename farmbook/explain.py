"""Explaining a line: its formula in words, its value, and what feeds it, down to the inputs."""

from __future__ import annotations

import difflib
from collections.abc import Iterator

from farmbook.errors import FarmbookError, visible
from farmbook.expr.nodes import Line, Named
from farmbook.expr.walk import ordered_axes, walk
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.words import sentence_of
from farmbook.layout.looks import NO_FIGURE, decimals
from farmbook.layout.page import no_figure
from farmbook.results import Computed
from farmbook.units import displayed

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

    `name` is the dotted name or the workbook's name. Raises NoSuchLine with near misses.
    """
    return "\n".join(_told(computed, find_line(computed, name), 0, set()))


def find_line(computed: Computed, name: str) -> Line:
    """The line of a dotted name or a workbook name."""
    wanted = name.strip()
    for line in computed.roots:
        if wanted in (line.name, workbook_name(line)) or f"{wanted}_used" == line.name:
            return line
    near = difflib.get_close_matches(wanted, [line.name for line in computed.roots], n=3, cutoff=0.5)
    raise NoSuchLine(name, near)


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
            unit = constant.unit.shown(computed.scenario.currency)
            yield f"{pad}  {constant.label}: {float(constant):g} {unit}   [{constant.name}]"
    for other in computed.graph.needs(line):
        if other is not line:
            yield from _told(computed, other, depth + 1, told)


def _value(computed: Computed, line: Line) -> str:
    axes = ordered_axes(line.axes)
    shown = displayed(line.unit, computed.scenario.system)
    words = shown.shown(computed.scenario.currency)
    values = computed.values[line].reshape(-1)
    if line.is_text:
        return "; ".join(str(value) for value in values)
    scale = 100 if shown.share else 1
    places = 1 if shown.share else decimals(shown)
    spoken = [NO_FIGURE if no_figure(line, value) else f"{value * scale:,.{places}f}" for value in values]
    each = f" for each {' and '.join(axis.label for axis in axes)}" if axes else ""
    return f"{', '.join(spoken[:12])}{', ...' if len(spoken) > 12 else ''} {words}{each}"
