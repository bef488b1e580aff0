"""What loans take in a year, as one sum."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.sections.declare import line, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Loans"]


class Loans(Section):
    """All loans of the farm together."""

    title = "Loans, a year"
    table = "loan"

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

    @line("Interest a year", unit="money/year")
    def interest(self) -> Expr:
        """The part of the payments that is a cost."""
        return self.payments * self.interest_share

    @line("Repaid a year", unit="money/year")
    def repaid(self) -> Expr:
        """No cost: it pays for what is owned, which loses value in the books instead."""
        return self.payments - self.interest
