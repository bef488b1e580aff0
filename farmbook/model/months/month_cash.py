"""Cash month by month: what comes and goes, before any credit line and with it, its lowest point, and what gets through."""

from __future__ import annotations

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    any_of,
    at,
    highest_of,
    lowest_of,
    maximum,
    minimum,
    negation,
    previous,
    ratio,
    starting,
    total,
)
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_bills import MonthBills
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.months.month_household import MonthHousehold
from farmbook.model.months.month_sales import MonthSales
from farmbook.model.months.month_sales_tax import MonthSalesTax
from farmbook.model.months.month_supplies import MonthSupplies
from farmbook.model.repaying.loan_months import LoanMonths
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["MonthCash"]


class MonthCash(Section):
    """Payments of a month come before some of its receipts, so the lowest point lies within it."""

    title = "Cash month by month"
    table = "opening"

    months = uses(PlanMonths)
    sales = uses(MonthSales)
    supplies = uses(MonthSupplies)
    bills = uses(MonthBills)
    capital = uses(MonthCapital)
    sales_tax = uses(MonthSalesTax)
    home = uses(MonthHousehold)
    loans = uses(LoanMonths)
    shocks = uses(Shocks)

    cash = number(
        "Cash on the first day of the plan",
        unit="money",
        usual=(0, 60000),
        hard=(-10000000, 100000000),
        optional=True,
        how="Bank and till of the farm, without money kept for tax. Left empty, nothing.",
    )
    least_cash = number(
        "Least cash to keep",
        unit="money",
        usual=(0, 20000),
        hard=(0, 100000000),
        default=0,
        how="Below it the credit line is drawn, above it the line is paid back.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    line_limit = number(
        "Credit line: limit",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        default=0,
        how="As agreed with the bank; 0 for none.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    line_rate = number(
        "Credit line: interest a year",
        unit="share",
        usual=(0.05, 0.14),
        hard=(0, 1),
        default=0.09,
        how="As agreed; charged each month on what was owed at its start.",
        source=COMMON_PRACTICE,
    )
    line_owed = number(
        "Credit line: owed on the first day of the plan",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        default=0,
        how="As the bank's statement says.",
        source=COMMON_PRACTICE,
    )
    contingency = number(
        "Put on top of all running payments, for what nobody foresees",
        unit="share",
        usual=(0, 0.15),
        hard=(0, 2),
        default=0,
        how="A new farm should count 5 to 15%; a running one whose records are good, little.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    early_receipts = number(
        "Share of a month's receipts that has come when its bills are paid",
        unit="share",
        usual=(0, 1),
        hard=(0, 1),
        default=0.5,
        how="Look at three months of bank statements: what had come in by the day on which most had gone out?",
        source=COMMON_PRACTICE,
    )

    put_in = number(
        "Owner's money put in",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        default=0,
        how="Money of the family that comes into the farm in the plan, beside cash on its first day.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    put_in_month = number(
        "Owner's money: put in in month of the plan",
        unit="count",
        usual=(1, 36),
        hard=(1, 84),
        default=1,
        how="1 for the first month of the plan.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # The month

    @line("Suppliers, wages and owner's pay in the month", unit="money", axes=(MONTH,))
    def supplies_and_wages(self) -> Expr:
        """Suppliers as they are paid; wages in the month itself."""
        return self.supplies.paid + self.bills.wages + self.bills.piece + self.home.pay

    @line("Running payments in the month", unit="money", axes=(MONTH,))
    def running(self) -> Expr:
        """With energy, bills and selling."""
        return self.supplies_and_wages + self.home.standing_and_selling

    @line("Set aside in the month for what nobody foresees", unit="money", axes=(MONTH,))
    def unforeseen(self) -> Expr:
        """A share of running payments."""
        return self.running * self.contingency

    @line("Bought and replaced in the month", unit="money", axes=(MONTH,))
    def invested(self) -> Expr:
        """Paid in that month."""
        return self.capital.bought + self.capital.replacing

    @line("Household and tax in the month", unit="money", axes=(MONTH,))
    def household_and_tax(self) -> Expr:
        """Drawn, and set aside."""
        return self.home.drawn + self.home.tax

    @line("All payments in the month, loans and line aside", unit="money", axes=(MONTH,))
    def paid_out(self) -> Expr:
        """Running, unforeseen, bought, household and tax."""
        return self.running + self.unforeseen + self.invested + self.home.drawn + self.home.tax

    @line("Left before loans and line in the month", unit="money", axes=(MONTH,))
    def before_loans(self) -> Expr:
        """What customers paid less all that, with sales tax that lies in cash."""
        return self.sales.collected - self.paid_out + self.sales_tax.net

    @line("Loan money that comes in the month, less fees", unit="money", axes=(MONTH,))
    def loan_money(self) -> Expr:
        """In the month in which a loan is drawn."""
        return self.loans.drawn - self.loans.fees

    @line("Loans in the month: drawn less fees and payments", unit="money", axes=(MONTH,))
    def from_loans(self) -> Expr:
        """Below zero: they take more than they bring."""
        return self.loan_money - self.loans.payments

    @line("Put in by the owner in the month", unit="money", axes=(MONTH,))
    def from_owner(self) -> Expr:
        """In the month that you give; a part of one counts to the next whole one."""
        month = self.months.number
        return self.put_in * (month >= self.put_in_month) * (month - 1 < self.put_in_month)

    @line("Left of the month before the credit line", unit="money", axes=(MONTH,))
    def net(self) -> Expr:
        """With loans, and what the owner puts in."""
        return self.sales.collected - self.paid_out + self.sales_tax.net + self.from_loans + self.from_owner

    @line("Cash at the end of the month, before any credit line", unit="money", axes=(MONTH,))
    def without_line(self) -> Expr:
        """As if there were none."""
        return starting(self.cash, previous(self.without_line, MONTH) + self.net)

    # The credit line

    @line("Cash at the start of the month", unit="money", axes=(MONTH,))
    def opening(self) -> Expr:
        """As the month before left it."""
        return previous(self.closing, MONTH)

    @line("Interest on the credit line in the month", unit="money", axes=(MONTH,))
    def line_interest(self) -> Expr:
        """On what was owed at its start."""
        return previous(self.on_line, MONTH) * (self.line_rate + self.shocks.rate_more) / MONTHS_A_YEAR

    @line("Cash in the month before the credit line moves", unit="money", axes=(MONTH,))
    def before_line(self) -> Expr:
        """After interest on it."""
        return previous(self.closing, MONTH) + self.net - self.line_interest

    @line("Owed on the credit line at the end of the month", unit="money", axes=(MONTH,))
    def on_line(self) -> Expr:
        """Drawn up to its limit when cash is below the least, paid back from what is above it."""
        wanted = previous(self.on_line, MONTH) + self.least_cash - self.before_line
        return starting(self.line_owed, minimum(maximum(wanted, 0), self.line_limit))

    @line("Cash at the end of the month", unit="money", axes=(MONTH,))
    def closing(self) -> Expr:
        """With what the line gave or took."""
        return starting(self.cash, self.before_line + self.on_line - previous(self.on_line, MONTH))

    @line("Cash missing beyond the credit line", unit="money", axes=(MONTH,))
    def missing(self) -> Expr:
        """Below the least cash to keep."""
        return maximum(self.least_cash - self.closing, 0)

    # Lowest points

    @line("Lowest cash at the end of a month", unit="money")
    def lowest(self) -> Expr:
        """In the whole plan; what there is at the start is not among them."""
        return lowest_of(self.closing, MONTH)

    @line("Months from the end of the plan in which cash is lowest", unit="count", axes=(MONTH,))
    def back_to_lowest(self) -> Expr:
        """1 in the last month; 0 where cash is higher."""
        return self._back_to(self.closing, self.lowest)

    def _back_to(self, cash: Expr, lowest: Expr) -> Expr:
        return (cash <= lowest + self.rounding) * (self.months.many + 1 - self.months.number)

    @line("Month of the lowest cash", unit="count")
    def lowest_month(self) -> Expr:
        """The first, if there are several."""
        return self.months.many + 1 - highest_of(self.back_to_lowest, MONTH)

    @line("Cash in the lowest month, drawn", unit="money", axes=(MONTH,))
    def lowest_drawn(self) -> Expr:
        """0 in all others, so that it can be marked."""
        month = self.months.number
        return self.closing * (month >= self.lowest_month) * (month <= self.lowest_month)

    @line("First day of the month of the lowest cash", unit="date")
    def lowest_day(self) -> Expr:
        """By the calendar."""
        return at(self.months.first_day, MONTH, self.lowest_month)

    @line("Cash when the month's bills are paid", unit="money", axes=(MONTH,))
    def within(self) -> Expr:
        """Only some of its receipts have come by then, and the credit line has not moved yet."""
        return self.before_line - self.sales.collected * (1 - self.early_receipts)

    @line("Lowest cash within a month", unit="money")
    def lowest_within(self) -> Expr:
        """When its bills are paid. Below zero, a bill waits for customers, or the credit line gives it for some days."""
        return lowest_of(self.within, MONTH)

    @line("Months from the end of the plan in which cash is lowest within it", unit="count", axes=(MONTH,))
    def back_to_lowest_within(self) -> Expr:
        """1 in the last month; 0 where cash is higher."""
        return self._back_to(self.within, self.lowest_within)

    @line("Month of the lowest cash within it", unit="count")
    def lowest_within_month(self) -> Expr:
        """The first, if there are several."""
        return self.months.many + 1 - highest_of(self.back_to_lowest_within, MONTH)

    @line("Most owed on the credit line", unit="money")
    def peak(self) -> Expr:
        """In the whole plan, its start with it."""
        return maximum(highest_of(self.on_line, MONTH), self.line_owed)

    @line("Months in which nothing is owed on the credit line", unit="count")
    def months_clear(self) -> Expr:
        """At their end; a lender wants a line to be clear for some."""
        return total(self.on_line <= 0, MONTH)

    @line("Most cash missing that the credit line cannot give", unit="money")
    def most_missing(self) -> Expr:
        """In the whole plan, when cash is lowest."""
        return maximum(self.least_cash - self.lowest, 0)

    @line("Number of a month with less cash than the least to keep", unit="count", axes=(MONTH,))
    def below_in(self) -> Expr:
        """At its end, with the credit line; 0 for a month with enough."""
        return self.months.number * (self.closing < self.least_cash - self.rounding)

    @line("Last month with less cash than the least to keep", unit="count")
    def last_below(self) -> Expr:
        """In the whole plan; 0 for none."""
        return highest_of(self.below_in, MONTH)

    @line("Months with less cash than the least to keep", unit="count")
    def months_below(self) -> Expr:
        """At their ends, with the credit line."""
        return total(self.closing < self.least_cash - self.rounding, MONTH)

    @line("Wages, bills and loan payments of a mean month", unit="money")
    def fixed_in_months(self) -> Expr:
        """Of all months of the plan."""
        paid = total(self.bills.wages + self.bills.bills_paid + self.loans.payments, MONTH)
        return ratio(paid, self.months.many)

    @line("Fixed payments of a month", unit="money")
    def fixed(self) -> Expr:
        """Wages, owner's pay, bills, energy of rooms, loans and household, in the mean of the plan's months."""
        return self.fixed_in_months + self.home.pay + self.home.drawn + self.bills.rooms_a_month

    @line("Months of fixed payments in hand when cash is lowest", unit="count")
    def months_in_hand(self) -> Expr:
        """Lenders like to see two or three."""
        return ratio(maximum(self.lowest, 0), self.fixed)

    # Money to get through the start

    @line("All that came and went so far, before loans and line", unit="money", axes=(MONTH,))
    def unfunded(self) -> Expr:
        """From nothing at the start of the plan."""
        return starting(0, previous(self.unfunded, MONTH) + self.before_loans)

    @line("The same when the month's bills are paid", unit="money", axes=(MONTH,))
    def unfunded_within(self) -> Expr:
        """Only some of its receipts have come by then."""
        return self.unfunded - self.sales.collected * (1 - self.early_receipts)

    @line("Money to get through the start", unit="money")
    def needed(self) -> Expr:
        """From cash, loans and line together: the deepest hole of the plan, the household paid."""
        return maximum(-1 * lowest_of(self.unfunded_within, MONTH), 0)

    @line("Money to get through the start: the answer", unit="1")
    def needed_answer(self) -> Expr:
        """What there is on the first day, and what loans bring, stand beside it."""
        return say(
            "Getting through takes ",
            figure(self.needed, -2, named=False),
            " of cash, loans and credit line together; there is ",
            figure(self.cash, -2, named=False),
            " when the plan starts, and loans bring ",
            figure(total(self.loans.drawn, MONTH), -2, named=False),
            ".",
        )

    # Checks and words

    @line("Owed on the credit line at the start, with all interest since", unit="money", axes=(MONTH,))
    def line_with_interest(self) -> Expr:
        """What cash would be without: by so much it differs from cash less what is owed."""
        return starting(self.line_owed, previous(self.line_with_interest, MONTH) + self.line_interest)

    @line("Cash that is a rounding of all that is paid out in the plan", unit="money")
    def rounding(self) -> Expr:
        """By so much the two ways may differ."""
        moved = total(self.running + self.sales.collected, MONTH)
        return (absolute(moved) + absolute(self.cash) + self.line_owed) * SUM_TOLERANCE

    @check(
        "Cash and credit line add up in every month",
        kind="error",
        says="In some month cash with the credit line is not that without it and what it gave: a formula of the months was changed.",
    )
    def cash_adds_up(self) -> Expr:
        """Two ways of counting."""
        apart = self.closing - self.on_line - self.without_line + self.line_with_interest
        return absolute(total(apart, MONTH)) <= self.rounding

    @check(
        "Cash is never missing",
        kind="alert",
        says="In some month of the plan cash falls below the least to keep, and the credit line cannot give it: see the sheet Cash.",
    )
    def enough(self) -> Expr:
        """At the end of each month, with the line. Fine as long as you have not said what cash there is."""
        return any_of(negation(self.given(self.cash)), self.most_missing <= self.rounding)

    @line("Credit line, in words", unit="1")
    def line_told(self) -> Expr:
        """The most that is owed on it."""
        return say("; the credit line is used up to ", figure(self.peak, -2, named=False))

    @line("Cash missing, in words", unit="1")
    def missing_told(self) -> Expr:
        """The most that the line cannot give."""
        return say(". At the worst ", figure(self.most_missing, -2, named=False), " is missing.")

    @line("Cash within a month, in words", unit="1")
    def within_told(self) -> Expr:
        """Where it is enough at the ends of months."""
        return say(
            ". Within month ",
            figure(self.lowest_within_month, 0, named=False),
            " it is ",
            figure(self.lowest_within, -2, named=False),
            " for some days.",
        )

    @line("Cash: the answer", unit="1")
    def answer(self) -> Expr:
        """With what was put in and borrowed as planned; within a month, when bills are paid before all customers have paid."""
        return say(
            "Cash is lowest at the end of month ",
            figure(self.lowest_month, 0, named=False),
            " of the plan: ",
            figure(self.lowest, -2, named=False),
            either(self.peak > 0, self.line_told, ""),
            either(self.enough, self.within_told, self.missing_told),
        )
