"""What lost bags cost: spread over the survivors, and for one bag more or less."""

from __future__ import annotations

from farmbook.expr.functions import Operand, ratio

__all__ = ["break_even_loss_gap", "cost_of_a_lost_bag", "cost_per_survivor", "margin_lost"]


def cost_per_survivor(spent: Operand, removal: Operand, loss: Operand, survival: Operand) -> Operand:
    """Cost that each surviving bag carries: what was spent on all, and the removal of those lost, over those left.

    Units: spent [money/bag_inoculated], removal [money/bag_inoculated], loss [1], survival [bag_live/bag_inoculated];
    gives [money/bag_live].
    Source: arithmetic.
    """
    return ratio(spent + removal * loss, survival)


def margin_lost(margin: Operand, cannot_be_refilled: Operand) -> Operand:
    """What a lost bag would have left after its own remaining costs; nothing where its place can be filled again.

    Units: margin [money/bag_inoculated], cannot_be_refilled [flag]; gives [money/bag_inoculated].
    Source: arithmetic.
    """
    return margin * cannot_be_refilled


def cost_of_a_lost_bag(spent: Operand, removal: Operand, margin_lost: Operand) -> Operand:
    """Cost of one bag lost; `spent` is before it is spread over survivors, so it does not depend on how many are lost.

    Units: spent [money/bag_inoculated], removal [money/bag_inoculated], margin_lost [money/bag_inoculated];
    gives [money/bag_inoculated].
    Source: arithmetic.
    """
    return spent + removal + margin_lost


def break_even_loss_gap(extra_cost: Operand, bags: Operand, cost_of_a_lost_bag: Operand) -> Operand:
    """Points of loss that a dearer way must save to pay for itself.

    Units: extra_cost [money/week], bags [bag_inoculated/week], cost_of_a_lost_bag [money/bag_inoculated]; gives [1].
    Source: arithmetic.
    """
    return ratio(extra_cost, bags * cost_of_a_lost_bag)
