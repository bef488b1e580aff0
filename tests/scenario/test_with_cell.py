"""One cell typed over, as a person would in the workbook."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from farmbook.errors import ModelFault
from farmbook.scenario.scenario import Scenario, with_cell
from tests.scenario.bakery import LOAF, MODEL, Bakery, Sale, basis, cell, loaded


@pytest.fixture
def bakery(tmp_path: Path) -> Scenario:
    return loaded(tmp_path)


def test_a_number_typed(bakery: Scenario) -> None:
    edited = with_cell(bakery, cell(Sale.sold), (1, 0), 12.5)
    assert edited.cells[cell(Sale.sold)].numbers[0, 1].tolist() == [12.5, 0, 0]
    assert bakery.cells[cell(Sale.sold)].numbers[0, 1].tolist() == [0, 0, 0]
    assert edited.cells[cell(Sale.width)] is bakery.cells[cell(Sale.width)]


def test_a_text_in_a_number_cell_is_no_number(bakery: Scenario) -> None:
    edited = with_cell(bakery, cell(Bakery.oven_power), (), "much more than eighteen")
    cells = edited.cells[cell(Bakery.oven_power)]
    assert math.isnan(cells.numbers[0])
    assert cells.texts.tolist() == ["much more than eighteen"]


def test_a_cell_cleared(bakery: Scenario) -> None:
    cleared = with_cell(with_cell(bakery, cell(Bakery.oven_power), (), "x"), cell(Bakery.oven_power), (), None)
    assert math.isnan(cleared.cells[cell(Bakery.oven_power)].numbers[0])
    assert cleared.cells[cell(Bakery.oven_power)].texts.tolist() == [""]
    assert with_cell(bakery, cell(Sale.loaves), (0,), None).cells[cell(Sale.loaves)].texts[0, 0] == ""


@pytest.mark.parametrize(
    ("typed", "text"), [(7.0, "7"), (7.5, "7.5"), ("A much longer name than before", None), (-3, "-3")]
)
def test_a_number_in_a_text_cell_is_the_text_of_its_digits(
    bakery: Scenario, typed: float | str, text: str | None
) -> None:
    cells = with_cell(bakery, cell(Sale.loaves), (3,), typed).cells[cell(Sale.loaves)]
    assert cells.texts[0].tolist() == ["Rye", "White tin", "", text or typed]
    assert math.isnan(cells.numbers[0, 3])


def test_basis_and_limits_are_cells_too(bakery: Scenario) -> None:
    assert with_cell(bakery, basis(Bakery.wall), (), "measured").cells[basis(Bakery.wall)].texts.tolist() == [
        "measured"
    ]
    low = MODEL.inputs[Bakery.wall].low
    assert low is not None
    assert with_cell(bakery, low, (), 1.5).cells[low].numbers.tolist() == [1.5]


def test_a_cell_that_is_not_there(bakery: Scenario) -> None:
    with pytest.raises(ModelFault, match=r"no cell \(1,\) of `bakery.wall`"):
        with_cell(bakery, cell(Bakery.wall), (1,), 3)
    with pytest.raises(ModelFault, match="no cell"):
        with_cell(bakery, cell(Sale.loaves), (bakery.sizes[LOAF],), "x")
