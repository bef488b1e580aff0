"""The whole farm: its sections in reading order. Only wiring stands here."""

from __future__ import annotations

from typing import Final

from farmbook.model.altitude import AltitudeBoiling, AltitudePressure, WantedSteam
from farmbook.model.bag import Bag
from farmbook.model.cabinet import Cabinet
from farmbook.model.cabinet_cook import CabinetCook
from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.cook_strength import LethalRates
from farmbook.model.core_heating import CoreHeating
from farmbook.model.crop import Crop
from farmbook.model.energy import Energy
from farmbook.model.equipment_cost import EquipmentCost
from farmbook.model.farm_plan import Farm
from farmbook.model.growing_cost import GrowingCost
from farmbook.model.harvest import Harvest
from farmbook.model.lost_bags import LostBags
from farmbook.model.make_or_buy import MakeOrBuy
from farmbook.model.make_or_buy_turn import MakeOrBuyTurn
from farmbook.model.make_or_buy_worth import MakeOrBuyWorth
from farmbook.model.mixing import Mixing
from farmbook.model.model import Model
from farmbook.model.own_spawn import OwnSpawn
from farmbook.model.own_spawn_way import OwnSpawnWay
from farmbook.model.own_spawn_work import OwnSpawnWork
from farmbook.model.recipe import Recipe
from farmbook.model.recipe_checks import RecipeChecks
from farmbook.model.report import Report
from farmbook.model.section import Section
from farmbook.model.site import Site
from farmbook.model.spawn_bought import Spawn
from farmbook.model.spawn_source import SpawnSource
from farmbook.model.spawn_supply import SpawnSupply
from farmbook.model.steaming import Steaming
from farmbook.model.steriliser import Steriliser
from farmbook.model.steriliser_choice import SteriliserChoice
from farmbook.model.steriliser_year import CabinetYear, VesselYear
from farmbook.model.supplement import Supplement
from farmbook.model.to_steam import ToSteam
from farmbook.model.vessel import Vessel
from farmbook.model.vessel_cook import VesselCook
from farmbook.model.vessel_heat import VesselHeat
from farmbook.model.vessel_run import VesselRun
from farmbook.model.vessel_steam import VesselSteam

__all__ = ["SECTIONS", "farm_model"]

SECTIONS: Final[tuple[type[Section], ...]] = (
    Farm,
    Recipe,
    RecipeChecks,
    Supplement,
    Bag,
    Site,
    AltitudeBoiling,
    WantedSteam,
    AltitudePressure,
    Steaming,
    Energy,
    CabinetHeat,
    VesselSteam,
    VesselHeat,
    SpawnSource,
    Crop,
    Spawn,
    OwnSpawnWay,
    OwnSpawn,
    ToSteam,
    CabinetRun,
    Cabinet,
    VesselRun,
    Vessel,
    Steriliser,
    LethalRates,
    CoreHeating,
    CabinetCook,
    VesselCook,
    OwnSpawnWork,
    SpawnSupply,
    Mixing,
    Harvest,
    GrowingCost,
    LostBags,
    CabinetYear,
    VesselYear,
    SteriliserChoice,
    MakeOrBuy,
    MakeOrBuyTurn,
    MakeOrBuyWorth,
    EquipmentCost,
    Report,
)


def farm_model() -> Model:
    """The farm's model, its kinds not yet checked."""
    return Model(SECTIONS)
