"""From a scenario to results: the model is lowered and compiled for the scenario's units and sizes, then run."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path

from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Expr, Line, RawInput
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.numbers import Array, Cells, Engine, Values
from farmbook.layout.forms import money_sign
from farmbook.layout.reading_order import from_the_top
from farmbook.model.farm import farm_model
from farmbook.scenario.load import load
from farmbook.scenario.scenario import Scenario
from farmbook.sections.model import Model

__all__ = ["Computed", "compute", "load_scenario", "names_of"]


@lru_cache(maxsize=1)
def whole_farm() -> Model:
    """The farm's model, made once."""
    return farm_model()


@lru_cache(maxsize=4)
def lowered(system: str, currency: str = "", parts: frozenset[str] | None = None) -> Graph:
    """Every line of the farm in the display units of one system and the order of its sheets; kinds are checked on the way.

    `parts` are those of the model that a scenario has a table for; None is all of them.
    """
    farm = whole_farm() if parts is None else whole_farm().fitting(parts)
    return Graph(
        from_the_top(farm, {line: lower(line, system, money_sign(currency) if currency else "") for line in farm.lines})
    )


@lru_cache(maxsize=4)
def compiled(system: str, currency: str, sizes: tuple[tuple[Axis, int], ...], parts: frozenset[str]) -> Engine:
    """The engine of all books of these units, sizes and parts: they are compiled once, however many are worked out."""
    return Engine(lowered(system, currency, parts), dict(sizes), system)


@dataclass(frozen=True)
class Computed:
    """A scenario and the value of every line: arrays of shape (1, *axes), in the scenario's display units."""

    scenario: Scenario
    model: Model
    graph: Graph
    engine: Engine

    @property
    def roots(self) -> Mapping[Line, Expr]:
        """Every line and what it is worked out from, in display units."""
        return self.graph.roots

    @cached_property
    def values(self) -> Values:
        """The value of every line."""
        return self.engine.run(self.scenario.cells)

    @property
    def openings(self) -> dict[Line, Array]:
        """The value before the first step of every line that has one."""
        return self.values.openings

    def again(self, cells: Mapping[RawInput, Cells]) -> Values:
        """Every line for other cells of the same sizes, or for many draws of them."""
        return self.engine.run(cells)

    def what_if(self, changes: Mapping[RawInput, Cells], wanted: Iterable[Line] | None = None) -> Values:
        """The lines after a change of some cells, of which only what the change reaches is worked out again (and of that
        only what the `wanted` lines need)."""
        return self.engine.what_if(self.values, changes, wanted)

    def members(self, axis: Axis) -> list[str]:
        """The keys of an axis's members in use, in the order of its cells."""
        if axis.named:
            return list(self.scenario.rows[axis])
        return [axis.called(place) for place in range(self.scenario.sizes[axis])]

    @cached_property
    def named(self) -> Mapping[str, Line]:
        """Every line by its dotted name, by its workbook name, and a number typed in by the names of its cell."""
        return names_of(self.roots)

    def line(self, name: str) -> Line:
        """A line by any of its names; KeyError if there is none."""
        return self.named[name]


def names_of(lines: Iterable[Line]) -> dict[str, Line]:
    """Lines by their dotted names, by their workbook names, and a number typed in by the names of its cell."""
    lines = list(lines)
    found = {line.name: line for line in lines}
    for line in lines:
        known_as = (line,) if line.hands_on is None else (line, line.hands_on)
        for each in known_as:
            found.setdefault(each.name, line)
            found.setdefault(workbook_name(each), line)
    return found


def load_scenario(path: str | Path) -> Scenario:
    """Read and check a scenario file for the whole farm."""
    return load(path, whole_farm())


def compute(scenario: Scenario) -> Computed:
    """Work out every line of the farm for a scenario."""
    engine = compiled(scenario.system, scenario.currency, tuple(scenario.sizes.items()), scenario.parts)
    return Computed(scenario, whole_farm().fitting(scenario.parts), engine.graph, engine)
