"""The whole farm with the steamer that it does not use: bags it can fill, and its year."""

from __future__ import annotations

from collections.abc import Mapping

from farmbook.expr.nodes import Expr
from farmbook.model.alternatives.whole_farm import StagesThen, WholeFarm, YearThen
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.crop.crop import Crop
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.vessel import Vessel
from farmbook.sections.declare import LineOf, NumberInput, line, uses

__all__ = ["OtherSteamerRoom", "OtherSteamerYear"]


class OtherSteamer(WholeFarm):
    """The two change places. What was measured with the one in use says nothing of the other, and stays with it."""

    cabinet_heat = uses(CabinetHeat)
    vessel_heat = uses(VesselHeat)
    cabinet = uses(Cabinet)
    vessel = uses(Vessel)
    crop = uses(Crop)

    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """Which is in use; spawn run loss, yield of a bag and highest kW stay as they are known."""
        return {
            CabinetHeat.in_use: self.vessel_heat.in_use,
            VesselHeat.in_use: self.cabinet_heat.in_use,
            Cabinet.own_peak_counts: self.cabinet.own_peak_counts,
            Vessel.own_peak_counts: self.vessel.own_peak_counts,
            Crop.chosen_loss_in_spawn_run: self.crop.chosen_loss_in_spawn_run,
            Crop.efficiency: self.crop.efficiency,
        }


class OtherSteamerRoom(OtherSteamer, StagesThen, words="with the other steamer"):
    """What the stages can do then."""

    title = "With the other steamer: stages"


class OtherSteamerYear(OtherSteamer, YearThen, words="with the other steamer"):
    """The year with so many bags."""

    title = "With the other steamer: the year"
    room = uses(OtherSteamerRoom)
    wanted = (*YearThen.wanted, SteamerInUseYear.owning_cost, SteamerInUseYear.yearly_loss)

    @line("Return wanted on the money in the steamer, {}", unit="money/year")
    def return_wanted(self) -> Expr:
        """What owning it costs a year beyond its loss in value."""
        return self.of(SteamerInUseYear.owning_cost) - self.of(SteamerInUseYear.yearly_loss)
