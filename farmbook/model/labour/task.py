"""What every task has: its hours in a week, and for a bag, a weight and a load."""

from __future__ import annotations

from farmbook.expr.functions import ratio
from farmbook.expr.nodes import Expr
from farmbook.model.cost.harvest import Harvest
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line, uses

__all__ = ["Task"]


class Task(Alike):
    """One task; all hands together, breaks inside."""

    farm = uses(Farm)
    harvest = uses(Harvest)
    steamer_in_use = uses(SteamerInUse)

    hours_a_week: LineOf

    @line("{}, for a bag filled", unit="person_min/bag_filled")
    def per_bag(self) -> Expr:
        """The week's hours over its bags."""
        return ratio(self.hours_a_week, self.farm.bags_filled_a_week)

    @line("{}, for the weight taken to customers", unit="person_min/kg_taken", zero_is_none=True)
    def per_taken(self) -> Expr:
        """The week's hours over its crop."""
        return ratio(self.hours_a_week, self.harvest.taken_a_week)

    @line("{}, for a load", unit="person_hour/run")
    def per_load(self) -> Expr:
        """The week's hours over its steam loads."""
        return ratio(self.hours_a_week, self.steamer_in_use.loads_a_week)
