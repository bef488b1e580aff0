"""Hands, and customers."""

from __future__ import annotations

from farmbook.expr.functions import all_of, maximum, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.crop.crop import Crop
from farmbook.model.labour.hours import PAID, Hours
from farmbook.model.limits.stage import Stage
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC

__all__ = ["CustomerStage", "LabourStage"]


class LabourStage(Stage, words="hours of work"):
    """All hands, hired and own."""

    title = "Hours of work"
    place = 7

    hours = uses(Hours)

    @line("Hours of work: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return all_of(self.hours.chose(self.hours.counted, PAID), self.hours.growing_with_a_bag > 0)

    @line("Hours of work", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Hours had less those that do not grow with the bags, over the hours that a bag takes."""
        return maximum(self.hours.had - self.hours.fixed, 0) * self.frees

    @line("An hour more of work makes room for", unit="bag_filled/person_hour", source=ARITHMETIC, zero_is_none=True)
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.known, self.hours.growing_with_a_bag)


class CustomerStage(Stage, words="customers"):
    """Everybody who pays at least the floor price."""

    title = "Customers who pay enough"
    place = 9

    crop = uses(Crop)

    @line("Customers who pay enough: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return all_of(self.capacities.customers > 0, self.crop.taken_per_filled > 0)

    @line("Customers who pay enough", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """What customers take at or above their floor price with the bag in it, over the crop of a bag."""
        return self.capacities.saleable * self.frees

    @line(
        "More taken makes room for",
        unit="bag_filled/kg_taken",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.known, self.crop.taken_per_filled)
