"""What a lost bag costs with the crop it would have given, where no other bag can take its place."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO
from farmbook.expr.functions import all_of, any_of, joined, maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.hours import Hours
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.widenings import (
    BenchWidening,
    CoolingWidening,
    FruitingWidening,
    IncubationWidening,
    MixingWidening,
    SteamerWidening,
)
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["CropForgone"]


class CropForgone(Section):
    """A bag lost after the stage that limits has used up its place there. Lost before it, or where hours, cold room or
    customers limit, another bag is filled instead and its crop is not lost.
    """

    title = "Lost bags with their crop"

    crop = uses(Crop)
    lost = uses(LostBags)
    one_more = uses(OneMore)
    hours = uses(Hours)
    limits = uses(Limits)
    mixing = uses(MixingWidening)
    steamer = uses(SteamerWidening)
    cooling = uses(CoolingWidening)
    bench = uses(BenchWidening)
    incubation = uses(IncubationWidening)
    fruiting = uses(FruitingWidening)

    @line("The farm fills what it can", unit="flag")
    def full(self) -> Expr:
        """1 where the bags filled are within a tenth of what the first stage can do; else another bag can be filled."""
        return all_of(self.limits.many > 0, self.limits.spare <= INPUTS_KNOWN_TO)

    @line("Mixing or steamer limits a full farm", unit="flag")
    def until_steaming(self) -> Expr:
        """Then a bag lost at steaming cannot be made good."""
        return all_of(self.full, any_of(self.mixing.limiting > 0, self.steamer.limiting > 0))

    @line("A stage up to incubation limits a full farm", unit="flag")
    def until_incubation(self) -> Expr:
        """Then a bag lost in the spawn run cannot be made good."""
        places = self.cooling.limiting + self.bench.limiting + self.incubation.limiting
        return any_of(self.until_steaming > 0, self.full * places > 0)

    @line("A stage up to fruiting limits a full farm", unit="flag")
    def until_fruiting(self) -> Expr:
        """Then a bag lost before the first pick cannot be made good."""
        return any_of(self.until_incubation > 0, self.full * self.fruiting.limiting > 0)

    @line("One more bag filled leaves, all hours at the price of hired ones", unit="money/bag_filled")
    def leaves(self) -> Expr:
        """As lost bags count them: what was spent on them has every hour at that price."""
        dearer = self.hours.farm.labour_rate - self.hours.hour_in_money
        return self.one_more.bag_leaves - self.hours.growing_with_a_bag * dearer

    @line("One more bag leaves, for each inoculated", unit="money/bag_inoculated")
    def leaves_inoculated(self) -> Expr:
        """The same money over fewer bags."""
        return ratio(self.leaves, self.crop.inoculated_per_filled)

    @line("One more bag leaves, for each moved to fruiting", unit="money/bag_live")
    def leaves_live(self) -> Expr:
        """The same money over fewer bags."""
        return ratio(self.leaves, self.crop.live_per_filled)

    @line("A bag that comes whole out of the steamer is worth", unit="money/bag_inoculated", source=PARTIAL_BUDGET)
    def worth_after_steaming(self) -> Expr:
        """What is spent and what it leaves, carried by the bags that come so far."""
        return ratio(self.leaves + self.lost.cost_at_steaming, self.crop.inoculated_per_filled)

    @line("A bag that lives through the spawn run is worth", unit="money/bag_live", source=PARTIAL_BUDGET)
    def worth_after_spawn_run(self) -> Expr:
        """What is spent and what it leaves, carried by the bags that come so far."""
        return ratio(self.leaves_inoculated + self.lost.cost_in_spawn_run, self.crop.live_per_inoculated)

    @line("A bag that gives its first pick is worth", unit="money/bag_live", source=PARTIAL_BUDGET)
    def worth_at_first_pick(self) -> Expr:
        """What is spent and what it leaves, carried by the bags that come so far."""
        return ratio(self.leaves_live + self.lost.cost_before_first_pick, self.crop.first_pick_per_live)

    @line("A bag lost at steaming: crop forgone", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def forgone_at_steaming(self) -> Expr:
        """What it would have been worth above what was spent; nothing where another is filled instead."""
        worth = joined(self.worth_after_steaming, "money/bag_filled")
        return maximum(worth - self.lost.cost_at_steaming, 0) * self.until_steaming

    @line("A bag lost in the spawn run: crop forgone", unit="money/bag_inoculated", source=PARTIAL_BUDGET)
    def forgone_in_spawn_run(self) -> Expr:
        """What it would have been worth above what was spent; nothing where another is filled instead."""
        worth = joined(self.worth_after_spawn_run, "money/bag_inoculated")
        return maximum(worth - self.lost.cost_in_spawn_run, 0) * self.until_incubation

    @line("A bag lost before the first pick: crop forgone", unit="money/bag_live", source=PARTIAL_BUDGET)
    def forgone_before_first_pick(self) -> Expr:
        """What it would have been worth above what was spent; nothing where another is filled instead."""
        return maximum(self.worth_at_first_pick - self.lost.cost_before_first_pick, 0) * self.until_fruiting

    @line("A bag lost at steaming costs, its crop in it", unit="money/bag_filled", source=ARITHMETIC)
    def at_steaming(self) -> Expr:
        """Spent on it, taking it out, and the crop forgone."""
        return self.lost.cost_at_steaming + self.forgone_at_steaming

    @line("A bag lost in the spawn run costs, its crop in it", unit="money/bag_inoculated", source=ARITHMETIC)
    def in_spawn_run(self) -> Expr:
        """Spent on it, taking it out, and the crop forgone."""
        return self.lost.cost_in_spawn_run + self.forgone_in_spawn_run

    @line("A bag lost before the first pick costs, its crop in it", unit="money/bag_live", source=ARITHMETIC)
    def before_first_pick(self) -> Expr:
        """Spent on it, taking it out, and the crop forgone."""
        return self.lost.cost_before_first_pick + self.forgone_before_first_pick

    @line("Crop forgone with lost bags, a week", unit="money/week")
    def forgone_a_week(self) -> Expr:
        """A bag lost between flushes has given its first pick; what it gives no more is out of the weight picked."""
        early = self.lost.lost_at_steaming * self.forgone_at_steaming
        return early + self.forgone_later

    @line("Crop forgone with bags lost after steaming, a week", unit="money/week")
    def forgone_later(self) -> Expr:
        """In the spawn run, and before the first pick."""
        run = self.lost.lost_in_spawn_run * self.forgone_in_spawn_run
        return run + self.lost.lost_before_first_pick * self.forgone_before_first_pick

    @line("All lost bags, spent on them and crop forgone, a year", unit="money/year", source=ARITHMETIC)
    def bill_a_year(self) -> Expr:
        """What losing none would be worth at most."""
        return self.lost.bill_a_year + self.forgone_a_week * self.lost.farm.weeks_worked

    @line("Lost bags, in a sentence", unit="1")
    def told(self) -> Expr:
        """Whether the crop counts, and what all losses cost."""
        return say(
            either(
                self.until_fruiting,
                "The farm is full: bags lost after the stage that limits cost their crop too; in all ",
                "Another bag can take a lost one's place, so its crop is not lost; in all ",
            ),
            figure(self.bill_a_year, -2, named=False),
            " a year.",
        )
