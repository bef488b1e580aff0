"""Results as text: headline figures for a person, every line for a program."""

from __future__ import annotations

import csv
import io
import itertools
import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.figures import is_number, plain_unit, recorded, spoken, unit_words
from farmbook.finding import called_in_book
from farmbook.layout.template import shipped_templates
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


def headline_names() -> list[str]:
    """The lines that the start sheet leads with, in its order: figures, then sentences."""
    start = shipped_templates()[0]
    figures = [name for block in start.blocks if block.kind == "front" for _, name in block.rows]
    said = [name for block in start.blocks if block.kind == "says" for name in block.lines]
    return [name.removeprefix("show:") for name in (*figures, *said)]


def headline_text(computed: Computed, *, names: bool = False) -> str:
    """The headline figures, one a line: label, value, unit; with `names` each has its name in the workbook below it."""
    lines = [computed.line(name) for name in headline_names()]
    rows = [(line, *_headline(computed, line)) for line in lines]
    wide = max(len(line.label) for line in lines)
    said: list[str] = []
    for line, value, unit in rows:
        said.append(f"{line.label:<{wide}}  {value:>12}  {unit}".rstrip())
        said += [f"  {called_in_book(line)}"] if names else []
    return "\n".join(said)


def _headline(computed: Computed, line: Line) -> tuple[str, str]:
    value = computed.values[line].reshape(-1)[0]
    return spoken(computed, line, value), unit_words(computed, line) if is_number(line, value) else ""


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
