"""Loans, row by row: what was typed of each, and its level payment."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_COUNTED
from farmbook.calc.loan import (
    interest_rate,
    last_discount,
    level_payment,
    payments_in,
    repaying_payment,
    worth_of_payments,
)
from farmbook.calc.worth import ONE_MONTH, annuity_factor, equal_share
from farmbook.expr.functions import maximum, minimum, where, whole_down
from farmbook.expr.nodes import Expr
from farmbook.model.axes import LOAN
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import line, names, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ANNUITY, COMMON_PRACTICE

__all__ = ["LoanList"]


class LoanList(Section):
    """Each loan has payments of interest only, often none, then level payments, and perhaps a balloon with the last."""

    title = "Loans one by one"

    shocks = uses(Shocks)

    loans = names(
        LOAN, "Loan", how="One row for each loan: those that run, and those that you mean to draw. Not a credit line."
    )
    amount = number(
        "Borrowed, or owed today",
        unit="money",
        usual=(1000, 250000),
        hard=(0, 100000000),
        axes=(LOAN,),
        how="Of a loan that runs, what is owed today without interest since the last payment; of one to come, its amount.",
        source=COMMON_PRACTICE,
    )
    drawn_in = number(
        "Comes in month of the plan",
        unit="count",
        usual=(0, 36),
        hard=(0, 84),
        default=0,
        axes=(LOAN,),
        how="0 for a loan that runs already; 1 for the first month of the plan.",
        decided=True,
    )
    next_payment = number(
        "Months to the next payment",
        unit="month",
        usual=(1, 12),
        hard=(1, 12),
        default=1,
        axes=(LOAN,),
        how="Of a loan that runs: 1 if it is paid in the first month of the plan. Not read for one that comes later.",
        source=COMMON_PRACTICE,
    )
    rate = number(
        "Rate a year",
        unit="share",
        usual=(0.02, 0.12),
        hard=(0, 0.5),
        axes=(LOAN,),
        how="The rate of the contract, fees left out: 0, or a tenth of a percent and more. As of today if it floats.",
        source=COMMON_PRACTICE,
    )
    floats = number(
        "Rate can change: 1 for yes, 0 if it is fixed",
        unit="count",
        usual=(0, 1),
        hard=(0, 1),
        default=1,
        axes=(LOAN,),
        how="The contract says so. Read where the book tries higher rates; the plan goes by the rate of today.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    term = number(
        "Months to pay",
        unit="month",
        usual=(12, 360),
        hard=(1, 480),
        axes=(LOAN,),
        how="Payments to come times the months between them: 60 for five years of monthly payments, 60 for 20 by the quarter.",
        source=COMMON_PRACTICE,
    )
    interval = number(
        "Months between payments",
        unit="month",
        usual=(1, 12),
        hard=(1, 12),
        default=1,
        axes=(LOAN,),
        how="1, 3, 6 or 12.",
        source=COMMON_PRACTICE,
    )
    interest_only = number(
        "Of these, months of interest only",
        unit="month",
        usual=(0, 36),
        hard=(0, 480),
        default=0,
        axes=(LOAN,),
        how="Months still to come in which only interest is paid; whole payments.",
        source=COMMON_PRACTICE,
    )
    balloon = number(
        "Balloon with the last payment",
        unit="money",
        usual=(0, 100000),
        hard=(0, 100000000),
        default=0,
        axes=(LOAN,),
        how="What is left to be paid at once at the end; mostly 0.",
        source=COMMON_PRACTICE,
    )
    fees = number(
        "Fees when it comes",
        unit="money",
        usual=(0, 3000),
        hard=(0, 1000000),
        default=0,
        axes=(LOAN,),
        how="Paid in the month in which the money comes: for the file, the notary, the guarantee.",
        source=COMMON_PRACTICE,
    )

    # Payments

    @line("Months from payment to payment", unit="count", axes=(LOAN,))
    def months_between(self) -> Expr:
        """No less than one."""
        return maximum(self.interval / ONE_MONTH, 1)

    @line("Payments in all", unit="count", axes=(LOAN,))
    def payments(self) -> Expr:
        """One at least."""
        return maximum(payments_in(self.term / ONE_MONTH, self.months_between), 1)

    @line("Payments of interest only", unit="count", axes=(LOAN,))
    def interest_payments(self) -> Expr:
        """They come first."""
        return minimum(payments_in(self.interest_only / ONE_MONTH, self.months_between), self.payments)

    @line("Level payments", unit="count", axes=(LOAN,))
    def level_payments(self) -> Expr:
        """All others. With none of them the whole loan is due with its last payment."""
        return self.payments - self.interest_payments

    @line("Month from which payments are counted", unit="count", axes=(LOAN,))
    def counted_from(self) -> Expr:
        """That in which the money comes; of a loan that runs, one interval before its next payment: 0 or less."""
        return where(self.drawn_in > 0, self.drawn_in, maximum(self.next_payment / ONE_MONTH, 1) - self.months_between)

    @line("Last payment in month of the plan", unit="count", axes=(LOAN,))
    def ends_in(self) -> Expr:
        """Months after the plan are counted on."""
        return self.counted_from + self.payments * self.months_between

    # Amounts

    @line("Rate a year that is paid", unit="share", axes=(LOAN,))
    def rate_paid(self) -> Expr:
        """As typed; more in a case in which rates rise, if it floats."""
        return self.rate + self.shocks.rate_more * self.floats

    @line("Interest from payment to payment", unit="share", axes=(LOAN,), source=ANNUITY)
    def interval_rate(self) -> Expr:
        """A month is a twelfth of a year; lenders who count days differ by a few cents."""
        return interest_rate(self.rate_paid, self.months_between)

    @line("Worth of 1 at the last level payment", unit="1", axes=(LOAN,), source=ANNUITY)
    def last_discount(self) -> Expr:
        """Counted back over all level payments at the loan's rate."""
        return last_discount(self.interval_rate, self.level_payments)

    @line("Equal share of each level payment", unit="1", axes=(LOAN,))
    def equal_share(self) -> Expr:
        """What each repays at no interest."""
        return equal_share(self.level_payments)

    @line("Level payment for each 1 repaid", unit="1", axes=(LOAN,), source=ANNUITY)
    def payment_factor(self) -> Expr:
        """With interest."""
        return annuity_factor(self.interval_rate, self.last_discount, self.equal_share)

    @line("Due with the last payment", unit="money", axes=(LOAN,))
    def due_at_end(self) -> Expr:
        """The balloon, at most the loan; the whole loan where no level payment repays it."""
        return where(self.level_payments > 0, minimum(self.balloon, self.amount), self.amount)

    @line("Payment of interest only", unit="money", axes=(LOAN,))
    def interest_payment(self) -> Expr:
        """On the whole loan."""
        return self.amount * self.interval_rate

    @line("Level payment, without interest on what is due with the last", unit="money", axes=(LOAN,), source=ANNUITY)
    def repaying_payment(self) -> Expr:
        """It repays all the rest."""
        return repaying_payment(self.amount, self.due_at_end, self.payment_factor)

    @line("Level payment", unit="money", axes=(LOAN,), source=ANNUITY)
    def level_payment(self) -> Expr:
        """Interest and repayment together; the last has the balloon besides."""
        return level_payment(self.repaying_payment, self.due_at_end, self.interval_rate)

    @line("Level payment, more than interest only", unit="money", axes=(LOAN,))
    def level_more(self) -> Expr:
        """What payments go up by once repayment starts."""
        return self.level_payment - self.interest_payment

    # A year of it

    @line("Payments that a full year can have", unit="count", axes=(LOAN,))
    def payments_that_count(self) -> Expr:
        """Level ones; of interest only where there are no others."""
        return where(self.level_payments > 0, self.level_payments, self.payments)

    @line("Payments in a full year", unit="count", axes=(LOAN,))
    def payments_a_year(self) -> Expr:
        """Level ones, all that are left where they end within the year; of interest only where there are no others."""
        return minimum(whole_down(MONTHS_COUNTED / self.months_between), self.payments_that_count)

    @line("Paid in a full year", unit="money", axes=(LOAN,))
    def paid_a_year(self) -> Expr:
        """The first year of level payments, whenever that is; a balloon is not in it."""
        return self.level_payment * self.payments_a_year

    @line("Owed after a full year", unit="money", axes=(LOAN,), source=ANNUITY)
    def owed_after_a_year(self) -> Expr:
        """After the first year of level payments, before what is due with the last."""
        left = maximum(self.level_payments - self.payments_a_year, 0)
        return worth_of_payments(self.repaying_payment, self.interval_rate, left) + self.due_at_end

    @line("Repaid in a full year", unit="money", axes=(LOAN,))
    def repaid_a_year(self) -> Expr:
        """In the first year of level payments; more in each that follows."""
        return self.amount - self.owed_after_a_year

    @line("Interest in a full year", unit="money", axes=(LOAN,))
    def interest_a_year(self) -> Expr:
        """In the first year of level payments; less in each that follows."""
        return self.paid_a_year - self.repaid_a_year
