"""The shipped books as text: what a change does to them is read in review."""

from __future__ import annotations

import difflib

import pytest

from farmbook.results import compute, load_scenario
from tests.workbook.picture import IN_FULL, PICTURES, picture
from tests.workbook.shipped import SCENARIOS


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_book_is_the_one_in_its_picture(name: str) -> None:
    """After a change that is meant: `python -m tests.workbook.picture`, and read the difference."""
    kept = (PICTURES / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    now = picture(compute(load_scenario(SCENARIOS[name])), rows=name == IN_FULL).splitlines()
    assert list(difflib.unified_diff(kept, now, lineterm="", n=0))[:40] == []


def test_every_farm_has_a_picture_and_every_picture_a_farm() -> None:
    assert {path.stem for path in PICTURES.glob("*.txt")} == set(SCENARIOS)
