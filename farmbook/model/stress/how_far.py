"""How far prices or the weight could fall before a lender objects, in a sentence."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.stress.reverse_price import PriceToAsked
from farmbook.model.stress.reverse_weight import WeightToAsked
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.model.stress.to_lose import ToLoseOfAsked
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["HowFar"]


class HowFar(Section):
    """Each alone, in a typical year."""

    title = "How far could it fall?"

    sizes = uses(StressSizes)
    to_lose = uses(ToLoseOfAsked)
    price = uses(PriceToAsked)
    weight = uses(WeightToAsked)

    @line("How far, where coverage is as wanted", unit="1")
    def falls_told(self) -> Expr:
        """Each alone."""
        return say(
            "Until coverage of a typical year is ",
            figure(0 + self.sizes.covenant, 2, named=False),
            ", prices could fall ",
            self.price.told,
            ", or the weight ",
            self.weight.told,
            ".",
        )

    @line("How far, where it is not", unit="1")
    def less_told(self) -> Expr:
        """Then nothing may fall."""
        return say(
            "Coverage of a typical year is less than ", figure(0 + self.sizes.covenant, 2, named=False), " as planned."
        )

    @line("How far, where loans are paid", unit="1")
    def paying_told(self) -> Expr:
        """One of the two."""
        return say(either(self.to_lose.now, self.falls_told, self.less_told))

    @line("How far could it fall, in a sentence", unit="1")
    def told(self) -> Expr:
        """It is a typical year, without the changes of the plan; the table above has years of the plan too."""
        pays = self.to_lose.coverage.typical_payments > 0
        return say(either(pays, self.paying_told, "No loan is paid in a typical year: there is nothing to cover."))
