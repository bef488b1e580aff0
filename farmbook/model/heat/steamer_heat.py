"""Heat of one steam load: what the load takes up, and what walls, vent and drain lose."""

from __future__ import annotations

from typing import ClassVar, Final

from farmbook.calc.heat import (
    PLASTIC_HEAT_CAPACITY,
    STEEL_HEAT_CAPACITY,
    bound_share,
    bound_water_correction,
    condensate_multiplier,
    degrees_above_freezing,
    drained_multiplier,
    for_dry_weight,
    heat_to_supply,
    sensible_heat,
    standing_loss,
    vent_power,
    wall_loss,
    warming_of_water,
    water_enthalpy,
    wood_heat_capacity,
)
from farmbook.calc.temperature import kelvin
from farmbook.expr.functions import joined, maximum, mean, ratio
from farmbook.expr.nodes import Expr, Line
from farmbook.model.heat.steaming import Steaming, if_in_use
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import Farm
from farmbook.model.place.site import Site
from farmbook.sections.alike import Alike
from farmbook.sections.declare import Choice, LineOf, NumberInput, Option, check, line, number, uses
from farmbook.sources import (
    COMMON_PRACTICE,
    MATERIAL_PROPERTIES,
    NIST_SP_811,
    SIMPSON_TENWOLDE_1999,
    STEAM_LINES,
    WOOD_HANDBOOK,
)

__all__ = ["DRAINED", "SteamerHeat"]

DRAINED: Final = Option("drains away", "drains away hot")


class SteamerHeat(Alike):
    """The heat of one load in a steamer of any kind, from cold to temperature and while it is held there."""

    farm = uses(Farm)
    bag = uses(Bag)
    site = uses(Site)
    steaming = uses(Steaming)

    hold_temperature: NumberInput | LineOf
    insulation: NumberInput
    steel: NumberInput
    vent_flow: NumberInput
    condensate: Choice
    inside_area: LineOf
    in_steam: LineOf
    sound: LineOf
    steamer: ClassVar[Option]
    """The option of `steamer.kind` that this steamer is."""
    boiled_again: ClassVar[Option]
    """The option of `condensate` with which condensed steam does not drain away."""

    start_temperature = number(
        "Temperature of the bags when loaded into the {}",
        unit="degC",
        usual=(1.7, 29.4),
        hard=(-20, 60),
        default=15.6,
        how="Probe in the middle of a bag; take a cold month and a warm one.",
        source=COMMON_PRACTICE,
    )
    surroundings = number(
        "Temperature around the {}",
        unit="degC",
        usual=(0, 35),
        hard=(-40, 60),
        default=15.6,
        how="Thermometer an arm's length from the wall, on a usual day.",
        source=COMMON_PRACTICE,
    )
    feed_temperature = number(
        "Temperature of the feed water of the {}",
        unit="degC",
        usual=(4, 25),
        hard=(0, 95),
        default=12.8,
        how="Thermometer under the tap that the water comes from.",
        source=COMMON_PRACTICE,
    )

    @property
    def bags(self) -> Line:
        """Bags in a load."""
        return self.farm.bags_in_a_load

    @property
    def warmed(self) -> Expr:
        """Steel that is warmed with each load."""
        return self.steel

    @line("The farm steams in the {}", unit="flag")
    def in_use(self) -> Expr:
        """1 for the steamer chosen; the other is worked out for comparing only."""
        return self.steaming.chose(self.steaming.kind, self.steamer)

    @line("Dry mix in a load of the {}", unit="kg_dry/run")
    def load_dry(self) -> Expr:
        """All bags of a full load, with the recipe chosen."""
        return self.bag.dry_mass * self.bags

    @line("Water in the mix of a load of the {}", unit="kg_water/run")
    def load_water(self) -> Expr:
        """The heaviest thing to warm: a wet mix is more water than wood."""
        return self.bag.water_mass * self.bags

    @line("Plastic of the bags in a load of the {}", unit="kg/run")
    def load_plastic(self) -> Expr:
        """Small beside the rest."""
        return self.bag.bag_mass * self.bags

    @line("Warming from start to hold in the {}", unit="delta_degC")
    def rise(self) -> Expr:
        """Everything in the chamber is taken to reach the temperature held."""
        return self.hold_temperature - self.start_temperature

    @line("Temperature half way between start and hold in the {}", unit="degC")
    def mean_temperature(self) -> Expr:
        """Wood takes up more heat for each degree the warmer it is; the half way value gives the mean exactly."""
        return mean(self.start_temperature, self.hold_temperature)

    @line("Half way temperature above absolute zero, {}", unit="kelvin", source=NIST_SP_811)
    def mean_absolute_temperature(self) -> Expr:
        """The equation for wood counts from absolute zero."""
        return kelvin(self.mean_temperature)

    @line("Heat capacity of the dry wood in the {}", unit="kJ/kg_dry/delta_degC", source=WOOD_HANDBOOK)
    def wood_capacity(self) -> Expr:
        """Taken for all dry mix: bran and hulls differ little."""
        return wood_heat_capacity(self.mean_absolute_temperature)

    @line("Water bound in the dry mix in the {}, over its dry weight", unit="1", source=WOOD_HANDBOOK)
    def bound_share(self) -> Expr:
        """Wood binds water up to its fibre saturation; what is beyond that stands free beside it."""
        return bound_share(joined(ratio(self.load_water, self.load_dry), "1"))

    @line("Heat capacity that bound water adds to moist wood in the {}", unit="kJ/kg/delta_degC", source=WOOD_HANDBOOK)
    def bound_correction(self) -> Expr:
        """Loosening bound water takes heat besides that of wood and of water."""
        return bound_water_correction(self.bound_share, self.mean_absolute_temperature)

    @line("The same for the dry wood in it, {}", unit="kJ/kg_dry/delta_degC", source=WOOD_HANDBOOK)
    def bound_capacity(self) -> Expr:
        """Moist wood is dry wood and its bound water."""
        return for_dry_weight(self.bound_correction, self.bound_share)

    @line("Heat into the dry mix in the {}", unit="kWh/run", source=WOOD_HANDBOOK)
    def wood_heat(self) -> Expr:
        """From start to hold, with what bound water adds."""
        return sensible_heat(self.load_dry, self.wood_capacity + self.bound_capacity, self.rise)

    @line("Degrees C above freezing, bags loaded into the {}", unit="1")
    def start_degrees(self) -> Expr:
        """The curve of heat in water counts so."""
        return degrees_above_freezing(self.start_temperature)

    @line("Degrees C above freezing, feed water of the {}", unit="1")
    def feed_degrees(self) -> Expr:
        """The curve of heat in water counts so."""
        return degrees_above_freezing(self.feed_temperature)

    @line("Degrees C above freezing, chamber of the {}", unit="1")
    def hold_degrees(self) -> Expr:
        """The curve of heat in water counts so."""
        return degrees_above_freezing(self.hold_temperature)

    @line("Heat in the water of the mix as loaded into the {}", unit="kJ/kg_water", source=STEAM_LINES)
    def in_start(self) -> Expr:
        """Counted from the freezing point."""
        return water_enthalpy(self.start_degrees)

    @line("Heat into the water of the mix in the {}", unit="kWh/run", source=STEAM_LINES)
    def water_heat(self) -> Expr:
        """From start to hold."""
        return warming_of_water(self.load_water, self.in_drain, self.in_start)

    @line("Heat into the bags' plastic in the {}", unit="kWh/run", source=MATERIAL_PROPERTIES)
    def bag_heat(self) -> Expr:
        """From start to hold, taken as polypropylene."""
        return sensible_heat(self.load_plastic, PLASTIC_HEAT_CAPACITY, self.rise)

    @line("Heat into racks and shell of the {}", unit="kWh/run", source=MATERIAL_PROPERTIES)
    def steel_heat(self) -> Expr:
        """Paid again with each load, as the steel cools down with the bags."""
        return sensible_heat(self.warmed, STEEL_HEAT_CAPACITY, self.rise)

    @line("Heat taken up by a load of the {}", unit="kWh/run", source=SIMPSON_TENWOLDE_1999)
    def load_heat(self) -> Expr:
        """The heats of its parts added; nothing is lost yet."""
        return self.wood_heat + self.water_heat + self.bag_heat + self.steel_heat

    @line("Share of the load's heat in the {} that goes into water", unit="share")
    def water_share(self) -> Expr:
        """Most of it. Even so a drier mix saves little, as a point of moisture is a small part of the water."""
        return ratio(self.water_heat, self.load_heat)

    @line("Chamber of the {} above the air around it", unit="delta_degC")
    def wall_difference(self) -> Expr:
        """Drives heat out through the walls."""
        return self.hold_temperature - self.surroundings

    @line("Heat lost through the walls of the {} at hold", unit="kW")
    def wall_loss(self) -> Expr:
        """Grows with the area and the difference in temperature, falls with the insulation."""
        return wall_loss(self.inside_area, self.wall_difference, self.insulation)

    @line("Heat in the feed water of the {}", unit="kJ/kg_water", source=STEAM_LINES)
    def in_feed(self) -> Expr:
        """Counted from the freezing point."""
        return water_enthalpy(self.feed_degrees)

    @line("Heat in the condensed steam as it leaves the {}", unit="kJ/kg_water", source=STEAM_LINES)
    def in_drain(self) -> Expr:
        """It leaves as hot as the chamber."""
        return water_enthalpy(self.hold_degrees)

    @line("Heat bought for each unit left in the {}, if condensed steam drains away", unit="1")
    def drained_multiplier(self) -> Expr:
        """Condensed steam carries its heat down the drain, and cold water takes its place."""
        return drained_multiplier(self.in_steam, self.in_feed, self.in_drain)

    @line("Heat bought for each unit left in the {}", unit="1")
    def multiplier(self) -> Expr:
        """1 where the condensed steam is boiled again."""
        return condensate_multiplier(self.drained_multiplier, self.chose(self.condensate, self.boiled_again))

    @line("Heat that the steam of the {} must bring", unit="kWh/run")
    def heat_to_supply(self) -> Expr:
        """What the load takes up, and what drains away with it. Walls and vent come on top."""
        return heat_to_supply(self.load_heat, self.multiplier)

    @line("Heat lost by the vent of the {}", unit="kW")
    def vent_power(self) -> Expr:
        """Each kilogram or pound of steam that leaves was boiled from cold feed water."""
        return vent_power(self.vent_flow, self.in_steam, self.in_feed)

    @line("Heat needed only to keep the {} hot", unit="kW")
    def standing_loss(self) -> Expr:
        """Walls and vent at hold; while warming up, half of it on average."""
        return standing_loss(self.wall_loss, self.multiplier, self.vent_power)

    @line("Warmest of bags, feed water and air around the {}", unit="degC")
    def warmest_at_start(self) -> Expr:
        """The chamber must be held above it."""
        return maximum(maximum(self.start_temperature, self.feed_temperature), self.surroundings)

    @check(
        "Temperatures of the {} are in order",
        kind="error",
        says=(
            "The chamber of the {} is held no hotter than the bags, the feed water or the air around it: check these "
            "four temperatures."
        ),
    )
    def temperatures_in_order(self) -> Expr:
        """The hold must be the hottest."""
        return if_in_use(self.in_use, self.hold_temperature > self.warmest_at_start)
