"""Formulas: a lowered line becomes the text of a spreadsheet formula, with gaps where cell addresses go.

Rendered once per line; the writer fills the gaps for each cell. Single-valued lines, inputs and constants are written
by their workbook names, table and time lines by their cells. Only functions known to every spreadsheet program occur.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.sentences import BAR, Either, Figure, Sentence, Strip

__all__ = [
    "FUNCTION_NAMES",
    "NODE_RULES",
    "BlockOf",
    "CellOf",
    "ColumnOf",
    "LineFormula",
    "Part",
    "RangeOf",
    "factor_name",
    "formula_of",
    "named",
    "workbook_name",
]

COMPARED, JOINED, ADDED, MULTIPLIED, RAISED, ATOM = 1, 2, 3, 4, 5, 9
"""Precedence in spreadsheets, where unary minus binds tighter than a power and powers group from the left (rule 10)."""


@dataclass(frozen=True)
class CellOf:
    """The cell of a line or input for the members of the formula's own cell; `back` is one step earlier on an axis."""

    of: n.Line | n.RawInput
    back: Axis | None = None


@dataclass(frozen=True)
class RangeOf:
    """All cells of a line or input along one axis, its other members as in the formula's own cell; `back` as there."""

    of: n.Line | n.RawInput
    axis: Axis
    back: Axis | None = None


@dataclass(frozen=True)
class BlockOf:
    """The smallest block of a sheet that holds all these cells; `labels` takes the column of their labels instead."""

    of: tuple[n.RawInput | n.Line, ...]
    labels: bool = False


@dataclass(frozen=True)
class ColumnOf:
    """The cells of these lines, which stand one under another in this order; `labels` takes their labels instead."""

    of: tuple[n.Line, ...]
    labels: bool = False


Part = str | CellOf | RangeOf | BlockOf | ColumnOf
Parts = tuple[Part, ...]


@dataclass(frozen=True)
class LineFormula:
    """The formula of every cell of a line, and that of its opening cell if it has one."""

    step: Parts
    opening: Parts | None = None


@dataclass(frozen=True)
class _Text:
    parts: Parts
    binds: int = ATOM
    boolean: bool = False

    def at(self, least: int) -> Parts:
        """The parts, in brackets where they bind more loosely than the surroundings need."""
        return self.parts if self.binds >= least else ("(", *self.parts, ")")

    @property
    def number(self) -> _Text:
        """Never a yes/no value: those differ between programs."""
        return _Text((*self.at(MULTIPLIED), "*1"), MULTIPLIED) if self.boolean else self


def named(of: n.Line | n.RawInput) -> bool:
    """Whether formulas go by a name: a single value does, but for limits, and lines of a case, of which there are many."""
    if isinstance(of, n.Line):
        return not of.axes and not of.case
    return not of.axes and of.kind not in ("low", "high", "least", "most")


def workbook_name(of: n.Line | n.RawInput) -> str:
    """The defined name of a single cell."""
    return of.name.replace(".", "_")


def factor_name(powers: tuple[tuple[str, int], ...]) -> str:
    """The defined name of a conversion factor: `lb_in_kg`, `ft3_per_gal`."""
    above = "_".join(f"{name}{power if power > 1 else ''}" for name, power in powers if power > 0)
    below = "_".join(f"{name}{-power if power < -1 else ''}" for name, power in powers if power < 0)
    return f"factor_{above or 'one'}".lower() + (f"_per_{below}".lower() if below else "")


def formula_of(line: n.Line, root: n.Expr) -> LineFormula:
    """The formula of a line from its lowered expression."""
    write = _Writer(line)
    if isinstance(root, n.Starting):
        return LineFormula(write.value(root.step).parts, write.value(root.opening).parts)
    if isinstance(root, Sentence):
        return LineFormula(_sentence(write, root))
    if isinstance(root, n.Shown):
        return LineFormula(_either(write, root.when, write.value(root.value).parts, (_quoted(root.words),)).parts)
    if isinstance(root, n.Running):
        earlier = CellOf(line, back=root.axis)
        inner = write.value(root.expr).at(ADDED if root.sign == "+" else MULTIPLIED)
        return LineFormula((earlier, root.sign, *inner), ("0" if root.sign == "+" else "1",))
    return LineFormula(write.value(root).parts)


def _sentence(w: _Writer, x: Sentence) -> Parts:
    """The parts joined by &."""
    parts: list[Part] = []
    for part in x.parts:
        parts += ["&", *((_quoted(part),) if isinstance(part, str) else _part(w, part))]
    return tuple(parts[1:])


def _strip(w: _Writer, x: Strip) -> Parts:
    value, low, high, places, span = (w.value(each) for each in (x.value, x.low, x.high, x.places, x.span))
    width = ("(", *high.at(ADDED), "-", *low.at(MULTIPLIED), ")")
    passed = ("INT((", *value.at(ADDED), "-", *low.at(MULTIPLIED), ")/", *width, "*", *span.at(MULTIPLIED), ")")
    return ("MID(", _quoted(BAR), ",", *places.at(ADDED), "-", *passed, ",", *places.parts, ")")


def _part(w: _Writer, x: n.Expr) -> Parts:
    if isinstance(x, Strip):
        return _strip(w, x)
    if isinstance(x, Either):
        yes, no = ((_quoted(each),) if isinstance(each, str) else w.value(each).parts for each in (x.yes, x.no))
        return _either(w, x.condition, yes, no).parts
    if isinstance(x, Figure):
        times = ("*100",) if x.percent else ()
        behind = ("%" if x.percent else "") + x.after
        plain = w.value(x.value).at(MULTIPLIED)
        value = (*plain, *times)
        minus = ('LEFT("-",1*(ROUND(', *value, f",{x.digits})<0))&", *((f"{_quoted(x.sign)}&",) if x.sign else ()))
        shown = (*minus, "FIXED(ABS(", *value, f"),{x.digits})", *((f"&{_quoted(behind)}",) if behind else ()))
        return ("IF(", *plain, "=0,", _quoted(x.none), ",", *shown, ")") if x.none else shown
    return w.value(x).parts


class _Writer:
    """Writes one line's formula; `over` is the axis being summed, inside a total."""

    def __init__(self, line: n.Line, over: Axis | None = None) -> None:
        self.line, self.over = line, over

    def write(self, expr: n.Expr) -> _Text:
        return NODE_RULES[type(expr)](self, expr)

    def value(self, expr: n.Expr) -> _Text:
        return self.write(expr).number

    def cell(self, of: n.Line | n.RawInput) -> _Text:
        if named(of):
            return _Text((workbook_name(of),))
        if self.over is not None and self.over in of.axes:
            return _Text((RangeOf(of, self.over),))
        return _Text((CellOf(of),))

    def call(self, name: str, *arguments: n.Expr) -> _Text:
        inside: list[Part] = []
        for argument in arguments:
            inside += [",", *self.value(argument).parts]
        return _Text((f"{name}(", *inside[1:], ")"))

    def alone(self, what: str) -> None:
        """Inside a total only signs work, and one step earlier on another axis: of a function over a range some programs see
        one cell, and say nothing."""
        if self.over is not None:
            what = f"{what} stands inside a total (line `{self.line.name}`)"
            raise ModelFault(what, where=self.line.where, why="make it a line first")


def _number(_w: _Writer, x: n.Number) -> _Text:
    return _Text((str(x.value),), ATOM if x.value >= 0 else ADDED)


def _named(_w: _Writer, x: n.Named) -> _Text:
    return _Text((x.constant.name,))


def _factor(_w: _Writer, x: n.Factor) -> _Text:
    return _Text((factor_name(x.powers),))


def _cell(w: _Writer, x: n.Line) -> _Text:
    return w.cell(x)


def _infix(sign: str, binds: int, right: int) -> Callable[[_Writer, Any], _Text]:
    def rule(w: _Writer, x: Any) -> _Text:
        return _Text((*w.write(x.left).at(binds), sign, *w.write(x.right).at(right)), binds)

    return rule


def _ratio(w: _Writer, x: n.Ratio) -> _Text:
    w.alone("a guarded division")
    top, bottom, other = w.write(x.top), w.value(x.bottom), w.value(x.otherwise)
    return _Text(
        ("IF(", *bottom.at(JOINED), "=0,", *other.parts, ",", *top.at(MULTIPLIED), "/", *bottom.at(RAISED), ")")
    )


def _power(w: _Writer, x: n.Power) -> _Text:
    return _Text((*w.value(x.base).at(ATOM), "^", *w.value(x.exponent).at(ATOM)), RAISED)


def _compare(w: _Writer, x: n.Compare) -> _Text:
    parts = (*w.value(x.left).at(JOINED), x.sign, *w.value(x.right).at(JOINED))
    return _Text(("(", *parts, ")"), ATOM, boolean=True)


def _logic(w: _Writer, x: n.Logic) -> _Text:
    w.alone("a joined condition")
    inside: list[Part] = []
    for term in x.terms:
        inside += [",", *w.write(term).parts]
    return _Text(({"all": "AND(", "any": "OR(", "not": "NOT("}[x.kind], *inside[1:], ")"), ATOM, boolean=True)


def _where(w: _Writer, x: n.Where) -> _Text:
    w.alone("a choice")
    return _either(w, x.condition, w.value(x.yes).parts, w.value(x.no).parts)


def _either(w: _Writer, condition: n.Expr, yes: Parts, no: Parts) -> _Text:
    asked = w.write(condition)
    # of a bare name some programs make a list of one, and then IF inside a function is an error
    parts = asked.parts if asked.boolean else (*asked.at(JOINED), "<>0")
    return _Text(("IF(", *parts, ",", *yes, ",", *no, ")"))


FUNCTION_NAMES: Final[dict[str, str]] = {
    "minimum": "MIN",
    "maximum": "MAX",
    "mean": "AVERAGE",
    "absolute": "ABS",
    "whole_down": "INT",
    "exponential": "EXP",
    "natural_log": "LN",
    "log_10": "LOG10",
    "square_root": "SQRT",
    "whole_up": "ROUNDUP",
    "whole_near": "ROUND",
    "calendar_month": "MONTH",
    "calendar_year": "YEAR",
    "month_start": "EOMONTH",
}


def _call(w: _Writer, x: n.Call) -> _Text:
    w.alone(f"the function {x.function}")
    if x.function in ("whole_up", "whole_near"):
        return _Text((f"{FUNCTION_NAMES[x.function]}(ROUND(", *w.value(x.arguments[0]).parts, ",9),0)"))
    if x.function == "whole_down":
        return _Text(("INT(ROUND(", *w.value(x.arguments[0]).parts, ",9))"))
    if x.function == "month_start":  # the day after the last one of the month before
        date, months = (w.value(each) for each in x.arguments)
        return _Text(("(EOMONTH(", *date.parts, ",", *months.at(ADDED), "-1)+1)"))
    return w.call(FUNCTION_NAMES[x.function], *x.arguments)


def _total(w: _Writer, x: n.Total) -> _Text:
    w.alone("a total")
    inside = _Writer(w.line, x.axis).value(x.expr)
    return _Text(("SUM(" if isinstance(x.expr, n.Line) else "SUMPRODUCT(", *inside.parts, ")"))


def _previous(w: _Writer, x: n.Previous) -> _Text:
    if w.over == x.axis:
        w.alone("a value one step earlier")
    if w.over is not None and w.over in x.line.axes:
        return _Text((RangeOf(x.line, w.over, back=x.axis),))
    return _Text((CellOf(x.line, back=x.axis),))


def _at(w: _Writer, x: n.At) -> _Text:
    w.alone("a value at another step")
    position = w.value(x.position).parts
    whole: Parts = (RangeOf(x.line, x.axis),)
    if x.axis.direction == "down":
        return _Text(("INDEX(", *whole, ",", *position, ",1)"))
    return _Text(("INDEX(", *whole, ",1,", *position, ")"))


def _before(w: _Writer, x: n.Before) -> _Text:
    w.alone("what comes before a row")
    lower = ("(", RangeOf(x.key, x.axis), "<", CellOf(x.key), ")")
    return _Text(("SUMPRODUCT(", *lower, "*", RangeOf(x.amount, x.axis), ")"))


def _nth(w: _Writer, x: n.Nth) -> _Text:
    w.alone("a place in an order")
    place, many, keys = w.value(x.place), w.value(x.many), ColumnOf(x.keys)
    row: Parts = ("MATCH(LARGE(", keys, ",", *place.parts, "),", keys, ",0)")
    found: Parts = ("INDEX(", ColumnOf(x.shown, labels=x.labels), ",", *row, ",1)")
    otherwise = _quoted(x.otherwise) if x.is_text else "0"
    return _Text(("IF(", *place.at(JOINED), "<=", *many.at(JOINED), ",", *found, ",", otherwise, ")"))


def _internal_rate(w: _Writer, x: n.InternalRate) -> _Text:
    w.alone("an internal rate")
    return _Text(("IFERROR(IRR(", RangeOf(x.line, x.axis), "),0)"))


def _extreme(w: _Writer, x: n.Extreme) -> _Text:
    w.alone("the least or the most")
    return _Text(("MAX(" if x.most else "MIN(", RangeOf(x.line, x.axis), ")"))


def _raw(w: _Writer, x: n.Raw) -> _Text:
    return w.cell(x.source)


def _is_number(w: _Writer, x: n.IsNumber) -> _Text:
    w.alone("whether a cell holds a number")
    return _Text(("ISNUMBER(", *w.cell(x.source).parts, ")"), ATOM, boolean=True)


def _used(w: _Writer, x: n.Used) -> _Text:
    cell = w.cell(x.source).parts
    guards = [part for line in x.presents for part in (*w.cell(line).parts, ",")]
    number: Parts = ("ISNUMBER(", *cell, ")")
    return _Text(("IF(", *(("AND(", *guards, *number, ")") if guards else number), ",", *cell, ",0)"))


def _filled(w: _Writer, x: n.Filled) -> _Text:
    return _Text(("(", *w.cell(x.source).parts, '<>"")'), ATOM, boolean=True)


def _quoted(text: str) -> str:
    return '"' + text.replace('"', '""') + '"'


def _same_text(w: _Writer, x: n.SameText) -> _Text:
    sides: list[Parts] = []
    for side in (x.left, x.right):
        if isinstance(side, n.Word):
            sides.append((_quoted(side.text),))
        else:
            sides.append(w.cell(side).parts)
    return _Text(("(", *sides[0], "=", *sides[1], ")"), ATOM, boolean=True)


def _sought(word: str | int) -> str:
    """What is counted or looked for, as a formula says it."""
    return _quoted(word) if isinstance(word, str) else str(word)


def _count_word(_w: _Writer, x: n.CountWord) -> _Text:
    return _Text(("COUNTIF(", BlockOf(x.sources), ",", _sought(x.word), ")"))


def _count_changed(_w: _Writer, x: n.CountChanged) -> _Text:
    now, built = BlockOf(x.now), BlockOf(x.built)
    as_texts: Parts = ("(", now, '&""<>', built, '&"")')  # a blank cell and a zero are alike otherwise
    still: Parts = ("*(", BlockOf(x.bases), "=", _quoted(x.word), ")") if x.bases else ()
    return _Text(("SUMPRODUCT((((", now, "<>", built, ")+", *as_texts, ")>0)*1", *still, ")"))


def _count_used(_w: _Writer, x: n.CountUsed) -> _Text:
    used: list[Part] = []
    for line in x.presents:
        used += ["*", RangeOf(line, line.axes[0])]
    return _Text(("SUMPRODUCT((", BlockOf(x.sources), "=", _quoted(x.word), ")*1", *used, ")"))


def _first_label(_w: _Writer, x: n.FirstLabel) -> _Text:
    block, word = BlockOf(x.lines), _sought(x.word)
    found: Parts = ("INDEX(", BlockOf(x.lines, labels=True), ",MATCH(", word, ",", block, ",0),1)")
    return _Text(("IF(COUNTIF(", block, ",", word, ")=0,", _quoted(x.otherwise), ",", *found, ")"))


def _label(w: _Writer, x: n.Label) -> _Text:
    cell = w.cell(x.source).parts
    return _Text(("IF(", *cell, '="",', _quoted(x.otherwise), ",", *cell, '&"")'))


def _choose(w: _Writer, x: n.Choose) -> _Text:
    said: list[Part] = []
    for each in x.sentences:
        said += [",", *((_quoted(each),) if isinstance(each, str) else _part(w, each))]
    return _Text(("CHOOSE(", *w.value(x.state).parts, *said, ")"))


NODE_RULES: Final[dict[type[n.Expr], Callable[[_Writer, Any], _Text]]] = {
    n.Number: _number,
    n.Named: _named,
    n.Factor: _factor,
    n.Line: _cell,
    n.Add: _infix("+", ADDED, ADDED),
    n.Subtract: _infix("-", ADDED, MULTIPLIED),
    n.Multiply: _infix("*", MULTIPLIED, MULTIPLIED),
    n.Divide: _infix("/", MULTIPLIED, RAISED),
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: _total,
    n.Previous: _previous,
    n.At: _at,
    n.Before: _before,
    n.Nth: _nth,
    n.InternalRate: _internal_rate,
    n.Extreme: _extreme,
    n.Raw: _raw,
    n.Used: _used,
    n.IsNumber: _is_number,
    n.Filled: _filled,
    n.SameText: _same_text,
    n.CountWord: _count_word,
    n.CountChanged: _count_changed,
    n.CountUsed: _count_used,
    n.FirstLabel: _first_label,
    n.Label: _label,
    n.Choose: _choose,
}
