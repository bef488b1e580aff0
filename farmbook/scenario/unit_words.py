"""How people write units, and which symbols of the unit table each way of writing may stand for."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from farmbook.errors import visible
from farmbook.scenario.words import UnfitError, closest
from farmbook.units import SYMBOLS

__all__ = ["COUNTS", "Factor", "factors_of", "measured"]

COUNTS: Final = frozenset(
    {
        *("bag_filled", "bag_steamed", "bag_inoculated", "bag_live", "spawn_bag", "grain_bag", "second_grain_bag"),
        *("plate", "cooker_run", "lab_batch", "run", "batch", "place"),
    }
)
"""Things that are counted: a text may leave them out ("5 lb" for the weight in a bag), but never a time."""

_NEVER_WRITTEN: Final = {"share", "flag", "cent", "date"}

_ALIASES: Final = {
    "lb": "pound",
    "oz": "ounce",
    "kg": "kilogram|kilo",
    "g": "gram",
    "t": "tonne|metric ton",
    "ton": "short ton",
    "h": "hour|hr",
    "person_hour": "h|hour|hr|person hour|labour hour|labor hour",
    "person_min": "min|minute|person minute",
    "min": "minute",
    "s": "second|sec",
    "week": "wk",
    "month": "mo|mth",
    "year": "yr",
    "ft": "foot|feet",
    "in": "inch|inches",
    "yd": "yard",
    "m": "metre|meter",
    "cm": "centimetre|centimeter",
    "L": "litre|liter|litre of propane|liter of propane",
    "gal": "gallon|gallon of propane|gallons of propane",
    "qt": "quart",
    "pt": "pint",
    "therm_fuel": "therm of gas|therms of gas",
    "kWh_fuel": "kwh of gas",
    "degF": "f|deg f|fahrenheit",
    "delta_degF": "f|deg f|fahrenheit",
    "degC": "c|deg c|celsius",
    "delta_degC": "c|deg c|celsius|k|kelvin",
    "bag_filled": "bag",
    "bag_steamed": "bag",
    "bag_inoculated": "bag",
    "bag_live": "bag|live bag",
    "spawn_bag": "bag",
    "grain_bag": "bag",
    "second_grain_bag": "bag",
    "run": "run|load",
    "cooker_run": "run|load",
    "batch": "batch|batches",
    "lab_batch": "batch|batches",
    "A": "amp|ampere",
    "V": "volt",
    "W": "watt",
    "kW": "kilowatt",
    "percent": "pct",
}
"""Symbol, for all its kinds: further ways to write it, lower case, without a plural s."""

_HUNDREDTHS: Final = {
    **dict.fromkeys(("cent", "cents", "ct", "cts", "\u00a2"), ("USD", "EUR", "CAD", "AUD", "NZD")),
    **dict.fromkeys(("penny", "pence", "p"), ("GBP",)),
}
"""Words for a hundredth of money, and the currencies that have it."""
_PACKINGS: Final = "sack|bag|bale|tote|box|pack|pail|drum|jug|roll|case"
_SO_MANY: Final = re.compile(
    rf"(?:(?:{_PACKINGS}) of )?([0-9]{{1,9}}(?:\.[0-9]{{1,9}})?)(?![0-9.,]) ?(|\D.*?)(?: (?:{_PACKINGS}))?",
    re.IGNORECASE,
)
"""What is priced by the sack: "50 lb", "50 lb sack", "sack of 50 lb"; a number, and the unit that it counts."""
_BELOW_NOTHING: Final = re.compile(r"(?:^|[/\s])-\s*[0-9]")
_POWERS_IN_WORDS: Final = {"sq ": 2, "square ": 2, "cu ": 3, "cubic ": 3}
_CURRENCY: Final = re.compile(r"[A-Za-z]{3}|[$€£¥]")
_COMMON_CURRENCIES: Final = ("USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF", "SEK", "NOK", "DKK", "PLN", "CZK", "JPY")
_SIGNS: Final = {"$": ("USD", "CAD", "AUD", "NZD"), "€": ("EUR",), "£": ("GBP",), "¥": ("JPY", "CNY")}
_PLAIN_TEXT: Final = str.maketrans({"²": "2", "³": "3", "·": "*", "\u00d7": "*", "^": "", "_": " ", "-": " "})
_PER: Final = re.compile(r"(?:(?<=\S) | ?\b)(?:per|a|an) (?=\S)")
_POWER: Final = re.compile(r"(.*?[^\d\s])([23])")
_MOST_FACTORS: Final = 5


@dataclass(frozen=True)
class Factor:
    """One factor of a written unit: the symbols it may stand for, and its power."""

    written: str
    symbols: tuple[str, ...]
    power: int


def measured(symbol: str) -> frozenset[str]:
    """The base kinds that a symbol measures."""
    return frozenset(base for base, _ in SYMBOLS[symbol].measures)


def _index() -> dict[str, tuple[str, ...]]:
    """Each way of writing, folded to lower case: the symbols it may stand for, a temperature before a difference."""
    found: dict[str, list[str]] = {}
    for name, symbol in sorted(SYMBOLS.items(), key=lambda item: not item[1].point):
        if name not in _NEVER_WRITTEN:
            also = _ALIASES.get(name, _ALIASES.get(symbol.shown, ""))
            for way in {name.lower().replace("_", " "), symbol.shown.lower(), *also.split("|")} - {""}:
                found.setdefault(way, []).append(name)
    return {way: tuple(names) for way, names in found.items()}


_INDEX: Final = _index()


def factors_of(text: str, currency: str) -> tuple[list[Factor], Fraction]:
    """Read a unit as people write it, and for how many of it a number stands: 1/50 of `USD/lb` for "USD per 50 lb".

    An empty currency lets any currency pass. Raises UnfitError for a unit that is not in the table and for money of
    another currency.
    """
    if _BELOW_NOTHING.search(text):
        raise UnfitError(f"`{visible(text)}` is not a unit known here")
    plain = " ".join(text.replace("°", "deg ").translate(_PLAIN_TEXT).split())
    plain = _PER.sub("/", plain).replace(" x ", "*")
    found: list[Factor] = []
    times = Fraction(1)
    for position, part in enumerate(plain.split("/")):
        many, counted = _so_many(part.strip(), text) if position else (Fraction(1), part)
        times /= many
        for factor in (piece.strip() for piece in counted.split("*")):
            if "/" in plain and (factor == "1" or not (position or factor)):
                continue
            if not factor:
                raise UnfitError(f"`{visible(text)}` is not a unit known here")
            found += [_raised(each, -1 if position else 1) for each in _factors(factor, currency)]
    if len(found) > _MOST_FACTORS:
        raise UnfitError(f"`{visible(text)}` is too long to be a unit")
    return found, times


def _so_many(part: str, text: str) -> tuple[Fraction, str]:
    """The number at the start of what stands below a line, 1 if there is none, and the unit that it counts."""
    match = _SO_MANY.fullmatch(part)
    if match is None:
        return Fraction(1), part
    if not (many := Fraction(match[1])):
        raise UnfitError(f"`{visible(text)}` is for none of it; write for how many or how much")
    return many, match[2] or "1"


def _raised(factor: Factor, sign: int) -> Factor:
    return Factor(factor.written, factor.symbols, factor.power * sign)


def _factors(text: str, currency: str) -> list[Factor]:
    """The factors of a piece without `/` and `*`: a name of one or more words, or several names with spaces between."""
    whole = _one(text, currency)
    if whole is not None:
        return [whole]
    words = text.split(" ")
    if len(words) == 1:
        raise UnfitError(_unknown(text, currency))
    return [factor for word in words for factor in _factors(word, currency)]


def _one(text: str, currency: str) -> Factor | None:
    folded = text.lower()
    for start, power in _POWERS_IN_WORDS.items():
        if folded.startswith(start):
            inside = _symbols(folded.removeprefix(start))
            return Factor(text, inside, power) if inside else None
    if symbols := _symbols(folded):
        return Factor(text, symbols, 1)
    if folded in _HUNDREDTHS:
        return _hundredth(text, currency)
    if _CURRENCY.fullmatch(text) and _is_money(text, currency):
        return Factor(text, ("money",), 1)
    match = _POWER.fullmatch(folded)
    if match and (symbols := _symbols(match[1])):
        return Factor(text, symbols, int(match[2]))
    return None


def _symbols(folded: str) -> tuple[str, ...]:
    return _INDEX.get(folded) or (_INDEX.get(folded[:-1], ()) if folded.endswith("s") else ())


def _is_money(text: str, currency: str) -> bool:
    """Whether this is money of the file's own currency; raises UnfitError for another currency."""
    own = not currency or text.upper() == currency or currency in _SIGNS.get(text, ())
    if not own and (text.isupper() or text in _SIGNS or text.upper() in _COMMON_CURRENCIES):
        raise UnfitError(f"`{visible(text)}` is not the file's currency: money in this file is in {currency}")
    return own


def _hundredth(text: str, currency: str) -> Factor:
    """Cents or pence; raises UnfitError where the file's currency is not known to have them."""
    if currency and currency not in _HUNDREDTHS[text.lower()]:
        raise UnfitError(
            f"`{visible(text)}` is not known here for {currency}; write parts of one, as in 0.12 {currency}"
        )
    return Factor(text, ("cent",), 1)


def _unknown(text: str, currency: str) -> str:
    if re.fullmatch(_PACKINGS, text, re.IGNORECASE):
        return f'how much is in a `{text}`? Write that with it, as in "12 {currency or "money"} per 50 lb {text}"'
    near = closest(text.lower(), _INDEX)
    return f"`{visible(text)}` is not a unit known here" + (f"; did you mean `{near}`?" if near else "")
