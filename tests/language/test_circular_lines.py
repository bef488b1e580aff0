"""Lines that need each other: refused unless they do so through earlier steps alone, and named (rule 5)."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from farmbook.errors import ModelFault
from farmbook.expr import functions as f
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Expr
from farmbook.expr.ranking import before, nth_value
from tests.language.guilty_lines import BATCH, MONTH, ROW, SPELL, Guilty, worked_out

ONE_STEP = "the lines need each other within one step"

CIRCLES: Mapping[str, Guilty] = {
    "within one step": Guilty(
        "1",
        lambda s: s.first + 1,
        "circular lines: guilty.alone, guilty.first, guilty.second",
        ONE_STEP,
        others={"first": (lambda s: s.second + 1, ()), "second": (lambda s: s.alone - 1, ())},
    ),
    "of one line": Guilty("1", lambda s: s.alone + 1, "circular lines: guilty.alone", ONE_STEP),
    "within one month": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, s.first + f.previous(s.alone, MONTH)),
        "circular lines: guilty.alone, guilty.first",
        ONE_STEP,
        (MONTH,),
        {"first": (lambda s: s.alone + 1, (MONTH,))},
    ),
    "through a month looked up": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + s.first),
        "circular lines: guilty.alone, guilty.first",
        "a value at another step stands inside a cycle; only `previous` may",
        (MONTH,),
        {"first": (lambda s: f.at(s.alone, MONTH, s.ground.months), (MONTH,))},
    ),
    "through a total": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + s.first),
        "circular lines: guilty.alone, guilty.first",
        "every line of a cycle must be stepped along the same list",
        (MONTH,),
        {"first": (lambda s: f.total(s.alone, MONTH), ())},
    ),
    "with a total of something else": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + f.total(s.ground.months, MONTH)),
        "circular lines: guilty.alone",
        "a total over every step stands inside the cycle; make it a line of its own",
        (MONTH,),
    ),
    "with the least of something else": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + f.lowest_of(s.ground.months, MONTH)),
        "circular lines: guilty.alone",
        "a total over every step stands inside the cycle; make it a line of its own",
        (MONTH,),
    ),
    "through the most of all steps": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + s.first),
        "circular lines: guilty.alone, guilty.first",
        "every line of a cycle must be stepped along the same list",
        (MONTH,),
        {"first": (lambda s: f.highest_of(s.alone, MONTH), ())},
    ),
    "with steps taken in another order": Guilty(
        "1",
        lambda s: f.starting(
            s.ground.plain, f.previous(s.alone, MONTH) + before(s.ground.months, s.ground.months, MONTH)
        ),
        "circular lines: guilty.alone",
        "a total over every step stands inside the cycle; make it a line of its own",
        (MONTH,),
    ),
    "through the largest of the steps": Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, SPELL) + s.first),
        "circular lines: guilty.alone, guilty.first",
        "steps are ranked inside a cycle; make it a line outside",
        (SPELL,),
        {"first": (lambda s: nth_value((s.alone,), 1, 1, (s.alone,)), (SPELL,))},
    ),
}


@pytest.mark.parametrize("name", CIRCLES)
def test_circular_lines_are_named(name: str) -> None:
    guilty = CIRCLES[name]
    with pytest.raises(ModelFault) as raised:
        worked_out(guilty, "metric")
    assert (raised.value.what, raised.value.why) == (guilty.what, guilty.why)
    assert raised.value.where.endswith(f"test_circular_lines.py:{guilty.method.__code__.co_firstlineno}")


def test_a_line_without_an_opening_value_has_no_previous_value() -> None:
    guilty = Guilty("1", lambda s: f.previous(s.ground.months, MONTH), "", axes=(MONTH,))
    with pytest.raises(ModelFault, match=r"`ground\.months_used` has no opening value, so it has no previous value"):
        worked_out(guilty, "metric")


def test_a_rate_of_return_is_that_of_one_row_of_flows() -> None:
    guilty = Guilty(
        "1",
        lambda s: f.internal_rate(s.flows, MONTH),
        "",
        axes=(ROW,),
        others={"flows": (lambda s: s.ground.rows * s.ground.months, (ROW, MONTH))},
    )
    with pytest.raises(ModelFault, match=r"`guilty\.flows` does not run along month alone"):
        worked_out(guilty, "metric")


@pytest.mark.parametrize("extreme", [f.lowest_of, f.highest_of])
def test_the_least_and_the_most_are_those_of_one_row(extreme: Callable[[Expr, Axis], Expr]) -> None:
    guilty = Guilty(
        "1",
        lambda s: extreme(s.beside, MONTH),
        "",
        axes=(ROW,),
        others={"beside": (lambda s: s.ground.rows * s.ground.months, (ROW, MONTH))},
    )
    with pytest.raises(ModelFault, match=r"`guilty\.beside` does not run along month alone"):
        worked_out(guilty, "metric")


def test_what_a_cycle_reads_runs_along_its_steps_last() -> None:
    guilty = Guilty(
        "1",
        lambda s: f.starting(s.ground.plain, f.previous(s.alone, MONTH) + f.total(s.beside, BATCH)),
        "",
        axes=(MONTH,),
        others={"beside": (lambda s: s.ground.months, (MONTH, BATCH))},
    )
    with pytest.raises(ModelFault, match="the axis that is stepped must be the last of a line's axes"):
        worked_out(guilty, "metric")
