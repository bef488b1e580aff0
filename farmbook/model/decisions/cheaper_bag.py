"""Cheaper bags: what is saved on each beside the bags lost more, burst, leaking or gone mouldy behind a poorer filter."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO
from farmbook.expr.functions import absolute, joined, maximum, ratio, sentence
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.crop.crop import Crop
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["CheaperBag"]


class CheaperBag(Section):
    """Another empty bag for all that are filled. A bag lost counts with its crop where the farm is full."""

    title = "Cheaper bags"

    farm = uses(Farm)
    bag = uses(Bag)
    crop = uses(Crop)
    lost = uses(CropForgone)

    price = number(
        "Other bag: price of an empty one",
        unit="money/bag_filled",
        usual=(0.1, 0.7),
        hard=(0, 100),
        default=0.22,
        how="Quote for a case, with freight, over the bags in it.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
        tried=True,
    )
    more_at_steaming = number(
        "Other bag: lost more at steaming",
        unit="share",
        usual=(-0.02, 0.05),
        hard=(-1, 1),
        default=0.01,
        how="Steam fifty of each in one load and count what bursts or leaks.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    more_in_spawn_run = number(
        "Other bag: lost more in the spawn run",
        unit="share",
        usual=(-0.02, 0.05),
        hard=(-1, 1),
        default=0.01,
        how="Bags of each that go bad, over bags inoculated, in three batches side by side.",
        source=COMMON_PRACTICE,
        note="From memory: pinholes and poor filter patches show up here.",
        tried=True,
    )

    @line("Other bag: saved on bags a year", unit="money/year")
    def saved(self) -> Expr:
        """Below zero where it is the dearer one."""
        return (self.bag.bag_price - self.price) * self.farm.bags_filled_a_year

    @line("Other bag: lost more at steaming, cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def steaming_cost(self) -> Expr:
        """Each at what a bag lost there costs."""
        return self.more_at_steaming * self.farm.bags_filled_a_year * self.lost.at_steaming

    @line("Other bag: lost more in the spawn run, cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def spawn_run_cost(self) -> Expr:
        """Each at what a bag lost there costs."""
        return self.more_in_spawn_run * self.all_lost_in_spawn_run

    @line("Bags inoculated a year, if all were lost in the spawn run", unit="money/year")
    def all_lost_in_spawn_run(self) -> Expr:
        """What shares of loss are taken of."""
        inoculated = self.farm.bags_filled_a_year * self.crop.inoculated_per_filled
        return inoculated * self.lost.in_spawn_run

    @line("Other bag: bags lost more, cost a year", unit="money/year")
    def losses_cost(self) -> Expr:
        """At both steps."""
        return self.steaming_cost + self.spawn_run_cost

    @line("Other bag leaves a year", unit="money/year", source=PARTIAL_BUDGET)
    def leaves(self) -> Expr:
        """Below zero: what is saved is lost again."""
        return self.saved - self.losses_cost

    @line("Bag of now: price for each that reaches fruiting", unit="money/bag_live", zero_is_none=True)
    def price_per_live(self) -> Expr:
        """The empty bag alone, lost ones carried by the others."""
        return ratio(self.bag.bag_price, self.crop.live_per_filled)

    @line("Other bag: left after steaming, of those filled", unit="share")
    def left_after_steaming(self) -> Expr:
        """With its loss on top."""
        return maximum(joined(self.crop.inoculated_per_filled, "share") - self.more_at_steaming, 0)

    @line("Other bag: left after the spawn run, of those inoculated", unit="share")
    def left_after_spawn_run(self) -> Expr:
        """With its loss on top."""
        return maximum(joined(self.crop.live_per_inoculated, "share") - self.more_in_spawn_run, 0)

    @line("Other bag: price for each that reaches fruiting", unit="money/bag_live", zero_is_none=True)
    def other_per_live(self) -> Expr:
        """The empty bag alone, lost ones carried by the others."""
        return ratio(self.price, self.left_in_all)

    @line("Other bag: that reach fruiting, of those filled", unit="bag_live/bag_filled")
    def left_in_all(self) -> Expr:
        """After both losses."""
        return joined(self.left_after_steaming * self.left_after_spawn_run, "bag_live/bag_filled")

    @line(
        "Points of loss in the spawn run at which it is all the same",
        unit="share",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def loss_to_turn(self) -> Expr:
        """The other bag may lose so many more there before it costs more than it saves."""
        return ratio(self.saved - self.steaming_cost, self.all_lost_in_spawn_run)

    @line("Other bag: too close to call", unit="flag")
    def close(self) -> Expr:
        """Within what the inputs are known to."""
        return absolute(self.leaves) <= self.larger * INPUTS_KNOWN_TO

    @line("Other bag: the larger of what is saved and lost a year", unit="money/year")
    def larger(self) -> Expr:
        """The difference is judged against it."""
        return maximum(absolute(self.saved), absolute(self.losses_cost))

    @line("Other bag: does it pay", unit="1")
    def verdict(self) -> Expr:
        """By bags and losses alone."""
        return sentence(
            1 + (1 - self.close) * (1 + (self.leaves > 0)),
            "Too close to call: try a case of it first.",
            "Stay with your bag: the other one loses more than it saves.",
            "The other bag pays, if it loses no more than this: try a case of it first.",
        )

    @line("Cheaper bags, in a sentence", unit="1")
    def told(self) -> Expr:
        """What is saved and what is lost again."""
        return say(
            "The other bag saves ",
            figure(self.saved, -2, named=False),
            " a year and loses bags worth ",
            figure(self.losses_cost, -2, named=False),
            ". ",
            self.verdict,
        )
