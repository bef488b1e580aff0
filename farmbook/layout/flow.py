"""Where pages break: the empty rows above a block grow until the block falls on the next side. Pure; all in pixels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from farmbook.layout.book import Sheet
from farmbook.layout.grid import COMMON, ROW_HEIGHT, SPACE, Grid, Side

__all__ = ["Part", "flow", "print_scale", "scale_to_side", "set_spaces", "side_for", "side_height"]

_PRINTABLE: Final[dict[Side, dict[str, tuple[int, int]]]] = {
    "across": {"letter": (969, 715), "a4": (1036, 693)},
    "upright": {"letter": (729, 955), "a4": (707, 1021)},
}
"""Width and height of a side between its margins: 0.45 inch all round, 0.6 at the foot."""
_IN_HAND: Final = 93
"""Of a hundred; some programs draw columns up to 6 % wider than they are set."""
_SMALLEST: Final = 10
FOOT: Final = 15
"""What a block must clear the foot by; less than any row that begins one."""
TITLE_ROWS: Final = 2
LOWER_ROW: Final = 40
"""Pixels at most of the lower of the two rows above a block, a little more than Gnumeric's sides are shorter."""
HIGHEST_ROW: Final = 546
"""Pixels; 409.5 points, the most that spreadsheet programs take. Where more is left, a block begins on the side and runs on."""


@dataclass(frozen=True)
class Part:
    """A block: its rows with their heights, and how many at its top stay together whatever its size."""

    heights: tuple[float, ...]
    together: int = 3

    @property
    def height(self) -> float:
        """All of it."""
        return sum(self.heights)


def print_scale(widths: Sequence[int], paper: str, grid: Grid = COMMON) -> int:
    """Percent at which the printed columns fill a side, at most as large as their grid prints."""
    return min(grid.largest, int(_IN_HAND * _PRINTABLE["across"][paper][0] / sum(widths[: grid.printed])))


def side_for(sheet: Sheet, paper: str) -> Side:
    """How a sheet lies on paper: across, or of the sides that it may stand on the one on which it prints larger."""
    return max(sheet.grid.one_side, key=lambda side: _part(sheet, side, paper), default="across")


def scale_to_side(sheet: Sheet, paper: str) -> int:
    """Percent at which all that a sheet prints stands on one side, at least as small as any program prints."""
    return max(_SMALLEST, min(100, int(_IN_HAND * _part(sheet, side_for(sheet, paper), paper))))


def side_height(widths: Sequence[int], paper: str, grid: Grid = COMMON) -> float:
    """How much of a sheet's height a printed side holds."""
    return _PRINTABLE["across"][paper][1] / print_scale(widths, paper, grid) * 100


def _part(sheet: Sheet, side: Side, paper: str) -> float:
    """The part of its size on the screen at which a sheet fills a side."""
    across, down = _PRINTABLE[side][paper]
    wide = sum(sheet.widths[: sheet.grid.printed])
    high = sum(sheet.heights.get(row, ROW_HEIGHT) for row in range(_rows(sheet)))
    return min(across / wide, down / high)


def _rows(sheet: Sheet) -> int:
    """How many rows of a sheet print."""
    return sheet.printed_rows or max(cell.row for cell in sheet.cells) + 1


def flow(first: float, parts: Sequence[Part], side: float, repeated: float) -> list[float]:
    """The heights of the empty space above the blocks, so that none that would fit on a side is cut, and no heading stands alone.

    `first` is what stands above the first block, `repeated` the title that every later side repeats.
    """
    spaces: list[float] = []
    left = side - first
    for part in parts:
        whole = part.height <= side - repeated - FOOT
        needed = part.height if whole else sum(part.heights[: part.together])
        space: float = SPACE
        if spaces and left - SPACE < needed + FOOT and left - FOOT <= HIGHEST_ROW:
            # a side a little shorter still holds it, one a little longer holds no heading
            space = max(SPACE, left - FOOT)
        spaces.append(space)
        left = left - space if space <= left else side - repeated - space
        for height in part.heights:
            if height > left:
                left = side - repeated
            left -= height
    return spaces


def set_spaces(sheet: Sheet, paper: str) -> None:
    """Let the two empty rows above each block grow as the pages of a sheet need.

    Where a program's side is a little shorter, the lower row goes over to the next one by itself, and the gap there is small.
    """
    rows = range(_rows(sheet))
    heights = [sheet.heights.get(row, ROW_HEIGHT) for row in rows]
    starts = [row for row in sheet.starts if row < len(rows)]
    if not starts or sheet.grid.one_side:
        return
    ends = [*(start - 1 for start in starts[1:]), len(rows)]
    parts = [Part(tuple(heights[start + 1 : end])) for start, end in zip(starts, ends, strict=True)]
    spaces = flow(sum(heights[: starts[0] - 1]), parts, _side(sheet, paper), sum(heights[:TITLE_ROWS]))
    for start, space in zip(starts, spaces, strict=True):
        lower = min(space / 2, LOWER_ROW)
        sheet.heights.update({start - 1: space - lower, start: lower})


def _side(sheet: Sheet, paper: str) -> float:
    return side_height(sheet.widths, paper, sheet.grid)
