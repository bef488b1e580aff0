"""Price, volume and yield at which a year just pays its costs; the accounting version, with loss in value and interest."""

from __future__ import annotations

from farmbook.calc.worth import break_even_price
from farmbook.expr.functions import maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.picking import Picking
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.year import Year
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_MANAGEMENT

__all__ = ["BreakEven"]


class BreakEven(Section):
    """Fees that are a share of the price are divided through; hired hours are paid whatever is sold."""

    title = "Break-even"

    crop = uses(Crop)
    customers = uses(CustomerYear)
    picking = uses(Picking)
    year = uses(Year)

    @line("Kept of each price after fees", unit="share")
    def share_kept(self) -> Expr:
        """Fees of the year over its takings, taken off."""
        fees = ratio(self.customers.fees_in_all, self.customers.takings_in_all, otherwise=1)
        return 1 - fees

    @line(
        "Price at which costs in money are just paid", unit="money/kg_sold", source=FARM_MANAGEMENT, zero_is_none=True
    )
    def price_in_money(self) -> Expr:
        """On average over all customers, for the same weight sold. Your own hours earn nothing then."""
        cost = self.year.cost_in_money - self.customers.fees_in_all
        return break_even_price(cost, self.customers.sold_in_all, self.share_kept)

    @line("Price at which your own hours are paid too", unit="money/kg_sold", source=FARM_MANAGEMENT, zero_is_none=True)
    def price_in_full(self) -> Expr:
        """At what you said an hour of yours is worth."""
        cost = self.year.full_cost - self.customers.fees_in_all
        return break_even_price(cost, self.customers.sold_in_all, self.share_kept)

    @line("Costs that come with the weight sold", unit="money/kg_sold")
    def with_each(self) -> Expr:
        """Packing, and picking where it is paid by the piece."""
        return ratio(self.customers.packing_in_all + self.picking.piece_cost, self.customers.sold_in_all)

    @line("Costs that do not, a year", unit="money/year")
    def whatever_is_sold(self) -> Expr:
        """Bags, bills, hired hours, loss in value, interest: the year is planned and paid before it is sold."""
        other = self.customers.fees_in_all + self.customers.packing_in_all + self.picking.piece_cost
        return self.year.cost_in_money - other

    @line("Left of the price after fees and what comes with it", unit="money/kg_sold")
    def left_of_price(self) -> Expr:
        """Of the average price."""
        return self.customers.average_price * self.share_kept - self.with_each

    @line(
        "Weight sold at which costs in money are just paid",
        unit="kg_sold/year",
        source=FARM_MANAGEMENT,
        zero_is_none=True,
    )
    def sold(self) -> Expr:
        """At the average price. No figure where the price leaves nothing."""
        return ratio(self.whatever_is_sold, maximum(self.left_of_price, 0))

    @line(
        "Picked per bag filled at which they are",
        unit="kg_picked/bag_filled",
        source=FARM_MANAGEMENT,
        zero_is_none=True,
    )
    def picked(self) -> Expr:
        """With as many bags, and the same shares trimmed and unsold."""
        return self.crop.picked_per_filled * self.share_needed

    @line("Weight at which they are, of the weight sold", unit="share")
    def share_needed(self) -> Expr:
        """Above 100% the year does not pay its costs."""
        return ratio(self.sold, self.customers.sold_in_all)

    @line("Margin of safety", unit="share", source=FARM_MANAGEMENT)
    def safety(self) -> Expr:
        """How much of the weight sold could fail before costs in money are no longer paid."""
        return (1 - self.share_needed) * (self.sold > 0)
