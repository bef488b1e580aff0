"""What the household takes, and the tax set aside, month by month."""

from __future__ import annotations

from farmbook.expr.functions import joined, maximum, previous, starting
from farmbook.expr.nodes import Expr
from farmbook.model.axes import MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_bills import MonthBills
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.months.month_sales import MonthSales
from farmbook.model.months.month_supplies import MonthSupplies
from farmbook.model.place.farm_plan import Farm
from farmbook.model.repaying.loan_months import LoanMonths
from farmbook.model.year.household import Household
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["MonthHousehold"]


class MonthHousehold(Section):
    """A sole trader draws what the family needs; the owner of a corporation gets a wage, which is a cost."""

    title = "Household and tax month by month"
    table = "household"

    farm = uses(Farm)
    months = uses(PlanMonths)
    household = uses(Household)
    sales = uses(MonthSales)
    supplies = uses(MonthSupplies)
    bills = uses(MonthBills)
    capital = uses(MonthCapital)
    loans = uses(LoanMonths)

    owner_pay = number(
        "Corporation: owner's pay a year",
        unit="money/year",
        usual=(10000, 120000),
        hard=(0, 10000000),
        default=0,
        how="Before payroll tax. Read for a corporation only; a sole trader draws what the household needs.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Household money drawn in a month", unit="money")
    def drawn(self) -> Expr:
        """Living and debts, less income from elsewhere; never below zero. Nothing is drawn from a corporation."""
        needed = self.household.goes - self.household.other_income
        return joined(maximum(needed, 0), "money") / MONTHS_A_YEAR * (1 - self.household.incorporated)

    @line("Owner's pay in a month, payroll tax with it", unit="money")
    def pay(self) -> Expr:
        """Of a corporation."""
        a_year = self.owner_pay * (1 + self.farm.payroll_extra) * self.household.incorporated
        return joined(a_year, "money") / MONTHS_A_YEAR

    # Profit and tax

    @line("Goods and work used in the month", unit="money", axes=(MONTH,))
    def goods_and_work(self) -> Expr:
        """Mix, bags and spawn for what is filled or ordered; wages and picking by the piece."""
        return self.supplies.used_up + self.supplies.spawn.cost + self.bills.wages + self.bills.piece + self.pay

    @line("Energy, bills and selling in the month", unit="money", axes=(MONTH,))
    def standing_and_selling(self) -> Expr:
        """As they fall due."""
        return self.bills.energy + self.bills.bills_paid + self.sales.selling

    @line("Left of the month's sales after costs", unit="money", axes=(MONTH,))
    def left(self) -> Expr:
        """Before loss in value and interest."""
        return self.sales.sales - self.goods_and_work - self.standing_and_selling

    @line("Profit of the month, before interest on the credit line", unit="money", axes=(MONTH,))
    def profit(self) -> Expr:
        """After loss in value and interest on loans."""
        return self.left - self.capital.loss - self.loans.interest

    @line("Profit of the year of the plan so far", unit="money", axes=(MONTH,))
    def profit_of_year(self) -> Expr:
        """It begins anew every twelve months."""
        before = previous(self.profit_of_year, MONTH) * (1 - self.months.begins_year)
        return starting(0, before + self.profit)

    @line("Tax set aside in the year of the plan so far", unit="money", axes=(MONTH,))
    def tax_of_year(self) -> Expr:
        """Nothing while the year has a loss."""
        return starting(0, maximum(self.profit_of_year, 0) * self.household.tax_slope)

    @line("Tax set aside in the month", unit="money", axes=(MONTH,))
    def tax(self) -> Expr:
        """Below zero where a later loss frees what was set aside in the same year."""
        return self.tax_of_year - previous(self.tax_of_year, MONTH) * (1 - self.months.begins_year)
