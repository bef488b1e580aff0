"""The balance sheet on the first day of the plan, with what no other sheet knows: land, deposits, other debts, market values."""

from __future__ import annotations

from farmbook.expr.functions import total, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import ITEM
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.statements.accrued import Accrued
from farmbook.model.statements.bags_value import BagsValue
from farmbook.model.statements.spawn_stock import SpawnStock
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, FARM_MANAGEMENT

__all__ = ["StartBalance"]


class StartBalance(Section):
    """As typed, or as the book works it out of a running farm."""

    title = "Balance sheet when the plan starts"
    table = "opening"

    cash = uses(MonthCash)
    bags = uses(BagsValue)
    spawn = uses(SpawnStock)
    accrued = uses(Accrued)

    other_current = number(
        "Deposits, prepaid bills and the like on the first day of the plan",
        unit="money",
        usual=(0, 10000),
        hard=(0, 100000000),
        default=0,
        how="What turns into money, or is used up, within a year, and stands nowhere else. The plan keeps it as it is.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    land = number(
        "Land and buildings owned, in the books",
        unit="money",
        usual=(0, 300000),
        hard=(0, 1000000000),
        default=0,
        how="At cost, less loss in value so far; 0 where you rent. The plan keeps it as it is.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    land_market = number(
        "Land and buildings owned, market value today",
        unit="money",
        usual=(0, 300000),
        hard=(0, 1000000000),
        optional=True,
        how="What a buyer would pay today. Left empty, as in the books.",
        source=COMMON_PRACTICE,
    )
    market = number(
        "Market value today",
        unit="money",
        usual=(0, 60000),
        hard=(0, 10000000),
        optional=True,
        axes=(ITEM,),
        how="Second-hand price as it stands. Left empty, as in the books.",
        source=COMMON_PRACTICE,
    )
    other_due = number(
        "Other debts due within a year, on the first day of the plan",
        unit="money",
        usual=(0, 20000),
        hard=(0, 100000000),
        default=0,
        how="Card, tax and wages owed that stand nowhere else. The plan keeps them as they are.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    other_long = number(
        "Other long debts, on the first day of the plan",
        unit="money",
        usual=(0, 100000),
        hard=(0, 100000000),
        default=0,
        how="Debts of the farm that are not in the list of loans. The plan keeps them as they are.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("At the start: cash, what customers owe and other short-term things", unit="money")
    def liquid(self) -> Expr:
        """Current assets without stock."""
        return self.cash.cash + self.cash.sales.opening_owed + self.other_current

    @line("At the start: stock", unit="money")
    def stock(self) -> Expr:
        """Supplies, spawn, bags in process."""
        return self.cash.supplies.opening_stock + self.spawn.at_start + self.bags.value_at_start

    @line("At the start: equipment, land and buildings", unit="money")
    def fixed(self) -> Expr:
        """In the books."""
        return self.cash.capital.opening_value + self.land

    @line("At the start: owned in all", unit="money")
    def assets(self) -> Expr:
        """Total assets."""
        return self.liquid + self.stock + self.fixed

    @line("At the start: sales tax and other debts due within a year", unit="money")
    def other_short(self) -> Expr:
        """Other debts as typed."""
        return self.cash.sales_tax.opening_owed + self.other_due

    @line("At the start: due within a year", unit="money")
    def due(self) -> Expr:
        """Current liabilities."""
        short = self.cash.supplies.opening_owed + self.accrued.at_start + self.cash.line_owed
        return short + self.cash.loans.due_at_start + self.other_short

    @line("At the start: loans to be repaid later", unit="money")
    def later(self) -> Expr:
        """What is owed, less what is due within a year."""
        return self.cash.loans.owed_at_start - self.cash.loans.due_at_start

    @line("At the start: owed in all", unit="money")
    def liabilities(self) -> Expr:
        """Total liabilities."""
        return self.due + self.later + self.other_long

    @line("At the start: the owner's own", unit="money", source=FARM_MANAGEMENT)
    def equity(self) -> Expr:
        """Owned less owed, in the books."""
        return self.assets - self.liabilities

    # At market

    @line("Item: market value above the books", unit="money", axes=(ITEM,))
    def item_above(self) -> Expr:
        """Nothing where you have given none, or it is still to be bought."""
        capital = self.cash.capital
        above = self.market - capital.item_book_value
        return where(self.given(self.market), above * (capital.capital.owned.bought_in <= 0), 0)

    @line("Market value above the books when the plan starts", unit="money")
    def above(self) -> Expr:
        """Items, land and buildings. Tax on a gain is not taken off."""
        land = where(self.given(self.land_market), self.land_market - self.land, 0)
        return total(self.item_above, ITEM) + land

    @line("Bags in process: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "A bag in process has cost ",
            figure(self.bags.steamed, 2, named=False),
            " once it is steamed, ",
            figure(self.bags.inoculated, 2, named=False),
            " once it has its spawn and ",
            figure(self.bags.opened, 2, named=False),
            " once it is opened. All that stand there when the plan starts have cost ",
            figure(self.bags.value_at_start, -2, named=False),
            ".",
        )
