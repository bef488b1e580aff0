"""The lists over which the farm's lines run."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis

__all__ = ["FLUSH", "GENERATION", "INGREDIENT", "RECIPE", "STEP", "STERILISER", "YEAR"]

INGREDIENT: Final = Axis("ingredient", "ingredient", "down", 10, named=True, most=20)
RECIPE: Final = Axis("recipe", "recipe", "across", 20, named=True, most=4)
FLUSH: Final = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second", "third", "fourth"))
STERILISER: Final = Axis("steriliser", "steriliser", "across", 40, members=("cabinet", "vessel"))
GENERATION: Final = Axis("generation", "generation", "down", 50, members=("plate", "grain", "second_grain", "sawdust"))
STEP: Final = Axis("step", "step", "down", 80, ordered=True, members=tuple(str(number) for number in range(1, 193)))
YEAR: Final = Axis("year", "year", "across", 90, ordered=True, members=tuple(str(number) for number in range(11)))
