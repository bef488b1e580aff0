"""A small farm in time, for tests alone: days from event to event, and weeks with margins before and after."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import (
    all_of,
    at,
    joined,
    named,
    row_shifted,
    running_product,
    running_sum,
    shifted,
    total,
    whole_down,
)
from farmbook.expr.nodes import Constant, Expr, Label
from farmbook.sections.declare import line, number, shock, text, uses
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["AFTER", "BEFORE", "DAYS_A_WEEK", "EARLIER", "FLUSH", "WEEK", "WEEKS_BEFORE", "Timing", "Title", "Weeks"]

FLUSH: Final = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second", "third"))
EARLIER: Final = Axis("earlier", "week before the start", "down", 40, ordered=True, members=("4", "3", "2", "1"))

WEEKS: Final = 18
"""Weeks that the plan may have at the most."""

DAYS_A_WEEK: Final = Constant(7, "days_a_week", label="Days in a week", unit=unit("day/week"), source="arithmetic")


class Title(Section):
    """The head of every sheet."""

    name = text("Farm", default="(no name)", how="Its name.")

    @line("Title", unit="1")
    def heading(self) -> Expr:
        """Repeated on every sheet."""
        return Label(self.model.section(Title).raw(Title.name), "(no name)")


class Timing(Section):
    """Days from one event in the life of a bag to the next, in whole weeks and parts of one."""

    lead = number("Days spawn is started ahead", unit="day", usual=(7, 28), hard=(0, 28), default=17, how="Count.")
    spawn_run = number("Days of spawn run", unit="day", usual=(10, 28), hard=(0, 28), default=18, how="Count.")
    first_pick = number("Days to the first pick", unit="day", usual=(3, 14), hard=(0, 14), default=6.5, how="Count.")
    added = number(
        "Days a flush adds",
        unit="day",
        axes=(FLUSH,),
        usual=(0, 14),
        hard=(0, 14),
        default=(0, 9, 11.5),
        how="Count.",
    )

    @shock("Spawn run slower, share added", unit="share", neutral=0)
    def slower(self) -> None:
        """A case in which bags take longer."""

    @line("Lead in weeks", unit="1")
    def lead_steps(self) -> Expr:
        """Below zero: spawn is started before the bags are filled."""
        return -joined(self.lead / DAYS_A_WEEK, "1")

    @line("Whole weeks of lead", unit="1")
    def lead_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.lead_steps)

    @line("Part of a week of lead", unit="share")
    def lead_part(self) -> Expr:
        """The rest."""
        return self.lead_steps - self.lead_whole

    @line("Days added so far", unit="day", axes=(FLUSH,))
    def added_so_far(self) -> Expr:
        """By this flush and those before it."""
        return running_sum(self.added, FLUSH)

    @line("Weeks from filling to the flush", unit="1", axes=(FLUSH,))
    def flush_steps(self) -> Expr:
        """Spawn run, days to the first pick, days added."""
        return joined((self.spawn_run * (1 + self.slower) + self.first_pick + self.added_so_far) / DAYS_A_WEEK, "1")

    @line("Whole weeks to the flush", unit="1", axes=(FLUSH,))
    def flush_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.flush_steps)

    @line("Part of a week to the flush", unit="share", axes=(FLUSH,))
    def flush_part(self) -> Expr:
        """The rest."""
        return self.flush_steps - self.flush_whole


# 28 days of lead are four weeks, 28 + 14 + 3 x 14 days to the last flush twelve; two rows more stay empty at either end
BEFORE: Final = len(EARLIER.members) + 4 + 2
AFTER: Final = 12 + 2
WEEK: Final = Axis(
    "week", "week", "down", 90, ordered=True, members=tuple(str(each) for each in range(1 - BEFORE, WEEKS + AFTER + 1))
)
WEEKS_BEFORE: Final = Constant(
    BEFORE, "weeks_before_start", label="Rows before the start", unit=unit("1"), source="arithmetic"
)


class Weeks(Section):
    """Bags week by week; the first rows hold what an existing farm filled before the start, or nothing."""

    timing = uses(Timing)
    filled_a_week = number("Bags filled a week", unit="bag_filled", usual=(10, 900), default=120, how="Count.")
    weeks_planned = number("Weeks planned", unit="1", usual=(4, WEEKS), hard=(1, WEEKS), default=WEEKS, how="Choose.")
    filled_before = number(
        "Bags filled before the start",
        unit="bag_filled",
        axes=(EARLIER,),
        usual=(0, 900),
        default=(70, 0, 95, 110),
        how="From the log.",
    )
    spawn_per_bag = number("Spawn for a bag", unit="kg_spawn/bag_filled", usual=(0.05, 0.4), default=0.15, how="Weigh.")
    loss = number(
        "Lost before the flush", unit="share", axes=(FLUSH,), usual=(0, 0.2), default=(0.06, 0.03, 0.1), how="Count."
    )
    fresh = number(
        "Picked from a live bag",
        unit="kg_picked/bag_live",
        axes=(FLUSH,),
        usual=(0, 1),
        default=(0.62, 0.3, 0.11),
        how="Weigh.",
    )

    @line("Row", unit="1", axes=(WEEK,))
    def row(self) -> Expr:
        """Counted from the first row of the list."""
        return running_sum(1, WEEK)

    @line("Rows in all", unit="1")
    def rows(self) -> Expr:
        """With the rows before the start and after the plan."""
        return total(self.row >= 1, WEEK)

    @line("Week of the plan", unit="1", axes=(WEEK,))
    def week(self) -> Expr:
        """Week 0 ends at the start."""
        return self.row - WEEKS_BEFORE

    @line("In the plan", unit="flag", axes=(WEEK,))
    def in_plan(self) -> Expr:
        """From the first week to the last one planned."""
        return all_of(self.week > 0, self.week <= self.weeks_planned)

    @line("Week before the start", unit="1", axes=(EARLIER,))
    def earlier_row(self) -> Expr:
        """Its number among the weeks before the start."""
        return running_sum(1, EARLIER)

    @line("Week number before the start", unit="1", axes=(EARLIER,))
    def earlier_week(self) -> Expr:
        """The last one before the start is week 0."""
        return self.earlier_row - self.earlier_weeks

    @line("Weeks before the start", unit="1")
    def earlier_weeks(self) -> Expr:
        """As many as the list has."""
        return total(self.earlier_row >= 1, EARLIER)

    @line("Bags already in process", unit="bag_filled", axes=(WEEK,))
    def brought_in(self) -> Expr:
        """What was filled in this week before the start."""
        same = (self.earlier_week >= self.week) * (self.earlier_week <= self.week)
        return total(self.filled_before * same, EARLIER)

    @line("Bags filled", unit="bag_filled", axes=(WEEK,))
    def filled(self) -> Expr:
        """Before the start as logged, from the start as planned."""
        return self.brought_in + self.filled_a_week * self.in_plan

    @line("Row looked at for spawn", unit="1", axes=(WEEK,))
    def lead_row(self) -> Expr:
        """Further down: the bags that this week's spawn is for."""
        return row_shifted(self.row, self.timing.lead_whole, self.rows)

    @line("Bags spawn is started for", unit="bag_filled", axes=(WEEK,))
    def started(self) -> Expr:
        """The bags of the weeks that the lead reaches."""
        return shifted(self.filled, WEEK, row=self.lead_row, part=self.timing.lead_part)

    @line("Spawn started", unit="kg_spawn", axes=(WEEK,))
    def spawn(self) -> Expr:
        """By weight."""
        return self.started * self.spawn_per_bag

    @line("Row looked at for the flush", unit="1", axes=(FLUSH, WEEK))
    def flush_row(self) -> Expr:
        """Further up: the bags that give this flush now."""
        return row_shifted(self.row, self.timing.flush_whole, self.rows)

    @line("Bags at the flush", unit="bag_filled", axes=(FLUSH, WEEK))
    def at_flush(self) -> Expr:
        """As filled, whether they live or not."""
        return shifted(self.filled, WEEK, row=self.flush_row, part=self.timing.flush_part)

    @line("Live at the flush", unit="share", axes=(FLUSH,))
    def alive(self) -> Expr:
        """Of the bags filled."""
        return running_product(1 - self.loss, FLUSH)

    @line("Picked at the flush", unit="kg_picked", axes=(FLUSH, WEEK))
    def picked_at_flush(self) -> Expr:
        """From the bags that live."""
        return joined(self.at_flush * self.alive, "bag_live") * self.fresh

    @line("Picked", unit="kg_picked", axes=(WEEK,))
    def picked(self) -> Expr:
        """All flushes."""
        return total(self.picked_at_flush, FLUSH)

    @line("Picked at the flush so far", unit="kg_picked", axes=(FLUSH, WEEK))
    def flush_so_far(self) -> Expr:
        """From the first row of the list."""
        return running_sum(self.picked_at_flush, WEEK)

    @line("Picked so far", unit="kg_picked", axes=(WEEK,))
    def picked_so_far(self) -> Expr:
        """From the first row of the list."""
        return running_sum(self.picked, WEEK)

    @line("Filled so far", unit="bag_filled", axes=(WEEK,))
    def filled_so_far(self) -> Expr:
        """From the first row of the list."""
        return running_sum(self.filled, WEEK)

    @line("Left so far", unit="bag_filled", axes=(WEEK,))
    def left_so_far(self) -> Expr:
        """Bags that have given their last flush."""
        return running_sum(self.last_flush, WEEK)

    @line("Bags at the last flush", unit="bag_filled", axes=(WEEK,))
    def last_flush(self) -> Expr:
        """They leave the farm."""
        return total(self.leaving, FLUSH)

    @line("Leaving after the flush", unit="bag_filled", axes=(FLUSH, WEEK))
    def leaving(self) -> Expr:
        """None but those of the last flush."""
        return self.at_flush * (self.timing.flush_steps >= self.longest)

    @line("Longest stay in weeks", unit="1")
    def longest(self) -> Expr:
        """To the last flush."""
        return at(self.timing.flush_steps, FLUSH, named(LAST_FLUSH))

    @line("Bags in process", unit="bag_filled", axes=(WEEK,))
    def in_process(self) -> Expr:
        """Filled and not yet gone; at the start, those of an existing farm."""
        return self.filled_so_far - self.left_so_far

    @line("Bags filled in all", unit="bag_filled")
    def filled_in_all(self) -> Expr:
        """Before the start and after."""
        return total(self.filled, WEEK)

    @line("Bags spawn is started for in all", unit="bag_filled")
    def started_in_all(self) -> Expr:
        """The same bags."""
        return total(self.started, WEEK)

    @line("Bags at any flush", unit="bag_filled", axes=(WEEK,))
    def at_any_flush(self) -> Expr:
        """A bag counts once for each flush."""
        return total(self.at_flush, FLUSH)

    @line("Bags at any flush in all", unit="bag_filled")
    def at_any_flush_in_all(self) -> Expr:
        """The same bags, once for each flush."""
        return total(self.at_any_flush, WEEK)


LAST_FLUSH: Final = Constant(len(FLUSH.members), "last_flush", label="Last flush", unit=unit("1"), source="arithmetic")
