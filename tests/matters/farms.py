"""Farms whose figures are swung, and their profit where the whole farm is worked out anew."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product

import numpy as np

from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Cells
from farmbook.model.year.year import Year
from farmbook.results import Computed, compute
from farmbook.scenario.limits import usual_of
from farmbook.scenario.scenario import with_cell
from farmbook.sections.declare import Input, NumberInput
from farmbook.sections.section import Bound
from tests.made import results_of
from tests.workbook.shipped import SCENARIOS

__all__ = ["SCENARIOS", "Typed", "ends_of", "farm", "known_as", "outcome", "outcomes", "typed_in", "with_typed"]

Outcome = tuple[float, frozenset[str]]
"""A year's profit, and the error checks that fail."""


@dataclass(frozen=True)
class Typed:
    """One cell of a number input, in a row that is in use; no number where it is left blank."""

    declared: NumberInput
    bound: Bound
    index: tuple[int, ...]
    value: float
    basis: str


@cache
def farm(name: str = "kestrel_hollow") -> Computed:
    return results_of(SCENARIOS[name])


def typed_in(computed: Computed) -> Iterator[Typed]:
    """Every number of a farm, in the order of the model."""
    cells, rows = computed.scenario.cells, computed.scenario.rows
    for declared, bound in computed.model.inputs.items():
        if isinstance(declared, NumberInput):
            assert bound.basis is not None
            sizes = [len(rows[axis]) if axis.named else len(axis.members) for axis in ordered_axes(declared.axes)]
            for index in product(*map(range, sizes)):
                value, basis = cells[bound.cell].numbers[(0, *index)], cells[bound.basis].texts[(0, *index)]
                yield Typed(declared, bound, index, float(value), str(basis))


def ends_of(computed: Computed, one: Typed) -> tuple[float, float]:
    """The usual range as it is declared, in the units of the book; of rows of a list from half to double at most."""
    low, high = usual_of(one.declared, computed.scenario.system)
    if any(axis.named for axis in one.declared.axes):
        nearer = max(low, one.value / 2), min(high, one.value * 2)
        return nearer if nearer[0] < nearer[1] else (low, high)
    return low, high


def outcomes(computed: Computed, edits: Sequence[tuple[Typed, float]]) -> list[Outcome]:
    """What comes of each edit by itself: the whole farm worked out anew, in one run for all of them."""
    cells = dict(computed.scenario.cells)
    for draw, (one, value) in enumerate(edits):
        cell = one.bound.cell
        if cells[cell].numbers.shape[0] == 1:
            cells[cell] = Cells(np.repeat(cells[cell].numbers, len(edits), axis=0), cells[cell].texts)
        cells[cell].numbers[(draw, *one.index)] = value
    profit = computed.model.line(Year.profit)
    checks = [check for check in computed.model.checks if check.kind == "error"]
    found = computed.engine.run_in_chunks(cells, [profit, *checks])
    return [
        (float(found[profit][draw]), frozenset(check.name for check in checks if found[check][draw] != 1))
        for draw in range(len(edits))
    ]


def outcome(computed: Computed) -> Outcome:
    """What comes of a farm as it is."""
    values = computed.again(computed.scenario.cells)
    failing = (check.name for check in computed.model.checks if check.kind == "error" and values[check][0] != 1)
    return float(values[computed.model.line(Year.profit)][0]), frozenset(failing)


def with_typed(computed: Computed, declared: Input, value: float | None, index: tuple[int, ...] = ()) -> Computed:
    """The farm made anew with another value in one cell."""
    return compute(with_cell(computed.scenario, computed.model.inputs[declared].cell, index, value))


def known_as(computed: Computed, basis: str, *, only: Input | None = None) -> Computed:
    """The farm with every number, or those of one input, known in this way."""
    scenario = computed.scenario
    for one in typed_in(computed):
        if one.bound.basis is not None and (only is None or one.declared is only):
            scenario = with_cell(scenario, one.bound.basis, one.index, basis)
    return compute(scenario)
