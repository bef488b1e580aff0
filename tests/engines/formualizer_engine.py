"""A workbook held open in formualizer, a spreadsheet engine that runs inside the test process."""

from __future__ import annotations

from collections.abc import Collection
from io import BytesIO
from pathlib import Path
from typing import Any, Self

from formualizer import EvaluationConfig, RangeAddress, Workbook, WorkbookConfig

from tests.engines.cells import Cell, Entry, ErrorValue, Rectangle, Value, position, rectangles, typed, wipe

_ERRORS = {
    "Div": "#DIV/0!",
    "Na": "#N/A",
    "Name": "#NAME?",
    "Null": "#NULL!",
    "Num": "#NUM!",
    "Ref": "#REF!",
    "Value": "#VALUE!",
}


class FormualizerBook:
    """A workbook loaded once with its stored results wiped, then edited and read any number of times.

    Raises KeyError for a sheet the workbook does not have: formualizer itself would make a new one.
    """

    def __init__(self, path: Path) -> None:
        wiped = BytesIO()
        wipe(path, wiped)
        self._book = Workbook.from_bytes(wiped.getvalue(), config=_single_threaded())
        self._book.set_temporal_egress("serial")
        self._sheets = {name: self._book.sheet(name) for name in self._book.sheet_names}
        self._stale = True

    def set(self, sheet: str, cell: str, value: Entry) -> None:
        """Put a number, a text or a date into a cell, or clear it with None; dependents follow at the next reading."""
        row, column = position(cell)
        self._sheets[sheet].set_value(row, column, typed(value))
        self._stale = True

    def read(self, cells: Collection[Cell]) -> dict[Cell, Value | None]:
        """Return the present result of every cell asked for, None where the cell is blank."""
        if self._stale:
            self._book.evaluate_all()
            self._stale = False
        blocks = rectangles(cells)
        values = {sheet: self._values(sheet, block) for sheet, block in blocks.items()}
        results: dict[Cell, Value | None] = {}
        for sheet, cell in cells:
            row, column = position(cell)
            block = blocks[sheet]
            results[sheet, cell] = _result(values[sheet][row - block.first_row][column - block.first_column])
        return results

    def close(self) -> None:
        """Nothing to let go: the workbook lives in this process."""

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        self.close()

    def _values(self, sheet: str, block: Rectangle) -> list[list[Any]]:
        return self._sheets[sheet].get_values(RangeAddress(sheet, *block))


def _single_threaded() -> WorkbookConfig:
    """Threads double the time of an edit in a workbook of some thousand formulas."""
    evaluation = EvaluationConfig()
    evaluation.enable_parallel = False
    return WorkbookConfig(eval_config=evaluation)


def _result(value: Any) -> Value | None:
    """Translate a formualizer result; errors come as {"type": "Error", "kind": ...}."""
    if value is None or isinstance(value, float | str):
        return value
    if isinstance(value, int):
        return float(value)
    if isinstance(value, dict) and value.get("type") == "Error":
        return ErrorValue(_ERRORS.get(value["kind"], f"#{value['kind'].upper()}!"))
    raise TypeError(f"formualizer gave {value!r}, which is no result of one cell")
