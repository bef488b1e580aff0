"""Every worked sheet opens with its answer in one sentence, and each answer says a figure of that sheet."""

from __future__ import annotations

import re

import pytest

from farmbook.layout.template import Template, read_templates
from farmbook.results import compute, load_scenario, whole_farm
from tests.workbook.shipped import SCENARIOS

WORKED = [each for each in read_templates() if each.kind == "worked"]


@pytest.mark.parametrize("template", WORKED, ids=lambda each: str(each.sheet))
def test_a_worked_sheet_has_an_answer_of_its_own(template: Template) -> None:
    answers = [each.answer for each in WORKED]
    assert template.answer
    assert answers.count(template.answer) == 1
    line = next(line for line in whole_farm().lines if line.name == template.answer)
    assert line.is_text


@pytest.mark.parametrize("scenario", SCENARIOS)
def test_an_answer_is_short_and_plain(scenario: str) -> None:
    computed = compute(load_scenario(SCENARIOS[scenario]))
    said = {
        line.name: str(value[0, ...])
        for line, value in computed.values.items()
        if line.name.endswith(".answer") and line.is_text
    }
    assert said.keys() >= {template.answer for template in WORKED if template.answer.endswith(".answer")}
    assert len(said) >= 9
    for name, words in said.items():
        assert re.search(r"\d", words), name
        assert words.endswith("."), name
        assert len(words) <= 180, name
        assert not re.search(r"  | \.|\.\.|,,|nan", words), name
