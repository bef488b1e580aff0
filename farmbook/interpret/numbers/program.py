"""A program: each step of a graph becomes one Python function that reads and fills a list of slots."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph, Step
from farmbook.expr.sentences import Either, Figure, Sentence
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers.array_rules import ARRAY_RULES
from farmbook.interpret.numbers.emitter import Axes, Emitter, Slots
from farmbook.interpret.numbers.helpers import FOR_ARRAYS, FOR_SINGLES
from farmbook.interpret.numbers.single_rules import SINGLE_RULES
from farmbook.interpret.numbers.values import fold_all

__all__ = ["Program"]


class Program:
    """A graph compiled for axes of these sizes: one function a step of its order, for one scenario or for many draws."""

    def __init__(self, graph: Graph, sizes: Mapping[Axis, int], system: str, *, single: bool) -> None:
        self.slots, self.single = Slots(graph), single
        writer = _StepWriter(graph, sizes, Emitter(self.slots, system, ARRAY_RULES, SINGLE_RULES if single else None))
        text = "\n".join(row for number, step in enumerate(graph.order) for row in writer.function(number, step))
        names: dict[str, Any] = {**FOR_ARRAYS, **FOR_SINGLES, "fold": fold, "fold_all": fold_all}
        exec(compile(text, "<lines>", "exec"), names)  # noqa: S102 - our own text, made of the model alone
        self.functions: list[Callable[[list[Any]], None]] = [names[f"f{number}"] for number in range(len(graph.order))]


class _StepWriter:
    def __init__(self, graph: Graph, sizes: Mapping[Axis, int], emitter: Emitter) -> None:
        self.graph, self.sizes, self.e = graph, sizes, emitter

    def function(self, number: int, step: Step) -> list[str]:
        """The rows of a step's function."""
        rows = self._loop(step.lines, step.axis) if step.axis is not None else self._line(step.lines[0])
        return [f"def f{number}(v):  # {step.lines[0].name}", *(f"    {row}" for row in rows)]

    def _line(self, line: n.Line) -> list[str]:
        root, axes, name = self.graph.roots[line], ordered_axes(line.axes), self.e.value(line)
        if isinstance(root, n.Starting):
            opening = f"{self.e.opening(line)} = {self._full(root.opening, axes[:-1])}"
            return [opening, f"{name} = {self._full(root.step, axes)}"]
        if isinstance(root, Sentence):
            return [f"{name} = {self._sentence(root)}"]
        if isinstance(root, n.Shown):
            return [f"{name} = {self._shown(root, axes)}"]
        if isinstance(root, n.Running):
            how = "cumsum" if root.sign == "+" else "cumprod"
            whole = f"{name} = np.{how}({self._full(root.expr, axes)}, axis={1 + axes.index(root.axis)})"
            return [f"{self.e.opening(line)} = {self._running_opening(line, root)}", whole]
        return [f"{name} = {self._full(root, axes)}"]

    def _sentence(self, root: Sentence) -> str:
        """The parts joined; where there are many draws, for each of them."""
        parts = [repr(part) if isinstance(part, str) else self._part(part) for part in root.parts]
        return " + ".join(parts) if self.e.plain(()) else f"in_each(v[0], {', '.join(parts)})"

    def _part(self, part: n.Expr) -> str:
        many = "" if self.e.plain(()) else "_each"
        if isinstance(part, Either):
            condition = self.e.emit(part.condition, ())
            words = f"{part.yes!r} if {condition} else {part.no!r}"
            return f"({words})" if not many else f"pick(({part.no!r}, {part.yes!r}), ({condition} != 0) + 1)"
        if isinstance(part, Figure):
            how = (part.digits, part.sign, part.percent, part.after, part.none)
            return f"figure{many}({self.e.emit(part.value, ())}, {', '.join(map(repr, how))})"
        return self.e.emit(part, ())

    def _shown(self, root: n.Shown, axes: Axes) -> str:
        value, when = self._full(root.value, axes), self._full(root.when, axes)
        if self.e.plain(axes):
            return f"{value} if {when} else {root.words!r}"
        return f"shown({value}, {when}, {root.words!r})"

    def _loop(self, lines: tuple[n.Line, ...], axis: Axis) -> list[str]:
        first = [f"{self.e.opening(line)} = {self._opening(line)}" for line in lines if line in self.e.slots.openings]
        self.e.step, self.e.looped, self.e.hoisted = axis, frozenset(lines), {}
        body = [f"    {self._row(line)} = {self._stepped(line)}" for line in lines]
        empty = [f"{self.e.value(line)} = {self._empty(line)}" for line in lines]
        held = [f"{name} = {code}" for code, name in self.e.hoisted.items()]
        last = [f"v[{self.e.slots.lines[line]}] = {self._filled(line)}" for line in lines]
        self.e.step, self.e.looped = None, frozenset()
        return [*first, *held, *empty, f"for t in range({self.sizes[axis]}):", *body, *last]

    def _row(self, line: n.Line) -> str:
        return f"{self.e.value(line)}[{'t' if self.e.stepped_plainly(line) else '..., t'}]"

    def _empty(self, line: n.Line) -> str:
        if self.e.stepped_plainly(line):
            return f"[0.0] * {self.sizes[line.axes[0]]}"
        return f"np.empty((v[0]{self._shape(ordered_axes(line.axes))}))"

    def _filled(self, line: n.Line) -> str:
        return f"np.array([{self.e.value(line)}])" if self.e.stepped_plainly(line) else self.e.value(line)

    def _stepped(self, line: n.Line) -> str:
        root = self.graph.roots[line]
        rest = tuple(axis for axis in ordered_axes(line.axes) if axis != self.e.step)
        if isinstance(root, n.Running):
            return f"{self.e.earlier(line)} {root.sign} ({self.e.emit(root.expr, rest)})"
        return self.e.emit(root.step if isinstance(root, n.Starting) else root, rest)

    def _opening(self, line: n.Line) -> str:
        root = self.graph.roots[line]
        if isinstance(root, n.Starting):
            return self._full(root.opening, ordered_axes(line.axes)[:-1])
        assert isinstance(root, n.Running)
        return self._running_opening(line, root)

    def _running_opening(self, line: n.Line, root: n.Running) -> str:
        rest = tuple(axis for axis in ordered_axes(line.axes) if axis != root.axis)
        nothing = "0.0" if root.sign == "+" else "1.0"
        return nothing if self.e.plain(rest) else f"np.full((1{self._shape(rest)},), {nothing})"

    def _full(self, expr: n.Expr, axes: Axes) -> str:
        """An expression spread over all of a line's axes."""
        code = self.e.emit(expr, axes)
        if self.e.plain(axes):
            return code
        if not axes:
            return f"np.atleast_1d({code})"
        return code if set(self.e.inner(expr)) == set(axes) else f"({code}) + np.zeros((1{self._shape(axes)}))"

    def _shape(self, axes: Axes) -> str:
        return "".join(f", {self.sizes[axis]}" for axis in axes)
