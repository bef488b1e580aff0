"""What holds of every calculation: right units, known sources, arrays and nodes alike, short enough for a cell."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from farmbook import sources
from farmbook.calc.crop import biological_efficiency
from farmbook.errors import ModelFault
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Call, Expr, Line, Logic, Named, Number, Ratio, Where
from farmbook.expr.walk import walk
from farmbook.units import SYSTEMS, Unit, unit
from tests.calc.functions_of_calc import CALCULATIONS, CONSTANTS, label
from tests.calc.node_mode import Numbers, operand_lines, result_line, worked_in
from tests.calc.published import stated_units

Calculation = Callable[..., Any]
every_calculation = pytest.mark.parametrize("calculation", CALCULATIONS, ids=label)

MOST_OPERANDS = 5
MOST_FUNCTIONS = 3
DRAWS = 12


def plausible(calculation: Calculation) -> dict[str, Numbers]:
    """Random operands: temperatures as they occur in steaming, all else between one tenth and nine tenths."""
    seeded = np.random.default_rng(20240229)
    ranges = {"kelvin": (280.0, 400.0), "degC": (20.0, 126.0), "delta_degC": (5.0, 30.0)}
    found = {}
    for name, of in stated_units(calculation).operands.items():
        low, high = ranges.get(str(of), (0.1, 0.9))
        found[name] = seeded.uniform(low, high, DRAWS)
    return found


@every_calculation
def test_states_a_unit_for_each_operand(calculation: Calculation) -> None:
    assert list(stated_units(calculation).operands) == list(inspect.signature(calculation).parameters)


@every_calculation
def test_cites_a_source_of_the_list(calculation: Calculation) -> None:
    cited = re.search(r"^Source: (\w+)\.$", inspect.getdoc(calculation) or "", re.MULTILINE)
    assert cited, "no source"
    assert sources.source_of(cited[1]).key == cited[1]


@every_calculation
def test_arrays_agree_with_one_number_at_a_time(calculation: Calculation) -> None:
    values = plausible(calculation)
    with np.errstate(invalid="ignore"):
        together = calculation(**values)
        one_by_one = [calculation(**{name: float(row[draw]) for name, row in values.items()}) for draw in range(DRAWS)]
    assert isinstance(together, np.ndarray)
    assert np.isfinite(together).any()
    np.testing.assert_allclose(together, one_by_one, rtol=1e-14)


@every_calculation
def test_builds_a_node_from_nodes(calculation: Calculation) -> None:
    operands = {
        name: Line(f"operand.{name}", name, of, (), build=lambda: Number(1))
        for name, of in stated_units(calculation).operands.items()
    }
    expression = calculation(**operands)
    assert isinstance(expression, Expr)
    used = {node.name for node in walk(expression) if isinstance(node, Line)}
    assert used == {line.name for line in operands.values()}


@every_calculation
@pytest.mark.parametrize("system", SYSTEMS)
def test_lines_in_any_book_agree_with_numbers(calculation: Calculation, system: str) -> None:
    values = plausible(calculation)
    with np.errstate(invalid="ignore"):
        expected = calculation(**values)
    np.testing.assert_allclose(worked_in(system, calculation, values), expected, rtol=1e-9, atol=1e-9)


@every_calculation
def test_fits_into_one_short_formula(calculation: Calculation) -> None:
    """An operand that is written twice is one."""
    nodes = list(walk(calculation(**operand_lines(calculation))))
    operands = {
        node.constant.name if isinstance(node, Named) else node for node in nodes if isinstance(node, (Line, Named))
    }
    assert len(operands) <= MOST_OPERANDS
    assert sum(isinstance(node, (Call, Ratio, Where, Logic)) for node in nodes) <= MOST_FUNCTIONS


@every_calculation
def test_has_no_condition_inside_another(calculation: Calculation) -> None:
    conditions = [node for node in walk(calculation(**operand_lines(calculation))) if isinstance(node, (Ratio, Where))]
    inside = [node for outer in conditions for node in walk(outer) if node is not outer]
    assert not [node for node in inside if isinstance(node, (Ratio, Where))]


@every_calculation
def test_refuses_a_result_of_another_kind(calculation: Calculation) -> None:
    operands = operand_lines(calculation)
    wrong = Unit((*stated_units(calculation).result.powers, ("person_hour", 1)))
    line = Line("result.line", "wrong", wrong, (), build=lambda: calculation(**operands))
    with pytest.raises(ModelFault, match="units do not agree"):
        lower(line, "metric")


@every_calculation
def test_right_result_is_accepted_in_both_kinds_of_book(calculation: Calculation) -> None:
    line = result_line(calculation, operand_lines(calculation))
    for system in SYSTEMS:
        assert isinstance(lower(line, system), Expr)


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda constant: constant.name)
def test_constant_can_be_printed_with_its_source(constant: Any) -> None:
    assert re.fullmatch(r"[a-z]+(_[a-z0-9]+)+", constant.name)
    assert constant.label
    assert sources.source_of(constant.source).key == constant.source


def test_no_two_constants_share_a_name() -> None:
    names = [constant.name for constant in CONSTANTS]
    assert len(set(names)) == len(names)


def test_wet_mass_where_dry_is_meant_stops_the_build() -> None:
    wet = Line("bag.wet", "wet", unit("kg_wet"), (), build=lambda: Number(1))
    picked = Line("bag.picked", "picked", unit("kg_picked"), (), build=lambda: Number(1))
    line = Line(
        "bag.efficiency", "efficiency", unit("kg_picked/kg_dry"), (), build=lambda: biological_efficiency(picked, wet)
    )
    with pytest.raises(ModelFault, match="units do not agree"):
        lower(line, "metric")
