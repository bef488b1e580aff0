"""Hours, power and amps of one steam load, in a steamer of any kind."""

from __future__ import annotations

from farmbook.calc.calendar import HOURS_IN_A_WEEK
from farmbook.calc.electricity import continuous_current, single_phase_current, three_phase_current
from farmbook.calc.fuel import usual_efficiency
from farmbook.calc.heat import energy_of_run, heat_up_time, hold_power, hours_of_loss, power_left, steam_power
from farmbook.calc.own_figure import difference_from_worked
from farmbook.calc.timetable import loads_by_hours
from farmbook.expr.functions import all_of, named, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.heat.steamer_heat import SteamerHeat
from farmbook.model.heat.steaming import Steaming, if_in_use
from farmbook.model.place.energy import ELECTRICITY, NATURAL_GAS, PROPANE, THREE_PHASE, Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.to_steam import ToSteam
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, NumberInput, check, choice, line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, NATIONAL_ELECTRICAL_CODE

__all__ = ["SteamerRun"]


class SteamerRun(Alike):
    """One load in a steamer of any kind, from loading to unloading."""

    farm = uses(Farm)
    energy = uses(Energy)
    steaming = uses(Steaming)
    to_steam = uses(ToSteam)

    heat: SteamerHeat
    power: NumberInput
    hold_time: NumberInput
    cool_down_time: NumberInput
    loads_possible: LineOf

    fuel = choice(
        "What heats the {}",
        ELECTRICITY,
        NATURAL_GAS,
        PROPANE,
        default=ELECTRICITY,
        how="What the steam generator or burner runs on.",
        source=COMMON_PRACTICE,
    )
    own_efficiency = number(
        "Your own figure: share of the energy of the {} that gets into the steam",
        unit="share",
        usual=(0.7, 0.99),
        hard=(0.05, 1),
        optional=True,
        how="Heat in the water boiled away in an hour at full power, weighed, over the energy of that hour.",
        source=COMMON_PRACTICE,
        note="Wins over the usual share. Clear it when you change what heats the steamer.",
    )
    own_heat_up_time = number(
        "Your own figure: hours from cold to temperature, {}",
        unit="h/run",
        usual=(0.3, 14),
        hard=(0.1, 200),
        optional=True,
        how="From the log of a full load: steam on until the chamber reaches its temperature.",
        note="Wins over the worked hours.",
    )
    handling_rate = number(
        "Bags loaded into the {} and unloaded in an hour of work",
        unit="bag_filled/person_hour",
        usual=(125, 500),
        hard=(5, 10000),
        default=250,
        how="Clock one load in and out, add the hours of all hands, and divide the bags by them.",
        source=COMMON_PRACTICE,
    )
    people_loading = number(
        "People who load and unload the {} together",
        unit="person_hour/h",
        usual=(1, 4),
        hard=(0.25, 50),
        default=1,
        how="Count hands on a usual day.",
        source=COMMON_PRACTICE,
        note="Two people take half the time on the clock, and the same hours of work.",
    )

    @property
    def drawn(self) -> Expr:
        """Power of the generator or burner."""
        return self.power

    @line("Electricity heats the {}", unit="flag")
    def electric(self) -> Expr:
        """1 for electricity, 0 for a fuel."""
        return self.chose(self.fuel, ELECTRICITY)

    @line("Natural gas heats the {}", unit="flag")
    def on_gas(self) -> Expr:
        """1 for natural gas."""
        return self.chose(self.fuel, NATURAL_GAS)

    @line("Propane heats the {}", unit="flag")
    def on_propane(self) -> Expr:
        """1 for propane."""
        return self.chose(self.fuel, PROPANE)

    @line("Share of the energy of the {} that usually gets into the steam", unit="share", source=COMMON_PRACTICE)
    def usual_efficiency(self) -> Expr:
        """By what heats it: a flue carries heat away that electricity does not lose."""
        return usual_efficiency(self.electric)

    @line("Share of the energy of the {} that gets into the steam", unit="share")
    def efficiency(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_efficiency), self.own_efficiency, self.usual_efficiency)

    @line("Power that gets into the steam of the {}", unit="kW")
    def steam_power(self) -> Expr:
        """At full power."""
        return steam_power(self.drawn, self.efficiency)

    @line("Power left to warm the load of the {}", unit="kW", source=COMMON_PRACTICE)
    def power_left(self) -> Expr:
        """Losses grow from nothing while the steamer warms, so half of them counts."""
        return power_left(self.steam_power, self.heat.standing_loss)

    @line("Heat-up of the {}, as worked out", unit="h/run", zero_is_none=True)
    def worked_heat_up_time(self) -> Expr:
        """From steam on to the chamber at its temperature; none, and a check fails, where no power is left for it."""
        return heat_up_time(self.heat.heat_to_supply, self.power_left)

    @line("Heat-up of the {}", unit="h/run", zero_is_none=True)
    def heat_up_time(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_heat_up_time), self.own_heat_up_time, self.worked_heat_up_time)

    @line("Heat-up of the {} is your own figure", unit="flag")
    def heat_up_given(self) -> Expr:
        """1 where you typed hours: a change of power or load does not move them."""
        return self.given(self.own_heat_up_time)

    @line("Your heat-up of the {} above or below the worked one", unit="share", zero_is_none=True)
    def heat_up_difference(self) -> Expr:
        """None where you gave no figure.

        Far above: less power than typed, more steel, or less insulation.
        """
        return difference_from_worked(self.heat_up_time, self.worked_heat_up_time)

    @line("Power drawn by the {} at hold", unit="kW")
    def hold_power(self) -> Expr:
        """A small part of the nameplate: holding is cheap beside heating up."""
        return hold_power(self.heat.standing_loss, self.efficiency)

    @line("Hours of full standing loss in a load of the {}", unit="h/run", source=COMMON_PRACTICE)
    def hours_of_loss(self) -> Expr:
        """All of the hold, and half of the heat-up as worked out."""
        return hours_of_loss(self.worked_heat_up_time, self.hold_time)

    @line("Heat lost by a load of the {}", unit="kWh/run")
    def heat_lost(self) -> Expr:
        """By walls and vent."""
        return self.heat.standing_loss * self.hours_of_loss

    @line("Energy of a load of the {}, as worked out", unit="kWh/run")
    def worked_energy(self) -> Expr:
        """What the steam must bring and what is lost meanwhile, over the share that gets into the steam.

        Hours from cold that you typed move only the clock.
        """
        return energy_of_run(self.heat.heat_to_supply, self.heat_lost, self.efficiency)

    @line("Drained away and lost in the heater, {}", unit="kWh/run")
    def heat_rest(self) -> Expr:
        """What the worked energy has over the heat that stays in the load and the heat lost by walls and vent."""
        return self.worked_energy - self.heat.load_heat - self.heat_lost

    @line("Work to load and unload the {}", unit="person_hour/run")
    def handling_hours(self) -> Expr:
        """Grows with the bags in the load."""
        return ratio(self.heat.bags, self.handling_rate)

    @line("Loading and unloading the {} by the clock", unit="h/run")
    def handling_time(self) -> Expr:
        """The steamer stands open meanwhile."""
        return ratio(self.handling_hours, self.people_loading)

    @line("Hours the {} is taken by a load", unit="h/run")
    def cycle_time(self) -> Expr:
        """Loading, heat-up, hold, cool-down and unloading, day and night."""
        return self.handling_time + self.heat_up_time + self.hold_time + self.cool_down_time

    @line("Loads of the {} a week", unit="run/week")
    def loads_a_week(self) -> Expr:
        """For all bags of a week and own spawn steamed with them.

        As an average, so a part of a load means that some weeks have one more.
        """
        return ratio(self.to_steam.places, self.heat.bags)

    @line("Hours between loads of the {}", unit="h/run")
    def hours_between_loads(self) -> Expr:
        """From the start of one load to the start of the next, spread evenly over the week."""
        return ratio(named(HOURS_IN_A_WEEK), self.loads_a_week)

    @line("Hours the {} is taken a week", unit="h/week")
    def hours_taken_a_week(self) -> Expr:
        """By the clock, of the 168 hours of a week; what the working hours leave room for stands below."""
        return self.cycle_time * self.loads_a_week

    @line("Loads of the {} a week that there are hours to load and unload", unit="run/week", source=ARITHMETIC)
    def loads_handled(self) -> Expr:
        """Whole loads, if nothing else is done in those hours."""
        return loads_by_hours(self.steaming.staffed_week, self.handling_time)

    @line("Bags that the {} can steam a week", unit="bag_filled/week")
    def bags_possible(self) -> Expr:
        """Full loads only; own spawn steamed with them takes places of these."""
        return self.loads_possible * self.heat.bags

    @line("Electric power of the {}", unit="kW")
    def electric_power(self) -> Expr:
        """What it can draw from the service; nothing where fuel heats it, the small motor of a burner aside."""
        return self.drawn * self.electric

    @line("The {} gets hot as typed", unit="flag")
    def gets_hot(self) -> Expr:
        """1 where its temperatures make sense and its power is enough."""
        return all_of(self.heat.sound, self.steam_power > self.heat.standing_loss)

    @line("The {} can do a load in a week", unit="flag")
    def does_a_load(self) -> Expr:
        """0 where it does not get hot, or a load takes longer than somebody is there."""
        return all_of(self.gets_hot > 0, self.loads_possible > 0)

    @line("The {} works as typed and steams the bags of a week", unit="flag")
    def fits(self) -> Expr:
        """1 where it gets hot and its loads fit into the week."""
        return all_of(self.gets_hot > 0, self.loads_a_week <= self.loads_possible)

    @line("Amps of the {} on single phase", unit="A")
    def single_phase_amps(self) -> Expr:
        """At full power; none where fuel heats it."""
        return single_phase_current(self.electric_power, self.energy.voltage)

    @line("Amps of the {} in each line on three phases", unit="A")
    def three_phase_amps(self) -> Expr:
        """At full power, all three lines alike."""
        return three_phase_current(self.electric_power, self.energy.voltage)

    @line("Amps of the {}", unit="A")
    def amps(self) -> Expr:
        """On the supply that the farm has."""
        three_phase = self.energy.chose(self.energy.phases, THREE_PHASE)
        return where(three_phase, self.three_phase_amps, self.single_phase_amps)

    @line("Amps that the circuit of the {} must carry", unit="A", source=NATIONAL_ELECTRICAL_CODE)
    def circuit_amps(self) -> Expr:
        """A quarter more, as it runs for hours on end. This is for planning; an electrician decides."""
        return continuous_current(self.amps)

    @check(
        "The {} can reach and hold its temperature",
        kind="error",
        says=(
            "The steam generator or burner of the {} gives no more heat than walls and vent lose at hold: check its "
            "power, the insulation and the vent."
        ),
    )
    def reaches_temperature(self) -> Expr:
        """With too little power it never gets there, and the hours and energy worked out mean nothing."""
        return if_in_use(self.heat.in_use, self.steam_power > self.heat.standing_loss)

    @check(
        "Electric service carries the {}",
        kind="alert",
        says=(
            "The {} needs more amps than your service has free: see its circuit amps, then ask an electrician and the "
            "power company."
        ),
    )
    def service_is_enough(self) -> Expr:
        """A first look only. Fine where fuel heats it."""
        return if_in_use(self.heat.in_use, self.circuit_amps <= self.energy.service_amps)

    @check(
        "Loads of the {} fit into the week",
        kind="alert",
        says=(
            "The {} cannot steam that many bags in the hours and days when somebody is there: see the loads it can "
            "do a week, and the hours it is taken by a load."
        ),
    )
    def loads_fit(self) -> Expr:
        """By working hours and days, not by the clock alone."""
        return if_in_use(self.heat.in_use, self.loads_a_week <= self.loads_possible)
