"""The named looks of the book, as data, and how many decimals each unit shows. Every look can be told apart in grey."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

from farmbook.units import Unit

__all__ = ["FONT", "LOOKS", "NO_FIGURE", "Look", "decimals", "number_format", "zero_in_words"]

FONT: Final = "Arial"
NO_FIGURE: Final = "no figure"
"""What a reader sees in place of 0 where 0 would mean that there is no such figure."""
INK, SOFT_INK, STRAW, STONE, MIST = "#1E1E1C", "#5C5A54", "#F7EFD6", "#DEDAD0", "#F1EFEA"


@dataclass(frozen=True)
class Look:
    """How a cell looks. `border`: "", "thin", "thick", "dotted" or "under"."""

    bold: bool = False
    italic: bool = False
    size: int = 10
    ink: str = INK
    fill: str = ""
    border: str = ""
    align: str = ""
    wrap: bool = False
    locked: bool = True
    top: bool = True
    indent: int = 0


LOOKS: Final[dict[str, Look]] = {
    "title": Look(bold=True, size=15, top=False),
    "farm": Look(bold=True, size=10, ink=SOFT_INK, top=False),
    "verdict": Look(bold=True, border="thin", top=False),
    "question": Look(italic=True, ink=SOFT_INK, top=False),
    "heading": Look(bold=True, size=12, fill=STONE, top=False),
    "column_head": Look(bold=True, wrap=True, border="under", size=9, align="left", indent=1),
    "column_head_right": Look(bold=True, wrap=True, border="under", size=9, align="right"),
    "label": Look(wrap=True),
    "paragraph": Look(wrap=True),
    "caution": Look(wrap=True, border="dotted"),
    "words": Look(wrap=True, size=8, ink=SOFT_INK, align="left", indent=1),
    "unit": Look(size=9, ink=SOFT_INK, wrap=True, align="left", indent=1),
    "name": Look(size=8, ink=SOFT_INK, wrap=True),
    "input": Look(fill=STRAW, border="thin", locked=False, align="right"),
    "input_text": Look(fill=STRAW, border="thin", locked=False, wrap=True),
    "input_sample": Look(fill=STRAW, border="thin"),
    "limit": Look(ink=SOFT_INK, align="right", size=9),
    "fixed": Look(fill=MIST, border="dotted"),
    "worked": Look(align="right"),
    "worked_text": Look(wrap=True),
    "headline": Look(bold=True, align="right", border="under"),
    "shown": Look(italic=True, align="right"),
    "shown_text": Look(italic=True, wrap=True),
    "opening": Look(ink=SOFT_INK, align="right", border="dotted"),
    "check": Look(bold=True, align="right", border="thin"),
    "flag": Look(size=9, wrap=True, align="left", indent=1),
    "link": Look(ink="#274B7A", border="under"),
}
"""Straw fill with a box: type here. Plain: worked out. Italic: repeated from its own sheet. Dotted box: fixed in the scenario file."""

_DECIMALS: Final = {
    **dict.fromkeys(("flag", "count", "V"), 0),
    **dict.fromkeys(("kWh", "kW", "kJ", "min", "day", "A", "L", "gal", "cm", "in"), 1),
    **dict.fromkeys(("degC", "degF", "delta_degC", "delta_degF"), 1),
}
"""Units that do not show two decimals."""
_SMALL: Final = ("bag", "kg", "lb", "kWh", "kJ", "L", "gal", "spawn", "grain", "second", "plate", "m", "ft")
"""Money for one of these shows three decimals; money for a load, a week or a year shows two."""


def decimals(of: Unit) -> int:
    """How many decimals a number in this unit shows; one format for a unit throughout the book."""
    if not of.powers or of.shown() == "to 1":
        return 2 if not of.powers else 1
    first, power = of.powers[0]
    if first == "money":
        below = [name.partition("_")[0] for name, exponent in of.powers if exponent < 0]
        return 3 if len(below) == 1 and below[0] in _SMALL else 2
    if first.startswith(("bag_", "run", "batch", "place", "week", "spawn_bag", "grain_bag", "plate")):
        return 1
    if power == 1 and first in _DECIMALS:
        return _DECIMALS[first]
    if first.partition("_")[0] in ("kg", "lb", "g", "oz", "t", "ton"):
        return 3 if len(of.powers) > 1 else 1
    return 2


def zero_in_words(form: str) -> str:
    """A number format that shows words in place of 0; a cell too narrow for them would show hashes, so they are few.

    A format may have one part each for above, below and at zero, so of one with conditions only the last is kept.
    """
    plain = form.rpartition(";")[2]
    return f'{plain};-{plain};"{NO_FIGURE}"'


@cache
def number_format(of: Unit) -> str:
    """The spreadsheet number format of a unit: shares as percent, the rest with a thousands mark."""
    if of.share:
        return "0.00%" if any("nitrogen" in name for name, _ in of.powers) else "0.0%"
    if not of.powers:
        return (
            "[>=1000000]0.000E+00;[<=-1000000]-0.000E+00;#,##0.00"  # steps of the steam equation run to twelve figures
        )
    places = decimals(of)
    return "#,##0" + ("." + "0" * places if places else "")
