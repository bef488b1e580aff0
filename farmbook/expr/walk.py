"""Walking expressions: their nodes, and the axes over which they have a value."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import (
    At,
    CountChanged,
    CountUsed,
    CountWord,
    Expr,
    Extreme,
    FirstLabel,
    InternalRate,
    Label,
    Line,
    Nth,
    Previous,
    RawInput,
    Running,
    Total,
    children,
)

__all__ = ["axes_of", "ordered_axes", "walk"]


def walk(expr: Expr) -> Iterator[Expr]:
    """The expression and every node below it; lines are not entered."""
    waiting = [expr]
    while waiting:
        node = waiting.pop()
        yield node
        waiting += reversed(children(node))


def ordered_axes(axes: Iterable[Axis]) -> tuple[Axis, ...]:
    """Axes in the order in which arrays carry them."""
    found = set(axes)
    return tuple(sorted(found, key=lambda axis: axis.order) if len(found) > 1 else found)


def axes_of(expr: Expr, known: dict[Expr, tuple[Axis, ...]] | None = None) -> tuple[Axis, ...]:
    """The axes over which an expression has a value of its own. What is found of the nodes below is kept in `known`."""
    known = {} if known is None else known
    if expr not in known:
        known[expr] = _axes_of(expr, known)
    return known[expr]


def _axes_of(expr: Expr, known: dict[Expr, tuple[Axis, ...]]) -> tuple[Axis, ...]:
    if isinstance(expr, _OWN_AXES):
        return ordered_axes(_own_axes(expr))
    if isinstance(expr, (CountChanged, CountUsed, CountWord, FirstLabel)):
        return ()
    if isinstance(expr, Nth):
        return ordered_axes([*axes_of(expr.place, known), *axes_of(expr.many, known)])
    found = [axis for child in children(expr) for axis in axes_of(child, known)]
    if isinstance(expr, Total):
        if expr.axis not in found:
            raise ModelFault(f"a total over {expr.axis.label} of something that has no {expr.axis.label}")
        found = [axis for axis in found if axis != expr.axis]
    if isinstance(expr, Running):
        found.append(expr.axis)
    return ordered_axes(found)


_OWN_AXES = (Line, RawInput, Previous, Label, InternalRate, Extreme, At)


def _own_axes(expr: Line | RawInput | Previous | Label | InternalRate | Extreme | At) -> Iterable[Axis]:
    """The axes of a line or cell, or of what is asked of one."""
    if isinstance(expr, (Line, RawInput)):
        return expr.axes
    if isinstance(expr, Label):
        return expr.source.axes
    if isinstance(expr, Previous):
        return expr.line.axes
    rest = [axis for axis in expr.line.axes if axis != expr.axis]
    return [*rest, *axes_of(expr.position)] if isinstance(expr, At) else rest
