"""The grids of the book: columns in a spreadsheet's pixels at 100 %, what each is for, and how high rows are."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

__all__ = [
    "ANSWER_HEIGHT",
    "BEFORE",
    "CARD_BOX",
    "CARD_WORDS",
    "COMMON",
    "FIRST_MONTH",
    "GRIDS",
    "HEADING_HEIGHT",
    "HOW",
    "HOW_COLUMNS",
    "INPUTS",
    "LABEL",
    "LISTS",
    "MONTHS_A_YEAR",
    "MONTH_UNIT",
    "MONTH_WIDTH",
    "NAME",
    "NUMBER",
    "PRINTED",
    "ROW_HEIGHT",
    "SPACE",
    "TITLE_HEIGHT",
    "UNIT",
    "VALUE",
    "WEEK_WIDTH",
    "WORKED",
    "YEAR",
    "Grid",
    "Side",
]  # fmt: skip

NUMBER, LABEL, VALUE, UNIT, HOW, NAME = 0, 1, 2, 3, 4, 10
"""Columns of a worked sheet; `HOW` is the first of the columns for words, tables and charts, `NAME` the screen margin."""
HOW_COLUMNS: Final = 6
WORKED: Final = (28, 240, 96, 112, *[88] * HOW_COLUMNS, 176)
INPUTS: Final = (28, 224, 76, 92, 52, 60, 100, 78, 250, 130, 82, 176, 150, 66, 66, 82)
LISTS: Final = (28, 200, *[88] * 42)
PRINTED: Final = 10
"""Columns of every sheet that print; what stands further right is for the screen."""

ROW_HEIGHT, TITLE_HEIGHT, ANSWER_HEIGHT, HEADING_HEIGHT, SPACE = 20, 31, 46, 30, 8

MONTHS_A_YEAR: Final = 12
MONTH_UNIT, BEFORE, FIRST_MONTH = 2, 3, 4
"""Columns of a sheet of monthly workings: the same month stands in the same column of every one."""
MONTH_WIDTH, WEEK_WIDTH = 66, 84
CARD_WORDS, CARD_BOX = 4, 8
"""Columns of a card where words begin, and the boxes to write in; each day of a week takes one column."""
YEAR = 2 + MONTHS_A_YEAR
"""The column of a year's total beside its twelve months."""


Side = Literal["across", "upright"]
"""How paper lies."""


@dataclass(frozen=True)
class Grid:
    """How a class of sheets uses its columns; of `widths`, workings that run on further have more of the last.

    `printed` columns print, the right part of the title rows begins at `side`. Where columns are told in full, the label takes
    those from 1 to `told`, the words those from there to `ends`, and the name the next. A sheet on `one_side` is scaled to it,
    across or upright, whichever of these prints larger; others print across at the `largest` percent at most, so that a side of
    A4, which is lower, holds what one of letter does, and one that runs on is `wide`: its links stand beside its title.
    """

    widths: tuple[int, ...] = WORKED
    printed: int = PRINTED
    side: int = 5
    told: int = VALUE
    ends: int = PRINTED
    one_side: tuple[Side, ...] = ()
    largest: int = 85
    wide: bool = False


COMMON: Final = Grid()
GRIDS: Final = {
    "months": Grid(
        (28, 224, 84, 78, *[MONTH_WIDTH] * MONTHS_A_YEAR), FIRST_MONTH + MONTHS_A_YEAR, 9, VALUE,
        FIRST_MONTH + MONTHS_A_YEAR, one_side=("across",), wide=True,
    ),
    "weeks": Grid((WEEK_WIDTH,) * 12, PRINTED, 5, 4, 12, wide=True),
    "bank": Grid(one_side=("across", "upright")),
    "statement": Grid(one_side=("across", "upright")),
    "years": Grid((12, 224, *[60] * MONTHS_A_YEAR, 70, 170), YEAR + 1, 9, VALUE, YEAR + 1, largest=80),
    "card": Grid((24, 238, 92, 76, 44, 44, 44, 44, 42, 41, 41, 176), 11, 3, VALUE, 11, one_side=("upright",)),
}  # fmt: skip
"""The grids of classes of sheets that have their own; the others have the common one."""
