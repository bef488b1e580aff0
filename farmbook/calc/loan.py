"""Loans paid back in level payments: what each payment is, and what is owed after any number of them.

A loan has payments of interest only, which may be none, then level payments; a balloon may be due with the last one. Worth is
counted back from the end, so that nothing large is taken from something large: it is the same as counting forward.
"""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_COUNTED
from farmbook.expr.functions import Operand, maximum, minimum, ratio, whole_down, whole_up

__all__ = [
    "balance",
    "interest_rate",
    "last_discount",
    "level_payment",
    "level_payments_made",
    "payments_in",
    "payments_made",
    "share_owed",
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


def payments_made(months: Operand, interval: Operand, payments: Operand) -> Operand:
    """Payments made in so many months since the money came: none before, none after the last.

    Units: months [1], interval [1], payments [1]; gives [1].
    Source: arithmetic.
    """
    return minimum(whole_down(months / interval) * (months > 0), payments)  # none before the money comes


def level_payments_made(made: Operand, interest_only: Operand) -> Operand:
    """Of the payments made, those that come after the payments of interest only.

    Units: made [1], interest_only [1]; gives [1].
    Source: arithmetic.
    """
    return maximum(made - interest_only, 0)


def last_discount(rate: Operand, payments: Operand) -> Operand:
    """Worth of 1 at the last level payment, counted back to the first of them.

    Units: rate [1], payments [1]; gives [1].
    Source: annuity.
    """
    worth: Operand = (1 + rate) ** -payments
    return worth


def level_payment(amount: Operand, due_at_end: Operand, payment_factor: Operand, rate: Operand) -> Operand:
    """The level payment: it repays all but what is due at the end, and bears interest on that.

    Units: amount [money], due_at_end [money], payment_factor [1], rate [1]; gives [money].
    Source: annuity.
    """
    return (amount - due_at_end) * payment_factor + due_at_end * rate


def share_owed(rate: Operand, payments: Operand, made: Operand, discount: Operand, equal_share: Operand) -> Operand:
    """Of what level payments repay, the share that is still owed after some of them; at no interest they are all alike.

    Units: rate [1], payments [1], made [1], discount [1], equal_share [1]; gives [1].
    Source: annuity.
    """
    left = payments - made
    to_repay: Operand = 1 - (1 + rate) ** -left
    return ratio(to_repay, 1 - discount, otherwise=left * equal_share)


def balance(amount: Operand, due_at_end: Operand, share_owed: Operand) -> Operand:
    """What is owed: what is due at the end, and the share of the rest that level payments have not repaid.

    Units: amount [money], due_at_end [money], share_owed [1]; gives [money].
    Source: annuity.
    """
    owed: Operand = due_at_end + (amount - due_at_end) * share_owed
    return owed
