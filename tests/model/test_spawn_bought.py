"""Spawn bought in: a bag and an order worked by hand, wet weight against dry, and the check broken."""

from __future__ import annotations

import pytest

from farmbook.errors import ModelFault
from farmbook.model.bag import Bag
from farmbook.model.crop import Crop
from farmbook.model.farm_plan import Farm
from farmbook.model.recipe import Recipe
from farmbook.model.spawn_bought import GRAIN, SAWDUST, Spawn
from tests.model.growing_case import CROP_SECTIONS, kinds_agree, one, worked
from tests.model.helpers import evaluate

SYSTEMS = ("metric", "us")


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("spawn_per_bag", 0.10),  # 4 % of 2.5 kg wet
        ("spawn_per_dry_mix", 0.10),  # over 1 kg dry
        ("dry_spawn_per_bag", 0.05),  # half of it water
        ("landed_price", 5.0),  # 4 + 1
        ("usable_price", 6.25),  # 5 / 0.8, not 5 x 1.2
        ("cost_per_bag_inoculated", 0.625),
        ("bags_inoculated_a_week", 980.0),
        ("spawn_a_week", 98.0),
        ("order_a_week", 122.5),  # 98 / 0.8
        ("packs_a_week", 25.0),  # 24.5 of 5 kg
        ("spawn_on_order", 245.0),  # two weeks
        ("bench_hours_a_week", 10.0),  # 980 / 98
        ("set_up_hours_a_week", 4.0),
        ("hours_per_bag", 14 / 980),
        ("inoculation_cost", 20 * 14 / 980),
    ],
)
def test_spawn_by_hand(system: str, name: str, by_hand: float) -> None:
    found = worked(system=system, sections=CROP_SECTIONS)
    assert one(found, f"spawn.{name}") == pytest.approx(by_hand, rel=1e-12)


def test_pounds_typed_are_pounds_shown() -> None:
    """5-lb bag, 5 % of its wet weight: a quarter of a pound of spawn, 12.5 % of its 2 lb of dry mix; $2.40 + $0.55 a pound."""
    pound = 0.45359237
    found = evaluate(
        CROP_SECTIONS,
        "us",
        {
            Farm.bags_filled_a_week: 100,
            Farm.bags_per_load: 100,
            Recipe.chosen_recipe: "plain",
            Recipe.parts: [[1]],
            Recipe.dry_matter: [0.55],
            Recipe.price: [0.06],
            Bag.wet_fill: 5 * pound,
            Spawn.spawn_rate: 0.05,
            Spawn.price: 2.40 / pound,
            Spawn.freight: 0.55 / pound,
            Spawn.bad_on_arrival: 0,
        },
        {axis: names[:1] for axis, names in _names().items()},
    )
    assert float(found["spawn.spawn_per_bag"]) == pytest.approx(0.25)
    assert float(found["spawn.spawn_per_dry_mix"]) == pytest.approx(0.125)
    assert float(found["spawn.landed_price"]) == pytest.approx(2.95)
    assert float(found["spawn.cost_per_bag_inoculated"]) == pytest.approx(0.7375)


def _names() -> dict:  # type: ignore[type-arg]
    from tests.model.growing_case import NAMES

    return dict(NAMES)
