"""The steam cabinet's own part in how hard a bag is cooked."""

from __future__ import annotations

from farmbook.expr.nodes import Line
from farmbook.model.cook.core_heating import IN_CABINET
from farmbook.model.cook.steamer_cook import SteamerCook
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.sections.declare import uses

__all__ = ["CabinetCook"]


class CabinetCook(SteamerCook, words="cabinet"):
    """The middle of the coldest bag in the cabinet."""

    title = "How hard a bag is cooked: steam cabinet"
    table = "cook"

    heat = uses(CabinetHeat)
    run = uses(CabinetRun)
    probe_place = IN_CABINET

    @property
    def chamber(self) -> Line:
        """What is held, boiling at most."""
        return self.heating.cabinet_chamber
