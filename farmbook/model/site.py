"""The site: how high it lies, and at what temperature water boils there."""

from __future__ import annotations

from farmbook.calc import steam
from farmbook.calc.temperature import celsius
from farmbook.expr.functions import minimum, named
from farmbook.expr.nodes import Expr
from farmbook.model.alike import Alike
from farmbook.model.declare import LineOf, line, number
from farmbook.sources import COMMON_PRACTICE, IAPWS_R7_97, NIST_SP_811, STANDARD_ATMOSPHERE_1976

__all__ = ["BoilingSteps", "Site"]


class BoilingSteps(Alike):
    """From a pressure to the temperature at which water boils under it, one step of the steam equation a line."""

    pressure: LineOf

    @line("Steam equation for {}, step 1: fourth root of the pressure", unit="1", source=IAPWS_R7_97)
    def root(self) -> Expr:
        """Of the pressure in megapascals, counted from a vacuum. The equation is a quadratic in it."""
        return steam.root_of_pressure(self.pressure)

    @line("Steam equation for {}, step 2: factor of the square", unit="1", source=IAPWS_R7_97)
    def square(self) -> Expr:
        """E in the release."""
        return steam.second_term_from_root(self.root)

    @line("Steam equation for {}, step 3: factor of the plain term", unit="1", source=IAPWS_R7_97)
    def linear(self) -> Expr:
        """F in the release."""
        return steam.first_term_from_root(self.root)

    @line("Steam equation for {}, step 4: the term alone", unit="1", source=IAPWS_R7_97)
    def alone(self) -> Expr:
        """G in the release."""
        return steam.constant_term_from_root(self.root)

    @line("Steam equation for {}, step 5: what stands under the root", unit="1", source=IAPWS_R7_97)
    def radicand(self) -> Expr:
        """Of the quadratic in the scaled temperature."""
        return steam.discriminant(self.linear, self.square * self.alone)

    @line("Steam equation for {}, step 6: scaled temperature", unit="1", source=IAPWS_R7_97)
    def scaled(self) -> Expr:
        """D in the release; what it stands for is a temperature with a small term added."""
        return steam.scaled_from_root(self.linear, self.alone, self.radicand)

    @line("Steam equation for {}, step 7: sum of both solutions", unit="1", source=IAPWS_R7_97)
    def both_added(self) -> Expr:
        """Scaled and real temperature make a second quadratic; its two solutions add up to this."""
        return steam.temperature_sum(self.scaled)

    @line("Steam equation for {}, step 8: product of both solutions", unit="1", source=IAPWS_R7_97)
    def both_multiplied(self) -> Expr:
        """Of the same two solutions."""
        return steam.temperature_product(self.scaled)

    @line("Steam equation for {}, step 9: under the second root", unit="1", source=IAPWS_R7_97)
    def second_radicand(self) -> Expr:
        """Of the second quadratic."""
        return steam.discriminant(self.both_added, self.both_multiplied)

    @line("Steam equation for {}, step 10: above absolute zero", unit="kelvin", source=IAPWS_R7_97)
    def absolute_temperature(self) -> Expr:
        """The lower solution is the temperature at which water and steam stand side by side."""
        return steam.temperature_from_scaled(self.both_added, self.second_radicand)


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
