"""One scenario file's values, rows and problems: validated, what is wrong set aside, the rest taken in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Final, TypeVar

from pydantic import BaseModel, ValidationError

from farmbook.errors import Problem
from farmbook.expr.axis import Axis
from farmbook.scenario.fields import BASIS_KEY, NAME_KEY, TOP_KEYS, Field, Table, has_basis
from farmbook.scenario.schema import OWN_WORDS, Header
from farmbook.scenario.values import CELL_KEYS, Context, Value
from farmbook.scenario.words import Path, as_written, closest, listed, where_of, where_table
from farmbook.sections.declare import Input

__all__ = ["GUESS", "Gathered", "Given", "Unknown", "gather"]

GUESS: Final = "guess"
"""The basis of a number that the file gives without saying how it is known."""
_MOST_TRANSLATED: Final = 200
"""Errors of one file that are put into words; a file with more is not a scenario with slips."""

AnyModel = TypeVar("AnyModel", bound=BaseModel)


@dataclass(frozen=True)
class Given:
    """A value that a file gives, and where."""

    value: Value
    basis: str
    path: Path
    origin: str

    @property
    def where(self) -> str:
        """Where it stands, in the user's words."""
        return where_of(self.path, self.origin)


@dataclass(frozen=True)
class Unknown:
    """A key that no table has."""

    path: Path
    origin: str
    value: object
    options: tuple[str, ...]
    home: str = ""

    @cached_property
    def near(self) -> str:
        """The key that was probably meant."""
        return closest(self.path[-1], self.options)

    def problem(self) -> Problem:
        """What to tell the user."""
        table = len(self.path) == 1 and isinstance(self.value, Mapping)
        where = where_of(self.path, self.origin, table=table)
        what = "no such table" if table else "no such field"
        return Problem(where, "" if table else as_written(self.value), f"{what}; {self._advice()}")

    def _advice(self) -> str:
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
    into: Gathered, raw: Mapping[str, Any], model: type[BaseModel], tables: Mapping[str, Table], origin: str
) -> None:
    """Take one file in, over what the files below it gave. Nothing is raised for what the file says wrongly."""
    taking = _Taking(into, tables, origin, raw)
    own, rest = taking.valid(Header, _copied(raw), None)
    context = taking.header(own)
    body, _ = taking.valid(model, rest, context)
    for attribute, info in type(body).model_fields.items():
        found = getattr(body, attribute)
        table = tables.get(info.alias or "")
        if table is not None and found is not None:
            taking.table(table, found)


@dataclass
class _Taking:
    into: Gathered
    tables: Mapping[str, Table]
    origin: str
    raw: Mapping[str, Any]

    def valid(
        self, model: type[AnyModel], raw: Mapping[str, Any], context: Context | None
    ) -> tuple[AnyModel, Mapping[str, Any]]:
        """The model of what is right in the file, and the file without what is wrong, which is told."""
        while True:
            try:
                return model.model_validate(raw, context=context), raw
            except ValidationError as fault:
                errors = fault.errors(include_url=False)
            paths = [_path(error["loc"]) for error in errors]
            for path, error in list(zip(paths, errors, strict=True))[:_MOST_TRANSLATED]:
                self._tell(path, error["type"], error["msg"])
            raw, out = _pruned(raw, paths)
            self.into.bad |= out

    def header(self, own: Header) -> Context:
        """Take the top of the file over; what a file leaves out, the file below it gives."""
        before = self.into.header
        if before.currency and own.currency and own.currency != before.currency:
            wanted = f"the file that this one extends is in {before.currency}; money of two currencies is not mixed"
            self.into.problems.append(Problem(where_of(("currency",), self.origin), as_written(own.currency), wanted))
        told = {name: getattr(own, name) or getattr(before, name) for name in TOP_KEYS}
        self.into.header = Header.model_construct(**told)
        bad = self.into.bad
        return Context("" if ("units",) in bad else told["units"], "" if ("currency",) in bad else told["currency"])

    def table(self, table: Table, found: BaseModel) -> None:
        """Take in a section's fields, and the rows of a named axis."""
        self._fields(table.fields, (table.key,), found)
        if table.axis is None:
            return
        rows = self.into.rows.setdefault(table.axis, {})
        for key, row in (found.__pydantic_extra__ or {}).items():
            path = (table.key, key)
            if not key.isascii() or not key.replace("_", "").replace("-", "").isalnum() or len(key) > 60:
                wanted = 'a row\'s key is made of letters, digits and underscores; give other words as its name = "..."'
                self._problem(path, Problem(where_of(path, self.origin, table=True), "", wanted))
                continue
            rows.setdefault(key)
            self._fields(table.row_fields, path, row)

    def _fields(self, fields: Mapping[str, Field], path: Path, found: BaseModel) -> None:
        basis = getattr(found, BASIS_KEY) or GUESS
        for attribute, info in type(found).model_fields.items():
            key, value = info.alias or attribute, getattr(found, attribute)
            if key in fields and value is not None:
                self._values(fields[key], (*path, key), value, basis)

    def _values(self, field: Field, path: Path, found: object, basis: str) -> None:
        if isinstance(found, Value):
            given = Given(found, (found.basis or basis) if has_basis(field.declared) else "", path, self.origin)
            self.into.values[field.declared, field.spot(path)] = given
        elif isinstance(found, dict):
            for key, inside in found.items():
                self._values(field, (*path, key), inside, basis)
        elif isinstance(found, BaseModel):
            for attribute, info in type(found).model_fields.items():
                inside = getattr(found, attribute)
                if inside is not None:
                    self._values(field, (*path, info.alias or attribute), inside, basis)

    def _tell(self, path: Path, kind: str, message: str) -> None:
        value = self._at(path)
        if kind == OWN_WORDS:
            self._problem(path, Problem(where_of(path, self.origin), as_written(value), message))
        elif kind in ("extra_forbidden", "model_type"):
            unknown = Unknown(path, self.origin, value, self._options(path), self._home(path[-1]))
            self.into.bad.add(path)
            if kind == "model_type" and not unknown.near and not unknown.home:
                wanted = (
                    f"each {path[0]} has a table of its own, {where_table(path)}, with its values below the heading"
                )
                self.into.problems.append(Problem(where_of(path, self.origin), as_written(value), wanted))
            else:
                self.into.unknown.append(unknown)
        else:
            self._problem(path, Problem(where_of(path, self.origin), as_written(value), "cannot stand here"))

    def _at(self, path: Path) -> object:
        """What the file has at a path, or at the nearest table or list above."""
        found: object = self.raw
        for key in path:
            if isinstance(found, list):
                place = next((axis.members.index(key) for axis in self._lists() if key in axis.members), len(found))
                return found[place] if place < len(found) else found
            if not isinstance(found, Mapping) or key not in found:
                return found
            found = found[key]
        return found

    def _lists(self) -> list[Axis]:
        """The axes for whose members a file may give a list."""
        fields = [
            field for table in self.tables.values() for field in (*table.fields.values(), *table.row_fields.values())
        ]
        return [axis for field in fields for axis in field.inner if not axis.named]

    def _problem(self, path: Path, problem: Problem) -> None:
        self.into.problems.append(problem)
        self.into.bad.add(path)

    def _home(self, key: str) -> str:
        """The table in which a key of this very name has its place."""
        for table in self.tables.values():
            if key in table.fields:
                return where_table((table.key,))
            if key in table.row_fields and key != NAME_KEY:
                return f"the rows of {where_table((table.key,))}"
        return ""

    def _options(self, path: Path) -> tuple[str, ...]:
        """The keys that may stand beside the last key of a path."""
        if len(path) == 1:
            return (*TOP_KEYS, *self.tables)
        table = self.tables[path[0]]
        fields, inside = (
            (table.row_fields, path[2:]) if table.axis and path[1] not in table.fields else (table.fields, path[1:])
        )
        if len(path) == 2:
            return (*table.fields, BASIS_KEY)
        if len(inside) == 1:
            return (*sorted(fields, key=lambda key: key != NAME_KEY), BASIS_KEY)
        field = fields[inside[0]]
        if len(inside) - 2 < len(field.inner):
            return field.inner[len(inside) - 2].members
        return CELL_KEYS if has_basis(field.declared) else ("value", "note")


def _path(loc: Iterable[int | str]) -> Path:
    return tuple(str(part) for part in loc)


def _pruned(raw: Mapping[str, Any], paths: Iterable[Path]) -> tuple[dict[str, Any], set[Path]]:
    """A copy of the file without what stands at these paths, or without the list around it, and what was left out."""
    copy = _copied(raw)
    out = {_present(raw, path) for path in paths}
    if () in out:
        return {}, out
    for path in out:
        inside = copy
        for key in path[:-1]:
            inside = inside.get(key, {})
        inside.pop(path[-1], None)
    return copy, out


def _present(raw: object, path: Path) -> Path:
    """As much of a path as leads through tables to something that stands in the file."""
    for length, key in enumerate(path):
        if not isinstance(raw, Mapping) or key not in raw:
            return path[:length]
        raw = raw[key]
    return path


def _copied(raw: Mapping[str, Any]) -> dict[str, Any]:
    return {key: _copied(value) if isinstance(value, Mapping) else value for key, value in raw.items()}
