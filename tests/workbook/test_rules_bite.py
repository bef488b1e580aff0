"""Each rule is broken on purpose in a small workbook, and must say so; the workbook unbroken passes them all."""

from __future__ import annotations

from pathlib import Path

import pytest
import xlsxwriter

from tests.workbook import lints_cells, lints_charts, lints_file, lints_formulas, lints_front, lints_placed
from tests.workbook.breaks_cells import CELL_BREAKS
from tests.workbook.breaks_charts import CHART_BREAKS
from tests.workbook.breaks_file import FILE_BREAKS, PART_BREAKS, PartBreak
from tests.workbook.breaks_formulas import FORMULA_BREAKS
from tests.workbook.breaks_front import FRONT_BREAKS
from tests.workbook.breaks_placed import PLACED_BREAKS
from tests.workbook.sample import PLACED, Breakage, edited_parts, written
from tests.workbook.written import Written

BREAKS = {**FORMULA_BREAKS, **CELL_BREAKS, **FILE_BREAKS, **FRONT_BREAKS}
IN_PARTS = {**PART_BREAKS, **CHART_BREAKS}
LINTS = (
    *(*lints_formulas.FORMULA_LINTS, *lints_cells.CELL_LINTS),
    *(*lints_file.FILE_LINTS, *lints_charts.CHART_LINTS, *lints_front.FRONT_LINTS),
)


def test_the_sample_keeps_every_rule(tmp_path: Path) -> None:
    book = written(tmp_path / "book.xlsx")
    assert {lint.__name__: list(lint(book)) for lint in LINTS} == {lint.__name__: [] for lint in LINTS}
    assert [fault for lint in lints_placed.PLACED_LINTS for fault in lint(book, PLACED)] == []


def test_every_rule_is_broken_at_least_once() -> None:
    broken = {each.rule for each in (*BREAKS.values(), *PLACED_BREAKS.values())}
    broken |= {each.rule for each in IN_PARTS.values()}
    # The size has tests of its own below: a book too large is slow to make.
    assert broken | {lints_file.size} == {*LINTS, *lints_placed.PLACED_LINTS}


@pytest.mark.parametrize("breakage", BREAKS.values(), ids=BREAKS)
def test_a_broken_book_is_caught(tmp_path: Path, breakage: Breakage) -> None:
    faults = list(breakage.rule(written(tmp_path / "book.xlsx", breakage.change)))
    assert [fault for fault in faults if breakage.says in fault], faults


@pytest.mark.parametrize("breakage", PLACED_BREAKS.values(), ids=PLACED_BREAKS)
def test_a_broken_line_is_caught(tmp_path: Path, breakage: Breakage) -> None:
    faults = list(breakage.rule(written(tmp_path / "book.xlsx", breakage.change), PLACED))
    assert [fault for fault in faults if breakage.says in fault], faults


@pytest.mark.parametrize("breakage", IN_PARTS.values(), ids=IN_PARTS)
def test_a_broken_part_is_caught(tmp_path: Path, breakage: PartBreak) -> None:
    book = edited_parts(written(tmp_path / "whole.xlsx"), tmp_path / "book.xlsx", breakage.changes, breakage.more)
    faults = list(breakage.rule(book))
    assert [fault for fault in faults if breakage.says in fault], faults


def test_a_line_of_two_lists_has_one_formula_a_row_or_a_column() -> None:
    """Where one of its lists runs across here and down elsewhere, no cell may differ from the others of its column."""
    by_column = {(row, column): "abc"[column] for row in range(3) for column in range(3)}
    by_row = {(row, column): text for (column, row), text in by_column.items()}
    assert [[lints_placed.alike(texts, way) for way in (0, 1)] for texts in (by_column, by_row)] == [
        [False, True],
        [True, False],
    ]
    assert not any(lints_placed.alike(by_column | {(1, 1): "x"}, way) for way in (0, 1))
    assert not any(lints_placed.alike({(0, 0): "a", (0, 1): "b"}, way) for way in (0, 1))


def test_size_is_limited(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    book = written(tmp_path / "book.xlsx")
    monkeypatch.setattr(lints_file, "MOST_BYTES", 100)
    monkeypatch.setattr(lints_file, "MOST_FORMULAS", len(book.formulas) - 1)
    bytes_said, formulas_said = lints_file.size(book)
    assert bytes_said == f"{book.path.stat().st_size} bytes"
    assert formulas_said == f"{len(book.formulas)} formulas"


def test_a_formula_as_long_as_may_be_passes(tmp_path: Path) -> None:
    longest = "=MAX(Inputs!B6,Sums!B6,0)*MIN(B11,B12)*ABS(B13)*factor_lb/factor_ft"
    longest += "*B13" * ((lints_formulas.MOST_CHARACTERS - len(longest)) // 4)
    assert len(longest) > lints_formulas.MOST_CHARACTERS - 4
    book = written(tmp_path / "book.xlsx", lambda sample: sample.formula("F20", longest))
    assert list(lints_formulas.long_formulas(book)) == []


def test_a_book_without_formulas_is_no_book(tmp_path: Path) -> None:
    with xlsxwriter.Workbook(tmp_path / "book.xlsx") as workbook:
        workbook.add_worksheet("Start")
    assert list(lints_file.size(Written(tmp_path / "book.xlsx"))) == ["no formula at all"]
