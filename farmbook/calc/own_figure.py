"""A grower's own figure beside the worked one."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["FAR_FROM_WORKED", "difference_from_worked"]

FAR_FROM_WORKED: Final = Constant(
    0.25,
    "far_from_worked",
    label="Difference at which an own figure and the worked one should be looked at",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
)


def difference_from_worked(figure: Operand, worked: Operand) -> Operand:
    """How far a figure lies above the worked one (below it: negative), as a share of that; zero where that is zero.

    Units: figure [kWh], worked [kWh]; gives [share].
    Source: arithmetic.
    """
    return ratio(figure - worked, worked)
