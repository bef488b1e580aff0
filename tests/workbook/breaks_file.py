"""Ways to break the rules for the file, its sheets and their print set-up."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from tests.workbook import lints_cells
from tests.workbook import lints_file as rules
from tests.workbook.sample import SUMS, Breakage, Changes, Sample

__all__ = ["FILE_BREAKS", "PART_BREAKS", "PartBreak"]


class PartBreak(NamedTuple):
    """A rule, what is changed in the parts of the file, what parts are added, and what the rule must say."""

    rule: Callable[..., Any]
    changes: Changes
    says: str
    more: Mapping[str, str] = {}


def on_sums(method: str, *arguments: Any) -> Callable[[Sample], Any]:
    """Call a method of the sheet of sums."""
    return lambda sample: getattr(sample.sheets[SUMS], method)(*arguments)


def linked_out(sample: Sample) -> None:
    sample.sheets[SUMS].write_url("F20", "https://example.invalid/", None, "prices")


FILE_BREAKS: dict[str, Breakage] = {
    "frozen too high": Breakage(rules.heads, on_sums("freeze_panes", 1, 1), "Sums: the title rows are not frozen"),
    "frozen to nothing": Breakage(rules.heads, on_sums("split_panes", 45, 0), "Sums: the title rows are not frozen"),
    "no title": Breakage(rules.heads, on_sums("write_number", "A1", 1), "Sums: no title"),
    "no verdict": Breakage(rules.heads, on_sums("write_string", "B2", "ok"), "Sums: report_verdict is not among"),
    "no farm": Breakage(rules.heads, on_sums("write_string", "A2", "Kestrel"), "Sums: report_farm_title is not among"),
    "upright": Breakage(rules.printing, on_sums("set_portrait"), "Sums: does not print across the page"),
    "two pages wide": Breakage(rules.printing, on_sums("set_print_scale", 104), "Sums: does not print one page wide"),
    "all on one page": Breakage(rules.printing, on_sums("fit_to_pages", 1, 1), "Sums: does not print one page wide"),
    "pages not counted": Breakage(rules.printing, on_sums("set_footer", "&RPage &P"), "Sums: the footer"),
    "titles not repeated": Breakage(rules.printing, on_sums("repeat_rows", 0), "Sums: the title rows"),
    "two papers": Breakage(rules.printing, on_sums("set_paper", 1), "the papers are 1, 9"),
    "a link out of the file": Breakage(rules.outside, linked_out, "leads out of the file"),
    "a formula over another file": Breakage(
        rules.outside, lambda sample: sample.formula("F20", "=[prices.xlsx]Sheet1!A1"), "reads another file"
    ),
    "a formula that starts a program": Breakage(
        rules.outside, lambda sample: sample.formula("F20", "=cmd|' /C calc'!A0"), "reads another file"
    ),
    "a link to a sheet that is not there": Breakage(
        rules.links, on_sums("write_url", "F20", "internal:'Sales'!A1", None, "Sales"), "leads to 'Sales'!A1"
    ),
    "a sheet left out of the contents": Breakage(
        rules.contents, lambda sample: sample.add_sheet("Sales", link=False), "Sales: not in the contents"
    ),
    "a sheet of a reserved name": Breakage(
        rules.format_limits, lambda sample: sample.add_sheet("History"), "history: not a name"
    ),
}

BOOK, SHEET = "xl/workbook.xml", "xl/worksheets/sheet2.xml"
DRAWN, TYPES = "xl/charts/chart1.xml", "[Content_Types].xml"
WHOLE = 'fullCalcOnLoad="1"'

PART_BREAKS: dict[str, PartBreak] = {
    "no protection": PartBreak(
        lints_cells.locked,
        {SHEET: ('<sheetProtection sheet="1"', '<sheetProtection sheet="0"')},
        "Inputs: not protected",
    ),
    "a protected book": PartBreak(
        lints_cells.locked, {BOOK: ("<sheets>", '<workbookProtection lockStructure="1"/><sheets>')}, "the book itself"
    ),
    "a hidden name": PartBreak(
        lints_cells.hidden,
        {BOOK: ('<definedName name="farm_bags"', '<definedName name="farm_bags" hidden="1"')},
        "the name farm_bags is hidden",
    ),
    "no recalculation": PartBreak(rules.recalculation, {BOOK: (WHOLE, "")}, "does not ask for recalculation"),
    "recalculation by hand": PartBreak(
        rules.recalculation, {BOOK: (WHOLE, f'calcMode="manual" {WHOLE}')}, "not worked out by itself"
    ),
    "iteration": PartBreak(rules.recalculation, {BOOK: (WHOLE, f'iterate="1" {WHOLE}')}, "read themselves"),
    "macros": PartBreak(rules.outside, {}, "the part xl/vbaProject.bin", {"xl/vbaProject.bin": "x"}),
    "a kind of file for macros": PartBreak(
        rules.outside, {TYPES: ("spreadsheetml.sheet.main", "ms-excel.sheet.macroEnabled.main")}, "may hold macros"
    ),
    "a linked book": PartBreak(
        rules.outside, {}, "the part xl/externalLinks", {"xl/externalLinks/externalLink1.xml": "<externalLink/>"}
    ),
    "a query": PartBreak(rules.outside, {}, "the part xl/connections.xml", {"xl/connections.xml": "<connections/>"}),
    "a chart that shows another figure": PartBreak(
        rules.charts, {DRAWN: ("<c:v>600.0</c:v>", "<c:v>601.0</c:v>")}, "shows '601.0' where Sums!B11 holds 600.0"
    ),
    "a chart without figures": PartBreak(
        rules.charts, {DRAWN: ('General</c:formatCode><c:ptCount val="4"/>', "General</c:formatCode>")}, "no figures"
    ),
    "a chart of another label": PartBreak(
        rules.charts, {DRAWN: ("<c:v>week a</c:v>", "<c:v>week b</c:v>")}, "shows 'week b' where Sums!A11"
    ),
    "a chart of another book": PartBreak(
        rules.charts, {DRAWN: ("Sums!$B$11:$B$14", "Sales!$B$11:$B$14")}, "is not in the book"
    ),
    "a prompt that is too long": PartBreak(
        rules.format_limits, {SHEET: ('prompt="Count them."', f'prompt="{"x" * 256}"')}, "Inputs!B6: too long"
    ),
    "a footer that is too long": PartBreak(
        rules.format_limits, {SHEET: ("&amp;LKestrel", "&amp;L" + "x" * 256)}, "Inputs: the footer is too long"
    ),
}
