"""Each constant of the calculations: a row of print that would notice it moved, or the reason why there is none."""

from __future__ import annotations

from typing import Final

import pytest

from farmbook.expr.nodes import Constant
from tests.calc.functions_of_calc import CONSTANTS
from tests.calc.slips import moved
from tests.calc.test_published import ROWS
from tests.calc.test_rows_prove_something import holds

DEFINED: Final = "follows from a definition; test_definitions.py works with it"
READ: Final = "stands in the work cited as it stands here; no example in print is worked out from it"
CHOSEN: Final = "a choice of this book, in no publication"
WITHOUT_A_ROW: Final = {
    "altitude_step": CHOSEN,
    "bar_lag_factor": DEFINED,
    "brick_lag_factor": DEFINED,
    "burner_efficiency": CHOSEN,
    "cabinet_power_for_a_bag": CHOSEN,
    "cabinet_room_for_a_bag": CHOSEN,
    "cabinet_steel_for_a_bag": CHOSEN,
    "circle_in_square": DEFINED,
    "circumference_over_diameter": DEFINED,
    "continuous_load_factor": READ,
    "days_in_a_year": DEFINED,
    "electric_efficiency": CHOSEN,
    "far_from_worked": CHOSEN,
    "fibre_saturation": READ,
    "heat_up_loss_share": CHOSEN,
    "hours_in_a_day": DEFINED,
    "hours_in_a_week": DEFINED,
    "inputs_known_to": CHOSEN,
    "last_load_of_a_day": DEFINED,
    "longest_life": CHOSEN,
    "months_in_a_year": DEFINED,
    "natural_gas_heat": READ,
    "plastic_heat_capacity": READ,
    "slab_rate_coefficient": DEFINED,
    "square_root_of_three": DEFINED,
    "sum_tolerance": CHOSEN,
    "table_gauge_pressure": CHOSEN,
    "top_of_troposphere": READ,
}
"""Moved, each of these leaves every row green; the reason why no print can show it."""


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda constant: constant.name)
def test_a_row_notices_a_constant_moved(constant: Constant) -> None:
    with moved(constant):
        noticed = any(not holds(case) for case in ROWS)
    assert noticed != (constant.name in WITHOUT_A_ROW)


def test_only_constants_of_the_calculations_are_excused() -> None:
    assert set(WITHOUT_A_ROW) <= {constant.name for constant in CONSTANTS}
