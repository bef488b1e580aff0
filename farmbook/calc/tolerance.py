"""How far two ways of working out the same amount may differ before a check speaks."""

from __future__ import annotations

from typing import Final

from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["SUM_TOLERANCE"]

SUM_TOLERANCE: Final = Constant(
    1e-9,
    "sum_tolerance",
    label="Allowed rounding, as a share of the amount",
    unit=unit("1"),
    source=ARITHMETIC.key,
    note="Computers carry some fifteen digits; sums that should be equal agree to about twelve.",
)
