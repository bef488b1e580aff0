"""One small farm with round numbers, for the tests of spawn, crop and growing cost, and its lines in metric."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, Final

import numpy as np

from farmbook.expr.lower import lower
from farmbook.interpret.numbers import Array
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import Input
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from tests.model.helpers import evaluate, in_metric, with_used

__all__ = ["CROP_SECTIONS", "GIVEN", "NAMES", "OWN", "SECTIONS", "kinds_agree", "one", "table", "unchanged", "worked"]

CROP_SECTIONS: Final = with_used(SteamerInUse, SpawnSupply, Harvest)
SECTIONS: Final = with_used(SpawnSupply, LostBags)
OWN: Final = (Crop, Spawn, Harvest, GrowingCost, LostBags)
NAMES: Final = {INGREDIENT: ("sawdust",), RECIPE: ("plain", "rich", "")}

# 1,000 bags a week of 2.5 kg at 60 % moisture: 1 kg of dry mix each, at 0.20. An hour of work costs 20.
GIVEN: Final[Mapping[Input, Any]] = {
    Farm.bags_filled_a_week: 1000,
    Farm.weeks_worked: 50,
    Farm.bags_per_load: 1000,
    Farm.wage: 20,
    Farm.payroll_extra: 0,
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1, 1, 0]],
    Recipe.target_moisture: [0.6, 0.6, 0.6],
    Recipe.dry_matter: [0.5],
    Recipe.price: [0.1],
    Bag.wet_fill: 2.5,
    Bag.bag_price: 0.28,
    Bag.tie_price: 0.02,
    Mixing.bags_per_hour: 100,
    Energy.electricity_price: 0,
    Energy.demand_charge: 0,
    Energy.water_price: 0,
    CabinetRun.handling_rate: 250,
    Cabinet.watching_hours: 1,
    Crop.loss_at_steaming: 0.02,
    Crop.loss_in_spawn_run: [0.05, 0.10, 0.5],
    Crop.loss_before_first_pick: 0.04,
    Crop.loss_between_flushes: [0, 0.05, 0.10, 0.20],
    Crop.flushes_kept: 3,
    Crop.efficiency_given: [[0.5, 0.3, 0.1, 0.05], [0.6, 0.3, 0.1, 0.05], [9, 9, 9, 9]],
    Crop.trim: 0.05,
    Crop.shrink: 0.04,
    Spawn.spawn_rate: 0.04,
    Spawn.own_moisture: 0.5,
    Spawn.price: 4,
    Spawn.freight: 1,
    Spawn.bad_on_arrival: 0.2,
    Spawn.pack_weight: 5,
    Spawn.lead_time: 2,
    Spawn.bags_per_hour: 98,
    Spawn.set_up_hours: 2,
    Spawn.lab_days: 2,
    Harvest.spawn_run_days: 20,
    Harvest.days_to_first_pick: 10,
    Harvest.added_days: [0, 12, 13, 14],
    Harvest.turn_round_days: 2,
    GrowingCost.shelving_rate: 200,
    GrowingCost.opening_rate: 100,
    GrowingCost.clearing_rate: 80,
    GrowingCost.culling_rate: 50,
    GrowingCost.incubation_room_rate: 0.07,
    GrowingCost.fruiting_room_rate: 0.14,
}


def worked(
    changes: Mapping[Input, Any] | None = None,
    system: str = "metric",
    sections: tuple[type[Section], ...] = SECTIONS,
) -> dict[str, Array]:
    """Every line of the small farm with some inputs changed, brought back to metric whatever the system of the book."""
    owned = {declared: value for declared, value in GIVEN.items() if declared.owner in sections}
    found = evaluate(sections, system, {**owned, **(changes or {})}, NAMES)
    if system == "metric":
        return found
    lines = {line.name: line for line in Model(sections).lines}
    return {
        name: in_metric(value, str(lines[name].unit)) if value.dtype.kind == "f" else value
        for name, value in found.items()
    }


@cache
def unchanged(system: str) -> Mapping[str, Array]:
    """The small farm as it stands; not for tests that change the model itself."""
    return worked(system=system)


def one(found: Mapping[str, Array], name: str) -> float:
    """A line that has a single value."""
    return float(found[name])


def table(found: Mapping[str, Array], name: str) -> list[float]:
    """A line of one axis, from the first member."""
    return [float(value) for value in np.asarray(found[name]).ravel()]


def kinds_agree(section: type[Section], name: str) -> None:
    """Lower one line of a fresh model; raises ModelFault where its kinds do not agree."""
    line = next(line for line in Model(SECTIONS).section(section).lines if line.name == f"{section.key()}.{name}")
    for system in ("metric", "us"):
        lower(line, system)
