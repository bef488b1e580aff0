"""What moves a year's profit most: order and figures where the whole farm is worked out anew, and what is left out."""

from __future__ import annotations

import itertools
import math
from collections import Counter

import pytest

from farmbook.expr.walk import ordered_axes
from farmbook.layout.swings import LeftOut, Swing
from farmbook.matters import swings
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
from farmbook.model.place.farm_plan import Farm
from farmbook.results import Computed
from farmbook.sections.declare import Input
from tests.matters.farms import SCENARIOS, Typed, ends_of, farm, known_as, outcome, outcomes, typed_in, with_typed

HALF = 0.5
"""Of a unit of money."""


def expected(computed: Computed) -> tuple[list[tuple[str, list[float]]], Counter[LeftOut]]:
    """The table as it should be: each name with value, ends and changes of the profit; the largest swing first."""
    now, failing = outcome(computed)
    every = list(typed_in(computed))
    left_out = Counter(why for one in every if (why := untried(one)) is not None)
    tried = [one for one in every if untried(one) is None]
    found = iter(outcomes(computed, [(one, end) for one in tried for end in ends_of(computed, one)]))
    rows: list[tuple[float, str, list[float]]] = []
    for one, (at_low, after_low), (at_high, after_high) in zip(tried, found, found, strict=True):
        size = max(now, at_low, at_high) - min(now, at_low, at_high)
        if size < HALF:
            left_out[LeftOut.STILL] += 1
        elif (after_low | after_high) - failing:
            left_out[LeftOut.BOUND] += 1
        else:
            values = [one.value, *ends_of(computed, one), at_low - now, at_high - now]
            rows.append((size, told(computed, one), values))
    ranked = sorted(rows, key=lambda row: round(row[0], 2), reverse=True)
    return [(name, values) for _, name, values in ranked], left_out


def untried(one: Typed) -> LeftOut | None:
    if one.basis in ("measured", "quoted"):
        return LeftOut.OWN
    if math.isnan(one.value):
        return LeftOut.BLANK
    return LeftOut.DECIDED if one.declared.decided else None


def told(computed: Computed, one: Typed) -> str:
    axes = ordered_axes(one.declared.axes)
    return str([one.bound.cell.name, *(computed.members(axis)[at] for axis, at in zip(axes, one.index, strict=True))])


def named(one: Swing) -> str:
    return str([one.bound.cell.name, *one.members.values()])


def figures(one: Swing) -> list[float]:
    return [one.value, one.low, one.high, one.at_low, one.at_high]


@pytest.mark.parametrize("name", SCENARIOS)
def test_every_figure_is_swung_as_if_the_farm_were_worked_out_anew(name: str) -> None:
    wanted, left_out = expected(farm(name))
    found = swings(farm(name))
    assert [named(one) for one in found.rows] == [told for told, _ in wanted]
    for one, (_, values) in zip(found.rows, wanted, strict=True):
        assert figures(one) == pytest.approx(values, rel=1e-9, abs=1e-6), one.name
    assert Counter(found.left_out) == left_out
    assert len(found.rows) > 50
    assert all(left_out[why] for why in LeftOut)


def test_the_first_few_are_those_of_farms_made_with_the_figure_typed_over() -> None:
    now, _ = outcome(farm())
    for one in swings(farm()).rows[:4]:
        (index,) = [each.index for each in typed_in(farm()) if told(farm(), each) == named(one)]
        for end, change in ((one.low, one.at_low), (one.high, one.at_high)):
            again, _ = outcome(with_typed(farm(), one.bound.declared, end, index))
            assert again - now == pytest.approx(change, rel=1e-9), one.name


def test_two_alike_stand_in_the_order_in_which_they_are_asked_for() -> None:
    rows = swings(farm("hof_fennewald")).rows
    order = [told(farm("hof_fennewald"), one) for one in typed_in(farm("hof_fennewald"))]
    alike = [pair for pair in itertools.pairwise(rows) if len({round(one.size, 2) for one in pair}) == 1]
    assert len(alike) > 3
    for first, second in alike:
        assert order.index(named(first)) < order.index(named(second))


def row_of(computed: Computed, declared: Input) -> list[Swing]:
    cell = computed.model.inputs[declared].cell
    return [one for one in swings(computed).rows if one.bound.cell is cell]


def test_a_figure_is_gone_once_it_is_measured_or_quoted() -> None:
    assert len(row_of(farm(), Crop.shrink)) == 1
    before = swings(farm()).left_out[LeftOut.OWN]
    for word in ("measured", "quoted", "Measured"):
        known = known_as(farm(), word, only=Crop.shrink)
        assert row_of(known, Crop.shrink) == []
        assert swings(known).left_out[LeftOut.OWN] == before + 1
    assert len(row_of(known_as(farm(), "published", only=Crop.shrink), Crop.shrink)) == 1


def test_a_figure_left_blank_is_not_swung() -> None:
    blank = with_typed(farm(), Farm.weeks_worked, None)
    assert len(row_of(farm(), Farm.weeks_worked)) == 1
    assert row_of(blank, Farm.weeks_worked) == []
    assert swings(blank).left_out[LeftOut.BLANK] == swings(farm()).left_out[LeftOut.BLANK] + 1


def test_what_is_decided_or_stands_elsewhere_is_not_swung() -> None:
    for declared in (Crop.flushes_kept, GrowingCost.incubation_room_rate, GrowingCost.fruiting_room_rate):
        one = next(each for each in typed_in(farm()) if each.declared is declared)
        ends = [profit for profit, _ in outcomes(farm(), [(one, end) for end in ends_of(farm(), one)])]
        assert max(ends) - min(ends) > 10_000
        assert row_of(farm(), declared) == []


FIRST_FLUSH = (0,)


def test_what_a_check_holds_does_not_move_alone() -> None:
    """The days until the first pick are asked for elsewhere, so that the first flush adds none."""
    first = next(each for each in typed_in(farm()) if each.declared is Harvest.added_days)
    (_, low), (_, high) = outcomes(farm(), [(first, end) for end in ends_of(farm(), first)])
    assert low == frozenset()
    assert high == {"harvest.first_days_once"}
    assert ["first"] not in [list(one.members.values()) for one in row_of(farm(), Harvest.added_days)]


def test_a_check_that_fails_as_it_is_holds_nothing() -> None:
    """On a farm that does not add up what moves stands in the table all the same."""
    failing = with_typed(farm(), Harvest.added_days, 3.0, FIRST_FLUSH)
    assert outcome(failing)[1] == {"harvest.first_days_once"}
    assert ["first"] in [list(one.members.values()) for one in row_of(failing, Harvest.added_days)]


def test_of_a_value_outside_the_usual_range_the_swing_goes_from_it_over_the_range() -> None:
    outside = with_typed(farm(), Crop.shrink, 0.3)
    (one,) = row_of(outside, Crop.shrink)
    assert (one.value, one.low, one.high) == (0.3, 0.01, 0.1)
    assert 0 < one.at_high < one.at_low
    assert (one.loss, one.gain, one.size) == (0, one.at_low, one.at_low)


def test_members_are_called_by_their_names_and_spare_ones_left_out() -> None:
    found = [one for one in swings(farm()).rows if one.members.keys() == {"customer"}]
    keys = set(farm().scenario.rows[next(axis for axis in farm().scenario.rows if axis.name == "customer")])
    assert {one.members["customer"] for one in found} <= keys
    assert "Fees on the takings: Restaurants" in {one.name for one in found}
    assert "Takes in the month, of the most: Restaurants, January" in {one.name for one in swings(farm()).rows}


def test_where_all_is_known_nothing_is_left() -> None:
    found = swings(known_as(farm(), "measured"))
    assert found.rows == ()
    assert found.left_out[LeftOut.OWN] == sum(found.left_out.values()) == len(list(typed_in(farm())))
