"""The room in which bags grow through."""

from __future__ import annotations

from farmbook.calc.places import standing
from farmbook.expr.functions import joined, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import GENERATION
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.rooms.room import Room
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE, LITTLE_2008

__all__ = ["IncubationRoom"]


class IncubationRoom(Room, words="incubation room"):
    """Bags stand here from inoculation until they are moved and opened; own spawn may stand with them."""

    title = "The incubation room"

    spawn = uses(Spawn)
    harvest = uses(Harvest)
    source = uses(SpawnSource)
    chain = uses(OwnSpawn)
    way = uses(OwnSpawnWay)

    shelves = number(
        "Shelves one above the other, incubation room",
        unit="count",
        usual=(3, 7),
        hard=(1, 20),
        default=5,
        how="Count them on one rack.",
        source=COMMON_PRACTICE,
    )
    density = number(
        "Bags that stand on a shelf, incubation room",
        unit="place/m2",
        usual=(19, 43),
        hard=(1, 200),
        default=27,
        how="Count the bags on one shelf, with the gaps you leave for air, and measure the shelf.",
        source=COMMON_PRACTICE,
        note="From memory, for bags of 2 to 3 kg. Bags that touch grow too warm in the middle.",
    )

    def entering(self) -> Expr:
        """All bags inoculated."""
        return self.spawn.bags_inoculated_a_week

    def days(self) -> Expr:
        """The spawn run."""
        return self.harvest.spawn_run_days

    @line("Bags of own spawn started a week, without plates", unit="spawn_unit/week", axes=(GENERATION,))
    def spawn_started(self) -> Expr:
        """Plates are small and stand in the lab."""
        return self._started()

    def _started(self) -> Expr:
        return self.chain.started * self.bagged

    @line("Own spawn stands in the incubation room", unit="flag", axes=(GENERATION,))
    def bagged(self) -> Expr:
        """Generations that you make, without plates."""
        return self.way.used_here * (self.way.is_sawdust + self.way.is_second_grain + self.way.is_grain)

    @line("Places that own spawn takes in the incubation room", unit="place", source=LITTLE_2008)
    def spawn_places(self) -> Expr:
        """Nothing where spawn is bought. Each bag of it counts as one place."""
        standing_now = total(standing(self._started(), self.chain.run_days), GENERATION)
        return joined(standing_now * self.source.made, "place")

    def in_all(self, bags: Expr) -> Expr:
        """Own spawn stands with the bags."""
        return bags + self.spawn_places
