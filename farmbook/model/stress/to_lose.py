"""Income of a typical year that may be lost before its loans are covered no better than they have to be."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.calc.ratios import income_for_capacity
from farmbook.expr.functions import all_of
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.statements.coverage import Coverage
from farmbook.model.statements.coverage_price import CoveragePrice
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.model.year.household import Household
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses
from farmbook.sources import FARM_RATIOS

__all__ = ["ToLose", "ToLoseOfAsked", "ToLoseOfOne"]


class ToLose(Alike):
    """With coverage before the credit line and after the household; tax is worked out anew."""

    coverage = uses(Coverage)
    price = uses(CoveragePrice)
    household = uses(Household)

    @abstractmethod
    def wanted(self) -> Expr:
        """The coverage."""

    @line("Payments, as often as wanted, coverage {}", unit="money")
    def needed(self) -> Expr:
        """What can go to loans then."""
        return self.coverage.typical_payments * self.wanted()

    @line("Income after tax at which that is there, coverage {}", unit="money")
    def after_tax(self) -> Expr:
        """Living and payments, less loss in value, interest and income from elsewhere."""
        home = self.coverage.living - self.coverage.household_income
        return home + self.needed - self.price.put_back

    @line("Income from operations at which that is there, coverage {}", unit="money", source=FARM_RATIOS)
    def income(self) -> Expr:
        """Before tax; a loss bears none."""
        return income_for_capacity(self.after_tax, self.household.tax_slope)

    @line("Income that may be lost, coverage {}", unit="money")
    def room(self) -> Expr:
        """From that of a typical year down to it."""
        return self.coverage.typical_income - self.income

    @line("Loans are paid, and covered so well as planned, coverage {}", unit="flag")
    def now(self) -> Expr:
        """Else nothing may be lost."""
        covered = self.coverage.typical_capacity >= self.needed
        return all_of(self.coverage.typical_payments > 0, covered)


class ToLoseOfAsked(ToLose, words="as a lender wants"):
    """The one typed."""

    title = "Down to the coverage that a lender wants"

    sizes = uses(StressSizes)

    def wanted(self) -> Expr:
        """As typed."""
        return 0 + self.sizes.covenant


class ToLoseOfOne(ToLose, words="1.00"):
    """Loans are just paid."""

    title = "Down to a coverage of 1.00"

    def wanted(self) -> Expr:
        """Nothing is left."""
        return wrap(1)
