"""The named looks of the book, as data. Every look can be told apart in grey."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

__all__ = ["FONT", "LOOKS", "Look"]

FONT: Final = "Arial"
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
