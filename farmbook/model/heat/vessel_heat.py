"""The pressure vessel's own part in the heat of a load: its shell, the air driven out, the water put in."""

from __future__ import annotations

from typing import Final

from farmbook.calc.heat import (
    flat_end,
    heat_in_steam,
    heat_to_supply,
    round_wall,
    steam_enthalpy,
    warming_of_water,
    water_enthalpy,
)
from farmbook.calc.mixing import WATER_DENSITY
from farmbook.calc.temperature import celsius
from farmbook.expr.functions import where
from farmbook.expr.nodes import Expr, Line
from farmbook.model.heat.steamer_heat import DRAINED, SteamerHeat
from farmbook.model.heat.steaming import VESSEL, if_in_use
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sources import COMMON_PRACTICE, NIST_SP_811, STEAM_LINES

__all__ = ["AS_IT_BOILS", "BEFOREHAND", "FALLS_BACK", "VesselHeat"]

FALLS_BACK: Final = Option("falls back", "falls back to the boil")
AS_IT_BOILS: Final = Option("as it boils", "let in as it boils")
BEFOREHAND: Final = Option("beforehand", "put in before each load")


class VesselHeat(SteamerHeat, words="pressure vessel"):
    """The pressure vessel: its heat, from cold to working pressure and while it is held there."""

    title = "Pressure vessel: heat"
    table = "vessel"
    steamer = VESSEL
    boiled_again = FALLS_BACK

    steam = uses(VesselSteam)

    bags_per_run = number(
        "Bags in a load of the pressure vessel",
        unit="bag_filled/run",
        usual=(8, 600),
        hard=(1, 20000),
        default=340,
        how="Count the places that you really fill, with room for steam between the bags.",
        source=COMMON_PRACTICE,
    )
    loss_at_steaming = number(
        "Bags lost at steaming in the pressure vessel",
        unit="share",
        usual=(0.003, 0.05),
        hard=(0, 1),
        default=0.01,
        how="Burst and leaking bags taken out before inoculation, over bags filled, ten loads together.",
        source=COMMON_PRACTICE,
        note="Letting the pressure down fast bursts bags. The default is the same as for a cabinet: type your own.",
    )
    diameter = number(
        "Diameter of the pressure vessel",
        unit="m",
        usual=(0.3, 2),
        hard=(0.1, 6),
        default=1.3,
        how="Tape; for a square vessel, 1.1 times its width.",
        source=COMMON_PRACTICE,
    )
    length = number(
        "Length of the pressure vessel",
        unit="m",
        usual=(0.3, 6),
        hard=(0.1, 30),
        default=2.7,
        how="Tape, from end to end; the height of one that stands upright.",
        source=COMMON_PRACTICE,
    )
    insulation = number(
        "Insulation of the pressure vessel, as it works",
        unit="m2*delta_degC/W",
        usual=(0.1, 2),
        hard=(0.02, 20),
        default=0.7,
        how="0.1 (US: 0.6) for bare steel; for wool, half the R on the label, as door and pipes stay bare.",
        source=COMMON_PRACTICE,
    )
    steel = number(
        "Steel of shell, door and racks of the pressure vessel",
        unit="kg/run",
        usual=(10, 4000),
        hard=(0, 50000),
        default=2500,
        how="Shipping weight, with the racks. Each load pays for warming it again.",
        source=COMMON_PRACTICE,
    )
    vent_flow = number(
        "Steam that leaves the pressure vessel at hold",
        unit="kg_water/h",
        usual=(0, 10),
        hard=(0, 200),
        default=1,
        how="Bleeder, weight or leaks: lead it into a bucket of cold water for half an hour; double what it gains.",
        source=COMMON_PRACTICE,
    )
    purge_steam = number(
        "Steam let out of the pressure vessel to drive the air out",
        unit="kg_water/run",
        usual=(0.1, 30),
        hard=(0, 500),
        default=5,
        how="Minutes of venting times the steam in a minute: each kW boils about 1.4 kg (3 lb) an hour.",
        source=COMMON_PRACTICE,
        note="Left in, air keeps part of the load colder than the gauge makes one think. Follow the maker's minutes.",
    )
    condensate = choice(
        "Condensed steam of the pressure vessel",
        DRAINED,
        FALLS_BACK,
        default=DRAINED,
        how="A trap lets it out, or it drips back into water that boils in the bottom.",
        source=COMMON_PRACTICE,
    )
    feed = choice(
        "Water for the steam of the pressure vessel",
        AS_IT_BOILS,
        BEFOREHAND,
        default=AS_IT_BOILS,
        how="Does a valve or pump make up the water during the run, or must what you put in last to the end?",
        source=COMMON_PRACTICE,
    )
    water_put_in = number(
        "Water put into the pressure vessel before a load",
        unit="L/run",
        usual=(3, 300),
        hard=(0, 10000),
        default=60,
        how="Measure it with a marked bucket. It counts only where no valve or pump makes up the water.",
        source=COMMON_PRACTICE,
    )

    @property
    def bags(self) -> Line:
        """Bags in a load."""
        return self.bags_per_run

    @line("Temperature of the pressure vessel at its working pressure", unit="degC", source=NIST_SP_811)
    def hold_temperature(self) -> Expr:
        """Of pure steam; where air is left in, it is colder than this at the same gauge."""
        return celsius(self.steam.absolute_temperature)

    @line("Round wall of the pressure vessel", unit="m2")
    def wall(self) -> Expr:
        """Without the ends."""
        return round_wall(self.diameter, self.length)

    @line("One end of the pressure vessel", unit="m2")
    def end(self) -> Expr:
        """Taken as flat; a dished one is a little larger."""
        return flat_end(self.diameter)

    @line("Shell of the pressure vessel", unit="m2")
    def inside_area(self) -> Expr:
        """Wall and both ends lose heat."""
        return self.wall + self.end + self.end

    @line("Heat in the steam of the pressure vessel", unit="kJ/kg_water", source=STEAM_LINES)
    def in_steam(self) -> Expr:
        """Counted from water at the freezing point; hardly more than without pressure."""
        return steam_enthalpy(self.hold_temperature)

    @line("Water is put in before each load of the pressure vessel", unit="flag")
    def by_hand(self) -> Expr:
        """1 where it must last to the end."""
        return self.chose(self.feed, BEFOREHAND)

    @line("Heat in the water from the tap of the pressure vessel", unit="kJ/kg_water", source=STEAM_LINES)
    def in_tap(self) -> Expr:
        """Counted from the freezing point."""
        return water_enthalpy(self.feed_degrees)

    @line("Heat in the water that the pressure vessel boils", unit="kJ/kg_water", source=STEAM_LINES)
    def in_feed(self) -> Expr:
        """Cold where it is let in as it boils. What was put in before is hot by then: warming it is counted apart."""
        return where(self.by_hand, self.in_drain, self.in_tap)

    @line("Water that stands in the pressure vessel", unit="kg_water/run")
    def standing_water(self) -> Expr:
        """Nothing where it is let in as it boils."""
        return self.water_put_in * WATER_DENSITY * self.by_hand

    @line("Heat into the water that stands in the pressure vessel", unit="kWh/run", source=STEAM_LINES)
    def standing_heat(self) -> Expr:
        """From the tap to the temperature held; paid again with each load, whether it boils away or not."""
        return warming_of_water(self.standing_water, self.in_drain, self.in_tap)

    @line("Heat in the steam that drives the air out", unit="kWh/run")
    def purge_heat(self) -> Expr:
        """It is gone before the hold begins."""
        return heat_in_steam(self.purge_steam, self.in_steam, self.in_feed)

    @line("Heat that the steam of the pressure vessel must bring", unit="kWh/run")
    def heat_to_supply(self) -> Expr:
        """What the load takes up and what drains away with it, the air driven out, and the water that stands in it."""
        return heat_to_supply(self.load_heat, self.multiplier) + self.purge_heat + self.standing_heat

    @line("Temperatures of the pressure vessel make sense", unit="flag")
    def sound(self) -> Expr:
        """1 where the hold is the hottest of its temperatures."""
        return self.hold_temperature > self.warmest_at_start

    @check(
        "Working pressure is within the rating of the vessel",
        kind="alert",
        says=(
            "The working pressure is above what the vessel is rated for. The rated pressure is taken instead; never "
            "run it higher. See the working pressure, and the plate on the vessel."
        ),
    )
    def within_rating(self) -> Expr:
        """A vessel above its rating can burst."""
        return if_in_use(self.in_use, self.steam.working_pressure <= self.steam.rated_pressure)
