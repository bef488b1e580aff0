"""The model against its twin: outcomes, checks and all else the twin works out, on many farms, in both units."""

from __future__ import annotations

import ast
from collections.abc import Sequence
from pathlib import Path

import pytest

from farmbook.results import compute, load_scenario, whole_farm
from tests.twin.edge_farms import EDGES, at_a_limit, edge_farm, numbers, other_options, plausible, with_one
from tests.twin.farm_twin import twin
from tests.twin.farms import (
    Difference,
    Farm,
    compared_lines,
    differences,
    farm_of_cells,
    in_declared_units,
    least_room,
    results,
    twin_inputs,
)
from tests.twin.outcomes import outcomes
from tests.twin.random_farms import random_farm

SYSTEMS = ("metric", "us")
RANDOM_FARMS, WITH_ALTERNATIVES = 150, 60
"""Farms drawn, and how many of them are worked out with all that they might be too, which takes as many farms again."""
OF_ALTERNATIVES = ("buy_in", "change_sizes", "own_change")
"""Sections whose numbers only alternatives read."""
SCENARIOS = sorted((Path(__file__).parents[2] / "scenarios").glob("*.toml"))


def disagreements(
    farms: Sequence[Farm], systems: tuple[str, ...] = SYSTEMS, *, alternatives: bool = False
) -> list[Difference]:
    """Where the model and the twin differ, with `alternatives` in what else the farm might be too."""
    given = [twin_inputs(farm) for farm in farms]
    ours = [twin(each, alternatives=alternatives) for each in given]
    return [each for system in systems for each in differences(ours, results(farms, system))]


def test_every_outcome_has_a_twin() -> None:
    plain = set(twin(twin_inputs(plausible())))
    worked_out, every = set(twin(twin_inputs(plausible()), alternatives=True)), {line.name for line in compared_lines()}
    assert plain <= every
    assert outcomes() <= worked_out
    assert 150 < len(outcomes()) < len(every)


def test_every_line_feeds_an_outcome() -> None:
    farm = whole_farm()
    ends = [line for line in farm.lines if line.name in outcomes()]
    assert {line.name for line in compared_lines()} <= {line.name for line in farm.graph.before(ends)}


def test_the_twin_knows_nothing_of_the_package() -> None:
    for path in Path(__file__).parent.glob("farm_twin*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            modules = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            modules += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            assert not [each for each in modules if each.startswith("farmbook")], path


def test_a_slip_in_any_one_line_is_seen() -> None:
    farm = plausible()
    ours, theirs = [twin(twin_inputs(farm), alternatives=True)], results([farm], "metric")
    for name, value in theirs.items():
        wrong = value * (1 + 1e-6) + 10 * least_room()[name]
        assert [each.line for each in differences(ours, {name: wrong})] == [name]


@pytest.mark.parametrize("names", [list(EDGES)[first : first + 10] for first in range(0, len(EDGES), 10)])
def test_strange_farms(names: list[str]) -> None:
    assert disagreements([edge_farm(name) for name in names], alternatives=True) == []


def test_every_option_of_every_choice() -> None:
    assert (
        disagreements([plausible({declared: option}) for declared, option in other_options()], alternatives=True) == []
    )


@pytest.mark.parametrize("section", sorted({declared.owner.key() for declared in numbers()}))
def test_each_number_cleared_and_at_its_limits(section: str) -> None:
    own = [declared for declared in numbers() if declared.owner.key() == section]
    limits = [with_one(declared, at_a_limit(declared, side)) for declared in own for side in (0, 1)]
    assert disagreements(limits, alternatives=section in OF_ALTERNATIVES) == []
    assert disagreements([with_one(declared, None) for declared in own], SYSTEMS[:1]) == []
    # A cleared temperature is 0 of the scale that the book shows, so a book in degF is not held to the twin there.
    other = [declared for declared in own if declared.unit != "degC"]
    assert not other or disagreements([with_one(declared, None) for declared in other], SYSTEMS[1:]) == []


@pytest.mark.parametrize("first", range(0, RANDOM_FARMS, 15))
def test_random_farms(first: int) -> None:
    farms = [random_farm(first + number) for number in range(15)]
    assert disagreements(farms, alternatives=first < WITH_ALTERNATIVES) == []


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda each: each.stem)
def test_every_scenario(path: Path) -> None:
    computed = compute(load_scenario(path))
    system = computed.scenario.system
    ours = twin(twin_inputs(farm_of_cells(computed.scenario.cells, system)), alternatives=True)
    assert differences([ours], in_declared_units(computed.values, system)) == []
