"""Recipes side by side, each with its own loss and its own crop: what a bag inoculated leaves, and a place for each day."""

from __future__ import annotations

from farmbook.calc.crop import picked_mass, surviving_share
from farmbook.expr.functions import joined, maximum, minimum, ratio, sentence, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.alternatives.flushes import Flushes
from farmbook.model.axes import FLUSH, RECIPE
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import IN_ONE_SHARE, Crop
from farmbook.model.labour.hours import Hours
from farmbook.model.limits.widenings import FruitingWidening
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["Recipes"]


class Recipes(Section):
    """In money: hours at what an average one costs. Steaming is taken as for the recipe in use; the whole year has its own."""

    title = "Recipes side by side"

    recipe = uses(Recipe)
    bag = uses(Bag)
    crop = uses(Crop)
    harvest = uses(Harvest)
    growing = uses(GrowingCost)
    hours = uses(Hours)
    customers = uses(CustomerYear)
    one_more = uses(OneMore)
    fruiting = uses(FruitingWidening)
    flushes = uses(Flushes)

    # What each loses and gives

    @line("Spawn run loss typed for the recipe, less that of the one in use", unit="share", axes=(RECIPE,))
    def loss_apart(self) -> Expr:
        """Counts where you give your losses in one share: that is of the recipe in use."""
        return self.crop.loss_of_each_recipe - self.crop.loss_by_recipe

    @line("Spawn run loss of the recipe, where losses are given in one share", unit="share", axes=(RECIPE,))
    def loss_from_share(self) -> Expr:
        """What the share leaves for the recipe in use, and the difference of the losses typed."""
        return minimum(maximum(self.crop.loss_from_share + self.loss_apart, 0), 1)

    @line("Bags lost in the spawn run, by recipe", unit="share", axes=(RECIPE,))
    def loss(self) -> Expr:
        """Own spawn's loss with them. A richer mix usually loses more, and more unevenly."""
        in_one_share = self.crop.chose(self.crop.losses_given, IN_ONE_SHARE)
        lost = where(in_one_share, self.loss_from_share, self.crop.loss_of_each_recipe)
        return lost * self.recipe.recipe_in_use

    @line("Biological efficiency typed for the recipe in use, flushes kept", unit="kg_picked/kg_dry")
    def typed_in_all(self) -> Expr:
        """What your weights are held against, where you give weights."""
        return total(self.flushes.typed_efficiency * self.crop.flush_kept, FLUSH)

    @line("Recipe in use: efficiency counted over the one typed", unit="share")
    def counted_over_typed(self) -> Expr:
        """100% where the yield is given by efficiency. Weights are yours of the recipe in use: the others are moved alike."""
        return ratio(self.crop.efficiency_in_all, self.typed_in_all, otherwise=1)

    @line("Biological efficiency that counts, by flush and recipe", unit="kg_picked/kg_dry", axes=(FLUSH, RECIPE))
    def efficiency(self) -> Expr:
        """As counted for the recipe in use; as typed for the others, moved by what your weights say of that one."""
        moved = self.crop.efficiency_given * self.counted_over_typed
        return where(self.recipe.chosen, self.crop.efficiency_by_recipe, moved)

    @line("Biological efficiency in the flushes kept, by recipe", unit="kg_picked/kg_dry", axes=(RECIPE,))
    def claim(self) -> Expr:
        """Of a bag that stands to the end: the claim that a trial must bear out."""
        return total(self.efficiency * self.crop.flush_kept, FLUSH)

    @line("Biological efficiency, bags lost since opening counted", unit="kg_picked/kg_dry", axes=(RECIPE,))
    def borne(self) -> Expr:
        """All flushes kept."""
        return total(self.efficiency * self.crop.flush_kept * self.crop.reaching, FLUSH)

    @line("Picked from a bag moved to fruiting, by recipe", unit="kg_picked/bag_live", axes=(RECIPE,))
    def picked(self) -> Expr:
        """All flushes kept."""
        return picked_mass(self.borne, joined(self.bag.dry_mass_by_recipe, "kg_dry/bag_live"))

    @line("Taken to customers from a bag that lives, by recipe", unit="kg_taken/bag_live", axes=(RECIPE,))
    def taken(self) -> Expr:
        """Trimmed and dried away taken off."""
        return self.picked * self.flushes.taken_per_picked

    # What each costs

    @line("Mix, bag and tie for a bag, by recipe, as counted", unit="money/bag_filled", axes=(RECIPE,))
    def materials(self) -> Expr:
        """What you count for the recipe in use, and what the other mix costs more or less."""
        return (self.bag.material_cost + self.bag.cost_above_chosen) * self.recipe.recipe_in_use

    @line("A lost bag, taken out, in money", unit="money/bag_inoculated")
    def cull(self) -> Expr:
        """Its minutes at what the next hour costs in money."""
        return self.growing.culling_cost * self.hours.next_is_hired

    @line("A bag filled: steam, and work until it is inoculated", unit="money/bag_filled")
    def steam_and_work(self) -> Expr:
        """The mix and the spawn left out; bags lost at steaming are taken out for it too."""
        work = (self.one_more.starting_hours + self.one_more.spawn_hours) * self.hours.hour_in_money
        return self.one_more.steam_goods + work + self.burst_bags

    @line("Bags lost at steaming, taken out, for each bag filled", unit="money/bag_filled")
    def burst_bags(self) -> Expr:
        """In money."""
        return joined(self.cull, "money/bag_filled") * self.crop.loss_steamed

    @line("Spawn, shelving and room in the spawn run, for each bag", unit="money/bag_inoculated")
    def run_cost(self) -> Expr:
        """Spent on every bag inoculated, whatever becomes of it."""
        shelving = self.growing.shelving_cost * self.hours.next_is_hired
        return self.one_more.spawn_goods + shelving + self.growing.incubation_room_cost

    @line("A bag inoculated and shelved has cost, by recipe", unit="money/bag_inoculated", axes=(RECIPE,))
    def spent(self) -> Expr:
        """In money; those left carry the bags lost at steaming."""
        filled = self.materials + self.steam_and_work
        return (ratio(filled, self.crop.inoculated_per_filled) + self.run_cost) * self.recipe.recipe_in_use

    @line("A bag that lives: opening, room and clearing, in money", unit="money/bag_live")
    def later(self) -> Expr:
        """What comes after the spawn run, picking left out."""
        work = self.growing.opening_cost + self.growing.leaving_cost
        return self.growing.fruiting_room_cost + work * self.hours.next_is_hired

    # What each leaves

    @line("The last weight sold brings, picked and packed", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def value(self) -> Expr:
        """More or less of it is what a recipe changes, so the average price does not count."""
        return self.customers.last_one - self.one_more.grown_in_money

    @line("A bag that lives leaves, the bag itself not paid, by recipe", unit="money/bag_live", axes=(RECIPE,))
    def live_leaves(self) -> Expr:
        """What its crop brings, less what comes after the spawn run."""
        return (self.taken * self.value - self.later) * self.recipe.recipe_in_use

    @line("Bags moved to fruiting per bag inoculated, by recipe", unit="bag_live/bag_inoculated", axes=(RECIPE,))
    def living(self) -> Expr:
        """What the spawn run leaves."""
        return joined(surviving_share(self.loss), "bag_live/bag_inoculated") * self.recipe.recipe_in_use

    @line("A bag inoculated leaves, by recipe", unit="money/bag_inoculated", axes=(RECIPE,), source=PARTIAL_BUDGET)
    def leaves(self) -> Expr:
        """What those that live leave, less the lost ones taken out, and the bag itself."""
        return self.living * self.live_leaves - self.cull * self.loss - self.spent

    @line("A fruiting place leaves for each day, by recipe", unit="money/place/day", axes=(RECIPE,), source=ARITHMETIC)
    def leaves_a_day(self) -> Expr:
        """The same money, over the days that a bag that lives takes its place. Where rooms are full, this is what counts."""
        return ratio(joined(self.leaves_live, "money/place"), self.harvest.days_place_taken)

    @line(
        "A bag moved to fruiting leaves, all inoculated for it paid, by recipe", unit="money/bag_live", axes=(RECIPE,)
    )
    def leaves_live(self) -> Expr:
        """The same money over the bags that live."""
        return ratio(self.leaves, self.living)

    @line("Which of the two counts for a recipe", unit="1")
    def counts(self) -> Expr:
        """By the stage that limits first."""
        return sentence(
            1 + self.fruiting.limiting,
            "What a bag inoculated leaves: fruiting places do not limit.",
            "What a place leaves for each day: fruiting places limit.",
        )
