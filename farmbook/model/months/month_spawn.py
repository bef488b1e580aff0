"""Spawn ordered or started month by month: ahead of the bags, and bought in whole bags of spawn."""

from __future__ import annotations

from farmbook.expr.functions import joined, minimum, previous, ratio, starting, where, whole_down, whole_up
from farmbook.expr.nodes import Expr
from farmbook.model.axes import MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.spawn_leads import Ordering
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["MonthSpawn"]


class MonthSpawn(Section):
    """Paid for when it is ordered, or when its materials are used; suppliers may wait for the money."""

    title = "Spawn month by month"

    weeks = uses(PlanWeeks)
    months = uses(PlanMonths)
    filling = uses(Filling)
    source = uses(SpawnSource)
    spawn = uses(Spawn)
    own_spawn = uses(OwnSpawnWork)
    ordering = uses(Ordering)

    def _reached(self, rows: Expr) -> Expr:
        """As far as orders reach when so many rows are past."""
        return minimum(rows + self.ordering.in_weeks, self.weeks.rows - 1)

    @line("Rows of weeks for which spawn is ordered by the end of the month", unit="count", axes=(MONTH,))
    def rows(self) -> Expr:
        """So far ahead of filling; no further than the book's last weeks."""
        return self._reached(self.months.rows)

    @line("Whole rows for which spawn is ordered", unit="count", axes=(MONTH,))
    def whole(self) -> Expr:
        """At or below."""
        return whole_down(self.rows)

    @line("Rows of weeks for which spawn is ordered before the plan", unit="count")
    def rows_before(self) -> Expr:
        """What is on its way, or growing, when the plan starts."""
        return self._reached(self.months.rows_before)

    @line("Whole rows for which spawn is ordered before the plan", unit="count")
    def whole_before(self) -> Expr:
        """At or below."""
        return whole_down(self.rows_before)

    @line("Part of a row for which spawn is ordered before the plan", unit="share")
    def part_before(self) -> Expr:
        """The rest."""
        return self.rows_before - self.whole_before

    @line("Bags filled so far, so long ahead of the plan's start", unit="bag_filled")
    def ahead_before(self) -> Expr:
        """As far as an order reaches on the first day of the plan."""
        return self.weeks.come(self.filling.filled, whole=self.whole_before, part=self.part_before)

    @line("Bags to fill for which spawn is ordered before the plan", unit="bag_filled")
    def bags_before(self) -> Expr:
        """Of a running farm it is paid, or among what is owed to suppliers; of a new one there is none yet."""
        return self.ahead_before * (1 - self.filling.farm.is_new)

    @line("Bags to fill for which spawn is ordered by the end of the month", unit="bag_filled", axes=(MONTH,))
    def bags_so_far(self) -> Expr:
        """From the first week that the book has."""
        ahead = self.weeks.come(self.filling.filled, whole=self.whole, part=self.rows - self.whole)
        return starting(self.bags_before, ahead)

    @line("Bags to fill for which spawn is ordered in the month", unit="bag_filled", axes=(MONTH,))
    def bags(self) -> Expr:
        """Ordered, or its materials used."""
        return self.bags_so_far - previous(self.bags_so_far, MONTH)

    @line("Bags of spawn a week, parts of one counted", unit="spawn_bag/week")
    def packs_a_week(self) -> Expr:
        """In a typical week."""
        return ratio(self.spawn.order_a_week, self.spawn.pack_weight)

    @line("Bags of spawn for each bag filled", unit="spawn_bag/bag_filled")
    def packs_for_a_bag(self) -> Expr:
        """With those that arrive bad."""
        return ratio(self.packs_a_week, self.filling.farm.bags_filled_a_week)

    @line("Bags of spawn ordered by the end of the month", unit="spawn_bag", axes=(MONTH,))
    def packs_so_far(self) -> Expr:
        """Whole ones; what is over serves the next order."""
        return starting(
            whole_up(self.bags_before * self.packs_for_a_bag),
            whole_up(self.bags_so_far * self.packs_for_a_bag),
        )

    @line("Bags of spawn to order in the month, if it is bought", unit="spawn_bag", axes=(MONTH,))
    def packs(self) -> Expr:
        """Whole ones."""
        return self.packs_so_far - previous(self.packs_so_far, MONTH)

    @line("A bag of spawn costs, landed", unit="money/spawn_bag")
    def pack_cost(self) -> Expr:
        """As worked out, or from your one figure for the spawn in a bag."""
        return ratio(self.spawn_cost_for_a_bag, self.packs_for_a_bag)

    @line("Spawn bought for each bag filled", unit="money/bag_filled")
    def spawn_cost_for_a_bag(self) -> Expr:
        """Only bags that come whole out of the steamer get spawn."""
        return self.spawn.cost_per_bag_inoculated * self.spawn.crop.inoculated_per_filled

    @line("Own spawn for each bag filled, materials", unit="money/bag_filled")
    def materials_for_a_bag(self) -> Expr:
        """Of a typical week."""
        return ratio(self.own_spawn.materials_in_all, self.filling.farm.bags_filled_a_week)

    @line("Yearly bills of the lab, for a month", unit="money")
    def lab_bills(self) -> Expr:
        """A twelfth; nothing where spawn is bought."""
        return joined(self.own_spawn.yearly_bills, "money") / MONTHS_A_YEAR

    @line("Own spawn in the month, if it is made", unit="money", axes=(MONTH,))
    def own_cost(self) -> Expr:
        """Materials, and the bills of the lab."""
        return self.bags * self.materials_for_a_bag + self.lab_bills

    @line("Spawn in the month", unit="money", axes=(MONTH,))
    def cost(self) -> Expr:
        """Bought in whole bags; or the materials of your own and the bills of the lab."""
        return where(self.source.made, self.own_cost, self.packs * self.pack_cost)
