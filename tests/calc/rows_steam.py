"""Saturated steam and air pressure in print."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from farmbook.calc import heat, steam
from tests.calc import chains
from tests.calc.published import HowKnown, Published

LINE: Final = "the line for steam stands within 1 kJ/kg of the release"
CURVE: Final = "the curve for water stands within 0.04 kJ/kg of the release"

IF97: Final = "IAPWS R7-97(2012); iapws 1.5.5"
RELEASE: Final = "IAPWS R7-97(2012), as copied in the tests of iapws"
ATMOSPHERE: Final = "US Standard Atmosphere 1976; fluids 1.3.1"
BOTH: Final = "IAPWS R7-97(2012) in the US Standard Atmosphere 1976; iapws 1.5.5 and fluids 1.3.1"

_BY_PRESSURE: Final = (
    ("14.696 psi", "211.954 degF"),
    ("20.0 psi", "227.918 degF"),
    ("25.0 psi", "240.034 degF"),
    ("30.0 psi", "250.301 degF"),
    ("35.0 psi", "259.255 degF"),
)

_STEAM: Final = (
    ("90 degC", "2659.53 kJ/kg_water"),
    ("95 degC", "2667.61 kJ/kg_water"),
    ("105 degC", "2683.39 kJ/kg_water"),
    ("110 degC", "2691.07 kJ/kg_water"),
    ("115 degC", "2698.59 kJ/kg_water"),
    ("126 degC", "2714.52 kJ/kg_water"),
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
    ("0.1 MPa", "372.755919 kelvin", "copy"),
    ("1 MPa", "453.035632 kelvin", "copy"),
    ("10 MPa", "584.149488 kelvin", "copy"),
)

_PRESSURES: Final[tuple[tuple[str, str, HowKnown], ...]] = (
    ("300 kelvin", "0.00353658941 MPa", "copy"),
    ("500 kelvin", "2.63889776 MPa", "copy"),
    ("600 kelvin", "12.3443146 MPa", "copy"),
)

ROWS: Final = (
    *(
        Published(chains.saturation_temperature, RELEASE, "table 36", how, printed, {"pressure": pressure})
        for pressure, printed, how in _TEMPERATURES
    ),
    *(
        Published(chains.saturation_pressure, RELEASE, "table 35", how, printed, {"absolute_temperature": given})
        for given, printed, how in _PRESSURES
    ),
    *(_if97(chains.boiling_temperature, hot, pressure=pressure) for pressure, hot in _BY_PRESSURE),
    *(_if97(heat.steam_enthalpy, whole, "1.0", LINE, temperature=hot) for hot, whole in _STEAM),
    _if97(chains.vessel_temperature_at_sea_level, "120.955 degC", gauge_pressure="15 psi"),
    _if97(chains.vessel_temperature_at_sea_level, "258.741 degF", gauge_pressure="20 psi"),
    _if97(heat.steam_enthalpy, "2707.32 kJ/kg_water", "1.0", LINE, temperature="120.955 degC"),
    _if97(chains.water_at, "507.84 kJ/kg_water", "0.04", CURVE, water_temperature="120.955 degC"),
    _if97(chains.gauge_pressure_at_sea_level, "15.136 psi", vessel_temperature="121.1 degC"),
    _if97(chains.gauge_pressure_at_sea_level, "14.118 psi", vessel_temperature="120 degC"),
    _if97(chains.vapour_pressure, "101.418 kPa", water_temperature="100 degC"),
    _if97(chains.vapour_pressure, "19.946 kPa", water_temperature="60 degC"),
    _if97(chains.water_at, "419.10 kJ/kg_water", "0.04", CURVE, water_temperature="100 degC"),
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
            chains.air_pressure_above_ground,
            ATMOSPHERE,
            height,
            "library",
            pressure,
            {"height": height},
        )
        for height, pressure in _AIR
    ),
    Published(
        steam.air_pressure,
        "International Standard Atmosphere; av8n.com/physics/altimetry.htm",
        "top of the troposphere",
        "seen",
        "22,632.1 Pa",
        {"height": "11,000 m"},
    ),
    *(
        Published(chains.boiling_point_at, BOTH, height, "library", hot, {"height": height})
        for height, hot in (
            ("1,000 ft", "210.13 degF"),
            ("2,000 ft", "208.31 degF"),
            ("3,000 ft", "206.48 degF"),
            ("5,000 ft", "202.83 degF"),
        )
    ),
    *(
        Published(
            chains.vessel_temperature, BOTH, height, "library", hot, {"gauge_pressure": "15 psi", "height": height}
        )
        for height, hot in (("5,000 ft", "118.22 degC"), ("7,000 ft", "117.19 degC"))
    ),
    *(
        Published(
            chains.gauge_pressure_for,
            BOTH,
            height,
            "library",
            pressure,
            {"vessel_temperature": "240 degF", "height": height},
        )
        for height, pressure in (("1,000 ft", "10.8123 psi"), ("5,000 ft", "12.7571 psi"), ("10,000 ft", "14.8784 psi"))
    ),
)
