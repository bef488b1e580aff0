"""Words: a line's expression as a sentence a grower can read, in the names of the lines it uses."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from farmbook.expr import nodes as n

__all__ = ["NODE_RULES", "sentence_of"]

LOOSE, ADDED, MULTIPLIED, ATOM = 0, 3, 4, 9


def sentence_of(expr: n.Expr) -> str:
    """How the line is worked out, in words; starts with a capital."""
    text, _ = _say(expr)
    return text[:1].upper() + text[1:]


Said = tuple[str, int]


def _say(expr: n.Expr) -> Said:
    return NODE_RULES[type(expr)](expr)


def _within(expr: n.Expr, least: int) -> str:
    text, binds = _say(expr)
    return text if binds >= least else f"({text})"


def _name(label: str) -> str:
    """A label inside a sentence: lower case at the start, unless it begins with an abbreviation."""
    return label if label[1:2].isupper() or label[1:2] in (":", ".") else label[:1].lower() + label[1:]


def _line(x: n.Line) -> Said:
    return _name(x.label.removesuffix(" (used)")), ATOM


def _infix(sign: str, binds: int, right: int) -> Callable[[Any], Said]:
    return lambda x: (f"{_within(x.left, binds)} {sign} {_within(x.right, right)}", binds)


def _multiply(x: n.Multiply) -> Said:
    if isinstance(x.left, n.Number) and x.left.value == -1:
        return f"minus {_within(x.right, MULTIPLIED)}", MULTIPLIED
    return _infix("x", MULTIPLIED, MULTIPLIED)(x)


def _ratio(x: n.Ratio) -> Said:
    text = f"{_within(x.top, MULTIPLIED)} / {_within(x.bottom, ATOM)}"
    if isinstance(x.otherwise, n.Number) and x.otherwise.value == 0:
        return text, MULTIPLIED
    return f"{text}, or {_within(x.otherwise, ADDED)} where that cannot be divided", LOOSE


_SIGNS: Final = {"<": "is below", "<=": "is at most", ">": "is above", ">=": "is at least"}


def _compare(x: n.Compare) -> Said:
    return f"1 if {_within(x.left, ADDED)} {_SIGNS[x.sign]} {_within(x.right, ADDED)}", LOOSE


def _condition(expr: n.Expr) -> str:
    text = _say(expr)[0]
    return text.removeprefix("1 if ")


def _logic(x: n.Logic) -> Said:
    if x.kind == "not":
        return f"1 if not ({_condition(x.terms[0])})", LOOSE
    word = " and " if x.kind == "all" else " or "
    terms = (f"({_condition(term)})" if isinstance(term, n.Logic) else _condition(term) for term in x.terms)
    return "1 if " + word.join(terms), LOOSE


def _where(x: n.Where) -> Said:
    return f"{_within(x.yes, ADDED)} if {_condition(x.condition)}, otherwise {_within(x.no, ADDED)}", LOOSE


_FUNCTIONS: Final = {
    "minimum": "the smaller of {0} and {1}",
    "maximum": "the larger of {0} and {1}",
    "mean": "half way between {0} and {1}",
    "absolute": "the size of {0}",
    "whole_up": "{0}, rounded up to a whole number",
    "whole_down": "{0}, rounded down to a whole number",
    "whole_near": "{0}, rounded to the nearest whole number",
    "exponential": "e to the power {0}",
    "natural_log": "natural logarithm of {0}",
    "log_10": "logarithm of {0}",
    "square_root": "square root of {0}",
}


def _call(x: n.Call) -> Said:
    return _FUNCTIONS[x.function].format(*(_within(argument, ADDED) for argument in x.arguments)), LOOSE


def _total(x: n.Total) -> Said:
    return f"total over each {x.axis.label} of {_within(x.expr, MULTIPLIED)}", LOOSE


def _starting(x: n.Starting) -> Said:
    return f"starts from {_within(x.opening, ADDED)}; then {_say(x.step)[0]}", LOOSE


def _running(x: n.Running) -> Said:
    word = "sum" if x.sign == "+" else "product"
    return f"{word} so far of {_within(x.expr, MULTIPLIED)}", LOOSE


def _same_text(x: n.SameText) -> Said:
    sides = [
        f'"{side.text}"' if isinstance(side, n.Word) else _name(getattr(side, "label", ""))
        for side in (x.left, x.right)
    ]
    return f"1 if {sides[0]} is {sides[1]}", LOOSE


def _nth(x: n.Nth) -> Said:
    what = "label" if x.labels else "text" if x.is_text else "value"
    otherwise = f'"{x.otherwise}"' if x.is_text else "0"
    place, many = _within(x.place, ADDED), _within(x.many, ADDED)
    return f"the {what} that ranks as number {place}, the largest first, or {otherwise} above {many}", LOOSE


def _shown(x: n.Shown) -> Said:
    return f'{_within(x.value, ADDED)} if {_condition(x.when)}, otherwise "{x.words}"', LOOSE


def _count_word(x: n.CountWord) -> Said:
    if isinstance(x.word, int):
        return f"how many of these {len(x.sources)} lines are {x.word}", LOOSE
    return f'how many of these {len(x.sources)} cells say "{x.word}"', LOOSE


NODE_RULES: Final[dict[type[n.Expr], Callable[[Any], Said]]] = {
    n.Number: lambda x: (str(x.value), ATOM),
    n.Named: lambda x: (_name(x.constant.label), ATOM),
    n.Line: _line,
    n.Add: _infix("+", ADDED, ADDED),
    n.Subtract: _infix("-", ADDED, MULTIPLIED),
    n.Multiply: _multiply,
    n.Divide: _infix("/", MULTIPLIED, ATOM),
    n.Ratio: _ratio,
    n.Power: lambda x: (f"{_within(x.base, ATOM)} to the power {_within(x.exponent, ATOM)}", LOOSE),
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: _total,
    n.Previous: lambda x: (f"{_name(x.line.label)} one {x.axis.label} earlier", ATOM),
    n.Starting: _starting,
    n.Running: _running,
    n.At: lambda x: (f"{_name(x.line.label)} at {x.axis.label} {_within(x.position, ATOM)}", ATOM),
    n.Before: lambda x: (
        f"total of {_name(x.amount.label)} over each {x.axis.label} whose {_name(x.key.label)} is lower",
        LOOSE,
    ),
    n.Nth: _nth,
    n.Shown: _shown,
    n.InternalRate: lambda x: (
        f"the rate for each {x.axis.label} at which all {_name(x.line.label)} are worth nothing together",
        LOOSE,
    ),
    n.Joined: lambda x: _say(x.expr),
    n.Raw: lambda x: (f"{_name(x.source.label)} as typed", ATOM),
    n.Used: lambda x: (f"{_name(x.source.label)} as typed, 0 where it does not count", LOOSE),
    n.IsNumber: lambda x: (f"1 if {_name(x.source.label)} holds a number", LOOSE),
    n.Filled: lambda x: (f"1 if {_name(x.source.label)} is filled in", LOOSE),
    n.SameText: _same_text,
    n.CountWord: _count_word,
    n.CountUsed: lambda x: (f'how many cells in use say "{x.word}"', LOOSE),
    n.FirstLabel: lambda x: (f'the first of these that says "{x.word}"', LOOSE),
    n.Label: lambda x: (f"{_name(x.source.label)} as typed", ATOM),
    n.Choose: lambda x: (f"in words: {_say(x.state)[0]}", LOOSE),
}
