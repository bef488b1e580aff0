"""What height does to steam: boiling point, temperature under pressure, and the gauge pressure for a temperature."""

from __future__ import annotations

from farmbook.calc import steam
from farmbook.calc.temperature import celsius, kelvin
from farmbook.expr.functions import named, running_sum
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import ALTITUDE
from farmbook.model.place.boiling import BoilingSteps
from farmbook.model.place.site import Site
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import (
    ARITHMETIC,
    COMMON_PRACTICE,
    IAPWS_R7_97,
    NIST_SP_811,
    STANDARD_ATMOSPHERE_1976,
)

__all__ = ["AltitudeBoiling", "AltitudePressure", "WantedSteam"]


class AltitudeBoiling(BoilingSteps, words="the heights", axes=(ALTITUDE,)):
    """Boiling without pressure, by height."""

    title = "Boiling point by height"

    @line("Number of the row of heights", unit="count", axes=(ALTITUDE,))
    def row(self) -> Expr:
        """1 for sea level."""
        return running_sum(1, ALTITUDE)

    @line("Height above sea level", unit="m", axes=(ALTITUDE,), source=ARITHMETIC)
    def height(self) -> Expr:
        """In steps of a thousand feet."""
        return (self.row - 1) * steam.ALTITUDE_STEP

    @line("Air pressure by height", unit="kPa", axes=(ALTITUDE,), source=STANDARD_ATMOSPHERE_1976)
    def pressure(self) -> Expr:
        """Of a mean day."""
        return steam.air_pressure(self.height)

    @line("Boiling point by height", unit="degC", axes=(ALTITUDE,), source=NIST_SP_811)
    def boiling_point(self) -> Expr:
        """The most that a cabinet without pressure can reach; hold a few degrees below it."""
        return celsius(self.absolute_temperature)


class WantedSteam(Section):
    """The pressure of steam at a wanted temperature, by the same equation the other way round."""

    title = "Pressure for a wanted temperature"
    table = "vessel"

    site = uses(Site)

    wanted_temperature = number(
        "Temperature wanted in a pressure vessel",
        unit="degC",
        usual=(110, 130),
        hard=(60, 180),
        default=121.1,
        how="What your recipe, or the maker's table, asks for.",
        source=COMMON_PRACTICE,
        note="Only the gauge pressures beside it rest on it; the vessel is worked out from its working pressure.",
    )

    @line("Temperature wanted, above absolute zero", unit="kelvin", source=NIST_SP_811)
    def absolute_wanted(self) -> Expr:
        """The steam equation counts from absolute zero."""
        return kelvin(self.wanted_temperature)

    @line("Steam equation backwards, step 1: distance from the limit", unit="1", source=IAPWS_R7_97)
    def distance(self) -> Expr:
        """From the hottest that water and steam can stand side by side."""
        return steam.distance_from_limit(self.absolute_wanted)

    @line("Steam equation backwards, step 2: scaled temperature", unit="1", source=IAPWS_R7_97)
    def scaled(self) -> Expr:
        """The temperature with a small term added."""
        return steam.scaled_temperature(self.absolute_wanted, self.distance)

    @line("Steam equation backwards, step 3: factor of the square", unit="1", source=IAPWS_R7_97)
    def square(self) -> Expr:
        """A in the release."""
        return steam.second_term_from_scaled(self.scaled)

    @line("Steam equation backwards, step 4: factor of the plain term", unit="1", source=IAPWS_R7_97)
    def linear(self) -> Expr:
        """B in the release."""
        return steam.first_term_from_scaled(self.scaled)

    @line("Steam equation backwards, step 5: the term alone", unit="1", source=IAPWS_R7_97)
    def alone(self) -> Expr:
        """C in the release."""
        return steam.constant_term_from_scaled(self.scaled)

    @line("Steam equation backwards, step 6: what stands under the root", unit="1", source=IAPWS_R7_97)
    def radicand(self) -> Expr:
        """Of the quadratic in the fourth root of the pressure."""
        return steam.discriminant(self.linear, self.square * self.alone)

    @line("Steam equation backwards, step 7: fourth root of the pressure", unit="1", source=IAPWS_R7_97)
    def root(self) -> Expr:
        """Of the pressure in megapascals."""
        return steam.root_from_scaled(self.linear, self.alone, self.radicand)

    @line("Pressure of steam at the temperature wanted", unit="kPa", source=IAPWS_R7_97)
    def pressure(self) -> Expr:
        """Counted from a vacuum, so it is the same at every height."""
        return steam.pressure_from_root(self.root)

    @line("Gauge pressure at the site for the temperature wanted", unit="kPa", source=ARITHMETIC)
    def gauge_here(self) -> Expr:
        """What the gauge must show here; below zero where water boils hotter than that without pressure."""
        return steam.gauge_pressure(self.pressure, self.site.pressure)

    @line("Height: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Water boils here at ",
            figure(self.site.boiling_point, 0),
            ". For the temperature you want, a gauge must show ",
            figure(self.gauge_here, 1),
            ".",
        )


class AltitudePressure(BoilingSteps, words="the gauge pressure by height", axes=(ALTITUDE,)):
    """Steam under pressure, by height."""

    title = "Steam under pressure by height"

    heights = uses(AltitudeBoiling)
    wanted = uses(WantedSteam)

    @line("Pressure at 15 psi (103 kPa) on the gauge, from a vacuum", unit="kPa", axes=(ALTITUDE,), source=ARITHMETIC)
    def pressure(self) -> Expr:
        """A gauge shows only what is above the air around it, so less stands behind the same reading higher up."""
        return steam.absolute_pressure(named(steam.TABLE_GAUGE), self.heights.pressure)

    @line("Temperature at 15 psi (103 kPa) on the gauge", unit="degC", axes=(ALTITUDE,), source=NIST_SP_811)
    def temperature(self) -> Expr:
        """Of steam with no air left in it. At sea level a little short of the 121.1 degC (250 degF) it is called."""
        return celsius(self.absolute_temperature)

    @line("Gauge pressure for the temperature wanted, by height", unit="kPa", axes=(ALTITUDE,), source=ARITHMETIC)
    def gauge_wanted(self) -> Expr:
        """Never above what the vessel is rated for: then steam longer instead, by the maker's table."""
        return steam.gauge_pressure(self.wanted.pressure, self.heights.pressure)
