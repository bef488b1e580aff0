"""A slice of the damaged books: one of each kind of damage."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.hostile import books
from tests.hostile.books import LEFT, WRITTEN, tried
from tests.hostile.damage import DAMAGES
from tests.hostile.watch import Seen


def test_one_of_each_kind_of_damage() -> None:
    found = list(tried(seed=7, count=len(DAMAGES)))
    assert [(each.damage, each.faults) for each in found] == [(damage.__name__, []) for damage in DAMAGES]
    assert {each.outcome for each in found} <= {LEFT, WRITTEN}
    assert LEFT in {each.outcome for each in found}
    assert all(each.seen.err for each in found)


def wrong(monkeypatch: pytest.MonkeyPatch, code: int, act: Callable[[Path], object]) -> set[str]:
    """The faults that are found where farmbook ends with this code and does this to the folder."""

    def instead(arguments: list[str], *, folder: Path, seconds: float) -> Seen:
        act(folder)
        return Seen(code, b"", b"", 0.0, 0.0, [])

    monkeypatch.setattr(books, "watch", instead)
    return {fault for each in tried(seed=1, count=len(DAMAGES)) for fault in each.faults}


def test_what_a_run_loses_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    assert wrong(monkeypatch, 1, lambda folder: None) == set()
    changed = wrong(monkeypatch, 1, lambda folder: (folder / "new.tmp").touch())
    assert changed == {"says it wrote nothing, but something changed"}
    assert "left behind: new.tmp" in wrong(monkeypatch, 0, lambda folder: (folder / "new.tmp").touch())
    pretended = wrong(monkeypatch, 0, lambda folder: None)
    assert pretended >= {"wrote over what is to stay", "says it wrote a workbook, but there is none"}
