"""The farm as it is run now, with the bags that its stages and customers allow: what every other way is held against."""

from __future__ import annotations

from farmbook.expr.functions import named
from farmbook.expr.nodes import Expr
from farmbook.expr.ranking import nth_value
from farmbook.model.alternatives.flush_choice import FlushChoice
from farmbook.model.alternatives.stops import STOPS
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["AsItIs"]


class AsItIs(Section):
    """The stop that you keep now, worked out as a whole farm on the sheet Flushes."""

    title = "The farm as it is, with the bags it can fill"

    flush_choice = uses(FlushChoice)

    def _now(self, values: tuple[Expr, ...]) -> Expr:
        keys = tuple(year.now_key for year in self.flush_choice.years)
        return nth_value(keys, 1, named(STOPS[-1]), values)

    @line("Bags a week that the farm as it is can fill", unit="bag_filled/week")
    def bags(self) -> Expr:
        """The least of what all stages and customers allow; the bags typed where nothing is known to limit."""
        return self._now(tuple(year.bags for year in self.flush_choice.years))

    @line("Profit a year, the farm as it is with those bags", unit="money/year")
    def profit(self) -> Expr:
        """After loss in value and interest."""
        return self._now(tuple(year.profit for year in self.flush_choice.years))

    @line("Takings after fees a year, the farm as it is with those bags", unit="money/year")
    def net_takings(self) -> Expr:
        """What a few percent are taken of."""
        return self._now(tuple(year.net_takings for year in self.flush_choice.years))
