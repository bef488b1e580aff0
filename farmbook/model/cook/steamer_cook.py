"""How hard a bag is cooked in a steamer of any kind."""

from __future__ import annotations

from typing import ClassVar

from farmbook.calc.lethality import (
    gap_fall,
    lateness_after_rise,
    lethal_rate,
    rise_fall,
    time_lost,
    time_until_close,
    warming_to_do,
)
from farmbook.expr.functions import (
    all_of,
    any_of,
    at,
    joined,
    maximum,
    minimum,
    named,
    negation,
    ratio,
    where,
)
from farmbook.expr.nodes import Expr, Line, wrap
from farmbook.model.axes import COURSE, STEP
from farmbook.model.cook.cook_strength import (
    CLOSE,
    FAR,
    HOT,
    REFERENCE,
    LethalRates,
    at_the_end,
    begin,
    clock,
    cooked_so_far,
    core,
    core_after,
    rate_of_core,
    row_time,
)
from farmbook.model.cook.core_heating import BY_SIZE_OR_PROBE, FAST_BAG, CoreHeating
from farmbook.model.heat.steamer_heat import SteamerHeat
from farmbook.model.heat.steaming import if_in_use
from farmbook.model.steam.steamer_run import SteamerRun
from farmbook.sections.alike import Alike
from farmbook.sections.declare import Option, check, line, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, HEAT_CONDUCTION, LETHAL_RATE

__all__ = ["SteamerCook"]


class SteamerCook(Alike):
    """The middle of the coldest bag while a steamer of any kind is held at its temperature."""

    rates = uses(LethalRates)
    heating = uses(CoreHeating)

    heat: SteamerHeat
    run: SteamerRun
    probe_place: ClassVar[Option]
    """Where the probe was, if it was in this steamer."""

    @property
    def chamber(self) -> Line:
        """Temperature around the bags during the hold."""
        return self.heat.hold_temperature

    # The load

    @line("Chamber hold in the {}", unit="h")
    def hold(self) -> Expr:
        """Hours at temperature: what the steam is paid for, not what the middle of the bags gets."""
        return joined(self.run.hold_time, "h")

    @line("Middle of the bag when loaded, {}", unit="degC")
    def as_loaded(self) -> Expr:
        """Never taken to be hotter than the chamber."""
        return minimum(self.heat.start_temperature, self.chamber)

    @line("Gap to the chamber at the start, {}", unit="delta_degC")
    def first_gap(self) -> Expr:
        """How much cooler than the hot chamber the bags were loaded."""
        return self.chamber - self.as_loaded

    @line("Heat-up of the {} by the clock", unit="h")
    def heat_up(self) -> Expr:
        """The bags warm all through it. The chamber is taken to rise evenly from the temperature of the bags."""
        return joined(self.run.heat_up_time, "h")

    @line("What an hour as hot as the {} counts for at 121.1 degC", unit="s/h", source=LETHAL_RATE)
    def chamber_rate(self) -> Expr:
        """The most that an hour can count for: the middle never gets hotter than the chamber."""
        return lethal_rate(self.chamber, named(REFERENCE), self.rates.z_value)

    @line("First gap over the gap that counts as hot, {}", unit="1", source=HEAT_CONDUCTION)
    def gap_to_close(self) -> Expr:
        """Hot is within 1 degC (1.8 degF) of the chamber."""
        return gap_fall(self.first_gap, named(CLOSE))

    @line("Warming to do until the middle is hot, {}", unit="1", axes=(COURSE,), source=HEAT_CONDUCTION)
    def warming_to_close(self) -> Expr:
        """With the start of the middle counted; divided by the warming in an hour it gives hours."""
        return warming_to_do(self.gap_to_close, self.late)

    @line("First gap over the gap left at 87.8 degC (190 degF), {}", unit="1", source=HEAT_CONDUCTION)
    def gap_to_mark(self) -> Expr:
        """1 or less: loaded so hot already, or the chamber never gets there."""
        return gap_fall(self.first_gap, self.chamber - named(HOT))

    @line("Warming to do until 87.8 degC (190 degF), {}", unit="1", axes=(COURSE,), source=HEAT_CONDUCTION)
    def warming_to_mark(self) -> Expr:
        """With the start of the middle counted; divided by the warming in an hour it gives hours."""
        return warming_to_do(self.gap_to_mark, self.late)

    @line("Hold in a chamber hotter than 87.8 degC (190 degF), {}", unit="h")
    def hold_past_mark(self) -> Expr:
        """All of the hold, or none where the chamber is not hotter."""
        return self.hold * (self.chamber > named(HOT))

    # How fast the middle warms here

    @line("The probe counts for the {}", unit="flag")
    def probe_counts(self) -> Expr:
        """1 where the readings fit together and the probe was in this steamer."""
        was_here = self.heating.chose(self.heating.probe_place, self.probe_place)
        return all_of(self.heating.probe_counts, was_here)

    @line("The probe in the {} is faster than any mix", unit="flag")
    def probe_too_fast(self) -> Expr:
        """1 where it warms faster than by the size of the bag at best."""
        return all_of(self.probe_counts, self.heating.probe_rate > self.heating.best_rate_by_size)

    @line("Warming of the middle in the {}", unit="1/h", axes=(COURSE,))
    def warming(self) -> Expr:
        """By the probe and the spread where it counts, otherwise by the size of the bag: packed mix is the careful end."""
        by_probe = self.heating.probe_rate * self.heating.pace
        return where(self.probe_counts, by_probe, self.heating.by_size)

    @line("Hours in which the gap shrinks to about a third, {}", unit="h", axes=(COURSE,), source=HEAT_CONDUCTION)
    def hours_to_a_third(self) -> Expr:
        """To 37% of itself, again and again: a hot chamber is approached ever more slowly."""
        return ratio(wrap(1), self.warming)

    @line("Warming of the middle in the heat-up of the {}", unit="1", axes=(COURSE,), source=HEAT_CONDUCTION)
    def heat_up_warming(self) -> Expr:
        """Warming in an hour times the hours of the heat-up; none where temperatures are out of order."""
        return maximum(self.warming * self.heat_up, 0)

    @line(
        "How many times smaller the gap is for the heat-up of the {}", unit="1", axes=(COURSE,), source=HEAT_CONDUCTION
    )
    def heat_up_fall(self) -> Expr:
        """1 if the chamber were hot at once. Only where no probe counts: a probe has the heat-up in its readings."""
        return rise_fall(self.heat_up_warming)

    @line("How late the middle starts in the {}, natural logarithm", unit="1", axes=(COURSE,), source=HEAT_CONDUCTION)
    def late(self) -> Expr:
        """By the probe where it counts, otherwise by how bags stand and the heat-up.

        Below 0: the middle had begun to warm before the chamber was at temperature.
        """
        by_size = lateness_after_rise(self.heating.late_by_size, self.heat_up_fall)
        return where(self.probe_counts, self.heating.late_by_probe, by_size)

    @line("Middle of the bag when the {} is at temperature", unit="degC", axes=(COURSE,), source=HEAT_CONDUCTION)
    def begin(self) -> Expr:
        """Warmer than loaded: the rows below begin here."""
        return begin(self.chamber, self.first_gap, self.late)

    # Row by row

    @line("Time from row to row of the cooking, {}", unit="min")
    def row_time(self) -> Expr:
        """The hold in even parts, so that the last row is its end."""
        return row_time(self.hold)

    @line("Hours since the {} was at temperature", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        """Up to the end of the hold; the bags go on warming past it, which is not counted."""
        return clock(self.row_time)

    @line("Middle of the bag in the {}", unit="degC", axes=(COURSE, STEP), source=HEAT_CONDUCTION)
    def core(self) -> Expr:
        """Temperature in the middle of the coldest bag."""
        return core(self.begin, self._core_after(self.hours))

    @line("What an hour counts for at that moment, {}", unit="s/h", axes=(COURSE, STEP), source=LETHAL_RATE)
    def rate(self) -> Expr:
        """At 121.1 degC. Ten degrees C (18 degrees F) cooler count for a tenth."""
        return rate_of_core(self.begin, self.core, self.rates.z_value)

    @line("Cooked so far in the {}", unit="s", axes=(COURSE, STEP), source=LETHAL_RATE)
    def so_far(self) -> Expr:
        """Seconds counted at 121.1 degC, during the hold; cooling down is left out."""
        return cooked_so_far(self.rate, self.row_time)

    # What comes of it

    @line("Cooked in the {}, counted at 121.1 degC (250 degF)", unit="min", axes=(COURSE,), source=LETHAL_RATE)
    def cooked(self) -> Expr:
        """Technical name: F0. For comparing your own loads."""
        return at_the_end(self.so_far)

    @line("Cooked in the {}, counted at 100 degC (212 degF)", unit="min", axes=(COURSE,), source=LETHAL_RATE)
    def boiled(self) -> Expr:
        """The same cooking in larger numbers, easier to compare where there is no pressure."""
        return self.cooked * self.rates.boiling_for_reference

    @line("Hours of the hold lost to warming the middle, {}", unit="h", axes=(COURSE,), source=ARITHMETIC)
    def lost(self) -> Expr:
        """The hold less the hours at chamber temperature that would cook as much."""
        return time_lost(self.hold, self.cooked, self.chamber_rate)

    @line("Middle of the bag at the end of the hold, {}", unit="degC", axes=(COURSE,), source=HEAT_CONDUCTION)
    def end(self) -> Expr:
        """When the steam goes off."""
        return self._core_after(self.hold)

    @line("Cooked in the {}, by size or probe, counted at 121.1 degC (250 degF)", unit="min")
    def cooked_by_size_or_probe(self) -> Expr:
        """Of packed mix, unless a probe counts. Technical name: F0."""
        return at(self.cooked, COURSE, named(BY_SIZE_OR_PROBE))

    @line("Middle of the bag at the end of the hold of the {}, by size or probe", unit="degC")
    def end_by_size_or_probe(self) -> Expr:
        """Of packed mix, unless a probe counts."""
        return at(self.end, COURSE, named(BY_SIZE_OR_PROBE))

    @line("Middle as the hold of the {} ends, by probe or fast bag", unit="degC")
    def surest_end(self) -> Expr:
        """By the probe where it counts. Without one the middle is known within a factor of two: that of a fast bag."""
        return where(self.probe_counts, self.end_by_size_or_probe, at(self.end, COURSE, named(FAST_BAG)))

    @line("Hours until the middle is hot, {}", unit="h", axes=(COURSE,), source=HEAT_CONDUCTION)
    def hot_after(self) -> Expr:
        """Within one degree C (1.8 degrees F) of the chamber, from the chamber reaching its temperature."""
        return time_until_close(self.warming_to_close, self.warming, self.hold)

    @line("Core hold: hours the middle was within 1 degC (1.8 degF) of the chamber, {}", unit="h", axes=(COURSE,))
    def core_hold(self) -> Expr:
        """0 does not mean uncooked: the middle nears a hot chamber ever more slowly."""
        return maximum(self.hold - self.hot_after, 0)

    @line("Hours the middle was at 87.8 degC (190 degF) or more, {}", unit="h", axes=(COURSE,), source=COMMON_PRACTICE)
    def at_mark(self) -> Expr:
        """What is left of the hold once the middle of the coldest bag has come so far; cooling down is left out."""
        until = time_until_close(self.warming_to_mark, self.warming, self.hold)
        return maximum(self.hold_past_mark - until, 0)

    def _core_after(self, hours: Expr) -> Expr:
        return core_after(self.chamber, self.first_gap, self.late, self.warming, hours)

    @check(
        "Middle of the bags gets near the temperature of the {}",
        kind="alert",
        says=(
            "In the {} the middle of the coldest bag stays more than 3 degC (5.4 degF) below the chamber all "
            "through the hold, by your probe or, without one, even in a fast bag: hold longer, or leave gaps between "
            "bags."
        ),
    )
    def middle_gets_hot(self) -> Expr:
        """By the probe where it counts, otherwise in a fast bag; only for the steamer in use."""
        return if_in_use(self.heat.in_use, self.chamber - self.surest_end <= named(FAR))

    @check(
        "Middle of the bags is known to get near the temperature of the {}",
        kind="alert",
        says=(
            "In the {} a bag of packed mix stays more than 3 degC (5.4 degF) below the chamber all through the hold, "
            "and no probe in it has shown that yours warm faster: measure the middle of the coldest bag before you "
            "rely on this hold."
        ),
    )
    def middle_is_known(self) -> Expr:
        """By the size of the bag the middle gets hot, or a probe tells; only for the steamer in use."""
        by_size = self.chamber - self.end_by_size_or_probe <= named(FAR)
        return if_in_use(self.heat.in_use, any_of(self.probe_counts, by_size))

    @check(
        "Probe in the {} warms no faster than mixes do",
        kind="alert",
        says=(
            "The probe in the {} warms faster than any mix we know of: was it in the middle of the coldest bag? "
            "See your own figures for the middle of the bag, and how thick bags are."
        ),
    )
    def probe_not_too_fast(self) -> Expr:
        """No faster than the size of the bag allows at best, and only for the steamer in use."""
        return if_in_use(self.heat.in_use, negation(self.probe_too_fast))
