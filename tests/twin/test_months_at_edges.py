"""What the months must do where a plan is at an edge: each case is the smallest that shows it."""

from __future__ import annotations

from typing import Any, Final

import numpy as np
import pytest

from tests.twin.month_farms import MONTH_EDGES
from tests.twin.test_months_by_hand import STEADY, months_of, simple

AT_THE_END: Final = {
    "item.price": [1000, None, None],
    "item.salvage": [100, None, None],
    "item.life": [2, None, None],
    "capital.counted": "worked out from the list",
    "cabinet.price": 0,
    "cabinet.salvage": 0,
}


@pytest.mark.parametrize("name", ["nobody takes anything in summer", "bags given up"])
def test_nothing_sold_costs_no_stall(name: str) -> None:
    """Nor does it matter in which units a book is written."""
    for system in ("metric", "us"):
        found = months_of(MONTH_EDGES[name], 36, system)
        nothing = np.abs(found["month_totals.sold"]) < 1e-6
        assert nothing.any()
        assert found["month_sales.going_a_week"][nothing] == pytest.approx(0)


def test_a_market_that_ends_with_a_month_is_not_paid_for_the_next() -> None:
    """Sold 10 kg a day until the week that ends on 2 May; the stall is 70 a week, and is paid for the days of April."""
    season = [[1] * 4 + [0] * 4 + [1] * 4] + [[1] * 12] * 4
    found = simple({"customer.season": season, "customer.stall": [70, 0, 0, 0, 0]})
    assert found["month_totals.sold"][3:5] == pytest.approx([300, 20])
    assert found["month_sales.selling"][3:5] == pytest.approx([300, 0])


def test_rooms_paid_by_the_week_are_paid_beside_bills_in_one_sum() -> None:
    rooms = {"growing_cost.incubation_room_rate": 0.07, "growing_cost.fruiting_room_rate": 0.21}
    found = months_of({**STEADY, **rooms, "bills.counted": "one sum", "bills.in_all": 20000})
    paid = found["month_bills.energy"].sum() + found["month_bills.bills_paid"].sum()
    assert paid == pytest.approx(float(found["year.standing"]), rel=2e-3)


def test_customers_who_pay_at_once_and_late_make_no_dip() -> None:
    """Half of sales is paid at once and half after three months: each month brings as much as the one before."""
    changes: dict[str, Any] = {
        "customer.most_a_week": [35, 35, None, None, None],
        "customer.price": [10, 10, None, None, None],
        "customer.days_to_pay": [0, 3 * 30.4375, None, None, None],
        "farm.weeks_worked": 365.25 / 7,
    }
    collected = simple(changes)["month_sales.collected"]
    assert np.abs(collected - 100 * 30.4375).max() < 400


def test_a_thing_at_the_end_of_its_life_is_replaced_or_new() -> None:
    """Either it is paid for soon, or it was paid for and is worth its price."""
    found = simple({**AT_THE_END, "item.age": [2, None, None]}, 36)
    paid = found["month_capital.replacing"][:2].sum() > 0
    new = float(found["month_capital.item_book_value"][0]) > 900
    assert paid or new
    assert (found["month_capital.value"] >= 0).all()


def test_a_steamer_past_its_life_is_worth_no_less_than_nothing() -> None:
    found = simple({**AT_THE_END, "item.price": 0, "item.salvage": 0, "cabinet.price": 60000, "cabinet.life": 5}, 84)
    assert (found["month_capital.value"] >= -0.005).all()


def test_a_month_that_is_no_whole_number_is_paid_or_told() -> None:
    between = {
        **AT_THE_END,
        "item.bought_in": [3.5, None, None],
        "bill.amount": [600, 0, None],
        "bill.due_in": [3.5, 0, None],
    }
    found, whole = simple(between), simple({})
    paid = found["month_capital.bought"].sum() + found["month_bills.due"].sum()
    # flags that are 1 in the farm without these two, and not in this one
    told = [name for name, value in whole.items() if value.ndim == 0 and float(value) == 1 and float(found[name]) == 0]
    assert paid == pytest.approx(1600) or told


def test_the_first_of_equal_months_is_the_lowest() -> None:
    """In books of both units."""
    lowest = [
        int(months_of(MONTH_EDGES["a credit line paid back"], 12, each)["month_cash.lowest_month"])
        for each in ("metric", "us")
    ]
    assert lowest == [1, 1]
