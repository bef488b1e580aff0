"""Whole tables of loans in print: unrounded ones to the cent, those rounded row by row within what their rounding allows."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import pytest

from tests.calc import loan_chains

CENT: Final = 0.005
ROUNDED_TWICE: Final = 0.01
"""In each row of a table that is rounded as it goes, the interest and the payment are off by half a cent at most."""


@dataclass(frozen=True)
class Table:
    """What stands in print: of each payment its interest, and what is owed after it."""

    source: str
    amount: float
    rate: float
    interval: int
    months: int
    payment: float
    interest: tuple[float, ...]
    owed: tuple[float, ...]

    @property
    def step(self) -> float:
        """Interest from payment to payment."""
        return self.rate * self.interval / 12

    def owed_after(self, number: int) -> float:
        """By the chain of the model's steps."""
        return loan_chains.loan_balance(self.amount, self.rate, self.interval, self.months, number * self.interval)

    def found_payment(self) -> float:
        return loan_chains.payment_by_months(self.amount, self.rate, self.interval, self.months / self.interval)

    def compared(self) -> tuple[float, ...]:
        """The numbers in print that tests hold the loan to; that nothing is owed after the last payment is no test."""
        return self.payment, *self.interest, *self.owed[: self.months // self.interval - 1]


UNROUNDED: Final = (
    Table(
        "Pamela Peterson Drake, Loan amortization, a university's course; educ.jmu.edu/~drakepp (seen)",
        20000, 0.10, 6, 36, 3940.35,
        (1000.00, 852.98, 698.61, 536.53, 366.34, 187.64),
        (17059.65, 13972.28, 10730.55, 7326.73, 3752.71, 0.00),
    ),
    Table(
        "a textbook problem by the half-year, solved; justaaa.com, finance 707228 (seen)",
        23000, 0.061, 6, 36, 4252.78,
        (701.50, 593.19, 481.57, 366.55, 248.02, 125.87),
        (19448.72, 15789.12, 12017.91, 8131.68, 4126.91, 0.00),
    ),
    Table(
        "solutions to a textbook's chapter 6, equal payments; coursehero.com 5919788 (seen)",
        42000, 0.08, 12, 60, 10519.17,
        (3360.00, 2787.27, 2168.71, 1500.68, 779.20),
        (34840.83, 27108.92, 18758.47, 9739.97, 0.00),
    ),
    Table(
        "a course problem in accounting, solved; justaaa.com, accounting 88418 (seen)",
        30000, 0.06, 12, 36, 11223.29,
        (1800.00, 1234.60, 635.28),
        (20576.71, 10588.01, 0.00),
    ),
    Table(
        "Payment schedule for a loan, a lesson; coursehero.com 5999634 (seen to payment 33 of 60)",
        10000, 0.029, 1, 60, 179.24,
        (
            24.17, 23.79, 23.42, 23.04, 22.66, 22.28, 21.90, 21.52, 21.14, 20.76, 20.38, 19.99, 19.61, 19.22, 18.84, 18.45,
            18.06, 17.67, 17.28, 16.89, 16.50, 16.10, 15.71, 15.31, 14.92, 14.52, 14.12, 13.72, 13.32, 12.92, 12.52, 12.12,
            11.71,
        ),
        (
            9844.92, 9689.47, 9533.65, 9377.44, 9220.86, 9063.90, 8906.56, 8748.85, 8590.75, 8432.26, 8273.40, 8114.15,
            7954.52, 7794.50, 7634.09, 7473.30, 7312.12, 7150.54, 6988.58, 6826.23, 6663.48, 6500.34, 6336.81, 6172.88,
            6008.55, 5843.83, 5678.71, 5513.19, 5347.27, 5180.95, 5014.23, 4847.10, 4679.58,
        ),
    ),
)  # fmt: skip
ROUNDED: Final = (
    Table(
        "a textbook problem by the quarter, solved; justaaa.com, finance 357116 (seen)",
        8000, 0.13, 3, 12, 2165.10,
        (260.00, 198.08, 134.16, 68.15),
        (6094.90, 4127.88, 2096.94, -0.01),
    ),
    Table(
        "a problem with a payment of whole dollars, solved; wizedu.com 350746 (seen)",
        17000, 0.10, 12, 48, 5363.00,
        (1700.00, 1333.70, 930.77, 487.55),
        (13337.00, 9307.70, 4875.47, 0.02),
    ),
    Table(
        "a lesson's problem, a cent lost in its second row; coursehero.com 6162458 (seen)",
        1000, 0.10, 12, 36, 402.11,
        (100.00, 69.79, 36.56),
        (697.89, 365.56, 0.00),
    ),
)  # fmt: skip


def named(table: Table) -> str:
    return table.source.partition(",")[0] + f" {table.amount:g}"


@pytest.mark.parametrize("table", UNROUNDED, ids=named)
def test_unrounded_tables_to_the_cent(table: Table) -> None:
    assert table.found_payment() == pytest.approx(table.payment, abs=CENT)
    before = table.amount
    for number, (interest, owed) in enumerate(zip(table.interest, table.owed, strict=True), 1):
        found = table.owed_after(number)
        assert before * table.step == pytest.approx(interest, abs=CENT), number
        assert table.found_payment() - (before - found) == pytest.approx(interest, abs=CENT), number
        assert found == pytest.approx(owed, abs=CENT), number
        before = found


@pytest.mark.parametrize("table", ROUNDED, ids=named)
def test_rounded_tables_within_what_rounding_allows(table: Table) -> None:
    """After some payments each row's rounding has grown with interest, and is added to that of the rows after it."""
    assert table.found_payment() == pytest.approx(table.payment, abs=CENT)
    for number, owed in enumerate(table.owed, 1):
        allowed = ROUNDED_TWICE * ((1 + table.step) ** number - 1) / table.step
        assert table.owed_after(number) == pytest.approx(owed, abs=allowed), number
        found = table.owed_after(number - 1) * table.step
        assert found == pytest.approx(table.interest[number - 1], abs=CENT + allowed * table.step), number


@pytest.mark.parametrize("table", [table for table in UNROUNDED if table.owed[-1] == 0], ids=named)
def test_a_whole_table_repays_the_loan(table: Table) -> None:
    """The print's own sums: interest and loan are what was paid."""
    paid = table.payment * len(table.interest)
    assert sum(table.interest) + table.amount == pytest.approx(paid, abs=2 * CENT * len(table.interest))
    assert len(table.owed) == table.months // table.interval
