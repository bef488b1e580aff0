"""The plan's months and weeks, by the calendar of the standard library."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

from tests.twin.farm_twin_ground import Given, Results

__all__ = ["calendar", "last_day"]

DAY_NOUGHT = date(1899, 12, 30)
FIRST, LAST = date(2000, 1, 1), date(2099, 12, 31)
WEEKS_BEFORE, WEEKS_AFTER, DAYS, YEAR = 26, 20, 7, 12
THURSDAY = 3


def first_of(given: Given, months_later: int = 0) -> date:
    """The first day of the month that holds the start of the plan, or of one so many months later."""
    day = DAY_NOUGHT + timedelta(days=int(given["plan.start"]))
    kept = min(max(day, FIRST), LAST)
    months = kept.year * YEAR + kept.month - 1 + months_later
    return date(months // YEAR, months % YEAR + 1, 1)


def last_day(given: Given) -> date:
    """The first day that is no longer in the plan."""
    return first_of(given, int(given["plan.months"]))


def calendar(given: Given, _out: Results) -> Results:
    """What each month and each week is."""
    firsts = [first_of(given, month) for month in range(int(given["plan.months"]) + 1)]
    monday = firsts[0] - timedelta(days=firsts[0].weekday())
    passed = [WEEKS_BEFORE + (day - monday).days / DAYS for day in firsts]
    mondays = [monday + timedelta(days=DAYS * week) for week in range(-WEEKS_BEFORE, weeks_counted(given))]
    return {
        "plan_months.days": [float((later - day).days) for day, later in pairwise(firsts)],
        "plan_months.weeks": [(later - day).days / DAYS for day, later in pairwise(firsts)],
        "plan_months.month_of_year": [float(day.month) for day in firsts[:-1]],
        "plan_months.begins_year": [float(month % YEAR == 0) for month in range(len(firsts) - 1)],
        "plan_months.part_before": passed[0] % 1,
        "plan_months.part": [each % 1 for each in passed[1:]],
        "plan_weeks.month_of_year": [float((day + timedelta(days=THURSDAY)).month) for day in mondays],
        "plan_weeks.in_plan": [float(monday <= day < firsts[-1]) for day in mondays],
    }


def weeks_counted(given: Given) -> int:
    """Weeks from week 1 on that the book has: enough for the longest years and a start on a Sunday, and those after it."""
    years = -(-int(given["plan.months"]) // YEAR)
    days = 365 * years + -(-years // 4)
    return -(-(days + DAYS - 1) // DAYS) + WEEKS_AFTER
