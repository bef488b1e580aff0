"""Income month by month as it is earned and used up, not as it is paid."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, previous, total, where
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import MONTH
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.statements.accrued import Accrued
from farmbook.model.statements.bags_value import BagsValue
from farmbook.model.statements.spawn_stock import SpawnStock
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_MANAGEMENT

__all__ = ["MonthIncome"]


def _rise(stock: Line) -> Expr:
    """From the end of the month before; nothing that is only a rounding of it."""
    more = stock - previous(stock, MONTH)
    return where(absolute(more) > stock * SUM_TOLERANCE, more, 0)


class MonthIncome(Section):
    """Tax is set aside on the profit of the sheet MonthCash, which knows no bags in process and no interest not yet paid."""

    title = "Income month by month"

    cash = uses(MonthCash)
    bags = uses(BagsValue)
    spawn = uses(SpawnStock)
    accrued = uses(Accrued)

    @line("Income: sales of the month", unit="money", axes=(MONTH,))
    def sales(self) -> Expr:
        """Delivered, paid or not."""
        return self.cash.sales.sales

    @line("Income: rise of spawn in stock in the month", unit="money", axes=(MONTH,))
    def spawn_rise(self) -> Expr:
        """What was spent on spawn that is still there."""
        return _rise(self.spawn.value)

    @line("Income: spawn used in the month", unit="money", axes=(MONTH,))
    def spawn_used(self) -> Expr:
        """Bought or started, less the rise of its stock; bills of the lab are in it."""
        return self.cash.supplies.spawn.cost - self.spawn_rise

    @line("Income: wages, picking by the piece and owner's pay of the month", unit="money", axes=(MONTH,))
    def wages(self) -> Expr:
        """A sole trader's own hours are no cost here."""
        return self.cash.bills.wages + self.cash.bills.piece + self.cash.home.pay

    @line("Income: costs before stock of bags", unit="money", axes=(MONTH,))
    def spent(self) -> Expr:
        """Mix, bags, spawn, work, energy, bills, selling; and what is set aside for what nobody foresees, as if spent."""
        goods = self.cash.supplies.used_up + self.spawn_used
        return goods + self.wages + self.cash.home.standing_and_selling + self.cash.unforeseen

    @line("Income: rise of bags in process in the month", unit="money", axes=(MONTH,))
    def bags_rise(self) -> Expr:
        """What was spent on bags that are still there. Below zero, there is less in them than before."""
        return _rise(self.bags.value)

    @line("Income: costs of running the farm in the month", unit="money", axes=(MONTH,))
    def costs(self) -> Expr:
        """Without what went into bags that are still there."""
        return self.spent - self.bags_rise

    @line("Income: left before loss in value and interest", unit="money", axes=(MONTH,))
    def left(self) -> Expr:
        """What cash leaves of the sales, with what stocks rise by."""
        return self.cash.home.left - self.cash.unforeseen + self.spawn_rise + self.bags_rise

    @check(
        "Income is sales less costs, in every month",
        kind="error",
        says="In some month what cash leaves with the rise of stocks is not sales less costs: a formula of the months was changed.",
    )
    def two_ways_agree(self) -> Expr:
        """Cost by cost, and from what cash leaves."""
        return total(self.apart, MONTH) <= self.cash.rounding

    @line("Income: sales less costs, apart from what cash leaves with the rise of stocks", unit="money", axes=(MONTH,))
    def apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        return absolute(self.sales - self.costs - self.left)

    @line("Income: interest of loans in the month", unit="money", axes=(MONTH,))
    def loan_interest(self) -> Expr:
        """Paid, with what has grown since the last payment."""
        return self.cash.loans.interest + self.accrued.interest - previous(self.accrued.interest, MONTH)

    @line("Income: interest and loan fees in the month", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """Of loans and the credit line."""
        return self.loan_interest + self.cash.line_interest + self.cash.loans.fees

    @line("Income from operations in the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def before_tax(self) -> Expr:
        """After loss in value and interest. What is replaced is in the books at what it fetches: no gain, no loss."""
        return self.left - self.cash.capital.loss - self.interest

    @line("Income: tax set aside in the month", unit="money", axes=(MONTH,))
    def tax(self) -> Expr:
        """As on the cash statement."""
        return self.cash.home.tax

    @line("Income after tax in the month", unit="money", axes=(MONTH,))
    def after_tax(self) -> Expr:
        """For the household, and to keep."""
        return self.before_tax - self.tax
