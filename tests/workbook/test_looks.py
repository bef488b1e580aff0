"""What each look is in the file as written: where to type, what is worked out, what is repeated, and how words wrap."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Final

from openpyxl.cell.cell import Cell

from farmbook.layout.looks import LOOKS
from tests.made import laid_out
from tests.plan.model import worked
from tests.plan.sheets import TITLE, sheets
from tests.workbook.shipped import SCENARIOS, ShippedBook
from tests.workbook.written import Written

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
    "worked_text": "10 ink, under hair, left, indent 1, wraps",
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
    "column_head_text": "9 soft, under line, left, indent 1, wraps",
    "column_head_right": "9 soft, under line, right, wraps",
    "paragraph": "10 ink, left, wraps",
    "caution": "9 ink, under hair, left, wraps",
    # weeks and months
    "column_number": "9 soft, right",
    "month_head": "9 ink, under line, right",
    "member": "10 ink, under hair, left, indent 1, wraps",
    # years of months, for readers: a total between two rules, the year on the band
    "band_title": "11 ink, bold, under line",
    "band_head": "9 ink, bold, under line, right",
    "band_year": "9 ink, on band, bold, under line, right",
    "month": "9 ink, under hair, right",
    "month_total": "9 ink, bold, between line, right",
    "month_label": "9 ink, under hair, left, wraps",
    "month_member": "9 ink, under hair, left, indent 1, wraps",
    "month_label_total": "9 ink, bold, between line, left, wraps",
    "year": "9 ink, on band, under hair, right",
    "year_total": "9 ink, on band, bold, between line, right",
    # a card: boxes to tick and to write in
    "card_label": "11 ink, under hair, left, indent 1, wraps",
    "card_figure": "14 ink, bold, under hair, right",
    "card_words": "10 ink, under hair, left, indent 1, wraps",
    "card_said": "11 ink, under hair, left, wraps",
    "card_box": "8 soft, box line, right, indent 1",
    "card_day": "9 soft, under line, right",
    "card_line": "10 ink, under line",
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
    "assumed_sample": "10 ink, box dark straw, right",
    "choice_sample": "9 ink, on cream, box hair, left",
    "fixed": "10 ink, on band, under hair, left",
}


def seen(cell: Cell) -> str:
    """What a reader sees of a cell's look."""
    font, border, alignment = cell.font, cell.border, cell.alignment
    below, beside = border.bottom, {border.left.style, border.right.style}
    colour = COLOURS[below.color.rgb[2:]] if below.style else ""
    sides = {(None, None): "under", (None, "thin"): "between", ("thin", "thin"): "box"}
    assert below.style in (None, "thin") and len(beside) == 1, cell.coordinate
    ruled = sides[beside.pop(), border.top.style]
    words = [
        f"{font.sz:g} {COLOURS[font.color.rgb[2:]]}",
        f"on {COLOURS[cell.fill.fgColor.rgb[2:]]}" if cell.fill.fill_type == "solid" else "",
        "bold" if font.b else "",
        "italic" if font.i else "",
        "underlined" if font.u else "",
        f"{ruled} {colour}" if colour else "",
        alignment.horizontal or "",
        f"indent {alignment.indent:g}" if alignment.indent else "",
        "" if alignment.vertical == "center" else f"{alignment.vertical}",
        "wraps" if alignment.wrap_text else "",
        "" if cell.protection.locked else "open",
    ]
    return ", ".join(word for word in words if word)


def test_every_cell_looks_as_its_kind_should(books: Mapping[str, ShippedBook], tmp_path: Path) -> None:
    found: dict[str, set[str]] = {}
    every = [(laid_out(SCENARIOS[name])[0], shipped.written.book) for name, shipped in books.items()]
    plan = worked(12).written(tmp_path / "plan.xlsx", sheets(), TITLE)
    for book, written in [*every, (plan, Written(tmp_path / "plan.xlsx").book)]:
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
