"""One bag: its fill, its dry mass and water, and what its materials cost."""

from __future__ import annotations

from farmbook.calc import mixing
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, joined, ratio, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import RECIPE
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import IN_DETAIL, ONE_FIGURE, Farm
from farmbook.sections.declare import check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["Bag"]


class Bag(Section):
    """One bag of mix."""

    title = "The bag"
    most_give = ("wet_fill", "bag_price")

    farm = uses(Farm)
    recipe = uses(Recipe)
    wet_fill = number(
        "Wet mix in a bag",
        unit="kg_wet/bag_filled",
        usual=(2, 4.8),
        hard=(0.2, 30),
        default=2.27,
        how="Weigh every twentieth bag as it is filled, less the empty bag; take the mean of a week.",
        source=COMMON_PRACTICE,
        note="2.27 kg is 5 lb.",
    )
    bag_price = number(
        "Price of an empty bag",
        unit="money/bag_filled",
        usual=(0.20, 0.65),
        hard=(0, 20),
        default=0.32,
        how="Invoice with freight and duty, over the bags you could really use.",
        source=COMMON_PRACTICE,
        note="Filter patch bag of polypropylene; the default is the same number in every currency, so replace it.",
    )
    tie_price = number(
        "Tie and label for a bag",
        unit="money/bag_filled",
        usual=(0.01, 0.06),
        hard=(0, 5),
        default=0.02,
        how="Invoice over the number in the box; with the power of a sealer, if you weld the bags.",
        source=COMMON_PRACTICE,
    )
    bag_mass = number(
        "Weight of an empty bag",
        unit="g/bag_filled",
        usual=(20, 40),
        hard=(1, 500),
        default=27,
        how="Weigh ten together.",
        source=COMMON_PRACTICE,
    )

    counted = choice(
        "What mix, bag and tie cost: one figure, or worked out",
        ONE_FIGURE,
        IN_DETAIL,
        default=IN_DETAIL,
        how="One figure, if you know only what a filled bag costs you; the recipe then serves water, nitrogen and steam.",
        source=COMMON_PRACTICE,
    )
    own_material_cost = number(
        "Mix, bag and tie for a bag, your own figure",
        unit="money/bag_filled",
        usual=(0.4, 1.5),
        hard=(0, 50),
        default=0.7,
        how="Money paid for sawdust, hulls, bags and ties over some months, over the bags filled in them.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
    )

    @line("What the scale should read for a full bag", unit="kg/bag_filled", source=ARITHMETIC)
    def scale_weight(self) -> Expr:
        """Mix and empty bag together, before it is tied."""
        return joined(self.wet_fill, "kg/bag_filled") + self.bag_mass

    @line("Dry mass in a bag, by recipe", unit="kg_dry/bag_filled", axes=(RECIPE,), source=ARITHMETIC)
    def dry_mass_by_recipe(self) -> Expr:
        """The same wet fill holds less of a wetter mix, and it is the dry mass that bears the crop."""
        return mixing.dry_mass(self.wet_fill, self.recipe.dry_part)

    @line("Ingredients for a bag, by recipe", unit="money/bag_filled", axes=(RECIPE,))
    def ingredient_cost_by_recipe(self) -> Expr:
        """Dry mass in the bag at the cost of the dry mix."""
        return self.dry_mass_by_recipe * self.recipe.mix_cost_per_dry

    @line("Materials for a bag, by recipe", unit="money/bag_filled", axes=(RECIPE,))
    def material_cost_by_recipe(self) -> Expr:
        """Ingredients, bag, tie and label. Spawn, steam and work come later."""
        return (self.ingredient_cost_by_recipe + self.packaging_cost) * self.recipe.recipe_in_use

    @line("Dearer than the chosen recipe", unit="money/bag_filled", axes=(RECIPE,))
    def cost_above_chosen(self) -> Expr:
        """Below zero for a cheaper mix. What it must bring in weight picked, or save in bags lost, to be worth it."""
        return (self.ingredient_cost_by_recipe - self.ingredient_cost) * self.recipe.recipe_in_use

    @line("Dry mass in a bag", unit="kg_dry/bag_filled")
    def dry_mass(self) -> Expr:
        """Of the chosen recipe, spawn left out: what biological efficiency is reckoned on."""
        return total(self.dry_mass_by_recipe * self.recipe.chosen, RECIPE)

    @line("Water in a bag", unit="kg_water/bag_filled", source=ARITHMETIC)
    def water_mass(self) -> Expr:
        """Most of what the steam has to heat."""
        return self.wet_fill * self.recipe.moisture

    @line("Ingredients for a bag", unit="money/bag_filled")
    def ingredient_cost(self) -> Expr:
        """Of the chosen recipe."""
        return total(self.ingredient_cost_by_recipe * self.recipe.chosen, RECIPE)

    @line("Bag, tie and label", unit="money/bag_filled")
    def packaging_cost(self) -> Expr:
        """Spent on every bag filled, whether it ever fruits or not."""
        return self.bag_price + self.tie_price

    @line("Materials for a bag, worked out", unit="money/bag_filled")
    def worked_material_cost(self) -> Expr:
        """Ingredients, bag, tie and label of the chosen recipe."""
        return self.ingredient_cost + self.packaging_cost

    @line("Materials for a bag", unit="money/bag_filled")
    def material_cost(self) -> Expr:
        """Your one figure, or what is worked out, as you chose."""
        return where(self.chose(self.counted, ONE_FIGURE), self.own_material_cost, self.worked_material_cost)

    @line("Materials for a week's bags", unit="money/week")
    def material_cost_a_week(self) -> Expr:
        """What the bags filled in a week take from the store."""
        return self.material_cost * self.farm.bags_filled_a_week

    @line("Dry mass and water, more or less than the wet fill", unit="share", source=ARITHMETIC)
    def bag_gap(self) -> Expr:
        """Dry mass and water over the wet fill, less one: 0% when the bag adds up."""
        contents = joined(self.dry_mass, "kg_wet/bag_filled") + joined(self.water_mass, "kg_wet/bag_filled")
        return ratio(contents, self.wet_fill, otherwise=1) - 1

    @check(
        "Dry mass and water make up the wet fill",
        kind="error",
        says="Dry mass and water of a bag are not its wet fill: look at the recipe chosen and its moisture.",
    )
    def bag_adds_up(self) -> Expr:
        """Weight cannot come or go between the mixer and the bag."""
        return absolute(self.bag_gap) <= SUM_TOLERANCE
