"""The closed list of functions. Each takes floats, arrays or nodes and returns the same kind.

A name here needs a rule in every interpreter; a test holds that no entry is without one.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final, TypeVar, cast

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import (
    At,
    Call,
    Choose,
    Expr,
    Extreme,
    InternalRate,
    Joined,
    Line,
    Logic,
    Named,
    Number,
    Previous,
    Ratio,
    RawInput,
    Running,
    SameText,
    Shown,
    Starting,
    Total,
    Where,
    Word,
    wrap,
)
from farmbook.units import unit

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    Array = npt.NDArray[np.float64]

__all__ = [
    "FUNCTIONS",
    "Operand",
    "absolute",
    "all_of",
    "any_of",
    "at",
    "calendar_month",
    "calendar_year",
    "exponential",
    "highest_of",
    "internal_rate",
    "interpolated",
    "is_word",
    "joined",
    "log_10",
    "lowest_of",
    "maximum",
    "mean",
    "minimum",
    "month_start",
    "natural_log",
    "negation",
    "previous",
    "ratio",
    "row_shifted",
    "running_product",
    "running_sum",
    "same_text",
    "sentence",
    "shifted",
    "shown",
    "square_root",
    "starting",
    "total",
    "where",
    "whole_down",
    "whole_near",
    "whole_up",
]

Operand = TypeVar("Operand", float, "Array", Expr)
"""A float, an array of floats, or a node of the model."""


FUNCTIONS: Final[dict[str, str]] = {
    **dict.fromkeys(("minimum", "maximum", "mean", "absolute", "whole_up", "whole_down", "whole_near"), "same"),
    **dict.fromkeys(("exponential", "natural_log", "log_10", "square_root"), "pure"),
    **dict.fromkeys(("calendar_month", "calendar_year"), "of a date"),
    "month_start": "a date",
}
"""Name: how units pass through ("same": one for arguments and result; "pure": plain numbers; "of a date": a date gives a
plain number; "a date": a date and plain numbers give a date)."""


def _call(function: str, *arguments: Any) -> Any:
    if any(isinstance(argument, Expr) for argument in arguments):
        return Call(function, tuple(wrap(argument) for argument in arguments))
    from farmbook.expr.number_rules import NUMBER_RULES  # for start-up speed

    return NUMBER_RULES[function](*arguments)


def minimum(a: Operand, b: Operand | float) -> Operand:
    """The smaller of two."""
    return cast(Operand, _call("minimum", a, b))


def maximum(a: Operand, b: Operand | float) -> Operand:
    """The larger of two."""
    return cast(Operand, _call("maximum", a, b))


def mean(a: Operand, b: Operand) -> Operand:
    """Half way between two."""
    return cast(Operand, _call("mean", a, b))


def absolute(x: Operand) -> Operand:
    """The size without the sign."""
    return cast(Operand, _call("absolute", x))


def whole_up(x: Operand) -> Operand:
    """The next whole number at or above, judged to nine digits (rule 6); for amounts of zero and more."""
    return cast(Operand, _call("whole_up", x))


def whole_down(x: Operand) -> Operand:
    """The next whole number at or below, judged to nine digits (rule 6)."""
    return cast(Operand, _call("whole_down", x))


def whole_near(x: Operand) -> Operand:
    """The nearest whole number, halves away from zero, judged to nine digits (rule 6); to compare amounts, not to round
    them."""
    return cast(Operand, _call("whole_near", x))


def exponential(x: Operand) -> Operand:
    """e raised to x."""
    return cast(Operand, _call("exponential", x))


def natural_log(x: Operand) -> Operand:
    """Natural logarithm."""
    return cast(Operand, _call("natural_log", x))


def log_10(x: Operand) -> Operand:
    """Logarithm to base ten."""
    return cast(Operand, _call("log_10", x))


def square_root(x: Operand) -> Operand:
    """Square root of a plain number."""
    return cast(Operand, _call("square_root", x))


def calendar_month(date: Operand) -> Operand:
    """The month of a date, 1 to 12; for dates from March 1900 on, where all spreadsheets count alike."""
    return cast(Operand, _call("calendar_month", date))


def calendar_year(date: Operand) -> Operand:
    """The year of a date, such as 2027."""
    return cast(Operand, _call("calendar_year", date))


def month_start(date: Operand, months: Operand | float) -> Operand:
    """The first day of the month that is so many whole months after that of a date; of 0, of its own month."""
    return cast(Operand, _call("month_start", date, months))


def ratio(top: Operand, bottom: Operand, otherwise: Operand | float = 0) -> Operand:
    """`top / bottom`; `otherwise` where the bottom is zero (rule 7)."""
    if any(isinstance(argument, Expr) for argument in (top, bottom, otherwise)):
        return cast(Operand, Ratio(wrap(top), wrap(bottom), wrap(otherwise)))
    from farmbook.expr.number_rules import quotient  # for start-up speed

    return cast(Operand, quotient(top, bottom, otherwise))


def where(condition: Operand, yes: Operand | float, no: Operand | float) -> Operand:
    """`yes` where the condition is not zero, else `no`."""
    if any(isinstance(argument, Expr) for argument in (condition, yes, no)):
        return cast(Operand, Where(wrap(condition), wrap(yes), wrap(no)))
    from farmbook.expr.number_rules import chosen  # for start-up speed

    return cast(Operand, chosen(condition, yes, no))


def all_of(*conditions: Expr) -> Expr:
    """1 where every condition holds."""
    return Logic("all", conditions)


def any_of(*conditions: Expr) -> Expr:
    """1 where at least one condition holds."""
    return Logic("any", conditions)


def negation(condition: Expr) -> Expr:
    """1 where the condition does not hold."""
    return Logic("not", (condition,))


def joined(expr: Operand, to: str) -> Operand:
    """The same amount as another kind of quantity, such as `kg_dry` out of `kg_wet`; numbers pass unchanged."""
    if isinstance(expr, Expr):
        return cast(Operand, Joined(expr, unit(to)))
    return expr


def total(expr: Expr, axis: Axis) -> Expr:
    """Sum over an axis."""
    return Total(expr, axis)


def previous(line: Expr, axis: Axis) -> Expr:
    """A line's value one step earlier along an ordered axis."""
    return Previous(as_line(line), axis)


def starting(opening: Expr | float, step: Expr) -> Expr:
    """The opening value, and the rule for every step; only as the whole of a line."""
    return Starting(wrap(opening), step)


def running_sum(expr: Expr | float, axis: Axis) -> Expr:
    """Sum so far along an ordered axis; only as the whole of a line."""
    return Running("+", wrap(expr), axis)


def running_product(expr: Expr, axis: Axis) -> Expr:
    """Product so far along an ordered axis; only as the whole of a line."""
    return Running("*", expr, axis)


def at(line: Expr, axis: Axis, position: Expr) -> Expr:
    """A line's value at a whole position, counted from 1, along an ordered axis."""
    return At(as_line(line), axis, position)


def row_shifted(position: Expr, whole: Expr, rows: Expr) -> Expr:
    """The earlier of the two rows that a shift looks at, kept inside the list; only as the whole of a line.

    `position` is the line that numbers the list from 1, `whole` the whole steps at or below the lag (negative for a
    lead), `rows` how many the list has.
    """
    return minimum(maximum(position - whole - 1, 1), rows - 1)


def shifted(line: Expr, axis: Axis, *, row: Expr, part: Expr) -> Expr:
    """A line's value some steps earlier (or later), interpolated so that a total is conserved.

    `row` is the line made by `row_shifted`, `part` the lag less its whole steps, 0 to 1. The list must carry margins,
    empty at both ends, that are wider than any lag or lead allowed; then no amount falls off an end.
    """
    return at(line, axis, row + 1) * (1 - part) + at(line, axis, row) * part


def interpolated(line: Expr, axis: Axis, *, whole: Expr, part: Expr) -> Expr:
    """A line's value between two steps: `part` of the way from step `whole` to the next."""
    return at(line, axis, whole) * (1 - part) + at(line, axis, whole + 1) * part


def internal_rate(flows: Expr, axis: Axis) -> Expr:
    """The rate for each step at which a line's flows are worth nothing together, the first flow not discounted.

    Found by trial, so nothing may be worked out from it (rule 7), and it is to be asked for only where the flows change
    sign once; 0 where none is found.
    """
    return InternalRate(as_line(flows), axis)


def lowest_of(line: Expr, axis: Axis) -> Expr:
    """The least that a line comes to along an axis."""
    return Extreme(as_line(line, "a least"), axis, most=False)


def highest_of(line: Expr, axis: Axis) -> Expr:
    """The most that a line comes to along an axis."""
    return Extreme(as_line(line, "a most"), axis, most=True)


def same_text(left: RawInput, right: RawInput) -> Expr:
    """1 where two texts agree, upper or lower case alike."""
    return SameText(left, right)


def is_word(choice: RawInput, word: str) -> Expr:
    """1 where the option chosen is this word."""
    return SameText(choice, Word(word))


def sentence(state: Expr, *sentences: str) -> Expr:
    """One of several sentences: the first where the state is 1, the second where it is 2."""
    return Choose(state, sentences)


def shown(value: Expr, when: Expr, words: str) -> Expr:
    """A figure where `when` is not zero, else words that say why there is none; only as the whole of a line that nothing
    is worked out from."""
    return Shown(value, when, words)


def as_line(expr: Expr, what: str = "a value at another step") -> Line:
    """The line itself; raises ModelFault for any other expression, which has no `what`."""
    if not isinstance(expr, Line):
        raise ModelFault(f"only a line has {what}", why=f"found {type(expr).__name__}")
    return expr


def zero() -> Expr:
    """The number 0 as a node."""
    return Number(0)


def named(constant: Any) -> Expr:
    """A constant as a node, for expressions made of constants alone."""
    return Named(constant)
