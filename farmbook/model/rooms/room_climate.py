"""What it takes to hold a room at its temperature: heat, cooling, light, fans and water."""

from __future__ import annotations

from farmbook.calc import climate
from farmbook.calc.calendar import DAYS_IN_A_WEEK, MONTHS_IN_A_YEAR
from farmbook.calc.mixing import WATER_DENSITY
from farmbook.calc.timetable import HOURS_IN_A_DAY
from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import all_of, joined, named, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.outdoors import Outdoors
from farmbook.model.rooms.room import Room
from farmbook.sections.alike import Alike
from farmbook.sections.declare import NumberInput, check, line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, MACKAY_2009

__all__ = ["RoomClimate"]

BY_MONTH = (CALENDAR,)


class RoomClimate(Alike):
    """By the monthly mean outside: days and nights that need both heat and cooling within a month are not in it."""

    farm = uses(Farm)
    energy = uses(Energy)
    outdoors = uses(Outdoors)

    room: Room
    temperature: NumberInput
    air_changes: NumberInput
    bag_heat: NumberInput
    mist: NumberInput

    outer_area = number(
        "Walls, roof and floor of the {} to the outside",
        unit="m2",
        usual=(20, 1000),
        hard=(0, 100000),
        optional=True,
        how="Tape: all faces beyond which it is not the same temperature. Left empty, no heat is worked out.",
    )
    insulation = number(
        "Insulation of the {}, as it works",
        unit="m2*delta_degC/W",
        usual=(0.3, 6),
        hard=(0.05, 20),
        default=2.5,
        how="R on the label, less a quarter for joints and doors; a bare wall of block or sheet has 0.3 (R 2).",
        source=COMMON_PRACTICE,
    )
    air_volume = number(
        "Air in the {}",
        unit="m3",
        usual=(20, 2000),
        hard=(0, 1000000),
        optional=True,
        how="Length times width times height, inside. Left empty, no heat is worked out.",
    )
    fans = number(
        "Power of fans, day and night, in the {}",
        unit="kW",
        usual=(0, 5),
        hard=(0, 1000),
        default=0,
        how="Nameplates of fans, mist makers and the rest, times the share of the day they run.",
        source=COMMON_PRACTICE,
    )
    lamps = number(
        "Power of the lamps in the {}",
        unit="kW",
        usual=(0, 5),
        hard=(0, 1000),
        default=0,
        how="Count them, times what is printed on one.",
        source=COMMON_PRACTICE,
    )
    lit = number(
        "Hours a day that the lamps of the {} burn",
        unit="h/day",
        usual=(0, 16),
        hard=(0, 24),
        default=12,
        how="The timer.",
        source=COMMON_PRACTICE,
    )

    @line("Heat of the {} can be worked out", unit="flag")
    def known(self) -> Expr:
        """1 where walls and air are both given."""
        return all_of(self.given(self.outer_area), self.given(self.air_volume))

    @line("Walls of the {} lose for each degree", unit="W/delta_degC", source=MACKAY_2009)
    def wall_leak(self) -> Expr:
        """Area over insulation."""
        return climate.wall_leak(self.outer_area, self.insulation)

    @line("Air changed in the {} takes for each degree", unit="W/delta_degC", source=MACKAY_2009)
    def air_leak(self) -> Expr:
        """A third of a watt for each cubic metre and change an hour."""
        return climate.air_leak(self.air_volume, self.air_changes)

    @line("The {} loses for each degree", unit="W/delta_degC")
    def leak(self) -> Expr:
        """Walls and air."""
        return self.wall_leak + self.air_leak

    @line("Bags in the {} give off", unit="kW")
    def bags_warm(self) -> Expr:
        """On average over the bags there; fresh ones in full growth give more."""
        return self._by_bags()

    @line("Water misted in the {} a day", unit="L/day")
    def misted(self) -> Expr:
        """By the bags there; nothing while walls and air are not given."""
        return self.mist * self.room.taken * self.known

    @line("Water evaporating in the {} takes up", unit="kW")
    def evaporating(self) -> Expr:
        """All that is misted, as if none ran off: the most it can take."""
        return self._by_water()

    @line("Lamps in the {}, on average", unit="kW")
    def lamps_on_average(self) -> Expr:
        """Over day and night."""
        return self.lamps * (self.lit / named(HOURS_IN_A_DAY))

    @line("Warms the {}: bags, fans and lamps", unit="kW")
    def gained(self) -> Expr:
        """All their power ends as heat in the room."""
        return self._by_bags() + self.fans + self.lamps_on_average

    @line("Warms the {}, what water takes up taken off", unit="kW")
    def gain(self) -> Expr:
        """A loss that is as large needs neither heat nor cooling."""
        return self.gained - self._by_water()

    def _by_bags(self) -> Expr:
        return self.bag_heat * self.room.taken

    def _by_water(self) -> Expr:
        return climate.evaporation(self.misted * WATER_DENSITY)

    @line("Hours a month for which heat of the {} is worked out", unit="h")
    def hours(self) -> Expr:
        """Those of the weeks worked; none where walls or air are not given."""
        return self.outdoors.hours * self.known

    @line("Warmer than outside, {}", unit="delta_degC", axes=BY_MONTH)
    def difference(self) -> Expr:
        """Below zero: it is warmer outside."""
        return self.temperature - self.outdoors.outside

    @line("Lost to the outside, {}", unit="kW", axes=BY_MONTH)
    def lost(self) -> Expr:
        """Below zero: heat comes in."""
        return climate.heat_flow(self.leak, self.difference)

    @line("Heat wanted, {}", unit="kW", axes=BY_MONTH, source=MACKAY_2009)
    def wanted(self) -> Expr:
        """On average over the month; below zero, heat to take out. 0 where walls or air are not given."""
        return self._at_rest() * self.known

    @property
    def put_in(self) -> Expr:
        """Heat put in, by month, in the hours of the weeks worked."""
        return climate.heat_wanted(self.wanted, self.outdoors.hours)

    @line("Taken out by the cooler, {}", unit="kWh", axes=BY_MONTH)
    def cold(self) -> Expr:
        """Nothing in months when it is so much colder outside that air alone cools."""
        return self._by_cooler()

    @line("Heat put into the {} a year", unit="kWh/year")
    def heat_a_year(self) -> Expr:
        """Twelve months, in the hours of the weeks worked."""
        return joined(total(climate.heat_wanted(self._at_rest(), self.hours), CALENDAR), "kWh/year")

    @line("Heat taken out of the {} a year", unit="kWh/year")
    def taken_out_a_year(self) -> Expr:
        """Twelve months, by outside air or by the cooler."""
        return joined(total(self._taken_out(), CALENDAR), "kWh/year")

    @line("Of it by the cooler, {}, a year", unit="kWh/year")
    def cold_a_year(self) -> Expr:
        """Twelve months, but for those when it is so much colder outside that air alone cools."""
        return joined(total(self._by_cooler(), CALENDAR), "kWh/year")

    def _at_rest(self) -> Expr:
        # Over the loss of a month, which no change of the crop moves: a change then needs no heat month by month.
        return climate.wanted_at_rest(self.lost, self.gain)

    def _taken_out(self) -> Expr:
        return climate.cold_wanted(self.lost, self.gain, self.hours)

    def _by_cooler(self) -> Expr:
        return self._taken_out() * (self.difference < self.outdoors.free_cooling)

    @line("Energy to heat the {} a year", unit="kWh/year", source=MACKAY_2009)
    def heating_energy(self) -> Expr:
        """Of the fuel or power that heats."""
        return self._to_heat()

    @line("Power to cool the {} a year", unit="kWh/year", source=MACKAY_2009)
    def cooling_energy(self) -> Expr:
        """Electric."""
        return self._to_cool()

    def _to_heat(self) -> Expr:
        return climate.energy_for_heat(self.heat_a_year, self.outdoors.heating_performance)

    def _to_cool(self) -> Expr:
        return climate.energy_for_heat(self.cold_a_year, self.outdoors.cooling_performance)

    @line("Power for light in the {} a year", unit="kWh/year", source=ARITHMETIC)
    def light_energy(self) -> Expr:
        """In the weeks worked."""
        return self.lamps * self.lit * DAYS_IN_A_WEEK * self.farm.weeks_worked

    @line("Power for fans in the {} a year", unit="kWh/year", source=ARITHMETIC)
    def fan_energy(self) -> Expr:
        """In the weeks worked, day and night."""
        return self.fans * named(HOURS_IN_A_DAY) * DAYS_IN_A_WEEK * self.farm.weeks_worked

    @line("Water misted in the {} a year", unit="m3/year", source=ARITHMETIC)
    def water(self) -> Expr:
        """In the weeks worked."""
        return self.misted * DAYS_IN_A_WEEK * self.farm.weeks_worked

    @line("Heating the {} costs a year", unit="money/year")
    def heating_cost(self) -> Expr:
        """At the price of what heats."""
        return self._to_heat() * self.outdoors.heating_price

    @line("Cooling the {} costs a year", unit="money/year")
    def cooling_cost(self) -> Expr:
        """At the price of electricity; a charge for your highest kW is not in it."""
        return self._to_cool() * self.energy.electricity_price

    @line("Light in the {} costs a year", unit="money/year")
    def light_cost(self) -> Expr:
        """At the price of electricity."""
        return self.light_energy * self.energy.electricity_price

    @line("Fans in the {} cost a year", unit="money/year")
    def fan_cost(self) -> Expr:
        """At the price of electricity."""
        return self.fan_energy * self.energy.electricity_price

    @line("Water misted in the {} costs a year", unit="money/year")
    def water_cost(self) -> Expr:
        """At the price of water."""
        return self.water * self.energy.water_price

    @line("Energy of the {} a year, worked out", unit="money/year")
    def energy_cost(self) -> Expr:
        """Heat and cooling as far as walls and air are given; light and fans."""
        return self.heating_cost + self.cooling_cost + self.light_cost + self.fan_cost

    @line("Lost from the {} to the outside a year", unit="kWh/year", source=ARITHMETIC)
    def lost_a_year(self) -> Expr:
        """In the hours of the weeks worked, where walls and air are given."""
        return joined(total(self.lost, CALENDAR) * self.hours, "kWh/year")

    @line("Gained in the {} a year", unit="kWh/year", source=ARITHMETIC)
    def gained_a_year(self) -> Expr:
        """By bags, fans and lamps in the same hours, where walls and air are given."""
        return joined(self.gained * self.hours, "kWh/month") * MONTHS_IN_A_YEAR

    @line("Taken up by water in the {} a year", unit="kWh/year", source=ARITHMETIC)
    def evaporated_a_year(self) -> Expr:
        """As it evaporates, in the same hours."""
        return joined(self.evaporating * self.hours, "kWh/month") * MONTHS_IN_A_YEAR

    @line("Put into the {} and gained there a year", unit="kWh/year", source=ARITHMETIC)
    def heat_in(self) -> Expr:
        """Must be what is lost, taken up and taken out."""
        return self.heat_a_year + self.gained_a_year

    @line("Lost from the {}, taken up by water and taken out a year", unit="kWh/year", source=ARITHMETIC)
    def heat_out(self) -> Expr:
        """Must be what is put in and gained."""
        return self.lost_a_year + self.evaporated_a_year + self.taken_out_a_year

    @check(
        "Heat of the {}: what is put in, gained and taken out is what is lost",
        kind="error",
        says="Heat put in, gained and taken out do not make up what the {} loses: a formula of the sheet Rooms was changed.",
    )
    def heat_adds_up(self) -> Expr:
        """Over the year."""
        return is_rounding(self.heat_in - self.heat_out, self.heat_in, self.taken_out_a_year)
