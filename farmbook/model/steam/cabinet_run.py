"""The steam cabinet's own part in the hours of a load: the days from one load to the next."""

from __future__ import annotations

from farmbook.calc.heat import CABINET_POWER
from farmbook.calc.timetable import days_of_a_load, loads_by_days, loads_by_the_week
from farmbook.expr.functions import minimum, where
from farmbook.expr.nodes import Expr
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.steam.steamer_run import SteamerRun
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["CabinetRun"]


class CabinetRun(SteamerRun, words="cabinet"):
    """One run of the cabinet."""

    title = "Steam cabinet: hours and power"
    table = "cabinet"
    most_give = ("power", "hold_time")

    heat = uses(CabinetHeat)

    power = number(
        "Power of the steam generator or burner of the cabinet",
        unit="kW",
        usual=(12, 120),
        hard=(0.5, 2000),
        optional=True,
        how=(
            "Nameplate; a clamp meter shows burnt-out elements. A burner's input: 100,000 Btu an hour are 29.3 kW. Left empty, "
            "by the bags in a load."
        ),
    )
    hold_time = number(
        "Chamber hold of the cabinet",
        unit="h/run",
        usual=(12, 20),
        hard=(0, 200),
        default=17,
        how="From the log: hours from the chamber reaching its temperature to steam off.",
        source=COMMON_PRACTICE,
        note="Hours for the chamber, not for the middle of the bags, which follows hours later.",
    )
    cool_down_time = number(
        "Cool-down of the cabinet",
        unit="h/run",
        usual=(10, 48),
        hard=(0, 500),
        default=14,
        how="From the log: hours from steam off until bags are cool enough to take out.",
        source=COMMON_PRACTICE,
    )

    @line("Power of a cabinet for so many bags", unit="kW", source=COMMON_PRACTICE)
    def usual_power(self) -> Expr:
        """Enough to warm a full load in some six hours."""
        return self.heat.bags * CABINET_POWER

    @line("Power of the cabinet, counted", unit="kW")
    def power_counted(self) -> Expr:
        """What you typed, else by the bags in a load."""
        return where(self.given(self.power), self.power, self.usual_power)

    @property
    def drawn(self) -> Expr:
        """Typed, or by the size of a load."""
        return self.power_counted

    @line("Days from the start of a cabinet load to the next", unit="day/run", source=COMMON_PRACTICE)
    def days_of_a_load(self) -> Expr:
        """Whole days, as loads start in the morning: one that is done after hours waits until somebody is back."""
        return days_of_a_load(self.cycle_time)

    @line("Cabinet loads that can be started on the days of a week", unit="run/week", source=ARITHMETIC)
    def loads_started(self) -> Expr:
        """Days with somebody there, over the days from start to start; the last may stand over the days off."""
        return loads_by_days(self.steaming.staffed_days, self.days_of_a_load)

    @line("Cabinet loads that are out within a week", unit="run/week", source=ARITHMETIC)
    def loads_out(self) -> Expr:
        """So that the next week starts like this one."""
        return loads_by_the_week(self.days_of_a_load)

    @line("Loads that the cabinet can do a week", unit="run/week")
    def loads_possible(self) -> Expr:
        """The smallest of the three: days to start, days to be out again, and hours to load and unload."""
        return minimum(minimum(self.loads_started, self.loads_out), self.loads_handled)
