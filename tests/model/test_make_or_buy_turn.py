"""Buying spawn against making it: every option, the verdict, where the answer turns, what is at risk, broken checks."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

import pytest

from farmbook.expr.nodes import Constant, Expr
from farmbook.model.choices.make_or_buy import AFTER_LAB, LAB, STEAMING, MakeOrBuy
from farmbook.model.choices.make_or_buy_turn import MakeOrBuyTurn
from farmbook.model.choices.make_or_buy_worth import MakeOrBuyWorth
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import BOUGHT, MADE, SpawnSource
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import (
    IN_COOKER,
    IN_STEAMER,
    ONE_GRAIN,
    ONE_GRAIN_SAWDUST,
    TWO_GRAINS,
    TWO_GRAINS_SAWDUST,
    OwnSpawnWay,
)
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import Input, LineOf, Option
from farmbook.sources import ARITHMETIC
from farmbook.units import unit
from tests.model.growing_case import one, table
from tests.model.spawn_case import made, unchanged

LOST = 0.8 + 0.625 + 20 * 14 / 980 + 0.3 + 0.4


@pytest.mark.parametrize("cooked_in", [IN_STEAMER, IN_COOKER])
@pytest.mark.parametrize(("limit", "margin"), [(STEAMING, 2), (LAB, 2), (AFTER_LAB, 0)])
def test_places_count_only_where_they_could_have_earned(limit: Option, margin: float, cooked_in: Option) -> None:
    """50 bags of spawn a week in the steamer, in place of 49 that come whole out of it; a bag more would leave 2."""
    found = made({MakeOrBuy.limit: limit, OwnSpawnWay.sawdust_cooked_in: cooked_in})
    displaced = 49 * 50 * 2 if limit == STEAMING and cooked_in == IN_STEAMER else 0
    assert one(found, "make_or_buy.displaced") == pytest.approx(displaced)
    assert one(found, "make_or_buy.margin_lost") == margin
    assert one(found, "make_or_buy.lost_bag_cost") == pytest.approx(LOST + margin)
    assert one(found, "make_or_buy_turn.losses_per_bag") == pytest.approx(0.02 * (LOST + margin) + displaced / 49000)
    assert one(found, "make_or_buy_turn.made_adds_up") == 1


def upkeep_for(cost_of_making: float) -> dict[Input, Any]:
    """Upkeep at which making costs so much a year; buying costs 30,625."""
    return {MakeOrBuy.upkeep: 700 + cost_of_making - one(unchanged("metric"), "make_or_buy.made")}


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    ("cost_of_making", "verdict"),
    [
        (30625 * 0.89, "Make"),
        (30625 * 0.91, "Too close"),
        (30625.0, "Too close"),
        (30625 / 0.91, "Too close"),
        (30625 / 0.89, "Buy"),
    ],
)
def test_the_verdict_needs_a_tenth_of_the_dearer_way(system: str, cost_of_making: float, verdict: str) -> None:
    found = made(upkeep_for(cost_of_making), system)
    assert one(found, "make_or_buy.made") == pytest.approx(cost_of_making)
    assert str(found["make_or_buy.verdict"]).startswith(verdict)


def test_the_comparison_does_not_move_with_the_choice() -> None:
    """Each way is worked out for itself, whichever one the farm follows."""
    ways = [made({SpawnSource.supply: supply}) for supply in (BOUGHT, MADE)]
    for name in ways[0]:
        worked = name.startswith(("make_or_buy", "own_spawn")) and ways[0][name].dtype.kind == "f"
        if worked and name != "own_spawn.young_enough":  # silent as long as the spawn is bought
            assert ways[1][name] == pytest.approx(ways[0][name], rel=1e-12), name


NO_STEPS: Final[Mapping[Input, Any]] = {
    OwnSpawn.shelf_life: [365, 365, 365, 365],
    OwnSpawnWork.set_up_hours: [0, 0, 0, 0],
    OwnSpawnWork.cooker_cost: 0,
}
"""Without batches and whole cooker runs the cost of making is a straight line."""


@pytest.mark.parametrize("limit", [STEAMING, AFTER_LAB])
def test_at_the_number_of_bags_given_both_ways_cost_the_same(limit: Option) -> None:
    changes = {**NO_STEPS, MakeOrBuy.limit: limit, Spawn.set_up_hours: 0}
    bags = one(made(changes), "make_or_buy_turn.pays_from")
    assert 500 < bags < 2000
    there = made({**changes, Farm.bags_filled_a_week: bags})
    assert one(there, "make_or_buy.advantage") == pytest.approx(0, abs=1e-6)
    assert one(there, "make_or_buy_turn.pays_from") == pytest.approx(bags)


@pytest.mark.parametrize(("share", "words"), [(0.99, "You fill fewer"), (1.01, "You fill more")])
def test_bags_a_week_in_words(share: float, words: str) -> None:
    changes = {**NO_STEPS, Spawn.set_up_hours: 0}
    bags = one(made(changes), "make_or_buy_turn.pays_from") * share
    found = made({**changes, Farm.bags_filled_a_week: bags})
    assert str(found["make_or_buy_turn.pays_in_words"]).startswith(words)


def test_making_never_pays_where_each_bag_costs_more_that_way() -> None:
    found = made({Spawn.price: 0.5, Spawn.freight: 0})
    assert str(found["make_or_buy_turn.pays_in_words"]).startswith("Making pays at no number")
    assert one(found, "make_or_buy_turn.pays_from") == 0


@pytest.mark.parametrize("row", range(7))
def test_at_the_hours_in_the_table_both_ways_cost_the_same(row: int) -> None:
    hours = table(unchanged("metric"), "make_or_buy_turn.turning_hours")[row]
    found = made({OwnSpawnWork.own_hours: hours, SpawnSource.extra_loss: row * 0.005})
    assert one(found, "make_or_buy.advantage") == pytest.approx(0, abs=1e-6)
    assert table(found, "make_or_buy_turn.advantage_at_loss")[row] == pytest.approx(0, abs=1e-6)


def test_at_the_extra_loss_given_both_ways_cost_the_same() -> None:
    loss = one(unchanged("metric"), "make_or_buy_turn.turning_loss")
    assert one(made({SpawnSource.extra_loss: loss}), "make_or_buy.advantage") == pytest.approx(0, abs=1e-6)


def test_not_even_free_hours_help_where_buying_is_cheap() -> None:
    found = made({Spawn.price: 0.5, Spawn.freight: 0})
    assert table(found, "make_or_buy_turn.turning_hours") == [0] * 7
    assert one(found, "make_or_buy_turn.turning_loss") == 0


@pytest.mark.parametrize(
    ("route", "row", "weeks"),
    [(ONE_GRAIN, 2, 3), (TWO_GRAINS, 1, 2), (ONE_GRAIN_SAWDUST, 0, 1), (TWO_GRAINS_SAWDUST, 0, 1)],
)
def test_a_bad_batch_reaches_the_bags_of_what_comes_last(route: Option, row: int, weeks: float) -> None:
    found = made(
        {
            OwnSpawnWay.route: route,
            OwnSpawn.batch_weeks: [1, 2, 3, 4],
            OwnSpawn.failure: [0, 0, 0, 0],
            OwnSpawn.shelf_life: [60, 60, 60, 60],
        }
    )
    lasting = table(found, "own_spawn.weeks_lasting")[row]
    assert weeks <= lasting < weeks * 1.03
    assert one(found, "make_or_buy_turn.last_step") == row + 1
    assert one(found, "make_or_buy_turn.risk_made") == pytest.approx(980 * lasting * (LOST + 2))


@pytest.mark.parametrize("limit", [STEAMING, LAB, AFTER_LAB])
def test_a_ruined_week_costs_its_bags_and_its_crop_whatever_the_limit(limit: Option) -> None:
    """980 bags are lost, at what they cost by then and the work of taking them out, and none of them leaves its 2."""
    found = made({MakeOrBuy.limit: limit, MakeOrBuyTurn.delivery_weeks: 1})
    week = 980 * LOST + one(found, "make_or_buy_turn.week_without")
    assert one(found, "make_or_buy_turn.week_without") == 1960
    assert one(found, "make_or_buy_turn.risk_made") == pytest.approx(week)
    assert one(found, "make_or_buy_turn.risk_bought") == pytest.approx(week)


def test_a_bad_batch_that_is_thrown_out_early_reaches_fewer_bags() -> None:
    """61.25 bags of grain a week: one lasts 1 / 61.25 of a week, more than the tenth of a day that it keeps."""
    late = {OwnSpawnWay.route: ONE_GRAIN, OwnSpawn.failure: [0, 0, 0, 0], OwnSpawn.batch_weeks: [1, 1, 0.01, 1]}
    stale = made({**late, OwnSpawn.shelf_life: [30, 30, 0.1, 60]})
    kept = made({**late, OwnSpawn.shelf_life: [30, 30, 30, 60]})
    assert one(stale, "make_or_buy_turn.reached_made") == pytest.approx(980 * 0.1 / 7)
    assert one(kept, "make_or_buy_turn.reached_made") == pytest.approx(980 * 1.6 / 98)


@pytest.mark.parametrize(("life", "fine"), [(1, 1), (10, 1), (7, 1), (7.5, 0), (11, 0), (0.5, 0), (None, 0)])
def test_a_broken_life_is_caught(life: float | None, fine: int) -> None:
    assert one(made({MakeOrBuy.life: life}), "make_or_buy_worth.life_whole") == fine


@pytest.mark.parametrize(("resale", "fine"), [(0, 1), (45000, 1), (45001, 0)])
def test_a_lab_that_sells_for_more_than_it_cost_is_caught(resale: float, fine: int) -> None:
    """The trials, paid beside the price of the lab, are never sold again."""
    found = made({MakeOrBuy.lab_price: 45000, MakeOrBuy.trials: 9000, MakeOrBuy.resale: resale})
    assert one(found, "make_or_buy_worth.resale_fits") == fine


@pytest.mark.parametrize(("of_recipe", "extra", "fine"), [(0.6, 0.3, 1), (0.5, 0.5, 0), (0.75, 0.3, 0)])
def test_losses_that_leave_no_bag_with_own_spawn_are_caught(of_recipe: float, extra: float, fine: int) -> None:
    losses: dict[Input, Any] = {Crop.loss_in_spawn_run: of_recipe, SpawnSource.extra_loss: extra}
    assert one(made({**losses, SpawnSource.supply: BOUGHT}), "make_or_buy_worth.losses_fit") == fine
    assert one(made({**losses, SpawnSource.supply: MADE}), "make_or_buy_worth.losses_fit") == 1


@pytest.mark.parametrize("rate", [0, 0.08, 0.3])
@pytest.mark.parametrize("life", [1, 4, 10])
def test_worth_and_yearly_cost_agree_at_any_rate(rate: float, life: float) -> None:
    found = made({MakeOrBuy.wanted_return: rate, MakeOrBuy.life: life})
    assert one(found, "make_or_buy_worth.worth_agrees") == 1
    yearly = one(found, "make_or_buy_worth.worth_in_all") * one(found, "make_or_buy.owning_factor")
    assert yearly == pytest.approx(one(found, "make_or_buy.advantage"), abs=1e-6)
    for so_far, way in (("bought_so_far", "bought"), ("made_so_far", "made_without_lab")):
        total = table(found, f"make_or_buy_worth.{so_far}")[-1]
        lab = 54000 if way == "made_without_lab" else 0
        assert total == pytest.approx(one(found, f"make_or_buy.{way}") * life + lab)


def test_a_bag_lost_costs_the_same_as_on_the_cost_sheet() -> None:
    found = made({MakeOrBuy.limit: AFTER_LAB})
    assert one(found, "lost_bags.cost_in_spawn_run") == pytest.approx(one(found, "make_or_buy.lost_bag_cost"))


SLIGHTLY_MORE = Constant(1.001, "slightly_more", label="Slightly more", unit=unit("1"), source=ARITHMETIC.key)


@pytest.mark.parametrize(
    ("broken", "check"),
    [
        (LostBags.cost_in_spawn_run, "make_or_buy.lost_bag_agrees"),
        (MakeOrBuy.spent_on_bag, "make_or_buy.lost_bag_agrees"),
        (MakeOrBuyTurn.fixed, "make_or_buy_turn.made_adds_up"),
        (MakeOrBuyTurn.per_bag, "make_or_buy_turn.made_adds_up"),
        (MakeOrBuyTurn.growing_work, "make_or_buy_turn.made_adds_up"),
        (MakeOrBuy.made, "make_or_buy_worth.worth_agrees"),
        (MakeOrBuy.owning_factor, "make_or_buy_worth.worth_agrees"),
        (MakeOrBuyWorth.saved, "make_or_buy_worth.worth_agrees"),
        (MakeOrBuyWorth.discount, "make_or_buy_worth.worth_agrees"),
    ],
)
def test_a_changed_formula_is_caught(broken: LineOf, check: str, monkeypatch: pytest.MonkeyPatch) -> None:
    as_it_was = broken.method

    def changed(section: Any) -> Expr:
        return as_it_was(section) * SLIGHTLY_MORE

    monkeypatch.setattr(broken, "method", changed)
    # Work that grows with the bags stands in both parts of the cost, so only its sum can be wrong.
    both = broken is MakeOrBuyTurn.growing_work
    assert one(made(), check) == (1 if both else 0)


def test_a_farm_that_does_nothing_divides_by_nothing() -> None:
    found = made({Crop.loss_at_steaming: 1, Farm.wage: 0, MakeOrBuy.wanted_return: 0})
    for name, value in found.items():
        if name.startswith(("make_or_buy", "own_spawn", "spawn_supply")) and value.dtype.kind == "f":
            assert abs(value).max() < 1e9, name


NOTHING_COSTS: Final[Mapping[Input, Any]] = {
    Farm.wage: 0,
    Recipe.price: [0],
    Bag.bag_price: 0,
    Bag.tie_price: 0,
    Spawn.price: 0,
    Spawn.freight: 0,
    GrowingCost.incubation_room_rate: 0,
    OwnSpawnWork.unit_cost: [0, 0, 0, 0],
    OwnSpawnWork.cooker_cost: 0,
    OwnSpawnWork.culture_cost: 0,
    OwnSpawnWork.consumables: 0,
    MakeOrBuy.lab_price: 0,
    MakeOrBuy.trials: 0,
    MakeOrBuy.resale: 0,
    MakeOrBuy.upkeep: 0,
}


def test_checks_hold_where_nothing_costs_anything() -> None:
    found = made(NOTHING_COSTS)
    assert one(found, "make_or_buy.made") == 0
    assert one(found, "make_or_buy.gap") == 0
    for check in ("make_or_buy.lost_bag_agrees", "make_or_buy_turn.made_adds_up", "make_or_buy_worth.worth_agrees"):
        assert one(found, check) == 1
