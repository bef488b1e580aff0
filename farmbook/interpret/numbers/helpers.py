"""What the emitted code calls: arrays first, then the same for one scenario's single values."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import cache
from typing import Any, Final

import numpy as np
from numpy_financial import irr

from farmbook.expr.number_rules import NUMBER_RULES, quotient
from farmbook.interpret.numbers.values import Array, as_array

__all__ = ["FOR_ARRAYS", "FOR_SINGLES"]

Column = Array | list[Any]
EXACT: Final = Context(prec=400)
"""Digits enough for any number with a point, however large."""


def _at(values: Array, positions: Array | float) -> Array:
    """values (..., steps) at whole positions (...), counted from 1; NaN outside the range.

    Both have the same axes before the steps, or one member where they do not vary.
    """
    wanted = np.asarray(positions, dtype=float)
    wanted = wanted.reshape(wanted.shape or (1,) * (values.ndim - 1))
    inside = (wanted >= 1) & (wanted <= values.shape[-1])
    places = np.where(inside, np.rint(wanted) - 1, 0).astype(int)
    return np.where(inside, np.take_along_axis(values, places[..., None], axis=-1)[..., 0], np.nan)


def _before(values: Array, opening: Array | float) -> Array:
    """Values one step earlier along the last axis, the opening value first."""
    shape = np.broadcast_shapes(values.shape[:-1], np.shape(opening))
    first, later = np.broadcast_to(opening, shape), np.broadcast_to(values[..., :-1], (*shape, values.shape[-1] - 1))
    return np.concatenate([first[..., None], later], axis=-1)


def _before_each(amounts: Array, keys: Array, axis: int) -> Array:
    """What the members of an axis with lower keys have together, for each member."""
    own, every = np.moveaxis(keys, axis, -1)[..., :, None], np.moveaxis(keys, axis, -1)[..., None, :]
    summed = ((every < own) * np.moveaxis(amounts, axis, -1)[..., None, :]).sum(axis=-1)
    return np.moveaxis(summed, -1, axis)


def _nth(keys: Column, shown: Column, places: Array | float, many: Array | float, otherwise: float | str) -> Array:
    """What belongs to the key in each place, 1 for the largest; NaN where there is no such place.

    Keys and what is shown have the shape (draws, members) or are a list of one value a member; places and many have the
    shape (draws, ...), or none.
    """
    order = np.argsort(-_side_by_side(keys), axis=-1, kind="stable")
    wanted, limit = np.broadcast_arrays(*np.atleast_1d(places, many))
    values = _side_by_side(shown)
    draws, members = max(len(order), len(values), len(wanted)), order.shape[-1]
    inside = (wanted >= 1) & (wanted <= members)
    rows = np.broadcast_to(np.where(inside, np.rint(wanted) - 1, 0).astype(int), (draws, *wanted.shape[1:]))
    ranked = np.take_along_axis(np.broadcast_to(order, (draws, members)), rows.reshape(draws, -1), axis=-1)
    found = np.take_along_axis(np.broadcast_to(values, (draws, members)), ranked, axis=-1)
    return np.where(wanted <= limit, np.where(inside, found.reshape(rows.shape), np.nan), otherwise)


def _side_by_side(column: Column) -> Array:
    """Shape (draws, members)."""
    if isinstance(column, list):
        return np.stack(np.broadcast_arrays(*(as_array(each) for each in column)), axis=-1)
    return column


def _shown(values: Array, when: Array, words: str) -> Array:
    """Numbers, and words where there is none."""
    return np.where(np.not_equal(when, 0), values.astype(object), words)


def _rates(flows: Array) -> Array:
    """The internal rate of each draw of flows (draws, steps); 0 where there is none, or where a flow is no number."""
    found: Array = np.zeros(len(flows))
    for draw, series in enumerate(flows):
        if np.isfinite(series).all() and series.min() < 0 < series.max():
            found[draw] = irr(series)
    return np.where(np.isfinite(found), found, 0.0)


def _pick(sentences: tuple[str, ...], state: Array) -> Array:
    picked: Array = _in_array(sentences)[np.rint(state).astype(int) - 1]
    return picked


@cache
def _in_array(sentences: tuple[str, ...]) -> Array:
    return np.asarray(sentences, dtype=object)


def _label(texts: Array, otherwise: str) -> Array:
    return np.where(texts == "", otherwise, texts)


def _count(cells: Array, wanted: str | float) -> Array:
    """How many cells of each draw hold this."""
    return _total_of(np.asarray(cells == wanted, dtype=float))


def _total_of(cells: Array) -> Array:
    """The sum of all cells of each draw."""
    return cells if cells.ndim == 1 else cells.reshape(cells.shape[0], -1).sum(axis=1)


def _first(texts: list[Array], word: str, labels: tuple[str, ...], otherwise: str) -> Array:
    """The label of the first text that is the word, for each draw."""
    found = np.full(max(text.shape[0] for text in texts), otherwise, dtype=object)
    for text, label in reversed(list(zip(texts, labels, strict=True))):
        found[np.broadcast_to(text == word, found.shape)] = label
    return found


def figure(value: float, digits: int, sign: str, percent: bool, after: str, none: str) -> str:
    """A number in words, halves away from zero, with a mark between thousands: what FIXED makes of it in English."""
    if none and value == 0:
        return none
    if not math.isfinite(value):
        return "no number"  # the line that it comes from is refused when it is written
    shown = Decimal(repr(float(value))) * (100 if percent else 1)
    whole = shown.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP, EXACT)
    return f"{'-' if whole < 0 else ''}{sign}{whole.copy_abs():,.{max(digits, 0)}f}{'%' if percent else ''}{after}"


def _figure_each(values: Any, digits: int, sign: str, percent: bool, after: str, none: str) -> Array:
    return np.array([figure(each, digits, sign, percent, after, none) for each in np.atleast_1d(values)], dtype=object)


def _in_each(draws: int, *parts: str | Array) -> Array:
    """Texts joined for each draw."""
    spread = [[part] * draws if isinstance(part, str) else list(np.broadcast_to(part, (draws,))) for part in parts]
    return np.array(["".join(each) for each in zip(*spread, strict=True)], dtype=object)


FOR_ARRAYS: Final[dict[str, Any]] = {
    "np": np,
    "at": _at,
    "before": _before,
    "before_each": _before_each,
    "nth": _nth,
    "figure_each": _figure_each,
    "in_each": _in_each,
    "shown": _shown,
    "rates": _rates,
    "ratio": quotient,
    "pick": _pick,
    "label": _label,
    "count": _count,
    "first": _first,
    "total": _total_of,
    "F": NUMBER_RULES,
}


def _at_one(row: Array, position: float) -> float:
    """The value of a row (1, steps) at a whole position, counted from 1; NaN outside the row."""
    return float(row[0, round(position) - 1]) if 1 <= position <= row.shape[1] else math.nan


def _ratio_one(top: float, bottom: float, otherwise: float) -> float:
    return top / bottom if bottom else otherwise


def _pick_one(sentences: tuple[str, ...], state: float) -> str:
    return sentences[round(state) - 1]


def _first_one(texts: Sequence[str], word: str, labels: tuple[str, ...], otherwise: str) -> str:
    return labels[texts.index(word)] if word in texts else otherwise


def _nth_one(keys: list[float], shown: list[Any], place: float, many: float, otherwise: float | str) -> Any:
    """As `_nth`, for one place of one scenario."""
    if not place <= many:
        return otherwise
    order = sorted(range(len(keys)), key=lambda member: -keys[member])
    return shown[order[round(place) - 1]] if 1 <= place <= len(keys) else math.nan


def _power(base: float, exponent: float) -> float:
    """By NumPy's rule, so that one scenario and many agree to the last bit."""
    return float(np.power(base, exponent))


def _minimum(a: float, b: float) -> float:
    return a if a <= b or a != a else b


def _maximum(a: float, b: float) -> float:
    return a if a >= b or a != a else b


def _whole_up(x: float) -> float:
    return math.copysign(math.ceil(abs(_nine_digits(x))), x) if abs(x) < _ROUNDED_EXACTLY else x


def _whole_down(x: float) -> float:
    return float(math.floor(_nine_digits(x))) if abs(x) < _ROUNDED_EXACTLY else x


def _whole_near(x: float) -> float:
    return math.copysign(math.floor(abs(_nine_digits(x)) + 0.5), x) if abs(x) < _HALVES_END else x


def _nine_digits(x: float) -> float:
    return round(x * 1e9) / 1e9


_HALVES_END = 2.0**52
"""Every float from here on has no part behind the point."""
_ROUNDED_EXACTLY = 2.0**53
"""Every float from here on is a whole number already."""


def _single(rule: Callable[..., Any]) -> Callable[..., float]:
    return lambda *arguments: float(rule(*arguments))


FOR_SINGLES: Final[dict[str, Any]] = {
    "at_one": _at_one,
    "ratio_one": _ratio_one,
    "pick_one": _pick_one,
    "first_one": _first_one,
    "nth_one": _nth_one,
    "figure": figure,
    "power": _power,
    **{f"one_{name}": _single(rule) for name, rule in NUMBER_RULES.items()},
    "one_minimum": _minimum,
    "one_maximum": _maximum,
    "one_absolute": abs,
    "one_whole_up": _whole_up,
    "one_whole_down": _whole_down,
    "one_whole_near": _whole_near,
}
"""Every function of the closed list as `one_...`: a plain form of the frequent ones, NumPy's own rule for the rest."""
