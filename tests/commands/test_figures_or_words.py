"""A line that holds a number, or words where there is none: everywhere it is read outside the sheet, and in its cell."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from farmbook import show
from farmbook.errors import ModelFault
from farmbook.explain import explanation
from farmbook.expr.graph import Graph
from farmbook.figures import is_number, recorded, spoken
from farmbook.layout.template import Block, Template
from farmbook.results import Computed
from farmbook.scenario.scenario import Scenario
from farmbook.sections.declare import Input
from farmbook.sections.model import Model
from farmbook.show import as_csv, as_json, headline_text
from farmbook.tables import frames
from tests.language.books import work_out
from tests.language.order_model import LOAN, SECTIONS, SIZES, TITLE, Changes, sheets

NAMES = {LOAN: ("Bank", "Family", "Shop", "", "")}
NAME, EACH, WORDS = "ranked.worth_or_words", "ranked.each_or_words", "no change is worth making"
NONE_WORTH: dict[Input, Any] = {Changes.steamer: -3.5, Changes.spawn: -40, Changes.bags: None, Changes.market: None}


@cache
def model() -> Model:
    return Model(SECTIONS)


def computed(given: dict[Input, Any]) -> Computed:
    """The small farm, worked out as a scenario of its own."""
    worked = work_out(model(), "metric", SIZES, given, names=NAMES)
    rows = {LOAN: ("Bank", "Family", "Shop")}
    scenario = Scenario("ranks.toml", "0", "metric", "USD", "a4", 12, rows, SIZES, worked.cells, {}, ())
    return Computed(scenario, model(), Graph(worked.roots), worked.engine)


def by_name(found: Computed) -> dict[str, list[dict[str, Any]]]:
    rows: dict[str, list[dict[str, Any]]] = {}
    for row in json.loads(as_json(found)):
        rows.setdefault(row["name"], []).append(row)
    return rows


def test_programs_get_a_number_or_words_without_a_unit() -> None:
    number, words = by_name(computed({})), by_name(computed(NONE_WORTH))
    assert [(row["value"], row["unit"]) for row in number[NAME]] == [(310, "USD")]
    assert [(row["value"], row["unit"]) for row in words[NAME]] == [(WORDS, "")]
    assert [(row["value"], row["unit"]) for row in words[EACH]] == [
        (-3.5, "USD"),
        (-40, "USD"),
        ("no further change", ""),
    ]
    assert [row["value"] for row in words["ranked.name_of"]][2] == "none"


def test_a_table_of_text_holds_them_too() -> None:
    rows = [
        row for row in as_csv(computed(NONE_WORTH)).splitlines() if row.startswith(("ranked.worth_or", "ranked.each"))
    ]
    assert rows[0].endswith(f",,{WORDS},")
    assert [row.rpartition("place=")[2] for row in rows[1:]] == [
        "first,-3.5,USD",
        "second,-40.0,USD",
        "third,no further change,",
    ]


def test_frames_hold_no_number_where_there_is_none() -> None:
    found = frames(computed(NONE_WORTH))
    assert math.isnan(found["ranked"].loc["worth_or_words", "value"])
    column = found["ranked.place"]["each_or_words"]
    assert column.dtype == float
    assert [*column[:2], math.isnan(column.iloc[2])] == [-3.5, -40, True]
    assert frames(computed({}))["ranked"].loc["worth_or_words", "value"] == 310


def test_a_reader_is_told_the_figure_with_its_unit_or_the_words_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(show, "headlines", lambda: ([("Most", NAME)], [TITLE], 0))
    number, words = computed({}), computed(NONE_WORTH)
    label = number.line(NAME).label
    assert headline_text(number).splitlines()[-1] == f"Most  {'$310':>12}"
    assert headline_text(words).splitlines()[-1] == f"Most  {WORDS}"
    assert explanation(number, NAME).splitlines()[0] == f"{label}: $310   [{NAME}]"
    assert explanation(words, NAME).splitlines()[0] == f"{label}: {WORDS}   [{NAME}]"
    first, name, how = explanation(words, EACH).splitlines()[:3]
    assert first.startswith("Worth in this place, if there is one: -$4, -$40, no further change for each place")
    assert name.strip() == f"[{EACH}]"
    assert how == '  = Worth in this place if place is at most changes that can be made, otherwise "no further change"'


def test_one_value_is_a_number_or_words() -> None:
    found = computed(NONE_WORTH)
    line = found.line(EACH)
    values = list(found.values[line][0])
    assert [is_number(line, value) for value in values] == [True, True, False]
    assert [spoken(found, line, value) for value in values] == ["-$4", "-$40", "no further change"]
    assert [recorded(line, value) for value in values] == [-3.5, -40, "no further change"]
    assert not line.is_text


@pytest.mark.parametrize(("given", "stored"), [({}, 310), (NONE_WORTH, WORDS)])
def test_the_cell_holds_either_and_has_room_for_the_words(tmp_path: Path, given: dict[Input, Any], stored: Any) -> None:
    """Words wrap in the column of figures, and the row is high enough for them whichever stands there now."""
    path = tmp_path / "book.xlsx"
    work_out(model(), "metric", SIZES, given, names=NAMES).written(path, sheets(), TITLE)
    (sheet, place), *_ = openpyxl.load_workbook(path).defined_names["ranked_worth_or_words"].destinations
    cell = openpyxl.load_workbook(path)[sheet][place.replace("$", "")]
    assert cell.value == f'=IF((ranked_first_worth>0),ranked_first_worth,"{WORDS}")'
    assert openpyxl.load_workbook(path, data_only=True)[sheet][place.replace("$", "")].value == stored
    assert cell.number_format == '"$"#,##0'
    assert cell.alignment.wrap_text
    assert cell.alignment.horizontal == "right"
    assert cell.parent.row_dimensions[cell.row].height > 2 * cell.font.size
    assert not cell.offset(row=-4).alignment.wrap_text


def test_a_figure_or_words_cannot_be_drawn() -> None:
    series = ({"name": "Worth", "line": EACH},)
    chart = Template(
        "chart.toml", "Chart", "Chart", "?", "worked", (Block("chart", "Drawn", axis="place", series=series),)
    )
    with pytest.raises(ModelFault, match=f"`{EACH}` may hold words in place of a number; it cannot be drawn"):
        work_out(model(), "metric", SIZES, {}, names=NAMES).laid_out((*sheets(), chart), TITLE)


def test_keys_that_stand_apart_or_in_another_order_are_refused(tmp_path: Path) -> None:
    """A rank is a row of the block, so a line between the keys, or two changed over, would name the wrong one."""
    worked = work_out(model(), "metric", SIZES, {}, names=NAMES)
    ranks, changes, *others = sheets()
    lines = list(changes.blocks[0].lines)
    first, second = lines.index("changes.steamer_key"), lines.index("changes.spawn_key")
    over, apart = lines.copy(), lines.copy()
    over[first], over[second] = over[second], over[first]
    apart.insert(second, apart.pop(0))
    for order in (over, apart):
        moved = replace(changes, blocks=(replace(changes.blocks[0], lines=tuple(order)),))
        with pytest.raises(ModelFault, match="lines that are ranked do not stand one under another in this order"):
            worked.written(tmp_path / "book.xlsx", (ranks, moved, *others), TITLE)
