"""A scenario file written anew, or brought up to date: only what differs is changed, remarks and order stay."""

from __future__ import annotations

from collections.abc import Mapping, MutableMapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from farmbook.scenario.fields import BASIS_KEY, Field
from farmbook.scenario.gather import GUESS
from farmbook.scenario.words import Path
from farmbook.sections.declare import NumberInput
from farmbook.units import day_of

__all__ = ["Entry", "rewritten"]


@dataclass(frozen=True)
class Entry:
    """One value of a scenario, in the units of its book. `standard` is what a file that leaves it out comes to."""

    path: Path
    field: Field
    value: float | str
    basis: str
    note: str
    standard: bool


def rewritten(
    text: str,
    header: Mapping[str, str],
    rows: Sequence[Path],
    gone: Mapping[Path, Sequence[str]],
    changed: Sequence[Entry],
) -> str | None:
    """The text of a scenario file with other values, and without the rows and values that are gone, each of these with the
    members of the list it may stand in. None for a text that cannot be changed."""
    try:
        document = tomlkit.parse(text)
        for key, word in header.items():
            document[key] = int(word) if word.isdigit() else word
        for path, members in gone.items():
            _remove(document, path, members)
        for entry in changed:
            _put(document, entry)
        for path in rows:
            _table(document, path)
        return tomlkit.dumps(document)
    except (TOMLKitError, AttributeError, LookupError, TypeError, ValueError):
        return None


def _remove(document: Any, path: Path, members: Sequence[str]) -> None:
    """Take out one value, or a whole row; a list that lacks a value becomes a table by member."""
    inside = document
    for key in path[:-2]:
        inside = inside.get(key) if isinstance(inside, Mapping) else None
    if not isinstance(inside, MutableMapping):
        return
    if len(path) > 1:
        if isinstance(inside.get(path[-2]), list):
            inside[path[-2]] = _by_member(members, inside[path[-2]])
        inside = inside.get(path[-2])
    if isinstance(inside, MutableMapping):
        inside.pop(path[-1], None)


def _table(document: Any, path: Path) -> Any:
    """The table at a path, made where there is none."""
    inside = document
    for depth, key in enumerate(path, 1):
        if key not in inside:
            inside[key] = tomlkit.table(is_super_table=True if depth == 1 and len(path) > 1 else None)
        inside = inside[key]
    return inside


def _put(document: Any, entry: Entry) -> None:
    """Set one value, with what is known of it."""
    depth = 3 if entry.field.row_axis else 2
    inside = _table(document, entry.path[: depth - 1])
    usual = inside.get(BASIS_KEY, GUESS)
    steps: list[str | int] = [*entry.path[depth - 1 :]]
    for at, axis in enumerate(entry.field.inner):
        if isinstance(inside, MutableMapping) and steps[at] not in inside:
            inside[steps[at]] = tomlkit.table() if axis.named else tomlkit.inline_table()
        inside = inside[steps[at]]
        if isinstance(inside, list):
            steps[at + 1] = axis.members.index(entry.path[depth + at])
    last = steps[-1]
    before = inside.get(last) if isinstance(inside, MutableMapping) else inside[last]
    if isinstance(before, MutableMapping):
        _update(before, entry)
    else:
        inside[last] = _written(entry, usual)


def _by_member(members: Sequence[str], values: Sequence[Any]) -> Any:
    """A list of values as a table by member."""
    found = tomlkit.inline_table()
    for member, value in zip(members, values, strict=True):
        found[member] = value
    return found


def _update(before: MutableMapping[str, Any], entry: Entry) -> None:
    before["value"] = _plain(entry)
    for key, words in ((BASIS_KEY, entry.basis), ("note", entry.note)):
        if words:
            before[key] = words
        else:
            before.pop(key, None)


def _written(entry: Entry, usual: str) -> Any:
    """A value by itself where nothing else is to be said of it."""
    if not entry.note and entry.basis in ("", usual):
        return _plain(entry)
    found = tomlkit.inline_table()
    _update(found, entry)
    return found


def _plain(entry: Entry) -> int | float | str | date:
    value, declared = entry.value, entry.field.declared
    if not isinstance(value, float):
        return value
    day = day_of(value) if isinstance(declared, NumberInput) and declared.measure.date else None
    return day or (int(value) if value.is_integer() else value)
