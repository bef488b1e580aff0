"""A small farm that ranks: amounts typed in, the largest of them by name, and loans drawn in an order of preference."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import maximum, minimum, previous, running_sum, shown, starting, total
from farmbook.expr.nodes import Constant, Expr, Label
from farmbook.expr.ranking import before, nth_label, nth_value, preference_key, ranking_key
from farmbook.layout.template import Block, Template
from farmbook.sections.declare import NumberInput, line, names, number, text, uses
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["LOAN", "MONTH", "PLACE", "SECTIONS", "SIZES", "TITLE", "Changes", "Loans", "Ranked", "sheets"]

PLACE: Final = Axis("place", "place", "down", 40, ordered=True, members=("first", "second", "third"))
LOAN: Final = Axis("loan", "loan", "down", 50, named=True, ordered=True, most=6)
MONTH: Final = Axis("month", "month", "across", 90, ordered=True, members=("1", "2"))
SIZES: Final = {PLACE: 3, LOAN: 5, MONTH: 2}
TITLE: Final = "changes.heading"


def _constant(value: float, name: str, of: str = "1") -> Constant:
    return Constant(value, name, label=name.replace("_", " "), unit=unit(of), source="arithmetic")


CENTS: Final = _constant(100, "cents_in_money", "1/money")
COUNT: Final = _constant(4, "changes_in_all")
SECOND, THIRD = _constant(2, "second_position"), _constant(3, "third_position")


def _amount(label: str, default: float | None) -> NumberInput:
    return number(label, unit="money", usual=(-900, 900), default=default, optional=True, how="Count.")


class Changes(Section):
    """What four changes are worth; one left blank cannot be made."""

    name = text("Farm", default="(no name)", how="Its name.")
    steamer = _amount("A larger steamer", 120.5)
    spawn = _amount("Own spawn", -40)
    bags = _amount("Heavier bags", 310)
    market = _amount("A second market", 120.5)

    @line("Title", unit="1")
    def heading(self) -> Expr:
        """Repeated on every sheet."""
        return Label(self.model.section(Changes).raw(Changes.name), "(no name)")

    @line("A larger steamer can be made", unit="flag")
    def steamer_there(self) -> Expr:
        """1 where a number is typed."""
        return self.given(self.steamer)

    @line("A larger steamer in cents", unit="1")
    def steamer_cents(self) -> Expr:
        """What it is ranked by."""
        return self.steamer * CENTS

    @line("A larger steamer by rank", unit="1")
    def steamer_key(self) -> Expr:
        """Its key."""
        return ranking_key(self.steamer_cents, 1, COUNT, self.steamer_there)

    @line("A larger steamer by rank, smallest first", unit="1")
    def steamer_low_key(self) -> Expr:
        """Its key the other way."""
        return ranking_key(-self.steamer_cents, 1, COUNT, self.steamer_there)

    @line("Own spawn can be made", unit="flag")
    def spawn_there(self) -> Expr:
        """1 where a number is typed."""
        return self.given(self.spawn)

    @line("Own spawn in cents", unit="1")
    def spawn_cents(self) -> Expr:
        """What it is ranked by."""
        return self.spawn * CENTS

    @line("Own spawn by rank", unit="1")
    def spawn_key(self) -> Expr:
        """Its key."""
        return ranking_key(self.spawn_cents, SECOND, COUNT, self.spawn_there)

    @line("Own spawn by rank, smallest first", unit="1")
    def spawn_low_key(self) -> Expr:
        """Its key the other way."""
        return ranking_key(-self.spawn_cents, SECOND, COUNT, self.spawn_there)

    @line("Heavier bags can be made", unit="flag")
    def bags_there(self) -> Expr:
        """1 where a number is typed."""
        return self.given(self.bags)

    @line("Heavier bags in cents", unit="1")
    def bags_cents(self) -> Expr:
        """What it is ranked by."""
        return self.bags * CENTS

    @line("Heavier bags by rank", unit="1")
    def bags_key(self) -> Expr:
        """Its key."""
        return ranking_key(self.bags_cents, THIRD, COUNT, self.bags_there)

    @line("Heavier bags by rank, smallest first", unit="1")
    def bags_low_key(self) -> Expr:
        """Its key the other way."""
        return ranking_key(-self.bags_cents, THIRD, COUNT, self.bags_there)

    @line("A second market can be made", unit="flag")
    def market_there(self) -> Expr:
        """1 where a number is typed."""
        return self.given(self.market)

    @line("A second market in cents", unit="1")
    def market_cents(self) -> Expr:
        """What it is ranked by."""
        return self.market * CENTS

    @line("A second market by rank", unit="1")
    def market_key(self) -> Expr:
        """Its key."""
        return ranking_key(self.market_cents, COUNT, COUNT, self.market_there)

    @line("A second market by rank, smallest first", unit="1")
    def market_low_key(self) -> Expr:
        """Its key the other way."""
        return ranking_key(-self.market_cents, COUNT, COUNT, self.market_there)


class Ranked(Section):
    """The changes in order of what they are worth."""

    changes = uses(Changes)

    @property
    def amounts(self) -> tuple[Expr, ...]:
        """What is ranked."""
        of = self.changes
        return of.steamer, of.spawn, of.bags, of.market

    @property
    def keys(self) -> tuple[Expr, ...]:
        """The largest first."""
        of = self.changes
        return of.steamer_key, of.spawn_key, of.bags_key, of.market_key

    @property
    def low_keys(self) -> tuple[Expr, ...]:
        """The smallest first."""
        of = self.changes
        return of.steamer_low_key, of.spawn_low_key, of.bags_low_key, of.market_low_key

    @line("Changes that can be made", unit="1")
    def many(self) -> Expr:
        """Those with a number."""
        of = self.changes
        return of.steamer_there + of.spawn_there + of.bags_there + of.market_there

    @line("Worth most", unit="1")
    def first(self) -> Expr:
        """By its label."""
        return nth_label(self.keys, 1, self.many, self.amounts, "none")

    @line("Worth of that", unit="money")
    def first_worth(self) -> Expr:
        """Its value."""
        return nth_value(self.keys, 1, self.many, self.amounts)

    @line("Worth least of all four", unit="1")
    def last(self) -> Expr:
        """The last place of all."""
        return nth_label(self.keys, COUNT, self.many, self.amounts, "none")

    @line("Worth of the last", unit="money")
    def last_worth(self) -> Expr:
        """Its value."""
        return nth_value(self.keys, COUNT, self.many, self.amounts)

    @line("Smallest", unit="1")
    def smallest(self) -> Expr:
        """By its label."""
        return nth_label(self.low_keys, 1, self.many, self.amounts, "none")

    @line("Place", unit="1", axes=(PLACE,))
    def place(self) -> Expr:
        """From 1."""
        return running_sum(1, PLACE)

    @line("Change in this place", unit="1", axes=(PLACE,))
    def name_of(self) -> Expr:
        """By its label."""
        return nth_label(self.keys, self.place, self.many, self.amounts, "none")

    @line("Worth in this place", unit="money", axes=(PLACE,))
    def worth_of(self) -> Expr:
        """Its value."""
        return nth_value(self.keys, self.place, self.many, self.amounts)

    @line("Worth most, if anything", unit="money")
    def worth_or_words(self) -> Expr:
        """A figure only where a change is worth making."""
        return shown(self.first_worth, self.first_worth > 0, "no change is worth making")

    @line("Worth in this place, if there is one", unit="money", axes=(PLACE,))
    def each_or_words(self) -> Expr:
        """A figure only where there is a change."""
        return shown(self.worth_of, self.place <= self.many, "no further change")


class Loans(Section):
    """Loans in an order of preference, each drawn to its limit before the next."""

    loan = names(LOAN, "Loan", how="Name it.")
    order = number("Order of preference", unit="1", axes=(LOAN,), usual=(1, 9), default=(2, 1, 2, 0, 0), how="Choose.")
    limit = number("Limit", unit="money", axes=(LOAN,), usual=(0, 900), default=(300, 200, 400, 0, 0), how="Ask.")
    needed = number("Money needed", unit="money", axes=(MONTH,), usual=(0, 2000), default=(650, 120), how="Count.")

    @line("Row of the loan", unit="1", axes=(LOAN,))
    def row(self) -> Expr:
        """From 1."""
        return running_sum(1, LOAN)

    @line("Rows", unit="1")
    def rows(self) -> Expr:
        """With the spare ones."""
        return total(self.row >= 1, LOAN)

    @line("Loans", unit="1")
    def many(self) -> Expr:
        """Without the spare rows."""
        return total(self.model.axes[LOAN].present, LOAN)

    @line("Turn of the loan", unit="1", axes=(LOAN,))
    def turn(self) -> Expr:
        """The lowest is drawn first."""
        return preference_key(self.order, self.row, self.rows)

    @line("Limits of the loans before", unit="money", axes=(LOAN,))
    def limits_before(self) -> Expr:
        """Those that are drawn first."""
        return before(self.limit, self.turn, LOAN)

    @line("Drawn", unit="money", axes=(LOAN, MONTH))
    def drawn(self) -> Expr:
        """What is still needed, to the limit."""
        return maximum(minimum(self.limit, self.needed - self.limits_before), 0)

    @line("Drawn from the loans before", unit="money", axes=(LOAN, MONTH))
    def drawn_before(self) -> Expr:
        """Month by month."""
        return before(self.drawn, self.turn, LOAN)

    @line("Drawn in all", unit="money", axes=(MONTH,))
    def drawn_in_all(self) -> Expr:
        """From every loan."""
        return total(self.drawn, LOAN)

    @line("Room left", unit="money", axes=(LOAN, MONTH))
    def room(self) -> Expr:
        """Of the limit, at the start of the month."""
        return self.limit - previous(self.owed, MONTH)

    @line("Room of the loans before", unit="money", axes=(LOAN, MONTH))
    def room_before(self) -> Expr:
        """Those that are taken up first."""
        return before(self.room, self.turn, LOAN)

    @line("Taken up", unit="money", axes=(LOAN, MONTH))
    def taken(self) -> Expr:
        """What is still needed, to the room left."""
        return maximum(minimum(self.room, self.needed - self.room_before), 0)

    @line("Owed", unit="money", axes=(LOAN, MONTH))
    def owed(self) -> Expr:
        """Nothing is paid back."""
        return starting(0, previous(self.owed, MONTH) + self.taken)

    @line("Limit in cents", unit="1", axes=(LOAN,))
    def limit_cents(self) -> Expr:
        """What loans are ranked by."""
        return self.limit * CENTS

    @line("Loan by its limit", unit="1", axes=(LOAN,))
    def limit_key(self) -> Expr:
        """Spare rows below all."""
        return ranking_key(self.limit_cents, self.row, self.rows, self.model.axes[LOAN].present)

    @line("Loan in this place", unit="1", axes=(PLACE,))
    def loan_of(self) -> Expr:
        """The largest limits by name."""
        place = self.model.section(Ranked).place
        return nth_value((self.limit_key,), place, self.many, (self.model.axes[LOAN].label,), "no loan")

    @line("Largest limit", unit="money")
    def largest(self) -> Expr:
        """Its value."""
        return nth_value((self.limit_key,), 1, self.many, (self.limit,))


SECTIONS: Final = (Changes, Ranked, Loans)
CHANGES: Final = ("steamer", "spawn", "bags", "market")
ENDINGS: Final = ("there", "cents", "key", "low_key")


SINGLE: Final = (
    TITLE, "ranked.many", "ranked.first", "ranked.first_worth", "ranked.last", "ranked.last_worth", "ranked.smallest",
    "ranked.worth_or_words", "loans.rows", "loans.many", "loans.largest",
)  # fmt: skip
BY_PLACE: Final = ("ranked.place", "ranked.name_of", "ranked.worth_of", "ranked.each_or_words")
BY_LOAN: Final = (
    "loan.present", "loan.order_used", "loan.limit_used", "loans.row", "loans.turn", "loans.limits_before",
    "loans.limit_cents", "loans.limit_key",
)  # fmt: skip
BY_LOAN_AND_MONTH: Final = (
    "loans.drawn", "loans.drawn_before", "loans.room", "loans.room_before", "loans.taken", "loans.owed",
)  # fmt: skip


def sheets() -> tuple[Template, ...]:
    """Amounts, then keys, one under another; the ranks on a sheet of their own."""
    lines = tuple(f"changes.{name}_{ending}" for ending in ENDINGS for name in CHANGES)
    inputs = ("changes.name", *(f"changes.{name}" for name in CHANGES))
    return (
        _sheet(
            "Ranks",
            "start",
            Block("list", "Single", SINGLE),
            Block("table", "By place", BY_PLACE, axis="place"),
            Block("table", "Loans by place", ("loans.loan_of",), axis="place"),
            Block("stamp", "Stamp"),
            Block("legend", "Looks"),
        ),
        _sheet("Changes", "worked", Block("list", "Changes", lines)),
        _sheet("Inputs", "inputs", Block("inputs", "Single", inputs=inputs)),
        _sheet(
            "Tables",
            "inputs",
            Block("input_table", "Loans", inputs=("loan.name", "loan.order", "loan.limit")),
            Block("input_table", "Months", inputs=("loans.needed",)),
        ),
        _sheet(
            "Loans",
            "worked",
            Block("table", "Loans", BY_LOAN, axis="loan"),
            Block("matrix", lines=BY_LOAN_AND_MONTH),
            Block("across", "Months", ("loans.needed_used", "loans.drawn_in_all"), axis="month"),
        ),
        _sheet("Constants", "reference", Block("constants", "Constants"), Block("sources", "Sources")),
    )


def _sheet(name: str, kind: str, *blocks: Block) -> Template:
    return Template(f"{name.lower()}.toml", name, name, "What is on this sheet?", kind, blocks)
