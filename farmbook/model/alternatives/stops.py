"""The whole farm if bags were dumped after the first, second, third or fourth flush: bags it can fill, and its year."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar, Final

from farmbook.expr.functions import at, named, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import ranking_key
from farmbook.model.alternatives.flushes import Flushes
from farmbook.model.axes import FLUSH
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
from farmbook.model.limits.limits import Limits
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.year import Year
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import LineOf, NumberInput, line, uses
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = [
    "STOPS",
    "StopRoomFour",
    "StopRoomOne",
    "StopRoomThree",
    "StopRoomTwo",
    "StopYearFour",
    "StopYearOne",
    "StopYearThree",
    "StopYearTwo",
]

STOPS: Final = tuple(
    Constant(
        number,
        f"flushes_kept_{number}",
        label=f"Flushes kept, stop {number}",
        unit=unit("count"),
        source=ARITHMETIC.key,
    )
    for number in range(1, 5)
)
CENTS: Final = Constant(
    100,
    "cents_a_year",
    label="Parts of money by which years are ranked",
    unit=unit("year/money"),
    source=ARITHMETIC.key,
)


class Stop(Alternative):
    """Bags leave after so many flushes; a flush never picked is taken as the sheet Flushes has it."""

    number: ClassVar[int]

    crop = uses(Crop)
    harvest = uses(Harvest)
    flushes = uses(Flushes)
    farm = uses(Farm)

    @property
    def flush(self) -> Expr:
        """The last flush kept."""
        return named(STOPS[self.number - 1])

    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """Flushes kept, days in the room, and the weight of flushes that you have not picked so far."""
        days = at(self.flushes.days, FLUSH, self.flush) - self.harvest.turn_round_days
        return {Crop.flushes_kept: self.flush, Crop.efficiency: self.flushes.efficiency, Harvest.days_in_fruiting: days}


class StopRoom(Stop):
    """What the stages can do then."""

    wanted = (Limits.first, Limits.first_name, Limits.many)

    @property
    def behind(self) -> str:
        """These are worked out with the bags of now; the year is not."""
        return f"{self.words}, bags as now"

    @line("Bags to fill, {}", unit="bag_filled/week")
    def bags(self) -> Expr:
        """The least of what all stages and customers allow; the bags typed where nothing is known to limit."""
        return where(self.of(Limits.many) > 0, self.of(Limits.first), self.farm.bags_filled_a_week)

    @line("What limits, {}", unit="1")
    def limit(self) -> Expr:
        """The smallest of the stages."""
        return self.of(Limits.first_name)


class StopRoomOne(StopRoom, words="dumped after the first flush"):
    """One flush."""

    title = "Dumped after the first flush: stages"
    number = 1


class StopRoomTwo(StopRoom, words="dumped after the second flush"):
    """Two flushes."""

    title = "Dumped after the second flush: stages"
    number = 2


class StopRoomThree(StopRoom, words="dumped after the third flush"):
    """Three flushes."""

    title = "Dumped after the third flush: stages"
    number = 3


class StopRoomFour(StopRoom, words="dumped after the fourth flush"):
    """Four flushes."""

    title = "Dumped after the fourth flush: stages"
    number = 4


class StopYear(Stop):
    """The year with so many bags."""

    wanted = (Year.profit, CustomerYear.takings_in_all, CustomerYear.fees_in_all)

    room: StopRoom

    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """The bags that can be filled, beside what the stop changes."""
        return {**super().changes(), Farm.bags_filled_a_week: self.room.bags}

    @line("Flushes, {}", unit="count")
    def flushes_kept(self) -> Expr:
        """So many are picked."""
        return self.flush

    @line("Bags a week, {}", unit="bag_filled/week")
    def bags(self) -> Expr:
        """As many as can be filled then."""
        return self.room.bags

    @line("Profit a year, {}", unit="money/year")
    def profit(self) -> Expr:
        """After loss in value and interest, with the bags that can be filled, sold in the order you serve customers."""
        return self.of(Year.profit)

    @line("Takings after fees a year, {}", unit="money/year")
    def net_takings(self) -> Expr:
        """They move with prices."""
        return self.of(CustomerYear.takings_in_all) - self.of(CustomerYear.fees_in_all)

    @line("Rank of the year, {}, as a key", unit="1", source=ARITHMETIC)
    def rank_key(self) -> Expr:
        """The highest profit has the largest; of equal ones the fewer flushes."""
        return ranking_key(self.profit * CENTS, self.flush, named(STOPS[-1]))


class StopYearOne(StopYear, words="dumped after the first flush"):
    """One flush."""

    title = "Dumped after the first flush: the year"
    number = 1
    room = uses(StopRoomOne)


class StopYearTwo(StopYear, words="dumped after the second flush"):
    """Two flushes."""

    title = "Dumped after the second flush: the year"
    number = 2
    room = uses(StopRoomTwo)


class StopYearThree(StopYear, words="dumped after the third flush"):
    """Three flushes."""

    title = "Dumped after the third flush: the year"
    number = 3
    room = uses(StopRoomThree)


class StopYearFour(StopYear, words="dumped after the fourth flush"):
    """Four flushes."""

    title = "Dumped after the fourth flush: the year"
    number = 4
    room = uses(StopRoomFour)
