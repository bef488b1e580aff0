"""Something that is ordered or started before the bags it is for are filled, and weekly amounts that lie so far ahead."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.expr.functions import at, maximum, minimum, named, whole_up
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import WEEK
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.calendar.plan_weeks import ROWS_AFTER, PlanWeeks
from farmbook.sections.alike import Alike
from farmbook.sections.declare import check, line, uses

__all__ = ["Lead"]


class Lead(Alike):
    """So many days before filling."""

    weeks = uses(PlanWeeks)

    @abstractmethod
    def span(self) -> Expr:
        """The days; below zero counts as none."""

    @line("Weeks from {} to filling", unit="count")
    def in_weeks(self) -> Expr:
        """With a part of a week; none where it is wanted only after filling."""
        return maximum(self.span() / ONE_WEEK, 0)

    @line("Whole weeks from {} to filling", unit="count")
    def whole(self) -> Expr:
        """At or above: it is done in a week, not on a day."""
        return whole_up(self.in_weeks)

    def ahead(self, weekly: Line) -> Expr:
        """A weekly amount that lies so many whole weeks ahead of each week."""
        return self.ahead_of(self.weeks.row, weekly)

    def ahead_of(self, row: Expr, weekly: Line) -> Expr:
        """A weekly amount that lies so many whole weeks ahead of a row; the last row stands for all after it."""
        return at(weekly, WEEK, minimum(row + self.whole, self.weeks.rows))

    @check(
        "The schedule looks far enough ahead for {}",
        kind="error",
        says="The weeks after the plan are too few for {}: shorten the time typed for it.",
    )
    def within_reach(self) -> Expr:
        """With a week in hand."""
        return self.in_weeks + 1 <= named(ROWS_AFTER)
