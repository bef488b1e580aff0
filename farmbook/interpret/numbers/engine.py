"""The engine: a graph compiled once, run for one scenario, for a change of it, or for many draws at once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from typing import Any

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.texts import fold
from farmbook.interpret.numbers.emitter import Reading
from farmbook.interpret.numbers.program import Program
from farmbook.interpret.numbers.values import Array, Cells, Values, fold_all

__all__ = ["Engine"]


class Engine:
    """All lines of a graph for axes of these sizes; compiled when first run, for one scenario and for many apart."""

    def __init__(self, graph: Graph, sizes: Mapping[Axis, int], system: str) -> None:
        self.graph, self._sizes, self._system = graph, sizes, system

    def run(self, cells: Mapping[RawInput, Cells]) -> Values:
        """Every line's value. Raises ValueError for cells of different numbers of draws."""
        draws = _draws(cells)
        program = self._for_one if draws == 1 else self._for_many
        return _run(program, _loaded(program, cells, draws), range(len(program.functions)))

    def what_if(
        self, before: Values, changes: Mapping[RawInput, Cells], wanted: Iterable[Line] | None = None
    ) -> Values:
        """One scenario's values with some cells changed: only what the change reaches is worked out again, and of that only
        what the `wanted` lines need; other lines keep the value they had."""
        program = self._for_one
        slots = list(before.slots)
        _changed(program, slots, changes)
        return _run(program, slots, self.graph.between(changes, wanted))

    def run_in_chunks(
        self, cells: Mapping[RawInput, Cells], wanted: Sequence[Line], *, most: int = 200
    ) -> dict[Line, Array]:
        """The wanted lines' values, shape (draws, *axes): nothing else is worked out that they do not need, and at most so
        many draws at a time (rule 13)."""
        program, count = self._for_many, _draws(cells)
        steps = sorted({self.graph.place[line] for line in self.graph.before(wanted)})
        parts: list[list[Array]] = []
        for first in range(0, count, most):
            several = range(first, min(first + most, count))
            part = {source: _of_draws(each, several) for source, each in cells.items()}
            found = _run(program, _loaded(program, part, len(several)), steps)
            parts.append([np.broadcast_to(found[line], (len(several), *found[line].shape[1:])) for line in wanted])
        return {line: np.concatenate(chunks) for line, chunks in zip(wanted, zip(*parts, strict=True), strict=True)}

    @cached_property
    def _for_one(self) -> Program:
        return Program(self.graph, self._sizes, self._system, single=True)

    @cached_property
    def _for_many(self) -> Program:
        return Program(self.graph, self._sizes, self._system, single=False)


def _run(program: Program, slots: list[Any], steps: Iterable[int]) -> Values:
    functions = program.functions
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        for number in steps:
            functions[number](slots)
    return Values(slots, program.slots.lines, program.slots.openings)


def _loaded(program: Program, cells: Mapping[RawInput, Cells], draws: int) -> list[Any]:
    slots: list[Any] = [None] * program.slots.count
    slots[0] = draws
    for (cell, reading), place in program.slots.inputs.items():
        slots[place] = _read(cells[cell], reading, plain=program.single and not cell.axes)
    return slots


def _changed(program: Program, slots: list[Any], cells: Mapping[RawInput, Cells]) -> None:
    """Put other cells into their slots."""
    readings: tuple[Reading, ...] = ("numbers", "texts", "folded")
    for cell, found in cells.items():
        for reading in readings:
            place = program.slots.inputs.get((cell, reading))
            if place is not None:
                slots[place] = _read(found, reading, plain=program.single and not cell.axes)


def _read(cells: Cells, reading: Reading, *, plain: bool) -> float | str | Array:
    if reading == "numbers":
        return float(cells.numbers[0]) if plain else cells.numbers
    if plain:
        text = str(cells.texts[0])
        return text if reading == "texts" else fold(text)
    return cells.texts if reading == "texts" else fold_all(cells.texts)


def _draws(cells: Mapping[RawInput, Cells]) -> int:
    counts = {len(array) for each in cells.values() for array in (each.numbers, each.texts)} - {1}
    if len(counts) > 1:
        raise ValueError(f"inputs for different numbers of draws: {sorted(counts)}")
    return counts.pop() if counts else 1


def _of_draws(cells: Cells, several: range) -> Cells:
    """The cells of some draws; those that are the same in every draw stay as they are."""
    numbers, texts = (
        array if array.shape[0] == 1 else array[several.start : several.stop] for array in (cells.numbers, cells.texts)
    )
    return Cells(numbers, texts)
