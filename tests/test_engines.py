"""The drivers of the spreadsheet programs, held to results worked out by hand."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

import pytest
import xlsxwriter

from tests.engines import Availability, cells, gnumeric, libreoffice, require
from tests.engines.cells import Book, Cell, Entry, ErrorValue, Value
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook, LibreOfficeError

INPUTS = "Farm & inputs"
RESULTS = "Results"
YIELD, WOOD, START, NOTHING = (INPUTS, "B2"), (INPUTS, "B3"), (INPUTS, "B4"), (INPUTS, "B5")
ENTRIES: dict[Cell, Entry] = {YIELD: 5.5, WOOD: "oak", START: date(2025, 1, 31)}
MONTHS = 24

DOUBLE, NUMBER_OR_0, FILLED, NUMERIC = (RESULTS, "B1"), (RESULTS, "B2"), (RESULTS, "B3"), (RESULTS, "B4")
OAK, MONTH, LABEL, EMPTY_TEXT = (RESULTS, "B5"), (RESULTS, "B6"), (RESULTS, "B7"), (RESULTS, "B8")
LARGE, OVER_NOTHING, ABSENT, NAMED = (RESULTS, "B9"), (RESULTS, "B10"), (RESULTS, "B11"), (RESULTS, "B12")
DAY_AFTER = (RESULTS, "B13")

FORMULAS: dict[Cell, tuple[str, Value]] = {
    DOUBLE: ("='Farm & inputs'!B2*2", 11.0),
    NUMBER_OR_0: ("=IF(ISNUMBER('Farm & inputs'!B2),'Farm & inputs'!B2,0)", 5.5),
    FILLED: ("=('Farm & inputs'!B2<>\"\")*1", 1.0),
    NUMERIC: ("=ISNUMBER('Farm & inputs'!B2)*1", 1.0),
    OAK: ("=IF('Farm & inputs'!B3=\"oak\",1,0)", 1.0),
    MONTH: ("=YEAR('Farm & inputs'!B4)*100+MONTH('Farm & inputs'!B4)", 202501.0),
    LABEL: ("='Farm & inputs'!B3&\" chips\"", "oak chips"),
    EMPTY_TEXT: ('=IF(\'Farm & inputs\'!B2>3,"","low")', ""),
    LARGE: ("='Farm & inputs'!B2>3", 1.0),
    OVER_NOTHING: ("=1/'Farm & inputs'!B5", ErrorValue("#DIV/0!")),
    ABSENT: ("=NA()", ErrorValue("#N/A")),
    DAY_AFTER: ("='Farm & inputs'!B4+1", 45689.0),
    NAMED: ("=bag_yield+'Farm & inputs'!B5", 5.5),
}
EXPECTED: dict[Cell, Value] = {cell: value for cell, (_, value) in FORMULAS.items()}
WRONG: dict[Cell, float | str | bool] = {LABEL: "wrong", EMPTY_TEXT: "wrong", LARGE: False, ABSENT: "#NUM!"}


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A workbook in which the result stored beside every formula is wrong."""
    target = tmp_path_factory.mktemp("engines") / "farm.xlsx"
    with xlsxwriter.Workbook(target) as workbook:
        inputs, results = workbook.add_worksheet(INPUTS), workbook.add_worksheet(RESULTS)
        inputs.write_number("B2", 5.5)
        inputs.write_string("B3", "oak")
        inputs.write_datetime("B4", date(2025, 1, 31), workbook.add_format({"num_format": "d mmm yyyy"}))
        workbook.define_name("bag_yield", "='Farm & inputs'!$B$2")
        for cell, (formula, _) in FORMULAS.items():
            results.write_formula(cell[1], formula, None, WRONG.get(cell, 999))
        months = workbook.add_worksheet("Months")
        months.write_formula("A1", "='Farm & inputs'!B2", None, 999)
        for row in range(2, MONTHS + 1):
            months.write_formula(f"A{row}", f"=A{row - 1}*2-'Farm & inputs'!$B$2", None, 999)
    return target


@pytest.fixture(scope="module", params=["formualizer", "LibreOffice"])
def book(request: pytest.FixtureRequest, path: Path) -> Iterator[Book]:
    """The workbook held open in each program; every test leaves it as it found it."""
    if request.param == "formualizer":
        with FormualizerBook(path) as opened:
            yield opened
    else:
        require(libreoffice.available())
        with LibreOfficeBook(path) as office:
            yield office


@contextmanager
def changed(book: Book, cell: Cell, value: Entry) -> Iterator[None]:
    """Put something else into a cell for a while."""
    book.set(*cell, value)
    try:
        yield
    finally:
        book.set(*cell, ENTRIES.get(cell))


def test_results_are_worked_out_and_not_the_stored_ones(book: Book, path: Path) -> None:
    stored = cells.stored_values(path)
    assert all(stored[cell] != value for cell, value in EXPECTED.items())
    assert book.read(list(EXPECTED)) == EXPECTED


def test_an_edit_reaches_what_depends_on_it_and_is_undone_by_the_old_value(book: Book) -> None:
    with changed(book, YIELD, 2.25):
        after = book.read(list(EXPECTED))
    assert after == EXPECTED | {DOUBLE: 4.5, NUMBER_OR_0: 2.25, EMPTY_TEXT: "low", LARGE: 0.0, NAMED: 2.25}
    assert book.read(list(EXPECTED)) == EXPECTED


def test_a_chain_of_cells_follows_every_one_of_many_edits(book: Book) -> None:
    chain = [("Months", f"A{row}") for row in range(1, MONTHS + 1)]
    for edit in range(1, 40):
        with changed(book, YIELD, edit / 8):
            # A twice of itself less itself stays where it is, however long the chain.
            assert book.read(chain) == dict.fromkeys(chain, edit / 8)


def test_a_cleared_number_is_blank_and_not_zero_or_text(book: Book) -> None:
    with changed(book, YIELD, None):
        after = book.read([YIELD, DOUBLE, NUMBER_OR_0, FILLED, NUMERIC])
    assert after == {YIELD: None, DOUBLE: 0.0, NUMBER_OR_0: 0.0, FILLED: 0.0, NUMERIC: 0.0}


def test_a_zero_is_not_a_blank(book: Book) -> None:
    with changed(book, YIELD, 0.0):
        assert book.read([YIELD, FILLED, NUMERIC]) == {YIELD: 0.0, FILLED: 1.0, NUMERIC: 1.0}


def test_a_cleared_text_leaves_only_the_rest_of_the_label(book: Book) -> None:
    with changed(book, WOOD, None):
        assert book.read([WOOD, OAK, LABEL]) == {WOOD: None, OAK: 0.0, LABEL: " chips"}


def test_a_text_typed_into_a_number_cell_is_an_error_where_it_is_multiplied(book: Book) -> None:
    with changed(book, YIELD, "much"):
        after = book.read([YIELD, DOUBLE, NUMBER_OR_0, FILLED, NUMERIC])
    wrong_kind = ErrorValue("#VALUE!")
    assert after == {YIELD: "much", DOUBLE: wrong_kind, NUMBER_OR_0: 0.0, FILLED: 1.0, NUMERIC: 0.0}


@pytest.mark.parametrize("text", ["7", "=1+1", "#VALUE!", "'oak", " "])
def test_a_text_stays_the_text_it_is(book: Book, text: str) -> None:
    with changed(book, YIELD, text):
        assert book.read([YIELD, NUMERIC, FILLED]) == {YIELD: text, NUMERIC: 0.0, FILLED: 1.0}


def test_a_date_is_a_number_of_days(book: Book) -> None:
    with changed(book, START, date(2026, 12, 1)):
        # 45658 is 1 January 2025; 2025 has 365 days, and 1 December 2026 is the 335th day of its year.
        day = 45658.0 + 365 + 334
        assert book.read([START, DAY_AFTER, MONTH]) == {START: day, DAY_AFTER: day + 1, MONTH: 202612.0}


def test_a_blank_cell_is_read_as_nothing(book: Book) -> None:
    assert book.read([NOTHING, (RESULTS, "Z99")]) == {NOTHING: None, (RESULTS, "Z99"): None}


def test_nothing_asked_for_is_nothing_read(book: Book) -> None:
    assert book.read([]) == {}


def test_an_unknown_sheet_is_refused(book: Book) -> None:
    with pytest.raises(KeyError, match="Nowhere"):
        book.read([("Nowhere", "A1")])
    with pytest.raises(KeyError, match="Nowhere"):
        book.set("Nowhere", "A1", 1.0)


@pytest.mark.parametrize(
    ("entry", "kind", "reason"),
    [
        (True, TypeError, "not a boolean"),
        ("", ValueError, "None clears it"),
        (float("inf"), ValueError, "inf cannot be typed"),
        (date(1900, 2, 28), ValueError, "before March 1900"),
    ],
)
def test_what_no_user_can_type_is_refused(entry: Entry, kind: type[Exception], reason: str) -> None:
    with pytest.raises(kind, match=reason):
        cells.typed(entry)


def test_gnumeric_works_out_a_workbook_with_wrong_stored_results(path: Path) -> None:
    require(gnumeric.available())
    found = gnumeric.recalculate(path)
    assert {cell: found.get(cell) for cell in EXPECTED} == EXPECTED


def test_gnumeric_says_why_it_could_not_open_a_file(tmp_path: Path) -> None:
    require(gnumeric.available())
    with xlsxwriter.Workbook(tmp_path / "whole.xlsx") as workbook:
        workbook.add_worksheet("Months")
    broken = tmp_path / "broken.xlsx"
    cells.wipe(tmp_path / "whole.xlsx", broken)
    broken.write_bytes(broken.read_bytes().replace(b"xl/workbook.xml", b"xl/workbork.xml"))
    with pytest.raises(gnumeric.GnumericError, match="ssconvert"):
        gnumeric.recalculate(broken)


def gone(group: int) -> bool:
    """Whether a process group comes to its end within 30 seconds."""
    deadline = time.monotonic() + 30
    while time.monotonic() < deadline:
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.05)
    return False


def test_closing_ends_libreoffice(path: Path) -> None:
    require(libreoffice.available())
    office = LibreOfficeBook(path)
    os.killpg(office.process_group, 0)  # it is there
    office.close()
    assert gone(office.process_group)
    office.close()
    with pytest.raises(LibreOfficeError, match="closed"):
        office.read([DOUBLE])


def test_libreoffice_that_dies_is_reported(path: Path) -> None:
    require(libreoffice.available())
    with LibreOfficeBook(path) as office:
        os.killpg(office.process_group, signal.SIGKILL)
        with pytest.raises(LibreOfficeError, match="ended by itself"):
            office.read([DOUBLE])


def test_libreoffice_that_hangs_is_reported_and_ended(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    require(libreoffice.available())
    with LibreOfficeBook(path) as office:
        monkeypatch.setattr(libreoffice, "REQUEST_SECONDS", 1.0)
        os.killpg(office.process_group, signal.SIGSTOP)
        with pytest.raises(LibreOfficeError, match="no answer in 1 seconds"):
            office.read([DOUBLE])
        assert gone(office.process_group)


def test_libreoffice_ends_with_a_test_process_that_was_killed(path: Path) -> None:
    require(libreoffice.available())
    program = (
        "import os, sys, pathlib; from tests.engines.libreoffice import LibreOfficeBook;"
        "office = LibreOfficeBook(pathlib.Path(sys.argv[1]));"
        "print(office.process_group, flush=True); os.kill(os.getpid(), 9)"
    )
    command = [sys.executable, "-c", program, str(path)]
    done = subprocess.run(
        command, check=False, cwd=Path(__file__).parent.parent, capture_output=True, text=True, timeout=300
    )
    assert done.returncode == -signal.SIGKILL, done.stderr
    assert gone(int(done.stdout))


def test_wiping_removes_every_kind_of_stored_result_and_nothing_else(path: Path, tmp_path: Path) -> None:
    wiped = tmp_path / "wiped.xlsx"
    formulas = cells.formula_cells(path)
    assert len(formulas) == len(FORMULAS) + MONTHS
    assert cells.wipe(path, wiped) == len(formulas)
    assert cells.formula_cells(wiped) == formulas
    assert cells.stored_values(wiped) == {cell: cells.typed(entry) for cell, entry in ENTRIES.items()}
    assert cells.wipe(wiped, tmp_path / "again.xlsx") == 0


def test_stored_values_are_read_as_they_stand(path: Path) -> None:
    stored = cells.stored_values(path)
    assert stored[DOUBLE] == 999.0
    assert stored[LABEL] == "wrong"
    assert stored[LARGE] == 0.0
    assert stored[ABSENT] == ErrorValue("#NUM!")
    assert NOTHING not in stored


def test_formulas_are_read_with_their_sheet(path: Path) -> None:
    formulas = cells.formula_cells(path)
    assert {cell: formulas[cell] for cell in FORMULAS} == {cell: formula for cell, (formula, _) in FORMULAS.items()}
    assert YIELD not in formulas


def test_rectangles_hold_all_cells_of_a_sheet() -> None:
    assert cells.rectangles([("A", "B7"), ("B", "C3"), ("A", "AA2")]) == {"A": (2, 2, 7, 27), "B": (3, 3, 3, 3)}


def difference(expected: Value | None, found: Value | None) -> list[str]:
    """Compare one cell."""
    return cells.disagreements({("Cash", "B7"): expected}, {("Cash", "B7"): found})


@pytest.mark.parametrize(
    ("expected", "found"),
    [(1e12, 1e12 + 900), (0.0, 9e-10), (-3.0, -3.000000003), (True, 1.0), ("oak", "oak"), ("", "")],
)
def test_equal_enough(expected: Value, found: Value) -> None:
    assert difference(expected, found) == []


@pytest.mark.parametrize(
    ("expected", "found", "message"),
    [
        (1e12, 1e12 + 1100, "Cash!B7: expected 1000000000000.0, found 1000000001100.0"),
        (0.0, 1.1e-9, "Cash!B7: expected 0.0, found 1.1e-09"),
        (5.0, -5.0, "Cash!B7: expected 5.0, found -5.0"),
        (5.0, "5", "Cash!B7: expected 5.0, found the text '5'"),
        ("Oak", "oak", "Cash!B7: expected the text 'Oak', found the text 'oak'"),
        (0.0, "", "Cash!B7: expected 0.0, found the text ''"),
        (0.0, None, "Cash!B7: expected 0.0, found no result"),
        (None, None, "Cash!B7: expected no result, found no result"),
        (float("nan"), float("nan"), "Cash!B7: expected nan, found nan"),
        (float("inf"), float("inf"), "Cash!B7: expected inf, found inf"),
        (5.0, ErrorValue("Err:502"), "Cash!B7: expected 5.0, found the error Err:502"),
        ("#N/A", ErrorValue("#N/A"), "Cash!B7: expected the text '#N/A', found the error #N/A"),
        (ErrorValue("#N/A"), ErrorValue("#N/A"), "Cash!B7: expected the error #N/A, found the error #N/A"),
    ],
)
def test_a_disagreement_names_cell_and_values(expected: Value | None, found: Value | None, message: str) -> None:
    assert difference(expected, found) == [message]


def test_only_expected_cells_are_compared() -> None:
    found: dict[Cell, Value] = {("Cash", "A1"): 1.0, ("Cash", "A2"): 2.0}
    assert cells.disagreements({("Cash", "A1"): 1.0}, found) == []
    assert cells.disagreements({("Cash", "A3"): 1.0}, found) == ["Cash!A3: expected 1.0, found no result"]


def test_a_comparison_of_nothing_does_not_pass() -> None:
    assert cells.disagreements({}, {("Cash", "A1"): 1.0}) == ["there is nothing to compare: no cell was expected"]


def test_the_tolerance_can_be_chosen() -> None:
    expected: dict[Cell, Value] = {("Cash", "A1"): 100.0}
    found: dict[Cell, Value] = {("Cash", "A1"): 101.0}
    assert cells.disagreements(expected, found, relative=0.01) == []
    assert cells.disagreements(expected, found, absolute=1.0) == []
    assert len(cells.disagreements(expected, found, relative=0.005, absolute=0.4)) == 1


def test_an_absent_program_skips_a_test_but_fails_on_continuous_integration(monkeypatch: pytest.MonkeyPatch) -> None:
    absent = Availability(False, "there is no program named abacus")
    monkeypatch.delenv("CI", raising=False)
    require(Availability(True))
    with pytest.raises(pytest.skip.Exception, match="abacus"):
        require(absent)
    monkeypatch.setenv("CI", "true")
    require(Availability(True))
    with pytest.raises(pytest.fail.Exception, match="abacus"):
        require(absent)


def test_absence_is_told_in_words(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    assert libreoffice.available() == (False, "LibreOffice is not installed: there is no program named soffice")
    assert gnumeric.available() == (False, "Gnumeric is not installed: there is no program named ssconvert")
