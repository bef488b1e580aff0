"""What one bag fewer takes away: bags that are filled now bring what the last one sold brings."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import PARTIAL_BUDGET

__all__ = ["OneFewer"]


class OneFewer(Section):
    """One more bag is sold to who takes the next one, one fewer is taken from who got the last."""

    title = "One bag fewer"

    customers = uses(CustomerYear)
    one_more = uses(OneMore)

    @line("One bag fewer takes away", unit="money/bag_filled", source=PARTIAL_BUDGET)
    def takes_away(self) -> Expr:
        """What its crop brings from who got the last one, less what the bag and its crop cost in money."""
        dearer = self.customers.last_one - self.customers.next_one
        return self.one_more.bag_leaves + dearer * self.one_more.crop.taken_per_filled
