"""The steamer in use: what one of its loads takes and costs, and how many loads and bags it can do a week."""

from __future__ import annotations

from farmbook.expr.functions import ratio, where
from farmbook.expr.nodes import Expr, Line
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.to_steam import ToSteam
from farmbook.model.steam.vessel import Vessel
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["SteamerInUse"]


class SteamerInUse(Section):
    """The steamer that feeds the rest of the book."""

    title = "The steamer in use"

    to_steam = uses(ToSteam)
    cabinet_heat = uses(CabinetHeat)
    cabinet_run = uses(CabinetRun)
    cabinet = uses(Cabinet)
    vessel_heat = uses(VesselHeat)
    vessel_run = uses(VesselRun)
    vessel = uses(Vessel)

    def _of(self, cabinet: Line, vessel: Line) -> Expr:
        """The line of the steamer in use."""
        return where(self.vessel_heat.in_use, vessel, cabinet)

    @line("Bags in a load, steamer in use", unit="bag_filled/run")
    def bags_per_run(self) -> Expr:
        """A full load."""
        return self._of(self.cabinet_heat.bags, self.vessel_heat.bags)

    @line("Temperature held, steamer in use", unit="degC")
    def hold_temperature(self) -> Expr:
        """Of the chamber; the middle of the bags follows later."""
        return self._of(self.cabinet_heat.hold_temperature, self.vessel_heat.hold_temperature)

    @line("Hours from cold to temperature, steamer in use", unit="h/run", zero_is_none=True)
    def heat_up_time(self) -> Expr:
        """Your own figure where there is one."""
        return self._of(self.cabinet_run.heat_up_time, self.vessel_run.heat_up_time)

    @line("Hours at temperature, steamer in use", unit="h/run")
    def hold_time(self) -> Expr:
        """Of the chamber."""
        return self._of(self.cabinet_run.hold_time, self.vessel_run.hold_time)

    @line("Hours of a load, steamer in use", unit="h/run")
    def cycle_time(self) -> Expr:
        """Loading, heat-up, hold, cool-down and unloading."""
        return self._of(self.cabinet_run.cycle_time, self.vessel_run.cycle_time)

    @line("Loads a week, steamer in use", unit="run/week")
    def loads_a_week(self) -> Expr:
        """For all bags of a week and own spawn steamed with them, as an average."""
        return self._of(self.cabinet_run.loads_a_week, self.vessel_run.loads_a_week)

    @line("Loads it can do a week, steamer in use", unit="run/week")
    def loads_possible(self) -> Expr:
        """By working hours and days, not by the clock alone."""
        return self._of(self.cabinet_run.loads_possible, self.vessel_run.loads_possible)

    @line("Bags it can steam a week, steamer in use", unit="bag_filled/week")
    def bags_possible(self) -> Expr:
        """Full loads only."""
        return self._of(self.cabinet_run.bags_possible, self.vessel_run.bags_possible)

    @line("Bags it has room for, over those to steam", unit="share")
    def room_to_spare(self) -> Expr:
        """Bags of own spawn steamed with the others are counted. Below zero it cannot steam them all."""
        return ratio(self.bags_possible - self.to_steam.places, self.to_steam.places)

    @line("Energy of a load, steamer in use", unit="kWh/run")
    def energy_per_run(self) -> Expr:
        """Electricity, or the heat in the fuel."""
        return self._of(self.cabinet.energy_per_run, self.vessel.energy_per_run)

    @line("Energy cost of a load, steamer in use", unit="money/run")
    def energy_cost_per_run(self) -> Expr:
        """Without the charge for your highest kW."""
        return self._of(self.cabinet.energy_cost_per_run, self.vessel.energy_cost_per_run)

    @line("Charge for your highest kW, for each load, steamer in use", unit="money/run")
    def demand_cost_per_run(self) -> Expr:
        """Nothing where fuel heats it."""
        return self._of(self.cabinet.demand_cost_per_run, self.vessel.demand_cost_per_run)

    @line("Charge for your highest kW, a month, steamer in use", unit="money/month")
    def demand_cost_per_month(self) -> Expr:
        """The same however many loads there are."""
        return self._of(self.cabinet.demand_cost_per_month, self.vessel.demand_cost_per_month)

    @line("Make-up water of a load, steamer in use", unit="L/run")
    def water_per_run(self) -> Expr:
        """Your own figure where there is one."""
        return self._of(self.cabinet.water_per_run, self.vessel.water_per_run)

    @line("Water cost of a load, steamer in use", unit="money/run")
    def water_cost_per_run(self) -> Expr:
        """Feed water only."""
        return self._of(self.cabinet.water_cost_per_run, self.vessel.water_cost_per_run)

    @line("Work to load and unload, steamer in use", unit="person_hour/run")
    def handling_hours(self) -> Expr:
        """Grows with the bags."""
        return self._of(self.cabinet_run.handling_hours, self.vessel_run.handling_hours)

    @line("Work to watch a load, steamer in use", unit="person_hour/run")
    def watching_hours(self) -> Expr:
        """Grows with the loads."""
        return self._of(self.cabinet.watching_hours, self.vessel.watching_hours)

    @line("Work on a load, steamer in use", unit="person_hour/run")
    def labour_hours_per_run(self) -> Expr:
        """Loading, unloading and watching."""
        return self.handling_hours + self.watching_hours

    @line("Work cost of a load, steamer in use", unit="money/run")
    def labour_cost_per_run(self) -> Expr:
        """The owner's own hours are counted like any other."""
        return self._of(self.cabinet.labour_cost_per_run, self.vessel.labour_cost_per_run)

    @line("Cost of a load, steamer in use", unit="money/run")
    def cost_per_run(self) -> Expr:
        """Energy, highest kW, water and work. The steamer itself and its repairs are not in it."""
        return self._of(self.cabinet.cost_per_run, self.vessel.cost_per_run)

    @line("Energy, water and work of a place in a load, steamer in use", unit="money/bag_filled")
    def place_cost(self) -> Expr:
        """What one place more costs: own spawn steamed with the bags is charged this."""
        return self._of(self.cabinet.place_cost, self.vessel.place_cost)

    @line("Charge for your highest kW, for each bag filled, steamer in use", unit="money/bag_filled")
    def demand_cost_per_bag(self) -> Expr:
        """Nothing where fuel heats it."""
        return self._of(self.cabinet.demand_cost_per_bag, self.vessel.demand_cost_per_bag)

    @line("Cost of steaming a bag, steamer in use", unit="money/bag_filled")
    def cost_per_bag(self) -> Expr:
        """For each bag filled, lost ones among them: what the cost of growing is built on."""
        return self._of(self.cabinet.cost_per_bag, self.vessel.cost_per_bag)
