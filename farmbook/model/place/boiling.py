"""From a pressure to the temperature at which water boils under it."""

from __future__ import annotations

from farmbook.calc import steam
from farmbook.expr.nodes import Expr
from farmbook.sections.alike import Alike
from farmbook.sections.declare import LineOf, line
from farmbook.sources import IAPWS_R7_97

__all__ = ["BoilingSteps"]


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
