"""Rows of print that a slip in the calculation would not turn red prove nothing, and are refused here."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Decimal
from functools import cache
from types import CodeType, FrameType
from typing import Any, Final

import numpy as np
import pytest

from farmbook.calc import lethality
from tests.calc import chains
from tests.calc.functions_of_calc import CALCULATIONS, label
from tests.calc.published import Given, Published
from tests.calc.slips import MOVED, Slip, made, slips
from tests.calc.test_published import ROWS

Calculation = Callable[..., Any]
every_row = pytest.mark.parametrize("case_at", range(len(ROWS)), ids=[str(case) for case in ROWS])
RED: Final = (AssertionError, ArithmeticError, AttributeError, LookupError, TypeError, ValueError, Warning)
"""What a slip can come to: another value, or arithmetic that breaks down."""
_BY_CODE: Final[Mapping[CodeType, Calculation]] = {each.__code__: each for each in CALCULATIONS}


def calculations_of(case: Published) -> list[Calculation]:
    """The calculations that a row runs through."""
    seen: dict[CodeType, None] = {}

    def note(frame: FrameType, event: str, _: object) -> None:
        if event == "call":
            seen[frame.f_code] = None

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        case.found()
    finally:
        sys.setprofile(before)
    return [_BY_CODE[code] for code in seen if code in _BY_CODE]


def holds(case: Published) -> bool:
    """Whether a row is met; what cannot be worked out is not."""
    try:
        with np.errstate(all="ignore"):
            case.check()
    except RED:
        return False
    return True


@cache
def slips_inside(calculation: Calculation) -> list[Slip]:
    """Those that show at every value, not only at a bound: a row stands well inside."""
    return [slip for slip in slips(calculation) if not slip.at_a_bound]


@cache
def unseen(case_at: int) -> Mapping[Calculation, frozenset[Slip]]:
    """The slips in each calculation that a row runs through which leave it green."""
    case = ROWS[case_at]
    found = {}
    for calculation in calculations_of(case):
        green = []
        for slip in slips_inside(calculation):
            with made(calculation, slip):
                green += [slip] if holds(case) else []
        found[calculation] = frozenset(green)
    return found


def with_a_number_moved(text: Given) -> list[Given]:
    """A given number a few percent off; of several numbers, one at a time."""
    if isinstance(text, str):
        return [_moved(text)]
    return [(*text[:place], _moved(each), *text[place + 1 :]) for place, each in enumerate(text)]


def _moved(text: str) -> str:
    number, _, unit = text.partition(" ")
    return f"{Decimal(number.replace(',', '')) * Decimal(str(MOVED))} {unit}".strip()


def idle_numbers(case: Published) -> list[str]:
    """What is given to a row and may be a few percent off without turning it red."""
    return [
        name
        for name, text in case.given.items()
        if all(holds(replace(case, given={**case.given, name: moved})) for moved in with_a_number_moved(text))
    ]


@every_row
def test_each_number_given_decides_the_row(case_at: int) -> None:
    assert holds(ROWS[case_at])
    assert not idle_numbers(ROWS[case_at])


def test_rows_that_prove_nothing_are_found_out() -> None:
    """At the reference any z gives 1; with no resale the term of the resale may be left out; 6 % wide sees no height."""
    written: dict[str, Any] = {"source": "written here", "where": "written here", "how_known": "arithmetic"}
    at_reference = {"temperature": "250 degF", "reference": "250 degF", "z_value": "18 delta_degF"}
    assert idle_numbers(Published(lethality.lethal_rate, printed="1.0000", given=at_reference, **written)) == [
        "z_value"
    ]
    owned = {"price": "6,000 money", "resale": "0 money", "life": "5 year", "rate": "0.15 1/year"}
    assert idle_numbers(Published(chains.recovery, printed="1,789.89 money/year", given=owned, **written)) == ["resale"]
    canned = {"vessel_temperature": "240 degF", "height": "5,000 ft"}
    wide = Published(chains.gauge_pressure_for, printed="12.5 psi", given=canned, within="0.6", **written)
    assert idle_numbers(wide) == ["height"]


@every_row
def test_a_row_sees_slips_in_each_calculation_it_runs_through(case_at: int) -> None:
    for calculation, green in unseen(case_at).items():
        possible = set(slips_inside(calculation))
        assert not possible or green < possible, f"{label(calculation)} may be anything"


@every_row
def test_a_row_of_one_calculation_sees_every_slip_in_it(case_at: int) -> None:
    assert not unseen(case_at).get(ROWS[case_at].calculation)


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=label)
def test_rows_together_see_every_slip_in_a_calculation_they_run_through(calculation: Calculation) -> None:
    green = [unseen(case_at)[calculation] for case_at in range(len(ROWS)) if calculation in unseen(case_at)]
    assert not green or not frozenset.intersection(*green)


def test_rows_run_through_a_third_of_the_calculations() -> None:
    reached = {calculation for case_at in range(len(ROWS)) for calculation in unseen(case_at)}
    assert len(reached) >= len(CALCULATIONS) / 3
