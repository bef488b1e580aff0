"""Damaged books given to be read back: words, within time and memory, and no file left behind."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from tests.hostile.books import SCENARIO
from tests.hostile.damage import DAMAGES, Damage
from tests.hostile.watch import watch
from tests.made import workbook_of


@pytest.fixture(scope="module")
def sound() -> bytes:
    return workbook_of(SCENARIO)


@pytest.mark.parametrize("damage", DAMAGES, ids=lambda damage: str(damage.__name__))
def test_a_damaged_book_is_read_or_refused_in_words(damage: Damage, sound: bytes, tmp_path: Path) -> None:
    damage(random.Random(f"read {damage.__name__}"), sound, tmp_path / "book.xlsx")
    seen = watch(["read", "book.xlsx", "--out", "read.toml"], folder=tmp_path, seconds=30)
    assert seen.faults == []
    assert seen.err
    assert (tmp_path / "read.toml").exists() == (seen.code == 0)
