"""A book written by XlsxWriter alone from a prepared list: what any program that writes this book must spend at least.

Run as `python -m benchmarks.bare_writer PREPARED BOOK`; `prepare` makes the list. Nothing of farmbook is loaded to write.
"""

from __future__ import annotations

import datetime as dt
import gc
import pickle
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell

BORDERS = {None: 0, "thin": 1, "medium": 2, "thick": 5, "dotted": 4, "dashed": 3, "double": 6, "hair": 7}
"""Numbers by which XlsxWriter knows the kinds of border."""


def prepare(book: Path, prepared: Path) -> None:
    """Keep every cell of a book as (row, column, content, result, number of its format), by sheet; the formats; the names."""
    from openpyxl import load_workbook  # not needed to write

    formulas, results = load_workbook(book), load_workbook(book, data_only=True)
    formats: dict[int, tuple[int, dict[str, Any]]] = {}
    sheets = {}
    for sheet in formulas.worksheets:
        rows = zip(sheet.iter_rows(), results[sheet.title].iter_rows(values_only=True), strict=True)
        sheets[sheet.title] = [
            (cell.row - 1, cell.column - 1, _plain(cell.value), _plain(result), _format_number(cell, formats))
            for cells, values in rows
            for cell, result in zip(cells, values, strict=True)
            if cell.has_style
        ]
    names = {name: defined.attr_text for name, defined in formulas.defined_names.items()}
    prepared.write_bytes(pickle.dumps((sheets, [look for _, look in formats.values()], names)))


def _plain(content: Any) -> Any:
    """A date as the number that stands in the file."""
    from openpyxl.utils.datetime import to_excel  # not needed to write

    return to_excel(content) if isinstance(content, dt.date | dt.time) else content


def _format_number(cell: Cell, formats: dict[int, tuple[int, dict[str, Any]]]) -> int:
    if cell.style_id not in formats:
        formats[cell.style_id] = (len(formats), _format(cell))
    return formats[cell.style_id][0]


def _format(cell: Cell) -> dict[str, Any]:
    """What XlsxWriter is told of a cell's look."""
    font, fill, border, place = cell.font, cell.fill, cell.border, cell.alignment
    found: dict[str, Any] = {
        "font_name": font.name,
        "font_size": font.size,
        "font_color": f"#{font.color.rgb[2:]}" if font.color and isinstance(font.color.rgb, str) else "#000000",
        "bold": bool(font.bold),
        "italic": bool(font.italic),
        "text_wrap": bool(place.wrap_text),
        "indent": int(place.indent),
        "locked": bool(cell.protection.locked),
        "num_format": cell.number_format,
        **{side: BORDERS[getattr(border, side).style] for side in ("left", "right", "top", "bottom")},
    }
    if fill.fill_type == "solid":
        found["bg_color"] = f"#{fill.fgColor.rgb[2:]}"
    if place.horizontal:
        found["align"] = place.horizontal
    return found


def write(prepared: Path, book: Path) -> None:
    """Write the prepared list."""
    import xlsxwriter

    sheets, looks, names = pickle.loads(prepared.read_bytes())  # noqa: S301 - our own list, made in the same run
    workbook = xlsxwriter.Workbook(book, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False})
    formats = [workbook.add_format(look) for look in looks]
    for name, cells in sheets.items():
        page = workbook.add_worksheet(name)
        for row, column, content, result, look in cells:
            if content is None:
                page.write_blank(row, column, None, formats[look])
            elif isinstance(content, str) and content.startswith("=") and content != result:
                page.write_formula(row, column, content, formats[look], result)
            elif isinstance(content, str):
                page.write_string(row, column, content, formats[look])
            else:
                page.write_number(row, column, content, formats[look])
    for name, place in names.items():
        workbook.define_name(name, f"={place}")
    workbook.close()


if __name__ == "__main__":
    gc.disable()
    write(Path(sys.argv[1]), Path(sys.argv[2]))
