"""Spawn made on the farm, counted back from the bags to the plate: how much of each, when, and how old it gets."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.calc.spawn import parents_needed, units_needed, units_of_mass
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    any_of,
    joined,
    minimum,
    negation,
    previous,
    ratio,
    running_sum,
    starting,
    total,
    whole_up,
)
from farmbook.expr.nodes import Expr
from farmbook.model.axes import GENERATION
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn_way import IN_STEAMER, OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["OwnSpawn"]


class OwnSpawn(Section):
    """What to start in an ordinary week, one step after the other; worked out whether you make spawn or not."""

    title = "Own spawn: what to start, counted back from the bags"

    farm = uses(Farm)
    spawn = uses(Spawn)
    source = uses(SpawnSource)
    way = uses(OwnSpawnWay)

    buffer_days = number(
        "Own spawn: days of slack for each generation",
        unit="day",
        usual=(0, 3),
        hard=(0, 30),
        default=0.5,
        how="Days you want between the spawn being grown through and being used, on average.",
        source=COMMON_PRACTICE,
    )
    failure = number(
        "Own spawn: share that fails",
        unit="share",
        axes=(GENERATION,),
        usual=(0.01, 0.25),
        hard=(0, 0.95),
        default=(0.03, 0.05, 0.05, 0.10),
        how="Thrown out, mouldy or slow, over started; the last fifty of each kind.",
        source=COMMON_PRACTICE,
    )
    batch_weeks = number(
        "Own spawn: weeks between batches",
        unit="week",
        axes=(GENERATION,),
        usual=(1, 8),
        hard=(0.1, 52),
        default=(1, 1, 2, 4),
        how="How often you mean to start this generation.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    run_days = number(
        "Own spawn: days to grow through",
        unit="day",
        axes=(GENERATION,),
        usual=(8, 25),
        hard=(1, 120),
        default=(17, 11, 13, 12),
        how="From starting it to the day it can be used, the mean of ten batches.",
        source=COMMON_PRACTICE,
        note="From memory.",
    )
    shelf_life = number(
        "Own spawn: days it keeps once grown through",
        unit="day",
        axes=(GENERATION,),
        usual=(14, 60),
        hard=(1, 365),
        default=(30, 30, 30, 60),
        how="In your cold room. Growers use spawn within a month, and find it weaker after about two.",
        source=COMMON_PRACTICE,
    )

    # Counted back

    @line("Own spawn: good ones wanted a week", unit="spawn_unit/week", axes=(GENERATION,), source=ARITHMETIC)
    def wanted(self) -> Expr:
        """Parts of a bag counted: the average over many weeks."""
        return self._wanted()

    @line("Own spawn: needed a week", unit="spawn_unit/week", axes=(GENERATION,), source=ARITHMETIC)
    def needed(self) -> Expr:
        """More than is wanted, by those that fail: divided by the share that turns out good."""
        return units_needed(self._wanted(), self.failure)

    def _wanted(self) -> Expr:
        return previous(self.wanted_before, GENERATION) * self.way.used_here

    @line("Own spawn: needed for a batch", unit="spawn_unit", axes=(GENERATION,))
    def needed_for_batch(self) -> Expr:
        """For the weeks until the next batch."""
        return self._for_batch()

    @line("Own spawn: started in a batch", unit="spawn_unit", axes=(GENERATION,))
    def started_in_batch(self) -> Expr:
        """Whole plates and bags, rounded up once for the batch and not for every week."""
        return whole_up(self._for_batch())

    def _for_batch(self) -> Expr:
        return self.needed * self.batch_weeks

    @line("Own spawn: left over from a batch", unit="spawn_unit", axes=(GENERATION,))
    def left_over(self) -> Expr:
        """Kept for the next batch, which then comes later or is smaller, as long as it does not grow too old."""
        return self.started_in_batch - self.needed_for_batch

    @line("Own spawn: weeks a batch lasts", unit="week", axes=(GENERATION,), source=ARITHMETIC)
    def weeks_lasting(self) -> Expr:
        """Also the age at which its last plate or bag is used, counted from the day it was grown through."""
        return self._lasting()

    def _lasting(self) -> Expr:
        return ratio(self.started_in_batch, self.needed)

    @line("Own spawn: keeps until it is used up", unit="flag", axes=(GENERATION,))
    def keeps(self) -> Expr:
        """0 where the last of a batch would be older than it keeps: it is then thrown out and paid for all the same."""
        over = self.weeks_lasting - self.weeks_keeping
        return over <= absolute(self.weeks_keeping) * SUM_TOLERANCE

    @line("Own spawn: weeks it keeps", unit="week", axes=(GENERATION,))
    def weeks_keeping(self) -> Expr:
        """Once it is grown through."""
        return self.shelf_life / DAYS_IN_A_WEEK

    @line("Own spawn: weeks a batch is used", unit="week", axes=(GENERATION,))
    def weeks_used(self) -> Expr:
        """Until it is used up, or until what is left of it has grown too old; the next batch then takes over."""
        return minimum(self._lasting(), self.weeks_keeping)

    @line("Own spawn: started a week", unit="spawn_unit/week", axes=(GENERATION,))
    def started(self) -> Expr:
        """A batch over the weeks it is used: what is needed, and more where some of it grows too old."""
        return ratio(self.started_in_batch, self.weeks_used)

    @line("Own spawn: thrown out too old, a week", unit="spawn_unit/week", axes=(GENERATION,))
    def thrown_out(self) -> Expr:
        """What is left of each batch when it is too old: paid for like the rest. Start fewer at a time if it is much."""
        left = (self.weeks_lasting - self.weeks_used) * self.needed
        return ratio(left, self.weeks_used)

    @line("Own spawn: batches a week", unit="lab_batch/week", axes=(GENERATION,))
    def batches(self) -> Expr:
        """Fewer than planned where a batch lasts longer than the weeks between two, more where it does not keep as long."""
        return joined(ratio(self.started, self.started_in_batch), "lab_batch/week")

    @line("Own spawn: good ones this takes of the step before", unit="spawn_unit/week", axes=(GENERATION,))
    def taken_from_before(self) -> Expr:
        """What is started, over what one good one does. The plate takes nothing but culture."""
        return self._from_before()

    def _from_before(self) -> Expr:
        return parents_needed(self.started, self.way.started_from_one)

    @line("Own spawn: wanted of the step before, a week", unit="spawn_unit/week", axes=(GENERATION,))
    def wanted_before(self) -> Expr:
        """First what the bags themselves take. A generation that is left out hands on what is wanted of it."""
        at_first = units_of_mass(self.spawn.spawn_a_week, self.way.usable_in_last)
        passed_on = previous(self.wanted_before, GENERATION) * (1 - self.way.used_here)
        return starting(at_first, self._from_before() + passed_on)

    # When

    @line("Own spawn: days it takes before it is used", unit="day", axes=(GENERATION,))
    def days_taken(self) -> Expr:
        """Growing through, and the slack."""
        return (self.run_days + self.buffer_days) * self.way.used_here

    @line("Own spawn: start so many days before inoculating", unit="day", axes=(GENERATION,), source=ARITHMETIC)
    def days_before(self) -> Expr:
        """Counted back from the day the bags get their spawn: take these days off that date."""
        return running_sum(self.days_taken, GENERATION)

    @line("Own spawn: days from plate to bags", unit="day")
    def lead_days(self) -> Expr:
        """A change of plan takes this long to reach the bags."""
        return total(self.days_taken, GENERATION)

    @line("Own spawn: weeks from plate to bags", unit="week")
    def lead_weeks(self) -> Expr:
        """To set beside the weeks a bought delivery takes."""
        return self.lead_days / DAYS_IN_A_WEEK

    # Mix, and places in the steamer

    @line("Own spawn: bags of sawdust spawn started a week", unit="spawn_unit/week")
    def sawdust_started(self) -> Expr:
        """Of the generations, only these hold the mix that your bags hold."""
        return total(self.started * self.way.is_sawdust, GENERATION)

    @line("Own spawn: mix that goes into it, a week", unit="kg_wet/week")
    def mix_a_week(self) -> Expr:
        """The bags that fail are mixed like the others."""
        return self.sawdust_started * self.way.mix_in_sawdust

    @line("Own spawn: bags of it in the steamer a week", unit="spawn_unit/week")
    def steamed(self) -> Expr:
        """Sawdust spawn only, and only if you chose the steamer for it."""
        return self.sawdust_started * self.way.chose(self.way.sawdust_cooked_in, IN_STEAMER)

    @line("Own spawn: places it takes for each bag filled to fruit", unit="share", source=ARITHMETIC)
    def places_per_bag(self) -> Expr:
        """In a typical week; when the plan grows, spawn is steamed weeks ahead of the bags it is for."""
        return joined(ratio(self.steamed, self.farm.bags_filled_a_week), "share")

    # Checks

    @line("Own spawn: generations that grow too old", unit="count")
    def too_old(self) -> Expr:
        """Generations of which the last of a batch is older than it keeps when it is used."""
        return total(self.way.used_here * (1 - self.keeps), GENERATION)

    @check(
        "Own spawn is used before it grows too old",
        kind="alert",
        says="The last of a batch of own spawn is older than it keeps: start it more often, or in smaller bags.",
    )
    def young_enough(self) -> Expr:
        """Silent as long as the spawn is bought."""
        return any_of(negation(self.source.made), self.too_old <= 0)
