"""Owning and keeping up steamer and lab, added to what growing costs."""

from __future__ import annotations

from farmbook.expr.functions import ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, EQUIVALENT_ANNUAL_COST

__all__ = ["EquipmentCost"]


class EquipmentCost(Section):
    """What the steamer, and the lab where spawn is made, cost a year without running them, spread over the crop."""

    title = "Grown cost with steamer and lab"

    farm = uses(Farm)
    crop = uses(Crop)
    growing = uses(GrowingCost)
    harvest = uses(Harvest)
    steamer_in_use = uses(SteamerInUseYear)
    source = uses(SpawnSource)
    lab_choice = uses(MakeOrBuy)

    @line("Steamer in use: owning and upkeep, a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def steamer(self) -> Expr:
        """The fall in its value with the return you want, and repairs. Running it is in the grown cost already."""
        return self.steamer_in_use.owning_cost + self.steamer_in_use.upkeep

    @line("Spawn lab in use: owning and upkeep, a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def lab(self) -> Expr:
        """Nothing where the spawn is bought."""
        return (self.lab_choice.owning + self.lab_choice.upkeep) * self.source.made

    @line("Steamer and lab: owning and upkeep, a year", unit="money/year")
    def in_all(self) -> Expr:
        """The same however many bags there are, so more bags make each of them cheaper."""
        return self.steamer + self.lab

    @line("Bags moved to fruiting a year", unit="bag_live/year")
    def live_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.harvest.live_a_week * self.farm.weeks_worked

    @line("Steamer and lab: for each bag that reaches fruiting", unit="money/bag_live", zero_is_none=True)
    def owned_per_live(self) -> Expr:
        """Spread over the bags moved to fruiting in a year."""
        return ratio(self.in_all, self.live_a_year)

    @line("Steamer and lab: for the weight taken to customers", unit="money/kg_taken", zero_is_none=True)
    def owned_per_taken(self) -> Expr:
        """Spread over all that is taken to customers in a year."""
        return ratio(self.in_all, self.harvest.taken_a_year)

    @line(
        "Cost: a bag that fruits, with steamer and lab",
        unit="money/bag_live",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def cost_per_live(self) -> Expr:
        """Rooms, picking, selling and yearly bills are still to come."""
        return where(self.live_a_year > 0, self.growing.grown_cost_per_live + self.owned_per_live, 0)

    @line(
        "Cost: a bag filled, with steamer and lab",
        unit="money/bag_filled",
        zero_is_none=True,
    )
    def cost_per_filled(self) -> Expr:
        """The same money over all bags filled."""
        return self.cost_per_live * self.crop.live_per_filled

    @line(
        "Cost: weight to customers, with steamer and lab",
        unit="money/kg_taken",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def cost_per_taken(self) -> Expr:
        """Rooms, picking, selling and yearly bills are still to come."""
        return where(self.harvest.taken_a_year > 0, self.growing.cost_per_taken + self.owned_per_taken, 0)
