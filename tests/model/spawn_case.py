"""The small farm of the other tests with a spawn lab of round numbers, and its lines in metric."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, Final

from farmbook.interpret.numbers import Array
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.choices.make_or_buy_turn import MakeOrBuyTurn
from farmbook.model.choices.make_or_buy_worth import MakeOrBuyWorth
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import TWO_GRAINS_SAWDUST, OwnSpawnWay
from farmbook.sections.declare import Input
from farmbook.sections.section import Section
from tests.model import growing_case
from tests.model.helpers import with_used

__all__ = ["LAB", "OWN", "SECTIONS", "made", "unchanged"]

OWN: Final[tuple[type[Section], ...]] = (
    SpawnSource,
    OwnSpawnWay,
    OwnSpawn,
    OwnSpawnWork,
    SpawnSupply,
    MakeOrBuy,
    MakeOrBuyTurn,
    MakeOrBuyWorth,
)


SECTIONS: Final = with_used(*growing_case.SECTIONS, *OWN)

# 98 kg of spawn a week for 980 bags, 0.1 kg each; bought it costs 0.625 a bag. An hour of work costs 20, over 50 weeks.
LAB: Final[Mapping[Input, Any]] = {
    SpawnSource.extra_loss: 0.02,
    OwnSpawnWay.route: TWO_GRAINS_SAWDUST,
    OwnSpawnWay.grain_bag_mass: 2,
    OwnSpawnWay.sawdust_bag_mass: 2.5,
    OwnSpawnWay.usable_share: 0.8,
    OwnSpawnWay.grain_share: 0.08,
    OwnSpawnWay.grain_from_grain: 5,
    OwnSpawnWay.grain_from_plate: 4,
    OwnSpawnWay.own_moisture: 0.7,
    OwnSpawn.buffer_days: 1,
    OwnSpawn.failure: [0.02, 0.2, 0.2, 0.5],
    OwnSpawn.batch_weeks: [1, 1, 2, 2.5],
    OwnSpawn.run_days: [16, 10, 12, 11],
    OwnSpawn.shelf_life: [30, 7, 30, 60],
    OwnSpawnWork.rate: [20, 5, 4, 10],
    OwnSpawnWork.set_up_hours: [0.5, 0.4, 0.6, 0.9],
    OwnSpawnWork.unit_cost: [0.5, 2, 3, 1],
    OwnSpawnWork.in_cooker: [10, 3, 3, 10],
    OwnSpawnWork.cooker_cost: 3,
    OwnSpawnWork.weekly_hours: 1.8,
    OwnSpawnWork.culture_cost: 400,
    OwnSpawnWork.consumables: 600,
    MakeOrBuy.lab_price: 59000,
    MakeOrBuy.trials: 1000,
    MakeOrBuy.life: 5,
    MakeOrBuy.resale: 6000,
    MakeOrBuy.wanted_return: 0.10,
    MakeOrBuy.upkeep: 700,
    MakeOrBuy.bag_leaves: 2,
    MakeOrBuyTurn.bad_made: 0.5,
    MakeOrBuyTurn.bad_bought: 0.25,
    MakeOrBuyTurn.delivery_weeks: 2,
}


def made(changes: Mapping[Input, Any] | None = None, system: str = "metric") -> dict[str, Array]:
    """Every line of the farm with its lab, some inputs changed, brought back to metric from a book of either system."""
    return growing_case.worked({**LAB, **(changes or {})}, system, SECTIONS)


@cache
def unchanged(system: str) -> Mapping[str, Array]:
    """The farm and its lab as they stand; not for tests that change the model itself."""
    return made(system=system)
