"""Changes of the source: each is one that runs, and those that only a reader would see are left out."""

from __future__ import annotations

import ast
from pathlib import Path

from tests.mutation.__main__ import ALL, EQUIVALENT, NEAREST, ROOT, drawn, stages
from tests.mutation.changes import changes_of

SOURCE = '''"""Words of the module."""
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import os
Kind = Literal["one", "two"]

def size(x: int, of: str = "m") -> float:
    """Words of the function."""
    if x < 2 and of != "m":
        raise ModelFault("too small", where="here")
    told(f"in {of}")
    total = absolute(x) - part(x, 0.5)
    return total * (
        3
    )
'''
FOUND = [
    "8: 'm' -> 'mx'",
    "10: x < 2 and of != 'm' -> False",
    "10: x < 2 and of != 'm' -> (x < 2 or of != 'm')",
    "10: x < 2 -> x <= 2",
    "10: 2 -> 3",
    "10: of != 'm' -> of == 'm'",
    "10: 'm' -> 'mx'",
    "12: told(f'in {of}') -> pass",
    "12: told(f'in {of}') -> f'in {of}'",
    "13: absolute(x) - part(x, 0.5) -> (absolute(x) + part(x, 0.5))",
    "13: absolute(x) -> x",
    "13: part(x, 0.5) -> part(0.5, x)",
    "13: 0.5 -> 0.515",
    "14: total * ( 3 ) -> (total / 3)",
    "15: 3 -> 4",
]


def test_what_may_be_changed(tmp_path: Path) -> None:
    path = tmp_path / "size.py"
    path.write_text(SOURCE, encoding="utf-8")
    told = []
    for change in changes_of(path, tmp_path):
        ast.parse(change.made_in(SOURCE))
        file, line, column, words = str(change).split(":", 3)
        assert (file, line, column) == ("size.py", str(change.line), str(change.column))
        told.append(f"{line}:{words}".replace('"', "'"))
    assert sorted(told) == sorted(FOUND)


def test_a_seed_draws_the_same_changes_of_files_that_have_tests_near_them() -> None:
    changes = drawn(3, 40)
    assert [str(change) for change in changes] == [str(change) for change in drawn(3, 40)]
    assert len({str(change) for change in changes}) == 40
    for change in changes:
        assert change.before in (ROOT / change.file).read_text(encoding="utf-8")
        assert change.file.split("/")[1] in NEAREST


def test_all_tests_run_on_a_change_whichever_stand_near() -> None:
    for folder in NEAREST:
        for pictures in (True, False):
            run = [test for stage in stages(f"farmbook/{folder}/x.py", pictures=pictures) for test in stage]
            assert set(ALL) <= set(run)
    assert all((ROOT / folder).exists() for folder in ALL)


def test_each_change_that_is_not_counted_has_its_reason() -> None:
    for row in EQUIVALENT.read_text(encoding="utf-8").splitlines():
        change, _, reason = row.partition("  # ")
        assert " -> " in change
        assert reason
