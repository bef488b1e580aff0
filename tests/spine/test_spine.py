"""A model of the size to come holds what the farm's own holds: twin, cases, live edits in two programs, size of the file."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.numbers import Cells
from farmbook.layout.book import Worked as InCell
from farmbook.layout.book import a1
from farmbook.layout.grid import PRINTED
from farmbook.sections.declare import NumberInput
from tests.engines.cells import Book as OpenBook
from tests.engines.cells import Cell, Value, disagreements
from tests.language.books import ENGINES, Worked, address, differences, opened, work_out
from tests.language.time_model import FLUSH, Timing
from tests.spine import twin
from tests.spine.farm import NAMES, TITLE, Sizes, Spine, spine
from tests.spine.months import CHANNEL, Cash, Channels
from tests.spine.weeks import WEEK, Weeks

HORIZONS = (12, 36, 84)


@cache
def made(months: int) -> Spine:
    return spine(months)


@cache
def worked(months: int) -> Worked:
    farm = made(months)
    return work_out(farm.model, "metric", farm.sizes, {}, names=NAMES, further=farm.further)


def case_line(months: int, case: str, declared: Any) -> np.ndarray[Any, Any]:
    farm = made(months)
    line = next(each for each in farm.cases if each.name == case).line(declared)
    return worked(months).values[line][0, ...]


CASES: Mapping[str, twin.Farm] = {
    "price": twin.Farm(price_kept=0.9),
    "weight": twin.Farm(weight_kept=0.9),
    "loss": twin.Farm(loss_added=0.04),
    "pay": twin.Farm(pay_kept=1.1),
    "materials": twin.Farm(materials_kept=1.1),
    "rate": twin.Farm(rate_added=0.003),
    "later": twin.Farm(paid_later=0.3),
    "customer": twin.Farm(customer_kept=0.5),
    "stopped": twin.Farm(stopped=6),
    "slower": twin.Farm(slower=0.2),
}


@pytest.mark.parametrize("months", HORIZONS)
def test_the_plan_agrees_with_plain_loops(months: int) -> None:
    found, expected = worked(months), twin.months(twin.Farm(), months, made(months).sizes[WEEK])
    for name in ("closing", "credit", "profit"):
        np.testing.assert_allclose(found[f"cash.{name}"], expected[name], rtol=1e-9, atol=1e-7, err_msg=name)
    assert found["weeks.spoiled"].max() > 0
    assert found["weeks.short"].max() > 0


@pytest.mark.parametrize("case", CASES)
def test_every_case_agrees_with_plain_loops(case: str) -> None:
    expected = twin.months(CASES[case], 36, made(36).sizes[WEEK])
    np.testing.assert_allclose(case_line(36, case, Cash.closing), expected["closing"], rtol=1e-9, atol=1e-7)
    np.testing.assert_allclose(case_line(36, case, Cash.profit), expected["profit"], rtol=1e-9, atol=1e-7)


def test_credit_is_drawn_and_paid_back() -> None:
    poor = work_out(made(36).model, "metric", made(36).sizes, {Cash.opening_cash: 0}, names=NAMES)
    assert poor["cash.credit"].max() > 0
    assert poor["cash.credit"][-1] == 0


def test_cases_make_only_what_their_shocks_reach() -> None:
    farm = made(36)
    lines = {case.name: len(case.lines) for case in farm.cases}
    assert lines["rate"] < 40 < lines["slower"] < len(farm.model.lines) / 2
    assert set(lines) == set(CASES)


def test_what_costs_most_stands_first() -> None:
    found = worked(36)
    costs = {line.label: float(found.values[line][0]) for line in made(36).compared[:10]}
    named = [str(found.values[line][0]) for line in made(36).compared if line.is_text]
    assert named == sorted(costs, key=lambda label: -costs[label])[:3]


# The workbook


@cache
def written(months: int, folder: Path) -> Path:
    path = folder / f"{months}.xlsx"
    worked(months).written(path, made(months).sheets(), TITLE)
    return path


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("spine")


@pytest.mark.parametrize(("months", "formulas", "megabytes"), [(36, (55_000, 62_000), 4), (84, (110_000, 130_000), 8)])
def test_the_book_is_of_the_size_to_come(
    months: int, formulas: tuple[int, int], megabytes: float, folder: Path
) -> None:
    path = written(months, folder)
    with zipfile.ZipFile(path) as archive:
        sheets = [archive.read(name) for name in archive.namelist() if name.startswith("xl/worksheets/sheet")]
    assert formulas[0] < sum(sheet.count(b"<f>") for sheet in sheets) < formulas[1]
    assert path.stat().st_size < megabytes * 1e6


def test_two_things_in_one_cell_are_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    """Eight tasks across reach into the columns where the margin of a narrow table begins."""
    monkeypatch.setattr("farmbook.layout.input_tables._margin", lambda end: PRINTED)
    with pytest.raises(ModelFault, match=r"2 things stand in row \d+, column \d+"):
        worked(36).laid_out(made(36).sheets(), TITLE)


@pytest.fixture(scope="module", params=ENGINES)
def open_book(request: pytest.FixtureRequest, folder: Path) -> Iterator[OpenBook]:
    with opened(request.param, written(36, folder)) as book:
        yield book


def test_every_cell_agrees_in_other_programs(open_book: OpenBook, folder: Path) -> None:
    assert differences(written(36, folder), open_book) == []


EDITS: Mapping[str, tuple[NumberInput, tuple[int, ...], float]] = {
    "lead": (Timing.lead, (), 20.3),
    "days to the first pick": (Timing.first_pick, (), 12.4),
    "weeks of ramp": (Weeks.ramp, (), 1),
    "weight of the second flush": (Weeks.fresh, (1,), 0.55),
    "turn of the first channel": (Channels.order, (0,), 9),
    "weight the fifth channel takes": (Channels.takes, (4,), 20),
    "cash at the start": (Cash.opening_cash, (), -900),
    "taken home": (Cash.taken_home, (), 3600),
    "size of a case": (Sizes.price, (), 0.02),
    "weeks of another case": (Sizes.stopped, (), 13),
}


@pytest.mark.parametrize("edit", EDITS)
def test_an_edit_gives_what_a_rerun_gives(edit: str, open_book: OpenBook) -> None:
    declared, index, value = EDITS[edit]
    found = worked(36)
    cell = found.model.inputs[declared].cell
    home = written_homes()[cell]
    spot = address(home, dict(zip(cell.axes, index, strict=True)))
    before = float(found.cells[cell].numbers[(0, *index)])
    expected = _expected({cell: _edited(found.cells[cell], index, value)})
    open_book.set(*spot, value)
    try:
        assert len(expected) > 300
        assert disagreements(expected, open_book.read(list(expected))) == []
    finally:
        open_book.set(*spot, before)


@cache
def written_homes() -> Any:
    return worked(36).laid_out(made(36).sheets(), TITLE)[0].homes


@cache
def places() -> Mapping[Line, list[tuple[Cell, tuple[int, ...]]]]:
    """Every cell of every line but the opening ones."""
    book, _ = worked(36).laid_out(made(36).sheets(), TITLE)
    found: dict[Line, list[tuple[Cell, tuple[int, ...]]]] = {}
    for sheet in book.sheets:
        for cell in sheet.cells:
            if isinstance(cell.content, InCell) and not cell.content.opening:
                at = (sheet.name, a1(cell.row, cell.column))
                found.setdefault(cell.content.line, []).append((at, cell.content.index))
    return found


def _edited(cells: Cells, index: tuple[int, ...], value: float) -> Cells:
    numbers = cells.numbers.copy()
    numbers[(0, *index)] = value
    return replace(cells, numbers=numbers)


def _expected(changes: Mapping[RawInput, Cells]) -> dict[Cell, Value]:
    """What every cell that a change reaches should hold."""
    engine = worked(36).engine
    values = engine.what_if(_base(), changes)
    found: dict[Cell, Value] = {}
    for line in engine.graph.reached(changes):
        result = values[line]
        for place, index in places().get(line, ()):
            value = result[(0, *index)]
            found[place] = str(value) if isinstance(value, str) else float(value)
    return found


@cache
def _base() -> Any:
    return worked(36).engine.run(worked(36).cells)


@pytest.mark.parametrize("months", [12, 84])
@pytest.mark.parametrize("declared", [Timing.spawn_run, Cash.least, Sizes.rate, Weeks.orders])
def test_a_what_if_is_a_run_to_the_last_bit(declared: NumberInput, months: int) -> None:
    found = worked(months)
    cell = found.model.inputs[declared].cell
    changes = {cell: _edited(found.cells[cell], (), float(found.cells[cell].numbers[0]) * 1.25)}
    before = found.engine.run(found.cells)
    partly, whole = found.engine.what_if(before, changes), found.engine.run({**found.cells, **changes})
    for line in found.roots:
        assert np.array_equal(partly[line], whole[line]), line.name


def test_many_draws_are_many_runs() -> None:
    found = worked(12)
    cell, prices = found.model.inputs[Cash.least].cell, found.model.inputs[Channels.price].cell
    wanted = [found.model.line(Cash.profit_a_year), found.model.line(Cash.closing)]
    least = np.array([0.0, 700.0, 2500.0])
    rises = np.stack([found.cells[prices].numbers[0] * part for part in (0.5, 1.0, 1.3)])
    drawn = {
        **found.cells,
        cell: Cells(least, np.full(3, "", dtype=object)),
        prices: Cells(rises, np.full(rises.shape, "", dtype=object)),
    }
    many = found.engine.run_in_chunks(drawn, wanted, most=2)
    for place in range(3):
        one = found.engine.run(
            {
                **found.cells,
                cell: _edited(found.cells[cell], (), least[place]),
                prices: Cells(rises[place : place + 1], drawn[prices].texts[:1]),
            }
        )
        for line in wanted:
            np.testing.assert_allclose(many[line][place], one[line][0], rtol=1e-12)


def test_the_lists_are_as_long_as_the_horizon_says() -> None:
    for months in HORIZONS:
        assert worked(months)["cash.closing"].shape == (months,)
        assert worked(months)["weeks.at_flush"].shape == (made(months).sizes[FLUSH], made(months).sizes[WEEK])
        assert worked(months)["channels.sold"].shape == (made(months).sizes[CHANNEL], months)
