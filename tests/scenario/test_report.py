"""The model's own checks, told in words."""

from __future__ import annotations

from pathlib import Path

import pytest

from farmbook.errors import ModelFault
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.interpret.numbers import Engine
from farmbook.scenario.report import check_report
from farmbook.scenario.scenario import Scenario, with_cell
from tests.scenario.bakery import MODEL, Bakery, cell, loaded


def report(scenario: Scenario) -> tuple[list[str], list[str]]:
    roots = {line: lower(line, scenario.system) for line in MODEL.lines}
    errors, alerts = check_report(MODEL, Engine(Graph(roots), scenario.sizes, scenario.system).run(scenario.cells))
    return [str(problem) for problem in errors], [str(problem) for problem in alerts]


def test_nothing_to_tell(tmp_path: Path) -> None:
    assert report(loaded(tmp_path)) == ([], [])


def test_a_check_that_fails_speaks_its_declared_words(tmp_path: Path) -> None:
    scenario = loaded(tmp_path)
    cold = with_cell(scenario, cell(Bakery.oven_power), (), None)
    error = "  The bakery: The oven is hot enough\n    The oven is colder than baking needs; look at its heat."
    assert report(cold) == ([error], [])
    alert = "  The bakery: Baking loss is sane\n    More is lost in baking than is left; look at the scale."
    assert report(with_cell(scenario, cell(Bakery.bake_off), (), 0.6)) == ([], [alert])
    assert report(with_cell(cold, cell(Bakery.bake_off), (), 0.6)) == ([error], [alert])


def test_a_check_that_was_not_worked_out_is_a_fault() -> None:
    with pytest.raises(ModelFault, match=r"the check `bakery\.hot` was not worked out"):
        check_report(MODEL, {})
