"""Lines over the years of the plan, made of lines by month."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from farmbook.expr.functions import starting
from farmbook.expr.nodes import Expr
from farmbook.model.axes import PLAN_YEAR
from farmbook.sections.declare import LineOf, line

__all__ = ["at_year_end", "in_year"]


def in_year(label: str, note: str, monthly: Callable[[Any], Expr]) -> LineOf:
    """What comes or goes by the month, added up over each year; the section has the years as `years`."""

    def add(self: Any) -> Expr:
        """Twelve months each."""
        found: Expr = self.years.of_year(monthly(self))
        return found

    add.__doc__ = note
    return line(label, unit="money", axes=(PLAN_YEAR,))(add)


def at_year_end(label: str, note: str, both: Callable[[Any], tuple[Expr, Any]]) -> LineOf:
    """What stands at the end of each year, after what stands when the plan starts."""

    def stands(self: Any) -> Expr:
        """In the last month of each."""
        opening, monthly = both(self)
        return starting(opening, self.years.at_end(monthly))

    stands.__doc__ = note
    return line(label, unit="money", axes=(PLAN_YEAR,))(stands)
