"""The site: air pressure and boiling by height against print, the table of heights, gauges, both ways through IF97."""

from __future__ import annotations

from typing import Any, Final

import numpy as np
import pytest

from farmbook.model.heat.steaming import Steaming
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.place.altitude import AltitudeBoiling, AltitudePressure, WantedSteam
from farmbook.model.place.site import Site
from farmbook.sections.declare import NumberInput
from tests.model.helpers import evaluate, systems_agree
from tests.model.steam_case import PSI

SECTIONS: Final = (Site, Steaming, AltitudeBoiling, WantedSteam, AltitudePressure, VesselSteam)
FOOT: Final = 0.3048
KELVIN: Final = 273.15


def fahrenheit(celsius: float) -> float:
    return celsius * 1.8 + 32


def worked(changes: dict[Any, Any], system: str = "metric") -> dict[str, Any]:
    return evaluate(SECTIONS, system, changes)


def at_gauge(psi: float, height: float = 0) -> float:
    """Temperature in a vessel, above absolute zero, at a gauge pressure and a height in feet."""
    changes = {
        Site.altitude: height * FOOT,
        VesselSteam.working_pressure: psi * PSI,
        VesselSteam.rated_pressure: 1e6,
    }
    return float(worked(changes)["vessel_steam.absolute_temperature"])


def gauge_for(celsius: float, height: float = 0) -> float:
    """Gauge pressure in psi for a temperature at a height in feet."""
    changes = {Site.altitude: height * FOOT, WantedSteam.wanted_temperature: celsius}
    return float(worked(changes)["wanted_steam.gauge_here"]) / PSI


# Against print


@pytest.mark.parametrize(
    ("feet", "pascals"),
    [
        (0, 101_325),
        (1000, 97_716.7),
        (2000, 94_213.6),
        (3000, 90_813.1),
        (5000, 84_311.1),
        (5280, 83_431.8),
        (7000, 78_192.3),
        (10_000, 69_694.6),
    ],
)
def test_air_pressure_of_the_standard_atmosphere(feet: float, pascals: float) -> None:
    """US Standard Atmosphere 1976 by the library fluids 1.3.1, which counts height from the ground up: within 15 Pa."""
    assert worked({Site.altitude: feet * FOOT})["site.pressure"] * 1000 == pytest.approx(pascals, abs=15)


@pytest.mark.parametrize(("feet", "hot"), [(0, 212.0), (1000, 210.2), (2000, 208.5), (3000, 206.7), (4000, 204.9)])
def test_boiling_point_of_the_canning_guide(feet: float, hot: float) -> None:
    """USDA, Complete Guide to Home Canning, a copy; the table is rounded and lies about 0.2 degF high."""
    assert worked({Site.altitude: feet * FOOT}, "us")["site.boiling_point"] == pytest.approx(hot, abs=0.3)


@pytest.mark.parametrize(
    ("feet", "boils", "at_15_psi"),
    [(0, 212.0, 249.7), (1000, 210.1, 248.7), (2500, 207.4, 247.2), (5000, 202.8, 244.8), (7500, 198.2, 242.5)],
)
def test_boiling_and_fifteen_pounds_by_height(feet: float, boils: float, at_15_psi: float) -> None:
    """Worked out beforehand with the libraries iapws and fluids, to a tenth of a degree F."""
    assert worked({Site.altitude: feet * FOOT}, "us")["site.boiling_point"] == pytest.approx(boils, abs=0.06)
    assert fahrenheit(at_gauge(15, feet) - KELVIN) == pytest.approx(at_15_psi, abs=0.06)


@pytest.mark.parametrize(("megapascals", "kelvin"), [(0.1, 372.755919), (1, 453.035632), (10, 584.149488)])
def test_boiling_temperature_of_the_release(megapascals: float, kelvin: float) -> None:
    """IAPWS R7-97(2012), table 36."""
    gauge = (megapascals * 1000 - 101.325) / PSI
    assert at_gauge(gauge) == pytest.approx(kelvin, abs=1e-6)


@pytest.mark.parametrize(("kelvin", "megapascals"), [(300, 0.00353658941), (500, 2.63889776), (600, 12.3443146)])
def test_pressure_of_the_release(kelvin: float, megapascals: float) -> None:
    """IAPWS R7-97(2012), table 35."""
    found = worked({WantedSteam.wanted_temperature: kelvin - KELVIN})["wanted_steam.pressure"]
    assert found == pytest.approx(megapascals * 1000, rel=1e-8)


@pytest.mark.parametrize(
    ("absolute", "hot"), [(14.696, 212.00), (20.0, 227.96), (25.0, 240.07), (30.0, 250.33), (35.0, 259.28)]
)
def test_steam_table_of_keenan_and_keyes(absolute: float, hot: float) -> None:
    """Abstract at armstronginternational.com; tables older than IF97 lie up to 0.05 degF above it."""
    assert fahrenheit(at_gauge(absolute - 101.325 / PSI) - KELVIN) == pytest.approx(hot, abs=0.1)


@pytest.mark.parametrize(("psi", "celsius"), [(15, 120.955), (20, 125.967)])
def test_gauge_at_sea_level(psi: float, celsius: float) -> None:
    """IAPWS-IF97 with the library iapws 1.5.5. Fifteen pounds are not 121.1 degC."""
    assert at_gauge(psi) - KELVIN == pytest.approx(celsius, abs=0.0006)


@pytest.mark.parametrize(("feet", "celsius"), [(5000, 118.22), (7000, 117.19)])
def test_gauge_adds_to_the_air_of_the_place(feet: float, celsius: float) -> None:
    assert at_gauge(15, feet) - KELVIN == pytest.approx(celsius, abs=0.02)


@pytest.mark.parametrize(("celsius", "psi"), [(121.1, 15.136), (121.11, 15.146), (120, 14.118)])
def test_gauge_needed_at_sea_level(celsius: float, psi: float) -> None:
    """IAPWS-IF97 with the library iapws 1.5.5."""
    assert gauge_for(celsius) == pytest.approx(psi, abs=0.0006)


@pytest.mark.parametrize(("feet", "canning", "worked_out"), [(0, 10, 10.29), (5000, 12.5, 12.76), (10_000, 15, 14.88)])
def test_dial_gauge_for_240_degrees_of_the_canning_guide(feet: float, canning: float, worked_out: float) -> None:
    """The table goes up by half a pound for 1,000 ft; the second figure is by the libraries iapws and fluids."""
    found = gauge_for((240 - 32) / 1.8, feet)
    assert found == pytest.approx(canning, abs=0.6)
    assert found == pytest.approx(worked_out, abs=0.006)


def test_vapour_pressure_at_boiling_and_at_sixty_degrees() -> None:
    """IAPWS-IF97: 101.418 and 19.946 kPa."""
    for celsius, kilopascals in ((100, 101.418), (60, 19.946)):
        found = worked({WantedSteam.wanted_temperature: celsius})["wanted_steam.pressure"]
        assert found == pytest.approx(kilopascals, abs=0.0006)


# The table of heights


def test_table_goes_up_by_a_thousand_feet() -> None:
    assert worked({}, "us")["altitude_boiling.height"] == pytest.approx(np.arange(9) * 1000.0)


@pytest.mark.parametrize("row", range(9))
def test_each_row_of_the_table_is_what_a_site_there_would_see(row: int) -> None:
    """The table and the site go through the same equation in different cells."""
    table = worked({})
    fifteen = {VesselSteam.working_pressure: 15 * PSI, VesselSteam.rated_pressure: 15 * PSI}
    there = worked({Site.altitude: row * 1000 * FOOT, **fifteen})
    for column, single in (
        ("altitude_boiling.pressure", "site.pressure"),
        ("altitude_boiling.boiling_point", "site.boiling_point"),
        ("altitude_pressure.pressure", "vessel_steam.pressure"),
        ("altitude_pressure.absolute_temperature", "vessel_steam.absolute_temperature"),
        ("altitude_pressure.gauge_wanted", "wanted_steam.gauge_here"),
    ):
        assert table[column][row] == pytest.approx(float(there[single]), rel=1e-12)
    assert table["altitude_pressure.temperature"][row] + KELVIN == pytest.approx(at_gauge(15, row * 1000), rel=1e-12)


def test_both_ways_through_the_equation_meet() -> None:
    """The gauge that gives a temperature, put on the vessel, gives that temperature."""
    for celsius in (105.0, 121.1, 134.0):
        assert at_gauge(gauge_for(celsius, 5000), 5000) - KELVIN == pytest.approx(celsius, abs=1e-6)


@pytest.mark.parametrize("altitude", [0, 1524, -300])
def test_both_unit_systems_give_the_same_answers(altitude: float) -> None:
    assert systems_agree(SECTIONS, {Site.altitude: altitude, WantedSteam.wanted_temperature: 115}) == []


NUMBERS: Final = tuple(
    declared for section in SECTIONS for declared in section.declared if isinstance(declared, NumberInput)
)


@pytest.mark.parametrize("declared", NUMBERS, ids=lambda declared: declared.dotted)
@pytest.mark.parametrize("value", [None, 0], ids=["cleared", "zero"])
def test_a_cleared_or_zero_cell_never_makes_an_error_value(declared: NumberInput, value: float | None) -> None:
    numbers = [found for found in worked({declared: value}).values() if found.dtype.kind == "f"]
    assert all(np.isfinite(found).all() for found in numbers)
