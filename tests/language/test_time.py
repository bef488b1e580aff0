"""Time in the language: lags and leads, weeks to months, cycles, spare rows; in two engines and beside a twin."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.layout.book import Book
from farmbook.sections.declare import Input
from farmbook.sections.model import Model
from farmbook.units import displayed
from tests.engines.cells import Book as OpenBook
from tests.engines.cells import formula_cells
from tests.language.books import ENGINES, Worked, address, differences, opened, work_out
from tests.language.time_model import BEFORE, WEEK, Timing, Weeks
from tests.language.time_months import NAMES, SECTIONS, SIZES, TASK, Cash
from tests.language.time_sheets import TITLE, sheets
from tests.language.time_twin import Plan, twin
from tests.model.helpers import converted
from tests.workbook.formulas import relative

SYSTEMS = ("metric", "us")


@cache
def farm() -> Model:
    return Model(SECTIONS)


@cache
def worked(system: str) -> Worked:
    return work_out(farm(), system, SIZES, {}, names=NAMES)


def in_metric(found: Worked, name: str) -> Any:
    """A line's values, brought back to the unit in which it is declared."""
    line = found.line(name)
    return converted(found[name], displayed(line.unit, found.system), line.unit)


def agrees_with_twin(found: Worked, plan: Plan) -> None:
    expected = twin(plan)
    assert len(expected) > 12
    for name, values in expected.items():
        rows = np.asarray(values)
        np.testing.assert_allclose(in_metric(found, name)[: len(rows)], rows, rtol=1e-9, atol=1e-9, err_msg=name)


PLANS: Mapping[str, tuple[Mapping[Input, Any], Mapping[str, Any]]] = {
    "as it comes": ({}, {}),
    "whole weeks": (
        {Timing.lead: 14, Timing.spawn_run: 21, Timing.first_pick: 7, Timing.added: (0, 7, 14)},
        {"lead": 14, "spawn_run": 21, "first_pick": 7, "added": (0, 7, 14)},
    ),
    "no time at all": (
        {Timing.lead: 0, Timing.spawn_run: 0, Timing.first_pick: 0, Timing.added: (0, 0, 0.5)},
        {"lead": 0, "spawn_run": 0, "first_pick": 0, "added": (0, 0, 0.5)},
    ),
    "as late as allowed": (
        {Timing.lead: 28, Timing.spawn_run: 28, Timing.first_pick: 14, Timing.added: (14, 14, 14)},
        {"lead": 28, "spawn_run": 28, "first_pick": 14, "added": (14, 14, 14)},
    ),
    "sums that are not quite whole": (
        {Timing.lead: 20.3, Timing.spawn_run: 14.7, Timing.first_pick: 6.3, Timing.added: (0, 0.1, 0.6)},
        {"lead": 20.3, "spawn_run": 14.7, "first_pick": 6.3, "added": (0, 0.1, 0.6)},
    ),
    "a new farm of eleven weeks": (
        {Weeks.filled_before: (0, 0, 0, 0), Weeks.weeks_planned: 11},
        {"filled_before": (0, 0, 0, 0), "weeks_planned": 11},
    ),
    "credit drawn to the limit": ({Cash.price: 2.1}, {"price": 2.1}),
    "credit paid back": ({Cash.price: 12, Cash.opening_credit: 580}, {"price": 12, "opening_credit": 580}),
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", PLANS)
def test_the_lines_agree_with_plain_loops(system: str, name: str) -> None:
    given, changed = PLANS[name]
    found = work_out(farm(), system, SIZES, given, names=NAMES)
    agrees_with_twin(found, Plan(BEFORE, SIZES[WEEK], **changed))


@pytest.mark.parametrize("name", PLANS)
def test_no_bag_is_lost_or_made_on_the_way(name: str) -> None:
    found = work_out(farm(), "metric", SIZES, PLANS[name][0], names=NAMES)
    in_all = found["weeks.filled_in_all"]
    assert in_all > 1000
    np.testing.assert_allclose(found["weeks.at_flush"].sum(axis=1), [in_all] * 3, rtol=1e-12)
    np.testing.assert_allclose(found["weeks.at_any_flush_in_all"], in_all * 3, rtol=1e-12)
    np.testing.assert_allclose(found["weeks.started_in_all"], in_all, rtol=1e-12)
    assert found["weeks.in_process"][-1] == pytest.approx(0, abs=1e-9)


def test_bags_of_an_existing_farm_are_in_process_at_the_start() -> None:
    found = worked("metric")
    assert list(found["weeks.filled"][BEFORE - 5 : BEFORE + 1]) == [0, 70, 0, 95, 110, 120]
    assert found["weeks.in_process"][BEFORE - 1] == pytest.approx(70 + 95 + 110)
    # 24.5 days are three weeks and a half: half of the 70 bags filled in week -3 are picked in week 0, half in week 1
    assert list(found["weeks.at_flush"][0][BEFORE - 1 : BEFORE + 2]) == [35, 35, 47.5]
    assert found.openings[found.line("months.picked_to_end")][0] == pytest.approx(35 * 0.94 * 0.62)


def test_survival_is_the_product_of_what_survives_each_flush() -> None:
    np.testing.assert_allclose(worked("metric")["weeks.alive"], [0.94, 0.94 * 0.97, 0.94 * 0.97 * 0.9], rtol=1e-14)


def test_months_add_up_to_the_weeks() -> None:
    found = worked("metric")
    end, days = 17, 120 - 17 * 7
    weekly = found["weeks.picked"][BEFORE:]
    assert found["months.picked"].sum() == pytest.approx(weekly[:end].sum() + weekly[end] * days / 7)
    np.testing.assert_allclose(found["months.flush_to_end"].sum(axis=0), found["months.picked_to_end"], rtol=1e-12)


def test_the_credit_line_stops_at_its_limit() -> None:
    found = work_out(farm(), "metric", SIZES, {Cash.price: 2.1}, names=NAMES)
    assert found["cash.credit"].tolist() == [600] * 4
    assert (found["cash.missing"] > 0).all()
    paid = work_out(farm(), "metric", SIZES, PLANS["credit paid back"][0], names=NAMES)
    assert paid["cash.credit"].tolist() == [0] * 4


@dataclass(frozen=True)
class Written:
    """A book in a file."""

    path: Path
    book: Book
    worked: Worked


@pytest.fixture(scope="module", params=SYSTEMS)
def written(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Written:
    found = worked(request.param)
    path = tmp_path_factory.mktemp("time") / f"{request.param}.xlsx"
    return Written(path, found.written(path, sheets(), TITLE), found)


@pytest.fixture(scope="module", params=ENGINES)
def open_book(request: pytest.FixtureRequest, written: Written) -> Iterator[OpenBook]:
    with opened(request.param, written.path) as book:
        yield book


def test_the_workbook_is_live_in_other_programs(written: Written, open_book: OpenBook) -> None:
    assert len(formula_cells(written.path)) > 1200
    assert differences(written.path, open_book) == []


def typed(found: Worked, declared: Input, value: float) -> float:
    """A metric value as it is typed into this book."""
    unit = found.model.inputs[declared].cell.unit
    return float(converted(value, unit, displayed(unit, found.system)))


def edited(written: Written, open_book: OpenBook, changes: Mapping[Input, float], *, names: Any = NAMES) -> None:
    """Type single numbers into the workbook and hold every line in it against the engine run on the same numbers."""
    inputs = written.worked.model.inputs
    spots = {declared: address(written.book.homes[inputs[declared].cell]) for declared in changes}
    before = {declared: written.worked.cells[inputs[declared].cell].numbers[0] for declared in changes}
    rerun = work_out(farm(), written.worked.system, SIZES, changes, names=names)
    try:
        for declared, spot in spots.items():
            open_book.set(*spot, typed(written.worked, declared, changes[declared]))
        assert_same(written, open_book, rerun)
    finally:
        for declared, spot in spots.items():
            open_book.set(*spot, float(before[declared]))


def assert_same(written: Written, open_book: OpenBook, rerun: Worked) -> None:
    for line in ("weeks.at_flush", "weeks.started", "weeks.in_process", "months.picked", "cash.closing", "cash.credit"):
        home = written.book.homes[rerun.line(line)]
        expected = rerun[line]
        spots = {index: address(home, dict(zip(home.axes, index, strict=True))) for index in np.ndindex(expected.shape)}
        shown = open_book.read(list(spots.values()))
        for index, spot in spots.items():
            assert shown[spot] == pytest.approx(expected[index], rel=1e-9, abs=1e-9), (line, index)


@pytest.mark.parametrize(
    "changes",
    [
        {Timing.spawn_run: 14.7, Timing.first_pick: 6.3, Timing.lead: 20.3},
        {Timing.spawn_run: 28.0, Timing.first_pick: 14.0, Timing.lead: 28.0},
        {Timing.spawn_run: 0.0, Timing.first_pick: 0.0, Timing.lead: 0.0, Weeks.weeks_planned: 7.0},
        {Cash.opening_cash: -900.0, Cash.credit_limit: 5000.0, Cash.price: 7.5},
    ],
)
def test_an_edit_gives_what_a_rerun_gives(
    written: Written, open_book: OpenBook, changes: Mapping[Input, float]
) -> None:
    edited(written, open_book, changes)


def test_naming_a_spare_row_makes_it_count(written: Written, open_book: OpenBook) -> None:
    third = address(written.book.homes[farm().axes[TASK].names], {TASK: 2})
    rerun = work_out(farm(), written.worked.system, SIZES, {}, names={TASK: ("Mixing", "Picking", "Selling", "")})
    assert rerun["tasks.cost"][2].tolist() == pytest.approx(rerun["tasks.cost"][1].tolist())
    assert rerun["tasks.cost"][2].sum() > 0
    assert worked("metric")["tasks.cost"][2:].sum() == 0
    try:
        open_book.set(*third, "Selling")
        assert_same(written, open_book, rerun)
    finally:
        open_book.set(*third, None)


def test_one_formula_serves_a_whole_row_or_column(written: Written) -> None:
    """Rule 8: what was filled down or across reads alike in every cell of it."""
    texts = {(sheet, cell): formula for (sheet, cell), formula in formula_cells(written.path).items()}
    for line, home in written.book.homes.items():
        if line not in written.worked.roots or not home.axes:
            continue
        rows: dict[int, set[str]] = {}
        columns: dict[int, set[str]] = {}
        for index in np.ndindex(home.counts):
            at = dict(zip(home.axes, index, strict=True))
            row, column = home.place(at)
            seen = relative(texts[address(home, at)], row + 1, column + 1)
            rows.setdefault(row, set()).add(seen)
            columns.setdefault(column, set()).add(seen)
        alike = [all(len(found) == 1 for found in by.values()) for by in (rows, columns)]
        assert alike[home.way(home.axes[-1]) == "down"], line.name


def test_formulas_stay_short(written: Written) -> None:
    long = {cell: text for cell, text in formula_cells(written.path).items() if len(text) > 160}
    assert {text for (sheet, _), text in long.items() if sheet != "Inputs" and sheet != "Tables"} == set()


def test_the_rows_at_the_ends_stay_empty() -> None:
    longest = work_out(farm(), "metric", SIZES, PLANS["as late as allowed"][0], names=NAMES)
    assert longest["weeks.started"][:2].sum() == 0
    assert longest["weeks.at_flush"][:, -2:].sum() == 0
    assert longest["weeks.at_flush"][-1, -3] > 0
