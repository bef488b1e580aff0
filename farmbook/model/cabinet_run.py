"""Hours, power and amps of one run of the steam cabinet."""

from __future__ import annotations

from farmbook.calc.calendar import HOURS_IN_A_WEEK
from farmbook.calc.electricity import continuous_current, single_phase_current, three_phase_current
from farmbook.calc.heat import energy_of_run, heat_up_time, hold_power, power_left, steam_power
from farmbook.calc.own_figure import difference_from_worked
from farmbook.expr.functions import named, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.declare import check, line, number, uses
from farmbook.model.energy import THREE_PHASE, Energy
from farmbook.model.farm_plan import Farm
from farmbook.model.section import Section
from farmbook.sources import COMMON_PRACTICE, GROWERS_HANDBOOKS, NATIONAL_ELECTRICAL_CODE

__all__ = ["CabinetRun"]


class CabinetRun(Section):
    """One run of the cabinet, from loading to unloading, with an electric steam generator."""

    title = "Steam cabinet: hours and power"
    table = "cabinet"

    farm = uses(Farm)
    energy = uses(Energy)
    heat = uses(CabinetHeat)

    power = number(
        "Power of the steam generator",
        unit="kW",
        usual=(12, 120),
        hard=(0.5, 2000),
        default=36,
        how="Nameplate; check with a clamp meter, as burnt-out elements go unnoticed.",
        source=COMMON_PRACTICE,
    )
    efficiency = number(
        "Share of that power that gets into the steam",
        unit="share",
        usual=(0.92, 0.99),
        hard=(0.05, 1),
        default=0.96,
        how="Water boiled in an hour at full power, against the kWh of that hour.",
        source=COMMON_PRACTICE,
    )
    hold_time = number(
        "Chamber hold",
        unit="h/run",
        usual=(12, 20),
        hard=(0, 200),
        default=17,
        how="From the log: hours from the chamber reaching its temperature to steam off.",
        source=GROWERS_HANDBOOKS,
        note="Hours for the chamber, not for the middle of the bags, which follows hours later.",
    )
    cool_down_time = number(
        "Cool-down",
        unit="h/run",
        usual=(10, 48),
        hard=(0, 500),
        default=14,
        how="From the log: hours from steam off until bags are cool enough to take out.",
        source=GROWERS_HANDBOOKS,
    )
    own_heat_up_time = number(
        "Your own figure: hours from cold to temperature",
        unit="h/run",
        usual=(2, 14),
        hard=(0.1, 200),
        optional=True,
        how="From the log of a full load: steam on until the chamber reaches its temperature.",
        note="Wins over the worked hours.",
    )
    handling_rate = number(
        "Bags loaded and unloaded in an hour of work",
        unit="bag_filled/person_hour",
        usual=(125, 500),
        hard=(5, 10000),
        default=250,
        how="Clock one load in and out, add the hours of all hands, and divide the bags by them.",
        source=COMMON_PRACTICE,
    )
    people_loading = number(
        "People who load and unload together",
        unit="person_hour/h",
        usual=(1, 4),
        hard=(0.25, 50),
        default=1,
        how="Count hands on a usual day.",
        source=COMMON_PRACTICE,
        note="Two people take half the time on the clock, and the same hours of work.",
    )

    @line("Power that gets into the steam", unit="kW")
    def steam_power(self) -> Expr:
        """At full power."""
        return steam_power(self.power, self.efficiency)

    @line("Power left to warm the load", unit="kW", source=COMMON_PRACTICE)
    def power_left(self) -> Expr:
        """Losses grow from nothing while the cabinet warms, so half of them counts."""
        return power_left(self.steam_power, self.heat.standing_loss)

    @line("Heat-up, as worked out", unit="h/run")
    def worked_heat_up_time(self) -> Expr:
        """From steam on to the chamber at its temperature; zero, and a check fails, where no power is left for it."""
        return heat_up_time(self.heat.heat_to_supply, self.power_left)

    @line("Heat-up", unit="h/run")
    def heat_up_time(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_heat_up_time), self.own_heat_up_time, self.worked_heat_up_time)

    @line("Your heat-up above or below the worked one", unit="share")
    def heat_up_difference(self) -> Expr:
        """Zero where you gave no figure.

        Far above: fewer elements working, more steel, or less insulation than typed.
        """
        return difference_from_worked(self.heat_up_time, self.worked_heat_up_time)

    @line("Power drawn at hold", unit="kW")
    def hold_power(self) -> Expr:
        """A small part of the nameplate: holding is cheap beside heating up."""
        return hold_power(self.heat.standing_loss, self.efficiency)

    @line("Energy of a load, as worked out", unit="kWh/run")
    def worked_energy(self) -> Expr:
        """Full power while heating up, then the power drawn at hold. What the generator loses is in it."""
        return energy_of_run(self.power, self.heat_up_time, self.hold_power, self.hold_time)

    @line("Work to load and unload", unit="person_hour/run")
    def handling_hours(self) -> Expr:
        """Grows with the bags in the load."""
        return ratio(self.farm.bags_per_load, self.handling_rate)

    @line("Loading and unloading by the clock", unit="h/run")
    def handling_time(self) -> Expr:
        """The cabinet stands open meanwhile."""
        return ratio(self.handling_hours, self.people_loading)

    @line("Hours the cabinet is taken by a load", unit="h/run")
    def cycle_time(self) -> Expr:
        """Loading, heat-up, chamber hold, cool-down and unloading, day and night."""
        return self.handling_time + self.heat_up_time + self.hold_time + self.cool_down_time

    @line("Hours between loads", unit="h/run")
    def hours_between_loads(self) -> Expr:
        """From the start of one load to the start of the next, spread evenly over the week."""
        return ratio(named(HOURS_IN_A_WEEK), self.farm.loads_a_week)

    @line("Hours the cabinet is taken a week", unit="h/week")
    def hours_taken_a_week(self) -> Expr:
        """By the clock.

        Somebody has to be there to load and unload at those hours, so fewer loads may be possible than this allows.
        """
        return self.cycle_time * self.farm.loads_a_week

    @line("Amps on single phase", unit="A")
    def single_phase_amps(self) -> Expr:
        """At full power."""
        return single_phase_current(self.power, self.energy.voltage)

    @line("Amps in each line on three phases", unit="A")
    def three_phase_amps(self) -> Expr:
        """At full power, all three lines alike."""
        return three_phase_current(self.power, self.energy.voltage)

    @line("Amps of the steam generator", unit="A")
    def amps(self) -> Expr:
        """On the supply that the farm has."""
        three_phase = self.energy.chose(self.energy.phases, THREE_PHASE)
        return where(three_phase, self.three_phase_amps, self.single_phase_amps)

    @line("Amps that its circuit must carry", unit="A", source=NATIONAL_ELECTRICAL_CODE)
    def circuit_amps(self) -> Expr:
        """A quarter more, as it runs for hours on end. This is for planning; an electrician decides."""
        return continuous_current(self.amps)

    @check(
        "Steam generator can reach and hold the temperature",
        kind="error",
        says=(
            "The steam generator gives no more heat than walls and vent lose at hold: check its power, the insulation "
            "and the vent."
        ),
    )
    def reaches_temperature(self) -> Expr:
        """With too little power the cabinet never gets there, and the hours and energy worked out mean nothing."""
        return self.steam_power > self.heat.standing_loss

    @check(
        "Electric service carries the steam generator",
        kind="alert",
        says=(
            "The steam generator needs more amps than your service has free: see its circuit amps, then ask an "
            "electrician and the power company."
        ),
    )
    def service_is_enough(self) -> Expr:
        """A first look only."""
        return self.circuit_amps <= self.energy.service_amps

    @check(
        "Loads fit into the week",
        kind="alert",
        says=(
            "One cabinet cannot take that many loads a week: see the hours it is taken by a load and the hours between "
            "loads."
        ),
    )
    def loads_fit(self) -> Expr:
        """With one cabinet, loaded and unloaded at any hour of day and night."""
        return self.hours_taken_a_week <= HOURS_IN_A_WEEK
