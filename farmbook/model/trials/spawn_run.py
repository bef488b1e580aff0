"""The incubation room if the spawn run took other days: places taken, bags it has room for, bags more or fewer a week."""

from __future__ import annotations

from farmbook.calc.places import standing
from farmbook.expr.functions import joined, maximum, minimum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.room_stages import IncubationStage
from farmbook.model.limits.widenings import IncubationWidening
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.trials.one_fewer import OneFewer
from farmbook.model.year.one_more import OneMore
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line, uses
from farmbook.sources import ARITHMETIC, LITTLE_2008, PARTIAL_BUDGET

__all__ = ["SpawnRunTried"]


class SpawnRunTried(Alike):
    """Bags more come only of a full farm that this room limits, and only until the next stage limits or the next customer
    has enough. Bags fewer are those filled now for which it has no room any more.
    """

    farm = uses(Farm)
    room = uses(IncubationRoom)
    stage = uses(IncubationStage)
    widening = uses(IncubationWidening)
    limits = uses(Limits)
    forgone = uses(CropForgone)
    one_more = uses(OneMore)
    one_fewer = uses(OneFewer)

    days: LineOf

    @line("{}: places taken in the incubation room", unit="place", source=LITTLE_2008)
    def places(self) -> Expr:
        """Bags that come in a day, times the days, and own spawn standing with them."""
        return self.room.in_all(joined(standing(self.room.entering(), self.days), "place"))

    @line("{}: places freed", unit="place")
    def freed(self) -> Expr:
        """On average. Below zero: so many more are taken."""
        return self.room.taken - self.places

    @line("{}: the incubation room has room for", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def ceiling(self) -> Expr:
        """No figure where its places are not known."""
        return self.room.places * ratio(self.farm.bags_filled_a_week * self.stage.known, self.places)

    @line("{}: bags more a week", unit="bag_filled/week", source=ARITHMETIC)
    def bags_more(self) -> Expr:
        """Up to the next stage. None where the room does not limit, or not all is filled that could be."""
        rise = maximum(self.ceiling - self.stage.capacity, 0)
        return minimum(rise, self.limits.until_next) * self.widening.limiting * self.forgone.full

    @line("{}: bags fewer a week", unit="bag_filled/week", source=ARITHMETIC)
    def bags_fewer(self) -> Expr:
        """Of those filled now, as far as all stages can do them."""
        now = minimum(self.farm.bags_filled_a_week, self.limits.first)
        return maximum(now - self.ceiling, 0) * self.stage.known

    @line("{}: bags more, worth a year", unit="money/year", source=PARTIAL_BUDGET)
    def more_worth(self) -> Expr:
        """What one more bag leaves, as on the sheet Limits."""
        return self.bags_more * self.farm.weeks_worked * maximum(self.one_more.bag_leaves, 0)

    @line("{}: bags fewer, cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def fewer_cost(self) -> Expr:
        """What one bag fewer takes away."""
        return self.bags_fewer * self.farm.weeks_worked * maximum(self.one_fewer.takes_away, 0)
