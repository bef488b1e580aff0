"""Heat lost by walls and air, in print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import climate
from tests.calc import chains
from tests.calc.published import HowKnown, Published

OPEN_UNIVERSITY: Final = "The Open University, Energy in buildings, table 7; open.edu, section 2.4.1"

_HOUSE: Final[tuple[tuple[str, str, str, str, HowKnown], ...]] = (
    ("roof of 48 m2 at 0.16", "48 m2", "6.25", "7.7 W/delta_degC", "seen"),
    ("windows and doors of 20 m2 at 2.00", "20 m2", "0.5", "40 W/delta_degC", "seen"),
)

ROWS: Final = (
    *(
        Published(
            climate.wall_leak,
            OPEN_UNIVERSITY,
            where,
            how_known,
            printed,
            {"area": area, "resistance": f"{resistance} m2*delta_degC/W"},
        )
        for where, area, resistance, printed, how_known in _HOUSE
    ),
    Published(
        climate.air_leak,
        "D. J. C. MacKay, Sustainable Energy - without the hot air, chapter E; withouthotair.com/cE/page_289.shtml",
        "1.2 kJ for each cubic metre and degree: a third of a watt for each change an hour; 30 m3, changed twice",
        "arithmetic",
        "20 W/delta_degC",
        {"volume": "30 m3", "changes": "2 1/h"},
    ),
    Published(
        chains.air_heat_lost,
        "a heat load sheet with the usual 1.08 Btu an hour for each ft3 a minute and degF, a copy",
        "20,000 ft3 changed half a time an hour, 20 degF apart: 3,600 Btu an hour",
        "copy",
        "3,600 Btu/h",
        {"volume": "20,000 ft3", "changes": "0.5 1/h", "difference": "20 delta_degF"},
        within="25",
        because="1.08 is air of 0.075 lb/ft3 at 0.24 Btu/lb: 0.6% more than 1.2 kJ/m3",
    ),
    Published(
        chains.wall_energy_by_degrees,
        "Penn State EGEE 102, Calculating wall heat loss; e-education.psu.edu/egee102/node/2070",
        "1,920 ft2 at R 20.4 over 6,100 degree-days, 13.78 million Btu, by what is lost for each degree",
        "seen",
        "13,780,000 Btu",
        {
            "area": "1,920 ft2",
            "resistance": "20.4 ft2*h*delta_degF/Btu",
            "difference": "6,100 delta_degF",
            "time": "1 day",
        },
        within="5000",
        because="printed in hundredths of a million",
    ),
    Published(
        climate.evaporation,
        "iapws 1.5.4, regions 1 and 2 of IAPWS-IF97",
        "saturated vapour less saturated water at 20 degC, for 10 kg a day",
        "library",
        "24,535 kJ/day",
        {"water": "10 kg_water/day"},
    ),
)
