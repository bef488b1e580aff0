"""As built and after every edit, independent spreadsheet engines and the engine of the book agree in every formula cell."""

from __future__ import annotations

import datetime
import random
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path

import pytest

from farmbook.expr.nodes import RawInput
from tests.demos import DEMOS
from tests.engines import gnumeric, libreoffice, require
from tests.engines.cells import Book, Cell, Value, disagreements, formula_cells, stored_values
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook
from tests.live.edits import Edit, LiveBook, basis_edits, edits, live_book
from tests.live.turns import commit, turn_of
from tests.made import workbook_of

SCENARIOS = DEMOS
ALL = pytest.mark.parametrize("scenario", SCENARIOS, ids=lambda path: path.stem)


@pytest.fixture
def written(scenario: Path, tmp_path: Path) -> Path:
    path = tmp_path / f"{scenario.stem}.xlsx"
    path.write_bytes(workbook_of(scenario))
    return path


def test_there_are_scenarios_in_both_unit_systems() -> None:
    assert {live_book(scenario).computed.scenario.system for scenario in SCENARIOS} == {"us", "metric"}


@ALL
def test_every_formula_cell_stores_what_the_engine_found(scenario: Path, written: Path) -> None:
    expected = live_book(scenario).expected()
    assert set(expected) == set(formula_cells(written))
    assert disagreements(expected, stored_values(written)) == []


@ALL
def test_gnumeric_agrees_as_built(scenario: Path, written: Path) -> None:
    require(gnumeric.available())
    assert disagreements(live_book(scenario).expected(), gnumeric.recalculate(written)) == []


LAST_DIGIT = 1e-9
EPOCH = datetime.date(1899, 12, 30)
MOST_OUT_OF_REACH = 40
RANDOM_FARMS, EDITS_EACH = 12, 12
IN_PROCESS, BESIDE, TOGETHER = 4, 8, 4
"""Of the edits of an input one in so many is made at each commit: in the engine in process, and in a program beside it.

An input is edited in one of the books, in turn from commit to commit; in the program beside one of the books is open, in turn
too, and every fourth of its inputs is edited. Of the farms with many edits at once one in `TOGETHER` is made."""


def last_digit(made: Sequence[Edit]) -> float:
    """How far two engines may be apart in a cell near zero.

    A date typed for a price is a number of tens of thousands: a difference of two sums of it has lost as many digits.
    """
    days = [(edit.value - EPOCH).days for edit in made if isinstance(edit.value, datetime.date)]
    return LAST_DIGIT * max([1, *days])


class Reader:
    """Compares an open book with the engine: what edits reach and a slice of the rest, or with `whole` every cell."""

    def __init__(self, live: LiveBook, book: Book, *, whole: bool) -> None:
        self.live, self.book, self.whole = live, book, whole
        self.chance = random.Random(commit())
        self.lines = list(live.places)

    def make(self, *edits: Edit) -> None:
        """Type edits into the book."""
        for edit in edits:
            self.book.set(*self.live.place(edit), edit.value)

    def undo(self, *edits: Edit) -> None:
        """Type what stood there before."""
        for edit in edits:
            self.book.set(*self.live.place(edit), self.live.before(edit))

    def everywhere(self, *edits: Edit) -> list[str]:
        """Disagreements in all cells."""
        found = self.book.read(list(self.live.formulas))
        return disagreements(self.live.expected(*edits), found, absolute=last_digit(edits))

    def near(self, edit: Edit) -> list[str]:
        """Disagreements in what the edit reaches, and in some lines that it must leave alone."""
        if self.whole:
            return self.everywhere(edit)
        reached = self.live.reached(edit)
        apart = [line for line in self.lines if line not in reached]
        lines = reached.union(self.chance.sample(apart, min(MOST_OUT_OF_REACH, len(apart))))
        expected = self.live.expected(edit, lines=lines)
        return disagreements(expected, self.book.read(list(expected)), absolute=last_digit([edit]))


def faults(reader: Reader, made: Sequence[Edit]) -> list[str]:
    """Disagreements as built, after each edit, after many at once, and after the last is undone."""
    found = [f"as built: {fault}" for fault in reader.everywhere()]
    for edit in made:
        reader.make(edit)
        found += [f"{edit}: {fault}" for fault in reader.near(edit)[:3]]
        reader.undo(edit)
    farms = [*basis_edits(reader.live), *random_farms(made, reader.chance)]
    for together in farms if reader.whole else farms[turn_of(0, TOGETHER) :: TOGETHER]:
        reader.make(*together)
        wrong = reader.everywhere(*together)[:3]
        found += [f"{len(together)} edits, first {together[0]}: {fault}" for fault in wrong]
        reader.undo(*together)
    return found + [f"undone: {fault}" for fault in reader.everywhere()]


def part_of(made: Sequence[Edit], one_in: int, chance: random.Random, place: int, turns: int) -> list[Edit]:
    """One in so many of the edits of every other input, one at least; the other inputs in the other book, and others at the
    next commit; all of them with `--whole`."""
    by_cell: dict[RawInput, list[Edit]] = {}
    for edit in made:
        by_cell.setdefault(edit.cell, []).append(edit)
    by_cell = dict(list(by_cell.items())[turn_of(place, turns) :: turns])
    chosen = {edit for each in by_cell.values() for edit in chance.sample(each, max(1, len(each) // one_in))}
    return [edit for edit in made if edit in chosen]


def random_farms(made: Sequence[Edit], chance: random.Random) -> Iterator[tuple[Edit, ...]]:
    """Many edits at once, of different cells, drawn from all but dates.

    Several dates at once make numbers of days so large that a whole number of them hangs on the last binary digit.
    """
    sensible = [edit for edit in made if not isinstance(edit.value, datetime.date)]
    for _ in range(RANDOM_FARMS):
        drawn = {(edit.cell, edit.index): edit for edit in chance.sample(sensible, EDITS_EACH)}
        yield tuple(drawn.values())


def check(
    scenario: Path, written: Path, engine: Callable[[Path], Book], *, one_in: int, turns: int, whole: bool
) -> None:
    live = live_book(scenario)
    made = list(edits(live))
    assert {edit.cell for edit in made} == {bound.cell for bound in live.computed.model.inputs.values()}
    with engine(written) as book:
        reader = Reader(live, book, whole=whole)
        part = made if whole else part_of(made, one_in, reader.chance, SCENARIOS.index(scenario), turns)
        found = faults(reader, part)
    assert found == [], f"{len(found)} disagreements in {len(made)} edits:\n" + "\n".join(found[:40])


@ALL
def test_every_edit_agrees_in_formualizer(scenario: Path, written: Path, pytestconfig: pytest.Config) -> None:
    check(
        scenario,
        written,
        FormualizerBook,
        one_in=IN_PROCESS,
        turns=len(SCENARIOS),
        whole=pytestconfig.getoption("whole"),
    )


@ALL
def test_every_edit_agrees_in_libreoffice(scenario: Path, written: Path, pytestconfig: pytest.Config) -> None:
    require(libreoffice.available())
    whole = pytestconfig.getoption("whole")
    if not whole and turn_of(SCENARIOS.index(scenario), len(SCENARIOS)):
        pytest.skip("this book is open in LibreOffice at other commits, and with --whole")
    check(scenario, written, LibreOfficeBook, one_in=BESIDE, turns=4 * len(SCENARIOS), whole=whole)


@ALL
def test_an_edit_moves_the_answer(scenario: Path, pytestconfig: pytest.Config) -> None:
    if not pytestconfig.getoption("whole") and turn_of(SCENARIOS.index(scenario), len(SCENARIOS)):
        pytest.skip("what the edits of this book move is tried at other commits, and with --whole")
    live = live_book(scenario)
    still = []
    before = live.expected()
    by_cell: dict[RawInput, list[Edit]] = {}
    for edit in edits(live):
        by_cell.setdefault(edit.cell, []).append(edit)
    for cell, moves in by_cell.items():
        if not any(moved(live, edit, before) for edit in moves):
            still.append(cell.name)
    assert still == []


def moved(live: LiveBook, edit: Edit, before: Mapping[Cell, Value]) -> bool:
    """Whether any cell that an edit reaches is another than before."""
    found = live.expected(edit, lines=live.reached(edit))
    return any(before[cell] != value for cell, value in found.items())
