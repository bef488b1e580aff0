"""Printed tables of steam and air, as read in pages and in the tests of libraries that copy them."""

from __future__ import annotations

from typing import Final

from farmbook.calc import steam
from tests.calc import chains
from tests.calc.published import Published

KEENAN: Final = "Keenan and Keyes, Thermodynamic Properties of Steam, an abstract; armstronginternational.com"
ASHRAE: Final = "ASHRAE Handbook - Fundamentals 2017, chapter 1, as copied in the tests of PsychroLib"
IAPWS_95: Final = "IAPWS R6-95, table 8, as copied in the tests of iapws"
CANNING: Final = "USDA, Complete Guide to Home Canning, heights, a copy; webpal.org/SAFE"
WALL: Final = "a page of help on insulation between studs; hancocksoftware.zendesk.com 115002061983"

OLDER: Final = "tables of 1936 stand up to 0.05 degF from the release of 1997"
LINE: Final = "the line for steam stands within 1 kJ/kg (0.43 Btu/lb) of the release, the table within 0.2 Btu/lb"

# pressure, temperature, heat of evaporation, heat in steam, and how far the line stands from that
_STATES: Final = (
    ("14.696 psi", "212.00", "970.3", "1150.4", "0.25"),
    ("20.0 psi", "227.96", "960.1", "1156.3", "0.25"),
    ("25.0 psi", "240.07", "952.1", "1160.6", "0.25"),
    ("30.0 psi", "250.33", "945.3", "1164.1", "0.25"),
    ("35.0 psi", "259.28", "939.2", "1167.1", "0.5"),
)

ROWS: Final = (
    *(
        row
        for pressure, hot, latent, whole, apart in _STATES
        for row in (
            Published(
                chains.boiling_temperature,
                KEENAN,
                "temperature of saturated steam",
                "seen",
                f"{hot} degF",
                {"pressure": pressure},
                within="0.06",
                because=OLDER,
            ),
            Published(
                chains.latent_heat_at_pressure,
                KEENAN,
                "heat of evaporation",
                "seen",
                f"{latent} Btu/lb_water",
                {"pressure": pressure},
                within="0.4",
                because=LINE,
            ),
            Published(
                chains.steam_at_pressure,
                KEENAN,
                "heat in saturated steam",
                "seen",
                f"{whole} Btu/lb_water",
                {"pressure": pressure},
                within=apart,
                because=LINE,
            ),
        )
    ),
    *(
        Published(
            chains.vapour_pressure,
            ASHRAE,
            "table 3, pressure over water",
            "copy",
            printed,
            {"water_temperature": hot},
        )
        for hot, printed in (
            ("5 degC", "872.6 Pa"),
            ("25 degC", "3,169.7 Pa"),
            ("50 degC", "12,351.3 Pa"),
            ("100 degC", "101,418.0 Pa"),
            ("150 degC", "476,101.4 Pa"),
            ("300 degF", "67.0206 psi"),
        )
    ),
    *(
        Published(steam.air_pressure, ASHRAE, "table 1, standard atmosphere", "copy", printed, {"height": height})
        for height, printed in (
            ("500 m", "95,461 Pa"),
            ("1,000 m", "89,875 Pa"),
            ("4,000 m", "61,640 Pa"),
            ("10,000 m", "26,436 Pa"),
        )
    ),
    Published(
        chains.saturation_pressure,
        IAPWS_95,
        "pressure of saturated steam",
        "copy",
        "932.203564 kPa",
        {"absolute_temperature": "450 kelvin"},
        within="0.19",
        because="another release of the same body; the two stand within 0.02 % of each other",
    ),
    Published(
        chains.water_at,
        IAPWS_95,
        "heat in saturated water at 275 K",
        "copy",
        "7.75972202 kJ/kg_water",
        {"water_temperature": "1.85 degC"},
        within="0.04",
        because="the curve for water stands within 0.04 kJ/kg of the release",
    ),
    *(
        Published(
            chains.boiling_point_at,
            CANNING,
            "boiling point of water",
            "copy",
            f"{hot} degF",
            {"height": height},
            within=within,
            because="the table falls by whole steps of 1.8 degF or less, and stands up to 0.25 degF high",
        )
        for height, hot, within in (
            ("1,000 ft", "210.2", "0.1"),
            ("2,000 ft", "208.5", "0.25"),
            ("3,000 ft", "206.7", "0.25"),
            ("4,000 ft", "204.9", "0.25"),
        )
    ),
    Published(
        chains.resistance_of_two_parts,
        WALL,
        "15 % of studs at R 7.11, 85 % at R 15.73: R 13.3",
        "seen",
        "13.3 ft2*h*delta_degF/Btu",
        {
            "share": "15 percent",
            "first": "7.11 ft2*h*delta_degF/Btu",
            "second": "15.73 ft2*h*delta_degF/Btu",
        },
    ),
)
