"""What every stage of the farm has: how many bags a week it can do, and how many more one more of it would free."""

from __future__ import annotations

from typing import ClassVar, Final

from farmbook.expr.functions import joined, named
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import ranking_key
from farmbook.model.limits.capacities import Capacities
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line, uses
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["STAGES", "Stage"]

THOUSANDTHS: Final = Constant(
    1000, "parts_of_a_bag", label="Parts of a bag by which stages are ranked", unit=unit("1"), source=ARITHMETIC.key
)
STAGES: Final = Constant(9, "stages_ranked", label="Stages that are ranked", unit=unit("1"), source=ARITHMETIC.key)


class Stage(Alike):
    """One stage. A capacity that is not known never limits."""

    place: ClassVar[int]

    farm = uses(Farm)
    capacities = uses(Capacities)

    known: LineOf
    capacity: LineOf
    frees: LineOf

    @line("Rank of {}, as a key", unit="1", source=ARITHMETIC)
    def rank_key(self) -> Expr:
        """The smallest capacity has the largest; what is not known comes after all that is."""
        return ranking_key(self.size, self.position, STAGES, self.known)

    @line("What {} is ranked by", unit="1")
    def size(self) -> Expr:
        """The more bags it can do, the lower."""
        return -joined(self.capacity, "1") * THOUSANDTHS

    @property
    def position(self) -> Expr:
        """Where the stage stands among the nine."""
        return named(POSITIONS[self.place - 1])


POSITIONS: Final = tuple(
    Constant(
        number,
        f"stage_{number}",
        label=f"Place of stage {number} among those ranked",
        unit=unit("1"),
        source=ARITHMETIC.key,
    )
    for number in range(1, 10)
)
