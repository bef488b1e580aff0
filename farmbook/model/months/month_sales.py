"""Sales month by month: what is sold goes to customers in turn, each up to what it takes; and what they still owe."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import (
    absolute,
    any_of,
    at,
    joined,
    maximum,
    minimum,
    previous,
    ratio,
    starting,
    total,
    where,
    whole_down,
)
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import before
from farmbook.model.axes import CALENDAR, MONTH, SERVED, WEEK
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.in_turn import InTurn
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["MEAN_MONTH", "MonthSales"]

MATRIX = (SERVED, MONTH)
MEAN_MONTH: Final = Constant(
    30.4375, "days_of_a_mean_month", label="Days of a month on average", unit=unit("day"), source=ARITHMETIC.key,
    note="A twelfth of 365.25.",
)  # fmt: skip


class MonthSales(Section):
    """The weeks settle how much is sold; the months share it among customers by turn, season and what each takes."""

    title = "Sales month by month"
    table = "opening"

    customers_owe = number(
        "What customers owe on the first day of the plan",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        optional=True,
        how="Unpaid invoices. Left empty, it is worked out of a running farm from days to pay.",
    )

    months = uses(PlanMonths)
    customer_year = uses(CustomerYear)
    totals = uses(MonthTotals)
    cold = uses(ColdRoom)
    in_turn = uses(InTurn)
    shocks = uses(Shocks)

    # Who gets it

    @line("Customers take in the month, of what they take in a typical year", unit="share", axes=(MONTH,))
    def learned(self) -> Expr:
        """As in the last whole week of the month."""
        first = self.cold.start_up.sales_at_first
        return first + (1 - first) * at(self.cold.start_up.learned, WEEK, self.months.whole)

    @line("Takes at most in the month", unit="kg_taken", axes=MATRIX)
    def most(self) -> Expr:
        """An ordinary week of the month, times its weeks."""
        a_week = at(self.in_turn.week_of_month, CALENDAR, self.months.month_of_year)
        return a_week * self.months.weeks * self.learned

    @line("All take at most in the month", unit="kg_taken", axes=(MONTH,))
    def all_take(self) -> Expr:
        """Together."""
        return total(self.most, SERVED)

    @line("Share of all that customers take at most", unit="share", axes=(SERVED,))
    def share(self) -> Expr:
        """By their full weeks."""
        return ratio(self.in_turn.most, self.all_most)

    @line("All customers take at most in a full week", unit="kg_taken/week")
    def all_most(self) -> Expr:
        """Whatever the season."""
        return total(self.in_turn.most, SERVED)

    @line("Takes in the month", unit="kg_taken", axes=MATRIX)
    def takes(self) -> Expr:
        """The most; in a month in which nobody takes any, its share of what a week that began before it has sold."""
        return where(self.all_take > 0, self.most, self.totals.brought * self.share)

    @line("Those served before take in the month", unit="kg_taken", axes=MATRIX)
    def earlier(self) -> Expr:
        """By turn."""
        return before(self.takes, self.in_turn.number, SERVED)

    @line("Sold, for what all take", unit="1", axes=(MONTH,))
    def stretched(self) -> Expr:
        """1, but more where weeks go on over the end of a month with another season."""
        return maximum(ratio(self.totals.sold, self.all_take), 1)

    @line("Goes there in the month", unit="kg_taken", axes=MATRIX)
    def gets(self) -> Expr:
        """In turn, what those before leave, up to what it takes: all that is sold goes to somebody."""
        left = maximum(minimum(self.takes, self.totals.sold - self.earlier), 0)
        return left * self.stretched * self.in_turn.weight_kept

    # What it brings

    @line("Sales in the month", unit="money", axes=(MONTH,))
    def sales(self) -> Expr:
        """Of all customers, without the tax passed on, for what stays sold."""
        return total(self.gets * self.in_turn.takings, SERVED)

    @line("Fees and packing in the month", unit="money", axes=(MONTH,))
    def fees_and_packing(self) -> Expr:
        """Of all customers."""
        return total(self.gets * self.in_turn.selling, SERVED)

    @line("Stalls and delivery in a week of the month", unit="money", axes=(MONTH,))
    def going_a_week(self) -> Expr:
        """Of those who get something, and buy in that month."""
        return total((self.gets > 0) * (self.most > 0) * self.in_turn.going, SERVED)

    @line("Selling in the month, without hours", unit="money", axes=(MONTH,))
    def selling(self) -> Expr:
        """Fees, packing, stalls, delivery."""
        return self.fees_and_packing + self.going_a_week * self.months.weeks

    # When they pay

    @line("In turn: months until they pay", unit="count", axes=(SERVED,))
    def lag(self) -> Expr:
        """Days over those of a month on average."""
        return (self.in_turn.days_to_pay + self.shocks.days_later) / MEAN_MONTH

    @line("In turn: whole months until they pay", unit="count", axes=(SERVED,))
    def lag_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.lag)

    @line("In turn: part of a month until they pay", unit="share", axes=(SERVED,))
    def lag_part(self) -> Expr:
        """The rest: the share of a month's sales that is paid a month later still."""
        return self.lag - self.lag_whole

    @line("In turn: takings that are paid a month later still", unit="money/kg_taken", axes=(SERVED,))
    def paid_later_still(self) -> Expr:
        """By the part of a month."""
        return self.in_turn.takings * self.lag_part

    @line("In turn: takings that are paid after whole months", unit="money/kg_taken", axes=(SERVED,))
    def paid_first(self) -> Expr:
        """The rest of them."""
        return self.in_turn.takings - self.paid_later_still

    @line("Went there as many whole months back as they take to pay", unit="kg_taken", axes=MATRIX)
    def due(self) -> Expr:
        """Nothing before the plan."""
        then = self.months.number - self.lag_whole
        return starting(0, where(then > 0, at(self.gets, MONTH, then), 0))

    @line("Paid in the month, of the plan's sales", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """Of what went there whole months back, and the part of the month before it that is paid a month later still."""
        return total(self.due * self.paid_first + previous(self.due, MONTH) * self.paid_later_still, SERVED)

    # What they owe

    @line("In turn: takings of a typical month", unit="money", axes=(SERVED,))
    def typical_month(self) -> Expr:
        """A twelfth of the year with that customer."""
        return joined(self.in_turn.of_customer(self.customer_year.takings), "money") / MONTHS_A_YEAR

    @line("Typical months that wait to be paid", unit="money")
    def waiting(self) -> Expr:
        """For as long as each customer takes to pay."""
        return total(self.typical_month * self.lag, SERVED)

    @line("Typical months before the plan that still wait to be paid", unit="money", axes=(MONTH,))
    def still_waiting(self) -> Expr:
        """At the end of the month."""
        month = self.months.number
        return total(self.typical_month * (self.lag - month) * (self.lag > month), SERVED)

    @line("Owed by customers when the plan starts, worked out", unit="money")
    def opening_worked(self) -> Expr:
        """Of a running farm: typical months, for as long as each takes to pay. Of a new one nothing."""
        return self.waiting * (1 - self.customer_year.farm.is_new)

    @line("Owed by customers when the plan starts", unit="money")
    def opening_owed(self) -> Expr:
        """As typed, or worked out."""
        return where(self.given(self.customers_owe), self.customers_owe, self.opening_worked)

    @line("Still owed of what was owed at the start", unit="money", axes=(MONTH,))
    def opening_left(self) -> Expr:
        """At the end of the month: each customer pays so many months after a delivery."""
        return starting(self.opening_owed, self.opening_owed * ratio(self.still_waiting, self.waiting))

    @line("Paid by customers in the month", unit="money", axes=(MONTH,))
    def collected(self) -> Expr:
        """Of this plan's sales, and of what was owed at the start."""
        earlier = previous(self.opening_left, MONTH) - self.opening_left
        return self.paid + earlier

    @line("Owed by customers at the end of the month", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """Before, with sales, less what was paid."""
        return starting(self.opening_owed, previous(self.owed, MONTH) + self.sales - self.collected)

    @line("Goes there in time to be paid whole in the plan", unit="kg_taken", axes=(SERVED,))
    def gone_in_time(self) -> Expr:
        """So many whole months before its end."""
        return total(self.gets * (self.months.number + self.lag_whole <= self.months.many), MONTH)

    @line("Goes there later, times the months left in the plan", unit="kg_taken", axes=(SERVED,))
    def gone_late(self) -> Expr:
        """It is owed at the end of each of them."""
        left = self.months.many + 1 - self.months.number
        return total(self.gets * (self.months.number + self.lag_whole > self.months.many) * left, MONTH)

    @line("Owed by customers, added up over all months, by when it went there", unit="money", source=ARITHMETIC)
    def owed_counted(self) -> Expr:
        """Each sale is owed for as long as that customer takes to pay."""
        return total((self.gone_in_time * self.lag + self.gone_late) * self.in_turn.takings, SERVED)

    @line("Sales that are a rounding of all sales of the plan", unit="money")
    def rounding(self) -> Expr:
        """By so much the two ways may differ."""
        return (total(self.sales, MONTH) + self.opening_owed) * SUM_TOLERANCE

    @line("Goes to customers in all months", unit="kg_taken", axes=(SERVED,))
    def gone_there(self) -> Expr:
        """Added up."""
        return total(self.gets, MONTH)

    @line("Goes to all customers in all months", unit="kg_taken")
    def gone(self) -> Expr:
        """Must be what is sold."""
        return total(self.gone_there, SERVED)

    @check(
        "Sales are paid or owed in every month",
        kind="error",
        says="In some month what customers paid and owe is not what was sold to them: a formula of the months was changed.",
    )
    def sales_add_up(self) -> Expr:
        """What is owed at the ends of all months, counted from month to month and by when it was sold."""
        apart = total(self.owed - self.opening_left, MONTH) - self.owed_counted
        return absolute(apart) <= self.rounding * self.months.many

    @check(
        "All that is sold goes to a customer, in every month",
        kind="error",
        says="In some month customers get more or less than is sold: a formula of the months was changed.",
    )
    def shares_add_up(self) -> Expr:
        """In turn, each up to what it takes; if there is a customer at all."""
        sold = self.totals.sold_by_months
        return any_of(absolute(self.gone - sold) <= sold * SUM_TOLERANCE, self.all_most <= 0)
