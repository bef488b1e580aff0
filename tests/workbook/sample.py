"""A small workbook that keeps every rule, to be broken in one place at a time."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, NamedTuple

import xlsxwriter
from xlsxwriter.format import Format
from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

from tests.workbook.lints_placed import Placed
from tests.workbook.written import Written

__all__ = [
    "BAGS",
    "INPUTS",
    "PLACED",
    "RULE",
    "START",
    "SUMS",
    "Break",
    "Breakage",
    "Changes",
    "Sample",
    "edited_parts",
    "written",
]

START, INPUTS, SUMS = "Start", "Inputs", "Sums"
RULE = {
    "validate": "decimal",
    "criteria": "between",
    "minimum": 1,
    "maximum": 9000,
    "input_title": "Bags",
    "input_message": "Count them.",
    "error_title": "Not possible",
    "error_message": "Type a number between 1 and 9000.",
}
NAMES = {
    "farm_name": "=Inputs!$B$7",
    "farm_bags": "=Inputs!$B$6",
    "farm_loads": "=Sums!$B$6",
    "report_farm_title": "=Start!$B$9",
    "report_verdict": "=Start!$B$10",
}
BAGS, WEEKS = 600.0, 4


@dataclass
class Sample:
    """The workbook while it is written; whatever is written later into a cell replaces what was there."""

    workbook: Workbook
    looks: dict[str, Format]
    sheets: dict[str, Worksheet] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=lambda: dict(NAMES))

    def formula(self, cell: str, text: str, value: Any = 0, *, sheet: str = SUMS, look: str = "plain") -> None:
        """Put a formula, its stored result beside it."""
        self.sheets[sheet].write_formula(cell, text, self.looks[look], value)

    def add_sheet(self, name: str, *, link: bool = True) -> Worksheet:
        """A sheet with everything that each sheet needs."""
        page = self.workbook.add_worksheet(name)
        self.sheets[name] = page
        page.write_string("A1", f"The sheet {name}")
        self.formula("A2", "=report_farm_title", "Kestrel", sheet=name)
        self.formula("B2", "=report_verdict", "The book adds up.", sheet=name)
        page.freeze_panes(2, 0)
        page.set_column_pixels(0, 9, 96)
        page.print_area("A1:J60")
        page.set_paper(9)
        page.set_landscape()
        page.set_print_scale(95)
        page.repeat_rows(0, 1)
        page.set_footer("&LKestrel&RPage &P of &N")
        page.protect()
        if link:
            self.sheets[START].write_url(len(self.sheets) + 14, 0, f"internal:'{name}'!A1", None, name)
        return page


class Breakage(NamedTuple):
    """One way to break a rule: the rule, what is done to the sample, and what the rule must say of it."""

    rule: Callable[..., Any]
    change: Callable[[Sample], Any]
    says: str


Break = Callable[[Sample], Any]
Changes = Mapping[str, tuple[str, str]]
"""Part of the file: a piece of its text, and what is put in its place."""

PLACED = [
    Placed("farm.bags", "number", "bag", ((INPUTS, 6, 2),)),
    Placed("farm.name", "text", "", ((INPUTS, 7, 2),)),
    Placed("farm.loads", "worked number", "load", ((SUMS, 6, 2),), sign="$"),
    Placed("farm.weeks", "worked number", "bag/week", tuple((SUMS, 11 + week, 2) for week in range(WEEKS))),
    Placed("report.verdict", "worked words", "", ((START, 10, 2),)),
]


def written(path: Path, change: Break = lambda _: None) -> Written:
    """Write the sample, changed in one place, and open it."""
    workbook = xlsxwriter.Workbook(path, {"strings_to_formulas": False, "strings_to_urls": False})
    looks = {
        "plain": workbook.add_format({}),
        "open": workbook.add_format({"locked": False, "bg_color": "#F7EFD6"}),
        "wrapped": workbook.add_format({"text_wrap": True}),
        "white": workbook.add_format({"font_color": "#FFFFFF"}),
        "money": workbook.add_format({"num_format": '"$"0'}),
        "unseen": workbook.add_format({"num_format": ";;;"}),
        "secret": workbook.add_format({"hidden": True}),
        "straw on straw": workbook.add_format({"font_color": "#F7EFD6", "bg_color": "#F7EFD6"}),
    }
    sample = Sample(workbook, looks)
    for name in (START, INPUTS, SUMS):
        sample.add_sheet(name)
    _fill(sample)
    change(sample)
    for name, target in sample.names.items():
        workbook.define_name(name, target)
    workbook.close()
    return Written(path)


def _fill(sample: Sample) -> None:
    inputs, sums = sample.sheets[INPUTS], sample.sheets[SUMS]
    sample.formula("B9", '=IF(farm_name="","(none)",farm_name&"")', "Kestrel", sheet=START)
    sample.formula(
        "B10", '=CHOOSE(1+(farm_loads>0),"It does not.","The book adds up.")', "The book adds up.", sheet=START
    )
    inputs.write_row("A5", ["Input", "Value", "Unit", "Your note", "Name"])
    inputs.write_row("A6", ["Bags", BAGS, "bag", "", "farm_bags"])
    inputs.write_row("A7", ["Farm", "Kestrel", "", "", "farm_name"])
    inputs.write_number("B6", BAGS, sample.looks["open"])
    inputs.write_string("B7", "Kestrel", sample.looks["open"])
    inputs.write_string("D6", "counted", sample.looks["open"])
    inputs.data_validation("B6", dict(RULE))
    inputs.data_validation("B7", RULE | {"validate": "length", "criteria": "<=", "value": 200})
    inputs.data_validation("D6", RULE | {"validate": "length", "criteria": "<=", "value": 200})
    sums.write_row("A5", ["Line", "Value", "Unit", "Name"])
    sums.write_row("A6", ["Loads", "", "load", "farm_loads"])
    sample.formula("B6", "=ROUNDUP(ROUND(farm_bags/(1+1),9),0)", BAGS / 2, look="money")
    sums.write_row("A9", ["Week", "Bags"])
    sums.write_row("A10", ["", "bag/week"])
    for week in range(WEEKS):
        sums.write_string(10 + week, 0, f"week {'abcd'[week]}")
        sample.formula(f"B{11 + week}", f"=Inputs!$B$6+(B{10 + week}<>B{10 + week})*1", BAGS)
        sample.formula(f"C{11 + week}", f"=B{11 + week}", BAGS)
    for kind, cell in (("line", "E5"), ("bar", "E25")):
        _draw(sample, kind, cell)


def _draw(sample: Sample, kind: str, cell: str) -> None:
    chart = sample.workbook.add_chart({"type": kind})
    for column, width in (("B", 1.25), ("C", 2.75)):
        series = {
            "categories": "=Sums!$A$11:$A$14",
            "values": f"=Sums!${column}$11:${column}$14",
            "line": {"width": width},
        }
        chart.add_series(series | {"name": f"Bags {column}", "data_labels": {"series_name": True}})
    chart.set_title({"none": True})
    chart.set_legend({"none": True})
    chart.set_chartarea({"border": {"none": True}, "fill": {"none": True}})
    figures, light = ("y", "x")[kind == "bar"], {"visible": True, "line": {"color": "#DDD8CC"}}
    getattr(chart, f"set_{figures}_axis")({"min": 0, "major_gridlines": light})
    getattr(chart, f"set_{'xy'[figures == 'x']}_axis")({"major_gridlines": {"visible": False}})
    sample.sheets[SUMS].insert_chart(cell, chart, {"description": "Bags, week by week"})


def edited_parts(book: Written, target: Path, changes: Changes, more: Mapping[str, str]) -> Written:
    """A copy of a written file with one piece of text replaced in some of its parts, and further parts added."""
    with zipfile.ZipFile(target, "w") as archive:
        for name, content in book.parts.items():
            text = content.decode()
            if name in changes:
                before, after = changes[name]
                assert before in text, f"{before} is not in {name}"
                text = text.replace(before, after, 1)
            archive.writestr(name, text)
        for name, text in more.items():
            archive.writestr(name, text)
    return Written(target)
