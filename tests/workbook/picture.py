"""A book as text, to be read in review: every row of every sheet, its looks, and each line's formula in names.

`python -m tests.workbook.picture` writes the pictures of the shipped farms anew after a change that is meant.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.formula import BlockOf, CellOf, ColumnOf, Part, formula_of
from farmbook.layout.book import Cell, Figure, Formula, Link, Sheet, Shown, Summed, Text, Typed, Worked
from farmbook.output import lay_out
from farmbook.results import Computed, compute, load_scenario
from farmbook.sections.declare import NumberInput
from tests.workbook.shipped import SCENARIOS

__all__ = ["IN_FULL", "PICTURES", "picture"]

PICTURES = Path(__file__).with_name("pictures")
IN_FULL = "kestrel_hollow"
"""The farm whose sheets are pictured row by row; the other's are laid out alike."""
MOST_WORDS = 30


def picture(computed: Computed, *, rows: bool) -> str:
    """The formulas of a scenario's book, and with `rows` its sheets row by row.

    A * stands at a cell with a defined name, an empty line for an empty row;
    rows of a table that say the same but for the member's name are told once."""
    book, plan = lay_out(computed)
    named = {place: name for name, place in book.names.items()}
    sheets = [row for sheet in book.sheets for row in _sheet(sheet, named)] if rows else []
    formulas = [_formula(line, computed) for line in plan.homes if isinstance(line, Line)]
    inputs = [_input(declared) for declared in computed.model.inputs if isinstance(declared, NumberInput)]
    return "\n".join([*sheets, "# Formulas", *sorted(formulas), "", "# Numbers typed in", *inputs, ""])


def _sheet(sheet: Sheet, named: Mapping[tuple[str, int, int], str]) -> Iterator[str]:
    yield f"# {sheet.name} ({sheet.kind}): columns {' '.join(f'{width:g}' for width in sheet.widths)}"
    told: dict[int, list[Cell]] = {}
    for cell in sheet.cells:
        told.setdefault(cell.row, []).append(cell)
    spoken = [_Row(row, _row(sheet, told[row], named), _member(told[row])) for row in sorted(told)]
    before = -1
    for _, same in itertools.groupby(spoken, key=lambda each: each.said.partition(" | ")[2] if each.member else each):
        rows = list(same)
        yield from [""] * (rows[0].row - before - 1)
        yield (f"{len(rows)} x " if len(rows) > 1 else "") + rows[0].said
        before = rows[-1].row
    for chart in sheet.charts:
        yield f"chart at {chart.row}: {chart.kind}, {chart.words}; {', '.join(each.line.name for each in chart.series)}"


class _Row(NamedTuple):
    row: int
    said: str
    member: bool


def _member(cells: list[Cell]) -> bool:
    """Whether a row is one member of a table, all cells of it worked out alike."""
    return len(cells) > 1 and all(isinstance(cell.content, Worked | Shown) and cell.content.index for cell in cells[1:])


def _row(sheet: Sheet, cells: list[Cell], named: Mapping[tuple[str, int, int], str]) -> str:
    height = sheet.heights.get(cells[0].row)
    ordered = sorted(cells, key=lambda each: each.column)
    shown = ordered[:1] if {cell.look for cell in cells} == {"heading"} else ordered
    words = " | ".join(_cell(cell) + "*" * ((sheet.name, cell.row, cell.column) in named) for cell in shown)
    return f"{words} [{height:.1f}]" if height else words


def _cell(cell: Cell) -> str:
    across = f"+{cell.across - 1}" if cell.across > 1 else ""
    form = f" {cell.format}" if cell.format else ""
    return f"{cell.column}{across} {cell.look}{form}: {_content(cell)}"


def _content(cell: Cell) -> str:
    content = cell.content
    if isinstance(content, Text | Link):
        return (
            content.words
            if len(content.words) <= MOST_WORDS
            else f"{content.words[:MOST_WORDS]}... {len(content.words)}"
        )
    if isinstance(content, Figure):
        return f"{content.value:g}"
    if isinstance(content, Formula | Summed):
        return f"={content.text}"
    if isinstance(content, Typed):
        return f"<{content.source.name}>"
    opening = " at the start" if isinstance(content, Worked | Shown) and content.opening else ""
    assert isinstance(content, Worked | Shown)
    return f"={content.line.name}{opening}"


def _input(declared: NumberInput) -> str:
    usual, hard = (f"{low:g} to {high:g}" for low, high in (declared.usual, declared.hard))
    return f"{declared.dotted} [{declared.unit}]: usual {usual}, possible {hard}, default {declared.default}"


def _formula(line: Line, computed: Computed) -> str:
    found = formula_of(line, computed.roots[line])
    opening = f"; at the start {_text(found.opening)}" if found.opening is not None else ""
    return f"{line.name} = {_text(found.step)}{opening}"


def _text(parts: tuple[Part, ...]) -> str:
    return "".join(part if isinstance(part, str) else _named(part) for part in parts)


def _named(part: Part) -> str:
    if isinstance(part, (BlockOf, ColumnOf)):
        first, *_, last = (*part.of, part.of[-1])
        return f"{{{'labels of ' if part.labels else ''}{first.name}..{last.name}, {len(part.of)}}}"
    assert not isinstance(part, str)
    of: Line | RawInput = part.of
    if isinstance(part, CellOf):
        return f"{{{of.name}{f' one {part.back.label} before' if part.back else ''}}}"
    return f"{{{of.name} over {part.axis.label}}}"


if __name__ == "__main__":
    for stem, path in SCENARIOS.items():
        text = picture(compute(load_scenario(path)), rows=stem == IN_FULL)
        (PICTURES / f"{stem}.txt").write_text(text, encoding="utf-8")
