"""What a cell says when it is chosen agrees with what stands beside it."""

from __future__ import annotations

import re
from collections.abc import Mapping

import pytest

from farmbook.sections.declare import NumberInput
from farmbook.workbook.validation import validation_of
from tests.workbook.shipped import ShippedBook


def test_the_usual_range_of_a_prompt_is_the_one_in_the_limit_cells(books: Mapping[str, ShippedBook]) -> None:
    """The height of the site in a US book once said 8005 beside a cell of 8010."""
    told = 0
    for shipped in books.values():
        plan = shipped.plan
        cells = shipped.computed.scenario.cells
        for declared, bound in shipped.computed.model.inputs.items():
            if not isinstance(declared, NumberInput):
                continue
            assert bound.low is not None and bound.high is not None
            message = validation_of(bound.cell, bound, plan)["input_message"]
            found = re.match(r"Usual: (\S+)( %)? to (\S+)( %)?", message)
            assert found, declared.dotted
            scale = 0.01 if found[2] else 1
            for limit, said in ((bound.low, found[1]), (bound.high, found[3].rstrip("."))):
                stands = float(cells[limit].numbers.reshape(-1)[0])
                assert float(said) * scale == pytest.approx(stands, rel=1e-9), declared.dotted
                told += 1
    assert told > 400
