"""The middle of the coldest bag in the steamer in use, from the chamber at temperature until the steam goes off: as it is drawn."""

from __future__ import annotations

from farmbook.expr.functions import where
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import COURSE, STEP
from farmbook.model.cook.cabinet_cook import CabinetCook
from farmbook.model.cook.vessel_cook import VesselCook
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["CookCurve"]


class CookCurve(Section):
    """What the cook chart shows. It ends with the hold."""

    title = "How hard a bag is cooked: steamer in use"

    vessel_heat = uses(VesselHeat)
    cabinet = uses(CabinetCook)
    vessel = uses(VesselCook)

    def _of(self, cabinet: Line, vessel: Line) -> Expr:
        """The line of the steamer in use."""
        return where(self.vessel_heat.in_use, vessel, cabinet)

    @line("Chamber hold, steamer in use", unit="h")
    def hold(self) -> Expr:
        """The steam goes off then."""
        return self._of(self.cabinet.hold, self.vessel.hold)

    @line("Middle of the bag at the end of the hold, steamer in use", unit="degC")
    def expected_end(self) -> Expr:
        """By size or probe; not surer than that."""
        return self._of(self.cabinet.end_by_size_or_probe, self.vessel.end_by_size_or_probe)

    @line("Hours held, steamer in use", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        """Since the chamber was at temperature, up to the end of the hold."""
        return self._of(self.cabinet.hours, self.vessel.hours)

    @line("Middle of the bag, steamer in use", unit="degC", axes=(COURSE, STEP))
    def core(self) -> Expr:
        """Up to the end of the hold."""
        return self._of(self.cabinet.core, self.vessel.core)
