"""What every part of the twin's months needs: the months themselves, and what is paid some days after it is due."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = [
    "DAYS_IN_A_WEEK",
    "MONTHS_IN_A_YEAR",
    "Monthly",
    "Months",
    "alike",
    "changes",
    "months_of",
    "paid_later",
    "running",
]

Monthly = list[float]

MONTHS_IN_A_YEAR = 12
DAYS_IN_A_WEEK = 7
DAYS_IN_A_MONTH = 30.4375
"""Of the mean month."""


@dataclass(frozen=True)
class Months:
    """The months of one plan: days, month of the calendar, first day, and how many rows of weeks are over at the end."""

    days: Monthly
    month_of_year: list[int]
    first_days: Monthly
    before: float
    ends: Monthly

    def by_calendar(self, twelve: Monthly) -> Monthly:
        """For each month the figure of its month of the calendar."""
        return [float(twelve[month - 1]) for month in self.month_of_year]


def months_of(days: float) -> tuple[float, int, float]:
    """Days as months, whole months to the ninth decimal, and the part of a month that is left."""
    lag = float(days) / DAYS_IN_A_MONTH
    whole = math.floor(round(lag, 9))
    return lag, whole, lag - whole


def months_back(so_far: Monthly, days: float) -> tuple[Monthly, Monthly]:
    """Sums so far as they were so many whole months back, and as they were a month further back."""
    _, whole, _ = months_of(days)
    near, far = [], []
    for month in range(1, len(so_far) + 1):
        near.append(so_far[month - whole - 1] if month > whole else 0.0)
        far.append(so_far[month - whole - 2] if month > whole + 1 else 0.0)
    return near, far


def paid_later(so_far: Monthly, days: float) -> Monthly:
    """What of sums so far is paid by the end of each month, when each is paid so many days later."""
    _, _, part = months_of(days)
    return [near * (1 - part) + far * part for near, far in zip(*months_back(so_far, days), strict=True)]


def changes(so_far: Monthly, before: float = 0.0) -> Monthly:
    """From each month to the next."""
    found = []
    for each in so_far:
        found.append(each - before)
        before = each
    return found


def running(each_month: Monthly) -> Monthly:
    """Added up from the first month on."""
    found, so_far = [], 0.0
    for each in each_month:
        so_far += each
        found.append(so_far)
    return found


def alike(one: Monthly, other: Monthly, rounding: float) -> float:
    """1 where two ways of counting differ by no more than rounding over all months."""
    return float(math.hypot(*[here - there for here, there in zip(one, other, strict=True)]) <= abs(rounding))
