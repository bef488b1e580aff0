"""What an edited workbook says, as the values of a scenario; every cell that cannot be read is told of by its place."""

from __future__ import annotations

import itertools
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from farmbook.errors import FileProblem, Problem
from farmbook.expr.axis import Axis
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.layout.typed import name_of
from farmbook.scenario.fields import Field, has_basis, tables_of
from farmbook.scenario.header import MONTHS_USUAL, PAPERS_SAID, UNITS_SAID
from farmbook.scenario.limits import default_at
from farmbook.scenario.rewrite import Entry
from farmbook.scenario.words import Path, as_written, figure, readable, where_of
from farmbook.sections.declare import NAME_KEY, Input, NumberInput, TextInput
from farmbook.sections.model import Model
from farmbook.units import serial_of
from farmbook.version import __version__
from farmbook.workbook.reading import BookCell, EditedBook

__all__ = ["Told", "told_by"]

_NOTHING: Final = BookCell("")


@dataclass
class Told:
    """A workbook's scenario: the keys at its top, rows by key with their names, values in the order of the file's tables.

    `places` says for each place of a scenario file in which cell that stands.
    """

    header: dict[str, str]
    rows: dict[Axis, dict[str, str]] = field(default_factory=dict)
    entries: list[Entry] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    remarks: list[Problem] = field(default_factory=list)
    places: dict[str, str] = field(default_factory=dict)


def told_by(book: EditedBook, model: Model, before: Mapping[Axis, Mapping[str, str]]) -> Told:
    """Read a workbook. `before` has the names of the rows of a scenario by their keys, which rows of these names keep."""
    telling = _Telling(book, model, Told(_header(book)))
    for axis in model.axes:
        telling.rows(axis, before.get(axis, {}))
    for table in tables_of(type(section) for section in model.sections).values():
        for place in (*table.fields.values(), *table.row_fields.values()):
            telling.input(place)
    telling.out.entries.sort(key=lambda entry: _reading_order(entry, telling.out.rows))
    return telling.out


def _header(book: EditedBook) -> dict[str, str]:
    """Units, currency and paper as they were fixed when the book was made."""
    units, paper = book.words("book_units"), book.words("book_paper")
    months = book.words("book_months")
    found = {
        "units": next((key for key, words in UNITS_SAID.items() if words == units), ""),
        "currency": book.words("book_currency"),
        "paper": next((key for key, words in PAPERS_SAID.items() if words == paper), ""),
    }
    if not all(found.values()):
        lost = " and ".join(key for key, words in found.items() if not words)
        raise FileProblem(str(book.path), f"no longer says its {lost}, at the foot of the sheet Start")
    return found | {"months": months if months.isdigit() else str(MONTHS_USUAL)}


def _reading_order(entry: Entry, rows: Mapping[Axis, Mapping[str, str]]) -> tuple[int, int, bool]:
    """Values of a whole table come before its rows, each row together, and in it the tables of its own last."""
    axis = entry.field.row_axis
    row = list(rows[axis]).index(entry.path[1]) if axis else -1
    return list(rows).index(axis) if axis else -1, row, any(inner.named for inner in entry.field.inner)


@dataclass
class _Telling:
    book: EditedBook
    model: Model
    out: Told

    def __post_init__(self) -> None:
        self.system = self.out.header["units"]
        self.keys: dict[Axis, list[str]] = {}
        self.unnamed: set[tuple[Axis, int]] = set()
        self.known = self.book.words("book_version") == __version__

    def rows(self, axis: Axis, before: Mapping[str, str]) -> None:
        """The rows of a list that have a name, and a key for each."""
        cells = list(itertools.chain(*self.book.cells(f"{axis.name}_{NAME_KEY}")))
        names = [self._text(cell) for cell in cells]
        keys = _keys(axis, names, before)
        self.keys[axis] = keys
        self.out.rows[axis] = {key: name for key, name in zip(keys, names, strict=True) if key}
        for key, cell in zip(keys, cells, strict=True):
            if key:
                self.out.places[where_of((axis.name, key), table=True)] = cell.place
            elif cell.fault:
                self.out.problems.append(Problem(cell.place, "", cell.fault))

    def input(self, place: Field) -> None:
        """All cells of an input, with how they are known and the notes on them."""
        declared = place.declared
        parts = [self._by_index(what, declared) for what in ("value", "basis", "note")]
        if not parts[0]:
            return
        for index, cell in parts[0].items():
            basis, note = (part.get(index, _NOTHING) for part in parts[1:])
            members = [self._member(axis, at) for axis, at in zip(ordered_axes(declared.axes), index, strict=True)]
            if all(members):
                path = place.path(dict(zip(ordered_axes(declared.axes), members, strict=True)))
                self._placed(path, cell, basis, note)
                self._value(place, path, index, cell, basis, note)
            elif note.value is not None or cell.value not in (None, self._standard(place, (), index)):
                self._without_name(declared, index, note if cell.value is None else cell)

    def _member(self, axis: Axis, at: int) -> str:
        members: Sequence[str] = self.keys[axis] if axis.named else axis.members
        return members[at] if at < len(members) else ""

    def _by_index(self, what: str, declared: Input) -> dict[tuple[int, ...], BookCell]:
        """The cells of an input by the places of their members; none, which is told, where their name or one of them is gone."""
        if what == "basis" and not has_basis(declared):
            return {}
        name = name_of(what, declared)
        rows = self.book.cells(name)
        axes = ordered_axes(declared.axes)
        found: dict[tuple[int, ...], BookCell]
        if not rows:
            self._gone(
                name, f"the name {name}, by which {as_written(declared.label)} is found, is gone from the workbook"
            )
            return {}
        if len(axes) < 2:
            cells = list(itertools.chain(*rows))
            found = {(at,) if axes else (): cell for at, cell in enumerate(cells if axes else cells[:1])}
        else:
            turned = axes[0].direction == "across"
            found = {
                (column, row) if turned else (row, column): cell
                for row, across in enumerate(rows)
                for column, cell in enumerate(across)
            }
        wanted = [len(self.keys[axis]) if axis.named else len(axis.members) for axis in axes]
        if set(found) != set(itertools.product(*map(range, wanted))):
            self._gone(name, f"the name {name} no longer stands for all cells of {as_written(declared.label)}")
            return {}
        return found

    def _gone(self, name: str, words: str) -> None:
        """A name is missing: in a book of this version it was deleted, an older one may never have had it."""
        if self.known:
            self.out.problems.append(Problem(name, "", f"{words}; undo that, or copy your figures into a new book"))
        else:
            version = self.book.words("book_version")
            self.out.remarks.append(
                Problem(name, "", f"{words}; the book is of version {version}. Nothing was read for it")
            )

    def _without_name(self, declared: Input, index: tuple[int, ...], cell: BookCell) -> None:
        """A row that is filled in but has no name, told once."""
        for axis, at in zip(ordered_axes(declared.axes), index, strict=True):
            if axis.named and not self._member(axis, at) and (axis, at) not in self.unnamed:
                self.unnamed.add((axis, at))
                names = list(itertools.chain(*self.book.cells(f"{axis.name}_{NAME_KEY}")))
                wanted = (
                    f"the {axis.label} has no name in {names[at].place}; give it one, or clear what stands in its row"
                )
                self.out.problems.append(Problem(cell.place, cell.shown, wanted))

    def _placed(self, path: Path, cell: BookCell, basis: BookCell, note: BookCell) -> None:
        """Set down in which cell each place of the file stands."""
        for length in range(2, len(path) + 1):
            self.out.places.setdefault(where_of(path[:length]), cell.place)
        self.out.places[where_of((*path, "basis"))] = basis.place
        self.out.places[where_of((*path, "note"))] = note.place

    def _value(
        self, place: Field, path: Path, index: tuple[int, ...], cell: BookCell, basis: BookCell, note: BookCell
    ) -> None:
        """One value, or none where its cell is empty."""
        sound = [self._sound(each) for each in (cell, basis, note)]
        if not all(sound):
            return
        if cell.value is None:
            self._empty(place, path, index, cell, (basis, note))
            return
        value = self._number(place.declared, cell) if isinstance(place.declared, NumberInput) else self._text(cell)
        if value is None:
            return
        known = self._basis(place.declared, cell, basis)
        standard = value == self._standard(place, path, index) and known in ("", "assumed") and note.value is None
        self.out.entries.append(Entry(path, place, value, known, self._text(note), standard))

    def _sound(self, cell: BookCell) -> bool:
        if cell.remark:
            self.out.remarks.append(Problem(cell.place, "", cell.remark))
        if cell.fault:
            self.out.problems.append(Problem(cell.place, "", cell.fault))
        return not cell.fault

    def _number(self, declared: NumberInput, cell: BookCell) -> float | None:
        if isinstance(cell.value, float):
            return cell.value
        if declared.measure.date and cell.day is not None:
            return float(serial_of(cell.day))
        number = "a number is wanted here, without words or unit; the unit stands beside the cell"
        wanted = "a date is wanted here, year-month-day" if declared.measure.date else number
        self.out.problems.append(Problem(cell.place, cell.shown, wanted))
        return None

    def _text(self, cell: BookCell) -> str:
        if isinstance(cell.value, float):
            return str(int(cell.value)) if cell.value.is_integer() else repr(cell.value)
        return cell.value or ""

    def _basis(self, declared: Input, cell: BookCell, basis: BookCell) -> str:
        if has_basis(declared) and basis.value is None and getattr(declared, "default_basis", True):
            wanted = f"is empty; {cell.place} was taken as assumed"
            self.out.remarks.append(Problem(basis.place, "", wanted))
            return "assumed"
        return self._text(basis)

    def _empty(
        self, place: Field, path: Path, index: tuple[int, ...], cell: BookCell, beside: Iterable[BookCell]
    ) -> None:
        """A cleared cell is left out of the file, which is the same only where the file fills nothing in for it, or 0."""
        standard = self._standard(place, (), index)
        if standard == 0:
            self.out.entries.append(Entry(path, place, 0.0, "assumed", "", standard=True))
        elif standard not in (None, ""):
            shown = figure(standard) if isinstance(standard, float) else as_written(standard)
            wanted = (
                f"is empty, but a file that leaves {as_written(place.declared.label)} out gets {shown}; type a value"
            )
            self.out.problems.append(Problem(cell.place, "", wanted))
        for each in beside:
            if each.value is not None:
                wanted = f"was left out, since {cell.place} is empty"
                self.out.remarks.append(Problem(each.place, each.shown, wanted))

    def _standard(self, place: Field, path: Path, index: tuple[int, ...]) -> float | str | None:
        """What a file that leaves a value out comes to."""
        declared = place.declared
        if isinstance(declared, NumberInput):
            return default_at(declared, dict(zip(ordered_axes(declared.axes), index, strict=True)), self.system)
        assert isinstance(declared, TextInput)
        if declared.names:
            return readable(path[1]) if path else None
        if declared.picks is not None:
            names = list(self.out.rows[declared.picks].values())
            return names[0] if len(names) == 1 else None
        return declared.default


def _keys(axis: Axis, names: Sequence[str], before: Mapping[str, str]) -> list[str]:
    """A key for each row with a name: that of the row so called before, or else that of the row that stood there and is
    so called no more, or else one made of the name."""
    called = {fold(name): key for key, name in before.items()}
    found = {at: called[fold(name)] for at, name in enumerate(names) if name and fold(name) in called}
    stood = list(before)
    for at, name in enumerate(names):
        if name and at not in found and at < len(stood) and stood[at] not in found.values():
            found[at] = stood[at]
    taken = set(found.values()) | set(before)
    for at, name in enumerate(names):
        if name and at not in found:
            found[at] = next(key for key in _made_of(name, axis, at) if key not in taken)
            taken.add(found[at])
    return _once([found.get(at, "") for at in range(len(names))])


def _once(keys: list[str]) -> list[str]:
    """Two rows of one name have keys of their own, so that the loader can tell of them."""
    seen: set[str] = set()
    for at, key in enumerate(keys):
        if key in seen:
            keys[at] = next(
                f"{key}_{number}" for number in itertools.count(2) if f"{key}_{number}" not in {*keys, *seen}
            )
        if key:
            seen.add(keys[at])
    return keys


def _made_of(name: str, axis: Axis, at: int) -> Iterator[str]:
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    words = "".join(letter if letter.isalnum() else " " for letter in plain).split()
    key = "_".join(words)[:50] or f"{axis.name}_{at + 1}"
    yield key
    for number in itertools.count(2):
        yield f"{key}_{number}"
