"""The large test farm week by week: bags, spawn, hours, picking, and a cold room that is emptied oldest first."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import (
    all_of,
    joined,
    maximum,
    minimum,
    named,
    negation,
    previous,
    ratio,
    row_shifted,
    running_product,
    running_sum,
    shifted,
    starting,
    total,
    whole_up,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.sections.declare import line, names, number, shock, uses
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.language.time_model import FLUSH, Timing

__all__ = ["AFTER", "BEFORE", "TASK", "WEEK", "WEEKS_BEFORE", "Shocks", "Tasks", "Weeks"]

WEEK: Final = Axis("week", "week", "down", 90, ordered=True, sized=True)
TASK: Final = Axis("task", "task", "across", 20, named=True, most=8)
BEFORE, AFTER = 26, 20
WEEKS_BEFORE: Final = Constant(
    BEFORE, "weeks_before_start", label="Rows before the start", unit=unit("1"), source="arithmetic"
)


class Shocks(Section):
    """What a case may change, each at one line."""

    @shock("Price, share kept", unit="share", neutral=1)
    def price_kept(self) -> None:
        """Everything sells for less."""

    @shock("Weight, share kept", unit="share", neutral=1)
    def weight_kept(self) -> None:
        """Every flush weighs less."""

    @shock("Loss added", unit="share", neutral=0)
    def loss_added(self) -> None:
        """More bags are lost before each flush."""

    @shock("Pay, share kept", unit="share", neutral=1)
    def pay_kept(self) -> None:
        """Hours cost more or less."""

    @shock("Materials, share kept", unit="share", neutral=1)
    def materials_kept(self) -> None:
        """All that is bought costs more or less."""

    @shock("Rate added", unit="share", neutral=0)
    def rate_added(self) -> None:
        """Loans cost more."""

    @shock("Paid later, share of a month", unit="share", neutral=0)
    def paid_later(self) -> None:
        """Customers take longer."""

    @shock("Largest customer, share kept", unit="share", neutral=1)
    def customer_kept(self) -> None:
        """The largest customer takes less."""

    @shock("Weeks stopped", unit="1", neutral=0)
    def weeks_stopped(self) -> None:
        """Nothing is filled in the first weeks."""


class Weeks(Section):
    """Bags week by week, from some weeks before the start to some after the plan."""

    timing = uses(Timing)
    shocks = uses(Shocks)
    filled_a_week = number("Bags filled a week", unit="bag_filled", usual=(10, 900), default=640, how="Count.")
    ramp = number("Weeks until that many are filled", unit="1", usual=(0, 40), hard=(1, 52), default=9, how="Guess.")
    filled_before = number(
        "Bags filled in each week before", unit="bag_filled", usual=(0, 900), default=210, how="Log."
    )
    bags_in_load = number(
        "Bags in a load", unit="bag_filled", usual=(20, 900), hard=(1, 5000), default=160, how="Count."
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
    places = number("Fruiting places", unit="place", usual=(100, 9000), default=1800, how="Count.")
    orders = number("Weight ordered a week", unit="kg_picked", usual=(50, 900), default=520, how="Order book.")
    keeps = number("Share that keeps for another week", unit="share", usual=(0, 1), default=0.6, how="Look.")

    @line("Row", unit="1", axes=(WEEK,))
    def row(self) -> Expr:
        """Counted from the first row."""
        return running_sum(1, WEEK)

    @line("Week of the plan", unit="1", axes=(WEEK,))
    def week(self) -> Expr:
        """Week 0 ends at the start."""
        return self.row - WEEKS_BEFORE

    @line("First row after the plan", unit="1")
    def first_after(self) -> Expr:
        """The rows after it stay empty."""
        return named(self.model.count(WEEK)) - named(ROWS_AFTER)

    @line("In the plan", unit="flag", axes=(WEEK,))
    def in_plan(self) -> Expr:
        """From the first week to the last."""
        return all_of(self.week > self.shocks.weeks_stopped, self.row <= self.first_after)

    @line("Before the start", unit="flag", axes=(WEEK,))
    def before_start(self) -> Expr:
        """Of the last weeks before it, the rows that bags in process come from."""
        return all_of(self.week <= 0, self.row > named(EMPTY_ROWS))

    @line("Share of full", unit="share", axes=(WEEK,))
    def ramped(self) -> Expr:
        """Grows to all of it."""
        return joined(maximum(minimum(ratio(self.week, self.ramp), 1), 0), "share")

    @line("Bags filled", unit="bag_filled", axes=(WEEK,))
    def filled(self) -> Expr:
        """As logged before the start, as planned after it."""
        return self.filled_before * self.before_start + self.filled_a_week * self.ramped * self.in_plan

    @line("Loads", unit="1", axes=(WEEK,))
    def loads(self) -> Expr:
        """Whole ones."""
        return whole_up(ratio(self.filled, self.bags_in_load))

    @line("Row looked at for spawn", unit="1", axes=(WEEK,))
    def lead_row(self) -> Expr:
        """Further down."""
        return row_shifted(self.row, self.timing.lead_whole, named(self.model.count(WEEK)))

    @line("Bags spawn is started for", unit="bag_filled", axes=(WEEK,))
    def started(self) -> Expr:
        """The bags that the lead reaches."""
        return shifted(self.filled, WEEK, row=self.lead_row, part=self.timing.lead_part)

    @line("Spawn started", unit="kg_spawn", axes=(WEEK,))
    def spawn(self) -> Expr:
        """By weight."""
        return self.started * self.spawn_per_bag

    @line("Spawn started so far", unit="kg_spawn", axes=(WEEK,))
    def spawn_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.spawn, WEEK)

    @line("Row looked at for the flush", unit="1", axes=(FLUSH, WEEK))
    def flush_row(self) -> Expr:
        """Further up."""
        return row_shifted(self.row, self.timing.flush_whole, named(self.model.count(WEEK)))

    @line("Bags at the flush", unit="bag_filled", axes=(FLUSH, WEEK))
    def at_flush(self) -> Expr:
        """As filled, whether they live or not."""
        return shifted(self.filled, WEEK, row=self.flush_row, part=self.timing.flush_part)

    @line("Live at the flush", unit="share", axes=(FLUSH,))
    def alive(self) -> Expr:
        """Of the bags filled."""
        return running_product(1 - self.loss - self.shocks.loss_added, FLUSH)

    @line("Live bags at the flush", unit="bag_live", axes=(FLUSH, WEEK))
    def live_at_flush(self) -> Expr:
        """Those that are picked."""
        return joined(self.at_flush * self.alive, "bag_live")

    @line("Weight of a live bag", unit="kg_picked/bag_live", axes=(FLUSH,))
    def weight(self) -> Expr:
        """By flush."""
        return self.fresh * self.shocks.weight_kept

    @line("Picked at the flush", unit="kg_picked", axes=(FLUSH, WEEK))
    def picked_at_flush(self) -> Expr:
        """From the bags that live."""
        return self.live_at_flush * self.weight

    @line("Picked at the flush so far", unit="kg_picked", axes=(FLUSH, WEEK))
    def flush_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.picked_at_flush, WEEK)

    @line("Picked", unit="kg_picked", axes=(WEEK,))
    def picked(self) -> Expr:
        """All flushes."""
        return total(self.picked_at_flush, FLUSH)

    @line("Picked so far", unit="kg_picked", axes=(WEEK,))
    def picked_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.picked, WEEK)

    @line("Filled so far", unit="bag_filled", axes=(WEEK,))
    def filled_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.filled, WEEK)

    @line("Bags at any flush", unit="bag_filled", axes=(WEEK,))
    def at_any_flush(self) -> Expr:
        """Each flush of a bag counts."""
        return total(self.at_flush, FLUSH)

    @line("Places taken", unit="place", axes=(WEEK,))
    def taken(self) -> Expr:
        """By the bags at their flushes."""
        return joined(self.at_any_flush, "place")

    @line("Places short", unit="place", axes=(WEEK,))
    def short(self) -> Expr:
        """Flagged, never cut."""
        return maximum(self.taken - self.places, 0)

    @line("Weeks short of places", unit="1")
    def weeks_short(self) -> Expr:
        """All weeks of the plan."""
        return total(self.short > 0, WEEK)

    @line("Weight ordered", unit="kg_picked", axes=(WEEK,))
    def ordered(self) -> Expr:
        """In the weeks after the start."""
        return self.orders * (self.week > 0)

    @line("In the cold room, oldest first", unit="kg_picked", axes=(WEEK,))
    def cold(self) -> Expr:
        """What is left of what keeps, and what is new."""
        return starting(0, previous(self.left_over, WEEK) + self.picked)

    @line("Handed over", unit="kg_picked", axes=(WEEK,))
    def handed_over(self) -> Expr:
        """As much as is ordered and there."""
        return minimum(self.cold, self.ordered)

    @line("Left over that keeps", unit="kg_picked", axes=(WEEK,))
    def left_over(self) -> Expr:
        """The rest spoils."""
        return starting(0, (self.cold - self.handed_over) * self.keeps)

    @line("Spoiled", unit="kg_picked", axes=(WEEK,))
    def spoiled(self) -> Expr:
        """Neither handed over nor kept."""
        return self.cold - self.handed_over - self.left_over

    @line("Handed over so far", unit="kg_picked", axes=(WEEK,))
    def handed_over_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.handed_over, WEEK)

    @line("Still to be handed over", unit="kg_picked", axes=(WEEK,))
    def missing(self) -> Expr:
        """Ordered and not there."""
        return negation(self.week <= 0) * (self.ordered - self.handed_over)


ROWS_AFTER: Final = Constant(
    AFTER, "weeks_after_plan", label="Rows after the plan", unit=unit("1"), source="arithmetic"
)
EMPTY_ROWS: Final = Constant(12, "rows_left_empty", label="First rows, left empty", unit=unit("1"), source="arithmetic")


class Tasks(Section):
    """Hours by task and week, with spare columns."""

    weeks = uses(Weeks)
    shocks = uses(Shocks)
    task = names(TASK, "Task", how="Name it.")
    per_bag = number(
        "Minutes for a bag", unit="min/bag_filled", axes=(TASK,), usual=(0, 9), default=1.4, how="Clock it."
    )
    pay = number("Pay for an hour", unit="money/h", usual=(8, 40), default=17, how="Pay slip.")

    @line("Pay, with all that comes on top", unit="money/h")
    def loaded_pay(self) -> Expr:
        """As the case has it."""
        return self.pay * self.shocks.pay_kept

    @line("Hours of the task", unit="h", axes=(TASK, WEEK))
    def hours(self) -> Expr:
        """By bags filled."""
        return self.per_bag * self.weeks.filled

    @line("Hours of all tasks", unit="h", axes=(WEEK,))
    def hours_in_all(self) -> Expr:
        """Spare columns count as nothing."""
        return total(self.hours, TASK)

    @line("Pay of the week", unit="money", axes=(WEEK,))
    def paid(self) -> Expr:
        """Hours at the loaded pay."""
        return self.hours_in_all * self.loaded_pay

    @line("Pay so far", unit="money", axes=(WEEK,))
    def paid_so_far(self) -> Expr:
        """From the first row."""
        return running_sum(self.paid, WEEK)
