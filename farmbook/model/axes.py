"""The lists over which the farm's lines run."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

from farmbook.expr.axis import Axis

__all__ = [
    "AHEAD",
    "ALTITUDE",
    "BILL",
    "CALENDAR",
    "COURSE",
    "CUSTOMER",
    "EARLIER",
    "EXTRA_LOSS",
    "FLUSH",
    "GENERATION",
    "GUARANTOR",
    "HALVING",
    "HOUSEHOLD_DEBT",
    "INGREDIENT",
    "ITEM",
    "LOAN",
    "LOAN_ROW",
    "LOAN_YEAR",
    "MONTH",
    "OWNER",
    "PAST_MONTH",
    "PAST_YEAR",
    "PERMIT",
    "PLAN_YEAR",
    "RECIPE",
    "SECURITY",
    "SERVED",
    "STEAMER",
    "STEP",
    "STEP_UP",
    "WEEK",
    "WEEKS_AFTER",
    "WEEKS_BEFORE",
    "WETNESS",
    "YEAR",
    "sizes_of_plan",
]

YEARS_OF_LOANS: Final = 40

INGREDIENT: Final = Axis("ingredient", "ingredient", "down", 10, named=True, ordered=True, most=20)
RECIPE: Final = Axis("recipe", "recipe", "across", 20, named=True, most=4)
CUSTOMER: Final = Axis("customer", "customer", "across", 22, named=True, ordered=True, most=5)
ITEM: Final = Axis("item", "item", "down", 24, named=True, most=20)
BILL: Final = Axis("bill", "bill", "down", 26, named=True, most=20)
LOAN: Final = Axis("loan", "loan", "down", 27, named=True, most=12)
STEP_UP: Final = Axis("step_up", "change of the plan", "down", 28, named=True, ordered=True, most=10)
OWNER: Final = Axis("owner", "owner", "down", 31, named=True, most=6)
GUARANTOR: Final = Axis("guarantor", "guarantor", "down", 32, named=True, most=4)
SECURITY: Final = Axis("security", "security", "down", 33, named=True, most=12)
HOUSEHOLD_DEBT: Final = Axis("household_debt", "debt of the household", "down", 34, named=True, most=6)
PERMIT: Final = Axis("permit", "permit", "down", 35, named=True, most=10)
PAST_YEAR: Final = Axis(
    "past_year",
    "past year",
    "across",
    36,
    ordered=True,
    members=("three_years_ago", "two_years_ago", "last_year", "this_year_so_far"),
)
"""Years before the plan, of which the farm has records."""
PAST_MONTH: Final = Axis(
    "past_month",
    "month before the plan",
    "down",
    37,
    ordered=True,
    members=tuple(str(number) for number in range(1, 13)),
)
"""1 is the last month before the plan."""
SERVED: Final = Axis(
    "served", "customer in turn", "down", 29, ordered=True, members=("first", "second", "third", "fourth", "fifth")
)
"""The columns of customers, put in the order in which they are served."""
FLUSH: Final = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second", "third", "fourth"))
STEAMER: Final = Axis("steamer", "steamer", "across", 40, members=("cabinet", "vessel"))
GENERATION: Final = Axis(
    "generation", "generation", "down", 50, ordered=True, members=("sawdust", "second_grain", "grain", "plate")
)
"""Of spawn, counted back from the bags: what goes into them last stands first."""
EXTRA_LOSS: Final = Axis(
    "extra_loss",
    "extra loss",
    "down",
    60,
    ordered=True,
    members=(
        "none",
        "half_a_point",
        "one_point",
        "one_and_a_half_points",
        "two_points",
        "two_and_a_half_points",
        "three_points",
    ),
)
"""Points of loss, in steps of half a point."""
ALTITUDE: Final = Axis(
    "altitude", "row", "down", 70, ordered=True, members=tuple(str(number) for number in range(1, 10))
)
COURSE: Final = Axis("course", "bag", "across", 75, ordered=True, members=("slow_bag", "by_size_or_probe", "fast_bag"))
"""How the middle of a bag may warm: what is expected stands between what is known at worst and at best."""
STEP: Final = Axis("step", "step", "down", 80, ordered=True, members=tuple(str(number) for number in range(1, 51)))
"""Even parts of the time that a load is held in a steamer."""
YEAR: Final = Axis("year", "year", "down", 90, ordered=True, members=tuple(str(number) for number in range(11)))
LOAN_ROW: Final = Axis(
    "loan_row", "year", "down", 92, ordered=True, members=tuple(str(number) for number in range(1, YEARS_OF_LOANS + 1))
)
LOAN_YEAR: Final = Axis("loan_year", "year", "across", 93, ordered=True, members=LOAN_ROW.members)
"""Years from the start of the plan on in which loans are paid back: across where each loan has a row, down in their table."""
CALENDAR: Final = Axis(
    "calendar_month",
    "month",
    "down",
    95,
    ordered=True,
    members=(
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ),
)
"""The months of any year, by which customers buy more or less."""
EARLIER: Final = Axis(
    "earlier", "weeks before the plan", "down", 94, ordered=True, members=tuple(str(number) for number in range(1, 14))
)
WETNESS: Final = Axis("wetness", "sawdust", "down", 91, members=("much_drier", "drier", "wetter", "much_wetter"))
"""How the sawdust may come, beside what is typed of it."""
AHEAD: Final = Axis("ahead", "week", "down", 96, ordered=True, members=tuple(str(number) for number in range(1, 14)))
"""Weeks that the printed schedule shows, from this week on."""
HALVING: Final = Axis(
    "halving", "step", "down", 89, ordered=True, members=tuple(str(number) for number in range(1, 31))
)
"""Steps of a search by halves: after thirty a billionth of the whole is left."""
WEEKS_BEFORE: Final = 26
WEEKS_AFTER: Final = 20
"""Weeks before and after the plan: a bag is in process, and spawn is started ahead, for no longer."""
WEEK: Final = Axis("week", "week", "down", 97, ordered=True, sized=True, before=WEEKS_BEFORE, after=WEEKS_AFTER)
"""Weeks of the plan, with weeks before it that carry what is in process at the start, and weeks after it for what is started
ahead."""
MONTH: Final = Axis("month", "month", "across", 98, ordered=True, sized=True)
PLAN_YEAR: Final = Axis("plan_year", "year of the plan", "across", 99, ordered=True, sized=True)

DAYS_A_YEAR, YEARS_TO_A_LEAP_DAY, DAYS_A_WEEK = 365, 4, 7


def sizes_of_plan(months: int) -> Mapping[Axis, int]:
    """How many weeks, months and years a plan of so many months has, whatever day it starts on.

    Week 1 begins on the Monday on or before the first of the first month, up to six days before it.
    """
    years = math.ceil(months / 12)
    days = DAYS_A_YEAR * years + math.ceil(years / YEARS_TO_A_LEAP_DAY)
    weeks = math.ceil((days + DAYS_A_WEEK - 1) / DAYS_A_WEEK)
    return {WEEK: WEEKS_BEFORE + weeks + WEEKS_AFTER, MONTH: months, PLAN_YEAR: years}
