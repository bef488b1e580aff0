"""Walking expressions: which axes a value has, which lines it needs, and the order in which lines can be worked out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import (
    At,
    CountUsed,
    CountWord,
    Expr,
    FirstLabel,
    InternalRate,
    Label,
    Line,
    Previous,
    RawInput,
    Running,
    Total,
    children,
)

__all__ = ["Step", "axes_of", "inputs_of", "lines_of", "ordered_axes", "schedule", "walk"]


def walk(expr: Expr) -> Iterator[Expr]:
    """The expression and every node below it; lines are not entered."""
    yield expr
    for child in children(expr):
        yield from walk(child)


def ordered_axes(axes: Iterable[Axis]) -> tuple[Axis, ...]:
    """Axes in the order in which arrays carry them."""
    return tuple(sorted(set(axes), key=lambda axis: axis.order))


def axes_of(expr: Expr) -> tuple[Axis, ...]:
    """The axes over which an expression has a value of its own."""
    if isinstance(expr, _OWN_AXES):
        return ordered_axes(_own_axes(expr))
    if isinstance(expr, (CountUsed, CountWord, FirstLabel)):
        return ()
    found = [axis for child in children(expr) for axis in axes_of(child)]
    if isinstance(expr, Total):
        if expr.axis not in found:
            raise ModelFault(f"a total over {expr.axis.label} of something that has no {expr.axis.label}")
        found = [axis for axis in found if axis != expr.axis]
    if isinstance(expr, Running):
        found.append(expr.axis)
    return ordered_axes(found)


_OWN_AXES = (Line, RawInput, Previous, Label, InternalRate, At)


def _own_axes(expr: Line | RawInput | Previous | Label | InternalRate | At) -> Iterable[Axis]:
    """The axes of a line or cell, or of what is asked of one."""
    if isinstance(expr, (Line, RawInput)):
        return expr.axes
    if isinstance(expr, Label):
        return expr.source.axes
    if isinstance(expr, Previous):
        return expr.line.axes
    rest = [axis for axis in expr.line.axes if axis != expr.axis]
    return [*rest, *axes_of(expr.position)] if isinstance(expr, At) else rest


def lines_of(expr: Expr, *, earlier: bool = True) -> list[Line]:
    """Lines an expression refers to, each once; those of an earlier step left out unless `earlier`."""
    found: dict[int, Line] = {}
    for node in walk(expr):
        if isinstance(node, (At, Previous)) and (earlier or isinstance(node, At)):
            found[id(node.line)] = node.line
        elif isinstance(node, Line):
            found[id(node)] = node
    if not earlier:
        for node in walk(expr):
            if isinstance(node, Previous) and not _stands_alone(expr, node.line):
                found.pop(id(node.line), None)
    return list(found.values())


def _stands_alone(expr: Expr, line: Line) -> bool:
    """Whether a line is also used at the same step, not only at an earlier one."""
    if expr is line:
        return True
    if isinstance(expr, Previous):
        return False
    if isinstance(expr, At) and expr.line is line:
        return True
    return any(_stands_alone(child, line) for child in children(expr))


def inputs_of(expr: Expr) -> list[RawInput]:
    """Input cells an expression reads directly."""
    return [node for node in walk(expr) if isinstance(node, RawInput)]


@dataclass(frozen=True)
class Step:
    """Lines worked out together: one line, or a cycle through time that is stepped along `axis`."""

    lines: tuple[Line, ...]
    axis: Axis | None = None


def schedule(roots: Mapping[Line, Expr]) -> list[Step]:
    """Put lines (each with its lowered expression) in an order in which each finds what it needs.

    Raises ModelFault, naming the lines, for a cycle within one step and for one not through `previous` alone.
    """
    steps: list[Step] = []
    for component in _components(roots):
        looped = len(component) > 1 or component[0] in lines_of(roots[component[0]])
        steps.append(_cycle(component, roots) if looped else Step((component[0],)))
    return steps


def _cycle(component: list[Line], roots: Mapping[Line, Expr]) -> Step:
    """A cycle through time, its lines in an order that works within one step (rule 5)."""
    inside = set(component)
    nodes = [node for line in component for node in walk(roots[line])]
    axes = {node.axis for node in nodes if isinstance(node, Previous) and node.line in inside}
    if any(isinstance(node, At) and node.line in inside for node in nodes):
        raise _cycle_fault(component, "a value at another step stands inside a cycle; only `previous` may")
    if not axes:
        raise _cycle_fault(component, "the lines need each other within one step")
    if any(ordered_axes(line.axes)[-1:] != tuple(axes) for line in component):
        raise _cycle_fault(component, "every line of a cycle must be stepped along the same list")
    if any(isinstance(node, Total) and node.axis in axes for node in nodes):
        raise _cycle_fault(component, "a total over every step stands inside the cycle; make it a line of its own")
    done: list[Line] = []
    waiting = list(component)
    while waiting:
        ready = [line for line in waiting if not (set(lines_of(roots[line], earlier=False)) & inside) - set(done)]
        if not ready:
            raise _cycle_fault(waiting, "the lines need each other within one step")
        done.extend(ready)
        waiting = [line for line in waiting if line not in ready]
    return Step(tuple(done), axes.pop())


def _cycle_fault(lines: Iterable[Line], why: str) -> ModelFault:
    named = sorted(lines, key=lambda line: line.name)
    return ModelFault("circular lines: " + ", ".join(line.name for line in named), where=named[0].where, why=why)


def _components(roots: Mapping[Line, Expr]) -> list[list[Line]]:
    """Strongly connected groups in dependency order (Tarjan 1972), without recursion."""
    index: dict[Line, int] = {}
    low: dict[Line, int] = {}
    stack: list[Line] = []
    on_stack: set[Line] = set()
    found: list[list[Line]] = []
    needs = {line: [other for other in lines_of(expr) if other in roots] for line, expr in roots.items()}
    for start in roots:
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
