"""The calendar and the weeks of plans of one, three and seven years held to their twin, line by line, in both units."""

from __future__ import annotations

import calendar
from datetime import date, timedelta
from functools import cache

import numpy as np
import pytest

from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Array
from farmbook.model.axes import WEEK, WEEKS_AFTER, WEEKS_BEFORE, sizes_of_plan
from farmbook.results import whole_farm
from tests.twin.farm_twin import schedule, twin
from tests.twin.farms import Farm, compared_lines, differences, in_declared_units, is_a_name, twin_inputs, values_of
from tests.twin.outcomes import outcomes
from tests.twin.plan_farms import HORIZONS, STARTS, TWISTS, plan_farm

SYSTEMS = ("metric", "us")
ORDINARY = "an ordinary Friday"
CHECKS = ("lags", "steaming_ahead", "ordering")
ROOMS_OF_THE_MODEL = ("farmbook.model.calendar", "farmbook.model.schedule")


@cache
def weekly_lines() -> tuple[Line, ...]:
    """Every line of the calendar and of the schedule that has a twin."""
    sections = [each for each in whole_farm().sections if type(each).__module__.startswith(ROOMS_OF_THE_MODEL)]
    declared = {line for section in sections for line in section.lines}
    return tuple(line for line in compared_lines() if line in declared)


def plans() -> tuple[tuple[str, str], ...]:
    """Every twist from an ordinary start, and every start of the farm with its rooms known, new and running."""
    twisted = [(ORDINARY, twist) for twist in TWISTS]
    return (
        *twisted,
        *((start, twist) for start in STARTS for twist in ("changes of the plan of a new farm", "rooms known")),
    )


@cache
def farms(months: int) -> tuple[Farm, ...]:
    """All plans of a length."""
    return tuple(plan_farm(start, twist, months) for start, twist in plans())


@cache
def by_the_twin(months: int) -> tuple[dict[str, Array], ...]:
    """The calendar and the weeks of all plans, by the twin."""
    found = []
    for farm in farms(months):
        given = twin_inputs(farm)
        year = twin(given)
        found.append({**year, **schedule(given, dict(year))})
    return tuple(found)


def of_twist(months: int, twist: str) -> dict[str, Array]:
    """One of them, from an ordinary start."""
    return by_the_twin(months)[plans().index((ORDINARY, twist))]


@pytest.mark.parametrize("months", HORIZONS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_week_of_every_plan(system: str, months: int) -> None:
    theirs = in_declared_units(values_of(farms(months), system), system, weekly_lines())
    found = differences(by_the_twin(months), theirs)
    assert [(plans()[each.farm], each.line) for each in found] == []


def test_every_outcome_of_the_schedule_has_a_twin() -> None:
    names = {line.name for line in weekly_lines()}
    found = names & set(by_the_twin(HORIZONS[0])[0])
    assert outcomes() & names <= found
    assert len(found) > 100


def test_customers_in_turn_bear_their_names() -> None:
    named = [line for line in whole_farm().lines if is_a_name(line) and line.name.startswith("in_turn")]
    assert [line.name for line in named] == ["in_turn.name"]
    months = HORIZONS[0]
    shown = values_of(farms(months), "metric")[named[0]]
    for number, farm in enumerate(farms(months)):
        names = farm.words["customer.name"]
        columns = by_the_twin(months)[number]["in_turn.column"]
        told = [names[max(int(column), 1) - 1] for column in columns]
        assert list(np.broadcast_to(shown, (len(farms(months)), 5))[number]) == told


def test_plans_are_of_every_kind() -> None:
    """What the twin holds happens on some plans and not on others."""
    both: dict[str, set[bool]] = {}
    for found in by_the_twin(HORIZONS[0]):
        for name in ("places_short", "hours_short", "loads_short", "cold_short", "is_short"):
            both.setdefault(name, set()).add(bool(np.any(found[f"shortages.{name}"] > 0)))
        for name in CHECKS:
            both.setdefault(name, set()).add(bool(found[f"{name}.within_reach"]))
        both.setdefault("agree", set()).add(bool(found["filling.shut_weeks_agree"]))
        both.setdefault("spoiled", set()).add(bool(np.any(found["cold_room.spoiled"] > 1)))
    assert all(seen == {True, False} for seen in both.values()), both


def test_a_plan_is_short_for_one_week_alone() -> None:
    found = of_twist(HORIZONS[0], "short in the last week alone")
    for what in ("places", "hands", "others"):
        assert found[f"shortages.weeks_short_of_{what}"] == 1, what


@pytest.mark.parametrize("months", range(12, 85, 12))
def test_a_book_has_weeks_enough_whenever_a_plan_starts(months: int) -> None:
    """Every month of four hundred years, after which the calendar begins anew."""
    weeks = sizes_of_plan(months)[WEEK] - WEEKS_BEFORE - WEEKS_AFTER
    needed = set()
    for month in range(2000 * 12, 2400 * 12):
        first, end = (date(each // 12, each % 12 + 1, 1) for each in (month, month + months))
        monday = first - timedelta(days=first.weekday())
        assert monday.weekday() == calendar.MONDAY
        needed.add(-(-(end - monday).days // 7))
    assert max(needed) == weeks
