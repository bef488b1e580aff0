"""Calculations against print."""

from __future__ import annotations

from typing import Final

import pytest

from tests.calc import (
    rows_climate,
    rows_cooking,
    rows_crop,
    rows_finance,
    rows_heat,
    rows_loan,
    rows_ratios,
    rows_steam,
    rows_tables,
    rows_tax,
    rows_worth,
)
from tests.calc.published import Published, read_quantity

ROWS: Final = (
    *rows_steam.ROWS,
    *rows_cooking.ROWS,
    *rows_heat.ROWS,
    *rows_crop.ROWS,
    *rows_worth.ROWS,
    *rows_loan.ROWS,
    *rows_climate.ROWS,
    *rows_tables.ROWS,
    *rows_finance.ROWS,
    *rows_ratios.ROWS,
    *rows_tax.ROWS,
)


@pytest.mark.parametrize("case", ROWS, ids=str)
def test_comes_to_the_printed_value(case: Published) -> None:
    case.check()


@pytest.mark.parametrize("case", ROWS, ids=str)
def test_tolerance_is_small_against_the_value(case: Published) -> None:
    assert case.tolerance <= 0.03 * abs(float(read_quantity(case.printed)[0]))


@pytest.mark.parametrize("case", ROWS, ids=str)
def test_says_where_it_is_from_and_why_it_is_looser_than_print(case: Published) -> None:
    assert case.source
    assert case.where
    assert bool(case.within) == bool(case.because)


def test_no_value_is_counted_twice() -> None:
    assert len({str(case) for case in ROWS}) == len(ROWS)
