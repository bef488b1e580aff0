"""How large a loan a typical year bears at the coverage that is wanted, and how it stands without any."""

from __future__ import annotations

from farmbook.calc.ratios import coverage, repayment_capacity
from farmbook.expr.functions import maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.bank.covenants import Covenants
from farmbook.model.bank.request import Request
from farmbook.model.statements.coverage import Coverage
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_RATIOS

__all__ = ["LargestLoan"]


class LargestLoan(Section):
    """On the terms of the loan asked for, all other payments as they are; tax as with the loan asked for."""

    title = "The largest loan"

    request = uses(Request)
    covenants = uses(Covenants)
    typical = uses(Coverage)

    @line("Typical year: payments of all other loans", unit="money")
    def others(self) -> Expr:
        """Those of the loan asked for taken off, where loans are listed."""
        return self.typical.typical_payments - self.request.paid_a_year * self.request.loans.listed

    @line("Payments a year that the loan may take", unit="money", source=FARM_RATIOS)
    def room(self) -> Expr:
        """What can go to loans over the coverage wanted, less all other payments; nothing at worst."""
        can_go = ratio(self.typical.typical_capacity, self.covenants.wanted_coverage)
        return maximum(can_go - self.others, 0)

    @line("Paid a year for each 1 borrowed", unit="1")
    def for_each(self) -> Expr:
        """At the rate and term of the loan asked for, a balloon in proportion."""
        return ratio(self.request.paid_a_year, self.request.amount)

    @line("Largest loan at the coverage wanted", unit="money", source=FARM_RATIOS)
    def largest(self) -> Expr:
        """In a typical year, on the terms of the loan asked for."""
        return ratio(self.room, self.for_each)

    @line("Typical year without the loan: tax", unit="money")
    def tax_without(self) -> Expr:
        """Its interest is no cost then."""
        saved = self.request.interest_a_year * self.request.loans.listed
        return maximum(self.typical.typical_income + saved, 0) * self.typical.book.home.household.tax_slope

    @line("Typical year without the loan: can go to loans, the household paid", unit="money", source=FARM_RATIOS)
    def capacity_without(self) -> Expr:
        """Only interest and tax differ."""
        typical = self.typical
        return repayment_capacity(typical.typical_earned, typical.household_income, typical.living, self.tax_without)

    @line(
        "Typical year without the loan: coverage, the household paid", unit="1", source=FARM_RATIOS, zero_is_none=True
    )
    def coverage_without(self) -> Expr:
        """No figure where no other loan is paid."""
        return coverage(self.capacity_without, self.others)
