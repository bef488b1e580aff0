"""Interest that has grown on each loan since its last payment and is not yet paid."""

from __future__ import annotations

from farmbook.expr.functions import maximum, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN, MONTH
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.repaying.loan_months import LoanMonths
from farmbook.model.repaying.loans_then import LoansAtMonth
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["Accrued"]


class Accrued(Section):
    """What is owed, times its interest of a month, times the months since the last payment. Monthly loans have none."""

    title = "Interest since the last payment"

    months = uses(PlanMonths)
    rows = uses(LoanList)
    then = uses(LoansAtMonth)
    loans = uses(LoanMonths)

    @line("Interest of a month", unit="share", axes=(LOAN,))
    def rate_a_month(self) -> Expr:
        """That from payment to payment, over its months."""
        return self.rows.interval_rate / self.rows.months_between

    @line("Loans listed: interest grown before the plan", unit="money")
    def at_start(self) -> Expr:
        """Of those that run: payments are counted from a month before the plan."""
        grown = self.rows.amount * self.rate_a_month * (0 - self.rows.counted_from)
        return maximum(total(grown * (self.rows.drawn_in <= 0), LOAN), 0) * self.loans.loans.listed

    @line("Interest of whole intervals, for all payments left", unit="money", axes=(MONTH,))
    def whole_intervals(self) -> Expr:
        """As if each were due on what is owed now."""
        come = self.rows.drawn_in <= self.months.number
        return total(self.then.owed * self.rows.interval_rate * self.then.left * come, LOAN)

    @line("Interest of the months until the last payments", unit="money", axes=(MONTH,))
    def months_to_go(self) -> Expr:
        """On what is owed now. What it falls short of whole intervals has grown already."""
        to_go = (self.rows.ends_in - self.months.number) * (self.rows.drawn_in <= self.months.number)
        return total(self.then.owed * self.rate_a_month * to_go, LOAN)

    @line("Interest grown since the last payments of loans", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """Owed at the end of the month, and paid with the next payment."""
        grown = maximum(self.whole_intervals - self.months_to_go, 0)
        return starting(self.at_start, grown * self.loans.loans.listed)
