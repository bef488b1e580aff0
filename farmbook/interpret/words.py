"""Words: a line's expression as a sentence a grower can read, with gaps where it speaks of lines, cells and constants.

Whoever shows the sentence fills the gaps: with labels (`sentence_of`), or with the numbers of the lines on a sheet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any, Final

from farmbook.expr import nodes as n
from farmbook.expr.sentences import Figure, Sentence
from farmbook.units import unit

__all__ = [
    "NODE_RULES",
    "GapOf",
    "Named",
    "Part",
    "Parts",
    "Sign",
    "condition_of",
    "in_sentence",
    "operation_of",
    "sentence_of",
    "words_of",
]

_FLAG: Final = unit("flag")
LOOSE, ADDED, MULTIPLIED, ATOM = 0, 3, 4, 9

Named = n.Line | n.RawInput | n.Constant
"""What a sentence speaks of."""


@dataclass(frozen=True)
class GapOf:
    """A gap where the sentence names a line, a cell or a constant, and how its label reads there."""

    of: Named
    label: str


@dataclass(frozen=True)
class Sign:
    """What is written one way among labels and another among numbers of lines, where a bare 1 would be taken for line 1."""

    among_labels: str
    among_numbers: str


TIMES, DIVIDED_BY = Sign("x", "\u00d7"), Sign("/", "\u00f7")


Part = str | GapOf | Sign
Parts = tuple[Part, ...]


def words_of(expr: n.Expr) -> Parts:
    """How a line is worked out, in words with gaps."""
    return _say(expr).value.parts


def sentence_of(expr: n.Expr) -> str:
    """How a line is worked out, in the labels of what it uses; starts with a capital."""
    text = _in_labels(words_of(expr))
    return text[:1].upper() + text[1:]


def condition_of(expr: n.Expr) -> str:
    """A condition as it is said after "if", in the labels of what it asks about."""
    return _in_labels(_say(expr).parts)


def _in_labels(parts: Parts) -> str:
    return "".join(_among_labels(part) for part in parts)


def _among_labels(part: Part) -> str:
    if isinstance(part, GapOf):
        return part.label
    return part.among_labels if isinstance(part, Sign) else part


def in_sentence(label: str) -> str:
    """A label inside a sentence: lower case at the start, unless it begins with an abbreviation."""
    return label if label[1:2].isupper() or label[1:2] in (":", ".") else label[:1].lower() + label[1:]


@dataclass(frozen=True)
class _Said:
    parts: Parts
    binds: int = LOOSE
    asked: bool = False

    @property
    def value(self) -> _Said:
        """A condition said as a number: 1 if it holds."""
        return _Said(("1 if ", *self.parts)) if self.asked else self

    def at(self, least: int) -> Parts:
        """The value, in brackets where it binds more loosely than the surroundings need."""
        value = self.value
        return value.parts if value.binds >= least else ("(", *value.parts, ")")


def _say(expr: n.Expr) -> _Said:
    return NODE_RULES[type(expr)](expr)


def _at(expr: n.Expr, least: int) -> Parts:
    return _say(expr).at(least)


def _gap(of: Named) -> GapOf:
    return GapOf(of, in_sentence(of.head if isinstance(of, n.Line) else of.label))


def _named(of: Named, after: str = "") -> _Said:
    return _Said((_gap(of), after) if after else (_gap(of),), ATOM)


def _filled(words: str, *fillings: Parts) -> Parts:
    """The words with each `{}` filled in turn."""
    first, *rest = words.split("{}")
    parts: list[Part] = [first]
    for filling, after in zip(fillings, rest, strict=True):
        parts += [*filling, after]
    return tuple(part for part in parts if part)


def _joined(word: str, terms: Iterable[Parts]) -> Parts:
    """Terms with a word between them."""
    parts: list[Part] = []
    for term in terms:
        parts += [word, *term]
    return tuple(parts[1:])


_BARE: Final = {-1: "minus one", 1: "one", 2: "two", 10: "ten"}


def _bare(value: int) -> Sign:
    return Sign(str(value), _BARE.get(value, str(value)))


def _infix(sign: str | Sign, binds: int, right: int) -> Callable[[Any], _Said]:
    return lambda x: _Said((*_at(x.left, binds), " ", sign, " ", *_at(x.right, right)), binds)


def _multiply(x: n.Multiply) -> _Said:
    if isinstance(x.left, n.Number) and x.left.value == -1:
        return _Said(("minus ", *_at(x.right, MULTIPLIED)), MULTIPLIED)
    return _infix(TIMES, MULTIPLIED, MULTIPLIED)(x)


def _ratio(x: n.Ratio) -> _Said:
    parts = (*_at(x.top, MULTIPLIED), " ", DIVIDED_BY, " ", *_at(x.bottom, ATOM))
    if isinstance(x.otherwise, n.Number) and x.otherwise.value == 0:
        return _Said(parts, MULTIPLIED)
    return _Said((*parts, ", or ", *_at(x.otherwise, ADDED), " where that cannot be divided"))


def _power(x: n.Power) -> _Said:
    return _Said((*_at(x.base, ATOM), " to the power ", *_at(x.exponent, ATOM)))


_SIGNS: Final = {"<": "is below", "<=": "is at most", ">": "is above", ">=": "is at least"}


def _compare(x: n.Compare) -> _Said:
    return _Said((*_at(x.left, ADDED), f" {_SIGNS[x.sign]} ", *_at(x.right, ADDED)), asked=True)


def _logic(x: n.Logic) -> _Said:
    if x.kind == "not":
        return _Said(("not (", *_say(x.terms[0]).parts, ")"), asked=True)
    terms = [_say(term).parts for term in x.terms]
    kept = [("(", *term, ")") if isinstance(of, n.Logic) else term for of, term in zip(x.terms, terms, strict=True)]
    return _Said(_joined(" and " if x.kind == "all" else " or ", kept), asked=True)


def _where(x: n.Where) -> _Said:
    return _Said((*_at(x.yes, ADDED), " if ", *_say(x.condition).parts, ", otherwise ", *_at(x.no, ADDED)))


_FUNCTIONS: Final = {
    "minimum": "the smaller of {} and {}",
    "maximum": "the larger of {} and {}",
    "mean": "half way between {} and {}",
    "absolute": "the size of {}",
    "whole_up": "{}, rounded up to a whole number",
    "whole_down": "{}, rounded down to a whole number",
    "whole_near": "{}, rounded to the nearest whole number",
    "exponential": "e to the power {}",
    "natural_log": "natural logarithm of {}",
    "log_10": "logarithm of {}",
    "square_root": "square root of {}",
    "calendar_month": "the month of {}",
    "calendar_year": "the year of {}",
    "month_start": "the first of the month of {}, later by months: {}",
}


def _call(x: n.Call) -> _Said:
    return _Said(_filled(_FUNCTIONS[x.function], *(_at(argument, ADDED) for argument in x.arguments)))


def _total(x: n.Total) -> _Said:
    if isinstance(x.expr, n.Multiply) and isinstance(x.expr.right, n.Line) and x.expr.right.axes == (x.axis,):
        chosen = x.expr.right
        if chosen.unit == _FLAG:
            return _Said(
                (
                    "total of ",
                    *_at(x.expr.left, MULTIPLIED),
                    f" over each {x.axis.label} with yes in ",
                    _gap(chosen),
                )
            )
    return _Said((f"total over each {x.axis.label} of ", *_at(x.expr, MULTIPLIED)))


def _starting(x: n.Starting) -> _Said:
    return _Said(("starts from ", *_at(x.opening, ADDED), "; then ", *_at(x.step, LOOSE)))


def _running(x: n.Running) -> _Said:
    return _Said((f"{'sum' if x.sign == '+' else 'product'} so far of ", *_at(x.expr, MULTIPLIED)))


def _at_position(x: n.At) -> _Said:
    step = f" at {x.axis.label} "
    between = step if isinstance(x.position, n.Number) else Sign(step, f" at the {x.axis.label} in ")
    return _Said((_gap(x.line), between, *_at(x.position, ATOM)), ATOM)


def _internal_rate(x: n.InternalRate) -> _Said:
    return _Said((f"the rate for each {x.axis.label} at which all ", _gap(x.line), " are worth nothing together"))


def _extreme(x: n.Extreme) -> _Said:
    return _Said((f"the {'most' if x.most else 'least'} of each {x.axis.label}'s ", _gap(x.line)))


def _before(x: n.Before) -> _Said:
    return _Said(("total of ", _gap(x.amount), f" over each {x.axis.label} whose ", _gap(x.key), " is lower"))


def _nth(x: n.Nth) -> _Said:
    otherwise = f'"{x.otherwise}"' if x.is_text else "0"
    place = (_number_of("that ranks as", x.place), *_at(x.place, ADDED))
    many = (_number_of("above", x.many, among_labels=""), *_at(x.many, ADDED))
    return _Said((f"the {_picked(x)} ", *place, f", the largest first, or {otherwise} ", *many))


def _picked(x: n.Nth) -> str:
    return "label" if x.labels else "text" if x.is_text else "value"


def _number_of(before: str, x: n.Expr, among_labels: str = "number ") -> Sign:
    """What stands before an amount that counts places, so that the 9 of line 9 is not taken for the ninth place."""
    said = f"{before} {among_labels}"
    return Sign(said, said if isinstance(x, n.Number) else f"{before} the number in ")


def _shown(x: n.Shown) -> _Said:
    return _Said((*_at(x.value, ADDED), " if ", *_say(x.when).parts, f', otherwise "{x.words}"'))


def _sentence(x: Sentence) -> _Said:
    told = [part for part in x.parts if isinstance(part, Figure)]
    figures = _joined(", ", (_at(part.value, LOOSE) for part in told))
    return _Said(("a sentence that says ", *figures) if told else ("a sentence",))


def _same_text(x: n.SameText) -> _Said:
    left, right = (f'"{side.text}"' if isinstance(side, n.Word) else _gap(side) for side in (x.left, x.right))
    return _Said((left, " is ", right), asked=True)


def _count_word(x: n.CountWord) -> _Said:
    if isinstance(x.word, int):
        return _Said((f"how many of these {len(x.sources)} lines are ", _bare(x.word)))
    return _Said((f'how many of these {len(x.sources)} cells say "{x.word}"',))


NODE_RULES: Final[dict[type[n.Expr], Callable[[Any], _Said]]] = {
    n.Number: lambda x: _Said((_bare(x.value),), ATOM),
    n.Named: lambda x: _named(x.constant),
    n.Line: _named,
    n.Add: _infix("+", ADDED, ADDED),
    n.Subtract: _infix("-", ADDED, MULTIPLIED),
    n.Multiply: _multiply,
    n.Divide: _infix(DIVIDED_BY, MULTIPLIED, ATOM),
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: _total,
    n.Previous: lambda x: _named(x.line, f" one {x.axis.label} earlier"),
    n.Starting: _starting,
    n.Running: _running,
    n.At: _at_position,
    n.Before: _before,
    n.Nth: _nth,
    n.Shown: _shown,
    Sentence: _sentence,
    n.InternalRate: _internal_rate,
    n.Extreme: _extreme,
    n.Joined: lambda x: _say(x.expr),
    n.Raw: lambda x: _named(x.source, " as typed"),
    n.Used: lambda x: _named(x.source, " as typed, 0 where it does not count"),
    n.IsNumber: lambda x: _Said((_gap(x.source), " holds a number"), asked=True),
    n.Filled: lambda x: _Said((_gap(x.source), " is filled in"), asked=True),
    n.SameText: _same_text,
    n.CountWord: _count_word,
    n.CountChanged: lambda _: _Said(("how many cells differ from what stood in them when the book was made",)),
    n.CountUsed: lambda x: _Said((f'how many cells in use say "{x.word}"',)),
    n.FirstLabel: lambda x: _Said((f'the first of these that says "{x.word}"',)),
    n.Label: lambda x: _named(x.source, " as typed"),
    n.Choose: lambda x: _Said(("in words: ", *_at(x.state, LOOSE))),
}


def operation_of(expr: n.Expr, *, listed: bool = True) -> Parts:
    """The outermost operation alone and what it is worked out from, with gaps; not `listed`, how many lines that is."""
    if isinstance(expr, n.Joined):
        return operation_of(expr.expr, listed=listed)
    name, members = _operation(expr), _members(expr)
    said = [_say(member) for member in members]
    if said and all(one.binds == ATOM for one in said):
        return (f"{name} of ", *_list([one.parts for one in said], "amount", listed=listed))
    of = f"{name} of {len(members)} amounts" if members else name
    gaps = dict.fromkeys(part for part in words_of(expr) if isinstance(part, GapOf))
    return (f"{of}, worked out from ", *_list([(gap,) for gap in gaps], "line", listed=listed)) if gaps else (of,)


def _list(terms: list[Parts], noun: str, *, listed: bool) -> Parts:
    """`9, 12 and 15`, or `3 lines`."""
    if listed and len(terms) > 1:
        return (*_joined(", ", terms[:-1]), " and ", *terms[-1])
    if all(isinstance(part, GapOf) for term in terms for part in term):
        noun = "line"
    return terms[0] if listed else (f"{len(terms)} {noun}{'' if len(terms) == 1 else 's'}",)


def _members(expr: n.Expr) -> list[n.Expr]:
    """The terms of a sum, a product, a smallest or a largest, however they are grouped; none of another operation."""
    if isinstance(expr, n.Add | n.Multiply):
        operands: tuple[n.Expr, ...] = (expr.left, expr.right)
    elif isinstance(expr, n.Call) and expr.function in _OF_MANY:
        operands = expr.arguments
    else:
        return []
    return [one for each in operands for one in (_members(each) if _alike(each, expr) else [each])]


def _alike(one: n.Expr, other: n.Expr) -> bool:
    return type(one) is type(other) and getattr(one, "function", "") == getattr(other, "function", "")


_OF_MANY: Final = {"minimum": "the smallest", "maximum": "the largest"}

_OPERATIONS: Final[dict[type[n.Expr], str]] = {
    n.Add: "a sum",
    n.Subtract: "a difference",
    n.Multiply: "a product",
    n.Divide: "a division",
    n.Ratio: "a division",
    n.Power: "a power",
    n.Compare: "1 if a condition holds",
    n.Logic: "1 if a condition holds",
    n.Where: "a choice by a condition",
    n.Starting: "a value carried on from step to step",
    n.Shown: "a figure, or words by a condition",
    n.Used: "a number as typed",
}


def _operation(expr: n.Expr) -> str:
    """The outermost operation in a few words."""
    if isinstance(expr, n.Total):
        return f"a total over each {expr.axis.label}"
    if isinstance(expr, n.Running):
        return "a sum so far" if expr.sign == "+" else "a product so far"
    if isinstance(expr, n.Before):
        return f"a total over each {expr.axis.label} that comes before"
    if isinstance(expr, n.Nth):
        return f"a {_picked(expr)} picked by its rank"
    if isinstance(expr, n.Call):
        return _OF_MANY.get(expr.function) or _FUNCTIONS[expr.function].replace("{}", "an amount")
    return _OPERATIONS.get(type(expr), "a figure")
