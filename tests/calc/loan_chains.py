"""Loans as the model chains their steps: what each payment is, what is owed after some of them, and what a span takes."""

from __future__ import annotations

import math

from farmbook.calc import loan, worth

__all__ = [
    "balance_by_months",
    "balloon_payment",
    "first_interest",
    "interest_by_months",
    "interest_in_span",
    "loan_balance",
    "loan_payment",
    "owed_with_balloon",
    "payment_by_months",
    "repaid_in_span",
    "repaid_with_balloon",
    "repaying_payment",
]


def balloon_payment(amount: float, balloon: float, rate: float, payments: float) -> float:
    """At interest the equal share plays no part: it may be no number.

    Units: amount [money], balloon [money], rate [1], payments [1]; gives [money].
    """
    return loan.level_payment(repaying_payment(amount, balloon, rate, payments), balloon, rate)


def repaying_payment(amount: float, balloon: float, rate: float, payments: float) -> float:
    """Units: amount [money], balloon [money], rate [1], payments [1]; gives [money]."""
    factor = worth.annuity_factor(rate, loan.last_discount(rate, payments), math.nan)
    return loan.repaying_payment(amount, balloon, factor)


def loan_payment(amount: float, rate: float, payments: float) -> float:
    """Units: amount [money], rate [1], payments [1]; gives [money]."""
    return repaying_payment(amount, 0.0, rate, payments)


def payment_by_months(amount: float, rate: float, interval: float, payments: float) -> float:
    """By the yearly rate, with so many months from payment to payment.

    Units: amount [money], rate [1], interval [1], payments [1]; gives [money].
    """
    return loan_payment(amount, loan.interest_rate(rate, interval), payments)


def first_interest(amount: float, rate: float, interval: float) -> float:
    """Units: amount [money], rate [1], interval [1]; gives [money]."""
    return amount * loan.interest_rate(rate, interval)


def interest_by_months(amount: float, rate: float, payments: float, number: float) -> float:
    """In one of the payments of a loan paid each month, by its yearly rate.

    Units: amount [money], rate [1], payments [1], number [1]; gives [money].
    """
    return first_interest(balance_by_months(amount, rate, 1.0, payments, number - 1), rate, 1.0)


def balance_by_months(amount: float, rate: float, interval: float, payments: float, made: float) -> float:
    """What is owed after so many payments.

    Units: amount [money], rate [1], interval [1], payments [1], made [1]; gives [money].
    """
    return owed_with_balloon(amount, 0.0, loan.interest_rate(rate, interval), payments, payments - made)


def owed_with_balloon(amount: float, balloon: float, rate: float, payments: float, left: float) -> float:
    """With so many level payments left; nothing once the balloon is paid.

    Units: amount [money], balloon [money], rate [1], payments [1], left [1]; gives [money].
    """
    worth_left = loan.worth_of_payments(repaying_payment(amount, balloon, rate, payments), rate, left)
    return loan.balance(worth_left, balloon, left)


def loan_balance(amount: float, rate: float, interval: float, months: float, passed: float) -> float:
    """What is owed so many months after the money came, all steps of the model.

    Units: amount [money], rate [1], interval [1], months [1], passed [1]; gives [money].
    """
    payments = loan.payments_in(months, interval)
    left = loan.payments_left(passed, interval, payments)
    return owed_with_balloon(amount, 0.0, loan.interest_rate(rate, interval), payments, left)


def repaid_in_span(amount: float, rate: float, payments: float, first: float, last: float) -> float:
    """By the payments from one to another.

    Units: amount [money], rate [1], payments [1], first [1], last [1]; gives [money].
    """
    before, after = (owed_with_balloon(amount, 0.0, rate, payments, payments - made) for made in (first - 1, last))
    return before - after


def interest_in_span(amount: float, rate: float, payments: float, first: float, last: float) -> float:
    """What is paid from one payment to another, less what is repaid.

    Units: amount [money], rate [1], payments [1], first [1], last [1]; gives [money].
    """
    paid = (last - first + 1) * loan_payment(amount, rate, payments)
    return paid - repaid_in_span(amount, rate, payments, first, last)


def repaid_with_balloon(amount: float, balloon: float, rate: float, payments: float, number: float) -> float:
    """By one payment; print counts the balloon apart from the last.

    Units: amount [money], balloon [money], rate [1], payments [1], number [1]; gives [money].
    """
    left = payments - number
    before, after = (owed_with_balloon(amount, balloon, rate, payments, each) for each in (left + 1, left))
    return before - after - (balloon if left == 0 else 0.0)
