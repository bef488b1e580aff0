"""Coverage and ratios against what defines them."""

from __future__ import annotations

import pytest

from farmbook.calc import ratios, tax


@pytest.mark.parametrize("rate", [0.0, 0.25, 0.6])
@pytest.mark.parametrize("after_tax", [12000.0, 0.5, 0.01, 0.0, -7000.0])
def test_income_before_tax_leaves_what_is_wanted(rate: float, after_tax: float) -> None:
    income = ratios.income_for_capacity(after_tax, rate)
    assert income - max(income, 0) * rate == pytest.approx(after_tax)


def test_no_income_is_enough_where_all_of_it_is_taxed_away() -> None:
    assert ratios.income_for_capacity(1000.0, 1.0) == 0
    assert ratios.income_for_capacity(-1000.0, 1.0) == -1000


@pytest.mark.parametrize("profit", [40000.0, 12.5])
@pytest.mark.parametrize(("rate", "deducted"), [(0.22, 0.5), (0.0, 1.0), (0.4, 0.0)])
def test_tax_on_each_more_is_insurance_and_tax_on_what_it_leaves(profit: float, rate: float, deducted: float) -> None:
    social = tax.social_on_each_more(0.153, 0.9235)
    insurance = profit * 0.9235 * 0.153
    taxed = profit - deducted * insurance
    assert tax.tax_on_each_more(rate, social, deducted) * profit == pytest.approx(rate * taxed + insurance)


def test_nothing_is_covered_where_nothing_is_due() -> None:
    assert ratios.coverage(5000.0, 0.0) == 0
    assert ratios.share_owed(0.0, 0.0) == 0


def test_debt_and_equity_make_up_what_is_owned() -> None:
    """Of 90,000, 60,000 owed."""
    assert ratios.share_owed(60000.0, 30000.0) == pytest.approx(2 / 3)
    assert ratios.share_owed(60000.0, 30000.0) + ratios.share_owed(30000.0, 60000.0) == pytest.approx(1)


def test_what_can_be_repaid_is_what_is_left_of_earnings() -> None:
    """20,000 after 4,000 of depreciation and 1,000 of interest; 3,000 from elsewhere, 18,000 to live on, 2,000 of tax."""
    earned = ratios.earned_before_owning(20000.0, 4000.0, 1000.0)
    assert earned == 25000
    assert ratios.repayment_capacity(earned, 3000.0, 18000.0, 2000.0) == 8000
    assert ratios.return_earned(20000.0, 1000.0, 15000.0) == 6000
