"""Lowering: a line's expression in the display units of one book, conversion factors written in, and kinds checked.

The lowered expression is what both the numbers and the formulas are made from, so they cannot differ. Converting finds
every mixture of kinds on the way: nothing can be converted between units that measure different things.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any, Final

from farmbook.errors import KindMismatch, ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.functions import FUNCTIONS
from farmbook.expr.sentences import Either, Figure, Sentence, Strip
from farmbook.expr.walk import axes_of, ordered_axes
from farmbook.units import MASS_KINDS, SYMBOLS, Unit, displayed, ice_point_shift, unit

__all__ = ["constant_value", "factor_between", "factor_value", "lower"]

PURE: Final = Unit(())
DATE: Final = unit("date")
WHOLE: Final = ("whole_up", "whole_down", "whole_near")
IN_TWO_SYSTEMS: Final = {name for symbol in SYMBOLS.values() if symbol.us for name in (symbol.name, symbol.us)}
"""Symbols of which a US book shows another one: a whole number of these is another amount in each book."""
Lowered = tuple[n.Expr, Unit]


def lower(line: n.Line, system: str, currency: str = "") -> n.Expr:
    """The line's expression in its display unit; `currency` is the sign that stands before money in sentences.

    Raises ModelFault where kinds or axes do not agree, naming the line and where it is declared.
    """
    target = displayed(line.unit, system)
    work = _Lowering(system, currency)
    try:
        core = work.root(line, target)
        extra = set(axes_of(core)) - set(line.axes)
    except KindMismatch as mismatch:
        what = f"units do not agree in line `{line.name}` [{line.unit}]"
        raise ModelFault(what, where=line.where, why=str(mismatch)) from None
    except ModelFault as fault:
        raise ModelFault(f"{fault.what} (line `{line.name}`)", where=line.where, why=fault.why) from None
    if extra:
        names = ", ".join(sorted(axis.label for axis in extra))
        raise ModelFault(
            f"line `{line.name}` has a value for each {names}, which it does not declare", where=line.where
        )
    return core


class _Lowering:
    def __init__(self, system: str, currency: str) -> None:
        self.system, self.currency = system, currency

    def root(self, line: n.Line, target: Unit) -> n.Expr:
        expr = line.expr
        if isinstance(expr, n.Starting):
            axis = _can_be_stepped(line, _last_axis(line))
            if axis in axes_of(expr.opening):
                raise ModelFault(f"an opening value cannot differ by {axis.label}")
            return n.Starting(self.to(expr.opening, target), self.to(expr.step, target))
        if isinstance(expr, n.Running):
            _can_be_stepped(line, expr.axis)
            if expr.sign == "+":
                _no_points(target)
            return replace(expr, expr=self.to(expr.expr, PURE if expr.sign == "*" else target))
        if isinstance(expr, n.Used):  # of a blank cell zero on any scale (rule 3)
            return _convert(expr, displayed(expr.source.unit, self.system), target)
        if isinstance(expr, Sentence):
            return Sentence(tuple(part if isinstance(part, str) else self.part(part) for part in expr.parts))
        if isinstance(expr, n.Shown):
            return replace(expr, value=self.to(expr.value, target), when=self.to(expr.when, PURE))
        return self.to(expr, target)

    def part(self, expr: n.Expr) -> n.Expr:
        """Lower a part of a sentence: a figure takes its sign from its unit."""
        if isinstance(expr, Either):
            return replace(expr, condition=self.to(expr.condition, PURE))
        if isinstance(expr, Strip):
            low, high = (self.to(each, self.natural(expr.value)[1]) for each in (expr.low, expr.high))
            return Strip(self.natural(expr.value)[0], low, high, self.to(expr.places, PURE), self.to(expr.span, PURE))
        if isinstance(expr, Figure):
            core, found = self.natural(expr.value)
            money = dict(found.powers).get("money") == 1
            after = found.said() if expr.named else ""
            sign = self.currency if money else ""
            none = "no figure" if isinstance(expr.value, n.Line) and expr.value.zero_is_none else ""
            return Figure(core, expr.digits, expr.named, sign, found.share, f" {after}" if after else "", none)
        return self.natural(expr)[0]

    def to(self, expr: n.Expr, target: Unit) -> n.Expr:
        """Lower into a wanted unit."""
        if isinstance(expr, n.Number):
            return _bare(expr, target)
        if isinstance(expr, (n.Add, n.Subtract)) and not target.point:
            return _sum_of(self, expr, target)[0]
        if isinstance(expr, n.Where):
            return n.Where(self.to(expr.condition, PURE), self.to(expr.yes, target), self.to(expr.no, target))
        if isinstance(expr, n.Call) and expr.function in WHOLE:
            return _whole(self, expr, target)[0]
        core, found = self.natural(expr)
        return _convert(core, found, target)

    def natural(self, expr: n.Expr) -> Lowered:
        """Lower in whatever unit comes of the operands as they are shown."""
        rule = _RULES.get(type(expr))
        if rule is None:
            raise ModelFault(f"{type(expr).__name__} may stand only as the whole of a line")
        return rule(self, expr)

    def natural_unit(self, expr: n.Expr) -> Unit:
        """The unit alone."""
        return PURE if isinstance(expr, n.Number) else self.natural(expr)[1]


def _number(_work: _Lowering, expr: n.Number) -> Lowered:
    return expr, PURE


def _line(work: _Lowering, expr: n.Line) -> Lowered:
    return expr, displayed(expr.unit, work.system)


def _previous(work: _Lowering, expr: n.Previous) -> Lowered:
    _can_be_stepped(expr.line, expr.axis)
    return expr, displayed(expr.line.unit, work.system)


def _at(work: _Lowering, expr: n.At) -> Lowered:
    _can_be_stepped(expr.line, expr.axis)
    return replace(expr, position=work.to(expr.position, PURE)), displayed(expr.line.unit, work.system)


def _before(work: _Lowering, expr: n.Before) -> Lowered:
    for line in (expr.amount, expr.key):
        if expr.axis not in line.axes:
            raise ModelFault(f"`{line.name}` has no rows of {expr.axis.label}")
    work.to(expr.key, PURE)
    found = work.natural_unit(expr.amount)
    _no_points(found)
    return expr, found


def _nth(work: _Lowering, expr: n.Nth) -> Lowered:
    _stand_in_one_order(expr)
    for key in expr.keys:
        work.to(key, PURE)
    found = [PURE if expr.labels else work.natural_unit(line) for line in expr.shown]
    _no_points(*found)
    for other in found:
        if other != found[0]:
            raise KindMismatch(str(other), str(found[0]))
    return replace(expr, place=work.to(expr.place, PURE), many=work.to(expr.many, PURE)), found[0]


def _stand_in_one_order(expr: n.Nth) -> None:
    """Raise ModelFault unless keys and what is shown are as many single lines, or one each over a list that runs down."""
    over = {line.axes for line in (*expr.keys, *expr.shown)}
    listed = len(over) == len(expr.keys) == 1 and [axis.direction for axis in expr.keys[0].axes] == ["down"]
    if len(expr.keys) != len(expr.shown) or not (over == {()} or (listed and not expr.labels)):
        why = "give as many single lines as keys, or one line each over a list that runs down; labels are those of single lines"
        raise ModelFault("keys and what is shown by them do not stand side by side", why=why)
    if len({line.is_text for line in expr.shown}) > 1:
        raise ModelFault("numbers and texts are ranked together")
    if expr.otherwise and not expr.is_text:
        raise ModelFault(f"numbers are ranked, so there is no place for the words {expr.otherwise!r}")
    if isinstance(expr.place, (n.Number, n.Named)):
        place = expr.place.value if isinstance(expr.place, n.Number) else float(expr.place.constant)
        if place < 1 or place != round(place) or (not listed and place > len(expr.keys)):
            raise ModelFault(f"there is no place {place:g} among {len(expr.keys)} lines")


def _internal_rate(_work: _Lowering, expr: n.InternalRate) -> Lowered:
    _can_be_stepped(expr.line, expr.axis)
    return expr, PURE


def _extreme(work: _Lowering, expr: n.Extreme) -> Lowered:
    _can_be_stepped(expr.line, expr.axis)
    if len(expr.line.axes) > 1:
        raise ModelFault(f"`{expr.line.name}` does not run along {expr.axis.label} alone", where=expr.line.where)
    return expr, work.natural(expr.line)[1]


def _raw(work: _Lowering, expr: n.Raw) -> Lowered:
    return expr, displayed(expr.source.unit, work.system)


def _named(work: _Lowering, expr: n.Named) -> Lowered:
    own = expr.constant.unit
    return expr, displayed(own, work.system) if own.point else own


def _sum_of(work: _Lowering, expr: n.Add | n.Subtract, target: Unit | None = None) -> Lowered:
    if isinstance(expr.left, n.Number) and target is None:
        right, found = work.natural(expr.right)
        return type(expr)(_bare(expr.left, found), right), found
    if target is not None:
        points = isinstance(expr, n.Subtract) and work.natural_unit(expr.left).point
        if not points:
            return type(expr)(work.to(expr.left, target), work.to(expr.right, target)), target
    left, found = work.natural(expr.left)
    if found.point:
        core, unit_found = _from_point(work, expr, left, found)
        return (_convert(core, unit_found, target), target) if target is not None else (core, unit_found)
    return type(expr)(left, work.to(expr.right, found)), found


def _from_point(work: _Lowering, expr: n.Add | n.Subtract, left: n.Expr, scale: Unit) -> Lowered:
    """Temperature less temperature is a difference; temperature and difference make a temperature."""
    difference = unit(f"delta_{scale.powers[0][0]}")
    if isinstance(expr, n.Subtract) and work.natural_unit(expr.right).point:
        return n.Subtract(left, work.to(expr.right, scale)), difference
    return type(expr)(left, work.to(expr.right, difference)), scale


def _product(work: _Lowering, expr: n.Multiply | n.Divide) -> Lowered:
    left, left_unit = work.natural(expr.left)
    right, right_unit = work.natural(expr.right)
    _no_points(left_unit, right_unit)
    return type(expr)(left, right), left_unit.times(right_unit, 1 if isinstance(expr, n.Multiply) else -1)


def _ratio(work: _Lowering, expr: n.Ratio) -> Lowered:
    top, top_unit = work.natural(expr.top)
    bottom, bottom_unit = work.natural(expr.bottom)
    _no_points(top_unit, bottom_unit)
    found = top_unit.times(bottom_unit, -1)
    if isinstance(expr.otherwise, n.Number) and (expr.otherwise.value == 0 or found.share):
        return n.Ratio(top, bottom, expr.otherwise), found
    # the alternative is given in its own unit, so the quotient is brought to that
    otherwise, wanted = work.natural(expr.otherwise)
    return n.Ratio(_convert(top, found, wanted), bottom, otherwise), wanted


def _power(work: _Lowering, expr: n.Power) -> Lowered:
    if isinstance(expr.exponent, n.Number) and not isinstance(expr.base, n.Number):
        base, base_unit = work.natural(expr.base)
        _no_points(base_unit)
        return n.Power(base, expr.exponent), PURE.times(base_unit, expr.exponent.value)
    return n.Power(work.to(expr.base, PURE), work.to(expr.exponent, PURE)), PURE


def _compare(work: _Lowering, expr: n.Compare) -> Lowered:
    if isinstance(expr.left, n.Number):
        right, found = work.natural(expr.right)
        return n.Compare(expr.sign, _bare(expr.left, found), right), PURE
    left, found = work.natural(expr.left)
    return n.Compare(expr.sign, left, work.to(expr.right, found)), PURE


def _logic(work: _Lowering, expr: n.Logic) -> Lowered:
    return n.Logic(expr.kind, tuple(work.to(term, PURE) for term in expr.terms)), PURE


def _where(work: _Lowering, expr: n.Where) -> Lowered:
    given = expr.no if isinstance(expr.yes, n.Number) else expr.yes
    found = work.natural_unit(given)
    return n.Where(work.to(expr.condition, PURE), work.to(expr.yes, found), work.to(expr.no, found)), found


def _call(work: _Lowering, expr: n.Call) -> Lowered:
    if FUNCTIONS[expr.function] == "pure":
        return n.Call(expr.function, tuple(work.to(argument, PURE) for argument in expr.arguments)), PURE
    if FUNCTIONS[expr.function] in ("of a date", "a date"):
        date, *others = expr.arguments
        arguments = (work.to(date, DATE), *(work.to(each, PURE) for each in others))
        return n.Call(expr.function, arguments), DATE if FUNCTIONS[expr.function] == "a date" else PURE
    given = next((argument for argument in expr.arguments if not isinstance(argument, n.Number)), expr.arguments[0])
    found = work.natural_unit(given)
    if expr.function in WHOLE:
        return _whole(work, expr, PURE if found.pure else found)
    if expr.function == "absolute":
        _no_points(found)
    return n.Call(expr.function, tuple(work.to(argument, found) for argument in expr.arguments)), found


def _whole(work: _Lowering, expr: n.Call, wanted: Unit) -> Lowered:
    """Round to whole ones of one unit, which must be the same in every book and no mixture such as h/min."""
    bases = [base for name, _ in wanted.powers for base, _ in SYMBOLS[name].measures]
    if len(bases) > len(set(bases)) or any(name in IN_TWO_SYSTEMS for name, _ in wanted.powers):
        raise KindMismatch(f"a whole number of {wanted}", "a whole number of one unit that every book shows alike")
    return n.Call(expr.function, tuple(work.to(argument, wanted) for argument in expr.arguments)), wanted


def _total(work: _Lowering, expr: n.Total) -> Lowered:
    inside, found = work.natural(expr.expr)
    _no_points(found)
    return replace(expr, expr=inside), found


def _joined(work: _Lowering, expr: n.Joined) -> Lowered:
    inside, found = work.natural(expr.expr)
    wanted = displayed(expr.unit, work.system)
    _no_points(found, wanted)
    if _measured(found) != _measured(wanted):
        raise KindMismatch(str(found), f"{wanted}, with no other change than of kind")
    factor, inverse = factor_between(found, wanted)
    return _scaled(inside, factor, inverse=inverse), wanted


def _choose(work: _Lowering, expr: n.Choose) -> Lowered:
    said = tuple(each if isinstance(each, str) else work.part(each) for each in expr.sentences)
    return replace(expr, state=work.to(expr.state, PURE), sentences=said), PURE


def _plain(_work: _Lowering, expr: n.Expr) -> Lowered:
    return expr, PURE


_RULES: Final[dict[type[n.Expr], Callable[[_Lowering, Any], Lowered]]] = {
    n.Number: _number,
    n.Line: _line,
    n.Previous: _previous,
    n.At: _at,
    n.Before: _before,
    n.Nth: _nth,
    n.InternalRate: _internal_rate,
    n.Extreme: _extreme,
    n.Raw: _raw,
    n.Named: _named,
    n.Add: _sum_of,
    n.Subtract: _sum_of,
    n.Multiply: _product,
    n.Divide: _product,
    n.Ratio: _ratio,
    n.Power: _power,
    n.Compare: _compare,
    n.Logic: _logic,
    n.Where: _where,
    n.Call: _call,
    n.Total: _total,
    n.Joined: _joined,
    n.Choose: _choose,
    n.IsNumber: _plain,
    n.Filled: _plain,
    n.SameText: _plain,
    n.CountWord: _plain,
    n.CountChanged: _plain,
    n.CountUsed: _plain,
    n.FirstLabel: _plain,
    n.Label: _plain,
}


def _bare(number: n.Number, target: Unit) -> n.Number:
    """A bare 0 fits any unit but a temperature scale, which has its zero where it likes; 1 and -1 fit plain numbers."""
    plain = target.share or (target.pure and target.size == 1)
    if plain or (number.value == 0 and not target.point):
        return number
    raise KindMismatch(f"the plain number {number.value}", str(target))


def _last_axis(line: n.Line) -> Axis | None:
    return ordered_axes(line.axes)[-1] if line.axes else None


def _can_be_stepped(line: n.Line, axis: Axis | None) -> Axis:
    if axis is None or not axis.ordered or axis != _last_axis(line):
        along = f" along {axis.label}" if axis is not None else ""
        why = "steps run along the last of a line's lists, and that list must have an order"
        raise ModelFault(f"`{line.name}` has no steps{along}", why=why)
    return axis


def _measured(of: Unit) -> list[tuple[str, int]]:
    """Powers of what has more than one unit (mass of any kind, length, hours, energy, pressure, degrees)."""
    total: dict[str, int] = {}
    for base, power in of.dimension:
        plain = "delta_degC" if base == "kelvin" else _without_kind(base)
        if plain in _CONVERTIBLE:
            total[plain] = total.get(plain, 0) + power
    return sorted((base, power) for base, power in total.items() if power)


def _no_points(*units: Unit) -> None:
    for each in units:
        if each.point:
            raise KindMismatch(
                f"a temperature in {each}", "a difference of temperatures, or one line that gives kelvin"
            )


def _convert(core: n.Expr, found: Unit, target: Unit) -> n.Expr:
    if found.dimension != target.dimension or found.point != target.point:
        raise KindMismatch(str(found), str(target))
    if found.point:
        if found != target:
            raise KindMismatch(str(found), str(target))
        return core
    factor, inverse = factor_between(found, target)
    return _scaled(core, factor, inverse=inverse)


def _scaled(core: n.Expr, factor: n.Factor | None, *, inverse: bool) -> n.Expr:
    if factor is None:
        return core
    return n.Divide(core, factor) if inverse else n.Multiply(core, factor)


@cache
def factor_between(found: Unit, target: Unit) -> tuple[n.Factor | None, bool]:
    """The factor from one unit to another (None if they are the same size), and whether to divide by it."""
    powers: dict[str, int] = {}
    for name, power in found.times(target, -1).powers:
        plain = _without_kind(name)
        powers[plain] = powers.get(plain, 0) + power
    left = tuple(sorted((name, power) for name, power in powers.items() if power and SYMBOLS[name].size != 1))
    if factor_value(left) == 1:
        return None, False
    if all(power < 0 for _, power in left):
        return n.Factor(tuple((name, -power) for name, power in left)), True
    return n.Factor(left), False


def _without_kind(name: str) -> str:
    stem, _, kind = name.partition("_")
    return stem if f"_{kind}" in MASS_KINDS else name


_CONVERTIBLE: Final = {
    _without_kind(base) for symbol in SYMBOLS.values() if symbol.size != 1 for base, _ in symbol.measures
}


def factor_value(powers: tuple[tuple[str, int], ...]) -> Fraction:
    """The exact size of a conversion factor."""
    product = Fraction(1)
    for name, power in powers:
        product *= SYMBOLS[name].size ** power
    return product


def constant_value(constant: n.Constant, system: str) -> float:
    """A constant as a book in this system shows it: only a temperature on a scale changes."""
    if not constant.unit.point or displayed(constant.unit, system) == constant.unit:
        return float(constant)
    target = displayed(constant.unit, system)
    size = float(SYMBOLS[target.powers[0][0]].size)
    shown = (float(constant) - float(ice_point_shift(constant.unit))) / size + float(ice_point_shift(target))
    return float(f"{shown:.15g}")  # 190, not 190.00000000000003: a cell holds fewer digits, and edges are compared
