"""Thirteen weeks from this week on, as they hang on the wall: what to fill, order, open, clear and pick, and what is short."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import at, maximum, minimum, running_sum, total, where, whole_down
from farmbook.expr.nodes import Constant, Expr, Line
from farmbook.model.axes import AHEAD, FLUSH, WEEK
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.calendar.plan_weeks import ROWS_BEFORE, PlanWeeks
from farmbook.model.crop.crop import Crop
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.picks import Picks
from farmbook.model.schedule.shortages import Shortages
from farmbook.model.schedule.spawn_leads import Ordering
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.sections.declare import LineOf, line, number, uses
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["Ahead"]

WEEKS_SHOWN: Final = Constant(
    13, "weeks_shown", label="Weeks that the printed schedule shows", unit=unit("1"), source="arithmetic"
)


def _shown(label: str, unit: str, section: str, name: str) -> LineOf:
    """A line of the schedule in each of the weeks shown."""

    def show(self: Ahead) -> Expr:
        """As on the sheet of all weeks."""
        return self.shown(getattr(getattr(self, section), name))

    return line(label, unit=unit, axes=(AHEAD,))(show)


class Ahead(Section):
    """One date picks the week; all else follows."""

    title = "The next thirteen weeks"
    table = "plan"

    crop = uses(Crop)
    weeks = uses(PlanWeeks)
    filling = uses(Filling)
    bags = uses(InProcess)
    picks = uses(Picks)
    cold = uses(ColdRoom)
    work = uses(WeekHours)
    shortages = uses(Shortages)
    ordering = uses(Ordering)

    this_monday = number(
        "Monday of this week",
        unit="date",
        usual=(43831, 54788),
        hard=(36526, 73050),
        optional=True,
        how="Year-month-day. Left empty, the first Monday of the plan.",
    )

    @line("Monday of this week, counted", unit="date")
    def monday_now(self) -> Expr:
        """As typed, or the first of the plan."""
        return where(self.given(self.this_monday), self.this_monday, self.weeks.start.first_monday)

    @line("Weeks of the plan that have passed", unit="count")
    def passed(self) -> Expr:
        """Below zero before the plan."""
        return whole_down((self.monday_now - self.weeks.start.first_monday) / ONE_WEEK)

    @line("Row of this week", unit="count")
    def row_now(self) -> Expr:
        """In the list of all weeks; kept so that thirteen weeks can be shown."""
        last = self.weeks.rows - WEEKS_SHOWN
        return minimum(maximum(self.passed + ROWS_BEFORE, 1) + 1, last)

    @line("Week ahead", unit="count", axes=(AHEAD,))
    def number(self) -> Expr:
        """1 for this week."""
        return running_sum(1, AHEAD)

    @line("Row of the week ahead", unit="count", axes=(AHEAD,))
    def row(self) -> Expr:
        """In the list of all weeks."""
        return self.row_now + self.number - 1

    def shown(self, weekly: Line) -> Expr:
        """What a line of the schedule has in each of these weeks."""
        return at(weekly, WEEK, self.row)

    monday = _shown("Ahead: Monday", "date", "weeks", "monday")
    week = _shown("Ahead: week of the plan", "count", "weeks", "number")
    filled = _shown("Ahead: bags to fill", "bag_filled", "filling", "filled")
    loads = _shown("Ahead: loads", "run", "shortages", "loads")
    opened = _shown("Ahead: bags to open", "bag_live", "bags", "opened")
    picked = _shown("Ahead: picked", "kg_picked", "picks", "picked")
    ready = _shown("Ahead: ready for customers", "kg_taken", "picks", "ready")
    wanted = _shown("Ahead: customers take at most", "kg_taken", "cold", "wanted")
    incubation = _shown("Ahead: incubation places taken", "place", "shortages", "incubation_taken")
    fruiting = _shown("Ahead: fruiting places taken", "place", "bags", "places")
    hours = _shown("Ahead: hours of all tasks", "person_hour", "work", "needed")
    incubation_short = _shown("Ahead: incubation places short", "place", "shortages", "incubation_short")
    fruiting_short = _shown("Ahead: fruiting places short", "place", "shortages", "fruiting_short")
    places_short = _shown("Ahead: places short in either room", "place", "shortages", "places_short")
    loads_short = _shown("Ahead: loads short", "run", "shortages", "loads_short")
    hours_short = _shown("Ahead: hours short", "person_hour", "shortages", "hours_short")
    cold_short = _shown("Ahead: too much for the cold room", "kg_taken", "shortages", "cold_short")
    short = _shown("Ahead: short of something", "flag", "shortages", "is_short")

    @line("Ahead: bags to clear", unit="bag_live", axes=(AHEAD,))
    def cleared(self) -> Expr:
        """Those that stood to the last flush kept; the others were taken out when they were lost."""
        return self.shown(self.bags.dumped) * self.crop.standing_at_end

    @line("Ahead: picked, by flush", unit="kg_picked", axes=(FLUSH, AHEAD))
    def picked_by_flush(self) -> Expr:
        """As on the sheet of all weeks."""
        return self.shown(self.picks.by_flush)

    # Spawn

    @line("Ahead: bags to fill for which spawn is ordered by the end of the week", unit="bag_filled", axes=(AHEAD,))
    def supplied(self) -> Expr:
        """So many whole weeks ahead of filling."""
        return total(self.filling.filled * (self.weeks.row <= self.row + self.ordering.whole), WEEK)

    @line("Ahead: bags to fill for which spawn was ordered before the week", unit="bag_filled", axes=(AHEAD,))
    def supplied_before(self) -> Expr:
        """By the end of the week before."""
        return self.supplied - self.ordering.ahead_of(self.row, self.filling.filled)
