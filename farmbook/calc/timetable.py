"""How many loads fit into the days and hours when somebody is there."""

from __future__ import annotations

from typing import Final, cast

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.expr.functions import Operand, minimum, ratio, whole_down, whole_up
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = [
    "HOURS_IN_A_DAY",
    "LAST_LOAD",
    "days_of_a_load",
    "loads_by_days",
    "loads_by_hours",
    "loads_by_the_week",
    "time_for_loads",
]

HOURS_IN_A_DAY: Final = Constant(
    24,
    "hours_in_a_day",
    label="Hours in a day",
    unit=unit("h/day"),
    source=ARITHMETIC.key,
)
LAST_LOAD: Final = Constant(
    1,
    "last_load_of_a_day",
    label="Last load of a day, which cools down after hours",
    unit=unit("run/day"),
    source=ARITHMETIC.key,
)


def days_of_a_load(cycle: Operand) -> Operand:
    """Whole days from the start of a load to the start of the next, where loads are started in the morning.

    Units: cycle [h/run]; gives [day/run].
    Source: arithmetic.
    """
    return whole_up(cycle / HOURS_IN_A_DAY)


def loads_by_days(days: Operand, days_of_a_load: Operand) -> Operand:
    """Loads that can be started on working days that follow one another.

    Units: days [day/week], days_of_a_load [day/run]; gives [run/week].
    Source: arithmetic.
    """
    return whole_up(ratio(days, days_of_a_load))


def loads_by_the_week(days_of_a_load: Operand) -> Operand:
    """Loads that are out before the same day of the next week.

    Units: days_of_a_load [day/run]; gives [run/week].
    Source: arithmetic.
    """
    return whole_down(ratio(cast("Operand", DAYS_IN_A_WEEK), days_of_a_load))


def time_for_loads(staffed: Operand, cool_down: Operand) -> Operand:
    """Time that a day has for loads: hours with somebody there, and the last load's cool-down, which needs nobody.

    Units: staffed [h/day], cool_down [h/run]; gives [h/day].
    Source: arithmetic.
    """
    return minimum(staffed + cool_down * LAST_LOAD, HOURS_IN_A_DAY)


def loads_by_hours(time: Operand, time_of_a_load: Operand) -> Operand:
    """Whole loads that fit into a time.

    Units: time [h/day], time_of_a_load [h/run]; gives [run/day].
    Source: arithmetic.
    """
    return whole_down(ratio(time, time_of_a_load))
