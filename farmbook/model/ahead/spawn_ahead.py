"""Spawn in the next thirteen weeks: bags of it to order, or what to start of each generation, in whole batches."""

from __future__ import annotations

from farmbook.expr.functions import at, joined, maximum, minimum, ratio, total, whole_up
from farmbook.expr.nodes import Expr
from farmbook.model.ahead.ahead import Ahead
from farmbook.model.axes import AHEAD, GENERATION, WEEK
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.schedule.lags import Lags
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["SpawnAhead"]

MATRIX = (GENERATION, AHEAD)


class SpawnAhead(Section):
    """What is over from a batch serves the next: whole batches are counted over all weeks, not week by week."""

    title = "Spawn in the next thirteen weeks"

    ahead = uses(Ahead)
    lags = uses(Lags)
    chain = uses(OwnSpawn)
    months = uses(MonthSpawn)

    @line("Ahead: bags of spawn ordered by the end of the week", unit="spawn_bag", axes=(AHEAD,))
    def packs_by(self) -> Expr:
        """Whole ones, since the first week that the book has."""
        return whole_up(self.ahead.supplied * self.months.packs_for_a_bag)

    @line("Ahead: bags of spawn ordered before the week", unit="spawn_bag", axes=(AHEAD,))
    def packs_before(self) -> Expr:
        """Whole ones, since the first week that the book has."""
        return whole_up(self.ahead.supplied_before * self.months.packs_for_a_bag)

    @line("Ahead: bags of spawn to order", unit="spawn_bag", axes=(AHEAD,))
    def packs(self) -> Expr:
        """Whole ones; nothing where spawn is made."""
        return (self.packs_by - self.packs_before) * (1 - self.months.source.made)

    @line("Own spawn: whole weeks from starting it to filling", unit="count", axes=(GENERATION,))
    def weeks_before(self) -> Expr:
        """It is started in a week, not on a day."""
        return whole_up(maximum((self.chain.days_before - self.lags.to_bench) / ONE_WEEK, 0))

    @line("Own spawn: batches for each bag filled", unit="1/bag_filled", axes=(GENERATION,))
    def batches_for_a_bag(self) -> Expr:
        """Nothing of a generation left out, or where spawn is bought."""
        a_week = ratio(self.chain.batches, self.ahead.filling.farm.bags_filled_a_week)
        return joined(a_week * self.months.source.made, "1/bag_filled")

    @line("Own spawn: bags to fill that it is started for by the end of the week", unit="bag_filled", axes=MATRIX)
    def served(self) -> Expr:
        """So many whole weeks ahead of filling."""
        reached = self.ahead.weeks.row <= self.ahead.row + self.weeks_before
        return total(self.ahead.filling.filled * reached, WEEK)

    @line("Own spawn: bags to fill that it was started for before the week", unit="bag_filled", axes=MATRIX)
    def served_before(self) -> Expr:
        """By the end of the week before."""
        row = minimum(self.ahead.row + self.weeks_before, self.ahead.weeks.rows)
        return self.served - at(self.ahead.filling.filled, WEEK, row)

    @line("Own spawn: batches started by the end of the week", unit="count", axes=MATRIX)
    def batches_by(self) -> Expr:
        """Whole ones, since the first week that the book has."""
        return whole_up(self.served * self.batches_for_a_bag)

    @line("Own spawn: batches started before the week", unit="count", axes=MATRIX)
    def batches_before(self) -> Expr:
        """Whole ones, since the first week that the book has."""
        return whole_up(self.served_before * self.batches_for_a_bag)

    @line("Own spawn: plates or bags to start", unit="spawn_unit", axes=MATRIX)
    def started(self) -> Expr:
        """Of all batches of the week."""
        return (self.batches_by - self.batches_before) * self.chain.started_in_batch
