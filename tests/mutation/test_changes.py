"""The changes that are tried, on a few lines of source: each kind is made, and what only people read is left alone."""

from __future__ import annotations

import ast
from pathlib import Path

from tests.mutation.changes import Change, changes_of

SOURCE = '''"""A docstring."""
__all__ = ["worked"]


def worked(a: "int", b: int = 3) -> "int":
    """Another."""
    total = a - b * 0.5
    if a < b and not total:
        raise ModelFault("too small", why="as it is")
    total += 2 * absolute(
        total - a
    )
    note(total, "kept", label="for readers")
    total = total if a else b
    return f"{total + a}"
'''
MADE = {
    "3 -> 4",
    "a - b * 0.5 -> (a + b * 0.5)",
    "b * 0.5 -> (b / 0.5)",
    "0.5 -> 0.515",
    "a < b and not total -> (a < b or not total)",
    "a < b -> a <= b",
    "not total -> total",
    'raise ModelFault("too small", why="as it is") -> pass',
    "total += 2 * absolute( total - a ) -> pass",
    "2 * absolute( total - a ) -> (2 / absolute(total - a))",
    "2 -> 3",
    "absolute( total - a ) -> (total - a)",
    "total - a -> (total + a)",
    'note(total, "kept", label="for readers") -> pass',
    "note(total, \"kept\", label=\"for readers\") -> note('kept', total, label='for readers')",
    "\"kept\" -> 'keptx'",
    "total if a else b -> (total if not (a) else b)",
    'return f"{total + a}" -> return None',
}


def changes(tmp_path: Path) -> list[Change]:
    path = tmp_path / "sample.py"
    path.write_text(SOURCE, encoding="utf-8")
    return changes_of(path, tmp_path)


def test_each_kind_of_change_is_made_and_no_other(tmp_path: Path) -> None:
    found = [str(change).partition(": ")[2] for change in changes(tmp_path)]
    assert set(found) == MADE
    assert len(found) == len(MADE)


def test_a_change_leaves_the_rest_of_the_file_as_it_is(tmp_path: Path) -> None:
    for change in changes(tmp_path):
        text = change.made_in(SOURCE)
        assert text.startswith(SOURCE[: change.start])
        assert text.endswith(SOURCE[change.end :])
        assert ast.dump(ast.parse(text)) != ast.dump(ast.parse(SOURCE)), change
        row = SOURCE.splitlines()[change.line - 1]
        assert row[change.column - 1 :].startswith(change.before.splitlines()[0])
