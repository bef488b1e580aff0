"""The card of this week: what to fill, mix, order, open and clear, and how many lost bags are too many."""

from __future__ import annotations

from typing import Final

from farmbook.calc.mixing import WATER_DENSITY
from farmbook.expr.functions import at, joined, maximum, minimum, ratio, square_root, total, where, whole_down, whole_up
from farmbook.expr.nodes import Constant, Expr, Line, wrap
from farmbook.expr.sentences import either, figure, say
from farmbook.model.ahead.ahead import Ahead
from farmbook.model.ahead.spawn_ahead import SpawnAhead
from farmbook.model.axes import AHEAD, FLUSH, GENERATION, INGREDIENT, RECIPE, WEEK, WETNESS
from farmbook.model.cost.mixing import Mixing
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["ThisWeek"]

SPREADS: Final = Constant(
    3, "spreads_of_loss", label="Spreads above the mean at which lost bags are too many", unit=unit("1"),
    source=COMMON_PRACTICE.key,
    note="From memory: limits of a control chart for shares. Bags of one load fail together, so one alarm is a question.",
)  # fmt: skip


class ThisWeek(Section):
    """One date picks the row. No money stands here: whoever picks may read it."""

    title = "This week"
    table = "week"

    mixing = uses(Mixing)
    ahead = uses(Ahead)
    spawn = uses(SpawnAhead)

    wetter_by = number(
        "Moisture of the sawdust, above what is typed of it",
        unit="kg_water/kg_wet",
        usual=(-0.2, 0.2),
        hard=(-0.9, 0.9),
        default=(-0.1, -0.05, 0.05, 0.1),
        axes=(WETNESS,),
        how="As you may find it when you weigh and dry a handful. Below zero: drier.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    def now(self, weekly: Line) -> Expr:
        """What a line of the schedule has this week."""
        return at(weekly, AHEAD, wrap(1))

    @line("This week: Monday", unit="date")
    def monday(self) -> Expr:
        """Of the week shown."""
        return self.now(self.ahead.monday)

    @line("This week: bags to fill", unit="bag_filled")
    def bags(self) -> Expr:
        """As planned."""
        return self.now(self.ahead.filled)

    @line("This week: loads", unit="run")
    def loads(self) -> Expr:
        """Whole ones."""
        return self.now(self.ahead.loads)

    @line("This week: mixer batches", unit="batch")
    def batches(self) -> Expr:
        """Whole ones; the last may be smaller."""
        return whole_up(ratio(self.bags, self.mixing.bags_per_batch))

    @line("This week: bags to open", unit="bag_live")
    def opened(self) -> Expr:
        """Moved to the fruiting room."""
        return self.now(self.ahead.opened)

    @line("This week: bags to clear", unit="bag_live")
    def cleared(self) -> Expr:
        """Those that stood to the last flush kept."""
        return self.now(self.ahead.cleared)

    @line("This week: bags of spawn to order", unit="spawn_bag")
    def packs(self) -> Expr:
        """Whole ones."""
        return self.now(self.spawn.packs)

    @line("This week: own spawn to start", unit="spawn_unit", axes=(GENERATION,))
    def started(self) -> Expr:
        """In whole batches."""
        return self.now(self.spawn.started)

    @line("This week: own spawn will be ready on", unit="date", axes=(GENERATION,))
    def ready_on(self) -> Expr:
        """When it has grown through, started on Monday; blank where none is started."""
        return where(self.started > 0, self.monday + self.spawn.chain.run_days, 0)

    @line("This week: picked", unit="kg_picked")
    def picked(self) -> Expr:
        """All flushes."""
        return self.now(self.ahead.picked)

    @line("This week: picked, by flush", unit="kg_picked", axes=(FLUSH,))
    def picked_by_flush(self) -> Expr:
        """As planned."""
        return self.now(self.ahead.picked_by_flush)

    @line("Next week: picked, by flush", unit="kg_picked", axes=(FLUSH,))
    def picked_next(self) -> Expr:
        """As planned."""
        return at(self.ahead.picked_by_flush, AHEAD, wrap(1) + 1)

    @line("The week after: picked, by flush", unit="kg_picked", axes=(FLUSH,))
    def picked_after(self) -> Expr:
        """As planned."""
        return at(self.ahead.picked_by_flush, AHEAD, wrap(1) + 1 + 1)

    @line("This week: ready for customers", unit="kg_taken")
    def ready(self) -> Expr:
        """Trimmed and packed."""
        return self.now(self.ahead.ready)

    @line("This week: customers take at most", unit="kg_taken")
    def wanted(self) -> Expr:
        """All of them."""
        return self.now(self.ahead.wanted)

    @line("This week: places short", unit="place")
    def places_short(self) -> Expr:
        """In either room."""
        return self.now(self.ahead.places_short)

    @line("This week: hours short", unit="person_hour")
    def hours_short(self) -> Expr:
        """Beyond the roster and your own."""
        return self.now(self.ahead.hours_short)

    @line("This week: hours of all tasks", unit="person_hour")
    def hours(self) -> Expr:
        """As planned."""
        return self.now(self.ahead.hours)

    # The mix

    @line("To weigh out for a mixer batch, recipe chosen", unit="kg_wet/batch", axes=(INGREDIENT,))
    def weight_per_batch(self) -> Expr:
        """As delivered."""
        return total(self.mixing.delivered_per_batch * self.mixing.recipe.chosen, RECIPE)

    @line("To weigh out this week, recipe chosen", unit="kg_wet", axes=(INGREDIENT,))
    def weight_this_week(self) -> Expr:
        """For the bags of the week, spawn's mix aside."""
        batches = ratio(self.bags, self.mixing.bags_per_batch)
        return joined(self.weight_per_batch * batches, "kg_wet")

    @line("Dry matter in a mixer batch, recipe chosen", unit="kg_dry/batch", axes=(INGREDIENT,))
    def dry_per_batch(self) -> Expr:
        """Stays the same however wet it comes."""
        return self.weight_per_batch * self.mixing.recipe.dry_matter

    @line("Sawdust in a mixer batch: dry matter", unit="kg_dry/batch")
    def sawdust_dry(self) -> Expr:
        """The ingredient in the first row is taken to be the sawdust."""
        return at(self.dry_per_batch, INGREDIENT, wrap(1))

    @line("Sawdust in a mixer batch, as typed", unit="kg_wet/batch")
    def sawdust_typed(self) -> Expr:
        """The ingredient in the first row."""
        return at(self.weight_per_batch, INGREDIENT, wrap(1))

    @line("Moisture of the sawdust, as typed", unit="kg_water/kg_wet")
    def moisture_typed(self) -> Expr:
        """What its dry matter leaves."""
        return joined(1 - at(self.dry_share, INGREDIENT, wrap(1)), "kg_water/kg_wet")

    @line("Dry matter of the ingredient, as a share", unit="share", axes=(INGREDIENT,))
    def dry_share(self) -> Expr:
        """As typed."""
        return joined(self.mixing.recipe.dry_matter, "share")

    @line("Moisture of the sawdust", unit="kg_water/kg_wet", axes=(WETNESS,))
    def moisture(self) -> Expr:
        """As it may come."""
        return maximum(minimum(self.moisture_typed + self.wetter_by, MOST_WATER), 0)

    @line("Sawdust to weigh out for a mixer batch", unit="kg_wet/batch", axes=(WETNESS,), source=ARITHMETIC)
    def sawdust(self) -> Expr:
        """The same dry matter, however wet it comes."""
        return ratio(joined(self.sawdust_dry, "kg_wet/batch"), 1 - joined(self.moisture, "share"))

    @line("Water to add to that mixer batch", unit="L/batch", axes=(WETNESS,), source=ARITHMETIC)
    def water(self) -> Expr:
        """Less by what comes in with the sawdust."""
        more = joined(self.sawdust - self.sawdust_typed, "kg_water/batch")
        return maximum(self.mixing.chosen_water_per_batch - more / WATER_DENSITY, 0)

    # How many lost are too many

    @line("This week: bags looked over at opening", unit="count")
    def looked_over(self) -> Expr:
        """All that leave the incubation room."""
        return joined(at(self.ahead.bags.moved, WEEK, self.ahead.row_now), "count")

    @line("This week: bags lost in the spawn run, to expect", unit="count")
    def lost_expected(self) -> Expr:
        """All of those but the ones to open; a new farm loses more at first."""
        return self.looked_over - joined(self.opened, "count")

    @line("This week: part lost in the spawn run, to expect", unit="share")
    def lost_share(self) -> Expr:
        """Of the bags looked over."""
        return ratio(self.lost_expected, self.looked_over)

    @line("This week: act above so many lost", unit="count", source=COMMON_PRACTICE)
    def act_above(self) -> Expr:
        """Chance alone rarely brings more. Look for the cause: one load, one bag of spawn, one day in the lab."""
        spread = square_root(self.lost_expected * (1 - self.lost_share))
        return whole_down(self.lost_expected + SPREADS * spread)

    @line("This week: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Fill ",
            figure(self.bags, 0, named=False),
            " bags in ",
            figure(self.loads, 0),
            "; open ",
            figure(self.opened, 0, named=False),
            ", clear ",
            figure(self.cleared, 0, named=False),
            "; expect ",
            figure(self.picked, -1),
            either(self.now(self.ahead.short), ". The week is short of something: see below.", "."),
        )


MOST_WATER: Final = Constant(
    0.95, "most_water_in_sawdust", label="Most water that sawdust can hold", unit=unit("kg_water/kg_wet"),
    source=COMMON_PRACTICE.key, note="Far above any that is used; it keeps the sum from dividing by nothing.",
)  # fmt: skip
