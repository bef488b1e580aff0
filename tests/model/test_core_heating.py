"""How fast the middle of a bag warms: by its size, by how bags stand, by a probe that wins over both."""

from __future__ import annotations

from math import log, pi
from typing import Any, Final

import pytest

from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.core_heating import (
    GAP_ALL_ROUND,
    IN_CABINET,
    IN_PAIRS,
    IN_ROWS,
    IN_VESSEL,
    CoreHeating,
)
from tests.model.cook_case import ENDS, PLACES, failing, single, worked

LONG: Final[dict[Any, Any]] = {CabinetRun.hold_time: 47}


# Facts of the trade, and geometry


@pytest.mark.parametrize(
    ("standing", "hours"),
    [(GAP_ALL_ROUND, 7), (IN_PAIRS, 13), (IN_ROWS, 17)],
)
def test_hours_lost_by_how_five_pound_bags_stand(standing: str, hours: float) -> None:
    """Common practice, no source: about 7, 13 and 17 h of a long hold for bags of 12 x 20 x 20 cm."""
    found = worked({**LONG, CoreHeating.standing: standing})
    assert found["cabinet_cook.lost"] == pytest.approx(hours, abs=0.7)


def test_rate_of_a_five_pound_bag() -> None:
    """0.573 an hour, from 1.35e-7 m2/s and half sizes of 6, 10 and 10 cm."""
    assert worked()["core_heating.rate_by_size"] == pytest.approx(0.573, abs=5e-4)
    half = 2.467 * 1.35e-7 * (1 / 0.06**2 + 2 / 0.10**2) * 3600
    assert worked()["core_heating.rate_by_size"] == pytest.approx(half, rel=2e-4)


def test_a_ten_pound_bag_loses_twelve_hours() -> None:
    """Common practice, no source; its rate of 0.348 an hour is given here as a probe would."""
    found = worked({**LONG, **readings(0.348, 93.3, (150, 190))})
    assert found["core_heating.expected_rate"] == pytest.approx(0.348)
    assert found["cabinet_cook.lost"] == pytest.approx(12, abs=0.3)


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


def readings(rate: float, chamber: float, marks: tuple[int, ...]) -> dict[Any, Any]:
    """When a middle that warms at this rate, its bag at 15.6 degC to begin with, passes each mark."""
    found = {}
    for mark in marks:
        declared, temperature = MARKS[mark]
        found[declared] = log(2 * (chamber - 15.6) / (chamber - temperature)) / rate
    return found


@pytest.mark.parametrize("marks", [(150, 180), (180, 190), (150, 190), (150, 180, 190)])
@pytest.mark.parametrize("rate", [0.2, 0.9])
def test_a_probe_wins(marks: tuple[int, ...], rate: float) -> None:
    found = worked(readings(rate, 93.3, marks))
    assert found["core_heating.probe_counts"] == 1
    assert found["core_heating.expected_rate"] == pytest.approx(rate)
    assert found["core_heating.slow_rate"] == pytest.approx(rate * 0.85)
    assert found["core_heating.fast_rate"] == pytest.approx(rate * 1.15)
    assert found["core_heating.rate_by_size"] == pytest.approx(worked()["core_heating.rate_by_size"])
    assert failing(readings(rate, 93.3, marks)) <= {"cabinet_cook.middle_gets_hot", "vessel_cook.middle_gets_hot"}


def test_first_and_last_reading_count_and_the_one_between_does_not() -> None:
    given = readings(0.5, 93.3, (150, 180, 190))
    given[CoreHeating.hours_to_180f] *= 1.05
    assert worked(given)["core_heating.expected_rate"] == pytest.approx(0.5)


@pytest.mark.parametrize(("place", "chamber"), [(IN_CABINET, 93.3), (IN_VESSEL, 121.1)])
def test_a_probe_is_set_against_the_chamber_it_was_in(place: str, chamber: float) -> None:
    found = worked({CoreHeating.probe_place: place, **readings(0.6, chamber, (150, 190))})
    assert found["core_heating.probe_chamber"] == pytest.approx(chamber)
    assert found["core_heating.expected_rate"] == pytest.approx(0.6)


def test_a_probe_reads_the_same_in_both_kinds_of_book() -> None:
    given = readings(0.44, 93.3, (150, 180, 190))
    assert worked(given, "us")["core_heating.expected_rate"] == pytest.approx(0.44)


def test_the_book_says_whether_a_probe_gave_the_rate() -> None:
    without, with_probe = worked(), worked(readings(0.5, 93.3, (150, 190)))
    for found in (without, with_probe):
        assert "never proof that anything is sterile" in found["core_heating.meaning"]
    assert "cannot be ranked by it" in without["core_heating.meaning"]
    assert "cannot be ranked by it" not in with_probe["core_heating.meaning"]


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
    assert found["core_heating.expected_rate"] == pytest.approx(found["core_heating.rate_by_size"])


@pytest.mark.parametrize("place", PLACES)
def test_slow_expected_and_fast_are_in_order(place: str) -> None:
    for changes in ({}, readings(0.4, 93.3, (150, 180, 190))):
        found = worked(changes)
        for what, sign in (("cooked", 1), ("boiled", 1), ("end", 1), ("lost", -1), ("hot_after", -1)):
            slow, expected, fast = (sign * found[single(place, what, end)] for end in ENDS)
            assert slow < expected < fast, what
        columns = [found[f"{place}.core_{end}"][40] for end in ENDS]
        assert columns == sorted(set(columns))
