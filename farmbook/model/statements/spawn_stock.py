"""Spawn that is bought ahead, or growing, for bags that are not yet filled."""

from __future__ import annotations

from farmbook.expr.functions import maximum, starting, where, whole_up
from farmbook.expr.nodes import Expr
from farmbook.model.axes import MONTH
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.months.month_totals import MonthTotals
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["SpawnStock"]


class SpawnStock(Section):
    """Ordered or started so far, less what the bags filled so far took: at cost, without hours and bills of the lab."""

    title = "Spawn in stock"

    spawn = uses(MonthSpawn)
    totals = uses(MonthTotals)

    @line("Spawn bought for bags not yet filled", unit="money", axes=(MONTH,))
    def bought(self) -> Expr:
        """Whole bags of spawn ordered, on their way or in the cold room."""
        used = self.totals.filled_so_far * self.spawn.spawn_cost_for_a_bag
        return self.spawn.packs_so_far * self.spawn.pack_cost - used

    @line("Spawn growing for bags not yet filled", unit="money", axes=(MONTH,))
    def growing(self) -> Expr:
        """Materials of your own."""
        return (self.spawn.bags_so_far - self.totals.filled_so_far) * self.spawn.materials_for_a_bag

    @line("Spawn in stock when the plan starts", unit="money")
    def at_start(self) -> Expr:
        """Nothing on a new farm."""
        return maximum(where(self.spawn.source.made, self.growing_at_start, self.bought_at_start), 0)

    @line("Spawn bought ahead when the plan starts", unit="money")
    def bought_at_start(self) -> Expr:
        """Whole bags of spawn, less what the bags filled took."""
        used = self.filled_before * self.spawn.spawn_cost_for_a_bag
        return whole_up(self.packs_before) * self.spawn.pack_cost - used

    @line("Bags of spawn ordered before the plan, parts of one counted", unit="spawn_bag")
    def packs_before(self) -> Expr:
        """For all bags of the weeks that the book has."""
        return self.spawn.bags_before * self.spawn.packs_for_a_bag

    @line("Bags filled when the plan starts, in the weeks that the book has", unit="bag_filled")
    def filled_before(self) -> Expr:
        """They have taken their spawn."""
        months = self.totals.months
        return self.totals.weeks.come(self.totals.filling.filled, whole=months.passed, part=months.begun)

    @line("Spawn growing when the plan starts", unit="money")
    def growing_at_start(self) -> Expr:
        """Materials of your own."""
        return (self.spawn.bags_before - self.filled_before) * self.spawn.materials_for_a_bag

    @line("Spawn in stock at the end of the month", unit="money", axes=(MONTH,))
    def value(self) -> Expr:
        """Bought ahead or growing; never below zero."""
        stock = where(self.spawn.source.made, self.growing, self.bought)
        return starting(self.at_start, maximum(stock, 0))
