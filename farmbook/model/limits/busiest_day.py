"""The busiest day beside the average week: averages hide it."""

from __future__ import annotations

from typing import Final

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.expr.functions import any_of, negation, ratio, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.cost.harvest import Harvest
from farmbook.model.labour.fruiting_tasks import RoundWork
from farmbook.model.labour.picking import Picking
from farmbook.model.limits.capacities import Capacities
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["BusiestDay"]

ONE_DAY_OF_A_WEEK: Final = Constant(
    1, "busiest_day_of_a_week", label="Busiest day of a week", unit=unit("week/day"), source=ARITHMETIC.key
)


class BusiestDay(Section):
    """A lab day on which the heaviest pick falls too."""

    title = "The busiest day"

    harvest = uses(Harvest)
    spawn = uses(Spawn)
    picking = uses(Picking)
    rounds = uses(RoundWork)
    capacities = uses(Capacities)

    @line("Bags inoculated on a lab day", unit="bag_inoculated/day")
    def lab_day_bags(self) -> Expr:
        """All lab days alike."""
        return ratio(self.spawn.bags_inoculated_a_week, self.spawn.lab_days)

    @line("Hours of a lab day", unit="person_hour/day")
    def lab_day_hours(self) -> Expr:
        """Bench and setting up."""
        return where(self.spawn.lab_days > 0, self.lab_bench_hours + self.spawn.set_up_hours, 0)

    @line("Hours that the bench takes on a lab day", unit="person_hour/day")
    def lab_bench_hours(self) -> Expr:
        """Without setting up."""
        return ratio(self.lab_day_bags, self.spawn.bags_per_hour)

    @line("Weeks of picking on the busiest day", unit="week/day")
    def busiest_of_week(self) -> Expr:
        """The share of a week's crop that is picked on it."""
        return self.picking.busiest_share * ONE_DAY_OF_A_WEEK

    @line("Hours of picking and packing on the busiest day", unit="person_hour/day")
    def harvest_hours(self) -> Expr:
        """Of the share of the week that is picked on it."""
        week = self.picking.pick_hours + self.picking.pack_hours
        return week * self.busiest_of_week

    @line("Hours of work on the busiest day", unit="person_hour/day", source=ARITHMETIC)
    def hours(self) -> Expr:
        """If it is a lab day as well, with its rounds; filling and steaming are left to other days."""
        return self.lab_day_hours + self.harvest_hours + self.rounds.round_hours / DAYS_IN_A_WEEK

    @line("Weight in the cold room at its fullest", unit="kg_packed", source=ARITHMETIC)
    def cold(self) -> Expr:
        """If the heaviest picks follow one another for as many days as it is kept."""
        return self.harvest.packed_a_week * self.busiest_of_week * self.capacities.days_kept

    @check(
        "The busiest day is not too long",
        kind="alert",
        says="Lab and pick on one day take more hours than all hands have: move the lab day, or get help. See the sheet Limits.",
    )
    def day_is_long_enough(self) -> Expr:
        """Fine where you have not said how many hours a day has."""
        return any_of(
            negation(self.capacities.given(self.capacities.day_hours)), self.hours <= self.capacities.day_hours
        )

    @check(
        "The cold room holds the heaviest picks",
        kind="alert",
        says="After the heaviest picks the cold room is too small: deliver sooner, or cool elsewhere. See the sheet Limits.",
    )
    def cold_room_holds(self) -> Expr:
        """Fine where you have not said what it holds."""
        return any_of(
            negation(self.capacities.given(self.capacities.cold_room)), self.cold <= self.capacities.cold_room
        )
