"""Fuel, timetable and comparison: against what defines them, worked out another way."""

from __future__ import annotations

import numpy as np
import pytest

from farmbook.calc import compare, fuel, heat, steam, timetable


def starts_of_a_week(days: int, hours: float) -> int:
    """Loads of a week by going through it day by day; a load may start when the one before is out, on a working day.

    The week repeats, so what is started last must be out by the next Monday.
    """
    starts: list[float] = []
    for day in range(days):
        if not starts or 24 * day >= starts[-1] + hours - 1e-9:
            starts.append(24 * day)
    while starts and starts[-1] + hours > 168 + 1e-9:
        starts.pop()
    return len(starts)


@pytest.mark.parametrize("days", range(1, 8))
@pytest.mark.parametrize("hours", [5, 23.9, 24, 24.5, 36, 40.6, 48, 60, 72.1, 96, 100, 150, 168, 170])
def test_loads_of_a_week_agree_with_going_through_it_day_by_day(days: int, hours: float) -> None:
    apart = timetable.days_of_a_load(hours)
    loads = min(timetable.loads_by_days(float(days), apart), timetable.loads_by_the_week(apart))
    assert loads == starts_of_a_week(days, hours)


def test_loads_of_a_day_agree_with_going_through_it_hour_by_hour() -> None:
    rng = np.random.default_rng(11)
    for _ in range(200):
        staffed, cool, attended = rng.uniform(1, 24), rng.uniform(0, 12), rng.uniform(0.5, 12)
        clock, loads = 0.0, 0
        while clock + attended <= staffed and clock + attended + cool <= 24:
            loads, clock = loads + 1, clock + attended + cool
        time = timetable.time_for_loads(staffed, cool)
        assert timetable.loads_by_hours(time, attended + cool) == loads


def test_last_load_cools_down_after_hours() -> None:
    """Eight hours with somebody there and 2.5 h of cooling after them; a day ends after 24 h."""
    assert timetable.time_for_loads(8.0, 2.5) == 10.5
    assert timetable.time_for_loads(23.0, 2.5) == 24


def test_a_load_that_fits_to_the_last_digit_fits() -> None:
    assert timetable.loads_by_hours(0.1 + 0.2, 0.1) == 3
    assert timetable.loads_by_hours(9.0, 9.0 + 1e-12) == 1


def test_usual_share_of_electricity_and_of_a_burner() -> None:
    assert fuel.usual_efficiency(1.0) == 0.96
    assert fuel.usual_efficiency(0.0) == 0.80


def test_heat_of_an_amount_of_fuel_and_back() -> None:
    content = 91_333.0
    assert heat.fuel_used(fuel.heat_in_fuel(12.5, content), content) == pytest.approx(12.5)


def test_price_of_heat_counts_what_the_flue_takes() -> None:
    assert fuel.price_of_heat(0.04, 0.8) == pytest.approx(0.05)
    assert fuel.price_of_heat(0.04, 0.0) == 0


def test_surface_of_a_cylinder() -> None:
    """As the growth of its volume with its radius and its ends: volumes of two cylinders a hair apart."""
    diameter, length, hair = 1.3, 2.7, 1e-6
    volume = heat.flat_end(diameter) * length
    thicker = heat.flat_end(diameter + 2 * hair) * length
    assert heat.round_wall(diameter, length) == pytest.approx((thicker - volume) / hair, rel=1e-5)
    assert heat.flat_end(2.0) == pytest.approx(np.pi)


def test_steam_made_of_heat_gives_the_heat_back() -> None:
    steam_heat, feed = 2707.0, 54.0
    mass = heat.steam_made(5000.0, steam_heat, feed)
    assert heat.heat_in_steam(mass, steam_heat, feed) == pytest.approx(5000)
    assert heat.feed_water(5000.0, 0.8, steam_heat, feed) == pytest.approx(0.8 * mass)
    assert heat.steam_made(5000.0, feed, feed) == 0


def test_gauge_and_vacuum_count_the_same_pressure() -> None:
    assert steam.gauge_pressure(steam.absolute_pressure(103.4, 84.3), 84.3) == pytest.approx(103.4)


@pytest.mark.parametrize(("first", "second", "apart"), [(90, 100, 0.1), (100, 90, 0.1), (50, 50, 0), (0, 0, 0)])
def test_difference_over_the_larger(first: float, second: float, apart: float) -> None:
    found = compare.difference_over_larger(float(second - first), float(max(first, second)))
    assert found == pytest.approx(apart)
