"""Lines of a model made again with some of them changed: only those that a change reaches, the rest stay the model's own."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping
from dataclasses import fields, is_dataclass, replace
from typing import cast

from farmbook.expr.graph import sources_of
from farmbook.expr.nodes import Expr, Line, Nth, RawInput
from farmbook.expr.walk import walk

__all__ = ["Again", "needed_for"]


class Again:
    """Lines made again under the `name` of a case, with `given` in place of what some are worked out from.

    `lines` are those that may be made again, in the order in which they are to stand. Lines that are ranked together are made
    together, as they have to stand one under another; one that no change reaches then repeats the model's own. A line for which
    another line is given is not made: the other is read in its place.
    """

    def __init__(self, lines: Iterable[Line], given: Mapping[Line, Expr], name: str, label: str) -> None:
        self._given, self._name, self._label = given, name, label
        lines = list(lines)
        ranked = {each for line in lines for each in _ranked_in(line)}
        free = given.keys() - ranked
        in_place = {line: other for line in lines if line in free and isinstance(other := given[line], Line)}
        self.made = {line: self._made(line) for line in lines if line not in in_place}
        repeated = {line: self._repeat(line) for line in ranked if line not in self.made}
        self.made.update(repeated)
        self._read = {**self.made, **in_place}

    def line(self, line: Line) -> Line:
        """The case's own line, the one that is read in its place, or the model's where no change reaches it."""
        return self._read.get(line, line)

    def _made(self, line: Line) -> Line:
        def build() -> Expr:
            return self._given[line] if line in self._given else _replaced(line.expr, self._read)

        return self._named(line, replace(line, build=build))

    def _repeat(self, line: Line) -> Line:
        return self._named(line, replace(line, build=lambda: line))

    def _named(self, line: Line, again: Line) -> Line:
        label = f"{line.head}, {self._label}"
        kind = "worked" if line in self._given else line.kind
        return replace(
            again, name=f"{line.name}_{self._name}", label=label, case=self._name, short=line.head, kind=kind
        )


def needed_for(wanted: Iterable[Line], given: Container[Line]) -> dict[Line, list[Line]]:
    """All lines that some are worked out from, and they themselves, with the lines that each reads; what is `given` reads none."""
    found: dict[Line, list[Line]] = {}
    waiting = list(wanted)
    while waiting:
        line = waiting.pop()
        if line not in found:
            read = () if line in given else sources_of(line.expr)
            found[line] = [each for each in read if isinstance(each, Line)]
            waiting += found[line]
    return found


def _ranked_in(line: Line) -> list[Line]:
    """The lines that one ranks, and those that it gives by their rank."""
    ranks = [node for node in walk(line.expr) if isinstance(node, Nth) and not node.keys[0].axes]
    return [each for node in ranks for each in (*node.keys, *node.shown)]


def _replaced(expr: Expr, same: Mapping[Line, Line]) -> Expr:
    """The expression with some lines put in place of others."""
    if isinstance(expr, Line):
        return same.get(expr, expr)
    if not is_dataclass(expr):
        return expr
    changed = {field.name: _replaced_value(getattr(expr, field.name), same) for field in fields(expr)}
    return cast(Expr, type(expr)(**changed))


def _replaced_value(value: object, same: Mapping[Line, Line]) -> object:
    if isinstance(value, RawInput):
        return value
    if isinstance(value, Expr):
        return _replaced(value, same)
    if isinstance(value, tuple):
        return tuple(_replaced_value(item, same) for item in value)
    return value
