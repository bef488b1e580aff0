"""What every part of the twin's schedule needs: days as weeks, things that happen days later, sums, changes of the plan."""

from __future__ import annotations

import math
from itertools import accumulate

from tests.twin.farm_twin_calendar import Calendar
from tests.twin.farm_twin_ground import Given

__all__ = ["DAYS_IN_A_WEEK", "Weekly", "changed", "later", "so_far", "split"]

Weekly = list[float]

DAYS_IN_A_WEEK = 7


def split(days: float) -> tuple[float, int, float]:
    """Days as weeks, none below zero, whole weeks to the ninth decimal, and the part of a week that is left."""
    in_weeks = max(days, 0.0) / DAYS_IN_A_WEEK
    whole = math.floor(round(in_weeks, 9))
    return in_weeks, whole, in_weeks - whole


def later(weekly: Weekly, days: float) -> Weekly:
    """What happens so many days after the bags of each week: part of it in one week, the rest in the next."""
    _, whole, part = split(days)
    return [
        weekly[max(row - whole, 0)] * (1 - part) + weekly[max(row - whole - 1, 0)] * part for row in range(len(weekly))
    ]


def so_far(weekly: Weekly) -> Weekly:
    """Added up from the first row on."""
    return list(accumulate(weekly))


def changed(given: Given, when: Calendar, what: str) -> Weekly:
    """What the changes of the plan so far add in each week."""
    rows = list(zip(given["step_up.from_week"], given[f"step_up.{what}"], strict=True))
    return [sum(float(more) for first, more in rows if first <= week) for week in when.numbers]
