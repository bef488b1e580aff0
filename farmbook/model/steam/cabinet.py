"""The steam cabinet's own part in what a load takes and costs."""

from __future__ import annotations

from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_cost import SteamerCost
from farmbook.sections.declare import number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Cabinet"]


class Cabinet(SteamerCost, words="cabinet"):
    """What one load in the steam cabinet takes and costs."""

    title = "Steam cabinet: what a load costs"

    heat = uses(CabinetHeat)
    run = uses(CabinetRun)

    watching_hours = number(
        "Work to watch a load of the cabinet",
        unit="person_hour/run",
        usual=(0.3, 3),
        hard=(0, 100),
        default=1,
        how="Clock starting up, rounds, log and shutting down.",
        source=COMMON_PRACTICE,
        note="The same for a full load and for half a load.",
    )
