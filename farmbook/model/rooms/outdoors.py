"""The air outside, month by month, and how rooms are warmed and cooled against it."""

from __future__ import annotations

from typing import Final

from farmbook.calc.calendar import HOURS_IN_A_WEEK, MONTHS_IN_A_YEAR
from farmbook.expr.functions import joined, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR
from farmbook.model.place.energy import ELECTRICITY, NATURAL_GAS, PROPANE, Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.declare import choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["Outdoors"]

INLAND: Final = (-1, 1, 5, 11, 16, 21, 23, 22, 18, 12, 6, 1)


class Outdoors(Section):
    """Read only where walls and air of a room are given."""

    title = "Weather, heating and cooling"
    table = "climate"

    farm = uses(Farm)
    energy = uses(Energy)

    outside = number(
        "Mean temperature outside",
        unit="degC",
        usual=(-15, 30),
        hard=(-60, 50),
        default=INLAND,
        axes=(CALENDAR,),
        how="Monthly means of the nearest weather station; for a room inside a heated building, that building's.",
        source=COMMON_PRACTICE,
        note="From memory, an inland place of middle latitude; replace them.",
    )
    heated_by = choice(
        "Rooms are heated by",
        ELECTRICITY,
        NATURAL_GAS,
        PROPANE,
        default=ELECTRICITY,
        how="What the bill of the heater is for; a heat pump runs on electricity.",
        source=COMMON_PRACTICE,
    )
    heating_performance = number(
        "Heat got from each unit of energy, heating",
        unit="1",
        usual=(0.6, 4),
        hard=(0.1, 10),
        default=1,
        how="Electric heater 1, gas heater 0.7 to 0.95, heat pump 2.5 to 4: the nameplate's coefficient of performance.",
        source=COMMON_PRACTICE,
    )
    cooling_performance = number(
        "Heat taken out by each unit of power, cooling",
        unit="1",
        usual=(1.5, 4.5),
        hard=(0.1, 20),
        default=2.5,
        how="Nameplate of the cooler: cooling power over electric power.",
        source=COMMON_PRACTICE,
    )

    free_cooling = number(
        "Outside air alone cools a room when colder than it by",
        unit="delta_degC",
        usual=(2, 15),
        hard=(0, 200),
        default=5,
        how="How much colder it must be outside before you cool with the fan alone; 200 if the cooler always runs.",
        source=COMMON_PRACTICE,
    )

    @line("Hours in the weeks worked of a month", unit="h", source=ARITHMETIC)
    def hours(self) -> Expr:
        """In weeks that are shut the rooms are taken to stand empty and cold."""
        return joined(self.farm.weeks_worked * HOURS_IN_A_WEEK / MONTHS_IN_A_YEAR, "h")

    @line("Price of the fuel that heats rooms", unit="money/kWh_fuel")
    def fuel_price(self) -> Expr:
        """Propane, else natural gas; not read where electricity heats."""
        return where(self.chose(self.heated_by, PROPANE), self.energy.propane_heat, self.energy.gas_price)

    @line("Price of the energy that heats rooms", unit="money/kWh")
    def heating_price(self) -> Expr:
        """Before what the heater wastes."""
        electric = self.chose(self.heated_by, ELECTRICITY)
        return where(electric, self.energy.electricity_price, joined(self.fuel_price, "money/kWh"))
