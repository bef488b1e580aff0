"""No check says that a formula was changed where only the farm is strange: negative, zero and huge costs, losses of all."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from typing import Any, Final

import numpy as np
import pytest

from tests.twin.edge_farms import changes_of, plausible
from tests.twin.farms import results

SUMS: Final = (
    "recipe_checks.mix_adds_up",
    "bag.bag_adds_up",
    "harvest.picked_adds_up",
    "growing_cost.cost_adds_up",
    "lost_bags.bags_make_up_the_cost",
    "make_or_buy.lost_bag_agrees",
    "make_or_buy_turn.made_adds_up",
    "make_or_buy_worth.worth_agrees",
    "in_process.bags_add_up",
    "cold_room.weight_adds_up",
    "month_totals.weeks_make_months",
    "month_sales.sales_add_up",
    "month_sales.shares_add_up",
    "month_supplies.supplies_add_up",
    "month_cash.cash_adds_up",
)
"""Checks that hold two ways of working out one amount against each other."""

Typed = Mapping[str, Any]

NOTHING_PAID: Final[Typed] = {
    "farm.wage": 0,
    "ingredient.price": [0, 0, 0, 0, 0],
    "bag.bag_price": 0,
    "bag.tie_price": 0,
    "energy.electricity_price": 0,
    "energy.demand_charge": 0,
    "energy.water_price": 0,
    "spawn.price": 0,
    "spawn.freight": 0,
}
NO_LAB_PAID: Final[Typed] = {
    "make_or_buy.lab_price": 0,
    "make_or_buy.trials": 0,
    "make_or_buy.upkeep": 0,
    "make_or_buy.resale": 0,
}
COSTS: Final[Mapping[str, Typed]] = {
    "as it is": {},
    "nothing paid": NOTHING_PAID,
    "nothing paid, and no lab": {**NOTHING_PAID, **NO_LAB_PAID},
    "paid to take the ingredients": {"ingredient.price": [-9, -9, -9, -9, 0]},
    "bags that bring money in": {"bag.bag_price": -50, "spawn.price": -200},
    "lab that sells far dearer than it cost": {"make_or_buy.resale": 1e7},
    "lab that sells dearer, nothing else paid": {**NOTHING_PAID, "make_or_buy.resale": 1e7},
    "lab that costs less than nothing": {"make_or_buy.lab_price": -60000, "make_or_buy.upkeep": -9000},
    "dear beyond sense": {"ingredient.price": [1e9, 1e9, 1e9, 1e9, 0], "spawn.price": 1e9, "farm.wage": 1e9},
    "dear lab": {"make_or_buy.lab_price": 1e12, "make_or_buy.upkeep": 1e9},
    "next to nothing": {**NOTHING_PAID, **NO_LAB_PAID, "bag.bag_price": 1e-12, "farm.wage": 1e-12},
}
LOSSES: Final[Mapping[str, Typed]] = {
    "usual losses": {},
    "none lost": {
        "crop.loss_at_steaming": 0,
        "recipe.loss_in_spawn_run": 0,
        "crop.loss_before_first_pick": 0,
        "crop.loss_between_flushes": 0,
        "spawn.extra_loss": 0,
    },
    "all lost at steaming": {"crop.loss_at_steaming": 1},
    "all lost in the spawn run": {"recipe.loss_in_spawn_run": 1},
    "all lost in the spawn run, the last by own spawn": {
        "recipe.loss_in_spawn_run": 0.25,
        "spawn.extra_loss": 0.75,
    },
    "all lost before the first pick": {"crop.loss_before_first_pick": 1},
    "all lost between flushes": {"crop.loss_between_flushes": [0, 1, 1, 1]},
    "all lost at every step": {
        "crop.loss_at_steaming": 1,
        "recipe.loss_in_spawn_run": 1,
        "crop.loss_before_first_pick": 1,
        "crop.loss_between_flushes": 1,
    },
    "next to all lost": {"crop.loss_at_steaming": 0.999999, "recipe.loss_in_spawn_run": 0.999999},
    "more lost at steaming than there are": {"crop.loss_at_steaming": 1.5},
    "more lost in the spawn run than there are": {"recipe.loss_in_spawn_run": 1.5},
    "more lost before the first pick than there are": {"crop.loss_before_first_pick": 1.5},
    "all trimmed": {"crop.trim": 1},
    "more trimmed than there is": {"crop.trim": 3},
    "all dried away": {"crop.shrink": 1},
    "nothing picked": {"recipe.efficiency_given": 0},
}
WAYS: Final[Mapping[str, Typed]] = {
    "spawn bought": {},
    "spawn made": {"spawn.supply": "made on the farm"},
    "spawn made in the steamer, hours typed": {
        "spawn.supply": "made on the farm",
        "own_spawn.route": "one grain, then sawdust spawn",
        "make_or_buy.limit": "the steamer",
        "own_spawn.own_hours": 11,
    },
}
STRANGE: Final[Mapping[str, Typed]] = {
    "no weeks worked": {"farm.weeks_worked": 0},
    "no bags filled": {"farm.bags_filled_a_week": 0},
    "no return wanted": {"make_or_buy.wanted_return": 0},
    "a small return wanted": {"make_or_buy.wanted_return": 1e-6},
    "a return of all": {"make_or_buy.wanted_return": 1},
    "lab for a broken number of years": {"make_or_buy.life": 6.5},
    "lab for no years": {"make_or_buy.life": 0},
    "lab for longer than is counted": {"make_or_buy.life": 30},
    "lab for one year": {"make_or_buy.life": 1},
    "wet fill of nothing": {"bag.wet_fill": 0},
    "flushes that are not whole": {"crop.flushes_kept": 2.5},
    "no flush kept": {"crop.flushes_kept": 0},
}
SINGLE_COSTS: Final = (
    "farm.wage",
    "bag.bag_price",
    "bag.tie_price",
    "energy.electricity_price",
    "energy.demand_charge",
    "energy.water_price",
    "spawn.price",
    "spawn.freight",
    "growing_cost.incubation_room_rate",
    "growing_cost.fruiting_room_rate",
    "make_or_buy.lab_price",
    "make_or_buy.resale",
    "make_or_buy.upkeep",
    "make_or_buy.bag_leaves",
)


def blamed(cases: Mapping[str, Typed]) -> list[str]:
    """The farms, in both unit systems, of which some sum check says that it does not add up, and which check."""
    farms = [plausible(changes_of(changes)) for changes in cases.values()]
    found = []
    for system in ("metric", "us"):
        values = results(farms, system)
        verdicts = {check: np.broadcast_to(values[check], len(farms)) for check in SUMS}
        found += [
            f"{name} ({system}): {check}"
            for check in SUMS
            for name, well in zip(cases, verdicts[check], strict=True)
            if well != 1
        ]
    return found


@pytest.mark.parametrize("way", WAYS)
def test_no_cost_and_no_loss_breaks_a_sum(way: str) -> None:
    cases = {
        f"{cost}, {loss}": {**COSTS[cost], **LOSSES[loss], **WAYS[way]}
        for cost, loss in itertools.product(COSTS, LOSSES)
    }
    assert blamed(cases) == []


@pytest.mark.parametrize("way", WAYS)
def test_no_strange_figure_breaks_a_sum(way: str) -> None:
    assert blamed({name: {**changes, **WAYS[way]} for name, changes in STRANGE.items()}) == []


def random_costs(rng: np.random.Generator) -> dict[str, Any]:
    """Costs of either sign from a tenth to millions, so that large ones cancel and small ones are left."""
    costs: dict[str, Any] = {name: round(rng.normal() * 10.0 ** rng.integers(-1, 7), 1) for name in SINGLE_COSTS}
    costs["ingredient.price"] = [round(price, 1) for price in rng.normal(size=5)]
    costs["make_or_buy.wanted_return"] = float(rng.choice([0, 1e-5, 0.08, 1]))
    costs["spawn.supply"] = str(rng.choice(["bought", "made on the farm"]))
    return costs


def test_costs_of_either_sign_break_no_sum() -> None:
    rng = np.random.default_rng(41)
    assert blamed({f"farm {number}": random_costs(rng) for number in range(400)}) == []


# Rounding is judged by the size of an amount, also of one below zero, which only a number past every limit can make.


@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_mix_of_less_than_no_water_that_is_as_wanted_is_not_too_wet(system: str) -> None:
    """Dry matter of 125 % brings -0.25/1.25 = -0.2 kg of water for each kg dry; -25 % wanted is -0.25/1.25 as well."""
    farm = plausible(changes_of({"ingredient.dry_matter": 1.25, "recipe.target_moisture": -0.25}))
    found = results([farm], system)
    assert found["recipe.water_wanted"][0, :2] == pytest.approx(-0.2)
    assert found["recipe.water_in_ingredients"][0, :2] == pytest.approx(-0.2)
    assert found["recipe_checks.dry_enough"][0] == 1


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("batch_weeks", [1, -1])
def test_spawn_that_lasts_just_as_long_as_it_keeps_does_keep(batch_weeks: float, system: str) -> None:
    """Of the generation that goes into the bags: what is needed of it rests on no other."""
    made: Typed = {"spawn.supply": "made on the farm", "own_spawn.batch_weeks": batch_weeks}
    lasting = results([plausible(changes_of(made))], system)["own_spawn.weeks_lasting"][0, 1]
    assert lasting * batch_weeks > 1
    seven_days_a_week = 7 * lasting
    farm = plausible(changes_of({**made, "own_spawn.shelf_life": seven_days_a_week}))
    assert results([farm], system)["own_spawn.keeps"][0, 1] == 1


@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_load_that_takes_up_all_heat_lets_out_none(system: str) -> None:
    """Without a meter, air to drive out or a bleeder, what goes into the steam is what load and walls take, hot or cold."""
    tight = {
        "steamer.kind": "pressure vessel",
        "vessel.condensate": "falls back to the boil",
        "vessel.purge_steam": 0,
        "vessel.vent_flow": 0,
        "vessel.surroundings": 130,
    }
    farms = [plausible(changes_of({**tight, "vessel.start_temperature": 10 + 4 * step})) for step in range(50)]
    found = results(farms, system)
    over = found["vessel.heat_into_steam"] - found["vessel.heat_kept"]
    assert np.abs(over).max() < 1e-9
    assert (over[found["vessel.heat_into_steam"] < 0] > 0).any()  # rounding that must not be taken for heat
    assert found["vessel.not_taken_up"].tolist() == [0.0] * len(farms)
