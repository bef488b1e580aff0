"""Where each loan stands at the end of some month: payments left, and what is owed. Closed form, right past the plan too."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.calc.loan import balance, payments_left, worth_of_payments
from farmbook.expr.functions import minimum
from farmbook.expr.nodes import Expr
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses
from farmbook.sources import ANNUITY

__all__ = ["LoanState"]


class LoanState(Alike):
    """A subclass says at which months, counted from the start of the plan, and over which axes.

    A loan that is still to come counts as owed in full: whoever adds up says which have come, by the month.
    """

    rows = uses(LoanList)

    @property
    @abstractmethod
    def month(self) -> Expr:
        """The months at whose end the loans stand so."""

    def payments_left(self) -> Expr:
        """How many."""
        return payments_left(self.month - self.rows.counted_from, self.rows.months_between, self.rows.payments)

    def owed_then(self) -> Expr:
        """How much."""
        rows = self.rows
        level_left = minimum(rows.level_payments, self.left)
        worth_left = worth_of_payments(rows.repaying_payment, rows.interval_rate, level_left)
        return balance(worth_left, rows.due_at_end, self.left)

    @line("Payments left {}", unit="count")
    def left(self) -> Expr:
        """All less those made: whole intervals since payments are counted."""
        return self.payments_left()

    @line("Owed, or to be borrowed, {}", unit="money", source=ANNUITY)
    def owed(self) -> Expr:
        """What the payments left repay; nothing after the last."""
        return self.owed_then()
