"""A customer wants more at a lower price: take it or not, judged by a partial budget."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.calc.worth import partial_budget
from farmbook.expr.functions import all_of, joined, maximum, minimum, ratio, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR, CUSTOMER
from farmbook.model.limits.limits import Limits
from farmbook.model.selling.customer_months import CustomerMonths
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.selling.customers import Customers
from farmbook.model.year.floor_price import FloorPrice
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["VolumeOffer"]

OFFER = (CUSTOMER,)
MATRIX = (CUSTOMER, CALENDAR)


class VolumeOffer(Section):
    """Each customer's offer by itself. The lower price holds for all that it takes; what is more comes first from what
    nobody takes, then from bags that can still be filled, then from other customers, at what the last one sold brings. Stall,
    driving and hours of going to somebody new are not in it.
    """

    title = "A discount for volume"
    table = "selling"

    customers = uses(Customers)
    months = uses(CustomerMonths)
    year = uses(CustomerYear)
    floor = uses(FloorPrice)
    one_more = uses(OneMore)
    limits = uses(Limits)

    more = number(
        "Offer: takes so much more in a full week",
        unit="kg_taken/week",
        usual=(0, 500),
        hard=(0, 1000000),
        default=0,
        axes=OFFER,
        how="What they would take on top of what they take now. 0 where there is no offer.",
        source=COMMON_PRACTICE,
    )
    less = number(
        "Offer: less on the price of all they take",
        unit="money/kg_sold",
        usual=(0, 8),
        hard=(0, 10000),
        default=0,
        axes=OFFER,
        how="What comes off the price, tax inside as in the price.",
        source=COMMON_PRACTICE,
    )

    @line("Offer: more in the month", unit="kg_taken", axes=MATRIX)
    def more_in_month(self) -> Expr:
        """By its season. What it would still take at the present price needs no discount, so only what is beyond that counts."""
        offered = self.more * self.customers.season * self.months.weeks
        return maximum(offered - self.months.still_takes, 0)

    @line("Offer: of it, grown and left over in the month", unit="kg_taken", axes=MATRIX)
    def left_in_month(self) -> Expr:
        """What nobody takes in one month cannot be sold in another."""
        return minimum(self.more_in_month, self.months.homeless)

    @line("Offer: more wanted a year", unit="kg_taken/year", axes=OFFER)
    def wanted(self) -> Expr:
        """Twelve months."""
        return joined(total(self.more_in_month, CALENDAR), "kg_taken/year")

    @line("Offer: from what nobody takes now", unit="kg_taken/year", axes=OFFER)
    def from_left_over(self) -> Expr:
        """Grown and paid for already."""
        return joined(total(self.left_in_month, CALENDAR), "kg_taken/year")

    @line("Room for more bags, customers aside", unit="flag")
    def without_limit(self) -> Expr:
        """1 where no stage but customers is known: then nothing that you typed holds more bags back."""
        return self.limits.many <= self.limits.customers.known

    @line("Bags a week that stages other than customers can do", unit="bag_filled/week", zero_is_none=True)
    def stages_can(self) -> Expr:
        """The smallest of them."""
        return where(self.limits.customers_limit, self.limits.second, self.limits.first)

    @line("More that could be grown, a year", unit="kg_taken/year")
    def could_grow(self) -> Expr:
        """Bags above those filled now, over the weeks worked. Read only where a stage is known."""
        bags = maximum(self.stages_can - self.limits.farm.bags_filled_a_week, 0)
        return bags * self.limits.farm.weeks_worked * self.one_more.crop.taken_per_filled

    @line("Offer: wanted from bags to fill", unit="kg_taken/year", axes=OFFER)
    def wanted_from_bags(self) -> Expr:
        """What is more than is left over now; nothing where bags give no crop."""
        return (self.wanted - self.from_left_over) * (self.one_more.crop.taken_per_filled > 0)

    @line("Offer: from bags to fill", unit="kg_taken/year", axes=OFFER)
    def from_bags(self) -> Expr:
        """As far as the stages of the farm go."""
        return where(self.without_limit, self.wanted_from_bags, minimum(self.wanted_from_bags, self.could_grow))

    @line("Others take a year", unit="kg_taken/year", axes=OFFER)
    def others_take(self) -> Expr:
        """All customers but this one."""
        return self.year.taken_in_all - self.year.taken

    @line("Offer: taken from other customers", unit="kg_taken/year", axes=OFFER)
    def from_others(self) -> Expr:
        """What can neither be found nor grown, as far as others have it. The one served last gives it up first."""
        return minimum(self.wanted - self.from_left_over - self.from_bags, self.others_take)

    @line("Offer: more that you could deliver a year", unit="kg_taken/year", axes=OFFER)
    def delivered(self) -> Expr:
        """Less than they want where the farm is too small for it."""
        return self.from_left_over + self.from_bags + self.from_others

    @line("Offer: what is more brings", unit="money/kg_taken", axes=OFFER)
    def brings(self) -> Expr:
        """At the lower price, before hours: you go there anyway."""
        return self.customers.brings - joined(self.less * self.floor.share_kept, "money/kg_taken")

    @line("Offer: added takings a year", unit="money/year", axes=OFFER, source=PARTIAL_BUDGET)
    def added(self) -> Expr:
        """Net of fees, packing, unsold and waiting for the money."""
        return self.delivered * self.brings

    @line("Offer: bags to fill cost a year", unit="money/year", axes=OFFER, source=PARTIAL_BUDGET)
    def bags_cost(self) -> Expr:
        """In money, with picking."""
        return self.from_bags * self.one_more.to_fill_in_money

    @line("Offer: takings given up a year", unit="money/year", axes=OFFER, source=PARTIAL_BUDGET)
    def given_up(self) -> Expr:
        """The lower price on all it takes now, and what the last customer would have brought."""
        discount = self.year.sold * self.less * self.floor.share_kept_of_price
        return discount + self.from_others * self.year.last_one

    @line("Offer: taking it changes the year by", unit="money/year", axes=OFFER, source=PARTIAL_BUDGET)
    def change(self) -> Expr:
        """Above zero: take it, if there are hands for it. Own hours are not in it."""
        return partial_budget(self.added, 0, self.bags_cost, self.given_up)

    @line("Offer: would bring at the present price, a year", unit="money/year", axes=OFFER)
    def at_present_price(self) -> Expr:
        """As if nothing came off the price."""
        others = self.from_others * self.year.last_one
        return self.delivered * self.customers.brings - self.bags_cost - others

    @line("Offer: sold there a year, with what is more", unit="kg_sold/year", axes=OFFER)
    def sold_with_more(self) -> Expr:
        """On all of it the price would fall."""
        return self.year.sold + joined(self.delivered * self.customers.share_sold, "kg_sold/year")

    @line("Offer: would pay at the present price", unit="flag", axes=OFFER)
    def pays_at_all(self) -> Expr:
        """1 where there is an offer, and fees leave something of a price."""
        leaves = self.at_present_price > self.delivered * self.customers.brings * SUM_TOLERANCE
        return all_of(self.delivered > 0, leaves, self.floor.share_kept_of_price > 0)

    @line(
        "Offer: most you can take off the price", unit="money/kg_sold", axes=OFFER, source=ARITHMETIC, zero_is_none=True
    )
    def most_off(self) -> Expr:
        """With it the offer just pays. No figure where it would not pay at the present price."""
        return ratio(self.at_present_price * self.pays_at_all, self.sold_with_more * self.floor.share_kept_of_price)
