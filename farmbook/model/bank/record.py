"""What the farm has done before: past years, and the last twelve months."""

from __future__ import annotations

from farmbook.expr.functions import at, maximum, previous, ratio, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import PAST_MONTH, PAST_YEAR
from farmbook.sections.declare import NumberInput, line, number
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
