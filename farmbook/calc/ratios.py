"""What a farm can repay, how well its income covers what it owes, and the ratios that lenders compare farms by.

A measure that is over nothing is 0, and the line that shows it says that there is no figure.
"""

from __future__ import annotations

from farmbook.expr.functions import Operand, ratio

__all__ = [
    "coverage",
    "earned_before_owning",
    "income_for_capacity",
    "repayment_capacity",
    "return_earned",
    "share_owed",
]


def earned_before_owning(income: Operand, depreciation: Operand, interest: Operand) -> Operand:
    """What income from operations was before loss in value and the interest of loans were taken off.

    Units: income [money], depreciation [money], interest [money]; gives [money].
    Source: farm_ratios.
    """
    return income + depreciation + interest


def repayment_capacity(earned: Operand, other_income: Operand, living: Operand, tax: Operand) -> Operand:
    """What can go to principal and interest once the household has lived and tax is paid.

    Units: earned [money], other_income [money], living [money], tax [money]; gives [money].
    Source: farm_ratios.
    """
    return earned + other_income - living - tax


def coverage(money: Operand, payments: Operand) -> Operand:
    """Money there is for each 1.00 of payments due.

    Units: money [money], payments [money]; gives [1].
    Source: farm_ratios.
    """
    return ratio(money, payments)


def income_for_capacity(after_tax: Operand, tax_rate: Operand) -> Operand:
    """Income that leaves so much after tax, where a loss bears none.

    Units: after_tax [money], tax_rate [1]; gives [money].
    Source: arithmetic.
    """
    return ratio(after_tax, 1 - tax_rate * (after_tax > 0))


def share_owed(debt: Operand, equity: Operand) -> Operand:
    """Debt over all that is owned.

    Units: debt [money], equity [money]; gives [1].
    Source: farm_ratios.
    """
    return ratio(debt, debt + equity)


def return_earned(income: Operand, interest: Operand, unpaid_work: Operand) -> Operand:
    """What all that is owned earned, whoever lent the money for it, once unpaid work is counted.

    Units: income [money], interest [money], unpaid_work [money]; gives [money].
    Source: farm_ratios.
    """
    return income + interest - unpaid_work
