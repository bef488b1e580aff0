"""The order in which a reader meets what is typed in: that of the sheets, which the templates settle, not the model."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from farmbook.expr.nodes import Expr, FirstLabel, Line, RawInput
from farmbook.layout.template import read_templates, reading_order
from farmbook.sections.model import Model

__all__ = ["from_the_top"]


def from_the_top(model: Model, roots: Mapping[Line, Expr]) -> dict[Line, Expr]:
    """The same lines; the first of some flags or bases is that of the input which stands first, from the first sheet down, and
    the first of some lines the one that is listed first.
    """
    blocks = [block for template in read_templates() for block in reading_order(template)]
    place = {
        name: number for number, name in enumerate(name for block in blocks for name in (*block.inputs, *block.lines))
    }
    placed: dict[Line | RawInput, int] = {line: place[line.name] for line in roots if line.name in place}
    for bound in model.inputs.values():
        if bound.cell.name in place:
            placed |= {said: place[bound.cell.name] for said in (bound.flag, bound.basis) if said is not None}
    return {line: _sorted(root, placed) if isinstance(root, FirstLabel) else root for line, root in roots.items()}


def _sorted(first: FirstLabel, place: Mapping[Line | RawInput, int]) -> FirstLabel:
    """What no sheet holds comes last; placement refuses it by name."""
    pairs = sorted(zip(first.lines, first.labels, strict=True), key=lambda pair: place.get(pair[0], len(place)))
    return replace(first, lines=tuple(line for line, _ in pairs), labels=tuple(label for _, label in pairs))
