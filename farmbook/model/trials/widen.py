"""More of one stage: what it is worth as far as something else allows, less what it costs."""

from __future__ import annotations

from abc import abstractmethod
from typing import ClassVar

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, minimum, sentence
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.widening import Widening
from farmbook.model.place.farm_plan import Farm
from farmbook.model.trials.weighed import Weighed
from farmbook.sections.declare import line, uses
from farmbook.sources import PARTIAL_BUDGET

__all__ = ["WidenTrial"]


class WidenTrial(Weighed):
    """So much more of a stage. Beyond where the next stage limits, or the next customer has enough, it is worth nothing."""

    farm = uses(Farm)
    limits = uses(Limits)
    forgone = uses(CropForgone)

    widening: Widening
    called: ClassVar[str]
    """What they are, as a sentence begins."""
    unknown: ClassVar[str]
    """What is said where the stage is not known."""

    @property
    @abstractmethod
    def more(self) -> Expr:
        """So many more are tried."""

    @abstractmethod
    def brings(self) -> Expr:
        """What one of it brings in a year."""

    @line("{}: of them count", unit="1")
    def counts(self) -> Expr:
        """As many as there is use for. None where it is not what limits, or not all is filled that could be."""
        return minimum(self.more, self.widening.up_to) * self.forgone.full

    @line("{}: bring a year", unit="money/year", source=PARTIAL_BUDGET)
    def gained(self) -> Expr:
        """Those that count, each at what one is worth."""
        return self.counts * self.brings()

    @line("{}: more than there is use for", unit="flag")
    def beyond(self) -> Expr:
        """1 where something else limits before all of them are in use."""
        over = self.more > self.widening.up_to + self.widening.up_to * SUM_TOLERANCE
        return all_of(over, self.limiting > 0)

    @line("{}: it is what limits a full farm", unit="flag")
    def limiting(self) -> Expr:
        """Only then is more of it worth anything."""
        return self.forgone.full * self.widening.limiting

    @line("{}: does it pay, as a number", unit="count")
    def state(self) -> Expr:
        """1 nothing tried, 2 not known, 3 not full, 4 not what limits, 5 too close, 6 does not pay, 7 pays."""
        known = 1 + self.forgone.full * (1 + self.limiting * (1 + self.outcome))
        return 1 + (self.more > 0) * (1 + self.widening.stage.known * known)

    @line("{}: does it pay", unit="1")
    def verdict(self) -> Expr:
        """By money alone."""
        return sentence(
            self.state,
            "nothing is changed",
            self.unknown,
            "first fill what can be filled",
            "no use, not what limits",
            "too close to call",
            "it does not pay",
            "it pays",
        )

    @line("{}: by how much, in words", unit="1")
    def by_how_much(self) -> Expr:
        """Of a year, and where only some of them count."""
        return say(
            ", ",
            figure(absolute(self.change), -2, named=False),
            either(self.loses, " a year less", " a year more"),
            either(self.beyond, self.only_some, ""),
        )

    @line("{}: only some count, in words", unit="1")
    def only_some(self) -> Expr:
        """Then something else limits."""
        return say(", only ", figure(self.counts, 0, named=False), " count")

    @line("{}, in a sentence", unit="1")
    def told(self) -> Expr:
        """What it changes in a year."""
        return say(
            f"{self.called}, ",
            figure(self.more, 0, named=False),
            " more: ",
            self.verdict,
            either(self.limiting * self.outcome * (self.more > 0), self.by_how_much, ""),
            ".",
        )
