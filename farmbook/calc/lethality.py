"""How hard the middle of a block is cooked: its temperature while it warms, and minutes counted at a reference.

An index for comparing one's own loads, no proof of sterility. Below 120 degC a constant z makes it look better than it
is (van_doornmalen_2009), and how fast a block warms is uncertain by a factor of two until a probe has measured it.
"""

from __future__ import annotations

from math import pi
from typing import Final

from farmbook.expr.functions import Operand, exponential, maximum, mean, minimum, natural_log, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import HEAT_CONDUCTION
from farmbook.units import unit

__all__ = [
    "BAR_LAG_FACTOR",
    "BRICK_LAG_FACTOR",
    "SLAB_RATE_COEFFICIENT",
    "brick_rate",
    "cooked_in_step",
    "core_by_gap",
    "gap_fall",
    "late_gap",
    "lateness_by_reading",
    "lateness_by_shape",
    "lethal_rate",
    "measured_rate",
    "slab_rate",
    "time_lost",
    "time_until_close",
    "warming_to_do",
]

_FIRST_ROOT_OF_J0 = 2.404825557695773

SLAB_RATE_COEFFICIENT: Final = Constant(
    pi**2,
    "slab_rate_coefficient",
    label="Warming of a slab between two hot faces: pi squared",
    unit=unit("1"),
    source=HEAT_CONDUCTION.key,
    note="On the full thickness.",
)
BRICK_LAG_FACTOR: Final = Constant(
    (4 / pi) ** 3,
    "brick_lag_factor",
    label="Lag factor of the middle of a brick",
    unit=unit("1"),
    source=HEAT_CONDUCTION.key,
)
BAR_LAG_FACTOR: Final = Constant(
    (4 / pi) ** 2,
    "bar_lag_factor",
    label="Lag factor of the middle of a long bar",
    unit=unit("1"),
    source=HEAT_CONDUCTION.key,
    note="Heat comes in by two pairs of faces only.",
)


def lethal_rate(temperature: Operand, reference: Operand | float, z_value: Operand) -> Operand:
    """Minutes at the reference temperature that one minute at a temperature counts for.

    Units: temperature [degC], reference [degC], z_value [delta_degC]; gives [1].
    Source: lethal_rate.
    """
    return 10 ** ratio(temperature - reference, z_value)


def cooked_in_step(earlier_rate: Operand, rate: Operand, step: Operand | float) -> Operand:
    """Cooking earned in one step of time, counted at the reference: the area of a trapezoid.

    Units: earlier_rate [1], rate [1], step [min]; gives [min].
    Source: lethal_rate.
    """
    return mean(earlier_rate, rate) * step


def slab_rate(diffusivity: Operand, thickness: Operand) -> Operand:
    """Rate at which a block closes on the heat around it, by one pair of faces; zero where no thickness is given.

    Units: diffusivity [m2/s], thickness [m]; gives [1/s].
    Source: heat_conduction.
    """
    return ratio(diffusivity * SLAB_RATE_COEFFICIENT, thickness**2)


def brick_rate(first: Operand, second: Operand, third: Operand) -> Operand:
    """Rate at which the middle of a brick closes on the heat around it: its three pairs of faces together.

    Units: first [1/s], second [1/s], third [1/s]; gives [1/s].
    Source: heat_conduction.
    """
    return first + second + third


def gap_fall(earlier_gap: Operand, later_gap: Operand) -> Operand:
    """How many times smaller a later gap to the heat around is than an earlier one; 1 where the later one is none.

    Units: earlier_gap [delta_degC], later_gap [delta_degC]; gives [1].
    Source: arithmetic.
    """
    return ratio(earlier_gap, later_gap, otherwise=1)


def measured_rate(gap_fall: Operand, elapsed: Operand) -> Operand:
    """Rate at which the middle closes on the heat around it, by a probe; zero where the gap did not fall.

    Units: gap_fall [1], elapsed [h]; gives [1/h].
    Source: arithmetic.
    """
    return ratio(natural_log(maximum(gap_fall, 1)), elapsed)


def lateness_by_shape(lag_factor: Operand) -> Operand:
    """How late the middle starts to warm, by the shape of the block: the natural logarithm of its lag factor.

    Units: lag_factor [1]; gives [1].
    Source: heat_conduction.
    """
    return natural_log(lag_factor)


def lateness_by_reading(rate: Operand, time: Operand, fall: Operand) -> Operand:
    """How late the middle starts to warm, so that its course goes through a probe reading.

    `fall` is how many times smaller than the first gap to the heat around the gap at the reading is. The natural
    logarithm of a lag factor, below zero where the middle had warmed before time began to count.
    Units: rate [1/h], time [h], fall [1]; gives [1].
    Source: arithmetic.
    """
    return rate * time - natural_log(maximum(fall, 1))


def late_gap(lateness: Operand, rate: Operand, time: Operand) -> Operand:
    """Share of the first gap to the heat around that the middle has still to close, at most 1.

    First term of a series. It takes the logarithm of the lag factor, as that cannot grow past what a cell holds.
    Units: lateness [1], rate [1/h], time [h]; gives [1].
    Source: heat_conduction.
    """
    return exponential(minimum(lateness - rate * time, 0))


def core_by_gap(surroundings: Operand, first_gap: Operand, gap: Operand) -> Operand:
    """Temperature in the middle of a block, from the first gap to the heat around it and the share still to close.

    Units: surroundings [degC], first_gap [delta_degC], gap [1]; gives [degC].
    Source: heat_conduction.
    """
    return surroundings - first_gap * gap


def warming_to_do(fall: Operand, lateness: Operand) -> Operand:
    """Rate times time until the gap to the heat around is so many times smaller than at first; zero if it is already.

    Units: fall [1], lateness [1]; gives [1].
    Source: heat_conduction.
    """
    return (fall > 1) * maximum(lateness + natural_log(maximum(fall, 1)), 0)


def time_until_close(warming: Operand, rate: Operand, otherwise: Operand) -> Operand:
    """Time until the middle is as close to the heat around it as wanted; `otherwise` where it does not warm at all.

    Units: warming [1], rate [1/h], otherwise [h]; gives [h].
    Source: heat_conduction.
    """
    return ratio(warming, rate, otherwise=otherwise)


def time_lost(hold: Operand, cooked: Operand, chamber_rate: Operand) -> Operand:
    """Time of the hold that did not count, as the middle was cooler than the chamber.

    Units: hold [min], cooked [min], chamber_rate [1]; gives [min].
    Source: arithmetic.
    """
    return hold - ratio(cooked, chamber_rate)
