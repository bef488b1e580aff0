"""The spawn that the farm uses, bought or made: what it costs in a bag, and what it takes of hours, places and time."""

from __future__ import annotations

from farmbook.expr.functions import where
from farmbook.expr.nodes import Expr
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["SpawnSupply"]


class SpawnSupply(Section):
    """What the rest of the book takes its spawn from."""

    title = "The spawn that goes into the bags"

    source = uses(SpawnSource)
    spawn = uses(Spawn)
    way = uses(OwnSpawnWay)
    chain = uses(OwnSpawn)
    work = uses(OwnSpawnWork)

    @line("Spawn as chosen: cost in a bag", unit="money/bag_inoculated", zero_is_none=True)
    def cost_per_bag_inoculated(self) -> Expr:
        """The cost sheet goes on with this."""
        return where(self.source.made, self.work.cost_per_bag_inoculated, self.spawn.cost_per_bag_inoculated)

    @line("Spawn as chosen: dry matter in a bag", unit="kg_dry/bag_inoculated")
    def dry_spawn_per_bag(self) -> Expr:
        """It matters only where biological efficiency is stated with the spawn counted."""
        return where(self.source.made, self.way.dry_spawn_per_bag, self.spawn.dry_spawn_per_bag)

    @line("Spawn as chosen: hours of making it, a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Nothing where it is bought; inoculating comes on top either way."""
        return self.work.hours_a_week * self.source.made

    @line("Spawn as chosen: mix that goes into it, a week", unit="kg_wet/week")
    def mix_a_week(self) -> Expr:
        """Sawdust spawn made on the farm takes of the same heap as the bags; nothing where it is bought."""
        return self.chain.mix_a_week * self.source.made

    @line("Spawn as chosen: weeks from deciding to having it", unit="week")
    def lead_weeks(self) -> Expr:
        """From the order, or from the plate."""
        return where(self.source.made, self.chain.lead_weeks, self.spawn.lead_time)
