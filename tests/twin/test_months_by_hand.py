"""Months worked by hand: farms so simple that every amount can be written down, and what a plan should look like at a glance."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

import numpy as np
import pytest

from farmbook.interpret.numbers import Array
from tests.twin.farms import compared_lines, in_declared_units, values_of
from tests.twin.month_farms import month_farm

HALF_A_CENT: Final = 0.005
ONE_CUSTOMER: Final[Mapping[str, Any]] = {
    "customer.most_a_week": [70, None, None, None, None],
    "customer.price": [10, None, None, None, None],
    "customer.unsold": 0,
    "customer.fee": 0,
    "customer.packing": 0,
    "customer.stall": 0,
    "customer.delivery": 0,
    "customer.days_to_pay": 0,
}
"""Takes 10 kg a day at 10 a kilogram, much less than is picked: 100 a day."""
NOTHING_ELSE: Final[Mapping[str, Any]] = {
    "farm.wage": 0,
    "bag.counted": "one figure",
    "bag.own_material_cost": 0,
    "spawn.counted": "one figure",
    "spawn.own_cost": 0,
    "energy.electricity_price": 0,
    "energy.demand_charge": 0,
    "energy.water_price": 0,
    "cabinet.upkeep": 0,
    "bills.energy": 0,
    "bill.amount": 0,
    "safety.inspection": 0,
    "safety.insurance": 0,
    "safety.alarms": 0,
    "safety.respirators": 0,
    "item.price": 0,
    "item.salvage": 0,
    "capital.counted": "one sum",
    "capital.own_loss": 0,
    "household.tax_rate": 0,
}
"""No other money comes or goes."""
SIMPLE: Final[Mapping[str, Any]] = {
    **ONE_CUSTOMER,
    **NOTHING_ELSE,
    "farm.weeks_worked": 52,
    "plan.shut_weeks": 0,
    "opening.cash": 1000,
}
"""From 1 January 2027 on: months of 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 days."""


def months_of(changes: Mapping[str, Any], months: int = 12, system: str = "metric") -> dict[str, Array]:
    """The lines of the plan of the plausible farm with these changes."""
    farm = month_farm(changes, months)
    return {
        name: value[0] for name, value in in_declared_units(values_of([farm], system), system, compared_lines()).items()
    }


def simple(changes: Mapping[str, Any], months: int = 12) -> dict[str, Array]:
    """The farm that sells for 100 a day, with some more about it."""
    return months_of({**SIMPLE, **changes}, months)


def starts_with(line: Array, *amounts: float) -> bool:
    """Whether the first months of a line are these amounts."""
    return bool(line[: len(amounts)].tolist() == pytest.approx(amounts, abs=HALF_A_CENT))


def test_a_hundred_a_day() -> None:
    found = simple({})
    assert starts_with(found["month_totals.sold"], 310, 280, 310, 300, 310, 300)
    assert starts_with(found["month_sales.sales"], 3100, 2800, 3100, 3000, 3100, 3000)
    assert starts_with(found["month_cash.closing"], 4100, 6900, 10000, 13000)


def test_customers_pay_a_month_and_a_half_later() -> None:
    """45.65625 days are 1.5 months of 30.4375: half of a month's sales come in the next month, half in the one after it."""
    found = simple({"customer.days_to_pay": 45.65625, "opening.customers_owe": 4000})
    assert float(found["month_sales.typical_month"].sum()) == pytest.approx(52 * 700 / 12)
    # 4000 owed at the start are sales of one month and a half, of which one has been paid by the end of the first
    old, new = (2666.67, 1333.33, 0, 0, 0), (0, 1550, 1550 + 1400, 1400 + 1550, 1550 + 1500)
    assert starts_with(found["month_sales.collected"], *np.add(old, new))
    assert starts_with(found["month_sales.owed"], 4433.33, 4350, 4500, 4550, 4600)
    assert starts_with(found["month_cash.closing"], 3666.67, 6550, 9500, 12450, 15500)


def test_suppliers_are_paid_a_month_later() -> None:
    """620 bags a week at 0.70 are 62 a day; nothing is kept in stock, and spawn costs nothing."""
    found = simple(
        {
            "bag.own_material_cost": 0.7,
            "opening.supply_weeks": 0,
            "opening.supplier_days": 30.4375,
            "opening.owed_to_suppliers": 2000,
        }
    )
    assert starts_with(found["month_supplies.bought"], 1922, 1736, 1922, 1860)
    assert float(found["month_supplies.typical"]) == pytest.approx(52 * 434 / 12)
    assert starts_with(found["month_supplies.paid"], 1880.67, 119.33 + 1922, 1736, 1922, 1860)
    assert starts_with(found["month_supplies.owed"], 2041.33, 1736, 1922, 1860)


def test_a_stock_of_supplies_is_bought_once() -> None:
    """A new farm, full from its first week on, buys three weeks of 434 besides what it uses up; a running farm has them."""
    mix = {"bag.own_material_cost": 0.7, "opening.supply_weeks": 3, "opening.supplier_days": 0}
    running = simple(mix)
    assert starts_with(running["month_supplies.bought"], 1922, 1736, 1922)
    assert float(running["month_supplies.opening_stock"]) == pytest.approx(3 * 434)
    # week 1 is that of 28 December, so 31 days of January are filled in full
    new = simple({**mix, "farm.stage": "new farm", "start_up.first_filling": 1, "start_up.weeks_to_full": 1})
    assert starts_with(new["month_supplies.bought"], 1922 + 1302, 1736, 1922)
    assert starts_with(new["month_supplies.stock"], 1302, 1302, 1302)


def test_an_item_is_replaced_at_the_end_of_its_life() -> None:
    """One is half a year from its end, and lasts two years; one is bought in the third month, and lasts one."""
    items = {
        "item.price": [1000, 240, None],
        "item.salvage": [100, 0, None],
        "item.life": [2, 1, None],
        "item.age": [1.5, 0, None],
        "item.bought_in": [0, 3, None],
        "capital.counted": "worked out from the list",
        "cabinet.price": 0,
        "cabinet.salvage": 0,
    }
    found = simple(items, 36)
    spent = np.zeros(36)
    spent[[6 - 1, 30 - 1]] = 900
    spent[[15 - 1, 27 - 1]] = 240
    assert found["month_capital.replacing"] == pytest.approx(spent)
    assert starts_with(found["month_capital.bought"], 0, 0, 240, 0)
    assert found["month_capital.bought"].sum() == pytest.approx(240)
    # 900 in 24 months are 37.50 a month, 240 in 12 months are 20
    assert starts_with(found["month_capital.loss"], 37.5, 37.5, 57.5, 57.5)
    # 1000 less 18 months of 37.50 are 325 at the start
    assert starts_with(found["month_capital.value"], 287.5, 250, 432.5, 375, 317.5, 260 + 900)
    # six months after the last replacement of the one, and ten after that of the other
    assert float(found["month_capital.value"][-1]) == pytest.approx(1000 - 6 * 37.5 + 240 - 10 * 20)


def test_tax_is_given_back_within_the_year_and_never_below_zero() -> None:
    """100 a day, taxed at a quarter, until a bill of 30000 is due in September; the next year begins anew."""
    found = simple({"household.tax_rate": 0.25, "bill.amount": [30000, 0, None], "bill.due_in": [9, 0, None]}, 24)
    assert starts_with(found["month_household.profit"], 3100, 2800, 3100, 3000, 3100, 3000, 3100, 3100, -27000, 3100)
    assert starts_with(found["month_household.tax"], 775, 700, 775, 750, 775, 750, 775, 775, -6075, 100, 750, 775)
    # 27300 less 30000 are below zero in September; 30400, 33400 and 36500 less 30000 are not
    of_year = (775, 1475, 2250, 3000, 3775, 4525, 5300, 6075, 0, 100, 850, 1625, 775)
    assert starts_with(found["month_household.tax_of_year"], *of_year)
    assert (found["month_household.tax_of_year"] >= 0).all()


def test_a_year_of_loss_takes_no_tax_and_is_not_carried_on() -> None:
    """A bill of 60000 makes a loss of 23500 of the first year; it takes no tax, and lowers no tax of the second."""
    found = simple({"household.tax_rate": 0.25, "bill.amount": [60000, 0, None], "bill.due_in": [9, 0, None]}, 24)
    assert found["month_household.tax"][:12].sum() == pytest.approx(0)
    assert starts_with(found["month_household.tax"][8:], -6075, 0, 0, 0, 775)
    assert starts_with(found["month_household.profit_of_year"][11:], -23500, 3100)


def test_the_credit_line_is_drawn_to_the_least_cash_and_paid_back() -> None:
    """The household takes 5000 a month of 3100; at one in a hundred a month. Loans without interest come in April and May."""
    found = simple(
        {
            "household.needs": 60000,
            "opening.least_cash": 500,
            "opening.line_limit": 5000,
            "opening.line_rate": 0.12,
            "loans.counted": "worked out from the list",
            "loan.amount": [4000, 9000, None],
            "loan.rate": [0, 0, None],
            "loan.term": [400, 400, None],
            "loan.drawn_in": [4, 5, None],
            "loan.interval": 1,
            "loan.interest_only": 0,
            "loan.balloon": 0,
            "loan.fees": 0,
        }
    )
    assert starts_with(found["month_cash.net"], -1900, -2200, -1900, 2000, 7090)
    # 1000 less 1900 are 900 below nothing, so 1400 are drawn to keep 500; in March 50.14 are missing below nothing
    assert starts_with(found["month_cash.line_interest"], 0, 14, 36.14, 50, 36.0014)
    assert starts_with(found["month_cash.on_line"], 1400, 3614, 5000, 3600.14, 0)
    assert starts_with(found["month_cash.closing"], 500, 500, -50.14, 500, 3953.8586)
    assert starts_with(found["month_cash.missing"], 0, 0, 550.14, 0, 0)
    assert not bool(found["month_cash.enough"])
    # May leaves 3953.86; June is 3000 less 5000 and two payments, of 10 and 22.50; the line is needed again in July
    assert starts_with(found["month_cash.closing"][5:], 1921.3586, 500)
    assert starts_with(found["month_cash.on_line"][5:], 0, 511.1414)


def test_money_to_get_through_is_what_the_farm_itself_goes_down() -> None:
    """Whatever cash, loans and line there are: 1900, 2200, 1900 and 2000 go before summer, and half of a month's receipts
    come after its bills."""
    for cash in (0, 50000):
        found = simple({"household.needs": 60000, "opening.cash": cash})
        assert starts_with(found["month_cash.unfunded"], -1900, -4100, -6000, -8000)
        assert starts_with(found["month_cash.unfunded_within"], -3450, -5500, -7550, -9500)
        assert float(found["month_cash.needed"]) == pytest.approx(12 * 5000 - 365 * 100 + 1550)


STEADY: Final[Mapping[str, Any]] = {
    "plan.shut_weeks": 0,
    "farm.weeks_worked": 365.25 / 7,
    "customer.days_to_pay": 20,
    "opening.cash": 50000,
}
"""The plausible farm in every week of the year, as it was before the plan."""


def test_a_running_farm_goes_on_evenly() -> None:
    """No dip is invented: each month leaves as much as its days, within what the days of the months before are off."""
    found = months_of(STEADY, 36)
    net, days = found["month_cash.net"], found["plan_months.days"]
    usual = net.sum() / days.sum() * 30.4375
    # a month may be 2.4375 days of receipts or of payments off the mean, and what is paid later another three
    room = 5.5 / 30.4375 * np.mean(found["month_sales.sales"])
    assert usual > 0
    assert np.abs(net - usual).max() < room
    assert (np.diff(found["month_cash.closing"]) > 0).all()
    assert np.abs(found["month_sales.owed"] - found["month_sales.opening_owed"]).max() < room
    assert np.abs(found["month_supplies.owed"] - found["month_supplies.opening_owed"]).max() < room


def test_twelve_months_of_a_running_farm_are_its_typical_year() -> None:
    """But for the quarter of a day by which the year is longer than 365 days."""
    found = months_of({**STEADY, "growing_cost.incubation_room_rate": 0.07, "growing_cost.fruiting_room_rate": 0.21})
    of_year = {
        "customer_year.takings_in_all": ("month_sales.sales",),
        "year.goods": ("month_supplies.used_up", "month_spawn.cost"),
        "year.standing": ("month_bills.energy", "month_bills.bills_paid"),
        "year.selling": ("month_sales.selling",),
        "hours.labour_cost": ("month_bills.wages", "month_bills.piece"),
        "capital.loss": ("month_capital.loss",),
        "year.profit": ("month_household.profit",),
    }
    for year, parts in of_year.items():
        assert sum(found[part].sum() for part in parts) == pytest.approx(float(found[year]), rel=2e-3), year


def test_a_new_farm_goes_down_before_it_comes_up() -> None:
    found = months_of({"farm.stage": "new farm", "opening.cash": 60000}, 36)
    closing, lowest = found["month_cash.closing"], int(found["month_cash.lowest_month"])
    assert 3 < lowest < 24
    # nothing is sold in the first months
    assert (np.diff([60000, *closing[:3]]) < 0).all()
    assert closing[-1] > closing[lowest - 1] + 10000
    # once it is up, hardly a month goes down
    assert (np.diff(closing[lowest + 5 :]) > 0).mean() > 0.8
    # within a month it is lower still than at its end
    assert found["month_cash.needed"] > 60000 - closing[lowest - 1]
