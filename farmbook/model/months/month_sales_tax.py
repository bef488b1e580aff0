"""Sales tax or VAT in and out of cash: collected with what customers pay, paid with purchases, paid over to the tax office."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    joined,
    maximum,
    named,
    previous,
    ratio,
    starting,
    total,
    whole_down,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import MONTH, SERVED
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_bills import MonthBills
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.months.month_sales import MonthSales
from farmbook.model.months.month_supplies import MonthSupplies
from farmbook.sections.declare import NumberInput, Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["MonthSalesTax"]

NOT_IN_CASH: Final = Option("not in cash", "not in cash")
IN_CASH: Final = Option("in cash", "in cash")
EVERY_MONTH: Final = Option("each month", "each month")
EVERY_QUARTER: Final = Option("each quarter", "each quarter")
EVERY_YEAR: Final = Option("each year", "each year")

MONTHS_OF_A_QUARTER: Final = Constant(
    3, "months_of_a_quarter", label="Months of a quarter", unit=unit("count"), source=ARITHMETIC.key
)


def _rate(label: str, how: str) -> NumberInput:
    """Tax on purchases that the tax office gives back."""
    return number(
        label, unit="share", usual=(0, 0.25), hard=(0, 1), default=0, how=how, source=COMMON_PRACTICE, decided=True
    )


class MonthSalesTax(Section):
    """All by when money moves. Tax that nobody gives back is a cost: type it in the cost, and leave its rate at 0."""

    title = "Sales tax month by month"
    table = "sales_tax"

    months = uses(PlanMonths)
    sales = uses(MonthSales)
    supplies = uses(MonthSupplies)
    bills = uses(MonthBills)
    capital = uses(MonthCapital)

    counted = choice(
        "Sales tax or VAT that you pass on",
        NOT_IN_CASH,
        IN_CASH,
        default=NOT_IN_CASH,
        how="In cash: it lies in your bank until the tax office gets it. Read where tax on sales is passed on.",
        source=COMMON_PRACTICE,
    )
    paid_over_each = choice(
        "Sales tax or VAT: paid to the tax office",
        EVERY_MONTH,
        EVERY_QUARTER,
        EVERY_YEAR,
        default=EVERY_QUARTER,
        how="As the office asks; months, quarters and years of the calendar. It is paid in the month after.",
        source=COMMON_PRACTICE,
    )
    on_supplies = _rate(
        "Sales tax or VAT on mix, bags and spawn, given back",
        "Tax on the cost without it, the mean of your invoices. Tax that is not given back: 0, and type it in the cost.",
    )
    on_bills = _rate(
        "Sales tax or VAT on energy and bills, given back",
        "The mean over all of them; rent and insurance often bear none.",
    )
    on_bought = _rate(
        "Sales tax or VAT on things bought and replaced, given back",
        "Steamer, lab and the list of things, on the price without it.",
    )
    owed_first = number(
        "Sales tax or VAT owed to the tax office on the first day of the plan",
        unit="money",
        usual=(0, 10000),
        hard=(-10000000, 100000000),
        default=0,
        how="Collected by then and not yet paid over, less what you paid yourself. Below zero: the office owes it.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Sales tax is in cash", unit="flag")
    def in_cash(self) -> Expr:
        """Where you say so, and pass it on."""
        return self.chose(self.counted, IN_CASH) * self.sales.in_turn.customers.registered

    @line("Sales tax: months from one payment to the next", unit="count")
    def period(self) -> Expr:
        """1, 3 or 12; a word that is no option counts as every month, and a check names it."""
        quarter = self.chose(self.paid_over_each, EVERY_QUARTER) * named(MONTHS_OF_A_QUARTER)
        year = self.chose(self.paid_over_each, EVERY_YEAR) * named(MONTHS_A_YEAR)
        return maximum(quarter + year, 1)

    @line("Sales tax owed when the plan starts", unit="money")
    def opening_owed(self) -> Expr:
        """As typed."""
        return self.owed_first * self.in_cash

    # Collected

    @line("In turn: tax on takings, of takings without it", unit="share", axes=(SERVED,))
    def share(self) -> Expr:
        """By what is inside the price of each."""
        customers = self.sales.in_turn.customers
        tax = self.sales.in_turn.of_customer(customers.tax_in_price * customers.share_sold)
        return ratio(joined(tax, "money/kg_taken"), self.sales.in_turn.takings)

    @line("Tax on typical months that wait to be paid", unit="money")
    def waiting(self) -> Expr:
        """For as long as each customer takes to pay."""
        return total(self.sales.typical_month * self.sales.lag * self.share, SERVED)

    @line("Tax on what was owed at the start, of that without it", unit="share")
    def opening_share(self) -> Expr:
        """The mean of those who pay later."""
        return ratio(self.waiting, self.sales.waiting)

    @line("Tax paid in the month, on the plan's sales", unit="money", axes=(MONTH,))
    def on_sales(self) -> Expr:
        """Customer by customer, with what each pays."""
        sales = self.sales
        paid = sales.due * sales.paid_first + previous(sales.due, MONTH) * sales.paid_later_still
        return total(paid * self.share, SERVED)

    @line("Sales tax collected in the month", unit="money", axes=(MONTH,))
    def collected(self) -> Expr:
        """With what customers pay, for what was owed at the start too."""
        earlier = self.sales.collected - self.sales.paid
        return (self.on_sales + earlier * self.opening_share) * self.in_cash

    # Paid

    @line("Tax paid on running purchases in the month", unit="money", axes=(MONTH,))
    def on_running(self) -> Expr:
        """With payments to suppliers, energy and bills; wages bear none."""
        bills = self.bills.energy + self.bills.bills_paid
        return self.supplies.paid * self.on_supplies + bills * self.on_bills

    @line("Sales tax paid on purchases in the month", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """The office gives it back."""
        bought = self.capital.bought + self.capital.replacing
        return (self.on_running + bought * self.on_bought) * self.in_cash

    @line("Sales tax: month of a payment", unit="flag", axes=(MONTH,))
    def is_due(self) -> Expr:
        """A period ended with the month before."""
        periods_over = (self.months.month_of_year - 1) / self.period
        return whole_down(periods_over) >= periods_over

    @line("Sales tax paid to the office in the month", unit="money", axes=(MONTH,))
    def paid_over(self) -> Expr:
        """All that is owed, in the month after a period. Below zero: it comes back."""
        return previous(self.owed, MONTH) * self.is_due

    @line("Sales tax left in cash in the month", unit="money", axes=(MONTH,))
    def net(self) -> Expr:
        """What it adds to cash."""
        return self.collected - self.paid - self.paid_over

    @line("Sales tax owed to the office at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """What was not yet due, with what came since. Below zero: the office owes it."""
        still = previous(self.owed, MONTH) * (1 - self.is_due)
        return starting(self.opening_owed, still + self.collected - self.paid)

    # Check

    @line("Sales tax owed, by cash", unit="money", axes=(MONTH,))
    def owed_by_cash(self) -> Expr:
        """At the start, with all that it has added to cash since."""
        return starting(self.opening_owed, previous(self.owed_by_cash, MONTH) + self.net)

    @line("Sales tax that is a rounding of all that moves in the plan", unit="money")
    def rounding(self) -> Expr:
        """By so much the two ways may differ."""
        moved = total(self.collected + self.paid, MONTH)
        return (absolute(moved) + absolute(self.opening_owed)) * SUM_TOLERANCE

    @check(
        "Sales tax is paid over or owed in every month",
        kind="error",
        says="In some month the sales tax owed is not what it has added to cash: a formula of the months was changed.",
    )
    def tax_adds_up(self) -> Expr:
        """By what is not yet due, and by what moved."""
        apart = self.owed - self.owed_by_cash
        return total(apart * apart, MONTH) <= self.rounding * self.rounding
