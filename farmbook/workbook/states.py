"""How cells show the state that they are in, whatever is typed later: the verdict, whose figure it is, out of its range."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import Any, Final

from xlsxwriter.workbook import Format, Workbook
from xlsxwriter.worksheet import Worksheet

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.layout.book import Book, Home, Lowest, Sheet, a1
from farmbook.layout.forms import marked
from farmbook.layout.looks import HAIR, INK, MARK
from farmbook.layout.page import Plan
from farmbook.sections.section import Bound
from farmbook.workbook.done import done

__all__ = ["FAILING", "States"]

FAILING: Final = "report_errors_failing"
"""The name of the cell that counts the errors of a book."""
Area = tuple[int, int, int, int]


class States:
    """The conditional formats of one workbook."""

    def __init__(self, workbook: Workbook, book: Book, plan: Plan) -> None:
        self.workbook, self.book, self.plan = workbook, book, plan
        self.white = workbook.add_format({"bg_color": "#FFFFFF"})
        self.on_ink = workbook.add_format({"bg_color": INK, "font_color": "#FFFFFF"})
        self.faint = workbook.add_format({"font_color": HAIR})
        self.boxes: dict[str, list[tuple[Bound, Home]]] = defaultdict(list)
        self.worked: dict[str, list[Home]] = defaultdict(list)
        self._sort()

    def _sort(self) -> None:
        """What stands on each sheet, looked for once."""
        for bound in self.plan.model.inputs.values():
            if bound.cell in self.book.homes:
                home = self.book.homes[bound.cell]
                self.boxes[home.sheet].append((bound, home))
        for line, home in self.book.homes.items():
            if isinstance(line, Line) and line.kind in ("worked", "label"):
                self.worked[home.sheet].append(home)

    def show(self, page: Worksheet, sheet: Sheet) -> None:
        """A book that does not add up looks so on every sheet; boxes show whose their figures are, and which are out of range."""
        if FAILING in self.book.names:
            bad = self.on_ink
            self._rule(page, (1, sheet.grid.side, 1, sheet.grid.printed - 1), f"={FAILING}>0", bad)
            for cell in sheet.cells:
                if cell.look in ("check", "glance_state"):
                    self._rule(
                        page, (cell.row, cell.column, cell.row, cell.column), f"={a1(cell.row, cell.column)}=0", bad
                    )
        for marked_row in sheet.lowest:
            self._lowest(page, marked_row)
        for bound, home in self.boxes[sheet.name]:
            self._box(page, bound, home)
        for home in self.worked[sheet.name]:
            self._spare(page, home)

    def _lowest(self, page: Worksheet, shown: Lowest) -> None:
        """The lowest month of all years is white on ink, in whichever row of them it stands."""
        home = self.book.homes[shown.line]
        top, left, bottom, right = _area(home)
        first, last = (a1(*at, row_fixed=True, column_fixed=True) for at in ((top, left), (bottom, right)))
        area = (shown.row, shown.first, shown.row, shown.last)
        self._rule(page, area, f"={a1(shown.row, shown.first)}=MIN({home.sheet}!{first}:{last})", self.on_ink)

    def _spare(self, page: Worksheet, home: Home) -> None:
        """What is worked out for a row of a list that has no name is there, but hardly to be seen."""
        absent = [
            f"{where}=0"
            for axis in home.axes
            if axis.named and axis not in home.turned
            for where in self._present(axis)
        ]
        if absent:
            self._rule(page, _area(home), f"=OR({','.join(absent)})", self.faint)

    def _present(self, axis: Axis) -> Iterator[str]:
        """The cell that says whether the first member is in use, as seen from the first cell of an area; it moves along."""
        lines = self.plan.model.axes.get(axis)
        home = self.book.homes.get(lines.present) if lines is not None else None
        if home is not None:
            down = axis.direction == "down"
            yield f"{home.sheet}!{a1(home.row, home.column, row_fixed=not down, column_fixed=down)}"

    def _box(self, page: Worksheet, bound: Bound, home: Home) -> None:
        """Straw is for figures that somebody gave: where the basis says assumed, or nothing, the box is white."""
        area = _area(home)
        if bound.basis is not None:
            basis = self._beside(bound.basis)
            self._rule(page, area, f'=OR({basis}="assumed",{basis}="")', self.white)
        if bound.low is not None and bound.high is not None and home.axes:
            form = self.plan.typed_format(bound.cell.unit, table=True)
            own = a1(*area[:2])
            for limit, sign, mark in ((bound.low, "<", "▼"), (bound.high, ">", "▲")):
                at = self.book.homes[limit]
                beyond = f"{own}{sign}{a1(at.row, at.column, row_fixed=True, column_fixed=True)}"
                look = {"bold": True, "font_color": MARK, "num_format": marked(form, mark)}
                self._rule(page, area, f"=AND(ISNUMBER({own}),{beyond})", self.workbook.add_format(look))

    def _beside(self, basis: RawInput) -> str:
        """The address of the basis of an area's first cell; it moves along with the cell."""
        home = self.book.homes[basis]
        return a1(home.row, home.column)

    def _rule(self, page: Worksheet, area: Area, criteria: str, look: Format) -> None:
        rule: dict[str, Any] = {"type": "formula", "criteria": criteria, "format": look}
        done(page.conditional_format(*area, rule), criteria)


def _area(home: Home) -> Area:
    places = list(_places(home))
    rows, columns = {row for row, _ in places}, {column for _, column in places}
    return min(rows), min(columns), max(rows), max(columns)


def _places(home: Home) -> Iterator[tuple[int, int]]:
    yield home.place(dict.fromkeys(home.axes, 0))
    yield home.place({axis: count - 1 for axis, count in zip(home.axes, home.counts, strict=True)})
