"""Whatever a person writes into a scenario, the book shows it as those words and never as a formula."""

from __future__ import annotations

import copy
import itertools
import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from farmbook.cli import main
from farmbook.errors import FileProblem, ScenarioProblems
from farmbook.output import lay_out, stamp_of, written
from farmbook.results import compute, whole_farm
from farmbook.scenario.load import load, read
from tests.engines.formualizer_engine import FormualizerBook
from tests.made import laid_out
from tests.workbook.lints_cells import repeats, results
from tests.workbook.lints_file import outside
from tests.workbook.lints_placed import kinds
from tests.workbook.shipped import SCENARIOS, ShippedBook
from tests.workbook.written import MAIN, Written, shown

BASE = "kestrel_hollow"
TEXTS = (
    "=1+1",
    "+cmd|' /C calc'!A0",
    "@SUM(A1:A9)",
    "-2+3",
    "{=1+1}",
    "<b>&amp; \"quoted\" & 'single'</b>",
    "]]></t></si><si>",
    "_x0041_ _x000D_",
    "#REF",
    "TRUE",
    "1e5",
    "2026-03-01",
    "'=1+1",
    "&P &[File] &&",
    "http://example.invalid/=1",
    "蘑菇 \u03a9 \U0001f344 e\u0301",
    "=" + "x" * 199,
)
SHIFTS = (0, 9)
"""With these, every text stands in a name, from where formulas repeat it, and in notes and plain fields."""
SIGNS = ("=", "+", "-", "@")
"""What a spreadsheet program takes for the start of a formula when it is typed."""
ERRORS = ("#REF!", "#N/A", "#DIV/0!", "#VALUE!", "#NUM!", "#NAME?", "#NULL!")


FILLED = {"loan.name": 1, "step_up.name": 0}
"""Rows of lists that the scenario leaves short."""


def filled(texts: Iterable[str]) -> dict[str, Any]:
    """The scenario with these texts, one after the other, wherever it takes words, and as a note beside every value."""
    with SCENARIOS[BASE].open("rb") as file:
        farm: dict[str, Any] = tomllib.load(file)
    turn = itertools.cycle(texts)
    for rows in ("ingredient", "recipe", "customer"):
        for row in farm[rows].values():
            row["name"] = next(turn)
    for key in ("name", "place", "prepared_by", "plan_date"):
        farm["farm"][key] = next(turn)
    base, rich, *_ = (row["name"] for row in farm["ingredient"].values())
    farm["supplement"] = {"base": base, "rich": rich}
    farm["mix"]["chosen_recipe"] = farm["recipe"]["house"]["name"]
    notes = (f"{text[:190]} no. {number}." for number, text in enumerate(turn))
    return {key: noted(table, notes) if isinstance(table, dict) else table for key, table in farm.items()}


def noted(table: Mapping[str, Any], notes: Iterator[str]) -> dict[str, Any]:
    """The table with a note at every single value."""
    found: dict[str, Any] = {}
    for key, value in table.items():
        if key == "basis" or isinstance(value, list):
            found[key] = value
        elif isinstance(value, dict) and "value" not in value:
            found[key] = noted(value, notes)
        else:
            found[key] = (value if isinstance(value, dict) else {"value": value}) | {"note": next(notes)}
    return found


def book_of(farm: dict[str, Any], folder: Path) -> ShippedBook:
    """The workbook of a scenario that stands in no file."""
    computed = compute(read(farm, whole_farm(), "words.toml"))
    path = folder / "words.xlsx"
    book, plan = lay_out(computed)
    path.write_bytes(written(computed, book, plan))
    return ShippedBook(computed, plan, path)


@pytest.fixture(scope="module", params=SHIFTS)
def book(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> ShippedBook:
    """The workbook with a text in every place."""
    shift = int(request.param)
    return book_of(filled(TEXTS[shift:] + TEXTS[:shift]), tmp_path_factory.mktemp("words"))


def words_of(book: ShippedBook) -> dict[str, list[str]]:
    """What the scenario says in each of its cells for words, by the name of the input; spare rows are blank."""
    cells = book.computed.scenario.cells
    return {
        cell.name: [str(text) for text in cells[cell].texts.reshape(-1)]
        for cell in cells
        if cell.kind == "text" or cell.name == "mix.chosen_recipe"
    }


def test_every_text_reaches_the_book_and_no_formula(book: ShippedBook, books: Mapping[str, ShippedBook]) -> None:
    written = book.written
    assert written.formulas == books[BASE].written.formulas
    placed = {each.name: each.cells for each in book.placed}
    words = words_of(book)
    assert {"farm.name", "ingredient.name", "recipe.name", "supplement.base", "mix.chosen_recipe"} <= set(words)
    for name, texts in words.items():
        assert [written.values.get(at, "") for at in placed[name]] == texts
        assert "" not in texts[: FILLED.get(name, 3)]
    faults = [*results(written), *repeats(written), *outside(written), *kinds(written, book.placed)]
    assert faults == []


def test_every_note_stands_in_the_book(book: ShippedBook) -> None:
    notes = {note for each in book.computed.scenario.notes.values() for note in each.values()}
    assert {note.rpartition(" no. ")[0] for note in notes} >= {text[:190] for text in TEXTS}
    assert len(notes) > 60
    texts = [value for value in book.written.values.values() if isinstance(value, str)]
    assert [note for note in notes if not any(note in text for text in texts)] == []


def test_what_looks_like_a_formula_stays_text_when_its_cell_is_entered_again(book: ShippedBook) -> None:
    cells = [
        (at, cell)
        for at, cell in book.written.cells()
        if not cell.protection.locked and str(cell.value).startswith(SIGNS) and isinstance(cell.value, str)
    ]
    assert len(cells) > 15
    assert [f"{shown(at)}: {cell.value}" for at, cell in cells if not cell.quotePrefix] == []


def test_an_engine_reads_the_words_too(book: ShippedBook) -> None:
    written = book.written
    repeated = {
        (at[0], shown(at).partition("!")[2]): written.values[at]
        for at in written.formulas
        if written.values[at] in TEXTS
    }
    assert len(set(repeated.values())) >= 8
    with FormualizerBook(book.path) as engine:
        assert engine.read(list(repeated)) == repeated


def test_words_that_are_errors_to_a_spreadsheet_are_refused(tmp_path: Path) -> None:
    with pytest.raises(ScenarioProblems, match="is what spreadsheet programs write for an error; use other words"):
        book_of(filled(ERRORS), tmp_path)


NAMES = ("A & B &P of &N &D =1+1.toml", "&" * 130 + ".toml", "x" * 119 + "&&.toml")


@pytest.mark.parametrize("name", NAMES)
def test_the_name_of_the_scenario_is_no_code_in_the_footer(
    tmp_path: Path, books: Mapping[str, ShippedBook], name: str
) -> None:
    computed = books[BASE].computed
    renamed = replace(computed, scenario=replace(computed.scenario, path=name))
    book, plan = laid_out(SCENARIOS[BASE])
    path = tmp_path / "book.xlsx"
    path.write_bytes(written(renamed, book, replace(plan, stamp=stamp_of(renamed))))
    for root in Written(path).sheets_xml.values():
        footer = root.findtext(f"{MAIN}headerFooter/{MAIN}oddFooter", "")
        assert codes(footer) == ["&L", "&8", "&C", "&8", "&A", "&R", "&8", "&P", "&N"]
        assert footer.replace("&&", "&").startswith(f"&L&8{name[:50]}")


def codes(footer: str) -> list[str]:
    """The codes in a footer; a doubled & is the sign itself."""
    return [found for found in re.findall(r"&&|&.?", footer) if found != "&&"]


PLAIN = [f"plain words {number}" for number in range(20)]
REFUSED = ("\x00", "\x07", "\x1b", "\x7f", "\x85", "\n", "\r", "\t", "\u2028", "\u202e", "\ufffe", "\uffff", "\ud800")
PLACES = (("farm", "name"), ("ingredient", "oat_hulls", "name"), ("bag", "wet_fill", "note"), ("mix", "chosen_recipe"))


@pytest.mark.parametrize("character", REFUSED, ids=lambda character: f"U+{ord(character):04X}")
def test_control_characters_are_refused_with_their_place(character: str) -> None:
    plain = filled(PLAIN)
    for place in PLACES:
        farm = copy.deepcopy(plain)
        put(farm, place, f"a{character}b")
        with pytest.raises(
            ScenarioProblems, match=rf"control character \(U\+{ord(character):04X}, in place 2\)"
        ) as caught:
            read(farm, whole_farm())
        assert f"[{place[0]}" in str(caught.value)
        assert f"{place[-1]} = " in str(caught.value)


def put(farm: dict[str, Any], place: tuple[str, ...], text: str) -> None:
    table = farm
    for key in place[:-1]:
        table = table[key]
    table[place[-1]] = text


def test_a_raw_control_character_in_a_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "bell.toml"
    path.write_bytes(SCENARIOS[BASE].read_bytes().replace(b"Kestrel Hollow", b"Kestrel\x07Hollow"))
    with pytest.raises(FileProblem, match="control character"):
        load(path, whole_farm())


def test_nothing_is_written_when_a_text_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, book = tmp_path / "bell.toml", tmp_path / "bell.xlsx"
    path.write_bytes(SCENARIOS[BASE].read_bytes().replace(b"Kestrel Hollow", rb"Kestrel\u0007Hollow"))
    assert main(["build", str(path), "--out", str(book)]) == 1
    assert not book.exists()
    said = capsys.readouterr().err
    assert "[farm] name" in said
    assert "control character (U+0007" in said
