"""What is taken of a profit: income tax at one rate, and social insurance of the self-employed that it may deduct in part."""

from __future__ import annotations

from farmbook.expr.functions import Operand

__all__ = ["social_on_each_more", "tax_on_each_more"]


def social_on_each_more(rate: Operand, share: Operand) -> Operand:
    """Social insurance on each more of profit, where it is taken of a share of the profit.

    Units: rate [1], share [1]; gives [1].
    Source: social_insurance.
    """
    return rate * share


def tax_on_each_more(tax_rate: Operand, social: Operand, deducted: Operand) -> Operand:
    """Income tax and social insurance on each more of profit, where income tax is not taken of a part of the insurance.

    Units: tax_rate [1], social [1], deducted [1]; gives [1].
    Source: social_insurance.
    """
    return tax_rate * (1 - deducted * social) + social
