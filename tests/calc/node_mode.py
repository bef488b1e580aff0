"""A calculation built as a line over operand lines, and worked out in the display units of either kind of book."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

import numpy as np
import numpy.typing as npt

from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Expr, Line, Raw, RawInput
from farmbook.interpret.numbers import Cells, Engine
from farmbook.units import Unit, displayed
from tests.calc.published import convert, stated_units

Numbers = npt.NDArray[np.float64]


def operand_lines(calculation: Callable[..., Any]) -> dict[str, Line]:
    """One line for each operand, in the unit stated for it."""
    return {name: _operand(name, of) for name, of in stated_units(calculation).operands.items()}


def _operand(name: str, of: Unit) -> Line:
    source = RawInput(f"operand.{name}", name, "number", of, ())
    return Line(f"operand.{name}", name, of, (), build=lambda: Raw(source))


def result_line(calculation: Callable[..., Any], operands: Mapping[str, Line]) -> Line:
    """The calculation over those lines, declared in the unit that it states for its result."""
    expression = calculation(**operands)
    assert isinstance(expression, Expr)
    return Line("result.line", calculation.__name__, stated_units(calculation).result, (), build=lambda: expression)


def worked_in(system: str, calculation: Callable[..., Any], values: Mapping[str, Numbers]) -> Numbers:
    """Values in the stated units, carried into the book's units, worked out as lines, and carried back."""
    operands = operand_lines(calculation)
    result = result_line(calculation, operands)
    lines = [*operands.values(), result]
    graph = Graph({line: lower(line, system) for line in lines})
    cells = {
        source: _cells(_carried(values[source.label], source.unit, displayed(source.unit, system)))
        for line in lines
        for source in graph.cells(line)
    }
    found = np.asarray(Engine(graph, {}, system).run(cells)[result], dtype=float)
    return _carried(found, displayed(result.unit, system), result.unit)


def _cells(numbers: Numbers) -> Cells:
    return Cells(numbers, np.full(numbers.shape, "", dtype=str))


def _carried(values: Numbers, of: Unit, to: Unit) -> Numbers:
    return np.array([float(convert(Fraction(value), of, to)) if np.isfinite(value) else value for value in values])
