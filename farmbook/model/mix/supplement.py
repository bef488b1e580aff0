"""How much of a supplement brings a mix to the nitrogen wanted."""

from __future__ import annotations

from farmbook.calc import mixing
from farmbook.expr.functions import all_of, same_text, total, where
from farmbook.expr.nodes import Expr, Filled
from farmbook.model.axes import INGREDIENT
from farmbook.model.mix.recipe import Recipe
from farmbook.sections.declare import check, line, number, text, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, COMPOST_MIXTURES

__all__ = ["Supplement"]


class Supplement(Section):
    """Two ingredients and a wanted nitrogen: what share each must have. It changes no recipe by itself."""

    title = "How much supplement for the nitrogen you want"

    recipe = uses(Recipe)
    base = text("Lean ingredient to try", default="", how="Its name as in the table of ingredients; may stay empty.")
    rich = text("Rich ingredient to try", default="", how="Its name as in the table of ingredients; may stay empty.")
    wanted = number(
        "Nitrogen wanted in the dry mix to try",
        unit="kg_nitrogen/kg_dry",
        usual=(0.004, 0.012),
        hard=(0, 0.1),
        default=0.008,
        how="Start from a mix that works for you and move in small steps, with thirty bags or more to a trial.",
        source=COMMON_PRACTICE,
        note="Yield rises and then falls with nitrogen, and bag loss rises; no one figure suits every farm.",
    )

    @line("Ingredient is the lean one to try", unit="flag", axes=(INGREDIENT,))
    def is_base(self) -> Expr:
        """By its name."""
        return all_of(self.in_use, same_text(self.recipe.ingredients, self.base))

    @line("Ingredient is the rich one to try", unit="flag", axes=(INGREDIENT,))
    def is_rich(self) -> Expr:
        """By its name."""
        return all_of(self.in_use, same_text(self.recipe.ingredients, self.rich))

    @line("Rows with the name of the lean one", unit="count")
    def bases_found(self) -> Expr:
        """None while no name is given, else one."""
        return total(self.is_base, INGREDIENT)

    @line("Rows with the name of the rich one", unit="count")
    def rich_found(self) -> Expr:
        """None while no name is given, else one."""
        return total(self.is_rich, INGREDIENT)

    @line("Both ingredients to try are found", unit="flag")
    def both_found(self) -> Expr:
        """0 while either is missing: then there is nothing to work out."""
        return all_of(self.bases_found > 0, self.rich_found > 0)

    @line("Nitrogen of the lean one", unit="kg_nitrogen/kg_dry")
    def base_nitrogen(self) -> Expr:
        """As counted in the recipes; 0 until both are found."""
        return total(self.recipe.nitrogen * self.is_base, INGREDIENT) * self.both_found

    @line("Nitrogen of the rich one", unit="kg_nitrogen/kg_dry")
    def rich_nitrogen(self) -> Expr:
        """As counted in the recipes; 0 until both are found."""
        return total(self.recipe.nitrogen * self.is_rich, INGREDIENT) * self.both_found

    @line("Nitrogen to reach with the two", unit="kg_nitrogen/kg_dry")
    def in_reach(self) -> Expr:
        """What is wanted, if the two can make it; else that of the lean one, which takes nothing of the rich one."""
        return where(self.can_be_mixed, self.wanted, self.base_nitrogen)

    @line("Rich ingredient needed, of the dry mix", unit="share", source=COMPOST_MIXTURES, zero_is_none=True)
    def share(self) -> Expr:
        """The rest is the lean one. None until both are found, and where these two cannot make the nitrogen wanted."""
        return mixing.share_for_content(self.in_reach, self.base_nitrogen, self.rich_nitrogen)

    @check(
        "The lean ingredient to try is on the list",
        kind="alert",
        says="The name of the lean ingredient to try is not the name of exactly one ingredient.",
    )
    def base_is_found(self) -> Expr:
        """The name may stay empty."""
        return all_of(self.bases_found >= Filled(self.base), self.bases_found <= 1)

    @check(
        "The rich ingredient to try is on the list",
        kind="alert",
        says="The name of the rich ingredient to try is not the name of exactly one ingredient.",
    )
    def rich_is_found(self) -> Expr:
        """The name may stay empty."""
        return all_of(self.rich_found >= Filled(self.rich), self.rich_found <= 1)

    @check(
        "The two ingredients to try can make the nitrogen wanted",
        kind="alert",
        says="No mix of the two ingredients to try holds the nitrogen wanted: it must lie between theirs.",
    )
    def can_be_mixed(self) -> Expr:
        """It lies between theirs where it is above one and below the other, or equal to one of them."""
        return (self.wanted - self.base_nitrogen) * (self.wanted - self.rich_nitrogen) * self.both_found <= 0

    @property
    def in_use(self) -> Expr:
        """1 where the ingredient has a name."""
        return self.model.axes[INGREDIENT].present
