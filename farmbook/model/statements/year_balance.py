"""The balance sheet when the plan starts and at the end of each year, at cost and at market."""

from __future__ import annotations

from farmbook.expr.functions import starting, total
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import PLAN_YEAR
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.model.statements.month_balance import MonthBalance
from farmbook.model.statements.start_balance import StartBalance
from farmbook.model.statements.years import at_year_end
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["YearBalance"]


class YearBalance(Section):
    """The same months, twelve apart."""

    title = "Balance sheet by year"

    years = uses(PlanYears)
    start = uses(StartBalance)
    month = uses(MonthBalance)

    cash = at_year_end("Cash", "Bank and till.", lambda self: (self.start.cash.cash, self.month.cash))
    receivables = at_year_end(
        "Owed by customers",
        "Invoices not yet paid.",
        lambda self: (self.start.cash.sales.opening_owed, self.month.receivables),
    )
    supplies = at_year_end(
        "Mix, bags and ties in stock",
        "At cost.",
        lambda self: (self.start.cash.supplies.opening_stock, self.month.supplies),
    )
    spawn = at_year_end(
        "Spawn bought ahead or growing", "At cost.", lambda self: (self.start.spawn.at_start, self.month.spawn)
    )
    bags_in_process = at_year_end(
        "Bags in process at cost",
        "By stage: see the counts and the value of each below.",
        lambda self: (self.start.bags.value_at_start, self.month.bags_in_process),
    )
    other_current = at_year_end(
        "Deposits, prepaid bills", "As typed.", lambda self: (self.start.other_current, self.month.other_current)
    )
    current_assets = at_year_end(
        "Current assets",
        "What turns into money within a year.",
        lambda self: (self.start.liquid + self.start.stock, self.month.current_assets),
    )
    fixed = at_year_end(
        "Equipment, land and buildings",
        "At cost less loss in value.",
        lambda self: (self.start.fixed, self.month.fixed),
    )
    total_assets = at_year_end(
        "Total assets", "All that is owned.", lambda self: (self.start.assets, self.month.total_assets)
    )
    payables = at_year_end(
        "Owed to suppliers",
        "Bills not yet paid.",
        lambda self: (self.start.cash.supplies.opening_owed, self.month.payables),
    )
    accrued_interest = at_year_end(
        "Interest not yet due",
        "Grown since the last payment.",
        lambda self: (self.start.accrued.at_start, self.month.accrued_interest),
    )
    credit_line = at_year_end(
        "Credit line", "Due at any time.", lambda self: (self.start.cash.line_owed, self.month.credit_line)
    )
    loans_current = at_year_end(
        "Loans due within a year",
        "The principal of the next twelve months.",
        lambda self: (self.start.cash.loans.due_at_start, self.month.loans_current),
    )
    other_short = at_year_end(
        "Sales tax and other short debts",
        "Other debts as typed.",
        lambda self: (self.start.other_short, self.month.other_short),
    )
    current_liabilities = at_year_end(
        "Current liabilities",
        "All that is due within a year, other debts with it.",
        lambda self: (self.start.due, self.month.current_liabilities),
    )
    loans_later = at_year_end(
        "Loans due later", "The rest of the principal.", lambda self: (self.start.later, self.month.loans_later)
    )
    total_liabilities = at_year_end(
        "Total liabilities",
        "All that is owed, other long debts with it.",
        lambda self: (self.start.liabilities, self.month.total_liabilities),
    )
    equity = at_year_end("Equity at cost", "The owner's own.", lambda self: (self.start.equity, self.month.equity))

    @line("Total assets at market", unit="money", axes=(PLAN_YEAR,))
    def assets_at_market(self) -> Expr:
        """At cost, and what market values were above it when the plan starts."""
        return starting(self.start.assets + self.start.above, self.total_assets + self.start.above)

    @line("Equity at market", unit="money", axes=(PLAN_YEAR,))
    def equity_at_market(self) -> Expr:
        """Tax on what would be gained by selling is not taken off."""
        return starting(self.start.equity + self.start.above, self.equity + self.start.above)

    @line("Your own at the end of the plan", unit="money")
    def equity_at_end(self) -> Expr:
        """At cost."""
        return total(self.equity * (self.years.last_month >= self.years.months.many), PLAN_YEAR)

    @line("Balance sheet: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "When the plan starts you own ",
            figure(self.start.assets, -2, named=False),
            " and owe ",
            figure(self.start.liabilities, -2, named=False),
            ": your own is ",
            figure(self.start.equity, -2, named=False),
            ". At the end of the plan it is ",
            figure(self.equity_at_end, -2, named=False),
            ", at cost.",
        )
