"""Values as they are read outside the book: by people in words, by programs bare."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from farmbook.expr.lower import constant_value
from farmbook.expr.nodes import Constant, Line, RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.layout.forms import NO_FIGURE, change_form, limit_form, line_form, money_sign
from farmbook.layout.page import no_figure
from farmbook.results import Computed
from farmbook.units import displayed, unit

__all__ = [
    "answered",
    "is_number",
    "plain_unit",
    "recorded",
    "spoken",
    "spoken_cell",
    "spoken_change",
    "spoken_constant",
    "spoken_usual",
    "spoken_values",
    "unit_words",
]

MOST_SAID: Final = 3
"""Values of a list that are said before it is folded."""
_FLAG: Final = unit("flag")


def spoken(computed: Computed, line: Line, value: Any) -> str:
    """One value in words, without its unit: a text, a number as the book shows it, or that there is no figure."""
    if not is_number(line, value):
        return _words(line, value)
    unit = displayed(line.unit, computed.scenario.system)
    return line_form(line, unit, money_sign(computed.scenario.currency)).said(float(value))


def spoken_change(computed: Computed, line: Line, value: float) -> str:
    """So much more or less of a line, without its unit."""
    return change_form(line_form(line, displayed(line.unit, computed.scenario.system))).said(value)


def spoken_usual(computed: Computed, line: Line, value: float) -> str:
    """An end of the usual range of a number typed in, without its unit."""
    shown = displayed(line.unit, computed.scenario.system)
    return limit_form(line.unit, shown, money_sign(computed.scenario.currency)).said(value)


def answered(computed: Computed, line: Line, value: Any) -> str:
    """The same, with a yes or a no for a flag, whose 1 and 0 say nothing where its unit does not stand beside it."""
    if line.unit == _FLAG and is_number(line, value):
        return "yes" if value else "no"
    return spoken(computed, line, value)


def spoken_values(computed: Computed, line: Line) -> str:
    """All that a line comes to, in words: its value with its unit; of a list the first three and how many more there are,
    of two lists those of one member."""
    axes = ordered_axes(line.axes)
    values = computed.values[line][0]
    if not axes:
        return _listed(computed, line, [values])
    *outer, last = axes
    count = len(computed.members(last))
    if not all(len(computed.members(axis)) for axis in axes):
        return f"no {' and no '.join(axis.label for axis in axes)} on the list"
    alone = [f"; {axis.label} {computed.members(axis)[0]} alone, of {len(computed.members(axis))}" for axis in outer]
    row = list(values[(0,) * len(outer)][:count])
    more = f" and {count - MOST_SAID} more," if count > MOST_SAID else ""
    return f"{_listed(computed, line, row[:MOST_SAID])}{more} for each {last.label}{''.join(alone)}"


def _listed(computed: Computed, line: Line, values: Sequence[Any]) -> str:
    """Values beside each other, with the unit once."""
    words = unit_words(computed, line) if any(is_number(line, value) for value in values) else ""
    said = ("; " if line.is_text else ", ").join(answered(computed, line, value) for value in values)
    return f"{said} {words}".rstrip()


def spoken_cell(computed: Computed, cell: RawInput) -> str:
    """What stands in the cells of an input as it was typed, which are texts; of many the first three."""
    texts = [str(text) for text in computed.scenario.cells[cell].texts.reshape(-1) if text]
    more = f" and {len(texts) - MOST_SAID} more" if len(texts) > MOST_SAID else ""
    return f"{'; '.join(texts[:MOST_SAID])}{more}" if texts else "left blank"


def unit_words(computed: Computed, line: Line) -> str:
    """The unit said after spoken values, such as `lb a load`; texts and flags have none, nor have shares and money alone."""
    return "" if line.is_text or line.unit == _FLAG else displayed(line.unit, computed.scenario.system).said()


def recorded(line: Line, value: Any) -> float | str:
    """A value for a program: a number, or words for a text and where there is no such figure."""
    return float(value) if is_number(line, value) else _words(line, value)


def is_number(line: Line, value: Any) -> bool:
    """Whether a value is a number; else it is a text, or there is no such figure."""
    return not (line.is_text or isinstance(value, str) or no_figure(line, value))


def _words(line: Line, value: Any) -> str:
    return str(value) if line.is_text or isinstance(value, str) else NO_FIGURE


def plain_unit(computed: Computed, line: Line) -> str:
    """The unit of a line's bare values, such as `lb/run` or `share`; texts have none."""
    return "" if line.is_text else displayed(line.unit, computed.scenario.system).plain(computed.scenario.currency)


def spoken_constant(computed: Computed, constant: Constant) -> str:
    """A constant with its unit, as this book shows it: only a temperature on a scale differs from book to book."""
    system = computed.scenario.system
    unit = displayed(constant.unit, system) if constant.unit.point else constant.unit
    return f"{constant_value(constant, system):g} {unit.shown(computed.scenario.currency)}".rstrip()
