"""The grids of the book: columns in a spreadsheet's pixels at 100 %, what each is for, and how high rows are."""

from __future__ import annotations

from typing import Final

__all__ = [
    "ANSWER_HEIGHT", "HEADING_HEIGHT", "HOW", "HOW_COLUMNS", "INPUTS", "LABEL", "LISTS", "NAME", "NUMBER", "PRINTED", "ROW_HEIGHT", "SPACE",
    "TITLE_HEIGHT", "UNIT", "VALUE", "WORKED",
]  # fmt: skip

NUMBER, LABEL, VALUE, UNIT, HOW, NAME = 0, 1, 2, 3, 4, 10
"""Columns of a worked sheet; `HOW` is the first of the columns for words, tables and charts, `NAME` the screen margin."""
HOW_COLUMNS: Final = 6
WORKED: Final = (28, 240, 96, 112, *[88] * HOW_COLUMNS, 176)
INPUTS: Final = (28, 224, 76, 92, 50, 50, 100, 78, 262, 130, 82, 176, 150, 66, 66, 82)
LISTS: Final = (28, 200, *[88] * 42)
PRINTED: Final = 10
"""Columns of every sheet that print; what stands further right is for the screen."""

ROW_HEIGHT, TITLE_HEIGHT, ANSWER_HEIGHT, HEADING_HEIGHT, SPACE = 20, 31, 46, 30, 8
