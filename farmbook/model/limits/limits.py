"""Which stage limits the farm, which comes next, and what one more of it is worth."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import all_of, any_of, maximum, minimum, ratio, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import nth_label, nth_value
from farmbook.expr.sentences import either, figure, say
from farmbook.model.limits.capacities import Capacities
from farmbook.model.limits.making_stages import BenchStage, CoolingStage, MixingStage, SteamerStage
from farmbook.model.limits.other_stages import CustomerStage, LabourStage
from farmbook.model.limits.room_stages import ColdRoomStage, FruitingStage, IncubationStage
from farmbook.model.limits.stage import Stage
from farmbook.model.place.farm_plan import Farm
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = ["Limits"]

SECOND: Final = Constant(2, "second_place", label="Second in an order", unit=unit("1"), source=ARITHMETIC.key)
NONE: Final = "nothing that is known"


class Limits(Section):
    """Nine stages in bags filled a week. The typical year follows the bags typed and is never capped: what is over is flagged."""

    title = "What limits the farm"

    farm = uses(Farm)
    capacities = uses(Capacities)
    one_more = uses(OneMore)
    mixing = uses(MixingStage)
    steamer = uses(SteamerStage)
    cooling = uses(CoolingStage)
    bench = uses(BenchStage)
    incubation = uses(IncubationStage)
    fruiting = uses(FruitingStage)
    labour = uses(LabourStage)
    cold_room = uses(ColdRoomStage)
    customers = uses(CustomerStage)

    @property
    def stages(self) -> tuple[Stage, ...]:
        """In the order in which they stand on the sheet."""
        making = (self.mixing, self.steamer, self.cooling, self.bench)
        return (*making, self.incubation, self.fruiting, self.labour, self.cold_room, self.customers)

    @property
    def keys(self) -> tuple[Expr, ...]:
        """What they are ranked by."""
        return tuple(stage.rank_key for stage in self.stages)

    @property
    def bags(self) -> tuple[Expr, ...]:
        """What each can do."""
        return tuple(stage.capacity for stage in self.stages)

    @line("Stages known: making", unit="count")
    def known_making(self) -> Expr:
        """Of mixing, steamer, cooling and bench."""
        return self.mixing.known + self.steamer.known + self.cooling.known + self.bench.known

    @line("Stages known", unit="count")
    def many(self) -> Expr:
        """Those whose capacity you gave. The others never limit."""
        rooms = self.incubation.known + self.fruiting.known
        return self.known_making + rooms + self.known_after

    @line("Stages known: hours, cold room, customers", unit="count")
    def known_after(self) -> Expr:
        """Of these three."""
        return self.labour.known + self.cold_room.known + self.customers.known

    @line("The farm can fill at most", unit="bag_filled/week", zero_is_none=True)
    def first(self) -> Expr:
        """What the smallest of the stages can do."""
        return nth_value(self.keys, 1, self.many, self.bags)

    @line("The next stage can do", unit="bag_filled/week", zero_is_none=True)
    def second(self) -> Expr:
        """Where the farm stands still once the first is widened."""
        return nth_value(self.keys, SECOND, self.many, self.bags)

    @line("What limits the farm", unit="1")
    def first_name(self) -> Expr:
        """The smallest."""
        return nth_label(self.keys, 1, self.many, self.bags, NONE)

    @line("What limits next", unit="1")
    def second_name(self) -> Expr:
        """The next after it."""
        return nth_label(self.keys, SECOND, self.many, self.bags, NONE)

    @line("Customers are what limits", unit="flag")
    def customers_limit(self) -> Expr:
        """Then more customers are what would widen it."""
        return all_of(self.customers.known, self.customers.capacity <= self.first)

    @line("Bags a week that customers still take at one price", unit="bag_filled/week")
    def at_one_price(self) -> Expr:
        """The bags filled now, and what the next customer would still take; beyond it a bag brings another price."""
        return self.farm.bags_filled_a_week + self.capacities.edge

    @line("Bags a week at which something else limits", unit="bag_filled/week")
    def next_hold(self) -> Expr:
        """The next stage, or the edge of a price, whichever comes first; customers, if they limit, bring their own price."""
        return where(self.many <= 1, self.at_one_price, minimum(self.second, self.at_one_price))

    @line("Bags a week until the next stage limits", unit="bag_filled/week", source=ARITHMETIC)
    def until_next(self) -> Expr:
        """Or until the next customer has enough."""
        hold = where(self.customers_limit, self.second, self.next_hold)
        return maximum(hold - self.first, 0)

    @line("Widening what limits is worth up to, a year", unit="money/year", source=PARTIAL_BUDGET)
    def worth(self) -> Expr:
        """What all those bags leave in the weeks worked, the cost of widening not counted."""
        return maximum(self.one_more.bag_leaves, 0) * self.until_next * self.farm.weeks_worked

    @line("Room to spare over the bags filled", unit="share")
    def spare(self) -> Expr:
        """What limits, over the bags filled. Below zero, the plan is more than the farm can do."""
        return (self.first_over_plan - 1) * (self.many > 0)

    @line("What the farm can fill, over what it fills", unit="share")
    def first_over_plan(self) -> Expr:
        """Above 100% there is room to spare."""
        return ratio(self.first, self.farm.bags_filled_a_week)

    @line("Limits: the answer", unit="1")
    def answer(self) -> Expr:
        """By the bags a week that each could take, on the average day. A stage whose size you have not given never limits."""
        return say(
            "What limits you: ",
            self.first_name,
            ", ",
            figure(self.first, 0),
            ". Next: ",
            self.second_name,
            ", ",
            figure(self.second, 0),
            either(self.plan_fits, ".", ". Your plan is above it."),
        )

    @check(
        "The plan is no more than the farm can do",
        kind="alert",
        says="You plan more bags a week than one stage can do: see the sheet Limits for which, and what one more of it is worth.",
    )
    def plan_fits(self) -> Expr:
        """The year is worked out for the bags typed all the same."""
        plan = self.farm.bags_filled_a_week
        return any_of(self.many <= 0, plan <= self.first + plan * SUM_TOLERANCE)
