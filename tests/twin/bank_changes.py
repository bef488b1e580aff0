"""What a lender is shown, on the plausible farm: a loan asked for, things offered, past years, permits, bills with headings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

__all__ = ["ASKED", "BANK"]

ASKED: Final[Mapping[str, Any]] = {"request.loan": "rooms", "loans.counted": "worked out from the list"}
"""The second loan of the list: 40,000 that come in month 4."""
OFFERED: Final[Mapping[str, Any]] = {
    "security.market_value": [9000, 21000, None],
    "security.owed_on_it": [0, 15000, None],
    "security.lendable": [0.5, 0.7, None],
    "security.forced": [0.4, 0.6, None],
    "security.selling": [0.1, 0.2, None],
}
PAST: Final[Mapping[str, Any]] = {
    "record.bags": [20000, 26000, 30000, 5000],
    "record.picked": [9000, 13000, 16000, 2600],
    "record.sold": [8000, 11500, 14000, 2300],
    "record.sales": [96000, 150000, 170000, 29000],
    "record.costs": [70000, 99000, 120000, 20000],
    "record.interest": [1000, 900, 800, None],
    "record.worn": [4000, 4000, 4100, None],
    "record.month_bags": [2500, 2400, None, 2300, 0, 2500, 2500, 2500, 2500, 2500, 2500, 2500],
    "record.month_picked": [1300, 1250, 1290, None, 1100, 1300, 1300, 1300, 1300, 1300, 1300, 1300],
}
HEADINGS: Final[Mapping[str, Any]] = {"bill.heading": ["Rent", "INSURANCE", "rent"]}
DEBTS: Final[Mapping[str, Any]] = {
    "household_debt.owed": [120000, 8000, None],
    "household_debt.paid": [9000, 2500, None],
    "household.debts": 11500,
}
BANK: Final[Mapping[str, Mapping[str, Any]]] = {
    "a loan asked for": {**ASKED, **OFFERED, **PAST, **DEBTS, "opening.cash": 20000, "household.needs": 30000},
    "a loan asked for, loans in one sum": {**ASKED, "loans.counted": "one sum", "loans.payments": 9000},
    "a loan asked for that runs": {**ASKED, "request.loan": "VAN loan", "household.needs": 30000},
    "a loan asked for that is not there": {**ASKED, "request.loan": "another"},
    "a loan asked for of no amount": {**ASKED, "loan.amount": [18000, 0, None]},
    "a loan asked for by a corporation": {
        **ASKED,
        "household.form": "corporation",
        "household.owner_pay": 40000,
        "household.needs": 30000,
        "household.other_income": 9000,
    },
    "a project with money of its own": {
        **ASKED,
        "item.bought_in": [3, 0, None],
        "capital.steamer_bought_in": 2,
        "request.owner_cash": 5000,
        "request.grants": 2500,
        "opening.put_in": 3000,
    },
    "a project that pays": {"item.bought_in": [3, 0, None], "step_up.more_bags": [100, 0, None]},
    "more owed on a thing than it brings": {**OFFERED, "security.owed_on_it": [9000, 21000, None], **ASKED},
    "past years with gaps": {**PAST, "record.bags": [None, 26000, 0, 5000], "record.sold": [0, None, 14000, 2300]},
    "past years worse than the plan": {
        **PAST,
        "record.picked": [1000, 1300, 1600, 260],
        "record.sales": [9600, 15000, 17000, 2900],
    },
    "permits and a lease that run out": {
        **ASKED,
        "permit.until": [46600, 60000, None],
        "request.lease_until": 46700,
    },
    "a lease that lasts": {**ASKED, "request.lease_until": 54000},
    "what is to be kept is not": {
        "request.wanted_coverage": 3,
        "request.wanted_current": 9,
        "request.most_debt": 0,
        "request.wanted_cash": 90000,
        "opening.cash": 2000,
        "loans.payments": 30000,
        "household.needs": 60000,
    },
    "bands the wrong way round": {"request.current_good": 1, "request.current_weak": 3, "request.expense_good": 0.9},
    "bills with headings": {**HEADINGS, "crosswalk.form": "A form", "bill.amount": [9000, 2800, 700]},
    "bills with headings in one sum": {**HEADINGS, "bills.counted": "one sum", "bills.in_all": 22000},
    "nothing sold and nothing owned": {**ASKED, "farm.bags_filled_a_week": 0, "item.price": 0, "cabinet.price": 0},
}
