"""Both rooms together: heat, cooling, light, fans and water of a year."""

from __future__ import annotations

from farmbook.expr.functions import all_of
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import CALENDAR
from farmbook.model.rooms.fruiting_climate import FruitingClimate
from farmbook.model.rooms.incubation_climate import IncubationClimate
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["RoomEnergy"]


class RoomEnergy(Section):
    """Worked out to stand beside the bill; it costs only where no bill is given."""

    title = "Heat, cooling, light, fans and water of the rooms"

    incubation = uses(IncubationClimate)
    fruiting = uses(FruitingClimate)

    @line("Heat put into the rooms", unit="kWh", axes=(CALENDAR,))
    def heat(self) -> Expr:
        """Both."""
        return self.incubation.put_in + self.fruiting.put_in

    @line("Heat taken out by the cooler", unit="kWh", axes=(CALENDAR,))
    def cold(self) -> Expr:
        """Both. One room may want cooling while the other wants heat."""
        return self.incubation.cold + self.fruiting.cold

    @line("Heat of both rooms can be worked out", unit="flag")
    def known(self) -> Expr:
        """1 where walls and air of both rooms are given."""
        return all_of(self.incubation.known > 0, self.fruiting.known > 0)

    @line("Energy of the rooms a year, worked out", unit="money/year")
    def cost(self) -> Expr:
        """Both: heat, cooling, light and fans. The cold room for what is picked is not in it."""
        return self.incubation.energy_cost + self.fruiting.energy_cost

    @line("Water misted in the rooms costs a year", unit="money/year")
    def water_cost(self) -> Expr:
        """Both."""
        return self.incubation.water_cost + self.fruiting.water_cost

    @line("Energy of the rooms, in a sentence", unit="1")
    def told(self) -> Expr:
        """What they come to, or what to give for it."""
        return say(
            either(
                self.cost > 0, self.as_given, "Give walls and air of the rooms on Inputs to have their heat worked out."
            )
        )

    @line("Energy of the rooms, as far as given", unit="1")
    def as_given(self) -> Expr:
        """Whether both rooms are in it."""
        return say(
            either(
                self.known,
                "By walls, air and weather the rooms take ",
                "Walls and air are not given for both rooms; as far as they are, the rooms take ",
            ),
            figure(self.cost, -2, named=False),
            " of energy a year.",
        )
