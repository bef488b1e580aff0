"""Whether the recipes add up, and whether the ingredients are known well enough."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, joined, ratio, total, where
from farmbook.expr.nodes import Constant, Expr, IsNumber, Raw
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.mix.recipe import Recipe
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["RecipeChecks"]

PARTS_IN_ALL: Final = Constant(
    100, "parts_in_all", label="Parts a recipe is mostly given in", unit=unit("1"), source=COMMON_PRACTICE.key
)
NEARLY: Final = Constant(
    10, "nearly_in_parts", label="Parts off 100 that look like a slip", unit=unit("1"), source=COMMON_PRACTICE.key
)


class RecipeChecks(Section):
    """What is wrong, row by row and recipe by recipe, and the checks that sum it up."""

    title = "Whether the recipes add up"

    recipe = uses(Recipe)

    @line("Parts in all recipes", unit="count", axes=(INGREDIENT,))
    def parts_in_recipes(self) -> Expr:
        """Above zero where at least one recipe uses the ingredient."""
        return total(self.recipe.parts, RECIPE)

    @line("Parts as typed, also in spare rows", unit="count", axes=(INGREDIENT, RECIPE))
    def parts_typed(self) -> Expr:
        """What stands in the table, whether or not its row and column have a name."""
        cell = self.recipe.raw(Recipe.parts)
        return where(IsNumber(cell), Raw(cell), 0)

    @line("Parts without the name of an ingredient", unit="flag", axes=(INGREDIENT,))
    def nameless_ingredient(self) -> Expr:
        """1 for a row that has parts in a recipe and no name: the parts count for nothing."""
        return all_of(self.model.axes[INGREDIENT].present <= 0, total(self.parts_of_named_recipes, RECIPE) > 0)

    @line("Parts as typed in recipes with a name", unit="count", axes=(INGREDIENT, RECIPE))
    def parts_of_named_recipes(self) -> Expr:
        """Spare columns are left out."""
        return self.parts_typed * self.recipe.recipe_in_use

    @line("Parts without the name of a recipe", unit="flag", axes=(RECIPE,))
    def nameless_recipe(self) -> Expr:
        """1 for a column that has parts of an ingredient and no name."""
        return all_of(self.recipe.recipe_in_use <= 0, total(self.parts_typed, INGREDIENT) > 0)

    @line("Nearly 100 parts, but not quite", unit="flag", axes=(RECIPE,))
    def uneven(self) -> Expr:
        """1 for a recipe whose parts add up to within 10 of 100: was one of them mistyped?"""
        off = absolute(self.recipe.parts_total - PARTS_IN_ALL)
        return all_of(off > self.recipe.parts_total * SUM_TOLERANCE, off <= NEARLY)

    @line("Nitrogen not known", unit="flag", axes=(INGREDIENT,))
    def nitrogen_missing(self) -> Expr:
        """1 for an ingredient of a recipe with neither nitrogen nor protein filled in: it counts as holding none."""
        return all_of(self.parts_in_recipes > 0, self.nitrogen_figures <= 0)

    @line("Nitrogen figures filled in", unit="count", axes=(INGREDIENT,))
    def nitrogen_figures(self) -> Expr:
        """Of three: nitrogen tested, protein in dry matter, protein on the feed tag."""
        recipe = self.recipe
        protein = recipe.given(recipe.protein) + recipe.given(recipe.tag_protein)
        return recipe.given(recipe.nitrogen_tested) + protein

    @line("Carbon not known", unit="flag", axes=(INGREDIENT,))
    def carbon_missing(self) -> Expr:
        """1 for an ingredient of a recipe that holds nitrogen but, as typed, no carbon: whatever grew holds both."""
        return all_of(self.parts_in_recipes > 0, self.recipe.nitrogen > 0, self.recipe.carbon <= 0)

    @line("Recipe has no parts", unit="flag", axes=(RECIPE,))
    def no_parts(self) -> Expr:
        """1 for a recipe with a name and nothing in it."""
        return all_of(self.recipe.recipe_in_use, self.recipe.parts_total <= 0)

    @line("Ingredients too wet", unit="flag", axes=(RECIPE,))
    def too_wet(self) -> Expr:
        """1 for a recipe whose ingredients bring more water than is wanted."""
        wanted = self.recipe.water_wanted
        return self.recipe.water_in_ingredients - wanted > absolute(wanted) * SUM_TOLERANCE

    @line("Weighed out, more or less than the wet mix wanted", unit="share", axes=(RECIPE,), source=ARITHMETIC)
    def mix_gap(self) -> Expr:
        """Ingredients and added water over the wet mix wanted, less one: 0% when the recipe adds up."""
        weighed = self.recipe.delivered_total + joined(self.recipe.water_to_add, "kg_wet/kg_dry")
        return ratio(weighed, self.recipe.wet_total, otherwise=1) - 1

    @line("Recipe does not add up", unit="flag", axes=(RECIPE,))
    def mix_is_off(self) -> Expr:
        """1 for a recipe that weighs out to more or less than the wet mix wanted."""
        return absolute(self.mix_gap) > SUM_TOLERANCE

    @line("Recipes with the chosen name", unit="count")
    def recipes_chosen(self) -> Expr:
        """One, if the chosen name is on the list and no other recipe shares it."""
        return total(self.recipe.chosen, RECIPE)

    @check(
        "The chosen recipe is on the list, once",
        kind="error",
        says="The recipe chosen is not the name of exactly one recipe: correct the name, or the list of recipes.",
    )
    def chosen_is_found(self) -> Expr:
        """Without it nothing that rests on a recipe can be worked out; with two of a name, both would be added up."""
        return all_of(self.recipes_chosen >= 1, self.recipes_chosen <= 1)

    @check(
        "Every recipe has parts",
        kind="error",
        says="A recipe has a name but no parts: fill in its column of parts, or clear its name.",
    )
    def parts_are_given(self) -> Expr:
        """A recipe without parts would cost nothing."""
        return total(self.no_parts, RECIPE) <= 0

    @check(
        "Whatever has parts has a name",
        kind="error",
        says="Parts stand in a row or column of the recipes without a name and count for nothing: type its name, or clear them.",
    )
    def parts_have_names(self) -> Expr:
        """A name cleared by mistake takes its ingredient out of every recipe."""
        return total(self.nameless_ingredient, INGREDIENT) + total(self.nameless_recipe, RECIPE) <= 0

    @check(
        "Parts add up to 100, or are not meant to",
        kind="alert",
        says="A recipe adds up to nearly but not quite 100 parts: was one of them mistyped? The sheet Recipe says which recipe.",
    )
    def parts_add_up(self) -> Expr:
        """Any sum will do, and is brought to 100%; but a sum near 100 was probably meant to be 100."""
        return total(self.uneven, RECIPE) <= 0

    @check(
        "Ingredients and added water make up the wet mix",
        kind="error",
        says="A recipe weighs out to less or more than the wet mix: look for an ingredient without its dry matter.",
    )
    def mix_adds_up(self) -> Expr:
        """What is weighed out and what is wanted are worked out by different ways and must agree."""
        return total(self.mix_is_off, RECIPE) <= 0

    @check(
        "Ingredients are dry enough for the moisture aimed at",
        kind="alert",
        says="Ingredients of a recipe bring more water than is wanted: its bags are wetter than aimed at, and leaner.",
    )
    def dry_enough(self) -> Expr:
        """The moisture that results is carried on from there. Use drier ingredients, or aim at a higher moisture."""
        return total(self.too_wet, RECIPE) <= 0

    @check(
        "Nitrogen is known for every ingredient used",
        kind="alert",
        says="An ingredient has neither nitrogen nor protein filled in and counts as holding none: type 0 if it does.",
    )
    def nitrogen_is_known(self) -> Expr:
        """A supplement without its protein makes a rich mix look lean."""
        return total(self.nitrogen_missing, INGREDIENT) <= 0

    @check(
        "Carbon is known for every ingredient that holds nitrogen",
        kind="alert",
        says="An ingredient holds nitrogen but no carbon, so carbon to nitrogen comes out too low: fill in its carbon.",
    )
    def carbon_is_known(self) -> Expr:
        """Gypsum and lime hold neither and are not meant."""
        return total(self.carbon_missing, INGREDIENT) <= 0
