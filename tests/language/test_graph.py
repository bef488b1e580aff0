"""The graph of lines: who needs whom, what a change reaches, and the order within a cycle, whichever line is declared first."""

from __future__ import annotations

import itertools
from collections.abc import Callable

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.functions import previous, starting
from farmbook.expr.graph import Graph, sources_of
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Expr, Line, Raw, RawInput
from farmbook.interpret.numbers import Cells, Engine
from farmbook.units import unit

MONTH = Axis("month", "month", "across", 97, ordered=True, members=("1", "2", "3"))
ONE = unit("1")


def made(name: str, build: Callable[[], Expr], axes: tuple[Axis, ...] = ()) -> Line:
    return Line(f"trial.{name}", name, ONE, axes, build)


def cell(name: str) -> RawInput:
    return RawInput(f"trial.{name}", name, "number", ONE, ())


FIRST, SECOND = cell("first"), cell("second")
DOUBLE = made("double", lambda: Raw(FIRST) + Raw(FIRST))
SQUARE = made("square", lambda: DOUBLE * DOUBLE)
OTHER = made("other", lambda: Raw(SECOND) + 1)
BOTH = made("both", lambda: OTHER + SQUARE + SQUARE)
APART = made("apart", lambda: DOUBLE + 1)


def graph() -> Graph:
    return Graph({line: line.expr for line in (BOTH, APART, SQUARE, OTHER, DOUBLE)})


def test_what_a_line_reads_stands_once_in_reading_order() -> None:
    assert graph().needs(BOTH) == [OTHER, SQUARE]
    assert graph().cells(DOUBLE) == [FIRST]
    assert graph().cells(BOTH) == []


def test_who_reads_a_line_or_a_cell() -> None:
    assert set(graph().needed_by[DOUBLE]) == {SQUARE, APART}
    assert list(graph().needed_by[SECOND]) == [OTHER]


def test_every_line_comes_after_what_it_needs() -> None:
    found = graph()
    for line in found.roots:
        assert all(found.place[other] < found.place[line] for other in found.needs(line))


def test_a_change_reaches_what_rests_on_it_and_nothing_else() -> None:
    found = graph()
    assert found.reached([FIRST]) == {DOUBLE, SQUARE, APART, BOTH}
    assert found.reached([SECOND]) == {OTHER, BOTH}
    assert found.reached([SQUARE]) == {BOTH}
    assert found.before([APART]) == {APART, DOUBLE}
    assert found.before([BOTH]) == {BOTH, OTHER, SQUARE, DOUBLE}


def test_between_a_change_and_what_is_wanted() -> None:
    found = graph()
    assert found.between([FIRST], [APART]) == tuple(sorted((found.place[DOUBLE], found.place[APART])))
    assert found.between([SECOND], [APART]) == ()
    assert len(found.between([FIRST])) == 4


def one(number: float) -> Cells:
    return Cells(np.array([number]), np.array([str(number)], dtype=object))


def test_a_what_if_is_a_run_of_its_own_and_works_out_no_more_than_it_must() -> None:
    roots = {line: lower(line, "metric") for line in (DOUBLE, SQUARE, OTHER, BOTH, APART)}
    engine = Engine(Graph(roots), {}, "metric")
    before = engine.run({FIRST: one(2), SECOND: one(5)})
    assert [before[line].item() for line in roots] == [4, 16, 6, 38, 5]
    after = engine.what_if(before, {FIRST: one(3)})
    assert [after[line].item() for line in roots] == [6, 36, 6, 78, 7]
    for_one = engine.what_if(before, {FIRST: one(3)}, [APART])
    assert [for_one[line].item() for line in roots] == [6, 16, 6, 38, 7]
    assert [before[line].item() for line in roots] == [4, 16, 6, 38, 5]


def grown(order: tuple[str, ...]) -> dict[str, list[float]]:
    """Three lines of a cycle, one of which reads another both at this step and at the one before."""
    lines: dict[str, Line] = {}
    builds: dict[str, Callable[[], Expr]] = {
        "stock": lambda: starting(1, previous(lines["stock"], MONTH) + previous(lines["change"], MONTH)),
        "sum": lambda: starting(0, lines["stock"] + previous(lines["stock"], MONTH)),
        "change": lambda: starting(0, lines["sum"] + 1),
    }
    for name in order:
        lines[name] = made(name, builds[name], (MONTH,))
    roots = {lines[name]: lower(lines[name], "metric") for name in order}
    values = Engine(Graph(roots), {MONTH: 3}, "metric").run({})
    return {line.label: values[line][0].tolist() for line in roots}


@pytest.mark.parametrize("order", list(itertools.permutations(("stock", "sum", "change"))))
def test_a_line_read_at_this_step_and_the_last_is_worked_out_first(order: tuple[str, ...]) -> None:
    """stock 1+0, 1+3, 4+6; sum 1+1, 4+1, 10+4; change one more than the sum."""
    assert grown(order) == {"stock": [1, 4, 10], "sum": [2, 5, 14], "change": [3, 6, 15]}


def test_what_is_read_of_the_step_before_is_left_out_where_only_this_step_counts() -> None:
    line = made("line", lambda: Raw(FIRST), (MONTH,))
    beside = made("beside", lambda: line + previous(line, MONTH), (MONTH,))
    assert sources_of(beside.expr, earlier=False) == [line]
    assert sources_of(previous(line, MONTH)) == [line]
    assert sources_of(previous(line, MONTH), earlier=False) == []


def test_lines_that_need_each_other_within_one_step_are_named() -> None:
    lines: dict[str, Line] = {}
    lines["egg"] = made("egg", lambda: lines["hen"] + previous(lines["egg"], MONTH), (MONTH,))
    lines["hen"] = made("hen", lambda: lines["egg"] + previous(lines["hen"], MONTH), (MONTH,))
    with pytest.raises(ModelFault, match=r"circular lines: trial\.egg, trial\.hen"):
        _ = Graph({line: line.expr for line in lines.values()}).order
