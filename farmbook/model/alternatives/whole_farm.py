"""What every other way of running the farm has: what stays as it is, the bags it can fill then, and the year with them."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from typing import ClassVar

from farmbook.expr.functions import where
from farmbook.expr.nodes import Expr
from farmbook.model.limits.limits import Limits
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import Capital
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.year import Year
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import LineOf, NumberInput, line, uses

__all__ = ["StagesThen", "WholeFarm", "YearThen"]


class WholeFarm(Alternative):
    """The farm run in another way; rooms, cooler and van stay what they are, and bills typed move by what is worked out."""

    farm = uses(Farm)
    bills = uses(Bills)
    capital = uses(Capital)

    @abstractmethod
    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """What is done in another way."""

    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """What is tried, and what bills and bookkeeper know of the farm as it is."""
        return {
            Bills.energy_then: self.bills.energy_then,
            Bills.water_and_upkeep_then: self.bills.water_and_upkeep_then,
            Capital.usual_rest: self.capital.usual_rest,
            Capital.steamer_then: self.capital.steamer_then,
            **self.tries(),
        }


class StagesThen(WholeFarm):
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


class YearThen(WholeFarm):
    """The year with so many bags."""

    wanted: ClassVar[tuple[LineOf, ...]] = (Year.profit, CustomerYear.takings_in_all, CustomerYear.fees_in_all)

    room: StagesThen

    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """The bags that can be filled, beside what is tried."""
        return {**super().changes(), Farm.bags_filled_a_week: self.room.bags}

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
