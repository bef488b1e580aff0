"""Reading a quantity written as text, such as "48 USD/ton", into the unit that a field is declared in."""

from __future__ import annotations

import itertools
import re
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from typing import Final

from farmbook.errors import visible
from farmbook.scenario.unit_words import COUNTS, Factor, factors_of, measured
from farmbook.scenario.words import UnfitError, kind_of, share_like
from farmbook.units import SYMBOLS, Unit, ice_point_shift, unit

__all__ = ["COMMAS", "checked", "converted", "decimal_of", "read_quantity", "split_quantity"]

_NUMBER: Final = re.compile(r"([+-]?(?:[0-9][0-9_]*\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?)\s*(.*)", re.DOTALL)
_SIGN_FIRST: Final = re.compile(r"^([$\u20ac\u00a3\u00a5])\s*([0-9][0-9_]*\.?[0-9]*|\.[0-9]+)(?![0-9eE,])")
"""The start of "$5/bag", which is read as "5 $/bag"."""
_LARGEST_EXPONENT: Final = 200
"""Numbers beyond 1e200 have no place in a book, and their exact fractions would fill the memory."""
_MOST_DIGITS: Final = 400
_BEYOND: Final = 10**17
"""Stands for an exponent too large even to be held."""
_CLOCK: Final = re.compile(r":([0-5][0-9]) ?(?:h|hrs?|hours?)\b(.*)", re.IGNORECASE | re.DOTALL)
_TWO_STEPS: Final = re.compile(
    r"([A-Za-z]+),? (?:and )?([0-9]{1,9}(?:\.[0-9]{1,9})?) ?([A-Za-z]+)( ?/.*| (?:per|a) .*|)"
)
"""The unit of "1 h 30 min", "5 ft 6 in", "2 lb 8 oz per bag"."""
COMMAS: Final = "a number is written without commas: 1200 for a thousand and more, 0.55 for parts of one"


def split_quantity(text: str) -> tuple[Fraction, str]:
    """The number at the start of a text, exactly, and the unit after it (empty if there is none).

    Raises UnfitError where the text does not start with a number.
    """
    plain = _SIGN_FIRST.sub(r"\2 \1", text.strip().replace("\u2212", "-"))
    match = _NUMBER.fullmatch(plain)
    if match is None:
        raise UnfitError('a number comes first, then its unit, as in "5 lb"')
    if match[2].startswith(","):
        raise UnfitError(COMMAS)
    return checked(decimal_of(match[1])), match[2].strip()


def decimal_of(text: str) -> Decimal:
    """A written number with all its digits; of an exponent beyond all bounds, its sign and that it is beyond them."""
    try:
        return Decimal(text.replace("_", ""))
    except InvalidOperation:
        digits, _, exponent = text.lower().replace("_", "").partition("e")
        return _beyond(Decimal(digits), -1 if exponent.startswith("-") else 1)


def _beyond(number: Decimal, side: int) -> Decimal:
    """A number of this sign too large (side 1) or too small (side -1) even to be held; nothing stays nothing."""
    return Decimal((number.as_tuple().sign, (1,), side * _BEYOND)) if number else number


def checked(value: Decimal | float) -> Fraction:
    """A number of a file exactly as its digits say; raises UnfitError where it is not finite or beyond all bounds."""
    if isinstance(value, int):
        value = Decimal(value) if value.bit_length() < 1000 else _beyond(Decimal(1), 1)
    number = value if isinstance(value, Decimal) else Decimal(repr(value))
    if not number.is_finite():
        raise UnfitError("a finite number is wanted")
    if number and abs(number.adjusted()) > _LARGEST_EXPONENT:
        raise UnfitError("the number is too large" if number.adjusted() > 0 else "the number is too small; write 0")
    if len(number.as_tuple().digits) > _MOST_DIGITS:
        raise UnfitError(f"the number has more than {_MOST_DIGITS} digits")
    return Fraction(number)


def converted(number: Fraction, found: Unit, target: Unit) -> Fraction:
    """A number of one unit in another that measures the same; exact."""
    if not target.point:
        return number * found.size / target.size
    celsius = (number - ice_point_shift(found)) * found.size
    return celsius / target.size + ice_point_shift(target)


def read_quantity(number: Fraction, written: str, target: Unit, currency: str, shown: Unit | None = None) -> Fraction:
    """A number with a written unit, in the target unit; `shown` is the unit that a complaint names in its place.

    The endings of kinds are taken from the target ("lb" is lb_wet where wet mix is weighed), and things counted may be
    left out. An empty currency lets any currency pass. Raises UnfitError, saying which kind of unit is wanted.
    """
    if written.startswith(":"):
        written = _of_clock(number, written)
    if two := _TWO_STEPS.fullmatch(written):
        large, small = (f"{two[place]}{two[4]}" for place in (1, 3))
        whole = read_quantity(Fraction(1), large, target, currency, shown)
        rest = read_quantity(Fraction(two[2]), small, target, currency, shown)
        return _in_two_steps(number, whole, rest, target)
    factors, times = factors_of(written, currency)
    number *= times
    if target.pure and not _ratio(target):
        raise UnfitError("a plain number is wanted, without a unit")
    if [factor.symbols for factor in factors] == [("percent",)] and _ratio(target):
        return number / 100 / target.size
    found = _fitting(factors, target)
    if found is None:
        raise UnfitError(_mismatch(written, factors, shown or target, currency))
    return converted(number, found, target)


def _of_clock(number: Fraction, written: str) -> str:
    """`h 45 min` for the `:45 h` of "2:45 h"."""
    clock = _CLOCK.fullmatch(written)
    if clock is None or number.denominator != 1:
        raise UnfitError('hours and minutes are written "2:45 h" or "2 h 45 min"')
    return f"h {clock[1]} min{clock[2]}"


def _in_two_steps(number: Fraction, whole: Fraction, rest: Fraction, target: Unit) -> Fraction:
    """So many of a large unit and a rest, less than one of it, in a small one; both in the target unit."""
    if target.point or rest >= whole:
        raise UnfitError('one number with one unit is wanted, or a smaller unit after it, as in "1 h 30 min"')
    return number * whole + (rest if number >= 0 else -rest)


def _ratio(target: Unit) -> bool:
    """Whether a percentage makes sense: a share, or a mass per mass whatever the units."""
    masses = [power for name, power in target.powers if SYMBOLS[name].measures[0][0].startswith("kg")]
    of_masses = bool(masses) and len(masses) == len(target.powers) and not sum(masses)
    return of_masses or share_like(target) or target == unit("percent")


def _fitting(factors: list[Factor], target: Unit) -> Unit | None:
    """The choice of symbols that measures what the target measures."""
    if any(factor.symbols == ("percent",) for factor in factors) and not share_like(target):
        return None
    whole = tuple((base, power) for base, power in target.dimension if power > 0 or base not in COUNTS)
    wanted = {target.dimension, whole}
    if not any(measured(name) & COUNTS for factor in factors for name in factor.symbols):
        wanted.add(tuple((base, power) for base, power in target.dimension if base not in COUNTS))
    for names in itertools.product(*(_likely(factor, target) for factor in factors)):
        found = _product(names, factors)
        if found.dimension in wanted and found.point == target.point:
            return found
    return None


def _likely(factor: Factor, target: Unit) -> tuple[str, ...]:
    """The symbols that measure nothing foreign to the target; a few of the others if there are none."""
    bases = {base for base, _ in target.dimension}
    return tuple(name for name in factor.symbols if measured(name) <= bases) or factor.symbols[:2]


def _product(names: tuple[str, ...], factors: list[Factor]) -> Unit:
    found = Unit(())
    for name, factor in zip(names, factors, strict=True):
        found = found.times(Unit(((name, factor.power),)))
    return found


MANY: Final = (("dozen",), ("hundred",), ("thousand",))
"""Numbers that people write as words; they measure nothing."""


def _mismatch(written: str, factors: list[Factor], target: Unit, currency: str) -> str:
    things = [factor for factor in factors if factor.symbols not in MANY]
    found, wanted = kind_of(_product(tuple(factor.symbols[0] for factor in things), things)), kind_of(target)
    shown = target.shown(currency or "money")
    words = f"{wanted} is wanted, in {shown} or the like; `{visible(written)}` is {found}"
    if wanted == "money per mass" and found in ("money per volume", "money per length"):
        weighed = shown.replace("/", " per 500 ")
        words += f', so weigh how much that is and write the weight, as in "30 {weighed}"'
    return words
