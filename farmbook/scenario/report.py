"""The model's own checks, after the numbers are worked out: what is wrong, and what is bad news."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from farmbook.errors import DoesNotAddUp, ModelFault, Problem
from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Array
from farmbook.scenario.scenario import Scenario
from farmbook.sections.declare import Check
from farmbook.sections.model import Model
from farmbook.sections.section import Section

__all__ = ["check_report", "require_sound"]


def check_report(model: Model, results: Mapping[Line, Array]) -> tuple[list[Problem], list[Problem]]:
    """Errors and alerts among the checks that fail, in reading order, each with the text of its declaration.

    Raises ModelFault for a check that was not worked out.
    """
    errors: list[Problem] = []
    alerts: list[Problem] = []
    for section in model.sections:
        for declared in section.declared:
            if isinstance(declared, Check) and _fails(section.line(declared), results):
                found = errors if declared.kind == "error" else alerts
                found.append(_problem(section, declared))
    return errors, alerts


def require_sound(scenario: Scenario, model: Model, results: Mapping[Line, Array]) -> None:
    """Raise DoesNotAddUp, with every error, for a farm that cannot work as it is described."""
    errors, _ = check_report(model, results)
    if errors:
        raise DoesNotAddUp(scenario.path, errors)


def _fails(line: Line, results: Mapping[Line, Array]) -> bool:
    if line not in results:
        raise ModelFault(f"the check `{line.name}` was not worked out", where=line.where)
    return bool(np.any(results[line] != 1))


def _problem(section: Section, declared: Check) -> Problem:
    return Problem(f"{section.title}: {declared.label}", "", declared.says)
