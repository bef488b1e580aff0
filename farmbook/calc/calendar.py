"""Fixed numbers of the calendar. Weeks worked a year are the farm's own and are not here."""

from __future__ import annotations

from typing import Final

from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["DAYS_IN_A_WEEK", "DAYS_IN_A_YEAR", "HOURS_IN_A_WEEK", "MONTHS_COUNTED", "MONTHS_IN_A_YEAR"]

DAYS_IN_A_WEEK: Final = Constant(
    7,
    "days_in_a_week",
    label="Days in a week",
    unit=unit("day/week"),
    source=ARITHMETIC.key,
)
HOURS_IN_A_WEEK: Final = Constant(
    168,
    "hours_in_a_week",
    label="Hours in a week",
    unit=unit("h/week"),
    source=ARITHMETIC.key,
)
MONTHS_IN_A_YEAR: Final = Constant(
    12,
    "months_in_a_year",
    label="Months in a year",
    unit=unit("month/year"),
    source=ARITHMETIC.key,
)
DAYS_IN_A_YEAR: Final = Constant(
    365,
    "days_in_a_year",
    label="Days in a year",
    unit=unit("day/year"),
    source=ARITHMETIC.key,
)
MONTHS_COUNTED: Final = Constant(
    12,
    "months_counted",
    label="Months over which a year is shared out",
    unit=unit("1"),
    source=ARITHMETIC.key,
)
