"""Rules for how charts look: one sentence for every place that breaks one."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

from farmbook.layout.looks import HAIR
from tests.workbook.written import Written

__all__ = ["CHART_LINTS"]

CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"
DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/main}"
FRAME = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}cNvPr"
LINES = ("lineChart", "scatterChart")


def _charts(book: Written) -> Iterator[tuple[str, ET.Element]]:
    for part, content in book.parts.items():
        if re.fullmatch(r"xl/charts/chart[0-9]+\.xml", part):
            yield part, ET.fromstring(content)


def _lines(root: ET.Element) -> list[ET.Element]:
    """The series that are drawn as lines."""
    every = [each for kind in LINES for each in root.findall(f".//{CHART}{kind}/{CHART}ser")]
    return [each for each in every if each.find(f"{CHART}spPr/{DRAWING}ln/{DRAWING}noFill") is None]


def bare(book: Written) -> Iterator[str]:
    """No title, no legend and no frame: the words stand in the cell above."""
    for part, root in _charts(book):
        chart = root.find(f"{CHART}chart")
        assert chart is not None
        hidden = chart.find(f"{CHART}autoTitleDeleted")
        if chart.find(f"{CHART}title") is not None or hidden is None or hidden.get("val") != "1":
            yield f"{part}: has a title"
        if chart.find(f"{CHART}legend") is not None:
            yield f"{part}: has a legend"
        if root.find(f"{CHART}spPr/{DRAWING}ln/{DRAWING}noFill") is None:
            yield f"{part}: has a frame"


def told(book: Written) -> Iterator[str]:
    """Who cannot see a chart is told what it shows."""
    for part, content in book.parts.items():
        if re.fullmatch(r"xl/drawings/drawing[0-9]+\.xml", part):
            frames = ET.fromstring(content).iter(FRAME)
            yield from (f"{part}: {each.get('name')} has no words" for each in frames if not each.get("descr"))


def from_nothing(book: Written) -> Iterator[str]:
    """Bars and columns begin at 0, so that one of twice the figure is twice as long: it is the least that is drawn, or, of bars
    to both sides, lies between the ends and is where they cross the axis of names, or their names stand aside."""
    for part, root in _charts(book):
        if root.find(f".//{CHART}barChart") is not None:
            least, most = (_end(root, which) for which in ("min", "max"))
            crossing = _of_names(root, "crosses")
            to_both = least < 0 <= most and crossing is not None and crossing.get("val") == "autoZero"
            names = _of_names(root, "tickLblPos")
            aside = math.isnan(least) and names is not None and names.get("val") == "low"
            if least != 0 and not to_both and not aside:
                yield f"{part}: its bars do not begin at 0"


def _of_names(root: ET.Element, what: str) -> ET.Element | None:
    """What is said of the axis of names, or of dates."""
    found = (root.find(f".//{CHART}{axis}/{CHART}{what}") for axis in ("catAx", "dateAx"))
    return next((each for each in found if each is not None), None)


def _end(root: ET.Element, which: str) -> float:
    """The least or the most that the axis of figures runs to; no number where that is left to the program."""
    found = root.find(f".//{CHART}valAx/{CHART}scaling/{CHART}{which}")
    return float(found.get("val", "nan")) if found is not None else math.nan


def told_apart(book: Written) -> Iterator[str]:
    """No two lines of a chart have one weight and one dash: colour is not seen by all, nor printed."""
    for part, root in _charts(book):
        strokes = []
        for each in _lines(root):
            line = each.find(f"{CHART}spPr/{DRAWING}ln")
            dash = line.find(f"{DRAWING}prstDash") if line is not None else None
            strokes.append(
                (line.get("w") if line is not None else None, dash.get("val") if dash is not None else "solid")
            )
        if len(set(strokes)) < len(strokes):
            yield f"{part}: two lines look alike"


def named(book: Written) -> Iterator[str]:
    """Of several lines each is named where it runs, but for the middle one of a band, of which the words above speak."""
    for part, root in _charts(book):
        every = [each for kind in LINES for each in root.findall(f".//{CHART}{kind}/{CHART}ser")]
        spoken_of = 1 if len(every) > 2 else 0
        silent = [each for each in every if not _says_its_name(each)]
        if len(every) > 1 and len(silent) > spoken_of:
            yield f"{part}: {len(silent)} of {len(every)} lines are not named"


def _says_its_name(series: ET.Element) -> bool:
    """Its name is shown, and not struck out at every one of its points."""
    labels = series.find(f"{CHART}dLbls")
    shows = labels.find(f"{CHART}showSerName") if labels is not None else None
    if labels is None or shows is None or shows.get("val") != "1":
        return False
    points = series.find(f".//{CHART}ptCount")
    return len(labels.findall(f"{CHART}dLbl/{CHART}delete")) < int(points.get("val", "0") if points is not None else 0)


def quiet_grid(book: Written) -> Iterator[str]:
    """Gridlines are as light as the rules under lines, and none stand between them."""
    for part, root in _charts(book):
        if root.find(f".//{CHART}minorGridlines") is not None:
            yield f"{part}: has lines between its gridlines"
        for each in root.iter(f"{CHART}majorGridlines"):
            colour = each.find(f".//{DRAWING}srgbClr")
            if colour is None or f"#{colour.get('val')}" != HAIR:
                yield f"{part}: its gridlines are not light"


CHART_LINTS = (bare, told, from_nothing, told_apart, named, quiet_grid)
