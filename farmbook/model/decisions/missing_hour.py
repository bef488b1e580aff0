"""What an hour more of work brings, beside what it costs hired or as overtime."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO
from farmbook.expr.functions import all_of, maximum, minimum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.labour.hours import Hours
from farmbook.model.limits.widenings import LabourWidening
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["MissingHour"]


class MissingHour(Section):
    """Hire, pay overtime, or fill fewer bags? An hour brings this only as far as nothing else limits."""

    title = "An hour more of work"
    table = "hours"

    hours = uses(Hours)
    labour = uses(LabourWidening)
    crop_forgone = uses(CropForgone)
    one_more = uses(OneMore)
    customers = uses(CustomerYear)

    overtime_extra = number(
        "Overtime, on top of the pay",
        unit="share",
        usual=(0, 1),
        hard=(0, 5),
        default=0.5,
        how="What the law or your contract adds for hours beyond the week; a half in many places.",
        source=COMMON_PRACTICE,
    )

    @line("What a bag gives would bring, with an hour more", unit="money/kg_taken")
    def price(self) -> Expr:
        """While hours are missing, what the last one sold brings: those bags are in the plan. Else what the next would bring."""
        return where(self.hours.enough, self.customers.next_one, self.customers.last_one)

    @line("A bag leaves, with an hour more", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def bag_leaves(self) -> Expr:
        """What one more bag leaves, with its crop at that price."""
        dearer = self.price - self.customers.next_one
        return self.one_more.bag_leaves + dearer * self.one_more.crop.taken_per_filled

    @line("An hour more of work brings, before it is paid", unit="money/person_hour", source=PARTIAL_BUDGET)
    def brings(self) -> Expr:
        """What the bags leave that it makes, with what their hours were counted at."""
        return ratio(self.bag_leaves, self.hours.growing_with_a_bag) + self.hours.hour_in_money

    @line("An hour of overtime costs", unit="money/person_hour")
    def overtime(self) -> Expr:
        """With payroll tax and insurance."""
        return self.hours.farm.labour_rate * (1 + self.overtime_extra)

    @line("Hours missing that grow with the bags, a week", unit="person_hour/week")
    def missing(self) -> Expr:
        """More than these cannot be saved by filling fewer bags."""
        growing = self.hours.growing_with_a_bag * self.hours.farm.bags_filled_a_week
        return minimum(self.hours.missing, maximum(growing, 0))

    @line("Hours missing cost a year", unit="money/year", source=PARTIAL_BUDGET)
    def missing_cost(self) -> Expr:
        """If bags stay unfilled for want of them. Nothing where hired hours are worked out by task: none are missing."""
        return self.missing * self.hours.farm.weeks_worked * maximum(self.brings, 0)

    @line("An hour more, in a sentence", unit="1")
    def told(self) -> Expr:
        """Hire or not."""
        return say(
            "An hour more brings ",
            figure(self.brings, 2, named=False),
            " before it is paid; hired it costs ",
            figure(self.hours.farm.labour_rate, 2, named=False),
            ", as overtime ",
            figure(self.overtime, 2, named=False),
            either(self.to_spare, ". You have hours to spare: fill more bags with them first.", self.verdict),
        )

    @line("An hour more: does it pay", unit="1")
    def verdict(self) -> Expr:
        """Where no hours are to spare."""
        return say(either(self.limited, ". Something else limits, so now it would bring nothing.", self.hire))

    @line("An hour more: hire or not", unit="1")
    def hire(self) -> Expr:
        """Where an hour more makes bags."""
        return say(
            either(self.brings > self.hours.farm.labour_rate, ": hiring pays", ": hiring does not pay"),
            either(self.brings > self.overtime, ", overtime too.", ", overtime does not."),
        )

    @line("Another stage limits a full farm", unit="flag")
    def limited(self) -> Expr:
        """Then more hours make no more bags."""
        return all_of(self.crop_forgone.full, self.labour.limiting <= 0)

    @line("Hours are to spare", unit="flag")
    def to_spare(self) -> Expr:
        """More are paid or worked than the tasks take."""
        return self.hours.not_explained > self.hours.by_the_hour * INPUTS_KNOWN_TO
