"""How each node is written as NumPy code, for values that vary along axes or from draw to draw."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.lower import constant_value, factor_value
from farmbook.expr.sentences import Strip
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers.emitter import Axes, Emitter

__all__ = ["ARRAY_RULES"]


def number(_e: Emitter, x: n.Number, _axes: Axes) -> str:
    """A bare number."""
    return f"{float(x.value)!r}"


def named(e: Emitter, x: n.Named, _axes: Axes) -> str:
    """A constant as the book shows it."""
    return f"({constant_value(x.constant, e.system)!r})"


def factor(_e: Emitter, x: n.Factor, _axes: Axes) -> str:
    """A conversion factor."""
    return repr(float(factor_value(x.powers)))


def infix(sign: str) -> Callable[[Emitter, Any, Axes], str]:
    """A rule for an operator between two."""
    return lambda e, x, axes: f"({e.emit(x.left, axes)} {sign} {e.emit(x.right, axes)})"


def _line(e: Emitter, x: n.Line, axes: Axes) -> str:
    return e.leaf(e.value(x), ordered_axes(x.axes), axes)


def _ratio(e: Emitter, x: n.Ratio, axes: Axes) -> str:
    return f"ratio({e.emit(x.top, axes)}, {e.emit(x.bottom, axes)}, {e.emit(x.otherwise, axes)})"


def _power(e: Emitter, x: n.Power, axes: Axes) -> str:
    return f"np.power({e.emit(x.base, axes)}, {e.emit(x.exponent, axes)})"


def _compare(e: Emitter, x: n.Compare, axes: Axes) -> str:
    return f"(1.0 * ({e.emit(x.left, axes)} {x.sign} {e.emit(x.right, axes)}))"


def _logic(e: Emitter, x: n.Logic, axes: Axes) -> str:
    terms = [f"np.not_equal({e.emit(term, axes)}, 0)" for term in x.terms]
    if x.kind == "not":
        return f"(1.0 - 1.0 * {terms[0]})"
    return "(1.0 * (" + (" & " if x.kind == "all" else " | ").join(terms) + "))"


def _where(e: Emitter, x: n.Where, axes: Axes) -> str:
    return f"np.where({e.emit(x.condition, axes)} != 0, {e.emit(x.yes, axes)}, {e.emit(x.no, axes)})"


def _call(e: Emitter, x: n.Call, axes: Axes) -> str:
    return f"F['{x.function}'](" + ", ".join(e.emit(argument, axes) for argument in x.arguments) + ")"


def total(e: Emitter, x: n.Total, axes: Axes) -> str:
    """A sum over one axis; of what varies along no other it is a single value."""
    inside = e.inner(x.expr)
    summed = f"({e.emit(x.expr, inside)}).sum(axis={1 + inside.index(x.axis)})"
    return e.spread(summed, tuple(axis for axis in inside if axis != x.axis), axes)


def _previous(e: Emitter, x: n.Previous, axes: Axes) -> str:
    own = ordered_axes(x.line.axes)
    if x.line in e.looped:
        return e.spread(e.earlier(x.line), own[:-1], axes)
    return e.leaf(e.held(f"before({e.value(x.line)}, {e.opening(x.line)})"), own, axes)


def _at(e: Emitter, x: n.At, axes: Axes) -> str:
    rest = ordered_axes(x.line.axes)[:-1]
    own = ordered_axes([*rest, *e.inner(x.position)])
    marks = "".join(":, " if axis in rest else "None, " for axis in own)
    return e.spread(f"at({e.value(x.line)}[:, {marks}:], {e.emit(x.position, own)})", own, axes)


def _before(e: Emitter, x: n.Before, axes: Axes) -> str:
    own = e.inner(x)
    amounts, keys = e.emit(x.amount, own), e.emit(x.key, own)
    return e.spread(f"before_each({amounts}, {keys}, {1 + own.index(x.axis)})", own, axes)


def _nth(e: Emitter, x: n.Nth, axes: Axes) -> str:
    own = e.inner(x)
    shown = repr([line.called for line in x.shown]) if x.labels else column(e, x.shown)
    places, many = e.emit(x.place, own), e.emit(x.many, own)
    return e.spread(f"nth({column(e, x.keys)}, {shown}, {places}, {many}, {otherwise(x)!r})", own, axes)


def column(e: Emitter, lines: tuple[n.Line, ...]) -> str:
    """Single lines as a list, one line over a list as its array."""
    return e.value(lines[0]) if lines[0].axes else f"[{', '.join(e.value(line) for line in lines)}]"


def otherwise(x: n.Nth) -> str | float:
    """What stands where fewer count."""
    return x.otherwise if x.is_text else 0.0


def internal_rate(e: Emitter, x: n.InternalRate, axes: Axes) -> str:
    """The rate of return of a line's flows."""
    if x.line.axes != (x.axis,):
        raise ModelFault(f"`{x.line.name}` does not run along {x.axis.label} alone", where=x.line.where)
    return e.spread(f"rates({e.value(x.line)})", (), axes)


def extreme(e: Emitter, x: n.Extreme, axes: Axes) -> str:
    """The least or the most of a line's steps."""
    return e.spread(f"{e.value(x.line)}.{'max' if x.most else 'min'}(axis=1)", (), axes)


def _raw(e: Emitter, x: n.Raw, axes: Axes) -> str:
    return e.leaf(e.numbers(x.source), ordered_axes(x.source.axes), axes)


def _is_number(e: Emitter, x: n.IsNumber, axes: Axes) -> str:
    return e.leaf(f"(1.0 * ~np.isnan({e.numbers(x.source)}))", ordered_axes(x.source.axes), axes)


def _used(e: Emitter, x: n.Used, axes: Axes) -> str:
    cell = e.leaf(e.numbers(x.source), ordered_axes(x.source.axes), axes)
    guards = "".join(f" & ({e.emit(line, axes)} != 0)" for line in x.presents)
    return f"np.where(~np.isnan({cell}){guards}, {cell}, 0.0)"


def _filled(e: Emitter, x: n.Filled, axes: Axes) -> str:
    return e.leaf(f"(1.0 * ({e.texts(x.source)} != ''))", ordered_axes(x.source.axes), axes)


def _same_text(e: Emitter, x: n.SameText, axes: Axes) -> str:
    left, right = (
        repr(fold(side.text)) if isinstance(side, n.Word) else e.leaf(e.folded(side), ordered_axes(side.axes), axes)
        for side in (x.left, x.right)
    )
    return f"(1.0 * ({left} == {right}))"


def _as_compared(word: str | int) -> str | float:
    """A word or number that is looked for, as cells are held against it."""
    return fold(word) if isinstance(word, str) else float(word)


def count_word(e: Emitter, x: n.CountWord, axes: Axes) -> str:
    """How many cells hold a word: single texts are counted as they are, those of tables by array."""
    word = _as_compared(x.word)
    cells, wanted = [e.compared(source, word) for source in x.sources], repr(word)
    plain = [cell for cell, source in zip(cells, x.sources, strict=True) if e.plain(source.axes)]
    counted = [f"count({cell}, {wanted})" for cell in cells if cell not in plain]
    if plain:
        counted.append(f"float(({', '.join(plain)},).count({wanted}))")
    found = f"({' + '.join(counted)})"
    return found if len(plain) == len(cells) else e.spread(found, (), axes)


def count_changed(e: Emitter, x: n.CountChanged, axes: Axes) -> str:
    """How many cells differ from what was built."""
    pairs = zip(x.now, x.built, x.bases or (None,) * len(x.now), strict=True)
    many = "" if e.plain(x.now[0].axes) else "_each"
    found = " + ".join(f"changed{many}({_held_against(e, now, built, basis, x.word)})" for now, built, basis in pairs)
    return e.spread(f"({found})", (), axes) if many else f"({found})"


def _held_against(e: Emitter, now: n.RawInput, built: n.RawInput, basis: n.RawInput | None, word: str) -> str:
    cells = ", ".join(part for cell in (now, built) for part in (e.numbers(cell), e.folded(cell)))
    return cells if basis is None else f"{cells}, {e.folded(basis)} == {fold(word)!r}"


def count_used(e: Emitter, x: n.CountUsed, axes: Axes) -> str:
    """How many cells of tables hold a word where their row is in use."""
    own = ordered_axes(x.sources[0].axes)
    found = " + ".join(f"1.0 * ({e.folded(source)} == {fold(x.word)!r})" for source in x.sources)
    used = "".join(f" * {e.spread(e.value(line), ordered_axes(line.axes), own)}" for line in x.presents)
    return f"(({found}){used})" if e.plain(own) else e.spread(f"total(({found}){used})", (), axes)


def _first_label(e: Emitter, x: n.FirstLabel, _axes: Axes) -> str:
    texts, word = sought(e, x)
    return f"first([{texts}], {word!r}, {x.labels!r}, {x.otherwise!r})"


def sought(e: Emitter, x: n.FirstLabel) -> tuple[str, str | float]:
    """What is looked through, and the word or number sought, both as they are compared."""
    word = _as_compared(x.word)
    return ", ".join(e.compared(each, word) for each in x.lines), word


def _label(e: Emitter, x: n.Label, axes: Axes) -> str:
    return e.leaf(f"label({e.texts(x.source)}, {x.otherwise!r})", ordered_axes(x.source.axes), axes)


def _choose(e: Emitter, x: n.Choose, axes: Axes) -> str:
    state = e.emit(x.state, axes)
    fixed = tuple(each if isinstance(each, str) else "" for each in x.sentences)
    found = f"pick({fixed!r}, {state})"
    for place, each in enumerate(x.sentences, 1):
        if isinstance(each, Strip):
            lies = ", ".join(e.emit(part, axes) for part in (each.value, each.low, each.high, each.places, each.span))
            found = f"np.where(np.rint({state}) == {place}, strip_each({lies}), {found})"
    return found


ARRAY_RULES: Final[dict[type[n.Expr], Callable[[Emitter, Any, Axes], str]]] = {
    n.Number: number,
    n.Named: named,
    n.Factor: factor,
    n.Line: _line,
    n.Add: infix("+"),
    n.Subtract: infix("-"),
    n.Multiply: infix("*"),
    n.Divide: infix("/"),
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: total,
    n.Previous: _previous,
    n.At: _at,
    n.Before: _before,
    n.Nth: _nth,
    n.InternalRate: internal_rate,
    n.Extreme: extreme,
    n.Raw: _raw,
    n.Used: _used,
    n.IsNumber: _is_number,
    n.Filled: _filled,
    n.SameText: _same_text,
    n.CountWord: count_word,
    n.CountChanged: count_changed,
    n.CountUsed: count_used,
    n.FirstLabel: _first_label,
    n.Label: _label,
    n.Choose: _choose,
}
