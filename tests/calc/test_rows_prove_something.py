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

from tests.calc.functions_of_calc import CALCULATIONS, label
from tests.calc.published import Given, Published
from tests.calc.slips import MOVED, Slip, made, slips
from tests.calc.test_published import ROWS

Calculation = Callable[..., Any]
every_row = pytest.mark.parametrize("case_at", range(len(ROWS)), ids=[str(case) for case in ROWS])
_RED: Final = (AssertionError, ArithmeticError, AttributeError, LookupError, TypeError, ValueError, Warning)
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
    except _RED:
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


@every_row
def test_each_number_given_decides_the_row(case_at: int) -> None:
    case = ROWS[case_at]
    assert holds(case)
    for name, text in case.given.items():
        changed = [replace(case, given={**case.given, name: moved}) for moved in with_a_number_moved(text)]
        assert not all(holds(each) for each in changed), f"{name} may be {MOVED} times as much"


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
