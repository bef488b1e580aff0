"""What a week is short of: places, loads, hours, room in the cold. It is said with how much, and nothing is cut off."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import any_of, joined, maximum, ratio, total, where, whole_up
from farmbook.expr.nodes import Constant, Expr, wrap
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import STEP_UP, WEEK
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.labour.hours import Hours
from farmbook.model.limits.capacities import Capacities
from farmbook.model.limits.making_stages import SteamerStage
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.plan_changes import PlanChanges
from farmbook.model.schedule.spawn_leads import SteamingAhead
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["Shortages"]

NEVER_FULL: Final = Constant(
    1e9,
    "never_full",
    label="Counted for what is not known, so that it never limits",
    unit=unit("1"),
    source="arithmetic",
)
NEVER_COLD: Final = Constant(
    1e9,
    "cold_never_full",
    label="Weight counted for a cold room that is not known",
    unit=unit("kg_taken"),
    source="arithmetic",
)


class Shortages(Section):
    """Of each week of the plan, at its end. What you have not typed never limits."""

    title = "What weeks are short of"

    weeks = uses(PlanWeeks)
    hours = uses(Hours)
    capacities = uses(Capacities)
    steamer = uses(SteamerStage)
    incubation_room = uses(IncubationRoom)
    fruiting_room = uses(FruitingRoom)
    changes = uses(PlanChanges)
    filling = uses(Filling)
    steamed_spawn = uses(SteamingAhead)
    bags = uses(InProcess)
    cold = uses(ColdRoom)
    work = uses(WeekHours)

    # Places

    @line("Places of own spawn in the incubation room, for each bag filled", unit="place/bag_filled")
    def spawn_places(self) -> Expr:
        """Nothing where spawn is bought. It stands there some weeks before the bags it is for."""
        a_week = joined(self.hours.farm.bags_filled_a_week, "bag_filled")
        return ratio(self.incubation_room.spawn_places, a_week)

    @line("Incubation places taken", unit="place", axes=(WEEK,))
    def incubation_taken(self) -> Expr:
        """At the end of the week, own spawn with the bags."""
        return joined(self.bags.incubating, "place") + self.filling.filled * self.spawn_places

    @line("Incubation places had at the start", unit="place")
    def incubation_had(self) -> Expr:
        """Never full where they are not known."""
        return self._known(self.incubation_room.known, self.incubation_room.places)

    @line("Incubation places short", unit="place", axes=(WEEK,))
    def incubation_short(self) -> Expr:
        """With all changes of the plan so far."""
        more = total(self.changes.more_incubation * (self.changes.holds_from <= self.weeks.number), STEP_UP)
        return maximum(self.incubation_taken - self.incubation_had - more, 0)

    @line("Fruiting places had at the start", unit="place")
    def fruiting_had(self) -> Expr:
        """Never full where they are not known."""
        return self._known(self.fruiting_room.known, self.fruiting_room.places)

    @line("Fruiting places had", unit="place", axes=(WEEK,))
    def fruiting_places(self) -> Expr:
        """With all changes of the plan so far."""
        more = total(self.changes.more_fruiting * (self.changes.holds_from <= self.weeks.number), STEP_UP)
        return self.fruiting_had + more

    @line("Fruiting places short", unit="place", axes=(WEEK,))
    def fruiting_short(self) -> Expr:
        """At the end of the week."""
        return maximum(self.bags.places - self.fruiting_places, 0)

    def _known(self, known: Expr, had: Expr) -> Expr:
        """What there is, or more than any farm takes."""
        return where(known, had, joined(wrap(1) * NEVER_FULL, "place"))

    # The steamer

    @line("Own spawn steamed in the week", unit="bag_filled", axes=(WEEK,))
    def spawn_steamed(self) -> Expr:
        """Bags to fruit for which it is steamed now."""
        return self.steamed_spawn.ahead(self.filling.filled)

    @line("Places in the steamer for own spawn, for each bag filled", unit="share")
    def steamed_for_a_bag(self) -> Expr:
        """Nothing where spawn is bought, or is not steamed with the bags."""
        return self.steamed_spawn.chain.places_per_bag * self.hours.source.made

    @line("Loads steamed in the week", unit="run", axes=(WEEK,))
    def loads(self) -> Expr:
        """Whole ones; a last one may be part full."""
        places = self.filling.filled + self.spawn_steamed * self.steamed_for_a_bag
        return whole_up(ratio(places, self.steamer.steamer_in_use.bags_per_run))

    @line("Loads that can be steamed in a week, at the start", unit="run")
    def loads_had(self) -> Expr:
        """Never full where the size of a load is not known."""
        possible = joined(self.steamer.steamer_in_use.loads_possible, "run")
        return where(self.steamer.known, possible, joined(wrap(1) * NEVER_FULL, "run"))

    @line("Loads short", unit="run", axes=(WEEK,))
    def loads_short(self) -> Expr:
        """More than can be steamed in the hours when somebody is there."""
        more = total(self.changes.more_loads * (self.changes.holds_from <= self.weeks.number), STEP_UP)
        return maximum(self.loads - self.loads_had - more, 0)

    # Hours, and the cold room

    @line("Hours short", unit="person_hour", axes=(WEEK,))
    def hours_short(self) -> Expr:
        """Beyond the roster and your own, by more than a rounding."""
        missing = self.work.needed - self.work.hired - joined(self.hours.own_hours, "person_hour")
        return missing * (missing > self.work.needed * SUM_TOLERANCE)

    @line("Weight that the cold room holds", unit="kg_taken")
    def cold_had(self) -> Expr:
        """Never full where it is not known."""
        known = self.capacities.given(self.capacities.cold_room)
        return where(known, joined(self.capacities.cold_room, "kg_taken"), NEVER_COLD)

    @line("Weight too much for the cold room", unit="kg_taken", axes=(WEEK,))
    def cold_short(self) -> Expr:
        """Left there at the end of the week, by more than a rounding."""
        over = self.cold.left - self.cold_had
        return over * (over > self.cold.rounding)

    # In all

    @line("Places short in either room", unit="place", axes=(WEEK,))
    def places_short(self) -> Expr:
        """By more than a rounding."""
        both = self.incubation_short + self.fruiting_short
        return both * (both > joined(self.bags.rounding, "place"))

    @line("Week is short of something", unit="flag", axes=(WEEK,))
    def is_short(self) -> Expr:
        """Of places, hands, loads or cold room."""
        hands = self.hours_short > 0
        return any_of(self.places_short > 0, hands, self.loads_short > 0, self.cold_short > 0) * self.weeks.in_plan

    @line("Weeks of the plan", unit="count")
    def weeks_planned(self) -> Expr:
        """All that begin in it."""
        return total(self.weeks.in_plan, WEEK)

    @line("Weeks of the plan that are short of places", unit="count")
    def weeks_short_of_places(self) -> Expr:
        """In either room."""
        return total((self.places_short > 0) * self.weeks.in_plan, WEEK)

    @line("Weeks of the plan that are short of hands", unit="count")
    def weeks_short_of_hands(self) -> Expr:
        """Beyond the roster and your own hours."""
        return total((self.hours_short > 0) * self.weeks.in_plan, WEEK)

    @line("Weeks of the plan that are short of loads or of cold room", unit="count")
    def weeks_short_of_others(self) -> Expr:
        """Either."""
        either = (self.loads_short > 0) + (self.cold_short > 0)
        return total((either > 0) * self.weeks.in_plan, WEEK)

    @line("Weeks of the plan that are short of something", unit="count")
    def weeks_short(self) -> Expr:
        """Of any of these."""
        return total(self.is_short, WEEK)

    @line("Schedule: the answer", unit="1")
    def answer(self) -> Expr:
        """The sheet Schedule says which weeks, of what, and how much. Nothing is cut off in the plan for it."""
        return say(
            "Of ",
            figure(self.weeks_planned, 0, named=False),
            " weeks of the plan ",
            figure(self.weeks_short, 0, named=False),
            " are short of something: ",
            figure(self.weeks_short_of_places, 0, named=False),
            " of places, ",
            figure(self.weeks_short_of_hands, 0, named=False),
            " of hands, ",
            figure(self.weeks_short_of_others, 0, named=False),
            " of loads or cold room.",
        )

    @check(
        "Places are enough in every week of the plan",
        kind="alert",
        says="In some week of the plan bags have no place to stand: see the sheet Schedule for which and how many.",
    )
    def places_enough(self) -> Expr:
        """In both rooms, at the end of each week."""
        return self.weeks_short_of_places <= 0

    @check(
        "Hands are enough in every week of the plan",
        kind="alert",
        says="In some week of the plan the tasks take more hours than roster and family have: see the sheet Schedule.",
    )
    def hands_enough(self) -> Expr:
        """Roster and own hours."""
        return self.weeks_short_of_hands <= 0

    @check(
        "Steamer and cold room are enough in every week of the plan",
        kind="alert",
        says="In some week of the plan there are more loads than can be steamed, or more weight than the cold room holds.",
    )
    def others_enough(self) -> Expr:
        """Where their size is known."""
        return self.weeks_short_of_others <= 0
