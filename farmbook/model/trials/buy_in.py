"""Bags bought in ready-made, against bags of your own on bought or on own spawn."""

from __future__ import annotations

from farmbook.expr.functions import absolute, all_of, joined, ratio, sentence
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.equipment_cost import EquipmentCost
from farmbook.model.trials.bag_to_fruiting import BagToFruiting
from farmbook.model.trials.other_spawn import OtherSpawn
from farmbook.model.trials.weighed import Weighed
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["BuyIn"]


class BuyIn(Weighed, words="Ready-made bags"):
    """As many bags in the fruiting room as now. Ready-made they take no steamer, lab or incubation room: more of them could be
    bought where one of these limits, which is not in it.
    """

    title = "Bags bought in ready-made"
    table = "trials"

    equipment = uses(EquipmentCost)
    bag = uses(BagToFruiting)
    other = uses(OtherSpawn)

    ready_price = number(
        "Ready-made bag, price delivered",
        unit="money/bag_inoculated",
        usual=(3, 10),
        hard=(0, 500),
        default=5.5,
        how="A quote for bags grown through, freight inside, of the size that you fill.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
        tried=True,
    )
    ready_lost = number(
        "Ready-made bags that never reach fruiting",
        unit="share",
        usual=(0, 0.08),
        hard=(0, 0.95),
        default=0.02,
        how="Bad on arrival and not made good, over those delivered.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    ready_ends = number(
        "Ready-made bags: cost a year that would end",
        unit="money/year",
        usual=(0, 20000),
        hard=(0, 1e7),
        default=0,
        how="Of steamer, lab and rooms given up: upkeep, rent, loss in value. Hours of making bags are counted already.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    # A bag that reaches the fruiting room

    @line("A bag moved to fruiting on bought spawn, in money", unit="money/bag_live", zero_is_none=True)
    def bought_in_money(self) -> Expr:
        """With the hours and losses of that way."""
        return self.other.bought(BagToFruiting.in_money)

    @line("A bag moved to fruiting on own spawn, in money", unit="money/bag_live", zero_is_none=True)
    def made_in_money(self) -> Expr:
        """With the hours and losses of that way; the lab itself left out."""
        return self.other.made(BagToFruiting.in_money)

    @line("A bag moved to fruiting on bought spawn, own hours in it", unit="money/bag_live", zero_is_none=True)
    def bought_in_full(self) -> Expr:
        """With the hours and losses of that way."""
        return self.other.bought(BagToFruiting.in_full)

    @line("A bag moved to fruiting on own spawn, own hours in it", unit="money/bag_live", zero_is_none=True)
    def made_in_full(self) -> Expr:
        """With the hours and losses of that way; the lab itself left out."""
        return self.other.made(BagToFruiting.in_full)

    @line("A ready-made bag that reaches fruiting costs", unit="money/bag_live", source=ARITHMETIC, zero_is_none=True)
    def ready(self) -> Expr:
        """Those that never get there are paid for by the others. It takes none of your hours until it is opened."""
        return ratio(self.ready_price, joined(1 - self.ready_lost, "bag_live/bag_inoculated"))

    # A year

    @line("Ready-made bags: save a year", unit="money/year", source=PARTIAL_BUDGET)
    def gained(self) -> Expr:
        """What your own bags cost in money as you make them now, and what would end."""
        return self.bag.in_money * self.equipment.live_a_year + self.ready_ends

    @line("Ready-made bags: cost a year", unit="money/year")
    def spent(self) -> Expr:
        """As many in the fruiting room as now."""
        return self.ready * self.equipment.live_a_year

    @line("Ready-made bags: change the year by, own hours in it", unit="money/year", source=PARTIAL_BUDGET)
    def change_in_full(self) -> Expr:
        """Your own hours until the bag is moved are free for something else."""
        return self.bag.in_full * self.equipment.live_a_year + self.ready_ends - self.spent

    @line(
        "Ready-made bag: price at which it is as good",
        unit="money/bag_inoculated",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def ties_in_money(self) -> Expr:
        """Delivered. Dearer, your own cost less in money."""
        return joined(ratio(self.gained, self.equipment.live_a_year), "money/bag_inoculated") * (1 - self.ready_lost)

    @line(
        "Ready-made bag: price at which it is as good, own hours in it",
        unit="money/bag_inoculated",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def ties_in_full(self) -> Expr:
        """Delivered."""
        return joined(ratio(self.change_in_full + self.spent, self.equipment.live_a_year), "money/bag_inoculated") * (
            1 - self.ready_lost
        )

    @line("Ready-made bags can be compared", unit="flag")
    def compared(self) -> Expr:
        """There is a price, and bags reach the fruiting room."""
        return all_of(self.ready_price > 0, self.equipment.live_a_year > 0)

    @line("Ready-made bags pay with own hours in it only", unit="flag")
    def with_hours_only(self) -> Expr:
        """They take more money, and free hours of yours that are worth more."""
        return all_of(self.clear > 0, self.change <= 0, self.change_in_full > 0)

    @line("Ready-made bags: do they pay", unit="1")
    def verdict(self) -> Expr:
        """By money alone: whose bags they are, and whether they come in time, is not in it."""
        return sentence(
            1 + self.compared * (1 + self.outcome + self.with_hours_only + self.with_hours_only),
            "nothing to compare",
            "too close to call",
            "they do not pay",
            "they pay",
            "they pay only where your own hours can earn elsewhere what they are worth to you",
        )

    @line("Ready-made bags: by how much, in words", unit="1")
    def by_how_much(self) -> Expr:
        """Of a year, in money."""
        return say(
            ", ",
            figure(absolute(self.change), -2, named=False),
            either(self.loses, " a year less in money", " a year more in money"),
        )

    @line("Ready-made bags, in a sentence", unit="1")
    def told(self) -> Expr:
        """Beside your own as you make them now."""
        return say(
            "Ready-made bags at ",
            figure(self.ready_price, 2, named=False),
            ": ",
            self.verdict,
            either(self.compared, self.by_how_much, ""),
            ".",
        )
