"""How hard the middle of the coldest bag is cooked by one load of the pressure vessel."""

from __future__ import annotations

from farmbook.model.cook.core_heating import IN_VESSEL
from farmbook.model.cook.steamer_cook import SteamerCook
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import uses

__all__ = ["VesselCook"]


class VesselCook(SteamerCook, words="pressure vessel"):
    """The middle of the coldest bag in the pressure vessel."""

    title = "How hard a bag is cooked: pressure vessel"
    table = "cook"

    heat = uses(VesselHeat)
    run = uses(VesselRun)
    probe_place = IN_VESSEL
