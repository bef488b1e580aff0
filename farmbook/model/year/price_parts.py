"""Where the price of what is sold goes."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import ratio
from farmbook.expr.nodes import Expr
from farmbook.model.labour.hours import Hours
from farmbook.model.owning.capital import Capital
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.loans import Loans
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["PriceParts"]


class PriceParts(Section):
    """Parts of the average price, each over all that is sold."""

    title = "Where the price goes"

    customers = uses(CustomerYear)
    hours = uses(Hours)
    capital = uses(Capital)
    loans = uses(Loans)
    year = uses(Year)

    @line("Of the price: mix, bags and spawn", unit="money/kg_sold")
    def goods(self) -> Expr:
        """For all bags, lost ones too."""
        return ratio(self.year.goods, self.customers.sold_in_all)

    @line("Of the price: hired work", unit="money/kg_sold")
    def labour(self) -> Expr:
        """By the hour and by the piece."""
        return ratio(self.hours.labour_cost, self.customers.sold_in_all)

    @line("Of the price: energy and bills", unit="money/kg_sold")
    def standing(self) -> Expr:
        """Rent and insurance too."""
        return ratio(self.year.standing, self.customers.sold_in_all)

    @line("Of the price: selling", unit="money/kg_sold")
    def selling(self) -> Expr:
        """Fees, packing, stalls, delivery."""
        return ratio(self.year.selling, self.customers.sold_in_all)

    @line("Of the price: loss in value and interest", unit="money/kg_sold")
    def owning(self) -> Expr:
        """What things wear out, and what the money in them costs."""
        return ratio(self.capital.loss + self.loans.interest, self.customers.sold_in_all)

    @line("Of the price: left for you", unit="money/kg_sold")
    def left(self) -> Expr:
        """Profit, for all your hours. Below zero the price does not pay its costs."""
        return ratio(self.year.profit, self.customers.sold_in_all)

    @line("Of the price: all costs", unit="money/kg_sold", source=ARITHMETIC)
    def costs(self) -> Expr:
        """The first five."""
        return self.goods + self.labour + self.standing + self.selling + self.owning

    @line("Parts of the price added up", unit="money/kg_sold", source=ARITHMETIC)
    def added_up(self) -> Expr:
        """Must be the average price."""
        return self.costs + self.left

    @check(
        "Every cost of the year is in its total once",
        kind="error",
        says="The parts of the price do not make up the price: a cost of the year is missing or counted twice on the sheet Year.",
    )
    def all_parts(self) -> Expr:
        """Goods, hired work, energy and bills, selling, owning and profit, each worked out apart."""
        return is_rounding(self.added_up - self.customers.average_price, self.costs, self.customers.average_price)
