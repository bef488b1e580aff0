"""The months of the model against their twin: every line, on strange and random farms, over plans of one, three and seven years."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

import numpy as np
import pytest

from farmbook.interpret.numbers import Array
from tests.twin.edge_farms import at_a_limit
from tests.twin.farm_twin import schedule, twin
from tests.twin.farm_twin_ground import Given
from tests.twin.farm_twin_months import months
from tests.twin.farms import Difference, Farm, compared_lines, differences, in_declared_units, twin_inputs, values_of
from tests.twin.month_farms import MONTH_EDGES, month_edge, month_numbers, random_month_farm, with_one_of_months
from tests.twin.outcomes import outcomes

SYSTEMS: Final = ("metric", "us")
HORIZONS: Final = (12, 36, 84)
RANDOM_FARMS: Final = 12
SECTIONS: Final = ("totals", "spawn", "sales", "supplies", "bills", "capital", "sales_tax", "household", "cash")

Lines = Mapping[str, Array]


def of_months() -> list[str]:
    """The lines of the months."""
    return [
        line.name for line in compared_lines() if line.name.startswith(tuple(f"month_{each}." for each in SECTIONS))
    ]


def model(farms: Sequence[Farm], system: str) -> dict[str, Array]:
    """Every line of the model, farm by farm."""
    found = in_declared_units(values_of(farms, system), system, compared_lines())
    return {name: np.broadcast_to(value, (len(farms), *value.shape[1:])) for name, value in found.items()}


def of_one(lines: Lines, number: int) -> dict[str, Any]:
    """All that the months are made of, as the model has it for one farm."""
    return {name: value[number] for name, value in lines.items() if not name.startswith("month_")}


def in_months(given: Given, made_of: Mapping[str, Any]) -> dict[str, Array]:
    """The twin's months."""
    found = months(given, dict(made_of))
    return {name: np.asarray(value, dtype=float) for name, value in found.items()}


def all_the_way(farm: Farm) -> dict[str, Array]:
    """The months of a typical year, loans and weeks that are the twin's own too."""
    given = twin_inputs(farm)
    found = twin(given)
    return in_months(given, {**found, **schedule(given, dict(found))})


def held(ours: Sequence[Lines], lines: Lines) -> list[Difference]:
    """Where twin and model differ."""
    return differences(ours, {name: lines[name] for name in of_months()})


def disagreements(farms: Sequence[Farm]) -> list[Difference]:
    """Where the twin, given what the model's weeks come to, differs from the model's months, in both systems."""
    given, found = [twin_inputs(farm) for farm in farms], []
    for system in SYSTEMS:
        lines = model(farms, system)
        ours = [in_months(each, of_one(lines, number)) for number, each in enumerate(given)]
        found += held(ours, lines)
    return found


def test_every_outcome_of_the_months_has_a_twin() -> None:
    found = set(all_the_way(month_edge("nothing strange", 12)))
    assert outcomes() & set(of_months()) <= found <= set(of_months())
    assert len(found) > 150


def test_a_slip_in_any_line_of_the_months_is_seen() -> None:
    farm = month_edge("nothing strange", 12)
    ours, theirs = [all_the_way(farm)], model([farm], "metric")
    for name in ours[0]:
        wrong = theirs[name] * (1 + 1e-6) + 1e-4
        assert [each.line for each in differences(ours, {name: wrong})] == [name]


@pytest.mark.parametrize(("horizon", "first", "step"), [(12, 0, 2), (36, 0, 1), (84, 1, 2)])
def test_strange_months(horizon: int, first: int, step: int) -> None:
    """All of them over three years, and half of them each over one year and over seven."""
    assert disagreements([month_edge(name, horizon) for name in list(MONTH_EDGES)[first::step]]) == []


@pytest.mark.parametrize("horizon", HORIZONS)
def test_months_of_random_farms(horizon: int) -> None:
    assert disagreements([random_month_farm(seed, horizon) for seed in range(RANDOM_FARMS)]) == []


def test_months_of_random_farms_from_their_inputs_alone() -> None:
    """Nothing of the model's: year, loans, weeks and months are all the twin's own."""
    farms = [random_month_farm(seed, 36) for seed in range(RANDOM_FARMS)]
    ours = [all_the_way(farm) for farm in farms]
    assert [each for system in SYSTEMS for each in held(ours, model(farms, system))] == []


def test_each_number_of_the_months_cleared_and_at_its_limits() -> None:
    numbers = month_numbers()
    farms = [with_one_of_months(declared, at_a_limit(declared, side), 12) for declared in numbers for side in (0, 1)]
    farms += [with_one_of_months(declared, None, 12) for declared in numbers]
    assert disagreements(farms) == []
