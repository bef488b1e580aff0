"""How far two ways of working out the same amount may differ before a check speaks."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, absolute
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["SUM_TOLERANCE", "is_rounding"]

SUM_TOLERANCE: Final = Constant(
    1e-9,
    "sum_tolerance",
    label="Allowed rounding, as a share of the amount",
    unit=unit("1"),
    source=ARITHMETIC.key,
    note="Computers carry some fifteen digits; sums that should be equal agree to about twelve.",
)


def is_rounding(difference: Operand, part: Operand, other_part: Operand) -> Operand:
    """1 where two ways of working out an amount differ by no more than rounding of what the amount is made of.

    The parts count by their size: a cost below zero, or parts that cancel to nothing, are no fault of the sum.

    Units: difference [money], part [money], other_part [money]; gives [flag].
    Source: arithmetic.
    """
    allowed = SUM_TOLERANCE * (absolute(part) + absolute(other_part))
    return absolute(difference) <= allowed  # type: ignore[return-value]  # flags, of numbers and arrays alike
