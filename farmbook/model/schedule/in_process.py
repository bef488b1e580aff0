"""Bags week by week from the filling table to the heap: on the way to the bench, in the spawn run, fruiting, lost, cleared."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, joined, maximum, previous, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import WEEK
from farmbook.model.crop.crop import Crop
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.lags import Bench, Dumping, Freeing, Opening
from farmbook.model.schedule.start_up import StartUp
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["InProcess"]


class InProcess(Section):
    """At the end of each week. A bag lost in the spawn run leaves its place when its batch is opened."""

    title = "Bags in process"

    crop = uses(Crop)
    start_up = uses(StartUp)
    filling = uses(Filling)
    bench = uses(Bench)
    opening = uses(Opening)
    dump = uses(Dumping)
    place = uses(Freeing)

    @line("Bags of the week that come whole out of the steamer", unit="bag_inoculated", axes=(WEEK,))
    def whole(self) -> Expr:
        """Burst and leaking ones are taken out."""
        return self.filling.filled * self.crop.inoculated_per_filled

    @line("Bags of the week that will live", unit="bag_live", axes=(WEEK,))
    def alive(self) -> Expr:
        """Through the spawn run; of a new farm fewer at first."""
        living = self.filling.filled * self.crop.live_per_filled
        return living * maximum(1 - self.start_up.loss_at_first * (1 - self.start_up.learned), 0)

    @line("Bags inoculated in the week", unit="bag_inoculated", axes=(WEEK,))
    def inoculated(self) -> Expr:
        """They were filled some days before."""
        return self.bench.later(self.whole)

    @line("Bags that leave the incubation room in the week", unit="bag_inoculated", axes=(WEEK,))
    def moved(self) -> Expr:
        """Lost ones too."""
        return self.opening.later(self.whole)

    @line("Bags opened in the week", unit="bag_live", axes=(WEEK,))
    def opened(self) -> Expr:
        """Those that live."""
        return self.opening.later(self.alive)

    @line("Bags whose last pick is over in the week", unit="bag_live", axes=(WEEK,))
    def dumped(self) -> Expr:
        """Those lost since they were opened counted with them."""
        return self.dump.later(self.alive)

    @line("Places that are washed and free again in the week", unit="bag_live", axes=(WEEK,))
    def freed(self) -> Expr:
        """Another bag can stand there."""
        return self.place.later(self.alive)

    @line("Bags in the incubation room", unit="bag_inoculated", axes=(WEEK,))
    def incubating(self) -> Expr:
        """At the end of the week."""
        return starting(0, previous(self.incubating, WEEK) + self.inoculated - self.moved)

    @line("Bags in the fruiting room", unit="bag_live", axes=(WEEK,))
    def fruiting(self) -> Expr:
        """At the end of the week, with those lost since opening, whose places stay empty."""
        return starting(0, previous(self.fruiting, WEEK) + self.opened - self.dumped)

    @line("Fruiting places taken", unit="place", axes=(WEEK,))
    def places(self) -> Expr:
        """At the end of the week, with those that are being washed."""
        return starting(0, previous(self.places, WEEK) + joined(self.opened - self.freed, "place"))

    @line("Bags lost in the week, up to opening", unit="bag_filled", axes=(WEEK,))
    def lost_by_opening(self) -> Expr:
        """At steaming; and in the spawn run, counted when their batch is opened."""
        at_steaming = self.filling.filled - joined(self.whole, "bag_filled")
        return at_steaming + joined(self.moved, "bag_filled") - joined(self.opened, "bag_filled")

    @line("Bags that are a rounding of all bags of the schedule", unit="bag_filled")
    def rounding(self) -> Expr:
        """By so many the two ways may differ."""
        return total(self.filling.filled, WEEK) * SUM_TOLERANCE

    @line("Bags filled so far, added up over all weeks", unit="bag_filled")
    def filled_counted(self) -> Expr:
        """What is filled in a week counts in every later one too."""
        return self.filling.weeks.counted_on(self.filling.filled)

    @line("Bags lost up to opening, or dumped, so far, added up over all weeks", unit="bag_filled", source=ARITHMETIC)
    def gone_counted(self) -> Expr:
        """Dumped ones are cleared, or were lost since opening; gone in every later week too."""
        return self.filling.weeks.counted_on(self.lost_by_opening + joined(self.dumped, "bag_filled"))

    @line("Bags steamed and not yet inoculated, added up over all weeks", unit="bag_inoculated")
    def waiting_counted(self) -> Expr:
        """In the steamer or cooling, at the end of each week."""
        return self.filling.weeks.counted_on(self.whole - self.inoculated)

    @line("Bags in process, added up over all weeks", unit="bag_filled")
    def there_counted(self) -> Expr:
        """At the end of each week, wherever they are."""
        in_rooms = total(joined(self.incubating, "bag_filled") + joined(self.fruiting, "bag_filled"), WEEK)
        return joined(self.waiting_counted, "bag_filled") + in_rooms

    @check(
        "Bags filled are in process, cleared or lost, in every week",
        kind="error",
        says=(
            "In some week of the schedule bags in process are not those filled less those lost and cleared: a formula of "
            "the weeks was changed."
        ),
    )
    def bags_add_up(self) -> Expr:
        """Rooms and flows are worked out apart."""
        return absolute(self.filled_counted - self.gone_counted - self.there_counted) <= self.rounding
