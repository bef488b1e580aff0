"""One scenario file's values, rows and problems: what is right is taken in, what is wrong is told of and left out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property
from typing import Any, Final, TypeVar

from farmbook.errors import Problem
from farmbook.expr.axis import Axis
from farmbook.scenario.fields import BASIS_KEY, NAME_KEY, Field, Table, has_basis
from farmbook.scenario.header import TOP_KEYS, Header
from farmbook.scenario.values import (
    CELL_KEYS,
    TEXT_CELL_KEYS,
    Context,
    as_cell,
    by_member,
    read_basis,
    read_text,
    read_value,
    table_of,
)
from farmbook.scenario.words import Path, UnfitError, as_written, closest, listed, where_of, where_table
from farmbook.sections.declare import Input
from farmbook.sections.earlier import EARLIER_TABLES

__all__ = ["GUESS", "Gathered", "Given", "Unknown", "gather"]

GUESS: Final = "guess"
"""The basis of a number that the file gives without saying how it is known."""
_MOST_TOLD: Final = 200
"""Problems of one file that are put into words; a file with more is not a scenario with slips."""
_LONGEST_ROW_KEY: Final = 60

T = TypeVar("T")


@dataclass(frozen=True)
class Given:
    """A value that a file gives, a number in the declared unit or a text, and where."""

    number: Fraction
    text: str
    basis: str
    note: str
    written: object
    path: Path
    origin: str

    @property
    def where(self) -> str:
        """Where it stands, in the user's words."""
        return where_of(self.path, self.origin)


@dataclass(frozen=True)
class Unknown:
    """A key that no table has, or only beside the table `needed`."""

    path: Path
    origin: str
    value: object
    options: tuple[str, ...]
    home: str
    needed: str = ""

    @cached_property
    def near(self) -> str:
        """The key that was probably meant."""
        return self.renamed or closest(self.path[-1], self.options)

    @property
    def renamed(self) -> str:
        """What a table of this name is called now; empty where none was called so."""
        return EARLIER_TABLES.get(self.path[0], "") if len(self.path) == 1 else ""

    def problem(self) -> Problem:
        """What to tell the user."""
        table = len(self.path) == 1 and isinstance(self.value, Mapping)
        where = where_of(self.path, self.origin, table=table)
        what = "no such table" if table else "no such field"
        return Problem(where, "" if table else as_written(self.value), f"{what}; {self._advice()}")

    def _advice(self) -> str:
        if self.needed:
            return f"it is read only where the file has the table {where_table((self.needed,))} too"
        if self.renamed:
            return f"it is now called {where_table((self.renamed,))}"
        if self.home:
            return f"it belongs in {self.home}"
        return f"did you mean {self._shown(self.near)}?" if self.near else f"here stand {listed(self.options)}"

    def _shown(self, key: str) -> str:
        return where_table((key,)) if len(self.path) == 1 and key not in TOP_KEYS else f"`{key}`"


@dataclass
class Gathered:
    """What one file, or a chain of files one after the other, gives."""

    header: Header = field(default_factory=Header)
    values: dict[tuple[Input, Path], Given] = field(default_factory=dict)
    rows: dict[Axis, dict[str, None]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    unknown: list[Unknown] = field(default_factory=list)
    bad: set[Path] = field(default_factory=set)

    @property
    def misspelt(self) -> set[str]:
        """The tables that were probably meant by tables of no known name."""
        return {other.near for other in self.unknown if len(other.path) == 1 and isinstance(other.value, Mapping)}

    def is_bad(self, path: Path) -> bool:
        """Whether a problem with this place, or with the table around it, is told already."""
        return any(path[:length] in self.bad for length in range(1, len(path) + 1))


def gather(
    into: Gathered, raw: Mapping[str, Any], tables: Mapping[str, Table], origin: str, others: Iterable[str] = ()
) -> None:
    """Take one file in, over what the files below it gave. Nothing is raised for what the file says wrongly.

    `others` are tables that the file could have and does not.
    """
    taking = _Taking(into, tables, origin)
    taking.header(raw)
    for key, table in tables.items():
        if key in raw:
            taking.table(table, raw[key])
    taking.strangers((), raw, (*TOP_KEYS, *tables, *others))


@dataclass
class _Taking:
    """One file being taken in, table by table in the order of the sections; `told` counts its problems."""

    into: Gathered
    tables: Mapping[str, Table]
    origin: str
    told: int = 0
    context: Context = field(init=False)

    def header(self, raw: Mapping[str, Any]) -> None:
        """Take the top of the file over; what a file leaves out, the file below it gives."""
        own = {key: self._part((), raw, key, top.read) for key, top in TOP_KEYS.items()}
        before, currency = self.into.header, own["currency"]
        if before.currency and currency and currency != before.currency:
            wanted = f"the file that this one extends is in {before.currency}; money of two currencies is not mixed"
            self.into.problems.append(Problem(where_of(("currency",), self.origin), as_written(currency), wanted))
        self.into.header = now = replace(before, **{key: text for key, text in own.items() if text})
        bad = self.into.bad
        self.context = Context("" if ("units",) in bad else now.units, "" if ("currency",) in bad else now.currency)

    def table(self, table: Table, given: object) -> None:
        """Take in a section's fields, and the rows of a named axis."""
        path, known = (table.key,), (*table.fields, BASIS_KEY)
        inside = self._read(path, given, lambda: table_of(given, table.holding))
        if inside is None:
            return
        self._fields(table.fields, path, inside)
        if table.axis is None:
            self.strangers(path, inside, known)
            return
        for key, row in inside.items():
            if key not in known:
                self._row(table, table.axis, key, row)

    def _row(self, table: Table, axis: Axis, key: str, given: object) -> None:
        path = (table.key, key)
        if not isinstance(given, Mapping) or (_is_cell(given) and self._home(key)):
            self._no_row(table, path, given)
            return
        if _is_row_key(key):
            self.into.rows.setdefault(axis, {}).setdefault(key)
        elif self._bad(path):
            wanted = 'a row\'s key is made of letters, digits and underscores; give other words as its name = "..."'
            self.into.problems.append(Problem(where_of(path, self.origin, table=True), "", wanted))
        self._fields(table.row_fields, path, given)
        self.strangers(path, given, (*sorted(table.row_fields, key=lambda key: key != NAME_KEY), BASIS_KEY))

    def _no_row(self, table: Table, path: Path, given: object) -> None:
        """A value where a row is wanted: a field misspelt or in the wrong table, or a row that is not a table."""
        if not self._bad(path):
            return
        unknown = Unknown(path, self.origin, given, (*table.fields, BASIS_KEY), self._home(path[-1]))
        if unknown.near or unknown.home:
            self.into.unknown.append(unknown)
        else:
            wanted = f"each {path[0]} has a table of its own, {where_table(path)}, with its values below the heading"
            self.into.problems.append(Problem(where_of(path, self.origin), as_written(given), wanted))

    def _fields(self, fields: Mapping[str, Field], path: Path, given: Mapping[str, Any]) -> None:
        basis = self._part(path, given, BASIS_KEY, read_basis) or GUESS
        for key, place in fields.items():
            if key in given:
                self._values(place, place.inner, (*path, key), given[key], basis)

    def _values(self, place: Field, axes: tuple[Axis, ...], path: Path, given: object, basis: str) -> None:
        """Take in the value at a path, or one for each member of the axes."""
        if not axes:
            self._value(place, path, given, basis)
            return
        inside = self._read(path, given, lambda: by_member(axes[0], given))
        if inside is None:
            return
        for key in inside if axes[0].named else axes[0].members:
            if key in inside:
                self._values(place, axes[1:], (*path, key), inside[key], basis)
        if not axes[0].named:
            self.strangers(path, inside, axes[0].members)

    def _value(self, place: Field, path: Path, given: object, table_basis: str) -> None:
        declared, known = place.declared, has_basis(place.declared)
        cell = self._read(path, given, lambda: as_cell(given, basis=known))
        if cell is None:
            return
        basis = (self._part(path, cell, BASIS_KEY, read_basis) or table_basis) if known else ""
        note = self._part(path, cell, "note", read_text)
        self.strangers(path, cell, CELL_KEYS if known else TEXT_CELL_KEYS)
        found = self._read(path, cell, lambda: read_value(declared, cell["value"], self.context))
        if found is not None:
            taken = Given(*found, basis, note, cell["value"], path, self.origin)
            self.into.values[declared, place.spot(path)] = taken

    def _part(self, path: Path, given: Mapping[str, Any], key: str, read: Callable[[object], str]) -> str:
        """The text of one key; empty where it is left out or wrong."""
        return (self._read((*path, key), given[key], lambda: read(given[key])) or "") if key in given else ""

    def _read(self, path: Path, given: object, read: Callable[[], T]) -> T | None:
        """What a reader makes of a value; None where it complains, which is told."""
        try:
            return read()
        except UnfitError as complaint:
            if self._bad(path):
                self.into.problems.append(Problem(where_of(path, self.origin), as_written(given), complaint.wanted))
            return None

    def strangers(self, path: Path, given: Mapping[str, Any], known: tuple[str, ...]) -> None:
        """Tell of the keys that have no place in a table."""
        for key, value in given.items():
            if key not in known and self._bad((*path, key)):
                self.into.unknown.append(Unknown((*path, key), self.origin, value, known, self._home(key)))

    def _bad(self, path: Path) -> bool:
        """Set down that this place is wrong; whether it is still to be put into words."""
        self.into.bad.add(path)
        self.told += 1
        return self.told <= _MOST_TOLD

    def _home(self, key: str) -> str:
        """The table in which a key of this very name has its place."""
        for table in self.tables.values():
            if key in table.fields:
                return where_table((table.key,))
            if key in table.row_fields and key != NAME_KEY:
                return f"the rows of {where_table((table.key,))}"
        return ""


def _is_cell(given: Mapping[str, Any]) -> bool:
    """Whether a table is one value with its basis, such as earlier versions had in the place of a row."""
    return "value" in given and set(given) <= set(CELL_KEYS)


def _is_row_key(key: str) -> bool:
    return key.isascii() and key.replace("_", "").replace("-", "").isalnum() and len(key) <= _LONGEST_ROW_KEY
