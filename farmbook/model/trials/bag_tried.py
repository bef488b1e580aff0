"""A bigger or smaller bag: what it costs by the time it fruits, what it gives, and what it takes of places and hours."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, any_of, maximum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.hours import Hours
from farmbook.model.mix.bag import Bag
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["BagTried"]


class BagTried(Section):
    """Mix, spawn and the work of mixing go by weight, steam by places, bench and carrying by the bag. Days, bags lost and the
    price of what is picked are those of now.
    """

    title = "The bag to try"
    table = "trials"

    bag = uses(Bag)
    crop = uses(Crop)
    hours = uses(Hours)
    one_more = uses(OneMore)

    wet_fill = number(
        "Wet mix in the bag to try",
        unit="kg_wet/bag_filled",
        usual=(2, 4.8),
        hard=(0.2, 30),
        default=3.2,
        how="What it would weigh, less the empty bag. Type that of now, and nothing is changed.",
        source=COMMON_PRACTICE,
        note="3.2 kg is 7 lb.",
        tried=True,
    )
    bag_price = number(
        "Bag to try: price of it empty",
        unit="money/bag_filled",
        usual=(0.20, 0.8),
        hard=(0, 20),
        optional=True,
        how="A quote with freight. Left empty, as much dearer as it holds more.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    bag_places = number(
        "Bag to try: places it takes, for one that a bag takes now",
        unit="1",
        usual=(0.6, 1.8),
        hard=(0.1, 20),
        optional=True,
        how="Bags of now that stand on a shelf and in the steamer, over those of the new size. Left empty, by weight.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    efficiency = number(
        "Bag to try: biological efficiency, above or below now",
        unit="share",
        usual=(-0.15, 0.1),
        hard=(-1, 1),
        default=0,
        how="Trial batches: weight over dry mix, over that of now, less 1. 0 where you know nothing of it.",
        source=COMMON_PRACTICE,
        note="From memory: large bags often give somewhat less for their dry mix, as they stay warmer in the middle.",
        tried=True,
    )

    # Against now

    @line("Wet mix in the bag, as tried", unit="kg_wet/bag_filled")
    def fill(self) -> Expr:
        """That of now where none is typed."""
        return where(self.wet_fill > 0, self.wet_fill, self.bag.wet_fill)

    @line("Bag to try: weight of it, for 1 of now", unit="1", source=ARITHMETIC)
    def bigger(self) -> Expr:
        """Above 1 it is the bigger bag."""
        return ratio(self.fill, self.bag.wet_fill, otherwise=1)

    @line("Price of an empty bag, as tried", unit="money/bag_filled")
    def price(self) -> Expr:
        """Your own figure where there is one; else by weight."""
        return where(self.given(self.bag_price), self.bag_price, self.bag.bag_price * self.bigger)

    @line("Bag to try: places, for 1 of now", unit="1")
    def places(self) -> Expr:
        """Your own figure where there is one; else by weight."""
        return where(self.given(self.bag_places), self.bag_places, self.bigger)

    @line("Bag to try: crop of it, for 1 of now", unit="1", source=ARITHMETIC)
    def crop_of_it(self) -> Expr:
        """By its mix, and what that gives."""
        return self.bigger * (1 + self.efficiency)

    @line("Another bag is tried", unit="flag")
    def tried(self) -> Expr:
        """0 where weight, price, places and efficiency are those of now: then nothing is changed."""
        return any_of(self.other_size > 0, self.dearer > SUM_TOLERANCE * self.price, absolute(self.efficiency) > 0)

    @line("Bag to try: price of it empty, more or less than now", unit="money/bag_filled")
    def dearer(self) -> Expr:
        """Whichever way."""
        return absolute(self.price - self.bag.bag_price)

    @line("The bag to try has another size", unit="flag")
    def other_size(self) -> Expr:
        """By weight or by places."""
        by_weight = absolute(self.bigger - 1) > SUM_TOLERANCE
        return any_of(by_weight, absolute(self.places - 1) > SUM_TOLERANCE)

    # What it costs

    @line("Mix in a bag, the bag itself left out", unit="money/bag_filled")
    def mix_cost(self) -> Expr:
        """Of what materials cost now."""
        return maximum(self.bag.material_cost - self.bag.packaging_cost, 0)

    @line("Bag to try: materials", unit="money/bag_filled")
    def material_cost(self) -> Expr:
        """Those of now, mix by weight, and the other empty bag; the tie is the same."""
        more_mix = self.mix_cost * (self.bigger - 1)
        return self.bag.material_cost + more_mix + self.price - self.bag.bag_price

    @line("Bag to try: steam, and rooms paid by the week", unit="money/bag_filled")
    def place_goods(self) -> Expr:
        """By places."""
        return (self.one_more.steam_goods + self.one_more.room_goods) * self.places

    @line("Bag to try: spawn in goods, for each bag filled", unit="money/bag_filled")
    def spawn_goods(self) -> Expr:
        """By weight."""
        return self.one_more.spawn_goods * self.crop.inoculated_per_filled * self.bigger

    @line("Bag to try: work that goes by weight", unit="person_min/bag_filled")
    def hours_by_weight(self) -> Expr:
        """Mixing, filling, and own spawn. Filling takes somewhat less: count it when you clock it."""
        return (self.one_more.mixing.hours_per_bag + self.one_more.spawn_hours) * self.bigger

    @line("Bag to try: work, before picking", unit="person_min/bag_filled")
    def bag_hours(self) -> Expr:
        """By weight, by places, and at the bench and in carrying as for a bag of now."""
        by_the_bag = self.one_more.bench_hours + self.one_more.handling_hours
        return self.hours_by_weight + self.one_more.steaming_hours * self.places + by_the_bag

    @line("Bag to try: costs in money", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def in_money(self) -> Expr:
        """Goods, and its hours at what the next hour costs in money."""
        goods = self.material_cost + self.place_goods + self.spawn_goods
        return goods + self.bag_hours * self.hours.hour_in_money

    # What it gives

    @line("Bag to try: taken to customers", unit="kg_taken/bag_filled")
    def taken(self) -> Expr:
        """Of a bag filled, lost ones counted."""
        return self.crop.taken_per_filled * self.crop_of_it

    @line("Bag to try: one more to sell costs, bag to fill, in money", unit="money/kg_taken", zero_is_none=True)
    def weight_costs(self) -> Expr:
        """Picking and packing go by weight, so only the bags differ."""
        return self.has_crop * (self.one_more.grown_in_money + ratio(self.in_money, self.taken))

    @line("The bag to try gives something to sell", unit="flag")
    def has_crop(self) -> Expr:
        """And so does one of now."""
        return self.taken > 0
