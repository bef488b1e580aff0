"""What the loss of the best customer leaves: part of its weight, at the lowest price of all."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import all_of, ratio, total
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import before, preference_key
from farmbook.model.axes import CUSTOMER
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.selling.customers import ROWS_IN_AN_ORDER
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

PARTS_OF_A_PRICE: Final = Constant(
    1e6, "parts_of_a_price_typed", label="Parts of money by which prices typed are ranked", unit=unit("kg_sold/money"),
    source=ARITHMETIC.key,
)  # fmt: skip

__all__ = ["BestCustomer"]


class BestCustomer(Section):
    """The best is the largest by takings of a typical year."""

    title = "The best customer gone"

    sizes = uses(StressSizes)
    year = uses(CustomerYear)

    @line("Rank by price, as a key", unit="1", axes=(CUSTOMER,), source=ARITHMETIC)
    def price_key(self) -> Expr:
        """The lower the price, the lower; no two are alike."""
        customers = self.year.customers
        return preference_key(customers.price * PARTS_OF_A_PRICE, customers.row, ROWS_IN_AN_ORDER)

    @line("Customers who pay less", unit="count", axes=(CUSTOMER,))
    def cheaper(self) -> Expr:
        """None for who pays least."""
        return before(self.year.customers.present, self.price_key, CUSTOMER)

    @line("Customer pays least", unit="flag", axes=(CUSTOMER,))
    def pays_least(self) -> Expr:
        """Of equal ones the left."""
        return all_of(self.year.customers.present > 0, self.cheaper <= 0)

    @line("Lowest price of all customers", unit="money/kg_sold")
    def lowest_price(self) -> Expr:
        """As typed."""
        return total(self.year.customers.price * self.pays_least, CUSTOMER)

    @line("Weight that still goes there, or in its place, of that planned", unit="share", axes=(CUSTOMER,))
    def weight_kept(self) -> Expr:
        """All, but for the best customer: what is sold elsewhere."""
        return self.year.customers.present - self.year.is_largest * (1 - self.sizes.moved)

    @line("Price that it still brings, of that planned", unit="share", axes=(CUSTOMER,))
    def share_of_price(self) -> Expr:
        """All, but for the best customer: the lowest of all prices."""
        lower = 1 - ratio(self.lowest_price, self.year.customers.price, 1)
        return self.year.customers.present - self.year.is_largest * lower
