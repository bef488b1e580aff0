"""The price below which selling to a customer does not pay: of mushrooms already grown, or with bags to fill for it."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_YEAR
from farmbook.expr.functions import all_of, joined, maximum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CUSTOMER
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.selling.customers import Customers
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, PARTIAL_BUDGET

__all__ = ["FloorPrice"]


class FloorPrice(Section):
    """As the customer pays it, with the tax that is inside and before fees."""

    title = "Floor prices"

    customers = uses(Customers)
    customer_year = uses(CustomerYear)
    one_more = uses(OneMore)

    @line("Share of the price that is yours", unit="share", axes=(CUSTOMER,))
    def share_kept_of_price(self) -> Expr:
        """Tax that is passed on, waiting for the money and fees taken off."""
        without_tax = where(self.customers.registered, self.customers.without_tax, 1)
        return without_tax * (1 - self.waiting) - self.customers.fee

    @line("Waiting for the money, of the price", unit="share", axes=(CUSTOMER,))
    def waiting(self) -> Expr:
        """At the yearly return you want on money."""
        return self.customers.days_to_pay / DAYS_IN_A_YEAR * self.customers.steaming.yearly_rate

    @line("Yours, of the price of all that is taken there", unit="share", axes=(CUSTOMER,), source=ARITHMETIC)
    def share_kept(self) -> Expr:
        """What stays unsold brings nothing."""
        return self.share_kept_of_price * self.customers.share_sold

    @line(
        "Floor price, already grown", unit="money/kg_sold", axes=(CUSTOMER,), source=PARTIAL_BUDGET, zero_is_none=True
    )
    def grown(self) -> Expr:
        """Picking, packing and the box, in money. Below it, leave them on the bag. Stall, driving and hours not in it."""
        cost = joined(self.one_more.grown_in_money + self.customers.packing, "money/kg_sold")
        return ratio(cost, maximum(self.share_kept, 0))

    @line("Floor price, bag to fill", unit="money/kg_sold", axes=(CUSTOMER,), source=PARTIAL_BUDGET, zero_is_none=True)
    def to_fill(self) -> Expr:
        """With the bag, in money. Below it, do not fill bags for this customer. Stall, driving and hours not in it."""
        cost = joined(self.one_more.to_fill_in_money + self.customers.packing, "money/kg_sold")
        return ratio(cost, maximum(self.share_kept, 0))

    @line("Pays for a bag to fill", unit="flag", axes=(CUSTOMER,))
    def pays(self) -> Expr:
        """1 for a customer at or above the floor price."""
        return all_of(self.customers.present > 0, self.share_kept > 0, self.covers_a_bag)

    @property
    def covers_a_bag(self) -> Expr:
        """Asked of what it leaves, so that no change needs the floor price."""
        return self.leaves >= self.one_more.to_fill_in_money

    @line(
        "Left of the price for mushrooms, packing paid", unit="money/kg_taken", axes=(CUSTOMER,), source=PARTIAL_BUDGET
    )
    def leaves(self) -> Expr:
        """Of all that is taken there. Before stall, driving and hours."""
        return joined(self.customers.price * self.share_kept, "money/kg_taken") - self.customers.packing

    @line("A weight brings, net of selling: drawn", unit="money/kg_taken", axes=(CUSTOMER,))
    def net_drawn(self) -> Expr:
        """0 where nothing goes, so that there is something to draw."""
        return self.customer_year.net_per_taken

    @line("One more costs, bag to fill, in money: drawn", unit="money/kg_taken", axes=(CUSTOMER,))
    def cost_drawn(self) -> Expr:
        """The same in every column, as a level across the chart."""
        return self.one_more.to_fill_in_money * (self.customers.row > 0)
