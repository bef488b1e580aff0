"""What every subject of the twin needs: division that gives nothing over nothing, names compared, whole numbers up."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = ["ROUNDING", "Given", "Numbers", "Results", "agree", "chosen_rows", "nothing_left", "over", "same", "spread",
    "taken_of_a_profit", "whole_up",
]  # fmt: skip

Given = Mapping[str, Any]
Results = dict[str, Any]
Numbers = npt.NDArray[np.float64]

ROUNDING = 1e-9
"""Two sums that should be equal may differ by this share of their amount."""


def over(above: float, below: float) -> float:
    """A share or a rate; nothing where there is nothing to divide by."""
    if below == 0:
        return 0.0
    return float(above) / float(below)


def same(one: str, other: str) -> bool:
    """Whether two names are the same name, capitals aside; an empty name is no name."""
    return one != "" and one.lower() == other.lower()


def whole_up(amount: float) -> float:
    """The whole number that is enough for an amount, to the ninth decimal."""
    return float(math.ceil(round(amount, 9)))


def agree(one: float, other: float) -> bool:
    """Whether two sums are the same but for rounding."""
    return abs(one - other) <= ROUNDING * max(abs(one), abs(other))


def nothing_left(difference: float, *parts: float) -> float:
    """1 where a sum that should come to nothing does, but for rounding of its parts, whatever their signs."""
    return float(abs(difference) <= ROUNDING * max(abs(part) for part in parts))


def chosen_rows(given: Given) -> list[int]:
    """The places of the recipes that bear the chosen name: one of them in a book without mistakes."""
    wanted = given["mix.chosen_recipe"]
    return [place for place, name in enumerate(given["recipe.name"]) if same(name, wanted)]


def spread(rows: Sequence[Sequence[float]]) -> Numbers:
    """A table of numbers as an array."""
    return np.array(rows, dtype=float)


def taken_of_a_profit(given: Given) -> float:
    """Of 100 of profit: insurance on part of it, unless one rate holds all; then income tax on what insurance leaves to tax."""
    insurance = 0.0
    if same(given["household.social"], "by its own rate") and not same(given["household.form"], "corporation"):
        insurance = 100 * float(given["household.social_share"]) * float(given["household.social_rate"])
    taxed = 100 - insurance * float(given["household.social_deducted"])
    return min(taxed * float(given["household.tax_rate"]) + insurance, 100.0) / 100
