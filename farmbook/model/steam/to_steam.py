"""What a week brings to the steamer: the bags that are to fruit, and own spawn where it is steamed with them."""

from __future__ import annotations

from farmbook.expr.functions import joined
from farmbook.expr.nodes import Expr
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["ToSteam"]


class ToSteam(Section):
    """Read by the hours and loads of both steamers, so it stands before them."""

    title = "What has to be steamed in a week"

    farm = uses(Farm)
    source = uses(SpawnSource)
    chain = uses(OwnSpawn)

    @line("Spawn as chosen: bags of it in the steamer a week", unit="spawn_unit/week")
    def spawn(self) -> Expr:
        """Nothing where it is bought."""
        return self.chain.steamed * self.source.made

    @line("Places in the steamer that a week takes", unit="bag_filled/week", source=ARITHMETIC)
    def places(self) -> Expr:
        """Bags to fruit, and bags of own spawn steamed with them: each takes the place of one."""
        return self.farm.bags_filled_a_week + joined(self.spawn, "bag_filled/week")
