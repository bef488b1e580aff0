"""Current drawn by a steam generator, and what its peak adds to the demand charge."""

from __future__ import annotations

from math import sqrt
from typing import Final

from farmbook.expr.functions import Operand, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC, NATIONAL_ELECTRICAL_CODE
from farmbook.units import unit

__all__ = [
    "CONTINUOUS_LOAD_FACTOR",
    "SQUARE_ROOT_OF_THREE",
    "continuous_current",
    "demand_charge_per_run",
    "single_phase_current",
    "three_phase_current",
]

SQUARE_ROOT_OF_THREE: Final = Constant(
    sqrt(3),
    "square_root_of_three",
    label="Square root of three, for three-phase supply",
    unit=unit("1"),
    source=ARITHMETIC.key,
)
CONTINUOUS_LOAD_FACTOR: Final = Constant(
    1.25,
    "continuous_load_factor",
    label="Circuit size over current, for a load of three hours or more",
    unit=unit("1"),
    source=NATIONAL_ELECTRICAL_CODE.key,
    note="An electrician decides; other countries have other rules.",
)


def single_phase_current(power: Operand, voltage: Operand) -> Operand:
    """Current of a heating load on single phase.

    Units: power [W], voltage [V]; gives [A].
    Source: arithmetic.
    """
    return ratio(power, voltage)


def three_phase_current(power: Operand, voltage: Operand) -> Operand:
    """Current in each line of a balanced heating load on three phases; the voltage is that between lines.

    Units: power [W], voltage [V]; gives [A].
    Source: arithmetic.
    """
    return ratio(power, SQUARE_ROOT_OF_THREE * voltage)


def continuous_current(current: Operand) -> Operand:
    """Current that the circuit must be sized for, as steam loads last three hours and more.

    Units: current [A]; gives [A].
    Source: national_electrical_code.
    """
    return current * CONTINUOUS_LOAD_FACTOR


def demand_charge_per_run(added_peak: Operand, demand_charge: Operand, runs: Operand) -> Operand:
    """Each load's part of what the added peak costs; the peak is charged once a month, however many loads there are.

    Units: added_peak [kW], demand_charge [money/kW/month], runs [run/month]; gives [money/run].
    Source: arithmetic.
    """
    return ratio(added_peak * demand_charge, runs)
