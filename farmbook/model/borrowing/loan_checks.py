"""What the fields of a loan must have to do with one another."""

from __future__ import annotations

from typing import Final

from farmbook.calc.worth import ONE_MONTH
from farmbook.expr.functions import absolute, all_of, total, whole_near
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import LOAN
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["LoanChecks"]


def _months(months: int, name: str) -> Constant:
    return Constant(
        months, f"months_of_{name}", label=f"Months of {name.replace('_', ' ')}", unit=unit("1"), source=ARITHMETIC.key
    )


QUARTER: Final = _months(3, "a_quarter")
HALF_YEAR: Final = _months(6, "half_a_year")
WHOLE_YEAR: Final = _months(12, "a_whole_year")
LOWEST_RATE: Final = Constant(
    0.001, "lowest_rate", label="Lowest rate of a loan that bears interest", unit=unit("share"), source=ARITHMETIC.key,
    note="Below it, sums of loans would lose digits.",
)  # fmt: skip


class LoanChecks(Section):
    """Row by row. A loan of nothing breaks none, nor does a spare row."""

    title = "Whether loans can be as they are typed"

    rows = uses(LoanList)

    @line("Rate is too low to be worked with", unit="flag", axes=(LOAN,))
    def rate_is_tiny(self) -> Expr:
        """Above 0 and below a tenth of a percent."""
        return all_of(self.rows.rate > 0, self.rows.rate < LOWEST_RATE)

    @line("Interval is off those that lenders use", unit="1", axes=(LOAN,))
    def interval_off(self) -> Expr:
        """0 for a month, a quarter, half a year and a year."""
        months = self.rows.months_between
        return absolute((months - 1) * (months - QUARTER) * (months - HALF_YEAR) * (months - WHOLE_YEAR))

    @line("Months to pay are off whole payments by", unit="count", axes=(LOAN,))
    def term_off(self) -> Expr:
        """0 where the last payment falls on the last of them."""
        return absolute(self.rows.payments * self.rows.months_between - self.rows.term / ONE_MONTH)

    @line("Months of interest only are off whole payments by", unit="count", axes=(LOAN,))
    def interest_only_off(self) -> Expr:
        """0 where they are whole payments, and no more than there are."""
        months = self.rows.interest_only / ONE_MONTH
        return absolute(self.rows.interest_payments * self.rows.months_between - months)

    @line("Start of a loan is off a whole month by", unit="count", axes=(LOAN,))
    def start_off(self) -> Expr:
        """0 for a whole month of the plan, and for whole months to the next payment."""
        return absolute(self.rows.counted_from - whole_near(self.rows.counted_from))

    @line("Next payment comes after more than one interval", unit="flag", axes=(LOAN,))
    def next_too_late(self) -> Expr:
        """Of a loan that runs."""
        return all_of(self.rows.drawn_in <= 0, self.rows.counted_from > 0)

    @check(
        "Loans: each rate is 0, or at least a tenth of a percent",
        kind="error",
        says="A loan's rate lies between 0 and 0.1 %: type 0, or the rate in percent, on the sheet Tables.",
    )
    def rates_fit(self) -> Expr:
        """Below it, what is owed would lose digits."""
        return total(self.rate_is_tiny * (self.rows.amount > 0), LOAN) <= 0

    @check(
        "Loans: payments come every 1, 3, 6 or 12 months",
        kind="error",
        says="A loan's months between payments are not 1, 3, 6 or 12: see the sheet Tables.",
    )
    def intervals_fit(self) -> Expr:
        """Of every loan."""
        return total(self.interval_off * (self.rows.amount > 0), LOAN) <= 0

    @check(
        "Loans: months to pay, and months of interest only, are whole payments",
        kind="error",
        says="A loan's months to pay, or its months of interest only, are no multiple of the months between its payments.",
    )
    def payments_whole(self) -> Expr:
        """And no more months of interest only than months to pay."""
        return total((self.term_off + self.interest_only_off) * (self.rows.amount > 0), LOAN) <= 0

    @check(
        "Loans: no balloon is more than the loan",
        kind="error",
        says="A loan's balloon is more than what is borrowed: see the sheet Tables.",
    )
    def balloons_fit(self) -> Expr:
        """Level payments would be below the interest."""
        return total(self.rows.balloon > self.rows.amount, LOAN) <= 0

    @check(
        "Loans: months in which they come, and to the next payment, are whole",
        kind="error",
        says="A loan comes in a part of a month, or has a part of a month to its next payment: type whole months.",
    )
    def starts_whole(self) -> Expr:
        """Of every loan."""
        return total(self.start_off * (self.rows.amount > 0), LOAN) <= 0

    @check(
        "Loans: the next payment comes within one interval",
        kind="error",
        says="A loan that runs has more months to its next payment than there are between payments.",
    )
    def next_payments_fit(self) -> Expr:
        """A month at most where it is paid every month."""
        return total(self.next_too_late * (self.rows.amount > 0), LOAN) <= 0
