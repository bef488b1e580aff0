"""Charts: bars, columns, lines and curves, with the stored figures that previews and phones show. No legend, no frame."""

from __future__ import annotations

import math
import re
from typing import Any, Final

import xlsxwriter
from xlsxwriter.worksheet import Worksheet

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.layout.book import Book, Chart, Mark, Series, SwingChart
from farmbook.layout.forms import MONTH
from farmbook.layout.grid import LABEL, UNIT, VALUE
from farmbook.layout.looks import DEEP, FONT, HAIR, INK, LINE, MID, SOFT

__all__ = ["draw", "draw_swings"]

TYPES: Final = {
    "bars": {"type": "bar"},
    "columns": {"type": "column"},
    "lines": {"type": "line"},
    "curves": {"type": "scatter", "subtype": "straight"},
}
STROKES: Final = ((1.25, "solid"), (2.75, "solid"), (1.25, "dash"), (1.25, "square_dot"))
"""Width and dash of lines, told apart without colour."""
BAND: Final = ((1.25, "square_dot"), (2.75, "solid"), (1.25, "dash"))
"""The same where the first and the last are the ends of what is known, and the one between is what to expect."""
EXPECTED: Final = 1
NAMES_AT_THE_END: Final = {"x": 0.14, "y": 0.06, "width": 0.74, "height": 0.66}
"""Where lines are drawn, as shares of the chart, so that their names have room right of them."""
NAMES_BEFORE: Final = {"x": 0.4, "y": 0.02, "width": 0.58, "height": 0.96}
"""The same for bars, so that their names have room left of them."""
WORDS: Final = {"name": FONT, "size": 9, "color": SOFT}

Cells = list[str | int]


def draw(
    workbook: xlsxwriter.Workbook, page: Worksheet, sheet: str, chart: Chart, book: Book, form: str, unit: str
) -> None:
    """Put one chart on its sheet; its figures have a number format, and a unit that is said at the axis of curves."""
    drawn = workbook.add_chart(TYPES[chart.kind])
    if chart.axis is None:
        rows = (chart.figures, chart.figures + len(chart.series) - 1)
        drawn.add_series(
            {
                "categories": [sheet, rows[0], LABEL, rows[1], LABEL],
                "values": [sheet, rows[0], VALUE, rows[1], VALUE],
                **_filled(form),
            }
        )
    else:
        level = _level_above(workbook, drawn, chart)
        for place, each in enumerate(chart.series):
            onto = drawn if place == 0 else level
            onto.add_series(_over_axis(chart, chart.axis, each, place, book, form))
        if chart.lowest is not None:
            drawn.add_series(_lowest(chart.axis, chart.lowest, book, form))
    for mark in chart.marks:
        drawn.add_series(_mark(mark, book))
    drawn.set_title({"none": True})
    drawn.set_legend({"none": True})
    drawn.set_chartarea({"border": {"none": True}, "fill": {"none": True}})
    at_the_end = chart.kind == "lines" and not chart.start
    drawn.set_plotarea({"fill": {"none": True}} | ({"layout": NAMES_AT_THE_END} if at_the_end else {}))
    _axes(drawn, chart, form, unit, _dates(chart, book))
    _insert(page, drawn, chart)


def draw_swings(workbook: xlsxwriter.Workbook, page: Worksheet, sheet: str, chart: SwingChart, form: str) -> None:
    """Put a chart of bars on its sheet that lie left and right of one zero; the format of its figures hides 0."""
    drawn = workbook.add_chart(TYPES["bars"])
    last = chart.figures + chart.count - 1
    for name, column, fill in (("less", VALUE, DEEP), ("more", UNIT, MID)):
        drawn.add_series(
            {
                "name": name,
                "categories": [sheet, chart.figures, LABEL, last, LABEL],
                "values": [sheet, chart.figures, column, last, column],
                **_filled(form),
                "fill": {"color": fill},
                "overlap": 100,
            }
        )
    drawn.set_title({"none": True})
    drawn.set_legend({"none": True})
    drawn.set_chartarea({"border": {"none": True}, "fill": {"none": True}})
    drawn.set_plotarea({"fill": {"none": True}, "layout": NAMES_BEFORE})
    lines = {"major_gridlines": {"visible": False}}
    drawn.set_x_axis({"visible": False, "min": chart.least, "max": chart.most, **lines})
    drawn.set_y_axis(
        {
            "reverse": True,
            "num_font": {**WORDS, "color": INK},
            "label_position": "low",
            "line": {"color": LINE},
            **lines,
        }
    )
    _insert(page, drawn, chart)


def _insert(page: Worksheet, drawn: Any, chart: Chart | SwingChart) -> None:
    drawn.set_size({"width": chart.width, "height": chart.height})
    page.insert_chart(chart.row, chart.column, drawn, {"object_position": 2, "description": chart.words})


def _level_above(workbook: xlsxwriter.Workbook, columns: Any, chart: Chart) -> Any:
    """What further series are drawn on: of columns, a line over them."""
    if chart.kind != "columns" or len(chart.series) < 2:
        return columns
    level = workbook.add_chart(TYPES["lines"])
    columns.combine(level)
    return level


def _filled(form: str) -> dict[str, Any]:
    return {
        "fill": {"color": MID},
        "border": {"color": DEEP, "width": 0.75},
        "gap": 45,
        "data_labels": {"value": True, "num_format": form, "font": {**WORDS, "color": INK}},
    }


def _signed(form: str, zero: str = '""') -> str:
    """A format for figures below zero too: of two conditions, LibreOffice drops the minus."""
    small = re.sub(r"^\[[^\]]*\]", "", form).partition(";")[0]
    return f"{small};-{small};{zero}"


def _over_axis(chart: Chart, axis: Axis, each: Series, place: int, book: Book, form: str) -> dict[str, Any]:
    across = chart.across
    labels = _of_line(across, axis, 0, book) if across is not None else _of_labels(axis, book, each.line)
    found: dict[str, Any] = {
        "name": _name(each, book),
        "categories": labels,
        "values": _of_line(each.line, axis, each.member, book),
    }
    if chart.kind == "columns" and place > 0:
        return found | {"line": {"color": INK, "width": 1.75, "dash_type": "dash"}}
    if chart.lowest is not None:
        return found | {"fill": {"color": MID}, "border": {"none": True}, "gap": 45, "overlap": 100}
    if chart.kind == "columns":
        return found | _filled(_signed(form) if chart.signed else f'[=0]"";{form}')  # a spare row, a flush not picked
    width, dash = BAND[place] if chart.kind == "curves" else STROKES[place % len(STROKES)]
    ink = DEEP if place < len(STROKES) else INK
    count = len(drawn_members(axis, book.homes[each.line].counts[-1]))
    labels_at, position = _label_of(chart, place, count)
    named = [{} if point == labels_at else {"delete": True} for point in range(count)]
    return found | {
        "line": {"color": ink, "width": width, "dash_type": dash},
        "data_labels": {"series_name": True, "custom": named, "position": position, "font": WORDS},
    }


def _label_of(chart: Chart, place: int, count: int) -> tuple[int | None, str]:
    """At which of its points a line is named, and on which side: the ends of a band early, where they stand apart."""
    if chart.kind == "curves":
        return (None, "below") if place == EXPECTED else (count // 16, "left" if place else "right")
    return (count // 24, "above") if chart.start else (count - 1, "right")


def drawn_members(axis: Axis, count: int) -> range:
    """Which members of a list are drawn: of weeks those that are surely whole in the plan, whatever day it starts on."""
    return range(axis.before, count - axis.after - 1) if axis.after else range(count)


def _name(each: Series, book: Book) -> str | Cells:
    """What a series is called: fixed words, or the cell with the name that a person gave."""
    if each.called is None:
        return each.name
    home = book.homes[each.called]
    return [home.sheet, *home.place({home.axes[0]: each.member})]


def _lowest(axis: Axis, line: Line, book: Book, form: str) -> dict[str, Any]:
    """A column over the others that has no height but in one place, with its figure."""
    return {
        "name": "lowest",
        "categories": _of_labels(axis, book, line),
        "values": _of_line(line, axis, 0, book),
        "fill": {"color": INK},
        "border": {"none": True},
        "data_labels": {"value": True, "num_format": _signed(form), "font": {**WORDS, "color": INK, "bold": True}},
    }


def _mark(mark: Mark, book: Book) -> dict[str, Any]:
    """One point with its name."""
    along, height = book.homes[mark.along], book.homes[mark.height]
    return {
        "name": mark.name,
        "categories": [along.sheet, along.row, along.column, along.row, along.column],
        "values": [height.sheet, height.row, height.column, height.row, height.column],
        "line": {"none": True},
        "marker": {"type": "diamond", "size": 9, "fill": {"color": INK}, "border": {"color": INK}},
        "data_labels": {"series_name": True, "value": False, "position": "below", "font": WORDS},
    }


MOST_DATES: Final = 14
MONTHS_A_WEEK: Final = 12 / 52


def _dates(chart: Chart, book: Book) -> dict[str, Any]:
    """How months and weeks are called below a chart: by the month, and no more of them than there is room for."""
    if chart.axis is None or chart.axis not in book.dated:
        return {"num_format": "General"}
    count = len(drawn_members(chart.axis, book.homes[chart.series[0].line].counts[-1]))
    months = count * (MONTHS_A_WEEK if chart.axis.direction == "down" else 1)
    return {
        "num_format": MONTH,
        "date_axis": True,
        "major_unit": math.ceil(months / MOST_DATES),
        "major_unit_type": "months",
        "major_tick_mark": "none",
        "minor_tick_mark": "none",
    }


def _axes(drawn: Any, chart: Chart, form: str, unit: str, dates: dict[str, Any]) -> None:
    grid = {"visible": True, "line": {"color": HAIR, "width": 0.75}}
    quiet = {"num_font": WORDS, "name_font": {**WORDS, "bold": False}, "line": {"color": LINE}}
    figures = {**quiet, "num_format": form, "line": {"none": True}}
    unseen = {
        **figures,
        "visible": False,
        "major_gridlines": {"visible": False},
        **({} if chart.signed else {"min": 0}),
    }
    aside = {"label_position": "low"} if chart.signed else {}
    if chart.kind == "bars":
        names = {**quiet, **aside, "num_font": {**WORDS, "color": INK}, "major_gridlines": {"visible": False}}
        drawn.set_x_axis(unseen)
        drawn.set_y_axis({**names, "reverse": True})
    elif chart.lowest is not None:
        drawn.set_x_axis({**quiet, **aside, **dates})
        drawn.set_y_axis({**figures, "num_format": _signed(form, zero="0"), "major_gridlines": grid})
    elif chart.kind == "columns":
        drawn.set_x_axis({**quiet, **aside, **dates})
        drawn.set_y_axis(unseen)
    else:
        drawn.set_x_axis({**quiet, **dates, "name": chart.axis_title})
        drawn.set_y_axis({**figures, "name": unit, "major_gridlines": grid})


def _of_line(line: Line, axis: Axis, member: int, book: Book) -> Cells:
    """Sheet and corners of a line's cells over an axis."""
    home = book.homes[line]
    others = dict.fromkeys(ordered_axes(line.axes)[:-1], member)
    drawn = drawn_members(axis, home.counts[home.axes.index(axis)])
    first, last = (home.place({**others, axis: at}) for at in (drawn[0], drawn[-1]))
    return [home.sheet, *first, *last]


def _of_labels(axis: Axis, book: Book, line: Line) -> Cells:
    """Sheet and corners of the names of an axis's members."""
    sheet, row, column = book.labels[axis]
    drawn = drawn_members(axis, book.homes[line].counts[-1])
    ends = (drawn[0], drawn[-1])
    first, last = ((row + at, column) if axis.direction == "down" else (row, column + at) for at in ends)
    return [sheet, *first, *last]
