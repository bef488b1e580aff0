"""Writing a book: each formula with the result the engine found, each input with its rule, sheets ready to print."""

from __future__ import annotations

import datetime as dt
import io
import math
import warnings
from collections.abc import Mapping
from typing import Any, Final

import xlsxwriter
from xlsxwriter.format import Format
from xlsxwriter.packager import Packager
from xlsxwriter.worksheet import Worksheet

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import formula_of
from farmbook.interpret.numbers import Array, Cells
from farmbook.layout.book import (
    Book,
    Cell,
    Content,
    Figure,
    Formula,
    Link,
    Sheet,
    Shown,
    Summed,
    Text,
    Typed,
    Worked,
    a1,
)
from farmbook.layout.flow import print_scale, scale_to_side, set_spaces, side_for
from farmbook.layout.looks import DEEP, FONT, HAIR, LINE, LOOKS, MID, PALE, STRAW, STRAW_BOX
from farmbook.layout.page import Plan
from farmbook.sections.section import Bound
from farmbook.workbook.address import Addresses, Filling
from farmbook.workbook.charts import draw, draw_swings
from farmbook.workbook.done import done
from farmbook.workbook.fingerprint import PLACEHOLDER, PROPERTY, sealed
from farmbook.workbook.states import States
from farmbook.workbook.validation import NOTE, validation_of

__all__ = ["write_book"]

_BORDERS: Final[Mapping[str, dict[str, Any]]] = {
    "": {},
    "hair": {"bottom": 1, "bottom_color": HAIR},
    "line": {"bottom": 1, "bottom_color": LINE},
    "total": {"top": 1, "top_color": LINE, "bottom": 1, "bottom_color": LINE},
    "box": {"border": 1, "border_color": HAIR},
    "write": {"border": 1, "border_color": LINE},
    "straw": {"border": 1, "border_color": STRAW_BOX},
}
_PAPER: Final = {"letter": 1, "a4": 9}
_TABS: Final = {
    "start": DEEP,
    "card": DEEP,
    "years": DEEP,
    "inputs": STRAW,
    "worked": PALE,
    "bank": MID,
    "statement": PALE,
    "months": PALE,
    "weeks": PALE,
}


class PlainSheet(Worksheet):  # type: ignore[misc]  # the library carries no types
    """A worksheet that takes formulas as they are: the library's rewriting is slow, not always right and not needed."""

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:  # noqa: ARG002 - as called
        return formula.removeprefix("=")


class SealingPackager(Packager):  # type: ignore[misc]
    """Puts the fingerprint into the parts before they are compressed."""

    def _create_package(self) -> list[tuple[io.StringIO, str, bool]]:
        written = super()._create_package()
        parts = sealed({name: file.getvalue().encode() for file, name, _binary in written})
        return [(io.StringIO(parts[name].decode()), name, False) for _file, name, _binary in written]


class SealedWorkbook(xlsxwriter.Workbook):  # type: ignore[misc]
    """A workbook whose parts carry their fingerprint."""

    def _get_packager(self) -> SealingPackager:
        return SealingPackager()


def write_book(
    book: Book,
    plan: Plan,
    results: Mapping[Line, Array],
    openings: Mapping[Line, Array],
    cells: Mapping[RawInput, Cells],
    *,
    paper: str,
    created: dt.date,
) -> bytes:
    """The finished .xlsx as bytes; the same for the same arguments.

    Raises ModelFault where a result is not a number or a text.
    """
    target = io.BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        workbook = SealedWorkbook(target, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False})
        _Writer(workbook, book, plan, results, openings, cells, paper, created).write()
        workbook.close()
    return target.getvalue()


class _Writer:
    def __init__(
        self,
        workbook: xlsxwriter.Workbook,
        book: Book,
        plan: Plan,
        results: Mapping[Line, Array],
        openings: Mapping[Line, Array],
        cells: Mapping[RawInput, Cells],
        paper: str,
        created: dt.date,
    ) -> None:
        self.workbook, self.book, self.plan, self.results, self.openings, self.cells = (
            workbook,
            book,
            plan,
            results,
            openings,
            cells,
        )
        self.paper, self.created = paper, created
        self.addresses = Addresses(book.homes)
        self.states = States(workbook, book, plan)
        self.formulas: dict[Line, tuple[Filling, Filling]] = {}
        self.looks: dict[tuple[str, str, bool, bool], Format] = {}
        self.owner: dict[RawInput, Bound] = {}
        for bound in plan.model.inputs.values():
            for cell in (bound.cell, bound.basis):
                if cell is not None:
                    self.owner[cell] = bound

    def write(self) -> None:
        """Write every sheet, then the names."""
        self.workbook.set_properties({"title": self.plan.stamp.get("Scenario", ""), "created": _moment(self.created)})
        self.workbook.set_custom_property(PROPERTY, PLACEHOLDER, "text")
        for sheet in self.book.sheets:
            self._sheet(sheet)
        for name, (sheet_name, row, column) in sorted(self.book.names.items()):
            done(self.workbook.define_name(name, f"={sheet_name}!{_fixed(row, column)}"), name)
        for name, (sheet_name, *corners) in sorted(self.book.areas.items()):
            first, last = _fixed(*corners[:2]), _fixed(*corners[2:])
            done(self.workbook.define_name(name, f"={sheet_name}!{first}:{last}"), name)

    def _sheet(self, sheet: Sheet) -> None:
        page = self.workbook.add_worksheet(sheet.name, PlainSheet)
        for column, width in enumerate(sheet.widths):
            page.set_column_pixels(column, column, width)
        set_spaces(sheet, self.paper)
        for row, height in sheet.heights.items():
            page.set_row_pixels(row, round(height))
        for cell in sheet.cells:
            self._cell(page, sheet, cell)
        for chart in sheet.charts:
            drawn = chart.series[0].line
            form, unit = self.plan.line_format(drawn), self.plan.unit_after(drawn.unit)
            draw(self.workbook, page, sheet.name, chart, self.book, form, unit)
        for swings in sheet.swing_charts:
            assert self.plan.swings.of is not None
            draw_swings(self.workbook, page, sheet.name, swings, self.plan.change_format(self.plan.swings.of, zero=""))
        self._print_setup(page, sheet)
        self.states.show(page, sheet)
        page.freeze_panes(*sheet.frozen)
        if sheet.kind in _TABS:
            page.set_tab_color(_TABS[sheet.kind])
        page.hide_gridlines(2)
        page.protect(
            "",
            {"format_columns": True, "format_rows": True, "select_locked_cells": True, "select_unlocked_cells": True},
        )

    def _print_setup(self, page: Worksheet, sheet: Sheet) -> None:
        end = max(cell.row for cell in sheet.cells) + 1
        page.set_paper(_PAPER[self.paper])
        if side_for(sheet, self.paper) == "upright":
            page.set_portrait()
        else:
            page.set_landscape()
        if sheet.prints:
            page.print_area(0, 0, (sheet.printed_rows or end) - 1, sheet.grid.printed - 1)
        else:
            page.print_area(end, 0, end + 1, 0)  # cells that stay empty: no side, or a blank one
        across = print_scale(sheet.widths, self.paper, sheet.grid)
        page.set_print_scale(scale_to_side(sheet, self.paper) if sheet.grid.one_side else across)
        page.set_margins(left=0.45, right=0.45, top=0.45, bottom=0.6)
        page.repeat_rows(0, 1)
        left = f"{self.plan.stamp.get('Scenario', '')}, farmbook {self.plan.stamp.get('Version', '')}"
        page.set_footer(f"&L&8{left[:100].replace('&', '&&')}&C&8&A&R&8Page &P of &N")

    def _cell(self, page: Worksheet, sheet: Sheet, cell: Cell) -> None:
        content = cell.content
        quoted = not LOOKS[cell.look].locked and self._words(content)[:1] in ("=", "+", "-", "@")
        look = self._look(cell.look, cell.format, quoted=quoted, wrap=cell.wrap)
        if cell.across > 1:
            done(page.merge_range(cell.row, cell.column, cell.row, cell.column + cell.across - 1, "", look), sheet.name)
        at = (cell.row, cell.column)
        if isinstance(content, Text):
            if cell.look == "input_note":
                self._ruled(page, cell, NOTE)
            done(
                page.write_string(*at, content.words, look) if content.words else page.write_blank(*at, None, look),
                content.words,
            )
        elif isinstance(content, Figure):
            done(page.write_number(*at, _finite(content.value, sheet.name), look), sheet.name)
        elif isinstance(content, Formula):
            done(page.write_formula(*at, "=" + content.text, look, _finite(content.value, content.text)), content.text)
        elif isinstance(content, Summed):
            value = sum(float(self._result(content.line, index)) for index in content.shown)
            done(page.write_formula(*at, "=" + content.text, look, _finite(value, content.line.name)), content.text)
        elif isinstance(content, Link):
            done(page.write_url(*at, f"internal:'{content.sheet}'!A1", look, content.words), content.sheet)
        elif isinstance(content, Typed):
            self._write_typed(page, at, content, look)
            bound = self.owner.get(content.source)
            if bound is not None:
                self._ruled(page, cell, validation_of(content.source, bound, self.plan))
        else:
            self._write_line(page, sheet, at, content, look)

    def _words(self, content: Content) -> str:
        """The words in a cell that a person may type over."""
        return self._typed(content)[1] if isinstance(content, Typed) else getattr(content, "words", "")

    def _typed(self, content: Typed) -> tuple[float, str]:
        cells = self.cells[content.source]
        number = cells.numbers[(0, *content.index)] if cells.numbers.size else math.nan
        text = cells.texts[(0, *content.index)] if cells.texts.size else ""
        return float(number), str(text)

    def _write_typed(self, page: Worksheet, at: tuple[int, int], content: Typed, look: Format) -> None:
        number, text = self._typed(content)
        source = content.source
        if source.kind not in ("text", "choice", "basis", "built text") and not math.isnan(number):
            done(page.write_number(*at, _finite(number, source.name), look), source.name)
        elif text:
            done(page.write_string(*at, text, look), source.name)
        else:
            done(page.write_blank(*at, None, look), source.name)

    def _ruled(self, page: Worksheet, cell: Cell, rule: Mapping[str, Any]) -> None:
        """What may be typed into a cell, and into what is merged with it."""
        block = (cell.row, cell.column, cell.row, cell.column + cell.across - 1)
        done(page.data_validation(*block, dict(rule)), cell.look)

    def _write_line(
        self, page: Worksheet, sheet: Sheet, at: tuple[int, int], content: Worked | Shown, look: Format
    ) -> None:
        line, index = content.line, content.index
        if isinstance(content, Shown):
            filling = self.addresses.cell(line, sheet.name)
            value = self._opening(line, index) if content.opening else self._result(line, index)
        elif content.opening:
            filling, value = self._fillings(line)[1], self._opening(line, index)
        else:
            filling, value = self._fillings(line)[0], self._result(line, index)
        done(page.write_formula(*at, "=" + filling.at(index), look, value), line.name)

    def _fillings(self, line: Line) -> tuple[Filling, Filling]:
        """The formula of a line's cells and that of its opening cells."""
        if line not in self.formulas:
            formula = formula_of(line, self.plan.roots[line])
            self.formulas[line] = (
                self.addresses.filling(formula.step, line),
                self.addresses.filling(formula.opening or (), line),
            )
        return self.formulas[line]

    def _result(self, line: Line, index: tuple[int, ...]) -> float | str:
        value = self.results[line][(0, *index)]
        return str(value) if isinstance(value, str) else _finite(float(value), line.name)

    def _opening(self, line: Line, index: tuple[int, ...]) -> float:
        axes = ordered_axes(line.axes)
        rest = tuple(member for axis, member in zip(axes, index, strict=True) if member >= 0)
        return _finite(float(self.openings[line][(0, *rest)]), line.name)

    def _look(self, name: str, number_format: str, *, quoted: bool, wrap: bool) -> Format:
        key = (name, number_format, quoted, wrap)
        if key not in self.looks:
            self.looks[key] = self.workbook.add_format(_described(name, number_format, quoted=quoted, wrap=wrap))
        return self.looks[key]


def _described(name: str, number_format: str, *, quoted: bool, wrap: bool) -> dict[str, Any]:
    look = LOOKS[name]
    found: dict[str, Any] = {
        "font_name": FONT,
        "font_size": look.size,
        "font_color": look.ink,
        "bold": look.bold,
        "underline": 1 if look.underlined else 0,
        "text_wrap": look.wrap or wrap,
        "locked": look.locked,
        "valign": "vcenter" if look.middle else "top",
    }
    if look.fill:
        found["bg_color"] = look.fill
    if look.indent:
        found["indent"] = look.indent
    if look.align:
        found["align"] = look.align
    if number_format:
        found["num_format"] = number_format
    if quoted:
        found["quote_prefix"] = True
    return found | _BORDERS[look.border]


def _finite(value: float, what: str) -> float:
    if not math.isfinite(value):
        raise ModelFault(f"`{what}` comes to no number in this scenario")
    return value


def _fixed(row: int, column: int) -> str:
    return a1(row, column, row_fixed=True, column_fixed=True)


def _moment(day: dt.date) -> dt.datetime:
    return dt.datetime(day.year, day.month, day.day, tzinfo=dt.UTC)
