"""Statements worked by hand: farms so simple that the whole balance sheet can be written down."""

from __future__ import annotations

from typing import Any, Final

import pytest

from farmbook.interpret.numbers import Array
from tests.twin.test_months_by_hand import SIMPLE, months_of, starts_with

ONE_FLUSH: Final = {
    "crop.loss_at_steaming": 0,
    "recipe.loss_in_spawn_run": 0,
    "crop.loss_before_first_pick": 0,
    "crop.flushes_kept": 1,
    "crop.pick_days": 0,
    "crop.spawn_run_days": 21,
    "crop.days_to_first_pick": 11,
}
MIX: Final = {"bag.own_material_cost": 0.7, "opening.supply_weeks": 3, "opening.supplier_days": 0}
QUARTERLY: Final[dict[str, Any]] = {
    "loans.counted": "worked out from the list",
    "loan.amount": [12000, None, None],
    "loan.rate": [0.06, None, None],
    "loan.term": [12, None, None],
    "loan.interval": [3, None, None],
    "loan.next_payment": [2, None, None],
    "loan.drawn_in": [0, None, None],
    "loan.interest_only": [12, None, None],
    "loan.balloon": [12000, None, None],
    "loan.fees": 0,
}
"""12,000 owed at 6%, of which only the interest is paid: 180 in months 2, 5, 8 and 11, and the whole loan with the last."""


def simple(changes: dict[str, Any]) -> dict[str, Array]:
    """The farm that sells for 100 a day, with some more about it."""
    return months_of({**SIMPLE, **changes})


def test_a_hundred_a_day_is_the_owners() -> None:
    """Nothing is owed and nothing costs; only cash grows."""
    found = simple({})
    assert starts_with(found["month_income.after_tax"], 3100, 2800, 3100, 3000)
    owned = float(found["start_balance.equity"])
    assert owned == pytest.approx(1000 + float(found["month_capital.opening_value"]))
    assert starts_with(found["month_balance.equity"] - owned, 3100, 5900, 9000, 12000)
    assert starts_with(found["month_balance.total_assets"] - owned, 3100, 5900, 9000, 12000)
    assert starts_with(found["year_statements.sales"], 36500)


def test_bags_stand_at_what_they_have_cost() -> None:
    """620 a week at 0.70: on the way to the bench, 21 days in the spawn run, 11 to the only pick; a stock of three weeks besides."""
    found = simple({**MIX, **ONE_FLUSH})
    days = float(found["lags.to_bench"]) + 21 + 11
    value = 620 / 7 * days * 0.7
    assert starts_with(found["bags_value.value"], *[value] * 12)
    assert float(found["bags_value.value_at_start"]) == pytest.approx(value)
    assert starts_with(found["month_balance.supplies"], *[3 * 434.0] * 12)
    assert starts_with(found["month_income.after_tax"], 3100 - 1922, 2800 - 1736, 3100 - 1922)


def test_half_of_the_weight_is_half_of_the_value() -> None:
    """Two flushes alike, 13 days apart: a bag stands at its cost for 11 days and at half of it for 13 more."""
    found = simple(
        {
            **MIX,
            **ONE_FLUSH,
            "crop.flushes_kept": 2,
            "crop.loss_between_flushes": 0,
            "crop.yield_given": "weight picked from a bag",
            "crop.first_weight": 0.4,
            "crop.later_weight": 0.4,
            "crop.added_days": [0, 13, 14, 15],
        }
    )
    days = float(found["lags.to_bench"]) + 21 + 11 + 13 / 2
    assert starts_with(found["bags_value.value"], *[620 / 7 * days * 0.7] * 12)


def test_bags_of_a_new_farm_are_no_cost_until_they_are_picked() -> None:
    """What is spent on them is kept as their value: nothing is lost in the months before the first pick."""
    found = simple(
        {
            **MIX,
            **ONE_FLUSH,
            "farm.stage": "new farm",
            "start_up.first_filling": 1,
            "start_up.loss_at_first": 0,
            "crop.spawn_run_days": 28,
        }
    )
    spent, days_before = float(found["month_supplies.used_up"][0]), float(found["bags_value.value_at_start"])
    assert starts_with(found["bags_value.value"], spent + days_before)
    assert 0 < days_before < 20  # the days of week 1 that fall before the first month
    assert float(found["month_income.after_tax"][0]) == pytest.approx(0, abs=0.005)
    assert float(found["month_balance.equity"][0]) == pytest.approx(float(found["start_balance.equity"]))


def test_interest_grows_between_payments() -> None:
    """60 a month: one of them has grown when the plan starts, and three are paid in month 2."""
    found = simple(QUARTERLY)
    assert float(found["accrued.at_start"]) == pytest.approx(60)
    assert starts_with(found["accrued.interest"], 120, 0, 60, 120, 0)
    assert starts_with(found["month_income.loan_interest"], 60, 60, 60, 60)
    assert starts_with(found["month_balance.loans_current"], *[12000] * 10)
    # with the last payment the loan is paid back in month 11
    assert float(found["month_balance.total_liabilities"][10]) == pytest.approx(0)


def test_the_household_and_the_owner_move_what_is_their_own() -> None:
    """1,000 drawn each month, 5,000 put in in month 3; 400 of land more at market than in the books."""
    found = simple(
        {
            "household.needs": 12000,
            "opening.put_in": 5000,
            "opening.put_in_month": 3,
            "opening.land": 600,
            "opening.land_market": 1000,
            "opening.other_long": 250,
        }
    )
    owned = float(found["start_balance.equity"])
    assert owned == pytest.approx(1000 + float(found["month_capital.opening_value"]) + 600 - 250)
    assert starts_with(found["month_balance.equity"] - owned, 2100, 3900, 11000, 13000)
    assert float(found["year_balance.equity_at_market"][0] - found["year_balance.equity"][0]) == pytest.approx(400)


def test_coverage_before_and_after_the_household() -> None:
    """36,500 earned, 1,200 due of which 600 is interest, 12,000 to live on: 30.42 before and 20.42 after."""
    loans = {"loans.counted": "one sum", "loans.payments": 1200, "loans.interest_share": 0.5}
    found = simple({**loans, "household.needs": 12000})
    assert float(found["coverage.before_household"][0]) == pytest.approx(36500 / 1200)
    assert float(found["coverage.after_household"][0]) == pytest.approx(24500 / 1200)
    assert float(found["coverage.first_full_year"]) == 1
    assert float(found["coverage.margin"][0]) == pytest.approx(24500 - 1200)


def test_at_the_price_that_just_pays_the_loans_they_are_just_covered() -> None:
    """3,640 kg a year must bring 12,000 to live on, and 1,200 for the loans: 3.63 a kilogram, where no tax is paid."""
    loans = {"loans.counted": "one sum", "loans.payments": 1200, "loans.interest_share": 0.5}
    found = simple({**loans, "household.needs": 12000})
    assert float(found["coverage_price.price"]) == pytest.approx(13200 / 3640)
    assert float(found["coverage_price.coverage_then"]) == pytest.approx(1)
    # a quarter of income after interest goes to tax: 12,600 must be left of it
    taxed = simple({**loans, "household.needs": 12000, "household.tax_rate": 0.25})
    assert float(taxed["coverage_price.price"]) == pytest.approx((12600 / 0.75 + 600) / 3640)
