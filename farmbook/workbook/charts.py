"""Charts: lines over one axis, with the stored figures that previews and phones show."""

from __future__ import annotations

from collections.abc import Mapping

import xlsxwriter
from xlsxwriter.worksheet import Worksheet

from farmbook.expr.nodes import Line, RawInput
from farmbook.layout.book import Chart, Home
from farmbook.layout.looks import FONT

__all__ = ["draw"]

STROKES = (("#1E1E1C", "solid"), ("#1E1E1C", "dash"), ("#8A877E", "solid"), ("#8A877E", "dash"))
"""Told apart in grey by shade and by dash."""


def draw(
    workbook: xlsxwriter.Workbook,
    page: Worksheet,
    chart: Chart,
    homes: Mapping[Line | RawInput, Home],
    labels: tuple[str, int, int],
    number_format: str,
) -> None:
    """Put one chart on its sheet."""
    drawn = workbook.add_chart({"type": "line"})
    sheet, row, column = labels
    for (name, line), (ink, dash) in zip(chart.series, STROKES, strict=False):
        home = homes[line]
        drawn.add_series(
            {
                "name": name,
                "categories": _range(sheet, row, column, home, chart),
                "values": _range(home.sheet, home.row, home.column, home, chart),
                "line": {"color": ink, "width": 2, "dash_type": dash},
            }
        )
    font = {"name": FONT, "size": 9}
    drawn.set_title({"name": chart.title, "name_font": {"name": FONT, "size": 11}})
    drawn.set_x_axis({"name": chart.axis_title, "name_font": font, "num_font": font})
    drawn.set_y_axis({"name": chart.value_title, "name_font": font, "num_font": font, "num_format": number_format})
    drawn.set_legend({"position": "bottom", "font": font})
    drawn.set_size({"width": 900, "height": 370})
    page.insert_chart(chart.row, 0, drawn, {"object_position": 2})


def _range(sheet: str, row: int, column: int, home: Home, chart: Chart) -> list[str | int]:
    """Sheet and corners of the cells over the chart's axis."""
    last = home.counts[home.axes.index(chart.axis)] - 1
    if chart.axis.direction == "down":
        return [sheet, row, column, row + last, column]
    return [sheet, row, column, row, column + last]
