"""The recipe that is set beside the one chosen: which it is, and whether one is named at all."""

from __future__ import annotations

from farmbook.expr.functions import all_of, negation, same_text, total, where
from farmbook.expr.nodes import Expr, Filled, Label
from farmbook.model.axes import RECIPE
from farmbook.model.mix.recipe import Recipe
from farmbook.sections.declare import check, line, text, uses
from farmbook.sections.section import Section

__all__ = ["RecipeBeside"]


class RecipeBeside(Section):
    """What the sheet Recipes holds against the recipe chosen."""

    title = "The recipe set beside the one chosen"
    table = "mix"

    recipe = uses(Recipe)
    other_recipe = text(
        "Recipe to set beside the one chosen",
        default="",
        how="Its name as in the table of recipes; may stay empty. The sheet Recipes works the farm out with it.",
    )

    @line("Recipe is the one set beside", unit="flag", axes=(RECIPE,))
    def is_other(self) -> Expr:
        """By its name; the recipe chosen cannot stand beside itself."""
        named = same_text(self.recipe.recipes, self.other_recipe)
        return all_of(self.recipe.recipe_in_use, named, negation(self.recipe.chosen))

    @line("Recipes with the name to set beside", unit="count")
    def others_found(self) -> Expr:
        """None while no name is given, else one."""
        return total(self.is_other, RECIPE)

    @line("Another recipe is named", unit="flag")
    def named(self) -> Expr:
        """1 where exactly one other bears the name."""
        return all_of(self.others_found >= 1, self.others_found <= 1)

    @line("Recipe that is tried", unit="flag", axes=(RECIPE,))
    def tried(self) -> Expr:
        """The one set beside; the one chosen where no other is named, so that nothing changes."""
        return where(self.named, self.is_other, self.recipe.chosen)

    @line("Recipe in use, by name", unit="1")
    def chosen_name(self) -> Expr:
        """As typed."""
        return Label(self.recipe.chosen_recipe, "(none)")

    @line("Recipe set beside it, by name", unit="1")
    def other_name(self) -> Expr:
        """As typed."""
        return Label(self.other_recipe, "(none named)")

    @check(
        "The recipe to set beside is another one on the list",
        kind="alert",
        says="The recipe to set beside is not the name of exactly one other recipe: correct it, or leave it empty.",
    )
    def other_is_found(self) -> Expr:
        """The name may stay empty."""
        return all_of(self.others_found >= Filled(self.other_recipe), self.others_found <= 1)
