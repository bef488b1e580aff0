"""The years of the plan, twelve months each from its first one, and what a line by month comes to in each."""

from __future__ import annotations

from farmbook.expr.functions import at, running_sum, total
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import MONTH, PLAN_YEAR
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["PlanYears"]


class PlanYears(Section):
    """A year of the plan begins with the month that the plan begins with."""

    title = "Years of the plan"

    months = uses(PlanMonths)

    @line("Year of the plan, counted", unit="count", axes=(PLAN_YEAR,))
    def number(self) -> Expr:
        """From 1."""
        return running_sum(1, PLAN_YEAR)

    @line("Last month of the year of the plan", unit="count", axes=(PLAN_YEAR,))
    def last_month(self) -> Expr:
        """Twelve months a year."""
        return self.number * MONTHS_A_YEAR

    def of_year(self, monthly: Line) -> Expr:
        """What comes in or goes out month by month, added up over each year."""
        return total(monthly * (self.months.year >= self.number) * (self.months.year <= self.number), MONTH)

    def in_the_year(self, yearly: Line, year: Expr) -> Expr:
        """A line by year as it stands in one of them: a sum, as some programs find no place in a list of a single year."""
        return total(yearly * (self.number <= year) * (self.number >= year), PLAN_YEAR)

    def at_end(self, monthly: Line) -> Expr:
        """What stands at the end of each month, as it stands at the end of each year."""
        return at(monthly, MONTH, self.last_month)
