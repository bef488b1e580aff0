"""The book of the small farm on paper: workings and the card on one side each, years uncut, weeks on none."""

from __future__ import annotations

import datetime as dt

import pytest

from farmbook.workbook.write import write_book
from tests.engines import require
from tests.plan.model import worked
from tests.plan.sheets import TITLE, sheets
from tests.workbook.test_printed import RIGHT_MARGIN, Printed, by_sheet, cut_blocks, printed_sides, tools


@pytest.fixture(scope="module", params=["letter", "a4"])
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    require(tools())
    folder = tmp_path_factory.mktemp("printed")
    found = worked(84)
    book, plan = found.laid_out(sheets(), TITLE)
    data = write_book(
        book, plan, found.values, found.openings, found.cells, paper=request.param, created=dt.date(2020, 1, 1)
    )
    (folder / "book.xlsx").write_bytes(data)
    shown = [sheet for sheet in book.sheets if sheet.prints]
    return Printed(request.param, shown, by_sheet(shown, printed_sides(folder)))


def test_workings_and_the_card_take_one_side_each(printed: Printed) -> None:
    taken = {name: len(sides) for name, sides in printed.sides.items()}
    assert (taken["Months"], taken["Money"], taken["Card"]) == (1, 1, 1)
    assert "Weeks" not in taken


def test_months_past_the_first_year_do_not_print(printed: Printed) -> None:
    (side,) = printed.sides["Money"]
    assert side.words[side.words.index("before") :][1:3] == ["Jan", "27"]
    assert "Dec" in side.words
    assert "28" not in side.words


def test_years_are_not_cut(printed: Printed) -> None:
    cut, count = cut_blocks(printed)
    assert cut == []
    assert count > 100
    assert len(printed.sides["Cash"]) == {"letter": 3, "a4": 4}[printed.paper]


def test_nothing_reaches_into_the_right_margin(printed: Printed) -> None:
    assert {
        name for name, sides in printed.sides.items() for side in sides if side.left_free < RIGHT_MARGIN - 1
    } == set()
