"""The lists over which the farm's lines run."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis

__all__ = [
    "ALTITUDE",
    "BILL",
    "CALENDAR",
    "COURSE",
    "CUSTOMER",
    "EXTRA_LOSS",
    "FLUSH",
    "GENERATION",
    "INGREDIENT",
    "ITEM",
    "RECIPE",
    "STEAMER",
    "STEP",
    "YEAR",
]

INGREDIENT: Final = Axis("ingredient", "ingredient", "down", 10, named=True, most=20)
RECIPE: Final = Axis("recipe", "recipe", "across", 20, named=True, most=4)
CUSTOMER: Final = Axis("customer", "customer", "across", 22, named=True, ordered=True, most=5)
ITEM: Final = Axis("item", "item", "down", 24, named=True, most=20)
BILL: Final = Axis("bill", "bill", "down", 26, named=True, most=20)
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
STEP: Final = Axis("step", "step", "down", 80, ordered=True, members=tuple(str(number) for number in range(1, 193)))
YEAR: Final = Axis("year", "year", "down", 90, ordered=True, members=tuple(str(number) for number in range(11)))
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
