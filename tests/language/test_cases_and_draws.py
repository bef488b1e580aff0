"""Cases made of shocks, many draws at once, and the order in which lines of a cycle are worked out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.functions import previous, starting
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Constant, Expr, Line, Named, RawInput, wrap
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.numbers import Cells, Engine
from farmbook.sections.declare import Input, LineOf, line, shock
from farmbook.sections.model import Case, Model
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.engines.cells import formula_cells
from tests.language.books import ENGINES, Worked, address, cells_of, differences, opened, work_out
from tests.language.time_model import EARLIER, WEEK, Timing, Weeks
from tests.language.time_months import MONTH, NAMES, SECTIONS, SIZES, TASK, Cash, Tasks
from tests.language.time_sheets import TITLE, sheets

RESULTS: Sequence[LineOf] = (Cash.closing, Cash.credit)


@cache
def base() -> Model:
    return Model(SECTIONS)


@cache
def cheap() -> Case:
    """Mushrooms sell for less; how much less is typed in."""
    drop = base().section(Cash).price_drop
    return base().case("cheap", "cheap", {Cash.price_kept: 1 - drop}, RESULTS)


@cache
def slow() -> Case:
    """Bags take longer: what is reached runs over weeks, flushes and months."""
    return base().case("slow", "slow", {Timing.slower: Named(SLOWER)}, RESULTS)


SLOWER = Constant(0.25, "slower_share", label="Share by which it takes longer", unit=unit("share"), source="arithmetic")


@cache
def worked(system: str) -> Worked:
    return work_out(base(), system, SIZES, {}, names=NAMES, further=(*cheap().lines, *slow().lines))


def names_of(case: Case) -> set[str]:
    return {line.name for line in case.lines}


def test_a_case_holds_only_what_its_shock_reaches() -> None:
    assert names_of(cheap()) == {
        "cash.price_kept_cheap",
        *(f"cash.{name}_cheap" for name in ("sales", "net", "missing", "drawn", "interest", "credit", "closing")),
    }


def test_a_case_leaves_out_what_its_results_do_not_need() -> None:
    whole = base().case("slow", "slow", {Timing.slower: Named(SLOWER)})
    assert "weeks.in_process_slow" in names_of(whole)
    assert "weeks.in_process_slow" not in names_of(slow())
    assert {"timing.flush_steps_slow", "weeks.at_flush_slow", "months.picked_slow"} <= names_of(slow())


def test_lines_out_of_reach_are_the_lines_of_the_base() -> None:
    """The net of the month takes its tasks from the base, its sales from the case."""
    net = cheap().line(Cash.net)
    used = {line.name for line in _lines(net.expr)}
    assert used == {"cash.sales_cheap", "cash.interest_cheap", "tasks.cost_in_all"}
    assert base().section(Tasks).line(Tasks.cost_in_all) in _lines(net.expr)


def _lines(expr: Expr) -> list[Line]:
    return [node for node in vars(expr).values() if isinstance(node, Line)] + [
        line
        for node in vars(expr).values()
        if isinstance(node, Expr) and not isinstance(node, Line)
        for line in _lines(node)
    ]


SHOCKED: Mapping[str, Mapping[Input, float]] = {
    "cheap": {Cash.price: 3.3 * 0.75},
    "slow": {Timing.spawn_run: 18 * 1.25},
}


@pytest.mark.parametrize("case", SHOCKED)
@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_case_is_the_base_on_shocked_inputs(system: str, case: str) -> None:
    found = worked(system)
    alone = work_out(base(), system, SIZES, SHOCKED[case], names=NAMES)
    for name in ("cash.closing", "cash.credit", "cash.drawn"):
        np.testing.assert_allclose(found[f"{name}_{case}"], alone[name], rtol=1e-12, err_msg=name)
        assert not np.allclose(found[f"{name}_{case}"], found[name])


@pytest.mark.parametrize("program", ENGINES)
def test_the_cases_stand_in_the_book_and_are_live(tmp_path: Path, program: str) -> None:
    path = tmp_path / "cases.xlsx"
    found = worked("us")
    book = found.written(path, sheets(("cheap", "slow")), TITLE)
    assert book.homes[found.line("cash.closing_cheap")].sheet == "CaseCheap"
    assert book.homes[found.line("weeks.at_flush_slow")].sheet == "CaseSlow"
    text = formula_cells(path)[address(book.homes[found.line("cash.net_cheap")], {MONTH: 1})]
    months = book.homes[found.line("tasks.cost_in_all")]
    assert f"{months.sheet}!{address(months, {MONTH: 1})[1]}" in text.replace("$", "")
    with opened(program, path) as open_book:
        assert differences(path, open_book) == []
        drop = book.names[workbook_name(base().inputs[Cash.price_drop].cell)]
        assert drop[0] == "Inputs"
        open_book.set(*address(book.homes[base().inputs[Cash.price_drop].cell]), 0.0)
        home, plain = (book.homes[found.line(name)] for name in ("cash.closing_cheap", "cash.closing"))
        for month in range(SIZES[MONTH]):
            spots = [address(each, {MONTH: month}) for each in (home, plain)]
            shown = open_book.read(spots)
            assert shown[spots[0]] == pytest.approx(shown[spots[1]], rel=1e-12)


def test_a_sheet_for_a_case_that_is_not_there_is_a_fault() -> None:
    with pytest.raises(ModelFault, match=r"no case called `dear`[^\n]*\n  declared at casedear\.toml"):
        worked("us").laid_out(sheets(("cheap", "slow", "dear")), TITLE)


DRAWS = 450
"""Two chunks of 200 and a part of one."""


@cache
def many() -> Mapping[RawInput, Cells]:
    """Cells of which some differ from draw to draw: numbers, a table, the names of a list."""
    given = dict(cells_of(base(), "metric", SIZES, {}, NAMES))
    rng = np.random.default_rng(20250801)
    spread = {
        Timing.spawn_run: rng.uniform(10, 28, DRAWS),
        Timing.added: rng.uniform(0, 14, (DRAWS, 3)),
        Cash.price: rng.uniform(2, 9, DRAWS),
        Cash.opening_cash: rng.uniform(-300, 900, DRAWS),
        Weeks.filled_before: rng.uniform(0, 200, (DRAWS, SIZES[EARLIER])),
    }
    for declared, numbers in spread.items():
        given[base().inputs[declared].cell] = Cells(numbers, numbers.astype(str).astype(object))
    task = base().axes[TASK].names
    named = np.array([["Mixing", "Picking", "Selling" if each % 3 else "", ""] for each in range(DRAWS)], dtype=object)
    given[task] = Cells(np.full(named.shape, np.nan), named)
    return given


def one_of(draw: int) -> dict[RawInput, Cells]:
    return {
        source: Cells(*(array[draw : draw + 1] if len(array) > 1 else array for array in (cells.numbers, cells.texts)))
        for source, cells in many().items()
    }


def test_draws_in_chunks_are_the_single_runs() -> None:
    engine = worked_base().engine
    wanted = [
        worked_base().line(name) for name in ("weeks.at_flush", "months.picked", "tasks.cost", "cash.closing", TITLE)
    ]
    found = engine.run_in_chunks(many(), wanted)
    assert [len(found[line]) for line in wanted] == [DRAWS] * len(wanted)
    for draw in (0, 1, 199, 200, 201, 399, 400, DRAWS - 1):
        single = engine.run(one_of(draw))
        for each in wanted:
            assert np.array_equal(found[each][draw], single[each][0, ...]), (each.name, draw)
    assert len({tuple(row) for row in found[wanted[1]].tolist()}) == DRAWS


@cache
def worked_base() -> Worked:
    return work_out(base(), "metric", SIZES, {}, names=NAMES)


@pytest.mark.parametrize("most", [1, 7, 450, 1000])
def test_the_size_of_the_chunks_does_not_matter(most: int) -> None:
    few = {source: Cells(cells.numbers[:9], cells.texts[:9]) for source, cells in many().items()}
    engine = worked_base().engine
    wanted = [worked_base().line("cash.credit"), worked_base().line("weeks.row")]
    chunks, whole = engine.run_in_chunks(few, wanted, most=most), engine.run(few)
    assert chunks[wanted[0]].tolist() == whole[wanted[0]].tolist()
    assert chunks[wanted[1]].shape == (9, SIZES[WEEK])


def test_inputs_for_different_numbers_of_draws_are_refused() -> None:
    price = base().inputs[Cash.price].cell
    uneven = {**many(), price: Cells(np.ones(3), np.ones(3).astype(str).astype(object))}
    with pytest.raises(ValueError, match=r"different numbers of draws: \[3, 450\]"):
        worked_base().engine.run(uneven)


STEP = Axis("step", "step", "across", 97, ordered=True, members=("1", "2", "3"))


def cycle(order: Sequence[str]) -> dict[str, Any]:
    """Savings that grow by one more each step, the lines declared in this order; opening 1,000."""
    ground = Constant(1000, "ground_savings", label="Ground savings", unit=unit("money"), source="arithmetic")
    one = Constant(1, "one_more", label="One more", unit=unit("money"), source="arithmetic")
    lines: dict[str, Line] = {}

    def savings() -> Expr:
        return starting(Named(ground), previous(lines["savings"], STEP) + lines["saved"])

    def saved() -> Expr:
        return lines["habit"] + (previous(lines["savings"], STEP) - previous(lines["savings"], STEP))

    def habit() -> Expr:
        return starting(0, previous(lines["habit"], STEP) + one)

    builds = {"savings": savings, "saved": saved, "habit": habit}
    for name in order:
        lines[name] = Line(f"trap.{name}", name, unit("money"), (STEP,), builds[name])
    roots = {lines[name]: lower(lines[name], "metric") for name in order}
    values = Engine(Graph(roots), {STEP: 3}, "metric").run({})
    return {line.name: [*values.openings.get(line, np.empty(0)).tolist(), *values[line][0].tolist()] for line in roots}


@pytest.mark.parametrize(
    "order", [("savings", "saved", "habit"), ("habit", "saved", "savings"), ("saved", "savings", "habit")]
)
def test_the_order_of_declaration_does_not_matter_in_a_cycle(order: Sequence[str]) -> None:
    """Run in the order of declaration, the first of these once gave 0, 1, 2, 3."""
    assert cycle(order)["trap.savings"] == [1000, 1001, 1003, 1006]


def test_a_shock_stands_in_one_line() -> None:
    class Twice(Section):
        @shock("Weight, share kept", unit="share", neutral=1)
        def kept(self) -> None:
            """Used twice."""

        @line("First", unit="share")
        def first(self) -> Expr:
            """One use."""
            return self.kept * 1

        @line("Second", unit="share")
        def second(self) -> Expr:
            """Another."""
            return self.kept * 1

    with pytest.raises(
        ModelFault, match=r"the shock `twice\.kept` stands in `twice\.first`, `twice\.second`"
    ) as raised:
        Model([Twice]).case("light", "light", {Twice.kept: wrap(0)})
    assert "test_cases_and_draws.py" in raised.value.where


def test_a_neutral_shock_leaves_the_plan_as_it_is() -> None:
    lines = worked("metric")
    assert lines["cash.price_kept"].item() == 1
    assert lines["timing.slower"].item() == 0
