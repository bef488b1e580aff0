"""The pressure vessel's own part in the hours of a load."""

from __future__ import annotations

from farmbook.calc.timetable import loads_by_hours, time_for_loads
from farmbook.expr.functions import minimum
from farmbook.expr.nodes import Expr, Line
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.steamer_run import SteamerRun
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["VesselRun"]


class VesselRun(SteamerRun, words="pressure vessel"):
    """One run of the pressure vessel."""

    title = "Pressure vessel: hours and power"
    table = "vessel"

    heat = uses(VesselHeat)

    power = number(
        "Power of the steam generator or burner of the pressure vessel",
        unit="kW",
        usual=(1.5, 150),
        hard=(0.2, 5000),
        default=60,
        how="Nameplate; a clamp meter shows burnt-out elements. A burner's input: 100,000 Btu an hour are 29.3 kW.",
        source=COMMON_PRACTICE,
    )
    hold_time = number(
        "Hold of the pressure vessel at working pressure",
        unit="h/run",
        usual=(1.5, 5),
        hard=(0, 48),
        default=3.5,
        how="From the log: hours from working pressure to steam off.",
        source=COMMON_PRACTICE,
        note="More than about five hours at 15 psi browns the sawdust and slows growth.",
    )
    cool_down_time = number(
        "Cool-down of the pressure vessel until it may be opened",
        unit="h/run",
        usual=(0.5, 10),
        hard=(0, 100),
        default=1,
        how="From the log: hours from steam off until the gauge is at zero and bags can be taken out.",
        source=COMMON_PRACTICE,
    )

    @property
    def temperature(self) -> Line:
        """Temperature held."""
        return self.heat.hold_temperature

    @property
    def start_temperature(self) -> Line:
        """Temperature of the bags when loaded."""
        return self.heat.start_temperature

    @line("Hours of a day that the pressure vessel can be run", unit="h/day", source=ARITHMETIC)
    def day_available(self) -> Expr:
        """Somebody stays while it is under pressure; the last load of the day may cool down after hours."""
        return time_for_loads(self.steaming.staffed_hours, self.cool_down_time)

    @line("Loads of the pressure vessel that fit into a day", unit="run/day", source=ARITHMETIC)
    def loads_a_day(self) -> Expr:
        """Whole loads, one after the other."""
        return loads_by_hours(self.day_available, self.cycle_time)

    @line("Loads that the pressure vessel can do a week", unit="run/week")
    def loads_possible(self) -> Expr:
        """On the days when somebody is there, and not more than there are hours to load and unload."""
        return minimum(self.loads_a_day * self.steaming.staffed_days, self.loads_handled)
