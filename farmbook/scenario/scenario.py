"""A scenario as it is laid out in a book, and the same with one cell typed over."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from farmbook.errors import ModelFault, Problem
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import RawInput
from farmbook.interpret.numbers import Cells

__all__ = ["Scenario", "with_cell"]


@dataclass(frozen=True, eq=False)
class Scenario:
    """Everything a scenario file says, with what the book fills in.

    `cells` holds every input, basis and usual limit of the model, numbers in the units of `system`; arrays have the
    shape (1, *axes), the axes in the order of `ordered_axes`. The places of `notes` are in the same order, without the
    leading 1. `rows` holds the keys of the rows given, for every named axis. `parts` are the parts of the model that the file
    has a table for, among those that exist only then.
    """

    path: str
    digest: str
    system: str
    currency: str
    paper: str
    months: int
    rows: Mapping[Axis, tuple[str, ...]]
    sizes: Mapping[Axis, int]
    cells: Mapping[RawInput, Cells]
    notes: Mapping[RawInput, Mapping[tuple[int, ...], str]]
    warnings: tuple[Problem, ...]
    parts: frozenset[str] = frozenset()


def with_cell(scenario: Scenario, raw: RawInput, index: tuple[int, ...], value: float | str | None) -> Scenario:
    """A copy with one cell as a person leaves it in the workbook: a number or a text typed, or the cell cleared (None).

    `index` counts from 0 along the cell's axes, in the order of the array. A text in a number's cell is no number; a
    number in a text's cell is the text of its digits. Raises ModelFault for a cell that the scenario does not have.
    """
    before = scenario.cells.get(raw)
    shape = () if before is None else before.numbers.shape[1:]
    inside = len(index) == len(shape) and all(0 <= place < size for place, size in zip(index, shape, strict=True))
    if before is None or not inside:
        raise ModelFault(f"no cell {index} of `{raw.name}`")
    numbers, texts = before.numbers.copy(), before.texts.copy()
    place = (0, *index)
    if raw.kind not in ("text", "choice", "basis", "built text"):
        numbers[place] = math.nan if value is None or isinstance(value, str) else value
        texts[place] = value if isinstance(value, str) else ""
    else:
        texts[place] = "" if value is None else _as_text(value)
    return replace(scenario, cells={**scenario.cells, raw: Cells(numbers, texts)})


def _as_text(value: float | str) -> str:
    if isinstance(value, str):
        return value
    return str(int(value)) if float(value).is_integer() else repr(float(value))
