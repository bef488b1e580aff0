"""One span of days in the life of a bag, in whole weeks and a part of one, and weekly lines that come so much later."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.expr.functions import at, maximum, whole_down
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import WEEK
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.sections.alike import Alike
from farmbook.sections.declare import line, uses

__all__ = ["Lag"]


class Lag(Alike):
    """So long as the words say."""

    weeks = uses(PlanWeeks)

    @abstractmethod
    def span(self) -> Expr:
        """The days."""

    @line("Weeks {}", unit="count")
    def in_weeks(self) -> Expr:
        """With a part of a week; none where days that cannot be would come to less."""
        return maximum(self.span() / ONE_WEEK, 0)

    @line("Whole weeks {}", unit="count")
    def whole(self) -> Expr:
        """At or below."""
        return whole_down(self.in_weeks)

    @line("Part of a week {}", unit="share")
    def part(self) -> Expr:
        """The rest, by which a week's bags fall into two."""
        return self.in_weeks - self.whole

    def later(self, weekly: Line) -> Expr:
        """A weekly amount so much later: shared between two weeks by the part, so that none is lost.

        Before the first row nothing is known, and the first row is empty.
        """
        row = self.weeks.row
        this = at(weekly, WEEK, maximum(row - self.whole, 1)) * (1 - self.part)
        return this + at(weekly, WEEK, (row - self.whole - 1 - 1) * (row > self.whole + 1) + 1) * self.part
