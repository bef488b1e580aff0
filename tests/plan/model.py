"""A small farm in the plan's own calendar, for tests alone: picked by flush and week, sold by month, money and loans."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import at, joined, maximum, minimum, previous, running_sum, starting, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import FLUSH, MONTH, PLAN_YEAR, WEEK, sizes_of_plan
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.calendar.plan_start import PlanStart
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.sections.declare import line, number, shock, uses
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from tests.language.books import Worked, work_out
from tests.language.time_model import Title
from tests.model.helpers import Given

__all__ = ["BUYER", "LOAN", "Money", "Picked", "sizes", "worked"]

BUYER: Final = Axis("buyer", "buyer", "across", 22, ordered=True, members=("market", "kitchens", "wholesale"))
LOAN: Final = Axis("loan", "loan", "down", 23, ordered=True, members=("cold_room", "van"))


class Picked(Section):
    """Week by week, and by month."""

    weeks = uses(PlanWeeks)
    months = uses(PlanMonths)
    rate = number(
        "Picked a week in January", unit="kg_picked", axes=(FLUSH,), usual=(0, 90), default=(14, 6, 3, 1), how="Weigh."
    )
    places = number("Places in the fruiting rooms", unit="count", usual=(1, 9000), default=1600, how="Count.")

    a_month = number("Places taken in January", unit="count", usual=(1, 900), default=120, how="Count.")

    @line("Picked by flush", unit="kg_picked", axes=(FLUSH, WEEK))
    def by_flush(self) -> Expr:
        """More towards the end of a year."""
        return self.rate * self.weeks.in_plan * self.weeks.month_of_year

    @line("Picked in the week", unit="kg_picked", axes=(WEEK,))
    def in_all(self) -> Expr:
        """All flushes."""
        return total(self.by_flush, FLUSH)

    @line("Picked so far", unit="kg_picked", axes=(WEEK,))
    def so_far(self) -> Expr:
        """From the first row on."""
        return running_sum(self.in_all, WEEK)

    @line("Places taken", unit="count", axes=(WEEK,))
    def taken(self) -> Expr:
        """More towards the end of a year."""
        return self.weeks.in_plan * self.a_month * self.weeks.month_of_year

    @line("Places had", unit="count", axes=(WEEK,))
    def had(self) -> Expr:
        """The same all the time."""
        return self.places * self.weeks.in_plan

    @line("Picked to the end of the month", unit="kg_picked", axes=(MONTH,))
    def to_date(self) -> Expr:
        """By the days that a month has of its weeks."""
        return self.weeks.to_date(self.in_all)

    @line("Picked in the month", unit="kg_picked", axes=(MONTH,))
    def month(self) -> Expr:
        """What is picked by its end, less what was before it."""
        return self.to_date - previous(self.to_date, MONTH)


class Money(Section):
    """Month by month."""

    picked = uses(Picked)
    months = uses(PlanMonths)
    years = uses(PlanYears)
    weeks = uses(PlanWeeks)
    share = number("Share of the crop", unit="share", axes=(BUYER,), usual=(0, 1), default=(0.2, 0.3, 0.5), how="Ask.")
    price = number("Price", unit="money/kg_picked", axes=(BUYER,), usual=(2, 20), default=(14, 11, 7), how="Till.")
    bills = number("Bills of a month", unit="money", usual=(0, 9000), default=4200, how="Bank.")
    opening = number("In the bank at the start", unit="money", usual=(-9000, 90000), default=5200, how="Bank.")
    highest = number("More than ever in the bank", unit="money", usual=(0, 9000000), default=9000000, how="Choose.")
    borrowed = number("Borrowed", unit="money", axes=(LOAN,), usual=(0, 90000), default=(20000, 9000), how="Bank.")
    repaid = number("Repaid a month", unit="money", axes=(LOAN,), usual=(0, 900), default=(480, 310), how="Bank.")

    fall = number("Prices fall by", unit="share", usual=(0, 0.5), hard=(0, 1), default=0.1, how="Choose.")

    @shock("Prices as the case has them", unit="1", neutral=1)
    def price_kept(self) -> None:
        """All buyers pay less."""

    @line("Handed over by buyer", unit="kg_picked", axes=(BUYER, WEEK))
    def handed_over(self) -> Expr:
        """By the share of each."""
        return self.picked.in_all * self.share

    @line("Sales by buyer", unit="money", axes=(BUYER, MONTH))
    def sales(self) -> Expr:
        """At the price of each."""
        return self.picked.month * self.share * self.price * self.price_kept

    @line("Sales in all", unit="money", axes=(MONTH,))
    def sales_in_all(self) -> Expr:
        """All buyers."""
        return total(self.sales, BUYER)

    @line("Bills paid", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """The same each month; an outflow is negative here."""
        return -self.bills * (self.months.number > 0)

    @line("Owed on each loan", unit="money", axes=(LOAN, MONTH))
    def owed(self) -> Expr:
        """Until nothing is owed."""
        return starting(self.borrowed, maximum(previous(self.owed, MONTH) - self.repaid, 0))

    @line("Change in the month", unit="money", axes=(MONTH,))
    def change(self) -> Expr:
        """What comes in and goes out."""
        return self.sales_in_all + self.paid

    @line("In the bank at the end of the month", unit="money", axes=(MONTH,))
    def bank(self) -> Expr:
        """With what was there before."""
        return starting(self.opening, previous(self.bank, MONTH) + self.change)

    @line("Lowest so far", unit="money", axes=(MONTH,))
    def lowest_so_far(self) -> Expr:
        """At the end of a month."""
        return starting(self.opening + self.highest, minimum(previous(self.lowest_so_far, MONTH), self.bank))

    @line("Lowest of the plan", unit="money")
    def lowest(self) -> Expr:
        """In its lowest month."""
        return at(self.lowest_so_far, MONTH, self.months.many)

    @line("The lowest month alone", unit="money", axes=(MONTH,))
    def lowest_drawn(self) -> Expr:
        """Nothing in the others."""
        return where(self.bank <= self.lowest, self.bank, 0)

    @line("Share of sales left", unit="share", axes=(MONTH,))
    def left(self) -> Expr:
        """After bills."""
        return maximum(joined(self.change, "money") / maximum(self.sales_in_all, self.bills), 0)

    @line("Sales of the year", unit="money", axes=(PLAN_YEAR,))
    def sales_of_year(self) -> Expr:
        """Twelve months."""
        return self.years.of_year(self.sales_in_all)

    @line("In the bank at the end of the year", unit="money", axes=(PLAN_YEAR,))
    def bank_at_year_end(self) -> Expr:
        """In its last month."""
        return self.years.at_end(self.bank)


def sizes(months: int) -> dict[Axis, int]:
    """The sizes of all lists of a plan of so many months."""
    return {**sizes_of_plan(months), FLUSH: 4, BUYER: 3, LOAN: 2}


def worked(months: int, given: Given | None = None, **other_sizes: int) -> Worked:
    """The farm worked out in US units, with a case in which prices fall."""
    model = Model([Title, PlanStart, PlanMonths, PlanWeeks, PlanYears, Picked, Money])
    case = model.case("cheaper", "Prices fall", {Money.price_kept: joined(1 - model.section(Money).fall, "1")})
    changed = {axis: other_sizes.get(axis.name, size) for axis, size in sizes(months).items()}
    return work_out(model, "us", changed, given or {}, further=case.lines)
