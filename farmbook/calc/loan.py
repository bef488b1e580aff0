"""Loans paid back in level payments: what each payment is, and what is owed after any number of them.

A loan has payments of interest only, which may be none, then level payments; a balloon may be due with the last one. What is
owed is what the payments to come are worth, the interest on the balloon aside: counted back from the end, so that nothing large is
taken from something large, and the same as counting forward.
"""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_COUNTED
from farmbook.expr.functions import Operand, minimum, ratio, whole_down, whole_up

__all__ = [
    "balance",
    "interest_rate",
    "last_discount",
    "level_payment",
    "payment_that_leaves",
    "payments_in",
    "payments_left",
    "payments_to_come",
    "repaying_payment",
    "worth_of_payments",
]


def payments_in(months: Operand, interval: Operand) -> Operand:
    """Payments that come in so many months, the interval one month at least; a part of an interval counts as one.

    Units: months [1], interval [1]; gives [1].
    Source: arithmetic.
    """
    return whole_up(months / interval)


def interest_rate(rate: Operand, months: Operand) -> Operand:
    """Interest from one payment to the next, as a share of what is owed: every month counts as a twelfth of a year.

    Units: rate [1], months [1]; gives [1].
    Source: annuity.
    """
    interest: Operand = rate * months / MONTHS_COUNTED
    return interest


def payments_left(months: Operand, interval: Operand, payments: Operand) -> Operand:
    """Payments still to be made so many months after the money came: all of them before, none after the last.

    Units: months [1], interval [1], payments [1]; gives [1].
    Source: arithmetic.
    """
    made = minimum(whole_down(months / interval) * (months > 0), payments)  # none before the money comes
    return payments - made


def last_discount(rate: Operand, payments: Operand) -> Operand:
    """Worth of 1 at the last level payment, counted back to the first of them.

    Units: rate [1], payments [1]; gives [1].
    Source: annuity.
    """
    worth: Operand = (1 + rate) ** -payments
    return worth


def repaying_payment(amount: Operand, due_at_end: Operand, payment_factor: Operand) -> Operand:
    """The level payment that repays all but what is due at the end, with no interest on that.

    Units: amount [money], due_at_end [money], payment_factor [1]; gives [money].
    Source: annuity.
    """
    payment: Operand = (amount - due_at_end) * payment_factor
    return payment


def level_payment(repaying_payment: Operand, due_at_end: Operand, rate: Operand) -> Operand:
    """The level payment: it repays all but what is due at the end, and bears interest on that.

    Units: repaying_payment [money], due_at_end [money], rate [1]; gives [money].
    Source: annuity.
    """
    return repaying_payment + due_at_end * rate


def worth_of_payments(payment: Operand, rate: Operand, number: Operand) -> Operand:
    """What so many equal payments to come repay; at no interest, all that they come to.

    Units: payment [money], rate [1], number [1]; gives [money].
    Source: annuity.
    """
    of_one: Operand = 1 - (1 + rate) ** -number
    return payment * ratio(of_one, rate, otherwise=number)


def balance(worth_left: Operand, due_at_end: Operand, left: Operand) -> Operand:
    """What is owed: what the level payments left repay, and what is due with the last of the payments left, if any is.

    Units: worth_left [money], due_at_end [money], left [1]; gives [money].
    Source: annuity.
    """
    owed: Operand = worth_left + due_at_end * (left > 0)
    return owed


def payment_that_leaves(
    left: Operand, interest_payment: Operand, level_more: Operand, due_at_end: Operand, level_payments: Operand
) -> Operand:
    """The payment after which so many are left: before the level ones of interest only, the last with what is due then.

    Units: left [1], interest_payment [money], level_more [money], due_at_end [money], level_payments [1]; gives [money].
    Source: arithmetic.
    """
    payment: Operand = interest_payment + level_more * (left < level_payments) + due_at_end * (left <= 0)
    return payment


def payments_to_come(left: Operand, level_payment: Operand, level_more: Operand, level_payments: Operand) -> Operand:
    """What so many payments left come to, without what is due at the end: those beyond the level ones bear interest only.

    Units: left [1], level_payment [money], level_more [money], level_payments [1]; gives [money].
    Source: arithmetic.
    """
    of_interest: Operand = (left - level_payments) * (left > level_payments)
    return left * level_payment - of_interest * level_more
