"""The last year of the plan beside a typical year: by how much they differ, and why."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import absolute, any_of, joined, ratio, total
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import MONTH, STEP_UP
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_household import MonthHousehold
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.schedule.plan_changes import PlanChanges
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["LastYear"]

NEAR_ENOUGH: Final = Constant(
    0.1, "near_a_typical_year", label="How far the last year of the plan may be from a typical one", unit=unit("share"),
    source=COMMON_PRACTICE.key, note="Our own choice.",
)  # fmt: skip


class LastYear(Section):
    """The months of the last twelve, whatever the plan changes until then."""

    title = "The last year of the plan beside a typical year"

    months = uses(PlanMonths)
    changes = uses(PlanChanges)
    year = uses(Year)
    totals = uses(MonthTotals)
    home = uses(MonthHousehold)

    @line("Month is in the last year of the plan", unit="flag", axes=(MONTH,))
    def counts(self) -> Expr:
        """The last twelve."""
        return self.months.number > self.months.many - MONTHS_A_YEAR

    @line("Last year of the plan: bags filled", unit="bag_filled")
    def bags(self) -> Expr:
        """In twelve months."""
        return total(self.totals.filled * self.counts, MONTH)

    @line("Last year of the plan: bags filled, of those of a typical year", unit="share")
    def bags_share(self) -> Expr:
        """More where fewer weeks are shut than weeks worked say, or the plan has grown."""
        return ratio(self.bags, joined(self.year.farm.bags_filled_a_year, "bag_filled"))

    @line("Last year of the plan: weight sold", unit="kg_taken")
    def sold(self) -> Expr:
        """In twelve months."""
        return total(self.totals.sold * self.counts, MONTH)

    @line("Last year of the plan: spoiled", unit="kg_taken")
    def spoiled(self) -> Expr:
        """Weeks that bring more than customers take lose it; a typical year knows months only."""
        return total(self.totals.spoiled * self.counts, MONTH)

    @line("Last year of the plan: sales", unit="money")
    def sales(self) -> Expr:
        """In twelve months."""
        return total(self.home.sales.sales * self.counts, MONTH)

    @line("Last year of the plan: goods and work", unit="money")
    def goods_and_work(self) -> Expr:
        """In twelve months."""
        return total(self.home.goods_and_work * self.counts, MONTH)

    @line("Last year of the plan: energy, bills and selling", unit="money")
    def standing_and_selling(self) -> Expr:
        """In twelve months."""
        return total(self.home.standing_and_selling * self.counts, MONTH)

    @line("Last year of the plan: left after costs paid in money", unit="money")
    def left(self) -> Expr:
        """Before loss in value, interest and tax."""
        return self.sales - self.goods_and_work - self.standing_and_selling

    @line("Typical year: left after costs paid in money", unit="money")
    def typical_left(self) -> Expr:
        """As on the sheet Year."""
        return joined(self.year.cash_profit, "money")

    @line("Last year of the plan leaves more than a typical year", unit="money")
    def more(self) -> Expr:
        """Below zero: less."""
        return self.left - self.typical_left

    @line("Of that: bags filled more or fewer", unit="money")
    def by_bags(self) -> Expr:
        """At what a typical year leaves after goods and selling, bag for bag."""
        per_bag = self.year.customers.takings_in_all - self.year.goods - self.year.selling
        return joined(per_bag, "money") * (self.bags_share - 1)

    @line("Of that: wages in weeks that a typical year does not count", unit="money")
    def by_wages(self) -> Expr:
        """The roster is paid in weeks that are shut too. Below zero: it costs more."""
        paid = total((self.home.bills.wages + self.home.bills.piece) * self.counts, MONTH)
        return joined(self.year.hours.labour_cost, "money") - paid - self.home.pay * MONTHS_A_YEAR

    @line("Of that: the rest", unit="money")
    def by_rest(self) -> Expr:
        """Customers who buy in weeks that are shut too, seasons of yield and energy, whole bags of spawn, loads part full."""
        return self.more - self.by_bags - self.by_wages

    @line("Last year of the plan, of the takings apart from a typical year", unit="share")
    def apart(self) -> Expr:
        """The difference that bags and wages do not explain, over a typical year's takings."""
        return ratio(absolute(self.by_rest), joined(self.year.customers.takings_in_all, "money"))

    @line("Last year of the plan, in a sentence", unit="1")
    def told(self) -> Expr:
        """Why the two differ."""
        return say(
            "The last year of the plan leaves ",
            figure(absolute(self.more), -2, named=False),
            either(self.more < 0, " less", " more"),
            " than a typical year, before loss in value and interest: ",
            figure(self.by_bags, -2, named=False),
            " by bags, ",
            figure(self.by_wages, -2, named=False),
            " by wages on the roster, ",
            figure(self.by_rest, -2, named=False),
            " by all else.",
        )

    @line("Changes of the plan", unit="count")
    def many_changes(self) -> Expr:
        """Rows in use."""
        return total(self.changes.in_use, STEP_UP)

    @check(
        "The last year of the plan is near a typical year",
        kind="alert",
        says="The last year of the plan and a typical year differ by more than bags and wages explain: see the sheet Cash for why.",
    )
    def near(self) -> Expr:
        """Fine where the plan changes on the way."""
        return any_of(self.many_changes > 0, self.apart <= NEAR_ENOUGH)
