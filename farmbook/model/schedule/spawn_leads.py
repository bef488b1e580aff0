"""How long before filling spawn is ordered, or own spawn steamed."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.expr.functions import total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import GENERATION
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.schedule.lags import Lags
from farmbook.model.schedule.lead import Lead
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import line, uses

__all__ = ["Ordering", "SteamingAhead"]


class SteamingAhead(Lead, words="steaming own spawn"):
    """Sawdust spawn takes places in the steamer weeks before the bags it is for."""

    title = "Own spawn steamed ahead"

    lags = uses(Lags)
    way = uses(OwnSpawnWay)
    chain = uses(OwnSpawn)
    source = uses(SpawnSource)

    def span(self) -> Expr:
        """The line of the days."""
        return self.days

    @line("Days from steaming own spawn to filling", unit="day")
    def days(self) -> Expr:
        """As sawdust spawn is started before inoculating, less the days from filling to the bench; bought spawn is steamed by
        others."""
        started = total(self.chain.days_before * self.way.is_sawdust, GENERATION)
        return where(self.source.made, started - self.lags.to_bench, 0)


class Ordering(Lead, words="ordering or starting spawn"):
    """Bought, from the order; made, from the generation that goes into the bags."""

    title = "Spawn ordered or started ahead"

    lags = uses(Lags)
    source = uses(SpawnSource)
    spawn = uses(Spawn)
    steamed = uses(SteamingAhead)

    def span(self) -> Expr:
        """The line of the days."""
        return self.days

    @line("Days from ordering or starting spawn to filling", unit="day")
    def days(self) -> Expr:
        """The spawn must be there on the day of the bench."""
        ordered = self.spawn.lead_time * DAYS_IN_A_WEEK
        return where(self.source.made, self.steamed.chain.lead_days, ordered) - self.lags.to_bench
