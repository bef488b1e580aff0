"""Enough published values, each against a calculation that the model uses."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import farmbook.model
from tests.calc import counted
from tests.calc.functions_of_calc import CALCULATIONS, label
from tests.calc.published import Published
from tests.calc.test_loan_tables import UNROUNDED
from tests.calc.test_published import ROWS
from tests.calc.test_rows_prove_something import calculations_of


@cache
def text_of_the_model() -> str:
    return "".join(path.read_text(encoding="utf-8") for path in Path(farmbook.model.__path__[0]).rglob("*.py"))


def test_at_least_230_values_are_published() -> None:
    assert len(counted.published_values()) >= 230


def test_many_works_stand_behind_them_and_no_one_for_a_third() -> None:
    found = counted.by_work()
    assert len(found) >= 30
    assert max(found.values()) < found.total() / 3


def test_what_is_no_published_value_is_counted_apart() -> None:
    rows, apart = counted.published_rows(), counted.apart()
    assert set(apart) <= {"library", "memory", "arithmetic"}
    assert len(rows) + apart.total() == len(ROWS)
    assert "library" not in {case.how_known for case in rows}


def test_a_number_of_one_work_counts_once() -> None:
    """The wall of a university's course stands in two rows, a loan's payment in a row and in a table."""
    wall = [case for case in counted.published_rows() if "Calculating wall heat loss" in case.source]
    assert len(wall) == 2
    assert len({counted.of_row(case) for case in wall}) == 1
    payment = next(case for case in counted.published_rows() if case.source.startswith("Pamela Peterson Drake"))
    assert any(counted.of_row(payment) in counted.of_table(table) for table in UNROUNDED)


@pytest.mark.parametrize("case", counted.published_rows(), ids=str)
def test_a_published_value_is_held_against_a_calculation(case: Published) -> None:
    assert calculations_of(case)


@pytest.mark.parametrize("calculation", [each for each in CALCULATIONS if each in counted.reached()], ids=label)
def test_a_line_of_the_model_uses_the_calculation(calculation: Callable[..., Any]) -> None:
    assert re.search(rf"\b{calculation.__name__}\(", text_of_the_model())
