"""The farm as it is beside the farm run in one other way: which leaves more, and whether that is clear."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.expr.functions import absolute, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.alternatives.as_it_is import AsItIs
from farmbook.model.alternatives.flush_choice import CLOSE
from farmbook.model.alternatives.whole_farm import YearThen
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses
from farmbook.sources import PARTIAL_BUDGET

__all__ = ["TwoYears"]


class TwoYears(Alike):
    """Each with the bags that it allows."""

    now = uses(AsItIs)

    other: YearThen

    @property
    @abstractmethod
    def left_now(self) -> Expr:
        """What the farm as it is leaves a year."""

    @property
    @abstractmethod
    def left_other(self) -> Expr:
        """What the other way leaves a year."""

    @line("{} leaves more than the one in use, a year", unit="money/year", source=PARTIAL_BUDGET)
    def more(self) -> Expr:
        """The whole farm, with the bags that each allows. Below zero, it leaves less."""
        return self.left_other - self.left_now

    @line("{} leaves more", unit="flag")
    def better(self) -> Expr:
        """1 even where the difference is small."""
        return self.more > 0

    @line("Takings after fees a year with the better of the two: {}", unit="money/year")
    def better_takings(self) -> Expr:
        """What a few percent are taken of."""
        return where(self.better, self.other.net_takings, self.now.net_takings)

    @line("{} and the one in use differ by, a year", unit="money/year")
    def between(self) -> Expr:
        """Either way."""
        return absolute(self.more)

    @line("{} and the one in use differ by, of the takings", unit="share")
    def apart(self) -> Expr:
        """Less than a few percent is no difference."""
        return ratio(self.between, absolute(self.better_takings))

    @line("{} or the one in use: it is clear which", unit="flag")
    def clear(self) -> Expr:
        """0 where it is too close to call."""
        return self.apart > CLOSE
