"""Hours of work week by week, by what is filled, opened, dumped and picked, and the roster that is paid."""

from __future__ import annotations

from farmbook.expr.functions import joined, maximum, ratio, total
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.axes import STEP_UP, WEEK
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.hours import Hours
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.picks import Picks
from farmbook.model.schedule.plan_changes import PlanChanges
from farmbook.model.schedule.start_up import StartUp
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["WeekHours"]


class WeekHours(Section):
    """The tasks of the sheet Hours, each by what it goes with. Pay follows the roster, not the bags."""

    title = "Hours week by week"

    weeks = uses(PlanWeeks)
    hours = uses(Hours)
    crop = uses(Crop)
    growing = uses(GrowingCost)
    start_up = uses(StartUp)
    changes = uses(PlanChanges)
    filling = uses(Filling)
    bags = uses(InProcess)
    picks = uses(Picks)

    @line("Filling to shelf, spawn and lost bags: hours for each bag filled", unit="person_hour/bag_filled")
    def for_a_bag(self) -> Expr:
        """What does not come with opening, clearing, picking or packing."""
        return ratio(self.hours.by_the_hour - self.hours.fixed - self.later, self.hours.farm.bags_filled_a_week)

    @line("Opening, clearing, picking and packing paid by the hour, hours a week", unit="person_hour/week")
    def later(self) -> Expr:
        """They come some weeks after filling."""
        return self.hours.opening_work.hours_a_week + self.clearing_that_grows + self.picking_and_packing

    @line("Clearing that grows with the bags, hours a week", unit="person_hour/week")
    def clearing_that_grows(self) -> Expr:
        """Washing aside."""
        return self.hours.clearing_work.hours_a_week - self.hours.clearing_work.washing_hours

    @line("Picking and packing paid by the hour, hours a week", unit="person_hour/week")
    def picking_and_packing(self) -> Expr:
        """Picking by the piece is no part of it."""
        both = self.hours.picking_work.hours_a_week + self.hours.packing_work.hours_a_week
        return both - self.hours.by_the_piece

    @line("Picking and packing paid by the hour, for the weight picked", unit="person_hour/kg_picked")
    def for_a_weight(self) -> Expr:
        """Of a typical week."""
        return ratio(self.picking_and_packing, self.hours.picking.harvest.picked_a_week)

    @line("Moving and opening: hours for each bag", unit="person_hour/bag_live")
    def for_opening(self) -> Expr:
        """Of those that live."""
        return ratio(wrap(1), self.growing.opening_rate)

    @line("Clearing: hours for each bag dumped", unit="person_hour/bag_live")
    def for_dumping(self) -> Expr:
        """Only those that stood to the end are carried out then."""
        return ratio(self.crop.standing_at_end, self.growing.clearing_rate)

    @line("Hours with bags opened and cleared in the week", unit="person_hour", axes=(WEEK,))
    def with_opening(self) -> Expr:
        """Moving and opening; clearing what has stood to the end."""
        return self.bags.opened * self.for_opening + self.bags.dumped * self.for_dumping

    @line("Hours with bags filled and weight picked in the week", unit="person_hour", axes=(WEEK,))
    def with_filling(self) -> Expr:
        """Mixing, steaming, inoculating, spawn, shelving, taking out lost bags; picking, unless by the piece, and packing."""
        return self.filling.filled * self.for_a_bag + self.picks.picked * self.for_a_weight

    @line("Hours that the tasks of the week take", unit="person_hour", axes=(WEEK,))
    def needed(self) -> Expr:
        """With rounds, washing, selling, upkeep and office, once there are hands on the roster."""
        fixed = joined(self.hours.fixed, "person_hour") * self.start_up.rostered
        return fixed + self.with_filling + self.with_opening

    @line("Hired hours on the roster in the week", unit="person_hour", axes=(WEEK,))
    def hired(self) -> Expr:
        """Those of a typical week, with all changes of the plan so far."""
        more = total(self.changes.more_hours * (self.changes.holds_from <= self.weeks.number), STEP_UP)
        return maximum(joined(self.hours.hired, "person_hour") * self.start_up.rostered + more, 0)
