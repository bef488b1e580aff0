"""Another spawn rate: more or less spawn in every bag against days of spawn run and bags lost."""

from __future__ import annotations

from typing import Final

from farmbook.calc.spawn import spawn_mass
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, joined, maximum, minimum, ratio, sentence, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.mix.bag import Bag
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.trials.spawn_run import SpawnRunTried
from farmbook.model.trials.weighed import Weighed
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = ["SpawnRateTrial"]

SHORTEST_RUN: Final = Constant(
    1, "shortest_run", label="Shortest spawn run counted", unit=unit("day"), source=ARITHMETIC.key
)


class SpawnRateTrial(SpawnRunTried, Weighed, words="Spawn rate to try"):
    """Weight picked is taken to be the same: if your trial batches gave more or less, that comes on top."""

    title = "Another spawn rate"
    table = "trials"

    bag = uses(Bag)
    crop = uses(Crop)
    source = uses(SpawnSource)
    spawn = uses(Spawn)
    own_spawn = uses(OwnSpawnWork)
    hours = uses(Hours)
    choice = uses(MakeOrBuy)

    spawn_rate = number(
        "Spawn rate to try, share of wet bag weight",
        unit="kg_spawn/kg_wet",
        usual=(0.02, 0.10),
        hard=(0, 0.5),
        default=0.08,
        how="Growers give 3 to 8%. Type what you give now, and nothing is changed.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    days_saved = number(
        "Spawn rate to try: days by which the spawn run is shorter",
        unit="day",
        usual=(-5, 6),
        hard=(-60, 60),
        default=3,
        how="Mean of five batches at that rate beside five of now. Below zero: so much longer.",
        source=COMMON_PRACTICE,
        note="From memory, for 8% in place of 5%. Type it below zero for a lower rate.",
        tried=True,
    )
    loss_saved = number(
        "Spawn rate to try: share of bags saved in the spawn run",
        unit="share",
        usual=(-0.02, 0.03),
        hard=(-1, 1),
        default=0.005,
        how="Share lost in ten batches now, less the share lost in ten at that rate. Below zero: so many more are lost.",
        source=COMMON_PRACTICE,
        note="From memory: spawn that closes over sooner leaves mould less time.",
        tried=True,
    )

    @line("Another spawn rate is tried", unit="flag")
    def tried(self) -> Expr:
        """0 where it is the rate of now, or none, or no bag is inoculated: then nothing is changed."""
        apart = absolute(self.spawn_rate - self.spawn.spawn_rate) > self.spawn.spawn_rate * SUM_TOLERANCE
        return all_of(apart, self.spawn_rate > 0, self.choice.bags_a_year > 0)

    @line("Spawn rate as tried", unit="kg_spawn/kg_wet")
    def rate(self) -> Expr:
        """That of now where nothing is tried."""
        return where(self.tried, self.spawn_rate, self.spawn.spawn_rate)

    @line("Days of spawn run at the spawn rate to try", unit="day")
    def days(self) -> Expr:
        """A day at least."""
        return maximum(self.run_days_now - self.days_saved * self.tried, SHORTEST_RUN)

    @property
    def run_days_now(self) -> Expr:
        """The spawn run of now."""
        return self.room.harvest.spawn_run_days

    # Spawn

    @line("A weight of own spawn costs, in money", unit="money/kg_spawn", source=ARITHMETIC)
    def own_weight(self) -> Expr:
        """Materials, cooking and steaming, and the hours that grow with it at what the next one costs."""
        work = self.one_more.spawn_hours_a_week * self.hours.hour_in_money
        return ratio(self.own_spawn.goods_cost + work, self.spawn.spawn_a_week, otherwise=self.spawn.usable_price)

    @line("A weight of bought spawn costs", unit="money/kg_spawn", source=ARITHMETIC)
    def bought_weight(self) -> Expr:
        """Landed, what arrives bad inside; or your one figure for a bag, over the spawn in it."""
        of_bag = self.spawn.cost_per_bag_inoculated
        return ratio(of_bag, self.spawn.spawn_per_bag, otherwise=self.spawn.usable_price)

    @line("A weight of spawn costs, as you get it", unit="money/kg_spawn")
    def weight_costs(self) -> Expr:
        """Bought or made. Cultures, supplies and the lab are there at any rate."""
        return where(self.source.made, self.own_weight, self.bought_weight)

    @line("Spawn in a bag at the rate to try", unit="kg_spawn/bag_inoculated", source=ARITHMETIC)
    def spawn_per_bag(self) -> Expr:
        """On the wet weight of the filled bag, as now."""
        return spawn_mass(joined(self.bag.wet_fill, "kg_wet/bag_inoculated"), self.rate)

    @line("Spawn of a bag costs now", unit="money/bag_inoculated")
    def cost_now(self) -> Expr:
        """What grows with the weight of it."""
        return self.spawn.spawn_per_bag * self.weight_costs

    @line("Spawn of a bag costs at the rate to try", unit="money/bag_inoculated")
    def cost_tried(self) -> Expr:
        """At the same price of a weight."""
        return self.spawn_per_bag * self.weight_costs

    @line("Bags inoculated a year at the rate to try", unit="bag_inoculated/year")
    def bags(self) -> Expr:
        """Those of now, and those that places freed make room for."""
        more = (self.bags_more - self.bags_fewer) * self.farm.weeks_worked
        return self.choice.bags_a_year + more * self.crop.inoculated_per_filled

    @line("Spawn more at the rate to try, cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def spawn_more(self) -> Expr:
        """For all bags inoculated then. Below zero: saved."""
        return (self.cost_tried - self.cost_now) * self.bags

    # Bags saved

    @line("Bags lost in the spawn run at the rate to try", unit="share")
    def loss(self) -> Expr:
        """No fewer than none, no more than all."""
        loss = self.crop.chosen_loss_in_spawn_run - self.loss_saved * self.tried
        return minimum(maximum(loss, 0), 1)

    @line("Bags saved in the spawn run at the rate to try, a year", unit="bag_inoculated/year")
    def bags_saved(self) -> Expr:
        """Below zero: lost."""
        return (self.crop.chosen_loss_in_spawn_run - self.loss) * self.choice.bags_a_year

    @line("Bags saved at the rate to try, worth a year", unit="money/year", source=PARTIAL_BUDGET)
    def saved_worth(self) -> Expr:
        """Each at what a lost bag costs, with its crop where the farm is full."""
        return self.bags_saved * self.forgone.in_spawn_run

    # The two sides

    @line("Spawn rate to try: brings or saves a year", unit="money/year", source=PARTIAL_BUDGET)
    def gained(self) -> Expr:
        """Bags that places freed make room for, bags saved, and spawn saved."""
        return self.more_worth + maximum(self.saved_worth, 0) + maximum(-self.spawn_more, 0)

    @line("Spawn rate to try: costs or loses a year", unit="money/year", source=PARTIAL_BUDGET)
    def spent(self) -> Expr:
        """Spawn more, more bags lost, and bags for which a longer run leaves no place."""
        return self.fewer_cost + maximum(-self.saved_worth, 0) + maximum(self.spawn_more, 0)

    @line("Spawn rate to try: does it pay", unit="1")
    def verdict(self) -> Expr:
        """By money alone."""
        return sentence(
            1 + self.tried * (1 + self.outcome),
            "is the rate of now: nothing is changed",
            "is too close to call",
            "does not pay",
            "pays",
        )

    @line("Spawn rate to try: by how much, in words", unit="1")
    def by_how_much(self) -> Expr:
        """Of a year."""
        return say(
            ": ",
            figure(absolute(self.change), -2, named=False),
            either(self.loses, " a year less", " a year more"),
        )

    @line("Spawn rate to try, in a sentence", unit="1")
    def told(self) -> Expr:
        """What it changes in a year."""
        return say(
            "Spawn at ",
            figure(self.rate, 1, named=False),
            " ",
            self.verdict,
            either(self.outcome * self.tried, self.by_how_much, ""),
            ".",
        )
