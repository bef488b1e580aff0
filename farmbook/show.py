"""Results as text: headline figures for a person, every line for a program."""

from __future__ import annotations

import csv
import io
import itertools
import json
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.figures import is_number, plain_unit, recorded, spoken, unit_words
from farmbook.finding import WIDTH, called_in_book
from farmbook.layout.template import shipped_templates
from farmbook.matters_text import first_rows
from farmbook.results import Computed

__all__ = ["as_csv", "as_json", "headline_text", "records"]

_FORMULA_STARTS: Final = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20", "'")
"""The full-width signs count where the keyboard is Japanese, Chinese or Korean: common practice, no source."""


@dataclass(frozen=True)
class Record:
    """One value of one line: its members by axis, and its unit; shares are of 1."""

    name: str
    label: str
    members: dict[str, str]
    value: float | str
    unit: str


def headlines() -> tuple[list[tuple[str, str]], list[str], int]:
    """What the first sheet leads with, in its order: figures by what they are called there, sentences, rows of what to measure."""
    start = shipped_templates()[0]
    figures = [(label, name) for block in start.blocks if block.kind == "front" for label, name in block.rows]
    said = [name for block in start.blocks if block.kind == "says" for name in block.lines]
    rows = sum(block.first for block in start.blocks if block.kind == "matters")
    return figures, [name.removeprefix("show:") for name in (start.answer, *said) if name], rows


def headline_text(computed: Computed, *, names: bool = False) -> str:
    """The first sheet as text: its answer, figures one a row, sentences, what to measure next.

    With `names` each has its name in the workbook below it.
    """
    figures, said, rows = headlines()
    wide = max((len(label) for label, _ in figures), default=0)
    first, *rest = [_sentence(computed, computed.line(name), names=names) for name in said]
    shown = [
        row
        for label, name in figures
        for row in _figure(computed, computed.line(name.removeprefix("show:")), f"{label:<{wide}}", names=names)
    ]
    tables = [first_rows(computed, rows)] if rows else []
    return "\n\n".join([*("\n".join(block) for block in (first, shown, *rest)), *tables])


def _figure(computed: Computed, line: Line, label: str, *, names: bool) -> list[str]:
    value = computed.values[line].reshape(-1)[0]
    unit = unit_words(computed, line) if is_number(line, value) else ""
    said = f"{label}  {spoken(computed, line, value):>12}  {unit}".rstrip()
    return [said, *_named(line, names=names)]


def _sentence(computed: Computed, line: Line, *, names: bool) -> list[str]:
    """A sentence says by itself what it is about, so that it goes without a label."""
    said = spoken(computed, line, computed.values[line].reshape(-1)[0])
    return [*textwrap.wrap(said, WIDTH), *_named(line, names=names)]


def _named(line: Line, *, names: bool) -> list[str]:
    return [f"  {called_in_book(line)}"] if names else []


def records(computed: Computed) -> Iterator[Record]:
    """Every value of every line, in reading order; spare rows are left out."""
    for line, values in computed.values.items():
        axes = ordered_axes(line.axes)
        unit = plain_unit(computed, line)
        keys = [computed.members(axis) for axis in axes]
        for index in itertools.product(*(range(len(each)) for each in keys)):
            members = {axis.name: keys[place][index[place]] for place, axis in enumerate(axes)}
            value = recorded(line, values[(0, *index)])
            yield Record(line.name, line.label, members, value, "" if isinstance(value, str) else unit)


def as_json(computed: Computed) -> str:
    """All records as a JSON list; a value is a number, or words."""
    rows = [vars(record) for record in records(computed)]
    return json.dumps(rows, indent=1, ensure_ascii=False)


def as_csv(computed: Computed) -> str:
    """All records as CSV: name, label, members, value, unit; a text that spreadsheets take for a formula has ' in front."""
    target = io.StringIO()
    writer = csv.writer(target, lineterminator="\n")
    writer.writerow(["name", "label", "members", "value", "unit"])
    for record in records(computed):
        members = "; ".join(f"{axis}={member}" for axis, member in record.members.items())
        writer.writerow([record.name, record.label, members, _as_text(record.value), record.unit])
    return target.getvalue()


def _as_text(value: float | str) -> float | str:
    """A value that stays what it is when a spreadsheet program opens the file; one more ' lets a text with ' be read back."""
    return f"'{value}" if isinstance(value, str) and value.startswith(_FORMULA_STARTS) else value
