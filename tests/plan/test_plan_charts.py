"""What is drawn of weeks and months: the plan's weeks alone, dates below, the lowest month dark, a card on one side."""

from __future__ import annotations

import re
from functools import cache
from xml.etree import ElementTree as ET

import pytest

from farmbook.layout.flow import scale_to_side
from farmbook.layout.grid import FIRST_MONTH
from farmbook.layout.looks import INK
from farmbook.model.axes import WEEK, WEEKS_AFTER, WEEKS_BEFORE
from farmbook.model.calendar.plan_start import PlanStart
from farmbook.workbook.charts import MOST_DATES, drawn_members
from tests.language.books import Worked
from tests.plan.model import sizes
from tests.plan.model import worked as worked_out
from tests.plan.sheets import TITLE, sheets
from tests.workbook.lints_cells import hidden, named_cells, repeats, results
from tests.workbook.lints_charts import CHART_LINTS
from tests.workbook.lints_file import charts, format_limits, links, outside, printing, recalculation
from tests.workbook.lints_formulas import FORMULA_LINTS
from tests.workbook.lints_placed import PLACED_LINTS, Placed
from tests.workbook.shipped import cells_of, kind_of, sign_of, unit_of
from tests.workbook.written import Written

CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"
DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/main}"
HORIZONS = (12, 24, 36, 48, 60, 72, 84)
RULES = (
    *(hidden, named_cells, repeats, results, charts, format_limits, links, outside, printing, recalculation),
    *(*CHART_LINTS, *FORMULA_LINTS),
)


@cache
def worked(months: int) -> Worked:
    return worked_out(months)


@pytest.fixture(scope="module", params=[12, 36, 84])
def book(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Written:
    path = tmp_path_factory.mktemp("plan") / f"{request.param}.xlsx"
    worked(request.param).written(path, sheets(), TITLE)
    return Written(path)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: str(rule.__name__))
def test_no_rule_is_broken(book: Written, rule: object) -> None:
    assert list(rule(book)) == []  # type: ignore[operator]


@pytest.mark.parametrize("rule", PLACED_LINTS, ids=lambda rule: str(rule.__name__))
def test_no_line_or_input_breaks_a_rule(book: Written, rule: object) -> None:
    _, plan = worked(months_of(book)).laid_out(sheets(), TITLE)
    placed = [
        Placed(of.name, kind_of(of), unit_of(of, plan), cells_of(home), sign_of(of, plan))
        for of, home in plan.homes.items()
    ]
    assert len(placed) > 60
    assert list(rule(book, placed)) == []  # type: ignore[operator]


def drawn(book: Written, words: str) -> ET.Element:
    """The chart that one of these words names a series of."""
    found = [ET.fromstring(part) for name, part in sorted(book.parts.items()) if name.startswith("xl/charts/chart")]
    return next(root for root in found if words in {each.text for each in root.iter(f"{CHART}v")})


def months_of(book: Written) -> int:
    """How many months its plan has."""
    return sum(at[0] == "Months" and at[1] == 4 and at[2] > FIRST_MONTH for at in book.formulas)


def test_weeks_are_drawn_from_the_first_to_the_last_whole_one(book: Written) -> None:
    months = months_of(book)
    areas = [each.text or "" for each in drawn(book, "fourth").iter(f"{CHART}f")]
    rows = {tuple(map(int, re.findall(r"\$(\d+)", area))) for area in areas}
    home = worked(months).laid_out(sheets(), TITLE)[0].homes[worked(months).line("plan_weeks.monday")]
    first = home.row + 1 + WEEKS_BEFORE
    assert rows == {(first, first + sizes(months)[WEEK] - WEEKS_BEFORE - WEEKS_AFTER - 2)}
    assert len(areas) == 4 * 2


@pytest.mark.parametrize("months", HORIZONS)
@pytest.mark.parametrize("day", [46388, 46416, 46507, 46569, 46601, 46661, 46691])
def test_every_week_drawn_begins_within_the_plan(months: int, day: int) -> None:
    """The first of a month is each day of the week among these."""
    found = worked_out(months, {PlanStart.start: day})
    inside = found["plan_weeks.in_plan"]
    chosen = list(drawn_members(WEEK, sizes(months)[WEEK]))
    assert inside[chosen].min() == 1
    assert inside.sum() - len(chosen) in (0, 1)


def test_few_dates_stand_below(book: Written) -> None:
    months = months_of(book)
    for words in ("fourth", "lowest", "van", "Taken"):
        axis = drawn(book, words).find(f".//{CHART}dateAx")
        assert axis is not None
        every, unit = (axis.find(f"{CHART}{what}") for what in ("majorUnit", "majorTimeUnit"))
        assert every is not None and unit is not None and unit.get("val") == "months"
        assert months / float(every.get("val", "0")) <= MOST_DATES + 1
        form = axis.find(f"{CHART}numFmt")
        assert form is not None and form.get("formatCode") == "mmm yy"


def test_the_lowest_month_is_dark_over_the_others(book: Written) -> None:
    chart = drawn(book, "lowest").find(f".//{CHART}barChart")
    assert chart is not None
    first, second = chart.findall(f"{CHART}ser")
    inks = [each.find(f"{CHART}spPr/{DRAWING}solidFill/{DRAWING}srgbClr") for each in (first, second)]
    assert [ink.get("val") for ink in inks if ink is not None][1] == INK.removeprefix("#")
    overlap = chart.find(f"{CHART}overlap")
    assert overlap is not None and overlap.get("val") == "100"
    home = worked(36).laid_out(sheets(), TITLE)[0].homes[worked(36).line("money.lowest_drawn")]
    assert book.book["Money"].cell(home.row + 1, home.column + 1).number_format == '#,##0;-#,##0;""'


def test_loans_are_named_where_they_stand_apart(book: Written) -> None:
    root = drawn(book, "van")
    for series in root.iter(f"{CHART}ser"):
        labels = [each for each in series.iter(f"{CHART}dLbl") if each.find(f"{CHART}delete") is None]
        named = len(series.findall(f".//{CHART}dLbl/{CHART}delete"))
        assert len(labels) <= 1
        assert named == months_of(book) - 1


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_card_stands_on_one_side(paper: str) -> None:
    layout, _ = worked(12).laid_out(sheets(), TITLE)
    card = next(sheet for sheet in layout.sheets if sheet.kind == "card")
    assert 85 <= scale_to_side(card, paper) <= 95
    card.heights.update(dict.fromkeys(range(card.printed_rows), 60))
    assert scale_to_side(card, paper) < 80


def test_a_box_stands_for_each_day() -> None:
    layout, _ = worked(12).laid_out(sheets(), TITLE)
    card = next(sheet for sheet in layout.sheets if sheet.kind == "card")
    boxes = [sum(cell.look == "card_box" for cell in card.cells if cell.row == row) for row in range(card.printed_rows)]
    assert sorted(filter(None, boxes)) == [2, 2, 1 + 7]
