"""Heat capacity, heat loss and fuel in print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import heat
from tests.calc import chains
from tests.calc.published import Published

WOOD: Final = "Glass and Zelinka 2010, Wood Handbook chapter 4"
COMPOSITE: Final = (
    "1,000 bags of 2.27 kg at 62 % moisture and 500 kg of steel, 15 to 98 degC; scipy quad and iapws 1.5.5"
)
CURVE: Final = "the curve is for water at its boiling pressure; cold water at 1 atm holds 0.1 kJ/kg more"
PER_MILLION: Final = "printed for a million Btu"
LOAD: Final = {"start": "15 degC", "end": "98 degC"}

ROWS: Final = (
    *(
        Published(
            heat.wood_heat_capacity,
            WOOD,
            "equation for oven-dry wood, worked out with chemics 24.1",
            "library",
            f"{capacity} kJ/kg_dry/delta_degC",
            {"absolute_temperature": hot},
        )
        for hot, capacity in (
            ("280 kelvin", "1.186"),
            ("290 kelvin", "1.225"),
            ("300 kelvin", "1.263"),
            ("320 kelvin", "1.341"),
            ("340 kelvin", "1.418"),
            ("360 kelvin", "1.495"),
            ("333.15 kelvin", "1.39139"),
        )
    ),
    *(
        Published(
            chains.moist_wood_capacity,
            WOOD,
            "moist wood below fibre saturation, worked out with chemics 24.1",
            "library",
            f"{capacity} kJ/kg/delta_degC",
            {"share": share, "absolute_temperature": hot},
        )
        for share, hot, capacity in (
            ("0.12 1", "340 kelvin", "1.914629"),
            ("0.20 1", "280 kelvin", "1.715"),
            ("0.20 1", "320 kelvin", "2.033"),
            ("0.20 1", "360 kelvin", "2.350"),
        )
    ),
    Published(
        chains.moist_wood_capacity,
        WOOD,
        "worked example in a copy",
        "seen",
        "1.91 kJ/kg/delta_degC",
        {"share": "0.12 1", "absolute_temperature": "340 kelvin"},
    ),
    *(
        Published(
            chains.water_heat,
            "IAPWS-IF97; iapws 1.5.5",
            "liquid at 1 atm",
            "library",
            printed,
            {"mass": "1 kg_water", "start": start, "end": end},
            within="0.12",
            because=CURVE,
        )
        for start, end, printed in (("20 degC", "99.974 degC", "334.98 kJ"), ("15 degC", "98 degC", "347.59 kJ"))
    ),
    Published(chains.dry_wood_heat, COMPOSITE, "wood", "library", "98,649 kJ", {"mass": "862.6 kg_dry", **LOAD}),
    Published(
        chains.water_heat,
        COMPOSITE,
        "water",
        "library",
        "489,197 kJ",
        {"mass": "1,407.4 kg_water", **LOAD},
        within="170",
        because=CURVE,
    ),
    Published(
        chains.load_heat,
        COMPOSITE,
        "whole load",
        "library",
        "608,596 kJ",
        {"dry": "862.6 kg_dry", "water": "1,407.4 kg_water", "steel": "500 kg", **LOAD},
        within="170",
        because=CURVE,
    ),
    Published(
        chains.wall_energy,
        "Penn State EGEE 102, Calculating wall heat loss; e-education.psu.edu/egee102/node/2070",
        "1,920 ft2 at R 20.4 over 6,100 degree-days, 13.78 million Btu",
        "seen",
        "13,780,000 Btu",
        {
            "area": "1,920 ft2",
            "difference": "6,100 delta_degF",
            "resistance": "20.4 ft2*h*delta_degF/Btu",
            "time": "1 day",
        },
        within="5000",
        because="printed in hundredths of a million",
    ),
    *(
        Published(
            heat.energy_price,
            "Energy Solutions, Energy Conversion Factors (2017), a copy; scribd.com/document/350941843",
            PER_MILLION,
            "copy",
            printed,
            {"price": price, "heat_content": content},
        )
        for price, content, printed in (
            ("0.70 money/gal", "91,523 Btu/gal", "0.0000076484 money/Btu"),
            ("0.60 money/gal", "138,500 Btu/gal", "0.0000043321 money/Btu"),
        )
    ),
    Published(
        chains.heat_of_propane,
        "US Energy Information Administration, Monthly Energy Review, table A1",
        "a barrel of 42 gallons of propane, 3.836 million Btu until 2012",
        "memory",
        "3,836,000 Btu_fuel",
        {"volume": "42 gal"},
        within="500",
        because="printed in thousandths of a million",
    ),
    Published(
        heat.fuel_used,
        "Frontier Natural Gas, Btu guide; frontiernaturalgas.com/NewHome/btu-conversion-guide.php",
        "100 gal of propane at 0.9133 therm/gal hold 91.33 therm",
        "seen",
        "100.00 gal",
        {"energy": "91.33 therm", "heat_content": "0.9133 therm/gal"},
    ),
    Published(
        chains.fuel_cost,
        "US DOE, Energy Tips: Steam, tip sheet 15, example",
        "1,000 lb of steam at 1,006 Btu/lb, gas at $8.00 a million Btu, 85.7 %",
        "memory",
        "9.39 money",
        {"output": "1,006,000 Btu", "efficiency": "85.7 percent", "price": "0.00000800 money/Btu"},
    ),
    Published(
        chains.steam_fuel_cost,
        "Spitzer, quiz on boiler fuel cost; flowcontrolnetwork.com/quiz-corner-boiler-fuel-cost",
        "5.475 million dollars a year (a later line of the page misprints 4.475)",
        "seen",
        "5,475,000 money",
        {
            "time": "8,760 h",
            "flow": "100,000 lb_water/h",
            "heat_of_steam": "1,000 Btu/lb_water",
            "efficiency": "0.80",
            "price": "0.00000500 money/Btu",
        },
    ),
)
