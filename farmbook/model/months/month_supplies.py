"""Mix, bags and ties month by month: used, kept in stock, bought; and what is owed to suppliers."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    at,
    joined,
    maximum,
    previous,
    running_sum,
    starting,
    total,
    where,
    whole_down,
)
from farmbook.expr.nodes import Expr
from farmbook.model.axes import MONTH, WEEK
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_sales import MEAN_MONTH
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.schedule.filling import Filling
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["MonthSupplies"]


def paid_later(then: Expr, so_far: Expr, of_month: Expr, still: Expr) -> Expr:
    """What is paid when all up to a month is due, but for that of the month itself which is paid a month later still."""
    return where(then > 0, at(so_far, MONTH, then) - still * at(of_month, MONTH, then), 0)


class MonthSupplies(Section):
    """Stock is kept for so many full weeks; what is used and added to it is bought, and paid so many days later."""

    title = "Supplies month by month"
    table = "opening"

    months = uses(PlanMonths)
    filling = uses(Filling)
    totals = uses(MonthTotals)
    spawn = uses(MonthSpawn)
    year = uses(Year)
    shocks = uses(Shocks)

    supply_weeks = number(
        "Weeks for which mix and bags are kept in stock",
        unit="count",
        usual=(1, 8),
        hard=(0, 104),
        default=3,
        how="What lies there just before a delivery and just after it, halved, over what a week takes.",
        source=COMMON_PRACTICE,
    )
    supplier_days = number(
        "Days until you pay for mix, bags and spawn",
        unit="day",
        usual=(0, 45),
        hard=(0, 365),
        default=14,
        how="From delivery to the money leaving the bank, the mean of the last ten invoices.",
        source=COMMON_PRACTICE,
    )
    owed_to_suppliers = number(
        "What you owe suppliers on the first day of the plan",
        unit="money",
        usual=(0, 20000),
        hard=(0, 100000000),
        optional=True,
        how="Bills not yet paid for mix, bags and spawn. Left empty, it is worked out of a running farm.",
    )

    # Stock

    @line("Mix, bag and ties of a bag filled in the plan", unit="money/bag_filled")
    def for_a_bag(self) -> Expr:
        """As on the sheet Mixing; more in a case in which they cost more."""
        return self.year.bag.material_cost * self.shocks.materials

    @line("Mix, bags and ties used in the month", unit="money", axes=(MONTH,))
    def used_up(self) -> Expr:
        """For all bags filled, lost ones too."""
        return self.totals.filled * self.for_a_bag

    @line("Mix, bags and ties of a full week", unit="money", axes=(MONTH,))
    def full_week(self) -> Expr:
        """As planned at the end of the month, shut or not."""
        bags = at(self.filling.full_bags, WEEK, self.months.whole)
        return bags * self.for_a_bag

    @line("Stock of supplies when the plan starts", unit="money")
    def opening_stock(self) -> Expr:
        """Of a running farm the weeks that you keep; of a new one none."""
        a_week = joined(self.filling.farm.bags_filled_a_week, "bag_filled") * self.year.bag.material_cost
        return a_week * self.supply_weeks * (1 - self.filling.farm.is_new)

    @line("Mix, bags and ties bought in the month", unit="money", axes=(MONTH,))
    def bought(self) -> Expr:
        """What is used, and what brings the stock to the weeks that you keep."""
        wanted = self.full_week * self.supply_weeks
        return maximum(self.used_up + wanted - previous(self.stock, MONTH), 0)

    @line("Stock of supplies at the end of the month", unit="money", axes=(MONTH,))
    def stock(self) -> Expr:
        """Before, with what was bought, less what was used."""
        return starting(self.opening_stock, previous(self.stock, MONTH) + self.bought - self.used_up)

    # What is owed

    @line("Mix, bags and spawn bought in the month", unit="money", axes=(MONTH,))
    def purchases(self) -> Expr:
        """On the suppliers' bills."""
        return self.bought + self.spawn.cost

    @line("Mix, bags and spawn bought so far", unit="money", axes=(MONTH,))
    def purchases_so_far(self) -> Expr:
        """From the start of the plan."""
        return running_sum(self.purchases, MONTH)

    @line("Months until suppliers are paid", unit="count")
    def lag(self) -> Expr:
        """Days over those of a month on average."""
        return self.supplier_days / MEAN_MONTH

    @line("Whole months until suppliers are paid", unit="count")
    def lag_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.lag)

    @line("Part of a month until suppliers are paid", unit="share")
    def lag_part(self) -> Expr:
        """The rest."""
        return self.lag - self.lag_whole

    @line("Month up to which purchases are due", unit="count", axes=(MONTH,))
    def due_up_to(self) -> Expr:
        """Whole months back; 0 or less while none are."""
        return self.months.number - self.lag_whole

    @line("Paid to suppliers so far, of the plan's purchases", unit="money", axes=(MONTH,))
    def paid_so_far(self) -> Expr:
        """All that was bought whole months back, but for the part of its last month that is paid a month later still."""
        return starting(0, paid_later(self.due_up_to, self.purchases_so_far, self.purchases, self.lag_part))

    @line("Mix, bags and spawn of a typical month", unit="money")
    def typical(self) -> Expr:
        """A twelfth of a typical year."""
        return joined(self.year.goods, "money") / MONTHS_A_YEAR

    @line("Owed to suppliers when the plan starts", unit="money")
    def opening_owed(self) -> Expr:
        """As typed; or of a running farm typical months, for as long as you take to pay."""
        worked = self.typical * self.lag * (1 - self.filling.farm.is_new)
        return where(self.given(self.owed_to_suppliers), self.owed_to_suppliers, worked)

    @line("Still owed to suppliers of what was owed at the start", unit="money", axes=(MONTH,))
    def opening_left(self) -> Expr:
        """So much each month, at the pace of a typical month."""
        return starting(self.opening_owed, maximum(self.opening_owed - self.months.number * self.typical, 0))

    @line("Paid to suppliers in the month", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """Of the plan's purchases, and of what was owed at the start."""
        earlier = previous(self.opening_left, MONTH) - self.opening_left
        return self.paid_so_far - previous(self.paid_so_far, MONTH) + earlier

    @line("Owed to suppliers at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """Before, with what was bought, less what was paid."""
        return starting(self.opening_owed, previous(self.owed, MONTH) + self.purchases - self.paid)

    @line("Purchases that are a rounding of all purchases of the plan", unit="money")
    def rounding(self) -> Expr:
        """By so much the two ways may differ, whatever their signs."""
        return (absolute(total(self.purchases, MONTH)) + absolute(self.opening_owed)) * SUM_TOLERANCE

    @check(
        "Supplies are paid or owed in every month",
        kind="error",
        says="In some month what suppliers were paid and are owed is not what was bought: a formula of the months was changed.",
    )
    def supplies_add_up(self) -> Expr:
        """Two ways of counting what is owed."""
        apart = self.owed - self.purchases_so_far + self.paid_so_far - self.opening_left
        return absolute(total(apart, MONTH)) <= self.rounding
