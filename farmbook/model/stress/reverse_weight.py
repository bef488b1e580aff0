"""How far the weight could fall before a typical year covers its loans no better than wanted."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum, minimum, previous, ratio, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR, CUSTOMER, HALVING
from farmbook.model.crop.crop import Crop
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.stress.bad_cases import Shocked
from farmbook.model.stress.reverse import Fall
from farmbook.model.stress.to_lose import ToLoseOfAsked, ToLoseOfOne
from farmbook.model.stress.weight_lost import WeightLost
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC

__all__ = ["WEIGHT_FALLS", "WeightToAsked", "WeightToOne"]


class WeightFall(Fall):
    """Income falls in straight pieces, steeper or less at each customer and month: the fall is closed in on by halves.

    The last billionth of the weight is taken in proportion, which is exact on a straight piece.
    """

    lost = uses(WeightLost)
    crop = uses(Crop)

    # The search

    @line("Tried: {}", unit="share", axes=(HALVING,), source=ARITHMETIC)
    def tried(self) -> Expr:
        """Share of the weight gone: half a step above what is known to be too little."""
        return previous(self.known, HALVING) + self.lost.width

    @line("Too little: {}", unit="share", axes=(HALVING,), source=ARITHMETIC)
    def known(self) -> Expr:
        """The most tried so far that loses less than may be lost."""
        return starting(0, previous(self.known, HALVING) + self.lost.width * (self.lost_then < self.to_lose.room))

    @line("To sell a week: {}", unit="kg_taken/week", axes=(HALVING,))
    def supply(self) -> Expr:
        """With so much gone."""
        return self.lost.months.supply_a_week * (1 - self.tried)

    @line("Short a week, customer and those before: {}", unit="kg_taken/week", axes=(CUSTOMER, HALVING))
    def short(self) -> Expr:
        """Added up over the months."""
        return self.lost.short_with(self.supply)

    @line("Lost then: {}", unit="money", axes=(HALVING,))
    def lost_then(self) -> Expr:
        """Of the year's income."""
        return self.lost.lost(self.short, self.tried)

    # From the lower end on

    @line("Lower end: {}", unit="share", source=ARITHMETIC)
    def low(self) -> Expr:
        """Of the last step."""
        return total(self.lost.width * (self.lost_then < self.to_lose.room), HALVING)

    @line("To sell a week at the lower end: {}", unit="kg_taken/week")
    def supply_low(self) -> Expr:
        """With so much gone."""
        return self.lost.months.supply_a_week * (1 - self.low)

    @line("Short a week at the lower end: {}", unit="kg_taken/week", axes=(CUSTOMER,))
    def short_low(self) -> Expr:
        """Customer and those before, over the months."""
        return self.lost.short_with(self.supply_low)

    @line("Lost at the lower end: {}", unit="money")
    def lost_low(self) -> Expr:
        """Less than may be lost."""
        return self.lost.lost(self.short_low, self.low)

    @line("Months that go short below the lower end: {}", unit="1", axes=(CUSTOMER,))
    def months_short(self) -> Expr:
        """Of each customer and those before."""
        return total(self.lost.up_to >= self.supply_low, CALENDAR)

    @line("Lost from the lower end on, with all of the weight: {}", unit="money")
    def steepness(self) -> Expr:
        """If the piece went on straight; nothing where less weight would lose nothing."""
        at_each = total(self.lost.more_than_next * self.months_short, CUSTOMER)
        return maximum(at_each * self.lost.months.supply_a_week - self.lost.piece, 0)

    @line("From the lower end on: {}", unit="share", source=ARITHMETIC)
    def step_on(self) -> Expr:
        """What may still be lost, over that; never more than the last step."""
        return minimum(ratio(self.to_lose.room - self.lost_low, self.steepness), self.lost.last_width)

    def found(self) -> Expr:
        """On the straight piece."""
        return self.low + self.step_on

    def is_enough(self) -> Expr:
        """With nothing to sell, no more may be lost."""
        return self.to_lose.room <= self.lost.lost_with_all

    @line("Picked per bag then: {}", unit="kg_picked/bag_filled", zero_is_none=True)
    def weight_then(self) -> Expr:
        """Of bags filled."""
        return self.crop.picked_per_filled * (1 - self.fall) * self.is_there

    def changes(self) -> Shocked:
        """Every bag gives less; you go wherever you go as planned."""
        return {
            Shocks.weight_kept: 1 - self.fall,
            CustomerYear.weeks_there: self.year.customers.weeks_there,
        }


class WeightToAsked(WeightFall, words="weight, down to the coverage wanted"):
    """As a lender wants it."""

    title = "Weight down to the coverage wanted"
    to_lose = uses(ToLoseOfAsked)


class WeightToOne(WeightFall, words="weight, down to 1.00"):
    """Loans are just paid."""

    title = "Weight down to a coverage of 1.00"
    to_lose = uses(ToLoseOfOne)


WEIGHT_FALLS: Final = (WeightToAsked, WeightToOne)
