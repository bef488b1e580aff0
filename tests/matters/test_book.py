"""The table in the book: fixed figures, those of the command; a live sentence that knows whether it still holds."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.layout.book import Figure, Sheet, Text, a1
from farmbook.layout.place import place
from farmbook.layout.swings import NOTHING_LEFT, LeftOut
from farmbook.layout.template import Block, fitting, shipped_templates
from farmbook.matters import swings
from farmbook.model.crop.crop import Crop
from farmbook.model.selling.customers import Customers
from farmbook.output import build_bytes
from farmbook.sections.declare import Input
from tests.engines.formualizer_engine import FormualizerBook
from tests.made import laid_out, workbook_of
from tests.matters.farms import SCENARIOS, farm, known_as
from tests.workbook.shipped import ShippedBook
from tests.workbook.written import Written

SHEET = "Measure"
HOLDS = "No input was changed since the book was made: the table holds."
RANK, NAME, VALUE, LOW, HIGH, AT_LOW, AT_HIGH, KNOWN = 1, 2, 3, 5, 6, 7, 8, 9
"""Columns, counted from 1."""
WRITTEN = 1e-14
"""A file keeps sixteen figures of a number."""


def ranked(book: Written) -> Iterator[tuple[int, int]]:
    """Each rank in the first column, and its row."""
    for at, value in book.values.items():
        if at[0] == SHEET and at[2] == RANK and str(value).isdigit() and (SHEET, at[1], AT_LOW) in book.values:
            yield int(str(value)), at[1]


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_figures_are_those_of_the_command(
    name: str, books: Mapping[str, ShippedBook], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["matters", str(SCENARIOS[name]), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    book = books[name].written
    rows = sorted(ranked(book))
    assert [rank for rank, _ in rows] == list(range(1, 31))
    for rank, row in rows:
        one = told[rank - 1]
        found = [book.values[SHEET, row, column] for column in (NAME, VALUE, LOW, HIGH, AT_LOW, AT_HIGH)]
        keys = ("label", "value", "usual_low", "usual_high", "profit_at_low", "profit_at_high")
        assert found[0] == one["label"]
        assert found[1:] == pytest.approx([one[key] for key in keys[1:]], rel=WRITTEN)
        assert str(book.values[SHEET, row, KNOWN]).startswith(one["basis"])
        assert book.values[SHEET, row + 1, NAME] == one["how"]


@pytest.mark.parametrize("name", SCENARIOS)
def test_what_rests_on_guesses_is_all_their_worse_ends_and_that_of_a_years_profit(
    name: str, books: Mapping[str, ShippedBook], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["matters", str(SCENARIOS[name]), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    lost = sum(min(one["profit_at_low"], one["profit_at_high"], 0) for one in told)
    book = books[name].written
    words = f"All {len(told)} figures that nobody measured or quoted"
    (row,) = (at[1] for at, value in book.values.items() if at[0] == SHEET and str(value).startswith(words))
    profit = float(books[name].computed.values[books[name].computed.line("year.profit")].reshape(-1)[0])
    assert profit > 0
    assert lost < 0
    assert book.values[SHEET, row, AT_LOW] == pytest.approx(lost, rel=1e-9)
    assert book.values[SHEET, row, AT_HIGH] == pytest.approx(-lost / profit, rel=1e-9)


@pytest.mark.parametrize("name", SCENARIOS)
def test_they_are_fixed_and_stamped_with_the_scenario(name: str, books: Mapping[str, ShippedBook]) -> None:
    book = books[name].written
    fixed = [at for at in book.values if at[0] == SHEET and at[2] in (AT_LOW, AT_HIGH) and at[1] > 4]
    assert len(fixed) >= 60
    assert not set(fixed) & set(book.formulas)
    stamps = [str(value) for at, value in book.values.items() if at[0] == SHEET and "fingerprint" in str(value)]
    digest = books[name].computed.scenario.digest
    assert stamps == [f"Worked out when the book was made, from {name}.toml (fingerprint {digest})."] * 2


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_chart_draws_the_first_ten_on_both_sides_of_zero(name: str, books: Mapping[str, ShippedBook]) -> None:
    (chart,) = _sheet(name).swing_charts
    book, rows = books[name].written, swings(farm(name)).rows[: chart.count]
    drawn = [[book.values[SHEET, chart.figures + 1 + at, column] for column in (2, 3, 4)] for at in range(chart.count)]
    assert [name for name, *_ in drawn] == [one.name for one in rows]
    for (_, *figures), one in zip(drawn, rows, strict=True):
        assert figures == pytest.approx([one.loss, one.gain], rel=WRITTEN)
    assert chart.count == 10
    assert chart.least < min(one.loss for one in rows) <= 0 <= max(one.gain for one in rows) < chart.most


def _sheet(name: str) -> Sheet:
    book, _ = laid_out(SCENARIOS[name])
    return next(sheet for sheet in book.sheets if sheet.name == SHEET)


def test_it_says_how_many_were_swung_and_why_others_were_not(books: Mapping[str, ShippedBook]) -> None:
    book, found = books["kestrel_hollow"].written, swings(farm())
    said = {
        str(value): book.values.get((at[0], at[1], VALUE))
        for at, value in book.values.items()
        if at[0] == SHEET and at[2] == NAME
    }
    assert said["Swung over their usual range"] == len(found.rows)
    assert {why: said[why.label] for why in LeftOut} == found.left_out


def test_the_sentence_turns_when_something_is_typed(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(workbook_of(SCENARIOS["kestrel_hollow"]))
    book, _ = laid_out(SCENARIOS["kestrel_hollow"])
    sheet, row, column = book.names["report_matters_holds"]
    holds = (sheet, a1(row, column))
    shrink, fee = (book.homes[farm().model.inputs[each].cell] for each in (Crop.shrink, Customers.fee))
    with FormualizerBook(path) as opened:

        def said() -> object:
            return opened.read([holds])[holds]

        assert said() == HOLDS
        opened.set(shrink.sheet, a1(shrink.row, shrink.column), 0.05)
        assert said() == "1 input was changed since: make the book anew for a new table."
        opened.set(fee.sheet, a1(fee.row, fee.column), 0.05)
        assert said() == "2 inputs were changed since: make the book anew for a new table."
        answer = (SHEET, "A3")
        assert str(opened.read([answer])[answer]).endswith(str(said()))
        opened.set(shrink.sheet, a1(shrink.row, shrink.column), as_built(Crop.shrink))
        opened.set(fee.sheet, a1(fee.row, fee.column), as_built(Customers.fee))
        assert said() == HOLDS


def as_built(declared: Input) -> float:
    return float(farm().scenario.cells[farm().model.inputs[declared].cell].numbers.reshape(-1)[0])


def test_the_first_few_may_stand_on_another_sheet() -> None:
    _, plan = laid_out(SCENARIOS["kestrel_hollow"])
    fresh = replace(plan, homes={}, names={}, constants={}, labels={})
    block = Block("matters", "Measure these five next, {unit}", first=5)
    start, *others = fitting(shipped_templates(), [])
    templates = [replace(start, blocks=(*start.blocks, block)), *others]
    book = place(fresh, templates, title_line="report.farm_title", verdict_line="report.verdict")
    cells = {(cell.row, cell.column): cell.content for cell in book.sheets[0].cells}
    heading = next(at for at, content in cells.items() if isinstance(content, Text) and "these five" in content.words)
    for rank, one in enumerate(swings(farm()).rows[:5]):
        row = heading[0] + 2 + 2 * rank
        assert cells[row, 0] == Text(str(rank + 1))
        assert cells[row, 1] == Text(one.name)
        assert [cells[row, column] for column in (2, 4, 5, 6, 7)] == [
            Figure(value) for value in (one.value, one.low, one.high, one.at_low, one.at_high)
        ]
        assert cells[row + 1, 1] == Text(one.bound.declared.how)
    assert cells[heading[0] + 2 + 10, 1] != Text("6")


def test_where_nothing_is_left_words_stand_in_place_of_the_table(tmp_path: Path) -> None:
    known = known_as(farm(), "measured")
    path = tmp_path / "book.xlsx"
    path.write_bytes(build_bytes(known))
    book = Written(path)
    words = [str(value) for at, value in book.values.items() if at[0] == SHEET]
    assert words.count(NOTHING_LEFT) == 1
    assert list(ranked(book)) == []
    assert not any(re.search("fingerprint|Figures of the chart|less \\(left\\)", each) for each in words)


def test_two_tables_of_one_farm_are_the_same() -> None:
    assert swings(farm()) == swings(farm())
