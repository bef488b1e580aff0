"""Comparing two ways of doing a thing, when what they rest on is known only so well."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, absolute, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["INPUTS_KNOWN_TO", "difference_over_larger"]

INPUTS_KNOWN_TO: Final = Constant(
    0.10,
    "inputs_known_to",
    label="How well the inputs of a comparison are known: a smaller difference is too close to call",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="Own choice of this book.",
)


def difference_over_larger(difference: Operand, larger: Operand) -> Operand:
    """How far two amounts lie apart, over the larger of them; zero where both are zero.

    Units: difference [money], larger [money]; gives [share].
    Source: arithmetic.
    """
    return ratio(absolute(difference), larger)
