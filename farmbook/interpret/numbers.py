"""Numbers: lowered lines become straight-line NumPy code, run on one scenario or on many at once.

Every array has a leading axis of draws (1, or as many as there are scenarios), then one for each axis of the line, in
the axes' order. A cycle through time becomes a loop over its steps. Texts are arrays of strings; a cell that holds no
number is NaN.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np
import numpy.typing as npt
from numpy_financial import irr

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.functions import FUNCTIONS, ratio
from farmbook.expr.lower import constant_value, factor_value
from farmbook.expr.texts import fold
from farmbook.expr.walk import Step, axes_of, ordered_axes, schedule

__all__ = ["NODE_RULES", "Array", "Cells", "Engine"]

Array = npt.NDArray[Any]


@dataclass(frozen=True)
class Cells:
    """What stands in one input's cells: numbers (NaN where there is none) and texts, each of shape (draws, *axes)."""

    numbers: Array
    texts: Array


def _at(values: Array, positions: Array | float) -> Array:
    """values (..., steps) at whole positions (...), counted from 1; NaN outside the range.

    Both have the same axes before the steps, or one member where they do not vary.
    """
    wanted = np.asarray(positions, dtype=float)
    wanted = wanted.reshape(wanted.shape or (1,) * (values.ndim - 1))
    inside = (wanted >= 1) & (wanted <= values.shape[-1])
    places = np.where(inside, np.rint(wanted) - 1, 0).astype(int)
    return np.where(inside, np.take_along_axis(values, places[..., None], axis=-1)[..., 0], np.nan)


def _before(values: Array, opening: Array) -> Array:
    """Values one step earlier along the last axis, the opening value first."""
    shape = np.broadcast_shapes(values.shape[:-1], opening.shape)
    first, later = np.broadcast_to(opening, shape), np.broadcast_to(values[..., :-1], (*shape, values.shape[-1] - 1))
    return np.concatenate([first[..., None], later], axis=-1)


def _rates(flows: Array) -> Array:
    """The internal rate of each draw of flows (draws, steps); 0 where there is none, or where a flow is no number."""
    found: Array = np.zeros(len(flows))
    for draw, series in enumerate(flows):
        if np.isfinite(series).all() and series.min() < 0 < series.max():
            found[draw] = irr(series)
    return np.where(np.isfinite(found), found, 0.0)


def _pick(sentences: tuple[str, ...], state: Array) -> Array:
    picked: Array = np.asarray(sentences, dtype=object)[np.rint(state).astype(int) - 1]
    return picked


def _label(texts: Array, otherwise: str) -> Array:
    return np.where(texts == "", otherwise, texts)


def _count(cells: Array, wanted: str | float) -> Array:
    """How many cells of each draw hold this."""
    return _total_of(np.asarray(cells == wanted, dtype=float))


def _total_of(cells: Array) -> Array:
    summed: Array = cells.reshape(cells.shape[0], -1).sum(axis=1)
    return summed


def _first(texts: list[Array], word: str, labels: tuple[str, ...], otherwise: str) -> Array:
    """The label of the first text that is the word, for each draw."""
    found = np.full(max(text.shape[0] for text in texts), otherwise, dtype=object)
    for text, label in reversed(list(zip(texts, labels, strict=True))):
        found[np.broadcast_to(text == word, found.shape)] = label
    return found


def _fold(texts: Array) -> Array:
    """Texts of any length, ready to be compared; NumPy's own lower case would cut those that grow by it."""
    return np.array([fold(str(text)) for text in texts.flat], dtype=object).reshape(texts.shape)


class Engine:
    """All lines of a model, compiled once; `run` works out every line."""

    def __init__(self, roots: Mapping[n.Line, n.Expr], sizes: Mapping[Axis, int], system: str) -> None:
        self.lines = tuple(roots)
        self.opened = tuple(line for line, root in roots.items() if isinstance(root, (n.Starting, n.Running)))
        self.inputs: dict[n.RawInput, str] = {}
        emitter = _Emitter(roots, sizes, system, self.inputs)
        self.source = emitter.program()
        names: dict[str, Any] = {
            "np": np,
            "at": _at,
            "rates": _rates,
            "before": _before,
            "ratio": ratio,
            "pick": _pick,
            "label": _label,
            "fold": _fold,
            "count": _count,
            "first": _first,
            "total": _total_of,
            "F": {name: rule for name, (_, rule) in FUNCTIONS.items()},
        }
        exec(compile(self.source, "<lines>", "exec"), names)  # noqa: S102 - our own text, made of the model alone
        self._run: Callable[..., tuple[list[Array], list[Array]]] = names["run"]

    def run(self, values: Mapping[n.RawInput, Cells]) -> dict[n.Line, Array]:
        """Every line's value, shape (draws or 1, *axes)."""
        return self.run_with_openings(values)[0]

    def run_in_chunks(
        self, values: Mapping[n.RawInput, Cells], wanted: Sequence[n.Line], *, most: int = 200
    ) -> dict[n.Line, Array]:
        """The wanted lines' values, shape (draws, *axes), worked out for at most so many draws at a time (rule 13)."""
        count = _draws(values)
        parts: list[dict[n.Line, Array]] = []
        for first in range(0, count, most):
            several = range(first, min(first + most, count))
            found = self.run({source: _of_draws(cells, several) for source, cells in values.items()})
            parts.append(
                {line: np.broadcast_to(found[line], (len(several), *found[line].shape[1:])) for line in wanted}
            )
        return {line: np.concatenate([part[line] for part in parts]) for line in wanted}

    def run_with_openings(self, values: Mapping[n.RawInput, Cells]) -> tuple[dict[n.Line, Array], dict[n.Line, Array]]:
        """Every line's value, and the opening value of each line that has one."""
        given = {variable: values[source] for source, variable in self.inputs.items()}
        draws = _draws(values)
        with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
            found, openings = self._run(draws, given)
        return dict(zip(self.lines, found, strict=True)), dict(zip(self.opened, openings, strict=True))


def _draws(values: Mapping[n.RawInput, Cells]) -> int:
    counts = {array.shape[0] for cells in values.values() for array in (cells.numbers, cells.texts)} - {1}
    if len(counts) > 1:
        raise ValueError(f"inputs for different numbers of draws: {sorted(counts)}")
    return counts.pop() if counts else 1


def _of_draws(cells: Cells, several: range) -> Cells:
    """The cells of some draws; those that are the same in every draw stay as they are."""
    numbers, texts = (
        array if array.shape[0] == 1 else array[several.start : several.stop] for array in (cells.numbers, cells.texts)
    )
    return Cells(numbers, texts)


@dataclass
class _Emitter:
    """Writes the program. `step` holds, inside a loop, the axis that is being stepped."""

    roots: Mapping[n.Line, n.Expr]
    sizes: Mapping[Axis, int]
    system: str
    inputs: dict[n.RawInput, str]
    step: Axis | None = None
    looped: frozenset[n.Line] = frozenset()
    text: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.variable = {line: f"v{number}" for number, line in enumerate(self.roots)}

    def program(self) -> str:
        for step in schedule(self.roots):
            if step.axis is None:
                self._single(step.lines[0])
            else:
                self._loop(step, step.axis)
        for source, variable in self.inputs.items():
            self.text.insert(0, f"t{variable} = fold(given['{variable}'].texts)")
            self.text.insert(0, f"s{variable} = given['{variable}'].texts")
            self.text.insert(0, f"{variable} = given['{variable}'].numbers  # {source.name}")
        returned = ", ".join(self.variable[line] for line in self.roots)
        opened = ", ".join(
            "o" + self.variable[line] for line, root in self.roots.items() if isinstance(root, (n.Starting, n.Running))
        )
        body = "\n".join("    " + row for row in [*self.text, f"return [{returned}], [{opened}]"])
        return f"def run(draws, given):\n{body}\n"

    def _single(self, line: n.Line) -> None:
        root, name = self.roots[line], self.variable[line]
        axes = ordered_axes(line.axes)
        if isinstance(root, n.Running):
            place = 1 + axes.index(root.axis)
            how = "cumsum" if root.sign == "+" else "cumprod"
            self.text.append(f"{name} = np.{how}({self._full(root.expr, axes)}, axis={place})  # {line.name}")
            self.text.append(f"o{name} = np.full({name}.shape[:-1], {0.0 if root.sign == '+' else 1.0})")
            return
        step = root.step if isinstance(root, n.Starting) else root
        if isinstance(root, n.Starting):
            self.text.append(f"o{name} = {self._full(root.opening, axes[:-1])}")
        self.text.append(f"{name} = {self._full(step, axes)}  # {line.name}")

    def _full(self, expr: n.Expr, axes: tuple[Axis, ...]) -> str:
        """An expression spread over all of a line's axes."""
        code = self.emit(expr, axes)
        if not axes:
            return f"np.atleast_1d({code})"
        if set(axes_of(expr)) == set(axes):
            return code
        shape = "".join(f", {self.sizes[axis]}" for axis in axes)
        return f"({code}) + np.zeros((1{shape}))"

    def _loop(self, step: Step, axis: Axis) -> None:
        openings = {line: self._opening(line, axis) for line in step.lines}
        for line in step.lines:
            shape = "".join(f", {self.sizes[each]}" for each in ordered_axes(line.axes))
            self.text.append(f"{self.variable[line]} = np.empty((draws{shape}))  # {line.name}")
            if openings[line]:
                self.text.append(f"o{self.variable[line]} = {openings[line]}")
        self.text.append(f"for t in range({self.sizes[axis]}):")
        self.step, self.looped = axis, frozenset(step.lines)
        for line in step.lines:
            self.text.append(f"    {self.variable[line]}[..., t] = {self._stepped(line, axis)}")
        self.step, self.looped = None, frozenset()

    def _opening(self, line: n.Line, axis: Axis) -> str:
        root = self.roots[line]
        rest = tuple(each for each in ordered_axes(line.axes) if each != axis)
        if isinstance(root, n.Starting):
            return self._full(root.opening, rest)
        shape = "".join(f", {self.sizes[each]}" for each in rest)
        if isinstance(root, n.Running):
            return f"np.full((1{shape}), {0.0 if root.sign == '+' else 1.0})"
        return ""

    def _stepped(self, line: n.Line, axis: Axis) -> str:
        root = self.roots[line]
        rest = tuple(each for each in ordered_axes(line.axes) if each != axis)
        if isinstance(root, n.Running):
            return f"{self.earlier(line)} {root.sign} ({self.emit(root.expr, rest)})"
        return self.emit(root.step if isinstance(root, n.Starting) else root, rest)

    def earlier(self, line: n.Line) -> str:
        if not isinstance(self.roots[line], (n.Starting, n.Running)):
            raise ModelFault(f"`{line.name}` has no opening value, so it has no previous value", where=line.where)
        name = self.variable[line]
        return f"({name}[..., t - 1] if t else o{name})"

    def emit(self, expr: n.Expr, axes: tuple[Axis, ...]) -> str:
        """Code for an expression whose array has exactly these axes, or fewer where it does not vary."""
        return NODE_RULES[type(expr)](self, expr, axes)

    def spread(self, code: str, own: tuple[Axis, ...], axes: tuple[Axis, ...]) -> str:
        """Index an array of some axes so that it lies right among others."""
        if own == axes or not axes:
            return code
        marks = ", ".join(":" if axis in own else "None" for axis in axes)
        return f"{code}[:, {marks}]"

    def leaf(self, code: str, own: tuple[Axis, ...], axes: tuple[Axis, ...]) -> str:
        if self.step is not None and self.step in own:
            if own[-1] != self.step:
                raise ModelFault("the axis that is stepped must be the last of a line's axes")
            code, own = f"{code}[..., t]", own[:-1]
        return self.spread(code, own, axes)

    def source(self, raw: n.RawInput) -> str:
        return self.inputs.setdefault(raw, f"x{len(self.inputs)}")

    def inner(self, expr: n.Expr) -> tuple[Axis, ...]:
        return tuple(axis for axis in axes_of(expr) if axis != self.step)


Axes = tuple[Axis, ...]


def _number(_e: _Emitter, x: n.Number, _axes: Axes) -> str:
    return f"{float(x.value)!r}"


def _named(e: _Emitter, x: n.Named, _axes: Axes) -> str:
    return f"({constant_value(x.constant, e.system)!r})"


def _factor(_e: _Emitter, x: n.Factor, _axes: Axes) -> str:
    return repr(float(factor_value(x.powers)))


def _line(e: _Emitter, x: n.Line, axes: Axes) -> str:
    return e.leaf(e.variable[x], ordered_axes(x.axes), axes)


def _infix(sign: str) -> Callable[[_Emitter, Any, Axes], str]:
    return lambda e, x, axes: f"({e.emit(x.left, axes)} {sign} {e.emit(x.right, axes)})"


def _ratio(e: _Emitter, x: n.Ratio, axes: Axes) -> str:
    return f"ratio({e.emit(x.top, axes)}, {e.emit(x.bottom, axes)}, {e.emit(x.otherwise, axes)})"


def _power(e: _Emitter, x: n.Power, axes: Axes) -> str:
    return f"np.power({e.emit(x.base, axes)}, {e.emit(x.exponent, axes)})"


def _compare(e: _Emitter, x: n.Compare, axes: Axes) -> str:
    return f"(1.0 * ({e.emit(x.left, axes)} {x.sign} {e.emit(x.right, axes)}))"


def _logic(e: _Emitter, x: n.Logic, axes: Axes) -> str:
    terms = [f"({e.emit(term, axes)} != 0)" for term in x.terms]
    if x.kind == "not":
        return f"(1.0 - 1.0 * {terms[0]})"
    return "(1.0 * (" + (" & " if x.kind == "all" else " | ").join(terms) + "))"


def _where(e: _Emitter, x: n.Where, axes: Axes) -> str:
    return f"np.where({e.emit(x.condition, axes)} != 0, {e.emit(x.yes, axes)}, {e.emit(x.no, axes)})"


def _call(e: _Emitter, x: n.Call, axes: Axes) -> str:
    return f"F['{x.function}'](" + ", ".join(e.emit(argument, axes) for argument in x.arguments) + ")"


def _total(e: _Emitter, x: n.Total, axes: Axes) -> str:
    inside = e.inner(x.expr)
    summed = f"({e.emit(x.expr, inside)}).sum(axis={1 + inside.index(x.axis)})"
    return e.spread(summed, tuple(axis for axis in inside if axis != x.axis), axes)


def _previous(e: _Emitter, x: n.Previous, axes: Axes) -> str:
    own = ordered_axes(x.line.axes)
    if e.step is not None and x.line in e.looped:
        return e.spread(e.earlier(x.line), own[:-1], axes)
    name = e.variable[x.line]
    if not isinstance(e.roots[x.line], (n.Starting, n.Running)):
        raise ModelFault(f"`{x.line.name}` has no opening value, so it has no previous value", where=x.line.where)
    return e.leaf(f"before({name}, o{name})", own, axes)


def _at_rule(e: _Emitter, x: n.At, axes: Axes) -> str:
    rest = ordered_axes(x.line.axes)[:-1]
    own = ordered_axes([*rest, *e.inner(x.position)])
    marks = "".join(":, " if axis in rest else "None, " for axis in own)
    values = f"{e.variable[x.line]}[:, {marks}:]"
    return e.spread(f"at({values}, {e.emit(x.position, own)})", own, axes)


def _internal_rate(e: _Emitter, x: n.InternalRate, axes: Axes) -> str:
    if x.line.axes != (x.axis,):
        raise ModelFault(f"`{x.line.name}` does not run along {x.axis.label} alone", where=x.line.where)
    return e.spread(f"rates({e.variable[x.line]})", (), axes)


def _raw(e: _Emitter, x: n.Raw, axes: Axes) -> str:
    return e.leaf(e.source(x.source), ordered_axes(x.source.axes), axes)


def _is_number(e: _Emitter, x: n.IsNumber, axes: Axes) -> str:
    return e.leaf(f"(1.0 * ~np.isnan({e.source(x.source)}))", ordered_axes(x.source.axes), axes)


def _filled(e: _Emitter, x: n.Filled, axes: Axes) -> str:
    return e.leaf(f"(1.0 * (s{e.source(x.source)} != ''))", ordered_axes(x.source.axes), axes)


def _same_text(e: _Emitter, x: n.SameText, axes: Axes) -> str:
    sides = []
    for side in (x.left, x.right):
        if isinstance(side, n.Word):
            sides.append(repr(fold(side.text)))
        else:
            sides.append(e.leaf(f"t{e.source(side)}", ordered_axes(side.axes), axes))
    return f"(1.0 * ({sides[0]} == {sides[1]}))"


def _count_word(e: _Emitter, x: n.CountWord, axes: Axes) -> str:
    wanted = repr(fold(x.word) if isinstance(x.word, str) else x.word)
    counted = " + ".join(_counted(e, source, wanted) for source in x.sources)
    return e.spread(f"({counted})", (), axes)


def _counted(e: _Emitter, source: n.RawInput | n.Line, wanted: str) -> str:
    if isinstance(source, n.RawInput):
        cells = f"t{e.source(source)}"
    else:
        cells = f"fold({e.variable[source]})" if wanted[:1] in "'\"" else e.variable[source]
    return f"count({cells}, {wanted})"


def _count_used(e: _Emitter, x: n.CountUsed, axes: Axes) -> str:
    own = ordered_axes(x.sources[0].axes)
    found = " + ".join(f"1.0 * (t{e.source(source)} == {fold(x.word)!r})" for source in x.sources)
    used = "".join(f" * {e.spread(e.variable[line], ordered_axes(line.axes), own)}" for line in x.presents)
    return e.spread(f"total(({found}){used})", (), axes)


def _first_label(e: _Emitter, x: n.FirstLabel, _axes: Axes) -> str:
    texts = ", ".join(e.variable[line] for line in x.lines)
    return f"first([{texts}], {x.word!r}, {x.labels!r}, {x.otherwise!r})"


def _label_rule(e: _Emitter, x: n.Label, axes: Axes) -> str:
    return e.leaf(f"label(s{e.source(x.source)}, {x.otherwise!r})", ordered_axes(x.source.axes), axes)


def _choose(e: _Emitter, x: n.Choose, axes: Axes) -> str:
    return f"pick({x.sentences!r}, {e.emit(x.state, axes)})"


NODE_RULES: Final[dict[type[n.Expr], Callable[[_Emitter, Any, Axes], str]]] = {
    n.Number: _number,
    n.Named: _named,
    n.Factor: _factor,
    n.Line: _line,
    n.Add: _infix("+"),
    n.Subtract: _infix("-"),
    n.Multiply: _infix("*"),
    n.Divide: _infix("/"),
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: _total,
    n.Previous: _previous,
    n.At: _at_rule,
    n.InternalRate: _internal_rate,
    n.Raw: _raw,
    n.IsNumber: _is_number,
    n.Filled: _filled,
    n.SameText: _same_text,
    n.CountWord: _count_word,
    n.CountUsed: _count_used,
    n.FirstLabel: _first_label,
    n.Label: _label_rule,
    n.Choose: _choose,
}
