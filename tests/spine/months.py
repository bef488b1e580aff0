"""The large test farm month by month: customers served in turn, twenty expenses, four loans, cash and credit."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import (
    at,
    interpolated,
    joined,
    maximum,
    minimum,
    named,
    previous,
    ratio,
    running_sum,
    shown,
    starting,
    total,
    where,
    whole_down,
)
from farmbook.expr.nodes import Constant, Expr, Line
from farmbook.expr.ranking import before, preference_key
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line, number, uses
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.language.time_model import DAYS_A_WEEK
from tests.spine.weeks import WEEK, WEEKS_BEFORE, Shocks, Tasks, Weeks

__all__ = ["CHANNEL", "EXPENSES", "LOANS", "MONTH", "Cash", "Channels", "Months"]

MONTH: Final = Axis("month", "month", "across", 95, ordered=True, sized=True)
CHANNEL: Final = Axis(
    "channel",
    "channel",
    "down",
    40,
    ordered=True,
    members=("market", "grocer", "kitchen", "box", "wholesale", "gate"),
)
MONTHS_A_YEAR: Final = Constant(12, "months_a_year", label="Months in a year", unit=unit("1"), source="arithmetic")


class Months(Section):
    """Weeks to months: the running total at the end of a month, less the one before."""

    weeks = uses(Weeks)
    tasks = uses(Tasks)
    days = number("Days in a month", unit="day", usual=(28, 31), hard=(28, 31), default=30.4, how="Count.")

    @line("Month", unit="1", axes=(MONTH,))
    def month(self) -> Expr:
        """From 1."""
        return running_sum(1, MONTH)

    @line("Rows to the end of the month", unit="1", axes=(MONTH,))
    def end(self) -> Expr:
        """With a part of a week."""
        return joined(self.month * self.days / DAYS_A_WEEK, "1") + WEEKS_BEFORE

    @line("Whole rows to the end of the month", unit="1", axes=(MONTH,))
    def end_whole(self) -> Expr:
        """At or below."""
        return whole_down(self.end)

    @line("Part of a row to the end of the month", unit="share", axes=(MONTH,))
    def end_part(self) -> Expr:
        """The rest."""
        return self.end - self.end_whole

    def _to_end(self, so_far: Line) -> Expr:
        return starting(
            at(so_far, WEEK, named(WEEKS_BEFORE)), interpolated(so_far, WEEK, whole=self.end_whole, part=self.end_part)
        )

    @line("Filled to the end of the month", unit="bag_filled", axes=(MONTH,))
    def filled_to_end(self) -> Expr:
        """By then."""
        return self._to_end(self.weeks.filled_so_far)

    @line("Filled in the month", unit="bag_filled", axes=(MONTH,))
    def filled(self) -> Expr:
        """The total at its end less the one before."""
        return self.filled_to_end - previous(self.filled_to_end, MONTH)

    @line("Spawn to the end of the month", unit="kg_spawn", axes=(MONTH,))
    def spawn_to_end(self) -> Expr:
        """By then."""
        return self._to_end(self.weeks.spawn_so_far)

    @line("Spawn in the month", unit="kg_spawn", axes=(MONTH,))
    def spawn(self) -> Expr:
        """The total at its end less the one before."""
        return self.spawn_to_end - previous(self.spawn_to_end, MONTH)

    @line("Handed over to the end of the month", unit="kg_picked", axes=(MONTH,))
    def handed_over_to_end(self) -> Expr:
        """By then."""
        return self._to_end(self.weeks.handed_over_so_far)

    @line("Handed over in the month", unit="kg_picked", axes=(MONTH,))
    def handed_over(self) -> Expr:
        """The total at its end less the one before."""
        return self.handed_over_to_end - previous(self.handed_over_to_end, MONTH)

    @line("Pay to the end of the month", unit="money", axes=(MONTH,))
    def pay_to_end(self) -> Expr:
        """By then."""
        return self._to_end(self.tasks.paid_so_far)

    @line("Pay in the month", unit="money", axes=(MONTH,))
    def pay(self) -> Expr:
        """The total at its end less the one before."""
        return self.pay_to_end - previous(self.pay_to_end, MONTH)


class Channels(Section):
    """Customers served in an order of preference, each up to what it takes."""

    months = uses(Months)
    shocks = uses(Shocks)
    order = number("Turn", unit="1", axes=(CHANNEL,), usual=(1, 9), default=(2, 1, 3, 3, 5, 4), how="Choose.")
    takes = number(
        "Takes in a month",
        unit="kg_picked",
        axes=(CHANNEL,),
        usual=(0, 900),
        default=(300, 420, 260, 90, 800, 60),
        how="Ask.",
    )
    price = number(
        "Price",
        unit="money/kg_picked",
        axes=(CHANNEL,),
        usual=(2, 16),
        default=(11, 9.4, 10.2, 12, 5.5, 10),
        how="Till.",
    )
    paid_after = number("Share paid a month later", unit="share", usual=(0, 1), hard=(0, 1), default=0.4, how="Bank.")

    @line("Row of the channel", unit="1", axes=(CHANNEL,))
    def row(self) -> Expr:
        """From 1."""
        return running_sum(1, CHANNEL)

    @line("Channels", unit="1")
    def many(self) -> Expr:
        """All of them."""
        return total(self.row > 0, CHANNEL)

    @line("Turn, each its own", unit="1", axes=(CHANNEL,))
    def turn(self) -> Expr:
        """Of equal turns the first row comes first."""
        return preference_key(self.order, self.row, self.many)

    @line("Takes, as the case has it", unit="kg_picked", axes=(CHANNEL,))
    def takes_now(self) -> Expr:
        """The first channel is the largest customer."""
        return where(self.row <= 1, self.takes * self.shocks.customer_kept, self.takes)

    @line("Taken by the channels before", unit="kg_picked", axes=(CHANNEL,))
    def taken_before(self) -> Expr:
        """Those that are served first."""
        return before(self.takes_now, self.turn, CHANNEL)

    @line("Sold by channel", unit="kg_picked", axes=(CHANNEL, MONTH))
    def sold(self) -> Expr:
        """What is left for it, up to what it takes."""
        return maximum(minimum(self.takes_now, self.months.handed_over - self.taken_before), 0)

    @line("Sales by channel", unit="money", axes=(CHANNEL, MONTH))
    def sales(self) -> Expr:
        """At its price."""
        return self.sold * self.price * self.shocks.price_kept

    @line("Share paid later, as the case has it", unit="share")
    def later(self) -> Expr:
        """No more than all of it."""
        return minimum(self.paid_after + self.shocks.paid_later, 1)

    @line("Owed by channel", unit="money", axes=(CHANNEL, MONTH))
    def owed(self) -> Expr:
        """Of this month's sales; paid the month after."""
        return starting(0, self.sales * self.later)

    @line("Collected by channel", unit="money", axes=(CHANNEL, MONTH))
    def collected(self) -> Expr:
        """Last month's rest and this month's first part."""
        return self.sales + previous(self.owed, MONTH) - self.owed

    @line("Sales", unit="money", axes=(MONTH,))
    def sales_in_all(self) -> Expr:
        """All channels."""
        return total(self.sales, CHANNEL)

    @line("Collected", unit="money", axes=(MONTH,))
    def collected_in_all(self) -> Expr:
        """All channels."""
        return total(self.collected, CHANNEL)

    @line("Owed by customers", unit="money", axes=(MONTH,))
    def owed_in_all(self) -> Expr:
        """All channels."""
        return total(self.owed, CHANNEL)


class Prices(Section):
    """How prices move."""

    months = uses(Months)
    shocks = uses(Shocks)
    rise = number("Rise of prices in a month", unit="share", usual=(0, 0.01), default=0.002, how="Guess.")

    @line("Level of prices", unit="1", axes=(MONTH,))
    def level(self) -> Expr:
        """From 1 at the start, as the case has it."""
        return joined((1 + self.rise) ** self.months.month, "1") * joined(self.shocks.materials_kept, "1")


class Expense(Alike):
    """One thing that is bought, by the bag and by the month, and paid the month after."""

    months = uses(Months)
    prices = uses(Prices)
    per_bag = number("Of {} for a bag", unit="kg/bag_filled", usual=(0, 5), default=0.11, how="Weigh.")
    fixed = number("Of {} each month", unit="kg", usual=(0, 500), default=12, how="Weigh.")
    price = number("Price of {}", unit="money/kg", usual=(0, 9), default=0.55, how="Bill.")
    stock = number("Months of {} in stock", unit="1", usual=(0, 3), default=0.5, how="Count.")

    @line("Used of {}", unit="kg", axes=(MONTH,))
    def used_up(self) -> Expr:
        """By bags and by the month."""
        return self.per_bag * self.months.filled + self.fixed

    @line("Stock of {} at the end", unit="kg", axes=(MONTH,))
    def stock_at_end(self) -> Expr:
        """So many months of use."""
        return starting(0, self.used_up * self.stock)

    @line("Bought of {}", unit="kg", axes=(MONTH,))
    def bought(self) -> Expr:
        """What is used, and the change in stock."""
        return maximum(self.used_up + self.stock_at_end - previous(self.stock_at_end, MONTH), 0)

    @line("Price of {} in the month", unit="money/kg", axes=(MONTH,))
    def price_now(self) -> Expr:
        """At the level of prices."""
        return self.price * self.prices.level

    @line("Bill for {}", unit="money", axes=(MONTH,))
    def bill(self) -> Expr:
        """What is bought."""
        return starting(0, self.bought * self.price_now)

    @line("Paid for {}", unit="money", axes=(MONTH,))
    def paid(self) -> Expr:
        """The bill of the month before."""
        return previous(self.bill, MONTH)

    @line("Cost of {}", unit="money", axes=(MONTH,))
    def cost(self) -> Expr:
        """What is used."""
        return self.used_up * self.price_now


class Loan(Alike):
    """One loan, paid back in equal parts of what is left to pay."""

    months = uses(Months)
    shocks = uses(Shocks)
    borrowed = number("Borrowed, {}", unit="money", usual=(0, 90000), default=9000, how="Contract.")
    rate = number("Rate for a month, {}", unit="share", usual=(0, 0.02), default=0.006, how="Contract.")
    term = number("Months to pay, {}", unit="1", usual=(6, 120), hard=(1, 360), default=30, how="Contract.")

    @line("Rate, as the case has it, {}", unit="share")
    def rate_now(self) -> Expr:
        """For a month."""
        return self.rate + self.extra_rate

    @line("Interest, {}", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """On what is owed at the start of the month."""
        return previous(self.owed, MONTH) * self.rate_now

    @line("Paid back, {}", unit="money", axes=(MONTH,))
    def paid_back(self) -> Expr:
        """An equal part each month, the rest at most."""
        return minimum(ratio(self.borrowed, self.term), previous(self.owed, MONTH))

    @line("Owed, {}", unit="money", axes=(MONTH,))
    def owed(self) -> Expr:
        """What is left."""
        return starting(self.borrowed, previous(self.owed, MONTH) - self.paid_back)

    @line("Payment, {}", unit="money", axes=(MONTH,))
    def payment(self) -> Expr:
        """Interest and what is paid back."""
        return self.interest + self.paid_back

    @line("Interest so far, {}", unit="money", axes=(MONTH,))
    def interest_so_far(self) -> Expr:
        """From the start."""
        return running_sum(self.interest, MONTH)

    @property
    def extra_rate(self) -> Line:
        """What a case adds to the rate of every loan."""
        return self.model.section(Rates).added


class Rates(Section):
    """What holds for every loan."""

    shocks = uses(Shocks)

    @line("Added to every rate", unit="share")
    def added(self) -> Expr:
        """As the case has it."""
        return joined(self.shocks.rate_added, "share")


GOODS: Final = tuple(f"{kind} {number}" for kind in ("mix", "bag", "power", "room", "office") for number in range(1, 5))
EXPENSES: Final = tuple(
    type(f"Expense{number}", (Expense,), {"title": words, "__module__": __name__}, words=words)
    for number, words in enumerate(GOODS, 1)
)
LOANS: Final = tuple(
    type(f"Loan{number}", (Loan,), {"title": words, "__module__": __name__}, words=words)
    for number, words in enumerate(("steamer", "room", "van", "land"), 1)
)


def _sum(terms: list[Expr]) -> Expr:
    whole = terms[0]
    for term in terms[1:]:
        whole = whole + term
    return whole


def _summed(label: str, name: str, of: tuple[type[Section], ...]) -> LineOf:
    """A line that adds one line of several sections, five at most."""

    def add(self: Section) -> Expr:
        """All of them."""
        return _sum([self.model.section(each).line(getattr(each, name)) for each in of])

    return line(label, unit="money", axes=(MONTH,))(add)


class Sums(Section):
    """Expenses and loans added, five at a time."""

    paid_1 = _summed("Paid for mix and the first bag", "paid", EXPENSES[0:5])
    paid_2 = _summed("Paid for bags and power", "paid", EXPENSES[5:10])
    paid_3 = _summed("Paid for power and rooms", "paid", EXPENSES[10:15])
    paid_4 = _summed("Paid for rooms and office", "paid", EXPENSES[15:20])
    cost_1 = _summed("Cost of mix and the first bag", "cost", EXPENSES[0:5])
    cost_2 = _summed("Cost of bags and power", "cost", EXPENSES[5:10])
    cost_3 = _summed("Cost of power and rooms", "cost", EXPENSES[10:15])
    cost_4 = _summed("Cost of rooms and office", "cost", EXPENSES[15:20])
    billed_1 = _summed("Bills for mix and the first bag", "bill", EXPENSES[0:5])
    billed_2 = _summed("Bills for bags and power", "bill", EXPENSES[5:10])
    billed_3 = _summed("Bills for power and rooms", "bill", EXPENSES[10:15])
    billed_4 = _summed("Bills for rooms and office", "bill", EXPENSES[15:20])
    payments = _summed("Payments on loans", "payment", LOANS)
    interest = _summed("Interest on loans", "interest", LOANS)
    owed = _summed("Owed on loans", "owed", LOANS)


class Cash(Section):
    """Cash and a credit line with a limit; declared from the last line to the first, as order must not matter."""

    months = uses(Months)
    channels = uses(Channels)
    sums = uses(Sums)
    opening_cash = number("Cash at the start", unit="money", usual=(0, 9000), default=4000, how="Bank.")
    credit_limit = number("Credit limit", unit="money", usual=(0, 9000), default=6000, how="Bank.")
    least = number("Least cash to hold", unit="money", usual=(0, 900), default=700, how="Choose.")
    charged = number("Interest on credit for a month", unit="share", usual=(0, 0.03), default=0.009, how="Bank.")
    taken_home = number("Taken home each month", unit="money", usual=(0, 5000), default=1500, how="Choose.")
    taxed = number("Tax on profit", unit="share", usual=(0, 0.4), default=0.2, how="Tax office.")

    @line("Cash at the end of the month", unit="money", axes=(MONTH,))
    def closing(self) -> Expr:
        """Cash before, what came in and went out, what was drawn."""
        return starting(self.opening_cash, previous(self.closing, MONTH) + self.net + self.drawn)

    @line("Credit at the end of the month", unit="money", axes=(MONTH,))
    def credit(self) -> Expr:
        """Credit before and what was drawn."""
        return starting(0, previous(self.credit, MONTH) + self.drawn)

    @line("Drawn", unit="money", axes=(MONTH,))
    def drawn(self) -> Expr:
        """What is missing, up to the limit; below zero where credit is paid back."""
        return maximum(minimum(self.missing, self.room), -previous(self.credit, MONTH))

    @line("Room in the credit line", unit="money", axes=(MONTH,))
    def room(self) -> Expr:
        """To its limit."""
        return self.credit_limit - previous(self.credit, MONTH)

    @line("Missing", unit="money", axes=(MONTH,))
    def missing(self) -> Expr:
        """To the least cash to hold."""
        return self.least - (previous(self.closing, MONTH) + self.net)

    @line("Net of the month", unit="money", axes=(MONTH,))
    def net(self) -> Expr:
        """All that comes in less all that goes out."""
        return self.channels.collected_in_all - self.out - self.interest - self.tax - self.taken_home

    @line("Going out", unit="money", axes=(MONTH,))
    def out(self) -> Expr:
        """Pay, expenses and loans."""
        return self.months.pay + self.paid_for_goods + self.sums.payments

    @line("Paid for goods", unit="money", axes=(MONTH,))
    def paid_for_goods(self) -> Expr:
        """All expenses."""
        return self.sums.paid_1 + self.sums.paid_2 + self.sums.paid_3 + self.sums.paid_4

    @line("Cost of goods", unit="money", axes=(MONTH,))
    def cost_of_goods(self) -> Expr:
        """All expenses, as used."""
        return self.sums.cost_1 + self.sums.cost_2 + self.sums.cost_3 + self.sums.cost_4

    @line("Interest on credit", unit="money", axes=(MONTH,))
    def interest(self) -> Expr:
        """On what was drawn before."""
        return previous(self.credit, MONTH) * self.charged

    @line("Tax", unit="money", axes=(MONTH,))
    def tax(self) -> Expr:
        """On the profit of the month before, if there was one."""
        return maximum(previous(self.profit, MONTH), 0) * self.taxed

    @line("Profit before tax", unit="money", axes=(MONTH,))
    def profit(self) -> Expr:
        """Sales less what they cost, whenever it is paid."""
        return starting(
            0, self.channels.sales_in_all - self.months.pay - self.cost_of_goods - self.sums.interest - self.interest
        )

    @line("Profit so far", unit="money", axes=(MONTH,))
    def profit_so_far(self) -> Expr:
        """From the start."""
        return running_sum(self.profit, MONTH)

    @line("Loans paid so far", unit="money", axes=(MONTH,))
    def payments_so_far(self) -> Expr:
        """From the start."""
        return running_sum(self.sums.payments, MONTH)

    @line("Cash is below zero", unit="flag", axes=(MONTH,))
    def below_zero(self) -> Expr:
        """1 in such a month."""
        return self.closing < 0

    @line("Profit in all", unit="money")
    def profit_in_all(self) -> Expr:
        """To the last month."""
        return at(self.profit_so_far, MONTH, named(self.model.count(MONTH)))

    @line("Profit a year", unit="money")
    def profit_a_year(self) -> Expr:
        """On average."""
        return self.profit_in_all * MONTHS_A_YEAR / named(self.model.count(MONTH))

    @line("Months below zero", unit="1")
    def months_below_zero(self) -> Expr:
        """How many."""
        return total(self.below_zero, MONTH)

    @line("Paid on loans in all", unit="money")
    def payments_in_all(self) -> Expr:
        """To the last month."""
        return at(self.payments_so_far, MONTH, named(self.model.count(MONTH)))

    @line("Profit over payments on loans", unit="1")
    def cover(self) -> Expr:
        """Of all months together."""
        return ratio(self.profit_in_all, self.payments_in_all)

    @line("Profit over payments on loans, or why there is none", unit="1")
    def cover_shown(self) -> Expr:
        """For the reader."""
        return shown(self.cover, self.payments_in_all > 0, "no loan is paid in these months")
