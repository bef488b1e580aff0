"""Where each loan stands at the end of some month: payments made, and what is owed. Closed form, right past the plan too."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.calc.loan import balance, level_payments_made, payments_made, share_owed
from farmbook.expr.functions import all_of
from farmbook.expr.nodes import Expr
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses
from farmbook.sources import ANNUITY

__all__ = ["LoanState", "PaidLoanState"]


class LoanState(Alike):
    """A subclass says at which months, counted from the start of the plan, and over which axes."""

    rows = uses(LoanList)

    @property
    @abstractmethod
    def month(self) -> Expr:
        """The months at whose end the loans stand so."""

    def payments_made(self) -> Expr:
        """How many."""
        return payments_made(self.month - self.rows.counted_from, self.rows.months_between, self.rows.payments)

    def owed_then(self) -> Expr:
        """How much."""
        return self.runs * balance(self.rows.amount, self.rows.due_at_end, self.share_owed)

    @line("Payments made {}", unit="count")
    def made(self) -> Expr:
        """Whole intervals since payments are counted; none after the last."""
        return self.payments_made()

    @line("Level payments made {}", unit="count")
    def level_made(self) -> Expr:
        """Those after the payments of interest only."""
        return level_payments_made(self.made, self.rows.interest_payments)

    @line("Share still owed {}", unit="share", source=ANNUITY)
    def share_owed(self) -> Expr:
        """Of what level payments repay."""
        rows = self.rows
        return share_owed(
            rows.interval_rate, rows.level_payments, self.level_made, rows.last_discount, rows.equal_share
        )

    @line("Runs {}", unit="flag")
    def runs(self) -> Expr:
        """From the month in which the money comes until the last payment is made."""
        return all_of(self.month >= self.rows.drawn_in, self.made < self.rows.payments)

    @line("Owed {}", unit="money", source=ANNUITY)
    def owed(self) -> Expr:
        """Nothing before the money comes, and nothing after the last payment."""
        return self.owed_then()


class PaidLoanState(LoanState):
    """With what was paid until then."""

    @line("Paid {}, without what is due at the end", unit="money")
    def paid_level(self) -> Expr:
        """Since the start of the plan, or since the money came: interest only first, level payments then."""
        return self.made * self.rows.interest_payment + self.level_made * self.rows.level_more
