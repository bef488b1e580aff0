"""Spawn bought in: a bag and an order worked by hand, wet weight against dry, and the check broken."""

from __future__ import annotations

import pytest

from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import GRAIN, SAWDUST, Spawn
from farmbook.sections.declare import Option
from tests.model.growing_case import CROP_SECTIONS, one, unchanged, worked
from tests.model.helpers import evaluate

POUND = 0.45359237
FIVE_POUND_BAGS = {
    Farm.bags_filled_a_week: 100,
    Farm.bags_per_load: 100,
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1]],
    Recipe.dry_matter: [0.55],
    Recipe.price: [0.06],
    Bag.wet_fill: 5 * POUND,
    Spawn.spawn_rate: 0.05,
    Spawn.price: 2.40 / POUND,
    Spawn.freight: 0.55 / POUND,
    Spawn.bad_on_arrival: 0,
    Spawn.pack_weight: 5 * POUND,
}


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("spawn_per_bag", 0.10),  # 4 % of 2.5 kg wet
        ("spawn_per_dry_mix", 0.10),  # over 1 kg dry
        ("dry_spawn_per_bag", 0.05),  # half of it is water
        ("landed_price", 5.0),  # 4 + 1
        ("usable_price", 6.25),  # 5 / 0.8, not 5 x 1.2
        ("cost_per_bag_inoculated", 0.625),
        ("bags_inoculated_a_week", 980.0),
        ("spawn_a_week", 98.0),
        ("order_a_week", 122.5),  # 98 / 0.8
        ("packs_a_week", 25.0),  # 24.5 of 5 kg
        ("spawn_on_order", 245.0),  # two weeks of it
        ("bench_hours_a_week", 10.0),  # 980 / 98
        ("set_up_hours_a_week", 4.0),  # 2 x 2
        ("hours_per_bag", 14 / 980),
        ("inoculation_cost", 20 * 14 / 980),
    ],
)
def test_spawn_by_hand(system: str, name: str, by_hand: float) -> None:
    assert one(unchanged(system), f"spawn.{name}") == pytest.approx(by_hand, rel=1e-12)


def test_a_us_book_shows_pounds() -> None:
    """5-lb bags at 60 %: 5 % of wet weight is a quarter of a pound, an eighth of the 2 lb of dry mix."""
    found = evaluate(CROP_SECTIONS, "us", FIVE_POUND_BAGS, {INGREDIENT: ("sawdust",), RECIPE: ("plain",)})
    assert one(found, "spawn.spawn_per_bag") == pytest.approx(0.25)
    assert one(found, "spawn.spawn_per_dry_mix") == pytest.approx(0.125)
    assert one(found, "spawn.landed_price") == pytest.approx(2.95)
    assert one(found, "spawn.cost_per_bag_inoculated") == pytest.approx(0.7375)


@pytest.mark.parametrize("system", ["metric", "us"])
def test_an_order_of_whole_bags_is_not_rounded_up_by_a_conversion(system: str) -> None:
    """122.5 kg in bags of 24.5 kg are five bags, though 24.5 kg is no round number of pounds."""
    found = worked({Spawn.pack_weight: 24.5}, system, CROP_SECTIONS)
    assert one(found, "spawn.packs_a_week") == 5
    assert one(worked({Spawn.pack_weight: 24.4}, system, CROP_SECTIONS), "spawn.packs_a_week") == 6


@pytest.mark.parametrize(("kind", "water"), [(GRAIN, 0.48), (SAWDUST, 0.60)])
def test_the_kind_settles_the_water_until_it_is_measured(kind: Option, water: float) -> None:
    usual = worked({Spawn.kind: kind, Spawn.own_moisture: None}, sections=CROP_SECTIONS)
    assert one(usual, "spawn.dry_spawn_per_bag") == pytest.approx(0.1 * (1 - water))
    measured = worked({Spawn.kind: kind, Spawn.own_moisture: 0.3}, sections=CROP_SECTIONS)
    assert one(measured, "spawn.dry_spawn_per_bag") == pytest.approx(0.07)


def test_spawn_follows_wet_weight_and_not_dry_mix() -> None:
    """A wetter mix of the same wet weight takes the same spawn, though it holds less dry mix."""
    wetter = worked({Recipe.target_moisture: [0.7, 0.7, 0.7]}, sections=CROP_SECTIONS)
    assert one(wetter, "spawn.spawn_per_bag") == pytest.approx(0.10)
    assert one(wetter, "spawn.spawn_per_dry_mix") == pytest.approx(0.10 / 0.75)


def test_bags_lost_at_steaming_get_no_spawn() -> None:
    found = worked({Crop.loss_at_steaming: 0.5}, sections=CROP_SECTIONS)
    assert one(found, "spawn.spawn_a_week") == pytest.approx(50)
    assert one(found, "spawn.hours_per_bag") == pytest.approx(1 / 98 + 4 / 500)


@pytest.mark.parametrize(("rate", "fine"), [(0.009, 0), (0.011, 1), (0.199, 1), (0.201, 0), (None, 0)])
def test_an_unbelievable_share_of_spawn_is_flagged(rate: float | None, fine: int) -> None:
    assert one(worked({Spawn.spawn_rate: rate}, sections=CROP_SECTIONS), "spawn.spawn_rate_believable") == fine
