"""Places in a room: how many there are, how many bags take on average, and how many on the fullest day."""

from __future__ import annotations

from abc import abstractmethod
from typing import Final

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.calc.places import standing
from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import any_of, joined, negation, ratio, where, whole_up
from farmbook.expr.nodes import Expr
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.alike import Alike
from farmbook.sections.declare import NumberInput, Option, check, choice, line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, LITTLE_2008

__all__ = ["TYPED", "WORKED_OUT", "Room"]

TYPED: Final = Option("typed", "typed")
WORKED_OUT: Final = Option("worked out", "worked out from the floor")


class Room(Alike):
    """A room in which bags stand for days on end."""

    steamer_in_use = uses(SteamerInUse)

    shelves: NumberInput
    density: NumberInput

    places_given = choice(
        "Places in the {}: typed, or worked out",
        TYPED,
        WORKED_OUT,
        default=TYPED,
        how="Count them if you can; for a room that is only planned, work them out from its floor.",
        source=COMMON_PRACTICE,
    )
    own_places = number(
        "Places in the {}",
        unit="place",
        usual=(200, 20000),
        hard=(0, 1000000),
        optional=True,
        how="Bags that can stand there, shelf by shelf. Left empty, the room is taken never to be full.",
        source=COMMON_PRACTICE,
    )
    floor = number(
        "Floor of the {}",
        unit="m2",
        usual=(5, 500),
        hard=(0, 100000),
        optional=True,
        how="Inside, wall to wall, aisles too.",
    )
    racked = number(
        "Share of the floor under shelves, {}",
        unit="share",
        usual=(0.3, 0.7),
        hard=(0, 1),
        default=0.45,
        how="Floor under racks over all floor: aisles, door swing and sinks hold no bags.",
        source=COMMON_PRACTICE,
        note="From memory: aisles wide enough for a cart take about half.",
    )

    @line("Shelf in the {}", unit="m2", source=ARITHMETIC)
    def shelf_area(self) -> Expr:
        """All shelves one above the other; nothing where no floor is given."""
        return self.floor * self.racked * self.shelves

    @line("Places in the {}, worked out from the floor", unit="place", source=ARITHMETIC)
    def worked_places(self) -> Expr:
        """Shelf, times the bags that stand on it with air between them."""
        return self.shelf_area * self.density

    @line("Places in the {}, counted", unit="place")
    def places(self) -> Expr:
        """Typed or worked out, as you chose; 0 where neither is known."""
        return where(self.chose(self.places_given, WORKED_OUT), self.worked_places, self.own_places)

    @line("Places in the {} are known", unit="flag")
    def known(self) -> Expr:
        """Only then can the room limit the farm."""
        return self.places > 0

    @line("Places in the {}: as counted", unit="place", zero_is_none=True)
    def places_told(self) -> Expr:
        """Typed or worked out, as you chose. No figure: it is taken never to be full."""
        return self.places * self.known

    @line("Places on the floor of the {}", unit="place/m2", zero_is_none=True)
    def floor_density(self) -> Expr:
        """To compare buildings by: all floor, aisles too."""
        return ratio(self.worked_places, self.floor)

    @line("Places taken in the {}, on average", unit="place", source=LITTLE_2008)
    def taken(self) -> Expr:
        """What comes in a day, times the days it stays. A bag lost on the way leaves its place empty till the batch goes."""
        return self.in_all(joined(standing(self.entering(), self.days()), "place"))

    @line("Loads that come into the {} in a full week", unit="run/week")
    def loads(self) -> Expr:
        """Whole loads."""
        return whole_up(self.steamer_in_use.loads_a_week)

    @line("Bags of one load in the {}", unit="place/run")
    def per_load(self) -> Expr:
        """All loads of a week alike."""
        return joined(ratio(self.entering(), self.loads), "place/run")

    @line("Whole days in the {}", unit="day")
    def whole_days(self) -> Expr:
        """A place is taken on each day on which a bag stands there."""
        return whole_up(self.days())

    @line("Loads in the {}, on average of whole days", unit="run", source=LITTLE_2008)
    def loads_present(self) -> Expr:
        """Loads a day, times whole days."""
        return standing(self.loads, self.whole_days)

    @line("Loads in the {} when it is fullest", unit="run", source=ARITHMETIC)
    def peak_loads(self) -> Expr:
        """A load is in or out: the room holds a whole number of them, some days one more."""
        return whole_up(self.loads_present)

    @line("Places taken in the {} when it is fullest", unit="place")
    def at_peak(self) -> Expr:
        """Loads spread evenly over the week; two on one day need more."""
        return self.in_all(joined(self.peak_loads * self.per_load, "place"))

    @line("Share of the time at which the {} is fullest", unit="share", source=ARITHMETIC)
    def share_at_peak(self) -> Expr:
        """All of it where the loads come out even."""
        return where(self.loads > 0, 1 - joined(self.peak_loads - self.loads_present, "share"), 0)

    @line("Days a week on which the {} is fullest", unit="day/week")
    def days_at_peak(self) -> Expr:
        """On the others one load fewer stands there."""
        return self.share_at_peak * DAYS_IN_A_WEEK

    @line("Places taken in the {}, by the day", unit="place", source=ARITHMETIC)
    def by_day(self) -> Expr:
        """On the fullest days, and one load fewer on the others."""
        return self.at_peak - joined(self.per_load * self.other_days, "place")

    @line("Loads fewer in the {}, on average of all days", unit="run")
    def other_days(self) -> Expr:
        """One on each day that is not the fullest."""
        return where(self.loads > 0, joined(1 - self.share_at_peak, "run"), 0)

    @line("Places taken in the {}, by the load", unit="place", source=LITTLE_2008)
    def by_load(self) -> Expr:
        """Loads that come, times whole days. A little above the average where the days are not whole."""
        return self.in_all(joined(self.loads_present * self.per_load, "place"))

    @line("Places taken of those in the {}, on average", unit="share", zero_is_none=True)
    def use(self) -> Expr:
        """No figure where the places are not known."""
        return ratio(self.taken, self.places)

    @line("Places taken of those in the {}, when it is fullest", unit="share", zero_is_none=True)
    def peak_use(self) -> Expr:
        """No figure where the places are not known."""
        return ratio(self.at_peak, self.places)

    @line("Places to spare in the {} when it is fullest", unit="place")
    def to_spare(self) -> Expr:
        """Below zero: so many bags have nowhere to stand on those days."""
        return where(self.known, self.places - self.at_peak, 0)

    @abstractmethod
    def entering(self) -> Expr:
        """The line of the bags that come in a week."""

    @abstractmethod
    def days(self) -> Expr:
        """The line of the days that they stay."""

    def in_all(self, bags: Expr) -> Expr:
        """With what else stands in the room."""
        return bags

    @check(
        "Places in the {} are enough on average",
        kind="alert",
        says="More bags are in the {} than it has places: fill fewer, shorten their stay, or find places. See the sheet Rooms.",
    )
    def enough(self) -> Expr:
        """Silent where the places are not known."""
        return any_of(negation(self.known), self.taken <= self.places)

    @check(
        "Places in the {} are enough on its fullest day",
        kind="alert",
        says="On its fullest days the {} takes more bags than it has places: see the sheet Rooms for how many days a week.",
    )
    def enough_at_peak(self) -> Expr:
        """Whole loads do not come out even with the days: averages hide it."""
        return any_of(negation(self.known), self.at_peak <= self.places)

    @check(
        "Places by day in the {} agree with its loads",
        kind="error",
        says="Places on full and on other days of the {} do not agree with its loads: a formula of the sheet Rooms was changed.",
    )
    def days_add_up(self) -> Expr:
        """The fullest days and the others, weighed, are the loads that come times the whole days they stay."""
        return is_rounding(self.by_day - self.by_load, self.by_day, self.by_load)
