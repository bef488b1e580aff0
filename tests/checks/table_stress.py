"""Checks of how far prices or the weight could fall: only a changed formula breaks them, and no farm is blamed.

The farms whose figures are falsified are paid well and need much, so that something may fall even where costs are below zero.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked
from tests.checks.farms import Typed

__all__ = ["STRESS"]

LISTED: Final = {"loans.counted": "worked out from the list"}
SAFE: Final = {**LISTED, "household.other_income": 60000, "household.needs": 0, "stress.covenant": 1.3}
PAID_WELL: Final = {**LISTED, "customer.price": [66, 46.5, 33, 21.6, 120], "household.needs": 200000}
NOBODY: Final = {"customer.name": ("",) * 5}
STRANGE: Final[tuple[Typed, ...]] = (
    SAFE,
    PAID_WELL,
    {**SAFE, "household.tax_rate": 0},
    {**SAFE, "household.tax_rate": 1},
    {**SAFE, "picking.paid": "by the piece"},
    {**SAFE, "customer.most_a_week": [20, 30, 10, 5, 0]},
    {**SAFE, "loan.amount": 0},
    {**LISTED, "household.needs": 200000},
    {**SAFE, "crop.loss_at_steaming": 1},
    {**SAFE, "customer.price": 0},
    {**SAFE, "customer.fee": 1},
    {**SAFE, **NOBODY},
    {},
)
"""Farms of which no fall may be blamed: with loans or without, below the coverage wanted, with nothing to sell."""


def _falls(name: str, of: str, *more: str) -> Checked:
    """The check of one fall, down to one coverage."""
    case = f"{name}_to_{of}"
    slips = (
        f"to_lose_of_{of}.income",
        f"to_lose_of_{of}.room",
        f"{case}.fall",
        f"customer_year.takings_in_all_{case}",
        f"year.cash_cost_{case}",
        f"coverage.typical_capacity_{case}",
    )
    return Checked(slips=(*slips, *more), slips_where=PAID_WELL, holds=STRANGE)


STRESS: Final[Mapping[str, Checked]] = {
    "price_to_asked.proves": _falls("price", "asked", "price_to_asked.at_stake"),
    "price_to_one.proves": _falls("price", "one", "price_to_one.at_stake"),
    "weight_to_asked.proves": _falls("weight", "asked", "weight_lost.more_than_next"),
    "weight_to_one.proves": _falls("weight", "one", "weight_lost.more_than_next"),
}
