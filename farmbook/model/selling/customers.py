"""Customers side by side: what a weight brings from each, before what selling costs whatever is sold."""

from __future__ import annotations

from typing import Final

from farmbook.calc.calendar import DAYS_IN_A_YEAR
from farmbook.calc.crop import surviving_share
from farmbook.expr.functions import joined, ratio, running_sum, total, where
from farmbook.expr.nodes import Constant, Expr, Line, wrap
from farmbook.expr.ranking import preference_key
from farmbook.model.axes import CALENDAR, CUSTOMER
from farmbook.model.heat.steaming import Steaming
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import Option, check, choice, line, names, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = ["ROWS_IN_AN_ORDER", "Customers"]

REGISTERED: Final = Option("registered", "registered: passed on")
FLAT_RATE: Final = Option("flat rate", "flat-rate farmer: kept")
NEITHER: Final = Option("neither", "neither")

ROWS_IN_AN_ORDER: Final = Constant(
    100, "rows_in_an_order", label="Most rows that are put in an order", unit=unit("1"), source=ARITHMETIC.key
)
AFTER_ALL_OTHERS: Final = Constant(
    1000,
    "after_all_others",
    label="Added to the turn of the customer who takes the rest",
    unit=unit("1"),
    source=ARITHMETIC.key,
)


class Customers(Section):
    """Who buys, in which order you serve them, and what each pays."""

    title = "Customers, and what they pay"
    table = "selling"

    steaming = uses(Steaming)
    shocks = uses(Shocks)

    customers = names(CUSTOMER, "Customer", how="One column for each sort of customer: a market, restaurants, a shop.")
    tax = choice(
        "Tax on sales",
        REGISTERED,
        FLAT_RATE,
        NEITHER,
        default=NEITHER,
        how="Registered: you hand on what you collect and get back what you paid. Ask your tax office.",
        source=COMMON_PRACTICE,
    )
    order = number(
        "Turn in which they are served",
        unit="count",
        usual=(1, 6),
        hard=(0, 99),
        default=1,
        axes=(CUSTOMER,),
        how="1 for whom you serve first. Of equal ones the left is first. Set beside the rank by what they bring.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    takes_rest = number(
        "Takes the rest: 1 for yes",
        unit="count",
        usual=(0, 1),
        hard=(0, 1),
        default=0,
        axes=(CUSTOMER,),
        how="1 for the one who takes what is left when all others have theirs; one at most. Comes after all others.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    price = number(
        "Price",
        unit="money/kg_sold",
        usual=(6, 45),
        hard=(0, 10000),
        axes=(CUSTOMER,),
        how="Invoices or till of the last months: money over weight sold. Say below what tax is inside.",
        source=COMMON_PRACTICE,
        note="Growers at markets 20 to 45 a kilogram, restaurants 13 to 30, shops 10 to 23, wholesalers 6 to 15; from memory.",
    )
    tax_inside = number(
        "Tax inside the price, on the price without it",
        unit="share",
        usual=(0, 0.25),
        hard=(0, 1),
        default=0,
        axes=(CUSTOMER,),
        how="0 for a price without tax. Costs: registered, type them without tax; otherwise with it.",
        source=COMMON_PRACTICE,
    )
    most_a_week = number(
        "Takes at most in a full week",
        unit="kg_taken/week",
        usual=(5, 2000),
        hard=(0, 1000000),
        axes=(CUSTOMER,),
        how="The best ordinary week so far, or what has been promised in writing.",
        source=COMMON_PRACTICE,
    )
    unsold = number(
        "Unsold, returned or given away, of what you take there",
        unit="share",
        usual=(0, 0.2),
        hard=(0, 1),
        default=0.03,
        axes=(CUSTOMER,),
        how="Weigh what comes home from ten market days, and add credits and samples.",
        source=COMMON_PRACTICE,
    )
    fee = number(
        "Fees on the takings",
        unit="share",
        usual=(0, 0.15),
        hard=(0, 1),
        default=0,
        axes=(CUSTOMER,),
        how="Card fee, market's share, agent's share, together, of the price with the tax inside.",
        source=COMMON_PRACTICE,
    )
    packing = number(
        "Packing material",
        unit="money/kg_taken",
        usual=(0.1, 2),
        hard=(0, 100),
        default=0.26,
        axes=(CUSTOMER,),
        how="Box, liner, punnet and label over the weight in them.",
        source=COMMON_PRACTICE,
        note="From memory: a bulk box about 0.26 a kilogram, small punnets about 1.2.",
    )
    stall = number(
        "Stall or standing fee, each week you sell there",
        unit="money/week",
        usual=(0, 150),
        hard=(0, 100000),
        default=0,
        axes=(CUSTOMER,),
        how="Paid whatever you sell. A yearly fee over the weeks you go.",
        source=COMMON_PRACTICE,
    )
    delivery = number(
        "Driving and delivery, each week you sell there",
        unit="money/week",
        usual=(0, 150),
        hard=(0, 100000),
        default=0,
        axes=(CUSTOMER,),
        how="Distance times what the van costs for it, or the carrier's bill. The driver's hours stand below.",
        source=COMMON_PRACTICE,
    )
    selling_hours = number(
        "Hours of selling and driving, each week you sell there",
        unit="person_hour/week",
        usual=(0, 20),
        hard=(0, 1000),
        default=0,
        axes=(CUSTOMER,),
        how="From loading the van to being home again, all hands; orders and invoices too.",
        source=COMMON_PRACTICE,
    )
    days_to_pay = number(
        "Days until they pay",
        unit="day",
        usual=(0, 60),
        hard=(0, 365),
        default=0,
        axes=(CUSTOMER,),
        how="From delivery to money in the bank, the mean of the last ten invoices.",
        source=COMMON_PRACTICE,
    )
    season = number(
        "Takes in the month, of the most",
        unit="share",
        usual=(0, 1),
        hard=(0, 3),
        default=1,
        axes=(CALENDAR, CUSTOMER),
        how="100% in a month like the best, 0% where the market is shut.",
        source=COMMON_PRACTICE,
    )

    @line("Tax on sales is passed on", unit="flag")
    def registered(self) -> Expr:
        """Only then is the tax inside a price not yours. A flat-rate farmer keeps what is added; who is neither adds none."""
        return self.chose(self.tax, REGISTERED)

    @line("Weight that the customer still takes, of that planned", unit="share", axes=(CUSTOMER,))
    def weight_kept(self) -> Expr:
        """All, for a column in use; a case in which a customer is lost has less."""
        return self.present

    @line("Price that the customer still pays, of that typed", unit="share", axes=(CUSTOMER,))
    def share_of_price(self) -> Expr:
        """All, for a column in use; a case in which a customer is lost has less."""
        return self.present

    @line("Price that is paid", unit="money/kg_sold", axes=(CUSTOMER,))
    def price_paid(self) -> Expr:
        """As typed; less in a case in which prices fall."""
        return self.price * self.shocks.price_kept * self.share_of_price

    @line("Price without the tax you pass on", unit="money/kg_sold", axes=(CUSTOMER,), source=ARITHMETIC)
    def price_kept(self) -> Expr:
        """Tax collected is never income."""
        return where(self.registered, self.price_paid * self.without_tax, self.price_paid)

    @line("Price without tax, of the price with it", unit="share", axes=(CUSTOMER,), source=ARITHMETIC)
    def without_tax(self) -> Expr:
        """By the tax that is inside."""
        return ratio(wrap(1), 1 + self.tax_inside)

    @line("Tax in the price that you pass on", unit="money/kg_sold", axes=(CUSTOMER,))
    def tax_in_price(self) -> Expr:
        """Nothing where you are not registered."""
        return self.price_paid - self.price_kept

    @line("Fees in the price", unit="money/kg_sold", axes=(CUSTOMER,))
    def fee_taken(self) -> Expr:
        """A card fee is taken of the whole price, tax and all."""
        return self.price_paid * self.fee

    @line("Price after fees", unit="money/kg_sold", axes=(CUSTOMER,))
    def after_fees(self) -> Expr:
        """What is left of what a customer pays."""
        return self.price_kept - self.fee_taken

    @line("Sold, of what is taken there", unit="share", axes=(CUSTOMER,))
    def share_sold(self) -> Expr:
        """Unsold is taken off once, here, and in no price."""
        return surviving_share(self.unsold)

    @line("Waiting for the money", unit="money/kg_taken", axes=(CUSTOMER,), source=ARITHMETIC)
    def credit(self) -> Expr:
        """At the yearly return you want on money. Used to judge customers by; it is no bill."""
        owed = joined(self.price_kept * self.share_sold, "money/kg_taken")
        return owed * (self.days_to_pay / DAYS_IN_A_YEAR) * self.steaming.yearly_rate

    @line("Brings before stall, delivery and hours", unit="money/kg_taken", axes=(CUSTOMER,), source=PARTIAL_BUDGET)
    def brings(self) -> Expr:
        """What one more of the same brings while you go there anyway."""
        return joined(self.after_fees * self.share_sold, "money/kg_taken") - self.packing - self.credit

    @property
    def present(self) -> Line:
        """The line that says which columns are in use."""
        return self.model.axes[CUSTOMER].present

    @line("Number of the customer", unit="count", axes=(CUSTOMER,))
    def row(self) -> Expr:
        """1 for the leftmost."""
        return running_sum(1, CUSTOMER)

    @line("Turn, who takes the rest last", unit="count", axes=(CUSTOMER,))
    def turn(self) -> Expr:
        """Yours, but for the one who takes the rest."""
        return self.order + AFTER_ALL_OTHERS * (self.takes_rest > 0)

    @line("Served in this order", unit="1", axes=(CUSTOMER,))
    def turn_key(self) -> Expr:
        """The lower, the earlier; no two are alike."""
        return preference_key(self.turn, self.row, ROWS_IN_AN_ORDER)

    @line("Customers who are to take the rest", unit="count")
    def who_take_the_rest(self) -> Expr:
        """One at most."""
        return total(self.takes_rest > 0, CUSTOMER)

    @check(
        "One customer at most takes the rest",
        kind="error",
        says="More than one customer is marked to take the rest: mark one, on the sheet Tables.",
    )
    def one_takes_the_rest(self) -> Expr:
        """Two could not both come last."""
        return self.who_take_the_rest <= 1
