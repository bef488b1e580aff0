"""Heat, time and energy of one steam load: what the load takes up, what is lost, what the generator must draw.

Steam gives up its heat of condensing and leaves as hot water. Where that water drains away, its heat was bought too.
"""

from __future__ import annotations

from math import pi
from typing import Final

from farmbook.calc.temperature import ICE_POINT
from farmbook.expr.functions import Operand, joined, maximum, minimum, ratio, where
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, MATERIAL_PROPERTIES, STEAM_LINES, WOOD_HANDBOOK
from farmbook.units import unit

__all__ = [
    "BOILING_POINT",
    "BOUND_WATER_BASE",
    "BOUND_WATER_BEND",
    "BOUND_WATER_SLOPE",
    "CABINET_POWER",
    "CABINET_ROOM",
    "CABINET_STEEL",
    "CIRCLE_IN_SQUARE",
    "CIRCUMFERENCE",
    "FIBRE_SATURATION",
    "HEAT_UP_LOSS_SHARE",
    "ONE_DEGREE",
    "PLASTIC_HEAT_CAPACITY",
    "STEAM_ENTHALPY_AT_BOILING",
    "STEAM_ENTHALPY_SLOPE",
    "STEEL_HEAT_CAPACITY",
    "WATER_HEAT_FIRST",
    "WATER_HEAT_SECOND",
    "WATER_HEAT_THIRD",
    "WOOD_HEAT_CAPACITY_BASE",
    "WOOD_HEAT_CAPACITY_SLOPE",
    "bound_share",
    "bound_water_correction",
    "condensate_multiplier",
    "degrees_above_freezing",
    "drained_multiplier",
    "energy_of_run",
    "energy_price",
    "feed_water",
    "flat_end",
    "for_dry_weight",
    "fuel_used",
    "heat_in_steam",
    "heat_to_supply",
    "heat_up_time",
    "hold_power",
    "hours_of_loss",
    "power_left",
    "round_wall",
    "sensible_heat",
    "standing_loss",
    "steam_enthalpy",
    "steam_made",
    "steam_power",
    "vent_power",
    "wall_loss",
    "warming_of_water",
    "water_enthalpy",
    "wood_heat_capacity",
]

WOOD_HEAT_CAPACITY_BASE: Final = Constant(
    0.1031,
    "wood_heat_capacity_base",
    label="Heat capacity of dry wood: constant term",
    unit=unit("kJ/kg_dry/delta_degC"),
    source=WOOD_HANDBOOK.key,
)
WOOD_HEAT_CAPACITY_SLOPE: Final = Constant(
    0.003867,
    "wood_heat_capacity_slope",
    label="Heat capacity of dry wood: rise with each kelvin",
    unit=unit("kJ/kg_dry/delta_degC/kelvin"),
    source=WOOD_HANDBOOK.key,
)
FIBRE_SATURATION: Final = Constant(
    0.3,
    "fibre_saturation",
    label="Water that wood can bind, over its dry weight",
    unit=unit("1"),
    source=WOOD_HANDBOOK.key,
    note="Averages 30%, from memory; water beyond it stands free beside the wood.",
)
BOUND_WATER_BASE: Final = Constant(
    -6.191,
    "bound_base",
    label="Heat capacity added by bound water: constant term",
    unit=unit("kJ/kg/delta_degC"),
    source=WOOD_HANDBOOK.key,
    note="The handbook's figure is for water in percent of dry weight; this one for a share.",
)
BOUND_WATER_SLOPE: Final = Constant(
    0.0236,
    "bound_slope",
    label="Heat capacity added by bound water: rise with each kelvin",
    unit=unit("kJ/kg/delta_degC/kelvin"),
    source=WOOD_HANDBOOK.key,
    note="The handbook's figure is for water in percent of dry weight; this one for a share.",
)
BOUND_WATER_BEND: Final = Constant(
    -1.33,
    "bound_bend",
    label="Heat capacity added by bound water: fall with the water bound",
    unit=unit("kJ/kg/delta_degC"),
    source=WOOD_HANDBOOK.key,
    note="The handbook's figure is for water in percent of dry weight; this one for a share.",
)
CABINET_ROOM: Final = Constant(
    0.0217,
    "cabinet_room_for_a_bag",
    label="Room in a cabinet for each bag, where its length is not given",
    unit=unit("m3*run/bag_filled"),
    source=COMMON_PRACTICE.key,
    note="From memory: some 1,000 bags in 8 by 8 by 12 ft.",
)
CABINET_POWER: Final = Constant(
    0.036,
    "cabinet_power_for_a_bag",
    label="Power of a cabinet for each bag, where it is not given",
    unit=unit("kW*run/bag_filled"),
    source=COMMON_PRACTICE.key,
    note="From memory: some 36 kW for 1,000 bags.",
)
CABINET_STEEL: Final = Constant(
    0.4,
    "cabinet_steel_for_a_bag",
    label="Steel in a cabinet for each bag, where it is not given",
    unit=unit("kg/bag_filled"),
    source=COMMON_PRACTICE.key,
    note="From memory: some 400 kg in a cabinet of 1,000 bags.",
)
ONE_DEGREE: Final = Constant(1, "one_degree", label="One degree C", unit=unit("delta_degC"), source=ARITHMETIC.key)
WATER_HEAT_FIRST: Final = Constant(
    4.20403,
    "water_heat_first",
    label="Heat in liquid water: for each degree C",
    unit=unit("kJ/kg_water"),
    source=STEAM_LINES.key,
)
WATER_HEAT_SECOND: Final = Constant(
    -0.000547787,
    "water_heat_second",
    label="Heat in liquid water: for the square of degrees C",
    unit=unit("kJ/kg_water"),
    source=STEAM_LINES.key,
)
WATER_HEAT_THIRD: Final = Constant(
    4.16115e-6,
    "water_heat_third",
    label="Heat in liquid water: for the third power of degrees C",
    unit=unit("kJ/kg_water"),
    source=STEAM_LINES.key,
    note="The three together within 0.04 kJ/kg (0.02 Btu/lb) from 1 to 130 degC.",
)
PLASTIC_HEAT_CAPACITY: Final = Constant(
    1.70,
    "plastic_heat_capacity",
    label="Heat capacity of polypropylene bags",
    unit=unit("kJ/kg/delta_degC"),
    source=MATERIAL_PROPERTIES.key,
)
STEEL_HEAT_CAPACITY: Final = Constant(
    0.50,
    "steel_heat_capacity",
    label="Heat capacity of stainless steel",
    unit=unit("kJ/kg/delta_degC"),
    source=MATERIAL_PROPERTIES.key,
    note="Other tables print 0.45 to 0.51 for steels.",
)
BOILING_POINT: Final = Constant(
    100,
    "boiling_point",
    label="Temperature at which the line of steam heat content starts",
    unit=unit("degC"),
    source=STEAM_LINES.key,
)
STEAM_ENTHALPY_AT_BOILING: Final = Constant(
    2675.57,
    "steam_enthalpy_at_boiling",
    label="Heat content of saturated steam at 100 degC",
    unit=unit("kJ/kg_water"),
    source=STEAM_LINES.key,
    note="Counted from water at the freezing point.",
)
STEAM_ENTHALPY_SLOPE: Final = Constant(
    1.53,
    "steam_enthalpy_slope",
    label="Rise of the heat content of saturated steam",
    unit=unit("kJ/kg_water/delta_degC"),
    source=STEAM_LINES.key,
    note="Within 1 kJ/kg from 88 to 127 degC.",
)
HEAT_UP_LOSS_SHARE: Final = Constant(
    0.5,
    "heat_up_loss_share",
    label="Mean standing loss during heat-up, of that at hold",
    unit=unit("1"),
    source=COMMON_PRACTICE.key,
    note="The loss grows from nothing as the cabinet warms.",
)
CIRCUMFERENCE: Final = Constant(
    pi,
    "circumference_over_diameter",
    label="Way round a circle over its diameter: pi",
    unit=unit("1"),
    source=ARITHMETIC.key,
)
CIRCLE_IN_SQUARE: Final = Constant(
    pi / 4,
    "circle_in_square",
    label="Circle over the square around it: a quarter of pi",
    unit=unit("1"),
    source=ARITHMETIC.key,
)


def wood_heat_capacity(absolute_temperature: Operand) -> Operand:
    """Heat capacity of oven-dry wood, about 280 to 420 K; at the mean temperature of a range it is the mean over it.

    Units: absolute_temperature [kelvin]; gives [kJ/kg_dry/delta_degC].
    Source: wood_handbook.
    """
    return WOOD_HEAT_CAPACITY_BASE + WOOD_HEAT_CAPACITY_SLOPE * absolute_temperature


def bound_share(water_over_dry: Operand) -> Operand:
    """Water bound in the wood over its dry weight: all of it, up to fibre saturation.

    Units: water_over_dry [1]; gives [1].
    Source: wood_handbook.
    """
    return minimum(water_over_dry, FIBRE_SATURATION)


def bound_water_correction(bound_share: Operand, absolute_temperature: Operand) -> Operand:
    """What bound water adds to the heat capacity of moist wood over that of its wood and its water, for 280 to 420 K.

    Water beyond fibre saturation adds its own heat and nothing more (Simpson and TenWolde 1999).

    Units: bound_share [1], absolute_temperature [kelvin]; gives [kJ/kg/delta_degC].
    Source: wood_handbook.
    """
    slope = BOUND_WATER_SLOPE * absolute_temperature + BOUND_WATER_BEND * bound_share
    return bound_share * (BOUND_WATER_BASE + slope)


def for_dry_weight(correction: Operand, bound_share: Operand) -> Operand:
    """A heat capacity for each kilogram of moist wood, for each kilogram of dry wood in it.

    Units: correction [kJ/kg/delta_degC], bound_share [1]; gives [kJ/kg_dry/delta_degC].
    Source: arithmetic.
    """
    return joined(correction, "kJ/kg_dry/delta_degC") * (1 + bound_share)


def sensible_heat(mass: Operand, heat_capacity: Operand | float, rise: Operand) -> Operand:
    """Heat taken up by a mass of anything that warms and does not boil.

    Units: mass [kg], heat_capacity [kJ/kg/delta_degC], rise [delta_degC]; gives [kJ].
    Source: arithmetic.
    """
    return mass * heat_capacity * rise


def wall_loss(area: Operand, difference: Operand, resistance: Operand) -> Operand:
    """Heat flowing out through walls; zero where no resistance is given, which a check must flag.

    Units: area [m2], difference [delta_degC], resistance [m2*delta_degC/W]; gives [W].
    Source: arithmetic.
    """
    return ratio(area * difference, resistance)


def round_wall(diameter: Operand, length: Operand) -> Operand:
    """Wall of a cylinder without its ends.

    Units: diameter [m], length [m]; gives [m2].
    Source: arithmetic.
    """
    return diameter * length * CIRCUMFERENCE


def flat_end(diameter: Operand) -> Operand:
    """One end of a cylinder, taken as flat.

    Units: diameter [m]; gives [m2].
    Source: arithmetic.
    """
    return diameter * diameter * CIRCLE_IN_SQUARE


def degrees_above_freezing(temperature: Operand) -> Operand:
    """Degrees C above the freezing point of water, as a plain number.

    Units: temperature [degC]; gives [1].
    Source: arithmetic.
    """
    return (temperature - ICE_POINT) / ONE_DEGREE


def water_enthalpy(degrees: Operand) -> Operand:
    """Heat in a kilogram of liquid water above its freezing point: feed water, condensate, or the water of a mix.

    Units: degrees [1]; gives [kJ/kg_water].
    Source: steam_lines.
    """
    return degrees * (WATER_HEAT_FIRST + degrees * (WATER_HEAT_SECOND + degrees * WATER_HEAT_THIRD))


def warming_of_water(mass: Operand, hot: Operand, cold: Operand) -> Operand:
    """Heat taken up by water that warms and does not boil.

    Units: mass [kg_water], hot [kJ/kg_water], cold [kJ/kg_water]; gives [kJ].
    Source: arithmetic.
    """
    return mass * (hot - cold)


def steam_enthalpy(temperature: Operand) -> Operand:
    """Heat in a kilogram of saturated steam, above water at its freezing point; a straight line for 88 to 127 degC.

    Units: temperature [degC]; gives [kJ/kg_water].
    Source: steam_lines.
    """
    return STEAM_ENTHALPY_AT_BOILING + STEAM_ENTHALPY_SLOPE * (temperature - BOILING_POINT)


def drained_multiplier(steam: Operand, feed: Operand, condensate: Operand) -> Operand:
    """Heat bought over heat left in the load, where the condensate drains away hot.

    Units: steam [kJ/kg_water], feed [kJ/kg_water], condensate [kJ/kg_water]; gives [1].
    Source: arithmetic.
    """
    return ratio(steam - feed, steam - condensate)


def condensate_multiplier(drained: Operand, returned: Operand) -> Operand:
    """Heat bought over heat left in the load: 1 where the condensate falls back to the boil.

    Units: drained [1], returned [flag]; gives [1].
    Source: arithmetic.
    """
    return where(returned, 1, drained)


def heat_to_supply(load_heat: Operand, multiplier: Operand) -> Operand:
    """Heat that the steam must carry for the load to take up its own.

    Units: load_heat [kJ], multiplier [1]; gives [kJ].
    Source: arithmetic.
    """
    return load_heat * multiplier


def heat_in_steam(mass: Operand, steam: Operand, feed: Operand) -> Operand:
    """Heat that leaves with an amount of steam let out.

    Units: mass [kg_water], steam [kJ/kg_water], feed [kJ/kg_water]; gives [kJ].
    Source: arithmetic.
    """
    return mass * (steam - feed)


def vent_power(vent_flow: Operand, steam: Operand, feed: Operand) -> Operand:
    """Heat that leaves with the steam of the open vent.

    Units: vent_flow [kg_water/h], steam [kJ/kg_water], feed [kJ/kg_water]; gives [kJ/h].
    Source: arithmetic.
    """
    return vent_flow * (steam - feed)


def standing_loss(wall_loss: Operand, multiplier: Operand, vent_power: Operand) -> Operand:
    """Heat needed only to stay hot. What the walls lose is made up by condensing, so it counts with the multiplier.

    Units: wall_loss [kW], multiplier [1], vent_power [kW]; gives [kW].
    Source: arithmetic.
    """
    return wall_loss * multiplier + vent_power


def steam_power(power: Operand, efficiency: Operand) -> Operand:
    """Heat that the generator puts into steam.

    Units: power [kW], efficiency [1]; gives [kW].
    Source: arithmetic.
    """
    return power * efficiency


def power_left(steam_power: Operand, standing_loss: Operand) -> Operand:
    """Power left to warm the load, after the mean loss during heat-up; below zero where there is none.

    Units: steam_power [kW], standing_loss [kW]; gives [kW].
    Source: common_practice.
    """
    return steam_power - standing_loss * HEAT_UP_LOSS_SHARE


def heat_up_time(heat_to_supply: Operand, power_left: Operand) -> Operand:
    """Time from cold to temperature; zero where no power is left, which a check must flag.

    Units: heat_to_supply [kJ], power_left [kJ/h]; gives [h].
    Source: arithmetic.
    """
    return ratio(heat_to_supply, maximum(power_left, 0))


def hold_power(standing_loss: Operand, efficiency: Operand) -> Operand:
    """Power drawn to put a given heat into steam: at hold, the standing loss over the efficiency.

    Units: standing_loss [kW], efficiency [1]; gives [kW].
    Source: arithmetic.
    """
    return ratio(standing_loss, efficiency)


def hours_of_loss(heat_up_time: Operand, hold_time: Operand) -> Operand:
    """Hours at hold in which as much is lost as in a whole load: the mean loss while heating up, all of it at hold.

    Units: heat_up_time [h], hold_time [h]; gives [h].
    Source: common_practice.
    """
    return heat_up_time * HEAT_UP_LOSS_SHARE + hold_time


def energy_of_run(heat_to_supply: Operand, heat_lost: Operand, efficiency: Operand) -> Operand:
    """Energy drawn by one load: what the steam must bring and what is lost meanwhile, over the share that gets into it.

    Units: heat_to_supply [kJ], heat_lost [kJ], efficiency [1]; gives [kJ].
    Source: arithmetic.
    """
    return ratio(heat_to_supply + heat_lost, efficiency)


def feed_water(energy: Operand, efficiency: Operand, steam: Operand, feed: Operand) -> Operand:
    """Water boiled off by an amount of energy, to be made up.

    Units: energy [kJ], efficiency [1], steam [kJ/kg_water], feed [kJ/kg_water]; gives [kg_water].
    Source: arithmetic.
    """
    return ratio(energy * efficiency, steam - feed)


def steam_made(heat: Operand, steam: Operand, feed: Operand) -> Operand:
    """Water that an amount of heat boils off.

    Units: heat [kJ], steam [kJ/kg_water], feed [kJ/kg_water]; gives [kg_water].
    Source: arithmetic.
    """
    return ratio(heat, steam - feed)


def fuel_used(energy: Operand, heat_content: Operand) -> Operand:
    """Fuel that holds an amount of energy, in any measure of fuel.

    Units: energy [kWh], heat_content [kWh/gal]; gives [gal].
    Source: arithmetic.
    """
    return ratio(energy, heat_content)


def energy_price(price: Operand, heat_content: Operand) -> Operand:
    """Price of the energy in a fuel, before any loss in the burner.

    Units: price [money/gal], heat_content [kWh/gal]; gives [money/kWh].
    Source: arithmetic.
    """
    return ratio(price, heat_content)
