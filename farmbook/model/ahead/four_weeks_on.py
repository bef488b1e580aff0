"""Cash four weeks from this week on, for whoever keeps the money; it is on no card."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import at, calendar_month, calendar_year, maximum, minimum
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.ahead.this_week import ThisWeek
from farmbook.model.axes import MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR
from farmbook.model.months.month_cash import MonthCash
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["FourWeeksOn"]

FOUR_WEEKS: Final = Constant(28, "four_weeks", label="Four weeks", unit=unit("day"), source="arithmetic")


class FourWeeksOn(Section):
    """At the end of the month into which that day falls."""

    title = "Cash four weeks on"

    week = uses(ThisWeek)
    cash = uses(MonthCash)

    @line("Four weeks on: day", unit="date")
    def day(self) -> Expr:
        """From this Monday."""
        return self.week.monday + FOUR_WEEKS

    @line("Four weeks on: months of the calendar, counted", unit="count")
    def months_counted(self) -> Expr:
        """Years and months in one number."""
        return calendar_year(self.day) * MONTHS_A_YEAR + calendar_month(self.day)

    @line("First month of the plan, counted", unit="count")
    def first_counted(self) -> Expr:
        """Years and months in one number."""
        start = self.cash.months.start.first_of_month
        return calendar_year(start) * MONTHS_A_YEAR + calendar_month(start)

    @line("Four weeks on: month of the plan", unit="count")
    def month(self) -> Expr:
        """Kept within the plan."""
        return maximum(minimum(self.months_counted - self.first_counted + 1, self.cash.months.many), 1)

    @line("Four weeks on: cash at the end of that month", unit="money")
    def closing(self) -> Expr:
        """With the credit line."""
        return at(self.cash.closing, MONTH, self.month)
