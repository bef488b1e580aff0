"""A model: sections wired together, with the lines that every input has, and cases made of shocks."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from functools import cached_property
from typing import TypeVar, cast

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.nodes import Constant, Expr, Line
from farmbook.sections.alternative import Alternative
from farmbook.sections.cases import Again
from farmbook.sections.declare import Input, LineOf, NumberInput, Shock
from farmbook.sections.section import AxisLines, Bound, Section
from farmbook.sources import ARITHMETIC
from farmbook.units import Unit

__all__ = ["Case", "Model"]

S = TypeVar("S")


class Model:
    """All sections of one farm. `sections` come in reading order, each after those it uses.

    `horizon` says how many members each sized axis has; a model without one serves plans of any length, and `made_for` says
    how many members each sized axis has in a plan of so many months. `parts` are sections that exist only where a scenario
    has the table of that name; `fitting` leaves them out where it does not.
    """

    def __init__(
        self,
        sections: Iterable[type[Section]],
        horizon: Mapping[Axis, int] | None = None,
        made_for: Callable[[int], Mapping[Axis, int]] = lambda _months: {},
        parts: Mapping[str, Collection[type[Section]]] | None = None,
    ) -> None:
        self.made_for = made_for
        self.parts = dict(parts or {})
        self._smaller: dict[frozenset[str], Model] = {}
        self.horizon = {axis: _count_of(axis, members) for axis, members in (horizon or {}).items()}
        self.axes: dict[Axis, AxisLines] = {}
        self._sections: dict[type, Section] = {}
        for section in sections:
            self._sections[section] = section(self)

    def section(self, kind: type[S]) -> S:
        """This model's section of a class; raises ModelFault if it has none."""
        found = self._sections.get(kind)
        if found is None:
            raise ModelFault(f"section {kind.__name__} is used before it is in the model")
        return cast(S, found)

    def fitting(self, tables: Collection[str]) -> Model:
        """This model without the parts whose table is not among these; made once."""
        kept = frozenset(part for part in self.parts if part in tables)
        if kept == frozenset(self.parts):
            return self
        if kept not in self._smaller:
            left_out = {section for part in self.parts if part not in kept for section in self.parts[part]}
            sections = (type(section) for section in self.sections if type(section) not in left_out)
            parts = {part: self.parts[part] for part in kept}
            self._smaller[kept] = Model(sections, None, self.made_for, parts)
        return self._smaller[kept]

    @property
    def sections(self) -> list[Section]:
        """Sections in reading order."""
        return list(self._sections.values())

    @property
    def inputs(self) -> dict[Input, Bound]:
        """Every input in the order of declaration."""
        return {declared: bound for section in self.sections for declared, bound in section.bound.items()}

    @property
    def lines(self) -> list[Line]:
        """Every line: those of the axes, those of the inputs, and the worked ones."""
        found = [line for axis in self.axes.values() for line in (axis.label, axis.present)]
        for bound in self.inputs.values():
            found += [line for line in (bound.used, bound.flag) if line is not None]
        for section in self.sections:
            found += [*section.lines, *section.says.values()]
        return found

    @property
    def checks(self) -> dict[Line, Line]:
        """Every check and the line that puts it in words, in reading order."""
        return {check: says for section in self.sections for check, says in section.says.items()}

    def count(self, axis: Axis) -> Constant:
        """How many members a sized axis has, with a cell of its own."""
        if axis not in self.horizon:
            raise ModelFault(f"the model is made for no number of {axis.label}s")
        return self.horizon[axis]

    def presents(self, axes: Iterable[Axis]) -> tuple[Line, ...]:
        """The "in use" lines of the named axes among these."""
        return tuple(self.axes[axis].present for axis in axes if axis.named)

    @cached_property
    def graph(self) -> Graph:
        """Who needs whom among the lines as they are declared."""
        return Graph({line: line.expr for line in self.lines})

    def line(self, declared: LineOf) -> Line:
        """The line of a declaration."""
        return self._sections[declared.owner].line(declared)

    def used(self, declared: NumberInput) -> Line:
        """The number of an input that the sums use."""
        return self._sections[declared.owner].used(declared)

    def in_order(self, lines: Iterable[Line]) -> list[Line]:
        """Some lines that sections declare, in reading order."""
        wanted = set(lines)
        return [line for line in self._declared if line in wanted]

    @cached_property
    def _declared(self) -> list[Line]:
        """Every line but those of alternatives, which are made of these."""
        used = [bound.used for bound in self.inputs.values() if bound.used is not None]
        plain = [section for section in self.sections if not isinstance(section, Alternative)]
        return [*used, *(line for section in plain for line in section.lines)]

    def case(self, name: str, label: str, shocks: Mapping[Shock, Expr], wanted: Iterable[LineOf] | None = None) -> Case:
        """The same lines with shocks that are not neutral. Only lines that a shock reaches exist again; the rest are the base
        lines.

        `wanted` names the results that the case is for: what they do not need is left out. Without it, all that is reached
        stays, checks too. Raises ModelFault for a shock that does not stand in exactly one line.
        """
        return Case(self, name, label, shocks, wanted)


def _count_of(axis: Axis, members: int) -> Constant:
    name, label = f"{axis.name}s_in_the_book", f"{axis.label.capitalize()}s in the book"
    return Constant(members, name, label=label, unit=Unit(()), source=ARITHMETIC.key)


class Case:
    """Lines of a model made again with shocks; a line that no shock reaches stays the model's own."""

    def __init__(
        self,
        base: Model,
        name: str,
        label: str,
        shocks: Mapping[Shock, Expr],
        wanted: Iterable[LineOf] | None = None,
    ) -> None:
        self.base, self.name, self.label = base, name, label
        given = {_applied_once(base, declared): shocked for declared, shocked in shocks.items()}
        reached = base.graph.reached(given)
        if wanted is not None:
            reached &= base.graph.before(base.line(each) for each in wanted)
        made = [line for line in base.lines if line in reached or line in given]
        self._again = Again(made, given, name, label)

    @property
    def lines(self) -> list[Line]:
        """The shocks and the lines they reach, in the model's order."""
        return list(self._again.made.values())

    def line(self, declared: LineOf) -> Line:
        """The case's line of a declaration: its own, or the model's where no shock reaches it."""
        return self._again.line(self.base.line(declared))


def _applied_once(base: Model, declared: Shock) -> Line:
    line = base.line(declared)
    using = base.graph.needed_by.get(line, ())
    if len(using) != 1:
        named = ", ".join(f"`{each.name}`" for each in using) or "none"
        raise ModelFault(
            f"the shock `{line.name}` stands in {named}", where=line.where, why="it must stand in one line"
        )
    return line
