"""How hard the middle of a bag is cooked: printed figures, the integral in closed form, a plain loop, checks."""

from __future__ import annotations

import re
from collections.abc import Mapping
from math import exp, factorial, log, pi
from typing import Any, Final

import numpy as np
import pytest

from farmbook.calc.lethality import late_gap, lateness_after_rise, rise_fall
from farmbook.expr.nodes import Expr
from farmbook.model.axes import STEP
from farmbook.model.cook import cook_strength
from farmbook.model.cook.cook_strength import LethalRates
from farmbook.model.cook.core_heating import (
    GAP_ALL_ROUND,
    IN_CABINET,
    IN_PAIRS,
    IN_ROWS,
    IN_VESSEL,
    CoreHeating,
)
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.steaming import VESSEL, Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.place.site import Site
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.results import whole_farm
from farmbook.sections.declare import Option, line, number
from farmbook.sections.section import Section
from tests.model.cook_case import (
    BAGS,
    FAST,
    HOT_AT_ONCE,
    IN_USE,
    MIDDLE,
    PLACES,
    SLOW,
    different_lines,
    failing,
    vessel_at,
    worked,
)
from tests.model.helpers import evaluate, in_metric

PSI: Final = 6.894757293168


# Printed figures


@pytest.mark.parametrize(
    ("line_name", "printed"),
    [
        # from the table of lethal rates at 121.1 degC, z 10: 100 degC 0.007762
        ("lethal_rates.at_212f", 0.007762),
    ],
)
def test_what_an_hour_counts_for_is_the_rate_in_print(line_name: str, printed: float) -> None:
    assert worked()[line_name] / 3600 == pytest.approx(printed, abs=5e-7)


def test_what_an_hour_counts_for_in_degrees_f() -> None:
    """The canning form of the table, reference 250 degF and z 18 degF: 0.0017, 0.0077 and 0.2783 in print."""
    found = worked(system="us")
    for line_name, printed in (("at_200f", 0.0017), ("at_212f", 0.0077), ("at_240f", 0.2783)):
        # 121.1 degC is 249.98 degF: 0.26% more
        assert found[f"lethal_rates.{line_name}"] / 3600 == pytest.approx(
            printed * 10 ** (0.02 / 18), rel=2e-4, abs=5e-5
        )


@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_row_counts_for_the_temperature_that_its_label_names(system: str) -> None:
    """Worked from the degrees F in the label; those in degC beside them say the same to a hundredth."""
    found = worked(system=system)
    for core in cook_strength.CORES:
        named = re.fullmatch(r".*: ([0-9.]+) degC \(([0-9]+) degF\)", core.label)
        assert named is not None
        celsius, fahrenheit = float(named[1]), int(named[2])
        assert celsius == pytest.approx((fahrenheit - 32) / 1.8, abs=0.005)
        exact = 3600 * 10 ** ((fahrenheit - 32) / 18 - 12.11)
        assert found[f"lethal_rates.at_{fahrenheit}f"] == pytest.approx(exact, rel=1e-9)
        line = next(each for each in whole_farm().lines if each.name == f"lethal_rates.at_{fahrenheit}f")
        assert f"{named[1]} degC ({fahrenheit} degF)" in line.label


def test_boiling_water_is_the_reference_of_the_second_table() -> None:
    found = worked()
    assert found["lethal_rates.at_212f_boiling"] == pytest.approx(60)
    assert found["lethal_rates.boiling_for_reference"] == pytest.approx(1 / 0.007762, rel=1e-4)
    for core in ("at_190f", "at_200f", "at_205f", "at_208f", "at_240f", "at_250f", "at_259f"):
        times = found[f"lethal_rates.{core}_boiling"] * 60 / found[f"lethal_rates.{core}"]
        assert times == pytest.approx(found["lethal_rates.boiling_for_reference"])


@pytest.mark.parametrize(("feet", "printed"), [(0, 0.967), (5000, 0.515), (7000, 0.406)])
def test_fifteen_psi_is_short_of_the_reference_and_more_so_on_a_hill(feet: float, printed: float) -> None:
    """15 psi by the gauge; the printed rates rest on temperatures rounded to 0.01 degC."""
    found = worked({VesselSteam.working_pressure: 15 * PSI, Site.altitude: feet * 0.3048})
    assert found["vessel_cook.chamber_rate"] / 3600 == pytest.approx(printed, abs=2e-3)


@pytest.mark.parametrize(
    ("chamber", "hours", "printed", "within"),
    [
        (100.0, 12, 5.589, 5e-4),
        (98.0, 12, 3.526, 5e-4),
        (94.90, 12, 1.729, 5e-3),  # the boiling point at 5,000 ft, rounded
        (100.0, 5, 2.33, 5e-3),
        (100.0, 17.2, 8.0, 0.02),
        (98.0, 27.2, 8.0, 0.02),
    ],
)
def test_a_middle_as_hot_as_the_chamber_all_along(chamber: float, hours: float, printed: float, within: float) -> None:
    """In a pit 300 m below the sea, where water boils at 101 degC."""
    hot = {CabinetHeat.hold_temperature: chamber, CabinetHeat.start_temperature: chamber, CabinetRun.hold_time: hours}
    found = worked({**hot, Site.altitude: -300})
    for bag in BAGS:
        assert found["cabinet_cook.cooked"][bag] == pytest.approx(printed, abs=within)
        assert found["cabinet_cook.lost"][bag] == pytest.approx(0, abs=1e-9)
        assert found["cabinet_cook.core_hold"][bag] == pytest.approx(hours)


@pytest.mark.parametrize(("degrees", "minutes", "printed"), [(121.0, 15, 14.66), (121.1, 1, 1.0), (124.0, 15, 29.25)])
def test_the_reference_is_121_1_and_not_121(degrees: float, minutes: float, printed: float) -> None:
    """15 min at 121 degC are 14.66, and 15.00 by texts that take 121; 15 min at 124 degC are 29.93 x 0.97724."""
    hot = {**vessel_at(degrees), VesselHeat.start_temperature: degrees}
    found = worked({**hot, VesselRun.hold_time: minutes / 60})
    assert found["vessel_cook.cooked"][MIDDLE] == pytest.approx(printed, abs=6e-3)


class Ramp(Section):
    """A middle that warms by 1 degC a minute, from 100 degC up to 121.1 degC, through the columns of the tables."""

    rates_z = number("z of the ramp", unit="delta_degC", usual=(5, 20), default=10, how="")
    hold = number("Hold of the ramp", unit="min", usual=(0, 30), default=21.1, how="")
    start = number("Start of the ramp", unit="degC", usual=(0, 120), default=100, how="")
    slope = number("Slope of the ramp", unit="delta_degC/h", usual=(0, 100), default=60, how="")

    @line("Row of the ramp", unit="min")
    def row(self) -> Expr:
        return cook_strength.row_time(self.hold)

    @line("Hours of the ramp", unit="h", axes=(STEP,))
    def hours(self) -> Expr:
        return cook_strength.clock(self.row)

    @line("Middle on the ramp", unit="degC", axes=(STEP,))
    def core(self) -> Expr:
        return cook_strength.core(self.start, self.start + self.slope * self.hours)

    @line("Rate on the ramp", unit="s/h", axes=(STEP,))
    def rate(self) -> Expr:
        return cook_strength.rate_of_core(self.start, self.core, self.rates_z)

    @line("Cooked on the ramp", unit="s", axes=(STEP,))
    def cooked(self) -> Expr:
        return cook_strength.cooked_so_far(self.rate, self.row)

    @line("Cooked at the end of the ramp", unit="min")
    def at_end(self) -> Expr:
        return cook_strength.at_the_end(self.cooked)


def test_a_ramp_of_one_degree_a_minute_gives_the_integral_in_print() -> None:
    """4.30923 min; trapezoids of a convex curve lie (2.3026 x 0.422 / 10)^2 / 12 = 7.9e-4 of it too high."""
    found = float(evaluate((Ramp,), "metric", {})["ramp.at_end"])
    assert found == pytest.approx(4.30923, rel=9e-4)
    assert found > 4.30923


# Against mathematics of its own


def entire_exponential_integral(x: float) -> float:
    """The integral of (1 - e^-t)/t from 0 to x: by its series, or far out by Euler's constant and a tail."""
    if x < 12:
        return sum((-1.0) ** (n + 1) * x**n / (n * factorial(n)) for n in range(1, 80))
    tail = exp(-x) / x * (1 - 1 / x + 2 / x**2 - 6 / x**3)
    return 0.5772156649015329 + log(x) + tail


def lost_in_closed_form(rate: float, lag: float, gap: float, hold: float, z: float = 10.0) -> float:
    """Hours of a hold that do not count in the middle of a block whose gap falls evenly in its logarithm."""
    first = gap * log(10) / z
    flat = min(log(lag) / rate, hold)
    last = min(first, first * lag * exp(-rate * hold))
    fallen = (entire_exponential_integral(first) - entire_exponential_integral(last)) / rate
    return flat * (1 - exp(-first)) + fallen


@pytest.mark.parametrize(("hold", "within"), [(4, 4e-3), (6, 1e-3), (10, 3e-4), (17, 2e-5), (47, 1e-6)])
def test_rows_come_to_the_integral_in_closed_form(hold: float, within: float) -> None:
    """Of the hours that count; the nearer the middle is to the chamber at the end, the nearer trapezoids come."""
    found = worked({**HOT_AT_ONCE, CabinetRun.hold_time: hold})
    lost = lost_in_closed_form(found["cabinet_cook.warming"][MIDDLE], (4 / pi) ** 3, 93.3 - 15.6, hold)
    assert hold - found["cabinet_cook.lost"][MIDDLE] == pytest.approx(hold - lost, rel=within)


def stepped(chamber: float, start: float, rate: float, lag: float, hold: float) -> tuple[list[float], float]:
    """The middle row by row and minutes cooked in the hold, by a loop."""
    rows = 50
    first = chamber - (chamber - start) * min(lag, 1.0)
    before, minutes, cores = 10 ** ((first - 121.1) / 10), 0.0, []
    for row in range(1, rows + 1):
        core = chamber - (chamber - start) * min(lag * exp(-rate * hold * row / rows), 1.0)
        now = 10 ** ((core - 121.1) / 10)
        minutes += (before + now) / 2 * hold * 60 / rows
        before = now
        cores.append(core)
    return cores, minutes


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("standing", [GAP_ALL_ROUND, IN_PAIRS, IN_ROWS])
@pytest.mark.parametrize("hold", [17.0, 9.05, 0.1])
def test_rows_are_those_of_a_plain_loop(system: str, standing: Option, hold: float) -> None:
    changes = {
        CoreHeating.standing: standing,
        CabinetRun.hold_time: hold,
        VesselRun.hold_time: hold / 3,
    }
    found = worked(changes, system)
    sudden = (4 / pi) ** (2 if standing == IN_ROWS else 3)
    for place, chamber, part in (("cabinet_cook", 93.3, 1), ("vessel_cook", 121.1, 3)):
        rise = found[f"{place.removesuffix('_cook')}_run.heat_up_time"]
        for bag in BAGS:
            rate = found[f"{place}.warming"][bag]
            lag = sudden * (1 - exp(-rate * rise)) / (rate * rise)
            cores, minutes = stepped(chamber, 15.6, rate, lag, hold / part)
            np.testing.assert_allclose(brought(found, f"{place}.core", "degC", system)[bag], cores, rtol=1e-9)
            assert found[f"{place}.cooked"][bag] == pytest.approx(minutes, rel=1e-9)
            assert found[f"{place}.so_far"][bag][-1] / 60 == pytest.approx(minutes, rel=1e-9)


def brought(found: Mapping[str, Any], name: str, unit: str, system: str) -> Any:
    return found[name] if system == "metric" else in_metric(found[name], unit)


# The hold in the middle, and the order of things


def test_the_middle_is_one_degree_short_when_its_hold_begins() -> None:
    found = worked({CabinetRun.hold_time: 47})
    begins = found["cabinet_cook.hot_after"][MIDDLE]
    assert found["cabinet_cook.core_hold"][MIDDLE] == pytest.approx(47 - begins)
    assert worked({CabinetRun.hold_time: begins})["cabinet_cook.end"][MIDDLE] == pytest.approx(93.3 - 1)


def test_no_core_hold_where_the_middle_stays_cold() -> None:
    found = worked({CabinetRun.hold_time: 3})
    assert found["cabinet_cook.core_hold"][MIDDLE] == 0
    assert found["cabinet_cook.hot_after"][MIDDLE] > 3


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("bag", BAGS)
def test_hours_at_190f_are_what_is_left_when_the_middle_gets_there(place: str, bag: int) -> None:
    """Against the table: rows in the hold with a middle of 87.8 degC (190 degF) or more, to within a row."""
    found = worked({VesselRun.hold_time: 8, CabinetRun.hold_time: 20})
    hours, course = found[f"{place}.hours"], found[f"{place}.core"][bag]
    hot = np.diff(hours, prepend=0)[course >= (190 - 32) / 1.8].sum()
    assert found[f"{place}.at_mark"][bag] == pytest.approx(hot, abs=hours[0])
    assert hot > 1


def test_hours_at_190f_begin_at_the_reading_of_190f() -> None:
    given = {CoreHeating.hours_to_150f: 4.4, CoreHeating.hours_to_190f: 9.5}
    assert worked(given)["cabinet_cook.at_mark"][MIDDLE] == pytest.approx(17 - 9.5)


@pytest.mark.parametrize(("chamber", "start", "hours"), [(87, 15.6, 0), (87, 95, 0), (95, 90, 17), (95, 96, 17)])
def test_hours_at_190f_in_a_cool_chamber_and_of_bags_loaded_hot(chamber: float, start: float, hours: float) -> None:
    found = worked({CabinetHeat.hold_temperature: chamber, CabinetHeat.start_temperature: start})
    assert found["cabinet_cook.at_mark"][MIDDLE] == pytest.approx(hours)


def test_a_core_hold_of_none_may_go_with_hours_of_cooking() -> None:
    found = worked({CabinetRun.hold_time: 8})
    assert found["cabinet_cook.core_hold"][MIDDLE] == 0
    assert found["cabinet_cook.at_mark"][MIDDLE] > 2


def test_the_last_row_is_the_end_of_the_hold() -> None:
    found = worked({CabinetRun.hold_time: 9.1})
    assert found["cabinet_cook.core"][MIDDLE][-1] == pytest.approx(found["cabinet_cook.end"][MIDDLE])
    assert found["cabinet_cook.hours"][-1] == pytest.approx(9.1)


def test_a_smaller_z_makes_cooking_below_the_reference_count_less() -> None:
    six, ten, twelve = (worked({LethalRates.z_value: z}) for z in (6, 10, 12))
    cooked = [found["cabinet_cook.cooked"][MIDDLE] for found in (six, ten, twelve)]
    assert cooked[0] < cooked[1] < cooked[2]
    assert ten["lethal_rates.at_212f"] == pytest.approx(3600 * 10 ** (-21.1 / 10))
    assert twelve["lethal_rates.at_212f"] == pytest.approx(3600 * 10 ** (-21.1 / 12))


def test_the_range_hardly_moves_a_long_hold_but_a_short_run_by_far() -> None:
    long, short = worked(), worked({VesselRun.hold_time: 2})
    assert long["cabinet_cook.cooked"][FAST] / long["cabinet_cook.cooked"][SLOW] < 2
    assert short["vessel_cook.cooked"][FAST] / short["vessel_cook.cooked"][SLOW] > 100


def test_a_chamber_on_a_hill_gets_no_hotter_than_boiling() -> None:
    held_at_98 = {CabinetHeat.hold_temperature: 98}
    low, high = worked(held_at_98), worked({**held_at_98, Site.altitude: 1524})
    assert low["core_heating.cabinet_chamber"] == pytest.approx(98)
    assert high["core_heating.cabinet_chamber"] == pytest.approx(94.90, abs=0.01)
    assert high["lethal_rates.at_boiling_point"] == pytest.approx(high["cabinet_cook.chamber_rate"])
    assert high["cabinet_cook.cooked"][MIDDLE] < low["cabinet_cook.cooked"][MIDDLE] / 2


# Checks


@pytest.mark.parametrize("place", PLACES)
def test_an_ordinary_load_passes(place: str) -> None:
    assert failing(IN_USE[place]) == set()


def test_an_ordinary_run_of_the_vessel_is_not_told_to_hold_longer_and_a_short_one_is() -> None:
    """Without a probe the middle is known within a factor of two: only where a fast bag stays cold as well."""
    assert "vessel_cook.middle_gets_hot" not in failing({Steaming.kind: VESSEL})
    assert "vessel_cook.middle_gets_hot" in failing({Steaming.kind: VESSEL, VesselRun.hold_time: 2})


def test_an_ordinary_run_of_the_vessel_is_told_to_probe_as_packed_mix_stays_cold() -> None:
    """At the end of 3.5 h packed mix is 15.6 degC below the chamber, a fast bag 1.9: nobody knows which it is."""
    found = worked({Steaming.kind: VESSEL})
    assert 121.1 - found["vessel_cook.end"][MIDDLE] > 15 > 3 > 121.1 - found["vessel_cook.end"][FAST]
    assert failing({Steaming.kind: VESSEL}) == {"vessel_cook.middle_is_known"}


def test_a_probe_that_reads_hot_needs_no_second_word_and_one_elsewhere_tells_nothing() -> None:
    """Gaps to 121.1 degC of 55.54 and 33.32 degC after 1 and 1.4 h: 3 degC after 1.4 + ln(33.32 / 3) / 1.277 = 3.3 h."""
    given = {Steaming.kind: VESSEL, CoreHeating.hours_to_150f: 1, CoreHeating.hours_to_190f: 1.4}
    assert "vessel_cook.middle_is_known" not in failing({**given, CoreHeating.probe_place: IN_VESSEL})
    assert "vessel_cook.middle_is_known" in failing({**given, CoreHeating.probe_place: IN_CABINET})


@pytest.mark.parametrize("rate", [0.3, 1.2])
@pytest.mark.parametrize("rise", [0.25, 3, 12])
def test_a_chamber_that_rises_evenly_is_many_small_steps_added_up(rate: float, rise: float) -> None:
    """Each step of the chamber closes by itself, by j exp(-k t) from its own moment; here 100,000 of them."""
    moments = (np.arange(100_000) + 0.5) / 100_000 * rise
    lag = (4 / pi) ** 3 * np.exp(-rate * moments).mean()
    assert lateness_after_rise(log((4 / pi) ** 3), rise_fall(rate * rise)) == pytest.approx(log(lag), abs=1e-9)


@pytest.mark.parametrize("rise", [1.0, 3.0, 6.0])
def test_the_middle_of_a_brick_in_a_rising_chamber_by_finite_differences(rise: float) -> None:
    """The heat equation itself, stepped through three slabs, whose gaps multiply; each small step of the chamber apart.

    One term of the series is within 1% of the first gap some hours on; before that it takes the middle for colder than it is.
    """
    diffusivity, halves = 4.86, (6.0, 10.0, 10.0)
    rate = sum(diffusivity * (pi / (2 * half)) ** 2 for half in halves)
    late = lateness_after_rise(log((4 / pi) ** 3), rise_fall(rate * rise))
    for hours, within in ((0.0, 0.3), (1.0, 0.3), (4.0, 0.01), (8.0, 0.001)):
        moments = hours + (np.arange(400) + 0.5) / 400 * rise
        gap = np.prod([slab_gap(diffusivity, half, moments) for half in halves], axis=0).mean()
        assert gap - 1e-3 < late_gap(late, rate, hours) < gap + within


def slab_gap(diffusivity: float, half: float, moments: Any) -> Any:
    """Share of a sudden step not yet closed in the middle of a slab: explicit differences on 40 layers of its half."""
    layers = 40
    width = half / layers
    step = 0.4 * width**2 / diffusivity
    gap, course = np.ones(layers + 1), [1.0]
    gap[-1] = 0
    for _ in range(int(moments.max() / step) + 2):
        after = gap.copy()
        after[1:-1] += 0.4 * (gap[2:] - 2 * gap[1:-1] + gap[:-2])
        after[0] += 0.8 * (gap[1] - gap[0])
        gap = after
        course.append(float(gap[0]))
    return np.interp(moments, np.arange(len(course)) * step, course)


def test_a_longer_heat_up_leaves_less_of_the_hold_to_warming() -> None:
    quick, slow = worked({CabinetRun.own_heat_up_time: 1}), worked({CabinetRun.own_heat_up_time: 8})
    assert slow["cabinet_cook.begin"][MIDDLE] > quick["cabinet_cook.begin"][MIDDLE] > 15.6 - 1e-9
    assert slow["cabinet_cook.lost"][MIDDLE] < quick["cabinet_cook.lost"][MIDDLE]
    assert slow["cabinet_cook.cooked"][MIDDLE] > quick["cabinet_cook.cooked"][MIDDLE]


def test_a_probe_has_the_heat_up_in_its_readings() -> None:
    given = {CoreHeating.hours_to_150f: 4.4, CoreHeating.hours_to_190f: 9.5}
    quick, slow = (worked({**given, CabinetRun.own_heat_up_time: hours}) for hours in (1, 8))
    assert quick["cabinet_cook.late"][MIDDLE] == slow["cabinet_cook.late"][MIDDLE]
    assert quick["cabinet_cook.cooked"][MIDDLE] == slow["cabinet_cook.cooked"][MIDDLE]


def test_the_steamer_not_in_use_stops_nothing() -> None:
    bad = {CabinetRun.hold_time: 3, VesselRun.hold_time: 2}
    for place, other in (PLACES, PLACES[::-1]):
        found = failing({**IN_USE[place], **bad})
        assert {f"{place}.middle_gets_hot", f"{place}.middle_is_known"} <= found
        assert not [name for name in found if name.startswith(other)]


@pytest.mark.parametrize(
    ("changes", "broken"),
    [
        ({CabinetRun.hold_time: 2}, "cabinet_cook.middle_gets_hot"),
        ({CoreHeating.standing: IN_ROWS, CabinetRun.hold_time: 6}, "cabinet_cook.middle_gets_hot"),
        ({CabinetRun.hold_time: 6}, "cabinet_cook.middle_is_known"),
        ({CoreHeating.standing: IN_ROWS, CabinetRun.hold_time: 15}, "cabinet_cook.middle_is_known"),
        ({CoreHeating.fast_diffusivity: 4.8}, "core_heating.rates_in_order"),
    ],
)
def test_each_check_can_fail(changes: dict[Any, Any], broken: str) -> None:
    in_use = IN_USE["vessel_cook" if broken.startswith("vessel") else "cabinet_cook"]
    assert broken in failing({**in_use, **changes})


def test_three_degrees_are_allowed() -> None:
    """The gap of a fast bag with gaps all round is 3 degC after ln((4/pi)^3 x 77.7 / 3) / 1.061 = 3.75 h."""
    after = log((4 / pi) ** 3 * 77.7 / 3) / worked()["cabinet_cook.warming"][FAST]
    assert after == pytest.approx(3.75, abs=0.01)
    assert "cabinet_cook.middle_gets_hot" not in failing({**HOT_AT_ONCE, CabinetRun.hold_time: after + 1e-6})
    assert "cabinet_cook.middle_gets_hot" in failing({**HOT_AT_ONCE, CabinetRun.hold_time: after - 1e-6})


def test_three_degrees_are_allowed_in_packed_mix_too() -> None:
    """Its gap is 3 degC after ln((4/pi)^3 x 77.7 / 3) / 0.573 = 6.94 h."""
    after = log((4 / pi) ** 3 * 77.7 / 3) / worked()["cabinet_cook.warming"][MIDDLE]
    assert after == pytest.approx(6.94, abs=0.02)
    assert failing({**HOT_AT_ONCE, CabinetRun.hold_time: after + 1e-6}) == set()
    assert failing({**HOT_AT_ONCE, CabinetRun.hold_time: after - 1e-6}) == {"cabinet_cook.middle_is_known"}


def test_a_probe_is_judged_by_its_own_course() -> None:
    """The gap left at 190 degF is 5.5 degC: 3 degC another ln(5.5222 / 3) / rate after the reading."""
    given = {CoreHeating.hours_to_150f: 4.4, CoreHeating.hours_to_190f: 9.5}
    found = worked(given)
    after = 9.5 + log((93.3 - (190 - 32) / 1.8) / 3) / found["cabinet_cook.warming"][MIDDLE]
    assert found["cabinet_cook.surest_end"] == found["cabinet_cook.end"][MIDDLE]
    assert "cabinet_cook.middle_gets_hot" not in failing({**given, CabinetRun.hold_time: after + 1e-6})
    assert "cabinet_cook.middle_gets_hot" in failing({**given, CabinetRun.hold_time: after - 1e-6})


# Both kinds of book


@pytest.mark.parametrize("standing", [GAP_ALL_ROUND, IN_PAIRS, IN_ROWS])
@pytest.mark.parametrize("place", [IN_CABINET, IN_VESSEL])
def test_us_and_metric_books_agree(standing: Option, place: Option) -> None:
    given = {
        CoreHeating.standing: standing,
        CoreHeating.probe_place: place,
        CoreHeating.hours_to_150f: 2.5,
        CoreHeating.hours_to_190f: 6,
    }
    assert different_lines(given) == []
