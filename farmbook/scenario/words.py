"""Words of the messages: where a thing stands in the file, how it was written, what is wanted in its place."""

from __future__ import annotations

import difflib
import math
import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, time
from decimal import Decimal
from fractions import Fraction
from typing import Final

from farmbook.errors import visible
from farmbook.expr.texts import fold
from farmbook.sections.declare import NumberInput
from farmbook.units import SYMBOLS, Unit, day_of, displayed, unit

__all__ = [
    "Path",
    "UnfitError",
    "amount",
    "as_written",
    "closest",
    "did_you_mean",
    "figure",
    "key_words",
    "kind_of",
    "listed",
    "readable",
    "share_like",
    "usual_words",
    "where_of",
    "where_table",
]

Path = tuple[str, ...]
"""Where a value stands in a file: table, row, key."""

_BARE_KEY: Final = re.compile(r"[A-Za-z0-9_-]{1,60}")
_LONGEST: Final = 60
_LONGEST_EXPONENT: Final = 10**6


class UnfitError(Exception):
    """What is wanted in place of a value; caught within the package and turned into a problem."""

    def __init__(self, wanted: str) -> None:
        self.wanted = wanted
        super().__init__(wanted)


def where_of(path: Path, origin: str = "", *, table: bool = False) -> str:
    """`[table.row] key`, or `[table.row]`, with the file's name where it is not the scenario's own file."""
    tail = f" (in {visible(origin)})" if origin else ""
    if table:
        return where_table(path) + tail
    head = f"{where_table(path[:-1])} " if len(path) > 1 else ""
    return f"{head}{key_words(path[-1])}{tail}"


def where_table(path: Path) -> str:
    """`[table.row]`."""
    return f"[{'.'.join(key_words(key) for key in path)}]"


def key_words(key: str) -> str:
    """A key as it would be written in the file."""
    return key if _BARE_KEY.fullmatch(key) else _quoted(key)


def _quoted(text: str) -> str:
    short = text if len(text) <= _LONGEST else text[: _LONGEST - 3] + "..."
    return f'"{visible(short)}"'


def as_written(value: object) -> str:
    """A value as it stands in the file, shortened."""
    if isinstance(value, Mapping):
        return as_written(value["value"]) if "value" in value else "{...}"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return _quoted(value)
    if isinstance(value, (date, time)):
        return value.isoformat()
    if isinstance(value, int) and value.bit_length() > 200:
        return "a very long number"
    if isinstance(value, Decimal) and value.is_finite() and abs(value.adjusted()) > _LONGEST_EXPONENT:
        return "a very large number" if value.adjusted() > 0 else "a very small number"
    if isinstance(value, list):
        return _shortened("[" + ", ".join(as_written(item) for item in value[:_LONGEST]) + "]")
    return _shortened(str(value))


def _shortened(text: str) -> str:
    return text if len(text) <= _LONGEST else text[: _LONGEST - 3] + "..."


def closest(word: str, options: Iterable[str]) -> str:
    """The option that a misspelt word was probably meant to be; an empty text if none is near."""
    folded = {fold(option): option for option in options}
    found = difflib.get_close_matches(fold(word[:_LONGEST]), list(folded), n=1)
    return folded[found[0]] if found else ""


def did_you_mean(word: str, options: Sequence[str], otherwise: str) -> str:
    """`did you mean ...?`, or other words and then the options themselves."""
    near = closest(word, options)
    return f"did you mean `{near}`?" if near else f"{otherwise} {listed(options)}"


def listed(words: Sequence[str], most: int = 40) -> str:
    """`a`, `b` and `c`; a long list is cut."""
    shown = [f"`{word}`" for word in words[:most]]
    if len(words) > most:
        return ", ".join(shown) + f" and {len(words) - most} more"
    return " and ".join(filter(None, [", ".join(shown[:-1]), shown[-1]])) if shown else "nothing"


def readable(key: str) -> str:
    """A row's key as a name: `oak_sawdust` becomes `Oak sawdust`."""
    words = " ".join(key.replace("_", " ").replace("-", " ").split())
    return words[:1].upper() + words[1:]


def figure(value: float) -> str:
    """A number to six figures, without an exponent."""
    rounded = float(f"{value:.6g}")
    if not math.isfinite(rounded) or rounded == 0:
        return "0" if rounded == 0 else str(rounded)
    digits = min(12, max(0, 5 - math.floor(math.log10(abs(rounded)))))
    text = f"{rounded:,.{digits}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def share_like(of: Unit) -> bool:
    """Whether a quantity is a share, written 0.6 or "60 %"."""
    return of.share or any(name == "share" for name, _ in of.powers)


def amount(value: float | Fraction, of: Unit, currency: str) -> str:
    """A value with its unit; shares in percent, days of the calendar by their dates."""
    if of.date:
        return str(day_of(float(value)) or figure(float(value)))
    if share_like(of):
        return f"{figure(float(value) * 100)} {_unit_words(of, currency)}"
    words = _unit_words(of, currency)
    return f"{figure(float(value))} {words}" if words else figure(float(value))


def _unit_words(of: Unit, currency: str) -> str:
    plain = of.pure and not share_like(of) and of != unit("percent")
    return "" if plain else of.shown(currency or "money")


def usual_words(declared: NumberInput, limits: tuple[float, float], system: str, currency: str) -> str:
    """The usual range with its unit: `44 to 52 week/year`."""
    of = displayed(declared.measure, system)
    if of.date:
        return f"{amount(limits[0], of, currency)} to {amount(limits[1], of, currency)}"
    low = figure(limits[0] * 100 if share_like(of) else limits[0])
    return f"{low} to {amount(limits[1], of, currency)}"


_COUNTED: Final = "a number of "
_POWERS_OF_LENGTH: Final = {1: "a length", 2: "an area", 3: "a volume"}
_KIND_WORDS: Final[dict[tuple[tuple[str, int], ...], str]] = {
    (("h", 1),): "a time",
    (("kJ", 1),): "an energy",
    (("h", -1), ("kJ", 1)): "a power",
    (("kPa", 1),): "a pressure",
    (("point", 1),): "a temperature",
    (("kelvin", 1),): "a temperature",
    (("delta_degC", 1),): "a difference of temperatures",
    (("A", 1),): "a current",
    (("A", -1), ("h", -1), ("kJ", 1)): "a voltage",
    (("money", 1),): "money",
}


def kind_of(of: Unit) -> str:
    """What a unit measures, in words: `a mass`, `money per energy`."""
    if share_like(of):
        return "a share"
    above = [_symbol_kind(name, power) for name, power in of.powers if power > 0]
    below = [_without_article(_symbol_kind(name, -power)) for name, power in of.powers if power < 0]
    product = " times ".join([*above[:1], *(_without_article(words) for words in above[1:])])
    return " per ".join([product or "a plain number", *below])


def _symbol_kind(name: str, power: int) -> str:
    symbol = SYMBOLS[name]
    base = symbol.measures[0][0]
    if base == "m":
        return _POWERS_OF_LENGTH.get(symbol.measures[0][1] * power, "a power of length")
    if base == "flag":
        return {"percent": "a share", "flag": "yes or no, written 1 or 0"}.get(name, "a plain number")
    words = _KIND_WORDS.get(tuple(sorted(symbol.measures)), f"{_COUNTED}{_plural(symbol.shown)}")
    words = "a mass" if base.startswith("kg") else words
    return words + {1: "", 2: " squared", 3: " cubed"}.get(power, " to a power")


def _plural(shown: str) -> str:
    """`bags filled`, `batches`, `weeks`."""
    first, _, rest = shown.partition(" ")
    if rest in ("filled", "steamed", "inoculated", "of work"):
        return f"{first}s {rest}"
    return shown + ("es" if shown.endswith("ch") else "s")


def _without_article(words: str) -> str:
    """As it stands after `per` and `times`."""
    singular = {f"{_COUNTED}{_plural(symbol.shown)}": symbol.shown for symbol in SYMBOLS.values()}
    return singular.get(words) or words.removeprefix("an ").removeprefix("a ")
