"""What one more of a stage is worth, and how many more before something else limits."""

from __future__ import annotations

from typing import ClassVar

from farmbook.expr.functions import all_of, maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.stage import Stage
from farmbook.model.place.farm_plan import Farm
from farmbook.model.year.one_more import OneMore
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["Widening"]


class Widening(Alike):
    """A stage made wider. What is there `all_year` is worth what its bags leave in the weeks worked."""

    all_year: ClassVar[bool] = False

    farm = uses(Farm)
    one_more = uses(OneMore)
    limits = uses(Limits)

    stage: Stage

    @line("{} is worth, where it limits", unit="money", source=PARTIAL_BUDGET, zero_is_none=True)
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        leaves = maximum(self.one_more.bag_leaves, 0) * self.stage.frees
        return leaves * self.farm.weeks_worked if self.all_year else leaves

    @line("{}: it limits", unit="flag")
    def limiting(self) -> Expr:
        """1 where no stage can do less."""
        return all_of(self.stage.known, self.stage.capacity <= self.limits.first)

    @line("{}: up to so many", unit="1", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return ratio(self.limits.until_next * self.limiting, self.stage.frees)
