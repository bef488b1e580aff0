"""Twin of the plan's calendar: weeks from a Monday on, months from the first of one, by the dates of Python."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta

from tests.twin.farm_twin_ground import Given, Results

__all__ = ["BEFORE", "Calendar", "calendar"]

BEFORE, AFTER = 26, 20
"""Weeks that stand before and after those of the plan."""
DAYS_IN_A_WEEK = 7
MONTHS_IN_A_YEAR = 12
DAY_ZERO = date(1899, 12, 30)
A_MONDAY = date(1900, 1, 1)
EARLIEST, LATEST = date(2000, 1, 1), date(2099, 12, 31)


def counted(day: date) -> float:
    """A day as spreadsheets count it."""
    return float((day - DAY_ZERO).days)


def month_later(first: date, months: int) -> date:
    """The first of the month so many months after another first."""
    years, month = divmod(first.year * MONTHS_IN_A_YEAR + first.month - 1 + months, MONTHS_IN_A_YEAR)
    return date(years, month + 1, 1)


class Calendar:
    """The weeks and the months of one plan."""

    def __init__(self, given: Given) -> None:
        self.months = int(given["plan.months"])
        typed = max(counted(EARLIEST), min(float(given["plan.start"]), counted(LATEST)))
        self.day = typed
        start = DAY_ZERO + timedelta(days=math.floor(typed))
        self.firsts = [month_later(start.replace(day=1), month) for month in range(self.months + 1)]
        self.first_monday = self.firsts[0] - timedelta(days=self.firsts[0].weekday())
        years = math.ceil(self.months / MONTHS_IN_A_YEAR)
        # a plan may start on any day of a week, and every fourth year begun may be a leap year
        days = 365 * years + math.ceil(years / 4) + DAYS_IN_A_WEEK - 1
        self.rows = BEFORE + math.ceil(days / DAYS_IN_A_WEEK) + AFTER
        self.numbers = [row - BEFORE for row in range(1, self.rows + 1)]
        self.mondays = [self.first_monday + timedelta(weeks=week - 1) for week in self.numbers]
        thursdays = [monday + timedelta(days=3) for monday in self.mondays]
        self.month_of_year = [thursday.month for thursday in thursdays]
        self.passed = [(thursday.day - 1) // DAYS_IN_A_WEEK for thursday in thursdays]
        self.in_plan = [
            week >= 1 and monday < self.firsts[-1] for week, monday in zip(self.numbers, self.mondays, strict=True)
        ]

    def rows_to(self, day: date) -> float:
        """Rows of weeks passed before a day."""
        return BEFORE + (day - self.first_monday).days / DAYS_IN_A_WEEK

    def by_month(self, twelve: Sequence[float]) -> list[float]:
        """For each week the figure of the month that holds its Thursday."""
        return [float(twelve[month - 1]) for month in self.month_of_year]


def calendar(given: Given, _out: Results) -> Results:
    """Every line of the calendar."""
    when = Calendar(given)
    parts: dict[str, Results] = {
        "plan_start": start_lines(when),
        "plan_months": month_lines(when),
        "plan_weeks": week_lines(when),
        "plan_years": year_lines(when),
    }
    return {f"{part}.{name}": value for part, found in parts.items() for name, value in found.items()}


def start_lines(when: Calendar) -> Results:
    """The one date from which all others follow."""
    return {
        "day": when.day,
        "first_of_month": counted(when.firsts[0]),
        "weeks_before": float((when.firsts[0] - A_MONDAY).days // DAYS_IN_A_WEEK),
        "first_monday": counted(when.first_monday),
    }


def month_lines(when: Calendar) -> Results:
    """Months, and the rows of weeks that are over when they are."""
    here, after = when.firsts[:-1], when.firsts[1:]
    rows, before = [when.rows_to(day) for day in after], when.rows_to(when.firsts[0])
    days = [float((end - first).days) for first, end in zip(here, after, strict=True)]
    return {
        "number": [1.0 + month for month in range(when.months)],
        "many": float(when.months),
        "first_day": [counted(day) for day in here],
        "next_first_day": [counted(day) for day in after],
        "end": counted(when.firsts[-1]),
        "days": days,
        "month_of_year": [float(day.month) for day in here],
        "year": [1.0 + month // MONTHS_IN_A_YEAR for month in range(when.months)],
        "begins_year": [float(month % MONTHS_IN_A_YEAR == 0) for month in range(when.months)],
        "weeks": [each / DAYS_IN_A_WEEK for each in days],
        "rows_before": before,
        "passed": float(math.floor(before)),
        "begun": before - math.floor(before),
        "rows": rows,
        "whole": [float(math.floor(each)) for each in rows],
        "part": [each - math.floor(each) for each in rows],
    }


def week_lines(when: Calendar) -> Results:
    """Weeks, with those before and after the plan."""
    return {
        "row": [float(row) for row in range(1, when.rows + 1)],
        "rows": float(when.rows),
        "number": [float(week) for week in when.numbers],
        "monday": [counted(monday) for monday in when.mondays],
        "month_of_year": [float(month) for month in when.month_of_year],
        "in_plan": [float(each) for each in when.in_plan],
    }


def year_lines(when: Calendar) -> Results:
    """Years of the plan."""
    years = range(1, math.ceil(when.months / MONTHS_IN_A_YEAR) + 1)
    return {"number": [float(year) for year in years], "last_month": [12.0 * year for year in years]}
