"""Mixing and filling: what to weigh out for a bag, a mixer batch and a steam load, and the hours it takes."""

from __future__ import annotations

from farmbook.calc.mixing import WATER_DENSITY
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import joined, maximum, ratio, total, whole_up
from farmbook.expr.nodes import Expr, wrap
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["Mixing"]

MATRIX = (INGREDIENT, RECIPE)


class Mixing(Section):
    """Mixing and filling."""

    title = "Mixing and filling"

    farm = uses(Farm)
    recipe = uses(Recipe)
    bag = uses(Bag)
    steamer_in_use = uses(SteamerInUse)
    supply = uses(SpawnSupply)
    batch_mass = number(
        "Wet mix in a mixer batch",
        unit="kg_wet/batch",
        usual=(20, 2000),
        hard=(1, 50000),
        default=180,
        how="Weigh what one full mixer gives, or count the bags it fills and multiply by the wet mix in a bag.",
        source=COMMON_PRACTICE,
        note="Mixing by shovel: the heap you make at a time.",
    )
    mixer_volume = number(
        "Room in the mixer",
        unit="m3/batch",
        usual=(0.1, 6),
        hard=(0.01, 100),
        optional=True,
        how="Nameplate, the mixing volume and not the whole drum; or measure the trough up to the shaft's cover.",
        source=COMMON_PRACTICE,
        note="Leave it empty if you mix on the floor.",
    )
    bags_per_hour = number(
        "Bags mixed and filled in an hour of work",
        unit="bag_filled/person_hour",
        usual=(40, 250),
        hard=(1, 5000),
        default=110,
        how="Clock one batch from first shovel to last tie, breaks in it; bags over the hours of all hands together.",
        source=COMMON_PRACTICE,
    )

    # What to weigh out

    @line("To weigh out for a bag", unit="kg_wet/bag_filled", axes=MATRIX)
    def delivered_per_bag(self) -> Expr:
        """As delivered."""
        return self.recipe.as_delivered * self.bag.dry_mass_by_recipe

    @line("To weigh out for a steam load", unit="kg_wet/run", axes=MATRIX)
    def delivered_per_load(self) -> Expr:
        """As delivered, if the whole load of the steamer in use is of this recipe."""
        return self.delivered_per_bag * self.steamer_in_use.bags_per_run

    @line("To weigh out for a mixer batch", unit="kg_wet/batch", axes=MATRIX)
    def delivered_per_batch(self) -> Expr:
        """As delivered. Hang this list beside the mixer."""
        return self.recipe.as_delivered * self.dry_per_batch

    @line("Dry mix in a mixer batch", unit="kg_dry/batch", axes=(RECIPE,), source=ARITHMETIC)
    def dry_per_batch(self) -> Expr:
        """What is left of the batch without its water."""
        return self.batch_mass * self.recipe.dry_part

    @line("Water to add for a bag", unit="kg_water/bag_filled", axes=(RECIPE,))
    def water_per_bag(self) -> Expr:
        """Nothing where the ingredients are too wet already; the sheet Recipe says by how much."""
        return maximum(self.recipe.water_to_add, 0) * self.bag.dry_mass_by_recipe

    @line("Water to add for a steam load", unit="kg_water/run", axes=(RECIPE,))
    def water_per_load(self) -> Expr:
        """If the whole load is of this recipe."""
        return self.water_per_bag * self.steamer_in_use.bags_per_run

    @line("Water to add for a mixer batch", unit="kg_water/batch", axes=(RECIPE,))
    def water_per_batch(self) -> Expr:
        """Add most of it, test a handful, then add the rest."""
        return maximum(self.recipe.water_to_add, 0) * self.dry_per_batch

    @line("Water to add for a mixer batch, by volume", unit="L/batch", axes=(RECIPE,))
    def water_volume_per_batch(self) -> Expr:
        """For a bucket or a hose meter."""
        return self.water_per_batch / WATER_DENSITY

    # The mixer

    @line("Water to add for a mixer batch, chosen recipe", unit="L/batch")
    def chosen_water_per_batch(self) -> Expr:
        """By volume: what the hose or the bucket gives."""
        return total(self.water_volume_per_batch * self.recipe.chosen, RECIPE)

    @line("Bulk volume of a mixer batch", unit="m3/batch", axes=(RECIPE,))
    def volume_per_batch(self) -> Expr:
        """Ingredients loose, before wetting. It settles to 0.6 to 0.8 of this as it takes up water."""
        return self.recipe.mix_volume * self.dry_per_batch

    @line("Mixer filled to", unit="share", axes=(RECIPE,), zero_is_none=True)
    def mixer_filled_to(self) -> Expr:
        """Of the room in the mixer, with the ingredients loose; no figure where no mixer is given."""
        return ratio(self.volume_per_batch, self.mixer_volume)

    @line("Batch too big for the mixer", unit="flag", axes=(RECIPE,))
    def batch_too_big(self) -> Expr:
        """1 for a recipe whose batch does not fit in loose."""
        return self.mixer_filled_to - 1 > SUM_TOLERANCE

    @line("Wet mix in a steam load", unit="kg_wet/run")
    def wet_per_load(self) -> Expr:
        """A full load of the steamer in use."""
        return self.bag.wet_fill * self.steamer_in_use.bags_per_run

    @line("Bags from a mixer batch", unit="bag_filled/batch")
    def bags_per_batch(self) -> Expr:
        """At the wet mix in a bag."""
        return ratio(self.batch_mass, self.bag.wet_fill)

    @line("Mixer batches in a steam load", unit="batch/run")
    def batches_per_load(self) -> Expr:
        """Of the size given."""
        return ratio(self.wet_per_load, self.batch_mass)

    @line("Whole mixer batches in a steam load", unit="batch/run")
    def whole_batches_per_load(self) -> Expr:
        """The mixer must be run this often."""
        return whole_up(self.batches_per_load)

    @line("Mixer batch, if all of a load are alike", unit="kg_wet/batch")
    def even_batch(self) -> Expr:
        """Instead of full batches and a small last one."""
        return ratio(self.wet_per_load, self.whole_batches_per_load)

    # The work

    @line("Mixing and filling, work for a bag", unit="person_hour/bag_filled")
    def hours_per_bag(self) -> Expr:
        """All hands together."""
        return ratio(wrap(1), self.bags_per_hour)

    @line("Mixing and filling, work for a steam load", unit="person_hour/run")
    def hours_per_load(self) -> Expr:
        """Shared among the hands there are: three people need a third of it by the clock."""
        return self.hours_per_bag * self.steamer_in_use.bags_per_run

    @line("Mixing and filling, work in a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """For the bags to fruit filled in a week; own spawn has hours of its own."""
        return self.hours_per_bag * self.farm.bags_filled_a_week

    @line("Mixing and filling, cost for a bag", unit="money/bag_filled")
    def mix_and_fill_cost(self) -> Expr:
        """Work only, at the cost of an hour, your own hours too."""
        return self.hours_per_bag * self.farm.labour_rate

    # What a week takes from the store

    @line("Wet mix in a week", unit="kg_wet/week")
    def wet_per_week(self) -> Expr:
        """In the bags to fruit, and in sawdust spawn made on the farm."""
        return self.bag.wet_fill * self.farm.bags_filled_a_week + self.supply.mix_a_week

    @line("Ingredient used in a week", unit="kg_wet/week", axes=(INGREDIENT,))
    def delivered_per_week(self) -> Expr:
        """As delivered, if every bag, of spawn too, is of the chosen recipe.

        Times the weeks between deliveries: what to store.
        """
        return total(self.recipe.as_delivered * self.recipe.dry_part * self.recipe.chosen, RECIPE) * self.wet_per_week

    @line("Room for a week's ingredient", unit="m3/week", axes=(INGREDIENT,))
    def volume_per_week(self) -> Expr:
        """Loose; for the bay, the truck or the trailer."""
        return ratio(self.delivered_per_week, self.recipe.bulk_density)

    @line("Ingredient bought for a week", unit="money/week", axes=(INGREDIENT,))
    def ingredient_bill_per_week(self) -> Expr:
        """At the price as delivered."""
        return self.delivered_per_week * self.recipe.price

    @line("Mixing: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "A mixer batch takes ",
            figure(joined(self.chosen_water_per_batch, "L"), 0),
            " of water, and a full bag reads ",
            figure(joined(self.bag.scale_weight, "kg"), 1),
            " on the scale. What is in it costs ",
            figure(self.bag.material_cost, 2, named=False),
            ", mixing and filling it ",
            figure(self.mix_and_fill_cost, 2, named=False),
            ".",
        )

    @check(
        "A batch of every recipe fits into the mixer",
        kind="alert",
        says="A mixer batch, loose, is more than the mixer holds: make smaller batches, or wet the mix as you load it.",
    )
    def batch_fits(self) -> Expr:
        """Checked with the ingredients loose, which is how they go in."""
        return total(self.batch_too_big, RECIPE) <= 0
