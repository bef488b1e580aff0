"""Blocks of what matters most: plain figures, fixed when the book was made, of each input swung over its usual range."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.expr.sentences import longest
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Figure, Shown, SwingChart, Text
from farmbook.layout.chart_blocks import WIDTH
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, NUMBER, ROW_HEIGHT, UNIT, VALUE
from farmbook.layout.page import Page
from farmbook.layout.swings import NOTHING_LEFT, Swing
from farmbook.layout.template import Block

__all__ = ["left_out_block", "matters_block", "matters_chart_block", "matters_figures"]

LOW, HIGH, AT_LOW, AT_HIGH, KNOWN = range(HOW, HOW + 5)
ALL: Final = HOW + HOW_COLUMNS
BAR_HEIGHT: Final = 24
SWUNG: Final = "All else as it is; the largest stand in the table, and `farmbook matters` prints every one."
LABEL_ROOM: Final = 0.09
"""Of the width of all bars, beyond the longest on either side, for its figure."""


def matters_block(page: Page, block: Block) -> None:
    """Some of the figures that swing most, each over the words on how to measure it; `{unit}` in the title is that of the swings.

    Where none are left it says so; of a part further down that is empty nothing stands. A line of the block says whether they hold.
    """
    of, rows = page.plan.swings.of, page.plan.swings.rows[block.after :][: block.first]
    if of is None or not rows:
        if not block.after:
            page.heading(block.title.partition(",")[0])
            page.words(page.row, LABEL, NOTHING_LEFT, "paragraph", across=ALL - LABEL)
            page.row += 1
        return
    page.heading(block.title.replace("{unit}", page.plan.unit_words(of.unit)))
    _heads(page)
    for rank, one in enumerate(rows, block.after + 1):
        _figures(page, of, rank, one)
        page.ruled(page.row + 1, NUMBER, "", "number")
        page.ruled(page.row + 1, LABEL, one.bound.declared.how, "words", across=ALL - LABEL)
        page.row += 2
    if not block.after:
        _at_stake(page, of)
    _stamp(page, block)


def _heads(page: Page) -> None:
    left = {NUMBER: "", LABEL: "what, and how to measure it", UNIT: ""}
    right = {
        VALUE: "now",
        LOW: "usual, from",
        HIGH: "to",
        AT_LOW: "more or less at the low end",
        AT_HIGH: "more or less at the high end",
    }
    for heads, look in ((left, "column_head"), (right, "column_head_right")):
        page.heads(page.row, [(column, words, 1) for column, words in heads.items()], look)
    page.heads(page.row, [(KNOWN, "  how known", ALL - KNOWN)])
    page.row += 1


def _figures(page: Page, of: Line, rank: int, one: Swing) -> None:
    """The row of a figure: what it is, where it lies in its range, and what profit does at the ends."""
    plan, row, unit = page.plan, page.row, one.bound.cell.unit
    typed, limit, change = plan.typed_format(unit), plan.limit_format(unit), plan.change_format(of)
    page.put(row, NUMBER, Text(str(rank)), "number")
    page.put(row, LABEL, Text(one.name), "label")
    page.put(row, VALUE, Figure(one.value), "worked", form=typed)
    page.put(row, UNIT, Text(plan.unit_after(unit)), "unit")
    for column, value in ((LOW, one.low), (HIGH, one.high)):
        page.put(row, column, Figure(value), "limit", form=limit)
    for column, value in ((AT_LOW, one.at_low), (AT_HIGH, one.at_high)):
        page.put(row, column, Figure(value), "worked", form=change)
    place = plan.places.get(one.bound.cell.name)
    where = f"{place.sheet}, {place.table or f'line {place.number}'}" if place else ""
    page.ruled(row, KNOWN, "; ".join(filter(None, [one.basis, where])), "unit", across=ALL - KNOWN)
    if not one.members:
        page.words(row, NAME, workbook_name(one.bound.cell), "name")


def _at_stake(page: Page, of: Line) -> None:
    """What rests on guesses: all such figures at their worse ends, in money and of a year's profit, where there is one."""
    found = page.plan.swings
    words = f"All {len(found.rows)} figures that nobody measured or quoted, each alone at its worse end, added up; of a year's profit."
    page.words(page.row, LABEL, words, "words", across=AT_LOW - LABEL)
    page.put(page.row, AT_LOW, Figure(found.at_stake), "worked", form=page.plan.change_format(of))
    if found.now > 0:
        page.put(page.row, AT_HIGH, Figure(-found.at_stake / found.now), "worked", form="0%")
    page.row += 1


def _stamp(page: Page, block: Block) -> None:
    """Of which scenario these figures are, and beside it, in a live sentence, whether they still hold."""
    stamp = page.plan.stamp
    made = f"Worked out when the book was made, from {stamp['Scenario']} (fingerprint {stamp['Scenario fingerprint']})."
    end = HOW if block.lines else ALL
    page.words(page.row, LABEL, made, "words", across=end - LABEL)
    for name in block.lines:
        line = page.plan.line(name.removeprefix("show:"), page.where)
        page.put(page.row, HOW, Shown(line, ()), "words", across=HOW_COLUMNS)
        page.room(page.row, HOW, longest(line.expr), "words", across=HOW_COLUMNS)
    page.row += 1


def left_out_block(page: Page, block: Block) -> None:
    """How many figures were swung, and how many were left out, by why."""
    page.heading(block.title)
    found = page.plan.swings
    _count_row(page, "Swung over their usual range", len(found.rows), SWUNG)
    for why, count in found.left_out.items():
        _count_row(page, why.label, count, why.words)


def _count_row(page: Page, label: str, count: int, words: str) -> None:
    page.ruled(page.row, NUMBER, "", "number")
    page.put(page.row, LABEL, Text(label), "label")
    page.put(page.row, VALUE, Figure(count), "worked", form="#,##0")
    page.ruled(page.row, UNIT, words, "unit", across=ALL - UNIT)
    page.row += 1


def matters_chart_block(page: Page, block: Block) -> None:
    """The largest swings left and right of zero, across the sheet; nothing where there are none."""
    of, rows = page.plan.swings.of, page.plan.swings.rows[: block.first]
    if of is None or not rows:
        return
    title = block.title.replace("{unit}", page.plan.unit_words(of.unit))
    page.heading(title)
    height = BAR_HEIGHT * (len(rows) + 1)
    loss, gain = min(one.loss for one in rows), max(one.gain for one in rows)
    room = LABEL_ROOM * (gain - loss)
    page.swung.append(
        SwingChart(page.row, LABEL, WIDTH, height, title, len(rows), round(loss - room), round(gain + room))
    )
    page.row += -(-height // ROW_HEIGHT) + 1


def matters_figures(page: Page) -> None:
    """What the charts of swings are drawn from, under what is printed: what is lost at the worse end, and what is won."""
    of = page.plan.swings.of
    for chart in page.swung:
        assert of is not None
        page.heading(f"Figures of the chart: {chart.words}")
        first, form = page.row, page.plan.change_format(of, zero="")
        for one in page.plan.swings.rows[: chart.count]:
            page.put(page.row, LABEL, Text(one.name), "label")
            page.put(page.row, VALUE, Figure(one.loss), "worked", form=form)
            page.put(page.row, UNIT, Figure(one.gain), "worked", form=form)
            page.row += 1
        page.sheet.swing_charts.append(replace(chart, figures=first))
    page.swung.clear()
