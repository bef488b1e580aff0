"""The cells that are typed into, as data: each input with its basis and note, each in one cell, found again by its name."""

from __future__ import annotations

import itertools
import re

import pytest

from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Book, Spot
from farmbook.layout.page import Plan
from farmbook.layout.typed import name_of
from farmbook.scenario.fields import has_basis
from farmbook.workbook.reading import EditedBook
from tests.demos import DEMOS
from tests.made import laid_out, workbook_of

SCENARIOS = DEMOS
ADDRESS = re.compile(r"[a-z]{1,3}[0-9]+|r[0-9]*c[0-9]*", re.IGNORECASE)


@pytest.fixture(scope="module", params=SCENARIOS, ids=lambda path: str(path.stem))
def laid(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Plan, EditedBook]:
    path = tmp_path_factory.mktemp("typed") / "book.xlsx"
    path.write_bytes(workbook_of(request.param))
    return *laid_out(request.param), EditedBook(path)


def test_every_value_basis_and_note_has_one_cell_of_its_own(laid: tuple[Book, Plan, EditedBook]) -> None:
    book, plan, _ = laid
    wanted = {
        (what, declared.dotted, index)
        for declared in plan.model.inputs
        for index in itertools.product(*(range(plan.sizes[axis]) for axis in ordered_axes(declared.axes)))
        for what in ("value", "basis", "note")
        if what != "basis" or has_basis(declared)
    }
    assert set(book.typed) == wanted
    assert len(set(book.typed.values())) == len(wanted)


def test_every_open_cell_is_one_of_them(laid: tuple[Book, Plan, EditedBook]) -> None:
    book, _, _ = laid
    looks = {"input", "input_text", "input_choice", "input_note"}
    stand = {(sheet.name, cell.row, cell.column) for sheet in book.sheets for cell in sheet.cells if cell.look in looks}
    stand -= {spot for spot in stand if spot not in book.typed.values() and sheet_of(book, spot) == "start"}
    assert stand == set(book.typed.values())


def sheet_of(book: Book, spot: Spot) -> str:
    return next(sheet.kind for sheet in book.sheets if sheet.name == spot[0])


def test_names_lead_to_all_of_them(laid: tuple[Book, Plan, EditedBook]) -> None:
    book, plan, edited = laid
    declared = {each.dotted: each for each in plan.model.inputs}
    found = set()
    for what, name in {(what, name) for what, name, _ in book.typed}:
        found |= {cell.place for row in edited.cells(name_of(what, declared[name])) for cell in row}
    assert len(found) == len(book.typed)


def test_names_of_lists_are_no_addresses_and_no_names_of_others(laid: tuple[Book, Plan, EditedBook]) -> None:
    book, _, _ = laid
    assert {"recipe_parts", "recipe_parts_basis", "recipe_parts_note", "ingredient_name", "recipe_name"} <= set(
        book.areas
    )
    assert [name for name in book.areas if not re.fullmatch(r"[a-z]+(_[a-z0-9]+)+", name)] == []
    assert [name for name in book.areas if ADDRESS.fullmatch(name)] == []
    assert set(book.areas) & set(book.names) == set()


def test_every_note_of_the_file_stands_in_the_book(laid: tuple[Book, Plan, EditedBook]) -> None:
    book, plan, edited = laid
    declared = {each.dotted: each for each in plan.model.inputs}
    given = sorted(note for notes in plan.notes.values() for note in notes.values())
    names = {name_of("note", declared[name]) for what, name, _ in book.typed if what == "note"}
    cells = (cell.value for name in names for row in edited.cells(name) for cell in row)
    assert sorted(str(value) for value in cells if value is not None) == given
    assert given
