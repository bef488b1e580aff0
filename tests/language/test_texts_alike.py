"""Which texts a spreadsheet takes as equal: the fold that farmbook judges names by must join at least those."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from pathlib import Path

import pytest
import xlsxwriter

from farmbook.expr.texts import fold
from tests.engines import gnumeric, libreoffice, require
from tests.engines.cells import Cell, Value
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook

PAIRS = [
    ("\u017f", "s"),
    ("\ufb01", "fi"),
    ("\u03c2", "\u03c3"),
    ("\u0131", "i"),
    ("\u0130", "i\u0307"),
    ("\u00df", "ss"),
    ("\u1e9e", "ss"),
    ("\u00b5", "\u03bc"),
    ("\u212a", "k"),
    ("\u00e9", "e\u0301"),
    ("\u00b2", "2"),
    ("\uff21", "a"),
    ("a\u00a0b", "a b"),
    ("HOUSE", "house"),
]
"""Pairs that one or more of the engines takes as equal, as the test below finds."""
WAYS: list[Callable[[str], str]] = [
    str.lower,
    str.upper,
    str.title,
    str.casefold,
    lambda text: text.upper().lower(),
    lambda text: text.casefold().upper(),
    *(lambda text, form=form: unicodedata.normalize(form, text) for form in ("NFC", "NFD", "NFKC", "NFKD")),
]


def candidates() -> list[tuple[str, str]]:
    """Every letter, digit, mark and sign of the first two planes beside its other cases and its other forms."""
    letters = [chr(code) for code in range(0x80, 0x20000) if unicodedata.category(chr(code))[0] in "LNMSP"]
    pairs = {(letter, way(letter)): None for letter in letters for way in WAYS}
    return [*PAIRS, *(pair for pair in pairs if pair[0] != pair[1])]


def written(path: Path, pairs: list[tuple[str, str]]) -> list[Cell]:
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("Pairs")
        for row, pair in enumerate(pairs):
            for column, text in enumerate(pair):
                sheet.write_string(row, column, text)
            sheet.write_formula(row, 2, f"=IF(A{row + 1}=B{row + 1},1,0)")
    return [("Pairs", f"C{row + 1}") for row in range(len(pairs))]


def in_formualizer(path: Path, cells: list[Cell]) -> dict[Cell, Value | None]:
    with FormualizerBook(path) as book:
        return book.read(cells)


def in_libreoffice(path: Path, cells: list[Cell]) -> dict[Cell, Value | None]:
    require(libreoffice.available())
    with LibreOfficeBook(path) as book:
        return book.read(cells)


def in_gnumeric(path: Path, _cells: list[Cell]) -> dict[Cell, Value | None]:
    require(gnumeric.available())
    return dict(gnumeric.recalculate(path))


@pytest.mark.parametrize(("engine", "least"), [(in_formualizer, 1), (in_libreoffice, 2000), (in_gnumeric, 2000)])
def test_what_an_engine_takes_as_equal_is_one_text_to_the_fold(
    tmp_path: Path, engine: Callable[[Path, list[Cell]], dict[Cell, Value | None]], least: int
) -> None:
    pairs = candidates()
    book = tmp_path / "pairs.xlsx"
    cells = written(book, pairs)
    found = engine(book, cells)
    equal = [pair for pair, cell in zip(pairs, cells, strict=True) if found[cell] == 1]
    assert len(equal) >= least
    assert [pair for pair in equal if fold(pair[0]) != fold(pair[1])] == []


@pytest.mark.parametrize("pair", PAIRS)
def test_alike(pair: tuple[str, str]) -> None:
    assert fold(pair[0]) == fold(pair[1])


@pytest.mark.parametrize(("left", "right"), [("e", "\u00e9"), ("o", "\u00f8"), ("ae", "\u00e6"), ("rye", "rie")])
def test_not_alike(left: str, right: str) -> None:
    assert fold(left) != fold(right)


def test_folding_twice_changes_nothing() -> None:
    letters = [chr(code) for code in range(0x110000) if not 0xD800 <= code < 0xE000]
    assert [letter for letter in letters if fold(fold(letter)) != fold(letter)] == []
