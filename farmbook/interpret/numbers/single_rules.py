"""How each node is written as plain Python, for one value of one scenario: a float, or a text."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from farmbook.expr import nodes as n
from farmbook.expr.sentences import Strip
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import array_rules
from farmbook.interpret.numbers.emitter import Axes, Emitter

__all__ = ["SINGLE_RULES"]


def _as_array(rule: Callable[[Emitter, Any, Axes], str]) -> Callable[[Emitter, Any], str]:
    """A rule whose array form gives a single value where nothing varies."""
    return lambda e, x: rule(e, x, ())


def _condition(e: Emitter, x: n.Expr) -> str:
    """A node as a Python condition: true where it is not zero."""
    rule = _CONDITIONS.get(type(x))
    return f"({rule(e, x) if rule is not None else f'{_one(e, x)} != 0.0'})"


def _one(e: Emitter, x: n.Expr) -> str:
    return e.emit(x, ())


def _flag(e: Emitter, x: n.Expr) -> str:
    """A node that is a condition, as a number."""
    return f"(1.0 if {_condition(e, x)} else 0.0)"


def _compare(e: Emitter, x: n.Compare) -> str:
    return f"{_one(e, x.left)} {x.sign} {_one(e, x.right)}"


def _logic(e: Emitter, x: n.Logic) -> str:
    terms = [_condition(e, term) for term in x.terms]
    if x.kind == "not":
        return f"not {terms[0]}"
    return (" and " if x.kind == "all" else " or ").join(terms)


def _line(e: Emitter, x: n.Line) -> str:
    return e.one(e.value(x), x.axes, looped=x in e.looped)


def _ratio(e: Emitter, x: n.Ratio) -> str:
    return f"ratio_one({_one(e, x.top)}, {_one(e, x.bottom)}, {_one(e, x.otherwise)})"


def _power(e: Emitter, x: n.Power) -> str:
    return f"power({_one(e, x.base)}, {_one(e, x.exponent)})"


def _where(e: Emitter, x: n.Where) -> str:
    return f"({_one(e, x.yes)} if {_condition(e, x.condition)} else {_one(e, x.no)})"


def _call(e: Emitter, x: n.Call) -> str:
    return f"one_{x.function}(" + ", ".join(_one(e, argument) for argument in x.arguments) + ")"


def _previous(e: Emitter, x: n.Previous) -> str:
    if x.line in e.looped:
        return e.earlier(x.line)
    return e.one(f"before({e.value(x.line)}, {e.opening(x.line)})", x.line.axes)


def _at(e: Emitter, x: n.At) -> str:
    return f"at_one({e.value(x.line)}, {_one(e, x.position)})"


def _nth(e: Emitter, x: n.Nth) -> str:
    keys, shown = (_column(e, lines) for lines in (x.keys, x.shown))
    shown = repr([line.called for line in x.shown]) if x.labels else shown
    return f"nth_one({keys}, {shown}, {_one(e, x.place)}, {_one(e, x.many)}, {array_rules.otherwise(x)!r})"


def _column(e: Emitter, lines: tuple[n.Line, ...]) -> str:
    """A list of the values of single lines, or of one line's members."""
    return e.held(f"{e.value(lines[0])}[0].tolist()") if lines[0].axes else array_rules.column(e, lines)


def _raw(e: Emitter, x: n.Raw) -> str:
    return e.one(e.numbers(x.source), x.source.axes)


def _is_number(e: Emitter, x: n.IsNumber) -> str:
    cell = e.one(e.numbers(x.source), x.source.axes)
    return f"{cell} == {cell}"


def _used(e: Emitter, x: n.Used) -> str:
    cell = e.one(e.numbers(x.source), x.source.axes)
    guards = "".join(f" and {_condition(e, line)}" for line in x.presents)
    return f"({cell} if {cell} == {cell}{guards} else 0.0)"


def _filled(e: Emitter, x: n.Filled) -> str:
    return f"{e.one(e.texts(x.source), x.source.axes)} != ''"


def _same_text(e: Emitter, x: n.SameText) -> str:
    left, right = (
        repr(fold(side.text)) if isinstance(side, n.Word) else e.one(e.folded(side), ordered_axes(side.axes))
        for side in (x.left, x.right)
    )
    return f"{left} == {right}"


def _first_label(e: Emitter, x: n.FirstLabel) -> str:
    texts, word = array_rules.sought(e, x)
    return f"first_one(({texts},), {word!r}, {x.labels!r}, {x.otherwise!r})"


def _label(e: Emitter, x: n.Label) -> str:
    return f"({e.one(e.texts(x.source), x.source.axes)} or {x.otherwise!r})"


def _choose(e: Emitter, x: n.Choose) -> str:
    return f"pick_one(({', '.join(_said(e, each) for each in x.sentences)}), {_one(e, x.state)})"


def _said(e: Emitter, each: str | n.Expr) -> str:
    if isinstance(each, Strip):
        return (
            f"strip({', '.join(_one(e, part) for part in (each.value, each.low, each.high, each.places, each.span))})"
        )
    return repr(each)


_CONDITIONS: Final[dict[type[n.Expr], Callable[[Emitter, Any], str]]] = {
    n.Compare: _compare,
    n.Logic: _logic,
    n.IsNumber: _is_number,
    n.Filled: _filled,
    n.SameText: _same_text,
}
"""How each node that is 1 or 0 is written as a condition."""

SINGLE_RULES: Final[dict[type[n.Expr], Callable[[Emitter, Any], str]]] = {
    n.Number: _as_array(array_rules.number),
    n.Named: _as_array(array_rules.named),
    n.Factor: _as_array(array_rules.factor),
    n.Line: _line,
    n.Add: _as_array(array_rules.infix("+")),
    n.Subtract: _as_array(array_rules.infix("-")),
    n.Multiply: _as_array(array_rules.infix("*")),
    n.Divide: _as_array(array_rules.infix("/")),
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _flag,
    n.Logic: _flag,
    n.Where: _where,
    n.Call: _call,
    n.Total: _as_array(array_rules.total),
    n.Previous: _previous,
    n.At: _at,
    n.Nth: _nth,
    n.InternalRate: _as_array(array_rules.internal_rate),
    n.Extreme: _as_array(array_rules.extreme),
    n.Raw: _raw,
    n.Used: _used,
    n.IsNumber: _flag,
    n.Filled: _flag,
    n.SameText: _flag,
    n.CountWord: _as_array(array_rules.count_word),
    n.CountChanged: _as_array(array_rules.count_changed),
    n.CountUsed: _as_array(array_rules.count_used),
    n.FirstLabel: _first_label,
    n.Label: _label,
    n.Choose: _choose,
}
