"""What one more of a stage is worth, and how many more before something else limits."""

from __future__ import annotations

from farmbook.expr.functions import all_of, maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.stage import Stage
from farmbook.model.place.farm_plan import Farm
from farmbook.model.year.one_more import OneMore
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses

__all__ = ["Widening"]


class Widening(Alike):
    """A stage made wider. Nothing is worth anything where one more bag leaves nothing."""

    farm = uses(Farm)
    one_more = uses(OneMore)
    limits = uses(Limits)

    stage: Stage

    def worth_of_one(self) -> Expr:
        """What the bags leave for which one more makes room."""
        return maximum(self.one_more.bag_leaves, 0) * self.stage.frees

    def so_many_more(self) -> Expr:
        """Until the next stage limits or another price counts; nothing for a stage that does not limit."""
        return ratio(self.limits.until_next * self.limiting, self.stage.frees)

    @line("{}: what limits the farm", unit="flag")
    def limiting(self) -> Expr:
        """1 for the smallest of the stages that are known."""
        return all_of(self.stage.known, self.stage.capacity <= self.limits.first)
