"""Whatever a person writes into a scenario, the book shows it as those words and never as a formula."""

from __future__ import annotations

import copy
import re
import tomllib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from farmbook.cli import main
from farmbook.errors import FileProblem, ScenarioProblems
from farmbook.output import build_bytes
from farmbook.results import compute, whole_farm
from farmbook.scenario.load import load, read
from tests.engines.formualizer_engine import FormualizerBook
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
    "#REF!",
    "TRUE",
    "1e5",
    "2026-03-01",
    "'=1+1",
    "&P &[File] &&",
    "http://example.invalid/=1",
    "蘑菇 \u03a9 \U0001f344 e\u0301",
    "=" + "x" * 199,
)
COUNTER = " no. "


def filled(text: str) -> dict[str, Any]:
    """The scenario with this text in every place that takes words, and as a note beside every value."""
    with SCENARIOS[BASE].open("rb") as file:
        farm: dict[str, Any] = tomllib.load(file)
    for table in farm:
        if isinstance(farm[table], dict):
            farm[table] = noted(farm[table], text)
    for key in ("name", "place", "prepared_by", "plan_date"):
        farm["farm"][key] = text
    for table in ("ingredient", "recipe"):
        for number, row in enumerate(farm[table].values()):
            row["name"] = numbered(text, number)
    farm["mix"]["chosen_recipe"] = numbered(text, 0)
    farm["supplement"] = {"base": numbered(text, 0), "rich": numbered(text, 1)}
    return farm


def noted(table: Mapping[str, Any], text: str) -> dict[str, Any]:
    """The table with a note at every single value."""
    found: dict[str, Any] = {}
    for key, value in table.items():
        if key in ("basis", "name") or isinstance(value, list):
            found[key] = value
        elif isinstance(value, dict) and "value" not in value:
            found[key] = noted(value, text)
        else:
            found[key] = (value if isinstance(value, dict) else {"value": value}) | {"note": text}
    return found


def numbered(text: str, number: int) -> str:
    """Names in one list differ; the first is the text itself."""
    return text if number == 0 else f"{text[:190]}{COUNTER}{number}"


def book_of(farm: dict[str, Any], folder: Path) -> ShippedBook:
    """The workbook of a scenario that stands in no file."""
    computed = compute(read(farm, whole_farm(), "words.toml"))
    path = folder / "words.xlsx"
    path.write_bytes(build_bytes(computed))
    return ShippedBook(computed, path)


@pytest.fixture(scope="module")
def worded(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], ShippedBook]:
    """The workbook with a text in every place, built once for each text."""
    return cache(lambda text: book_of(filled(text), tmp_path_factory.mktemp("words")))


Worded = Callable[[str], ShippedBook]


@pytest.mark.parametrize("text", TEXTS)
def test_text_stays_text(worded: Worded, books: Mapping[str, ShippedBook], text: str) -> None:
    book = worded(text)
    written = book.written
    assert written.formulas == books[BASE].written.formulas
    words = [each for each in book.placed if each.kind == "text"]
    assert {each.name for each in words} >= {"farm.name", "farm.place", "recipe.ingredients", "supplement.base"}
    for each in words:
        assert written.values[each.cells[0]] == numbered(text, int(each.name == "supplement.rich"))
    notes = [value for value in written.values.values() if isinstance(value, str) and text in value]
    assert len(notes) > 40
    faults = [*results(written), *repeats(written), *outside(written), *kinds(written, book.placed)]
    assert faults == []


@pytest.mark.parametrize("text", TEXTS[:5])
def test_text_that_looks_like_a_formula_stays_text_when_its_cell_is_entered_again(worded: Worded, text: str) -> None:
    book = worded(text).written
    cells = [
        (at, cell)
        for at, cell in book.cells()
        if not cell.protection.locked and str(cell.value)[:1] in ("=", "+", "-", "@")
    ]
    assert (len(cells) > 40) == (text[:1] in ("=", "+", "-", "@"))
    assert [f"{shown(at)}: {cell.value}" for at, cell in cells if not cell.quotePrefix] == []


@pytest.mark.parametrize("text", TEXTS[:4])
def test_an_engine_reads_the_words_too(worded: Worded, text: str) -> None:
    book = worded(text)
    repeated = [at for at, cell in book.written.formulas.items() if book.written.values[at] == text]
    assert len(repeated) > 5
    cells = [(at[0], shown(at).partition("!")[2]) for at in repeated]
    with FormualizerBook(book.path) as engine:
        assert set(engine.read(cells).values()) == {text}


NAMES = ("plain.toml", "A & B.toml", "&P of &N &D.toml", "&" * 130 + ".toml", "x" * 119 + "&&.toml", "=1+1.toml")


@pytest.mark.parametrize("name", NAMES)
def test_the_name_of_the_scenario_is_no_code_in_the_footer(
    tmp_path: Path, books: Mapping[str, ShippedBook], name: str
) -> None:
    computed = books[BASE].computed
    path = tmp_path / "book.xlsx"
    path.write_bytes(build_bytes(replace(computed, scenario=replace(computed.scenario, path=name))))
    for root in Written(path).sheets_xml.values():
        footer = root.findtext(f"{MAIN}headerFooter/{MAIN}oddFooter", "")
        assert codes(footer) == ["&L", "&8", "&C", "&8", "&A", "&R", "&8", "&P", "&N"]
        assert footer.replace("&&", "&").startswith(f"&L&8{name[:50]}")


def codes(footer: str) -> list[str]:
    """The codes in a footer; a doubled & is the sign itself."""
    return [found for found in re.findall(r"&&|&.?", footer) if found != "&&"]


REFUSED = ("\x00", "\x07", "\x1b", "\x7f", "\x85", "\n", "\r", "\t", "\u2028", "\u202e", "\ufffe", "\uffff", "\ud800")
PLACES = (("farm", "name"), ("ingredient", "oat_hulls", "name"), ("bag", "wet_fill", "note"), ("mix", "chosen_recipe"))


@pytest.mark.parametrize("character", REFUSED, ids=lambda character: f"U+{ord(character):04X}")
def test_control_characters_are_refused_with_their_place(character: str) -> None:
    for place in PLACES:
        farm = copy.deepcopy(filled("plain"))
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


def strings(value: object) -> Iterator[str]:
    """Every text in a nested mapping."""
    if isinstance(value, dict):
        for inside in value.values():
            yield from strings(inside)
    elif isinstance(value, str):
        yield value


def test_the_texts_reach_every_place_that_takes_words() -> None:
    text = "places of words"
    scenario = read(filled(text), whole_farm())
    words = {cell.name for cell in scenario.cells if cell.kind == "text"}
    reached = {
        cell.name
        for cell, cells in scenario.cells.items()
        if any(text in str(each) for each in cells.texts.reshape(-1))
    }
    assert words <= reached
    assert "mix.chosen_recipe" not in words
    assert sum(text in each for each in strings(filled(text))) > 60
