"""How hard the middle of the coldest bag is cooked in a steamer of any kind; then the cabinet's own part."""

from __future__ import annotations

from farmbook.calc.lethality import closeness_steps, lethal_rate, time_lost, time_until_close
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import joined, maximum, named
from farmbook.expr.nodes import Expr, Line
from farmbook.model.alike import Alike
from farmbook.model.axes import STEP
from farmbook.model.cabinet_heat import CabinetHeat, SteamerHeat
from farmbook.model.cabinet_run import CabinetRun, SteamerRun
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
from farmbook.model.declare import LineOf, check, line, number, uses
from farmbook.model.steaming import CABINET, if_in_use
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, HEAT_CONDUCTION, LETHAL_RATE

__all__ = ["CabinetCook", "SteamerCook"]


class SteamerCook(Alike):
    """The middle of the coldest bag while a steamer of any kind is held at its temperature."""

    rates = uses(LethalRates)
    heating = uses(CoreHeating)

    heat: SteamerHeat
    run: SteamerRun
    hours: LineOf

    @property
    def chamber(self) -> Line:
        """Temperature around the bags during the hold."""
        return self.heat.hold_temperature

    # The load

    @line("Chamber hold in the {}", unit="h")
    def hold(self) -> Expr:
        """Hours at temperature: what the steam is paid for, not what the middle of the bags gets."""
        return joined(self.run.hold_time, "h")

    @line("Gap to the chamber at the start, {}", unit="delta_degC")
    def first_gap(self) -> Expr:
        """The middle is taken to be still as cold as loaded when the chamber is at temperature.

        What it warms before that is left out, to be careful.
        """
        return self.chamber - self.heat.start_temperature

    @line("What an hour as hot as the {} counts for at 121.1 degC", unit="s/h", source=LETHAL_RATE)
    def chamber_rate(self) -> Expr:
        """The most that an hour can count for: the middle never gets hotter than the chamber."""
        return lethal_rate(self.chamber, named(REFERENCE), self.rates.z_value)

    @line("What an hour as cold as loaded counts for at 121.1 degC, {}", unit="s/h", source=LETHAL_RATE)
    def start_rate(self) -> Expr:
        """As good as nothing."""
        return lethal_rate(self.heat.start_temperature, named(REFERENCE), self.rates.z_value)

    @line("First gap over the gap that counts as hot, {}", unit="1", source=HEAT_CONDUCTION)
    def gap_to_close(self) -> Expr:
        """With the late start of the middle counted."""
        return closeness_steps(self.first_gap, self.heating.lag_factor, named(CLOSE))

    # Row by row

    @line("Of these in the hold, {}", unit="h", axes=(STEP,))
    def hours_held(self) -> Expr:
        """Only these count. The row in which the hold ends counts in proportion."""
        return held(self.hours, self.hold)

    @line("Middle of the bag in the {}, slow end", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_slow(self) -> Expr:
        """In a bag that warms slower than expected."""
        return core(self.heat.start_temperature, self._core_after(self.heating.slow_rate, self.hours))

    @line("Middle of the bag in the {}, expected", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_expected(self) -> Expr:
        """Temperature in the middle of the coldest bag."""
        return core(self.heat.start_temperature, self._core_after(self.heating.expected_rate, self.hours))

    @line("Middle of the bag in the {}, fast end", unit="degC", axes=(STEP,), source=HEAT_CONDUCTION)
    def core_fast(self) -> Expr:
        """In a bag that warms faster than expected."""
        return core(self.heat.start_temperature, self._core_after(self.heating.fast_rate, self.hours))

    @line("What an hour counts for at that moment, {}, slow end", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_slow(self) -> Expr:
        """At 121.1 degC."""
        return rate_of_core(self.start_rate, self.core_slow, self.rates.z_value)

    @line("What an hour counts for at that moment, {}, expected", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_expected(self) -> Expr:
        """At 121.1 degC. Ten degrees C (18 degrees F) cooler count for a tenth."""
        return rate_of_core(self.start_rate, self.core_expected, self.rates.z_value)

    @line("What an hour counts for at that moment, {}, fast end", unit="s/h", axes=(STEP,), source=LETHAL_RATE)
    def rate_fast(self) -> Expr:
        """At 121.1 degC."""
        return rate_of_core(self.start_rate, self.core_fast, self.rates.z_value)

    @line("Cooked so far in the {}, slow end", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_slow(self) -> Expr:
        """Seconds counted at 121.1 degC."""
        return cooked_so_far(self.rate_slow, self.hours_held)

    @line("Cooked so far in the {}, expected", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_expected(self) -> Expr:
        """Seconds counted at 121.1 degC, during the hold; cooling down is left out."""
        return cooked_so_far(self.rate_expected, self.hours_held)

    @line("Cooked so far in the {}, fast end", unit="s", axes=(STEP,), source=LETHAL_RATE)
    def so_far_fast(self) -> Expr:
        """Seconds counted at 121.1 degC."""
        return cooked_so_far(self.rate_fast, self.hours_held)

    # What comes of it

    @line("Cooked in the {}, counted at 121.1 degC, slow end", unit="min", source=LETHAL_RATE)
    def cooked_slow(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_slow)

    @line("Cooked in the {}, counted at 121.1 degC, expected", unit="min", source=LETHAL_RATE)
    def cooked(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_expected)

    @line("Cooked in the {}, counted at 121.1 degC, fast end", unit="min", source=LETHAL_RATE)
    def cooked_fast(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far_fast)

    @line("Cooked in the {}, counted at 100 degC, slow end", unit="min", source=LETHAL_RATE)
    def boiled_slow(self) -> Expr:
        """The same cooking in larger numbers, easier to compare where there is no pressure."""
        return self.cooked_slow * self.rates.boiling_for_reference

    @line("Cooked in the {}, counted at 100 degC, expected", unit="min", source=LETHAL_RATE)
    def boiled(self) -> Expr:
        """The same cooking in larger numbers, easier to compare where there is no pressure."""
        return self.cooked * self.rates.boiling_for_reference

    @line("Cooked in the {}, counted at 100 degC, fast end", unit="min", source=LETHAL_RATE)
    def boiled_fast(self) -> Expr:
        """The same cooking in larger numbers, easier to compare where there is no pressure."""
        return self.cooked_fast * self.rates.boiling_for_reference

    @line("Hours of the hold lost to warming the middle, {}, slow end", unit="h", source=ARITHMETIC)
    def lost_slow(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked_slow, self.chamber_rate)

    @line("Hours of the hold lost to warming the middle, {}, expected", unit="h", source=ARITHMETIC)
    def lost(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked, self.chamber_rate)

    @line("Hours of the hold lost to warming the middle, {}, fast end", unit="h", source=ARITHMETIC)
    def lost_fast(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked_fast, self.chamber_rate)

    @line("Middle of the bag at the end of the hold, {}, slow end", unit="degC", source=HEAT_CONDUCTION)
    def end_slow(self) -> Expr:
        """In a bag that warms slower than expected."""
        return self._core_after(self.heating.slow_rate, self.hold)

    @line("Middle of the bag at the end of the hold, {}, expected", unit="degC", source=HEAT_CONDUCTION)
    def end(self) -> Expr:
        """In the coldest bag, when the steam goes off."""
        return self._core_after(self.heating.expected_rate, self.hold)

    @line("Middle of the bag at the end of the hold, {}, fast end", unit="degC", source=HEAT_CONDUCTION)
    def end_fast(self) -> Expr:
        """In a bag that warms faster than expected."""
        return self._core_after(self.heating.fast_rate, self.hold)

    @line("Hours until the middle is hot, {}, slow end", unit="h", source=HEAT_CONDUCTION)
    def hot_after_slow(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.slow_rate, self.hold)

    @line("Hours until the middle is hot, {}, expected", unit="h", source=HEAT_CONDUCTION)
    def hot_after(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.expected_rate, self.hold)

    @line("Hours until the middle is hot, {}, fast end", unit="h", source=HEAT_CONDUCTION)
    def hot_after_fast(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.gap_to_close, self.heating.fast_rate, self.hold)

    @line("Core hold in the {}, slow end", unit="h")
    def core_hold_slow(self) -> Expr:
        """What is left of the hold once the middle is hot."""
        return maximum(self.hold - self.hot_after_slow, 0)

    @line("Core hold in the {}, expected", unit="h")
    def core_hold(self) -> Expr:
        """What is left of the hold once the middle is hot: hours of the coldest bag's middle, not of the chamber."""
        return maximum(self.hold - self.hot_after, 0)

    @line("Core hold in the {}, fast end", unit="h")
    def core_hold_fast(self) -> Expr:
        """What is left of the hold once the middle is hot."""
        return maximum(self.hold - self.hot_after_fast, 0)

    @line("Hours of the hold past the last row, {}", unit="h")
    def hours_left_over(self) -> Expr:
        """0 as it should be: the rows reach to the end of the hold."""
        return self.hold - at_the_end(self.hours_held)

    def _core_after(self, rate: Expr, hours: Expr) -> Expr:
        return core_after(self.chamber, self.first_gap, self.heating.lag_factor, rate, hours)

    @check(
        "Middle of the bags gets near the temperature of the {}",
        kind="alert",
        says=(
            "In the {} the middle of the coldest bag stays more than 3 degC (5.4 degF) below the chamber all "
            "through the hold: hold longer, or leave gaps between bags. A probe tells how it really is."
        ),
    )
    def middle_gets_hot(self) -> Expr:
        """At the expected rate of warming, and only for the steamer in use."""
        return if_in_use(self.heat.in_use, self.chamber - self.end <= named(FAR))

    @check(
        "Rows of cooking reach to the end of the hold, {}",
        kind="error",
        says="Cooking in the {}: the rows run out before the hold ends. Lengthen the time from row to row.",
    )
    def rows_are_enough(self) -> Expr:
        """What lies past the last row would not be counted. Fine for the steamer not in use."""
        return if_in_use(self.heat.in_use, self.hours_left_over <= self.hold * SUM_TOLERANCE)


class CabinetCook(SteamerCook, words=CABINET):
    """The middle of the coldest bag in the cabinet."""

    title = "How hard a bag is cooked: steam cabinet"
    table = "cook"

    heat = uses(CabinetHeat)
    run = uses(CabinetRun)

    cabinet_step = number(
        "Time from row to row of the cooking, cabinet",
        unit="min",
        usual=(5, 30),
        hard=(1, 120),
        default=15,
        how="Short enough that the hold fills at least twenty rows, long enough that it ends before the 192 rows do.",
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
