"""What a bag has cost when it is moved to the fruiting room, all of it that would end if bags came from elsewhere."""

from __future__ import annotations

from farmbook.expr.functions import joined, minimum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["BagToFruiting"]


class BagToFruiting(Section):
    """From the heap to the end of the spawn run, lost bags carried by those that live. Opening and all after it are left out,
    as every bag needs them; steamer, lab and rooms are there already.
    """

    title = "A bag until it is moved to fruiting"

    farm = uses(Farm)
    crop = uses(Crop)
    source = uses(SpawnSource)
    spawn = uses(Spawn)
    own_spawn = uses(OwnSpawnWork)
    growing = uses(GrowingCost)
    hours = uses(Hours)
    one_more = uses(OneMore)

    @line("Cultures and lab supplies, for each bag filled", unit="money/bag_filled")
    def own_bills(self) -> Expr:
        """They would end with own spawn; nothing where it is bought."""
        return ratio(self.own_spawn.yearly_bills * self.source.made, self.farm.bags_filled_a_year)

    @line("A bag until it is moved: goods", unit="money/bag_filled")
    def goods(self) -> Expr:
        """Mix, bag, steam, spawn, and what its spawn takes of cultures and supplies."""
        fruiting = self.growing.fruiting_room_cost * self.crop.live_per_filled
        return self.one_more.bag_goods - fruiting + self.own_bills

    @line("Setting up for inoculating and in the lab, for each bag filled", unit="person_min/bag_filled")
    def setting_up(self) -> Expr:
        """The same for few bags as for many, but none without a bag."""
        lab = self.own_spawn.weekly_hours * self.source.made
        return ratio(self.spawn.set_up_hours_a_week + lab, self.farm.bags_filled_a_week)

    @line("Taking out bags lost before they are moved, for each bag filled", unit="person_min/bag_filled")
    def culling(self) -> Expr:
        """At steaming and in the spawn run."""
        lost = joined(1 - joined(self.crop.live_per_filled, "share"), "bag_inoculated/bag_filled")
        return ratio(lost, self.growing.culling_rate)

    @line("A bag until it is moved: work", unit="person_min/bag_filled")
    def work(self) -> Expr:
        """Filling, steaming, inoculating, shelving, own spawn, and taking out those lost."""
        making = self.one_more.starting_hours + self.one_more.shelving_hours + self.one_more.spawn_hours
        return making + self.setting_up + self.culling

    @line("Work on bags until they are moved, hours a week", unit="person_hour/week")
    def work_a_week(self) -> Expr:
        """All bags filled."""
        return self.work * self.farm.bags_filled_a_week

    @line("Hired, of the work on bags until they are moved", unit="share")
    def hired(self) -> Expr:
        """If all of it ended, hired hours would go first; the rest is your own."""
        return ratio(minimum(self.work_a_week, self.hours.hired), self.work_a_week)

    @line("An hour on a bag until it is moved, in money", unit="money/person_hour")
    def hour_in_money(self) -> Expr:
        """As far as hired hours go."""
        return self.hired * self.farm.labour_rate

    @line("An hour on a bag until it is moved, with your own at its worth", unit="money/person_hour")
    def hour_in_full(self) -> Expr:
        """Hired hours at their cost, your own at what one is worth to you."""
        return self.hour_in_money + (1 - self.hired) * self.hours.own_rate

    @line("A bag moved to fruiting has cost, in money", unit="money/bag_live", source=ARITHMETIC, zero_is_none=True)
    def in_money(self) -> Expr:
        """Goods, and its hours as far as they are hired."""
        return ratio(self.goods + self.work * self.hour_in_money, self.crop.live_per_filled)

    @line(
        "A bag moved to fruiting has cost, own hours in it",
        unit="money/bag_live",
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def in_full(self) -> Expr:
        """Goods, and all its hours."""
        return ratio(self.goods + self.work * self.hour_in_full, self.crop.live_per_filled)
