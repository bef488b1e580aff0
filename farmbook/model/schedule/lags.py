"""The days from filling a bag to bench, opening, dumping and the washed place, and to the middle of each pick."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum, whole_down
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import FLUSH
from farmbook.model.calendar.plan_start import ONE_WEEK
from farmbook.model.calendar.plan_weeks import ROWS_BEFORE
from farmbook.model.cost.harvest import Harvest
from farmbook.model.schedule.lag import Lag
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["Bench", "Dumping", "Freeing", "Keeping", "Lags", "Opening"]

ONE_LOAD: Final = Constant(1, "one_load", label="One load", unit=unit("run"), source=ARITHMETIC.key)
TWO_HALVES: Final = Constant(2, "two_halves", label="Halves of a pick", unit=unit("1"), source=ARITHMETIC.key)


class Lags(Section):
    """Days are counted from filling; a load is on the bench when it has been steamed and has cooled."""

    title = "From filling to the pick"
    table = "crop"

    harvest = uses(Harvest)
    steamer_in_use = uses(SteamerInUse)

    pick_days = number(
        "Days over which a batch is picked, each flush",
        unit="day",
        usual=(2, 7),
        hard=(0, 30),
        default=4,
        how="From the first cluster cut to the last of one batch in one flush.",
        source=COMMON_PRACTICE,
        note="From memory. The weight counts to the middle of these days.",
    )

    @line("Days from filling to the bench", unit="day")
    def to_bench(self) -> Expr:
        """Loading, heat-up, hold and cool-down of a load."""
        return self.steamer_in_use.cycle_time * ONE_LOAD

    @line("Days from filling to opening", unit="day")
    def to_opening(self) -> Expr:
        """With the spawn run."""
        return self.to_bench + self.harvest.spawn_run_days

    @line("Days from filling to dumping", unit="day")
    def to_dumping(self) -> Expr:
        """After the last flush kept."""
        return self.to_bench + self.harvest.days_until_dumped

    @line("Days from filling to the washed place", unit="day")
    def to_free_place(self) -> Expr:
        """When another bag can stand there."""
        return self.to_opening + self.harvest.days_place_taken

    @line("Days from filling to the middle of the pick", unit="day", axes=(FLUSH,))
    def to_pick(self) -> Expr:
        """Half the days of picking before its end."""
        return self.to_bench + maximum(self.harvest.day_of_flush - self.pick_days / TWO_HALVES, 0)

    @line("Weeks from filling to the middle of the pick", unit="count", axes=(FLUSH,))
    def pick_in_weeks(self) -> Expr:
        """With a part of a week; none where days that cannot be would come to less."""
        return maximum(self.to_pick / ONE_WEEK, 0)

    @line("Whole weeks from filling to the middle of the pick", unit="count", axes=(FLUSH,))
    def pick_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.pick_in_weeks)

    @line("Part of a week from filling to the middle of the pick", unit="share", axes=(FLUSH,))
    def pick_part(self) -> Expr:
        """The rest, by which a week's bags fall into two."""
        return self.pick_in_weeks - self.pick_whole

    @check(
        "No bag is in process for longer than the book looks back",
        kind="error",
        says=(
            "Bags stay longer than the weeks that the schedule has before the plan: shorten the spawn run, the flushes or "
            "the days typed, or the first weeks of the plan are wrong."
        ),
    )
    def within_reach(self) -> Expr:
        """To the washed place, in weeks, with one for the part of a week and one for the empty first row."""
        return self.to_free_place / ONE_WEEK + 1 + 1 <= ROWS_BEFORE


class Bench(Lag, words="from filling to the bench"):
    """Steamed and cooled."""

    title = "From filling to the bench"

    lags = uses(Lags)

    def span(self) -> Expr:
        """The line of the days."""
        return self.lags.to_bench


class Opening(Lag, words="from filling to opening"):
    """Grown through."""

    title = "From filling to opening"

    lags = uses(Lags)

    def span(self) -> Expr:
        """The line of the days."""
        return self.lags.to_opening


class Dumping(Lag, words="from filling to dumping"):
    """After the last flush kept."""

    title = "From filling to dumping"

    lags = uses(Lags)

    def span(self) -> Expr:
        """The line of the days."""
        return self.lags.to_dumping


class Freeing(Lag, words="from filling to the washed place"):
    """Another bag can stand there."""

    title = "From filling to the washed place"

    lags = uses(Lags)

    def span(self) -> Expr:
        """The line of the days."""
        return self.lags.to_free_place


class Keeping(Lag, words="that a pick keeps"):
    """From the pick on, not from filling: what is older can no longer be sold."""

    title = "How long mushrooms keep"
    table = "plan"

    days_it_keeps = number(
        "Days after the pick until it can no longer be sold",
        unit="day",
        usual=(4, 15),
        hard=(0, 60),
        default=7,
        how="Packed and cold, as your customers see it; what is older is thrown out.",
        source=COMMON_PRACTICE,
        note="From memory: 12 to 15 days at 3 to 4 degrees in a good pack, of which some 7 are selling days.",
    )

    def span(self) -> Expr:
        """The line of the days."""
        return self.days_it_keeps
