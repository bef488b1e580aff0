"""Rules that need to know which line or input a cell belongs to: one sentence for every place that breaks one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from openpyxl.cell.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from tests.workbook.formulas import relative
from tests.workbook.written import At, FormulaCell, Written, shown

__all__ = ["PLACED_LINTS", "Placed", "alike"]

CHECK = "1 = well"
"""The unit of a check, whose number format says it in words."""
UNIT_ROWS = 5
"""How far above a table its units may stand."""


@dataclass(frozen=True)
class Placed:
    """One line or input of a book: what it is, its unit in words, its cells, and the sign that their format must hold."""

    name: str
    kind: str
    unit: str
    cells: tuple[At, ...]
    sign: str = ""

    @property
    def typed(self) -> bool:
        """Whether its cells are typed into."""
        return self.kind in ("number", "choice", "text", "basis")

    @property
    def numeric(self) -> bool:
        """Whether its cells hold numbers."""
        return self.kind in ("number", "limit", "worked number", "built")


def uniform(book: Written, placed: Sequence[Placed]) -> Iterator[str]:
    """All cells of a line have one formula in R1C1 terms; of a line with two lists, of which one runs another way elsewhere, all
    cells of each row, or of each column; of one list, which runs another way where it is read, all as though it ran that way."""
    for line in placed:
        found = [book.formulas[at] for at in line.cells if at in book.formulas]
        texts = {(cell.row, cell.column): relative(cell.text, cell.row, cell.column) for cell in found}
        if len(set(texts.values())) > 1 and not any(alike(texts, way) for way in (0, 1)) and not turned(found):
            yield f"{line.name} ({found[0]}): {len(set(texts.values()))} different formulas in {len(found)} cells"


def alike(texts: Mapping[tuple[int, int], str], way: int) -> bool:
    """Whether all cells of each row (0), or of each column (1), hold one formula, and there is more than one cell in each."""
    lines: dict[int, list[str]] = {}
    for at, text in texts.items():
        lines.setdefault(at[way], []).append(text)
    return all(len(each) > 1 and len(set(each)) == 1 for each in lines.values())


def turned(found: Sequence[FormulaCell]) -> bool:
    """Whether cells that run down one column would hold one formula if they ran across."""
    top, columns = found[0].row, {cell.column for cell in found}
    texts = {relative(cell.text.replace("$", ""), top, cell.column + cell.row - top) for cell in found}
    return len(columns) == 1 and len(found) > 1 and len(texts) == 1


def filled(book: Written, placed: Sequence[Placed]) -> Iterator[str]:
    """Every cell of a worked line holds a formula; none that is typed into, and no limit, does."""
    for each in placed:
        worked = each.kind.startswith("worked")
        for at in each.cells:
            if worked != (at in book.formulas):
                yield f"{each.name} ({shown(at)}): {'no formula' if worked else 'a formula where a person types'}"


def kinds(book: Written, placed: Sequence[Placed]) -> Iterator[str]:
    """Numbers are numbers and words are words, worked or typed; only what is typed, or repeats it as built, may be blank."""
    for each in placed:
        for at in each.cells:
            value = book.values.get(at)
            if not (
                isinstance(value, float if each.numeric else str)
                or (value is None and (each.typed or each.kind.startswith("built")))
            ):
                yield f"{each.name} ({shown(at)}): holds {value!r}"


def units(book: Written, placed: Sequence[Placed]) -> Iterator[str]:
    """Every number has its unit in words: in its row, above it in its table, or in the table's heading.

    What has none is a plain number, or has the sign of a share or of money in every cell."""
    for each in placed:
        if not each.numeric or each.kind in ("limit", "built") or each.unit == CHECK:
            continue
        if each.unit and not any(each.unit in words for words in _unit_places(book, each)):
            yield f"{each.name} ({shown(each.cells[0])}): no unit `{each.unit}` beside it"
        for sheet, row, column in each.cells:
            if each.sign not in book.book[sheet].cell(row, column).number_format:
                yield f"{each.name} ({shown((sheet, row, column))}): no `{each.sign}` with the figure"


def _unit_places(book: Written, each: Placed) -> Iterator[tuple[str, ...]]:
    """The words where a unit may stand; of a heading, what comes after its last comma."""
    sheet, row, column = each.cells[0]
    page = book.book[sheet]
    beside = [page.cell(row, other).value for other in range(1, page.max_column + 1) if other != column]
    above = [page.cell(higher, column).value for higher in range(max(row - UNIT_ROWS, 1), row)]
    higher_rows = range(max(row - UNIT_ROWS, 1), row)
    headings = [page.cell(higher, left).value for higher in higher_rows for left in (1, 2)]
    head = next((each.value for each in _upwards(page, row, column) if isinstance(each.value, str)), "")
    yield tuple(str(value) for value in (*beside, *above, head) if value is not None)
    yield tuple(str(value).rpartition(", ")[2] for value in headings if value is not None)


def _upwards(page: Worksheet, row: int, column: int) -> Iterator[Cell]:
    """The cells above that hold no formula, nearest first."""
    every = (page.cell(higher, column) for higher in range(row - 1, 0, -1))
    return (cell for cell in every if isinstance(cell, Cell) and cell.data_type != "f")


def open_cells(book: Written, placed: Sequence[Placed]) -> Iterator[str]:
    """What a person is asked for is unlocked, and all else, formulas and limits, is locked."""
    for each in placed:
        for at in each.cells:
            locked = book.book[at[0]].cell(at[1], at[2]).protection.locked
            if locked == each.typed:
                yield f"{each.name} ({shown(at)}): {'locked' if locked else 'not locked'}"


PLACED_LINTS = (uniform, filled, kinds, units, open_cells)
