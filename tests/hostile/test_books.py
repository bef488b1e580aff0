"""A slice of the damaged books: one of each kind of damage."""

from __future__ import annotations

from tests.hostile.books import LEFT, WRITTEN, tried
from tests.hostile.damage import DAMAGES


def test_one_of_each_kind_of_damage() -> None:
    found = list(tried(seed=7, count=len(DAMAGES)))
    assert [(each.damage, each.faults) for each in found] == [(damage.__name__, []) for damage in DAMAGES]
    assert {each.outcome for each in found} <= {LEFT, WRITTEN}
    assert LEFT in {each.outcome for each in found}
    assert all(each.seen.err for each in found)
