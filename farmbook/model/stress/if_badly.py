"""The plan as it is beside the ten cases, and how many of them take cash or coverage below what is wanted."""

from __future__ import annotations

from farmbook.expr.functions import any_of, joined
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.stress.bad_cases import (
    BadYear,
    CostsRise,
    CustomerLost,
    LateOpening,
    LatePayers,
    LessPicked,
    MoreLost,
    PlantStops,
    PricesFall,
    RatesRise,
)
from farmbook.model.stress.cover_wanted import CoverWanted
from farmbook.model.year.household import Household
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["IfBadly"]


class IfBadly(Section):
    """What a lender asks: does the plan still carry itself?"""

    title = "If things go badly"

    cash = uses(MonthCash)
    household = uses(Household)
    wanted = uses(CoverWanted)
    prices = uses(PricesFall)
    weight = uses(LessPicked)
    losses = uses(MoreLost)
    rates = uses(RatesRise)
    costs = uses(CostsRise)
    customer = uses(CustomerLost)
    payers = uses(LatePayers)
    opening = uses(LateOpening)
    stop = uses(PlantStops)
    year = uses(BadYear)

    @line("As planned: month in which cash is enough again for good", unit="count")
    def enough_from(self) -> Expr:
        """After the last month with less than the least to keep; 1 where there is none."""
        return self.cash.last_below + 1

    @line("As planned: enough again for good, in words", unit="1")
    def enough_told(self) -> Expr:
        """A month of the plan."""
        return say("in month ", figure(self.enough_from, 0, named=False))

    @line("As planned: when cash is enough again, where it was not", unit="1")
    def again_told(self) -> Expr:
        """If it is."""
        return say(either(self.enough_from > self.cash.months.many, "not within the plan", self.enough_told))

    @line("As planned: back above the least cash to keep", unit="1")
    def back(self) -> Expr:
        """For good."""
        return say(either(self.cash.months_below > 0, self.again_told, "never below"))

    @line("As planned: left when the household has lived, a year", unit="money")
    def left_over(self) -> Expr:
        """Of a typical year."""
        return joined(self.household.left_over, "money")

    @line("Cases of markets in which cash falls below the least to keep", unit="count")
    def of_markets(self) -> Expr:
        """Prices, the best customer, late payers."""
        return (self.prices.below > 0) + (self.customer.below > 0) + (self.payers.below > 0)

    @line("Cases of growing in which cash falls below the least to keep", unit="count")
    def of_growing(self) -> Expr:
        """Weight, losses, a stop of the plant."""
        return (self.weight.below > 0) + (self.losses.below > 0) + (self.stop.below > 0)

    @line("Cases of costs in which cash falls below the least to keep", unit="count")
    def of_costs(self) -> Expr:
        """Rates, energy and wages, building; and the bad year."""
        return (self.rates.below > 0) + (self.costs.below > 0) + (self.opening.below > 0) + (self.year.below > 0)

    @line("Cases in which cash falls below the least to keep", unit="count")
    def in_all(self) -> Expr:
        """Of ten."""
        return self.of_markets + self.of_growing + self.of_costs

    @line("Cases of markets in which coverage falls below what is wanted", unit="count")
    def uncovered_of_markets(self) -> Expr:
        """Prices, the best customer, late payers."""
        return self.prices.uncovered + self.customer.uncovered + self.payers.uncovered

    @line("Cases of growing in which coverage falls below what is wanted", unit="count")
    def uncovered_of_growing(self) -> Expr:
        """Weight, losses, a stop of the plant."""
        return self.weight.uncovered + self.losses.uncovered + self.stop.uncovered

    @line("Cases of costs in which coverage falls below what is wanted", unit="count")
    def uncovered_of_costs(self) -> Expr:
        """Rates, energy and wages, building; and the bad year."""
        return self.rates.uncovered + self.costs.uncovered + self.opening.uncovered + self.year.uncovered

    @line("Cases in which coverage falls below what is wanted", unit="count")
    def uncovered_in_all(self) -> Expr:
        """Of ten, in the first full year or in a typical one; none where no loan is paid."""
        return self.uncovered_of_markets + self.uncovered_of_growing + self.uncovered_of_costs

    @line("Cases in which coverage falls, in words", unit="1")
    def uncovered_told(self) -> Expr:
        """Where a loan is paid in one of these years."""
        return say(
            ", and ",
            figure(self.uncovered_in_all, 0, named=False),
            " take coverage below the ",
            figure(0 + self.wanted.sizes.covenant, 2, named=False),
            " wanted, the household paid",
        )

    @line("If things go badly: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        pays = any_of(self.wanted.full > 0, self.wanted.typical > 0)
        return say(
            "Of ten cases ",
            figure(self.in_all, 0, named=False),
            " take cash below the least to keep",
            either(pays, self.uncovered_told, ""),
            ". In a bad year cash is lowest at ",
            figure(self.year.lowest, -2, named=False),
            ", against ",
            figure(self.cash.lowest, -2, named=False),
            " as planned.",
        )
