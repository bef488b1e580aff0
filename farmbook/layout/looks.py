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
INK, SOFT, LINE, HAIR = "#1F1E1B", "#5E5A52", "#8C877B", "#DDD8CC"
BAND, STRAW, STRAW_BOX, CREAM = "#EFECE4", "#F6E2A0", "#8F7A33", "#FBF3D6"
DEEP, MID, PALE, MARK = "#23545C", "#8DAAA8", "#D3DEDB", "#A8401F"


@dataclass(frozen=True)
class Look:
    """How a cell looks. `border`: "", "hair" or "line" below it, "total" above and below, "box" or "straw" around it."""

    bold: bool = False
    size: int = 10
    ink: str = INK
    fill: str = ""
    border: str = ""
    align: str = ""
    wrap: bool = False
    locked: bool = True
    middle: bool = True
    indent: int = 0
    underlined: bool = False


LOOKS: Final[dict[str, Look]] = {
    "title": Look(bold=True, size=18),
    "farm": Look(size=9, ink=SOFT, align="right"),
    "question": Look(ink=SOFT, border="line"),
    "verdict": Look(bold=True, border="line", align="right"),
    "answer": Look(bold=True, size=12, fill=BAND, border="hair", wrap=True, indent=1, align="left"),
    "heading": Look(bold=True, size=11, border="line"),
    "heading_side": Look(size=9, ink=SOFT, border="line"),
    "beside": Look(bold=True, size=10),
    "number": Look(size=9, ink=SOFT, border="hair", align="center"),
    "column_head": Look(size=9, ink=SOFT, border="line", wrap=True, align="left"),
    "column_head_right": Look(size=9, ink=SOFT, border="line", wrap=True, align="right"),
    "label": Look(border="hair", wrap=True),
    "label_bold": Look(bold=True, border="hair", wrap=True),
    "unit": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left", indent=1),
    "words": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left"),
    "paragraph": Look(wrap=True, align="left"),
    "caution": Look(wrap=True, border="hair", align="left"),
    "name": Look(size=9, ink=SOFT),
    "link": Look(size=9, ink=DEEP, underlined=True),
    "input": Look(fill=STRAW, border="straw", locked=False, align="right"),
    "input_text": Look(fill=STRAW, border="straw", locked=False, wrap=True, align="left"),
    "input_choice": Look(size=9, fill=CREAM, border="box", locked=False, wrap=True, align="left"),
    "input_note": Look(size=9, border="box", locked=False, wrap=True, align="left"),
    "input_sample": Look(fill=STRAW, border="straw", align="right"),
    "choice_sample": Look(size=9, fill=CREAM, border="box", align="left"),
    "limit": Look(size=9, ink=SOFT, border="hair", align="right"),
    "fixed": Look(fill=BAND, border="hair", align="left"),
    "worked": Look(border="hair", align="right"),
    "worked_bold": Look(bold=True, border="hair", align="right"),
    "worked_text": Look(border="hair", wrap=True, align="left"),
    "headline": Look(bold=True, size=14, border="hair", align="right"),
    "headline_text": Look(bold=True, border="hair", wrap=True, align="left"),
    "used": Look(size=9, ink=SOFT, align="right"),
    "opening": Look(ink=SOFT, border="hair", align="right"),
    "check": Look(bold=True, border="hair", align="right"),
    "flag": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left"),
}
"""Straw with a box: type here. Cream: pick a word. A rule under a line: worked out. The band: the answer of the sheet."""

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
