"""The emitter: expressions become Python code that reads a list of slots."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Literal

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.texts import fold
from farmbook.expr.walk import axes_of

__all__ = ["Axes", "Emitter", "Reading", "Slots"]

Axes = tuple[Axis, ...]

Reading = Literal["numbers", "texts", "folded"]
"""What is read of a cell: its number, its text, or its text as it is compared."""


Rules = Mapping[type[n.Expr], Callable[..., str]]
"""How each node is written."""


class Slots:
    """Where each value stands in the list that a run fills. Slot 0 holds the number of draws."""

    def __init__(self, graph: Graph) -> None:
        self.count = 1
        self.lines = {line: self._new() for line in graph.roots}
        self.openings = {
            line: self._new() for line, root in graph.roots.items() if isinstance(root, (n.Starting, n.Running))
        }
        self.inputs: dict[tuple[n.RawInput, Reading], int] = {}

    def input(self, cell: n.RawInput, reading: Reading) -> int:
        """The slot of what is read of a cell."""
        if (cell, reading) not in self.inputs:
            self.inputs[cell, reading] = self._new()
        return self.inputs[cell, reading]

    def _new(self) -> int:
        self.count += 1
        return self.count - 1


class Emitter:
    """What the rules of the nodes ask for.

    `arrays` and `singles` have a rule for each node. With `singles` it is for one scenario: what varies along no axis is then
    a plain float or text, also each step of a loop. `step` holds, inside a loop, the axis that is being stepped, `looped` the
    lines of the loop.
    """

    def __init__(self, slots: Slots, system: str, arrays: Rules, singles: Rules | None) -> None:
        self.slots, self.system, self.arrays, self.singles = slots, system, arrays, singles
        self.step: Axis | None = None
        self.looped: frozenset[n.Line] = frozenset()
        self.hoisted: dict[str, str] = {}
        self._axes: dict[n.Expr, Axes] = {}

    def emit(self, expr: n.Expr, axes: Axes) -> str:
        """Code for an expression whose array has exactly these axes, or fewer where it does not vary."""
        if self.singles is not None and not self.inner(expr):
            return self.singles[type(expr)](self, expr)
        return self.arrays[type(expr)](self, expr, axes)

    def inner(self, expr: n.Expr) -> Axes:
        """The axes of an expression, without the one that is being stepped."""
        return tuple(axis for axis in axes_of(expr, self._axes) if axis != self.step)

    def plain(self, axes: Axes) -> bool:
        """Whether a value with these axes is a plain float or text."""
        return self.singles is not None and not axes

    def value(self, line: n.Line) -> str:
        """A line's value: its slot, or inside a loop of which it is part the rows filled so far."""
        return f"c{self.slots.lines[line]}" if line in self.looped else f"v[{self.slots.lines[line]}]"

    def opening(self, line: n.Line) -> str:
        """A line's value before its first step."""
        if line not in self.slots.openings:
            raise ModelFault(f"`{line.name}` has no opening value, so it has no previous value", where=line.where)
        return f"v[{self.slots.openings[line]}]"

    def earlier(self, line: n.Line) -> str:
        """The value one step earlier of a line that is part of the loop."""
        row = f"{self.value(line)}[t - 1]" if self.stepped_plainly(line) else f"{self.value(line)}[..., t - 1]"
        return f"({row} if t else {self.opening(line)})"

    def stepped_plainly(self, line: n.Line) -> bool:
        """Whether a line of the loop is one value a step, kept in a list."""
        return self.singles is not None and len(line.axes) == 1

    def numbers(self, cell: n.RawInput) -> str:
        """The number in a cell."""
        return f"v[{self.slots.input(cell, 'numbers')}]"

    def texts(self, cell: n.RawInput) -> str:
        """The text in a cell."""
        return f"v[{self.slots.input(cell, 'texts')}]"

    def folded(self, cell: n.RawInput) -> str:
        """The text in a cell as it is compared."""
        return f"v[{self.slots.input(cell, 'folded')}]"

    def compared(self, source: n.RawInput | n.Line, wanted: str | float) -> str:
        """What is held against a folded word, or a number: a cell's or line's text as it is compared, or its number."""
        if isinstance(source, n.RawInput):
            return self.folded(source)
        if isinstance(wanted, float) or _need_no_folding(source.expr, wanted):
            return self.value(source)
        return f"{'fold' if self.plain(source.axes) else 'fold_all'}({self.value(source)})"

    def held(self, code: str) -> str:
        """Code that does not change from step to step: inside a loop it is worked out once, before it."""
        return self.hoisted.setdefault(code, f"h{len(self.hoisted)}") if self.step is not None else code

    def one(self, code: str, own: Axes, *, looped: bool = False) -> str:
        """A single value of one scenario: a plain one, or the step's member of a row."""
        if not own:
            return code
        return f"{code}[t]" if looped else f"{self.held(f'{code}[0].tolist()')}[t]"

    def leaf(self, code: str, own: Axes, axes: Axes) -> str:
        """What is kept in a slot, of its own axes: at the step of the loop, and laid among other axes."""
        if self.plain(own):
            return code
        if self.step is not None and self.step in own:
            if own[-1] != self.step:
                raise ModelFault("the axis that is stepped must be the last of a line's axes")
            code, own = f"{code}[..., t]", tuple(axis for axis in own if axis != self.step)
        return self.spread(code, own, axes)

    def spread(self, code: str, own: Axes, axes: Axes) -> str:
        """An array of some axes indexed so that it lies right among others."""
        if self.plain(own):
            return f"{code}.item()"
        if own == axes or not axes:
            return code
        marks = ", ".join(":" if axis in own else "None" for axis in axes)
        return f"{code}[:, {marks}]"


def _need_no_folding(expr: n.Expr, wanted: str) -> bool:
    """Whether what a line may say is this folded word as it stands, or is another word even when folded."""
    return isinstance(expr, n.Choose) and all(
        (fold(said) == wanted) == (said == wanted) for said in expr.sentences if isinstance(said, str)
    )
