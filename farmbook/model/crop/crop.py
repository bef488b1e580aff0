"""The crop: bags lost on the way, fresh weight picked flush by flush, days it takes, and what reaches customers."""

from __future__ import annotations

from typing import Final

from farmbook.calc import crop as arithmetic
from farmbook.expr.functions import (
    all_of,
    any_of,
    at,
    joined,
    maximum,
    minimum,
    negation,
    ratio,
    running_product,
    running_sum,
    total,
    where,
)
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.axes import FLUSH, RECIPE
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, BIOLOGICAL_EFFICIENCY, COMMON_PRACTICE

__all__ = ["BY_BAG", "BY_EFFICIENCY", "BY_WEIGHT", "IN_ONE_SHARE", "STEP_BY_STEP", "Crop"]

BY_EFFICIENCY: Final = Option("efficiency", "biological efficiency")
BY_WEIGHT: Final = Option("weight", "weight picked per bag filled")
BY_BAG: Final = Option("bag", "weight picked from a bag")
STEP_BY_STEP: Final = Option("steps", "step by step")
IN_ONE_SHARE: Final = Option("share", "in one share")


class Crop(Section):
    """From bags filled to weight taken to customers, one step after the other."""

    title = "Bags lost, weight picked"
    most_give = ("flushes_kept", "yield_given")

    recipe = uses(Recipe)
    source = uses(SpawnSource)
    bag = uses(Bag)
    vessel = uses(VesselHeat)

    loss_at_steaming = number(
        "Bags lost at steaming in the cabinet",
        unit="share",
        usual=(0.003, 0.03),
        hard=(0, 1),
        default=0.01,
        how="Burst and leaking bags taken out before inoculation, over bags filled, ten loads together.",
        source=COMMON_PRACTICE,
    )
    loss_in_spawn_run = number(
        "Bags lost in the spawn run",
        unit="share",
        axes=(RECIPE,),
        usual=(0.01, 0.15),
        hard=(0, 1),
        default=0.04,
        how="Bags thrown out between inoculation and the move to fruiting, over bags inoculated, ten batches together.",
        source=COMMON_PRACTICE,
        note="From memory: about 2.5% for a lean mix, 4% for a common one, 8% for a rich one; outbreaks 20 to 60%.",
    )
    loss_before_first_pick = number(
        "Bags lost before the first pick",
        unit="share",
        usual=(0.005, 0.05),
        hard=(0, 1),
        default=0.015,
        how="Bags thrown out, or that never fruit, between the move to fruiting and the first pick, over bags moved.",
        source=COMMON_PRACTICE,
    )
    loss_between_flushes = number(
        "Bags lost since the flush before",
        unit="share",
        axes=(FLUSH,),
        usual=(0, 0.1),
        hard=(0, 1),
        default=(0, 0.015, 0.03, 0.05),
        how="Bags thrown out since the flush before, over bags picked in that flush. 0 for the first.",
        source=COMMON_PRACTICE,
    )
    flushes_kept = number(
        "Flushes kept before bags are dumped",
        unit="count",
        usual=(1, 3),
        hard=(1, 4),
        default=2,
        how="A whole number, 1 to 4: after which pick do bags leave the room?",
        source=COMMON_PRACTICE,
        decided=True,
    )
    yield_given = choice(
        "How the yield is given",
        BY_EFFICIENCY,
        BY_WEIGHT,
        BY_BAG,
        default=BY_EFFICIENCY,
        how="Over all bags filled, lost bags are in the weight already; from a bag, weigh what a bag gives that stands there.",
    )
    first_weight = number(
        "Picked in the first flush from a bag that stands there",
        unit="kg_picked/bag_live",
        usual=(0.2, 0.8),
        hard=(0, 20),
        default=0.42,
        how="Weigh the first pick of fifty bags, and divide by fifty.",
        source=COMMON_PRACTICE,
        note="From memory: about 18 of 100 of the wet bag. Read where the yield is given by the bag.",
    )
    later_weight = number(
        "Picked in all later flushes from a bag that stands there",
        unit="kg_picked/bag_live",
        usual=(0.1, 0.8),
        hard=(0, 20),
        default=0.24,
        how="Weigh the later picks of fifty bags, and divide by fifty. Nothing if you dump after the first.",
        source=COMMON_PRACTICE,
        note="From memory. It is shared out evenly among the later flushes you keep.",
    )
    losses_given = choice(
        "How lost bags are given",
        STEP_BY_STEP,
        IN_ONE_SHARE,
        default=STEP_BY_STEP,
        how="In one share, if you know only how many bags of a hundred never fruit.",
        source=COMMON_PRACTICE,
    )
    never_fruits = number(
        "Bags that never fruit, of those filled",
        unit="share",
        usual=(0.02, 0.2),
        hard=(0, 1),
        default=0.065,
        how="Bags filled less bags that gave a first pick, over bags filled, ten batches together.",
        source=COMMON_PRACTICE,
        note="From memory. Read where lost bags are given in one share; own spawn's extra loss is in it then.",
    )
    efficiency_given = number(
        "Biological efficiency by flush: fresh weight picked over dry mix, spawn left out",
        unit="kg_picked/kg_dry",
        axes=(FLUSH, RECIPE),
        usual=(0.03, 0.9),
        hard=(0, 3),
        default=(0.46, 0.26, 0.13, 0.06),
        how="Weight picked in the flush over the dry mix of the bags still there for it; the mean of ten batches.",
        source=COMMON_PRACTICE,
        note="From memory; oyster crops usually give 45 to 130% in all flushes. Replace it early.",
    )
    weight_given = number(
        "Weight picked per bag filled, by flush, from your records",
        unit="kg_picked/bag_filled",
        axes=(FLUSH,),
        usual=(0.02, 1.5),
        hard=(0, 20),
        optional=True,
        how="All weight picked in the flush over all bags filled for those batches, lost ones counted too.",
        source=COMMON_PRACTICE,
    )
    trim = number(
        "Trimmed off and culled, share of weight picked",
        unit="share",
        usual=(0.02, 0.12),
        hard=(0, 1),
        default=0.055,
        how="Weigh what goes in the bin at packing for a week, over weight picked.",
        source=COMMON_PRACTICE,
    )
    shrink = number(
        "Weight lost in the cold room and on the road, share of weight packed",
        unit="share",
        usual=(0.01, 0.10),
        hard=(0, 1),
        default=0.035,
        how="Weigh some packed boxes, and weigh them again when they reach the customer.",
        source=COMMON_PRACTICE,
        note="Mushrooms lose water all the time, several times faster where it is warm and dry.",
    )

    # Bags

    @line("Bags lost at steaming, steamer in use", unit="share")
    def loss_steamed(self) -> Expr:
        """The pressure vessel has a loss of its own. No more than all of them can be lost."""
        return minimum(where(self.vessel.in_use, self.vessel.loss_at_steaming, self.loss_at_steaming), 1)

    @line("Bags lost in the spawn run, recipe chosen", unit="share")
    def chosen_loss_in_spawn_run(self) -> Expr:
        """A richer mix usually loses more, so each recipe has its own loss. With that of own spawn, at most all bags."""
        in_one_share = self.chose(self.losses_given, IN_ONE_SHARE)
        return where(in_one_share, self.loss_from_share, self.loss_by_recipe)

    @line("Bags lost in the spawn run, as typed for the recipe", unit="share")
    def loss_by_recipe(self) -> Expr:
        """With that of own spawn, at most all bags."""
        return total(self.loss_of_each_recipe * self.recipe.chosen, RECIPE)

    @line("Bags lost in the spawn run, own spawn's with them, as typed", unit="share", axes=(RECIPE,))
    def loss_of_each_recipe(self) -> Expr:
        """At most all bags."""
        return minimum(self.loss_in_spawn_run + self.source.extra_loss_counted, 1)

    @line("Bags lost in the spawn run, out of all that never fruit", unit="share", source=ARITHMETIC)
    def loss_from_share(self) -> Expr:
        """What the losses at steaming and before the first pick leave of them."""
        return maximum(1 - ratio(arithmetic.surviving_share(self.never_fruits), self.left_by_others), 0)

    @line("Bags left by the losses at steaming and before the first pick", unit="share", source=ARITHMETIC)
    def left_by_others(self) -> Expr:
        """Of those filled, if none were lost in the spawn run."""
        return arithmetic.surviving_share(self.loss_steamed) * self.first_pick_per_live

    @line("Bags inoculated per bag filled", unit="bag_inoculated/bag_filled", source=ARITHMETIC)
    def inoculated_per_filled(self) -> Expr:
        """Bags that come whole out of the steamer."""
        return joined(arithmetic.surviving_share(self.loss_steamed), "bag_inoculated/bag_filled")

    @line("Bags moved to fruiting per bag inoculated", unit="bag_live/bag_inoculated", source=ARITHMETIC)
    def live_per_inoculated(self) -> Expr:
        """Bags alive at the end of the spawn run; they are what this book calls surviving bags."""
        return joined(arithmetic.surviving_share(self.chosen_loss_in_spawn_run), "bag_live/bag_inoculated")

    @line("Bags moved to fruiting per bag filled", unit="bag_live/bag_filled", source=ARITHMETIC)
    def live_per_filled(self) -> Expr:
        """Each loss is of the bags that reach its step, so what is left multiplies; losses are never added up."""
        return self.inoculated_per_filled * self.live_per_inoculated

    @line("Bags that give a first pick, of those moved to fruiting", unit="share", source=ARITHMETIC)
    def first_pick_per_live(self) -> Expr:
        """Opened bags that go mouldy or never pin fall out here."""
        return arithmetic.surviving_share(self.loss_before_first_pick)

    @line("Number of the flush", unit="count", axes=(FLUSH,))
    def flush_number(self) -> Expr:
        """1 for the first."""
        return running_sum(1, FLUSH)

    @line("Flush is kept", unit="flag", axes=(FLUSH,))
    def flush_kept(self) -> Expr:
        """1 for the flushes picked before the bag is dumped; those with 0 give no weight."""
        return self.flush_number <= self.flushes_kept

    @line("Flushes counted", unit="count")
    def flushes_counted(self) -> Expr:
        """Whole flushes that the sums below take in; it must be the number you typed."""
        return total(self.flush_kept, FLUSH)

    @line("Bags still standing, of those that gave a first pick", unit="share", axes=(FLUSH,), source=ARITHMETIC)
    def still_standing(self) -> Expr:
        """All of them at the first flush; fewer each time after it."""
        return running_product(arithmetic.surviving_share(self.loss_between_flushes), FLUSH)

    @line("Bags that reach the flush, of those moved to fruiting", unit="share", axes=(FLUSH,), source=ARITHMETIC)
    def reaching(self) -> Expr:
        """Bags there to be picked in this flush, for each bag that was opened."""
        return self.first_pick_per_live * self.still_standing

    @line("Bags that reach the flush, of those filled", unit="bag_live/bag_filled", axes=(FLUSH,), source=ARITHMETIC)
    def filled_reaching(self) -> Expr:
        """The whole way from the filling table to this flush."""
        return self.live_per_filled * self.reaching

    @line("Bags standing when dumped, of those moved to fruiting", unit="share")
    def standing_at_end(self) -> Expr:
        """Bags that give the last flush kept; the others were taken out before."""
        return at(self.reaching, FLUSH, maximum(self.flushes_counted, 1))

    # Biological efficiency

    @line("Dry mix in a surviving bag", unit="kg_dry/bag_live")
    def dry_mix_per_live(self) -> Expr:
        """The mix it was filled with; what the spawn run burns off is not taken away."""
        return joined(self.bag.dry_mass, "kg_dry/bag_live")

    @line(
        "Biological efficiency over all bags filled, from your records",
        unit="kg_picked/kg_dry",
        axes=(FLUSH,),
        source=BIOLOGICAL_EFFICIENCY,
        zero_is_none=True,
    )
    def recorded_efficiency(self) -> Expr:
        """Weight over bags filled holds the lost bags already; it is lower than what a bag gives that lives."""
        return arithmetic.biological_efficiency(self.weight_given, self.bag.dry_mass)

    @line(
        "Biological efficiency of bags that reach the flush, from your records",
        unit="kg_picked/kg_dry",
        axes=(FLUSH,),
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def recorded_efficiency_of_survivors(self) -> Expr:
        """The losses are taken out again by dividing, so that they are not counted twice further down."""
        return arithmetic.efficiency_of_survivors(self.recorded_efficiency, joined(self.filled_reaching, "share"))

    @line("Biological efficiency by flush and recipe", unit="kg_picked/kg_dry", axes=(FLUSH, RECIPE))
    def efficiency_by_recipe(self) -> Expr:
        """What you typed; for the recipe chosen, what your weights come to if you chose to give weights."""
        weighed = all_of(negation(self.chose(self.yield_given, BY_EFFICIENCY)), self.recipe.chosen)
        return where(weighed, self.efficiency_by_weight, self.efficiency_given)

    @line("Weight that you give for the flush, from a bag that stands there", unit="kg_picked/bag_live", axes=(FLUSH,))
    def weight_from_a_bag(self) -> Expr:
        """The first flush; the later ones share the rest evenly."""
        return where(self.flush_number <= 1, self.first_weight, self.each_later_weight) * self.flush_kept

    @line("Weight that you give for each later flush, from a bag that stands there", unit="kg_picked/bag_live")
    def each_later_weight(self) -> Expr:
        """In even parts."""
        return ratio(self.later_weight, self.flushes_counted - 1)

    @line("Biological efficiency by weight", unit="kg_picked/kg_dry", axes=(FLUSH,), source=BIOLOGICAL_EFFICIENCY)
    def efficiency_by_weight(self) -> Expr:
        """From the weight of a bag, or from your records over all bags filled, as you chose."""
        by_bag = self.chose(self.yield_given, BY_BAG)
        return where(by_bag, self.efficiency_by_bag, self.recorded_efficiency_of_survivors)

    @line(
        "Biological efficiency by the weight of a bag",
        unit="kg_picked/kg_dry",
        axes=(FLUSH,),
        source=BIOLOGICAL_EFFICIENCY,
    )
    def efficiency_by_bag(self) -> Expr:
        """Over the dry mix in it."""
        return ratio(self.weight_from_a_bag, self.dry_mix_per_live)

    @line("Biological efficiency by flush, recipe chosen", unit="kg_picked/kg_dry", axes=(FLUSH,))
    def efficiency(self) -> Expr:
        """Fresh weight picked per 100 of dry mix, spawn left out, of a bag that reaches the flush."""
        return total(self.efficiency_by_recipe * self.recipe.chosen, RECIPE)

    @line("Biological efficiency in all, spawn left out", unit="kg_picked/kg_dry", source=BIOLOGICAL_EFFICIENCY)
    def efficiency_in_all(self) -> Expr:
        """Of a bag that stands to the end. Plan on this one; say "on dry mix, spawn left out" when you quote it."""
        return total(self.efficiency * self.flush_kept, FLUSH)

    # Fresh weight

    @line("Fresh weight from a bag that reaches the flush", unit="kg_picked/bag_live", axes=(FLUSH,))
    def fresh_from_bag_there(self) -> Expr:
        """What you see on the scale when you weigh the pick of one bag; nothing for flushes that are not kept."""
        return arithmetic.picked_mass(self.efficiency, self.dry_mix_per_live) * self.flush_kept

    @line("Fresh weight per bag moved to fruiting, by flush", unit="kg_picked/bag_live", axes=(FLUSH,))
    def fresh_per_live(self) -> Expr:
        """Bags lost since they were opened are counted."""
        return self.fresh_from_bag_there * self.reaching

    @line("Fresh weight per bag inoculated, by flush", unit="kg_picked/bag_inoculated", axes=(FLUSH,))
    def fresh_per_inoculated(self) -> Expr:
        """Bags lost in the spawn run are counted too."""
        return self.fresh_per_live * self.live_per_inoculated

    @line("Fresh weight per bag filled, by flush", unit="kg_picked/bag_filled", axes=(FLUSH,))
    def fresh_per_filled(self) -> Expr:
        """All lost bags are counted."""
        return self.fresh_per_inoculated * self.inoculated_per_filled

    @line("Fresh weight from a bag that stands to the end", unit="kg_picked/bag_live")
    def fresh_in_all_flushes(self) -> Expr:
        """All flushes kept, from one and the same bag."""
        return total(self.fresh_from_bag_there, FLUSH)

    @line("Picked per bag moved to fruiting", unit="kg_picked/bag_live")
    def picked_per_live(self) -> Expr:
        """All flushes kept."""
        return total(self.fresh_per_live, FLUSH)

    @line("Picked per bag inoculated", unit="kg_picked/bag_inoculated")
    def picked_per_inoculated(self) -> Expr:
        """All flushes kept."""
        return total(self.fresh_per_inoculated, FLUSH)

    @line("Picked per bag filled", unit="kg_picked/bag_filled")
    def picked_per_filled(self) -> Expr:
        """All flushes kept. A change needs no weight flush by flush for it."""
        there = total(self.efficiency * self.flush_kept * self.reaching, FLUSH)
        return there * self.dry_mix_per_live * self.live_per_filled

    # What reaches customers

    @line("Trimmed and culled per bag filled", unit="kg_picked/bag_filled")
    def trimmed_per_filled(self) -> Expr:
        """Stem ends and what is too poor to sell; it was picked and paid for all the same."""
        return self.picked_per_filled * minimum(self.trim, 1)

    @line("Packed per bag filled", unit="kg_packed/bag_filled", source=ARITHMETIC)
    def packed_per_filled(self) -> Expr:
        """What is left of the pick after trimming."""
        return joined(self.picked_per_filled * arithmetic.surviving_share(self.trim), "kg_packed/bag_filled")

    @line("Dried away before sale, per bag filled", unit="kg_packed/bag_filled")
    def shrunk_per_filled(self) -> Expr:
        """Water that leaves the mushrooms between packing and the customer's scale."""
        return self.packed_per_filled * minimum(self.shrink, 1)

    @line("Taken to customers per bag filled", unit="kg_taken/bag_filled", source=ARITHMETIC)
    def taken_per_filled(self) -> Expr:
        """What can be sold; what then stays unsold is taken off where the selling is worked out, not here."""
        return joined(self.packed_per_filled * arithmetic.surviving_share(self.shrink), "kg_taken/bag_filled")

    # Checks

    @line("Weight missing for a flush that is kept", unit="flag", axes=(FLUSH,))
    def weight_missing(self) -> Expr:
        """1 where a flush is kept and your records give no weight for it."""
        return where(self.given(self.weight_given), 0, self.flush_kept)

    @check(
        "Flushes kept is a whole number from 1 to 4",
        kind="error",
        says="Flushes kept must be 1, 2, 3 or 4; see the inputs of the crop.",
    )
    def flushes_whole(self) -> Expr:
        """The flushes counted fall short of the number typed when it is broken or above four."""
        return all_of(self.flushes_kept >= 1, self.flushes_counted >= self.flushes_kept)

    @check(
        "Some bags reach every flush kept",
        kind="error",
        says=(
            "Bags lost, own spawn's extra loss with them, come to 100% or more, so no bag is left for a flush that is "
            "kept; see the bags lost at each step."
        ),
    )
    def bags_survive(self) -> Expr:
        """Without a bag there is no cost per bag and no weight to work out."""
        return total(self.flush_kept * (self.filled_reaching <= 0), FLUSH) <= 0

    @check(
        "Some weight is left to sell",
        kind="error",
        says=(
            "Nothing is left to sell, so no cost of a weight can be worked out: see the bags lost, the yield, and the "
            "shares trimmed off and dried away."
        ),
    )
    def some_is_left(self) -> Expr:
        """Costs for each weight are then said in words, never shown as nothing."""
        return self.taken_per_filled > 0

    @check(
        "Loss before the first flush typed once",
        kind="error",
        says="The first row of bags lost since the flush before must be 0: type them as lost before the first pick.",
    )
    def first_loss_once(self) -> Expr:
        """No flush comes before the first, and what is typed there would count on top."""
        return at(self.loss_between_flushes, FLUSH, wrap(1)) <= 0

    @check(
        "Every flush kept has a weight where the yield is given by weight",
        kind="error",
        says="You chose to give weight per bag filled, but a flush that is kept has none: type it, or keep fewer.",
    )
    def weights_typed(self) -> Expr:
        """A flush without a weight would count as nothing picked."""
        return any_of(negation(self.chose(self.yield_given, BY_WEIGHT)), total(self.weight_missing, FLUSH) <= 0)

    @check(
        "Bags that never fruit cover the other losses",
        kind="alert",
        says="Fewer bags are said never to fruit than are lost at steaming and before the first pick: correct one of them.",
    )
    def share_is_enough(self) -> Expr:
        """Nothing would be left to be lost in the spawn run."""
        by_steps = self.chose(self.losses_given, STEP_BY_STEP)
        return any_of(by_steps, arithmetic.surviving_share(self.never_fruits) <= self.left_by_others)
