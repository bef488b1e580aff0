"""Steam in the pressure vessel: its working pressure, and how hot it is behind that."""

from __future__ import annotations

from farmbook.calc.steam import absolute_pressure
from farmbook.expr.functions import minimum
from farmbook.expr.nodes import Expr
from farmbook.model.place.boiling import BoilingSteps
from farmbook.model.place.site import Site
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["VesselSteam"]


class VesselSteam(BoilingSteps, words="the pressure vessel"):
    """From the gauge of the pressure vessel to the temperature in it."""

    title = "Pressure vessel: pressure and temperature"
    table = "vessel"

    site = uses(Site)

    working_pressure = number(
        "Working pressure on the gauge",
        unit="kPa",
        usual=(68.9, 137.9),
        hard=(0, 1000),
        default=103.42135939752,
        how="The gauge while it holds; have the gauge tested each year.",
        source=COMMON_PRACTICE,
        note="103.4 kPa is 15 psi. A gauge shows only what is above the air of the place.",
    )
    rated_pressure = number(
        "Pressure the vessel is rated for",
        unit="kPa",
        usual=(103.4, 275.8),
        hard=(0, 2000),
        default=103.42135939752,
        how="Maker's plate on the vessel: highest working pressure. No plate, no pressure: ask a boiler inspector.",
        source=COMMON_PRACTICE,
        note="Never the pressure that a relief valve happens to be set to.",
    )

    @line("Gauge pressure that counts", unit="kPa")
    def gauge(self) -> Expr:
        """The working pressure, and never more than the vessel is rated for, whatever is typed."""
        return minimum(self.working_pressure, self.rated_pressure)

    @line("Pressure in the vessel, from a vacuum", unit="kPa", source=ARITHMETIC)
    def pressure(self) -> Expr:
        """Less stands behind the same reading of the gauge the higher the site lies."""
        return absolute_pressure(self.gauge, self.site.pressure)
