"""Every edit a person may make in a book: each input at both ends of its range, cleared, overtyped with words and dates."""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from farmbook.output import lay_out
from farmbook.results import Computed
from farmbook.expr.nodes import RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Book, Formula, Shown, Worked, a1
from farmbook.layout.page import Plan, text_line
from farmbook.model.declare import BASES, Choice, NumberInput, TextInput
from farmbook.model.section import Bound
from farmbook.scenario.scenario import with_cell
from tests.engines.cells import Cell, Entry, Value, typed

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


class LiveBook:
    """A scenario's book and its engine, side by side."""

    def __init__(self, computed: Computed) -> None:
        self.computed = computed
        self.book: Book
        self.plan: Plan
        self.book, self.plan = lay_out(computed)
        self.formulas = {
            (sheet.name, a1(cell.row, cell.column)): cell.content
            for sheet in self.book.sheets
            for cell in sheet.cells
            if isinstance(cell.content, (Worked, Shown, Formula))
        }

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

    def expected(self, edit: Edit | None) -> dict[Cell, Value]:
        """What every formula cell should hold once the edit is made."""
        scenario = self.computed.scenario
        if edit is not None:
            value = typed(edit.value) if edit.value is not None else None
            scenario = with_cell(scenario, edit.cell, edit.index, value)
        values, openings = self.computed.engine.run_with_openings(scenario.cells)
        found: dict[Cell, Value] = {}
        for place, content in self.formulas.items():
            if isinstance(content, Formula):
                found[place] = content.value
            elif isinstance(content, Worked) and content.opening:
                rest = tuple(member for member in content.index if member >= 0)
                found[place] = float(openings[content.line][(0, *rest)])
            else:
                result = values[content.line][(0, *content.index)]
                found[place] = str(result) if text_line(content.line) else float(result)
        return found


def edits(live: LiveBook) -> Iterator[Edit]:
    """All edits of a book, in reading order."""
    for bound in live.computed.model.inputs.values():
        for index in _indices(live, bound.cell):
            for value in _values(live, bound):
                yield Edit(bound.cell, index, value)
            if bound.basis is not None:
                for word in (*BASES, "Assumed", None, WORDS):
                    yield Edit(bound.basis, index, word)


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
        return [*declared.options, declared.options[0].upper(), None, WORDS, DAY]
    if isinstance(declared, TextInput) and declared.picks is not None:
        names = live.computed.scenario.cells[live.computed.model.axes[declared.picks].names].texts.reshape(-1)
        return [*(str(name) for name in names if name), None, WORDS, DAY]
    return ["A new name", "=1+1", None, DAY]
