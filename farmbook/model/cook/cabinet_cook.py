"""The steam cabinet's own part in how hard a bag is cooked."""

from __future__ import annotations

from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import STEP
from farmbook.model.cook.cook_strength import (
    clock,
)
from farmbook.model.cook.core_heating import IN_CABINET
from farmbook.model.cook.steamer_cook import ROW_LENGTH, SteamerCook
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["CabinetCook"]


class CabinetCook(SteamerCook, words="cabinet"):
    """The middle of the coldest bag in the cabinet."""

    title = "How hard a bag is cooked: steam cabinet"
    table = "cook"

    heat = uses(CabinetHeat)
    run = uses(CabinetRun)
    probe_place = IN_CABINET

    cabinet_step = number(
        "Time from row to row of the cooking, cabinet",
        unit="min",
        usual=(5, 30),
        hard=(1, 120),
        default=15,
        how=ROW_LENGTH,
        source=COMMON_PRACTICE,
    )

    @property
    def chamber(self) -> Line:
        """What is held, boiling at most."""
        return self.heating.cabinet_chamber

    @line("Hours since the cabinet was at temperature", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        """Rows past the end of the hold show how the middle would go on warming."""
        return clock(self.cabinet_step)
