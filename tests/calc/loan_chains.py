"""Loans as the model chains their steps: what each payment is, what is owed after some of them, and what a span takes."""

from __future__ import annotations

import math

from farmbook.calc import loan, worth

__all__ = [
    "balance_by_months",
    "balloon_payment",
    "first_interest",
    "interest_in_span",
    "loan_balance",
    "loan_payment",
    "owed_with_balloon",
    "payment_by_months",
    "repaid_in_span",
    "repaid_with_balloon",
    "share_left",
]


def balloon_payment(amount: float, balloon: float, rate: float, payments: float) -> float:
    """At interest the equal share plays no part: it may be no number.

    Units: amount [money], balloon [money], rate [1], payments [1]; gives [money].
    """
    factor = worth.annuity_factor(rate, loan.last_discount(rate, payments), math.nan)
    return loan.level_payment(amount, balloon, factor, rate)


def loan_payment(amount: float, rate: float, payments: float) -> float:
    """Units: amount [money], rate [1], payments [1]; gives [money]."""
    return amount * worth.annuity_factor(rate, loan.last_discount(rate, payments), math.nan)


def payment_by_months(amount: float, rate: float, interval: float, payments: float) -> float:
    """By the yearly rate, with so many months from payment to payment.

    Units: amount [money], rate [1], interval [1], payments [1]; gives [money].
    """
    return loan_payment(amount, loan.interest_rate(rate, interval), payments)


def first_interest(amount: float, rate: float, interval: float) -> float:
    """Units: amount [money], rate [1], interval [1]; gives [money]."""
    return amount * loan.interest_rate(rate, interval)


def share_left(rate: float, payments: float, made: float) -> float:
    """Of what level payments repay."""
    return loan.share_owed(rate, payments, made, loan.last_discount(rate, payments), math.nan)


def balance_by_months(amount: float, rate: float, interval: float, payments: float, made: float) -> float:
    """What is owed after so many payments.

    Units: amount [money], rate [1], interval [1], payments [1], made [1]; gives [money].
    """
    return amount * share_left(loan.interest_rate(rate, interval), payments, made)


def owed_with_balloon(amount: float, balloon: float, rate: float, payments: float, made: float) -> float:
    """Just before the balloon is paid.

    Units: amount [money], balloon [money], rate [1], payments [1], made [1]; gives [money].
    """
    return loan.balance(amount, balloon, share_left(rate, payments, made))


def loan_balance(amount: float, rate: float, interval: float, months: float, passed: float) -> float:
    """What is owed so many months after the money came, all steps of the model.

    Units: amount [money], rate [1], interval [1], months [1], passed [1]; gives [money].
    """
    payments = loan.payments_in(months, interval)
    made = loan.level_payments_made(loan.payments_made(passed, interval, payments), 0.0)
    return owed_with_balloon(amount, 0.0, loan.interest_rate(rate, interval), payments, made)


def repaid_in_span(amount: float, rate: float, payments: float, first: float, last: float) -> float:
    """By the payments from one to another.

    Units: amount [money], rate [1], payments [1], first [1], last [1]; gives [money].
    """
    return amount * (share_left(rate, payments, first - 1) - share_left(rate, payments, last))


def interest_in_span(amount: float, rate: float, payments: float, first: float, last: float) -> float:
    """What is paid from one payment to another, less what is repaid.

    Units: amount [money], rate [1], payments [1], first [1], last [1]; gives [money].
    """
    paid = (last - first + 1) * loan_payment(amount, rate, payments)
    return paid - repaid_in_span(amount, rate, payments, first, last)


def repaid_with_balloon(amount: float, balloon: float, rate: float, payments: float, number: float) -> float:
    """By one payment.

    Units: amount [money], balloon [money], rate [1], payments [1], number [1]; gives [money].
    """
    return repaid_in_span(amount - balloon, rate, payments, number, number)
