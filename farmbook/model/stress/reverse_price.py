"""How far all prices could fall together before a typical year covers its loans no better than wanted."""

from __future__ import annotations

from farmbook.expr.functions import all_of, joined, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.stress.bad_cases import Shocked
from farmbook.model.stress.reverse import Fall
from farmbook.model.stress.to_lose import ToLoseOfAsked, ToLoseOfOne
from farmbook.sections.declare import line, uses

__all__ = ["PRICE_FALLS", "PriceToAsked", "PriceToOne"]


class PriceFall(Fall):
    """Takings fall with prices, and so do fees that are a share of them; weight and all other costs stay."""

    @line("Takings less fees, {}", unit="money")
    def at_stake(self) -> Expr:
        """All of it is lost if nothing is paid."""
        customers = self.year.customers
        return joined(customers.takings_in_all - customers.fees_in_all, "money")

    def found(self) -> Expr:
        """In proportion."""
        return ratio(self.to_lose.room, self.at_stake)

    def is_enough(self) -> Expr:
        """Prices that fees eat up bring nothing that could be lost."""
        return all_of(self.at_stake > 0, self.to_lose.room <= self.at_stake)

    @line("Average price then: {}", unit="money/kg_sold", zero_is_none=True)
    def price_then(self) -> Expr:
        """Over all customers, without the tax that is passed on."""
        return self.year.customers.average_price * (1 - self.fall) * self.is_there

    def changes(self) -> Shocked:
        """All customers pay less."""
        return {Shocks.price_kept: 1 - self.fall}


class PriceToAsked(PriceFall, words="prices, down to the coverage wanted"):
    """As a lender wants it."""

    title = "Prices down to the coverage wanted"
    to_lose = uses(ToLoseOfAsked)


class PriceToOne(PriceFall, words="prices, down to 1.00"):
    """Loans are just paid."""

    title = "Prices down to a coverage of 1.00"
    to_lose = uses(ToLoseOfOne)


PRICE_FALLS = (PriceToAsked, PriceToOne)
