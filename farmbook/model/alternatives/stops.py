"""The whole farm if bags were dumped after the first, second, third or fourth flush: bags it can fill, and its year."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar, Final

from farmbook.expr.functions import absolute, at, named
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import ranking_key
from farmbook.model.alternatives.flushes import Flushes
from farmbook.model.alternatives.whole_farm import StagesThen, WholeFarm, YearThen
from farmbook.model.axes import FLUSH
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
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


class Stop(WholeFarm):
    """Bags leave after so many flushes; a flush never picked is taken as the sheet Flushes has it."""

    number: ClassVar[int]

    harvest = uses(Harvest)
    flushes = uses(Flushes)

    @property
    def flush(self) -> Expr:
        """The last flush kept."""
        return named(STOPS[self.number - 1])

    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """Flushes kept, days in the room, and the weight of flushes that you have not picked so far."""
        days = at(self.flushes.days, FLUSH, self.flush) - self.harvest.turn_round_days
        return {Crop.flushes_kept: self.flush, Crop.efficiency: self.flushes.efficiency, Harvest.days_in_fruiting: days}


class StopRoom(Stop, StagesThen):
    """What the stages can do then."""


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


class StopYear(Stop, YearThen):
    """The year with so many bags."""

    @line("Flushes, {}", unit="count")
    def flushes_kept(self) -> Expr:
        """So many are picked."""
        return self.flush

    @line("Rank of the year, {}, as a key", unit="1", source=ARITHMETIC)
    def rank_key(self) -> Expr:
        """The highest profit has the largest; of equal ones the fewer flushes."""
        return ranking_key(self.profit * CENTS, self.flush, named(STOPS[-1]))

    @line("Rank of the stop, {}, by the flushes kept now, as a key", unit="1", source=ARITHMETIC)
    def now_key(self) -> Expr:
        """The stop that you keep now has the largest."""
        return ranking_key(-absolute(self.flush - self.flushes.last_kept), self.flush, named(STOPS[-1]))


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
