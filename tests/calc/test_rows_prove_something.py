"""Published values that bite: each fails as soon as one of the figures given with it, or a term of its formula, is moved."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any, Final

import pytest

from farmbook.calc import lethality, worth
from farmbook.expr.nodes import Constant
from tests.calc import chains
from tests.calc.functions_of_calc import MODULES
from tests.calc.published import Given, Published, read_quantity
from tests.calc.test_published import ROWS

SHARE: Final = Decimal("0.05")
COARSE: Final[dict[str, Decimal]] = {
    "height": Decimal("0.5"),  # a boiling point or gauge in print has too few digits for less
    "parts": Decimal("0.5"),  # one of several, in a sum that is printed to two or three digits
    "carbon": Decimal("0.5"),
    "nitrogen": Decimal("0.5"),
    "resale": Decimal("0.2"),  # beside a price 25 times as large
}
NOTHING: Final[dict[str, str]] = {
    "height": "200 ft",
    "resale": "1,000 money",
    "running": "20,000 money/year",
    "rate": "1 percent/year",
}
"""What stands in place of a given 0."""


def moved(name: str, text: str) -> tuple[str, ...]:
    """A figure a little larger and a little smaller, or a figure where 0 was given."""
    number = read_quantity(text)[0]
    if number == 0:
        return (NOTHING[name],)
    share = COARSE.get(name, SHARE)
    symbols = text.partition(" ")[2]
    return tuple(f"{number * (1 + sign * share)} {symbols}".strip() for sign in (1, -1))


def others(row: Published) -> list[tuple[str, list[Published]]]:
    """For each figure given, the row with that figure alone moved either way."""
    found = []
    for name, given in row.given.items():
        places = range(len(given)) if isinstance(given, tuple) else (None,)
        for place in places:
            text = given if place is None else given[place]
            assert isinstance(text, str)
            if place is not None and read_quantity(text)[0] == 0:
                continue
            rows = [replace(row, given={**row.given, name: _put(given, place, new)}) for new in moved(name, text)]
            found.append((f"{name} = {text}", rows))
    return found


def _put(given: Given, place: int | None, new: str) -> Given:
    if place is None:
        return new
    assert isinstance(given, tuple)
    return (*given[:place], new, *given[place + 1 :])


def holds(row: Published) -> bool:
    try:
        row.check()
    except AssertionError:
        return False
    return True


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_no_figure_given_can_be_moved_unseen(row: Published) -> None:
    assert row.given
    assert [what for what, rows in others(row) if all(holds(each) for each in rows)] == []


def test_a_row_that_would_hold_anyway_is_caught() -> None:
    """A rate at its own reference is 1 whatever z is."""
    given = {"temperature": "121.1 degC", "reference": "121.1 degC", "z_value": "10 delta_degC"}
    row = Published(lethality.lethal_rate, "identity", "nowhere", "arithmetic", "1.00000", given)
    assert [what for what, rows in others(row) if all(holds(each) for each in rows)] == ["z_value = 10 delta_degC"]


def test_a_salvage_left_out_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    without = worth.capital_recovery
    monkeypatch.setattr(worth, "capital_recovery", lambda price, resale, *rest: without(price, 0 * resale, *rest))
    assert [row.printed for row in ROWS if row.calculation is chains.yearly_cost and not holds(row)] == [
        "2,470,000 money/year"
    ]


BY_HAND: Final[dict[str, str]] = {
    "days_in_a_week": "a definition",
    "hours_in_a_week": "a definition",
    "hours_in_a_day": "a definition",
    "months_in_a_year": "a definition",
    "one_year": "a definition",
    "one_degree": "a definition",
    "ice_point": "0 degC cannot be moved by a share; kelvin and the curve of water rest on it",
    "circumference_over_diameter": "pi; test_definitions",
    "circle_in_square": "pi; test_definitions",
    "square_root_of_three": "mathematics; test_definitions",
    "continuous_load_factor": "the code's quarter; test_definitions",
    "propane_heat": "a value read in a table, stands alone; tests/model/test_cabinet_fuel",
    "natural_gas_heat": "a value read in a table, stands alone; tests/model/test_cabinet_fuel",
    "electric_efficiency": "common practice; tests/model/test_cabinet_fuel",
    "burner_efficiency": "common practice; tests/model/test_cabinet_fuel",
    "heat_up_loss_share": "common practice; test_definitions",
    "slab_rate_coefficient": "pi; the whole series in test_definitions",
    "brick_lag_factor": "pi; the whole series in test_definitions",
    "bar_lag_factor": "pi; tests/model/test_core_heating",
    "water_density": "a value of IAPWS at 20 degC, stands alone; tests/model/test_cabinet",
    "fibre_saturation": "an average from memory; tests/model/test_cabinet",
    "last_load_of_a_day": "a definition",
    "altitude_step": "a step of our own table",
    "table_gauge_pressure": "a step of our own table",
    "top_of_troposphere": "a limit; tests/model/test_site",
    "inputs_known_to": "common practice",
    "far_from_worked": "common practice",
    "longest_life": "a guard",
    "sum_tolerance": "a guard; tests/checks",
}
"""Constants that no printed value rests on, and what holds them instead."""


def places_of(name: str) -> list[tuple[Any, str]]:
    """Every module attribute that is a constant of this name."""
    return [
        (module, attribute)
        for module in (*MODULES, chains)
        for attribute, value in vars(module).items()
        if isinstance(value, Constant) and value.name == name
    ]


def all_names() -> set[str]:
    return {value.name for module in MODULES for value in vars(module).values() if isinstance(value, Constant)}


@pytest.mark.parametrize("name", sorted(all_names() - set(BY_HAND)))
def test_a_constant_moved_by_three_percent_is_seen(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    for module, attribute in places_of(name):
        old = getattr(module, attribute)
        new = Constant(float(old) * 1.03, old.name, label=old.label, unit=old.unit, source=old.source)
        monkeypatch.setattr(module, attribute, new)
    assert not all(holds(row) for row in ROWS)


def test_what_is_held_by_hand_exists_and_needs_to_be() -> None:
    assert set(BY_HAND) <= all_names()
