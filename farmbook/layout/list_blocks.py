"""Blocks of single worked lines: lists, alternatives side by side, and what a sheet comes to at its head."""

from __future__ import annotations

from collections.abc import Sequence

from farmbook.errors import ModelFault
from farmbook.expr.nodes import Choose, Line
from farmbook.expr.sentences import longest
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.words import sentence_of
from farmbook.layout.book import Home, Shown, Text, Worked
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, UNIT, VALUE
from farmbook.layout.line_numbers import numbered_way
from farmbook.layout.measure import sentences_of
from farmbook.layout.page import Page, Plan
from farmbook.layout.template import Block

__all__ = [
    "COMES_TO_HEIGHT",
    "WORDS_COLUMNS",
    "Entry",
    "comes_to",
    "compare_block",
    "entries",
    "how",
    "list_block",
    "worked_out",
]

Entry = tuple[Line, bool]
"""A line, and whether this is its home (else it is only repeated)."""
TEXT_COLUMNS = 5
"""Columns of a line that is worked out in words."""
WORDS_COLUMNS = 4
"""Columns at the end of the grid for words beside rows of several figures; in fewer they would take too many lines."""


def entries(plan: Plan, block: Block, where: str) -> list[Entry]:
    """The lines of a block; `show:` before a name repeats a line that lives elsewhere."""
    found = []
    for name in block.lines:
        shown = name.startswith("show:")
        found.append((plan.line(name.removeprefix("show:"), where), not shown))
    return found


def how(plan: Plan, line: Line, home: bool) -> str:
    """How a line is worked out and what to know of it; for a repeated line, where it comes from."""
    if not home:
        place = plan.places.get(line.name)
        return f"from {place.sheet}, line {place.number}" if place else f"from {plan.lives_on[line.name]}"
    return f"{_way(plan, line)}. {line.note}".rstrip()


def _way(plan: Plan, line: Line) -> str:
    return numbered_way(line, plan.places) if line.name in plan.places else sentence_of(line.expr)


def worked_out(page: Page, column: int, line: Line, *, home: bool) -> None:
    """How a line is worked out, to the end of the grid; printed as far as its row, filled so far, has room.

    A line shown again on the sheet of its home says how too. A note that paper has no room for stands whole below what
    is printed, with the columns of the tables.
    """
    across = HOW + HOW_COLUMNS - column
    here = home or page.plan.lives_on.get(line.name) == page.sheet.name
    words = how(page.plan, line, here)
    if here and page.prints:
        parts = [f"{_way(page.plan, line)}.", *sentences_of(line.note)]
        said = page.as_fits(page.row, column, parts, across=across)
        if said != words:
            page.columns.append(line)
        words = said
    page.ruled(page.row, column, words, "words", across=across)


def list_block(page: Page, block: Block) -> None:
    """Single-valued lines, one a row."""
    page.heading(block.title, side="how it is worked out")
    for line, home in entries(page.plan, block, page.where):
        _list_row(page, line, home, block.look)
        page.row += 1


def _list_row(page: Page, line: Line, home: bool, look: str) -> None:
    if line.axes:
        raise ModelFault(
            f"`{line.name}` has a value for each {line.axes[0].label}; it cannot stand in a list", where=page.where
        )
    plan, row = page.plan, page.row
    bold = "_bold" if line.name in page.bold else ""
    page.number(row, line.name)
    page.put(row, LABEL, Text(page.label(line.head)), f"label{bold}")
    content = Worked(line, ()) if home else Shown(line, ())
    if line.is_text:
        page.put(row, VALUE, content, f"{look or 'worked'}_text", across=TEXT_COLUMNS)
        for sentence in sentences(line):
            page.room(row, VALUE, sentence, f"{look or 'worked'}_text", across=TEXT_COLUMNS)
        rest = VALUE + TEXT_COLUMNS
        page.ruled(row, rest, line.note, "words", across=HOW + HOW_COLUMNS - rest)
    else:
        page.put(row, VALUE, content, look or f"worked{bold}", form=plan.line_format(line))
        page.put(row, UNIT, Text(plan.unit_after(line.unit)), "unit")
        worked_out(page, HOW, line, home=home)
    page.words(row, NAME, workbook_name(line), "name")
    if home:
        plan.settle(line, Home(page.sheet.name, row, VALUE, label_column=LABEL))
        page.name(workbook_name(line), row, VALUE)


def sentences(line: Line) -> Sequence[str]:
    """What a line may say that is worked out in words; of a name typed in, nothing is known."""
    if isinstance(line.expr, Choose):
        return [each for each in line.expr.sentences if isinstance(each, str)]
    return (longest(line.expr),)


COMES_TO_HEIGHT = 24


def comes_to(page: Page, names: Sequence[str]) -> None:
    """The lines that a sheet comes to, each with the number of its working; the chart stands right of them."""
    page.put(page.row, LABEL, Text("What it comes to"), "beside")
    page.row += 1
    for name in names:
        line = page.plan.line(name, page.where)
        page.number(page.row, name)
        page.put(page.row, LABEL, Text(page.label(line.label)), "label")
        page.put(page.row, VALUE, Shown(line, ()), "worked_bold", form=page.plan.line_format(line))
        page.put(page.row, UNIT, Text(page.plan.unit_after(line.unit)), "unit")
        page.grow(page.row, COMES_TO_HEIGHT)
        page.row += 1


def compare_block(page: Page, block: Block) -> None:
    """Alternatives side by side: each row has a label and one single-valued line for each alternative.

    A head `{unit}` is the unit of the column's first line; the unit of a row stands behind it where there is room
    and all of the row have it. `spans` says how many columns of the grid each takes where that is not one.
    """
    spans = block.spans or (1,) * len(block.heads)
    columns = [VALUE + sum(spans[:place]) for place in range(len(spans))]
    page.heading(block.title, side="how it is worked out")
    page.put(page.row, LABEL, Text(""), "column_head")
    for column, span, head, first in zip(columns, spans, block.heads, block.rows[0][1:], strict=False):
        unit = page.plan.unit_words(page.plan.line(first.removeprefix("show:"), page.where).unit)
        look = "column_head_text" if span > 1 else "column_head_right"
        page.put(page.row, column, Text(head.replace("{unit}", unit)), look, across=span)
    page.row += 1
    for label, *names in block.rows:
        if len(names) != len(block.heads):
            raise ModelFault(
                f"row `{label}` of `{block.title}` has {len(names)} lines for {len(block.heads)} columns",
                where=page.where,
            )
        _compared(page, label, list(zip(names, columns, spans, strict=True)))
        page.row += 1


def _compared(page: Page, label: str, places: Sequence[tuple[str, int, int]]) -> None:
    """One row; `places` says of each line where its cell begins and how many columns it takes."""
    plan, row = page.plan, page.row
    named, homes, units = [], [], set()
    page.number(row, places[-1][0].removeprefix("show:"))
    page.put(row, LABEL, Text(label), "label")
    for name, column, span in places:
        line, home = plan.line(name.removeprefix("show:"), page.where), not name.startswith("show:")
        look = "worked" if not line.is_text else "worked_text" if span > 1 else "worked_words"
        content = Worked(line, ()) if home else Shown(line, ())
        page.put(row, column, content, look, form=plan.line_format(line), across=span)
        if line.is_text:
            for said in sentences(line):
                page.room(row, column, said, look, across=span)
        named.append(workbook_name(line))
        units.add(line.unit)
        if home:
            homes.append(line)
            plan.settle(line, Home(page.sheet.name, row, column, label_column=LABEL))
            page.name(workbook_name(line), row, column)
    unit_column, words_column = places[-1][1] + places[-1][2], HOW + HOW_COLUMNS - WORDS_COLUMNS
    unit = plan.unit_after(line.unit) if len(units) == 1 else ""
    if unit_column < words_column:
        page.put(row, unit_column, Text(unit), "unit", across=words_column - unit_column)
        worked_out(page, words_column, line, home=home)
        homes = homes[:-1] if home else homes
    elif unit_column == words_column:
        page.put(row, unit_column, Text(unit), "unit", across=HOW + HOW_COLUMNS - unit_column)
    page.columns += homes
    page.words(row, NAME, ", ".join(named), "name")
