"""What the first sheet says: the answers of the book in sentences a grower would say."""

from __future__ import annotations

from farmbook.expr.functions import absolute, any_of
from farmbook.expr.nodes import CountWord, Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.steamer_year import CabinetYear, SteamerYear, VesselYear
from farmbook.model.limits.limits import Limits
from farmbook.model.report import Report
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.household import Household
from farmbook.model.year.one_more import OneMore
from farmbook.model.year.year import Year
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["Front"]


class Front(Section):
    """Sentences of the first sheet; every figure in them lives on a sheet of its own."""

    title = "What the farm should know first"

    lost = uses(LostBags)
    cabinet = uses(CabinetYear)
    vessel = uses(VesselYear)
    choice = uses(SteamerChoice)
    year = uses(Year)
    household = uses(Household)
    customers = uses(CustomerYear)
    one_more = uses(OneMore)
    limits = uses(Limits)
    report = uses(Report)

    @line("What a typical year leaves, or that the plan cannot be done", unit="1")
    def answer(self) -> Expr:
        """In a sentence, with how far to trust it."""
        can_be = any_of(self.limits.plan_fits, self.limits.first <= 0)
        return say(either(can_be, self.as_planned, self.too_many))

    @line("What a plan of too many bags would leave", unit="1")
    def too_many(self) -> Expr:
        """Said where the bags planned are more than the farm can take."""
        return say(
            figure(self.year.farm.bags_filled_a_week, 0, named=False),
            " bags a week cannot be done: the farm can take ",
            figure(self.limits.first, 0, named=False),
            " at most. As planned a year would ",
            either(self.year.profit < 0, "lose ", "earn "),
            figure(absolute(self.year.profit), -2, named=False),
            ", and the household fed ",
            figure(absolute(self.household.left_over_a_month), 0),
            either(self.household.left_over < 0, " would be missing; ", " would be left; "),
            figure(self.report.own_share, 0, named=False),
            " of figures are yours.",
        )

    @line("What a typical year leaves, and how far to trust it", unit="1")
    def as_planned(self) -> Expr:
        """Said where the farm can take the bags planned."""
        own = self.report.own_singles
        return say(
            either(self.year.farm.is_new, "Once full, a", "A"),
            either(self.year.profit < 0, " typical year loses ", " typical year earns "),
            figure(absolute(self.year.profit), -2, named=False),
            " with ",
            figure(self.year.farm.bags_filled_a_week, 0),
            either(self.household.other_income > 0, "; with income from elsewhere", ";"),
            " and the household fed, ",
            figure(absolute(self.household.left_over_a_month), 0),
            either(self.household.left_over < 0, " is missing.", " is left."),
            " Of ",
            figure(self.report.all_singles, 0, named=False),
            " figures ",
            figure(self.report.own_share, 0, named=False),
            either(own > self.report.not_own_singles, " are your own.", " are your own: a first idea."),
        )

    @line("Which steamer costs less", unit="1")
    def steamers(self) -> Expr:
        """With owning, upkeep and the bags lost in it. How hard the bags are cooked is not in it, nor room and danger."""
        price_assumed = any_of(self._price_assumed(self.cabinet), self._price_assumed(self.vessel))
        return say(
            "Steaming a good bag: ",
            figure(self.cabinet.cost_per_good_bag, 2, named=False),
            " in the cabinet, ",
            figure(self.vessel.cost_per_good_bag, 2, named=False),
            " in the pressure vessel. ",
            self.choice.verdict,
            either(price_assumed, " One price is the book's: give yours.", ""),
        )

    @line("Who buys, and what one more brings", unit="1")
    def selling(self) -> Expr:
        """Who comes first, what to charge at least, and which market day is worth it, stands on the sheet Customers."""
        return say(
            figure(self.customers.not_worth_going, 0, named=False),
            " of your ",
            figure(self.customers.served, 0, named=False),
            " customers leave less than sending it elsewhere. They pay ",
            figure(self.customers.average_price, 2),
            " on average; one more to sell brings ",
            figure(self.customers.next_one, 2, named=False),
            " and costs ",
            figure(self.one_more.to_fill_in_money, 2, named=False),
            " with its bag.",
        )

    @line("What a lost bag costs", unit="1")
    def lost_bag(self) -> Expr:
        """What was spent on it, and taking it out. The crop it would have given comes on top."""
        return say(
            "A bag lost in the spawn run costs ",
            figure(self.lost.cost_in_spawn_run, 2, named=False),
            ", before the first pick ",
            figure(self.lost.cost_before_first_pick, 2, named=False),
            ". All lost bags take ",
            figure(self.lost.bill_a_week, 0),
            ", ",
            figure(self.lost.share_of_cost, 0, named=False),
            " of what growing costs.",
        )

    def _price_assumed(self, year: SteamerYear) -> Expr:
        """Whether the book filled in what a steamer costs to buy."""
        basis = year.bound[type(year).price].basis
        assert basis is not None
        return CountWord((basis,), "assumed") > 0
