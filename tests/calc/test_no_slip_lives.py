"""Every slip in every calculation turns red a row of print or a definition: nothing is only run through."""

from __future__ import annotations

import contextlib
import io
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any, Final

import pytest

from tests.calc.functions_of_calc import CALCULATIONS, label
from tests.calc.slips import made, slips
from tests.calc.test_published import ROWS
from tests.calc.test_rows_prove_something import RED, holds

Calculation = Callable[..., Any]

DEFINITIONS: Final = (
    "test_definitions.py",
    "test_loan_definitions.py",
    "test_loan_tables.py",
    "test_ratio_definitions.py",
    "test_steaming.py",
    "test_traps.py",
)
THE_SAME: Final = {
    ("share_of_year_to_pay", "otherwise=1 became 1.03"),
    ("payments_left", "months > 0 became months >= 0"),
    ("payments_left", "0 became 0.030000000000000027"),
    ("balance", "0 became 0.030000000000000027"),
    ("payments_to_come", "left > level_payments became left >= level_payments"),
    ("income_for_capacity", "after_tax > 0 became after_tax >= 0"),
    ("heat_wanted", "wanted > 0 became wanted >= 0"),
    ("cold_wanted", "lost < gained became lost <= gained"),
}
"""Slips that change no result: where no flow is left the share is cut off at 1 whatever stands there; of no month, and of a part
of one that is shorter than any interval, no payment has been made anyhow; payments left are whole; none more than the level
ones come to nothing; of no income no tax is taken at any rate; and where nothing is wanted,
nothing times the hours is nothing."""


class _Collected:
    """The tests that a run would make, as they were collected."""

    items: Final[list[pytest.Function]] = []

    def pytest_collection_finish(self, session: pytest.Session) -> None:
        """Keep them."""
        self.items[:] = [item for item in session.items if isinstance(item, pytest.Function)]


@cache
def definitions() -> list[Callable[[], Any]]:
    """Each test of a definition with its parameters, ready to be run again and again."""
    collected = _Collected()
    files = [str(Path(__file__).with_name(name)) for name in DEFINITIONS]
    with contextlib.redirect_stdout(io.StringIO()):
        code = pytest.main(["--collect-only", "-q", "-p", "no:cacheprovider", *files], plugins=[collected])
    assert code == pytest.ExitCode.OK
    return [_ready(item) for item in collected.items]


def _ready(item: pytest.Function) -> Callable[[], Any]:
    parameters = item.callspec.params if hasattr(item, "callspec") else {}
    return lambda: item.obj(**parameters)


def all_green() -> bool:
    """Whether every definition and every row is met."""
    try:
        for definition in definitions():
            definition()
    except RED:
        return False
    return all(holds(case) for case in ROWS)


def test_all_is_green_without_a_slip() -> None:
    assert len(definitions()) > 100
    assert all_green()


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=label)
def test_no_slip_lives(calculation: Calculation) -> None:
    living = []
    for slip in slips(calculation):
        with made(calculation, slip):
            if all_green():
                living.append((calculation.__name__, slip.text))
    assert not set(living) - THE_SAME
