"""Sentences: fixed words, figures and choices of two, joined into a live text that turns with its figures.

A sentence stands only as the whole of a line, and nothing is worked out from it. It is exempt from the limits of formulas and
has its own: words of at most LONGEST_WORDS characters each, at most MOST_PARTS parts.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Final

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Expr

__all__ = ["LONGEST_WORDS", "MOST_PARTS", "Either", "Figure", "Sentence", "either", "figure", "say"]

LONGEST_WORDS: Final = 255
"""Characters of one text in a formula, by the file format."""
MOST_PARTS: Final = 16


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
    """Some words where the condition is not zero, else others."""

    condition: Expr
    yes: str
    no: str


@dataclass(frozen=True, eq=False)
class Sentence(Expr):
    """The parts, one after the other; a line among them is one that is worked out in words."""

    parts: tuple[str | Expr, ...]

    is_text: ClassVar[bool] = True


def figure(value: Expr, digits: int, *, named: bool = True) -> Expr:
    """A figure in a sentence: money with its sign, a share in hundredths; with its unit as a grower says it, if `named`."""
    return Figure(value, digits, named)


def either(condition: Expr, yes: str, no: str) -> Expr:
    """A choice of two words in a sentence."""
    return Either(condition, yes, no)


def say(*parts: str | Expr) -> Expr:
    """A sentence; raises ModelFault where it is longer than a spreadsheet takes."""
    words = [part for part in parts if isinstance(part, str)]
    words += [choice for part in parts if isinstance(part, Either) for choice in (part.yes, part.no)]
    if len(parts) > MOST_PARTS or any(len(each) > LONGEST_WORDS for each in words):
        raise ModelFault(f"a sentence of {len(parts)} parts, or with words of more than {LONGEST_WORDS} characters")
    return Sentence(parts)
