"""A workbook file as it was written: its parts, cells, formulas and stored results."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from xml.etree import ElementTree as ET

import openpyxl
from openpyxl.cell.cell import Cell
from openpyxl.utils import get_column_letter
from openpyxl.workbook.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.engines.cells import Value, position, stored_values
from tests.workbook.formulas import Area, area_of

__all__ = ["MAIN", "At", "FormulaCell", "Written", "shown"]

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
RELATION = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_ESCAPED = re.compile(r"_x([0-9A-Fa-f]{4})_")
At = tuple[str, int, int]
"""Sheet, row and column, counted from 1."""


@dataclass(frozen=True)
class FormulaCell:
    """One formula, with its `=`, and where it stands."""

    sheet: str
    row: int
    column: int
    text: str

    @property
    def at(self) -> At:
        """Its place."""
        return self.sheet, self.row, self.column

    def __str__(self) -> str:
        return f"{shown(self.at)} {self.text}"


def shown(at: At) -> str:
    """A place as a reader writes it."""
    return f"{at[0]}!{get_column_letter(at[2])}{at[1]}"


def _plain(value: Value) -> Value:
    """A value as a spreadsheet program shows it: in texts the format writes some characters as `_x005F_`."""
    return _ESCAPED.sub(lambda found: chr(int(found[1], 16)), value) if isinstance(value, str) else value


class Written:
    """A file, read on demand and only once."""

    def __init__(self, path: Path) -> None:
        self.path = path

    @cached_property
    def parts(self) -> dict[str, bytes]:
        """Every part of the package."""
        with zipfile.ZipFile(self.path) as archive:
            return {name: archive.read(name) for name in archive.namelist()}

    @cached_property
    def book(self) -> Workbook:
        """The workbook with formulas and looks, as openpyxl reads it."""
        return openpyxl.load_workbook(self.path)

    @cached_property
    def workbook_xml(self) -> ET.Element:
        """The part that lists sheets and names."""
        return ET.fromstring(self.parts["xl/workbook.xml"])

    @cached_property
    def sheets_xml(self) -> dict[str, ET.Element]:
        """The part of every sheet, by the sheet's name."""
        relations = ET.fromstring(self.parts["xl/_rels/workbook.xml.rels"])
        targets = {each.attrib["Id"]: each.attrib["Target"].lstrip("/") for each in relations}
        found = {}
        for sheet in self.workbook_xml.iter(f"{MAIN}sheet"):
            target = targets[sheet.attrib[RELATION]]
            part = target if target.startswith("xl/") else f"xl/{target}"
            found[sheet.attrib["name"]] = ET.fromstring(self.parts[part])
        return found

    @property
    def sheets(self) -> list[Worksheet]:
        """The sheets in order."""
        return list(self.book.worksheets)

    def cells(self) -> Iterator[tuple[At, Cell]]:
        """Every cell in the file, blank ones with a look among them; the covered parts of merged cells left out."""
        for sheet in self.sheets:
            for row in sheet.iter_rows():
                for cell in row:
                    if isinstance(cell, Cell) and (cell.has_style or cell.value is not None):
                        yield (sheet.title, cell.row, cell.column), cell

    @cached_property
    def formulas(self) -> dict[At, FormulaCell]:
        """Every formula by its place."""
        found = {}
        for sheet, root in self.sheets_xml.items():
            for cell in root.iter(f"{MAIN}c"):
                formula = cell.find(f"{MAIN}f")
                if formula is not None:
                    at = (sheet, *position(cell.attrib["r"]))
                    found[at] = FormulaCell(*at, f"={formula.text or ''}")
        return found

    @cached_property
    def values(self) -> dict[At, Value]:
        """Every value in the file, typed or stored beside a formula."""
        found = stored_values(self.path)
        return {(sheet, *position(cell)): _plain(value) for (sheet, cell), value in found.items()}

    @cached_property
    def targets(self) -> dict[str, str]:
        """Every defined name, in lower case, with what it stands for; the names that the format reserves left out."""
        found = {}
        for each in self.workbook_xml.iter(f"{MAIN}definedName"):
            if not each.attrib["name"].startswith("_xlnm."):
                found[each.attrib["name"].lower()] = each.text or ""
        return found

    @cached_property
    def names(self) -> dict[str, Area]:
        """The names that stand for a block of cells."""
        areas = {name: area_of(target, "") for name, target in self.targets.items()}
        return {name: area for name, area in areas.items() if area is not None and area.sheet}
