"""What one more of each stage is worth."""

from __future__ import annotations

from farmbook.expr.functions import maximum
from farmbook.expr.nodes import Expr
from farmbook.model.limits.making_stages import BenchStage, CoolingStage, MixingStage, SteamerStage
from farmbook.model.limits.other_stages import CustomerStage, LabourStage
from farmbook.model.limits.room_stages import ColdRoomStage, FruitingStage, IncubationStage
from farmbook.model.limits.widening import Widening
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = [
    "BenchWidening",
    "ColdRoomWidening",
    "CoolingWidening",
    "CustomerWidening",
    "FruitingWidening",
    "IncubationWidening",
    "LabourWidening",
    "MixingWidening",
    "SteamerWidening",
]


class MixingWidening(Widening, words="Mixing and filling"):
    """What more of it is worth."""

    title = "Mixing and filling, widened"

    stage = uses(MixingStage)

    @line(
        "An hour more of mixing and filling is worth, where it limits",
        unit="money/person_hour",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one()

    @line(
        "An hour more of mixing and filling: up to so many",
        unit="person_hour/week",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class SteamerWidening(Widening, words="The steamer"):
    """What more of it is worth."""

    title = "The steamer, widened"

    stage = uses(SteamerStage)

    @line("A load more is worth, where it limits", unit="money/run", source=PARTIAL_BUDGET, zero_is_none=True)
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one()

    @line("A load more: up to so many", unit="run/week", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class CoolingWidening(Widening, words="Cooling"):
    """What more of it is worth."""

    title = "Cooling, widened"

    stage = uses(CoolingStage)

    @line(
        "A place more to cool is worth, where it limits",
        unit="money/place/year",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one() * self.farm.weeks_worked

    @line("A place more to cool: up to so many", unit="place", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class BenchWidening(Widening, words="The inoculation bench"):
    """What more of it is worth."""

    title = "The inoculation bench, widened"

    stage = uses(BenchStage)

    @line(
        "An hour more at the bench is worth, where it limits",
        unit="money/person_hour",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one()

    @line("An hour more at the bench: up to so many", unit="person_hour/week", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class IncubationWidening(Widening, words="Incubation places"):
    """What more of it is worth."""

    title = "Incubation places, widened"

    stage = uses(IncubationStage)

    @line(
        "A place more in the incubation room is worth, where it limits",
        unit="money/place/year",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one() * self.farm.weeks_worked

    @line("A place more in the incubation room: up to so many", unit="place", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class FruitingWidening(Widening, words="Fruiting places"):
    """What more of it is worth."""

    title = "Fruiting places, widened"

    stage = uses(FruitingStage)

    @line(
        "A place more in the fruiting rooms is worth, where it limits",
        unit="money/place/year",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one() * self.farm.weeks_worked

    @line("A place more in the fruiting rooms: up to so many", unit="place", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class LabourWidening(Widening, words="Hours of work"):
    """What more of it is worth."""

    title = "Hours of work, widened"

    stage = uses(LabourStage)

    @line(
        "An hour more of work is worth, where it limits",
        unit="money/person_hour",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one()

    @line("An hour more of work: up to so many", unit="person_hour/week", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class ColdRoomWidening(Widening, words="The cold room"):
    """What more of it is worth."""

    title = "The cold room, widened"

    stage = uses(ColdRoomStage)

    @line(
        "More weight in the cold room is worth, where it limits",
        unit="money/kg_packed/year",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the bags leave for which it makes room. No figure where it is not known, or a bag leaves nothing."""
        return self.worth_of_one() * self.farm.weeks_worked

    @line("More weight in the cold room: up to so many", unit="kg_packed", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()


class CustomerWidening(Widening, words="Customers"):
    """What more of it is worth."""

    title = "Customers, widened"

    stage = uses(CustomerStage)

    @line(
        "More that customers take is worth, where it limits",
        unit="money/kg_taken",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth(self) -> Expr:
        """What the last one sold brings, less what one more costs with the bag: a new customer at that price."""
        leaves = self.one_more.customers.last_one - self.one_more.to_fill_in_money
        return maximum(leaves, 0) * self.stage.known

    @line("More that customers take: up to so many", unit="kg_taken/week", source=ARITHMETIC, zero_is_none=True)
    def up_to(self) -> Expr:
        """Then the next stage limits, or another price counts. No figure for a stage that does not limit."""
        return self.so_many_more()
