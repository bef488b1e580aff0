"""The years of the plan beside the best that was ever reached."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import joined, ratio, total
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import PLAN_YEAR
from farmbook.model.bank.record import Record
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.model.months.month_sales import MonthSales
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section

__all__ = ["Reached"]


class Reached(Section):
    """A plan that is better than anything yet reached must say how and why."""

    title = "The plan beside what was reached"

    record = uses(Record)
    years = uses(PlanYears)
    month_sales = uses(MonthSales)

    @line("Plan: bags filled in the year", unit="bag_filled", axes=(PLAN_YEAR,))
    def plan_bags(self) -> Expr:
        """Twelve months."""
        return self.years.of_year(self.month_sales.totals.filled)

    @line("Plan: weight picked in the year", unit="kg_picked", axes=(PLAN_YEAR,))
    def plan_picked(self) -> Expr:
        """Twelve months."""
        return self.years.of_year(self.month_sales.totals.picked)

    @line("Plan: weight taken to customers in the year", unit="kg_taken", axes=(PLAN_YEAR,))
    def plan_sold(self) -> Expr:
        """Taken to customers, what they leave unsold with it."""
        return self.years.of_year(self.month_sales.totals.sold)

    @line("Plan: sales in the year", unit="money", axes=(PLAN_YEAR,))
    def plan_sales(self) -> Expr:
        """Delivered, paid or not."""
        return self.years.of_year(self.month_sales.sales)

    @line("Plan: picked per bag filled in the year", unit="kg_picked/bag_filled", axes=(PLAN_YEAR,), zero_is_none=True)
    def plan_per_bag(self) -> Expr:
        """Bags filled late in a year are picked in the next."""
        return ratio(self.plan_picked, self.plan_bags)

    @line("Plan: average price in the year", unit="money/kg_taken", axes=(PLAN_YEAR,), zero_is_none=True)
    def plan_price(self) -> Expr:
        """Of all that is taken to customers, so it is a little low."""
        return ratio(self.plan_sales, self.plan_sold)

    @line("Plan: year above the most ever picked per bag", unit="flag", axes=(PLAN_YEAR,))
    def yield_above(self) -> Expr:
        """But for rounding."""
        return self.plan_per_bag - self.record.best_per_bag > self.record.best_per_bag * SUM_TOLERANCE

    @line("Plan: year above the highest price ever reached", unit="flag", axes=(PLAN_YEAR,))
    def price_above(self) -> Expr:
        """But for rounding."""
        best = joined(self.record.best_price, "money/kg_taken")
        return self.plan_price - best > best * SUM_TOLERANCE

    @line("Plan: years above the most ever picked per bag", unit="count")
    def years_above_yield(self) -> Expr:
        """None where no past year is typed."""
        return total(self.yield_above, PLAN_YEAR) * (self.record.best_per_bag > 0)

    @line("Plan: years above the highest price ever reached", unit="count")
    def years_above_price(self) -> Expr:
        """None where no past year is typed."""
        return total(self.price_above, PLAN_YEAR) * (self.record.best_price > 0)

    @check(
        "The plan picks no more from a bag than was ever picked",
        kind="alert",
        says="The plan picks more from a bag than any past year did: say on the sheet Basis how and why.",
    )
    def yield_reached(self) -> Expr:
        """Fine where no past year is typed."""
        return self.years_above_yield <= 0

    @check(
        "The plan's prices were reached before",
        kind="alert",
        says="The plan's average price is higher than that of any past year: say on the sheet Basis how and why.",
    )
    def price_reached(self) -> Expr:
        """Fine where no past year is typed."""
        return self.years_above_price <= 0

    @line("Record: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            either(
                self.record.best_per_bag > 0,
                self.told,
                "No past year is typed: nothing here shows that the plan can be reached.",
            ),
        )

    @line("Record, in words", unit="1")
    def told(self) -> Expr:
        """Where a past year is typed."""
        return say(
            "At best ",
            figure(self.record.best_per_bag, 2, named=False),
            " was picked per bag, and ",
            figure(self.record.best_price, 2, named=False),
            " paid on average. The plan is above that yield in ",
            figure(self.years_above_yield, 0, named=False),
            " of its years, above that price in ",
            figure(self.years_above_price, 0, named=False),
            ".",
        )
