"""How far prices or the weight could fall: beside the twin's own search, on farms of every kind, and in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any, Final

import numpy as np
import pytest

from farmbook.interpret.numbers import Array
from farmbook.results import whole_farm
from tests.twin.farm_twin import twin
from tests.twin.farm_twin_reverse import FALLS, falls_of
from tests.twin.farms import Farm, in_declared_units, twin_inputs, values_of
from tests.twin.month_farms import month_farm, random_month_farm

FAR: Final = 1e-9
COMFORT: Final[Mapping[str, Any]] = {
    "household.needs": 30000,
    "loans.counted": "worked out from the list",
    "loan.amount": [60000, 9000, None],
    "loan.rate": [0.06, 0.04, None],
    "loan.term": [120, 36, None],
}
SEASONS: Final = np.random.default_rng(7).uniform(0, 1.5, (5, 12)).tolist()
HELD: Final[Mapping[str, Mapping[str, Any]]] = {
    "comfortable": COMFORT,
    "no tax": {**COMFORT, "household.tax_rate": 0},
    "another coverage": {**COMFORT, "stress.covenant": 1.5},
    "customers take less than is grown": {**COMFORT, "household.other_income": 60000, "customer.most_a_week": [40, 60, 20, 90, 30]},
    "every month another": {**COMFORT, "household.other_income": 60000, "customer.season": SEASONS},
    "cheapest first": {**COMFORT, "household.other_income": 90000, "customer.order": [4, 3, 2, 1, 5], "customer.takes_rest": 0},
    "picked by the piece": {**COMFORT, "picking.paid": "by the piece", "household.other_income": 90000},
    "tax passed on": {**COMFORT, "selling.tax": "registered: passed on", "customer.tax_inside": 0.07},
    "a loss that other income bears": {**COMFORT, "household.other_income": 90000, "bill.amount": [65000, 2800, None]},
    "below zero at the fall": {**COMFORT, "household.needs": 0, "household.other_income": 15000},
    "a corporation": {**COMFORT, "household.form": "corporation", "household.owner_pay": 30000, "household.needs": 25000},
}  # fmt: skip
"""Farms of which prices and weight could fall, both ways down."""
NONE: Final[Mapping[str, tuple[Mapping[str, Any], str]]] = {
    "no loan": ({**COMFORT, "loan.amount": 0}, "no loan is paid"),
    "coverage is less already": ({**COMFORT, "household.needs": 90000}, "it is less already"),
    "nothing is sold, and nothing covered": (
        {**COMFORT, "crop.loss_at_steaming": 1, "household.other_income": 0},
        "it is less already",
    ),
    "nothing is sold, and it does not matter": (
        {**COMFORT, "crop.loss_at_steaming": 1, "household.other_income": 900000},
        "to nothing",
    ),
    "all could go": ({**COMFORT, "household.other_income": 900000}, "to nothing"),
    "all income is taxed away": ({**COMFORT, "household.tax_rate": 1, "household.needs": 90000}, "it is less already"),
}
SHOWN: Final = ("fall", "again", "price_then", "weight_then", "is_there", "told", "proves")


def of_book(farms: Sequence[Farm]) -> dict[str, Array]:
    """What the book says of each."""
    names = {f"{fall}.{name}" for fall in FALLS for name in SHOWN}
    wanted = [line for line in whole_farm().lines if line.name in names]
    return in_declared_units(values_of(farms, "metric"), "metric", wanted)


@cache
def of_farms_held() -> dict[str, Array]:
    return of_book([month_farm(changes, 12) for changes in HELD.values()])


def compare(found: Mapping[str, Array], number: int, farm: Farm) -> dict[str, float]:
    """One farm of the book beside the twin, which is returned."""
    given = twin_inputs(farm)
    own = falls_of(given, twin(given))
    for name, value in own.items():
        np.testing.assert_allclose(found[name][number], value, rtol=FAR, atol=FAR, err_msg=name)
    return own


@pytest.mark.parametrize("name", HELD)
def test_falls_are_those_that_the_twin_finds_by_halves(name: str) -> None:
    own = compare(of_farms_held(), list(HELD).index(name), month_farm(HELD[name], 12))
    wanted = {"asked": HELD[name].get("stress.covenant", 1.25), "one": 1}
    for fall in FALLS:
        assert 0 < own[f"{fall}.fall"] < 1
        assert own[f"{fall}.again"] == pytest.approx(wanted[fall.rpartition("_")[2]], rel=FAR)


@pytest.mark.parametrize("name", NONE)
def test_where_there_is_no_fall_words_say_why(name: str) -> None:
    changes, words = NONE[name]
    found = of_book([month_farm(changes, 12)])
    for fall in FALLS:
        figures = [float(found[f"{fall}.{each}"][0]) for each in ("is_there", "fall", "again")]
        assert figures == [0, 0, 0]
        assert found[f"{fall}.told"][0] == words
        assert found[f"{fall}.proves"][0] == 1


def test_what_nobody_takes_goes_first() -> None:
    """Customers take 140 a week: all that is grown beyond it could go, and the loans are covered as before."""
    rich = {
        **COMFORT,
        "household.other_income": 90000,
        "customer.takes_rest": 0,
        "customer.most_a_week": [40, 50, 20, 30, 0],
    }
    farm = month_farm(rich, 12)
    spare = 1 - 140 / float(twin(twin_inputs(farm))["harvest.taken_a_week"])
    found = of_book([farm])
    assert spare > 0.4
    assert spare < found["weight_to_asked.fall"][0] < found["weight_to_one.fall"][0] < 1


@pytest.mark.parametrize("seed", range(4))
def test_random_farms(seed: int) -> None:
    farms = [random_month_farm(1000 * seed + each, 12) for each in range(15)]
    found = of_book(farms)
    for number, farm in enumerate(farms):
        compare(found, number, farm)
    for fall in FALLS:
        assert found[f"{fall}.proves"].min() == 1
