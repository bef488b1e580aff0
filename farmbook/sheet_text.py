"""One sheet as text: its lines with their values, as wide as a screen, lists as small tables."""

from __future__ import annotations

import itertools
import textwrap
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, Final

from farmbook.errors import FarmbookError, visible
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.figures import answered, is_number, spoken_cell, unit_words
from farmbook.finding import WIDTH, Found, called_in_book, everything, head_of
from farmbook.layout.template import Block, Template, fitting, shipped_templates
from farmbook.matters_text import matters_text
from farmbook.results import Computed

__all__ = ["NoSuchSheet", "sheet_text"]

LABEL: Final = 50
VALUE: Final = 12


class NoSuchSheet(FarmbookError):
    """No sheet, or more than one, goes by these words."""

    def __init__(self, part: str, found: Sequence[Template], sheets: Sequence[Template]) -> None:
        self.part = part
        shown = found or sheets
        what = f"fits {len(found)} sheets" if found else "is in the name of no sheet that holds figures"
        self.hint = "give the name of one sheet, as it stands before its title"
        rows = [f"  {sheet.sheet:<10}  {sheet.title}" for sheet in shown]
        super().__init__("\n".join([f"`{visible(part)}` {what}", "", *rows]))


def sheet_text(computed: Computed, part: str, *, names: bool = False) -> str:
    """The lines of the sheet whose name or title has `part` in it, with their names where asked. Raises NoSuchSheet."""
    sheet = _sheet(part, _sheets_with_figures(computed))
    known = everything(computed)
    rows = [sheet.title, *textwrap.wrap(sheet.question, WIDTH)]
    if sheet.answer:
        answer = computed.line(sheet.answer)
        rows += ["", *textwrap.wrap(answered(computed, answer, computed.values[answer][0]), WIDTH)]
    for block in sheet.blocks:
        if block.kind == "matters" and not block.after:
            rows += ["", *matters_text(computed, block.first).splitlines()]
        if ones := _of(computed, block, known):
            title = "Month by month" if block.kind == "years" else block.title
            rows += ["", *textwrap.wrap(title, WIDTH), *_block(computed, ones, names=names)]
    return "\n".join(rows)


def _sheet(part: str, sheets: Sequence[Template]) -> Template:
    wanted = fold(part.strip())
    ways = (
        [sheet for sheet in sheets if wanted in (fold(sheet.sheet), fold(sheet.title))],
        [sheet for sheet in sheets if wanted and fold(sheet.sheet).startswith(wanted)],
        [sheet for sheet in sheets if wanted and wanted in fold(f"{sheet.sheet}\n{sheet.title}")],
    )
    found = next(filter(None, ways), [])
    if len(found) != 1:
        raise NoSuchSheet(part, found, sheets)
    return found[0]


def _sheets_with_figures(computed: Computed) -> list[Template]:
    return [
        sheet
        for sheet in fitting(shipped_templates(), computed.scenario.parts)
        if any(_named_in(block) or block.kind == "checks" for block in sheet.blocks)
    ]


def _named_in(block: Block) -> list[str]:
    """The names of the lines and inputs of a block, in its order; a place left empty has none."""
    compared = [name for row in block.rows for name in row[1:]]
    return [name.removeprefix("show:") for name in (*block.lines, *block.inputs, *compared)]


def _of(computed: Computed, block: Block, known: Mapping[str, Found]) -> list[Found]:
    """The lines and cells of a block, in its order."""
    if block.kind == "checks":
        return [line for line in computed.roots if line.kind == block.of]
    return [known[name] for name in _named_in(block) if name in known]


def _block(computed: Computed, ones: Sequence[Found], *, names: bool) -> Iterator[str]:
    """Single values one under another; lines over one list together in a table, a line over two in one of its own."""
    for axes, group in itertools.groupby(ones, key=lambda one: ordered_axes(one.axes) if isinstance(one, Line) else ()):
        each = list(group)
        if not axes:
            for one in each:
                yield from _single(computed, one, names=names)
        else:
            lines = [one for one in each if isinstance(one, Line)]
            yield from _tables(computed, lines, axes, names=names)


def _single(computed: Computed, one: Found, *, names: bool) -> Iterator[str]:
    for left, right in itertools.zip_longest(_label(one, names=names), _said(computed, one), fillvalue=""):
        yield f"{left:<{LABEL}}  {right}".rstrip()


def _label(one: Found, *, names: bool) -> list[str]:
    """The label of a single value, and below it where asked its name in the workbook."""
    return [*textwrap.wrap(head_of(one), LABEL), *([f"  {called_in_book(one)}"] if names else [])]


def _said(computed: Computed, one: Found) -> list[str]:
    """A single value with its unit, numbers one under another; a text in as many rows as it needs."""
    if isinstance(one, RawInput):
        return textwrap.wrap(spoken_cell(computed, one), WIDTH - LABEL - 2)
    value = computed.values[one][0]
    if is_number(one, value):
        return [f"{answered(computed, one, value):>{VALUE}}  {unit_words(computed, one)}".rstrip()]
    return textwrap.wrap(answered(computed, one, value), WIDTH - LABEL - 2)


def _tables(computed: Computed, lines: Sequence[Line], axes: Sequence[Axis], *, names: bool) -> Iterator[str]:
    """Lines over one list as the rows of one table, its members across; of two lists the first runs down, a table a line."""
    *down, across = axes
    members = computed.members(across)
    if not down:
        rows = [
            (_titled(computed, line, names=names), _cells(computed, line, computed.values[line][0])) for line in lines
        ]
        yield from _table([across.label], members, rows)
        return
    for line in lines:
        yield from _titled(computed, line, names=names)
        keys = computed.members(down[0])
        rows = [
            ([f"  {key}"], _cells(computed, line, computed.values[line][0][place])) for place, key in enumerate(keys)
        ]
        yield from _table([f"  {down[0].label} and {across.label}"], members, rows)


def _titled(computed: Computed, line: Line, *, names: bool) -> list[str]:
    """The label of a row of a table, with the unit of all its values."""
    unit = unit_words(computed, line)
    label = f"{line.head}, {unit}" if unit else line.head
    return [*textwrap.wrap(label, LABEL), *([f"  {called_in_book(line)}"] if names else [])]


def _cells(computed: Computed, line: Line, values: Iterable[Any]) -> list[str]:
    return [answered(computed, line, value) for value in values]


def _table(corner: list[str], heads: Sequence[str], rows: Sequence[tuple[list[str], list[str]]]) -> Iterator[str]:
    """Rows under their heads, columns as wide as what is in them; where the screen ends, the rest in another table below."""
    every = [(corner, list(heads)), *((label, cells[: len(heads)]) for label, cells in rows)]
    left = max(len(text) for label, _ in every for text in label)
    wide = [max(len(cells[place]) for _, cells in every) for place in range(len(heads))]
    for first, end in _columns(wide, WIDTH - left):
        for label, cells in every:
            right = "".join(f"  {cell:>{wide[place]}}" for place, cell in enumerate(cells) if first <= place < end)
            for text, beside in itertools.zip_longest(label, [right], fillvalue=""):
                yield f"{text:<{left}}{beside}".rstrip()


def _columns(wide: Sequence[int], room: int) -> Iterator[tuple[int, int]]:
    """The first column of each table and that after its last, at least one to a table."""
    first, used = 0, 0
    for place, width in enumerate(wide):
        used += width + 2
        if used > room and place > first:
            yield first, place
            first, used = place, width + 2
    if wide:
        yield first, len(wide)
