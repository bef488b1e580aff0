"""The site: how high it lies, and at what temperature water boils there."""

from __future__ import annotations

from farmbook.calc import steam
from farmbook.calc.temperature import celsius
from farmbook.expr.functions import minimum, named
from farmbook.expr.nodes import Expr
from farmbook.model.place.boiling import BoilingSteps
from farmbook.sections.declare import line, number
from farmbook.sources import COMMON_PRACTICE, NIST_SP_811, STANDARD_ATMOSPHERE_1976

__all__ = ["Site"]


class Site(BoilingSteps, words="the site"):
    """Where the farm lies."""

    title = "The site"

    altitude = number(
        "Height of the site above sea level",
        unit="m",
        usual=(0, 2440),
        hard=(-430, 5500),
        default=0,
        how="A map, or the height that a telephone shows out of doors.",
        source=COMMON_PRACTICE,
        note="Sea level until you type yours. Some 150 m (500 ft) lower the boiling point by half a degree C.",
    )

    @line("Height of the site, counted", unit="m")
    def height_counted(self) -> Expr:
        """The standard atmosphere is worked out up to a height at which nobody farms."""
        return minimum(self.altitude, named(steam.TOP_OF_TROPOSPHERE))

    @line("Air pressure at the site", unit="kPa", source=STANDARD_ATMOSPHERE_1976)
    def pressure(self) -> Expr:
        """Of a mean day; weather moves it by 2% either way, and the boiling point by half a degree C (one degree F)."""
        return steam.air_pressure(self.height_counted)

    @line("Boiling point of water at the site", unit="degC", source=NIST_SP_811)
    def boiling_point(self) -> Expr:
        """Steam without pressure gets no hotter than this, however much power goes in."""
        return celsius(self.absolute_temperature)
