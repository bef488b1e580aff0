"""What may stand at one place of a scenario file: numbers with units, texts, options, and how well each is known."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal
from fractions import Fraction
from typing import Any, Final

from farmbook.expr.axis import Axis
from farmbook.expr.texts import fold
from farmbook.scenario.limits import hard_fault
from farmbook.scenario.quantity import checked, converted, read_quantity, split_quantity
from farmbook.scenario.words import UnfitError, closest, key_words, listed
from farmbook.sections.declare import BASES, Choice, Input, NumberInput
from farmbook.units import displayed, serial_of

__all__ = [
    "CELL_KEYS",
    "LONGEST_TEXT",
    "TEXT_CELL_KEYS",
    "Context",
    "as_cell",
    "by_member",
    "read_basis",
    "read_number",
    "read_text",
    "read_value",
    "read_word",
    "table_of",
]

LONGEST_TEXT: Final = 200
_AMBIGUOUS_TON: Final = re.compile(r"(?<!short )\btons?\b", re.IGNORECASE)
CELL_KEYS: Final = ("value", "basis", "note")
TEXT_CELL_KEYS: Final = ("value", "note")
_TURNING: Final = {*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F}
"""Characters that turn the direction of writing and so can hide what a text says."""


@dataclass(frozen=True)
class Context:
    """What a file's plain numbers mean. An empty text is what the file gives wrongly: nothing is judged by it."""

    system: str
    currency: str


def table_of(given: object, holding: str) -> Mapping[str, Any]:
    """A table; raises UnfitError, with what it holds in words, for anything else."""
    if not isinstance(given, Mapping):
        raise UnfitError(f"a table is wanted here, with {holding}")
    return given


def by_member(axis: Axis, given: object) -> Mapping[str, Any]:
    """A value for each member of an axis, by key; of a fixed axis also as a list. Raises UnfitError for anything else."""
    if axis.named:
        return table_of(given, f"a value for each {axis.label}, by its key")
    if isinstance(given, Mapping):
        return given
    count = len(axis.members)
    shown = ", ".join(axis.members[:6])
    if not isinstance(given, list):
        raise UnfitError(f"a list of {count} values is wanted, or a table with a value for each {axis.label} ({shown})")
    if len(given) != count:
        raise UnfitError(f"{count} values are wanted, one for each {axis.label} ({shown}); the list has {len(given)}")
    return dict(zip(axis.members, given, strict=True))


def as_cell(given: object, *, basis: bool) -> Mapping[str, Any]:
    """A plain value as the table `{value = ...}` that it stands for; raises UnfitError for a table without a value."""
    if not isinstance(given, Mapping):
        return {"value": given}
    if "value" in given:
        return given
    near = next((str(key) for key in given if closest(str(key), ["value"])), "")
    keys = 'value = ..., basis = "measured", note = "..."' if basis else 'value = ..., note = "..."'
    raise UnfitError(
        f"one value is wanted, or {{{keys}}}" + (f"; did you mean `value` by `{key_words(near)}`?" if near else "")
    )


def read_value(declared: Input, given: object, context: Context) -> tuple[Fraction, str]:
    """A number in the declared unit, or a text, and nothing in place of the other; raises UnfitError for neither."""
    if isinstance(declared, NumberInput):
        return read_number(declared, given, context), ""
    return Fraction(0), read_option(declared, given) if isinstance(declared, Choice) else read_text(given)


def read_number(declared: NumberInput, given: object, context: Context) -> Fraction:
    """A number in the declared unit; raises UnfitError for anything else and for a number past its hard limits."""
    target = declared.measure
    if target.date:
        return _read_day(declared, given, context)
    shown = displayed(target, context.system or "metric")
    number, written = _number_and_unit(given)
    if not written and not context.system:
        return number
    if context.system == "metric" and _AMBIGUOUS_TON.search(written):
        raise UnfitError("in a metric file write `t` for 1,000 kg, or `short ton` for 2,000 lb")
    found = converted(number, shown, target)
    if written:
        found = read_quantity(number, written, target, context.currency, shown)
    fault = hard_fault(declared, found, given, context.system or "metric", context.currency)
    if fault:
        raise UnfitError(fault)
    return found


def _read_day(declared: NumberInput, given: object, context: Context) -> Fraction:
    """A day of the calendar, by its number in spreadsheets; raises UnfitError for anything else, or one past the limits."""
    day = given if isinstance(given, date) and not isinstance(given, datetime) else None
    if isinstance(given, str):
        try:
            day = date.fromisoformat(given.strip())
        except ValueError:
            day = None
    if day is None:
        raise UnfitError("a date is wanted, year-month-day, such as 2027-03-01")
    found = Fraction(serial_of(day))
    fault = hard_fault(declared, found, given, context.system or "metric", context.currency)
    if fault:
        raise UnfitError(fault)
    return found


def _number_and_unit(given: object) -> tuple[Fraction, str]:
    if isinstance(given, bool):
        raise UnfitError("a number is wanted, not true or false")
    if isinstance(given, (int, float, Decimal)):
        return checked(given), ""
    if isinstance(given, str):
        return split_quantity(read_text(given))
    raise UnfitError(_wrong_kind(given, "a number is wanted"))


_ERROR_WORDS: Final = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!")


def read_text(given: object) -> str:
    """A text on one line; a date counts as a text. Raises UnfitError for anything else."""
    if isinstance(given, date) and not isinstance(given, datetime):
        return given.isoformat()
    if not isinstance(given, str):
        raise UnfitError(_wrong_kind(given, "a text in quotation marks is wanted"))
    if len(given) > LONGEST_TEXT:
        raise UnfitError(f"the text has {len(given)} characters; at most {LONGEST_TEXT} fit")
    for position, character in enumerate(given, 1):
        if _unprintable(character):
            raise UnfitError(
                f"a control character (U+{ord(character):04X}, in place {position}) may not stand in a text"
            )
    if not given.strip():
        raise UnfitError("is empty; leave the key out to keep what the book fills in")
    if given.strip().upper() in _ERROR_WORDS:
        raise UnfitError("is what spreadsheet programs write for an error; use other words")
    return given.strip()


def _unprintable(character: str) -> bool:
    code = ord(character)
    return unicodedata.category(character) in ("Cc", "Cs", "Zl", "Zp") or code in _TURNING or (code & 0xFFFE) == 0xFFFE


def _wrong_kind(given: object, wanted: str) -> str:
    kinds: tuple[tuple[Any, str], ...] = (
        (bool, "true or false"),
        ((int, float, Decimal), "a number"),
        ((date, time), "a date or a time"),
        (list, "a list"),
        (Mapping, "a table"),
    )
    found = next((words for kind, words in kinds if isinstance(given, kind)), "")
    return f"{wanted}, not {found}" if found else wanted


def read_word(given: object, options: tuple[str, ...]) -> str:
    """One of a few words, upper or lower case alike; raises UnfitError for another."""
    text = read_text(given)
    found = next((option for option in options if fold(option) == fold(text)), None)
    if found is None:
        near = closest(text, options)
        asked = f"did you mean `{near}`? The" if near else "the"
        raise UnfitError(f"no such word here; {asked} words are {listed(options)}")
    return found


def read_basis(given: object) -> str:
    """How a number is known."""
    return read_word(given, BASES)


def read_option(declared: Choice, given: object) -> str:
    """The label of the option that a file names by its label or its key; raises UnfitError for other words."""
    keys = {fold(option.key): option.label for option in declared.options}
    return keys.get(fold(read_text(given))) or read_word(given, declared.labels)
