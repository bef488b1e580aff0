"""Rules for the file as a whole, its sheets and their print set-up: one sentence for every place that breaks one."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

from openpyxl.utils.cell import column_index_from_string
from openpyxl.worksheet.datavalidation import DataValidation

from tests.engines.cells import Value
from tests.workbook.formulas import Area, area_of, references
from tests.workbook.written import MAIN, Written, shown

__all__ = ["FARM", "FILE_LINTS", "VERDICT"]

FARM, VERDICT = "report_farm_title", "report_verdict"
"""Names of the cells that every sheet repeats at its head: whose farm it is, and whether the book adds up."""
MOST_BYTES, MOST_FORMULAS = 4_000_000, 60_000
TITLE_ROWS = 2
CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"
PAPERS = ("1", "9")
"""US letter and A4."""


def heads(book: Written) -> Iterator[str]:
    """Each sheet opens with its title, the farm and the verdict of the checks, frozen in place."""
    for sheet, root in book.sheets_xml.items():
        pane = root.find(f".//{MAIN}pane")
        frozen = pane is not None and pane.get("state") == "frozen" and int(pane.get("ySplit", "0")) >= TITLE_ROWS
        if not frozen or (pane is not None and pane.get("topLeftCell", "").endswith("1")):
            yield f"{sheet}: the title rows are not frozen"
        if not isinstance(book.values.get((sheet, 1, 1)), str) or (sheet, 1, 1) in book.formulas:
            yield f"{sheet}: no title in its first cell"
        shown_names = {
            read
            for at, cell in book.formulas.items()
            if at[0] == sheet and at[1] <= TITLE_ROWS
            for read in references(cell.text)
        }
        yield from (
            f"{sheet}: {name} is not among its title rows" for name in (FARM, VERDICT) if name not in shown_names
        )


def printing(book: Written) -> Iterator[str]:
    """Each sheet prints across the page, one page wide or not at all, or upright on one page; on one paper, with title rows and
    page n of m."""
    papers, areas = set(), _local_names(book, "_xlnm.Print_Area")
    for sheet, root in book.sheets_xml.items():
        setup = root.find(f"{MAIN}pageSetup")
        papers.add(setup.get("paperSize", "none") if setup is not None else "none")
        landscape = setup is not None and setup.get("orientation") == "landscape"
        if not landscape and not _one_page_high(root, areas.get(sheet, "")):
            yield f"{sheet}: does not print across the page, nor upright on one"
        if not _one_page_wide(root, areas.get(sheet, "")) and not _blank(root, areas.get(sheet, "")):
            yield f"{sheet}: does not print one page wide"
        footer = root.findtext(f"{MAIN}headerFooter/{MAIN}oddFooter", "")
        if not re.search(r"&P\b.*&N\b", footer):
            yield f"{sheet}: the footer does not say page n of m"
        if f"$1:${TITLE_ROWS}" not in _print_titles(book).get(sheet, ""):
            yield f"{sheet}: the title rows are not repeated in print"
    if len(papers) != 1 or not papers <= set(PAPERS):
        yield f"the papers are {', '.join(sorted(papers))}"


WIDEST_PRINT = {"1": 969, "9": 1036}
"""Pixels of a side between its margins of 0.45 inch, letter and A4."""
UPRIGHT_PRINT = {"1": (729, 955), "9": (707, 1021)}
"""Width and height of an upright side, with 0.6 inch at its foot."""


def _one_page_wide(root: ET.Element, area: str) -> bool:
    """At a scale of its own, with 6 % in hand for programs that draw columns wider, its print area fits across a side."""
    setup, fit = root.find(f"{MAIN}pageSetup"), root.find(f"{MAIN}sheetPr/{MAIN}pageSetUpPr")
    found = re.search(r"\$A\$1:\$([A-Z]+)\$\d+$", area)
    if setup is None or found is None or (fit is not None and fit.get("fitToPage") == "1"):
        return False
    last = column_index_from_string(found[1])
    width = 0.0
    for each in root.iter(f"{MAIN}col"):
        columns = range(int(each.attrib["min"]), min(int(each.attrib["max"]), last) + 1)
        width += len(columns) * float(each.attrib["width"]) * 7
    paper = setup.get("paperSize", "")
    upright = setup.get("orientation") == "portrait"
    room = UPRIGHT_PRINT.get(paper, (0, 0))[0] if upright else WIDEST_PRINT.get(paper, 0)
    return 0 < width * int(setup.get("scale", "100")) / 100 * 1.06 <= room


def _one_page_high(root: ET.Element, area: str) -> bool:
    """Whether the rows of a print area fit on an upright side, with 6 % in hand."""
    setup, found = root.find(f"{MAIN}pageSetup"), re.search(r"\$(\d+)$", area)
    if setup is None or found is None:
        return False
    set_heights = {int(row.attrib["r"]): float(row.get("ht", "15")) * 4 / 3 for row in root.iter(f"{MAIN}row")}
    high = sum(set_heights.get(row, 20) for row in range(1, int(found[1]) + 1))
    room = UPRIGHT_PRINT.get(setup.get("paperSize", ""), (0, 0))[1]
    return high * int(setup.get("scale", "100")) / 100 * 1.06 <= room


def _blank(root: ET.Element, area: str) -> bool:
    """Whether a print area lies under everything that the sheet holds, so that the sheet is for the screen alone."""
    first = re.search(r"!\$A\$(\d+):", area)
    return first is not None and int(first[1]) > max(int(row.attrib["r"]) for row in root.iter(f"{MAIN}row"))


def _print_titles(book: Written) -> dict[str, str]:
    """What each sheet repeats on every page."""
    return _local_names(book, "_xlnm.Print_Titles")


def _local_names(book: Written, name: str) -> dict[str, str]:
    sheets = list(book.sheets_xml)
    return {
        sheets[int(each.attrib["localSheetId"])]: each.text or ""
        for each in book.workbook_xml.iter(f"{MAIN}definedName")
        if each.attrib["name"] == name
    }


def recalculation(book: Written) -> Iterator[str]:
    """The file asks to be worked out anew when it is opened, by itself, without iteration."""
    settings = book.workbook_xml.find(f"{MAIN}calcPr")
    if settings is None or settings.get("fullCalcOnLoad") not in ("1", "true"):
        yield "the file does not ask for recalculation on load"
    if settings is not None and settings.get("calcMode", "auto") != "auto":
        yield "the file is not worked out by itself"
    if settings is not None and settings.get("iterate") in ("1", "true"):
        yield "the file lets formulas read themselves"


def outside(book: Written) -> Iterator[str]:
    """Nothing in the file reaches outside it: no links, queries, macros or embedded objects, and no such formula."""
    for name, content in book.parts.items():
        if re.search(
            r"(?i)externalLink|connections|queryTable|vbaProject|macrosheet|activeX|embeddings|customUI|\.bin$", name
        ):
            yield f"the part {name}"
        if name.endswith(".rels") and b'TargetMode="External"' in content:
            yield f"{name} leads out of the file"
    if b"macroEnabled" in book.parts["[Content_Types].xml"]:
        yield "the file is of a kind that may hold macros"
    for cell in book.formulas.values():
        if "|" in re.sub(r'"[^"]*"', "", cell.text) or any("[" in read for read in references(cell.text)):
            yield f"{cell}: reads another file"


def size(book: Written) -> Iterator[str]:
    """The file goes by e-mail and opens on a phone."""
    if book.path.stat().st_size > MOST_BYTES:
        yield f"{book.path.stat().st_size} bytes"
    if len(book.formulas) > MOST_FORMULAS:
        yield f"{len(book.formulas)} formulas"
    if not book.formulas:
        yield "no formula at all"


def format_limits(book: Written) -> Iterator[str]:
    """What the file format allows at most (MS-OI29500 2.1.568, 2.1.578, 2.1.613, 2.1.1085)."""
    names = [sheet.lower() for sheet in book.sheets_xml]
    for name in names:
        if len(name) > 31 or re.search(r"[\[\]:*?/\\]|^'|'$", name) or name == "history" or names.count(name) > 1:
            yield f"{name}: not a name for a sheet"
    yield from (f"{cell}: too long" for cell in book.formulas.values() if len(cell.text) > 8192)
    yield from (
        f"{shown(at)}: too long" for at, value in book.values.items() if isinstance(value, str) and len(value) > 32767
    )
    for sheet in book.sheets:
        yield from (
            f"{sheet.title}!{rule.sqref}: too long" for rule in sheet.data_validations.dataValidation if _too_long(rule)
        )
    for sheet, root in book.sheets_xml.items():
        if any(len(each.text or "") > 255 for each in root.findall(f"{MAIN}headerFooter/*")):
            yield f"{sheet}: the footer is too long"


def _too_long(rule: DataValidation) -> bool:
    titles = max(len(rule.promptTitle or ""), len(rule.errorTitle or ""))
    lists = max(len(str(rule.formula1 or "")), len(str(rule.formula2 or "")))
    return titles > 32 or lists > 257 or len(rule.prompt or "") > 255 or len(rule.error or "") > 224


def links(book: Written) -> Iterator[str]:
    """Every link leads to a cell of the book."""
    for sheet, root in book.sheets_xml.items():
        for link in root.iter(f"{MAIN}hyperlink"):
            area = area_of(link.get("location", ""), "")
            if not isinstance(area, Area) or area.sheet not in book.sheets_xml:
                yield f"{sheet}!{link.attrib['ref']}: leads to {link.get('location', 'somewhere outside')}"


def contents(book: Written) -> Iterator[str]:
    """The first sheet has a link to every sheet."""
    first = next(iter(book.sheets_xml.values()))
    reached = [area_of(link.get("location", ""), "") for link in first.iter(f"{MAIN}hyperlink")]
    found = {area.sheet for area in reached if area is not None}
    yield from (f"{sheet}: not in the contents" for sheet in book.sheets_xml if sheet not in found)


def charts(book: Written) -> Iterator[str]:
    """Every chart carries the figures of the cells that it draws, for programs that only show the file."""
    for part, content in book.parts.items():
        if re.fullmatch(r"xl/charts/chart[0-9]+\.xml", part):
            references_of = (
                each for each in ET.fromstring(content).iter() if each.tag in (f"{CHART}numRef", f"{CHART}strRef")
            )
            yield from (f"{part}: {fault}" for each in references_of for fault in _chart_faults(book, each))


def _chart_faults(book: Written, reference: ET.Element) -> Iterator[str]:
    target = reference.findtext(f"{CHART}f", "")
    area = area_of(target, "")
    if area is None or area.sheet not in book.sheets_xml:
        yield f"{target} is not in the book"
        return
    cells = list(area.places())
    count = next((each.get("val") for each in reference.iter(f"{CHART}ptCount")), "no")
    if count != str(len(cells)):
        yield f"{count} figures for the {len(cells)} cells of {target}"
    points = {int(each.attrib["idx"]): each.findtext(f"{CHART}v", "") for each in reference.iter(f"{CHART}pt")}
    for number, at in enumerate(cells):
        if not _same_point(points.get(number, ""), book.values.get(at)):
            yield f"shows {points.get(number)!r} where {shown(at)} holds {book.values.get(at)!r}"


def _same_point(point: str, value: Value | None) -> bool:
    """Whether a figure of a chart is the cell's, to the digits of a text."""
    if isinstance(value, float):
        return bool(point) and math.isclose(float(point), value, rel_tol=1e-12, abs_tol=1e-300)
    return point == (value or "")


FILE_LINTS = (heads, printing, recalculation, outside, size, format_limits, links, contents, charts)
