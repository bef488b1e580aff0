"""Filling a formula's gaps with the addresses of its cells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.formula import BlockOf, CellOf, ColumnOf, Part, RangeOf, workbook_name
from farmbook.layout.book import Home, a1

__all__ = ["Addresses"]

At = Mapping[Axis, int]


class Addresses:
    """Addresses of lines and inputs as seen from the cells of one book."""

    def __init__(self, homes: Mapping[Line | RawInput, Home]) -> None:
        self.homes = homes

    def filled(self, parts: Sequence[Part], line: Line, at: At) -> str:
        """The text of a line's formula in the cell whose members are `at`; raises ModelFault, naming the line."""
        own = self._home(line)
        self._all_run_alike(parts, line)
        return "".join(part if isinstance(part, str) else self._part(part, own, at) for part in parts)

    def cell(self, of: Line | RawInput, sheet: str, at: At) -> str:
        """A reference to one cell from another sheet or block: by name where it is a single value, else by address."""
        if not of.axes and not (isinstance(of, RawInput) and of.kind in ("low", "high")):
            return workbook_name(of)
        return self._cell(CellOf(of), replace(self._home(of), sheet=sheet), at)

    def _all_run_alike(self, parts: Sequence[Part], line: Line) -> None:
        """Two ranges over one list multiply member by member only if both run down or both across."""
        ways: dict[Axis, dict[str, str]] = {}
        for part in parts:
            if isinstance(part, RangeOf):
                ways.setdefault(part.axis, {})[self._home(part.of).way(part.axis)] = part.of.name
        for axis, found in ways.items():
            if len(found) > 1:
                down, across = found["down"], found["across"]
                why = f"`{down}` runs down its sheet and `{across}` across; make a line of their product"
                raise ModelFault(
                    f"ranges over {axis.label} lie crosswise in line `{line.name}`", where=line.where, why=why
                )

    def _part(self, part: CellOf | RangeOf | BlockOf | ColumnOf, own: Home, at: At) -> str:
        if isinstance(part, CellOf):
            return self._cell(part, own, at)
        if isinstance(part, RangeOf):
            return self._range(part, own, at)
        if isinstance(part, ColumnOf):
            return self._column(part, own.sheet)
        return self._block(part, own.sheet)

    def _home(self, of: Line | RawInput) -> Home:
        if of not in self.homes:
            raise ModelFault(f"`{of.name}` is needed but placed on no sheet")
        return self.homes[of]

    def _cell(self, part: CellOf, own: Home, at: At) -> str:
        home = self._home(part.of)
        where = {axis: at[axis] - (1 if axis == part.back else 0) for axis in home.axes}
        return self._prefix(home, own.sheet) + self._a1(home, where, _shared_ways(home, own))

    def _range(self, part: RangeOf, own: Home, at: At) -> str:
        home = self._home(part.of)
        rest = {axis: at[axis] for axis in home.axes if axis != part.axis}
        last = home.counts[home.axes.index(part.axis)] - 1
        runs = _shared_ways(home, own) - {home.way(part.axis)}
        first_cell = self._a1(home, {**rest, part.axis: 0}, runs)
        last_cell = self._a1(home, {**rest, part.axis: last}, runs)
        return f"{self._prefix(home, own.sheet)}{first_cell}:{last_cell}"

    def _block(self, part: BlockOf, sheet: str) -> str:
        homes = [self._home(of) for of in part.of]
        if len({home.sheet for home in homes}) != 1:
            names = ", ".join(of.name for of in part.of)
            raise ModelFault("cells to be counted together stand on different sheets", why=names)
        corners = [home.place(dict.fromkeys(home.axes, 0)) for home in homes]
        corners += [
            home.place({axis: each - 1 for axis, each in zip(home.axes, home.counts, strict=True)}) for home in homes
        ]
        rows = [row for row, _ in corners]
        columns = [home.label_column for home in homes] if part.labels else [column for _, column in corners]
        first = a1(min(rows), min(columns), row_fixed=True, column_fixed=True)
        last = a1(max(rows), max(columns), row_fixed=True, column_fixed=True)
        return f"{self._prefix(homes[0], sheet)}{first}:{last}"

    def _column(self, part: ColumnOf, sheet: str) -> str:
        """Ranks are counted by row, so nothing may stand between these cells, nor in another order."""
        homes = [self._home(of) for of in part.of]
        first = homes[0]
        if any(
            (home.sheet, home.column, home.row) != (first.sheet, first.column, first.row + down)
            for down, home in enumerate(homes)
        ):
            names = ", ".join(of.name for of in part.of)
            raise ModelFault("lines that are ranked do not stand one under another in this order", why=names)
        rows = homes[0].counts[0] if homes[0].counts else len(homes)
        column = first.label_column if part.labels else first.column
        start = a1(first.row, column, row_fixed=True, column_fixed=True)
        end = a1(first.row + rows - 1, column, row_fixed=True, column_fixed=True)
        return f"{self._prefix(first, sheet)}{start}:{end}"

    def _prefix(self, home: Home, sheet: str) -> str:
        return "" if home.sheet == sheet else f"{home.sheet}!"

    def _a1(self, home: Home, at: At, runs: set[str]) -> str:
        """Relative where a list runs, so that one formula serves the whole row or column."""
        row, column = home.place(at)
        return a1(row, column, row_fixed="down" not in runs, column_fixed="across" not in runs)


def _shared_ways(home: Home, own: Home) -> set[str]:
    """The ways in which a cell's own list and the one it refers to run along together."""
    return {home.way(axis) for axis in home.axes if axis in own.axes and own.way(axis) == home.way(axis)}
