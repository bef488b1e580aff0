"""What would turn the choice of recipes: the loss of the richer one, and how far its yield may fall short."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import all_of, joined, negation, ratio, total, where
from farmbook.expr.nodes import Expr, Line
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.recipes import Recipes
from farmbook.model.axes import RECIPE
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["RecipeTurn"]


class RecipeTurn(Section):
    """By what a bag inoculated leaves. Of the two recipes the richer is the one whose bags give more."""

    title = "What would turn the choice of recipes"

    recipe = uses(Recipe)
    beside = uses(RecipeBeside)
    recipes = uses(Recipes)

    def _of_tried(self, values: Line) -> Expr:
        return total(values * self.beside.tried, RECIPE)

    def _of_richer(self, values: Line) -> Expr:
        return total(values * self.richer, RECIPE)

    # The two side by side

    @line("The other recipe: a bag inoculated leaves", unit="money/bag_inoculated")
    def other_leaves(self) -> Expr:
        """The recipe in use where no other is named."""
        return self._of_tried(self.recipes.leaves)

    @line("The recipe in use: a bag inoculated leaves", unit="money/bag_inoculated")
    def now_leaves(self) -> Expr:
        """With its own loss and crop."""
        return total(self.recipes.leaves * self.recipe.chosen, RECIPE)

    @line("The other recipe: a place leaves for each day", unit="money/place/day")
    def other_leaves_a_day(self) -> Expr:
        """The recipe in use where no other is named."""
        return self._of_tried(self.recipes.leaves_a_day)

    @line("The recipe in use: a place leaves for each day", unit="money/place/day")
    def now_leaves_a_day(self) -> Expr:
        """With its own loss and crop."""
        return total(self.recipes.leaves_a_day * self.recipe.chosen, RECIPE)

    @line("The other recipe leaves more of a bag inoculated", unit="flag")
    def ahead_by_bag(self) -> Expr:
        """1 even where the difference is small."""
        return self.other_leaves > self.now_leaves

    @line("The other recipe leaves more of a place for each day", unit="flag")
    def ahead_by_day(self) -> Expr:
        """1 even where the difference is small."""
        return self.other_leaves_a_day > self.now_leaves_a_day

    @line("The other recipe leaves more, by what counts", unit="flag")
    def ahead(self) -> Expr:
        """Of a place for each day where fruiting places limit, else of a bag inoculated."""
        return where(self.recipes.fruiting.limiting, self.ahead_by_day, self.ahead_by_bag)

    # The richer and the leaner of the two

    @line("The other recipe is the richer one", unit="flag")
    def other_is_richer(self) -> Expr:
        """Its bags give more."""
        return self._of_tried(self.recipes.taken) > self.now_gives

    @line("The recipe in use: taken to customers from a bag that lives", unit="kg_taken/bag_live")
    def now_gives(self) -> Expr:
        """All flushes kept."""
        return total(self.recipes.taken * self.recipe.chosen, RECIPE)

    @line("Recipe is the richer of the two", unit="flag", axes=(RECIPE,))
    def richer(self) -> Expr:
        """By what a bag that lives gives."""
        return where(self.other_is_richer, self.beside.tried, self.recipe.chosen)

    @line("The leaner of the two: a bag inoculated leaves", unit="money/bag_inoculated")
    def lean_leaves(self) -> Expr:
        """What the richer must beat."""
        return where(self.other_is_richer, self.now_leaves, self.other_leaves)

    @line("The richer of the two: a bag that lives leaves, itself not paid", unit="money/bag_live")
    def rich_live(self) -> Expr:
        """As its yield is claimed."""
        return self._of_richer(self.recipes.live_leaves)

    @line("The richer of the two: a bag inoculated and shelved has cost", unit="money/bag_inoculated")
    def rich_spent(self) -> Expr:
        """In money."""
        return self._of_richer(self.recipes.spent)

    @line("The richer of the two: bags lost in the spawn run", unit="share")
    def rich_loss(self) -> Expr:
        """As typed."""
        return self._of_richer(self.recipes.loss)

    @line("The richer of the two: bags that live, of those inoculated", unit="bag_live/bag_inoculated")
    def rich_living(self) -> Expr:
        """As typed."""
        return self._of_richer(self.recipes.living)

    @line("The richer of the two: taken to customers from a bag that lives", unit="kg_taken/bag_live")
    def rich_gives(self) -> Expr:
        """As its yield is claimed."""
        return self._of_richer(self.recipes.taken)

    # The loss that turns it

    @line("A bag of the richer one saved from loss is worth", unit="money/bag_inoculated")
    def rich_saved(self) -> Expr:
        """What it leaves if it lives, and not taking it out."""
        return joined(self.rich_live, "money/bag_inoculated") + self.recipes.cull

    @line(
        "Bags lost in the spawn run at which the richer one stops winning",
        unit="share",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def turn_loss(self) -> Expr:
        """Of those inoculated; beyond it the leaner one leaves more of a bag. No figure where no other is named."""
        ahead = joined(self.rich_live, "money/bag_inoculated") - self.rich_spent - self.lean_leaves
        return ratio(ahead, self.rich_saved) * self.beside.named

    @line("Some loss of the richer one turns the choice", unit="flag")
    def loss_turns(self) -> Expr:
        """1 where that loss is more than none and less than all bags."""
        some, not_all = self.turn_loss > SUM_TOLERANCE, 1 - self.turn_loss > SUM_TOLERANCE
        return all_of(self.rich_saved > 0, some, not_all)

    @line("The loss that turns it", unit="1")
    def loss_told(self) -> Expr:
        """Beside the loss typed."""
        return say(either(self.beside.named, self.loss_of_two, "No other recipe is named."))

    @line("The loss that turns it, where two are named", unit="1")
    def loss_of_two(self) -> Expr:
        """There may be none."""
        return say(either(self.loss_turns, self.loss_at, self.no_loss))

    @line("The loss that turns it, where there is one", unit="1")
    def loss_at(self) -> Expr:
        """For the richer of the two."""
        return say(
            self.richer_name,
            " is the richer. By the bag it wins as long as it loses less than ",
            figure(self.turn_loss, 1, named=False),
            " of its bags in the spawn run; as typed it loses ",
            figure(self.rich_loss, 1, named=False),
            ".",
        )

    @line("The loss that turns it, where there is none", unit="1")
    def no_loss(self) -> Expr:
        """It wins or loses whatever is lost."""
        return say(
            self.richer_name,
            either(
                self.wins_at_any_loss,
                " is the richer. No loss would turn it: it wins whatever is lost in the spawn run.",
                " is the richer. No loss would turn it: it would not win if not one bag were lost.",
            ),
        )

    @line("The richer one wins whatever it loses", unit="flag")
    def wins_at_any_loss(self) -> Expr:
        """1 where a bag of it leaves more though all were lost, or lost bags would cost less than those that live."""
        return all_of(self.rich_leaves > self.lean_leaves, negation(self.loss_turns))

    @line("The richer of the two: a bag inoculated leaves", unit="money/bag_inoculated")
    def rich_leaves(self) -> Expr:
        """As typed."""
        return self._of_richer(self.recipes.leaves)

    # The yield that turns it

    @line("A bag of the richer one that lives must leave, itself not paid", unit="money/bag_live", source=ARITHMETIC)
    def must_leave(self) -> Expr:
        """To leave as much of a bag inoculated as the leaner one."""
        lost = self.recipes.cull * self.rich_loss
        return ratio(self.lean_leaves + self.rich_spent + lost, self.rich_living)

    @line(
        "A bag of the richer one that lives must give", unit="kg_taken/bag_live", source=ARITHMETIC, zero_is_none=True
    )
    def must_give(self) -> Expr:
        """Taken to customers, for the two to be alike."""
        return ratio(self.must_leave + self.recipes.later, self.recipes.value)

    @line(
        "Yield of the richer one may fall short of its claim by",
        unit="share",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def may_fall(self) -> Expr:
        """Then the two are alike, by the bag. Below zero: it must give so much more than is claimed."""
        return (1 - ratio(self.must_give, self.rich_gives)) * self.yield_turns

    @line("Some yield of the richer one turns the choice", unit="flag")
    def yield_turns(self) -> Expr:
        """0 where weight sold brings nothing, the richer one wins without any, or no other is named."""
        gives = all_of(self.rich_living > 0, self.rich_gives > 0, self.must_give > 0)
        return all_of(self.beside.named, self.recipes.value > 0, gives)

    @line("The yield that turns it", unit="1")
    def yield_told(self) -> Expr:
        """Beside the yield claimed."""
        return say(either(self.beside.named, self.yield_of_two, "No other recipe is named."))

    @line("The yield that turns it, where two are named", unit="1")
    def yield_of_two(self) -> Expr:
        """There may be none."""
        return say(either(self.yield_turns, self.yield_at, "No fall of its yield would turn it."))

    @line("The yield that turns it, where there is one", unit="1")
    def yield_at(self) -> Expr:
        """For the richer of the two."""
        return say(
            either(self.may_fall < 0, "To win it must yield ", "It still wins if its yield is up to "),
            figure(self.further, 0, named=False),
            either(self.may_fall < 0, " more than is claimed.", " less than is claimed."),
        )

    @line("Yield of the richer one: how far from its claim", unit="share")
    def further(self) -> Expr:
        """Up or down."""
        return where(self.may_fall < 0, -self.may_fall, self.may_fall)

    @line("Richer of the two, by name", unit="1")
    def richer_name(self) -> Expr:
        """As typed."""
        return say(either(self.other_is_richer, self.beside.other_name, self.beside.chosen_name))
