"""What one more of each stage is worth."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum
from farmbook.expr.nodes import Expr
from farmbook.model.limits.making_stages import BenchStage, CoolingStage, MixingStage, SteamerStage
from farmbook.model.limits.other_stages import CustomerStage, LabourStage
from farmbook.model.limits.room_stages import ColdRoomStage, FruitingStage, IncubationStage
from farmbook.model.limits.widening import Widening
from farmbook.sections.declare import line, uses
from farmbook.sources import PARTIAL_BUDGET

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

BY_THE_HOUR: Final = {"worth": "money/person_hour", "up_to": "person_hour/week"}
BY_THE_LOAD: Final = {"worth": "money/run", "up_to": "run/week"}
BY_THE_PLACE: Final = {"worth": "money/place/year", "up_to": "place"}
BY_WEIGHT_KEPT: Final = {"worth": "money/kg_packed/year", "up_to": "kg_packed"}
BY_WEIGHT_TAKEN: Final = {"worth": "money/kg_taken", "up_to": "kg_taken/week"}


class MixingWidening(Widening, words="An hour more of mixing and filling", units=BY_THE_HOUR):
    """One more of its unit."""

    title = "Mixing and filling, widened"

    stage = uses(MixingStage)


class SteamerWidening(Widening, words="A load more", units=BY_THE_LOAD):
    """One more of its unit."""

    title = "The steamer, widened"

    stage = uses(SteamerStage)


class CoolingWidening(Widening, words="A place more to cool", units=BY_THE_PLACE):
    """One more of its unit."""

    title = "Cooling, widened"
    all_year = True
    stage = uses(CoolingStage)


class BenchWidening(Widening, words="An hour more at the bench", units=BY_THE_HOUR):
    """One more of its unit."""

    title = "The inoculation bench, widened"

    stage = uses(BenchStage)


class IncubationWidening(Widening, words="A place more in the incubation room", units=BY_THE_PLACE):
    """One more of its unit."""

    title = "Incubation places, widened"
    all_year = True
    stage = uses(IncubationStage)


class FruitingWidening(Widening, words="A place more in the fruiting rooms", units=BY_THE_PLACE):
    """One more of its unit."""

    title = "Fruiting places, widened"
    all_year = True
    stage = uses(FruitingStage)


class LabourWidening(Widening, words="An hour more of work", units=BY_THE_HOUR):
    """One more of its unit."""

    title = "Hours of work, widened"

    stage = uses(LabourStage)


class ColdRoomWidening(Widening, words="More weight in the cold room", units=BY_WEIGHT_KEPT):
    """One more of its unit."""

    title = "The cold room, widened"
    all_year = True
    stage = uses(ColdRoomStage)


class CustomerWidening(Widening, words="More that customers take", units=BY_WEIGHT_TAKEN):
    """One more of its unit."""

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
