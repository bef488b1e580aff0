"""All loans month by month: what comes, what is paid, what is owed, and what falls due in the year after."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.loan import payment_that_leaves
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.calc.worth import ONE_MONTH
from farmbook.expr.functions import absolute, maximum, previous, starting, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN, MONTH
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.repaying.loans_then import LoansAtMonth, LoansYearOn
from farmbook.model.year.loans import Loans
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section

__all__ = ["ListedLoans", "LoanMonths"]


class ListedLoans(Section):
    """The loans of the list, added up, whether or not the plan goes by the list."""

    title = "Loans of the list"

    rows = uses(LoanList)
    then = uses(LoansAtMonth)

    @line("Loans listed: owed at the start of the plan", unit="money")
    def owed_at_start(self) -> Expr:
        """Those that run."""
        return total(self.rows.amount * (self.rows.drawn_in <= 0), LOAN)

    @line("Loans listed: to be repaid in the first year", unit="money")
    def due_at_start(self) -> Expr:
        """Of the loans that run; no less than nothing, which rounding may fall short of."""
        repaid = self.rows.amount - self.then.owed_after_a_year
        return maximum(total(repaid * (self.rows.drawn_in <= 0), LOAN), 0)

    @line("Loans listed: paid in the month", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """Interest and repayment, balloons with the last payments; fees apart."""
        rows, left = self.rows, self.then.left
        paid = payment_that_leaves(left, rows.interest_payment, rows.level_more, rows.due_at_end, rows.level_payments)
        return total((previous(left, MONTH) - left) * paid, LOAN)


class LoanMonths(Section):
    """What cash and balance sheet read: the list, or the one sum in equal parts, as you chose."""

    title = "Loans month by month"

    rows = uses(LoanList)
    months = uses(PlanMonths)
    then = uses(LoansAtMonth)
    year_on = uses(LoansYearOn)
    loans = uses(Loans)
    listed = uses(ListedLoans)

    def comes(self) -> Expr:
        """Which loans come in the month: those of a part of a month, which a check names, in the one that it ends in."""
        return (self.rows.drawn_in <= self.months.number) * (self.rows.drawn_in > self.months.number - 1)

    def has_come(self) -> Expr:
        """Which loans have come by the end of the month."""
        return self.rows.drawn_in <= self.months.number

    @line("One sum of loan payments, a month", unit="money")
    def one_payment(self) -> Expr:
        """A twelfth of the year."""
        return self.loans.payments / MONTHS_IN_A_YEAR * ONE_MONTH

    @line("Interest in one sum of loan payments, a month", unit="money")
    def one_interest(self) -> Expr:
        """Its share."""
        return self.one_payment * self.loans.interest_share

    @line("Loan money that comes in the month", unit="money", axes=(MONTH,))
    def drawn(self) -> Expr:
        """Before fees; nothing where loans stand as one sum."""
        return total(self.rows.amount * self.comes(), LOAN) * self.loans.listed

    @line("Loan fees paid in the month", unit="money", axes=(MONTH,))
    def fees(self) -> Expr:
        """As the money comes; those of loans that run are paid long since."""
        return total(self.rows.fees * self.comes(), LOAN) * self.loans.listed

    @line("Loan payments in the month", unit="money", axes=(MONTH,))
    def payments(self) -> Expr:
        """Interest and repayment, balloons too; fees apart."""
        return where(self.loans.listed, self.listed.paid, self.one_payment)

    @line("Loan interest in the month", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """On what was owed before, where a payment falls into the month; what has grown since is not in it."""
        made = previous(self.then.left, MONTH) - self.then.left
        paid = total(previous(self.then.owed, MONTH) * self.rows.interval_rate * made, LOAN)
        return where(self.loans.listed, paid, self.one_interest)

    @line("Loans repaid in the month", unit="money", axes=(MONTH,))
    def repaid(self) -> Expr:
        """What is owed less than before, with what has come."""
        less = previous(self.owed, MONTH) + self.drawn - self.owed
        return where(self.loans.listed, less, self.one_payment - self.one_interest)

    @line("Loans owed at the start", unit="money")
    def owed_at_start(self) -> Expr:
        """Not known, and so nothing, where loans stand as one sum."""
        return self.listed.owed_at_start * self.loans.listed

    @line("Loans owed at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """Without interest since the last payment. Not known, and so nothing, where loans stand as one sum."""
        return starting(self.owed_at_start, total(self.then.owed * self.has_come(), LOAN) * self.loans.listed)

    @line("Loans to be repaid in the first year", unit="money")
    def due_at_start(self) -> Expr:
        """Of what is owed at the start."""
        return self.listed.due_at_start * self.loans.listed

    @line("Loans to be repaid in the next twelve months", unit="money", axes=(MONTH,))
    def due_next(self) -> Expr:
        """After the month, of the loans that have come by then: what lenders call the current portion."""
        due = total((self.then.owed - self.year_on.owed) * self.has_come(), LOAN)
        return starting(self.due_at_start, due * self.loans.listed)

    # Whether it adds up

    @line("Loans: a rounding of all that is borrowed and paid", unit="money")
    def rounding(self) -> Expr:
        """By so much the ways of counting may differ."""
        return (total(self.payments + self.drawn, MONTH) + self.owed_at_start) * SUM_TOLERANCE

    @check(
        "Loans: what is paid is interest and repayment, in every month",
        kind="error",
        says="What is paid on the loans is not their interest and what is owed less: a formula of the loans was changed.",
    )
    def adds_up(self) -> Expr:
        """Owed before, and come, less repaid, is owed at the end."""
        apart = total(self.payments - self.interest - self.repaid, MONTH)
        return absolute(apart) <= self.rounding
