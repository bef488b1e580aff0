"""A small farm in round numbers, whose weeks a person can count: days are whole weeks, and every figure is written out.

A load is inoculated a day after filling, bags are opened 3 weeks after it, picked 4 and 6 weeks after it, dumped 44 days and
their places washed 7 weeks after it. Of 100 bags filled 90 come out of the steamer and 72 live; each of these gives 0.5 kg and
then 0.25 kg. All numbers are made up for the purpose.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any, Final

import numpy as np
import pytest

from farmbook.interpret.numbers import Array
from farmbook.model.axes import WEEKS_BEFORE
from farmbook.results import compute, load_scenario
from tests.twin.edge_farms import NAMES, PLAUSIBLE, changes_of
from tests.twin.farms import farm_of, results
from tests.twin.plan_farms import day_counted
from tests.twin.random_farms import random_farm
from tests.twin.test_twin import SCENARIOS

Named = Mapping[str, Any]
Found = Mapping[str, Array]

SMALL: Final[Named] = {
    "plan.start": day_counted(date(2027, 1, 15)),
    "farm.bags_filled_a_week": 100,
    "farm.bags_per_load": 50,
    # 50 bags at 250 an hour take 0.2 hours: with these, a cycle of 24
    "cabinet.own_heat_up_time": 3,
    "cabinet.hold_time": 8.8,
    "cabinet.cool_down_time": 12,
    "crop.spawn_run_days": 20,
    "crop.days_to_first_pick": 9,
    "crop.added_days": [0, 14, 14, 14],
    "crop.pick_days": 4,
    "crop.turn_round_days": 5,
    "crop.flushes_kept": 2,
    "crop.loss_at_steaming": 0.1,
    "recipe.loss_in_spawn_run": 0.2,
    "crop.loss_before_first_pick": 0,
    "crop.loss_between_flushes": 0,
    "crop.yield_given": "weight picked from a bag",
    "crop.first_weight": 0.5,
    "crop.later_weight": 0.25,
    "crop.trim": 0,
    "crop.shrink": 0,
    "customer.most_a_week": [0, 40, 0, 0, 0],
    "plan.shut_weeks": 0,
}
ONCE: Final[Named] = {
    "farm.stage": "new farm",
    "start_up.first_filling": 5,
    "start_up.weeks_to_full": 1,
    "start_up.weeks_to_learn": 1,
    "step_up.from_week": [6, None, None],
    "step_up.more_bags": [-100, None, None],
}
"""A new farm that fills 100 bags in week 5, and never again."""


def small(*changes: Named, months: int = 12) -> Found:
    """What the book makes of the small farm, changed."""
    named: dict[str, Any] = dict(SMALL)
    for each in changes:
        named |= each
    found = results([farm_of({**PLAUSIBLE, **changes_of(named)}, NAMES, months)], "metric")
    return {name: value[0] for name, value in found.items()}


def weeks(found: Found, name: str, first: int, last: int) -> list[float]:
    """A line in some weeks of the plan."""
    return [float(each) for each in found[name][WEEKS_BEFORE + first - 1 : WEEKS_BEFORE + last]]


def near(*numbers: float) -> Any:
    """Numbers but for rounding; what is nothing may be a billionth."""
    return pytest.approx(list(numbers), rel=1e-9, abs=1e-9)


def test_the_small_farm_s_days_are_whole_weeks() -> None:
    found = small()
    assert found["lags.to_bench"] == pytest.approx(1)
    for name, wanted in {"opening": 3, "dumping": 44 / 7, "freeing": 7, "keeping": 1}.items():
        assert found[f"{name}.in_weeks"] == pytest.approx(wanted), name
    assert list(found["lags.pick_in_weeks"][:2]) == near(4, 6)


def test_a_hundred_bags_of_week_5_are_followed_to_the_end() -> None:
    found = small(ONCE)
    assert weeks(found, "filling.filled", 4, 7) == near(0, 100, 0, 0)
    # filled evenly through a week, a seventh of them is inoculated in the next
    assert weeks(found, "in_process.inoculated", 4, 7) == near(0, 540 / 7, 90 / 7, 0)
    assert found["in_process.waiting_counted"] == pytest.approx(90 / 7)
    assert weeks(found, "in_process.incubating", 4, 8) == near(0, 540 / 7, 90, 90, 0)
    assert weeks(found, "in_process.opened", 7, 9) == near(0, 72, 0)
    assert weeks(found, "picks.picked", 8, 12) == near(0, 36, 0, 18, 0)
    assert weeks(found, "in_process.dumped", 10, 13) == near(0, 360 / 7, 144 / 7, 0)
    assert weeks(found, "in_process.places", 7, 13) == near(0, 72, 72, 72, 72, 0, 0)
    assert weeks(found, "in_process.fruiting", 7, 13) == near(0, 72, 72, 72, 144 / 7, 0, 0)
    # in steamer and rooms together 90, 90, 90, 72, 72, 72 and 144 / 7 from the week of filling on
    assert found["in_process.there_counted"] == pytest.approx(486 + 144 / 7)
    # 10 at steaming, and 18 of the spawn run counted when their batch is opened
    assert weeks(found, "in_process.lost_by_opening", 4, 9) == near(0, 10, 0, 0, 18, 0)
    assert found["picks.picked"].sum() == pytest.approx(54)
    assert weeks(found, "shortages.loads", 4, 6) == near(0, 2, 0)


def test_a_new_farm_learns() -> None:
    """A tenth of the way: 18 in a hundred that would live are lost, the others give 0.55 of a typical crop."""
    slow = {"start_up.weeks_to_learn": 10, "start_up.loss_at_first": 0.2, "start_up.yield_at_first": 0.5}
    found = small(ONCE, slow, {"start_up.sales_at_first": 0.4})
    assert weeks(found, "start_up.learned", 3, 7) == near(0, 0, 0.1, 0.2, 0.3)
    assert weeks(found, "in_process.opened", 8, 8) == near(72 * 0.82)
    assert weeks(found, "picks.picked", 9, 11) == near(36 * 0.82 * 0.55, 0, 18 * 0.82 * 0.55)
    # customers take 0.4 at first, 40 kg in the end; in week 9 half of the way is gone
    assert weeks(found, "cold_room.wanted", 4, 9) == near(16, 18.4, 20.8, 23.2, 25.6, 28)


def test_bags_grow_evenly_and_hands_come_when_they_are_hired() -> None:
    begins = {
        "start_up.weeks_to_full": 4,
        "start_up.hands_from": 3,
        "step_up.from_week": None,
        "step_up.more_bags": None,
    }
    found = small(ONCE, begins)
    assert weeks(found, "filling.filled", 3, 10) == near(0, 0, 25, 50, 75, 100, 100, 100)
    assert weeks(found, "shortages.loads", 4, 8) == near(0, 1, 1, 2, 2)
    assert weeks(found, "week_hours.needed", 1, 2) == near(0, 0)
    assert weeks(found, "week_hours.needed", 3, 3) == near(float(found["hours.fixed"]))


def test_a_shut_week_is_felt_wherever_its_bags_would_be() -> None:
    """Week 1 of 2027 has its Thursday in December; the first week of January is week 2."""
    found = small({"plan.shut_weeks": [1] + [0] * 11})
    assert weeks(found, "filling.filled", 1, 4) == near(100, 0, 100, 100)
    assert weeks(found, "in_process.inoculated", 1, 4) == near(90, 90 / 7, 540 / 7, 90)
    assert weeks(found, "in_process.opened", 4, 6) == near(72, 0, 72)
    assert weeks(found, "picks.picked", 5, 9) == near(54, 18, 54, 36, 54)
    # bags of four weeks stand in the fruiting room, those of three in which the empty week is one of them
    assert weeks(found, "in_process.places", 4, 9) == near(288, 216, 216, 216, 216, 288)


def test_months_of_four_and_of_five_weeks_are_shut() -> None:
    """April 2027 has five Thursdays, May has four; June opens again."""
    found = small({"plan.shut_weeks": [0, 0, 0, 5, 4, 0, 0, 0, 0, 0, 0, 0]})
    # 14 weeks hold the Thursdays from 31 December to 1 April; week 23 holds that of 3 June
    assert weeks(found, "filling.filled", 13, 24) == near(100, *[0] * 9, 100, 100)
    found = small({"plan.shut_weeks": [0, 0, 0, 4, 0, 0, 0, 0, 0, 0, 0, 0]})
    assert weeks(found, "filling.filled", 13, 19) == near(100, 0, 0, 0, 0, 100, 100)


def test_weeks_typed_from_the_log_stand_before_the_plan() -> None:
    """The last week before the plan first; the thirteenth for all before it."""
    log = [10, None, 30, *[None] * 9, 50]
    found = small({"plan.filled_earlier": log})
    assert weeks(found, "filling.filled", -13, 1) == near(50, 50, *[100] * 9, 30, 100, 10, 100)
    # what was filled 4 and 6 weeks before is picked: week 2 of weeks -2 and -4, week 4 of weeks 0 and -2
    assert weeks(found, "picks.picked", 2, 6) == near(15 * 0.72 + 18, 54, 3.6 + 5.4, 54, 36 + 1.8)


def test_all_that_is_too_old_is_thrown_out_the_oldest_first() -> None:
    """36 kg and then 54 kg a week against customers who take 40; what is a week old can no longer be sold.

    The third row of picks is the first with both flushes; rows of the book are weeks -25, -24 and so on.
    """
    found = small()
    ready, sold, spoiled, left = (
        [float(each) for each in found[name][:13]]
        for name in ("picks.ready", "cold_room.sold", "cold_room.spoiled", "cold_room.left")
    )
    assert ready == near(0, 0, 0, 0, 0, 36, 36, 54, 54, 54, 54, 54, 54)
    assert sold == near(0, 0, 0, 0, 0, 36, 36, 40, 40, 40, 40, 40, 40)
    assert spoiled == near(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 2, 14, 14)
    assert left == near(0, 0, 0, 0, 0, 0, 0, 14, 28, 42, 54, 54, 54)


def test_what_keeps_a_week_and_a_half_lies_so_long() -> None:
    found = small({"plan.days_it_keeps": 10.5, "limits.cold_room": 60})
    assert weeks(found, "cold_room.spoiled", 1, 3) == near(14, 14, 14)
    assert weeks(found, "cold_room.left", 1, 3) == near(81, 81, 81)
    assert weeks(found, "shortages.cold_short", 1, 3) == near(21, 21, 21)
    found = small({"plan.days_it_keeps": 0})
    assert weeks(found, "cold_room.spoiled", 1, 3) == near(14, 14, 14)
    assert weeks(found, "cold_room.left", 1, 3) == near(0, 0, 0)


def test_places_and_loads_that_are_short_are_counted() -> None:
    """288 places are taken; 250 are there, and 50 more from week 10 on. The plan has 53 Mondays before 1 January 2028."""
    rooms = {"fruiting_room.own_places": 250, "step_up.from_week": [10, 20, None]}
    found = small(rooms, {"step_up.more_fruiting": [50, 0, None], "step_up.more_loads": [0, -100, None]})
    assert weeks(found, "shortages.places_short", 9, 10) == near(38, 0)
    assert found["shortages.weeks_planned"] == 53
    assert found["shortages.weeks_short_of_places"] == 9
    assert weeks(found, "shortages.loads", 19, 20) == near(2, 2)
    # 100 loads fewer than can be steamed: from week 20 on at least the two of the week are missing
    assert found["shortages.weeks_short_of_others"] == 53 - 19
    assert found["shortages.weeks_short"] == 9 + 34


def test_own_spawn_is_steamed_three_weeks_before_its_bags() -> None:
    """14 days of run, 8 in hand, less the day to the bench."""
    made = {"spawn.supply": "made on the farm", "own_spawn.route": "one grain, then sawdust spawn"}
    lab = {"own_spawn.run_days": [14, 11, 13, 12], "own_spawn.buffer_days": 8, "own_spawn.sawdust_cooked_in": "steamer"}
    found = small(ONCE, made, lab)
    share = float(found["own_spawn.places_per_bag"])
    assert 0 < 100 * share < 50
    assert weeks(found, "shortages.spawn_steamed", 1, 4) == near(0, 100, 0, 0)
    assert weeks(found, "shortages.loads", 1, 6) == near(0, 1, 0, 0, 2, 0)


@pytest.mark.parametrize("seed", range(6))
def test_all_bags_filled_leave_as_cleared_or_lost_or_are_there(seed: int) -> None:
    found = {name: value[0] for name, value in results([random_farm(seed)], "metric").items()}
    filled, there = (
        found["filling.filled"].sum(),
        found["in_process.whole"].sum() - found["in_process.inoculated"].sum(),
    )
    there += found["in_process.incubating"][-1] + found["in_process.fruiting"][-1]
    gone = found["in_process.lost_by_opening"].sum() + found["in_process.dumped"].sum()
    assert gone + there == pytest.approx(filled, rel=1e-9)
    ready, left = found["picks.ready"].sum(), found["cold_room.left"][-1]
    assert found["cold_room.sold"].sum() + found["cold_room.spoiled"].sum() + left == pytest.approx(
        ready, rel=1e-9, abs=1e-6
    )


def wound_up() -> Found:
    """The small farm fills no bags from week 10 on, and gives its rooms back in week 17."""
    shuts = {"step_up.from_week": [10, 17, None], "step_up.more_bags": [-100, 0, None]}
    rooms = {"incubation_room.own_places": 400, "fruiting_room.own_places": 300}
    return small(shuts, rooms, {"step_up.more_fruiting": [0, -300, None], "step_up.more_incubation": [0, -400, None]})


def test_a_farm_wound_up_leaves_nothing_behind() -> None:
    """Bags of the last week are out of the last room 7 weeks later."""
    found = wound_up()
    assert weeks(found, "in_process.places", 14, 18) == near(144, 72, 0, 0, 0)
    assert weeks(found, "in_process.incubating", 17, 53) == near(*[0] * 37)
    assert weeks(found, "in_process.fruiting", 17, 53) == near(*[0] * 37)


def test_what_is_in_no_room_is_short_of_no_place() -> None:
    assert wound_up()["shortages.weeks_short_of_places"] == 0


STEADY: Final[Mapping[str, str]] = {
    "picks.picked": "harvest.picked_a_week",
    "picks.ready": "harvest.taken_a_week",
    "in_process.places": "fruiting_room.taken",
    "shortages.incubation_taken": "incubation_room.taken",
    "in_process.opened": "harvest.live_a_week",
    "in_process.inoculated": "spawn.bags_inoculated_a_week",
    "week_hours.needed": "hours.by_the_hour",
    "week_hours.hired": "hours.hired",
}
"""Of a farm that goes on as ever, each week is the typical one, which is worked out with no weeks at all."""
EVEN: Final[Named] = {"plan.shut_weeks": 0, "plan.yield_season": 1}
OWN_SPAWN: Final[Named] = {"spawn.supply": "made on the farm", "own_spawn.route": "one grain, then sawdust spawn"}
VESSEL: Final[Named] = {"steamer.kind": "pressure vessel", "crop.flushes_kept": 4, "picking.paid": "by the piece"}


@pytest.mark.parametrize("changes", [{}, OWN_SPAWN, VESSEL, SMALL], ids=["bought", "made", "vessel", "small"])
@pytest.mark.parametrize("months", [12, 36])
def test_every_week_of_a_steady_farm_is_the_typical_one(changes: Named, months: int) -> None:
    found = {
        name: value[0]
        for name, value in results(
            [farm_of({**PLAUSIBLE, **changes_of({**changes, **EVEN})}, NAMES, months)], "metric"
        ).items()
    }
    for weekly, typical in STEADY.items():
        in_plan = found[weekly][WEEKS_BEFORE:]
        assert np.allclose(in_plan, float(found[typical]), rtol=1e-9), weekly


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda each: each.stem)
def test_rooms_of_the_examples_hold_what_they_hold_in_a_typical_week(path: Path) -> None:
    """Where as many bags were filled in each week as a bag takes, and there is nothing left to learn, by the bags of a week."""
    computed = compute(load_scenario(path))
    values = {line.name: computed.values[line][0, ...] for line in computed.roots if not line.is_text}
    filled, learned, span = values["filling.filled"], values["start_up.learned"], int(values["freeing.whole"]) + 2
    rows = {row: slice(row - span, row + 1) for row in range(WEEKS_BEFORE, len(filled))}
    steady = [row for row, weeks in rows.items() if np.ptp(filled[weeks]) == 0 and learned[weeks].min() == 1]
    assert len(steady) > 20
    for_a_bag = float(values["fruiting_room.taken"]) / float(values["farm.bags_filled_a_week_used"])
    assert np.allclose(values["in_process.places"][steady], filled[steady] * for_a_bag, rtol=1e-9)
