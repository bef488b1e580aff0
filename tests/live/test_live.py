"""As built and after every edit, independent spreadsheet engines and the engine of the book agree in every formula cell."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path

import pytest

from farmbook.expr.nodes import RawInput
from farmbook.output import build_bytes
from farmbook.results import compute, load_scenario
from tests.engines import gnumeric, libreoffice, require
from tests.engines.cells import Book, disagreements, formula_cells, stored_values
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook
from tests.live.edits import Edit, LiveBook, basis_edits, edits

SCENARIOS = sorted((Path(__file__).parents[2] / "scenarios").glob("*.toml"))
ALL = pytest.mark.parametrize("scenario", SCENARIOS, ids=lambda path: path.stem)


@cache
def live_book(scenario: Path) -> LiveBook:
    return LiveBook(compute(load_scenario(scenario)))


@pytest.fixture
def written(scenario: Path, tmp_path: Path) -> Path:
    path = tmp_path / f"{scenario.stem}.xlsx"
    path.write_bytes(build_bytes(live_book(scenario).computed))
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


def faults(live: LiveBook, book: Book, made: Iterable[Edit]) -> list[str]:
    """Disagreements as built, after each edit, and after the last is undone."""
    cells = list(live.formulas)
    found = [f"as built: {fault}" for fault in disagreements(live.expected(), book.read(cells))]
    for edit in made:
        place = live.place(edit)
        book.set(*place, edit.value)
        found += [f"{edit}: {fault}" for fault in disagreements(live.expected(edit), book.read(cells))[:3]]
        book.set(*place, live.before(edit))
    for together in basis_edits(live):
        for edit in together:
            book.set(*live.place(edit), edit.value)
        wrong = disagreements(live.expected(*together), book.read(cells))[:3]
        found += [f"every basis {together[0].value!r}: {fault}" for fault in wrong]
    for edit in together:
        book.set(*live.place(edit), live.before(edit))
    found += [f"undone: {fault}" for fault in disagreements(live.expected(), book.read(cells))]
    return found


def check(scenario: Path, written: Path, engine: Callable[[Path], Book]) -> None:
    live = live_book(scenario)
    made = list(edits(live))
    assert {edit.cell for edit in made} == {bound.cell for bound in live.computed.model.inputs.values()}
    with engine(written) as book:
        found = faults(live, book, made)
    assert found == [], f"{len(found)} disagreements in {len(made)} edits:\n" + "\n".join(found[:40])


@ALL
def test_every_edit_agrees_in_formualizer(scenario: Path, written: Path) -> None:
    check(scenario, written, FormualizerBook)


@ALL
def test_every_edit_agrees_in_libreoffice(scenario: Path, written: Path) -> None:
    require(libreoffice.available())
    check(scenario, written, LibreOfficeBook)


@ALL
def test_an_edit_moves_the_answer(scenario: Path) -> None:
    live = live_book(scenario)
    still = []
    before = live.expected()
    by_cell: dict[RawInput, list[Edit]] = {}
    for edit in edits(live):
        by_cell.setdefault(edit.cell, []).append(edit)
    for cell, moves in by_cell.items():
        if all(live.expected(edit) == before for edit in moves):
            still.append(cell.name)
    assert still == []
