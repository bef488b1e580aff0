"""The book of the small farm in the plan's calendar: every cell agrees in other programs, before and after edits."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import openpyxl
import pytest

from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Array
from farmbook.layout.book import Book, Shown, Summed, Text, a1
from farmbook.layout.book import Worked as InCell
from farmbook.layout.grid import FIRST_MONTH, MONTHS_A_YEAR, VALUE, YEAR
from farmbook.layout.page import Plan
from farmbook.model.axes import FLUSH, MONTH, WEEK
from farmbook.model.calendar.plan_start import PlanStart
from farmbook.sections.declare import NumberInput
from tests.engines.cells import Book as OpenBook
from tests.engines.cells import Cell, Value, disagreements
from tests.language.books import ENGINES, Worked, address, differences, opened
from tests.plan.model import BUYER, Money, Picked
from tests.plan.model import worked as worked_out
from tests.plan.sheets import TITLE, sheets

YEARS = 3
MONTHS = YEARS * MONTHS_A_YEAR


@cache
def worked(months: int) -> Worked:
    return worked_out(months)


@cache
def laid_out(months: int) -> tuple[Book, Plan]:
    return worked(months).laid_out(sheets(), TITLE)


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("plan") / "book.xlsx"
    worked(MONTHS).written(found, sheets(), TITLE)
    return found


@pytest.fixture(scope="module", params=ENGINES)
def open_book(request: pytest.FixtureRequest, path: Path) -> Iterator[OpenBook]:
    with opened(request.param, path) as book:
        yield book


def expected(values: Mapping[Line, Array]) -> dict[Cell, Value]:
    """What every formula cell should hold, but for opening cells."""
    cells: dict[Cell, Value] = {}
    for sheet in laid_out(MONTHS)[0].sheets:
        for cell in sheet.cells:
            content, at = cell.content, (sheet.name, a1(cell.row, cell.column))
            if isinstance(content, Summed):
                cells[at] = float(sum(values[content.line][(0, *index)] for index in content.shown))
            elif isinstance(content, Shown | InCell) and not (isinstance(content, InCell) and content.opening):
                value = values[content.line][(0, *content.index)]
                cells[at] = value if isinstance(value, str) else float(value)
    return cells


def test_every_cell_agrees_in_other_programs(open_book: OpenBook, path: Path) -> None:
    assert differences(path, open_book) == []


EDITS: dict[str, tuple[NumberInput, tuple[int, ...], float]] = {
    "another first day": (PlanStart.start, (), 46522),
    "a heavier third flush": (Picked.rate, (2,), 40.0),
    "another price of the second buyer": (Money.price, (1,), 3.25),
    "more in the bank": (Money.opening, (), 9000.0),
    "the second loan repaid faster": (Money.repaid, (1,), 600.0),
}


@pytest.mark.parametrize("edit", EDITS)
def test_an_edit_gives_what_a_rerun_gives(edit: str, open_book: OpenBook) -> None:
    declared, index, value = EDITS[edit]
    found = worked(MONTHS)
    cell = found.model.inputs[declared].cell
    numbers = found.cells[cell].numbers.copy()
    before, numbers[(0, *index)] = float(numbers[(0, *index)]), value
    values = found.engine.run({**found.cells, cell: replace(found.cells[cell], numbers=numbers)})
    wanted = expected(values)
    changed = {at for at, was in expected(found.values).items() if wanted[at] != was}
    assert len(changed) > 30
    open_book.set(*address(laid_out(MONTHS)[0].homes[cell], dict(zip(cell.axes, index, strict=True))), value)
    try:
        assert disagreements(wanted, open_book.read(list(wanted))) == []
    finally:
        open_book.set(*address(laid_out(MONTHS)[0].homes[cell], dict(zip(cell.axes, index, strict=True))), before)


@pytest.mark.parametrize("months", [12, 36, 84])
def test_years_are_what_their_months_come_to(months: int) -> None:
    found = worked(months)
    by_year = found["money.sales_in_all"].reshape(-1, MONTHS_A_YEAR)
    np.testing.assert_allclose(found["money.sales_of_year"], by_year.sum(axis=1), rtol=1e-12)
    assert found["money.bank_at_year_end"].tolist() == found["money.bank"][MONTHS_A_YEAR - 1 :: MONTHS_A_YEAR].tolist()
    assert found["plan_years.number"].tolist() == list(range(1, months // MONTHS_A_YEAR + 1))


@pytest.mark.parametrize("months", [12, 36, 84])
def test_a_month_stands_in_one_column_of_all_workings(months: int) -> None:
    book, _ = laid_out(months)
    homes = [home for home in book.homes.values() if MONTH in home.axes and home.sheet in ("Months", "Money")]
    assert len(homes) > 20
    assert {home.column for home in homes} == {FIRST_MONTH}
    widths = {len(sheet.widths) for sheet in book.sheets if sheet.kind == "months"}
    assert widths == {FIRST_MONTH + max(months, MONTHS_A_YEAR)}


def test_lists_beside_months_run_down_and_beside_weeks_across() -> None:
    book, _ = laid_out(MONTHS)
    homes = {of.name: home for of, home in book.homes.items()}
    assert homes["money.sales"].turned == (BUYER,)
    assert homes["money.owed"].turned == ()
    assert homes["picked.by_flush"].turned == (FLUSH,)
    assert homes["money.handed_over"].turned == ()
    assert homes["picked.in_all"].column == homes["picked.by_flush"].column + worked(MONTHS).sizes[FLUSH]
    assert {home.row for home in homes.values() if home.axes[-1:] == (WEEK,)} == {homes["plan_weeks.monday"].row}


def test_each_year_of_months_ends_in_what_its_rows_come_to() -> None:
    sheet = next(sheet for sheet in laid_out(MONTHS)[0].sheets if sheet.name == "Cash")
    whole = [cell.content for cell in sheet.cells if cell.column == YEAR and cell.look.startswith("year")]
    sums = [content for content in whole if isinstance(content, Summed)]
    assert {content.line.name for content in sums} == {
        "money.sales", "money.sales_in_all", "money.paid", "money.change"
    }  # fmt: skip
    assert {(content.first[1], content.last[1]) for content in sums} == {(VALUE, YEAR - 1)}
    levels = [content for content in whole if isinstance(content, Shown)]
    assert {content.line.name for content in levels} == {"money.bank", "money.owed"}
    assert {content.index[-1] % MONTHS_A_YEAR for content in levels} == {MONTHS_A_YEAR - 1}
    assert len(sums) == YEARS * (3 + 3) and len(levels) == YEARS * (1 + 2)
    empty = [content for content in whole if isinstance(content, Text)]
    assert [content.words for content in empty] == [""] * YEARS * 3  # a share, and the heads of two lists


def test_the_lowest_month_of_all_years_is_marked(path: Path) -> None:
    book = openpyxl.load_workbook(path)["Cash"]
    rules = {str(area.sqref): area.rules[0].formula[0] for area in book.conditional_formatting}
    home = next(home for of, home in laid_out(MONTHS)[0].homes.items() if of.name == "money.bank")
    last = a1(home.row, home.column + MONTHS - 1, row_fixed=True, column_fixed=True)
    first = a1(home.row, home.column, row_fixed=True, column_fixed=True)
    marked = [formula for formula in rules.values() if "MIN" in formula]
    assert len(marked) == YEARS
    assert all(formula.endswith(f"=MIN(Money!{first}:{last})") for formula in marked)


def test_heads_stay_on_the_screen(path: Path) -> None:
    book = openpyxl.load_workbook(path)
    assert [book[name].freeze_panes for name in ("Months", "Money", "Weeks", "Cash")] == ["C5", "C5", "C8", "A3"]


def test_weeks_do_not_print_and_months_print_their_first_year(path: Path) -> None:
    book = openpyxl.load_workbook(path)
    assert book["Weeks"].print_area.startswith("'Weeks'!$A$2")
    for name in ("Months", "Money"):
        assert re.fullmatch(rf"'{name}'!\$A\$1:\$P\$\d+", book[name].print_area)
        assert 50 < book[name].page_setup.scale < 90
