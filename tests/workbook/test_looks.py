"""What each look is in the file as written: where to type, what is worked out, what is repeated, and how words wrap."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from openpyxl.cell.cell import Cell

from farmbook.layout.looks import LOOKS
from farmbook.output import lay_out
from tests.workbook.shipped import ShippedBook

COLOURS: Final = {
    "1F1E1B": "ink",
    "5E5A52": "soft",
    "8C877B": "line",
    "DDD8CC": "hair",
    "EFECE4": "band",
    "F6E2A0": "straw",
    "8F7A33": "dark straw",
    "FBF3D6": "cream",
    "23545C": "deep",
}
SEEN: Final[Mapping[str, str]] = {
    # the head of a sheet
    "title": "18 ink, bold",
    "farm": "9 soft, right",
    "question": "10 soft, under line, left, wraps",
    "verdict": "10 ink, bold, under line, right",
    "answer": "12 ink, on band, bold, under hair, left, indent 1, wraps",
    "heading": "11 ink, bold, under line",
    "heading_side": "9 soft, under line",
    "beside": "10 ink, bold",
    "caption": "10 ink, bold, left, wraps",
    # the first sheet: figures that lead to their sheets, and sentences
    "front_link": "10 deep, under hair, left, wraps",
    "said": "10 ink, under hair, left, wraps",
    # a line: a rule of hair runs under all of it, and words wrap
    "number": "9 soft, under hair, center",
    "label": "10 ink, under hair, wraps",
    "label_bold": "10 ink, bold, under hair, wraps",
    "worked": "10 ink, under hair, right",
    "worked_bold": "10 ink, bold, under hair, right",
    "worked_text": "10 ink, under hair, left, wraps",
    "worked_words": "10 ink, under hair, center, wraps",
    "headline": "14 ink, bold, under hair, right",
    "unit": "9 soft, under hair, left, indent 1, wraps",
    "unit_head": "9 soft, under hair, right, wraps",
    "words": "9 soft, under hair, left, wraps",
    "opening": "10 soft, under hair, right",
    "check": "10 ink, bold, under hair, right",
    "glance": "9 ink, under hair, left, indent 1",
    "glance_state": "9 ink, under hair, right",
    "flag": "9 soft, under hair, left, wraps",
    "limit": "9 soft, under hair, right",
    "column_head": "9 soft, under line, left, wraps",
    "column_head_right": "9 soft, under line, right, wraps",
    "paragraph": "10 ink, left, wraps",
    "caution": "9 ink, under hair, left, wraps",
    # the screen margin
    "name": "9 soft",
    "used": "9 soft, right",
    "link": "9 deep, underlined",
    # straw and a box: type here; nothing but straw, cream and the box of a note is open
    "input": "10 ink, on straw, box dark straw, right, open",
    "input_text": "10 ink, on straw, box dark straw, left, wraps, open",
    "input_choice": "9 ink, on cream, box hair, left, wraps, open",
    "input_note": "9 ink, box hair, left, wraps, open",
    "input_sample": "10 ink, on straw, box dark straw, right",
    "choice_sample": "9 ink, on cream, box hair, left",
    "fixed": "10 ink, on band, under hair, left",
}


def seen(cell: Cell) -> str:
    """What a reader sees of a cell's look."""
    font, border, alignment = cell.font, cell.border, cell.alignment
    below, rest = border.bottom, {border.left.style, border.right.style, border.top.style}
    colour = COLOURS[below.color.rgb[2:]] if below.style else ""
    assert below.style in (None, "thin") and rest in ({None}, {"thin"}), cell.coordinate
    words = [
        f"{font.sz:g} {COLOURS[font.color.rgb[2:]]}",
        f"on {COLOURS[cell.fill.fgColor.rgb[2:]]}" if cell.fill.fill_type == "solid" else "",
        "bold" if font.b else "",
        "italic" if font.i else "",
        "underlined" if font.u else "",
        f"box {colour}" if rest == {"thin"} else f"under {colour}" if colour else "",
        alignment.horizontal or "",
        f"indent {alignment.indent:g}" if alignment.indent else "",
        "" if alignment.vertical == "center" else f"{alignment.vertical}",
        "wraps" if alignment.wrap_text else "",
        "" if cell.protection.locked else "open",
    ]
    return ", ".join(word for word in words if word)


def test_every_cell_looks_as_its_kind_should(books: Mapping[str, ShippedBook]) -> None:
    found: dict[str, set[str]] = {}
    for shipped in books.values():
        book, _ = lay_out(shipped.computed)
        written = shipped.written.book
        for sheet in book.sheets:
            for cell in sheet.cells:
                found.setdefault(cell.look, set()).add(seen(written[sheet.name].cell(cell.row + 1, cell.column + 1)))
    assert found == {look: {words} for look, words in SEEN.items()}
    assert set(SEEN) == set(LOOKS)


def test_words_worked_out_wrap_and_numbers_stand_at_the_right(books: Mapping[str, ShippedBook]) -> None:
    """Found by where each line stands, not by the look that it was given."""
    for shipped in books.values():
        written = shipped.written.book
        for each in shipped.placed:
            sheet, row, column = each.cells[0]
            alignment = written[sheet].cell(row, column).alignment
            if each.kind == "worked number":
                assert alignment.horizontal == "right", each.name
            elif each.kind == "worked words" and not each.name.endswith(".label"):
                assert alignment.wrap_text and alignment.horizontal != "right", each.name
