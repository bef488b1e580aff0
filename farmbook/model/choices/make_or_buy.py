"""Buying spawn against making it: both ways for a year at the farm's own volume, and a verdict in words."""

from __future__ import annotations

from typing import Final

from farmbook.calc.loss import cost_of_a_lost_bag, margin_lost
from farmbook.calc.tolerance import is_rounding
from farmbook.calc.worth import (
    LONGEST_LIFE,
    ONE_YEAR,
    annuity_factor,
    capital_recovery,
    discount,
    equal_share,
    equivalent_annual_cost,
)
from farmbook.expr.functions import absolute, joined, maximum, minimum, named, negation, ratio, sentence
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import (
    ARITHMETIC,
    COMMON_PRACTICE,
    EQUIVALENT_ANNUAL_COST,
    NET_PRESENT_VALUE,
    PARTIAL_BUDGET,
)
from farmbook.units import unit

__all__ = ["AFTER_LAB", "LAB", "STEAMING", "MakeOrBuy"]

STEAMING: Final = Option("steamer", "the steamer")
LAB: Final = Option("lab", "the lab or the spawn run room")
AFTER_LAB: Final = Option("after the lab", "fruiting, hands or sales")

TOO_CLOSE: Final = Constant(
    0.10,
    "too_close_to_call",
    label="Difference between two choices below which it is too close to call",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="Of the dearer one; prices, hours and losses are seldom known better than this.",
)


class MakeOrBuy(Section):
    """Only what differs between the two ways is counted. Before income tax, in today's money."""

    title = "Spawn: buying or making"

    farm = uses(Farm)
    spawn = uses(Spawn)
    source = uses(SpawnSource)
    crop = uses(Crop)
    chain = uses(OwnSpawn)
    work = uses(OwnSpawnWork)
    growing = uses(GrowingCost)
    lost = uses(LostBags)
    supply = uses(SpawnSupply)

    lab_price = number(
        "Spawn lab: cost, beyond what inoculating needs anyway",
        unit="money",
        usual=(8000, 90000),
        hard=(0, 1e7),
        default=24000,
        how="Cooker, second hood, cold store, shelves, room. Leave out what you would need with bought spawn too.",
        source=COMMON_PRACTICE,
        note=(
            "From memory; the same number in every currency. For a room with a cooker of 20 bags: a smaller one costs "
            "less, and takes more runs."
        ),
    )
    trials = number(
        "Spawn lab: cost of trials until it works",
        unit="money",
        usual=(500, 10000),
        hard=(0, 1e7),
        default=1500,
        how="Materials, hours and bags you expect to lose before you can rely on your own spawn.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
    )
    life = number(
        "Spawn lab: years it lasts",
        unit="year",
        usual=(5, 10),
        hard=(1, 10),
        default=10,
        how="Whole years, at most 10, until most of it has to be bought again.",
        source=COMMON_PRACTICE,
    )
    resale = number(
        "Spawn lab: what it sells for at the end",
        unit="money",
        usual=(0, 20000),
        hard=(0, 1e7),
        default=2400,
        how="What used gear of that age brings, less the cost of selling it; building work brings nothing.",
        source=COMMON_PRACTICE,
    )
    wanted_return = number(
        "Spawn lab: yearly return you want",
        unit="share",
        usual=(0.04, 0.15),
        hard=(0, 1),
        default=0.08,
        how="What the money would cost at the bank, or earn elsewhere, and something for the risk.",
        source=COMMON_PRACTICE,
    )
    upkeep = number(
        "Spawn lab: upkeep a year",
        unit="money/year",
        usual=(200, 4000),
        hard=(0, 1e6),
        default=960,
        how="Repairs, filters and insurance of the lab; about 4% of what it cost.",
        source=COMMON_PRACTICE,
    )
    limit = choice(
        "Spawn: what holds the farm back",
        STEAMING,
        LAB,
        AFTER_LAB,
        default=AFTER_LAB,
        how="Where work piles up. Settles whether a place lost to spawn, or to a lost bag, could have earned money.",
        source=COMMON_PRACTICE,
    )
    bag_leaves = number(
        "Spawn: what one bag more would leave, all its own costs paid",
        unit="money/bag_inoculated",
        usual=(0, 10),
        hard=(0, 1000),
        default=3,
        how="Sales of a bag less what it costs to grow, pick, pack and sell; yearly bills left out.",
        source=COMMON_PRACTICE,
        note="The same number in every currency. A single bag or place counts only if it could have earned it; a week, always.",
    )

    # A lost bag

    @line("Spawn: spent on a bag by the end of the spawn run, bought spawn in it", unit="money/bag_inoculated")
    def spent_on_bag(self) -> Expr:
        """Taken with bought spawn both ways, so that the comparison does not move with your choice."""
        before = joined(self.growing.cost_through_steaming, "money/bag_inoculated") + self.growing.spawn_run_added
        return before + self.spawn.cost_per_bag_inoculated + self.spawn.inoculation_cost

    @line("Spawn: left from a lost bag, if it had fruited", unit="money/bag_inoculated")
    def margin_lost(self) -> Expr:
        """Nothing where a bag filled later can take its place before the step that holds you back."""
        return margin_lost(self.bag_leaves, negation(self.chose(self.limit, AFTER_LAB)))

    @line("Spawn: a bag lost in the spawn run costs", unit="money/bag_inoculated", source=ARITHMETIC)
    def lost_bag_cost(self) -> Expr:
        """What was spent on it, taking it out, and what its place would have earned."""
        return cost_of_a_lost_bag(self.spent_on_bag, self.growing.culling_cost, self.margin_lost)

    # A year of each

    @line("Spawn: bags inoculated a year", unit="bag_inoculated/year")
    def bags_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.spawn.bags_inoculated_a_week * self.farm.weeks_worked

    @line("Spawn bought: cost a year", unit="money/year")
    def bought(self) -> Expr:
        """Landed, what arrives bad inside. There is nothing to invest, so this is also what it costs a year to have."""
        return self.bags_a_year * self.spawn.cost_per_bag_inoculated

    @line("Spawn made: extra bags lost a year", unit="bag_inoculated/year")
    def extra_bags_lost(self) -> Expr:
        """Bags that would have lived on bought spawn."""
        return self.bags_a_year * self.source.extra_loss

    @line("Spawn made: extra bags lost, cost a year", unit="money/year")
    def extra_loss_cost(self) -> Expr:
        """A cost of making, though no invoice shows it."""
        return self.extra_bags_lost * self.lost_bag_cost

    @line("Spawn made: bags inoculated that its places would give, a year", unit="bag_inoculated/year")
    def bags_displaced(self) -> Expr:
        """A place holds a bag filled, and some of those are lost at steaming."""
        places = joined(self.chain.steamed, "bag_filled/week") * self.farm.weeks_worked
        return places * self.crop.inoculated_per_filled

    @line("Spawn made: places in the steamer taken, cost a year", unit="money/year")
    def displaced(self) -> Expr:
        """What the bags would have left that find no place. Nothing unless the steamer is what holds you back."""
        return self.bags_displaced * self.bag_leaves * self.chose(self.limit, STEAMING)

    @line("Spawn made: running cost a year, upkeep inside", unit="money/year")
    def running(self) -> Expr:
        """Materials, cooking, work, yearly bills and upkeep of the lab."""
        return self.work.cost_a_year + self.upkeep

    @line("Spawn made: all but the lab, cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def made_without_lab(self) -> Expr:
        """What goes out or does not come in, year after year."""
        return self.running + self.extra_loss_cost + self.displaced

    @line("Spawn lab: to be laid out at the start", unit="money")
    def capital(self) -> Expr:
        """The lab and the trials."""
        return self.lab_price + self.trials

    @line("Spawn lab: worth today of 1 at the end of its life", unit="1", source=NET_PRESENT_VALUE)
    def discount_at_end(self) -> Expr:
        """At the yearly return you want."""
        return discount(joined(self.wanted_return, "1/year"), minimum(self.life, named(LONGEST_LIFE)), ONE_YEAR)

    @line("Spawn lab: share of its cost each year, without interest", unit="1/year")
    def equal_share(self) -> Expr:
        """Used where you want no return."""
        return equal_share(self.life)

    @line("Spawn lab: yearly payment for each 1 laid out", unit="1/year", source=EQUIVALENT_ANNUAL_COST)
    def owning_factor(self) -> Expr:
        """Pays it off over its life with the return you want."""
        return annuity_factor(joined(self.wanted_return, "1/year"), self.discount_at_end, self.equal_share)

    @line("Spawn lab: cost of owning it a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def owning(self) -> Expr:
        """Its fall in value paid off with the return you want, and that return on what it sells for at the end."""
        return capital_recovery(self.capital, self.resale, self.owning_factor, joined(self.wanted_return, "1/year"))

    @line("Spawn made: cost a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def made(self) -> Expr:
        """Owning the lab and everything else: to set beside the cost of buying."""
        return equivalent_annual_cost(self.owning, self.made_without_lab)

    @line("Making saves a year, the lab paid for", unit="money/year", source=PARTIAL_BUDGET)
    def advantage(self) -> Expr:
        """Below zero: buying is cheaper by so much."""
        return self.bought - self.made

    @line("Making would save a year without any extra loss", unit="money/year")
    def advantage_without_loss(self) -> Expr:
        """If your own spawn were as safe as bought spawn."""
        return self.advantage + self.extra_loss_cost

    @line("Making saves a year, before the lab is paid for", unit="money/year")
    def saving(self) -> Expr:
        """This has to pay for the lab."""
        return self.bought - self.made_without_lab

    # The verdict

    @line("Spawn: cost a year of the dearer way", unit="money/year")
    def dearer(self) -> Expr:
        """The measure of what is a small difference."""
        return maximum(self.bought, self.made)

    @line("Spawn: difference, share of the dearer way", unit="share")
    def gap(self) -> Expr:
        """Small differences are lost in what is not known well."""
        return ratio(absolute(self.advantage), self.dearer)

    @line("Spawn: too close to call", unit="flag")
    def too_close(self) -> Expr:
        """1 where the difference is smaller than such figures can be trusted."""
        return self.gap < TOO_CLOSE

    @line("Spawn: buy or make?", unit="1")
    def verdict(self) -> Expr:
        """Money only: the list on the sheet MakeOrBuy says what money does not catch."""
        making = (self.advantage > 0) * (1 - self.too_close)
        return sentence(
            1 + making + self.too_close + self.too_close,
            "Buy: making it would cost clearly more.",
            "Make: buying costs clearly more.",
            "Too close to call: let something other than money decide.",
        )

    @line("Buy spawn or make it", unit="1")
    def told(self) -> Expr:
        """By money alone, the lab paid for; what money does not catch stands on the sheet."""
        return say(
            "Spawn costs about ",
            figure(self.bought, -2),
            " bought, ",
            figure(self.made, -2, named=False),
            " made with its hours paid. ",
            self.verdict,
        )

    @line("Spawn: spent on that bag, by the sheet Cost", unit="money/bag_inoculated")
    def spent_again(self) -> Expr:
        """What a lost bag costs there, less taking it out, with bought spawn in place of the spawn you chose."""
        spent = self.lost.cost_in_spawn_run - self.growing.culling_cost
        return spent - self.supply.cost_per_bag_inoculated + self.spawn.cost_per_bag_inoculated

    @check(
        "A lost bag costs the same on the sheets MakeOrBuy and Cost",
        kind="error",
        says="A bag lost in the spawn run costs one thing on the sheet MakeOrBuy and another on the sheet Cost.",
    )
    def lost_bag_agrees(self) -> Expr:
        """With bought spawn in both it is one and the same bag, added up in two ways."""
        return is_rounding(self.spent_again - self.spent_on_bag, self.spent_on_bag, self.lost.cost_in_spawn_run)
