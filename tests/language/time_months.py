"""The small farm in time, further on: months, tasks with spare rows, cash and a credit line that need each other."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import (
    at,
    interpolated,
    joined,
    maximum,
    minimum,
    named,
    previous,
    running_sum,
    starting,
    total,
    whole_down,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.sections.declare import line, names, number, shock, uses
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.language.time_model import DAYS_A_WEEK, EARLIER, FLUSH, WEEK, WEEKS_BEFORE, Timing, Title, Weeks

__all__ = ["MONTH", "NAMES", "SECTIONS", "SIZES", "TASK", "Cash", "Months", "Tasks"]

TASK: Final = Axis("task", "task", "down", 10, named=True, most=6)
MONTH: Final = Axis("month", "month", "across", 95, ordered=True, members=("1", "2", "3", "4"))


class Months(Section):
    """Weeks to months: the running total at the end of a month, less the one before."""

    weeks = uses(Weeks)
    days = number(
        "Days in the month",
        unit="day",
        axes=(MONTH,),
        usual=(28, 31),
        hard=(28, 31),
        default=(31, 28, 31, 30),
        how="Count.",
    )

    @line("Days to the end of the month", unit="day", axes=(MONTH,))
    def days_so_far(self) -> Expr:
        """From the start."""
        return running_sum(self.days, MONTH)

    @line("Rows to the end of the month", unit="1", axes=(MONTH,))
    def end(self) -> Expr:
        """With a part of a week."""
        return joined(self.days_so_far / DAYS_A_WEEK, "1") + WEEKS_BEFORE

    @line("Whole rows to the end of the month", unit="1", axes=(MONTH,))
    def end_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.end)

    @line("Part of a row to the end of the month", unit="share", axes=(MONTH,))
    def end_part(self) -> Expr:
        """The rest."""
        return self.end - self.end_whole

    @line("Picked to the end of the month", unit="kg_picked", axes=(MONTH,))
    def picked_to_end(self) -> Expr:
        """Before the first month: what was picked before the start."""
        opening = at(self.weeks.picked_so_far, WEEK, named(WEEKS_BEFORE))
        return starting(opening, interpolated(self.weeks.picked_so_far, WEEK, whole=self.end_whole, part=self.end_part))

    @line("Picked in the month", unit="kg_picked", axes=(MONTH,))
    def picked(self) -> Expr:
        """The total at its end less the one before."""
        return self.picked_to_end - previous(self.picked_to_end, MONTH)

    @line("Picked at the flush to the end of the month", unit="kg_picked", axes=(FLUSH, MONTH))
    def flush_to_end(self) -> Expr:
        """For each flush."""
        opening = at(self.weeks.flush_so_far, WEEK, named(WEEKS_BEFORE))
        return starting(opening, interpolated(self.weeks.flush_so_far, WEEK, whole=self.end_whole, part=self.end_part))


class Tasks(Section):
    """Hours by task and month: a list down with spare rows, the months across."""

    months = uses(Months)
    task = names(TASK, "Task", how="Name it.")
    hours = number("Hours a day", unit="h/day", axes=(TASK,), usual=(0, 8), default=1.6, how="Clock it.")
    rate = number(
        "Pay for an hour of the task", unit="money/h", axes=(TASK,), usual=(8, 40), default=16, how="Pay slip."
    )

    @line("Cost of the task", unit="money", axes=(TASK, MONTH))
    def cost(self) -> Expr:
        """Hours of the month at the task's pay."""
        return self.hours * self.rate * self.months.days

    @line("Cost of all tasks", unit="money", axes=(MONTH,))
    def cost_in_all(self) -> Expr:
        """Spare rows count as nothing."""
        return total(self.cost, TASK)


class Cash(Section):
    """Cash and a credit line with a limit. Declared from the last line to the first: order must not matter."""

    months = uses(Months)
    tasks = uses(Tasks)
    price = number("Price", unit="money/kg_picked", usual=(2, 16), default=3.3, how="Till.")
    price_drop = number("Fall in price", unit="share", usual=(0, 0.4), default=0.25, how="Guess.")
    opening_cash = number("Cash at the start", unit="money", usual=(0, 9000), default=400, how="Bank.")
    opening_credit = number("Credit drawn at the start", unit="money", usual=(0, 9000), default=250, how="Bank.")
    credit_limit = number("Credit limit", unit="money", usual=(0, 9000), default=600, how="Bank.")
    least = number("Least cash to hold", unit="money", usual=(0, 900), default=100, how="Choose.")
    earned = number("Interest on cash for a month", unit="share", usual=(0, 0.01), default=0.002, how="Bank.")
    charged = number("Interest on credit for a month", unit="share", usual=(0, 0.03), default=0.009, how="Bank.")

    @shock("Price, share kept", unit="share", neutral=1)
    def price_kept(self) -> None:
        """A case sells for less."""

    @line("Cash at the end of the month", unit="money", axes=(MONTH,))
    def closing(self) -> Expr:
        """Cash before, what came in and went out, what was drawn."""
        return starting(self.opening_cash, previous(self.closing, MONTH) + self.net + self.drawn)

    @line("Credit at the end of the month", unit="money", axes=(MONTH,))
    def credit(self) -> Expr:
        """Credit before and what was drawn."""
        return starting(self.opening_credit, previous(self.credit, MONTH) + self.drawn)

    @line("Drawn", unit="money", axes=(MONTH,))
    def drawn(self) -> Expr:
        """What is missing, up to the limit; below zero where credit is paid back."""
        room = self.credit_limit - previous(self.credit, MONTH)
        return maximum(minimum(self.missing, room), -previous(self.credit, MONTH))

    @line("Missing", unit="money", axes=(MONTH,))
    def missing(self) -> Expr:
        """To the least cash to hold."""
        return self.least - (previous(self.closing, MONTH) + self.net)

    @line("Net of the month", unit="money", axes=(MONTH,))
    def net(self) -> Expr:
        """Sales and interest less the cost of tasks."""
        return self.sales + self.interest - self.tasks.cost_in_all

    @line("Interest", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """On the balances at the beginning of the month."""
        return maximum(previous(self.closing, MONTH), 0) * self.earned - previous(self.credit, MONTH) * self.charged

    @line("Sales", unit="money", axes=(MONTH,))
    def sales(self) -> Expr:
        """Paid in the month of picking."""
        return self.months.picked * self.price * self.price_kept

    @line("Interest so far", unit="money", axes=(MONTH,))
    def interest_so_far(self) -> Expr:
        """From the start."""
        return running_sum(self.interest, MONTH)

    @line("Cash at the end", unit="money")
    def last_cash(self) -> Expr:
        """Of the last month."""
        return at(self.closing, MONTH, named(LAST_MONTH))


LAST_MONTH: Final = Constant(len(MONTH.members), "last_month", label="Last month", unit=unit("1"), source="arithmetic")

SECTIONS: Final = (Title, Timing, Weeks, Months, Tasks, Cash)
SIZES: Final = {axis: len(axis.members) for axis in (FLUSH, EARLIER, WEEK, MONTH)} | {TASK: 4}
NAMES: Final = {TASK: ("Mixing", "Picking", "", "")}
"""Two tasks and two spare rows."""
