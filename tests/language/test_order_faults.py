"""Every fault of an order and of a figure or words: what it says, and that it names the guilty line."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from farmbook.errors import ModelFault
from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.ranking import before, nth_label, nth_value, preference_key, ranking_key
from farmbook.units import SYSTEMS, unit
from tests.language.guilty_lines import COLUMN, ROW, Guilty, Method, worked_out
from tests.language.test_faults import FLAT, assert_said, other, units

HALF_WAY = n.Constant(2.5, "half_way", label="Half way", unit=unit("1"), source="arithmetic")
BESIDE = "keys and what is shown by them do not stand side by side"
SIDE_BY_SIDE = (
    "give as many single lines as keys, or one line each over a list that runs down; labels are those of single lines"
)

GUILTY: Mapping[str, Guilty] = {
    "what comes before inside a total": other(
        "what comes before a row stands inside a total (line `guilty.alone`)",
        lambda s: f.total(before(s.ground.rows, s.ground.rows, ROW), ROW),
        "make it a line first",
    ),
    "a place in an order inside a total": other(
        "a place in an order stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows * nth_value((s.ground.plain,), 1, 1, (s.ground.plain,)), ROW),
        "make it a line first",
    ),
    "wet ranked with dry": units(
        "kg_wet",
        lambda s: nth_value((s.ground.plain, s.ground.plain), 1, 1, (s.ground.wet, s.ground.dry)),
        "kg_dry",
        "kg_wet",
    ),
    "hours ranked with minutes": units(
        "h", lambda s: nth_value((s.ground.plain, s.ground.plain), 1, 1, (s.ground.hours, s.ground.minutes)), "min", "h"
    ),
    "temperatures ranked": units(
        "degC", lambda s: nth_value((s.ground.plain,), 1, 1, (s.ground.warm,)), "a temperature in degC", FLAT
    ),
    "ranked by money": units("kg_wet", lambda s: nth_value((s.ground.cash,), 1, 1, (s.ground.wet,)), "money", "1"),
    "a key of money": units("1", lambda s: ranking_key(s.ground.cash, 1, 1), "money", "1"),
    "an order of preference in hours": units("1", lambda s: preference_key(s.ground.hours, 1, 1), "h", "1"),
    "filled by money": units("1", lambda s: before(s.ground.rows, s.ground.cash_rows, ROW), "money", "1", (ROW,)),
    "temperatures filled": units(
        "degC", lambda s: before(s.ground.warm_rows, s.ground.rows, ROW), "a temperature in degC", FLAT, (ROW,)
    ),
    "more keys than lines": other(
        f"{BESIDE} (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain, s.ground.percent), 1, 1, (s.ground.plain,)),
        SIDE_BY_SIDE,
    ),
    "a list beside a single line": other(
        f"{BESIDE} (line `guilty.alone`)", lambda s: nth_value((s.ground.rows,), 1, 1, (s.ground.plain,)), SIDE_BY_SIDE
    ),
    "a list that runs across": other(
        f"{BESIDE} (line `guilty.alone`)",
        lambda s: nth_value((s.ground.columns,), 1, 1, (s.ground.columns,)),
        SIDE_BY_SIDE,
    ),
    "labels of a list": other(
        f"{BESIDE} (line `guilty.alone`)",
        lambda s: nth_label((s.ground.rows,), 1, 1, (s.ground.rows,), "none"),
        SIDE_BY_SIDE,
    ),
    "place nought": other(
        "there is no place 0 among 1 lines (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain,), 0, 1, (s.ground.plain,)),
    ),
    "place two and a half": other(
        "there is no place 2.5 among 3 lines (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain,) * 3, HALF_WAY, 1, (s.ground.plain,) * 3),
    ),
    "a place behind the last": other(
        "there is no place 2.5 among 1 lines (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain,), HALF_WAY, 1, (s.ground.plain,)),
    ),
    "numbers ranked with texts": other(
        "numbers and texts are ranked together (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain, s.ground.plain), 1, 1, (s.ground.plain, s.ground.worded), "none"),
    ),
    "words for a number": other(
        "numbers are ranked, so there is no place for the words 'none' (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain,), 1, 1, (s.ground.plain,), "none"),
    ),
    "a place of what is no line": other(
        "only a line has a place in an order (line `guilty.alone`)",
        lambda s: nth_value((s.ground.plain + 1,), 1, 1, (s.ground.plain,)),
        "found Add",
    ),
    "rows before what is no line": other(
        "only a line has rows before it (line `guilty.alone`)",
        lambda s: before(s.ground.rows + 1, s.ground.rows, ROW),
        "found Add",
        axes=(ROW,),
    ),
    "rows before in another list": other(
        "`ground.columns_used` has no rows of row (line `guilty.alone`)",
        lambda s: before(s.ground.rows, s.ground.columns, ROW),
        axes=(ROW, COLUMN),
    ),
    "words inside a sum": other(
        "Shown may stand only as the whole of a line (line `guilty.alone`)",
        lambda s: f.shown(s.ground.plain, s.ground.percent, "none") + 1,
    ),
    "a figure of another unit": units("h", lambda s: f.shown(s.ground.cash, s.ground.plain, "none"), "money", "h"),
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", GUILTY)
def test_a_fault_says_what_is_wrong_and_where(name: str, system: str) -> None:
    assert_said(GUILTY[name], system, "test_order_faults.py")


READERS: Mapping[str, tuple[Method, tuple[Axis, ...]]] = {
    "in a sum": (lambda s: s.first + 1, ()),
    "in a total": (lambda s: f.total(s.first_rows, ROW), ()),
    "as a figure of its own": (lambda s: f.shown(s.first, s.ground.plain, "none"), ()),
    "by rank": (lambda s: nth_value((s.ground.plain,), 1, 1, (s.first,)), ()),
    "as a key": (lambda s: before(s.ground.rows, s.first_rows, ROW), (ROW,)),
    "in a count": (lambda s: n.CountWord((s.first,), "none"), ()),
}


@pytest.mark.parametrize("name", READERS)
def test_nothing_is_worked_out_from_a_figure_or_words(name: str) -> None:
    method, axes = READERS[name]
    others: Mapping[str, tuple[Method, tuple[Axis, ...]]] = {
        "first": (lambda s: f.shown(s.ground.plain, s.ground.percent, "none"), ()),
        "first_rows": (lambda s: f.shown(s.ground.rows, s.ground.plain, "none"), (ROW,)),
    }
    with pytest.raises(ModelFault) as raised:
        worked_out(Guilty("1", method, "", axes=axes, others=others), "metric")
    read = "guilty.first_rows" if axes or "total" in name else "guilty.first"
    assert raised.value.what == f"line `guilty.alone` reads `{read}`, which may hold words in place of a number"
    assert raised.value.where.endswith(f"test_order_faults.py:{method.__code__.co_firstlineno}")
    assert raised.value.why == "work it out from what that line is worked out from"
