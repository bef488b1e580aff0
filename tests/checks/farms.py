"""The plausible farm with some inputs changed, and what its checks say, with a figure of the book falsified if wanted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any, Final

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Expr, Line, Multiply, Raw, RawInput, Running, Starting
from farmbook.interpret.numbers import Array, Cells, Engine
from farmbook.results import whole_farm
from farmbook.units import unit
from tests.twin.edge_farms import NAMES, PLAUSIBLE, changes_of
from tests.twin.farms import Farm, axis_sizes, cells_of, farm_of

__all__ = ["FIRST_FAILING", "Typed", "checks", "farm", "verdicts"]

Typed = Mapping[str, Any]
"""Values by the dotted names of the inputs, in their declared units; None is a cleared cell."""

FIRST_FAILING: Final = {"error": "report.first_error", "alert": "report.first_alert"}
"""The line that names the first check of a kind that fails."""
LISTS: Final = {f"{axis.name}.name": axis for axis in NAMES}
"""The input that holds the names of each list."""


def checks() -> dict[str, Line]:
    """Every check of the book by its name, and the line that puts it in words."""
    return {check.name: says for check, says in whole_farm().checks.items()}


def farm(typed: Typed) -> Farm:
    """The plausible farm with these values typed; the names of its lists may be among them."""
    names: dict[Axis, Sequence[str]] = {axis: typed.get(name, NAMES[axis]) for name, axis in LISTS.items()}
    changes = changes_of({name: value for name, value in typed.items() if name not in LISTS})
    return farm_of({**PLAUSIBLE, **changes}, names)


def verdicts(
    farms: Sequence[Farm], slips: Sequence[Mapping[str, float]] = (), system: str = "metric"
) -> dict[str, Any]:
    """The result of every check and its words, and the first that fails, farm by farm.

    `slips` multiplies some lines of each farm by a factor.
    """
    lines = tuple(sorted({name for each in slips for name in each}))
    sizes = tuple(sorted(axis_sizes(farms[0].names).items(), key=lambda each: each[0].order))
    found, slip_cells = engine(system, sizes, lines)
    cells = cells_of(farms, system)
    for name, cell in slip_cells.items():
        factors = np.asarray([each.get(name, 1.0) for each in slips])
        cells[cell] = Cells(factors, np.full(factors.shape, "", dtype=object))
    values = found.run(cells)
    every = {line.name: values[line] for pair in whole_farm().checks.items() for line in pair}
    every |= {line.name: value for line, value in values.items() if line.name in FIRST_FAILING.values()}
    return {name: _each(value, len(farms)) for name, value in every.items()}


def _each(value: Array, count: int) -> Array:
    return np.broadcast_to(value, (count,))


@cache
def engine(
    system: str, sizes: tuple[tuple[Axis, int], ...], slips: tuple[str, ...]
) -> tuple[Engine, dict[str, RawInput]]:
    """The whole farm, the lines named multiplied by what stands in a cell of their own."""
    cells = {name: RawInput(f"slip.{name}", name, "number", unit("1"), ()) for name in slips}
    roots = {line: lower(line, system) for line in whole_farm().lines}
    for line in list(roots):
        if line.name in cells:
            roots[line] = falsified(roots[line], Raw(cells[line.name]))
    return Engine(Graph(roots), dict(sizes), system), cells


def falsified(root: Expr, factor: Expr) -> Expr:
    """What a line is worked out from, times a factor: of one that runs through time, each of its steps."""
    if isinstance(root, Starting):
        return Starting(root.opening, Multiply(root.step, factor))
    if isinstance(root, Running):
        return Running(root.sign, Multiply(root.expr, factor), root.axis)
    return Multiply(root, factor)
