"""The whole farm with the recipe that is set beside the one chosen: bags it can fill, and its year."""

from __future__ import annotations

from collections.abc import Mapping

from farmbook.expr.functions import total
from farmbook.expr.nodes import Expr
from farmbook.model.alternatives.recipes import Recipes
from farmbook.model.alternatives.whole_farm import StagesThen, WholeFarm, YearThen
from farmbook.model.axes import RECIPE
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.sections.declare import LineOf, NumberInput, uses

__all__ = ["OtherRecipeRoom", "OtherRecipeYear"]


class OtherRecipe(WholeFarm):
    """Its mix, its loss and its crop, as the sheet Recipes has them."""

    beside = uses(RecipeBeside)
    recipes = uses(Recipes)

    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """Water, dry mass, cost, loss and efficiency of the recipe tried."""
        tried = self.beside.tried
        return {
            Recipe.chosen: tried,
            Bag.material_cost: total(self.recipes.materials * tried, RECIPE),
            Crop.chosen_loss_in_spawn_run: total(self.recipes.loss * tried, RECIPE),
            Crop.efficiency: total(self.recipes.efficiency * tried, RECIPE),
        }


class OtherRecipeRoom(OtherRecipe, StagesThen, words="with the other recipe"):
    """What the stages can do then."""

    title = "With the other recipe: stages"


class OtherRecipeYear(OtherRecipe, YearThen, words="with the other recipe"):
    """The year with so many bags."""

    title = "With the other recipe: the year"
    room = uses(OtherRecipeRoom)
