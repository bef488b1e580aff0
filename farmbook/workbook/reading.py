"""Reading a workbook that a person has edited: the cells behind each of its names, as they stand there."""

from __future__ import annotations

import datetime as dt
import io
import re
import warnings
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import Any, Final

import openpyxl
from openpyxl.utils import get_column_letter, range_boundaries

from farmbook.errors import FileProblem
from farmbook.scenario.words import as_written, figure
from farmbook.workbook.fingerprint import parts_of

__all__ = ["BookCell", "EditedBook"]

_MOST_BYTES: Final = 20 * 2**20
"""Of all parts of a workbook that is read, some seven times what a farm's book has."""
_MOST_CELLS: Final = 100_000
"""That a name stands for; no list of a farm comes near."""
_UNREADABLE: Final = (
    ArithmeticError,
    AssertionError,
    AttributeError,
    LookupError,
    OSError,
    RuntimeError,
    SyntaxError,
    TypeError,
    ValueError,
    zipfile.BadZipFile,
)
"""What the reader raises for parts that are no tables; all that is said of them is that they cannot be read."""
_NO_BOOK: Final = "is not a workbook made by farmbook, or is damaged"
_MAKE_ONE: Final = "give a workbook that `farmbook build` made, edited and saved as .xlsx"
_AREA: Final = re.compile(
    r"(?:'(?P<quoted>(?:[^']|'')+)'|(?P<plain>[^'!]+))!(?P<cells>\$?[A-Z]{1,3}\$?[0-9]+(?::\$?[A-Z]{1,3}\$?[0-9]+)?)"
)


@dataclass(frozen=True)
class BookCell:
    """One cell: where it stands in words ("Inputs C7"), what is in it, None for nothing.

    `fault` says why it cannot be read, `remark` what was made of it.
    """

    place: str
    value: float | str | None = None
    fault: str = ""
    remark: str = ""
    day: dt.date | None = None

    @property
    def shown(self) -> str:
        """What is in it, in words."""
        return figure(self.value) if isinstance(self.value, float) else as_written(self.value or "")


class EditedBook:
    """A workbook of farmbook's by its names; `content` is the file with its parts as they are, packed anew.

    Raises FileProblem for a file that cannot be read, or is none of farmbook's.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.content = _packed(path)
        self._sheets: dict[tuple[str, bool], dict[tuple[int, int], Any]] = {}
        self._book = self._opened(results=False)
        self._names: Mapping[str, Any] = {name.lower(): found for name, found in self._book.defined_names.items()}
        if not {"book_units", "book_version"} <= set(self._names):
            raise self._unreadable

    def cells(self, name: str) -> list[list[BookCell]]:
        """The cells that a name stands for, row by row; none where there is no such name, or its cells are gone."""
        found = self._names.get(name)
        area = _AREA.fullmatch(str(found.attr_text)) if found is not None else None
        if area is None:
            return []
        sheet = (area["quoted"] or area["plain"]).replace("''", "'").strip()
        left, top, right, bottom = range_boundaries(area["cells"])
        if sheet not in self._book.sheetnames or (right - left + 1) * (bottom - top + 1) > _MOST_CELLS:
            return []
        return [[self._cell(sheet, row, column) for column in range(left, right + 1)] for row in range(top, bottom + 1)]

    def words(self, name: str) -> str:
        """The text in the single cell of a name; empty where there is none."""
        return next((str(cell.value or "") for row in self.cells(name) for cell in row), "")

    def sheets_before(self, name: str) -> list[int]:
        """The places of the sheets that stand before the one that holds the cells of a name."""
        found = next((cell.place.rpartition(" ")[0] for row in self.cells(name) for cell in row), "")
        names = list(self._book.sheetnames)
        return list(range(names.index(found))) if found in names else []

    def places_of(self, sheets: Sequence[str]) -> list[int]:
        """The places of the sheets of these names that the book has, in this order."""
        names = list(self._book.sheetnames)
        return [names.index(sheet) for sheet in sheets if sheet in names]

    def _cell(self, sheet: str, row: int, column: int) -> BookCell:
        place = f"{sheet} {get_column_letter(column)}{row}"
        cell = self._sheet(sheet, results=False).get((row, column))
        if cell is None or cell.data_type != "f":
            return _plain(place, cell)
        stored = _plain(place, self._sheet(sheet, results=True).get((row, column)))
        if stored.fault:
            return stored
        if stored.value is None:
            return BookCell(
                place, fault="holds a formula without a stored result; save the book in a spreadsheet program"
            )
        return replace(stored, remark=f"holds a formula; its result, {stored.shown}, was taken")

    def _sheet(self, sheet: str, *, results: bool) -> dict[tuple[int, int], Any]:
        """The cells of a sheet that hold something, by row and column; with `results` what formulas came to when saved."""
        if (sheet, results) not in self._sheets:
            book = self._results if results else self._book
            with self._refusing():
                book[sheet].reset_dimensions()  # what the file says of its size may be wrong
                self._sheets[sheet, results] = {
                    (cell.row, cell.column): cell for row in book[sheet].rows for cell in row if cell.value is not None
                }
        return self._sheets[sheet, results]

    @cached_property
    def _results(self) -> Any:
        return self._opened(results=True)

    def _opened(self, *, results: bool) -> Any:
        """Read sheet by sheet as they are asked for, looks and charts left aside."""
        with self._refusing():
            return openpyxl.load_workbook(io.BytesIO(self.content), read_only=True, data_only=results, keep_links=False)

    @contextmanager
    def _refusing(self) -> Iterator[None]:
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")  # of charts and rules that the reader leaves out
                yield
        except (*_UNREADABLE, MemoryError):
            raise self._unreadable from None

    @property
    def _unreadable(self) -> FileProblem:
        return FileProblem(str(self.path), _NO_BOOK, hint=_MAKE_ONE)


def _packed(path: Path) -> bytes:
    """The parts of a workbook, read within bounds and packed anew, so that nothing in them can lie about its size."""
    if not path.is_file():
        raise FileProblem(str(path), "is a folder, not a workbook" if path.is_dir() else "does not exist")
    parts = parts_of(path, _MOST_BYTES)
    if not parts:
        raise FileProblem(str(path), _NO_BOOK, hint=_MAKE_ONE)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return packed.getvalue()


def _plain(place: str, cell: Any) -> BookCell:
    if cell is None:
        return BookCell(place)
    value = cell.value
    if cell.data_type == "e":
        return BookCell(place, fault=f"shows the error {value}; type a value over it, or clear it")
    if isinstance(value, bool):
        return BookCell(place, str(value).upper())
    if isinstance(value, dt.datetime) and value.time() == dt.time():
        return BookCell(place, value.date().isoformat(), day=value.date())
    if isinstance(value, (dt.date, dt.time, dt.timedelta)):
        return BookCell(place, str(value))
    if isinstance(value, (int, float)):
        return BookCell(place, float(value))
    text = "" if value is None else " ".join(str(value).splitlines()).strip()
    return BookCell(place, text or None)
