"""What stands in a room on average."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.expr.functions import Operand

__all__ = ["standing"]


def standing(entering: Operand, days: Operand) -> Operand:
    """What stands somewhere on average: what comes in over a time, times the time it stays.

    Units: entering [run/week], days [day]; gives [run].
    Source: little_2008.
    """
    present: Operand = entering * (days / DAYS_IN_A_WEEK)
    return present
