"""The whole farm: its sections in reading order. Only wiring stands here."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from farmbook.expr.axis import Axis
from farmbook.model.choices.equipment_cost import EquipmentCost
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.choices.make_or_buy_turn import MakeOrBuyTurn
from farmbook.model.choices.make_or_buy_worth import MakeOrBuyWorth
from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cook.cabinet_cook import CabinetCook
from farmbook.model.cook.cook_curve import CookCurve
from farmbook.model.cook.cook_strength import LethalRates
from farmbook.model.cook.core_heating import CoreHeating
from farmbook.model.cook.vessel_cook import VesselCook
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.cost.steamer_year import CabinetYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.front import Front
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.steaming import Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_checks import RecipeChecks
from farmbook.model.mix.supplement import Supplement
from farmbook.model.place.altitude import AltitudeBoiling, AltitudePressure, WantedSteam
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.place.site import Site
from farmbook.model.report import Report
from farmbook.model.report_tables import ReportTables
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.model.steam.to_steam import ToSteam
from farmbook.model.steam.vessel import Vessel
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.model import Model
from farmbook.sections.section import Section

__all__ = ["SECTIONS", "farm_model"]

SECTIONS: Final[tuple[type[Section], ...]] = (
    *(Farm, Site, AltitudeBoiling, WantedSteam, AltitudePressure, Energy),
    *(Recipe, RecipeChecks, Supplement, Bag),
    *(Steaming, CabinetHeat, VesselSteam, VesselHeat),
    *(SpawnSource, Crop),
    *(Spawn, OwnSpawnWay, OwnSpawn),
    *(ToSteam, CabinetRun, Cabinet, VesselRun, Vessel, SteamerInUse),
    *(LethalRates, CoreHeating, CabinetCook, VesselCook, CookCurve),
    *(OwnSpawnWork, SpawnSupply, Mixing, Harvest, GrowingCost, LostBags, CabinetYear, VesselYear),
    *(SteamerChoice, MakeOrBuy, MakeOrBuyTurn, MakeOrBuyWorth, EquipmentCost),
    *(ReportTables, Report, Front),
)


def farm_model(horizon: Mapping[Axis, int] | None = None) -> Model:
    """The farm's model, made for so many members of each sized axis; its kinds are not yet checked."""
    return Model(SECTIONS, horizon)
