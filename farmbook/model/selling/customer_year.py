"""A year with each customer: what it takes and pays, what selling to it costs, and whether to go on."""

from __future__ import annotations

from typing import Final

from farmbook.calc.calendar import MONTHS_COUNTED
from farmbook.calc.tolerance import SUM_TOLERANCE, is_rounding
from farmbook.expr.functions import all_of, joined, ratio, total, where, whole_near
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import before, preference_key
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import CALENDAR, CUSTOMER
from farmbook.model.cost.harvest import Harvest
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customer_months import CustomerMonths
from farmbook.model.selling.customers import ROWS_IN_AN_ORDER, Customers
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = ["CustomerYear"]

FINE_PARTS: Final = Constant(
    1e6, "parts_of_a_price", label="Parts of money by which prices are ranked", unit=unit("kg_taken/money"),
    source=ARITHMETIC.key,
)  # fmt: skip
CENTS: Final = Constant(
    100, "parts_of_takings", label="Parts of money by which takings are ranked", unit=unit("year/money"),
    source=ARITHMETIC.key,
)  # fmt: skip
LAST_OF_ALL: Final = Constant(
    1e12, "last_of_all", label="Rank of a customer who gets nothing", unit=unit("1"), source=ARITHMETIC.key
)


class CustomerYear(Section):
    """The twelve months added up."""

    title = "A year with each customer"

    farm = uses(Farm)
    harvest = uses(Harvest)
    customers = uses(Customers)
    months = uses(CustomerMonths)

    # Each customer

    @line("Taken there a year", unit="kg_taken/year", axes=(CUSTOMER,))
    def taken(self) -> Expr:
        """In all weeks worked; nothing that is only a rounding of what it takes at most."""
        weekly = self.all_it_takes + self.what_is_left
        of_the_most = self.customers.most_a_week * SUM_TOLERANCE
        return joined(where(weekly > of_the_most, weekly * self.months.weeks, 0), "kg_taken/year")

    @line("Taken there a year, as far as the customer stays", unit="kg_taken/year", axes=(CUSTOMER,))
    def still_taken(self) -> Expr:
        """All of it, but in a case in which a customer is lost."""
        return self.taken * self.customers.weight_kept

    @line("A week's most, of months in which it gets all it takes", unit="kg_taken/week", axes=(CUSTOMER,))
    def all_it_takes(self) -> Expr:
        """Those served before leave more; added up over the months."""
        left = self.months.supply_a_week - self.months.earlier_a_week
        return total((left > self.months.room_a_week) * self.months.room_a_week, CALENDAR)

    @line("What is left for it in a week, of months in which that is less", unit="kg_taken/week", axes=(CUSTOMER,))
    def what_is_left(self) -> Expr:
        """Those served before take the rest; added up over the months."""
        supply, earlier = self.months.supply_a_week, self.months.earlier_a_week
        left = supply - earlier
        return total((left <= self.months.room_a_week) * (supply > earlier) * left, CALENDAR)

    @line("Sold there a year", unit="kg_sold/year", axes=(CUSTOMER,))
    def sold(self) -> Expr:
        """What is paid for."""
        return self._sold()

    @line("Unsold there a year", unit="kg_taken/year", axes=(CUSTOMER,))
    def unsold(self) -> Expr:
        """Returned, given away or thrown out; it has been grown, picked and packed all the same."""
        return self.taken * (1 - self.customers.share_sold)

    @line("Takings there a year", unit="money/year", axes=(CUSTOMER,))
    def takings(self) -> Expr:
        """Without the tax that is passed on."""
        return self._takings()

    @line("Tax collected there a year, passed on", unit="money/year", axes=(CUSTOMER,))
    def tax_collected(self) -> Expr:
        """Neither income nor cost."""
        return self.sold * self.customers.tax_in_price

    @line("Fees there a year", unit="money/year", axes=(CUSTOMER,))
    def fees(self) -> Expr:
        """Card, market and agent."""
        return self._fees()

    @line("Packing for it a year", unit="money/year", axes=(CUSTOMER,))
    def packing_cost(self) -> Expr:
        """Of all that is taken there, sold or not."""
        return self._packing()

    @line("Months in which something goes there", unit="1", axes=(CUSTOMER,))
    def months_there(self) -> Expr:
        """Where nothing goes, no stall is paid and nobody drives."""
        gets = self.months.supply_a_week - self.months.earlier_a_week > self.months.room_a_week * SUM_TOLERANCE
        return total((self.months.room_a_week > 0) * gets, CALENDAR)

    @line("Weeks you sell there a year", unit="week/year", axes=(CUSTOMER,))
    def weeks_there(self) -> Expr:
        """Of those months."""
        return self.months_there * self.farm.weeks_worked / MONTHS_COUNTED

    @line("Stall there a year", unit="money/year", axes=(CUSTOMER,))
    def stall_cost(self) -> Expr:
        """Of the weeks you sell there."""
        return self._stall()

    @line("Delivery there a year", unit="money/year", axes=(CUSTOMER,))
    def delivery_cost(self) -> Expr:
        """Of the weeks you sell there."""
        return self._delivery()

    @line("Hours of selling there a year", unit="person_hour/year", axes=(CUSTOMER,))
    def hours(self) -> Expr:
        """Of the weeks you sell there."""
        return self._hours()

    @line("Left from it a year, before hours", unit="money/year", axes=(CUSTOMER,), source=PARTIAL_BUDGET)
    def left(self) -> Expr:
        """Takings less all that selling there costs in money."""
        return self.takings - self.fees - self.packing_cost - self.stall_cost - self.delivery_cost

    @line("Left from it a year, hours and waiting counted", unit="money/year", axes=(CUSTOMER,), source=PARTIAL_BUDGET)
    def net(self) -> Expr:
        """Each hour at what an hour of work costs, whoever works it."""
        return self.left - self.hours * self.farm.labour_rate - self.taken * self.customers.credit

    @line("A weight taken there brings, net of selling", unit="money/kg_taken", axes=(CUSTOMER,), zero_is_none=True)
    def net_per_taken(self) -> Expr:
        """The whole year there over all that was taken there. No figure where nothing goes."""
        return ratio(self.net, self.taken)

    @line("The same would bring elsewhere a year", unit="money/year", axes=(CUSTOMER,), source=PARTIAL_BUDGET)
    def elsewhere(self) -> Expr:
        """From whoever gets the next one, if all of this went there; that customer may not take so much."""
        return self.taken * self.next_one

    @line("Gets the next one in some month", unit="flag", axes=(CUSTOMER,))
    def is_next(self) -> Expr:
        """What goes elsewhere goes there, so it cannot be held against itself."""
        return total(self.months.takes_next, CALENDAR) > 0

    @line(
        "Going there leaves more than elsewhere, a year",
        unit="money/year",
        axes=(CUSTOMER,),
        source=PARTIAL_BUDGET,
        zero_is_none=True,
    )
    def worth_going(self) -> Expr:
        """The days there judged as a whole, stall, driving and hours in it. Below zero: stay at home.

        No figure where nothing goes, and for whoever gets the next one.
        """
        return where(self.is_next, 0, self.net - self.elsewhere)

    @line("Customers served", unit="count")
    def served(self) -> Expr:
        """They get something in some month."""
        return total(self.taken > 0, CUSTOMER)

    @line("Customers who leave less than sending it elsewhere", unit="count")
    def not_worth_going(self) -> Expr:
        """Stall, driving and hours counted."""
        return total(self.leaves_less, CUSTOMER)

    @line("Leaves less than sending it elsewhere", unit="flag", axes=(CUSTOMER,))
    def leaves_less(self) -> Expr:
        """By a cent a year at least."""
        return whole_near(self.worth_going * CENTS) < 0

    @line("Rank by what a weight brings, as a key", unit="1", axes=(CUSTOMER,))
    def net_key(self) -> Expr:
        """Those who get nothing come after the others."""
        return preference_key(self.net_size, self.customers.row, ROWS_IN_AN_ORDER)

    @line("What customers are ranked by", unit="1", axes=(CUSTOMER,))
    def net_size(self) -> Expr:
        """The more it brings, the lower."""
        return where(self.taken > 0, -self.net_per_taken * FINE_PARTS, LAST_OF_ALL)

    @line("Rank by what a weight brings", unit="count", axes=(CUSTOMER,), zero_is_none=True)
    def rank(self) -> Expr:
        """1 for who leaves most of each weight. If your order is another, ask why; a cap or a stall may be the reason."""
        return where(self.taken > 0, 1 + before(self.customers.present, self.net_key, CUSTOMER), 0)

    @line("Share of the takings", unit="share", axes=(CUSTOMER,))
    def share_of_takings(self) -> Expr:
        """How much of your income hangs on it."""
        return ratio(self.takings, self.takings_in_all)

    @line("Rank by takings, as a key", unit="1", axes=(CUSTOMER,))
    def takings_key(self) -> Expr:
        """The larger, the lower."""
        return preference_key(-self.takings * CENTS, self.customers.row, ROWS_IN_AN_ORDER)

    @line("Customers with larger takings", unit="count", axes=(CUSTOMER,))
    def larger(self) -> Expr:
        """None for the largest."""
        return before(self.customers.present, self.takings_key, CUSTOMER)

    @line("Largest customer", unit="flag", axes=(CUSTOMER,))
    def is_largest(self) -> Expr:
        """By takings."""
        return all_of(self.customers.present > 0, self.larger <= 0)

    # What a customer comes to, as its own line says it and all customers add it up: no change then needs it customer by customer

    def _sold(self) -> Expr:
        return joined(self.still_taken * self.customers.share_sold, "kg_sold/year")

    def _takings(self) -> Expr:
        return self._sold() * self.customers.price_kept

    def _fees(self) -> Expr:
        return self._sold() * self.customers.fee_taken

    def _packing(self) -> Expr:
        return self.still_taken * self.customers.packing

    def _stall(self) -> Expr:
        return self.customers.stall * self.weeks_there

    def _delivery(self) -> Expr:
        return self.customers.delivery * self.weeks_there

    def _hours(self) -> Expr:
        return self.customers.selling_hours * self.weeks_there

    # All customers

    @line("Taken to customers a year, by customer", unit="kg_taken/year")
    def taken_in_all(self) -> Expr:
        """All customers together."""
        return total(self.taken, CUSTOMER)

    @line("No customer takes, a year", unit="kg_taken/year")
    def not_placed(self) -> Expr:
        """Grown and not to be sold."""
        return joined(total(self.months.homeless, CALENDAR), "kg_taken/year")

    @line("Sold a year", unit="kg_sold/year")
    def sold_in_all(self) -> Expr:
        """What all customers pay for."""
        return total(self._sold(), CUSTOMER)

    @line("Unsold a year", unit="kg_taken/year")
    def unsold_in_all(self) -> Expr:
        """Taken there and not paid for."""
        return total(self.unsold, CUSTOMER)

    @line("Takings a year", unit="money/year")
    def takings_in_all(self) -> Expr:
        """Without the tax that is passed on."""
        return total(self._takings(), CUSTOMER)

    @line("Tax collected a year, passed on", unit="money/year")
    def tax_in_all(self) -> Expr:
        """It is not yours; keep it apart."""
        return total(self.tax_collected, CUSTOMER)

    @line("Fees a year", unit="money/year")
    def fees_in_all(self) -> Expr:
        """All customers."""
        return total(self._fees(), CUSTOMER)

    @line("Packing material a year", unit="money/year")
    def packing_in_all(self) -> Expr:
        """All customers."""
        return total(self._packing(), CUSTOMER)

    @line("Stalls a year", unit="money/year")
    def stalls_in_all(self) -> Expr:
        """All customers."""
        return total(self._stall(), CUSTOMER)

    @line("Delivery a year", unit="money/year")
    def delivery_in_all(self) -> Expr:
        """All customers."""
        return total(self._delivery(), CUSTOMER)

    @line("Hours of selling a year", unit="person_hour/year")
    def hours_in_all(self) -> Expr:
        """All customers."""
        return total(self._hours(), CUSTOMER)

    @line("Hours of selling a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """In a week worked."""
        return ratio(self.hours_in_all, self.farm.weeks_worked)

    @line("One more to sell would bring", unit="money/kg_taken", source=PARTIAL_BUDGET)
    def next_one(self) -> Expr:
        """The mean of the months. Stall, driving and hours are left out: you go there anyway."""
        return total(self.months.next_brings, CALENDAR) / MONTHS_COUNTED

    @line("The last one sold brings", unit="money/kg_taken", zero_is_none=True)
    def last_one(self) -> Expr:
        """What one fewer would cost you; the mean of what is sold."""
        return ratio(self.last_weighed, self.placed_in_all)

    @line("What the last one brings, for all that is sold", unit="money")
    def last_weighed(self) -> Expr:
        """Month by month, by what is sold in it."""
        return total(self.months.last_brings * self.months.placed, CALENDAR)

    @line("Customers get in all months", unit="kg_taken")
    def placed_in_all(self) -> Expr:
        """Of a year."""
        return total(self.months.placed, CALENDAR)

    @line("Average price a year", unit="money/kg_sold", zero_is_none=True)
    def average_price(self) -> Expr:
        """Never use it for more bags: they go to whoever still takes some, at that price."""
        return ratio(self.takings_in_all, self.sold_in_all)

    @line("Largest customer's share of the takings", unit="share")
    def largest_share(self) -> Expr:
        """What is at risk if it stays away. A lender asks."""
        return total(self.share_of_takings * self.is_largest, CUSTOMER)

    @line("With a customer, or with none, a year", unit="kg_taken/year")
    def taken_or_left(self) -> Expr:
        """Must be the crop."""
        return self.taken_in_all + self.not_placed

    @line("Sold or unsold a year", unit="kg_taken/year")
    def sold_or_unsold(self) -> Expr:
        """Must be what is taken to customers."""
        return joined(self.sold_in_all, "kg_taken/year") + self.unsold_in_all

    @line("Customers: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Customers pay ",
            figure(self.average_price, 2),
            " on average. One more to sell would bring ",
            figure(self.next_one, 2),
            either(self.everything_has_a_customer, ".", ", as no customer takes all you grow."),
        )

    @check(
        "Everything grown to sell has a customer",
        kind="alert",
        says="You grow more than your customers take, in some months at least: see the sheet Customers for how much.",
    )
    def everything_has_a_customer(self) -> Expr:
        """What nobody takes brings nothing here."""
        return self.not_placed <= self.harvest.taken_a_year * SUM_TOLERANCE

    @check(
        "What customers get and what none takes is the crop",
        kind="error",
        says="Customers get more or less than there is to sell: a formula of the sheet Customers was changed.",
    )
    def taken_adds_up(self) -> Expr:
        """Month by month each weight goes to one customer or to none."""
        return is_rounding(
            self.taken_or_left - self.harvest.taken_a_year, self.taken_or_left, self.harvest.taken_a_year
        )

    @check(
        "What customers get month by month is what they get in the year",
        kind="error",
        says="Customers get another weight in the months than in the year: a formula of the sheet Customers was changed.",
    )
    def months_add_up(self) -> Expr:
        """The months are shared out one by one, the year in two sums for each customer."""
        placed = joined(self.placed_in_all, "kg_taken/year")
        return is_rounding(placed - self.taken_in_all, placed, self.taken_in_all)

    @check(
        "What customers get is sold or unsold",
        kind="error",
        says="Weight sold and unsold is not the weight taken to customers: a formula of the sheet Customers was changed.",
    )
    def sold_adds_up(self) -> Expr:
        """Unsold is taken off once."""
        return is_rounding(self.sold_or_unsold - self.taken_in_all, self.sold_or_unsold, self.taken_in_all)
