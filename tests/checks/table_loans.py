"""Checks of loans: farms that break them, and farms that they leave in peace.

The plausible farm has two: 18,000 in twelve payments by the quarter, and 40,000 in month 4, in twenty payments by the half-year,
of which the first two are interest only and the last has a balloon.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked

__all__ = ["LOANS"]

LISTED: Final = {"loans.counted": "worked out from the list"}
FIRST_IS_NOTHING: Final = {"loan.amount": [0, 40000, None]}

LOANS: Final[Mapping[str, Checked]] = {
    "loan_checks.rates_fit": Checked(
        fails=({"loan.rate": [0.00099, 0.05, None]}, {"loan.rate": [0.065, 1e-9, None]}),
        holds=({"loan.rate": [0, 0.001, None]}, {"loan.rate": [0.0005, 0.05, None], **FIRST_IS_NOTHING}),
    ),
    "loan_checks.intervals_fit": Checked(
        fails=tuple({"loan.interval": [months, 6, None]} for months in (2, 4, 5, 9, 11, 3.5)),
        holds=(
            {"loan.interval": [1, 12, None]},
            {"loan.interval": [6, 3, None]},
            {"loan.interval": [2, 6, None], **FIRST_IS_NOTHING},
        ),
    ),
    "loan_checks.payments_whole": Checked(
        fails=(
            {"loan.term": [37, 120, None]},
            {"loan.term": [36, 123, None]},
            {"loan.interest_only": [0, 7, None]},
            {"loan.interest_only": [39, 12, None]},
        ),
        holds=(
            {"loan.term": [39, 126, None]},
            {"loan.interest_only": [36, 120, None]},
            {"loan.term": [37, 120, None], **FIRST_IS_NOTHING},
        ),
    ),
    "loan_checks.balloons_fit": Checked(
        fails=({"loan.balloon": [18000.01, 0, None]}, {"loan.balloon": [0, 1, None], "loan.amount": [18000, 0, None]}),
        holds=({"loan.balloon": [18000, 40000, None]}, {"loan.balloon": 0}),
    ),
    "loan_checks.starts_whole": Checked(
        fails=({"loan.drawn_in": [0, 4.5, None]}, {"loan.next_payment": [1.5, 1, None]}),
        holds=(
            {"loan.drawn_in": [1, 12, None]},
            {"loan.next_payment": [3, 1.5, None]},
            {"loan.next_payment": [1.5, 1, None], **FIRST_IS_NOTHING},
        ),
    ),
    "loan_checks.next_payments_fit": Checked(
        fails=({"loan.next_payment": [4, 1, None]}, {"loan.next_payment": [2, 7, None], "loan.drawn_in": 0}),
        holds=(
            {"loan.next_payment": [3, 12, None]},
            {"loan.next_payment": [3, 6, None], "loan.drawn_in": 0},
            {"loan.next_payment": [4, 1, None], **FIRST_IS_NOTHING},
        ),
    ),
    "loan_months.adds_up": Checked(
        slips=(
            "loan_list.level_payment",
            "loan_list.repaying_payment",
            "loans_at_month.owed",
            "listed_loans.paid",
            "loan_months.drawn",
            "loan_months.payments",
            "loan_months.interest",
            "loan_months.owed",
            "loan_months.repaid",
        ),
        slips_where=LISTED,
        holds=(
            {},
            LISTED,
            {**LISTED, "loan.rate": 0},
            {**LISTED, "loan.interest_only": [36, 120, None]},
            {**LISTED, "loan.term": 1, "loan.interval": 1, "loan.drawn_in": [0, 12, None]},
            {**LISTED, "loan.name": ("", "", "")},
        ),
    ),
    # the plan of these farms has twelve months
    "loan_years.comes_in_the_plan": Checked(
        fails=({"loan.drawn_in": [0, 13, None]},),
        holds=({"loan.drawn_in": [0, 12, None]}, {"loan.drawn_in": [13, 12, None], **FIRST_IS_NOTHING}),
    ),
    # forty years are 480 months; the second loan is paid from month 4 on
    "loan_years.table_reaches": Checked(
        fails=({"loan.term": [36, 480, None]},),
        holds=({"loan.term": [36, 474, None]}, {"loan.term": [480, 120, None], "loan.next_payment": [3, 1, None]}),
    ),
}
