"""Checks of what a lender is shown: farms that break them, and farms that they leave in peace.

The plausible farm asks for its second loan, 40,000 from month 4 on, but has its loans as one sum, and says nothing of its cash.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked
from tests.twin.bank_changes import ASKED

__all__ = ["BANK"]

BOUGHT: Final = {"item.bought_in": [3, 0, None]}
FEWER: Final = {"step_up.more_bags": [-100, 0, None]}
SHORT: Final = {"loans.payments": 9000, "household.needs": 500000}
NO_OWNER: Final = {"owner.name": ("", "")}
NO_DEBT: Final = {"household_debt.name": ("", "", "")}
LEASE: Final = {**ASKED, "request.lease_until": 50221}
PAST: Final = {"record.bags": [1000, None, None, None], "record.picked": [1000, None, None, None]}
PRICED: Final = {"record.sold": [None, 1000, None, None]}

BANK: Final[Mapping[str, Checked]] = {
    "request.counted": Checked(
        fails=({"opening.cash": 20000}, {"opening.cash": 20000, "request.loan": "van loan"}),
        holds=(
            {**ASKED, "opening.cash": 20000},
            {"opening.cash": 20000, "request.loan": "another"},
            {"opening.cash": 20000, "loan.amount": [18000, 0, None]},
        ),
    ),
    "people.shares_add_up": Checked(
        fails=({"owner.share": [0.999, None]}, {"owner.share": [1.001, None]}, {"owner.share": [0, None]}),
        holds=({"owner.share": [0, None], **NO_OWNER}, {"owner.name": ("Ada", "Ben"), "owner.share": [0.4, 0.6]}),
    ),
    # 9,000 are bought, and a tenth on top; the year pays its way from the first month on
    "project.paid_for": Checked(
        fails=({**BOUGHT, "request.owner_cash": 9899}, {**BOUGHT, "opening.put_in": 5000}),
        holds=(
            {**BOUGHT, "request.owner_cash": 9900},
            {**BOUGHT, "request.grants": 4000, "opening.put_in": 5900},
            {**BOUGHT, "request.owner_cash": 9000, "request.contingency": 0},
            {**BOUGHT, "loans.counted": "worked out from the list"},
            {"household.needs": 200000},
        ),
    ),
    # with 100 bags a week less the last year leaves some 11,000 less than a typical one, as it is some 500 more
    "project.adds": Checked(
        fails=({**BOUGHT, **FEWER}, {**BOUGHT, **FEWER, "request.contingency": 0}),
        holds=({**BOUGHT, "step_up.more_bags": [100, 0, None]}, BOUGHT, FEWER),
    ),
    # six tenths of it may be lent, for 40,000
    "collateral.carries": Checked(
        fails=(
            {"security.market_value": [9000, 57000, None]},
            {"security.owed_on_it": [0, 8000, None]},
            {"security.lendable": [0.5, 0.5, None]},
        ),
        holds=(
            {"security.market_value": [9000, 58000, None]},
            {"security.market_value": 0},
            {"security.market_value": [9000, 25000, None], "request.loan": "van loan"},
            {"security.market_value": [9000, 0, None], "loan.amount": [5000, 5000, None]},
        ),
    ),
    "debts.as_counted": Checked(
        fails=({"household_debt.paid": [100, None, None]}, {"household.debts": 100}),
        holds=(
            {"household_debt.paid": [100, 50, None], "household.debts": 150},
            {"household.debts": 100, **NO_DEBT},
        ),
    ),
    "permits.lease_outlasts": Checked(
        fails=({**LEASE, "request.lease_until": 50000},),
        holds=(
            {**LEASE, "request.lease_until": 54000},
            ASKED,
            {"request.lease_until": 46500, "request.loan": "another"},
        ),
    ),
    "reached.yield_reached": Checked(
        fails=({**PAST, "record.picked": [1, None, None, None]},),
        holds=({**PAST, "record.picked": [1000, None, None, None]}, {"record.picked": [1, None, None, None]}),
    ),
    "reached.price_reached": Checked(
        fails=({**PRICED, "record.sales": [None, 1000, None, None]},),
        holds=({**PRICED, "record.sales": [None, 99000, None, None]}, {"record.sales": [None, 1000, None, None]}),
    ),
    "covenants.all_kept": Checked(
        fails=(
            SHORT,
            {"request.wanted_current": 10, "opening.other_due": 100000, "request.most_debt": 5},
            {"request.most_debt": 0, "opening.owed_to_suppliers": 9000, "opening.supplier_days": 60},
            {"opening.cash": 5, "request.wanted_cash": 50000},
        ),
        holds=(
            {"request.wanted_current": 10, "opening.supplier_days": 0, "opening.owed_to_suppliers": 0},
            {"request.wanted_cash": 50000},
        ),
    ),
}
