"""All loans year by year, to the end of the longest; what is owed, and when it is paid off."""

from __future__ import annotations

from farmbook.calc.loan import payments_to_come
from farmbook.expr.functions import all_of, at, previous, running_sum, starting, total, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import LOAN, LOAN_ROW, LOAN_YEAR
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.repaying.loan_months import ListedLoans
from farmbook.model.repaying.loans_then import LoansAtYear
from farmbook.model.year.loans import Loans
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section

__all__ = ["LoanYears"]


class LoanYears(Section):
    """Twelve months each, from the first month of the plan on."""

    title = "Loans year by year"

    rows = uses(LoanList)
    loans = uses(Loans)
    months = uses(PlanMonths)
    listed = uses(ListedLoans)
    then = uses(LoansAtYear)

    # Across, where each loan has its row

    @line("All loans: owed at the end of the year", unit="money", axes=(LOAN_YEAR,))
    def owed_by(self) -> Expr:
        """Of those that have come by then."""
        return total(self.then.owed * (self.rows.drawn_in <= self.then.last_month), LOAN)

    @line("All loans: to be paid after the year, without what is due at the end", unit="money", axes=(LOAN_YEAR,))
    def to_be_paid_after(self) -> Expr:
        """Those of loans to come too; fees apart."""
        rows = self.rows
        left = payments_to_come(self.then.left, rows.level_payment, rows.level_more, rows.level_payments)
        return total(left, LOAN)

    @line("All loans: payments still to come after the year", unit="count", axes=(LOAN_YEAR,))
    def payments_left(self) -> Expr:
        """How many."""
        return total(self.then.left * (self.rows.amount > 0), LOAN)

    # Down, as a table

    def falls_into(self, month: Expr) -> Expr:
        """Whether a month of each loan is one of the year."""
        return (month <= self.year * MONTHS_A_YEAR) * (month > (self.year - 1) * MONTHS_A_YEAR)

    @line("Year since the plan starts", unit="count", axes=(LOAN_ROW,))
    def year(self) -> Expr:
        """From 1."""
        return running_sum(1, LOAN_ROW)

    @line("Borrowed in this year", unit="money", axes=(LOAN_ROW,))
    def drawn(self) -> Expr:
        """Loans that come."""
        return total(self.rows.amount * self.falls_into(self.rows.drawn_in), LOAN)

    @line("All payments of all loans, without what is due at their end", unit="money")
    def to_be_paid_at_start(self) -> Expr:
        """From the start of the plan on; those of loans to come too, fees apart."""
        rows = self.rows
        return total(rows.payments * rows.interest_payment + rows.level_payments * rows.level_more, LOAN)

    @line("To be paid on loans after this year, without what is due at their end", unit="money", axes=(LOAN_ROW,))
    def to_be_paid(self) -> Expr:
        """Until all are paid off."""
        return starting(self.to_be_paid_at_start, at(self.to_be_paid_after, LOAN_YEAR, self.year))

    @line("Paid on loans in this year", unit="money", axes=(LOAN_ROW,))
    def paid(self) -> Expr:
        """Interest and repayment, balloons too; fees apart."""
        due_at_end = total(self.rows.due_at_end * self.falls_into(self.rows.ends_in), LOAN)
        return previous(self.to_be_paid, LOAN_ROW) - self.to_be_paid + due_at_end

    @line("Repaid in this year", unit="money", axes=(LOAN_ROW,))
    def repaid(self) -> Expr:
        """What is owed less."""
        return previous(self.owed, LOAN_ROW) + self.drawn - self.owed

    @line("Interest paid in this year", unit="money", axes=(LOAN_ROW,))
    def interest(self) -> Expr:
        """The rest of what is paid."""
        return self.paid - self.repaid

    @line("Owed at the end of this year", unit="money", axes=(LOAN_ROW,))
    def owed(self) -> Expr:
        """All loans together."""
        return starting(self.listed.owed_at_start, at(self.owed_by, LOAN_YEAR, self.year))

    # In words

    @line("Loans listed: to be borrowed in the plan", unit="money")
    def to_come(self) -> Expr:
        """Those with a month of the plan."""
        return total(self.rows.amount * (self.rows.drawn_in > 0), LOAN)

    @line("A loan is listed", unit="flag")
    def any_listed(self) -> Expr:
        """Of more than nothing."""
        return total(self.rows.amount > 0, LOAN) > 0

    @line("Year of the plan in which the last loan is paid off", unit="count")
    def paid_off_in(self) -> Expr:
        """Years after the plan are counted on; 0 where no loan is listed."""
        return where(self.any_listed, 1 + total(self.payments_left > 0, LOAN_YEAR), 0)

    @line("Loans to be borrowed, in words", unit="1")
    def told_come(self) -> Expr:
        """Where there are any."""
        return say(" and borrow ", figure(self.to_come, -2, named=False), " more in it")

    @line("Loans listed, in words", unit="1")
    def told_list(self) -> Expr:
        """Where there is one."""
        return say(
            "You owe ",
            figure(self.listed.owed_at_start, -2, named=False),
            " when the plan starts",
            either(self.to_come > 0, self.told_come, ""),
            ". In a full year the loans take ",
            figure(self.loans.paid, -2, named=False),
            ", of which ",
            figure(self.loans.interest, -2, named=False),
            " is interest. The last is paid off in year ",
            figure(self.paid_off_in, 0, named=False),
            " of the plan.",
        )

    @line("Loans in one sum, in words", unit="1")
    def told_sum(self) -> Expr:
        """What is owed is not known then."""
        return say(
            "The loans take ",
            figure(self.loans.paid, -2, named=False),
            " a year, of which ",
            figure(self.loans.interest, -2, named=False),
            " is interest. List them one by one on the sheet Tables to see what you owe, and until when.",
        )

    @line("Loans chosen by the list, and one is there", unit="flag")
    def by_the_list(self) -> Expr:
        """Else there is nothing to say of single loans."""
        return all_of(self.loans.listed, self.any_listed)

    @line("Loans: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(either(self.by_the_list, self.told_list, self.told_sum))

    # Whether the tables reach

    @line("Years in the table of loans", unit="count")
    def years(self) -> Expr:
        """Counted from the start of the plan."""
        return total(self.year > 0, LOAN_ROW)

    @line("Loans listed: payments after the last year of the table", unit="count")
    def left_after_all(self) -> Expr:
        """None, if the table is long enough."""
        return at(self.payments_left, LOAN_YEAR, self.years)

    @check(
        "Loans: each comes within the plan",
        kind="alert",
        says="A loan comes after the last month of the plan: its money and payments are in no month of this book.",
    )
    def comes_in_the_plan(self) -> Expr:
        """Loans that run have month 0."""
        return total((self.rows.drawn_in > self.months.many) * (self.rows.amount > 0), LOAN) <= 0

    @check(
        "Loans: the table of years reaches to the last payment",
        kind="alert",
        says="A loan is paid for longer than the forty years of the table on the sheet Loans: what is owed then is in none.",
    )
    def table_reaches(self) -> Expr:
        """To the end of the longest loan."""
        return self.left_after_all <= 0
