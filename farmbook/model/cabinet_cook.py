"""How hard the middle of the coldest bag is cooked by one load in the steam cabinet."""

from __future__ import annotations

from farmbook.calc.lethality import closeness_steps, lethal_rate, time_lost, time_until_close
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import joined, maximum, named
from farmbook.expr.nodes import Expr
from farmbook.model.axes import STEP
from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.cook_strength import (
    CLOSE,
    FAR,
    REFERENCE,
    LethalRates,
    at_the_end,
    clock,
    cooked_so_far,
    core,
    core_after,
    held,
    rate_of_core,
)
from farmbook.model.core_heating import CoreHeating
from farmbook.model.declare import check, line, number, uses
from farmbook.model.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, HEAT_CONDUCTION, LETHAL_RATE

__all__ = ["CabinetCook"]


class CabinetCook(Section):
    """The middle of the coldest bag while the chamber of the cabinet is held at its temperature."""

    title = "How hard a bag is cooked: steam cabinet"
    table = "cook"

    rates = uses(LethalRates)
    heating = uses(CoreHeating)
    heat = uses(CabinetHeat)
    run = uses(CabinetRun)

    cabinet_step = number(
        "Time from row to row, steam cabinet",
        unit="min",
        usual=(5, 30),
        hard=(1, 120),
        default=15,
        how="Short enough that the hold fills at least twenty rows, long enough that it ends before the rows do.",
        source=COMMON_PRACTICE,
    )

    # The load

    @line("Chamber hold of the cabinet", unit="h")
    def hold(self) -> Expr:
        """Hours the chamber is at temperature: what steam is paid for, not what the middle of the bags gets."""
        return joined(self.run.hold_time, "h")

    @line("Gap to the chamber at the start, cabinet", unit="delta_degC")
    def first_gap(self) -> Expr:
        """The middle is taken to be still as cold as loaded when the chamber is at temperature.

        What it warms before that is left out, to be careful.
        """
        return self.heating.cabinet_chamber - self.heat.start_temperature

    @line("What an hour at the cabinet's chamber temperature counts for at 121.1 degC", unit="s/h", source=LETHAL_RATE)
    def chamber_rate(self) -> Expr:
        """The most that an hour can count for: the middle never gets hotter than the chamber."""
        return lethal_rate(self.heating.cabinet_chamber, named(REFERENCE), self.rates.z_value)

    @line("What an hour as cold as loaded counts for at 121.1 degC, cabinet", unit="s/h", source=LETHAL_RATE)
    def start_rate(self) -> Expr:
        """As good as nothing."""
        return lethal_rate(self.heat.start_temperature, named(REFERENCE), self.rates.z_value)

    @line("First gap over the gap that counts as hot, cabinet", unit="1", source=HEAT_CONDUCTION)
    def gap_to_close(self) -> Expr:
        """With the late start of the middle counted."""
        return closeness_steps(self.first_gap, self.heating.lag_factor, named(CLOSE))

    # Row by row

    @line("Hours since the cabinet was at temperature", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        """Rows past the end of the hold show how the middle would go on warming."""
        return clock(self.cabinet_step)

    @line("Of these in the hold, cabinet", unit="h", axes=(STEP,))
    def hours_held(self) -> Expr:
        """Only these count. The row in which the hold ends counts in proportion."""
        return held(self.hours, self.hold)

    @line("Middle of the bag in the cabinet, slow end", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_slow(self) -> Expr:
        """In a bag that warms slower than expected."""
        return core(self.heat.start_temperature, self._core_after(self.heating.slow_rate, self.hours))

    @line("Middle of the bag in the cabinet, expected", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_expected(self) -> Expr:
        """Temperature in the middle of the coldest bag."""
        return core(self.heat.start_temperature, self._core_after(self.heating.expected_rate, self.hours))

    @line("Middle of the bag in the cabinet, fast end", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_fast(self) -> Expr:
        """In a bag that warms faster than expected."""
        return core(self.heat.start_temperature, self._core_after(self.heating.fast_rate, self.hours))

    @line("What an hour counts for at that moment, cabinet, slow end", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_slow(self) -> Expr:
        """At 121.1 degC."""
        return rate_of_core(self.start_rate, self.core_slow, self.rates.z_value)

    @line("What an hour counts for at that moment, cabinet, expected", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_expected(self) -> Expr:
        """At 121.1 degC. Ten degrees C (18 degrees F) cooler count for a tenth."""
        return rate_of_core(self.start_rate, self.core_expected, self.rates.z_value)

    @line("What an hour counts for at that moment, cabinet, fast end", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_fast(self) -> Expr:
        """At 121.1 degC."""
        return rate_of_core(self.start_rate, self.core_fast, self.rates.z_value)

    @line("Cooked so far in the cabinet, slow end", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_slow(self) -> Expr:
        """Seconds counted at 121.1 degC."""
        return cooked_so_far(self.rate_slow, self.hours_held)

    @line("Cooked so far in the cabinet, expected", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_expected(self) -> Expr:
        """Seconds counted at 121.1 degC, while the chamber is held; cooling down is left out."""
        return cooked_so_far(self.rate_expected, self.hours_held)

    @line("Cooked so far in the cabinet, fast end", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_fast(self) -> Expr:
        """Seconds counted at 121.1 degC."""
        return cooked_so_far(self.rate_fast, self.hours_held)

    # What comes of it

    @line("Cooked in the cabinet, counted at 121.1 degC, slow end", unit="min", source=LETHAL_RATE)
    def cooked_slow(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_slow)

    @line("Cooked in the cabinet, counted at 121.1 degC, expected", unit="min", source=LETHAL_RATE)
    def cooked(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_expected)

    @line("Cooked in the cabinet, counted at 121.1 degC, fast end", unit="min", source=LETHAL_RATE)
    def cooked_fast(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_fast)

    @line("Cooked in the cabinet, counted at 100 degC, slow end", unit="min", source=LETHAL_RATE)
    def boiled_slow(self) -> Expr:
        """The same cooking in larger numbers, easier to compare for a cabinet."""
        return self.cooked_slow * self.rates.boiling_for_reference

    @line("Cooked in the cabinet, counted at 100 degC, expected", unit="min", source=LETHAL_RATE)
    def boiled(self) -> Expr:
        """The same cooking in larger numbers, easier to compare for a cabinet."""
        return self.cooked * self.rates.boiling_for_reference

    @line("Cooked in the cabinet, counted at 100 degC, fast end", unit="min", source=LETHAL_RATE)
    def boiled_fast(self) -> Expr:
        """The same cooking in larger numbers, easier to compare for a cabinet."""
        return self.cooked_fast * self.rates.boiling_for_reference

    @line("Hours of the cabinet's hold lost to warming the middle, slow end", unit="h", source=ARITHMETIC)
    def lost_slow(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked_slow, self.chamber_rate)

    @line("Hours of the cabinet's hold lost to warming the middle, expected", unit="h", source=ARITHMETIC)
    def lost(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked, self.chamber_rate)

    @line("Hours of the cabinet's hold lost to warming the middle, fast end", unit="h", source=ARITHMETIC)
    def lost_fast(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked_fast, self.chamber_rate)

    @line("Middle of the bag at the end of the cabinet's hold, slow end", unit="degC", source=HEAT_CONDUCTION)
    def end_slow(self) -> Expr:
        """In a bag that warms slower than expected."""
        return self._core_after(self.heating.slow_rate, self.hold)

    @line("Middle of the bag at the end of the cabinet's hold, expected", unit="degC", source=HEAT_CONDUCTION)
    def end(self) -> Expr:
        """In the coldest bag, when the steam goes off."""
        return self._core_after(self.heating.expected_rate, self.hold)

    @line("Middle of the bag at the end of the cabinet's hold, fast end", unit="degC", source=HEAT_CONDUCTION)
    def end_fast(self) -> Expr:
        """In a bag that warms faster than expected."""
        return self._core_after(self.heating.fast_rate, self.hold)

    @line("Hours until the middle is hot in the cabinet, slow end", unit="h", source=HEAT_CONDUCTION)
    def hot_after_slow(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.slow_rate, self.hold)

    @line("Hours until the middle is hot in the cabinet, expected", unit="h", source=HEAT_CONDUCTION)
    def hot_after(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.expected_rate, self.hold)

    @line("Hours until the middle is hot in the cabinet, fast end", unit="h", source=HEAT_CONDUCTION)
    def hot_after_fast(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.fast_rate, self.hold)

    @line("Core hold in the cabinet, slow end", unit="h")
    def core_hold_slow(self) -> Expr:
        """What is left of the hold once the middle is hot."""
        return maximum(self.hold - self.hot_after_slow, 0)

    @line("Core hold in the cabinet, expected", unit="h")
    def core_hold(self) -> Expr:
        """What is left of the hold once the middle is hot: hours of the coldest bag's middle, not of the chamber."""
        return maximum(self.hold - self.hot_after, 0)

    @line("Core hold in the cabinet, fast end", unit="h")
    def core_hold_fast(self) -> Expr:
        """What is left of the hold once the middle is hot."""
        return maximum(self.hold - self.hot_after_fast, 0)

    @line("Hours of the cabinet's hold past the last row", unit="h")
    def hours_left_over(self) -> Expr:
        """0 as it should be: the rows reach to the end of the hold."""
        return self.hold - at_the_end(self.hours_held)

    def _core_after(self, rate: Expr, hours: Expr) -> Expr:
        return core_after(self.heating.cabinet_chamber, self.first_gap, self.heating.lag_factor, rate, hours)

    @check(
        "Middle of the bags gets near the cabinet's temperature",
        kind="alert",
        says=(
            "The middle of the coldest bag in the cabinet stays more than 3 degC (5.4 degF) below the chamber all "
            "through the hold: hold longer, or leave gaps between bags."
        ),
    )
    def middle_gets_hot(self) -> Expr:
        """At the expected rate of warming."""
        return self.heating.cabinet_chamber - self.end <= named(FAR)

    @check(
        "Rows of the cabinet's cooking reach to the end of the hold",
        kind="error",
        says="The rows of the cabinet's cooking run out before the hold ends: lengthen the time from row to row.",
    )
    def rows_are_enough(self) -> Expr:
        """What lies past the last row would not be counted."""
        return self.hours_left_over <= self.hold * SUM_TOLERANCE
