"""Checks of safety and of food law: farms that leave a danger open, and farms that see to it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked

__all__ = ["SAFETY"]

BOILER: Final = {"safety.boiler": "there is one", "safety.inspection": 0, "safety.insurance": 0}
HIRED: Final = {"hours.counted": "hours paid", "hours.hired_hours": 1, "safety.respirators": 0}
OWN_HANDS: Final = {**HIRED, "hours.hired_hours": 0}
TESTED: Final = {"safety.tests": "two limits, as typed", "safety.covered_above": 30000, "safety.exempt_below": 500000}
LARGE: Final = {**TESTED, "safety.produce": 30001}

SAFETY: Final[Mapping[str, Checked]] = {
    "safety.pressure_paid_for": Checked(
        fails=(
            BOILER,
            {**BOILER, "safety.inspection": 1},
            {**BOILER, "safety.insurance": 1},
            {"steamer.kind": "pressure vessel", "safety.inspection": 0, "safety.insurance": 0},
        ),
        holds=({**BOILER, "safety.inspection": 1, "safety.insurance": 1}, {**BOILER, "safety.boiler": "none"}),
    ),
    "safety.way_out": Checked(
        fails=({"safety.walk_in": "walk-in without"},),
        holds=({"safety.walk_in": "walk-in with inside release and stop"}, {"safety.walk_in": "cannot be walked into"}),
    ),
    "safety.alarm_there": Checked(
        fails=({"safety.co2_alarm": "no alarm"},),
        holds=(
            {"safety.co2_alarm": "no alarm", "crop.loss_at_steaming": 1},
            {"safety.co2_alarm": "alarm outside the door"},
        ),
    ),
    "safety.pickers_protected": Checked(
        fails=(HIRED, {**OWN_HANDS, "picking.paid": "by the piece"}),
        holds=(OWN_HANDS, {**HIRED, "safety.respirators": 1}, {**HIRED, "recipe.efficiency_given": 0}),
    ),
    "sales_tests.below_the_limit": Checked(
        fails=(LARGE, {**TESTED, "safety.covered_above": 1, "safety.produce": None}),
        holds=({**LARGE, "safety.tests": "none"}, {**LARGE, "safety.produce": 30000}),
    ),
    "sales_tests.within_the_exemption": Checked(
        fails=(
            {**LARGE, "safety.direct": 0.5},
            {**LARGE, "safety.direct": 0.51, "safety.food": 500000},
        ),
        holds=(
            {**LARGE, "safety.direct": 0.51},
            {**LARGE, "safety.direct": 0.51, "safety.food": 499999},
            {**TESTED, "safety.produce": 30000, "safety.direct": 0},
        ),
    ),
}
