"""How fast the middle of a bag warms: by its size, by how bags stand, by a probe that wins over both."""

from __future__ import annotations

from math import exp, log, pi
from typing import Any, Final

import numpy as np
import pytest

from farmbook.model.cook.core_heating import (
    GAP_ALL_ROUND,
    IN_CABINET,
    IN_PAIRS,
    IN_ROWS,
    IN_VESSEL,
    CoreHeating,
)
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import Option
from tests.model.cook_case import BAGS, FAST, HOT_AT_ONCE, IN_USE, MIDDLE, PLACES, SLOW, failing, worked

LONG: Final[dict[Any, Any]] = {CabinetRun.hold_time: 47}


# Facts of the trade, and geometry


@pytest.mark.parametrize(
    ("standing", "hours"),
    [(GAP_ALL_ROUND, 7), (IN_PAIRS, 13), (IN_ROWS, 17)],
)
def test_hours_lost_by_how_five_pound_bags_stand(standing: Option, hours: float) -> None:
    """Common practice, no source: about 7, 13 and 17 h of a long hold for bags of 12 x 20 x 20 cm, still cold at its start."""
    found = worked({**LONG, **HOT_AT_ONCE, CoreHeating.standing: standing})
    assert found["cabinet_cook.lost"][MIDDLE] == pytest.approx(hours, abs=0.7)


def test_rate_of_a_five_pound_bag() -> None:
    """0.573 an hour, from 1.35e-7 m2/s and half sizes of 6, 10 and 10 cm."""
    assert worked()["core_heating.rate_by_size"] == pytest.approx(0.573, abs=5e-4)
    half = 2.467 * 1.35e-7 * (1 / 0.06**2 + 2 / 0.10**2) * 3600
    assert worked()["core_heating.rate_by_size"] == pytest.approx(half, rel=2e-4)


def test_a_ten_pound_bag_loses_twelve_hours() -> None:
    """Common practice, no source; its rate of 0.348 an hour is given here as a probe would."""
    found = worked({**LONG, **readings(0.348, 93.3, (150, 190))})
    assert found["cabinet_cook.warming"][MIDDLE] == pytest.approx(0.348)
    assert found["cabinet_cook.lost"][MIDDLE] == pytest.approx(12, abs=0.3)


def test_pairs_are_bags_of_double_thickness_and_rows_are_endless() -> None:
    pairs = worked({CoreHeating.standing: IN_PAIRS})
    thick = worked({CoreHeating.thickness: 24})
    assert pairs["core_heating.rate_by_size"] == pytest.approx(thick["core_heating.rate_by_size"])
    rows = worked({CoreHeating.standing: IN_ROWS})
    endless = worked({CoreHeating.thickness: 1e9})
    assert rows["core_heating.rate_by_size"] == pytest.approx(endless["core_heating.rate_by_size"])
    assert rows["core_heating.lag_factor"] == pytest.approx((4 / pi) ** 2)
    assert pairs["core_heating.lag_factor"] == pytest.approx((4 / pi) ** 3)


# The probe

MARKS: Final = {
    150: (CoreHeating.hours_to_150f, (150 - 32) / 1.8),
    180: (CoreHeating.hours_to_180f, (180 - 32) / 1.8),
    190: (CoreHeating.hours_to_190f, (190 - 32) / 1.8),
}


def readings(rate: float, chamber: float, marks: tuple[int, ...], lag: float = 2) -> dict[Any, Any]:
    """When a middle that warms at this rate, its bag at 15.6 degC to begin with, passes each mark."""
    found = {}
    for mark in marks:
        declared, temperature = MARKS[mark]
        found[declared] = log(lag * (chamber - 15.6) / (chamber - temperature)) / rate
    return found


@pytest.mark.parametrize("marks", [(150, 180), (180, 190), (150, 190), (150, 180, 190)])
@pytest.mark.parametrize("rate", [0.2, 0.9])
def test_a_probe_wins(marks: tuple[int, ...], rate: float) -> None:
    found = worked(readings(rate, 93.3, marks))
    assert found["core_heating.probe_counts"] == found["cabinet_cook.probe_counts"] == 1
    assert found["cabinet_cook.warming"][MIDDLE] == pytest.approx(rate)
    assert found["cabinet_cook.warming"][SLOW] == pytest.approx(rate * 0.85)
    assert found["cabinet_cook.warming"][FAST] == pytest.approx(rate * 1.15)
    assert found["core_heating.rate_by_size"] == pytest.approx(worked()["core_heating.rate_by_size"])
    assert failing(readings(rate, 93.3, marks)) <= {"cabinet_cook.middle_gets_hot", "vessel_cook.middle_gets_hot"}


def test_first_and_last_reading_count_and_the_one_between_does_not() -> None:
    given = readings(0.5, 93.3, (150, 180, 190))
    given[CoreHeating.hours_to_180f] *= 1.05
    assert worked(given)["cabinet_cook.warming"][MIDDLE] == pytest.approx(0.5)


STEAMERS: Final = ((IN_CABINET, 93.3, "cabinet_cook", "vessel_cook"), (IN_VESSEL, 121.1, "vessel_cook", "cabinet_cook"))
RATES: Final = ("late", "warming")


@pytest.mark.parametrize(("place", "chamber", "here", "other"), STEAMERS)
def test_a_probe_in_one_steamer_leaves_the_other_alone(place: Option, chamber: float, here: str, other: str) -> None:
    without = worked()
    found = worked({CoreHeating.probe_place: place, **readings(0.8, chamber, (150, 190), lag=1.4)})
    assert (found[f"{here}.probe_counts"], found[f"{other}.probe_counts"]) == (1, 0)
    for what in (*RATES, "cooked", "at_mark", "core_hold", "end"):
        assert found[f"{other}.{what}"] == pytest.approx(without[f"{other}.{what}"], rel=1e-12), what
    for what in RATES:
        for bag in (SLOW, MIDDLE):
            assert found[f"{here}.{what}"][bag] != pytest.approx(without[f"{here}.{what}"][bag], rel=0.01), what


@pytest.mark.parametrize(("place", "chamber", "here", "other"), STEAMERS)
@pytest.mark.parametrize("lag", [0.9, 1.3, 2, 4])
def test_the_course_goes_through_the_readings(place: Option, chamber: float, here: str, other: str, lag: float) -> None:
    """Between the rows of the table too, where the gap to the chamber falls evenly in its logarithm."""
    rate = 0.25
    held = {VesselRun.hold_time: 13}
    given = {CoreHeating.probe_place: place, **held, **readings(rate, chamber, (150, 180, 190), lag=lag)}
    found = worked(given)
    for mark, line_name in ((150, "first"), (180, "middle"), (190, "last")):
        assert found[f"core_heating.worked_at_{line_name}"] == pytest.approx(MARKS[mark][1], abs=1e-9)
    hours, course = found[f"{here}.hours"], found[f"{here}.core"][MIDDLE]
    for mark in (150, 180, 190):
        declared, temperature = MARKS[mark]
        gap = exp(np.interp(given[declared], hours, np.log(chamber - course)))
        assert chamber - gap == pytest.approx(temperature, abs=1e-6)
    assert course[0] == pytest.approx(chamber - (chamber - 15.6) * min(1, lag * exp(-rate * hours[0])))
    # By size, the course goes elsewhere.
    declared, temperature = MARKS[150]
    size = np.interp(given[declared], found[f"{other}.hours"], worked(held)[f"{here}.core"][MIDDLE])
    assert abs(size - temperature) > 1


def test_kestrel_hollow_reads_what_it_read() -> None:
    """199 degF around bags loaded at 58 degF, 150 degF after 4.4 h and 180 degF after 7.6 h; two hours on, 188.5."""
    read = {CabinetHeat.hold_temperature: (199 - 32) / 1.8, CabinetHeat.start_temperature: (58 - 32) / 1.8}
    found = worked({**read, CoreHeating.hours_to_150f: 4.4, CoreHeating.hours_to_180f: 7.6}, "us")
    assert found["core_heating.worked_at_first"] == pytest.approx(150)
    assert found["core_heating.worked_at_last"] == pytest.approx(180)
    gaps = np.log(199 - found["cabinet_cook.core"][MIDDLE])
    course = 199 - np.exp(np.interp([4.4, 7.6, 9.6], found["cabinet_cook.hours"], gaps))
    assert course == pytest.approx([150, 180, 199 - 19 * (19 / 49) ** (2 / 3.2)], abs=1e-6)


def test_the_middle_is_never_worked_out_cooler_than_loaded() -> None:
    """A first reading late and a fast rate put the start of warming hours after the start."""
    given = {CoreHeating.hours_to_150f: 60, CoreHeating.hours_to_190f: 61}
    found = worked({**given, CabinetRun.hold_time: 40})
    assert found["cabinet_cook.core"][MIDDLE] == pytest.approx([15.6] * 50)
    assert found["cabinet_cook.at_mark"][MIDDLE] == 0


@pytest.mark.parametrize(("times", "fires"), [(0.5, False), (0.99, False), (1.01, True), (2, True)])
@pytest.mark.parametrize(("place", "chamber", "here", "other"), STEAMERS)
def test_a_probe_faster_than_any_mix(
    place: str, chamber: float, here: str, other: str, times: float, fires: bool
) -> None:
    """The best mix warms a bag of 12 x 20 x 20 cm by 1.062 of the gap in an hour."""
    best = pi**2 * 9 * (1 / 12**2 + 2 / 20**2)
    given = {CoreHeating.probe_place: place, **readings(best * times, chamber, (150, 190))}
    assert (f"{here}.probe_not_too_fast" in failing({**IN_USE[here], **given})) is fires
    assert not {each for each in failing({**IN_USE[other], **given}) if each.endswith("too_fast")}


@pytest.mark.parametrize(("place", "chamber"), [(IN_CABINET, 93.3), (IN_VESSEL, 121.1)])
def test_a_probe_is_set_against_the_chamber_it_was_in(place: Option, chamber: float) -> None:
    found = worked({CoreHeating.probe_place: place, **readings(0.6, chamber, (150, 190))})
    assert found["core_heating.probe_chamber"] == pytest.approx(chamber)
    assert found["core_heating.probe_rate"] == pytest.approx(0.6)


def test_a_probe_reads_the_same_in_both_kinds_of_book() -> None:
    given = readings(0.44, 93.3, (150, 180, 190))
    assert worked(given, "us")["cabinet_cook.warming"][MIDDLE] == pytest.approx(0.44)


def test_the_book_says_whether_a_probe_gave_the_rate() -> None:
    without, with_probe = worked(), worked(readings(0.5, 93.3, (150, 190)))
    for found in (without, with_probe):
        assert "never proof that anything is sterile" in found["core_heating.meaning"]
        assert "cannot be ranked" in found["core_heating.meaning"]
    assert "No probe has given" in without["core_heating.meaning"]
    assert "goes by its readings" in with_probe["core_heating.meaning"]


BROKEN: Final[dict[str, dict[Any, Any]]] = {
    "one reading": {CoreHeating.hours_to_180f: 5},
    "hotter earlier": {CoreHeating.hours_to_150f: 6, CoreHeating.hours_to_190f: 4},
    "same hour": {CoreHeating.hours_to_150f: 6, CoreHeating.hours_to_180f: 6},
    "middle too late": {
        CoreHeating.hours_to_150f: 3,
        CoreHeating.hours_to_180f: 9,
        CoreHeating.hours_to_190f: 8,
    },
    "hotter than the chamber": {
        CabinetHeat.hold_temperature: 85,
        CoreHeating.hours_to_150f: 3,
        CoreHeating.hours_to_190f: 8,
    },
}


@pytest.mark.parametrize("given", BROKEN.values(), ids=BROKEN)
def test_probe_readings_that_do_not_fit_fail_a_check(given: dict[Any, Any]) -> None:
    assert "core_heating.readings_in_order" in failing(given)


@pytest.mark.parametrize("broken", ["one reading", "hotter earlier", "same hour", "hotter than the chamber"])
def test_readings_that_give_no_rate_leave_the_size_to_decide(broken: str) -> None:
    found = worked(BROKEN[broken])
    assert found["cabinet_cook.warming"][MIDDLE] == pytest.approx(found["core_heating.rate_by_size"])
    fall = found["cabinet_cook.heat_up_fall"][MIDDLE]
    assert found["cabinet_cook.late"][MIDDLE] == pytest.approx(3 * log(4 / pi) - log(fall))
    assert worked({**BROKEN[broken], **HOT_AT_ONCE})["cabinet_cook.late"][MIDDLE] == pytest.approx(3 * log(4 / pi))


@pytest.mark.parametrize("place", PLACES)
def test_slow_expected_and_fast_are_in_order(place: str) -> None:
    for changes in ({}, readings(0.4, 93.3, (150, 180, 190))):
        found = worked(changes)
        for what, sign in (("cooked", 1), ("boiled", 1), ("end", 1), ("lost", -1), ("hot_after", -1), ("at_mark", 1)):
            slow, expected, fast = (sign * found[f"{place}.{what}"][bag] for bag in BAGS)
            assert slow < expected < fast, what
        columns = [found[f"{place}.core"][bag][40] for bag in BAGS]
        assert columns == sorted(set(columns))
