"""Saturated steam and air pressure in print."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from farmbook.calc import heat, steam
from tests.calc import chains
from tests.calc.published import HowKnown, Published

LINE: Final = "the line for steam stands within 1 kJ/kg of the release, the curve for water within 0.04 kJ/kg"
OLD_TABLES: Final = "steam tables older than IF97 lie up to 0.05 degF above it"
ROUNDED: Final = "the guide gives whole pounds for a range of heights"

IF97: Final = "IAPWS R7-97(2012); iapws 1.5.5"
KEENAN: Final = "Keenan and Keyes, Thermodynamic Properties of Steam; abstract at armstronginternational.com"
CANNING: Final = "USDA, Complete Guide to Home Canning"

_BY_PRESSURE: Final = (
    # psi absolute, degF, latent heat and heat of steam in Btu/lb
    ("14.696 psi", "212.00", "970.3", "1150.4"),
    ("20.0 psi", "227.96", "960.1", "1156.3"),
    ("25.0 psi", "240.07", "952.1", "1160.6"),
    ("30.0 psi", "250.33", "945.3", "1164.1"),
    ("35.0 psi", "259.28", "939.2", "1167.1"),
)

_AIR: Final = (
    ("1,000 ft", "97,716.7 Pa"),
    ("2,000 ft", "94,213.6 Pa"),
    ("3,000 ft", "90,813.1 Pa"),
    ("5,000 ft", "84,311.1 Pa"),
    ("5,280 ft", "83,431.8 Pa"),
    ("7,000 ft", "78,192.3 Pa"),
    ("10,000 ft", "69,694.6 Pa"),
)


def _if97(
    calculation: Callable[..., float], printed: str, within: str = "", because: str = "", **given: str
) -> Published:
    return Published(calculation, IF97, "saturated states", "library", printed, given, within, because)


_TEMPERATURES: Final[tuple[tuple[str, str, HowKnown], ...]] = (
    ("0.1 MPa", "372.755919 kelvin", "library"),
    ("1 MPa", "453.035632 kelvin", "library"),
    ("10 MPa", "584.149488 kelvin", "seen"),
)

_PRESSURES: Final[tuple[tuple[str, str, HowKnown], ...]] = (
    ("300 kelvin", "0.00353658941 MPa", "library"),
    ("500 kelvin", "2.63889776 MPa", "seen"),
    ("600 kelvin", "12.3443146 MPa", "library"),
)

ROWS: Final = (
    *(
        Published(chains.saturation_temperature, IF97, "table 36", how, printed, {"pressure": pressure})
        for pressure, printed, how in _TEMPERATURES
    ),
    *(
        Published(chains.saturation_pressure, IF97, "table 35", how, printed, {"absolute_temperature": given})
        for given, printed, how in _PRESSURES
    ),
    *(
        Published(
            chains.boiling_temperature, KEENAN, psi, "seen", f"{hot} degF", {"pressure": psi}, "0.1", because=OLD_TABLES
        )
        for psi, hot, _, _ in _BY_PRESSURE
    ),
    *(
        Published(
            chains.latent_heat_at_pressure,
            KEENAN,
            psi,
            "seen",
            f"{latent} Btu/lb_water",
            {"pressure": psi},
            within="1.1",
            because=LINE,
        )
        for psi, _, latent, _ in _BY_PRESSURE
    ),
    *(
        Published(
            chains.steam_at_pressure,
            KEENAN,
            psi,
            "seen",
            f"{whole} Btu/lb_water",
            {"pressure": psi},
            within="0.5",
            because=LINE,
        )
        for psi, _, _, whole in _BY_PRESSURE
    ),
    _if97(chains.vessel_temperature, "120.955 degC", gauge_pressure="15 psi", height="0 ft"),
    _if97(chains.vessel_temperature, "249.72 degF", gauge_pressure="15 psi", height="0 ft"),
    _if97(chains.vessel_temperature, "125.967 degC", gauge_pressure="20 psi", height="0 ft"),
    _if97(chains.vessel_temperature, "258.74 degF", gauge_pressure="20 psi", height="0 ft"),
    _if97(heat.steam_enthalpy, "2707.32 kJ/kg_water", "1.0", LINE, temperature="120.955 degC"),
    _if97(chains.water_at, "507.84 kJ/kg_water", "0.04", LINE, water_temperature="120.955 degC"),
    _if97(chains.latent_heat_at_pressure, "2199.47 kJ/kg_water", "1.0", LINE, pressure="204.746 kPa"),
    _if97(chains.latent_heat_at_pressure, "2185.29 kJ/kg_water", "1.0", LINE, pressure="239.220 kPa"),
    _if97(chains.gauge_pressure_for, "15.136 psi", vessel_temperature="121.1 degC", height="0 m"),
    _if97(chains.gauge_pressure_for, "15.146 psi", vessel_temperature="121.11 degC", height="0 m"),
    _if97(chains.gauge_pressure_for, "14.118 psi", vessel_temperature="120 degC", height="0 m"),
    _if97(chains.vapour_pressure, "101.418 kPa", water_temperature="100 degC"),
    _if97(chains.vapour_pressure, "19.946 kPa", water_temperature="60 degC"),
    _if97(chains.water_at, "419.10 kJ/kg_water", "0.04", LINE, water_temperature="100 degC"),
    Published(
        chains.vapour_pressure,
        "Ohio University, table of saturated water; people.ohio.edu/trembly",
        "60 degC",
        "seen",
        "0.01995 MPa",
        {"water_temperature": "60 degC"},
    ),
    Published(
        chains.water_at,
        "Ohio University, table of saturated water; people.ohio.edu/trembly",
        "60 degC",
        "seen",
        "251.2 kJ/kg_water",
        {"water_temperature": "60 degC"},
    ),
    *(
        Published(
            steam.air_pressure,
            "US Standard Atmosphere 1976; fluids 1.3.1",
            height,
            "library",
            pressure,
            {"height": height},
            within="15",
            because="the library counts height from the ground up, the formula in steps of equal weight",
        )
        for height, pressure in _AIR
    ),
    *(
        Published(
            steam.air_pressure,
            "International Standard Atmosphere; av8n.com/physics/altimetry.htm",
            height,
            "seen",
            pressure,
            {"height": height},
        )
        for height, pressure in (("0 m", "101,325 Pa"), ("11,000 m", "22,632.1 Pa"))
    ),
    *(
        Published(
            chains.boiling_point_at,
            CANNING,
            "table of adjustments for altitude, a copy",
            "copy",
            hot,
            {"height": height},
            within="0.3",
            because="the table is rounded and lies about 0.2 degF high",
        )
        for height, hot in (
            ("0 ft", "212.0 degF"),
            ("1,000 ft", "210.2 degF"),
            ("2,000 ft", "208.5 degF"),
            ("3,000 ft", "206.7 degF"),
            ("4,000 ft", "204.9 degF"),
        )
    ),
    *(
        Published(
            chains.gauge_pressure_for,
            CANNING,
            "dial gauge for 240 degF up to this height, in whole pounds",
            "memory",
            pressure,
            {"vessel_temperature": "240 degF", "height": height},
            within="0.4",
            because=ROUNDED,
        )
        for height, pressure in (
            ("2,000 ft", "11 psi"),
            ("4,000 ft", "12 psi"),
            ("6,000 ft", "13 psi"),
            ("8,000 ft", "14 psi"),
        )
    ),
)
