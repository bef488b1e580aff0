"""Each loan at the end of each month of the plan, a year after each, and at the end of each year until all are paid."""

from __future__ import annotations

from farmbook.expr.functions import at, named, running_sum, starting
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN, LOAN_YEAR, MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.repaying.loan_state import LoanState
from farmbook.sections.declare import line, uses
from farmbook.sources import ANNUITY

__all__ = ["LoansAtMonth", "LoansAtYear", "LoansYearOn"]

BY_MONTH = (LOAN, MONTH)


class LoansAtMonth(LoanState, words="at the end of the month", axes=BY_MONTH):
    """The months of the plan; before them stands how the loans are at its start."""

    title = "Each loan at the end of each month"

    months = uses(PlanMonths)

    @property
    def month(self) -> Expr:
        """The month itself."""
        return self.months.number

    @line("Payments left at the end of the month", unit="count", axes=BY_MONTH)
    def left(self) -> Expr:
        """All less those made: whole intervals since payments are counted."""
        return starting(self.rows.payments, self.payments_left())

    @line("Owed, or to be borrowed, at the end of the month", unit="money", axes=BY_MONTH, source=ANNUITY)
    def owed(self) -> Expr:
        """What the payments left repay; nothing after the last."""
        return starting(self.rows.amount, self.owed_then())

    @line("Owed, or to be borrowed, after the first year of the plan", unit="money", axes=(LOAN,))
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


class LoansAtYear(LoanState, words="at the end of the year", axes=(LOAN, LOAN_YEAR)):
    """Years counted from the start of the plan."""

    title = "Each loan at the end of each year"

    @line("Last month of the year", unit="count", axes=(LOAN_YEAR,))
    def last_month(self) -> Expr:
        """Counted from the start of the plan."""
        return running_sum(named(MONTHS_A_YEAR), LOAN_YEAR)

    @property
    def month(self) -> Expr:
        """The last of the year."""
        return self.last_month
