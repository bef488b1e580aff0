"""Farms whose plan by months is strange, and random ones, all with equally many rows so that one engine serves them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any, Final

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.walk import ordered_axes
from farmbook.results import whole_farm
from farmbook.sections.declare import NumberInput, TextInput
from tests.twin.edge_farms import changes_of, plausible
from tests.twin.farms import Farm
from tests.twin.random_farms import random_farm

__all__ = ["MONTH_EDGES", "month_edge", "month_farm", "month_numbers", "random_month_farm", "with_one_of_months"]

TABLES: Final = (
    "opening",
    "item",
    "bill",
    "bills",
    "capital",
    "household",
    "plan",
    "start_up",
    "step_up",
    "loan",
    "sales_tax",
)
"""Whose numbers the months are made of, besides the typical year."""


def counted(year: int, month: int, day: int) -> float:
    """A day as spreadsheets count it."""
    return float((date(year, month, day) - date(1899, 12, 30)).days)


SHUT: Final = {"plan.shut_weeks": [0, 5, 5, 5, 0, 0, 0, 5, 0, 0, 0, 5]}
PLANTS: Final[Mapping[str, Any]] = {
    "item.price": [9000, 21000, None],
    "item.salvage": [500, 4000, None],
    "item.life": [0.5, 2, None],
}
LOANS: Final[Mapping[str, Any]] = {
    "loans.counted": "worked out from the list",
    "loan.amount": [60000, None, None],
    "loan.rate": [0.06, None, None],
    "loan.term": [120, None, None],
    "loan.drawn_in": [3, None, None],
    "loan.fees": [900, None, None],
}
NEW: Final[Mapping[str, Any]] = {"farm.stage": "new farm", "opening.cash": 30000}

TAXED: Final[Mapping[str, Any]] = {
    "sales_tax.counted": "In cash",
    "sales_tax.on_supplies": 0.07,
    "sales_tax.on_bills": 0.1,
    "sales_tax.on_bought": 0.19,
    "sales_tax.owed_first": 900,
    "customer.tax_inside": [0.07, 0.19, 0, 0.1, 0.07],
}

MONTH_EDGES: Final[Mapping[str, Mapping[str, Any]]] = {
    "nothing strange": {"opening.cash": 20000},
    "new farm": NEW,
    "new farm that starts late and slowly": {
        **NEW,
        "start_up.first_filling": 30,
        "start_up.weeks_to_full": 52,
        "start_up.sales_at_first": 0,
        "start_up.hands_from": 40,
    },
    "new farm that is owed and owes": {**NEW, "opening.customers_owe": 5000, "opening.owed_to_suppliers": 900},
    "start on the 29th of February": {"plan.start": counted(2028, 2, 29)},
    "start on the last of a month": {"plan.start": counted(2027, 8, 31), **NEW},
    "start in the middle of a month, at noon": {"plan.start": counted(2029, 11, 14) + 0.5},
    "start on a Monday that is the first": {"plan.start": counted(2027, 2, 1)},
    "start on a Sunday that is the first": {"plan.start": counted(2027, 8, 1)},
    "start before any": {"plan.start": None},
    "start after all": {"plan.start": 99999},
    "customers who pay after half a year": {"customer.days_to_pay": [0, 200, 30.4375, 15, 365]},
    "customers who pay at once": {"customer.days_to_pay": 0},
    "customers who pay whole months later": {"customer.days_to_pay": [30.4375, 60.875, 91.3125, 182.625, 0]},
    "a new farm's customers pay late": {**NEW, "customer.days_to_pay": [10, 200, 61, 120, 0]},
    "customers owe nothing": {"opening.customers_owe": 0, "opening.owed_to_suppliers": 0},
    "customers owe for a year": {"opening.customers_owe": 400000, "opening.owed_to_suppliers": 90000},
    "customers with months of nothing": {
        "customer.season": [[0, 0, 0.4] + [1] * 9, [1] * 6 + [0] * 6, [1] * 12, [0, 1] * 6, [1] * 12],
    },
    "nobody takes anything in summer": {"customer.season": [[1] * 5 + [0] * 3 + [1] * 4] * 5},
    "more than twice as much in summer": {"customer.season": [[1] * 5 + [2.5] * 3 + [1] * 4] * 5},
    "no customers": {"customer.most_a_week": None, "customer.price": None},
    "one customer": {"customer.most_a_week": [None, 800, None, None, None]},
    "customers who take the crop to the last kilogram": {"customer.most_a_week": [86, 86, 86, 86, 0]},
    "suppliers paid at once": {"opening.supplier_days": 0, "opening.supply_weeks": 0},
    "suppliers paid after half a year": {"opening.supplier_days": 200, "opening.supply_weeks": 104},
    "suppliers paid whole months later": {"opening.supplier_days": 60.875},
    "more bags in steps": {
        "step_up.from_week": [9, 40, None],
        "step_up.more_bags": [200, -300, None],
        "step_up.more_hours": [20, 0, None],
    },
    "bags given up": {"step_up.from_week": [20, 60, None], "step_up.more_bags": [-5000, 9000, None]},
    "bills in one sum": {"bills.counted": "one sum", "bills.in_all": 22000, "bills.energy": 7000},
    "bills each in its month": {"bill.due_in": [3, 12, None]},
    "one bill every month": {"bill.due_in": [0, 7, None]},
    "energy with seasons": {"bills.energy_season": [1.6, 1.5, 1.2, 1, 0.7, 0.5, 0.5, 0.5, 0.7, 1, 1.3, 1.5]},
    "months without a load": {**SHUT, "energy.demand_charge": 14},
    "months without a load, a ratchet of two": {
        **SHUT,
        "energy.demand_charge": 14,
        "bills.ratchet_share": 0.75,
        "bills.ratchet_months": 2,
    },
    "a new farm with a ratchet of a year": {
        **NEW,
        **SHUT,
        "start_up.first_filling": 25,
        "energy.demand_charge": 14,
        "bills.ratchet_share": 0.9,
        "bills.ratchet_months": 12,
    },
    "loss in value in one sum": {"capital.counted": "one sum", "capital.own_loss": 5000},
    "loss in value in one sum, worked out": {"capital.counted": "one sum"},
    "things past their lives": {**PLANTS, "item.age": [3, 11, None]},
    "things at the very end of their lives": {**PLANTS, "item.age": [0.5, 2, None]},
    "things to buy": {**PLANTS, "item.bought_in": [1, 7, None], "capital.steamer_bought_in": 2},
    "things to buy in the last month": {**PLANTS, "item.bought_in": [12, 84, None], "capital.steamer_bought_in": 84},
    "things to buy between months": {**PLANTS, "item.bought_in": [3.5, 11.25, None], "bill.due_in": [3.5, 0, None]},
    "things without a life": {**PLANTS, "item.life": [None, None, None], "item.age": [4, 0, None]},
    "own spawn": {"spawn.supply": "made on the farm"},
    "own spawn of a new farm, its lab to buy": {**NEW, "spawn.supply": "Made on the farm", "capital.lab_bought_in": 5},
    "own spawn, heavy in lab bills": {"spawn.supply": "made on the farm", "make_or_buy.upkeep": 4000},
    "spawn in large bags": {"spawn.pack_weight": 40},
    "spawn ordered months ahead": {"spawn.lead_time": 30},
    "spawn of no cost": {"spawn.counted": "one figure", "spawn.own_cost": 0},
    "picked by the piece": {"picking.paid": "by the piece", "hours.counted": "worked out by task"},
    "hours paid": {"hours.counted": "hours paid", "hours.hired_hours": 60},
    "a corporation": {"household.form": "Corporation", "household.owner_pay": 48000, "household.needs": 30000},
    "social insurance by its own rate": {
        "household.social": "By its own rate",
        "household.tax_rate": 0.12,
        "bill.due_in": [9, 2, None],
        "bill.amount": [30000, 0, None],
    },
    "social insurance of a corporation": {
        "household.social": "by its own rate",
        "household.form": "corporation",
        "household.owner_pay": 20000,
    },
    "social insurance and tax of more than everything": {
        "household.social": "by its own rate",
        "household.tax_rate": 1,
    },
    "sales tax in cash": {**TAXED, "selling.tax": "Registered: passed on"},
    "sales tax in cash, paid over once a year": {
        **TAXED,
        "selling.tax": "registered: passed on",
        "sales_tax.paid_over_each": "Each year",
        "sales_tax.owed_first": -700,
        "opening.customers_owe": 5000,
        "customer.days_to_pay": [45, 0, 10, 100, 14],
    },
    "sales tax in cash, paid over every month": {
        **TAXED,
        "selling.tax": "registered: passed on",
        "sales_tax.paid_over_each": "each month",
        "capital.steamer_bought_in": 3,
    },
    "sales tax in cash that is not passed on": TAXED,
    "a household that needs more than it earns": {"household.needs": 90000, "household.debts": 12000},
    "a household with more from elsewhere": {"household.needs": 20000, "household.other_income": 90000},
    "a tax of everything": {"household.tax_rate": 1, "bill.due_in": [9, 2, None], "bill.amount": [70000, 0, None]},
    "a credit line that is too short": {**NEW, "opening.line_limit": 20000, "opening.least_cash": 4000},
    "a credit line that is long enough": {**NEW, "opening.line_limit": 1e8, "opening.least_cash": 4000},
    "a credit line owed beyond its limit": {
        "opening.cash": 1000,
        "opening.line_owed": 60000,
        "opening.line_limit": 25000,
        "opening.line_rate": 0.14,
    },
    "a credit line paid back": {"opening.cash": 500, "opening.line_owed": 20000, "opening.line_limit": 25000},
    "cash below nothing": {"opening.cash": -7000},
    "cash not typed": {"opening.cash": None, "household.needs": 200000},
    "put on top of everything": {"opening.contingency": 0.15, "opening.early_receipts": 0},
    "all receipts first": {"opening.early_receipts": 1, "household.needs": 60000},
    "loans": LOANS,
    "loans of a new farm": {**NEW, **LOANS, "opening.line_limit": 30000},
    "loan payments in one sum": {"loans.payments": 9000, "opening.cash": 0},
}
"""Changes of a plausible farm, by dotted name."""


@cache
def sizes() -> Mapping[Axis, int]:
    """How many rows every farm here has: as many as the random ones."""
    return {axis: len(rows) for axis, rows in random_farm(0).names.items()}


def widened(farm: Farm) -> Farm:
    """The same farm with more spare rows."""
    wanted = sizes()
    names: dict[Axis, Sequence[str]] = {
        axis: (*rows, *[""] * (wanted[axis] - len(rows))) for axis, rows in farm.names.items()
    }
    cells = dict(farm.numbers)
    words = dict(farm.words)
    for declared, bound in whole_farm().inputs.items():
        name, axes = declared.dotted, ordered_axes(bound.cell.axes)
        if isinstance(declared, NumberInput) and axes:
            more = [(0, wanted[axis] - len(farm.names[axis]) if axis.named else 0) for axis in axes]
            cells[name] = np.pad(np.asarray(farm.numbers[name], dtype=float), more, constant_values=np.nan)
        elif isinstance(declared, TextInput) and axes:
            more_rows = wanted[axes[0]] - len(farm.names[axes[0]])
            words[name] = list(names[axes[0]]) if declared.names else [*words[name], *[""] * more_rows]
    return Farm(cells, words, names, farm.months)


def month_farm(changes: Mapping[str, Any], months: int) -> Farm:
    """The plausible farm with changes by dotted name, over a plan of so many months."""
    return widened(replace(plausible(changes_of(changes)), months=months))


def month_edge(name: str, months: int) -> Farm:
    """The plausible farm with the changes of one edge."""
    return month_farm(MONTH_EDGES[name], months)


def random_month_farm(seed: int, months: int) -> Farm:
    """A random farm whose things are bought, and whose bills are due, in whole months mostly, some paid very late."""
    farm, rng = random_farm(seed), np.random.default_rng([seed, months])
    cells = dict(farm.numbers)
    for name in ("item.bought_in", "bill.due_in", "capital.steamer_bought_in", "capital.lab_bought_in"):
        cells[name] = np.where(rng.random() < 0.8, np.round(cells[name]), cells[name])
        cells[name] = np.where(rng.random(cells[name].shape) < 0.3, 0.0, cells[name])
    days = cells["customer.days_to_pay"]
    cells["customer.days_to_pay"] = np.where(rng.random(days.shape) < 0.3, rng.uniform(0, 200, days.shape), days)
    season = cells["customer.season"]
    cells["customer.season"] = np.where(rng.random(season.shape) < 0.1, 0.0, season)
    return replace(farm, numbers=cells, months=months)


def month_numbers() -> list[NumberInput]:
    """The numbers of the tables of which months are made."""
    inputs = (declared for declared in whole_farm().inputs if isinstance(declared, NumberInput))
    return [declared for declared in inputs if declared.dotted.split(".")[0] in TABLES]


def with_one_of_months(declared: NumberInput, value: float | None, months: int) -> Farm:
    """The plausible farm with cash, and one number set to this, or cleared."""
    return month_farm({**MONTH_EDGES["nothing strange"], declared.dotted: value}, months)
