"""The graph of lines: who needs whom, and the order in which lines can be worked out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import At, Before, Expr, Extreme, Line, Nth, Previous, RawInput, Shown, Total, children
from farmbook.expr.sentences import Sentence
from farmbook.expr.walk import ordered_axes, walk

__all__ = ["Graph", "Source", "Step", "closure", "sources_of"]

Source = Line | RawInput
"""What an expression reads: another line, or a cell that a person fills in."""


def sources_of(expr: Expr, *, earlier: bool = True) -> list[Source]:
    """Lines and cells an expression reads, each once, in reading order.

    Without `earlier` what it reads of a step before this one is left out.
    """
    found: dict[Source, None] = {}
    waiting = [expr]
    while waiting:
        node = waiting.pop()
        if isinstance(node, (Line, RawInput)):
            found[node] = None
        elif earlier or not isinstance(node, Previous):
            waiting += reversed(children(node))
    return list(found)


@dataclass(frozen=True)
class Step:
    """Lines worked out together: one line, or a cycle through time that is stepped along `axis`."""

    lines: tuple[Line, ...]
    axis: Axis | None = None


class Graph:
    """Lines with their expressions, and who needs whom among them.

    `roots` gives each line's expression: as declared, or lowered for a book in one unit system. Raises ModelFault, naming
    both lines, where one that is no sentence reads a line that may hold words in place of a number.
    """

    def __init__(self, roots: Mapping[Line, Expr]) -> None:
        self.roots = dict(roots)
        self._sources = {line: sources_of(expr) for line, expr in self.roots.items()}
        self._between: dict[tuple[frozenset[Source], frozenset[Line] | None], tuple[int, ...]] = {}
        self._before: dict[frozenset[Line], set[Line]] = {}
        for line, sources in self._sources.items():
            for source in sources:
                if isinstance(source, Line) and _holds_words(self.roots.get(source), self.roots[line]):
                    raise _words_fault(line, source)

    @cached_property
    def needed_by(self) -> Mapping[Source, Sequence[Line]]:
        """For each line and cell the lines that read it."""
        found: dict[Source, list[Line]] = {}
        for line, sources in self._sources.items():
            for source in sources:
                found.setdefault(source, []).append(line)
        return found

    @cached_property
    def order(self) -> tuple[Step, ...]:
        """Steps in an order in which each line finds what it needs.

        Raises ModelFault, naming the lines, for a cycle within one step and for one not through `previous` alone.
        """
        return tuple(self._step(group) for group in _components({line: self._needs[line] for line in self.roots}))

    @cached_property
    def place(self) -> Mapping[Line, int]:
        """The number in `order` of the step that works a line out."""
        return {line: number for number, step in enumerate(self.order) for line in step.lines}

    def needs(self, line: Line) -> list[Line]:
        """The lines of the graph that a line reads."""
        return self._needs[line]

    def cells(self, line: Line) -> list[RawInput]:
        """The cells that a line reads by itself."""
        return [source for source in self._sources[line] if isinstance(source, RawInput)]

    def reached(self, changed: Iterable[Source]) -> set[Line]:
        """Every line that a change of these lines or cells reaches; the lines themselves only where they reach back."""
        return closure(changed, self.needed_by)

    def before(self, wanted: Iterable[Line]) -> set[Line]:
        """These lines and every line that they are worked out from."""
        wanted = set(wanted)
        return wanted | closure(wanted, self._needs)

    def between(self, changed: Iterable[Source], wanted: Iterable[Line] | None = None) -> tuple[int, ...]:
        """Numbers in `order` of the steps to be worked out again after a change: all that it reaches, or of those the ones
        that `wanted` lines need. Remembered, as what is asked once is asked again with other numbers."""
        asked = frozenset(changed), None if wanted is None else frozenset(wanted)
        if asked not in self._between:
            hit = self.reached(asked[0])
            if asked[1] is not None:
                hit &= self._needed_for(asked[1])
            self._between[asked] = tuple(sorted({self.place[line] for line in hit}))
        return self._between[asked]

    def _needed_for(self, wanted: frozenset[Line]) -> set[Line]:
        """What these lines are worked out from, remembered: one answer is asked after many changes."""
        if wanted not in self._before:
            self._before[wanted] = self.before(wanted)
        return self._before[wanted]

    @cached_property
    def _needs(self) -> dict[Source, list[Line]]:
        return {
            line: [source for source in sources if isinstance(source, Line) and source in self.roots]
            for line, sources in self._sources.items()
        }

    def _step(self, group: list[Line]) -> Step:
        looped = len(group) > 1 or group[0] in self._needs[group[0]]
        return self._cycle(group) if looped else Step((group[0],))

    def _cycle(self, group: list[Line]) -> Step:
        """A cycle through time, its lines in an order that works within one step (rule 5)."""
        inside = set(group)
        axis = _stepped_axis(group, inside, [node for line in group for node in walk(self.roots[line])])
        now = {line: inside.intersection(sources_of(self.roots[line], earlier=False)) for line in group}
        done: list[Line] = []
        waiting = group
        while waiting:
            ready = [line for line in waiting if now[line].issubset(done)]
            if not ready:
                raise _cycle_fault(waiting, "the lines need each other within one step")
            done += ready
            waiting = [line for line in waiting if line not in ready]
        return Step(tuple(done), axis)


def _stepped_axis(group: list[Line], inside: set[Line], nodes: list[Expr]) -> Axis:
    """The axis along which a cycle is stepped; raises ModelFault where it cannot be."""
    axes = {node.axis for node in nodes if isinstance(node, Previous) and node.line in inside}
    if any(isinstance(node, At) and node.line in inside for node in nodes):
        raise _cycle_fault(group, "a value at another step stands inside a cycle; only `previous` may")
    if any(isinstance(node, Nth) and inside.intersection(node.keys + node.shown) for node in nodes):
        raise _cycle_fault(group, "steps are ranked inside a cycle; make it a line outside")
    if not axes:
        raise _cycle_fault(group, "the lines need each other within one step")
    if any(ordered_axes(line.axes)[-1:] != tuple(axes) for line in group):
        raise _cycle_fault(group, "every line of a cycle must be stepped along the same list")
    if any(isinstance(node, (Total, Before, Extreme)) and node.axis in axes for node in nodes):
        raise _cycle_fault(group, "a total over every step stands inside the cycle; make it a line of its own")
    return axes.pop()


def _holds_words(read: Expr | None, by: Expr) -> bool:
    """Whether what is read may hold words where the reader wants a number; a sentence may take in another, a rank give one."""
    return isinstance(read, Shown) or (isinstance(read, Sentence) and not isinstance(by, (Sentence, Nth)))


def _words_fault(line: Line, source: Line) -> ModelFault:
    what = f"line `{line.name}` reads `{source.name}`, which may hold words in place of a number"
    return ModelFault(what, where=line.where, why="work it out from what that line is worked out from")


def _cycle_fault(lines: Iterable[Line], why: str) -> ModelFault:
    named = sorted(lines, key=lambda line: line.name)
    return ModelFault("circular lines: " + ", ".join(line.name for line in named), where=named[0].where, why=why)


def closure(start: Iterable[Source], onward: Mapping[Source, Sequence[Line]]) -> set[Line]:
    """Everything met by going onward from the start, without the start itself unless it is met."""
    found: set[Line] = set()
    waiting: list[Source] = list(start)
    while waiting:
        for line in onward.get(waiting.pop(), ()):
            if line not in found:
                found.add(line)
                waiting.append(line)
    return found


def _components(needs: Mapping[Line, Sequence[Line]]) -> list[list[Line]]:
    """Strongly connected groups in dependency order (Tarjan 1972), without recursion."""
    index: dict[Line, int] = {}
    low: dict[Line, int] = {}
    stack: list[Line] = []
    on_stack: set[Line] = set()
    found: list[list[Line]] = []
    for start in needs:
        if start in index:
            continue
        work: list[tuple[Line, Iterator[Line]]] = [(start, iter(needs[start]))]
        index[start] = low[start] = len(index)
        stack.append(start)
        on_stack.add(start)
        while work:
            line, rest = work[-1]
            for other in rest:
                if other not in index:
                    index[other] = low[other] = len(index)
                    stack.append(other)
                    on_stack.add(other)
                    work.append((other, iter(needs[other])))
                    break
                if other in on_stack:
                    low[line] = min(low[line], index[other])
            else:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[line])
                if low[line] == index[line]:
                    found.append(_unstack(stack, on_stack, line))
    return found


def _unstack(stack: list[Line], on_stack: set[Line], line: Line) -> list[Line]:
    group: list[Line] = []
    while True:
        top = stack.pop()
        on_stack.discard(top)
        group.append(top)
        if top is line:
            return group
