"""The model against its twin: outcomes, checks and all else the twin works out, on many farms, in both units."""

from __future__ import annotations

import ast
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Array
from farmbook.results import compute, load_scenario, whole_farm
from tests.demos import DEMOS
from tests.twin.edge_farms import EDGES, at_a_limit, edge_farm, numbers, other_options, plausible, with_one
from tests.twin.farm_twin import choices, twin, whole_plan
from tests.twin.farm_twin_ground import Given
from tests.twin.farms import (
    Difference,
    Farm,
    alternative_lines,
    compared_lines,
    differences,
    farm_of_cells,
    in_declared_units,
    least_room,
    results,
    twin_inputs,
    values_of,
)
from tests.twin.outcomes import outcomes
from tests.twin.random_farms import random_farm

SYSTEMS = ("metric", "us")
RANDOM_FARMS = {12: 60, 36: 24, 84: 12}
"""By the months of their plans."""
AT_ONCE = 46
"""Edges, or numbers, of one run of the engine, which hardly takes longer for many farms than for one."""
SCENARIOS = (*DEMOS, DEMOS[0].parent / "kestrel_second_room.toml")


def disagreements(farms: Sequence[Farm], systems: tuple[str, ...] = SYSTEMS) -> list[Difference]:
    """Where the model and the twin differ."""
    given = [twin_inputs(farm) for farm in farms]
    found = [twin(each) for each in given]
    return [each for system in systems for each in held(given, found, values_of(farms, system), system)]


def held(
    given: Sequence[Given], found: Sequence[Mapping[str, Array]], values: Mapping[Line, Array], system: str
) -> list[Difference]:
    """The farms worked out by the twin beside the model's draws; choices go by the model's own years of the other ways."""
    ways = in_declared_units(values, system, [line for line in alternative_lines() if line in values and not line.case])
    ours = []
    for number, (inputs, own) in enumerate(zip(given, found, strict=True)):
        years = {name: value[min(number, len(value) - 1)] for name, value in ways.items()}
        ours.append({**own, **choices(inputs, dict(own), years), **whole_plan(inputs, dict(own))})
    there = [
        line for line in compared_lines() if line in values
    ]  # some lines are in a book only where a table asks for them
    return differences(ours, in_declared_units(values, system, there))


def test_every_outcome_has_a_twin() -> None:
    worked_out, every = set(whole_twin(plausible())), {line.name for line in compared_lines()}
    assert outcomes() <= worked_out <= every
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


def whole_twin(farm: Farm) -> dict[str, Array]:
    """All that the twin works out of a farm; what the farm comes to in other ways is the model's."""
    given = twin_inputs(farm)
    ways = in_declared_units(values_of([farm], "metric"), "metric", alternative_lines())
    found = twin(given)
    years = {name: value[0] for name, value in ways.items()}
    return {**found, **choices(given, dict(found), years), **whole_plan(given, dict(found))}


def test_a_slip_in_any_one_line_is_seen() -> None:
    farm = plausible()
    ours, theirs = [whole_twin(farm)], results([farm], "metric")
    for name, value in theirs.items():
        if name not in ours[0]:
            continue  # it feeds an outcome, which is held
        wrong = value * (1 + 1e-6) + 10 * least_room()[name]
        assert [each.line for each in differences(ours, {name: wrong})] == [name]


@pytest.mark.parametrize("first", range(0, len(EDGES), AT_ONCE))
def test_strange_farms(first: int) -> None:
    names = list(EDGES)[first : first + AT_ONCE]
    assert [(names[each.farm], each) for each in disagreements([edge_farm(name) for name in names])] == []


def test_every_option_of_every_choice() -> None:
    assert disagreements([plausible({declared: option}) for declared, option in other_options()]) == []


@pytest.mark.parametrize("first", range(0, len(numbers()), AT_ONCE))
def test_each_number_cleared_and_at_its_limits(first: int) -> None:
    own = numbers()[first : first + AT_ONCE]
    typed = [(declared, at_a_limit(declared, side)) for declared in own for side in (0, 1)]
    # A cleared temperature is 0 of the scale that the book shows, so a book in degF is not held to the twin there.
    alike = [*typed, *((declared, None) for declared in own if declared.unit != "degC")]
    apart = [(declared, None) for declared in own if declared.unit == "degC"]
    for cases, systems in ((alike, SYSTEMS), (apart, SYSTEMS[:1])):
        found = disagreements([with_one(*case) for case in cases], systems) if cases else []
        assert [(cases[each.farm][0].dotted, cases[each.farm][1], each) for each in found] == []


@pytest.mark.parametrize("months", RANDOM_FARMS)
def test_random_farms(months: int) -> None:
    before = sum(count for horizon, count in RANDOM_FARMS.items() if horizon < months)
    seeds = range(before, before + RANDOM_FARMS[months])
    assert disagreements([replace(random_farm(seed), months=months) for seed in seeds]) == []


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda each: each.stem)
def test_every_scenario(path: Path) -> None:
    computed = compute(load_scenario(path))
    system = computed.scenario.system
    given = twin_inputs(farm_of_cells(computed.scenario.cells, system, computed.scenario.months))
    whole = {line.name: line for line in whole_farm().lines}
    values = {whole[line.name]: value for line, value in computed.values.items()}
    assert held([given], [twin(given)], values, system) == []
