"""Working out a few sections of the model on values given in a test, with no scenario file and no workbook."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Any

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import RawInput
from farmbook.expr.sentences import Sentence
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Array, Cells, Engine
from farmbook.model.farm import SECTIONS
from farmbook.sections.declare import Input, LineOf, NumberInput, Option, TextInput, Uses
from farmbook.sections.model import Model
from farmbook.sections.section import Bound, Section
from farmbook.units import Unit, displayed, ice_point_shift, unit

__all__ = ["converted", "evaluate", "in_metric", "systems_agree", "with_used"]

Given = Mapping[Input, Any]
Names = Mapping[Axis, Sequence[str]]


def evaluate(
    sections: Sequence[type[Section]], system: str, given: Given, names: Names | None = None
) -> dict[str, Array]:
    """Every line of these sections by its dotted name, in the display units of `system` ("metric" or "us").

    `given` maps a declaration (`Bag.wet_fill`) to its value in the declared metric unit: a number, a word, an option, a list or a
    table in the order of the axes; None is a cleared cell. What is not given takes its default. `names` lists the
    members of each named axis; "" is a spare row. Raises KeyError for a required number, or an axis, that is missing.
    """
    key = _key(sections)
    model, fixed = _wired(key)
    sizes = {**fixed, **{axis: len((names or {})[axis]) for axis in model.axes}}
    filling = _Filling(system, given, names or {}, sizes)
    for declared, bound in model.inputs.items():
        filling.fill(declared, bound)
    engine = _compiled(key, system, tuple(sizes.items()))
    return {line.name: value[0, ...] for line, value in engine.run(filling.cells).items()}


Key = tuple[tuple[type[Section], ...], tuple[Any, ...]]


def with_used(*wanted: type[Section]) -> tuple[type[Section], ...]:
    """These sections and all that they use, in the reading order of the farm."""
    needed: set[type[Section]] = set()
    waiting = list(wanted)
    while waiting:
        section = waiting.pop()
        needed.add(section)
        used = [declared.section for declared in section.declared if isinstance(declared, Uses)]
        waiting += [each for each in used if each not in needed]
    return tuple(section for section in SECTIONS if section in needed)


def _key(sections: Sequence[type[Section]]) -> Key:
    """The sections and their methods as they stand, so that a test that breaks a formula gets a model of its own."""
    methods = [one.method for section in sections for one in section.declared if isinstance(one, LineOf)]
    return tuple(sections), tuple(methods)


@cache
def _wired(key: Key) -> tuple[Model, dict[Axis, int]]:
    """The sections' model, and the sizes of its fixed axes."""
    model = Model(key[0])
    return model, {axis: len(axis.members) for line in model.lines for axis in line.axes if not axis.named}


@cache
def _lowered(key: Key, system: str) -> Graph:
    return Graph({line: lower(line, system) for line in _wired(key)[0].lines})


@cache
def _compiled(key: Key, system: str, sizes: tuple[tuple[Axis, int], ...]) -> Engine:
    return Engine(_lowered(key, system), dict(sizes), system)


def converted(value: Any, of: Unit, to: Unit) -> Array:
    """Numbers of one unit in another of the same kind, temperatures on a scale too."""
    numbers = np.asarray(value, dtype=float)
    if of == to:
        return numbers
    before, after = (float(ice_point_shift(scale)) if scale.point else 0.0 for scale in (of, to))
    return (numbers - before) * float(of.size / to.size) + after


def in_metric(value: Any, metric: str) -> Array:
    """What a US customary result is in the metric unit that its line declares."""
    return converted(value, displayed(unit(metric), "us"), unit(metric))


def systems_agree(sections: Sequence[type[Section]], given: Given, names: Names | None = None) -> list[str]:
    """The names of the lines whose US result, brought back to metric, is not the metric one. Sentences say units, and differ."""
    metric, us = (evaluate(sections, system, given, names) for system in ("metric", "us"))
    different: list[str] = []
    for line in _wired(_key(sections))[0].lines:
        if isinstance(line.expr, Sentence):
            continue
        left, right = metric[line.name], us[line.name]
        if left.dtype.kind == "f":
            same = np.allclose(in_metric(right, str(line.unit)), left, rtol=1e-9, atol=1e-12)
        else:
            same = bool(np.all(left == right))
        if not same:
            different.append(line.name)
    return different


@dataclass
class _Filling:
    """Puts values, defaults, limits and basis words into the cells of inputs."""

    system: str
    given: Given
    names: Names
    sizes: Mapping[Axis, int]
    cells: dict[RawInput, Cells] = field(default_factory=dict)

    def fill(self, declared: Input, bound: Bound) -> None:
        if isinstance(declared, NumberInput):
            self._fill_number(declared, bound)
        elif isinstance(declared, TextInput):
            default = self.names[declared.axes[0]] if declared.names else declared.default
            value = self.given.get(declared, default)
            self._words(bound.cell, value.label if isinstance(value, Option) else value)
        if bound.basis is not None:
            self._words(bound.basis, "assumed")

    def _fill_number(self, declared: NumberInput, bound: Bound) -> None:
        assert bound.low is not None
        assert bound.high is not None
        value = self.given.get(declared, declared.default)
        if value is None and declared not in self.given and not declared.optional:
            raise KeyError(f"{declared.dotted} has no default and is not given")
        self._numbers(bound.cell, value)
        self._numbers(bound.low, declared.usual[0])
        self._numbers(bound.high, declared.usual[1])

    def _shape(self, cell: RawInput) -> tuple[int, ...]:
        return tuple(self.sizes[axis] for axis in ordered_axes(cell.axes))

    def _numbers(self, cell: RawInput, value: Any) -> None:
        numbers = converted(np.asarray(value, dtype=float), cell.unit, displayed(cell.unit, self.system))
        numbers = np.broadcast_to(numbers, self._shape(cell))
        texts = np.where(np.isnan(numbers), "", numbers.astype(str)).astype(object)
        self.cells[cell] = Cells(numbers[None], np.asarray(texts, dtype=object)[None])

    def _words(self, cell: RawInput, value: Any) -> None:
        texts = np.broadcast_to(np.asarray(value, dtype=object), self._shape(cell))
        self.cells[cell] = Cells(np.full((1, *texts.shape), np.nan), texts[None])
