"""The named looks of the book, as data. Every look can be told apart in grey."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

__all__ = ["FONT", "HAIR", "INK", "LOOKS", "MARK", "Look"]

FONT: Final = "Arial"
INK, SOFT, LINE, HAIR = "#1F1E1B", "#5E5A52", "#8C877B", "#DDD8CC"
BAND, STRAW, STRAW_BOX, CREAM = "#EFECE4", "#F6E2A0", "#8F7A33", "#FBF3D6"
DEEP, MID, PALE, MARK = "#23545C", "#8DAAA8", "#D3DEDB", "#A8401F"


@dataclass(frozen=True)
class Look:
    """How a cell looks. `border`: "", "hair" or "line" below it, "total" above and below, "box", "straw" or "write"
    around it."""

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
    "question": Look(ink=SOFT, border="line", wrap=True, align="left"),
    "verdict": Look(bold=True, border="line", align="right"),
    "answer": Look(bold=True, size=12, fill=BAND, border="hair", wrap=True, indent=1, align="left"),
    "heading": Look(bold=True, size=11, border="line"),
    "heading_side": Look(size=9, ink=SOFT, border="line"),
    "beside": Look(bold=True, size=10),
    "caption": Look(bold=True, size=10, wrap=True, align="left"),
    "front_link": Look(ink=DEEP, border="hair", wrap=True, align="left"),
    "said": Look(border="hair", wrap=True, align="left"),
    "number": Look(size=9, ink=SOFT, border="hair", align="center"),
    "column_head": Look(size=9, ink=SOFT, border="line", wrap=True, align="left"),
    "column_head_text": Look(size=9, ink=SOFT, border="line", wrap=True, align="left", indent=1),
    "column_head_right": Look(size=9, ink=SOFT, border="line", wrap=True, align="right"),
    "label": Look(border="hair", wrap=True),
    "label_bold": Look(bold=True, border="hair", wrap=True),
    "column_number": Look(size=9, ink=SOFT, align="right"),
    "unit": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left", indent=1),
    "unit_head": Look(size=9, ink=SOFT, border="hair", wrap=True, align="right"),
    "words": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left"),
    "month_head": Look(size=9, border="line", align="right"),
    "member": Look(border="hair", wrap=True, align="left", indent=1),
    "band_title": Look(bold=True, size=11, border="line"),
    "band_head": Look(bold=True, size=9, border="line", align="right"),
    "band_year": Look(bold=True, size=9, border="line", align="right", fill=BAND),
    "month": Look(size=9, border="hair", align="right"),
    "month_total": Look(bold=True, size=9, border="total", align="right"),
    "month_label": Look(size=9, border="hair", wrap=True, align="left"),
    "month_member": Look(size=9, border="hair", wrap=True, align="left", indent=1),
    "month_label_total": Look(bold=True, size=9, border="total", wrap=True, align="left"),
    "year": Look(size=9, border="hair", align="right", fill=BAND),
    "year_total": Look(bold=True, size=9, border="total", align="right", fill=BAND),
    "card_label": Look(size=11, border="hair", wrap=True, align="left", indent=1),
    "card_figure": Look(bold=True, size=14, border="hair", align="right"),
    "card_words": Look(border="hair", wrap=True, align="left", indent=1),
    "card_said": Look(size=11, border="hair", wrap=True, align="left"),
    "card_box": Look(size=8, ink=SOFT, border="write", align="right", indent=1),
    "card_day": Look(size=9, ink=SOFT, border="line", align="right"),
    "card_line": Look(border="line"),
    "paragraph": Look(wrap=True, align="left"),
    "caution": Look(size=9, wrap=True, border="hair", align="left"),
    "name": Look(size=9, ink=SOFT),
    "link": Look(size=9, ink=DEEP, underlined=True),
    "input": Look(fill=STRAW, border="straw", locked=False, align="right"),
    "input_text": Look(fill=STRAW, border="straw", locked=False, wrap=True, align="left"),
    "input_choice": Look(size=9, fill=CREAM, border="box", locked=False, wrap=True, align="left"),
    "input_note": Look(size=9, border="box", locked=False, wrap=True, align="left"),
    "input_sample": Look(fill=STRAW, border="straw", align="right"),
    "assumed_sample": Look(border="straw", align="right"),
    "choice_sample": Look(size=9, fill=CREAM, border="box", align="left"),
    "limit": Look(size=9, ink=SOFT, border="hair", align="right"),
    "fixed": Look(fill=BAND, border="hair", align="left"),
    "worked": Look(border="hair", align="right"),
    "worked_bold": Look(bold=True, border="hair", align="right"),
    "worked_text": Look(border="hair", wrap=True, align="left", indent=1),
    "worked_words": Look(border="hair", wrap=True, align="center"),
    "headline": Look(bold=True, size=14, border="hair", align="right"),
    "used": Look(size=9, ink=SOFT, align="right"),
    "opening": Look(ink=SOFT, border="hair", align="right"),
    "check": Look(bold=True, border="hair", align="right"),
    "glance": Look(size=9, border="hair", align="left", indent=1),
    "glance_state": Look(size=9, border="hair", align="right"),
    "flag": Look(size=9, ink=SOFT, border="hair", wrap=True, align="left"),
}
"""Straw with a box: type here. Cream: pick a word. A rule under a line: worked out. The band: the answer of the sheet."""
