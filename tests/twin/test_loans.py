"""Random loans of every kind, alone and together, over plans of one, three and seven years, held to a loop over their payments."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

import numpy as np
import pytest

from farmbook.interpret.numbers import Array
from farmbook.model.axes import LOAN
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.year.loans import Loans
from tests.twin.edge_farms import NAMES, PLAUSIBLE
from tests.twin.farm_twin_loans import MONTHS, YEARS, Course, Loan, first_full_year, level_payment, run
from tests.twin.farms import Farm, farm_of, values_of

HORIZONS: Final = (12, 36, 84)
INTERVALS: Final = (1, 3, 6, 12)
LOANS_OF_A_FARM: Final = 6
FARMS: Final = 25
WITHIN: Final = 1e-9
"""Of the loan's amount, or of the sum of all loans."""
FIELDS: Final = {
    LoanList.amount: "amount",
    LoanList.rate: "rate",
    LoanList.term: "term",
    LoanList.interval: "interval",
    LoanList.drawn_in: "drawn_in",
    LoanList.next_payment: "next_payment",
    LoanList.interest_only: "interest_only",
    LoanList.balloon: "balloon",
    LoanList.fees: "fees",
}


def random_loan(rng: np.random.Generator, horizon: int) -> Loan:
    """A loan as a lender could make it."""
    interval = int(rng.choice(INTERVALS))
    payments = int(rng.integers(1, 360 // interval + 1))
    amount = float(rng.uniform(500, 400000))
    return Loan(
        amount=amount,
        rate=float(rng.choice([0.0, 0.001, rng.uniform(0.001, 0.02), rng.uniform(0.02, 0.2)], p=[0.2, 0.1, 0.2, 0.5])),
        term=payments * interval,
        interval=interval,
        drawn_in=float(rng.choice([0, int(rng.integers(1, horizon + 1))])),
        next_payment=float(rng.integers(1, interval + 1)),
        interest_only=float(rng.choice([0, int(rng.integers(0, payments + 1)) * interval])),
        balloon=float(rng.choice([0.0, rng.uniform(0, amount), amount], p=[0.6, 0.3, 0.1])),
        fees=float(rng.choice([0, 350.5])),
    )


def farm_with(loans: Sequence[Loan], horizon: int) -> Farm:
    """The plausible farm with these loans, and a spare row."""
    typed: dict[Any, Any] = {
        declared: [*(getattr(loan, name) for loan in loans), None] for declared, name in FIELDS.items()
    }
    names = {**NAMES, LOAN: (*(f"Loan {number}" for number in range(len(loans))), "")}
    return farm_of({**PLAUSIBLE, **typed, Loans.counted: "worked out from the list"}, names, horizon)


def drawn(seed: int, horizon: int) -> list[Loan]:
    rng = np.random.default_rng([seed, horizon])
    return [random_loan(rng, horizon) for _ in range(LOANS_OF_A_FARM)]


def near(found: Array, wanted: Sequence[Any], amount: float) -> bool:
    """Whether amounts agree to the last digits that a sum of this size has."""
    return bool(np.all(np.abs(found - np.array(wanted, dtype=float)) <= WITHIN * amount))


@pytest.mark.parametrize("horizon", HORIZONS)
def test_every_loan_is_where_its_payments_leave_it(horizon: int) -> None:
    farms = [drawn(seed, horizon) for seed in range(FARMS)]
    found = {
        line.name: value for line, value in values_of([farm_with(loans, horizon) for loans in farms], "metric").items()
    }
    for number, loans in enumerate(farms):
        for row, loan in enumerate(loans):
            course = run(loan, max(YEARS * MONTHS, horizon + MONTHS))
            for name, wanted in expected(loan, course, horizon).items():
                of_row = found[name][number, row]
                assert near(of_row, np.array(wanted, dtype=float).tolist(), max(loan.amount, 1)), (name, loan)


def expected(loan: Loan, course: Course, horizon: int) -> dict[str, Any]:
    """What the model's lines of one loan must come to: before it comes, all of it is owed, or to be borrowed."""
    paid, interest = first_full_year(loan)
    owed = [loan.amount if month < loan.drawn_in else each for month, each in enumerate(course.owed)]
    left = [loan.payments - made for made in course.made]
    return {
        "loan_list.level_payment": level_payment(loan),
        "loan_list.paid_a_year": paid,
        "loan_list.interest_a_year": interest,
        "loan_list.ends_in": loan.ends,
        "loans_at_month.left": left[1 : horizon + 1],
        "loans_at_month.owed": owed[1 : horizon + 1],
        "loans_year_on.left": left[1 + MONTHS : horizon + 1 + MONTHS],
        "loans_year_on.owed": owed[1 + MONTHS : horizon + 1 + MONTHS],
        "loans_at_year.left": left[MONTHS : YEARS * MONTHS + 1 : MONTHS],
        "loans_at_year.owed": owed[MONTHS : YEARS * MONTHS + 1 : MONTHS],
    }


@pytest.mark.parametrize("horizon", HORIZONS)
def test_every_loan_ends_with_nothing_owed_and_all_of_it_repaid(horizon: int) -> None:
    """Loops and closed form both: interest and the loan are all that was paid, and nothing is paid after the end."""
    for seed in range(FARMS):
        for loan in drawn(seed, horizon):
            course = run(loan, int(loan.ends) + MONTHS)
            assert course.owed[-1] == 0
            assert float(course.paid[-1] - course.interest[-1]) == pytest.approx(loan.amount, rel=1e-12)
            assert course.made[-1] == course.made[int(loan.ends)] == loan.payments
