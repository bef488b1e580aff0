"""How much room words need, from the advance widths of Arial, which Liberation Sans shares."""

from __future__ import annotations

import math
import re
import unicodedata
from functools import lru_cache
from typing import Final

__all__ = ["PADDING", "height_of", "lines_of", "sentences_of", "width_of"]

REGULAR: Final = (
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556,
    556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
)  # fmt: skip
BOLD: Final = (
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611,
    611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
)  # fmt: skip
"""Thousandths of the size for each sign from the space to the tilde; read from Liberation Sans 2."""
SIGNS: Final = {
    "\u00d7": (584, 584), "\u00f7": (549, 549), "\u2013": (556, 556), "\u25b2": (990, 990), "\u25bc": (990, 990),
    "\u25cf": (604, 604), "\u2500": (708, 708), "\u2039": (333, 333), "\u203a": (333, 333), "\u2026": (1000, 1000),
    "\u20ac": (556, 556), "\u00a3": (556, 556), "\u00b7": (333, 333), "\u00b0": (400, 400), "\u00df": (611, 611),
    "\u00b5": (576, 576), "\u00b2": (333, 333), "\u00b3": (333, 333), "\u00bd": (834, 834), "\u2014": (1000, 1000),
    "\u00b1": (549, 549), "\u00a7": (556, 556), "\u00a2": (556, 556), "\u00a9": (737, 737), "\u00ab": (556, 556),
    "\u00bb": (556, 556), "\u00bc": (834, 834), "\u00be": (834, 834), "\u00e6": (889, 889), "\u00f8": (611, 611),
    "\u00d8": (778, 778), "\u00c6": (1000, 1000), "\u0131": (278, 278), "\u2018": (222, 278), "\u2019": (222, 278),
    "\u201c": (333, 500), "\u201d": (333, 500),
}  # fmt: skip
"""The same for the few other signs that the book uses, regular and bold; read from Liberation Sans 2."""
DOTLESS: Final = "\u0131"
"""What an accented i is drawn on; wider than an i with its dot."""
WIDEST: Final = 1000
PADDING: Final = 8
"""Pixels of a column that no words stand in."""
LEADING: Final = 1.15
"""Height of a line over the size of its letters."""
ABOVE_AND_BELOW: Final = 4


@lru_cache(maxsize=8192)
def width_of(words: str, size: int, *, bold: bool = False) -> float:
    """Pixels that words take on one line; `size` in points."""
    return sum(_advance(sign, bold=bold) for sign in words) / 1000 * size * 4 / 3


@lru_cache(maxsize=512)
def _advance(sign: str, *, bold: bool) -> int:
    """An accent takes no room; a sign that the table does not know as much as any."""
    apart = unicodedata.normalize("NFD", sign)
    plain = DOTLESS if apart[0] == "i" and len(apart) > 1 else apart[0]
    if " " <= plain <= "~":
        return (BOLD if bold else REGULAR)[ord(plain) - 32]
    return SIGNS.get(plain, (WIDEST, WIDEST))[bold]


@lru_cache(maxsize=8192)
def lines_of(words: str, width: float, size: int, *, bold: bool = False) -> int:
    """Lines that words take when wrapped between words in a column of so many pixels; a longer word is broken."""
    room = max(1.0, width - PADDING)
    space = width_of(" ", size, bold=bold)
    count = 0
    for paragraph in words.split("\n"):
        count += 1
        taken = 0.0
        for word in paragraph.split(" "):
            needed = width_of(word, size, bold=bold)
            if taken and taken + space + needed > room:
                count, taken = count + 1, 0.0
            whole = math.ceil(needed / room) - 1
            count, needed = count + max(0, whole), needed - max(0, whole) * room
            taken += needed + (space if taken else 0.0)
    return count


def height_of(words: str, width: float, size: int, *, bold: bool = False) -> int:
    """Pixels that a row needs for words wrapped in a column of so many pixels."""
    return math.ceil(lines_of(words, width, size, bold=bold) * size * 4 / 3 * LEADING) + ABOVE_AND_BELOW


def sentences_of(words: str) -> list[str]:
    """Words cut after each full stop that ends a sentence."""
    return re.split(r"(?<=[.?!]) (?=[A-Z0-9])", words) if words else []
