"""How badly things go in each case, in words beside the cases, for those who read them on paper."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["SizesTold"]


class SizesTold(Section):
    """Every size is typed on Inputs, and so is the least cash to keep."""

    title = "How badly"

    sizes = uses(StressSizes)
    cash = uses(MonthCash)

    @line("How badly: the least cash to keep, in words", unit="1")
    def least_cash(self) -> Expr:
        """In every case."""
        return say("least cash to keep: ", figure(self.cash.least_cash, 0, named=False))

    @line("How badly: prices, in words", unit="1")
    def prices(self) -> Expr:
        """Of every customer."""
        return say(figure(self.sizes.price, 0, named=False), " lower")

    @line("How badly: weight, in words", unit="1")
    def weight(self) -> Expr:
        """Of every bag."""
        return say(figure(self.sizes.weight, 0, named=False), " lower")

    @line("How badly: bags lost, in words", unit="1")
    def losses(self) -> Expr:
        """In the spawn run, and as whole loads."""
        points, loads = self.sizes.points, self.sizes.loads
        return say(figure(points, 0, named=False), " more, loads a quarter: ", figure(loads, 0, named=False))

    @line("How badly: rates, in words", unit="1")
    def rates(self) -> Expr:
        """On loans that float, and on the credit line."""
        return say(figure(self.sizes.rate, 1, named=False), " a year more")

    @line("How badly: costs, in words", unit="1")
    def costs(self) -> Expr:
        """Dearer than planned, in the order in which the case names them."""
        energy, materials, wages = self.sizes.energy, self.sizes.materials, self.sizes.wages
        return say(
            "by ",
            figure(energy, 0, named=False),
            ", ",
            figure(materials, 0, named=False),
            ", ",
            figure(wages, 0, named=False),
        )

    @line("How badly: the best customer, in words", unit="1")
    def customer(self) -> Expr:
        """At the lowest price."""
        return say(figure(self.sizes.moved, 0, named=False), " of it sold elsewhere")

    @line("How badly: late payers, in words", unit="1")
    def payers(self) -> Expr:
        """All customers."""
        return say("days later: ", figure(self.sizes.days, 0, named=False))

    @line("How badly: building, in words", unit="1")
    def building(self) -> Expr:
        """What is still to be bought, and openings and changes of the plan."""
        dearer, late = self.sizes.building, self.sizes.late
        return say("by ", figure(dearer, 0, named=False), ", weeks late: ", figure(late, 0, named=False))

    @line("How badly: a stop of the plant, in words", unit="1")
    def stop(self) -> Expr:
        """Until the first load is steamed again."""
        weeks, first = self.sizes.stopped_for, self.sizes.stopped_from
        return say("weeks: ", figure(weeks, 0, named=False), ", from week ", figure(first, 0, named=False))

    @line("How badly: a bad year, in words", unit="1")
    def bad_year(self) -> Expr:
        """All at once."""
        return say(
            "prices ",
            figure(self.sizes.bad_price, 0, named=False),
            ", weight ",
            figure(self.sizes.bad_weight, 0, named=False),
            ", lost ",
            figure(self.sizes.bad_points, 0, named=False),
            ", rates ",
            figure(self.sizes.bad_rate, 1, named=False),
        )
