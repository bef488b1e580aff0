"""Ways to break the rules for how charts look; the charts are those of the sample."""

from __future__ import annotations

from tests.workbook import lints_charts as rules
from tests.workbook.breaks_file import PartBreak

__all__ = ["CHART_BREAKS"]

LINES, BARS, DRAWN = "xl/charts/chart1.xml", "xl/charts/chart2.xml", "xl/drawings/drawing1.xml"
NO_FRAME = "</c:chart><c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>"

CHART_BREAKS: dict[str, PartBreak] = {
    "a chart with a title": PartBreak(
        rules.bare, {LINES: ('<c:autoTitleDeleted val="1"/>', '<c:autoTitleDeleted val="0"/>')}, "has a title"
    ),
    "a chart with a legend": PartBreak(
        rules.bare, {LINES: ("<c:plotVisOnly", "<c:legend/><c:plotVisOnly")}, "has a legend"
    ),
    "a chart with a frame": PartBreak(rules.bare, {LINES: (NO_FRAME, "</c:chart>")}, "has a frame"),
    "a chart without words": PartBreak(rules.told, {DRAWN: ('descr="Bags, week by week"', "")}, "has no words"),
    "bars cut off below": PartBreak(
        rules.from_nothing, {BARS: ('<c:min val="0"/>', '<c:min val="500"/>')}, "do not begin at 0"
    ),
    "bars that begin anywhere": PartBreak(rules.from_nothing, {BARS: ('<c:min val="0"/>', "")}, "do not begin at 0"),
    "bars to both sides that end anywhere": PartBreak(
        rules.from_nothing, {BARS: ('<c:min val="0"/>', '<c:min val="-5"/>')}, "do not begin at 0"
    ),
    "bars of which nothing shows where 0 lies": PartBreak(
        rules.from_nothing, {BARS: ('<c:min val="0"/>', '<c:max val="-1"/><c:min val="-5"/>')}, "do not begin at 0"
    ),
    "two lines alike": PartBreak(rules.told_apart, {LINES: ('w="34925"', 'w="15875"')}, "look alike"),
    "a line without its name": PartBreak(
        rules.named, {LINES: ('<c:showSerName val="1"/>', '<c:showSerName val="0"/>')}, "1 of 2 lines are not named"
    ),
    "dark gridlines": PartBreak(rules.quiet_grid, {LINES: ("DDD8CC", "1F1E1B")}, "its gridlines are not light"),
    "many gridlines": PartBreak(
        rules.quiet_grid,
        {LINES: ("<c:majorGridlines>", "<c:minorGridlines/><c:majorGridlines>")},
        "has lines between its gridlines",
    ),
}
