"""After which flush to dump the bags: the stop whose whole year is best, and how far from the next it stands."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, at, maximum, minimum, named, ratio, running_sum, sentence, total
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import nth_value
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.flushes import Flushes
from farmbook.model.alternatives.stops import STOPS, StopYear, StopYearFour, StopYearOne, StopYearThree, StopYearTwo
from farmbook.model.axes import FLUSH
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = ["CLOSE", "SECOND_BEST", "FlushChoice"]

CLOSE: Final = Constant(
    0.03,
    "close_years",
    label="Difference of two years, of their takings, below which it is too close to call",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="Prices and weights are seldom known better than to a few percent.",
)
SECOND_BEST: Final = Constant(
    2, "second_best", label="Second in an order of choices", unit=unit("1"), source=ARITHMETIC.key
)


class FlushChoice(Section):
    """Each stop with the bags that it allows: rooms, hands, steamer or customers may limit, and what limits changes with the stop."""

    title = "After which flush to dump the bags"

    flushes = uses(Flushes)
    one = uses(StopYearOne)
    two = uses(StopYearTwo)
    three = uses(StopYearThree)
    four = uses(StopYearFour)

    @property
    def years(self) -> tuple[StopYear, ...]:
        """In the order of the flushes."""
        return self.one, self.two, self.three, self.four

    @property
    def keys(self) -> tuple[Expr, ...]:
        """What they are ranked by."""
        return tuple(year.rank_key for year in self.years)

    def _best(self, values: tuple[Expr, ...]) -> Expr:
        return nth_value(self.keys, 1, named(STOPS[-1]), values)

    def _second(self, values: tuple[Expr, ...]) -> Expr:
        return nth_value(self.keys, SECOND_BEST, named(STOPS[-1]), values)

    @line("Best stop: flushes kept", unit="count")
    def best(self) -> Expr:
        """The stop whose year leaves most."""
        return self._best(tuple(year.flushes_kept for year in self.years))

    @line("Next best stop: flushes kept", unit="count")
    def second(self) -> Expr:
        """What it is held against."""
        return self._second(tuple(year.flushes_kept for year in self.years))

    @line("Best stop: profit a year", unit="money/year")
    def best_profit(self) -> Expr:
        """After loss in value and interest."""
        return self._best(tuple(year.profit for year in self.years))

    @line("Next best stop: profit a year", unit="money/year")
    def second_profit(self) -> Expr:
        """After loss in value and interest."""
        return self._second(tuple(year.profit for year in self.years))

    @line("Best stop: takings after fees a year", unit="money/year")
    def best_takings(self) -> Expr:
        """What a few percent are taken of."""
        return self._best(tuple(year.net_takings for year in self.years))

    @line("Next best stop: takings after fees a year", unit="money/year")
    def second_takings(self) -> Expr:
        """They move with prices too."""
        return self._second(tuple(year.net_takings for year in self.years))

    @line("Best stop: bags a week", unit="bag_filled/week")
    def best_bags(self) -> Expr:
        """The least of what stages and customers allow."""
        return self._best(tuple(year.bags for year in self.years))

    @line("Next best stop: bags a week", unit="bag_filled/week")
    def second_bags(self) -> Expr:
        """The least of what stages and customers allow."""
        return self._second(tuple(year.bags for year in self.years))

    @line("Best stop is ahead by, a year", unit="money/year", source=PARTIAL_BUDGET)
    def ahead(self) -> Expr:
        """By so much."""
        return self.best_profit - self.second_profit

    @line("Difference of the two stops, of the takings", unit="share")
    def apart(self) -> Expr:
        """Less than a few percent is no difference."""
        return ratio(self.ahead, absolute(self.best_takings))

    @line("The best stop is clear", unit="flag")
    def clear(self) -> Expr:
        """0 where it is too close to call."""
        return self.apart > CLOSE

    # What would turn it

    @line("Turns if all prices move by", unit="share", source=ARITHMETIC, zero_is_none=True)
    def price_turn(self) -> Expr:
        """All alike, the bags as they are. Below zero: they must fall. No figure where both sell alike."""
        return ratio(self.ahead, self.takings_apart * self.sell_apart)

    @line("Takings after fees: next best stop less the best, a year", unit="money/year")
    def takings_apart(self) -> Expr:
        """What moves with prices."""
        return self.second_takings - self.best_takings

    @line("The two stops sell differently", unit="flag")
    def sell_apart(self) -> Expr:
        """More than a rounding of sums apart."""
        return absolute(self.takings_apart) > absolute(self.best_takings) * SUM_TOLERANCE

    @line("Fresh weight of all flushes so far, for a bag moved to fruiting", unit="kg_picked/bag_live", axes=(FLUSH,))
    def fresh_so_far(self) -> Expr:
        """If kept until then."""
        return running_sum(self.flushes.fresh, FLUSH)

    @line("Picked up to the earlier of the two stops", unit="kg_picked/bag_live")
    def fresh_earlier(self) -> Expr:
        """For a bag moved to fruiting."""
        return at(self.fresh_so_far, FLUSH, minimum(self.best, self.second))

    @line("Picked up to the later of the two stops", unit="kg_picked/bag_live")
    def fresh_later(self) -> Expr:
        """For a bag moved to fruiting."""
        return at(self.fresh_so_far, FLUSH, maximum(self.best, self.second))

    @line("Takings after fees of the flushes between, a year", unit="money/year")
    def takings_between(self) -> Expr:
        """By their share of the weight at the later stop."""
        share = ratio(self.fresh_later - self.fresh_earlier, self.fresh_later)
        return self.later_takings * share

    @line("Takings after fees a year at the later of the two stops", unit="money/year")
    def later_takings(self) -> Expr:
        """Best or next best, whichever keeps more flushes."""
        return self.second_takings + (self.best_takings - self.second_takings) * self.best_is_later

    @line("The best stop is the later of the two", unit="flag")
    def best_is_later(self) -> Expr:
        """1 where it keeps more flushes."""
        return self.best > self.second

    @line("Turns if the weight between moves by", unit="share", source=ARITHMETIC, zero_is_none=True)
    def weight_turn(self) -> Expr:
        """For the next best stop to be as good, roughly: picking left out. Below zero: they must weigh less."""
        return ratio(self.ahead, self.takings_between) * (1 - self.best_is_later - self.best_is_later)

    # In words

    @line("Best stop, in a word", unit="1")
    def best_word(self) -> Expr:
        """The flush after which bags leave."""
        return sentence(self.best, "first", "second", "third", "fourth")

    @line("Next best stop, in a word", unit="1")
    def second_word(self) -> Expr:
        """The flush after which bags leave."""
        return sentence(self.second, "first", "second", "third", "fourth")

    @line("No stop pays for its bag", unit="flag")
    def none_pays(self) -> Expr:
        """Then each bag filled loses money, whenever it is dumped."""
        return total(self.flushes.leaves_so_far > 0, FLUSH) <= 0

    @line("Flushes: the best stop and the next", unit="1")
    def clear_told(self) -> Expr:
        """Where it is clear."""
        return say(
            "Dump bags after the ",
            self.best_word,
            " flush: ",
            figure(self.best_profit, -2, named=False),
            " a year at the ",
            figure(self.best_bags, 0, named=False),
            " bags a week that the farm can take then; after the ",
            self.second_word,
            " it is ",
            figure(self.second_profit, -2, named=False),
            " at ",
            figure(self.second_bags, 0, named=False),
            ".",
        )

    @line("Flushes: two stops too close to call", unit="1")
    def close_told(self) -> Expr:
        """Old bags breed flies and mould, so the earlier is the safer."""
        return say(
            "Dumping after the ",
            self.best_word,
            " flush (",
            figure(self.best_profit, -2, named=False),
            " a year at the most bags it allows, ",
            figure(self.best_bags, 0, named=False),
            " a week) or after the ",
            self.second_word,
            " (",
            figure(self.second_profit, -2, named=False),
            " at ",
            figure(self.second_bags, 0, named=False),
            ") is too close to call. Take the earlier.",
        )

    @line("Flushes: the answer", unit="1")
    def answer(self) -> Expr:
        """The whole year at each stop, with the bags that stages and customers then allow; what limits changes with the stop."""
        return say(
            either(self.clear, self.clear_told, self.close_told),
            either(self.none_pays, " No stop pays for its bag: fill fewer bags.", ""),
        )
