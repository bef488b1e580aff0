"""The farm with its spawn got the other way is the farm that the engine works out when the choice is made the other way."""

from __future__ import annotations

from functools import cache

import pytest

from farmbook.model.crop.spawn_source import BOUGHT, MADE, SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.owning.capital import Capital
from farmbook.model.trials.bag_to_fruiting import BagToFruiting
from farmbook.model.trials.other_spawn import OtherSpawn
from farmbook.model.year.year import Year
from farmbook.results import Computed, compute, load_scenario
from farmbook.scenario.scenario import with_cell
from farmbook.sections.declare import Input, LineOf
from tests.workbook.shipped import SCENARIOS

WANTED = (Year.profit, Hours.labour_cost, Capital.loss, BagToFruiting.in_money, BagToFruiting.in_full)
WAYS = ((BOUGHT.label, MADE.label), (MADE.label, BOUGHT.label))


@cache
def edited(scenario: str, supply: str) -> Computed:
    """A shipped farm on which own spawn loses more bags than typed, and its spawn comes from there."""
    loaded = load_scenario(SCENARIOS[scenario])
    inputs = compute(loaded).model.inputs
    changes: dict[Input, float | str] = {SpawnSource.supply: supply, SpawnSource.extra_loss: 0.06}
    for declared, value in changes.items():
        loaded = with_cell(loaded, inputs[declared].cell, (), value)
    return compute(loaded)


def value(computed: Computed, name: str) -> float:
    return float(computed.values[computed.line(name)][0])


@pytest.mark.parametrize("scenario", SCENARIOS)
@pytest.mark.parametrize(("now", "other"), WAYS)
@pytest.mark.parametrize("declared", WANTED, ids=lambda each: str(each.dotted))
def test_the_other_way_is_the_farm_with_the_choice_changed(
    scenario: str, now: str, other: str, declared: LineOf
) -> None:
    here, there = edited(scenario, now), edited(scenario, other)
    again = here.model.section(OtherSpawn).of(declared)
    assert float(here.values[again][0]) == pytest.approx(value(there, declared.dotted), rel=1e-9)


@pytest.mark.parametrize("scenario", SCENARIOS)
def test_both_years_are_the_same_whichever_way_is_chosen(scenario: str) -> None:
    bought, made = (edited(scenario, supply) for supply in (BOUGHT.label, MADE.label))
    assert value(bought, "year.profit") != pytest.approx(value(made, "year.profit"))
    for computed in (bought, made):
        assert value(computed, "spawn_years.bought") == pytest.approx(value(bought, "year.profit"))
        assert value(computed, "spawn_years.made") == pytest.approx(value(made, "year.profit"))
        assert value(computed, "buy_in.bought_in_money") == pytest.approx(value(bought, "bag_to_fruiting.in_money"))
        assert value(computed, "buy_in.made_in_full") == pytest.approx(value(made, "bag_to_fruiting.in_full"))


@pytest.mark.parametrize("scenario", SCENARIOS)
def test_what_parts_year_and_comparison_adds_up(scenario: str) -> None:
    computed = edited(scenario, MADE.label)
    parts = ("unpaid_hours", "interest", "rest")
    in_all = value(computed, "make_or_buy.advantage") + sum(value(computed, f"spawn_years.{part}") for part in parts)
    assert in_all == pytest.approx(value(computed, "spawn_years.made") - value(computed, "spawn_years.bought"))
    assert value(computed, "spawn_years.advantage_sunk") == pytest.approx(
        value(computed, "spawn_years.advantage") + value(computed, "spawn_years.lab_loss")
    )
    points_apart = (value(computed, "spawn_years.advantage") > 0) != (value(computed, "make_or_buy.advantage") > 0)
    assert str(computed.values[computed.line("spawn_years.why")][0]).startswith(
        "They point apart" if points_apart else "Both point the same way"
    )
