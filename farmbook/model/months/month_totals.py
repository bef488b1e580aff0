"""What the weeks come to in each month, by the days that it has of them."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE, is_rounding
from farmbook.expr.functions import all_of, at, minimum, previous, total, where
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import MONTH, WEEK
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.picks import Picks
from farmbook.model.schedule.shortages import Shortages
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import LineOf, check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["MonthTotals"]


def _in_month(label: str, unit: str, so_far: str) -> LineOf:
    """A line for what comes in the month: what has come by its end less what had come before."""

    def add(self: Section) -> Expr:
        """By the days of its weeks; nothing that is only a rounding of the sum."""
        reached: Line = getattr(self, so_far)
        more = reached - previous(reached, MONTH)
        return where(more > reached * SUM_TOLERANCE, more, 0)

    return line(label, unit=unit, axes=(MONTH,))(add)


class MonthTotals(Section):
    """A week that goes on into the next month is shared by days."""

    title = "What the weeks come to"

    months = uses(PlanMonths)
    weeks = uses(PlanWeeks)
    filling = uses(Filling)
    picks = uses(Picks)
    cold = uses(ColdRoom)
    work = uses(WeekHours)
    shortages = uses(Shortages)
    shocks = uses(Shocks)

    @line("Bags filled by the end of the month", unit="bag_filled", axes=(MONTH,))
    def filled_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.filling.filled)

    filled = _in_month("Bags filled in the month", "bag_filled", "filled_so_far")

    @line("Loads steamed by the end of the month", unit="run", axes=(MONTH,))
    def loads_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.shortages.loads)

    loads = _in_month("Loads steamed in the month", "run", "loads_so_far")

    @line("Picked by the end of the month", unit="kg_picked", axes=(MONTH,))
    def picked_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.picks.picked)

    picked = _in_month("Picked in the month", "kg_picked", "picked_so_far")

    @line("Sold by the end of the month", unit="kg_taken", axes=(MONTH,))
    def sold_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.cold.sold)

    brought = _in_month("Sold in the month, by the weeks", "kg_taken", "sold_so_far")

    @line("Spoiled by the end of the month", unit="kg_taken", axes=(MONTH,))
    def spoiled_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.cold.spoiled)

    spoiled = _in_month("Spoiled in the month", "kg_taken", "spoiled_so_far")

    @line("Sold in the month", unit="kg_taken", axes=(MONTH,))
    def sold(self) -> Expr:
        """As the weeks bring it. In a case in which there is less, what nobody took is missing first."""
        return minimum(self.brought, (self.brought + self.spoiled) * self.shocks.weight_kept)

    @line("Hired hours by the end of the month", unit="person_hour", axes=(MONTH,))
    def hired_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.weeks.to_date(self.work.hired)

    hired = _in_month("Hired hours in the month", "person_hour", "hired_so_far")

    # Weeks and months agree

    @line("Rows of weeks passed at the end of the plan", unit="count")
    def whole_at_end(self) -> Expr:
        """Whole ones."""
        return at(self.months.whole, MONTH, self.months.many)

    @line("Part of a week passed at the end of the plan", unit="share")
    def part_at_end(self) -> Expr:
        """Of the week in which it ends."""
        return at(self.months.part, MONTH, self.months.many)

    @line("Part of the last week that lies after the plan", unit="share")
    def beyond(self) -> Expr:
        """None where the plan ends with a Sunday."""
        return (1 - self.part_at_end) * (self.part_at_end > 0)

    @line("Bags filled in all weeks of the plan", unit="bag_filled", source=ARITHMETIC)
    def filled_by_weeks(self) -> Expr:
        """Without the days of its first and last week that are not in it."""
        return total(self.filling.filled * self.weeks.in_plan, WEEK) - self.filled_outside

    @line("Bags filled in all months of the plan", unit="bag_filled")
    def filled_by_months(self) -> Expr:
        """Added up."""
        return total(self.filled, MONTH)

    @line("Sold in all weeks of the plan", unit="kg_taken", source=ARITHMETIC)
    def sold_by_weeks(self) -> Expr:
        """Without the days of its first and last week that are not in it."""
        return total(self.cold.sold * self.weeks.in_plan, WEEK) - self.sold_outside

    @line("Sold in all months of the plan", unit="kg_taken")
    def sold_by_months(self) -> Expr:
        """Added up."""
        return total(self.sold, MONTH)

    @line("Bags filled on days of its first and last week that are not in the plan", unit="bag_filled")
    def filled_outside(self) -> Expr:
        """By days."""
        return self._outside(self.filling.filled)

    @line("Sold on days of its first and last week that are not in the plan", unit="kg_taken")
    def sold_outside(self) -> Expr:
        """By days."""
        return self._outside(self.cold.sold)

    def _outside(self, weekly: Line) -> Expr:
        """What falls on days of the first and the last week that are not in the plan."""
        before = at(weekly, WEEK, self.months.passed + 1) * self.months.begun
        return before + at(weekly, WEEK, self.whole_at_end + 1) * self.beyond

    @line("Bags of months and weeks agree", unit="flag")
    def bags_agree(self) -> Expr:
        """But for rounding."""
        return is_rounding(self.filled_by_weeks - self.filled_by_months, self.filled_by_weeks, self.filled_by_months)

    @line("Weight of months and weeks agrees", unit="flag")
    def weight_agrees(self) -> Expr:
        """But for rounding."""
        return is_rounding(self.sold_by_weeks - self.sold_by_months, self.sold_by_weeks, self.sold_by_months)

    @check(
        "Months come to what the weeks come to",
        kind="error",
        says="Bags or weight of all months are not those of all weeks: a formula of the weeks or months was changed.",
    )
    def weeks_make_months(self) -> Expr:
        """Over the whole plan, by days."""
        return all_of(self.bags_agree > 0, self.weight_agrees > 0)
