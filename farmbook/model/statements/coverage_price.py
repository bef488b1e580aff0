"""The price at which coverage of a typical year is exactly 1.00."""

from __future__ import annotations

from farmbook.calc.ratios import coverage, income_for_capacity, repayment_capacity
from farmbook.calc.tolerance import is_rounding
from farmbook.calc.worth import break_even_price
from farmbook.expr.functions import any_of, joined, maximum
from farmbook.expr.nodes import Expr
from farmbook.model.statements.coverage import Coverage
from farmbook.model.year.break_even import BreakEven
from farmbook.model.year.household import Household
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, FARM_RATIOS

__all__ = ["CoveragePrice"]


class CoveragePrice(Section):
    """Of a typical year, tax reworked at that price; in a corporation the owner's pay is a cost and income of the household."""

    title = "The price that just pays household and loans"

    year = uses(Year)
    household = uses(Household)
    even = uses(BreakEven)
    coverage = uses(Coverage)

    @line("Income after tax that just pays household and loans", unit="money")
    def after_tax(self) -> Expr:
        """Living and payments, less loss in value, interest and income from elsewhere. Below zero, a loss would do."""
        home = self.coverage.living - self.coverage.household_income
        return home + self.coverage.typical_payments - self.put_back

    @line("Typical year: loss in value and interest", unit="money")
    def put_back(self) -> Expr:
        """No money leaves for them, or it is in the payments."""
        return joined(self.year.capital.loss + self.year.loans.interest, "money")

    @line("Income from operations that just pays household and loans", unit="money")
    def wanted(self) -> Expr:
        """Before tax; a loss bears none."""
        return income_for_capacity(self.after_tax, self.household.tax_slope)

    @line("Typical year: all costs without fees on the price", unit="money")
    def costs(self) -> Expr:
        """Loss in value, interest and owner's pay with them."""
        without_fees = self.year.cost_in_money - self.year.customers.fees_in_all
        return joined(without_fees, "money") + self.coverage.typical_pay

    @line(
        "Price at which household and loans are just paid", unit="money/kg_sold", source=FARM_RATIOS, zero_is_none=True
    )
    def price(self) -> Expr:
        """On average over all customers, in a typical year: coverage is 1.00 then. No figure where no loan is paid."""
        return break_even_price(self.to_bring, self.year.customers.sold_in_all, self.even.share_kept)

    @line("Sales less fees that just pay household and loans, a year", unit="money/year")
    def to_bring(self) -> Expr:
        """Income and all costs; nothing where no price pays them."""
        return joined(maximum(self.wanted + self.costs, 0), "money/year") * self.can_be

    @line("Some income pays household and loans", unit="flag")
    def can_be(self) -> Expr:
        """Loans are paid, and what is earned is not all taxed away."""
        enough = any_of(self.after_tax <= 0, self.household.tax_slope < 1)
        return enough * (self.coverage.typical_payments > 0)

    @line("At that price: income from operations", unit="money", source=ARITHMETIC)
    def income_then(self) -> Expr:
        """Of a typical year, with what the price brings more or less than the average one, fees taken off."""
        more = (self.price - self.year.customers.average_price) * self.year.customers.sold_in_all
        return self.coverage.typical_income + joined(more * self.even.share_kept, "money")

    @line("At that price: can go to loans, the household paid", unit="money", source=ARITHMETIC)
    def capacity_then(self) -> Expr:
        """Tax worked out anew."""
        tax = maximum(self.income_then, 0) * self.household.tax_slope
        earned = self.income_then + self.put_back
        return repayment_capacity(earned, self.coverage.household_income, self.coverage.living, tax)

    @line("At that price: coverage", unit="1", source=ARITHMETIC, zero_is_none=True)
    def coverage_then(self) -> Expr:
        """1.00, or the price is wrong."""
        return coverage(self.capacity_then, self.coverage.typical_payments) * self.has_price

    @line("There is a price at which household and loans are just paid", unit="flag")
    def has_price(self) -> Expr:
        """Loans are paid, and something is sold."""
        return self.price > 0

    @check(
        "At the price that just pays household and loans, coverage is 1.00",
        kind="error",
        says="Coverage at the price that should just pay household and loans is not 1.00: a formula was changed.",
    )
    def price_proves(self) -> Expr:
        """Worked out again from the price, through tax; to nine digits of what moves."""
        return is_rounding(self.apart * self.has_price, self.costs, self.coverage.typical_payments)

    @line("At that price: can go to loans, more than is due", unit="money", source=ARITHMETIC)
    def apart(self) -> Expr:
        """Nothing, where there is such a price."""
        return self.capacity_then - self.coverage.typical_payments
