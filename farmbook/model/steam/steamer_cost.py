"""What one steam load takes and costs, in a steamer of any kind."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.electricity import demand_charge_per_run
from farmbook.calc.fuel import NATURAL_GAS_HEAT, PROPANE_HEAT, heat_in_fuel
from farmbook.calc.heat import feed_water, fuel_used
from farmbook.calc.mixing import WATER_DENSITY
from farmbook.calc.own_figure import FAR_FROM_WORKED, difference_from_worked
from farmbook.expr.functions import absolute, all_of, joined, named, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.heat.steamer_heat import SteamerHeat
from farmbook.model.heat.steaming import if_in_use
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.steamer_run import SteamerRun
from farmbook.sections.alike import Alike
from farmbook.sections.declare import NumberInput, check, line, number, uses
from farmbook.sources import COMMON_PRACTICE, EIA_UNITS

__all__ = ["SteamerCost"]


class SteamerCost(Alike):
    """What one load in a steamer of any kind takes and costs."""

    farm = uses(Farm)
    energy = uses(Energy)

    heat: SteamerHeat
    run: SteamerRun
    watching_hours: NumberInput

    own_energy = number(
        "Your own figure: energy of a load by the electric meter, {}",
        unit="kWh/run",
        usual=(20, 1500),
        hard=(0.1, 100000),
        optional=True,
        how="Read the meter before and after one load, and take off what else ran on it.",
        note="Wins over the worked energy while electricity heats it.",
    )
    own_gas = number(
        "Your own figure: natural gas of a load by the meter, {}",
        unit="kWh_fuel/run",
        usual=(20, 2000),
        hard=(0.1, 100000),
        optional=True,
        how="Gas meter before and after one load, times the heat in each unit of gas that the bill states.",
        note="Wins over the worked energy while natural gas heats it.",
    )
    own_propane = number(
        "Your own figure: propane of a load by the meter, {}",
        unit="L/run",
        usual=(3, 300),
        hard=(0.01, 20000),
        optional=True,
        how="Meter, or weigh the bottles before and after one load: a litre weighs half a kilogram, a gallon 4.2 lb.",
        note="Wins over the worked energy while propane heats it.",
    )
    own_water = number(
        "Your own figure: water of a load by the meter, {}",
        unit="L/run",
        usual=(5, 2000),
        hard=(0, 100000),
        optional=True,
        how="Read a water meter on the feed line before and after one load.",
        note="Wins over the worked water.",
    )

    # Energy, in whatever is bought

    @line("Heat in the propane metered, {}", unit="kWh_fuel/run", source=EIA_UNITS, zero_is_none=True)
    def propane_metered(self) -> Expr:
        """None where you gave none."""
        return heat_in_fuel(self.own_propane, named(PROPANE_HEAT))

    @line("Heat in the fuel metered, {}", unit="kWh_fuel/run")
    def fuel_metered(self) -> Expr:
        """Of the fuel that heats it; a figure typed for another fuel is left aside."""
        return self.own_gas * self.run.on_gas + self.propane_metered * self.run.on_propane

    @line("Energy of a load of the {} by your meter", unit="kWh/run", zero_is_none=True)
    def metered_energy(self) -> Expr:
        """None where you gave none for what heats it."""
        return self.own_energy * self.run.electric + joined(self.fuel_metered, "kWh/run")

    @line("Energy of a load of the {}", unit="kWh/run")
    def energy_per_run(self) -> Expr:
        """Your own figure where there is one. For a fuel it is the heat in it, burner and flue losses included."""
        return where(self.metered_energy > 0, self.metered_energy, self.run.worked_energy)

    @line("Your energy of a load of the {} above or below the worked one", unit="share", zero_is_none=True)
    def energy_difference(self) -> Expr:
        """None where you gave no figure. Far above: look at vent, insulation and what else hangs on the meter."""
        return difference_from_worked(self.energy_per_run, self.run.worked_energy)

    @line("Energy of steaming a bag in the {}", unit="kWh/bag_filled")
    def energy_per_bag(self) -> Expr:
        """In a full load; half a load takes nearly as much for racks, shell and losses."""
        return ratio(self.energy_per_run, self.heat.bags)

    @line("Energy of steaming in the {}, for the dry mix", unit="kWh/kg_dry")
    def energy_per_dry(self) -> Expr:
        """To compare with other farms and with other ways of heating."""
        return ratio(self.energy_per_run, self.heat.load_dry)

    @line("Electricity of a load of the {}", unit="kWh/run")
    def electricity_per_run(self) -> Expr:
        """Nothing where fuel heats it."""
        return self.energy_per_run * self.run.electric

    @line("Natural gas of a load of the {}", unit="kWh_fuel/run")
    def gas_per_run(self) -> Expr:
        """As the bill counts it, by the heat in it."""
        return joined(self.energy_per_run, "kWh_fuel/run") * self.run.on_gas

    @line("Natural gas of a load of the {}, by volume", unit="m3/run", source=EIA_UNITS)
    def gas_volume_per_run(self) -> Expr:
        """As most meters count it."""
        return fuel_used(self.gas_per_run, named(NATURAL_GAS_HEAT))

    @line("Propane of a load of the {}", unit="L/run", source=EIA_UNITS)
    def propane_per_run(self) -> Expr:
        """As it is delivered."""
        return fuel_used(joined(self.energy_per_run, "kWh_fuel/run"), named(PROPANE_HEAT)) * self.run.on_propane

    @line("Electricity for a load of the {}, cost", unit="money/run")
    def electricity_cost(self) -> Expr:
        """The kWh alone; the charge for your highest kW is kept apart."""
        return self.electricity_per_run * self.energy.electricity_price

    @line("Natural gas for a load of the {}, cost", unit="money/run")
    def gas_cost(self) -> Expr:
        """Fixed fees of the bill are left out: they do not grow with the loads."""
        return self.gas_per_run * self.energy.gas_price

    @line("Propane for a load of the {}, cost", unit="money/run")
    def propane_cost(self) -> Expr:
        """As delivered."""
        return self.propane_per_run * self.energy.propane_price

    @line("Energy cost of a load of the {}", unit="money/run")
    def energy_cost_per_run(self) -> Expr:
        """Of what heats it; the other two are nothing."""
        return self.electricity_cost + self.gas_cost + self.propane_cost

    @line("Price of the energy that the {} draws", unit="money/kWh")
    def energy_price(self) -> Expr:
        """Cost over energy, whatever it is bought as; what the generator or burner loses is not in it."""
        return ratio(self.energy_cost_per_run, self.energy_per_run)

    @line("Energy cost of one more hour of hold in the {}", unit="money/h")
    def hold_hour_cost(self) -> Expr:
        """What it costs to be careful."""
        return self.run.hold_power * self.energy_price

    # The highest kW

    @line("Loads of the {} a month", unit="run/month")
    def loads_a_month(self) -> Expr:
        """A year's loads over its twelve months; a month is more than four weeks."""
        return self.run.loads_a_week * self.farm.weeks_worked / MONTHS_IN_A_YEAR

    @line("Your own figure for the highest kW counts for the {}", unit="flag")
    def own_peak_counts(self) -> Expr:
        """It was read with the steamer in use, and says nothing of the other one."""
        return all_of(self.energy.given(self.energy.own_added_peak), self.heat.in_use)

    @line("Highest kW of the {}", unit="kW")
    def highest_power(self) -> Expr:
        """Your own figure where it counts, otherwise the whole power."""
        return where(self.own_peak_counts, self.energy.own_added_peak, self.run.drawn)

    @line("What the {} adds to your highest kW", unit="kW")
    def added_peak(self) -> Expr:
        """Nothing where fuel heats it."""
        return self.highest_power * self.run.electric

    @line("Charge for your highest kW that the {} adds, a month", unit="money/month")
    def demand_cost_per_month(self) -> Expr:
        """The same whether you steam once or twenty times a month."""
        return self.added_peak * self.energy.demand_charge

    @line("Charge for your highest kW, for each load of the {}", unit="money/run", source=COMMON_PRACTICE)
    def demand_cost_per_run(self) -> Expr:
        """The month's charge shared by its loads: each load more makes it smaller. No part of the price of a kWh."""
        return demand_charge_per_run(self.added_peak, self.energy.demand_charge, self.loads_a_month)

    # Water

    @line("Steam lost by the vent of the {} in a load", unit="kg_water/run", source=COMMON_PRACTICE)
    def vent_steam(self) -> Expr:
        """All through the hold, and half as much while heating up."""
        return self.heat.vent_flow * self.run.hours_of_loss

    @line("Water boiled in a load of the {}, if condensed steam drains away", unit="kg_water/run")
    def water_boiled(self) -> Expr:
        """What the energy of the load boils from cold feed water."""
        return feed_water(self.energy_per_run, self.run.efficiency, self.heat.in_steam, self.heat.in_feed)

    @line("Make-up water of a load of the {}, by weight", unit="kg_water/run")
    def make_up_water(self) -> Expr:
        """Where condensed steam is boiled again, only the steam let out is made up."""
        boiled_again = self.heat.chose(self.heat.condensate, self.heat.boiled_again)
        return where(boiled_again, self.vent_steam, self.water_boiled)

    @line("Make-up water of a load of the {}, as worked out", unit="L/run")
    def worked_water(self) -> Expr:
        """As a water meter shows it."""
        return self.make_up_water / WATER_DENSITY

    @line("Make-up water of a load of the {}", unit="L/run")
    def water_per_run(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_water), self.own_water, self.worked_water)

    @line("Water of a load of the {} is your own figure", unit="flag")
    def water_given(self) -> Expr:
        """1 where you typed what the meter says: a change of power or load does not move it."""
        return self.given(self.own_water)

    @line("Your water of a load of the {} above or below the worked one", unit="share", zero_is_none=True)
    def water_difference(self) -> Expr:
        """None where you gave no figure."""
        return difference_from_worked(self.water_per_run, self.worked_water)

    @line("Water cost of a load of the {}", unit="money/run")
    def water_cost_per_run(self) -> Expr:
        """Feed water only."""
        return self.water_per_run * self.energy.water_price

    # Work, and all together

    @line("Work on a load of the {}", unit="person_hour/run")
    def labour_hours_per_run(self) -> Expr:
        """Loading and unloading grow with the bags, watching with the loads."""
        return self.run.handling_hours + self.watching_hours

    @line("Work cost of a load of the {}", unit="money/run")
    def labour_cost_per_run(self) -> Expr:
        """The owner's own hours are counted like any other."""
        return self.labour_hours_per_run * self.farm.labour_rate

    @line("Cost of a load of the {}", unit="money/run")
    def cost_per_run(self) -> Expr:
        """Energy, highest kW, water and work. The steamer itself and its repairs are not in it."""
        return self.energy_cost_per_run + self.demand_cost_per_run + self.water_cost_per_run + self.labour_cost_per_run

    @line("Energy, water and work of a place in a load of the {}", unit="money/bag_filled")
    def place_cost(self) -> Expr:
        """What one place more costs, by the loads it adds; the charge for your highest kW is there without it."""
        return ratio(self.energy_cost_per_run + self.water_cost_per_run + self.labour_cost_per_run, self.heat.bags)

    @line("Charge for your highest kW, for each bag filled, {}", unit="money/bag_filled")
    def demand_cost_per_bag(self) -> Expr:
        """A year's charges over its bags to fruit. They carry all of it: own spawn steamed with them adds nothing to it."""
        return ratio(self.demand_cost_per_month * MONTHS_IN_A_YEAR, self.farm.bags_filled_a_year)

    @line("Cost of steaming a bag in the {}", unit="money/bag_filled")
    def cost_per_bag(self) -> Expr:
        """For each bag filled, lost ones among them."""
        return self.place_cost + self.demand_cost_per_bag

    @line("Held by your own readings, {}", unit="1")
    def held(self) -> Expr:
        """No other change moves what is held."""
        return say(
            "Energy: ",
            either(self.metered_energy > 0, "held by your meter reading; clear it to try", "worked out"),
            ". Heat-up: ",
            either(self.run.heat_up_given, "held by your own hours", "worked out"),
            ". Water: ",
            either(self.water_given, "held by your meter", "worked out"),
            ".",
        )

    @line("A load of the {}: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            f"A load of the {self.words}",
            either(self.heat.in_use, " costs ", ", which is not in use, would cost "),
            figure(self.cost_per_run, 0, named=False),
            ": energy with the highest kW ",
            figure(self.energy_cost_per_run + self.demand_cost_per_run, 0, named=False),
            ", work ",
            figure(self.labour_cost_per_run, 0, named=False),
            ". That is ",
            figure(self.cost_per_bag, 2),
            ".",
        )

    @check(
        "Meter and worked energy of a load of the {} agree",
        kind="alert",
        says=(
            "Your meter reading of a load of the {} is far from the worked energy: see both, and check the reading, "
            "the power, the vent and the bags in a load."
        ),
    )
    def meter_agrees(self) -> Expr:
        """Your reading wins either way. Fine where no reading is given."""
        return if_in_use(self.heat.in_use, absolute(self.energy_difference) <= FAR_FROM_WORKED)
