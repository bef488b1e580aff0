"""A bigger or smaller bag, judged: by what a place leaves where places limit, else by what a weight to sell costs."""

from __future__ import annotations

from farmbook.expr.functions import absolute, all_of, any_of, joined, ratio, sentence, where
from farmbook.expr.nodes import Expr, wrap
from farmbook.expr.sentences import either, figure, say
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.place.farm_plan import Farm
from farmbook.model.trials.bag_tried import BagTried
from farmbook.model.trials.weighed import Weighed
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["BagTrial"]


class BagTrial(Weighed, words="Bag to try"):
    """A year of the same places, or of the same weight to sell. How long the middle takes to heat through is not in it."""

    title = "Another bag"

    farm = uses(Farm)
    tried = uses(BagTried)
    one_more = uses(OneMore)
    forgone = uses(CropForgone)

    @line("Places limit a full farm", unit="flag")
    def by_place(self) -> Expr:
        """Of steamer, cooling, incubation or fruiting: then what a place leaves counts."""
        early = any_of(self.forgone.steamer.limiting > 0, self.forgone.cooling.limiting > 0)
        rooms = any_of(self.forgone.incubation.limiting > 0, self.forgone.fruiting.limiting > 0)
        return self.forgone.full * any_of(early, rooms)

    @line("A place would give less to sell with the bag to try", unit="flag")
    def less_to_sell(self) -> Expr:
        """Then what the last one sold brings is given up; else the next one is sold."""
        return self.tried.crop_of_it < self.tried.places

    @line("Bags compared: a weight to sell brings", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def brings(self) -> Expr:
        """The same for both."""
        customers = self.one_more.customers
        return where(self.less_to_sell, customers.last_one, customers.next_one)

    @line("A bag of now leaves, at that price", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def left_now(self) -> Expr:
        """As on the sheet Margins where the next one is sold."""
        dearer = self.brings - self.one_more.customers.next_one
        return self.one_more.bag_leaves + dearer * self.one_more.crop.taken_per_filled

    @line("The bag to try leaves, at that price", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def left_tried(self) -> Expr:
        """What its crop brings, less picking, packing and the bag."""
        return (self.brings - self.one_more.grown_in_money) * self.tried.taken - self.tried.in_money

    @line("Days that a fruiting place is taken, for each bag filled", unit="bag_live*day/bag_filled", source=ARITHMETIC)
    def place_days(self) -> Expr:
        """If it lives; until the place is washed."""
        return self.one_more.crop.live_per_filled * self.one_more.growing.harvest.days_place_taken

    @line("A bag of now leaves, for each day that a place is taken", unit="money/place/day", source=PARTIAL_BUDGET)
    def a_day_now(self) -> Expr:
        """Of the fruiting room, until it is washed."""
        return joined(ratio(self.left_now, self.place_days), "money/place/day")

    @line("The bag to try leaves, for each day that a place is taken", unit="money/place/day", source=PARTIAL_BUDGET)
    def a_day_tried(self) -> Expr:
        """Over the places that it takes; the days are those of now."""
        return joined(ratio(self.left_tried, self.place_days * self.tried.places), "money/place/day")

    # A year

    @line("Bag to try: what counts of it, for 1 of now", unit="1")
    def counts(self) -> Expr:
        """Its places where places limit, else its crop."""
        return where(self.by_place, self.tried.places, self.tried.crop_of_it)

    @line("Bags to try that do the work of one of now", unit="1")
    def for_one(self) -> Expr:
        """In the same places; or for the same weight to sell."""
        return ratio(wrap(1), self.counts)

    @line("Bags to try a week, in place of those of now", unit="bag_filled/week")
    def bags(self) -> Expr:
        """In the same places, or for the same weight to sell."""
        return self.farm.bags_filled_a_week * self.for_one

    @line("Bag to try: brings or saves a year", unit="money/year", source=PARTIAL_BUDGET)
    def gained(self) -> Expr:
        """What the same places leave with it; or what the bags of now cost, which it saves."""
        of_one = where(self.by_place, self.left_tried * self.for_one, self.one_more.bag_in_money)
        return of_one * self.farm.bags_filled_a_year

    @line("Bag to try: costs or gives up a year", unit="money/year", source=PARTIAL_BUDGET)
    def spent(self) -> Expr:
        """What the places leave now; or what the bags cost that give the same weight."""
        of_one = where(self.by_place, self.left_now, self.tried.in_money * self.for_one)
        return of_one * self.farm.bags_filled_a_year

    @line("Both bags give something to sell", unit="flag")
    def compared(self) -> Expr:
        """Else nothing can be compared."""
        return all_of(self.tried.has_crop, self.farm.bags_filled_a_year > 0)

    @line("Bag to try: does it pay", unit="1")
    def verdict(self) -> Expr:
        """By money alone."""
        return sentence(
            1 + self.tried.tried * (1 + self.compared * (1 + self.outcome)),
            "is the bag of now: nothing is changed",
            "cannot be compared: a bag gives nothing to sell",
            "is too close to call",
            "does not pay",
            "pays",
        )

    @line("Bag to try: what decides", unit="1")
    def rule(self) -> Expr:
        """By what limits the farm."""
        return sentence(
            1 + self.by_place,
            "Places do not limit: what a weight to sell costs decides.",
            "Places limit: what the same places leave decides.",
        )

    @line("Bag to try: by how much, in words", unit="1")
    def by_how_much(self) -> Expr:
        """In the same places, or for the same weight."""
        return say(
            ": ",
            figure(absolute(self.change), -2, named=False),
            either(self.loses, " a year less", " a year more"),
        )

    @line("Bag to try, in a sentence", unit="1")
    def told(self) -> Expr:
        """What it changes in a year."""
        return say(
            "A bag of ",
            figure(joined(self.tried.fill, "kg"), 1),
            " ",
            self.verdict,
            either(self.outcome * self.tried.tried * self.compared, self.by_how_much, ""),
            ".",
        )
