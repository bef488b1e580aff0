"""What one run of the steam cabinet takes and costs: energy, the highest kW, water and work."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.electricity import demand_charge_per_run
from farmbook.calc.heat import HEAT_UP_LOSS_SHARE, feed_water
from farmbook.calc.mixing import WATER_DENSITY
from farmbook.calc.own_figure import FAR_FROM_WORKED, difference_from_worked
from farmbook.expr.functions import absolute, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.cabinet_heat import RETURNED, CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.declare import check, line, number, uses
from farmbook.model.energy import Energy
from farmbook.model.farm_plan import Farm
from farmbook.model.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Cabinet"]


class Cabinet(Section):
    """What one load in the steam cabinet takes and costs."""

    title = "Steam cabinet: what a load costs"

    farm = uses(Farm)
    energy = uses(Energy)
    heat = uses(CabinetHeat)
    steaming = uses(CabinetRun)

    own_energy = number(
        "Your own figure: energy of a load by the meter",
        unit="kWh/run",
        usual=(50, 1500),
        hard=(0, 100000),
        optional=True,
        how="Read the meter before and after one load, and take off what else ran on it.",
        note="Wins over the worked energy.",
    )
    own_water = number(
        "Your own figure: water of a load by the meter",
        unit="L/run",
        usual=(50, 2000),
        hard=(0, 100000),
        optional=True,
        how="Read a water meter on the feed line before and after one load.",
        note="Wins over the worked water.",
    )
    watching_hours = number(
        "Work to watch a load",
        unit="person_hour/run",
        usual=(0.3, 3),
        hard=(0, 100),
        default=1,
        how="Clock starting up, rounds, log and shutting down.",
        source=COMMON_PRACTICE,
        note="The same for a full load and for half a load.",
    )

    @line("Energy of a load", unit="kWh/run")
    def energy_per_run(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_energy), self.own_energy, self.steaming.worked_energy)

    @line("Your energy of a load above or below the worked one", unit="share")
    def energy_difference(self) -> Expr:
        """Zero where you gave no figure. Far above: look at vent, insulation and what else hangs on the meter."""
        return difference_from_worked(self.energy_per_run, self.steaming.worked_energy)

    @line("Energy of steaming a bag", unit="kWh/bag_filled")
    def energy_per_bag(self) -> Expr:
        """In a full load; half a load takes nearly as much for racks, shell and losses."""
        return ratio(self.energy_per_run, self.farm.bags_per_load)

    @line("Energy of steaming, for the dry mix", unit="kWh/kg_dry")
    def energy_per_dry(self) -> Expr:
        """To compare with other farms and with other ways of heating."""
        return ratio(self.energy_per_run, self.heat.load_dry)

    @line("Energy cost of a load", unit="money/run")
    def energy_cost_per_run(self) -> Expr:
        """The kWh alone; the charge for your highest kW is kept apart."""
        return self.energy_per_run * self.energy.electricity_price

    @line("Energy cost of one more hour of chamber hold", unit="money/h")
    def hold_hour_cost(self) -> Expr:
        """What it costs to be careful."""
        return self.steaming.hold_power * self.energy.electricity_price

    @line("Steam loads a month", unit="run/month")
    def loads_a_month(self) -> Expr:
        """A year's loads over its twelve months; a month is more than four weeks."""
        return self.farm.loads_a_week * self.farm.weeks_worked / MONTHS_IN_A_YEAR

    @line("What steaming adds to your highest kW", unit="kW")
    def added_peak(self) -> Expr:
        """Your own figure where there is one, otherwise the whole power of the generator."""
        own = self.energy.own_added_peak
        return where(self.energy.given(own), own, self.steaming.power)

    @line("Charge for your highest kW that steaming adds, a month", unit="money/month")
    def demand_cost_per_month(self) -> Expr:
        """The same whether you steam once or twenty times a month."""
        return self.added_peak * self.energy.demand_charge

    @line("Charge for your highest kW, for each load", unit="money/run", source=COMMON_PRACTICE)
    def demand_cost_per_run(self) -> Expr:
        """The month's charge shared by its loads: each load more makes it smaller. No part of the price of a kWh."""
        return demand_charge_per_run(self.added_peak, self.energy.demand_charge, self.loads_a_month)

    @line("Steam lost by the vent in a load", unit="kg_water/run", source=COMMON_PRACTICE)
    def vent_steam(self) -> Expr:
        """All through the hold, and half as much while heating up."""
        return self.heat.vent_flow * (self.steaming.heat_up_time * HEAT_UP_LOSS_SHARE + self.steaming.hold_time)

    @line("Water boiled in a load, if condensed steam drains away", unit="kg_water/run")
    def water_boiled(self) -> Expr:
        """What the energy of the load boils from cold feed water."""
        efficiency = self.steaming.efficiency
        return feed_water(self.energy_per_run, efficiency, self.heat.in_steam, self.heat.in_feed)

    @line("Make-up water of a load, by weight", unit="kg_water/run")
    def make_up_water(self) -> Expr:
        """Where condensed steam goes back to the generator, only the vent's steam is made up."""
        return where(self.heat.chose(self.heat.condensate, RETURNED), self.vent_steam, self.water_boiled)

    @line("Make-up water of a load, as worked out", unit="L/run")
    def worked_water(self) -> Expr:
        """As a water meter shows it."""
        return self.make_up_water / WATER_DENSITY

    @line("Make-up water of a load", unit="L/run")
    def water_per_run(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_water), self.own_water, self.worked_water)

    @line("Your water of a load above or below the worked one", unit="share")
    def water_difference(self) -> Expr:
        """Zero where you gave no figure."""
        return difference_from_worked(self.water_per_run, self.worked_water)

    @line("Water cost of a load", unit="money/run")
    def water_cost_per_run(self) -> Expr:
        """Feed water only."""
        return self.water_per_run * self.energy.water_price

    @line("Work on a load", unit="person_hour/run")
    def labour_hours_per_run(self) -> Expr:
        """Loading and unloading grow with the bags, watching with the loads."""
        return self.steaming.handling_hours + self.watching_hours

    @line("Work cost of a load", unit="money/run")
    def labour_cost_per_run(self) -> Expr:
        """The owner's own hours are counted like any other."""
        return self.labour_hours_per_run * self.farm.labour_rate

    @line("Cost of a steam load", unit="money/run")
    def cost_per_run(self) -> Expr:
        """Energy, highest kW, water and work. The cabinet itself and its repairs are not in it."""
        return self.energy_cost_per_run + self.demand_cost_per_run + self.water_cost_per_run + self.labour_cost_per_run

    @line("Cost of steaming a bag", unit="money/bag_filled")
    def cost_per_bag(self) -> Expr:
        """For each bag filled, lost ones among them."""
        return ratio(self.cost_per_run, self.farm.bags_per_load)

    @check(
        "Meter and worked energy of a load agree",
        kind="alert",
        says=(
            "Your meter reading of a load is far from the worked energy: see both, and check the reading, the power, "
            "the vent and the bags in a load."
        ),
    )
    def meter_agrees(self) -> Expr:
        """Your reading wins either way. Fine where no reading is given."""
        return absolute(self.energy_difference) <= FAR_FROM_WORKED
