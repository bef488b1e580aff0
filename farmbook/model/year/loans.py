"""What loans take in a typical year: as one sum, or by the list."""

from __future__ import annotations

from farmbook.calc.worth import ONE_YEAR
from farmbook.expr.functions import total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.owning.capital import LISTED, ONE_SUM
from farmbook.sections.declare import choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Loans"]


class Loans(Section):
    """All loans of the farm together."""

    title = "Loans, a year"

    rows = uses(LoanList)

    counted = choice(
        "Loan payments: one sum, or a list",
        ONE_SUM,
        LISTED,
        default=ONE_SUM,
        how="One sum, if that is all you know. By the list the book says what is owed in each month, and until when.",
        source=COMMON_PRACTICE,
    )
    payments = number(
        "Loan payments a year",
        unit="money/year",
        usual=(0, 60000),
        hard=(0, 100000000),
        default=0,
        how="Add up twelve months of all farm loans, interest and repayment together.",
        source=COMMON_PRACTICE,
    )
    interest_share = number(
        "Interest, of the loan payments",
        unit="share",
        usual=(0.1, 0.6),
        hard=(0, 1),
        default=0.3,
        how="The lender's yearly statement: interest paid, over all that was paid.",
        source=COMMON_PRACTICE,
        note="From memory: about 0.2 to 0.4 on average over a loan of seven years, more at its start.",
    )

    @line("Loans are listed", unit="flag")
    def listed(self) -> Expr:
        """As you chose."""
        return self.chose(self.counted, LISTED)

    @line("Loans listed: paid in a full year", unit="money/year")
    def listed_payments(self) -> Expr:
        """A full year of level payments of every loan of the list, those to come too, as if all ran together."""
        return total(self.rows.paid_a_year, LOAN) / ONE_YEAR

    @line("Loans listed: interest in a full year", unit="money/year")
    def listed_interest(self) -> Expr:
        """That of each loan's first year of level payments; it falls from year to year."""
        return total(self.rows.interest_a_year, LOAN) / ONE_YEAR

    @line("Loan payments counted, a year", unit="money/year")
    def paid(self) -> Expr:
        """One sum or the list, as you chose."""
        return where(self.listed, self.listed_payments, self.payments)

    @line("Interest a year", unit="money/year")
    def interest(self) -> Expr:
        """The part of the payments that is a cost."""
        return where(self.listed, self.listed_interest, self.payments * self.interest_share)

    @line("Repaid a year", unit="money/year")
    def repaid(self) -> Expr:
        """No cost: it pays for what is owned, which loses value in the books instead."""
        return self.paid - self.interest
