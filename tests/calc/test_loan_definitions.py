"""Loans against what defines them: payments counted, balances rolled forward, and a finance library."""

from __future__ import annotations

import math

import numpy_financial as npf
import pytest

from farmbook.calc import loan, worth
from tests.calc import loan_chains

RATES = pytest.mark.parametrize("rate", [0.001 / 12, 0.004, 0.02, 0.08])
COUNTS = pytest.mark.parametrize("payments", [1, 7, 60, 360])


@RATES
@COUNTS
@pytest.mark.parametrize("balloon", [0.0, 12000.0, 50000.0])
def test_payments_and_balances_agree_with_a_finance_library(rate: float, payments: int, balloon: float) -> None:
    amount = 50000.0
    payment = loan_chains.balloon_payment(amount, balloon, rate, payments)
    assert payment == pytest.approx(-npf.pmt(rate, payments, amount, -balloon), rel=1e-9)
    for made in {0, 1, payments // 2, payments}:
        forward = -npf.fv(rate, made, -payment, amount)
        found = loan_chains.owed_with_balloon(amount, balloon, rate, payments, payments - made)
        due = balloon if made == payments else 0  # the library has not paid it yet
        assert found + due == pytest.approx(forward, abs=1e-9 * amount * (1 + rate) ** made)


def test_at_no_interest_every_payment_repays_alike() -> None:
    """9,000 of which 1,800 are due at the end, in six payments of 1,200: after four of them 4,200 are owed."""
    factor = worth.annuity_factor(0.0, loan.last_discount(0.0, 6.0), worth.equal_share(6.0))
    payment = loan.repaying_payment(9000.0, 1800.0, factor)
    assert loan.level_payment(payment, 1800.0, 0.0) == pytest.approx(1200)
    assert loan.balance(loan.worth_of_payments(payment, 0.0, 2.0), 1800.0, 2.0) == pytest.approx(4200)


def test_with_all_due_at_the_end_only_interest_is_paid() -> None:
    payment = loan.repaying_payment(8000.0, 8000.0, 0.3)
    assert loan.level_payment(payment, 8000.0, 0.02) == pytest.approx(160)
    worth = loan.worth_of_payments(payment, 0.02, 3.0)
    assert [loan.balance(worth, 8000.0, left) for left in (3.0, 1.0, 0.0)] == [8000, 8000, 0]


def test_payments_to_come_are_worth_what_each_is_worth() -> None:
    """1,000 in a year and in two, at a tenth: 909.09 and 826.45."""
    assert loan.worth_of_payments(1000.0, 0.1, 2.0) == pytest.approx(1735.537190, abs=1e-6)


def test_nothing_is_left_to_repay_by_no_payment() -> None:
    assert loan.worth_of_payments(500.0, 0.01, 0.0) == 0


def test_payments_of_interest_then_level_ones_then_the_balloon() -> None:
    """Two of 40, three of 100 more by 60, and 500 with the last: the payments after which 4, 3, 2, 1 and none are left."""
    left = (4.0, 3.0, 2.0, 1.0, 0.0)
    assert [loan.payment_that_leaves(each, 40.0, 60.0, 500.0, 3.0) for each in left] == [40, 40, 100, 100, 600]
    assert [loan.payments_to_come(each, 100.0, 60.0, 3.0) for each in (5.0, *left)] == [380, 340, 300, 200, 100, 0]


@pytest.mark.parametrize(
    ("months", "interval", "payments"),
    [(60.0, 1.0, 60), (60.0, 3.0, 20), (7.0, 6.0, 2), (12.0, 12.0, 1), (0.0, 1.0, 0)],
)
def test_payments_of_a_term(months: float, interval: float, payments: float) -> None:
    assert loan.payments_in(months, interval) == payments


@pytest.mark.parametrize(
    ("months", "left"),
    [(-5.0, 4), (-0.5, 4), (0.0, 4), (2.9, 4), (3.0, 3), (8.0, 2), (11.99, 1), (12.0, 0), (900.0, 0)],
)
def test_payments_left_by_the_quarter(months: float, left: float) -> None:
    assert loan.payments_left(months, 3.0, 4.0) == left


@pytest.mark.parametrize(("interval", "share"), [(1.0, 0.005), (3.0, 0.015), (6.0, 0.03), (12.0, 0.06)])
def test_interest_of_months_at_six_percent(interval: float, share: float) -> None:
    assert loan.interest_rate(0.06, interval) == pytest.approx(share)


@RATES
def test_a_table_of_any_loan_rolls_forward(rate: float) -> None:
    amount, payments = 31000.0, 48
    payment, owed = loan_chains.loan_payment(amount, rate, payments), amount
    for made in range(1, payments + 1):
        owed += owed * rate - payment
        found = loan_chains.owed_with_balloon(amount, 0.0, rate, payments, payments - made)
        assert found == pytest.approx(owed, abs=1e-6)
    assert math.isclose(owed, 0, abs_tol=1e-6)
