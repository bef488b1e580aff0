"""Filling a formula's gaps with the addresses of its cells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import BlockOf, CellOf, ColumnOf, Part, RangeOf, named, workbook_name
from farmbook.layout.book import Home, a1

__all__ = ["Addresses", "Filling"]

Index = tuple[int, ...]
NOTHING: Final[Mapping[Axis, int]] = {}


@dataclass(frozen=True)
class _Corner:
    """A cell as seen from the cells of a line: where it stands for the line's first cell, and which places of the line's
    index move it down or across."""

    row: int
    column: int
    down: Index
    across: Index
    row_fixed: bool
    column_fixed: bool

    def at(self, index: Index) -> str:
        """Its address from the line's cell with this index."""
        row, column = self.row, self.column
        for place in self.down:
            row += index[place]
        for place in self.across:
            column += index[place]
        return a1(row, column, row_fixed=self.row_fixed, column_fixed=self.column_fixed)


@dataclass(frozen=True)
class Filling:
    """A line's formula with its addresses worked out, but for what differs from cell to cell."""

    pieces: tuple[str | _Corner, ...]

    def at(self, index: Index) -> str:
        """The text of the formula in the line's cell with this index, in the order in which arrays carry its axes."""
        return "".join(piece if isinstance(piece, str) else piece.at(index) for piece in self.pieces)


class Addresses:
    """Addresses of lines and inputs as seen from the cells of one book."""

    def __init__(self, homes: Mapping[Line | RawInput, Home]) -> None:
        self.homes = homes

    def filling(self, parts: Sequence[Part], line: Line) -> Filling:
        """A line's formula for all its cells; raises ModelFault, naming the line."""
        self._all_run_alike(parts, line)
        return self._filling(parts, self._home(line))

    def cell(self, of: Line, sheet: str) -> Filling:
        """A reference to a line's cells from another sheet or block: by name where it is a single value, else by address."""
        if named(of):
            return Filling((workbook_name(of),))
        return self._filling((CellOf(of),), replace(self._home(of), sheet=sheet))

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

    def _filling(self, parts: Sequence[Part], own: Home) -> Filling:
        found: list[str | _Corner] = []
        for part in parts:
            found += [part] if isinstance(part, str) else self._part(part, own)
        pieces: list[str | _Corner] = []
        for piece in found:
            if isinstance(piece, str) and pieces and isinstance(pieces[-1], str):
                pieces[-1] += piece
            else:
                pieces.append(piece)
        return Filling(tuple(pieces))

    def _part(self, part: CellOf | RangeOf | BlockOf | ColumnOf, own: Home) -> Iterator[str | _Corner]:
        if isinstance(part, BlockOf | ColumnOf):
            yield self._block(part, own.sheet) if isinstance(part, BlockOf) else self._column(part, own.sheet)
            return
        home = self._home(part.of)
        yield self._prefix(home, own.sheet)
        if isinstance(part, CellOf):
            plain = isinstance(part.of, Line) and not home.axes and not own.axes
            yield a1(home.row, home.column) if plain else _corner(home, own, back=part.back)
            return
        last = home.counts[home.axes.index(part.axis)] - 1
        yield _corner(home, own, back=part.back, held={part.axis: 0})
        yield ":"
        yield _corner(home, own, back=part.back, held={part.axis: last})

    def _home(self, of: Line | RawInput) -> Home:
        if of not in self.homes:
            raise ModelFault(f"`{of.name}` is needed but placed on no sheet")
        return self.homes[of]

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


def _corner(home: Home, own: Home, *, back: Axis | None = None, held: Mapping[Axis, int] = NOTHING) -> str | _Corner:
    """A cell of `home` as seen from `own`: one step earlier on the axis `back`, always at the members `held`.

    Relative where a list runs, so that one formula serves the whole row or column.
    """
    order = ordered_axes(own.axes)
    row, column = home.place({axis: held.get(axis, -1 if axis == back else 0) for axis in home.axes})
    moving = [axis for axis in home.axes if axis not in held]
    runs = {home.way(axis) for axis in moving if axis in own.axes and own.way(axis) == home.way(axis)}
    down, across = (tuple(order.index(axis) for axis in moving if home.way(axis) == way) for way in ("down", "across"))
    corner = _Corner(row, column, down, across, "down" not in runs, "across" not in runs)
    return corner if moving else corner.at(())
