"""What matters most: every figure that is not measured or quoted swung over its usual range, by what it does to a year's profit."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Cells
from farmbook.layout.swings import LeftOut, Swing, Swings
from farmbook.model.year.year import Year
from farmbook.results import Computed
from farmbook.sections.declare import NumberInput
from farmbook.sections.section import Bound

__all__ = ["swings"]

OWN: Final = ("measured", "quoted")
"""How a figure is known that need not be measured any more."""
HALF: Final = 0.5
"""A usual range of a list is that of any row, a licence and a rent alike: a row is taken to its half and its double at most."""
LEAST: Final = 0.5
"""Of a unit of money, a year; what swings the profit by less moves it by nothing."""


def swings(computed: Computed) -> Swings:
    """Each figure that is left to measure taken to the low and the high end of its usual range, all else as it is.

    What swings a year's profit most stands first; of two alike, to the cent, the one that is asked for first.
    """
    work = _Swinging(computed)
    found = [work.swung(one) for one in work.figures()]
    why = Counter(each for each in found if isinstance(each, LeftOut))
    rows = sorted((each for each in found if isinstance(each, Swing)), key=lambda each: -round(each.size, 2))
    now = float(computed.values[work.profit].reshape(-1)[0])
    return Swings(work.profit, tuple(rows), {each: why[each] for each in LeftOut}, now)


@dataclass(frozen=True)
class _Figure:
    """One cell of a number input, in a row that is in use."""

    declared: NumberInput
    bound: Bound
    index: tuple[int, ...]


@dataclass(frozen=True)
class _Swinging:
    computed: Computed

    @cached_property
    def profit(self) -> Line:
        return self.computed.model.line(Year.profit)

    @cached_property
    def now(self) -> float:
        return float(self.computed.values[self.profit][0])

    @cached_property
    def sound(self) -> tuple[Line, ...]:
        """The error checks that hold in the farm as it is."""
        checks = (check for check in self.computed.model.checks if check.kind == "error")
        return tuple(check for check in checks if self.computed.values[check][0] == 1)

    def figures(self) -> Iterator[_Figure]:
        """Every cell of every number input, in the order in which they are asked for; spare rows are passed over."""
        for declared, bound in self.computed.model.inputs.items():
            if isinstance(declared, NumberInput):
                members = (self.computed.members(axis) for axis in ordered_axes(bound.cell.axes))
                for index in itertools.product(*(range(len(each)) for each in members)):
                    yield _Figure(declared, bound, index)

    def swung(self, one: _Figure) -> Swing | LeftOut:
        """A figure with what it does at both ends, or why it is left out."""
        value = float(self.computed.scenario.cells[one.bound.cell].numbers[(0, *one.index)])
        basis = self._text(one.bound.basis, one.index)
        if fold(basis) in OWN:
            return LeftOut.OWN
        if math.isnan(value):
            return LeftOut.BLANK
        if one.declared.decided:
            return LeftOut.DECIDED
        low, high = self._ends(one, value)
        at_low, at_high = (self._change(one, end) for end in (low, high))
        found = Swing(one.bound, self._name(one), self._members(one), value, low, high, at_low, at_high, basis)
        if found.size < LEAST:
            return LeftOut.STILL
        return found if self._stands(one, low) and self._stands(one, high) else LeftOut.BOUND

    def _ends(self, one: _Figure, value: float) -> tuple[float, float]:
        """The usual range; of a row of a list, for whose rows it is the same, no further than half and double."""
        low, high = (float(self._cells(limit).numbers[0]) for limit in (one.bound.low, one.bound.high))
        nearer = max(low, value * HALF), min(high, value / HALF)
        listed = any(axis.named for axis in one.bound.cell.axes)
        return nearer if listed and nearer[0] < nearer[1] else (low, high)

    def _change(self, one: _Figure, value: float) -> float:
        """How much more or less the profit is with this value."""
        return float(self.computed.what_if(self._with(one, value), [self.profit])[self.profit][0]) - self.now

    def _stands(self, one: _Figure, value: float) -> bool:
        """Whether the error checks that hold as it is hold with this value too."""
        after = self.computed.what_if(self._with(one, value), self.sound)
        return all(after[check][0] == 1 for check in self.sound)

    def _with(self, one: _Figure, value: float) -> dict[RawInput, Cells]:
        """The cells of an input with another value in one of them."""
        before = self._cells(one.bound.cell)
        numbers = before.numbers.copy()
        numbers[(0, *one.index)] = value
        return {one.bound.cell: Cells(numbers, before.texts)}

    def _cells(self, cell: RawInput | None) -> Cells:
        assert cell is not None
        return self.computed.scenario.cells[cell]

    def _text(self, cell: RawInput | None, index: tuple[int, ...]) -> str:
        return str(self._cells(cell).texts[(0, *index)])

    def _members(self, one: _Figure) -> dict[str, str]:
        """The keys of the members whose figure it is, by list."""
        axes = ordered_axes(one.bound.cell.axes)
        return {axis.name: self.computed.members(axis)[place] for axis, place in zip(axes, one.index, strict=True)}

    def _name(self, one: _Figure) -> str:
        """Its label, and of a figure of a list the name of whose it is."""
        axes = ordered_axes(one.bound.cell.axes)
        names = [self._called(axis, place) for axis, place in zip(axes, one.index, strict=True)]
        return ": ".join(filter(None, [one.declared.label, ", ".join(names)]))

    def _called(self, axis: Axis, place: int) -> str:
        """A member as the book calls it."""
        if axis.named:
            return self._text(self.computed.model.axes[axis].names, (place,))
        return axis.called(place).replace("_", " ").capitalize()
