"""A load worked by hand in a steam cabinet and in a pressure vessel, and how to work out their sections alone."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, Final

from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.steamer_heat import DRAINED
from farmbook.model.heat.steaming import CABINET, VESSEL, Steaming
from farmbook.model.heat.vessel_heat import AS_IT_BOILS, VesselHeat
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.energy import ELECTRICITY, SINGLE_PHASE, Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.place.site import Site
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.model.steam.vessel import Vessel
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import Input
from tests.model.helpers import evaluate, with_used

__all__ = ["BY_HAND", "IN_VESSEL", "KWH_A_LITRE_OF_PROPANE", "NAMES", "PSI", "SECTIONS", "STEAMER", "failing", "worked"]

STEAMER: Final = (
    Site,
    Steaming,
    Energy,
    CabinetHeat,
    CabinetRun,
    Cabinet,
    VesselSteam,
    VesselHeat,
    VesselRun,
    Vessel,
    SteamerInUse,
)
SECTIONS: Final = with_used(Bag, *STEAMER)
NAMES: Final = {INGREDIENT: ("sawdust",), RECIPE: ("plain",)}
PSI: Final = 6.894757293168
KWH_A_LITRE_OF_PROPANE: Final = 91_333 * 1.05505585262 / 3600 / 3.785411784
"""91,333 Btu a gallon (US Energy Information Administration), of 1.05505585262 kJ (NIST SP 811)."""

# 100 bags of 5 kg: 200 kg dry, 300 kg water, 3 kg plastic; a box of 3 x 2 x 1.2 m with 24 m2 inside; 70 degC to warm.
BY_HAND: Final[Mapping[Input, Any]] = {
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1]],
    Recipe.target_moisture: [0.6],
    Recipe.dry_matter: [0.55],
    Recipe.price: [0.05],
    Farm.bags_filled_a_week: 300,
    Farm.weeks_worked: 48,
    Farm.bags_per_load: 100,
    Farm.wage: 20,
    Farm.payroll_extra: 0,
    Bag.wet_fill: 5,
    Bag.bag_mass: 30,
    Site.altitude: 0,
    Steaming.kind: CABINET,
    Steaming.staffed_hours: 8,
    Steaming.staffed_days: 5,
    CabinetHeat.length: 3,
    CabinetHeat.width: 2,
    CabinetHeat.height: 1.2,
    CabinetHeat.insulation: 2,
    CabinetHeat.steel: 200,
    CabinetHeat.start_temperature: 20,
    CabinetHeat.surroundings: 20,
    CabinetHeat.feed_temperature: 10,
    CabinetHeat.hold_temperature: 90,
    CabinetHeat.vent_flow: 3.6,
    CabinetHeat.condensate: DRAINED,
    CabinetRun.fuel: ELECTRICITY,
    CabinetRun.power: 12,
    CabinetRun.own_efficiency: 0.95,
    CabinetRun.hold_time: 10,
    CabinetRun.cool_down_time: 6,
    CabinetRun.handling_rate: 50,
    CabinetRun.people_loading: 2,
    Cabinet.watching_hours: 0.5,
    Energy.electricity_price: 0.20,
    Energy.demand_charge: 10,
    Energy.gas_price: 0.05,
    Energy.propane_price: 0.60,
    Energy.water_price: 2.5,
    Energy.voltage: 240,
    Energy.phases: SINGLE_PHASE,
    Energy.service_amps: 100,
    # The same bags in a vessel 1 m across and 2 m long at 15 psi, where water boils at 120.955 degC
    VesselSteam.working_pressure: 15 * PSI,
    VesselSteam.rated_pressure: 15 * PSI,
    VesselHeat.bags_per_run: 100,
    VesselHeat.diameter: 1,
    VesselHeat.length: 2,
    VesselHeat.insulation: 0.5,
    VesselHeat.steel: 1000,
    VesselHeat.start_temperature: 20,
    VesselHeat.surroundings: 20,
    VesselHeat.feed_temperature: 10,
    VesselHeat.vent_flow: 1.2,
    VesselHeat.purge_steam: 4,
    VesselHeat.condensate: DRAINED,
    VesselHeat.feed: AS_IT_BOILS,
    VesselHeat.water_put_in: 50,
    VesselRun.fuel: ELECTRICITY,
    VesselRun.power: 20,
    VesselRun.own_efficiency: 0.9,
    VesselRun.hold_time: 2,
    VesselRun.cool_down_time: 1,
    VesselRun.handling_rate: 100,
    VesselRun.people_loading: 1,
    Vessel.watching_hours: 1.5,
}
IN_VESSEL: Final[Mapping[Input, Any]] = {Steaming.kind: VESSEL, Energy.service_amps: 200}
"""What makes the vessel the steamer in use, with no check failing."""
CHECKS: Final = (
    "cabinet_heat.temperatures_in_order",
    "cabinet_heat.below_boiling",
    "cabinet_run.reaches_temperature",
    "cabinet_run.service_is_enough",
    "cabinet_run.loads_fit",
    "cabinet.meter_agrees",
    "vessel_heat.within_rating",
    "vessel_heat.temperatures_in_order",
    "vessel_run.reaches_temperature",
    "vessel_run.service_is_enough",
    "vessel_run.loads_fit",
    "vessel.meter_agrees",
    "vessel.water_lasts",
)


def worked(changes: Mapping[Any, Any] | None = None, system: str = "metric") -> dict[str, float]:
    """The loads worked by hand, with changes: every number of the sections of steaming."""
    found = evaluate(SECTIONS, system, {**BY_HAND, **(changes or {})}, NAMES)
    own = tuple(f"{section.key()}." for section in STEAMER)
    return {name: float(value) for name, value in found.items() if name.startswith(own) and value.dtype.kind == "f"}


def failing(changes: Mapping[Any, Any]) -> set[str]:
    """The checks that fail after changes to the loads worked by hand."""
    found = worked(changes)
    assert all(math.isfinite(value) for value in found.values())
    return {name for name in CHECKS if found[name] != 1}


def in_water(degrees: float) -> float:
    """kJ in a kilogram of liquid water: the cubic through IAPWS R7-97, by hand."""
    return 4.20403 * degrees - 5.47787e-4 * degrees**2 + 4.16115e-6 * degrees**3


def bound_water(kelvin: float) -> float:
    """kJ/kg K that 30 % of bound water add to dry wood, by the Wood Handbook with water in percent."""
    return 1.3 * 30 * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * 30)


# The cabinet of the case: wood 0.1031 + 0.003867 x 328.15 K, and what 30 % of bound water add to it (Wood Handbook);
# 1.70 and 0.50 kJ/kg K for plastic
# and steel; steam at 2,675.57 kJ/kg; a litre of cold water 0.99821 kg.
IN_STEAM, IN_FEED, IN_DRAIN, IN_START = 2675.57, in_water(10), in_water(90), in_water(20)
WOOD: Final = 200 * (1.372056 + bound_water(328.15)) * 70
WATER: Final = 300 * (IN_DRAIN - IN_START)
LOAD: Final = WOOD + WATER + 3 * 1.7 * 70 + 200 * 0.5 * 70
MULTIPLIER: Final = (IN_STEAM - IN_FEED) / (IN_STEAM - IN_DRAIN)
VENT: Final = 3.6 * (IN_STEAM - IN_FEED) / 3600
STANDING: Final = 0.84 * MULTIPLIER + VENT
