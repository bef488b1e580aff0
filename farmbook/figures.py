"""Values as they are read outside the book: by people in words, by programs bare."""

from __future__ import annotations

from typing import Any

from farmbook.expr.lower import constant_value
from farmbook.expr.nodes import Constant, Line
from farmbook.layout.forms import NO_FIGURE, line_form, money_sign
from farmbook.layout.page import no_figure
from farmbook.results import Computed
from farmbook.units import displayed

__all__ = ["is_number", "plain_unit", "recorded", "spoken", "spoken_constant", "unit_words"]


def spoken(computed: Computed, line: Line, value: Any) -> str:
    """One value in words, without its unit: a text, a number as the book shows it, or that there is no figure."""
    if not is_number(line, value):
        return _words(line, value)
    unit = displayed(line.unit, computed.scenario.system)
    return line_form(line, unit, money_sign(computed.scenario.currency)).said(float(value))


def unit_words(computed: Computed, line: Line) -> str:
    """The unit said after spoken values, such as `lb a load`; texts have none, nor have shares and money alone."""
    return "" if line.is_text else displayed(line.unit, computed.scenario.system).said()


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
