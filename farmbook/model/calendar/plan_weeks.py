"""The weeks of the plan, with those before it that carry what is in process and those after it for what is started ahead."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import all_of, at, calendar_month, running_sum, starting, total
from farmbook.expr.nodes import Constant, Expr, Line
from farmbook.model.axes import WEEK, WEEKS_AFTER, WEEKS_BEFORE
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.calendar.plan_start import ONE_WEEK, PlanStart
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["ROWS_AFTER", "ROWS_BEFORE", "TO_THURSDAY", "PlanWeeks"]

ROWS_BEFORE: Final = Constant(
    WEEKS_BEFORE, "weeks_before_the_plan", label="Weeks that stand before the plan", unit=unit("1"),
    source=ARITHMETIC.key, note="No bag is in process for longer; a check says so.",
)  # fmt: skip
ROWS_AFTER: Final = Constant(
    WEEKS_AFTER, "weeks_after_the_plan", label="Weeks that stand after the plan", unit=unit("1"),
    source=ARITHMETIC.key, note="Nothing is started further ahead; a check says so.",
)  # fmt: skip
TO_THURSDAY: Final = Constant(
    3, "days_to_thursday", label="Days from Monday to Thursday", unit=unit("day"), source=ARITHMETIC.key,
    note="A week belongs to the month that holds most of its days.",
)  # fmt: skip


class PlanWeeks(Section):
    """Week 1 begins on the Monday on or before the first of the first month."""

    title = "Weeks of the plan"

    start = uses(PlanStart)
    months = uses(PlanMonths)

    @line("Row of the week", unit="count", axes=(WEEK,))
    def row(self) -> Expr:
        """Counted from the first week that the book has, half a year before the plan."""
        return running_sum(1, WEEK)

    @line("Rows of weeks", unit="count")
    def rows(self) -> Expr:
        """With those before and after the plan."""
        return total(self.row > 0, WEEK)

    @line("Week of the plan", unit="count", axes=(WEEK,))
    def number(self) -> Expr:
        """Week 0 and those before it are past when the plan starts."""
        return self.row - ROWS_BEFORE

    @line("Monday", unit="date", axes=(WEEK,))
    def monday(self) -> Expr:
        """Seven days after the one before."""
        return self.start.first_monday + (self.number - 1) * ONE_WEEK

    @line("Month of the calendar that holds most of the week", unit="count", axes=(WEEK,))
    def month_of_year(self) -> Expr:
        """That of its Thursday, 1 to 12."""
        return calendar_month(self.monday + TO_THURSDAY)

    @line("Week is in the plan", unit="flag", axes=(WEEK,))
    def in_plan(self) -> Expr:
        """From week 1 to the last that begins before the plan ends."""
        return all_of(self.number >= 1, self.monday < self.months.end)

    def counted_on(self, weekly: Expr) -> Expr:
        """A weekly amount so far, added up over all weeks: what comes in a week counts in it and in every later one."""
        return total(weekly * (self.rows + 1 - self.row), WEEK)

    def come(self, weekly: Line, *, whole: Expr, part: Expr) -> Expr:
        """What a weekly amount has come to after so many whole rows, and part of the next."""
        return total(weekly * (self.row <= whole), WEEK) + at(weekly, WEEK, whole + 1) * part

    def to_date(self, weekly: Line) -> Expr:
        """What a weekly amount has come to at the end of each month, and before the first."""
        before = self.come(weekly, whole=self.months.passed, part=self.months.begun)
        return starting(before, self.come(weekly, whole=self.months.whole, part=self.months.part))
