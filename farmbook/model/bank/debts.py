"""All debts, one by one: the farm's loans as the list has them, and those of the household."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import any_of, total
from farmbook.expr.nodes import Expr, Label
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import HOUSEHOLD_DEBT, LOAN
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.months.month_household import MonthHousehold
from farmbook.model.repaying.loan_months import LoanMonths
from farmbook.sections.declare import check, line, names, number, text, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Debts"]


class Debts(Section):
    """Who is owed, how much, and until when."""

    title = "All debts"

    rows = uses(LoanList)
    home = uses(MonthHousehold)
    months = uses(LoanMonths)

    lender = text(
        "Loan: lender, and whether the rate floats", default="", axes=(LOAN,), how="Bank and branch; fixed or floating."
    )
    secured_by = text("Loan: secured by", default="", axes=(LOAN,), how="What the lender may take.")
    household = names(HOUSEHOLD_DEBT, "Household debt", how="House, car, cards, student loans: lender and what for.")
    owed = number(
        "Household debt: owed today",
        unit="money",
        usual=(500, 400000),
        hard=(0, 100000000),
        axes=(HOUSEHOLD_DEBT,),
        how="By the last statement.",
        source=COMMON_PRACTICE,
    )
    paid = number(
        "Household debt: paid",
        unit="money/year",
        usual=(0, 40000),
        hard=(0, 10000000),
        axes=(HOUSEHOLD_DEBT,),
        how="Interest and repayment of twelve months.",
        source=COMMON_PRACTICE,
    )

    @line("Loan: lender, as typed", unit="1", axes=(LOAN,))
    def lender_told(self) -> Expr:
        """In words."""
        return Label(self.lender, "-")

    @line("Loan: security, as typed", unit="1", axes=(LOAN,))
    def secured_told(self) -> Expr:
        """In words."""
        return Label(self.secured_by, "-")

    @line("Loan: owed when the plan starts", unit="money", axes=(LOAN,))
    def owed_at_start(self) -> Expr:
        """Nothing of one that is still to come."""
        return self.rows.amount * (self.rows.drawn_in <= 0)

    @line("Loan: next payment in month of the plan", unit="count", axes=(LOAN,))
    def next_due(self) -> Expr:
        """The first in the plan."""
        return self.rows.counted_from + self.rows.months_between

    @line("Household: owed today, in all", unit="money")
    def owed_in_all(self) -> Expr:
        """All rows."""
        return total(self.owed, HOUSEHOLD_DEBT)

    @line("Household: debts paid a year, listed", unit="money/year")
    def paid_in_all(self) -> Expr:
        """All rows."""
        return total(self.paid, HOUSEHOLD_DEBT)

    @line("Household debts listed", unit="count")
    def many(self) -> Expr:
        """Rows in use."""
        return total(self.model.axes[HOUSEHOLD_DEBT].present, HOUSEHOLD_DEBT)

    @line("Debts: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "The farm owes ",
            figure(self.months.owed_at_start, -2, named=False),
            " on loans when the plan starts, ",
            figure(self.months.due_at_start, -2, named=False),
            " of it to be repaid within a year. The household owes ",
            figure(self.owed_in_all, -2, named=False),
            ".",
        )

    @check(
        "Household debts listed are those that the plan pays",
        kind="alert",
        says="The household debts of the sheet Tables come to another sum a year than the one on Inputs that the plan pays.",
    )
    def as_counted(self) -> Expr:
        """Fine where none is listed; those in what the household needs are not to be listed."""
        apart = self.paid_in_all - self.home.household.debts
        return any_of(self.many <= 0, is_rounding(apart, self.paid_in_all, self.home.household.debts))
