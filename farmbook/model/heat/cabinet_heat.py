"""The steam cabinet's own part in the heat of a load: its faces, and steam without pressure."""

from __future__ import annotations

from typing import Final

from farmbook.calc.heat import CABINET_ROOM, CABINET_STEEL, STEAM_ENTHALPY_AT_BOILING
from farmbook.expr.functions import all_of, named, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.heat.steamer_heat import DRAINED, SteamerHeat
from farmbook.model.heat.steaming import CABINET, if_in_use
from farmbook.sections.declare import Option, check, choice, line, number
from farmbook.sources import (
    COMMON_PRACTICE,
    STEAM_LINES,
)

__all__ = ["RETURNED", "CabinetHeat"]

RETURNED: Final = Option("goes back", "goes back to the steam generator")


class CabinetHeat(SteamerHeat, words="cabinet"):
    """The steam cabinet, unpressurised: its heat, from cold to temperature and while it is held there."""

    title = "Steam cabinet: heat"
    table = "cabinet"
    steamer = CABINET
    boiled_again = RETURNED

    length = number(
        "Length of the cabinet, inside",
        unit="m",
        usual=(1.5, 12),
        hard=(0.3, 40),
        optional=True,
        how="Tape, inside the lining. Left empty, by the bags in a load.",
    )
    width = number(
        "Width of the cabinet, inside",
        unit="m",
        usual=(1.2, 4),
        hard=(0.3, 20),
        default=2.44,
        how="Tape, inside the lining.",
        source=COMMON_PRACTICE,
    )
    height = number(
        "Height of the cabinet, inside",
        unit="m",
        usual=(1.2, 3.5),
        hard=(0.3, 10),
        default=2.44,
        how="Tape, inside the lining.",
        source=COMMON_PRACTICE,
    )
    insulation = number(
        "Insulation of the cabinet, as it works",
        unit="m2*delta_degC/W",
        usual=(0.7, 4.4),
        hard=(0.05, 20),
        default=2.11,
        how=(
            "Half the R on the label, as joints and door halve it; better, read the power that just holds the "
            "temperature, and take off what the open vent carries away."
        ),
        source=COMMON_PRACTICE,
    )
    steel = number(
        "Steel of racks and shell of the cabinet",
        unit="kg/run",
        usual=(100, 1500),
        hard=(0, 20000),
        optional=True,
        how=(
            "Weigh one rack and count; for the lining, its area times thickness (1 mm of steel weighs 7.8 kg a square "
            "metre, 1.6 lb a square foot). Left empty, by the bags in a load."
        ),
    )
    hold_temperature = number(
        "Chamber temperature held in the cabinet",
        unit="degC",
        usual=(87.8, 98.9),
        hard=(40, 120),
        default=93.3,
        how="Thermometer in the coldest corner of the chamber, not beside the steam pipe.",
        source=COMMON_PRACTICE,
    )
    vent_flow = number(
        "Steam that leaves by the vent of the cabinet",
        unit="kg_water/h",
        usual=(1, 15),
        hard=(0, 200),
        default=4,
        how=(
            "Lead the vent through a hose into a bucket of cold water for half an hour at hold, weigh what is gained "
            "and double it."
        ),
        source=COMMON_PRACTICE,
        note="A cabinet without pressure needs an open vent; never shut it to save heat.",
    )
    condensate = choice(
        "Condensed steam of the cabinet",
        DRAINED,
        RETURNED,
        default=DRAINED,
        how="Follow the drain: into the floor, or by a pipe back to the generator.",
        source=COMMON_PRACTICE,
    )

    @line("Length of a cabinet for so many bags", unit="m", source=COMMON_PRACTICE)
    def usual_length(self) -> Expr:
        """At the width and height given."""
        return ratio(self.bags * CABINET_ROOM, self.width * self.height)

    @line("Length of the cabinet, counted", unit="m")
    def length_counted(self) -> Expr:
        """What you typed, else by the bags in a load."""
        return where(self.given(self.length), self.length, self.usual_length)

    @line("Steel of a cabinet for so many bags", unit="kg/run", source=COMMON_PRACTICE)
    def usual_steel(self) -> Expr:
        """Racks and shell."""
        return self.bags * CABINET_STEEL

    @line("Steel of the cabinet, counted", unit="kg/run")
    def steel_counted(self) -> Expr:
        """What you typed, else by the bags in a load."""
        return where(self.given(self.steel), self.steel, self.usual_steel)

    @property
    def warmed(self) -> Expr:
        """Typed, or by the size of a load."""
        return self.steel_counted

    @line("Floor and roof of the cabinet, inside", unit="m2")
    def floor_and_roof(self) -> Expr:
        """Both together."""
        return self.length_counted * (self.width + self.width)

    @line("Walls and door of the cabinet, inside", unit="m2")
    def walls(self) -> Expr:
        """All four sides."""
        return (self.length_counted + self.width) * (self.height + self.height)

    @line("Inside of the cabinet, all faces", unit="m2")
    def inside_area(self) -> Expr:
        """All six faces lose heat, the floor too."""
        return self.floor_and_roof + self.walls

    @line("Heat in the steam of the cabinet", unit="kJ/kg_water", source=STEAM_LINES)
    def in_steam(self) -> Expr:
        """Steam made without pressure at sea level, from water at the freezing point; at 2,400 m it is 0.5% less."""
        return named(STEAM_ENTHALPY_AT_BOILING)

    @line("Temperatures of the cabinet make sense", unit="flag")
    def sound(self) -> Expr:
        """1 where the hold is the hottest of its temperatures and lies below boiling."""
        return all_of(self.hold_temperature > self.warmest_at_start, self.hold_temperature < self.site.boiling_point)

    @check(
        "Chamber is held below boiling",
        kind="error",
        says=(
            "At this height water boils at or below the temperature held, so the cabinet never gets there: hold below "
            "the boiling point of the site, and longer, or steam under pressure."
        ),
    )
    def below_boiling(self) -> Expr:
        """By the height of the site: steam without pressure gets no hotter than boiling water."""
        return if_in_use(self.in_use, self.hold_temperature < self.site.boiling_point)
