"""Values as they are read outside the book: by people in words, by programs bare."""

from __future__ import annotations

from typing import Any

from farmbook.expr.lower import constant_value
from farmbook.expr.nodes import Constant, Line
from farmbook.layout.looks import NO_FIGURE, decimals
from farmbook.layout.page import no_figure
from farmbook.results import Computed
from farmbook.units import displayed

__all__ = ["plain_unit", "recorded", "spoken", "spoken_constant", "unit_words"]


def spoken(computed: Computed, line: Line, value: Any) -> str:
    """One value in words, without its unit: a text, a number with the decimals of the book, or that there is no figure."""
    if line.is_text:
        return str(value)
    if no_figure(line, value):
        return NO_FIGURE
    shown = displayed(line.unit, computed.scenario.system)
    return f"{value * 100:,.1f}" if shown.share else f"{value:,.{decimals(shown)}f}"


def unit_words(computed: Computed, line: Line) -> str:
    """The unit beside spoken values, such as `lb/run` or `%`; texts have none."""
    return "" if line.is_text else displayed(line.unit, computed.scenario.system).shown(computed.scenario.currency)


def recorded(line: Line, value: Any, none: float | str = NO_FIGURE) -> float | str:
    """A value for a program: a number or a text, and `none` where there is no such figure."""
    if line.is_text:
        return str(value)
    return none if no_figure(line, value) else float(value)


def plain_unit(computed: Computed, line: Line) -> str:
    """The unit of a line's bare values, such as `lb/run` or `share`; texts have none."""
    return "" if line.is_text else displayed(line.unit, computed.scenario.system).plain(computed.scenario.currency)


def spoken_constant(computed: Computed, constant: Constant) -> str:
    """A constant with its unit, as this book shows it: only a temperature on a scale differs from book to book."""
    system = computed.scenario.system
    unit = displayed(constant.unit, system) if constant.unit.point else constant.unit
    return f"{constant_value(constant, system):g} {unit.shown(computed.scenario.currency)}".rstrip()
