"""The plausible farm with plans of many kinds: when they start, how long they run, and what is strange about their weeks."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any, Final

from tests.twin.edge_farms import NAMES, PLAUSIBLE, changes_of
from tests.twin.farms import Farm, farm_of

__all__ = ["HORIZONS", "STARTS", "TWISTS", "day_counted", "plan_farm"]

HORIZONS: Final = (12, 36, 84)
"""Months; seven years from 2027 on hold two leap years."""
DAY_ZERO: Final = date(1899, 12, 30)


def day_counted(day: date) -> float:
    """A day as spreadsheets count it."""
    return float((day - DAY_ZERO).days)


STARTS: Final[Mapping[str, float | None]] = {
    "an ordinary Friday": day_counted(date(2027, 1, 1)),
    "29 February": day_counted(date(2028, 2, 29)),
    "the first a Monday": day_counted(date(2029, 1, 1)),
    "the first a Sunday": day_counted(date(2028, 10, 1)),
    "the last of a month of five Mondays": day_counted(date(2027, 3, 31)),
    "within a month of five Thursdays": day_counted(date(2027, 7, 15)),
    "so that week 1 lies in the year before": day_counted(date(2032, 1, 1)),
    "the day before a leap year": day_counted(date(2027, 12, 31)),
    "a century that is no leap year ahead": day_counted(date(2096, 2, 1)),
    "the earliest day": day_counted(date(2000, 1, 1)),
    "before the earliest day": day_counted(date(1999, 5, 31)),
    "after the latest day": day_counted(date(2101, 3, 1)),
    "with a time of day": day_counted(date(2028, 2, 29)) + 0.75,
    "none typed": None,
}
ROOMS: Final[Mapping[str, Any]] = {
    "incubation_room.own_places": 1900,
    "fruiting_room.own_places": 2300,
    "limits.cold_room": 150,
}
NEW: Final[Mapping[str, Any]] = {"farm.stage": "new farm"}
OWN_SPAWN: Final[Mapping[str, Any]] = {
    "spawn.supply": "made on the farm",
    "own_spawn.route": "two grains, then sawdust spawn",
}
GROWING: Final[Mapping[str, Any]] = {
    "step_up.from_week": [20, 33.5, None],
    "step_up.more_bags": [150, 90, None],
    "step_up.more_incubation": [600, 0, None],
    "step_up.more_fruiting": [0, 900, None],
    "step_up.more_loads": [1, 0.5, None],
    "step_up.more_hours": [0, 12, None],
}
WOUND_UP: Final[Mapping[str, Any]] = {
    **ROOMS,
    "step_up.from_week": [10, 30, None],
    "step_up.more_bags": [-620, 0, None],
    "step_up.more_incubation": [0, -1900, None],
    "step_up.more_fruiting": [0, -2300, None],
    "step_up.more_hours": [-5, -10000, None],
}
SHORT_ONCE: Final[Mapping[str, Any]] = {
    "fruiting_room.own_places": 5000,
    "hours.own_hours": 0,
    "plan.shut_weeks": 0,
    "step_up.from_week": [53, None, None],
    "step_up.more_fruiting": [-4900, None, None],
    "step_up.more_loads": [-100, None, None],
    "step_up.more_hours": [-1, None, None],
}
"""In a plan of a year."""
TWISTS: Final[Mapping[str, Mapping[str, Any]]] = {
    "all at its defaults": {},
    "rooms known": ROOMS,
    "a new farm": {**ROOMS, **NEW},
    "a new farm that is full at once": {**NEW, "start_up.weeks_to_full": 1, "start_up.weeks_to_learn": 1},
    "a new farm of which nothing is typed": {
        **NEW,
        "start_up.first_filling": None,
        "start_up.weeks_to_full": None,
        "start_up.weeks_to_learn": None,
        "start_up.hands_from": None,
    },
    "a new farm that begins after a year": {
        **NEW,
        "start_up.first_filling": 60,
        "start_up.weeks_to_full": 52,
        "start_up.hands_from": 56,
        "start_up.loss_at_first": 1,
        "start_up.yield_at_first": 1.4,
    },
    "changes of the plan": {**ROOMS, **GROWING},
    "changes of the plan of a new farm": {**ROOMS, **NEW, **GROWING},
    "more taken away than there is": {"step_up.more_bags": [-400, -400, None], "step_up.from_week": [8, 16, None]},
    "wound up, its rooms given back": WOUND_UP,
    "short in the last week alone": SHORT_ONCE,
    "shut in most weeks": {"plan.shut_weeks": [5, 1, 2, 3, 4, 0, 5, 1, 0.5, 4, 2, 3]},
    "shut a week more than its weeks worked say": {"plan.shut_weeks": [1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0]},
    "shut a week less than its weeks worked say": {"plan.shut_weeks": [0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0]},
    "weeks before typed": {"plan.filled_earlier": [500, 0, None, 700, 610.5, None, 0, 0, 300, 650, None, 620, 400]},
    "weeks before typed of a new farm": {**NEW, "plan.filled_earlier": [500] * 13},
    "all from nothing before": {"plan.filled_earlier": [0] * 13},
    "seasons of the yield": {"plan.yield_season": [0.7, 0.8, 1, 1.1, 1.2, 1.1, 0.9, 0.8, 1, 1, 0.9, 0]},
    "keeps no day": {"plan.days_it_keeps": 0, "limits.cold_room": 40},
    "keeps a week and a half, few customers": {
        "plan.days_it_keeps": 10.5,
        "customer.most_a_week": [20, 30, 10, 5, 0],
        "limits.cold_room": 60,
    },
    "no cold room, customers away in winter": {
        "limits.cold_room": 0,
        "customer.season": [[0, 0, 0.4] + [1] * 7 + [0.6, 0]] * 5,
    },
    "customers in another turn": {"customer.order": [3, 2, 2, 1, 9], "customer.takes_rest": [1, 0, 0, 0, 0]},
    "own spawn steamed": {**ROOMS, **OWN_SPAWN},
    "own spawn steamed, half loads": {**OWN_SPAWN, "farm.bags_per_load": 40, "limits.cold_room": 5},
    "own spawn steamed from a start": {**NEW, **OWN_SPAWN, "steamer.kind": "pressure vessel"},
    "own spawn that takes too long": {**OWN_SPAWN, "own_spawn.run_days": [150, 40, 40, 12], "own_spawn.batch_weeks": 1},
    "own spawn on paper, while it is bought": {**OWN_SPAWN, "spawn.supply": "bought"},
    "own spawn wanted after filling": {**OWN_SPAWN, "own_spawn.run_days": 0, "own_spawn.buffer_days": 0},
    "spawn ordered half a year ahead": {"spawn.lead_time": 26},
    "spawn ordered twenty weeks ahead": {"spawn.lead_time": 20},
    "size of a load not known": {"farm.bags_per_load": None},
    "bags that stand for half a year": {"crop.added_days": [0, 150, 14, 15]},
    "bags just within reach": {"crop.spawn_run_days": 28, "crop.added_days": [0, 126, 14, 15]},
    "dumped before they are picked": {"crop.days_given": "in one number", "crop.own_days_until_dumped": 35},
    "picked for a month": {"crop.pick_days": 30, "crop.days_to_first_pick": 0},
    "picked by the piece": {"picking.paid": "by the piece"},
    "few hands": {"hours.counted": "hours paid", "hours.hired_hours": 4, "hours.own_hours": 10},
    "no bags": {"farm.bags_filled_a_week": None},
    "nothing steamed that is not lost": {"crop.loss_at_steaming": 1},
}


def plan_farm(start: str, twist: str, months: int) -> Farm:
    """The plausible farm with one start, one twist of its weeks, and a plan of so many months."""
    named = {"plan.start": STARTS[start], **TWISTS[twist]}
    return farm_of({**PLAUSIBLE, **changes_of(named)}, NAMES, months)
