"""Filling a formula's gaps with the addresses of its cells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.formula import BlockOf, CellOf, Part, RangeOf, workbook_name
from farmbook.layout.book import Home, a1

__all__ = ["Addresses"]

At = Mapping[Axis, int]


class Addresses:
    """Addresses of lines and inputs as seen from the cells of one book."""

    def __init__(self, homes: Mapping[Line | RawInput, Home]) -> None:
        self.homes = homes

    def filled(self, parts: Sequence[Part], sheet: str, at: At) -> str:
        """The text of a formula in a cell of `sheet` whose members are `at`."""
        return "".join(part if isinstance(part, str) else self._part(part, sheet, at) for part in parts)

    def cell(self, of: Line | RawInput, sheet: str, at: At) -> str:
        """A reference to one cell: by name where it is a single value, else by address."""
        if not of.axes and not (isinstance(of, RawInput) and of.kind in ("low", "high")):
            return workbook_name(of)
        return self._cell(CellOf(of), sheet, at)

    def _part(self, part: CellOf | RangeOf | BlockOf, sheet: str, at: At) -> str:
        if isinstance(part, CellOf):
            return self._cell(part, sheet, at)
        if isinstance(part, RangeOf):
            return self._range(part, sheet, at)
        return self._block(part, sheet)

    def _home(self, of: Line | RawInput) -> Home:
        if of not in self.homes:
            raise ModelFault(f"`{of.name}` is needed but placed on no sheet")
        return self.homes[of]

    def _cell(self, part: CellOf, sheet: str, at: At) -> str:
        home = self._home(part.of)
        where = {axis: at[axis] - (1 if axis == part.back else 0) for axis in home.axes}
        return self._prefix(home, sheet) + self._a1(home, where, fixed=())

    def _range(self, part: RangeOf, sheet: str, at: At) -> str:
        home = self._home(part.of)
        rest = {axis: at[axis] for axis in home.axes if axis != part.axis}
        last = home.counts[home.axes.index(part.axis)] - 1
        fixed = (part.axis,)
        first_cell = self._a1(home, {**rest, part.axis: 0}, fixed=fixed)
        last_cell = self._a1(home, {**rest, part.axis: last}, fixed=fixed)
        return f"{self._prefix(home, sheet)}{first_cell}:{last_cell}"

    def _block(self, part: BlockOf, sheet: str) -> str:
        homes = [self._home(of) for of in part.of]
        if len({home.sheet for home in homes}) != 1:
            raise ModelFault("cells to be counted together stand on different sheets", why=", ".join(of.name for of in part.of))
        corners = [home.place(dict.fromkeys(home.axes, 0)) for home in homes]
        for home in homes:
            corners.append(home.place({axis: count - 1 for axis, count in zip(home.axes, home.counts, strict=True)}))
        rows = [row for row, _ in corners]
        columns = [home.label_column for home in homes] if part.labels else [column for _, column in corners]
        first = a1(min(rows), min(columns), row_fixed=True, column_fixed=True)
        last = a1(max(rows), max(columns), row_fixed=True, column_fixed=True)
        return f"{self._prefix(homes[0], sheet)}{first}:{last}"

    def _prefix(self, home: Home, sheet: str) -> str:
        return "" if home.sheet == sheet else f"{home.sheet}!"

    def _a1(self, home: Home, at: At, *, fixed: Sequence[Axis]) -> str:
        """Relative where a list runs, so that one formula serves the whole row or column."""
        row, column = home.place(at)
        runs = {axis.direction for axis in home.axes if axis not in fixed}
        return a1(row, column, row_fixed="down" not in runs, column_fixed="across" not in runs)
