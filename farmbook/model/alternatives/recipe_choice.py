"""Which recipe: the one in use or the one set beside it, each as a whole farm."""

from __future__ import annotations

from farmbook.expr.functions import absolute, all_of, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.other_recipe import OtherRecipeYear
from farmbook.model.alternatives.recipe_turn import RecipeTurn
from farmbook.model.alternatives.two_years import TwoYears
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.sections.declare import line, uses

__all__ = ["RecipeChoice"]


class RecipeChoice(TwoYears, words="The other recipe"):
    """The higher yearly profit wins; closer than a few percent of the takings is too close to call."""

    title = "Which recipe"

    beside = uses(RecipeBeside)
    turn = uses(RecipeTurn)
    other = uses(OtherRecipeYear)

    @property
    def left_now(self) -> Expr:
        """The year's profit."""
        return self.now.profit

    @property
    def left_other(self) -> Expr:
        """The year's profit."""
        return self.other.profit

    @line("Better recipe of the two: profit a year", unit="money/year")
    def better_profit(self) -> Expr:
        """After loss in value and interest."""
        return where(self.better, self.other.profit, self.now.profit)

    @line("Other recipe of the two: profit a year", unit="money/year")
    def worse_profit(self) -> Expr:
        """After loss in value and interest."""
        return where(self.better, self.now.profit, self.other.profit)

    @line("Better recipe of the two: bags a week", unit="bag_filled/week")
    def better_bags(self) -> Expr:
        """The least of what stages and customers allow."""
        return where(self.better, self.other.bags, self.now.bags)

    @line("Other recipe of the two: bags a week", unit="bag_filled/week")
    def worse_bags(self) -> Expr:
        """The least of what stages and customers allow."""
        return where(self.better, self.now.bags, self.other.bags)

    # In words

    @line("Better recipe of the two, by name", unit="1")
    def better_name(self) -> Expr:
        """As typed."""
        return say(either(self.better, self.beside.other_name, self.beside.chosen_name))

    @line("Other recipe of the two, by name", unit="1")
    def worse_name(self) -> Expr:
        """As typed."""
        return say(either(self.better, self.beside.chosen_name, self.beside.other_name))

    @line("Recipes: the answer, where two are named", unit="1")
    def compared(self) -> Expr:
        """With the bags that stages and customers allow."""
        return say(
            self.better_name,
            " leaves most: ",
            either(self.better_profit < 0, "-", ""),
            figure(absolute(self.better_profit), -2, named=False),
            " a year at the ",
            figure(self.better_bags, 0, named=False),
            " bags a week that the farm can take then; ",
            self.worse_name,
            " ",
            either(self.worse_profit < 0, "-", ""),
            figure(absolute(self.worse_profit), -2, named=False),
            " at ",
            figure(self.worse_bags, 0, named=False),
            either(self.clear, ".", ": too close to call, so try it on small batches."),
        )

    @line("Recipes: the answer, where no other is named", unit="1")
    def alone(self) -> Expr:
        """The recipe in use by itself."""
        return say(
            "No other recipe is named on the sheet Inputs to set beside ",
            self.beside.chosen_name,
            ", of which a bag inoculated leaves ",
            either(self.turn.now_leaves < 0, "-", ""),
            figure(absolute(self.turn.now_leaves), 2, named=False),
            ".",
        )

    @line("Recipes: the answer", unit="1")
    def answer(self) -> Expr:
        """The whole year of both. What the other one gives is a claim until you have tried it, on thirty bags or more."""
        return say(either(self.beside.named, self.compared, self.alone))

    @line("One bag or place says another recipe than the whole farm", unit="flag")
    def says_otherwise(self) -> Expr:
        """1 where another recipe leads by what counts for one of them."""
        return all_of(self.beside.named, absolute(self.turn.ahead - self.better) > 0)

    @line("One bag, beside the whole farm", unit="1")
    def why(self) -> Expr:
        """By what counts: the bag inoculated, or the place for each day."""
        return say(either(self.beside.named, self.why_of_two, "No other recipe is named."))

    @line("One bag, beside the whole farm, where two are named", unit="1")
    def why_of_two(self) -> Expr:
        """Whether both say the same."""
        return say(
            either(
                self.says_otherwise,
                "One bag, or one place, says the other recipe: with the whole farm the bags it can fill, and who buys them, "
                "change too.",
                "One bag, or one place, says the same recipe as the whole farm.",
            )
        )
