"""Tasks from the heap of sawdust until the bags stand in the incubation room."""

from __future__ import annotations

from farmbook.expr.functions import ratio
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.labour.task import Task
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["InoculatingWork", "MixingWork", "ShelvingWork", "SpawnWork", "SteamingWork"]


class MixingWork(Task, words="Mixing and filling"):
    """Bags to fruit."""

    title = "Mixing and filling"

    mixing = uses(Mixing)

    @line("Mixing and filling, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Own spawn's bags are filled in the hours of making it."""
        return self.mixing.hours_per_bag * self.farm.bags_filled_a_week


class SteamingWork(Task, words="Steaming"):
    """Loading, unloading and watching."""

    title = "Steaming"

    @line("Steaming, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """All loads of a week, own spawn's places in them."""
        return self.steamer_in_use.labour_hours_per_run * self.steamer_in_use.loads_a_week


class InoculatingWork(Task, words="Inoculating"):
    """At the bench, and setting up the lab."""

    title = "Inoculating"

    spawn = uses(Spawn)

    @line("Inoculating, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Bench and setting up."""
        return self.spawn.bench_hours_a_week + self.spawn.set_up_hours_a_week


class SpawnWork(Task, words="Making spawn"):
    """Plates, grain and sawdust spawn."""

    title = "Making spawn"

    supply = uses(SpawnSupply)

    @line("Making spawn, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Nothing where it is bought."""
        return self.supply.hours_a_week


class ShelvingWork(Task, words="Shelving and checking"):
    """Into the incubation room, and looking over."""

    title = "Shelving and checking"
    table = "hours"

    spawn = uses(Spawn)
    growing = uses(GrowingCost)

    check_hours = number(
        "Rounds in the incubation room, hours a week",
        unit="person_hour/week",
        usual=(0.5, 10),
        hard=(0, 1000),
        default=2,
        how="Diary: looking over and turning racks, apart from carrying bags in.",
        source=COMMON_PRACTICE,
    )

    @line("Shelving and checking, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Carrying in grows with the bags, the rounds do not."""
        carried = ratio(self.spawn.bags_inoculated_a_week, self.growing.shelving_rate)
        return carried + self.check_hours
