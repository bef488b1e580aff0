"""The whole farm: its sections in reading order. Only wiring stands here."""

from __future__ import annotations

from typing import Final

from farmbook.model.bag import Bag
from farmbook.model.cabinet import Cabinet
from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.crop import Crop
from farmbook.model.energy import Energy
from farmbook.model.farm_plan import Farm
from farmbook.model.growing_cost import GrowingCost
from farmbook.model.harvest import Harvest
from farmbook.model.lost_bags import LostBags
from farmbook.model.mixing import Mixing
from farmbook.model.model import Model
from farmbook.model.recipe import Recipe
from farmbook.model.recipe_checks import RecipeChecks
from farmbook.model.report import Report
from farmbook.model.section import Section
from farmbook.model.spawn_bought import Spawn
from farmbook.model.supplement import Supplement

__all__ = ["SECTIONS", "farm_model"]

SECTIONS: Final[tuple[type[Section], ...]] = (
    Farm,
    Recipe,
    RecipeChecks,
    Supplement,
    Bag,
    Mixing,
    Energy,
    CabinetHeat,
    CabinetRun,
    Cabinet,
    Crop,
    Spawn,
    Harvest,
    GrowingCost,
    LostBags,
    Report,
)


def farm_model() -> Model:
    """The farm's model, its kinds not yet checked."""
    return Model(SECTIONS)
