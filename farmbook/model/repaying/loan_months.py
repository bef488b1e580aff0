"""All loans month by month: what comes, what is paid, what is owed, and what falls due in the year after."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.calc.worth import ONE_MONTH
from farmbook.expr.functions import absolute, previous, starting, total, where
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

    title = "Loans of the list, month by month"

    rows = uses(LoanList)
    months = uses(PlanMonths)
    then = uses(LoansAtMonth)
    year_on = uses(LoansYearOn)

    # What comes and what is owed

    @line("Loans listed: owed at the start of the plan", unit="money")
    def owed_at_start(self) -> Expr:
        """Those that run."""
        return total(self.then.owed_at_start, LOAN)

    @line("Loans listed: borrowed so far, with what is owed at the start", unit="money", axes=(MONTH,))
    def borrowed(self) -> Expr:
        """To the end of the month."""
        return starting(self.owed_at_start, total(self.rows.amount * (self.rows.drawn_in <= self.months.number), LOAN))

    @line("Loans listed: come in the month", unit="money", axes=(MONTH,))
    def drawn(self) -> Expr:
        """Before fees."""
        return self.borrowed - previous(self.borrowed, MONTH)

    @line("Loans listed: fees so far", unit="money", axes=(MONTH,))
    def fees_so_far(self) -> Expr:
        """Of those that come in the plan; those of loans that run are paid long since."""
        comes = (self.rows.drawn_in > 0) * (self.rows.drawn_in <= self.months.number)
        return starting(0, total(self.rows.fees * comes, LOAN))

    @line("Loans listed: owed at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """Without interest since the last payment."""
        return starting(self.owed_at_start, total(self.then.owed, LOAN))

    # What is paid

    @line("Loans listed: paid so far", unit="money", axes=(MONTH,))
    def paid_so_far(self) -> Expr:
        """Balloons with the last payments; fees apart."""
        ended = self.rows.due_at_end * (self.then.made >= self.rows.payments)
        return starting(0, total(self.then.paid_level + ended, LOAN))

    @line("Loans listed: paid in the month", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """Interest and repayment."""
        return self.paid_so_far - previous(self.paid_so_far, MONTH)

    @line("Loans listed: interest paid in the month", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """On what was owed before."""
        return total(self.then.interest, LOAN)

    @line("Loans listed: repaid in the month", unit="money", axes=(MONTH,))
    def repaid(self) -> Expr:
        """What is owed less than before, with what has come."""
        return previous(self.owed, MONTH) + self.drawn - self.owed

    # What falls due

    @line("Loans listed: to be repaid in the first year", unit="money")
    def due_at_start(self) -> Expr:
        """Of the loans that run."""
        return total(self.then.owed_at_start - self.then.owed_after_a_year * (self.rows.drawn_in <= 0), LOAN)

    @line("Loans listed: to be repaid in the next twelve months", unit="money", axes=(MONTH,))
    def due_next(self) -> Expr:
        """After the month, of the loans that have come by then: what lenders call the current portion."""
        come = self.rows.drawn_in <= self.months.number
        return starting(self.due_at_start, total(self.then.owed - self.year_on.owed * come, LOAN))

    # Whether it adds up

    @line("Loans listed: a rounding of all that is borrowed and paid", unit="money")
    def rounding(self) -> Expr:
        """By so much the ways of counting may differ."""
        return (total(self.paid + self.drawn, MONTH) + self.owed_at_start) * SUM_TOLERANCE

    @check(
        "Loans: what is paid is interest and repayment, in every month",
        kind="error",
        says="What is paid on the loans is not their interest and what is owed less: a formula of the loans was changed.",
    )
    def adds_up(self) -> Expr:
        """Owed before, and come, less repaid, is owed at the end."""
        apart = total(self.paid - self.interest - self.repaid, MONTH)
        return absolute(apart) <= self.rounding


class LoanMonths(Section):
    """What cash and balance sheet read: the list, or the one sum in equal parts, as you chose."""

    title = "Loans month by month"

    loans = uses(Loans)
    listed = uses(ListedLoans)

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
        """Nothing where loans stand as one sum."""
        return self.listed.drawn * self.loans.listed

    @line("Loan fees paid in the month", unit="money", axes=(MONTH,))
    def fees(self) -> Expr:
        """As the money comes."""
        return (self.listed.fees_so_far - previous(self.listed.fees_so_far, MONTH)) * self.loans.listed

    @line("Loan payments in the month", unit="money", axes=(MONTH,))
    def payments(self) -> Expr:
        """Interest and repayment, balloons too; fees apart."""
        return where(self.loans.listed, self.listed.paid, self.one_payment)

    @line("Loan interest in the month", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """As it is paid; what has grown since the last payment is not in it."""
        return where(self.loans.listed, self.listed.interest, self.one_interest)

    @line("Loans repaid in the month", unit="money", axes=(MONTH,))
    def repaid(self) -> Expr:
        """The rest of the payments."""
        return where(self.loans.listed, self.listed.repaid, self.one_payment - self.one_interest)

    @line("Loans owed at the start", unit="money")
    def owed_at_start(self) -> Expr:
        """Not known, and so nothing, where loans stand as one sum."""
        return self.listed.owed_at_start * self.loans.listed

    @line("Loans owed at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """Not known, and so nothing, where loans stand as one sum."""
        return starting(self.owed_at_start, self.listed.owed * self.loans.listed)

    @line("Loans to be repaid in the first year", unit="money")
    def due_at_start(self) -> Expr:
        """Of what is owed at the start."""
        return self.listed.due_at_start * self.loans.listed

    @line("Loans to be repaid in the next twelve months", unit="money", axes=(MONTH,))
    def due_next(self) -> Expr:
        """Of what is owed at the end of the month: the current portion."""
        return starting(self.due_at_start, self.listed.due_next * self.loans.listed)
