"""A model: sections wired together, with the lines that every input has, and cases made by shocking inputs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import TypeVar, cast

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.graph import sources_of
from farmbook.expr.nodes import Expr, Line, RawInput, wrap
from farmbook.model.declare import Input, LineOf, NumberInput
from farmbook.model.section import Bound, Section, label_line, present_line

__all__ = ["AxisLines", "Model"]

S = TypeVar("S", bound=Section)
Shock = Callable[[Expr], Expr]


@dataclass(frozen=True)
class AxisLines:
    """What a named axis has: the cells of its names, and the lines that say which rows are in use and repeat the names."""

    names: RawInput
    present: Line
    label: Line


class Model:
    """All sections of one farm. `sections` come in reading order, each after those it uses."""

    def __init__(self, sections: Iterable[type[Section]]) -> None:
        self.shocked: dict[NumberInput, Line] = {}
        self.case_label = ""
        self.axes: dict[Axis, AxisLines] = {}
        self._sections: dict[type[Section], Section] = {}
        for section in sections:
            self._sections[section] = section(self)

    def section(self, kind: type[S]) -> S:
        """This model's section of a class; raises ModelFault if it has none."""
        found = self._sections.get(kind)
        if found is None:
            raise ModelFault(f"section {kind.__name__} is used before it is in the model")
        return cast(S, found)

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

    def add_axis(self, axis: Axis, names: RawInput) -> None:
        """Register the names of an axis's members."""
        self.axes[axis] = AxisLines(names, present_line(axis, names), label_line(axis, names))

    def presents(self, axes: Iterable[Axis]) -> list[Expr]:
        """The "in use" lines of the named axes among these."""
        return [self.axes[axis].present for axis in axes if axis.named]

    def case(
        self, name: str, label: str, shocks: Mapping[NumberInput, Shock], wanted: Iterable[LineOf] | None = None
    ) -> Case:
        """The same sections on shocked inputs. Only lines that a shock reaches exist again; the rest are the base lines.

        `wanted` names the results that the case is for: what they do not need is left out. Without it, all that is reached
        stays, checks too.
        """
        return Case(self, name, label, shocks, wanted)


class Case(Model):
    """A model whose inputs are another's, some of them shocked."""

    def __init__(
        self,
        base: Model,
        name: str,
        label: str,
        shocks: Mapping[NumberInput, Shock],
        wanted: Iterable[LineOf] | None = None,
    ) -> None:
        self.name, self.case_label, self.axes, self._sections = name, label, base.axes, {}
        self.shocked = {
            declared: _shocked(base.inputs[declared], name, label, shock) for declared, shock in shocks.items()
        }
        for section in base.sections:
            self._sections[type(section)] = type(section)(self, case=name, base=section)
        pairs = {
            own: original
            for section, before in zip(self.sections, base.sections, strict=True)
            for own, original in zip(section.lines, before.lines, strict=True)
        }
        self.reached = _reached(list(pairs), set(self.shocked.values()))
        if wanted is not None:
            results = [self.section(each.owner).line(each) for each in wanted]
            needed = _needed(results, set(self.reached))
            self.reached = [line for line in self.reached if line in needed]
        same = {own: original for own, original in pairs.items() if own not in self.reached}
        for line in self.reached:
            line.__dict__["expr"] = _replaced(line.expr, same)

    @property
    def lines(self) -> list[Line]:
        """The shocked inputs and the lines they reach."""
        return [*self.shocked.values(), *self.reached]


def _shocked(bound: Bound, name: str, label: str, shock: Shock) -> Line:
    used = bound.used
    assert used is not None
    return Line(
        f"{used.name}_{name}",
        f"{used.label}, {label}",
        used.unit,
        used.axes,
        lambda: wrap(shock(used)),
        used.note,
        where=used.where,
        case=name,
    )


def _reached(lines: list[Line], shocked: set[Line]) -> list[Line]:
    """The lines that depend on a shocked input, in their own order."""
    needs = {line: set(sources_of(line.expr)) for line in lines}
    hit = set(shocked)
    while True:
        more = {line for line in lines if line not in hit and needs[line] & hit}
        if not more:
            return [line for line in lines if line in hit]
        hit |= more


def _needed(results: Iterable[Line], among: set[Line]) -> set[Line]:
    """The results and every line among these that they are worked out from."""
    found: set[Line] = set()
    waiting = [line for line in results if line in among]
    while waiting:
        line = waiting.pop()
        if line not in found:
            found.add(line)
            waiting += [other for other in sources_of(line.expr) if isinstance(other, Line) and other in among]
    return found


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
