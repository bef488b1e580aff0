"""A table whose lines have a second list: its members stand side by side, under one head."""

from __future__ import annotations

from functools import cache

import pytest

from farmbook.errors import ModelFault
from farmbook.expr import functions as f
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Expr
from farmbook.layout.book import Home, Sheet, Shown, Text
from farmbook.layout.book import Worked as WorkedCell
from farmbook.layout.template import Block, Template
from farmbook.sections.declare import line, number
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from tests.language.books import Worked, work_out

PACE = Axis("pace", "pace", "across", 20, members=("slow", "very_fast"))
HOUR = Axis("hour", "hour", "down", 30, ordered=True, members=("1", "2", "3"))


class Kettle(Section):
    """Water that warms at two paces."""

    size = number("Size", unit="L", usual=(0, 9), default=2, how="Measure.")
    pace = number("Pace", unit="1", axes=(PACE,), usual=(0, 9), default=(1, 10), how="Count.")

    @line("Hours", unit="1", axes=(HOUR,))
    def hours(self) -> Expr:
        """So far."""
        return f.running_sum(1, HOUR)

    @line("Steam", unit="L", axes=(PACE, HOUR))
    def steam(self) -> Expr:
        """At each pace."""
        return f.running_sum(self.size * self.pace, HOUR)


@cache
def kettle() -> Worked:
    return work_out(Model([Kettle]), "metric", {PACE: 2, HOUR: 3}, {})


def laid_out(*lines: str) -> tuple[Sheet, Home]:
    """The sheet with a table of these lines, and the home of the line at both paces."""
    given = (Block("inputs", "Single", inputs=("kettle.size",)),)
    typed = (Block("input_table", "Paces", inputs=("kettle.pace",)),)
    shown = (
        Block("across", "Paces", ("kettle.pace_used",), axis="pace"),
        Block("table", "Hour by hour", lines, axis="hour"),
    )
    sheets = [
        Template(f"{name}.toml", name, name, "What?", kind, blocks)
        for name, kind, blocks in (("Given", "inputs", given), ("Typed", "inputs", typed), ("Book", "worked", shown))
    ]
    book, plan = kettle().laid_out(sheets, "kettle.size_used")
    return book.sheets[-1], plan.homes[kettle().line("kettle.steam")]


def test_one_head_stands_over_the_members_and_each_column_has_a_unit() -> None:
    sheet, home = laid_out("kettle.hours", "kettle.steam")
    heads = {
        (cell.row, cell.column): (cell.content.words, cell.across)
        for cell in sheet.cells
        if isinstance(cell.content, Text) and home.row - 4 <= cell.row < home.row - 1 and 2 <= cell.column <= 4
    }
    label, member, unit = (home.row - 4, home.row - 3, home.row - 2)
    assert heads == {
        (label, 2): ("Hours", 1),
        (label, 3): ("Steam", 2),
        (member, 3): ("Slow", 1),
        (member, 4): ("Very fast", 1),
        (unit, 2): ("", 1),
        (unit, 3): ("litres", 1),
        (unit, 4): ("litres", 1),
    }


def test_every_member_has_its_cell_and_its_opening_value_above_the_first() -> None:
    sheet, home = laid_out("kettle.hours", "kettle.steam")
    steam = kettle().line("kettle.steam")
    assert (home.column, home.axes, home.counts) == (3, (PACE, HOUR), (2, 3))
    places = {
        cell.content.index: (cell.row - home.row, cell.column, cell.content.opening)
        for cell in sheet.cells
        if isinstance(cell.content, WorkedCell) and cell.content.line is steam
    }
    assert places == {(pace, hour): (hour, 3 + pace, hour < 0) for pace in (0, 1) for hour in (-1, 0, 1, 2)}


def test_a_line_that_is_repeated_has_no_opening_value() -> None:
    sheet, _ = laid_out("kettle.hours", "kettle.steam", "show:kettle.steam")
    repeated = [cell for cell in sheet.cells if isinstance(cell.content, Shown) and cell.content.index[1:]]
    assert [(cell.content.index, cell.column) for cell in repeated if isinstance(cell.content, Shown)] == [
        ((pace, hour), 5 + pace) for pace in (0, 1) for hour in (0, 1, 2)
    ]


def test_each_member_takes_a_column_of_those_that_fit() -> None:
    two = ["show:kettle.steam"] * 2
    laid_out("kettle.hours", "kettle.steam", *two)
    with pytest.raises(ModelFault, match="table `Hour by hour` has 9 columns; 8 fit"):
        laid_out("kettle.hours", "kettle.steam", *two, "show:kettle.steam")
