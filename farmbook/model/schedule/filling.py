"""Bags filled week by week: weeks that are shut, weeks before the plan, loads."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import (
    all_of,
    any_of,
    at,
    joined,
    maximum,
    minimum,
    month_start,
    total,
    where,
    whole_up,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import CALENDAR, EARLIER, STEP_UP, WEEK
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.calendar.plan_weeks import TO_THURSDAY, PlanWeeks
from farmbook.model.place.farm_plan import Farm
from farmbook.model.schedule.plan_changes import PlanChanges
from farmbook.model.schedule.start_up import StartUp
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["Filling"]

ROWS_TYPED: Final = Constant(
    13,
    "rows_typed",
    label="Rows of weeks before the plan, the last for all earlier ones",
    unit=unit("1"),
    source=ARITHMETIC.key,
)
WEEKS_OF_A_YEAR: Final = Constant(
    52, "weeks_of_a_year", label="Weeks of a year that can be worked or shut", unit=unit("week/year"),
    source=ARITHMETIC.key,
)  # fmt: skip
A_WEEK_OFF: Final = Constant(
    1, "a_week_off", label="Weeks by which shut weeks may differ", unit=unit("week/year"), source=ARITHMETIC.key,
    note="A year has a day or two more than 52 weeks.",
)  # fmt: skip


class Filling(Section):
    """Fruiting bags are the plan; spawn and hands follow it, and what is short is said, never cut off."""

    title = "Bags filled"
    table = "plan"

    farm = uses(Farm)
    weeks = uses(PlanWeeks)
    start_up = uses(StartUp)
    changes = uses(PlanChanges)
    shocks = uses(Shocks)

    filled_earlier = number(
        "Bags filled before the plan",
        unit="bag_filled",
        usual=(0, 4000),
        hard=(0, 100000),
        optional=True,
        axes=(EARLIER,),
        how="From the log: the last week before the plan stands first, 13 for it and all before it. Left empty, an ordinary week.",
    )
    shut_weeks = number(
        "Weeks in which no bags are filled",
        unit="count",
        usual=(0, 3),
        hard=(0, 5),
        default=(1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0),
        axes=(CALENDAR,),
        how="Each year, the first weeks of the month. Together what weeks worked a year leave of 52.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # The plan

    @line("Weeks in which no bags are filled, whole ones", unit="count", axes=(CALENDAR,))
    def whole_weeks_shut(self) -> Expr:
        """A week begun is shut to its end."""
        return whole_up(self.shut_weeks)

    @line("Bags are filled in the week", unit="flag", axes=(WEEK,))
    def is_open(self) -> Expr:
        """0 in the first weeks of a month that are shut. A week belongs to the month that holds its Thursday."""
        thursday = self.weeks.monday + TO_THURSDAY
        passed = (thursday - month_start(thursday, 0)) / ONE_WEEK
        return passed >= at(self.whole_weeks_shut, CALENDAR, self.weeks.month_of_year)

    @line("Plant runs in the week", unit="flag", axes=(WEEK,))
    def runs(self) -> Expr:
        """Always, but in a case in which it stands still."""
        passed = self.weeks.number - self.shocks.stopped_from
        return any_of(passed < 0, passed >= self.shocks.stopped_for)

    @line("Bags of a full week, as far as the farm has grown", unit="bag_filled", axes=(WEEK,))
    def full_bags(self) -> Expr:
        """With all changes of the plan so far; never below zero."""
        changed = total(self.changes.more_bags * (self.changes.holds_from <= self.weeks.number), STEP_UP)
        return maximum(joined(self.farm.bags_filled_a_week, "bag_filled") + changed, 0) * self.start_up.filled_share

    # Before the plan

    @line("Bags filled before the plan, counted", unit="bag_filled", axes=(EARLIER,))
    def earlier(self) -> Expr:
        """As typed, or an ordinary week."""
        ordinary = joined(self.farm.bags_filled_a_week, "bag_filled")
        return where(self.given(self.filled_earlier), self.filled_earlier, ordinary)

    @line("Bags filled before the plan, by week", unit="bag_filled", axes=(WEEK,))
    def before(self) -> Expr:
        """Of a running farm; week 13 stands for all earlier ones. In the very first row none: what came before is not known."""
        back = minimum(maximum(1 - self.weeks.number, 1), ROWS_TYPED)
        return at(self.earlier, EARLIER, back) * (self.weeks.row > 1) * (1 - self.farm.is_new)

    @line("Bags filled in the week", unit="bag_filled", axes=(WEEK,))
    def filled(self) -> Expr:
        """Before the plan as logged, then as planned; none in weeks that are shut."""
        return where(self.weeks.number >= 1, self.full_bags * self.is_open * self.runs, self.before)

    @line("Weeks shut a year, by month", unit="week/year")
    def shut_in_all(self) -> Expr:
        """As typed."""
        return joined(total(self.shut_weeks, CALENDAR), "week/year")

    @check(
        "Weeks shut by month are those that weeks worked leave",
        kind="alert",
        says=(
            "Weeks in which no bags are filled, typed by month, and weeks worked a year do not make 52: the plan then fills "
            "more or fewer bags than a typical year."
        ),
    )
    def shut_weeks_agree(self) -> Expr:
        """Within a week."""
        left = WEEKS_OF_A_YEAR - self.farm.weeks_worked
        return all_of(self.shut_in_all >= left - A_WEEK_OFF, self.shut_in_all <= left + A_WEEK_OFF)
