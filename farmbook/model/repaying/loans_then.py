"""Each loan at the end of each month of the plan, a year after each, and at the end of each year until all are paid."""

from __future__ import annotations

from farmbook.expr.functions import at, named, previous, running_sum, starting, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN, LOAN_YEAR, MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.repaying.loan_state import LoanState, PaidLoanState
from farmbook.sections.declare import line, uses
from farmbook.sources import ANNUITY

__all__ = ["LoansAtMonth", "LoansAtYear", "LoansYearOn"]

BY_MONTH = (LOAN, MONTH)


class LoansAtMonth(PaidLoanState, words="at the end of the month", axes=BY_MONTH):
    """The months of the plan; before them stands how the loans are at its start."""

    title = "Each loan at the end of each month"

    months = uses(PlanMonths)

    @property
    def month(self) -> Expr:
        """The month itself."""
        return self.months.number

    @line("Payments made at the end of the month", unit="count", axes=BY_MONTH)
    def made(self) -> Expr:
        """Whole intervals since payments are counted; none after the last."""
        return starting(0, self.payments_made())

    @line("Owed at the start of the plan, by loan", unit="money", axes=(LOAN,))
    def owed_at_start(self) -> Expr:
        """Loans that run."""
        return where(self.rows.drawn_in > 0, 0, self.rows.amount)

    @line("Owed at the end of the month", unit="money", axes=BY_MONTH, source=ANNUITY)
    def owed(self) -> Expr:
        """Nothing before the money comes, and nothing after the last payment."""
        return starting(self.owed_at_start, self.owed_then())

    @line("Interest paid in the month, by loan", unit="money", axes=BY_MONTH)
    def interest(self) -> Expr:
        """On what was owed before, where a payment falls into the month."""
        paid = self.made - previous(self.made, MONTH)
        return previous(self.owed, MONTH) * self.rows.interval_rate * paid

    @line("Owed after the first year of the plan, by loan", unit="money", axes=(LOAN,))
    def owed_after_a_year(self) -> Expr:
        """At the end of month 12."""
        return at(self.owed, MONTH, named(MONTHS_A_YEAR))


class LoansYearOn(LoanState, words="a year after the month", axes=BY_MONTH):
    """Twelve months after each month of the plan, past its end too."""

    title = "Each loan a year after each month"

    months = uses(PlanMonths)

    @property
    def month(self) -> Expr:
        """A year on."""
        return self.months.number + MONTHS_A_YEAR


class LoansAtYear(PaidLoanState, words="at the end of the year", axes=(LOAN, LOAN_YEAR)):
    """Years counted from the start of the plan."""

    title = "Each loan at the end of each year"

    @line("Year from the start of the plan", unit="count", axes=(LOAN_YEAR,))
    def number(self) -> Expr:
        """From 1."""
        return running_sum(1, LOAN_YEAR)

    @line("Last month of the year", unit="count", axes=(LOAN_YEAR,))
    def last_month(self) -> Expr:
        """Counted from the start of the plan."""
        return self.number * MONTHS_A_YEAR

    @property
    def month(self) -> Expr:
        """The last of the year."""
        return self.last_month
