"""What the farm owns and owes at the end of each month, and what of it is its own."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    at,
    minimum,
    named,
    previous,
    running_sum,
    starting,
    total,
)
from farmbook.expr.nodes import Expr
from farmbook.model.axes import MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.statements.equipment_schedule import EquipmentSchedule
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.start_balance import StartBalance
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_MANAGEMENT

__all__ = ["MonthBalance"]


class MonthBalance(Section):
    """At cost. What is the owner's moves by income, by what the household takes and by what is put in: it is no remainder."""

    title = "Balance sheet by month"

    book = uses(MonthCash)
    income = uses(MonthIncome)
    start = uses(StartBalance)
    schedule = uses(EquipmentSchedule)

    # Owned

    @line("Owned: cash", unit="money", axes=(MONTH,))
    def cash(self) -> Expr:
        """Money set aside for tax is not in it."""
        return starting(self.book.cash, self.book.closing)

    @line("Owned: what customers owe", unit="money", axes=(MONTH,))
    def receivables(self) -> Expr:
        """Invoices not yet paid."""
        return starting(self.book.sales.opening_owed, self.book.sales.owed)

    @line("Owned: mix, bags and ties in stock", unit="money", axes=(MONTH,))
    def supplies(self) -> Expr:
        """At cost."""
        return starting(self.book.supplies.opening_stock, self.book.supplies.stock)

    @line("Owned: spawn in stock", unit="money", axes=(MONTH,))
    def spawn(self) -> Expr:
        """Bought ahead or growing."""
        return starting(self.start.spawn.at_start, self.income.spawn.value)

    @line("Owned: bags in process", unit="money", axes=(MONTH,))
    def bags_in_process(self) -> Expr:
        """At cost by stage; a bank lends little on them."""
        return starting(self.start.bags.value_at_start, self.income.bags.value)

    @line("Owned: deposits, prepaid bills and the like", unit="money", axes=(MONTH,))
    def other_current(self) -> Expr:
        """As typed; the plan does not move it."""
        return starting(self.start.other_current, previous(self.other_current, MONTH))

    @line("Owned: all that turns into money within a year", unit="money", axes=(MONTH,))
    def current_assets(self) -> Expr:
        """Current assets."""
        opening = self.start.liquid + self.start.stock
        return starting(opening, self.cash + self.receivables + self.stock + self.other_current)

    @line("Owned: all stock", unit="money", axes=(MONTH,))
    def stock(self) -> Expr:
        """Supplies, spawn, bags in process."""
        return starting(self.start.stock, self.supplies + self.spawn + self.bags_in_process)

    @line("Owned: equipment, land and buildings", unit="money", axes=(MONTH,))
    def fixed(self) -> Expr:
        """In the books; land and buildings as typed."""
        return starting(self.start.fixed, self.book.capital.value + self.start.land)

    @line("Owned: all", unit="money", axes=(MONTH,))
    def total_assets(self) -> Expr:
        """Total assets."""
        return starting(self.start.assets, self.current_assets + self.fixed)

    # Owed

    @line("Owed: to suppliers", unit="money", axes=(MONTH,))
    def payables(self) -> Expr:
        """Bills not yet paid."""
        return starting(self.book.supplies.opening_owed, self.book.supplies.owed)

    @line("Owed: interest grown since the last payments", unit="money", axes=(MONTH,))
    def accrued_interest(self) -> Expr:
        """Of loans that are not paid monthly."""
        return starting(self.start.accrued.at_start, self.income.accrued.interest)

    @line("Owed: on the credit line", unit="money", axes=(MONTH,))
    def credit_line(self) -> Expr:
        """Due at any time."""
        return starting(self.book.line_owed, self.book.on_line)

    @line("Owed: loans to be repaid within a year", unit="money", axes=(MONTH,))
    def loans_current(self) -> Expr:
        """The current portion."""
        return starting(self.book.loans.due_at_start, self.book.loans.due_next)

    @line("Owed: sales tax and other debts due within a year", unit="money", axes=(MONTH,))
    def other_short(self) -> Expr:
        """Sales tax not yet paid over; the plan keeps other debts as they are."""
        return starting(self.start.other_short, self.book.sales_tax.owed + self.start.other_due)

    @line("Owed: all that is due within a year", unit="money", axes=(MONTH,))
    def current_liabilities(self) -> Expr:
        """Current liabilities."""
        short = self.payables + self.accrued_interest + self.credit_line + self.loans_current
        return starting(self.start.due, short + self.other_short)

    @line("Owed: loans to be repaid later", unit="money", axes=(MONTH,))
    def loans_later(self) -> Expr:
        """What is owed, less what is due within a year."""
        return starting(self.start.later, self.book.loans.owed - self.book.loans.due_next)

    @line("Owed: all", unit="money", axes=(MONTH,))
    def total_liabilities(self) -> Expr:
        """Total liabilities; with other long debts."""
        return starting(self.start.liabilities, self.current_liabilities + self.loans_later + self.start.other_long)

    # The owner's own

    @line("Repaid in a month on loans that are no list", unit="money")
    def unlisted_repaid(self) -> Expr:
        """Loans in one sum stand on no balance sheet, so what repays them is money gone."""
        return self.book.loans.one_repaid * (1 - self.book.loans.loans.listed)

    @line("The owner's own at the end of the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def equity(self) -> Expr:
        """Before, with income after tax, less what the household draws, with what the owner puts in."""
        taken = self.book.home.drawn + self.unlisted_repaid
        step = previous(self.equity, MONTH) + self.income.after_tax - taken + self.book.from_owner
        return starting(self.start.equity, step)

    # Whether it balances

    @line("Balance sheet: a rounding of all that stands on it", unit="money")
    def rounding(self) -> Expr:
        """By so much the ways of counting may differ, all months together."""
        return self.sizes * SUM_TOLERANCE + self.book.rounding

    @line("Balance sheet: all that stands on it, all months together", unit="money")
    def sizes(self) -> Expr:
        """Owned and owed."""
        return absolute(total(self.total_assets + self.total_liabilities, MONTH))

    @check(
        "The balance sheet balances, in every month",
        kind="error",
        says="In some month what is owned is not what is owed and what is your own: a formula of the months was changed.",
    )
    def balances(self) -> Expr:
        """Your own is counted forward by income, not as what is left."""
        return total(self.balance_apart, MONTH) <= self.rounding

    @line("Balance sheet: owned apart from owed and your own", unit="money", axes=(MONTH,))
    def balance_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        return absolute(self.total_assets - self.total_liabilities - self.equity)

    @check(
        "Cash on the balance sheet is that of the cash statement, in every month",
        kind="error",
        says="In some month cash on the balance sheet is not what came and went with the credit line: a formula was changed.",
    )
    def cash_agrees(self) -> Expr:
        """Cash before any credit line, with what the line gave, less its interest."""
        return total(self.cash_apart, MONTH) <= self.rounding

    @line("Balance sheet: cash apart from the cash statement", unit="money", axes=(MONTH,))
    def cash_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        line_gave = self.credit_line - self.book.line_with_interest
        return absolute(self.cash - self.book.without_line - line_gave)

    @line("Loans owed, by what was borrowed and paid", unit="money", axes=(MONTH,))
    def debt_by_payments(self) -> Expr:
        """Before, with what came, less payments that are no interest."""
        repaid = self.book.loans.payments - self.book.loans.interest
        step = previous(self.debt_by_payments, MONTH) + self.book.loans.drawn - repaid
        return starting(self.book.loans.owed_at_start, step)

    @check(
        "Debt on the balance sheet is that of the loan schedule, in every month",
        kind="error",
        says="In some month loans on the balance sheet are not what was borrowed less what was repaid: a formula was changed.",
    )
    def debt_agrees(self) -> Expr:
        """By payments and interest."""
        return total(self.debt_apart, MONTH) <= self.rounding

    @line("Balance sheet: loans apart from what was borrowed and repaid", unit="money", axes=(MONTH,))
    def debt_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign; nothing where loans stand as one sum."""
        apart = self.loans_current + self.loans_later - self.debt_by_payments
        return absolute(apart) * self.book.loans.loans.listed

    @line("What customers owe, apart from the schedule of their payments", unit="money")
    def customers_apart(self) -> Expr:
        """Added up over all months, by when it went there and how long each takes to pay."""
        sales = self.book.sales
        return absolute(total(self.receivables - sales.opening_left, MONTH) - sales.owed_counted)

    @check(
        "What customers owe is what lies too few months back, in every month",
        kind="error",
        says="In some month unpaid invoices on the balance sheet are not the sales that are not yet due: a formula was changed.",
    )
    def receivables_agree(self) -> Expr:
        """Another way of counting."""
        return self.customers_apart <= self.rounding

    @check(
        "What suppliers are owed is what was bought and not yet paid, in every month",
        kind="error",
        says="In some month bills unpaid on the balance sheet are not what was bought less what was paid: a formula was changed.",
    )
    def payables_agree(self) -> Expr:
        """Another way of counting."""
        return total(self.payables_apart, MONTH) <= self.rounding

    @line("Balance sheet: owed to suppliers apart from what was bought and paid", unit="money", axes=(MONTH,))
    def payables_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        supplies = self.book.supplies
        owed = supplies.purchases_so_far - supplies.paid_so_far + supplies.opening_left
        return absolute(self.payables - owed)

    @check(
        "Equipment on the balance sheet is that of its list, in every month",
        kind="error",
        says="In some month equipment on the balance sheet is not what each item cost less its months of loss: a formula was changed.",
    )
    def fixed_agrees(self) -> Expr:
        """Land and buildings aside. Loss in one sum is of no item, so it is counted by months."""
        return total(self.fixed_apart, MONTH) <= self.rounding

    @line("Balance sheet: equipment apart from its list", unit="money", axes=(MONTH,))
    def fixed_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign."""
        return absolute(self.fixed - self.start.land - self.schedule.value)

    @check(
        "What is due within a year is the principal of the next twelve months",
        kind="error",
        says="In some month loans due within a year are not the principal of the next twelve months: a formula was changed.",
    )
    def current_portion_agrees(self) -> Expr:
        """Wherever the plan has these months, and no loan comes in them."""
        return total(self.due_apart, MONTH) + self.due_apart_at_start <= self.rounding

    @line("Loans due in the first year, apart from principal paid in it", unit="money")
    def due_apart_at_start(self) -> Expr:
        """0 where a loan comes in that year."""
        first = named(MONTHS_A_YEAR)
        apart = self.start.cash.loans.due_at_start - at(self.repaid_so_far, MONTH, first)
        return absolute(apart) * (at(self.drawn_so_far, MONTH, first) <= 0)

    @line("Loans repaid so far", unit="money", axes=(MONTH,))
    def repaid_so_far(self) -> Expr:
        """From the start of the plan, of those that stand on the balance sheet."""
        return running_sum((self.book.loans.payments - self.book.loans.interest) * self.book.loans.loans.listed, MONTH)

    @line("Loans drawn so far", unit="money", axes=(MONTH,))
    def drawn_so_far(self) -> Expr:
        """From the start of the plan."""
        return running_sum(self.book.loans.drawn, MONTH)

    @line("Month a year on, as far as the plan goes", unit="count", axes=(MONTH,))
    def year_on(self) -> Expr:
        """Counted from the start of the plan."""
        return minimum(self.book.months.number + MONTHS_A_YEAR, self.book.months.many)

    @line("Month whose next twelve show what is due", unit="flag", axes=(MONTH,))
    def shows_due(self) -> Expr:
        """They are in the plan, and no loan comes in them."""
        in_plan = self.year_on >= self.book.months.number + MONTHS_A_YEAR
        return in_plan * (at(self.drawn_so_far, MONTH, self.year_on) <= self.drawn_so_far)

    @line("Loans due within a year, apart from principal paid in it", unit="money", axes=(MONTH,))
    def due_apart(self) -> Expr:
        """0 in months that do not show it."""
        paid = at(self.repaid_so_far, MONTH, self.year_on) - self.repaid_so_far
        return absolute(self.loans_current - paid) * self.shows_due
