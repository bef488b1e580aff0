"""The sheets of the small farm in the plan's own calendar."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from farmbook.layout.template import Block, Template

__all__ = ["TITLE", "sheets"]

TITLE: Final = "title.heading"
SINGLE: Final = (
    "title.name",
    "plan.start",
    "picked.places",
    "picked.a_month",
    "money.bills",
    "money.opening",
    "money.highest",
    "money.fall",
)
TABLES: Final = (("picked.rate",), ("money.share", "money.price"), ("money.borrowed", "money.repaid"))
STARTED: Final = (
    *(f"plan_start.{name}" for name in ("day", "first_of_month", "weeks_before", "first_monday")),
    *(f"plan_months.{name}" for name in ("many", "end", "rows_before", "passed", "begun")),
    "plan_weeks.rows",
)
MONTHS: Final = ("next_first_day", "days", "month_of_year", "year", "begins_year", "weeks", "rows", "whole", "part")
BY_YEAR: Final = ("plan_years.number", "plan_years.last_month", "money.sales_of_year", "money.bank_at_year_end")
LOANS: Final = ("money.owed", "money.lowest_so_far", "money.lowest", "money.lowest_drawn", "money.left")
ROWS: Final = (
    "show:money.sales", "show:money.sales_in_all", "show:money.paid", "show:money.change", "show:money.left", "show:money.bank",
    "show:money.owed",
)  # fmt: skip


def sheets() -> tuple[Template, ...]:
    """Inputs, then sheets of each class with a grid of its own."""
    return (
        _sheet("Start", "start", Block("list", "Days", (TITLE, *STARTED, "money.price_kept")), Block("stamp", "Stamp")),
        _sheet("Inputs", "inputs", Block("inputs", "Single", inputs=SINGLE)),
        _sheet("Tables", "inputs", *(Block("input_table", "Table", inputs=each) for each in TABLES)),
        _sheet("Cash", "years", BANK, CASH),
        _sheet("Charts", "worked", *CHARTS),
        _sheet("Card", "card", *CARD),
        *_workings(),
        _sheet("Constants", "reference", Block("constants", "Constants"), Block("sources", "Sources")),
    )


CASH: Final = Block(
    "years",
    "Year {year}, in dollars",
    ROWS,
    heads=("plan_months.first_day",),
    levels=("money.bank", "money.owed"),
    rates=("money.left",),
    totals=("money.sales_in_all", "money.change", "money.bank"),
    lowest="money.bank",
)


BANK: Final = Block(
    "chart",
    "In the bank at each month's end; the lowest month is dark",
    axis="month",
    form="columns",
    series=({"name": "In the bank", "line": "money.bank"},),
    lowest="money.lowest_drawn",
    signed=True,
)
CHARTS: Final = (
    Block("chart", "Picked a week, {unit}", axis="week", series=({"name": "Picked", "line": "picked.by_flush"},)),
    Block(
        "chart",
        "Places taken and places had",
        axis="week",
        series=({"name": "Had", "line": "picked.had"}, {"name": "Taken", "line": "picked.taken"}),
    ),
    Block("chart", "Owed on each loan", axis="month", series=({"name": "Owed", "line": "money.owed"},), start=True),
)


CARD: Final = (
    Block(
        "card",
        "Mix and fill",
        rows=(["First day", "show:plan_start.day"], ["Sawdust, as delivered", "show:picked.places_used"]),
        look="plain",
    ),
    Block(
        "card",
        "Steam and inoculate",
        rows=(["Steam loads", "show:plan_months.many", "show:title.heading"], ["Inoculate", "show:picked.places_used"]),
    ),
    Block(
        "card", "Pick", rows=(["First flush", "show:plan_start.weeks_before"], ["", "show:title.heading"]), days=True
    ),
    Block("card", "To remember", blank=4),
)


def _workings() -> Iterator[Template]:
    yield _sheet(
        "Years",
        "worked",
        Block("table", "Flushes", ("picked.rate_used",), axis="flush"),
        Block("table", "Loans", ("money.borrowed_used", "money.repaid_used"), axis="loan"),
        Block("across", "Buyers", ("money.share_used", "money.price_used"), axis="buyer"),
        Block("across", "Year by year", BY_YEAR, axis="plan_year"),
    )
    yield _sheet(
        "Months",
        "months",
        Block("months", "The calendar", tuple(f"plan_months.{name}" for name in MONTHS)),
        heads=("plan_months.number", "plan_months.first_day"),
    )
    yield _sheet(
        "Cheaper",
        "months",
        Block("months", "Prices fall", of="cheaper"),
        heads=("show:plan_months.number", "show:plan_months.first_day"),
    )
    yield _sheet("Single", "worked", Block("case", "Prices fall", of="cheaper"))
    yield _sheet(
        "Weeks",
        "weeks",
        Block("weeks", "The calendar", ("plan_weeks.row", "plan_weeks.month_of_year", "plan_weeks.in_plan")),
        Block("weeks", "Picked", ("picked.by_flush", "picked.in_all", "picked.so_far")),
        Block("weeks", "Places and buyers", ("picked.taken", "picked.had", "money.handed_over")),
        heads=("plan_weeks.number", "plan_weeks.monday"),
    )
    yield _sheet(
        "Money",
        "months",
        Block("months", "The crop", ("picked.to_date", "picked.month")),
        Block("months", "Money", ("money.sales", "money.sales_in_all", "money.paid", "money.change", "money.bank")),
        Block("months", "Loans and the lowest month", LOANS),
        heads=("show:plan_months.number", "show:plan_months.first_day"),
    )


def _sheet(name: str, kind: str, *blocks: Block, heads: tuple[str, ...] = ()) -> Template:
    return Template(
        f"{name.lower()}.toml", name, name, "What is on this sheet?", kind, blocks, prints=kind != "weeks", heads=heads
    )
