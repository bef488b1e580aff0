"""What may stand at the top of a scenario file, before any table."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from farmbook.scenario.values import read_text, read_word
from farmbook.scenario.words import UnfitError, listed
from farmbook.units import SYSTEMS

__all__ = ["MONTHS_USUAL", "PAPERS_SAID", "TOP_KEYS", "UNITS_SAID", "Header", "TopKey"]

MONTHS: Final = tuple(range(12, 85, 12))
MONTHS_USUAL: Final = 36
PAPERS: Final = ("letter", "a4")
UNITS_SAID: Final[Mapping[str, str]] = {"us": "US customary (lb, ft, degF)", "metric": "metric (kg, m, degC)"}
PAPERS_SAID: Final[Mapping[str, str]] = {"letter": "US letter", "a4": "A4"}
"""How a book says its units and its paper."""


@dataclass(frozen=True)
class Header:
    """The keys at the top of a file; an empty text for one that is not given, or given wrongly."""

    units: str = ""
    currency: str = ""
    paper: str = ""
    months: str = ""
    extends: str = ""


@dataclass(frozen=True)
class TopKey:
    """One key: what it means, how its value is read, and its JSON Schema."""

    says: str
    read: Callable[[object], str]
    schema: Mapping[str, Any]


def _currency(given: object) -> str:
    text = read_text(given)
    if len(text) != 3 or not text.isascii() or not text.isalpha() or not text.isupper():
        raise UnfitError('three capital letters are wanted, such as "USD"')
    return text


def _months(given: object) -> str:
    """A horizon in whole years, as the text of its number."""
    if isinstance(given, bool) or not isinstance(given, int) or given not in MONTHS:
        raise UnfitError(f"whole years of months are wanted: {listed([str(each) for each in MONTHS])}")
    return str(given)


def _one_of(says: str, words: tuple[str, ...]) -> TopKey:
    return TopKey(says, lambda given: read_word(given, words), {"type": "string", "enum": list(words)})


TOP_KEYS: Final[Mapping[str, TopKey]] = {
    "units": _one_of("What plain numbers in this file mean.", SYSTEMS),
    "currency": TopKey("The only currency of the file.", _currency, {"type": "string", "pattern": "^[A-Z]{3}$"}),
    "paper": _one_of("Paper to print on; left out, it follows the units.", PAPERS),
    "months": TopKey(
        f"Months that the plan runs, in whole years; left out, {MONTHS_USUAL}.", _months, {"enum": list(MONTHS)}
    ),
    "extends": TopKey("A scenario file beside this one, whose values this one changes.", read_text, {"type": "string"}),
}
