"""Rules for what the cells of a written workbook hold and show: one sentence for every place that breaks one."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import NamedTuple

from openpyxl.cell.cell import Cell
from openpyxl.utils import range_boundaries
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from tests.engines.cells import ErrorValue, Value
from tests.workbook.formulas import NAME, Area, area_of
from tests.workbook.written import MAIN, At, FormulaCell, Written, shown

__all__ = ["CELL_LINTS"]

WHITE = ("FFFFFFFF", "00FFFFFF")
TOLERANCE = 1e-12
NAMES = "Name"
"""Head of the column of names."""


def hidden(book: Written) -> Iterator[str]:
    """No hidden or folded sheet, row, column or name, and no text in the colour of its background."""
    for sheet in book.sheets:
        if sheet.sheet_state != "visible":
            yield f"{sheet.title}: the sheet is {sheet.sheet_state}"
        yield from _hidden_lines(book, sheet)
    for name in book.workbook_xml.iter(f"{MAIN}definedName"):
        if name.get("hidden") in ("1", "true") and not name.attrib["name"].startswith("_xlnm."):
            yield f"the name {name.attrib['name']} is hidden"
    yield from (f"{shown(at)}: cannot be seen" for at, cell in book.cells() if cell.value is not None and _unseen(cell))


def _hidden_lines(book: Written, sheet: Worksheet) -> Iterator[str]:
    root = book.sheets_xml[sheet.title]
    for kind, number, size in (("col", "min", "width"), ("row", "r", "ht")):
        for line in root.iter(f"{MAIN}{kind}"):
            folded = line.get("hidden") in ("1", "true") or line.get("collapsed") in ("1", "true")
            if folded or line.get("outlineLevel", "0") != "0" or float(line.get(size, "1")) <= 0:
                yield f"{sheet.title}: {'column' if kind == 'col' else 'row'} {line.attrib[number]} is hidden or folded"


def _unseen(cell: Cell) -> bool:
    """Whether ink and background are one colour, or the number format shows nothing."""
    ink = cell.font.color.rgb if cell.font.color is not None and cell.font.color.type == "rgb" else "FF000000"
    fill = cell.fill.fgColor.rgb if cell.fill.fill_type == "solid" else "FFFFFFFF"
    same = ink in WHITE if fill in WHITE else ink == fill
    return same or not cell.number_format.replace(";", "").strip()


def labels(book: Written) -> Iterator[str]:
    """A label belongs to one line or input where it is read: an input's in the whole book, a line's under its heading.

    A line has one label in the book, of which a sheet may leave out words that its title says.
    """
    of_label: dict[tuple[str, ...], set[str]] = {}
    of_name: dict[str, set[str]] = {}
    found = [row for row in _labelled(book) if not row.label.startswith("=")]  # a sentence goes without a label
    inputs = {row.label for row in found if row.typed}
    for row in found:
        where = () if row.label in inputs else (row.sheet, row.heading)
        of_label.setdefault((*where, row.label), set()).add(row.name)
        of_name.setdefault(row.name, set()).add(row.label)
    for (*_, label), names in of_label.items():
        if len(names) > 1:
            yield f"`{label}` is the label of {', '.join(sorted(names))}"
    for name, said in of_name.items():
        if not all(_shortened(label, max(said, key=len)) for label in said):
            yield f"{name} is labelled {', '.join(sorted(said))}"


def _shortened(label: str, whole: str) -> bool:
    """Whether a label is another with words left out."""
    words = iter(re.findall(r"\w+", whole.casefold()))
    return all(word in words for word in re.findall(r"\w+", label.casefold()))


MARGIN = 11
"""First column of the screen margin of a worked sheet, where names stand."""


class _Labelled(NamedTuple):
    """A row with a label and a name, under a heading of a sheet; `typed` where an input stands in it."""

    sheet: str
    heading: str
    label: str
    name: str
    typed: bool


def _labelled(book: Written) -> Iterator[_Labelled]:
    """Every row that has a label and a name; an input and its used value count as one."""
    for sheet in book.sheets:
        headed: set[int] = set()
        heading = ""
        for row in sheet.iter_rows():
            headed |= {cell.column for cell in row if cell.value == NAMES}
            named = [cell for cell in row if cell.column in headed or cell.column >= MARGIN]
            names = [str(cell.value) for cell in named if NAME.fullmatch(str(cell.value))]
            labels = [cell.value for cell in row[:2] if isinstance(cell.value, str) and not cell.value.isdigit()]
            if names and labels:
                typed = any(not cell.protection.locked for cell in row)
                yield _Labelled(sheet.title, heading, labels[0], names[0].removesuffix("_used"), typed)
            elif row[0].value in labels:
                heading = labels[0]


def results(book: Written) -> Iterator[str]:
    """Every formula cell has a stored result: a finite number or a text that is not empty; never yes/no or an error."""
    kinds = {
        (sheet, cell.attrib["r"]): cell.get("t", "n")
        for sheet, root in book.sheets_xml.items()
        for cell in root.iter(f"{MAIN}c")
    }
    for at, cell in book.formulas.items():
        kind = kinds[at[0], shown(at).partition("!")[2]]
        wrong = _wrong_result(kind, book.values.get(at))
        if wrong:
            yield f"{cell}: {wrong}"


def _wrong_result(kind: str, value: Value | None) -> str:
    if kind == "b":
        return "a yes/no value"
    if isinstance(value, ErrorValue):
        return f"the error {value.code}"
    if value is None or value == "":
        return "no stored result"
    return "" if isinstance(value, str) or math.isfinite(value) else "not a finite number"


def repeats(book: Written) -> Iterator[str]:
    """A cell that only repeats another holds what the other holds."""
    for at, cell in book.formulas.items():
        source = _repeated(book, cell)
        if source is not None and not _same(book.values.get(at), book.values.get(source)):
            yield f"{cell}: holds {book.values.get(at)!r}, {shown(source)} holds {book.values.get(source)!r}"


def _repeated(book: Written, cell: FormulaCell) -> At | None:
    """The cell that a formula does nothing but refer to."""
    text = cell.text.removeprefix("=")
    area = book.names.get(text.lower()) or area_of(text, cell.sheet)
    return (area.sheet, area.first_row, area.first_column) if area is not None and area.single else None


def _same(one: Value | None, other: Value | None) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=TOLERANCE, abs_tol=TOLERANCE)
    return one == other


def locked(book: Written) -> Iterator[str]:
    """Sheets are protected without a password; formulas are locked, and what may be typed into holds no formula."""
    for sheet, root in book.sheets_xml.items():
        protection = root.find(f"{MAIN}sheetProtection")
        if protection is None or protection.get("sheet") not in ("1", "true"):
            yield f"{sheet}: not protected"
        elif any(key in protection.attrib for key in ("password", "hashValue", "saltValue", "algorithmName")):
            yield f"{sheet}: protected with a password"
    if book.workbook_xml.find(f"{MAIN}workbookProtection") is not None:
        yield "the book itself is protected"
    for at, cell in book.cells():
        if at in book.formulas and not cell.protection.locked:
            yield f"{book.formulas[at]}: a formula that may be typed over"
        if at in book.formulas and cell.protection.hidden:
            yield f"{book.formulas[at]}: a formula that cannot be read"


def validated(book: Written) -> Iterator[str]:
    """Every cell that may be typed into has a rule; every rule says what is wanted and what is wrong."""
    ruled = {at for at, _ in _ruled_cells(book)}
    for at, cell in book.cells():
        if not cell.protection.locked and at not in ruled:
            yield f"{shown(at)}: anything may be typed here"
        if at in ruled and cell.protection.locked:
            yield f"{shown(at)}: has a rule but cannot be typed into"
    for sheet in book.sheets:
        for rule in sheet.data_validations.dataValidation:
            if _speechless(rule):
                yield f"{sheet.title}!{rule.sqref}: the rule does not say what is wanted or what is wrong"


def _ruled_cells(book: Written) -> Iterator[tuple[At, DataValidation]]:
    for sheet in book.sheets:
        for rule in sheet.data_validations.dataValidation:
            for block in str(rule.sqref).split():
                left, top, right, bottom = range_boundaries(block)
                for row in range(top, bottom + 1):
                    for column in range(left, right + 1):
                        yield (sheet.title, row, column), rule


def _speechless(rule: DataValidation) -> bool:
    asks = rule.showInputMessage and rule.prompt and rule.promptTitle
    refuses = rule.showErrorMessage and rule.error and rule.errorTitle and rule.errorStyle in (None, "stop")
    return not asks or not (refuses or rule.type in (None, "none"))


def numbers_as_text(book: Written) -> Iterator[str]:
    """No number is kept as a text where a number is asked for."""
    for (sheet, row, column), rule in _ruled_cells(book):
        value = book.book[sheet].cell(row, column).value
        if (
            rule.type in ("decimal", "whole")
            and isinstance(value, str)
            and re.fullmatch(r"[\s+-]*[0-9][0-9.,\s%]*", value)
        ):
            yield f"{shown((sheet, row, column))}: {value!r} is a text"


def named_cells(book: Written) -> Iterator[str]:
    """Names follow the pattern, differ in more than capitals, and each stands for one cell that holds something, or for a
    block of cells to type into."""
    written = [
        each for each in book.workbook_xml.iter(f"{MAIN}definedName") if not each.attrib["name"].startswith("_xlnm.")
    ]
    seen: set[str] = set()
    for each in written:
        name = each.attrib["name"]
        if not NAME.fullmatch(name) or len(name) > 64:
            yield f"{name}: not a name of the book's kind"
        if name.lower() in seen or "localSheetId" in each.attrib:
            yield f"{name}: more than one cell is called so"
        seen.add(name.lower())
        yield from _points_nowhere(book, name, each.text or "")


def _points_nowhere(book: Written, name: str, target: str) -> Iterator[str]:
    area = area_of(target, "")
    sheet = book.sheets_xml.get(area.sheet) if area is not None else None
    if area is None or sheet is None or target.count("$") != (2 if area.single else 4):
        yield f"{name}: stands for {target}, not for one cell"
    elif not area.single and not _open(book, area):
        yield f"{name}: stands for {target}, not for one cell nor for cells to type into"
    elif area.single and not _in_book(book, area):
        yield f"{name}: stands for {target}, which is empty"


def _in_book(book: Written, area: Area) -> bool:
    """Whether the cell holds something, or is there to be typed into."""
    cell = book.book[area.sheet].cell(area.first_row, area.first_column)
    return cell.value is not None or not cell.protection.locked


def _open(book: Written, area: Area) -> bool:
    """Whether all of a block may be typed into."""
    rows = book.book[area.sheet].iter_rows(area.first_row, area.last_row, area.first_column, area.last_column)
    return not any(cell.protection.locked for row in rows for cell in row)


CELL_LINTS = (hidden, labels, results, repeats, locked, validated, numbers_as_text, named_cells)
