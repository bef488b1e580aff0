"""Cells of a workbook file: formulas, stored results, and how two sets of results differ."""

from __future__ import annotations

import math
import posixpath
import re
import zipfile
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import BinaryIO, NamedTuple, Protocol, Self
from xml.etree import ElementTree
from xml.sax.saxutils import escape

import openpyxl
from openpyxl.utils.cell import coordinate_to_tuple

Cell = tuple[str, str]
"""Sheet name and A1 address."""


@dataclass(frozen=True)
class ErrorValue:
    """An error shown in a cell, such as #VALUE! or Err:502; never equal to a text that merely looks like one."""

    code: str


Value = float | str | ErrorValue
"""A result. Dates are serial numbers of days and booleans 1 or 0: not every program knows the difference."""

Entry = float | str | date | None
"""What a user may put into a cell; None clears it."""


class Book(Protocol):
    """A workbook held open in a spreadsheet program: many edits, each followed by a reading."""

    def set(self, sheet: str, cell: str, value: Entry) -> None:
        """Put a number, a text or a date into a cell, or clear it with None; dependents follow at the next reading."""

    def read(self, cells: Collection[Cell]) -> dict[Cell, Value | None]:
        """Return the present result of every cell asked for, None where the cell is blank."""

    def close(self) -> None:
        """Let the program go; closing twice does no harm."""

    def __enter__(self) -> Self: ...

    def __exit__(self, *exception: object) -> None: ...


class Rectangle(NamedTuple):
    """Block of cells, both corners included, counted from 1."""

    first_row: int
    first_column: int
    last_row: int
    last_column: int


@cache
def position(cell: str) -> tuple[int, int]:
    """Return row and column of an A1 address, counted from 1; raises ValueError for anything else."""
    row, column = coordinate_to_tuple(cell)
    return int(row), int(column)


def rectangles(cells: Iterable[Cell]) -> dict[str, Rectangle]:
    """Return the smallest block on each sheet that holds all the cells asked for on it."""
    positions: dict[str, list[tuple[int, int]]] = {}
    for sheet, cell in cells:
        positions.setdefault(sheet, []).append(position(cell))
    return {sheet: _block(places) for sheet, places in positions.items()}


def _block(places: Collection[tuple[int, int]]) -> Rectangle:
    rows = [row for row, _ in places]
    columns = [column for _, column in places]
    return Rectangle(min(rows), min(columns), max(rows), max(columns))


def typed(value: Entry) -> float | str | None:
    """Return an entry as a spreadsheet keeps it: number, text, or None for blank; dates become serial numbers.

    Raises TypeError for a boolean (no input of the workbook is one, and LibreOffice cannot tell it from a number) and
    ValueError for what no user can type: an empty text, infinity, not-a-number, a date before March 1900.
    """
    if value is None:
        return None
    if isinstance(value, bool):
        raise TypeError("a cell takes a number, a text, a date or None, not a boolean")
    if isinstance(value, date):
        return _serial(value)
    if value == "":
        raise ValueError("an empty text cannot be typed into a cell; None clears it")
    if isinstance(value, str):
        return value
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be typed into a cell")
    return float(value)


def _serial(day: date) -> float:
    """Days since 30 December 1899, the 1900 date system from March 1900 on."""
    if day < date(1900, 3, 1):
        raise ValueError(f"{day} is before March 1900, where the programs' dates differ by one day")
    return float(day.toordinal() - date(1899, 12, 30).toordinal())


_CELL = re.compile(r"<c(\s[^>]*[^/>])>(.*?)</c>", re.DOTALL)
_FORMULA = re.compile(r"<f[\s/>]")
_RESULT = re.compile(r"<v\s*/>|<v(?:\s[^>]*)?>.*?</v>", re.DOTALL)
_RESULT_TYPE = re.compile(r'\st="[^"]*"')


def wipe(source: Path, target: Path | BinaryIO) -> int:
    """Copy a workbook with the stored result of every formula removed, and return how many were removed."""
    removed = 0

    def without_result(found: re.Match[str]) -> str:
        nonlocal removed
        attributes, content = found.groups()
        if not _FORMULA.search(content):
            return found.group()
        content, count = _RESULT.subn("", content)
        removed += count
        return f"<c{_RESULT_TYPE.sub('', attributes)}>{content}</c>"

    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for part in old.infolist():
            content = old.read(part)
            if part.filename.startswith("xl/worksheets/") and part.filename.endswith(".xml"):
                content = _CELL.sub(without_result, content.decode()).encode()
            new.writestr(part, content)
    return removed


def formula_cells(path: Path) -> dict[Cell, str]:
    """Return the formula of every formula cell, as openpyxl reads it."""
    book = openpyxl.load_workbook(path)
    return {
        (sheet.title, cell.coordinate): str(getattr(cell.value, "text", cell.value))
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }


def retype(path: Path, entries: Mapping[Cell, Entry]) -> None:
    """Type into cells of a file and leave the rest of it as it is: a text that begins with `=` is a formula, one with `#` an
    error, a day is kept as a date.
    """
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
        sheets = dict(_sheet_parts(archive))
    for (sheet, cell), entry in entries.items():
        found = re.compile(rf'<c r="{cell}"((?: s="[0-9]+")?)[^>]*?(?:/>|>.*?</c>)', re.DOTALL)
        kind, content = _content(entry)
        put = f'<c r="{cell}"\\1{kind}>{content}</c>'.encode()
        part, times = re.subn(found.pattern.encode(), put, parts[sheets[sheet]], count=1, flags=re.DOTALL)
        assert times == 1, f"{sheet} {cell} is not in the file"
        parts[sheets[sheet]] = part
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, stands in parts.items():
            archive.writestr(name, stands)


def _content(entry: Entry) -> tuple[str, str]:
    """Type and content of a cell in the file."""
    if isinstance(entry, date):
        return ' t="d"', f"<v>{entry.isoformat()}</v>"
    if isinstance(entry, str):
        text = escape(entry).replace("\\", "\\\\")
        if text.startswith("="):
            return "", f"<f>{text[1:]}</f>"
        return (' t="e"', f"<v>{text}</v>") if text.startswith("#") else (' t="inlineStr"', f"<is><t>{text}</t></is>")
    return "", "" if entry is None else f"<v>{entry}</v>"


def named_areas(path: Path) -> dict[str, tuple[str, str]]:
    """Sheet and area, such as B7 or B7:D9, of every name of a workbook."""
    with zipfile.ZipFile(path) as archive:
        root = ElementTree.fromstring(archive.read("xl/workbook.xml"))
    told = {each.attrib["name"]: each.text or "" for each in root.iter(f"{_MAIN}definedName")}
    split = {name: text.replace("$", "").rpartition("!") for name, text in told.items()}
    return {name: (sheet.strip("'"), area) for name, (sheet, _, area) in split.items()}


_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_RELATION = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"


def stored_values(path: Path) -> dict[Cell, Value]:
    """Return every value that stands in the file, typed or stored beside a formula; cells without one are left out.

    Read from the XML itself: openpyxl would turn serial numbers into rounded dates, and an error into a text.
    """
    with zipfile.ZipFile(path) as archive:
        texts = _shared_texts(archive)
        return {
            (sheet, cell): value
            for sheet, part in _sheet_parts(archive)
            for cell, value in _part_values(archive, part, texts)
        }


def _shared_texts(archive: zipfile.ZipFile) -> list[str]:
    if "xl/sharedStrings.xml" not in archive.namelist():
        return []
    root = ElementTree.fromstring(archive.read("xl/sharedStrings.xml"))
    return [_text_of(item) for item in root.iter(f"{_MAIN}si")]


def _text_of(element: ElementTree.Element) -> str:
    """The whole text of a possibly formatted string, phonetic hints left out."""
    hints = {id(text) for hint in element.iter(f"{_MAIN}rPh") for text in hint.iter(f"{_MAIN}t")}
    return "".join(text.text or "" for text in element.iter(f"{_MAIN}t") if id(text) not in hints)


def _sheet_parts(archive: zipfile.ZipFile) -> Iterator[tuple[str, str]]:
    """Name and part of every sheet with cells, in the order of the workbook."""
    relations = ElementTree.fromstring(archive.read("xl/_rels/workbook.xml.rels"))
    targets = {relation.attrib["Id"]: relation.attrib["Target"] for relation in relations}
    for sheet in ElementTree.fromstring(archive.read("xl/workbook.xml")).iter(f"{_MAIN}sheet"):
        part = posixpath.join("xl", targets[sheet.attrib[_RELATION]]).lstrip("/")
        if part.startswith("xl/worksheets/"):
            yield sheet.attrib["name"], part


def _part_values(archive: zipfile.ZipFile, part: str, texts: list[str]) -> Iterator[tuple[str, Value]]:
    with archive.open(part) as stream:
        for _, element in ElementTree.iterparse(stream):
            if element.tag == f"{_MAIN}c":
                value = _stored(element, texts)
                if value is not None:
                    yield element.attrib["r"], value
            elif element.tag == f"{_MAIN}row":
                element.clear()


def _stored(cell: ElementTree.Element, texts: list[str]) -> Value | None:
    kind = cell.get("t", "n")
    if kind == "inlineStr":
        return _text_of(cell)
    result = cell.find(f"{_MAIN}v")
    if result is None:
        return None
    content = result.text or ""
    if kind == "str":
        return content
    if not content:
        return None
    if kind == "s":
        return texts[int(content)]
    return ErrorValue(content) if kind == "e" else float(content)


def disagreements(
    expected: Mapping[Cell, Value | None],
    found: Mapping[Cell, Value | None],
    *,
    relative: float = 1e-9,
    absolute: float = 1e-9,
) -> list[str]:
    """Return one sentence for every expected cell whose found result differs.

    Numbers agree when |a - b| <= relative * max(|a|, |b|) + absolute; texts agree when equal to the letter. A missing
    result and an error value are reported on either side, even when both sides have the same. Cells that are found but
    not expected are left alone; a comparison of nothing is itself reported.
    """
    if not expected:
        return ["there is nothing to compare: no cell was expected"]
    faults = []
    for (sheet, cell), wanted in expected.items():
        present = found.get((sheet, cell))
        if not _agree(wanted, present, relative, absolute):
            faults.append(f"{sheet}!{cell}: expected {_shown(wanted)}, found {_shown(present)}")
    return faults


def _agree(wanted: Value | None, present: Value | None, relative: float, absolute: float) -> bool:
    if isinstance(wanted, str) and isinstance(present, str):
        return wanted == present
    if isinstance(wanted, float | int) and isinstance(present, float | int):
        return abs(wanted - present) <= relative * max(abs(wanted), abs(present)) + absolute
    return False


def _shown(value: Value | None) -> str:
    if value is None:
        return "no result"
    if isinstance(value, ErrorValue):
        return f"the error {value.code}"
    return f"the text {value!r}" if isinstance(value, str) else repr(value)
