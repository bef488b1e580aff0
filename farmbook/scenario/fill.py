"""Laying a scenario's values out as the cells of a book: values given, defaults, blanks, spare rows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

import numpy as np

from farmbook.errors import Problem
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import RawInput
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Cells
from farmbook.scenario.fields import NAME_KEY, Field, Table
from farmbook.scenario.gather import Gathered, Given
from farmbook.scenario.limits import NO_LIMIT, default_at, hard_shown, usual_fault, usual_of
from farmbook.scenario.quantity import converted
from farmbook.scenario.words import Path, as_written, did_you_mean, key_words, listed, readable, usual_words, where_of
from farmbook.sections.declare import Input, NumberInput, TextInput
from farmbook.sections.model import Model
from farmbook.sections.section import Bound
from farmbook.units import displayed

__all__ = ["MOST_PROBLEMS", "Filled", "Missing", "fill", "sizes_of"]

SPARE_ROWS: Final = 2
MOST_PROBLEMS: Final = 100


@dataclass(frozen=True)
class Missing:
    """A field that must be given and is not."""

    path: Path
    wanted: str

    def problem(self) -> Problem:
        """What to tell the user."""
        return Problem(where_of(self.path), "", f"missing: {self.wanted}")


@dataclass
class Filled:
    """The cells of every input, and what is wrong with them."""

    cells: dict[RawInput, Cells] = field(default_factory=dict)
    notes: dict[RawInput, dict[tuple[int, ...], str]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    missing: list[Missing] = field(default_factory=list)
    warnings: list[Problem] = field(default_factory=list)


def sizes_of(
    model: Model, rows: Mapping[Axis, Iterable[str]], sized: Mapping[Axis, int] | None = None
) -> dict[Axis, int]:
    """How many members each axis of the model has in the book; `sized` says it of those that follow the length of the plan.

    Named axes carry two spare rows at least, those that run across always all the columns there is room for.
    """
    axes = {axis for line in model.lines for axis in line.axes} | {
        axis for declared in model.inputs for axis in declared.axes
    }
    return {axis: _size(model, axis, len(list(rows.get(axis, ()))), sized or {}) for axis in ordered_axes(axes)}


def _size(model: Model, axis: Axis, given: int, sized: Mapping[Axis, int]) -> int:
    if axis.sized:
        return sized[axis] if axis in sized else int(model.count(axis))
    if not axis.named:
        return len(axis.members)
    return axis.most if axis.direction == "across" else min(given + SPARE_ROWS, axis.most)


def fill(model: Model, tables: Mapping[str, Table], gathered: Gathered, sizes: Mapping[Axis, int]) -> Filled:
    """The cells of every input; problems are gathered, not raised."""
    work = _Filling(model, gathered, sizes, Filled())
    fields = {
        found.declared: found
        for table in tables.values()
        for found in (*table.fields.values(), *table.row_fields.values())
    }
    work.rows()
    for declared, bound in model.inputs.items():
        work.strangers(fields[declared])
        if isinstance(declared, NumberInput):
            work.numbers(declared, bound, fields[declared])
        elif isinstance(declared, TextInput):
            work.texts(declared, bound, fields[declared])
    return work.out


@dataclass
class _Filling:
    model: Model
    given: Gathered
    sizes: Mapping[Axis, int]
    out: Filled

    def __post_init__(self) -> None:
        self.system = self.given.header.units or "metric"
        self.currency = self.given.header.currency
        self.all_rows = {axis: tuple(self.given.rows.get(axis, ())) for axis in self.model.axes}
        self.by_input: dict[Input, list[tuple[Path, Given]]] = {}
        for (declared, spot), found in self.given.values.items():
            self.by_input.setdefault(declared, []).append((spot, found))

    def rows(self) -> None:
        """Judge the rows of the named axes: not too many, and no two of one name."""
        for axis, keys in self.all_rows.items():
            if len(keys) > axis.most:
                wanted = f"{len(keys)} rows are given; there is room for {axis.most}"
                self.out.problems.append(Problem(where_of((axis.name,), table=True), "", wanted))
            self._twins(axis, keys)

    def _twins(self, axis: Axis, keys: tuple[str, ...]) -> None:
        seen: dict[str, str] = {}
        for key in keys:
            name = self.name(axis, key)
            other = seen.setdefault(fold(name), key)
            if other != key:
                twin = where_of((axis.name, other), table=True)
                wanted = (
                    f"{twin} has {_likeness(name, self.name(axis, other))}; every {axis.label} has a name of its own"
                )
                self.out.problems.append(Problem(where_of((axis.name, key, NAME_KEY)), as_written(name), wanted))

    def name(self, axis: Axis, key: str) -> str:
        """A row's name: given, or made of its key."""
        declared = self._names(axis)
        found = self.given.values.get((declared, (key,)))
        return found.text if found else readable(key)

    def _names(self, axis: Axis) -> Input:
        cell = self.model.axes[axis].names
        return next(declared for declared, bound in self.model.inputs.items() if bound.cell is cell)

    def strangers(self, place: Field) -> None:
        """Tell of values given for rows that do not exist."""
        axes = ordered_axes(place.declared.axes)
        for spot, found in self.by_input.get(place.declared, ()):
            for axis, key in zip(axes, spot, strict=True):
                if axis.named and key not in self.given.rows.get(axis, {}):
                    self._stranger(axis, key, found)

    def _stranger(self, axis: Axis, key: str, found: Given) -> None:
        if axis.name in self.given.misspelt or self.given.is_bad((axis.name, key)):
            return
        rows = self.all_rows[axis] if len(self.out.problems) < MOST_PROBLEMS else ()
        wanted = f"there is no {axis.label} `{key_words(key)}`" + (
            f"; {did_you_mean(key, rows, 'there are')}" if rows else ""
        )
        self.out.problems.append(Problem(found.where, as_written(found.written), wanted))

    def numbers(self, declared: NumberInput, bound: Bound, place: Field) -> None:
        """The cells of a number, its basis and its usual range."""
        axes, shape = ordered_axes(declared.axes), self._shape(declared)
        numbers, basis = np.full(shape, np.nan), np.full(shape, "", dtype=object)
        absent: list[Path] = []
        for index, keys, found in self._places(bound):
            if found is not None:
                numbers[0, *index] = self._shown(declared, found)
                basis[0, *index] = found.basis
                continue
            default = default_at(declared, dict(zip(axes, index, strict=True)), self.system)
            if default is not None:
                numbers[0, *index], basis[0, *index] = default, declared.default_basis
            elif keys is not None and not declared.optional:
                absent.append(place.path(dict(zip(axes, keys, strict=True))))
        limits = (*usual_of(declared, self.system), *hard_shown(declared, self.system, self.currency))
        low, high, least, most = (_of_numbers(np.array([min(limit, NO_LIMIT)])) for limit in limits)
        stands = {bound.cell: _of_numbers(numbers), bound.basis: _of_texts(basis), bound.low: low, bound.high: high}
        stands |= {bound.least: least, bound.most: most, bound.built: _of_numbers(numbers.copy())}
        self.out.cells.update({cell: found for cell, found in stands.items() if cell is not None})
        if absent:
            self._absent(place, absent, self._wanted(declared))

    def _shown(self, declared: NumberInput, found: Given) -> float:
        """The number in the book's unit; a warning where it is outside its usual range."""
        value, written = found.number, found.written
        target = declared.measure
        shown = float(converted(value, target, displayed(target, self.system)))
        fault = usual_fault(declared, shown, value, written, self.system, self.currency)
        if fault:
            self.out.warnings.append(Problem(found.where, as_written(written), fault))
        return shown

    def _wanted(self, declared: NumberInput) -> str:
        usual = usual_words(declared, usual_of(declared, self.system), self.system, self.currency)
        return f"{declared.label}, usually {usual}"

    def _absent(self, place: Field, absent: list[Path], wanted: str) -> None:
        """A field of which nothing is given is missing once; otherwise each of its members that is not given."""
        depth = 3 if place.row_axis else 2
        count = math.prod(len(self.all_rows.get(axis, axis.members)) for axis in place.inner)
        heads: dict[Path, list[Path]] = {}
        for path in absent:
            if not self.given.is_bad(path):
                heads.setdefault(path[:depth], []).append(path)
        for head, paths in heads.items():
            told = [head] if len(paths) == count else paths
            each = f" (one for each {place.inner[0].label})" if place.inner and told == [head] else ""
            self.out.missing += [Missing(path, wanted + each) for path in told]

    def texts(self, declared: TextInput, bound: Bound, place: Field) -> None:
        """The cells of a text, an option, a name or a member."""
        texts = np.full(self._shape(declared), "", dtype=object)
        for index, keys, found in self._places(bound):
            texts[0, *index] = self._text(declared, place, keys, found)
        self.out.cells[bound.cell] = _of_texts(texts)
        if bound.built is not None:
            self.out.cells[bound.built] = _of_texts(texts.copy())
        if bound.basis is not None:
            given = self.given.values.get((declared, ()))
            self.out.cells[bound.basis] = _of_texts(np.array([given.basis if given else "assumed"], dtype=object))

    def _text(self, declared: TextInput, place: Field, keys: Path | None, found: Given | None) -> str:
        if declared.names:
            return "" if keys is None else self.name(declared.axes[0], keys[0])
        if declared.picks is not None:
            return self._member(declared.picks, declared, place, found)
        return found.text if found else declared.default

    def _member(self, axis: Axis, declared: TextInput, place: Field, found: Given | None) -> str:
        """The name of the row that is picked, by its key or its name; the only row there is need not be picked."""
        names = {key: self.name(axis, key) for key in self.all_rows[axis]}
        if found is not None:
            picked = _called(found.text, names)
            if len(picked) > 1:
                self._ambiguous(axis, picked, names, found)
            elif not picked and not self._misnamed(axis):
                self._stranger(axis, found.text, found)
        else:
            picked = list(names)
            if len(picked) != 1 and axis.name not in self.given.misspelt and not self._misnamed(axis):
                choice = f"one of {listed(picked)}" if picked else f"and no {axis.label} is given"
                self._absent(place, [place.path({})], f"{declared.label}, {choice}")
        return names[picked[0]] if len(picked) == 1 else ""

    def _misnamed(self, axis: Axis) -> bool:
        """Whether the rows, or a row's key or name, are told to be wrong already: the one picked may be among them."""
        return any(path[:1] == (axis.name,) and (len(path) <= 2 or path[2] == NAME_KEY) for path in self.given.bad)

    def _ambiguous(self, axis: Axis, picked: list[str], names: Mapping[str, str], found: Given) -> None:
        meant = [f"{where_of((axis.name, key), table=True)} (named {as_written(names[key])})" for key in picked[:2]]
        wanted = f"may mean {' or '.join(meant)}; write a key or a name that only one of them has"
        self.out.problems.append(Problem(found.where, as_written(found.written), wanted))

    def _shape(self, declared: Input) -> tuple[int, ...]:
        return (1, *(self.sizes[axis] for axis in ordered_axes(declared.axes)))

    def _places(self, bound: Bound) -> Iterator[tuple[tuple[int, ...], Path | None, Given | None]]:
        """Every cell of an input: its place, its members' keys (None in a spare row), and what is given for it."""
        axes = ordered_axes(bound.declared.axes)
        for index in np.ndindex(self._shape(bound.declared)[1:]):
            keys = self._keys(axes, index)
            found = None if keys is None else self.given.values.get((bound.declared, keys))
            if found is not None and found.note:
                self.out.notes.setdefault(bound.cell, {})[index] = found.note
            yield index, keys, found

    def _keys(self, axes: tuple[Axis, ...], index: tuple[int, ...]) -> Path | None:
        keys: list[str] = []
        for axis, place in zip(axes, index, strict=True):
            members = self.all_rows[axis] if axis.named else axis.members
            if place >= len(members):
                return None
            keys.append(members[place])
        return tuple(keys)


def _called(word: str, names: Mapping[str, str]) -> list[str]:
    """The keys of the rows that a word may mean: by key or name as written, or else as a spreadsheet compares texts."""
    exact = [key for key, name in names.items() if word in (key, name)]
    return exact or [key for key, name in names.items() if fold(word) in (fold(key), fold(name))]


def _likeness(name: str, other: str) -> str:
    same = name.lower() == other.lower()
    return "the same name" if same else f"the name {as_written(other)}, which a spreadsheet may take as the same"


def _of_numbers(numbers: np.ndarray) -> Cells:
    return Cells(numbers, np.full(numbers.shape, "", dtype=object))


def _of_texts(texts: np.ndarray) -> Cells:
    return Cells(np.full(texts.shape, np.nan), texts)
