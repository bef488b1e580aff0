"""Ways to break the rules of the first screen; the sheet is that of the sample."""

from __future__ import annotations

from tests.workbook import lints_front as rules
from tests.workbook.sample import START, Breakage, Sample

__all__ = ["FRONT_BREAKS"]

LONG = "A bag that fruits has cost more than anybody would have thought before it was worked out. "


def said(times: int, look: str) -> Breakage:
    """Words in a cell that has three rows' height."""

    def change(sample: Sample) -> None:
        sample.sheets[START].set_row_pixels(11, 60)
        sample.formula("A12", "=report_verdict", LONG * times, sheet=START, look=look)

    return Breakage(rules.reads_alone, change, "Start!A12: `A bag that fruits")


FRONT_BREAKS: dict[str, Breakage] = {
    "a front too wide for a phone": Breakage(
        rules.narrow,
        lambda sample: sample.sheets[START].set_column_pixels(0, 3, 121),
        "columns A to D take 484 pixels",
    ),
    "words that run on to the right": said(1, "plain"),
    "words that run out below": said(1, "wrapped"),
    "words merged beyond D": Breakage(
        rules.reads_alone,
        lambda sample: sample.sheets[START].merge_range("C12:E12", "Cost", sample.looks["plain"]),
        "Start!C12: `Cost` runs out",
    ),
    "a number too wide": Breakage(
        rules.reads_alone,
        lambda sample: sample.formula("B12", "=farm_bags", 1e12, sheet=START),
        "Start!B12: `$1,000,000,000,000.00` runs out",
    ),
}
