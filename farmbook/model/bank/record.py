"""What the farm has done before: past years, which the plan is held against, and the last twelve months."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import at, joined, maximum, previous, ratio, starting, total
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import PAST_MONTH, PAST_YEAR, PLAN_YEAR
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.model.months.month_sales import MonthSales
from farmbook.sections.declare import NumberInput, check, line, number, uses
from farmbook.sections.section import Section

__all__ = ["Record"]


def _past(label: str, unit: str, most: float, how: str) -> NumberInput:
    """A figure of each past year, from the farm's own records."""
    return number(
        f"Past: {label}",
        unit=unit,
        usual=(0, most),
        hard=(-100000000, 100000000),
        optional=True,
        axes=(PAST_YEAR,),
        how=how,
        decided=True,
    )


class Record(Section):
    """Left empty, nothing is known of a year: then nothing in the plan can be held against it."""

    title = "Production record"

    years = uses(PlanYears)
    month_sales = uses(MonthSales)

    covered = number(
        "Past: months that it covers",
        unit="count",
        usual=(1, 12),
        hard=(0, 12),
        default=(12, 12, 12, 0),
        axes=(PAST_YEAR,),
        how="12 for a whole year; of this year so far, the months that are over.",
        decided=True,
    )
    bags = _past("bags filled", "bag_filled", 60000, "By your own book.")
    picked = _past("weight picked", "kg_picked", 60000, "By your own book.")
    sold = _past("weight sold", "kg_sold", 60000, "By invoices and receipts.")
    sales = _past("sales", "money", 500000, "As on the tax return.")
    costs = _past(
        "costs of running the farm", "money", 500000, "As on the tax return, without interest and loss in value."
    )
    interest = _past("interest paid", "money", 30000, "By the lenders' statements.")
    worn = _past("loss in value", "money", 50000, "Depreciation, as on the tax return.")
    drawn = _past("drawn for the household", "money", 90000, "What left the farm's account for the family.")
    loan_payments = _past("loan payments", "money", 60000, "Interest and repayment together.")
    month_bags = number(
        "Past month: bags filled",
        unit="bag_filled",
        usual=(0, 6000),
        hard=(0, 1000000),
        optional=True,
        axes=(PAST_MONTH,),
        how="By your own book; 1 is the last month before the plan.",
        decided=True,
    )
    month_picked = number(
        "Past month: weight picked",
        unit="kg_picked",
        usual=(0, 6000),
        hard=(0, 10000000),
        optional=True,
        axes=(PAST_MONTH,),
        how="By your own book.",
        decided=True,
    )

    # Past years

    @line("Past: profit before tax", unit="money", axes=(PAST_YEAR,))
    def profit(self) -> Expr:
        """Sales less costs, interest and loss in value, as typed."""
        return self.sales - self.costs - self.interest - self.worn

    @line("Past: picked per bag filled", unit="kg_picked/bag_filled", axes=(PAST_YEAR,), zero_is_none=True)
    def per_bag(self) -> Expr:
        """Bags filled late in a year are picked in the next."""
        return ratio(self.picked, self.bags)

    @line("Past: average price", unit="money/kg_sold", axes=(PAST_YEAR,), zero_is_none=True)
    def price(self) -> Expr:
        """Sales over weight sold."""
        return ratio(self.sales, self.sold)

    @line("Past: most picked per bag so far", unit="kg_picked/bag_filled", axes=(PAST_YEAR,))
    def best_per_bag_so_far(self) -> Expr:
        """Up to this year."""
        return starting(0, maximum(previous(self.best_per_bag_so_far, PAST_YEAR), self.per_bag))

    @line("Past: highest price so far", unit="money/kg_sold", axes=(PAST_YEAR,))
    def best_price_so_far(self) -> Expr:
        """Up to this year."""
        return starting(0, maximum(previous(self.best_price_so_far, PAST_YEAR), self.price))

    @line("Past years in the table", unit="count")
    def many(self) -> Expr:
        """Typed or not."""
        return total(self.covered >= 0, PAST_YEAR)

    @line("Most ever picked per bag filled", unit="kg_picked/bag_filled", zero_is_none=True)
    def best_per_bag(self) -> Expr:
        """Of the years typed."""
        return at(self.best_per_bag_so_far, PAST_YEAR, self.many)

    @line("Highest average price ever reached", unit="money/kg_sold", zero_is_none=True)
    def best_price(self) -> Expr:
        """Of the years typed."""
        return at(self.best_price_so_far, PAST_YEAR, self.many)

    # The last twelve months

    @line("Past month: picked per bag filled", unit="kg_picked/bag_filled", axes=(PAST_MONTH,), zero_is_none=True)
    def month_per_bag(self) -> Expr:
        """What is picked was mostly filled in earlier months."""
        return ratio(self.month_picked, self.month_bags)

    @line("Last twelve months: bags filled", unit="bag_filled")
    def year_bags(self) -> Expr:
        """Added up."""
        return total(self.month_bags, PAST_MONTH)

    @line("Last twelve months: weight picked", unit="kg_picked")
    def year_picked(self) -> Expr:
        """Added up."""
        return total(self.month_picked, PAST_MONTH)

    # The plan beside them

    @line("Plan: bags filled in the year", unit="bag_filled", axes=(PLAN_YEAR,))
    def plan_bags(self) -> Expr:
        """Twelve months."""
        return self.years.of_year(self.month_sales.totals.filled)

    @line("Plan: weight picked in the year", unit="kg_picked", axes=(PLAN_YEAR,))
    def plan_picked(self) -> Expr:
        """Twelve months."""
        return self.years.of_year(self.month_sales.totals.picked)

    @line("Plan: weight sold in the year", unit="kg_taken", axes=(PLAN_YEAR,))
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
        return self.plan_per_bag - self.best_per_bag > self.best_per_bag * SUM_TOLERANCE

    @line("Plan: year above the highest price ever reached", unit="flag", axes=(PLAN_YEAR,))
    def price_above(self) -> Expr:
        """But for rounding."""
        best = joined(self.best_price, "money/kg_taken")
        return self.plan_price - best > best * SUM_TOLERANCE

    @line("Plan: years above the most ever picked per bag", unit="count")
    def years_above_yield(self) -> Expr:
        """None where no past year is typed."""
        return total(self.yield_above, PLAN_YEAR) * (self.best_per_bag > 0)

    @line("Plan: years above the highest price ever reached", unit="count")
    def years_above_price(self) -> Expr:
        """None where no past year is typed."""
        return total(self.price_above, PLAN_YEAR) * (self.best_price > 0)

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
                self.best_per_bag > 0,
                self.told,
                "No past year is typed: nothing here shows that the plan can be reached.",
            ),
        )

    @line("Record, in words", unit="1")
    def told(self) -> Expr:
        """Where a past year is typed."""
        return say(
            "At best ",
            figure(self.best_per_bag, 2, named=False),
            " was picked per bag, and ",
            figure(self.best_price, 2, named=False),
            " paid on average. The plan is above that yield in ",
            figure(self.years_above_yield, 0, named=False),
            " of its years, above that price in ",
            figure(self.years_above_price, 0, named=False),
            ".",
        )
