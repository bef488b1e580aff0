"""An ordinary load to cook, in a cabinet and in a pressure vessel whose gauge is set to give a temperature."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.cook.cabinet_cook import CabinetCook
from farmbook.model.cook.vessel_cook import VesselCook
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.steaming import CABINET, VESSEL, Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.vessel_run import VesselRun
from tests.calc.chains import gauge_pressure_for
from tests.model.helpers import evaluate, systems_agree, with_used

__all__ = [
    "BAGS",
    "CHECKS",
    "FAST",
    "HOT_AT_ONCE",
    "IN_USE",
    "MIDDLE",
    "PLACES",
    "SLOW",
    "different_lines",
    "failing",
    "vessel_at",
    "worked",
]

SECTIONS: Final = with_used(CabinetRun, VesselRun, CabinetCook, VesselCook)
NAMES: Final = {INGREDIENT: ("sawdust",), RECIPE: ("plain",)}
SLOW, MIDDLE, FAST = BAGS = range(3)
"""The slow bag, the bag by size or probe, the fast bag: where each stands in a line over the three."""
PLACES: Final = ("cabinet_cook", "vessel_cook")
IN_USE: Final[dict[str, dict[Any, Any]]] = {
    "cabinet_cook": {Steaming.kind: CABINET},
    "vessel_cook": {Steaming.kind: VESSEL, VesselRun.hold_time: 9},
}
"""What makes either the steamer in use, with no check of cooking failing."""
CHECKS: Final = (
    "core_heating.readings_in_order",
    "core_heating.rates_in_order",
    "cabinet_cook.middle_gets_hot",
    "cabinet_cook.middle_is_known",
    "cabinet_cook.probe_not_too_fast",
    "vessel_cook.middle_gets_hot",
    "vessel_cook.middle_is_known",
    "vessel_cook.probe_not_too_fast",
)


def vessel_at(degrees: float, height: float = 0.0) -> dict[Any, Any]:
    """A pressure vessel whose steam has this temperature."""
    return {VesselSteam.working_pressure: gauge_pressure_for(degrees, height), VesselSteam.rated_pressure: 1000}


PLAIN: Final[dict[Any, Any]] = {
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1]],
    Recipe.target_moisture: [0.6],
    Recipe.dry_matter: [0.55],
    Recipe.price: [0.05],
    Farm.bags_filled_a_week: 300,
    Farm.bags_per_load: 100,
    CabinetHeat.hold_temperature: 93.3,
    CabinetHeat.length: 3.66,
    CabinetHeat.steel: 400,
    CabinetRun.power: 36,
    CabinetHeat.start_temperature: 15.6,
    CabinetRun.hold_time: 17,
    VesselHeat.start_temperature: 15.6,
    VesselRun.hold_time: 3.5,
    **vessel_at(121.1),
}


HOT_AT_ONCE: Final[dict[Any, Any]] = {CabinetRun.own_heat_up_time: 0, VesselRun.own_heat_up_time: 0}
"""A chamber that is at temperature the moment the steam goes on, as the plain solution of a suddenly heated block has it."""


def worked(changes: Mapping[Any, Any] | None = None, system: str = "metric") -> dict[str, Any]:
    """Every line of the ordinary load with changes, single values as numbers."""
    found = evaluate(SECTIONS, system, {**PLAIN, **(changes or {})}, NAMES)
    return {name: value if value.ndim else value[()] for name, value in found.items()}


def different_lines(changes: Mapping[Any, Any]) -> list[str]:
    """The lines that a US book and a metric book do not agree on."""
    return systems_agree(SECTIONS, {**PLAIN, **changes}, NAMES)


def failing(changes: Mapping[Any, Any]) -> set[str]:
    """The checks of cooking that fail after changes."""
    found = worked(changes)
    return {name for name in CHECKS if found[name] != 1}
