"""The cold room week by week, oldest first: what comes in, what customers take, what spoils, what is left."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, at, maximum, minimum, previous, running_sum, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR, WEEK
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.schedule.in_turn import InTurn
from farmbook.model.schedule.lags import Keeping
from farmbook.model.schedule.picks import Picks
from farmbook.model.schedule.start_up import StartUp
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["ColdRoom"]


class ColdRoom(Section):
    """What is sold is the least of what is there and what customers take; what has lain too long is thrown out."""

    title = "Sold and spoiled week by week"

    weeks = uses(PlanWeeks)
    start_up = uses(StartUp)
    picks = uses(Picks)
    in_turn = uses(InTurn)
    keeping = uses(Keeping)

    @line("Customers take at most in the week", unit="kg_taken", axes=(WEEK,))
    def wanted(self) -> Expr:
        """By the month that holds most of the week; weeks that are shut sell too. Of a new farm less at first."""
        first = self.start_up.sales_at_first
        learned = first + (1 - first) * self.start_up.learned
        return at(self.in_turn.all_take, CALENDAR, self.weeks.month_of_year) * learned

    @line("Ready for customers so far", unit="kg_taken", axes=(WEEK,))
    def ready_so_far(self) -> Expr:
        """From the first week that the book has."""
        return running_sum(self.picks.ready, WEEK)

    @line("Too old by the end of the week, of all so far", unit="kg_taken", axes=(WEEK,))
    def aged(self) -> Expr:
        """Ready so long before that it is sold by now or thrown out."""
        return self.keeping.later(self.ready_so_far)

    @line("Sold in the week", unit="kg_taken", axes=(WEEK,))
    def sold(self) -> Expr:
        """What is there or what customers take, whichever is less. What then stays unsold with them is counted there."""
        return maximum(minimum(previous(self.left, WEEK) + self.picks.ready, self.wanted), 0)

    @line("Spoiled in the week", unit="kg_taken", axes=(WEEK,), source=ARITHMETIC)
    def spoiled(self) -> Expr:
        """Too old by now, and neither sold nor thrown out before: of what was ready before this week only what was left is there."""
        gone = previous(self.ready_so_far, WEEK) - previous(self.left, WEEK)
        too_old = self.aged - gone - self.sold
        return too_old * (too_old > self.rounding)

    @line("Left in the cold room", unit="kg_taken", axes=(WEEK,))
    def left(self) -> Expr:
        """At the end of the week."""
        return starting(0, previous(self.left, WEEK) + self.picks.ready - self.sold - self.spoiled)

    @line("Weight that is a rounding of all weight of the schedule", unit="kg_taken")
    def rounding(self) -> Expr:
        """By so much the two ways may differ."""
        return total(self.picks.ready, WEEK) * SUM_TOLERANCE

    @line("Ready for customers so far, added up over all weeks", unit="kg_taken")
    def ready_counted(self) -> Expr:
        """What is ready in a week counts in every later one too."""
        return self.weeks.counted_on(self.picks.ready)

    @line("Sold and spoiled so far, added up over all weeks", unit="kg_taken", source=ARITHMETIC)
    def gone_counted(self) -> Expr:
        """What goes in a week is gone in every later one too."""
        return self.weeks.counted_on(self.sold + self.spoiled)

    @check(
        "Weight ready for customers is sold, spoiled or left, in every week",
        kind="error",
        says="In some week what is picked is not sold, spoiled or left in the cold room: a formula of the weeks was changed.",
    )
    def weight_adds_up(self) -> Expr:
        """All weeks together."""
        return absolute(self.ready_counted - self.gone_counted - total(self.left, WEEK)) <= self.rounding
