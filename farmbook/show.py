"""Results as text: headline figures for a person, every line for a program."""

from __future__ import annotations

import csv
import io
import itertools
import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.layout.looks import NO_FIGURE, decimals
from farmbook.layout.page import no_figure
from farmbook.layout.template import read_templates
from farmbook.results import Computed
from farmbook.units import displayed

__all__ = ["as_csv", "as_json", "headline_text", "plain_unit", "records"]

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
    """The lines that the start sheet leads with, in its order."""
    start = read_templates()[0]
    return [name.removeprefix("show:") for block in start.blocks if block.look == "headline" for name in block.lines]


def headline_text(computed: Computed) -> str:
    """The headline figures, one a line: label, value, unit."""
    rows = [(line.label, *_spoken(computed, line)) for line in (computed.line(name) for name in headline_names())]
    wide = max(len(label) for label, _, _ in rows)
    return "\n".join(f"{label:<{wide}}  {value:>12}  {unit}".rstrip() for label, value, unit in rows)


def _spoken(computed: Computed, line: Line) -> tuple[str, str]:
    value = computed.values[line].reshape(-1)[0]
    if line.is_text:
        return str(value), ""
    if no_figure(line, value):
        return NO_FIGURE, ""
    shown = displayed(line.unit, computed.scenario.system)
    if shown.share:
        return f"{value * 100:.1f}", "%"
    return f"{value:,.{decimals(shown)}f}", shown.shown(computed.scenario.currency)


def records(computed: Computed) -> Iterator[Record]:
    """Every value of every line, in reading order; spare rows are left out."""
    for line, values in computed.values.items():
        axes = ordered_axes(line.axes)
        unit = plain_unit(computed, line)
        keys = [member_keys(computed, axis_number, line) for axis_number in range(len(axes))]
        for index in itertools.product(*(range(len(each)) for each in keys)):
            members = {axis.name: keys[place][index[place]] for place, axis in enumerate(axes)}
            value = _recorded(line, values[(0, *index)])
            yield Record(line.name, line.label, members, value, "" if isinstance(value, str) else unit)


def _recorded(line: Line, value: Any) -> float | str:
    """A value for a program: a number, or words for a text and where there is no such figure."""
    if line.is_text:
        return str(value)
    return NO_FIGURE if no_figure(line, value) else float(value)


def member_keys(computed: Computed, axis_number: int, line: Line) -> list[str]:
    """The keys of an axis's members: those of the scenario's rows, or the fixed ones."""
    axis = ordered_axes(line.axes)[axis_number]
    return list(computed.scenario.rows[axis]) if axis.named else list(axis.members[: computed.scenario.sizes[axis]])


def plain_unit(computed: Computed, line: Line) -> str:
    """The unit of a line's bare values, such as `lb/run` or `share`; texts have none."""
    of = displayed(line.unit, computed.scenario.system)
    return "" if line.is_text else of.plain(computed.scenario.currency)


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
