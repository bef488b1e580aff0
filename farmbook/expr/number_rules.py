"""The functions of the closed list for floats and arrays. Apart from the nodes, so that NumPy is loaded only to calculate."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

import numpy as np

__all__ = ["NUMBER_RULES", "chosen", "quotient"]


def _whole_up(x: Any) -> Any:
    """Round to nine digits first, so that 3.0000000001 made by a conversion is three whole units (rule 6)."""
    return np.sign(x) * np.ceil(np.abs(np.round(x, 9)))


def _whole_down(x: Any) -> Any:
    """Round to nine digits first: of 2.9999999999999996 some spreadsheet programs make 3 and others 2."""
    return np.floor(np.round(x, 9))


def _whole_near(x: Any) -> Any:
    """Halves go away from zero, as in spreadsheets; NumPy's own rule takes them to the even one."""
    digits = np.round(x, 9)
    whole = np.trunc(digits)
    return whole + np.trunc(2 * (digits - whole))


EPOCH: Final = np.datetime64("1899-12-30")
"""Day 0 of spreadsheets."""
_LAST_DAY: Final = 2_958_465
"""31 December 9999; no spreadsheet counts further."""


def _months_since(date: Any) -> Any:
    """Whole months since January of the year 0 in which a date falls."""
    days = np.clip(np.nan_to_num(np.floor(np.asarray(date, dtype=float))), 0, _LAST_DAY)
    return (EPOCH + days.astype("timedelta64[D]")).astype("datetime64[M]").astype(int) + 1970 * 12


def _month_start(date: Any, months: Any) -> Any:
    begun = np.clip(
        _months_since(date) + np.nan_to_num(np.trunc(np.asarray(months, dtype=float))), 1900 * 12, 9999 * 12
    )
    first = (begun - 1970 * 12).astype(int).astype("datetime64[M]").astype("datetime64[D]")
    return (first - EPOCH).astype(float)


NUMBER_RULES: Final[dict[str, Callable[..., Any]]] = {
    "minimum": np.minimum,
    "maximum": np.maximum,
    "mean": lambda a, b: (a + b) / 2,
    "absolute": np.abs,
    "whole_up": _whole_up,
    "whole_down": _whole_down,
    "whole_near": _whole_near,
    "exponential": np.exp,
    "natural_log": np.log,
    "log_10": np.log10,
    "square_root": np.sqrt,
    "calendar_month": lambda date: (_months_since(date) % 12 + 1).astype(float),
    "calendar_year": lambda date: (_months_since(date) // 12).astype(float),
    "month_start": _month_start,
}
"""A rule for each name in `functions.FUNCTIONS`."""


def quotient(top: Any, bottom: Any, otherwise: Any) -> Any:
    """`top / bottom`; `otherwise` where the bottom is zero (rule 7)."""
    above, below, other = (np.asarray(argument, dtype=float) for argument in (top, bottom, otherwise))
    safe = np.where(below == 0, 1.0, below)
    return np.where(below == 0, other, above / safe)[()]


def chosen(condition: Any, yes: Any, no: Any) -> Any:
    """`yes` where the condition is not zero, else `no`."""
    picked, other = np.asarray(yes, dtype=float), np.asarray(no, dtype=float)
    return np.where(np.asarray(condition) != 0, picked, other)[()]
