"""Defaults, usual ranges and hard limits of a number, in the unit that a book shows."""

from __future__ import annotations

import math
from decimal import Context, Decimal
from fractions import Fraction
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.scenario.quantity import converted, split_quantity
from farmbook.scenario.words import amount, figure, share_like, usual_words
from farmbook.sections.declare import NumberInput
from farmbook.units import displayed

__all__ = ["default_at", "hard_fault", "rounded", "usual_fault", "usual_of"]

_THREE_FIGURES: Final = Context(prec=3)


def rounded(value: float, declared: NumberInput, system: str) -> float:
    """A declared default or usual limit in the book's unit, to three figures where it had to be converted."""
    target = declared.measure
    shown = displayed(target, system)
    if shown == target or not math.isfinite(value):
        return float(value)
    exact = converted(Fraction(Decimal(repr(value))), target, shown)
    return float(_THREE_FIGURES.divide(Decimal(exact.numerator), Decimal(exact.denominator)))


def usual_of(declared: NumberInput, system: str) -> tuple[float, float]:
    """The usual range in the book's unit."""
    return rounded(declared.usual[0], declared, system), rounded(declared.usual[1], declared, system)


def default_at(declared: NumberInput, position: dict[Axis, int], system: str) -> float | None:
    """The default of one cell in the book's unit; of several defaults, each belongs to a member of the fixed axis."""
    default = declared.default
    if isinstance(default, tuple):
        axis = next((axis for axis in declared.axes if not axis.named and len(axis.members) == len(default)), None)
        if axis is None:
            raise ModelFault(f"the {len(default)} defaults of `{declared.dotted}` fit none of its axes")
        default = default[position[axis]]
    return None if default is None else rounded(default, declared, system)


def hard_fault(declared: NumberInput, value: Fraction, written: object, system: str, currency: str) -> str:
    """What is wanted in place of a value (in the declared unit) past its hard limits; empty if it is within them."""
    passed = next(
        (limit for limit, sign in zip(declared.hard, (1, -1), strict=True) if _past(limit, value, sign)), None
    )
    if passed is None:
        return ""
    shown = displayed(declared.measure, system)
    limit = amount(converted(Fraction(Decimal(repr(passed))), declared.measure, shown), shown, currency)
    other = _other_scale_meant(declared, value, written, system, declared.hard)
    usual = f"; usually {usual_words(declared, usual_of(declared, system), system, currency)}"
    if value < passed:
        return f"must be {limit} or more{other}{usual}"
    return f"must be {limit} or less{other}{_percent_meant(declared, value, written)}{usual}"


def _past(limit: float, value: Fraction, sign: int) -> bool:
    """Whether a value is below (sign 1) or above (sign -1) a limit, as the limit's digits say it."""
    return math.isfinite(limit) and (value - Fraction(Decimal(repr(limit)))) * sign < 0


def _within(limits: tuple[float, float], value: Fraction) -> bool:
    return not _past(limits[0], value, 1) and not _past(limits[1], value, -1)


def _percent_meant(declared: NumberInput, value: Fraction, written: object) -> str:
    """A share typed as plain 60 was probably meant in percent; "60 %" says itself what it means."""
    if _unit_of(written) or not share_like(declared.measure) or not _within(declared.hard, value / 100):
        return ""
    return f'; for {figure(float(value))} in a hundred write "{figure(float(value))} %" or {figure(float(value / 100))}'


def _parts_meant(declared: NumberInput, value: Fraction, written: object) -> str:
    """A share typed as "0.05 %" was probably meant as 0.05, 5 in a hundred."""
    if _unit_of(written) != "%" or not share_like(declared.measure) or not _within(declared.usual, value * 100):
        return ""
    whole = figure(float(value * 10_000))
    return f'; for {whole} in a hundred write "{whole} %" or {figure(float(value * 100))}'


def _other_scale_meant(
    declared: NumberInput, value: Fraction, written: object, system: str, limits: tuple[float, float]
) -> str:
    """A temperature typed without its unit was probably meant on the other scale, if only there it is within limits."""
    shown, other = (displayed(declared.measure, each) for each in (system, "us" if system == "metric" else "metric"))
    if not shown.point or _unit_of(written):
        return ""
    number = converted(value, declared.measure, shown)
    if not _within(limits, converted(number, other, declared.measure)):
        return ""
    meant = f"{figure(float(number))} {other.shown()}"
    here = f"{figure(round(float(converted(number, other, shown)), 1))} {shown.shown()}"
    return f'; {meant} is {here}: write "{meant}" if you mean that'


def _unit_of(written: object) -> str:
    return split_quantity(written)[1] if isinstance(written, str) else ""


def usual_fault(
    declared: NumberInput, shown: float, value: Fraction, written: object, system: str, currency: str
) -> str:
    """What to say of a value, shown in the book's unit, outside its usual range; empty if it is inside."""
    usual = usual_of(declared, system)
    if usual[0] <= shown <= usual[1]:
        return ""
    side = "below" if shown < usual[0] else "above"
    low, high = declared.usual
    near = not _past(low, value / 100 * 2, 1) and not _past(high, value / 100, -1)  # half the lowest usual share, too
    meant = _percent_meant(declared, value, written) if near else _parts_meant(declared, value, written)
    other = _other_scale_meant(declared, value, written, system, declared.usual)
    return f"{side} the usual range of {usual_words(declared, usual, system, currency)}{other}{meant}"
