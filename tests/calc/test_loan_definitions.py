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
        found = loan_chains.owed_with_balloon(amount, balloon, rate, payments, made)
        assert found == pytest.approx(forward, abs=1e-9 * amount * (1 + rate) ** made)


def test_at_no_interest_every_payment_repays_alike() -> None:
    """9,000 of which 1,800 are due at the end, in six payments of 1,200: after four of them 4,200 are owed."""
    discount = loan.last_discount(0.0, 6.0)
    factor = worth.annuity_factor(0.0, discount, worth.equal_share(6.0))
    assert loan.level_payment(9000.0, 1800.0, factor, 0.0) == pytest.approx(1200)
    share = loan.share_owed(0.0, 6.0, 4.0, discount, worth.equal_share(6.0))
    assert loan.balance(9000.0, 1800.0, share) == pytest.approx(4200)


def test_with_all_due_at_the_end_only_interest_is_paid() -> None:
    assert loan.level_payment(8000.0, 8000.0, 0.3, 0.02) == pytest.approx(160)
    assert loan.balance(8000.0, 8000.0, 0.4) == 8000


def test_nothing_is_left_to_repay_by_no_payment() -> None:
    assert loan.share_owed(0.01, 0.0, 0.0, loan.last_discount(0.01, 0.0), 0.0) == 0


@pytest.mark.parametrize(
    ("months", "interval", "payments"),
    [(60.0, 1.0, 60), (60.0, 3.0, 20), (7.0, 6.0, 2), (12.0, 12.0, 1), (0.0, 1.0, 0)],
)
def test_payments_of_a_term(months: float, interval: float, payments: float) -> None:
    assert loan.payments_in(months, interval) == payments


@pytest.mark.parametrize(
    ("months", "made"),
    [(-5.0, 0), (-0.5, 0), (0.0, 0), (2.9, 0), (3.0, 1), (8.0, 2), (11.99, 3), (12.0, 4), (900.0, 4)],
)
def test_payments_made_by_the_quarter(months: float, made: float) -> None:
    assert loan.payments_made(months, 3.0, 4.0) == made


def test_payments_of_interest_only_come_first() -> None:
    assert [loan.level_payments_made(made, 2.0) for made in (0.0, 2.0, 3.0, 9.0)] == [0, 0, 1, 7]


@pytest.mark.parametrize(("interval", "share"), [(1.0, 0.005), (3.0, 0.015), (6.0, 0.03), (12.0, 0.06)])
def test_interest_of_months_at_six_percent(interval: float, share: float) -> None:
    assert loan.interest_rate(0.06, interval) == pytest.approx(share)


@RATES
def test_a_table_of_any_loan_rolls_forward(rate: float) -> None:
    amount, payments = 31000.0, 48
    payment, owed = loan_chains.loan_payment(amount, rate, payments), amount
    for made in range(1, payments + 1):
        owed += owed * rate - payment
        found = loan_chains.owed_with_balloon(amount, 0.0, rate, payments, made)
        assert found == pytest.approx(owed, abs=1e-6)
    assert math.isclose(owed, 0, abs_tol=1e-6)
