"""Sentences: fixed words, figures and choices of two, joined into a live text that turns with its figures.

A sentence stands only as the whole of a line, and nothing is worked out from it. It is exempt from the limits of formulas and
has its own: words of at most LONGEST_WORDS characters each, at most MOST_PARTS parts.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Final

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Choose, Constant, Expr, FirstLabel, Line, Nth
from farmbook.units import Unit

__all__ = [
    "BAR",
    "LONGEST_WORDS",
    "MOST_PARTS",
    "STRIP_PLACES",
    "STRIP_SPAN",
    "Either",
    "Figure",
    "Sentence",
    "Strip",
    "either",
    "figure",
    "longest",
    "say",
]

LONGEST_WORDS: Final = 255
"""Characters of one text in a formula, by the file format."""
MOST_PARTS: Final = 16
FIGURE_ROOM: Final = "$000,000.00"
"""A large figure in a sentence, as room is made for it."""

BAR: Final = "──────────●──────────"
"""A window of half its length, shows the mark in one of its places."""
STRIP_PLACES: Final = Constant(
    len(BAR) // 2 + 1, "strip_places", label="Places of the mark in a range", unit=Unit(()), source="arithmetic"
)
STRIP_SPAN: Final = Constant(
    10.999, "strip_span", label="Span of a range in places", unit=Unit(()), source="arithmetic"
)


@dataclass(frozen=True, eq=False)
class Figure(Expr):
    """A number in words, to so many digits (-2: whole hundreds); `none` in place of 0 where that means no figure.

    Lowering finds the sign of money before it, whether it is said in hundredths, and, if `named`, the unit `after` it.
    """

    value: Expr
    digits: int
    named: bool
    sign: str = ""
    percent: bool = False
    after: str = ""
    none: str = ""


@dataclass(frozen=True, eq=False)
class Either(Expr):
    """Some words, or a line that is worked out in words, where the condition is not zero, else others."""

    condition: Expr
    yes: str | Expr
    no: str | Expr


@dataclass(frozen=True, eq=False)
class Strip(Expr):
    """Where a number lies between two others: a bar of so many places with a mark. Stands among the sentences of a choice.

    `span` is a little less than the places, so that no round number falls between two of them, where programs would differ.
    """

    value: Expr
    low: Expr
    high: Expr
    places: Expr
    span: Expr


@dataclass(frozen=True, eq=False)
class Sentence(Expr):
    """The parts, one after the other; a line among them is one that is worked out in words."""

    parts: tuple[str | Expr, ...]

    is_text: ClassVar[bool] = True


def figure(value: Expr, digits: int, *, named: bool = True) -> Expr:
    """A figure in a sentence: money with its sign, a share in hundredths; with its unit as a grower says it, if `named`."""
    return Figure(value, digits, named)


def either(condition: Expr, yes: str | Expr, no: str | Expr) -> Expr:
    """A choice of two in a sentence."""
    return Either(condition, yes, no)


def say(*parts: str | Expr) -> Expr:
    """A sentence; raises ModelFault where it is longer than a spreadsheet takes."""
    words = [part for part in parts if isinstance(part, str)]
    chosen = [choice for part in parts if isinstance(part, Either) for choice in (part.yes, part.no)]
    words += [choice for choice in chosen if isinstance(choice, str)]
    if len(parts) > MOST_PARTS or any(len(each) > LONGEST_WORDS for each in words):
        raise ModelFault(f"a sentence of {len(parts)} parts, or with words of more than {LONGEST_WORDS} characters")
    return Sentence(parts)


def longest(part: str | Expr) -> str:
    """The most that a sentence, a part of one or another text may say; nothing where that is not known."""
    if isinstance(part, str):
        return part
    if isinstance(part, Line):
        return longest(part.expr)
    if isinstance(part, Sentence):
        return "".join(longest(each) for each in part.parts)
    if isinstance(part, Either):
        return max(longest(part.yes), longest(part.no), key=len)
    if isinstance(part, Choose):
        return max((longest(each) for each in part.sentences), key=len)
    if isinstance(part, FirstLabel):
        return max(part.labels, key=len)
    if isinstance(part, Nth) and part.is_text:
        shown = (each.called if part.labels else longest(each) for each in part.shown)
        return max((part.otherwise, *shown), key=len)
    return FIGURE_ROOM if isinstance(part, Figure) else ""
