"""The months of the plan, and how many rows of weeks have passed at the end of each."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import (
    calendar_month,
    month_start,
    running_sum,
    total,
    whole_down,
    whole_up,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import MONTH, WEEKS_BEFORE
from farmbook.model.calendar.plan_start import ONE_WEEK, PlanStart
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["MONTHS_A_YEAR", "PlanMonths"]

MONTHS_A_YEAR: Final = Constant(
    12, "months_of_a_year", label="Months of a plan's year", unit=unit("1"), source=ARITHMETIC.key
)
ROWS_TO_WEEK_1: Final = Constant(
    WEEKS_BEFORE, "rows_to_week_1", label="Rows of weeks before week 1", unit=unit("1"), source=ARITHMETIC.key
)


class PlanMonths(Section):
    """Month 1 holds the first day of the plan. A month gets its weeks' totals by the days that it has of them."""

    title = "Months of the plan"

    start = uses(PlanStart)

    @line("Month of the plan", unit="count", axes=(MONTH,))
    def number(self) -> Expr:
        """From 1."""
        return running_sum(1, MONTH)

    @line("Months in the plan", unit="count")
    def many(self) -> Expr:
        """Whole years; set in the scenario file."""
        return total(self.number > 0, MONTH)

    @line("First day of the month", unit="date", axes=(MONTH,))
    def first_day(self) -> Expr:
        """By the calendar."""
        return month_start(self.start.first_of_month, self.number - 1)

    @line("First day after the month", unit="date", axes=(MONTH,))
    def next_first_day(self) -> Expr:
        """The first of the next one."""
        return month_start(self.start.first_of_month, self.number)

    @line("First day after the plan", unit="date")
    def end(self) -> Expr:
        """After its last month."""
        return month_start(self.start.first_of_month, self.many)

    @line("Days in the month", unit="day", axes=(MONTH,))
    def days(self) -> Expr:
        """By the calendar, leap years too."""
        return self.next_first_day - self.first_day

    @line("Month of the calendar", unit="count", axes=(MONTH,))
    def month_of_year(self) -> Expr:
        """1 for January."""
        return calendar_month(self.first_day)

    @line("Year of the plan", unit="count", axes=(MONTH,))
    def year(self) -> Expr:
        """Twelve months each, from month 1."""
        return whole_up(self.number / MONTHS_A_YEAR)

    @line("First month of a year of the plan", unit="flag", axes=(MONTH,))
    def begins_year(self) -> Expr:
        """Yearly sums begin anew."""
        return self.number <= (self.year - 1) * MONTHS_A_YEAR + 1

    @line("Weeks in the month", unit="count", axes=(MONTH,), source=ARITHMETIC)
    def weeks(self) -> Expr:
        """Its days over seven."""
        return self.days / ONE_WEEK

    # Weeks to months

    @line("Rows of weeks passed before the plan", unit="count")
    def rows_before(self) -> Expr:
        """With the days of week 1 that fall before the first month."""
        return (self.start.first_of_month - self.start.first_monday) / ONE_WEEK + ROWS_TO_WEEK_1

    @line("Whole rows passed before the plan", unit="count")
    def passed(self) -> Expr:
        """At or below."""
        return whole_down(self.rows_before)

    @line("Part of a row passed before the plan", unit="share")
    def begun(self) -> Expr:
        """The rest of it."""
        return self.rows_before - self.passed

    @line("Rows of weeks passed at the end of the month", unit="count", axes=(MONTH,))
    def rows(self) -> Expr:
        """Whole ones, and the days of the one that goes on into the next month."""
        return (self.next_first_day - self.start.first_monday) / ONE_WEEK + ROWS_TO_WEEK_1

    @line("Whole rows passed at the end of the month", unit="count", axes=(MONTH,))
    def whole(self) -> Expr:
        """At or below."""
        return whole_down(self.rows)

    @line("Part of a row passed at the end of the month", unit="share", axes=(MONTH,))
    def part(self) -> Expr:
        """The rest of it."""
        return self.rows - self.whole
