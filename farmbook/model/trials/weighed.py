"""Two sides of a change, weighed: what it brings or saves in a year against what it costs, and whether that is clear."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO, difference_over_larger
from farmbook.expr.functions import absolute, all_of, maximum
from farmbook.expr.nodes import Expr
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line
from farmbook.sources import PARTIAL_BUDGET

__all__ = ["Weighed"]


class Weighed(Alike):
    """A partial budget of a change. Each trial says what stands on its two sides."""

    gained: LineOf
    spent: LineOf

    @line("{}: change of the year", unit="money/year", source=PARTIAL_BUDGET)
    def change(self) -> Expr:
        """Above zero it pays. Only what differs is counted."""
        return self.gained - self.spent

    @line("{}: the larger of the two sides, a year", unit="money/year")
    def larger(self) -> Expr:
        """The measure of what is a small difference."""
        return maximum(absolute(self.gained), absolute(self.spent))

    @line("{}: difference, of the larger side", unit="share")
    def apart(self) -> Expr:
        """Less than the inputs are known to is no difference."""
        return difference_over_larger(self.change, self.larger)

    @line("{}: the difference is clear", unit="flag")
    def clear(self) -> Expr:
        """0 where it is too close to call."""
        return self.apart > INPUTS_KNOWN_TO

    @line("{}: outcome, as a number", unit="count")
    def outcome(self) -> Expr:
        """0 too close to call, 1 does not pay, 2 pays."""
        return self.clear * (1 + (self.change > 0))

    @property
    def loses(self) -> Expr:
        """Whether it clearly leaves less; of two sides that are alike the sign of a rounding says nothing."""
        return all_of(self.clear > 0, self.change < 0)
