"""The first screen of the first sheet reads alone on a phone, by its columns A to D: one sentence for every place where it does not."""

from __future__ import annotations

from collections.abc import Iterator

from openpyxl.cell.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from farmbook.layout.measure import PADDING, height_of, width_of
from tests.workbook.written import MAIN, Written, shown

__all__ = ["FRONT_LINTS", "SCREEN", "heights_of"]

LAST = 4
"""Column D."""
WIDEST, SCREEN = 480, 500
"""Pixels of a phone's 390 points that a program still shows in full, and of 25 rows."""
ROW, COLUMN = 20, 64
"""Pixels where a file says nothing."""


def heights_of(book: Written) -> dict[int, float]:
    """The height of every row of the first sheet that the file sets, in pixels."""
    rows = next(iter(book.sheets_xml.values())).iter(f"{MAIN}row")
    return {int(each.attrib["r"]): float(each.attrib["ht"]) * 4 / 3 for each in rows if "ht" in each.attrib}


def _widths(book: Written) -> dict[int, float]:
    found: dict[int, float] = {}
    for each in next(iter(book.sheets_xml.values())).iter(f"{MAIN}col"):
        columns = range(int(each.attrib["min"]), min(int(each.attrib["max"]), LAST + 1) + 1)
        found |= dict.fromkeys(columns, float(each.attrib["width"]) * 7)
    return found


def narrow(book: Written) -> Iterator[str]:
    """Columns A to D are no wider than a phone."""
    widths = _widths(book)
    width = sum(widths.get(column, COLUMN) for column in range(1, LAST + 1))
    if width > WIDEST:
        yield f"columns A to D take {width:.0f} pixels"


def reads_alone(book: Written) -> Iterator[str]:
    """Nothing that begins in A to D runs out of them, nor out of its row."""
    sheet, heights, widths = book.sheets[0], heights_of(book), _widths(book)
    top = 0.0
    for row in range(1, sheet.max_row + 1):
        height = heights.get(row, ROW)
        top += height
        if top > SCREEN:
            return
        for column in range(1, LAST + 1):
            cell = sheet.cell(row, column)
            said = book.values.get((sheet.title, row, column))
            if isinstance(cell, Cell) and said not in (None, ""):
                words = said if isinstance(said, str) else f"${said:,.2f}"
                last = _last_column(sheet, cell, within=isinstance(said, float))
                room = sum(widths.get(each, COLUMN) for each in range(column, min(last, LAST) + 1))
                if last > LAST or not _fits(cell, words, room, height):
                    yield f"{shown((sheet.title, row, column))}: `{words}` runs out"


def _last_column(sheet: Worksheet, cell: Cell, *, within: bool) -> int:
    """The last column that a cell may fill: its own, those merged with it, or for words on one line the blank ones beside it."""
    for area in sheet.merged_cells.ranges:
        if cell.coordinate in area:
            return int(area.max_col)
    last: int = cell.column
    if not within and not cell.alignment.wrap_text:
        while last < LAST and sheet.cell(cell.row, last + 1).value is None:
            last += 1
    return last


def _fits(cell: Cell, words: str, room: float, height: float) -> bool:
    size, bold = int(cell.font.sz or 11), bool(cell.font.b)
    room -= 10 * (cell.alignment.indent or 0)
    if cell.alignment.wrap_text:
        return height_of(words, room, size, bold=bold) <= height
    return width_of(words, size, bold=bold) <= room - PADDING


FRONT_LINTS = (narrow, reads_alone)
