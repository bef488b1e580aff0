"""Ten cases in which things go badly: the plan and a typical year once more with some shocks that are not neutral."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from typing import Final

from farmbook.expr.functions import joined, maximum, named, ratio
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.hours import Hours
from farmbook.model.months.month_bills import MonthBills
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.months.month_sales import MonthSales
from farmbook.model.months.month_sales_tax import MonthSalesTax
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.months.month_supplies import MonthSupplies
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.place.farm_plan import Farm
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.selling.customers import Customers
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.statements.bags_value import BagsValue
from farmbook.model.statements.coverage import Coverage
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.spawn_stock import SpawnStock
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.model.stress.best_customer import BestCustomer
from farmbook.model.stress.cover_wanted import CoverWanted
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.model.year.household import Household
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import LineOf, NumberInput, line, uses
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = [
    "CASES",
    "BadCase",
    "BadYear",
    "CostsRise",
    "CustomerLost",
    "LateOpening",
    "LatePayers",
    "LessPicked",
    "MoreLost",
    "PlantStops",
    "PricesFall",
    "RatesRise",
]

Shocked = Mapping[LineOf | NumberInput, Expr]

QUARTERS: Final = Constant(
    4, "quarters_of_a_year", label="Quarters of a year", unit=unit("1/year"), source=ARITHMETIC.key
)


class BadCase(Alternative):
    """What was owed and due before the plan stays; bags in process keep what they have cost."""

    wanted = (
        MonthCash.lowest,
        MonthCash.lowest_month,
        MonthCash.peak,
        MonthCash.most_missing,
        MonthCash.months_below,
        MonthCash.last_below,
        Coverage.coverage_ramp,
        Coverage.coverage_full,
        Coverage.typical_coverage,
        Coverage.typical_before,
        Household.left_over,
    )

    sizes = uses(StressSizes)
    cover = uses(CoverWanted)
    months = uses(PlanMonths)
    sales = uses(MonthSales)
    sales_tax = uses(MonthSalesTax)
    supplies = uses(MonthSupplies)
    hours = uses(Hours)

    @abstractmethod
    def shocked(self) -> Shocked:
        """The shocks that are not neutral."""

    def changes(self) -> Shocked:
        """Those; what the plan starts with is past, hands are paid and sales tax moves as planned."""
        return {
            MonthSales.typical_month: self.sales.typical_month,
            MonthSales.waiting: self.sales.waiting,
            MonthSales.still_waiting: self.sales.still_waiting,
            MonthSupplies.typical: self.supplies.typical,
            MonthSalesTax.net: self.sales_tax.net,
            Hours.hired: self.hours.hired,
            **self.shocked(),
        }

    @line("Lowest cash at the end of a month: {}", unit="money")
    def lowest(self) -> Expr:
        """With the credit line."""
        return self.of(MonthCash.lowest)

    @line("Month of the lowest cash: {}", unit="count")
    def lowest_month(self) -> Expr:
        """The first, if there are several."""
        return self.of(MonthCash.lowest_month)

    @line("Most owed on the credit line: {}", unit="money")
    def peak(self) -> Expr:
        """In the whole plan."""
        return self.of(MonthCash.peak)

    @line("Most cash missing beyond the credit line: {}", unit="money")
    def missing(self) -> Expr:
        """Below the least cash to keep."""
        return self.of(MonthCash.most_missing)

    @line("Months with less than the least cash to keep: {}", unit="count")
    def below(self) -> Expr:
        """At their ends."""
        return self.of(MonthCash.months_below)

    @line("Coverage of the first year, the household paid: {}", unit="1", zero_is_none=True)
    def first_year(self) -> Expr:
        """Money there for each 1.00 of loan payments due."""
        return self.of(Coverage.coverage_ramp)

    @line("Coverage of the first year of full payments, the household paid: {}", unit="1", zero_is_none=True)
    def full_year(self) -> Expr:
        """No loan pays interest only in it."""
        return self.of(Coverage.coverage_full)

    @line("Coverage of a typical year, the household paid: {}", unit="1", zero_is_none=True)
    def typical(self) -> Expr:
        """Once the farm runs steadily."""
        return self.of(Coverage.typical_coverage)

    @line("Coverage of a typical year before the household is paid: {}", unit="1", zero_is_none=True)
    def before_household(self) -> Expr:
        """Read it beside the other, never alone."""
        return self.of(Coverage.typical_before)

    @line("Coverage is below what is wanted: {}", unit="flag")
    def uncovered(self) -> Expr:
        """In the first full year or in a typical one, the household paid; only where the plan pays a loan in it."""
        full, typical = self.cover.full, self.cover.typical
        return (self.full_year < full) * (full > 0) + (self.typical < typical) * (typical > 0) > 0

    @line("Left when the household has lived, a year: {}", unit="money")
    def left_over(self) -> Expr:
        """Of a typical year in which things go so."""
        return joined(self.of(Household.left_over), "money")

    @line("Month in which cash is enough again for good: {}", unit="count")
    def enough_from(self) -> Expr:
        """After the last month with less than the least to keep; 1 where there is none."""
        return self.of(MonthCash.last_below) + 1

    @line("Enough again for good, in words: {}", unit="1")
    def enough_told(self) -> Expr:
        """A month of the plan."""
        return say("in month ", figure(self.enough_from, 0, named=False))

    @line("When cash is enough again, where it was not: {}", unit="1")
    def again_told(self) -> Expr:
        """If it is."""
        return say(either(self.enough_from > self.months.many, "not within the plan", self.enough_told))

    @line("Back above the least cash to keep: {}", unit="1")
    def back(self) -> Expr:
        """For good."""
        return say(either(self.below > 0, self.again_told, "never below"))


class PricesFall(BadCase, words="prices fall"):
    """All customers pay less."""

    title = "Prices fall"

    def shocked(self) -> Shocked:
        """By that size."""
        return {Shocks.price_kept: 1 - self.sizes.price}


class LessPicked(BadCase, words="less is picked"):
    """Every bag gives less."""

    title = "Less is picked"

    def shocked(self) -> Shocked:
        """By that size."""
        return {Shocks.weight_kept: 1 - self.sizes.weight}


class Lossy(BadCase):
    """Bags are lost, and their weight with them; they have been filled all the same."""

    crop = uses(Crop)

    def alive(self, points: Expr) -> Expr:
        """Of the bags that live as planned, those that live with so many points more lost in the spawn run."""
        lost = ratio(points, joined(self.crop.live_per_inoculated, "share"))
        return maximum(1 - lost, 0)


class MoreLost(Lossy, words="more bags are lost"):
    """In the spawn run, and a whole load now and then."""

    title = "More bags are lost"

    farm = uses(Farm)
    steamer = uses(SteamerInUse)

    @line("Bags of the loads lost, of all filled", unit="share")
    def loads_lost(self) -> Expr:
        """So many loads every quarter."""
        lost = self.sizes.loads * named(QUARTERS) * self.steamer.bags_per_run
        return ratio(lost, self.farm.bags_filled_a_year)

    @line("Bags of the loads not lost, of all filled", unit="share")
    def loads_kept(self) -> Expr:
        """Never less than none."""
        return maximum(1 - self.loads_lost, 0)

    @line("Bags that still live, of those that live as planned", unit="share")
    def still_alive(self) -> Expr:
        """Through the spawn run."""
        return self.alive(self.sizes.points)

    def shocked(self) -> Shocked:
        """Both as a share of the weight."""
        return {Shocks.weight_kept: self.still_alive * self.loads_kept}


class RatesRise(BadCase, words="rates rise"):
    """On loans that float and on the credit line."""

    title = "Rates rise"

    def shocked(self) -> Shocked:
        """By so many points."""
        return {Shocks.rate_more: 0 + self.sizes.rate}


class CostsRise(BadCase, words="costs rise"):
    """Energy, mix and bags, hired work."""

    title = "Costs rise"

    def shocked(self) -> Shocked:
        """All three."""
        return {
            Shocks.energy: 1 + self.sizes.energy,
            Shocks.materials: 1 + self.sizes.materials,
            Shocks.wages: 1 + self.sizes.wages,
        }


class CustomerLost(BadCase, words="the best customer goes"):
    """Part of its weight is sold elsewhere, at the lowest price."""

    title = "The best customer goes"

    best = uses(BestCustomer)

    def shocked(self) -> Shocked:
        """Of that customer."""
        return {Customers.weight_kept: self.best.weight_kept, Customers.share_of_price: self.best.share_of_price}


class LatePayers(BadCase, words="customers pay late"):
    """So many days later."""

    title = "Customers pay late"

    def shocked(self) -> Shocked:
        """All of them."""
        return {Shocks.days_later: 0 + self.sizes.days}


class OtherWeeks(BadCase):
    """Other weeks of filling: mix and bags follow it, and what can be sold. What else is spent, and who buys, is as planned.

    Nothing is kept back, so that what spoils in a month does not matter to what is sold in it.
    """

    totals = uses(MonthTotals)
    spawn = uses(MonthSpawn)
    bills = uses(MonthBills)
    cold = uses(ColdRoom)
    income = uses(MonthIncome)

    def changes(self) -> Shocked:
        """What is ordered, contracted or hired by then stays, and so do customers."""
        return {
            **super().changes(),
            MonthTotals.spoiled: self.totals.spoiled,
            MonthSpawn.cost: self.spawn.cost,
            MonthBills.wages: self.bills.wages,
            MonthBills.piece: self.bills.piece,
            MonthBills.energy: self.bills.energy,
            MonthBills.bills_paid: self.bills.bills_paid,
            MonthSupplies.full_week: self.supplies.full_week,
            ColdRoom.wanted: self.cold.wanted,
            MonthSales.takes: self.sales.takes,
            MonthSales.all_take: self.sales.all_take,
            MonthSales.going_a_week: self.sales.going_a_week,
            SpawnStock.value: self.income.spawn.value,
            BagsValue.value: self.income.bags.value,
        }


class LateOpening(OtherWeeks, words="building costs more and opens late"):
    """What is still to come is dearer, and starts later."""

    title = "Building costs more and opens late"

    def shocked(self) -> Shocked:
        """Both."""
        return {Shocks.building: 1 + self.sizes.building, Shocks.weeks_late: 0 + self.sizes.late}


class PlantStops(OtherWeeks, words="the plant stops"):
    """No bags are filled for some weeks; hands are paid."""

    title = "The plant stops"

    def shocked(self) -> Shocked:
        """From that week on."""
        return {
            Shocks.stopped_from: 0 + self.sizes.stopped_from,
            Shocks.stopped_for: 0 + self.sizes.stopped_for,
        }


class BadYear(Lossy, words="a bad year"):
    """Prices, weight, losses and rates together."""

    title = "A bad year"

    @line("Bags that still live in a bad year, of those that live as planned", unit="share")
    def still_alive(self) -> Expr:
        """Through the spawn run."""
        return self.alive(self.sizes.bad_points)

    def shocked(self) -> Shocked:
        """By its own sizes."""
        return {
            Shocks.price_kept: 1 - self.sizes.bad_price,
            Shocks.weight_kept: (1 - self.sizes.bad_weight) * self.still_alive,
            Shocks.rate_more: 0 + self.sizes.bad_rate,
        }


CASES: Final = (
    PricesFall,
    LessPicked,
    MoreLost,
    RatesRise,
    CostsRise,
    CustomerLost,
    LatePayers,
    LateOpening,
    PlantStops,
    BadYear,
)
