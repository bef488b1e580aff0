"""The rooms in which bags fruit."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.cost.harvest import Harvest
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.rooms.room import Room
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["FruitingRoom"]


class FruitingRoom(Room, words="fruiting room"):
    """Bags stand here from opening until they are dumped; the place is free again when it is washed."""

    title = "The fruiting room"

    harvest = uses(Harvest)
    incubation = uses(IncubationRoom)

    shelves = number(
        "Shelves one above the other, fruiting room",
        unit="count",
        usual=(2, 6),
        hard=(1, 20),
        default=4,
        how="Count them on one rack.",
        source=COMMON_PRACTICE,
    )
    density = number(
        "Bags that stand on a shelf, fruiting room",
        unit="place/m2",
        usual=(10, 27),
        hard=(1, 200),
        default=16,
        how="Count the bags on one shelf, with room for the clusters, and measure the shelf.",
        source=COMMON_PRACTICE,
        note="From memory, for bags of 2 to 3 kg.",
    )

    def entering(self) -> Expr:
        """All that live through the spawn run."""
        return self.harvest.live_a_week

    def days(self) -> Expr:
        """With the days of clearing and washing."""
        return self.harvest.days_place_taken

    @line("Rooms: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Incubation takes ",
            figure(self.incubation.taken, 0, named=False),
            " places, ",
            figure(self.incubation.at_peak, 0, named=False),
            " when it is fullest; fruiting ",
            figure(self.taken, 0, named=False),
            " and ",
            figure(self.at_peak, 0, named=False),
            either(self.enough_at_peak, ".", ", more than there are."),
        )
