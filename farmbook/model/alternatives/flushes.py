"""Each flush as it would be if bags were kept for it: its weight, its days, what it leaves of a bag and for each day."""

from __future__ import annotations

from farmbook.calc.crop import picked_mass, surviving_share
from farmbook.expr.functions import all_of, at, joined, maximum, negation, ratio, running_sum, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import FLUSH, RECIPE
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import BY_EFFICIENCY, Crop
from farmbook.model.mix.recipe import Recipe
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["Flushes"]


class Flushes(Section):
    """For a bag that reaches the fruiting room. A later flush brings what the last weight sold brings, not the average price."""

    title = "Flush by flush, kept or not"

    recipe = uses(Recipe)
    crop = uses(Crop)
    harvest = uses(Harvest)
    customers = uses(CustomerYear)
    one_more = uses(OneMore)

    @line("Biological efficiency by flush, as typed for the recipe chosen", unit="kg_picked/kg_dry", axes=(FLUSH,))
    def typed_efficiency(self) -> Expr:
        """Where you give weights, only the shape of it is used."""
        return total(self.crop.efficiency_given * self.recipe.chosen, RECIPE)

    @line("Last flush kept: as typed", unit="kg_picked/kg_dry")
    def typed_last(self) -> Expr:
        """What later flushes are held against."""
        return at(self.typed_efficiency, FLUSH, self.last_kept)

    @line("Last flush kept: counted", unit="kg_picked/kg_dry")
    def counted_last(self) -> Expr:
        """By efficiency or by your weights."""
        return at(self.crop.efficiency, FLUSH, self.last_kept)

    @line("Number of the last flush kept", unit="count")
    def last_kept(self) -> Expr:
        """1 at least."""
        return maximum(self.crop.flushes_counted, 1)

    @line("Flush not kept, with no weight of yours", unit="flag", axes=(FLUSH,))
    def not_known(self) -> Expr:
        """Where you give weights you have none for what you never picked."""
        by_weight = negation(self.crop.chose(self.crop.yield_given, BY_EFFICIENCY))
        return all_of(by_weight, negation(self.crop.flush_kept), self.crop.efficiency <= 0)

    @line("Biological efficiency if the flush is kept", unit="kg_picked/kg_dry", axes=(FLUSH,), source=ARITHMETIC)
    def efficiency(self) -> Expr:
        """One never picked falls off from your last as the efficiencies typed on Tables do."""
        return where(self.not_known, self.typed_efficiency * self.counted_over_typed, self.crop.efficiency)

    @line("Last flush kept: counted, over typed", unit="share")
    def counted_over_typed(self) -> Expr:
        """By so much a flush never picked is moved."""
        return ratio(self.counted_last, self.typed_last)

    @line("Fresh weight, if kept", unit="kg_picked/bag_live", axes=(FLUSH,))
    def fresh(self) -> Expr:
        """Bags lost since they were opened are counted."""
        return picked_mass(self.efficiency, self.crop.dry_mix_per_live) * self.crop.reaching

    @line("Days a place is taken, dumped then", unit="day", axes=(FLUSH,))
    def days(self) -> Expr:
        """The days now, and what the flushes between add or spare."""
        return self.harvest.days_place_taken + self.harvest.day_of_flush - self.days_now

    @line("Days from inoculation to the end of the last flush kept", unit="day")
    def days_now(self) -> Expr:
        """As the days of the flushes are typed."""
        return at(self.harvest.day_of_flush, FLUSH, self.last_kept)

    @line("Taken to customers, of what is picked", unit="kg_taken/kg_picked")
    def taken_per_picked(self) -> Expr:
        """Trimmed and dried away taken off."""
        kept = surviving_share(self.crop.trim) * surviving_share(self.crop.shrink)
        return joined(kept, "kg_taken/kg_picked")

    @line("A weight of the flush brings", unit="money/kg_taken", axes=(FLUSH,), source=PARTIAL_BUDGET)
    def brings(self) -> Expr:
        """Of a flush kept, what the last weight sold brings; of one more, what the next one would."""
        return where(self.crop.flush_kept, self.customers.last_one, self.customers.next_one)

    @line("The flush leaves", unit="money/bag_live", axes=(FLUSH,), source=PARTIAL_BUDGET)
    def leaves(self) -> Expr:
        """Picking and packing paid."""
        return self.fresh * self.taken_per_picked * (self.brings - self.one_more.grown_in_money)

    @line("A bag that reaches the fruiting room has cost", unit="money/bag_live")
    def bag_cost(self) -> Expr:
        """In money, those lost before it too."""
        return ratio(self.one_more.bag_in_money, self.crop.live_per_filled)

    @line("All so far leave, bag paid", unit="money/bag_live", axes=(FLUSH,), source=PARTIAL_BUDGET)
    def leaves_so_far(self) -> Expr:
        """If the bag is dumped after this flush."""
        return self.left_so_far - self.bag_cost

    @line("All flushes so far leave, for a bag moved to fruiting", unit="money/bag_live", axes=(FLUSH,))
    def left_so_far(self) -> Expr:
        """The bag not yet paid."""
        return running_sum(self.leaves, FLUSH)

    @line(
        "Left for each of these days",
        unit="money/place/day",
        axes=(FLUSH,),
        source=PARTIAL_BUDGET,
    )
    def leaves_a_day(self) -> Expr:
        """Numerator and days are of the same bag. Where rooms are full, this is what counts."""
        return ratio(joined(self.leaves_so_far, "money/place"), self.days)
