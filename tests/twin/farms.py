"""One farm's inputs in metric units, as the engine wants them in its cells and as the twin wants them by name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import At, Choose, Expr, Label, Line, Nth, RawInput
from farmbook.expr.sentences import Sentence
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Array, Cells, Engine, Values
from farmbook.model.axes import sizes_of_plan
from farmbook.results import lowered, whole_farm
from farmbook.scenario.limits import NO_LIMIT
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import Input, NumberInput, TextInput
from farmbook.units import displayed, unit
from tests.model.helpers import converted, in_metric
from tests.twin.farm_twin_ground import Given

__all__ = [
    "COMPARED",
    "Difference",
    "Farm",
    "alternative_lines",
    "axis_sizes",
    "compared_lines",
    "differences",
    "farm_of",
    "farm_of_cells",
    "in_declared_units",
    "least_room",
    "results",
    "twin_inputs",
]

PLAN_MONTHS = 12
"""Months of a farm's plan where nothing else is said."""
COMPARED = ("worked", "error", "alert")
"""Kinds of lines that the twin works out; the section `report` counts cells of the book and is left out."""


@dataclass(frozen=True)
class Farm:
    """Numbers in the units declared, NaN where none stands, and words, by dotted name; the rows of each list."""

    numbers: Mapping[str, Array]
    words: Mapping[str, Any]
    names: Mapping[Axis, Sequence[str]]
    months: int = PLAN_MONTHS


def axis_sizes(names: Mapping[Axis, Sequence[str]], months: int = PLAN_MONTHS) -> dict[Axis, int]:
    """How many rows each axis has, in a plan of so many months."""
    return dict(fixed_sizes()) | {axis: len(rows) for axis, rows in names.items()} | dict(sizes_of_plan(months))


@cache
def fixed_sizes() -> tuple[tuple[Axis, int], ...]:
    """The axes whose members do not come from the farm."""
    fixed = {axis for line in whole_farm().lines for axis in line.axes if not (axis.named or axis.sized)}
    return tuple((axis, len(axis.members)) for axis in fixed)


def farm_of(given: Mapping[Input, Any], names: Mapping[Axis, Sequence[str]], months: int = PLAN_MONTHS) -> Farm:
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
            words[declared.dotted] = words_of(declared, value, names)
    return Farm(numbers, words, names, months)


def words_of(declared: TextInput, value: Any, names: Mapping[Axis, Sequence[str]]) -> Any:
    """The words of a text: one, the names of a list, or one for each of its members."""
    if declared.names:
        return list(names[declared.axes[0]])
    if declared.axes and isinstance(value, str):
        return [value] * len(names[declared.axes[0]])
    return value


def farm_of_cells(cells: Mapping[RawInput, Cells], system: str, months: int) -> Farm:
    """The farm that stands in a book's cells, brought back to the units declared; it has the parts that the book has."""
    numbers: dict[str, Array] = {}
    words: dict[str, Any] = {}
    names: dict[Axis, Sequence[str]] = {}
    by_name = {cell.name: found for cell, found in cells.items()}
    for declared, bound in whole_farm().inputs.items():
        found = by_name.get(bound.cell.name)
        if found is None:
            continue
        if isinstance(declared, NumberInput):
            shown = displayed(bound.cell.unit, system)
            numbers[declared.dotted] = converted(found.numbers[0], shown, bound.cell.unit)
        elif isinstance(declared, TextInput):
            words[declared.dotted] = np.asarray(found.texts[0], dtype=object).tolist()
            if declared.names:
                names[declared.axes[0]] = words[declared.dotted]
    return Farm(numbers, words, names, months)


def in_use(farm: Farm, axes: Sequence[Axis]) -> Array:
    """1 where every row that a cell stands in has a name, in the order of the axes."""
    used: Array = np.ones(())
    for axis in axes:
        rows = [float(name != "") for name in farm.names[axis]] if axis.named else np.ones(len(axis.members))
        used = used[..., None] * np.asarray(rows)
    return used


def twin_inputs(farm: Farm) -> Given:
    """The farm as the twin takes it: nothing where no number stands or the row is spare."""
    found: dict[str, Any] = {**farm.words, "plan.months": farm.months}
    for declared, bound in whole_farm().inputs.items():
        if isinstance(declared, NumberInput) and declared.dotted in farm.numbers:
            typed, used = farm.numbers[declared.dotted], in_use(farm, ordered_axes(bound.cell.axes))
            found[declared.dotted] = np.where(np.isnan(typed) | (used == 0), 0.0, typed)
            if len(bound.cell.axes) > 1:
                found[f"{declared.dotted}_typed"] = np.where(np.isnan(typed), 0.0, typed)
            if declared.optional:
                found[f"{declared.dotted}_given"] = np.where(np.isnan(typed), 0.0, 1.0)
    return found


@cache
def engine(system: str, sizes: tuple[tuple[Axis, int], ...]) -> Engine:
    """The whole farm compiled for a system of units and numbers of rows."""
    return Engine(lowered(system), dict(sizes), system)


def cells_of(farms: Sequence[Farm], system: str) -> dict[RawInput, Cells]:
    """Farms with equally many rows in the cells of books of this system, one draw each."""
    cells: dict[RawInput, Cells] = {}
    sizes = axis_sizes(farms[0].names, farms[0].months)
    for declared, bound in whole_farm().inputs.items():
        name = declared.dotted
        if isinstance(declared, NumberInput):
            cells[bound.cell] = number_cells(bound.cell, np.stack([farm.numbers[name] for farm in farms]), system)
            limits = (*declared.usual, declared.hard[0], min(declared.hard[1], NO_LIMIT))
            for limit, value in zip((bound.low, bound.high, bound.least, bound.most), limits, strict=True):
                assert limit is not None
                cells[limit] = number_cells(limit, np.asarray([value], dtype=float), system)
        elif isinstance(declared, TextInput):
            cells[bound.cell] = word_cells([farm.words[name] for farm in farms])
        assert bound.built is not None
        cells[bound.built] = cells[bound.cell]
        if bound.basis is not None:
            shape = tuple(sizes[axis] for axis in ordered_axes(bound.basis.axes))
            cells[bound.basis] = word_cells(np.full((1, *shape), "assumed", dtype=object))
    return cells


def number_cells(cell: RawInput, values: Array, system: str) -> Cells:
    """Numbers in the unit that the book shows; NaN is an empty cell."""
    shown = converted(values, cell.unit, displayed(cell.unit, system))
    texts = np.where(np.isnan(shown), "", shown.astype(str))
    return Cells(shown, texts.astype(object))


def word_cells(values: Any) -> Cells:
    """Words as they stand."""
    texts = np.asarray(values, dtype=object)
    return Cells(np.full(texts.shape, np.nan), texts)


def values_of(farms: Sequence[Farm], system: str) -> Values:
    """What the engine makes of farms with equally many rows, as draws of one run."""
    sizes = sorted(axis_sizes(farms[0].names, farms[0].months).items(), key=lambda each: each[0].order)
    return engine(system, tuple(sizes)).run(cells_of(farms, system))


def results(farms: Sequence[Farm], system: str) -> dict[str, Array]:
    """Every line compared, of farms with equally many rows, back in the units declared."""
    return in_declared_units(values_of(farms, system), system, compared_lines())


def in_declared_units(values: Mapping[Line, Array], system: str, lines: Sequence[Line]) -> dict[str, Array]:
    """Some lines, by their names, in the units that they declare.

    Words are given as their place among a line's sentences, or among the lines that are ranked.
    """
    found: dict[str, Array] = {}
    for line in lines:
        expr = behind(line)
        if isinstance(expr, Choose):
            said = np.asarray(values[line], dtype=object)
            places = [1.0 + expr.sentences.index(str(each)) for each in said.ravel()]
            found[line.name] = np.asarray(places).reshape(said.shape)
        elif isinstance(expr, Nth) and line.is_text:
            found[line.name] = np.asarray(list(_places(expr, line, values)))
        else:
            found[line.name] = in_metric(values[line], str(line.unit)) if system == "us" else values[line]
    return found


def _places(told: Nth, line: Line, values: Mapping[Line, Array]) -> Iterator[float]:
    """For each draw the place, from 1, of the line whose label or words are given; 0 for the words said otherwise."""
    for draw, said in enumerate(values[line]):
        words = [each.called if told.labels else str(values[each].flat[draw]) for each in told.shown]
        yield float([told.otherwise, *words].index(str(said)))


def behind(line: Line) -> Expr:
    """What a line is worked out from; of one that only repeats another, what that one is."""
    return behind(line.expr) if isinstance(line.expr, Line) else line.expr


@cache
def alternative_lines() -> tuple[Line, ...]:
    """Worked lines of the farm run in other ways: what each way declares itself, and every line made again for it.

    The twin of one is the whole twin run once more on inputs edited, which every other test here could not bear. So these are
    left out of all others, and `test_choices.py` holds each of them to the twin on farms made for it.
    """
    ways = [section for section in whole_farm().sections if isinstance(section, Alternative)]
    lines = (line for way in ways for line in way.lines if line.kind in COMPARED)
    return tuple(line for line in lines if not isinstance(line.expr, Sentence))


@cache
def compared_lines() -> tuple[Line, ...]:
    """Every worked line and check of the farm but sentences and names, from which nothing is worked out, the section `report`,
    and the farm run in other ways."""
    apart = set(alternative_lines())
    lines = (line for line in whole_farm().lines if line.kind in COMPARED and line not in apart)
    told = (line for line in lines if not (isinstance(line.expr, Sentence | Label) or is_a_name(line)))
    return tuple(line for line in told if not line.name.startswith("report"))


def is_a_name(line: Line) -> bool:
    """Whether a line shows names out of a list, by their place there."""
    return isinstance(line.expr, At) and line.is_text


@dataclass(frozen=True)
class Difference:
    """A line on which two workings-out of a farm differ by more than rounding."""

    farm: int
    line: str
    twin: Any
    model: Any


@cache
def least_room() -> Mapping[str, float]:
    """By how much two workings-out of a line may differ where it comes to hardly anything: a sum of money of a year may be the
    difference of two that are ten million times a cent, and carries their last digits; so is what is left of all weeks, and
    what a month leaves of all that came before."""
    return {line.name: room_of(line) for line in (*compared_lines(), *alternative_lines())}


def room_of(line: Line) -> float:
    """For one line."""
    if line.name.endswith((".cents", "loan_years.interest")):
        return 1e-5
    if line.name.startswith(("cold_room.", "bags_value.", "year_balance.", "year_statements.")) or (
        line.name.startswith("month_") and line.unit == unit("money")
    ):
        return 1e-6
    return 1e-7 if line.unit == unit("money/year") else 1e-9


def differences(ours: Sequence[Mapping[str, Array]], theirs: Mapping[str, Array]) -> list[Difference]:
    """Where the twin's farms, one by one, and the model's draws differ, on the lines that have a twin."""
    found = []
    for name, value in theirs.items():
        if name not in ours[0]:
            continue
        own = np.stack([each[name] for each in ours])
        model = np.broadcast_to(value, (len(ours), *value.shape[1:]))
        room = 1e-9 * np.maximum(np.abs(own), np.abs(model)) + least_room()[name]
        within = (np.abs(own - model) <= room).reshape(len(ours), -1).all(axis=1)
        outside = np.flatnonzero(~within).tolist()
        found += [Difference(farm, name, own[farm].tolist(), model[farm].tolist()) for farm in outside]
    return found
