"""One farm's inputs in metric units, as the engine wants them in its cells and as the twin wants them by name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Choose, Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Array, Cells, Engine
from farmbook.model.declare import Input, NumberInput, TextInput
from farmbook.results import whole_farm
from farmbook.units import displayed
from tests.model.helpers import converted, in_metric
from tests.twin.farm_twin_ground import Given

__all__ = [
    "COMPARED",
    "Farm",
    "axis_sizes",
    "back",
    "compared_lines",
    "differences",
    "farm_of",
    "farm_of_cells",
    "results",
    "twin_inputs",
]

COMPARED = ("worked", "error", "alert")
"""Kinds of lines that the twin works out; the section `report` counts cells of the book and is left out."""


@dataclass(frozen=True)
class Farm:
    """Numbers in the units declared, NaN where none stands, and words, by dotted name; the rows of each list."""

    numbers: Mapping[str, Array]
    words: Mapping[str, Any]
    names: Mapping[Axis, Sequence[str]]


def axis_sizes(names: Mapping[Axis, Sequence[str]]) -> dict[Axis, int]:
    """How many rows each axis has."""
    return dict(fixed_sizes()) | {axis: len(rows) for axis, rows in names.items()}


@cache
def fixed_sizes() -> tuple[tuple[Axis, int], ...]:
    """The axes whose members do not come from the farm."""
    fixed = {axis for line in whole_farm().lines for axis in line.axes if not axis.named}
    return tuple((axis, len(axis.members)) for axis in fixed)


def farm_of(given: Mapping[Input, Any], names: Mapping[Axis, Sequence[str]]) -> Farm:
    """A farm of some inputs in their declared units, all others at their defaults; None clears a cell."""
    sizes = axis_sizes(names)
    numbers: dict[str, Array] = {}
    words: dict[str, Any] = {}
    for declared, bound in whole_farm().inputs.items():
        value = given.get(declared, getattr(declared, "default", ""))
        if isinstance(declared, NumberInput):
            shape = tuple(sizes[axis] for axis in ordered_axes(bound.cell.axes))
            numbers[declared.dotted] = np.broadcast_to(np.asarray(value, dtype=float), shape)
        elif isinstance(declared, TextInput):
            words[declared.dotted] = list(names[declared.axes[0]]) if declared.names else value
    return Farm(numbers, words, names)


def farm_of_cells(cells: Mapping[RawInput, Cells], system: str) -> Farm:
    """The farm that stands in a book's cells, brought back to the units declared."""
    numbers: dict[str, Array] = {}
    words: dict[str, Any] = {}
    names: dict[Axis, Sequence[str]] = {}
    for declared, bound in whole_farm().inputs.items():
        found = cells[bound.cell]
        if isinstance(declared, NumberInput):
            shown = displayed(bound.cell.unit, system)
            numbers[declared.dotted] = converted(found.numbers[0], shown, bound.cell.unit)
        elif isinstance(declared, TextInput):
            words[declared.dotted] = np.asarray(found.texts[0], dtype=object).tolist()
            if declared.names:
                names[declared.axes[0]] = words[declared.dotted]
    return Farm(numbers, words, names)


def in_use(farm: Farm, axes: Sequence[Axis]) -> Array:
    """1 where every row that a cell stands in has a name, in the order of the axes."""
    used: Array = np.ones(())
    for axis in axes:
        rows = [float(name != "") for name in farm.names[axis]] if axis.named else np.ones(len(axis.members))
        used = used[..., None] * np.asarray(rows)
    return used


def twin_inputs(farm: Farm) -> Given:
    """The farm as the twin takes it: nothing where no number stands or the row is spare."""
    found: dict[str, Any] = dict(farm.words)
    for declared, bound in whole_farm().inputs.items():
        if isinstance(declared, NumberInput):
            typed, used = farm.numbers[declared.dotted], in_use(farm, ordered_axes(bound.cell.axes))
            found[declared.dotted] = np.where(np.isnan(typed) | (used == 0), 0.0, typed)
            if declared.optional:
                found[f"{declared.dotted}_given"] = np.where(np.isnan(typed), 0.0, used)
    return found


@cache
def engine(system: str, sizes: tuple[tuple[Axis, int], ...]) -> Engine:
    """The whole farm compiled for a system of units and numbers of rows."""
    return Engine({line: lower(line, system) for line in whole_farm().lines}, dict(sizes), system)


def cells_of(farm: Farm, system: str) -> dict[RawInput, Cells]:
    """The farm in the cells of a book of this system."""
    cells: dict[RawInput, Cells] = {}
    sizes = axis_sizes(farm.names)
    for declared, bound in whole_farm().inputs.items():
        if isinstance(declared, NumberInput):
            cells[bound.cell] = _number_cells(bound.cell, farm.numbers[declared.dotted], system)
            for limit, value in zip((bound.low, bound.high), declared.usual, strict=True):
                assert limit is not None
                cells[limit] = _number_cells(limit, np.asarray(value, dtype=float), system)
        elif isinstance(declared, TextInput):
            cells[bound.cell] = _word_cells(farm.words[declared.dotted])
        if bound.basis is not None:
            shape = tuple(sizes[axis] for axis in ordered_axes(bound.basis.axes))
            cells[bound.basis] = _word_cells(np.full(shape, "assumed", dtype=object))
    return cells


def _number_cells(cell: RawInput, value: Array, system: str) -> Cells:
    shown = converted(value, cell.unit, displayed(cell.unit, system))
    texts = np.where(np.isnan(shown), "", shown.astype(str)).astype(object)
    return Cells(shown[None], np.asarray(texts, dtype=object)[None])


def _word_cells(value: Any) -> Cells:
    texts = np.asarray(value, dtype=object)
    return Cells(np.full((1, *texts.shape), np.nan), texts[None])


def results(farms: Sequence[Farm], system: str) -> list[dict[str, Array]]:
    """What the engine makes of farms with equally many rows in books of this system, back in the units declared.

    They are worked out together, as the draws of one run.
    """
    sizes = sorted(axis_sizes(farms[0].names).items(), key=lambda each: each[0].order)
    books = [cells_of(farm, system) for farm in farms]
    values = engine(system, tuple(sizes)).run({cell: stacked([book[cell] for book in books]) for cell in books[0]})
    return [
        {line.name: back(line, values[line], system, draw) for line in compared_lines()} for draw in range(len(farms))
    ]


def stacked(cells: Sequence[Cells]) -> Cells:
    """The same cells of several books, one draw each."""
    numbers, texts = zip(*((each.numbers, each.texts) for each in cells), strict=True)
    return Cells(np.concatenate(numbers), np.concatenate(texts))


def back(line: Line, values: Array, system: str, draw: int = 0) -> Array:
    """One line's result of one draw, in the unit that the line declares; words as their place."""
    value = values[min(draw, len(values) - 1), ...]
    if isinstance(line.expr, Choose):
        return np.asarray(1.0 + line.expr.sentences.index(str(value)))
    return in_metric(value, str(line.unit)) if system == "us" else value


@cache
def compared_lines() -> tuple[Line, ...]:
    """Every worked line and check of the farm but those of the section `report`."""
    lines = (line for line in whole_farm().lines if line.kind in COMPARED)
    return tuple(line for line in lines if not line.name.startswith("report."))


def differences(ours: Mapping[str, Array], theirs: Mapping[str, Array]) -> list[str]:
    """Where two workings-out of a farm differ by more than rounding: name, twin, model."""
    found = []
    for name, value in theirs.items():
        own = ours[name]
        room = 1e-9 * np.maximum(np.abs(own), np.abs(value)) + 1e-9
        if own.shape != value.shape or not bool(np.all(np.abs(own - value) <= room)):
            found.append(f"{name}: twin {own.tolist()}, model {value.tolist()}")
    return found
