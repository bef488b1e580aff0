"""A card to pin up: what is to be done, in large figures, with boxes to tick and to write in what it really was."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.sentences import longest
from farmbook.interpret.formula import workbook_name
from farmbook.layout.book import Content, Home, Shown, Text, Worked
from farmbook.layout.forms import DAY_AND_MONTH
from farmbook.layout.grid import CARD_BOX, CARD_WORDS, LABEL, NUMBER, UNIT, VALUE
from farmbook.layout.page import Page
from farmbook.layout.template import PLAIN, Block
from farmbook.units import Unit

__all__ = ["card_block"]

DAYS: Final = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
HEIGHT: Final = 31


def card_block(page: Page, block: Block) -> None:
    """Rows of a label, a figure, and words or days; a row of words alone takes the width. Then `blank` rows to write in."""
    page.heading("")
    _head(page, block)
    for row in block.rows:
        if not 2 <= len(row) <= 4:
            raise ModelFault(f"a row of `{block.title}` has {len(row)} parts, not 2 to 4", where=page.where)
        label, name, *words = row
        line = page.plan.line(name.removeprefix("show:"), page.where)
        if line.axes:
            _members(page, block, line, name, words)
            continue
        if line.is_text:
            _line(page, name, NUMBER, "card_said", across=page.sheet.grid.printed)
        else:
            _row(page, block, Text(label or page.label(line.head)), name, words)
        page.grow(page.row, HEIGHT)
        page.row += 1
    for _ in range(block.blank):
        page.put(page.row, NUMBER, Text(""), "card_line", across=page.sheet.grid.printed)
        page.grow(page.row, HEIGHT)
        page.row += 1


def _members(page: Page, block: Block, line: Line, name: str, words: Sequence[str]) -> None:
    """A row for each member of a list that runs down and is at home elsewhere."""
    if len(line.axes) != 1 or not all(each.startswith("show:") for each in (name, *words)):
        raise ModelFault(
            f"`{line.name}` has more than one value and no other home; it cannot stand so", where=page.where
        )
    (axis,) = line.axes
    labels = page.plan.model.axes.get(axis)
    for member in range(page.plan.sizes[axis]):
        label = _called(axis, member) if labels is None else Shown(labels.label, (member,))
        _row(page, block, label, name, words, (member,))
        page.grow(page.row, HEIGHT)
        page.row += 1


def _called(axis: Axis, member: int) -> Content:
    return Text(axis.called(member).replace("_", " ").capitalize())


def _head(page: Page, block: Block) -> None:
    """The heading over all columns, with the days, or what the boxes are for."""
    for column in range(CARD_WORDS):
        page.put(page.row, column, Text(block.title if column == 0 else ""), "heading")
    if block.days:
        for column, day in enumerate(DAYS, CARD_WORDS):
            page.put(page.row, column, Text(day), "card_day")
    else:
        boxes = "really was" if block.rows and block.look != PLAIN else ""
        page.put(page.row, CARD_WORDS, Text(""), "card_day", across=CARD_BOX - CARD_WORDS)
        page.put(page.row, CARD_BOX, Text(boxes), "card_day", across=page.sheet.grid.printed - CARD_BOX)
    page.grow(page.row, HEIGHT)
    page.row += 1


def _row(
    page: Page, block: Block, label: Content, name: str, words: Sequence[str], index: tuple[int, ...] = ()
) -> None:
    """A box to tick, label, figure and unit; then words and a box to write in, or a box for each day."""
    row, end = page.row, page.sheet.grid.printed
    read = block.look == PLAIN
    page.put(row, NUMBER, Text(""), "card_words" if read else "card_box")
    page.put(row, LABEL, label, "card_label")
    line = _line(page, name, VALUE, "card_figure", index=index)
    unit = _unit(page, line)
    page.put(row, UNIT, Text(unit), "card_words")
    if block.days:
        for column in range(CARD_WORDS, end):
            page.put(row, column, Text(""), "card_box")
        return
    if len(words) > 1:
        _line(page, words[0], CARD_WORDS, "card_words", index=index, unit=True, across=CARD_BOX - CARD_WORDS)
        _line(page, words[1], CARD_BOX, "card_words", index=index, unit=True, across=end - CARD_BOX)
        return
    if words:
        _line(page, words[0], CARD_WORDS, "card_words", across=CARD_BOX - CARD_WORDS, index=index, unit=True)
    else:
        page.put(row, CARD_WORDS, Text(""), "card_words", across=CARD_BOX - CARD_WORDS)
    page.put(row, CARD_BOX, Text("" if read else unit), "card_words" if read else "card_box", across=end - CARD_BOX)


def _unit(page: Page, line: Line) -> str:
    """What is counted; for what stands in the heading."""
    above = Unit(tuple((name, power) for name, power in line.unit.powers if power > 0))
    return page.plan.unit_after(line.unit if line.unit.share else above)


def _line(
    page: Page, name: str, column: int, look: str, *, across: int = 1, index: tuple[int, ...] = (), unit: bool = False
) -> Line:
    """The cell of a single value, at home here or repeated, with room for the longest that it may say; with its `unit` inside."""
    plan, row = page.plan, page.row
    line, home = plan.line(name.removeprefix("show:"), page.where), not name.startswith("show:")
    form = f"{DAY_AND_MONTH};;" if line.unit.date else plan.line_format(line)
    after = _unit(page, line) if unit and not line.is_text else ""
    form = ";".join(f'{part}" {after}"' for part in form.split(";")) if after else form
    page.put(row, column, Worked(line, ()) if home else Shown(line, index), look, form=form, across=across)
    if line.is_text:
        page.room(row, column, longest(line.expr), look, across=across)
    if home:
        plan.settle(line, Home(page.sheet.name, row, column, label_column=LABEL))
        page.name(workbook_name(line), row, column)
    return line
