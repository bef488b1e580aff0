"""Heat that a room loses to the outside, and what it takes to hold its temperature.

By the difference in temperature: what a room loses for each degree, times how many degrees and how long. Energy bought
is the heat moved over the coefficient of performance of what moves it.
"""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import IAPWS_R7_97, MACKAY_2009
from farmbook.units import unit

__all__ = [
    "AIR_HEAT",
    "EVAPORATION_HEAT",
    "air_leak",
    "cold_wanted",
    "energy_for_heat",
    "evaporation",
    "heat_flow",
    "heat_wanted",
    "wall_leak",
    "wanted_at_rest",
]

AIR_HEAT: Final = Constant(
    1.2,
    "air_heat",
    label="Heat that air takes up for each degree",
    unit=unit("kJ/m3/delta_degC"),
    source=MACKAY_2009.key,
    note="Near the ground at room temperature; a tenth less at 1,000 m.",
)
EVAPORATION_HEAT: Final = Constant(
    2453.5,
    "evaporation_heat",
    label="Heat that water takes up as it evaporates in a room",
    unit=unit("kJ/kg_water"),
    source=IAPWS_R7_97.key,
    note="At 20 degC; within 1% from 10 to 25 degC.",
)


def wall_leak(area: Operand, resistance: Operand) -> Operand:
    """Heat lost through walls for each degree; zero where no resistance is given, which a check must flag.

    Units: area [m2], resistance [m2*delta_degC/W]; gives [W/delta_degC].
    Source: mackay_2009.
    """
    return ratio(area, resistance)


def air_leak(volume: Operand, changes: Operand) -> Operand:
    """Heat lost with the air that is changed, for each degree.

    Units: volume [m3], changes [1/h]; gives [kJ/h/delta_degC].
    Source: mackay_2009.
    """
    leak: Operand = volume * changes * AIR_HEAT
    return leak


def evaporation(water: Operand) -> Operand:
    """Heat that water takes up as it evaporates in a room.

    Units: water [kg_water/day]; gives [kJ/day].
    Source: iapws_r7_97.
    """
    heat: Operand = water * EVAPORATION_HEAT
    return heat


def heat_flow(leak: Operand, difference: Operand) -> Operand:
    """Heat lost while it is so many degrees warmer inside; below zero, heat that comes in.

    Units: leak [W/delta_degC], difference [delta_degC]; gives [W].
    Source: mackay_2009.
    """
    return leak * difference


def wanted_at_rest(lost: Operand, gained: Operand) -> Operand:
    """Heat to put in so that the temperature stays, `gained` less what water takes up; below zero, heat to take out.

    Units: lost [W], gained [W]; gives [W].
    Source: mackay_2009.
    """
    return lost - gained


def heat_wanted(wanted: Operand, hours: Operand) -> Operand:
    """Heat to put in over a time; nothing while heat has to be taken out.

    Units: wanted [kW], hours [h]; gives [kWh].
    Source: mackay_2009.
    """
    return (wanted > 0) * wanted * hours


def cold_wanted(lost: Operand, gained: Operand, hours: Operand) -> Operand:
    """Heat to take out over a time, `gained` less what water takes up; nothing while heat has to be put in.

    Units: lost [kW], gained [kW], hours [h]; gives [kWh].
    Source: mackay_2009.
    """
    return (lost < gained) * (gained - lost) * hours


def energy_for_heat(heat: Operand, performance: Operand) -> Operand:
    """Energy bought for heat put in or taken out.

    Units: heat [kWh/year], performance [1]; gives [kWh/year].
    Source: mackay_2009.
    """
    return ratio(heat, performance)
