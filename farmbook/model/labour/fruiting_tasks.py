"""Tasks in the fruiting rooms, and taking out lost bags wherever they are."""

from __future__ import annotations

from farmbook.expr.functions import joined, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.task import Task
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["ClearingWork", "CullingWork", "OpeningWork", "RoundWork"]


class OpeningWork(Task, words="Moving and opening"):
    """Into the fruiting rooms."""

    title = "Moving and opening"

    growing = uses(GrowingCost)

    @line("Moving and opening, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Bags that live, over those done in an hour."""
        return ratio(self.harvest.live_a_week, self.growing.opening_rate)


class ClearingWork(Task, words="Clearing and washing"):
    """Spent bags out, room clean."""

    title = "Clearing and washing"
    table = "hours"

    crop = uses(Crop)
    growing = uses(GrowingCost)

    washing_hours = number(
        "Washing rooms, hours a week",
        unit="person_hour/week",
        usual=(1, 12),
        hard=(0, 1000),
        default=3,
        how="Diary: hosing, scrubbing, disinfecting, drying; carrying bags out is counted by the bag.",
        source=COMMON_PRACTICE,
    )

    @line("Clearing and washing, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Carrying out grows with the bags that stand to the end, washing does not."""
        cleared = self.harvest.live_a_week * self.crop.standing_at_end
        return ratio(cleared, self.growing.clearing_rate) + self.washing_hours


class CullingWork(Task, words="Taking out lost bags"):
    """At any stage."""

    title = "Taking out lost bags"

    lost = uses(LostBags)
    growing = uses(GrowingCost)

    @line("Taking out lost bags, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """All bags lost in a week, over those taken out in an hour."""
        return ratio(self.lost_a_week, self.growing.culling_rate)

    @line("Bags lost a week, at any stage", unit="bag_inoculated/week")
    def lost_a_week(self) -> Expr:
        """Each is taken out by hand."""
        before = joined(self.lost.lost_at_steaming, "bag_inoculated/week") + self.lost.lost_in_spawn_run
        return before + joined(self.lost.lost_before_first_pick + self.lost.lost_between_flushes, "bag_inoculated/week")


class RoundWork(Task, words="Rounds in the fruiting rooms"):
    """Every day of the week."""

    title = "Rounds in the fruiting rooms"
    table = "hours"

    round_hours = number(
        "Daily rounds in the fruiting rooms, hours a week",
        unit="person_hour/week",
        usual=(5, 14),
        hard=(0, 1000),
        default=8.75,
        how="Diary: climate, water, which bags to pick or to take out; seven days.",
        source=COMMON_PRACTICE,
    )

    @line("Rounds in the fruiting rooms, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """The same for half as many bags."""
        return self.round_hours
