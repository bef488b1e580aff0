"""What is picked week by week and flush by flush, and what of it can be taken to customers."""

from __future__ import annotations

from farmbook.calc.crop import surviving_share
from farmbook.expr.functions import at, joined, maximum, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR, FLUSH, WEEK
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.crop.crop import Crop
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.lags import Lags
from farmbook.model.schedule.start_up import StartUp
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["Picks"]


class Picks(Section):
    """The weight of a batch falls to the middle of its pick, shared between two weeks."""

    title = "Picked week by week"
    table = "plan"

    weeks = uses(PlanWeeks)
    crop = uses(Crop)
    start_up = uses(StartUp)
    lags = uses(Lags)
    bags = uses(InProcess)

    yield_season = number(
        "Weight picked in the month, of that of a typical year",
        unit="share",
        usual=(0.6, 1.2),
        hard=(0, 3),
        default=1,
        axes=(CALENDAR,),
        how="From the log: hot months often give less. The mean of the twelve is 100%.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Bags that will live, counted at a typical yield", unit="bag_live", axes=(WEEK,))
    def sound(self) -> Expr:
        """Those of a new farm count for less at first."""
        first = self.start_up.yield_at_first
        return self.bags.alive * (first + (1 - first) * self.start_up.learned)

    @line("Picked of a bag in the first of the two weeks of a pick", unit="kg_picked/bag_live", axes=(FLUSH,))
    def in_first_week(self) -> Expr:
        """What the part of a week leaves of it. Nothing of flushes that are not kept."""
        return self.crop.fresh_per_live * (1 - self.lags.pick_part)

    @line("Picked of a bag in the second of the two weeks of a pick", unit="kg_picked/bag_live", axes=(FLUSH,))
    def in_second_week(self) -> Expr:
        """The part of a week."""
        return self.crop.fresh_per_live * self.lags.pick_part

    @line("Picked in the week of a typical yield, by flush", unit="kg_picked", axes=(FLUSH, WEEK))
    def typical(self) -> Expr:
        """Of bags filled some weeks before; the part of a week shares them between two."""
        row, whole = self.weeks.row, self.lags.pick_whole
        this = at(self.sound, WEEK, maximum(row - whole, 1)) * self.in_first_week
        return this + at(self.sound, WEEK, (row - whole - 1 - 1) * (row > whole + 1) + 1) * self.in_second_week

    @line("Picked of a bag, of that of a typical year", unit="share", axes=(WEEK,))
    def season(self) -> Expr:
        """By the month that holds most of the week."""
        return at(self.yield_season, CALENDAR, self.weeks.month_of_year)

    @line("Picked in the week, by flush", unit="kg_picked", axes=(FLUSH, WEEK))
    def by_flush(self) -> Expr:
        """By the season of the month."""
        return self.typical * self.season

    @line("Picked in the week", unit="kg_picked", axes=(WEEK,))
    def picked(self) -> Expr:
        """All flushes."""
        return total(self.typical, FLUSH) * self.season

    @line("Taken to customers of what is picked", unit="kg_taken/kg_picked", source=ARITHMETIC)
    def share_taken(self) -> Expr:
        """What trimming, the cold room and the road leave."""
        return joined(surviving_share(self.crop.trim) * surviving_share(self.crop.shrink), "kg_taken/kg_picked")

    @line("Ready for customers in the week", unit="kg_taken", axes=(WEEK,))
    def ready(self) -> Expr:
        """Trimmed, packed, dried a little."""
        return self.picked * self.share_taken
