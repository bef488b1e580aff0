"""Where the answer turns between buying and making spawn: bags a week, lab hours, extra loss; and what is at risk."""

from __future__ import annotations

from typing import Final

from farmbook.calc.loss import break_even_loss_gap
from farmbook.calc.tolerance import is_rounding
from farmbook.calc.worth import break_even_quantity
from farmbook.expr.functions import any_of, at, maximum, ratio, running_sum, sentence, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import EXTRA_LOSS, GENERATION
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.crop import Crop
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, FARM_MANAGEMENT
from farmbook.units import unit

__all__ = ["MakeOrBuyTurn"]

HALF_A_POINT: Final = Constant(
    0.005,
    "half_a_point",
    label="Step of the table of extra loss",
    unit=unit("share"),
    source=ARITHMETIC.key,
)


class MakeOrBuyTurn(Section):
    """How far the figures may move before the other way is cheaper."""

    title = "Spawn: where the answer turns, and what is at risk"
    table = "make_or_buy"

    farm = uses(Farm)
    crop = uses(Crop)
    spawn = uses(Spawn)
    way = uses(OwnSpawnWay)
    chain = uses(OwnSpawn)
    work = uses(OwnSpawnWork)
    choice = uses(MakeOrBuy)

    bad_made = number(
        "Spawn made: bad batches you expect in a year",
        unit="1/year",
        usual=(0.1, 3),
        hard=(0, 50),
        default=0.5,
        how="Batches of own spawn that spoil most bags they go into: once in two years is 0.5.",
        source=COMMON_PRACTICE,
    )
    bad_bought = number(
        "Spawn bought: bad deliveries you expect in a year",
        unit="1/year",
        usual=(0.02, 1),
        hard=(0, 50),
        default=0.1,
        how="Deliveries that look good and spoil most bags they go into: once in ten years is 0.1.",
        source=COMMON_PRACTICE,
    )
    delivery_weeks = number(
        "Spawn bought: weeks a delivery lasts",
        unit="week",
        usual=(1, 4),
        hard=(0.1, 26),
        default=2,
        how="From one delivery to the next.",
        source=COMMON_PRACTICE,
    )

    # Bags a week

    @line("Spawn made: work that grows with the bags, cost a week", unit="money/week")
    def growing_work(self) -> Expr:
        """The share of the hours that would be less for fewer bags."""
        return self.work.work_cost * self.work.growing_share_of_hours

    @line("Spawn made: materials, cooking and that work, for each bag", unit="money/bag_inoculated", zero_is_none=True)
    def goods_per_bag(self) -> Expr:
        """At the present number of bags; whole plates and bags make it move a little with them."""
        return ratio(self.work.goods_cost + self.growing_work, self.spawn.bags_inoculated_a_week)

    @line("Spawn made: extra loss and places taken, for each bag", unit="money/bag_inoculated")
    def losses_per_bag(self) -> Expr:
        """Both grow with the bags too."""
        return ratio(self.choice.extra_loss_cost + self.choice.displaced, self.choice.bags_a_year)

    @line("Spawn made: what each bag adds", unit="money/bag_inoculated")
    def per_bag(self) -> Expr:
        """To set beside the cost of the bought spawn in a bag."""
        return self.goods_per_bag + self.losses_per_bag

    @line("Spawn made: work that is the same for few bags as for many, cost a year", unit="money/year")
    def standing_work(self) -> Expr:
        """Setting up for batches, and what the lab takes each week in any case."""
        return (self.work.work_cost - self.growing_work) * self.farm.weeks_worked

    @line("Spawn made: cost that is the same for few bags as for many, a year", unit="money/year")
    def fixed(self) -> Expr:
        """Yearly bills, upkeep and owning of the lab, and the hours that do not grow with the bags."""
        return self.work.yearly_bills + self.choice.upkeep + self.choice.owning + self.standing_work

    @line(
        "Making pays from so many bags inoculated a year",
        unit="bag_inoculated/year",
        source=FARM_MANAGEMENT,
        zero_is_none=True,
    )
    def pays_from_a_year(self) -> Expr:
        """Fixed cost over what each bag saves. None where no bag saves anything."""
        return break_even_quantity(self.fixed, self.spawn.cost_per_bag_inoculated, self.per_bag)

    @line(
        "Making pays from so many bags filled a week", unit="bag_filled/week", source=FARM_MANAGEMENT, zero_is_none=True
    )
    def pays_from(self) -> Expr:
        """In the weeks worked. Buy first; look at this again as the farm grows."""
        inoculated = self.farm.weeks_worked * self.crop.inoculated_per_filled
        return ratio(self.pays_from_a_year, inoculated)

    @line("Does making pay at some number of bags?", unit="1")
    def pays_in_words(self) -> Expr:
        """The number of bags stands above."""
        saves = self.per_bag < self.spawn.cost_per_bag_inoculated
        return sentence(
            1 + saves + saves * (self.farm.bags_filled_a_week >= self.pays_from),
            "Making pays at no number of bags: each bag costs more that way.",
            "You fill fewer bags than it takes for making to pay.",
            "You fill more bags than it takes for making to pay.",
        )

    # Lab hours against extra loss

    @line("Spawn made: cost a year without its work and without extra loss", unit="money/year")
    def without_work_and_loss(self) -> Expr:
        """What hours and losses come on top of."""
        return self.choice.made - self.choice.extra_loss_cost - self.work.work_cost * self.farm.weeks_worked

    @line("Step in the table of extra loss", unit="count", axes=(EXTRA_LOSS,))
    def loss_step(self) -> Expr:
        """1 for no extra loss."""
        return running_sum(1, EXTRA_LOSS)

    @line("Extra bags lost, share of bags inoculated", unit="share", axes=(EXTRA_LOSS,))
    def loss(self) -> Expr:
        """Half a point more in each row."""
        return (self.loss_step - 1) * HALF_A_POINT

    @line("That extra loss, cost a year", unit="money/year", axes=(EXTRA_LOSS,))
    def loss_cost(self) -> Expr:
        """Bags lost, times what one costs."""
        return self.choice.bags_a_year * self.loss * self.choice.lost_bag_cost

    @line("Left for lab work at that loss, a year", unit="money/year", axes=(EXTRA_LOSS,))
    def left_for_work(self) -> Expr:
        """What buying costs, less what making costs without its hours. Below zero: not even free hours would do."""
        return self.choice.bought - self.without_work_and_loss - self.loss_cost

    @line(
        "Lab hours a year at which both ways cost the same",
        unit="person_hour/year",
        axes=(EXTRA_LOSS,),
        zero_is_none=True,
    )
    def turning_hours_a_year(self) -> Expr:
        """What is left, over the cost of an hour."""
        return ratio(maximum(self.left_for_work, 0), self.farm.labour_rate)

    @line(
        "Lab hours a week at which both ways cost the same",
        unit="person_hour/week",
        axes=(EXTRA_LOSS,),
        zero_is_none=True,
    )
    def turning_hours(self) -> Expr:
        """Fewer hours than this: making is cheaper. None where making is dearer even if the hours were free."""
        return ratio(self.turning_hours_a_year, self.farm.weeks_worked)

    @line("Making saves a year at that loss and your hours", unit="money/year", axes=(EXTRA_LOSS,))
    def advantage_at_loss(self) -> Expr:
        """Below zero: buying is cheaper by so much."""
        return self.choice.advantage_without_loss - self.loss_cost

    @line("Extra loss at which both ways cost the same", unit="share", source=ARITHMETIC, zero_is_none=True)
    def turning_loss(self) -> Expr:
        """With your lab hours as they are. None where buying is cheaper even without extra loss."""
        worth = maximum(self.choice.advantage_without_loss, 0)
        return break_even_loss_gap(worth, self.choice.bags_a_year, self.choice.lost_bag_cost)

    # Risk

    @line("Spawn made: last step used, counted back", unit="count")
    def last_step(self) -> Expr:
        """The row of what goes into the bags: 1 sawdust spawn, 2 second grain, 3 grain."""
        no_sawdust = 1 - self.way.has_sawdust
        return 1 + no_sawdust + no_sawdust * (1 - self.way.has_second_grain)

    @line("Spawn made: bags that one bad batch reaches", unit="bag_inoculated")
    def reached_made(self) -> Expr:
        """All bags inoculated from one batch of what goes into them."""
        return self.spawn.bags_inoculated_a_week * at(self.chain.weeks_used, GENERATION, self.last_step)

    @line("Spawn bought: bags that one bad delivery reaches", unit="bag_inoculated")
    def reached_bought(self) -> Expr:
        """All bags inoculated until the next delivery."""
        return self.spawn.bags_inoculated_a_week * self.delivery_weeks

    @line("A bag ruined together with the others of its week costs", unit="money/bag_inoculated", source=ARITHMETIC)
    def ruined_bag_cost(self) -> Expr:
        """What was spent on it, taking it out, and what it would have left.

        A bag lost among good ones may find another in its place; a whole week without crop comes back nowhere.
        """
        spent = self.choice.lost_bag_cost - self.choice.margin_lost
        return spent + self.choice.bag_leaves

    @line("Spawn made: lost in one bad batch", unit="money")
    def risk_made(self) -> Expr:
        """If all these bags are lost: what they cost, and the crop of those weeks. Could you bear it?"""
        return self.reached_made * self.ruined_bag_cost

    @line("Spawn bought: lost in one bad delivery", unit="money")
    def risk_bought(self) -> Expr:
        """If all these bags are lost, and the crop with them. Could you bear it? Few sellers pay for more than the spawn."""
        return self.reached_bought * self.ruined_bag_cost

    @line("Spawn made: bad batches, on average a year", unit="money/year")
    def risk_made_a_year(self) -> Expr:
        """Not in the comparison above: the extra loss is an average that has such batches in it."""
        return self.risk_made * self.bad_made

    @line("Spawn bought: bad deliveries, on average a year", unit="money/year")
    def risk_bought_a_year(self) -> Expr:
        """Not in the comparison above."""
        return self.risk_bought * self.bad_bought

    @line("A week without spawn costs", unit="money/week")
    def week_without(self) -> Expr:
        """What the bags of that week would have left, whichever way the spawn fails to come; what holds you back is
        no matter, as nothing fills a whole week again.
        """
        return self.spawn.bags_inoculated_a_week * self.choice.bag_leaves

    @line("Spawn made: cost a year, by its fixed part and its part for each bag", unit="money/year")
    def made_again(self) -> Expr:
        """Must agree with the cost item by item; that cost itself where no bag is inoculated to have a part of it."""
        bags = self.choice.bags_a_year
        return where(any_of(bags > 0, bags < 0), self.fixed + self.per_bag * bags, self.choice.made)

    @check(
        "Cost of making spawn adds up",
        kind="error",
        says="The cost of making spawn is not its fixed part and its part for each bag: a formula was changed.",
    )
    def made_adds_up(self) -> Expr:
        """Worked out twice: item by item, and as a fixed sum and so much for each bag."""
        return is_rounding(self.made_again - self.choice.made, self.fixed, self.choice.made)
