"""Year by year: income as it is earned, cash in three parts, and how what is your own moves."""

from __future__ import annotations

from farmbook.expr.functions import absolute, previous, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import PLAN_YEAR
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.statements.month_balance import MonthBalance
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.year_balance import YearBalance
from farmbook.model.statements.years import in_year
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, FARM_MANAGEMENT

__all__ = ["YearStatements"]


class YearStatements(Section):
    """Each ties to the balance sheet at the end of its year."""

    title = "Statements by year"

    years = uses(PlanYears)
    book = uses(MonthCash)
    income = uses(MonthIncome)
    month_balance = uses(MonthBalance)
    balance = uses(YearBalance)

    # Income

    sales = in_year("Year: sales", "Delivered, paid or not.", lambda self: self.income.sales)
    costs = in_year(
        "Year: costs of running",
        "Without what went into bags that are still there.",
        lambda self: self.income.costs,
    )
    left = in_year("Year: left before loss in value and interest", "Sales less costs.", lambda self: self.income.left)
    loss = in_year("Year: loss in value", "Depreciation.", lambda self: self.book.capital.loss)
    interest = in_year("Year: interest and loan fees", "As it grows, paid or not.", lambda self: self.income.interest)
    loan_interest = in_year(
        "Year: interest of loans alone", "As it grows, paid or not.", lambda self: self.income.loan_interest
    )
    other_interest = in_year(
        "Year: interest of the credit line, and loan fees",
        "As they are paid.",
        lambda self: self.book.line_interest + self.book.loans.fees,
    )
    before_tax = in_year(
        "Year: income from operations",
        "After loss in value and interest, before tax and household.",
        lambda self: self.income.before_tax,
    )
    tax = in_year("Year: tax set aside", "As on the cash statement.", lambda self: self.book.home.tax)
    after_tax = in_year("Year: income after tax", "For the household, and to keep.", lambda self: self.income.after_tax)

    # Cash

    received = in_year("Year: received from customers", "As they pay.", lambda self: self.book.sales.collected)
    paid_running = in_year(
        "Year: paid for running the farm",
        "With what is set aside for what nobody foresees.",
        lambda self: self.book.running + self.book.unforeseen,
    )
    paid_interest = in_year(
        "Year: paid as interest",
        "Loans and credit line.",
        lambda self: self.book.loans.interest + self.book.line_interest,
    )

    sales_tax = in_year(
        "Year: sales tax collected, less paid and paid over",
        "Nothing where it is not in cash.",
        lambda self: self.book.sales_tax.net,
    )

    @line("Year: cash from running the farm", unit="money", axes=(PLAN_YEAR,))
    def from_running(self) -> Expr:
        """After interest and tax, before the household."""
        return self.received + self.sales_tax - self.paid_running - self.paid_interest - self.tax

    bought = in_year("Year: bought and replaced", "Equipment of all kinds.", lambda self: self.book.invested)
    from_loans = in_year(
        "Year: loans drawn, less fees and repayment",
        "Interest is with running the farm.",
        lambda self: self.book.from_loans + self.book.loans.interest,
    )
    from_owner = in_year("Year: put in by the owner", "As typed.", lambda self: self.book.from_owner)

    @line("Year: from the credit line", unit="money", axes=(PLAN_YEAR,))
    def from_line(self) -> Expr:
        """Below zero: paid back."""
        return self.balance.credit_line - previous(self.balance.credit_line, PLAN_YEAR)

    drawn = in_year("Year: drawn by the household", "Nothing from a corporation.", lambda self: self.book.home.drawn)

    @line("Year: cash from loans, owner and household", unit="money", axes=(PLAN_YEAR,))
    def from_financing(self) -> Expr:
        """Loans, credit line and what is put in, less what the household draws."""
        return self.from_loans + self.from_line + self.from_owner - self.drawn

    @line("Year: cash at the end, by the three parts", unit="money", axes=(PLAN_YEAR,), source=ARITHMETIC)
    def closing(self) -> Expr:
        """Before, with running, less bought, with financing."""
        moved = self.from_running - self.bought + self.from_financing
        return starting(self.book.cash, previous(self.closing, PLAN_YEAR) + moved)

    @check(
        "Cash by its three parts is that of the balance sheet, in every year",
        kind="error",
        says="In some year cash from running, buying and financing is not that of the balance sheet: a formula was changed.",
    )
    def cash_agrees(self) -> Expr:
        """At the end of each."""
        return total(self.cash_apart, PLAN_YEAR) <= self.month_balance.rounding

    @line("Year: cash by its three parts, apart from the balance sheet", unit="money", axes=(PLAN_YEAR,))
    def cash_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        return absolute(self.closing - self.balance.cash)

    # The owner's own

    @line("Year: repaid on loans that are no list", unit="money")
    def unlisted(self) -> Expr:
        """Twelve months."""
        return self.month_balance.unlisted_repaid * MONTHS_A_YEAR

    @line("Year: your own at the end, by its moves", unit="money", axes=(PLAN_YEAR,), source=FARM_MANAGEMENT)
    def equity(self) -> Expr:
        """Before, with income after tax and what is put in, less what the household draws."""
        moved = self.after_tax + self.from_owner - self.drawn - self.unlisted
        return starting(self.balance.start.equity, previous(self.equity, PLAN_YEAR) + moved)

    @check(
        "Your own moves by income, household and what is put in, in every year",
        kind="error",
        says="In some year owned less owed did not move by income, household and owner's money: a formula was changed.",
    )
    def equity_agrees(self) -> Expr:
        """Against owned less owed at the end of each."""
        return total(self.equity_apart, PLAN_YEAR) <= self.month_balance.rounding

    @line("Year: your own by its moves, apart from owned less owed", unit="money", axes=(PLAN_YEAR,))
    def equity_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        return absolute(self.balance.total_assets - self.balance.total_liabilities - self.equity)
