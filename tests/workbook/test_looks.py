"""What each look is in the file as written: where to type, what is worked out, what is repeated, and how words wrap."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import openpyxl
from openpyxl.cell.cell import Cell

from farmbook.layout.looks import LOOKS
from farmbook.output import lay_out
from tests.workbook.shipped import ShippedBook

COLOURS: Final = {
    "1E1E1C": "ink",
    "5C5A54": "soft ink",
    "274B7A": "blue",
    "F7EFD6": "straw",
    "DEDAD0": "stone",
    "F1EFEA": "mist",
}
SEEN: Final[Mapping[str, str]] = {
    # the head of a sheet, in the middle of its row
    "title": "15 ink, bold, center",
    "farm": "10 soft ink, bold, center",
    "verdict": "10 ink, bold, box thin, center",
    "question": "10 soft ink, italic, center",
    "heading": "12 ink, on stone, bold, center",
    # words wrap
    "column_head": "9 ink, bold, line thin, left, indent 1, top, wraps",
    "column_head_right": "9 ink, bold, line thin, right, top, wraps",
    "label": "10 ink, top, wraps",
    "paragraph": "10 ink, top, wraps",
    "caution": "10 ink, box dotted, top, wraps",
    "words": "8 soft ink, left, indent 1, top, wraps",
    "unit": "9 soft ink, left, indent 1, top, wraps",
    "name": "8 soft ink, top, wraps",
    "flag": "9 ink, left, indent 1, top, wraps",
    # straw fill and a box: type here; nothing else is open
    "input": "10 ink, on straw, box thin, right, top, open",
    "input_text": "10 ink, on straw, box thin, top, wraps, open",
    "input_sample": "10 ink, on straw, box thin, top",
    # numbers stand at the right, words at the left and wrap; what is repeated is in italics
    "worked": "10 ink, right, top",
    "worked_text": "10 ink, top, wraps",
    "headline": "10 ink, bold, line thin, right, top",
    "shown": "10 ink, italic, right, top",
    "shown_text": "10 ink, italic, top, wraps",
    "opening": "10 soft ink, box dotted, right, top",
    "check": "10 ink, bold, box thin, right, top",
    "limit": "9 soft ink, right, top",
    "fixed": "10 ink, on mist, box dotted, top",
    "link": "10 blue, line thin, top",
}


def seen(cell: Cell) -> str:
    """What a reader sees of a cell's look."""
    font, border, alignment = cell.font, cell.border, cell.alignment
    under, sides = border.bottom.style, {border.left.style, border.right.style, border.top.style}
    words = [
        f"{font.sz:g} {COLOURS[font.color.rgb[2:]]}",
        f"on {COLOURS[cell.fill.fgColor.rgb[2:]]}" if cell.fill.fill_type == "solid" else "",
        "bold" if font.b else "",
        "italic" if font.i else "",
        f"box {under}" if under and sides == {under} else "",
        f"line {under}" if under and sides == {None} else "",
        alignment.horizontal or "",
        f"indent {alignment.indent:g}" if alignment.indent else "",
        alignment.vertical or "",
        "wraps" if alignment.wrap_text else "",
        "" if cell.protection.locked else "open",
    ]
    return ", ".join(word for word in words if word)


def test_every_cell_looks_as_its_kind_should(books: Mapping[str, ShippedBook]) -> None:
    found: dict[str, set[str]] = {}
    for shipped in books.values():
        book, _ = lay_out(shipped.computed)
        written = openpyxl.load_workbook(shipped.path)
        for sheet in book.sheets:
            for cell in sheet.cells:
                found.setdefault(cell.look, set()).add(seen(written[sheet.name].cell(cell.row + 1, cell.column + 1)))
    assert found == {look: {words} for look, words in SEEN.items()}
    assert set(SEEN) == set(LOOKS)


def test_words_worked_out_wrap_and_numbers_stand_at_the_right(books: Mapping[str, ShippedBook]) -> None:
    """Found by where each line stands, not by the look that it was given."""
    for shipped in books.values():
        written = openpyxl.load_workbook(shipped.path)
        for each in shipped.placed:
            sheet, row, column = each.cells[0]
            alignment = written[sheet].cell(row, column).alignment
            if each.kind == "worked number":
                assert alignment.horizontal == "right", each.name
            elif each.kind == "worked words" and not each.name.endswith("_label"):
                assert alignment.wrap_text and alignment.horizontal != "right", each.name
