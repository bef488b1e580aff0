"""Every edit a person may make in a book: each input at both ends of its range, cleared, overtyped with words and dates."""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Book, Formula, Shown, Summed, Worked, a1
from farmbook.layout.page import Plan
from farmbook.results import Computed
from farmbook.scenario.scenario import with_cell
from farmbook.sections.declare import BASES, Choice, NumberInput, TextInput
from farmbook.sections.section import Bound
from tests.engines.cells import Cell, Entry, Value, typed
from tests.made import laid_out, results_of

DAY = datetime.date(2026, 3, 1)
WORDS = "no idea"


@dataclass(frozen=True)
class Edit:
    """One cell, and what is typed there (None: cleared)."""

    cell: RawInput
    index: tuple[int, ...]
    value: Entry | None

    def __str__(self) -> str:
        return f"{self.cell.name}{list(self.index) if self.index else ''} := {self.value!r}"


@cache
def live_book(scenario: Path) -> LiveBook:
    """The book of a scenario file, laid out once a process."""
    return LiveBook(results_of(scenario), *laid_out(scenario))


class LiveBook:
    """A scenario's book and its engine, side by side."""

    def __init__(self, computed: Computed, book: Book, plan: Plan) -> None:
        self.computed, self.book, self.plan = computed, book, plan
        self.formulas = {
            (sheet.name, a1(cell.row, cell.column)): cell.content
            for sheet in self.book.sheets
            for cell in sheet.cells
            if isinstance(cell.content, (Worked, Shown, Summed, Formula))
        }

        self.factors: dict[Cell, Value] = {}
        self.places: dict[Line, list[tuple[Cell, int]]] = {}
        self.openings: dict[Line, list[tuple[Cell, int]]] = {}
        self.sums: dict[Line, list[tuple[Cell, list[int]]]] = {}
        for place, content in self.formulas.items():
            if isinstance(content, Formula):
                self.factors[place] = content.value
            elif isinstance(content, Summed):
                shown = [self._number(content.line, index) for index in content.shown]
                self.sums.setdefault(content.line, []).append((place, shown))
            elif isinstance(content, (Worked, Shown)) and content.opening:
                self.openings.setdefault(content.line, []).append((place, self._number(content.line, content.index)))
            else:
                self.places.setdefault(content.line, []).append((place, self._number(content.line, content.index)))

    def _number(self, line: Line, index: tuple[int, ...]) -> int:
        """Where a member stands in the line's flattened array; an opening leaves its own axis out."""
        sizes = [self.computed.scenario.sizes[axis] for axis in ordered_axes(line.axes)]
        number = 0
        for size, member in zip(sizes, index, strict=True):
            if member >= 0:
                number = number * size + member
        return number

    def place(self, edit: Edit) -> Cell:
        """Where an edit's cell stands."""
        home = self.book.homes[edit.cell]
        row, column = home.place(dict(zip(ordered_axes(edit.cell.axes), edit.index, strict=True)))
        return home.sheet, a1(row, column)

    def before(self, edit: Edit) -> Entry | None:
        """What stands in an edit's cell to begin with."""
        cells = self.computed.scenario.cells[edit.cell]
        number, text = cells.numbers[(0, *edit.index)], str(cells.texts[(0, *edit.index)])
        if edit.cell.kind == "number" and number == number:
            return float(number)
        return text or None

    def expected(self, *made: Edit, lines: Collection[Line] | None = None) -> dict[Cell, Value]:
        """What the formula cells of these lines (of all, and of the factors) should hold once the edits are made."""
        scenario = self.computed.scenario
        for edit in made:
            value = typed(edit.value) if edit.value is not None else None
            scenario = with_cell(scenario, edit.cell, edit.index, value)
        values = self.computed.what_if({edit.cell: scenario.cells[edit.cell] for edit in made}, lines)
        found: dict[Cell, Value] = dict(self.factors) if lines is None else {}
        for line in self.places if lines is None else lines:
            results = [str(value) if isinstance(value, str) else float(value) for value in values[line].reshape(-1)]
            found.update((place, results[number]) for place, number in self.places.get(line, ()))
            found.update(
                (place, sum(float(results[each]) for each in shown)) for place, shown in self.sums.get(line, ())
            )
            if line in self.openings:
                first = values.openings[line].reshape(-1)
                found.update((place, float(first[number])) for place, number in self.openings[line])
        return found

    def reached(self, *made: Edit) -> set[Line]:
        """The lines that edits reach."""
        return self.computed.graph.reached({edit.cell for edit in made})


def edits(live: LiveBook) -> Iterator[Edit]:
    """All edits of a book, in reading order."""
    for bound in live.computed.model.inputs.values():
        for index in _indices(live, bound.cell):
            for value in _values(live, bound):
                yield Edit(bound.cell, index, value)


def basis_edits(live: LiveBook) -> Iterator[tuple[Edit, ...]]:
    """Every basis cell of the book at every word, and cleared: one word over the whole book at a time."""
    cells = [bound.basis for bound in live.computed.model.inputs.values() if bound.basis is not None]
    for word in (*BASES, "Assumed", None, WORDS):
        yield tuple(Edit(cell, index, word) for cell in cells for index in _indices(live, cell))


def _indices(live: LiveBook, cell: RawInput) -> list[tuple[int, ...]]:
    """The first member and the first spare one of each named axis; the first and last of the others."""
    sizes, rows = live.computed.scenario.sizes, live.computed.scenario.rows
    chosen = []
    for axis in ordered_axes(cell.axes):
        second = len(rows[axis]) if axis.named else sizes[axis] - 1
        chosen.append(sorted({0, min(second, sizes[axis] - 1)}))
    return list(itertools.product(*chosen))


def _values(live: LiveBook, bound: Bound) -> list[Entry | None]:
    """What is typed into an input: ends of its usual range or every option; nothing, words, a date."""
    declared = bound.declared
    if isinstance(declared, NumberInput):
        cells = live.computed.scenario.cells
        assert bound.low is not None and bound.high is not None
        low, high = (float(cells[limit].numbers.reshape(-1)[0]) for limit in (bound.low, bound.high))
        return [low, high, None, WORDS, DAY]
    if isinstance(declared, Choice):
        return [*declared.labels, declared.labels[0].upper(), None, WORDS, DAY]
    if isinstance(declared, TextInput) and declared.picks is not None:
        names = live.computed.scenario.cells[live.computed.model.axes[declared.picks].names].texts.reshape(-1)
        return [*(str(name) for name in names if name), None, WORDS, DAY]
    return ["A new name", "=1+1", None, DAY]
