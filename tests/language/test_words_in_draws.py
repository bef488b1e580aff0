"""Words are compared without regard to capitals, in one scenario and in many at once."""

from __future__ import annotations

import numpy as np
import pytest

from farmbook.expr.functions import is_word
from farmbook.expr.graph import Graph
from farmbook.expr.nodes import CountUsed, CountWord, Line, RawInput
from farmbook.interpret.numbers import Cells, Engine
from farmbook.units import unit

CELL = RawInput("trial.fuel", "Fuel", "choice", unit("1"), ())
WORD = "Natural GAS"
LINES = (
    Line("trial.is", "is", unit("flag"), (), lambda: is_word(CELL, WORD)),
    Line("trial.counted", "counted", unit("count"), (), lambda: CountWord((CELL,), WORD)),
    Line("trial.counted_in_use", "counted in use", unit("count"), (), lambda: CountUsed((CELL,), WORD, ())),
)


@pytest.mark.parametrize(
    ("texts", "found"),
    [(("natural gas",), [1]), (("propane",), [0]), (("natural gas", "propane", "NATURAL GAS"), [1, 0, 1])],
)
def test_a_word_with_capitals_is_met_by_any_spelling(texts: tuple[str, ...], found: list[float]) -> None:
    cells = {CELL: Cells(np.full(len(texts), np.nan), np.array(texts, dtype=object))}
    values = Engine(Graph({line: line.expr for line in LINES}), {}, "metric").run(cells)
    for line in LINES:
        assert values[line].tolist() == found, line.name
