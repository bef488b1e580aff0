"""What one more bag costs, and one more to sell: of bags already grown, or with a bag to fill for it."""

from __future__ import annotations

from farmbook.expr.functions import joined, maximum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.labour.picking import Picking
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["OneMore"]


class OneMore(Section):
    """Only what grows with a bag: the charge for the highest kW, rent and rounds are there without it."""

    title = "One more bag, and one more to sell"

    farm = uses(Farm)
    bag = uses(Bag)
    crop = uses(Crop)
    spawn = uses(Spawn)
    source = uses(SpawnSource)
    own_spawn = uses(OwnSpawnWork)
    steamer_in_use = uses(SteamerInUse)
    mixing = uses(Mixing)
    growing = uses(GrowingCost)
    customers = uses(CustomerYear)
    picking = uses(Picking)
    hours = uses(Hours)

    # A bag

    @line("Spawn of one more bag, in goods", unit="money/bag_inoculated")
    def spawn_goods(self) -> Expr:
        """Bought; or materials and cooking of your own."""
        return where(self.source.made, self.own_spawn_goods, self.spawn.cost_per_bag_inoculated)

    @line("Own spawn in a bag, in goods", unit="money/bag_inoculated")
    def own_spawn_goods(self) -> Expr:
        """Materials and cooking of a week, over its bags."""
        own = self.own_spawn.materials_in_all + self.own_spawn.cooking_cost
        return ratio(own, self.spawn.bags_inoculated_a_week)

    @line("Steaming one more bag, energy and water", unit="money/bag_filled")
    def steam_goods(self) -> Expr:
        """Its part of a load, with its own spawn's. The charge for your highest kW does not grow with it."""
        load = self.steamer_in_use.energy_cost_per_run + self.steamer_in_use.water_cost_per_run
        return load * self.loads_for_a_bag

    @line("Loads that one more bag takes", unit="run/bag_filled")
    def loads_for_a_bag(self) -> Expr:
        """Its place, and those of own spawn steamed for it."""
        return ratio(self.steamer_in_use.loads_a_week, self.farm.bags_filled_a_week)

    @line("Rooms paid by the week, for one more bag", unit="money/bag_filled")
    def room_goods(self) -> Expr:
        """Nothing as long as rent and power stand with the bills."""
        fruiting = self.growing.fruiting_room_cost * self.crop.live_per_filled
        return self.growing.incubation_room_cost * self.crop.inoculated_per_filled + fruiting

    @line("One more bag filled, in goods", unit="money/bag_filled")
    def bag_goods(self) -> Expr:
        """Mix, bag and tie, steam, and spawn where it comes whole out of the steamer."""
        spawn = self.spawn_goods * self.crop.inoculated_per_filled
        return self.bag.material_cost + self.steam_goods + spawn + self.room_goods

    @line("One more bag: work until it is inoculated", unit="person_min/bag_filled")
    def starting_hours(self) -> Expr:
        """Filling, its part of a load, and the bench."""
        return self.mixing.hours_per_bag + self.steaming_hours + self.bench_hours

    @line("One more bag: work of steaming it", unit="person_min/bag_filled")
    def steaming_hours(self) -> Expr:
        """Its part of a load."""
        return self.steamer_in_use.labour_hours_per_run * self.loads_for_a_bag

    @line("One more bag: work at the bench", unit="person_min/bag_filled")
    def bench_hours(self) -> Expr:
        """If it comes whole out of the steamer; setting up is there without it."""
        return ratio(self.crop.inoculated_per_filled, self.spawn.bags_per_hour)

    @line("One more bag: work of carrying it", unit="person_min/bag_filled")
    def handling_hours(self) -> Expr:
        """Onto the shelf, into the fruiting room, and out in the end."""
        return self.shelving_hours + self.opening_hours + self.clearing_hours + self.culling_hours

    @line("One more bag: work of shelving it", unit="person_min/bag_filled")
    def shelving_hours(self) -> Expr:
        """If it comes whole out of the steamer."""
        return ratio(self.crop.inoculated_per_filled, self.growing.shelving_rate)

    @line("One more bag: work of opening it", unit="person_min/bag_filled")
    def opening_hours(self) -> Expr:
        """If it lives through the spawn run."""
        return ratio(self.crop.live_per_filled, self.growing.opening_rate)

    @line("One more bag: work of taking it out if it is lost", unit="person_min/bag_filled")
    def culling_hours(self) -> Expr:
        """By the share of bags lost on the way."""
        return ratio(self.lost, self.growing.culling_rate)

    @line("Bags lost on the way, of those filled", unit="bag_inoculated/bag_filled")
    def lost(self) -> Expr:
        """All that do not stand to the end."""
        return joined(1 - joined(self.standing, "share"), "bag_inoculated/bag_filled")

    @line("Bags that stand to the end, of those filled", unit="bag_live/bag_filled")
    def standing(self) -> Expr:
        """The others are taken out on the way."""
        return self.crop.live_per_filled * self.crop.standing_at_end

    @line("One more bag: work on its own spawn", unit="person_min/bag_filled")
    def spawn_hours(self) -> Expr:
        """What grows with the bags; nothing where spawn is bought."""
        return ratio(self.spawn_hours_a_week, self.farm.bags_filled_a_week)

    @line("Hours of own spawn that grow with the bags, a week", unit="person_hour/week")
    def spawn_hours_a_week(self) -> Expr:
        """All but the lab's fixed ones."""
        growing = self.own_spawn.hours_a_week - self.own_spawn.weekly_hours
        return maximum(growing * self.source.made, 0)

    @line("One more bag: work of clearing it", unit="person_min/bag_filled")
    def clearing_hours(self) -> Expr:
        """If it stands to the end."""
        return ratio(self.standing, self.growing.clearing_rate)

    @line("One more bag: work, before picking", unit="person_min/bag_filled")
    def bag_hours(self) -> Expr:
        """All hands."""
        return self.starting_hours + self.handling_hours + self.spawn_hours

    @line("One more bag filled costs, in money", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def bag_in_money(self) -> Expr:
        """Goods, and its hours at what the next hour costs in money."""
        return self.bag_goods + self.bag_hours * self.hours.hour_in_money

    @line("One more bag filled costs, own hours in it", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def bag_in_full(self) -> Expr:
        """Goods, and its hours at what the next hour costs with your own."""
        return self.bag_goods + self.bag_hours * self.hours.hour_in_full

    # A weight to sell

    @line("Picking one more by the piece", unit="money/kg_taken")
    def piece(self) -> Expr:
        """Nothing where picking is paid by the hour."""
        by_piece = self.picking.pick_cost * self.picking.by_piece
        return ratio(by_piece * self.crop.picked_per_filled, self.crop.taken_per_filled)

    @line("Picking one more by the hour", unit="person_min/kg_taken")
    def picking_hours(self) -> Expr:
        """More is picked than sold, by what is trimmed and dried away. Nothing where picking is paid by the piece."""
        return ratio(self.picking_a_bag, self.crop.taken_per_filled)

    @line("Picking the crop of a bag by the hour", unit="person_min/bag_filled")
    def picking_a_bag(self) -> Expr:
        """Nothing where picking is paid by the piece."""
        return ratio(self.crop.picked_per_filled * (1 - self.picking.by_piece), self.picking.pick_rate)

    @line("Packing the crop of a bag", unit="person_min/bag_filled")
    def packing_a_bag(self) -> Expr:
        """What is left after trimming."""
        return ratio(self.crop.packed_per_filled, self.picking.pack_rate)

    @line("Packing one more", unit="person_min/kg_taken")
    def packing_hours(self) -> Expr:
        """More is packed than sold, by what dries away."""
        return ratio(self.packing_a_bag, self.crop.taken_per_filled)

    @line("One more to sell, already grown, in money", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def grown_in_money(self) -> Expr:
        """Picking and packing it; the box and the fees come off what it brings."""
        return self.piece + (self.picking_hours + self.packing_hours) * self.hours.hour_in_money

    @line("One more to sell, already grown, own hours in it", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def grown_in_full(self) -> Expr:
        """The same with your own hours."""
        return self.piece + (self.picking_hours + self.packing_hours) * self.hours.hour_in_full

    @line("Of it the bags, in money", unit="money/kg_taken", source=ARITHMETIC, zero_is_none=True)
    def bags_in_money(self) -> Expr:
        """Bags to fill for it, over what they bring to customers."""
        return ratio(self.bag_in_money, self.crop.taken_per_filled)

    @line("Of it the bags, own hours in it", unit="money/kg_taken", source=ARITHMETIC, zero_is_none=True)
    def bags_in_full(self) -> Expr:
        """The same with your own hours."""
        return ratio(self.bag_in_full, self.crop.taken_per_filled)

    @line("One more to sell, bag to fill, in money", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def to_fill_in_money(self) -> Expr:
        """Below what it brings, another bag pays, if there is a place and a hand for it."""
        return self.grown_in_money + self.bags_in_money

    @line("One more to sell, bag to fill, own hours in it", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def to_fill_in_full(self) -> Expr:
        """Below what it brings, another bag pays you for your time too."""
        return self.grown_in_full + self.bags_in_full

    @line("One more bag filled leaves", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def bag_leaves(self) -> Expr:
        """What its crop brings from who takes the next one, less what the bag and its crop cost in money."""
        brings = self.customers.next_one - self.grown_in_money
        return brings * self.crop.taken_per_filled - self.bag_in_money

    @line("One more, in a sentence", unit="1")
    def told(self) -> Expr:
        """In a sentence."""
        return say(
            "One more to sell costs ",
            figure(self.to_fill_in_money, 2, named=False),
            " in money with the bag to fill, ",
            figure(self.to_fill_in_full, 2, named=False),
            " with your own hours, and brings ",
            figure(self.customers.next_one, 2),
            ".",
        )
