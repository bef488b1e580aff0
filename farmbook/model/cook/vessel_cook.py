"""How hard the middle of the coldest bag is cooked by one load of the pressure vessel."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.model.axes import STEP
from farmbook.model.cook.cook_strength import clock
from farmbook.model.cook.core_heating import IN_VESSEL
from farmbook.model.cook.steamer_cook import ROW_LENGTH, SteamerCook
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["VesselCook"]


class VesselCook(SteamerCook, words="pressure vessel"):
    """The middle of the coldest bag in the pressure vessel."""

    title = "How hard a bag is cooked: pressure vessel"
    table = "cook"

    heat = uses(VesselHeat)
    run = uses(VesselRun)
    probe_place = IN_VESSEL

    vessel_step = number(
        "Time from row to row of the cooking, pressure vessel",
        unit="min",
        usual=(1, 10),
        hard=(0.25, 60),
        default=5,
        how=ROW_LENGTH,
        source=COMMON_PRACTICE,
    )

    @line("Hours since the pressure vessel was at temperature", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        """Rows past the end of the hold show how the middle would go on warming."""
        return clock(self.vessel_step)
