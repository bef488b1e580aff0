"""The day the plan starts on, and the Monday of its first week."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum, minimum, month_start, whole_down
from farmbook.expr.nodes import Constant, Expr
from farmbook.sections.declare import line, number
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["ONE_WEEK", "PlanStart"]

EARLIEST_DAY: Final = Constant(
    36526, "earliest_day", label="Earliest day of a plan", unit=unit("date"), source=ARITHMETIC.key,
    note="1 January 2000; far enough from where spreadsheets disagree on dates.",
)  # fmt: skip
LATEST_DAY: Final = Constant(
    73050, "latest_day", label="Latest day of a plan", unit=unit("date"), source=ARITHMETIC.key,
    note="31 December 2099.",
)  # fmt: skip
A_MONDAY: Final = Constant(
    2, "a_monday", label="A Monday from which weeks are counted", unit=unit("date"), source=ARITHMETIC.key,
    note="Day 2 of spreadsheets; every seventh day after it is a Monday.",
)  # fmt: skip
ONE_WEEK: Final = Constant(7, "one_week", label="One week", unit=unit("day"), source=ARITHMETIC.key)


class PlanStart(Section):
    """One date, from which all others follow."""

    title = "When the plan starts"
    table = "plan"

    start = number(
        "First day of the plan",
        unit="date",
        usual=(43831, 54788),
        hard=(36526, 73050),
        default=46388,
        how="Any day of its first month, year-month-day: month 1 is the month that holds it.",
        decided=True,
    )

    @line("First day of the plan, counted", unit="date")
    def day(self) -> Expr:
        """Between 2000 and 2099, whatever is typed."""
        return maximum(minimum(self.start, LATEST_DAY), EARLIEST_DAY)

    @line("First of the first month", unit="date")
    def first_of_month(self) -> Expr:
        """Months are those of the calendar."""
        return month_start(self.day, 0)

    @line("Whole weeks from a Monday long ago to the first month", unit="count")
    def weeks_before(self) -> Expr:
        """Counted so that no program's own weekday is needed."""
        return whole_down((self.first_of_month - A_MONDAY) / ONE_WEEK)

    @line("Monday of week 1", unit="date")
    def first_monday(self) -> Expr:
        """On or before the first of the first month."""
        return A_MONDAY + self.weeks_before * ONE_WEEK
