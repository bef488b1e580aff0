"""Stages in which bags or mushrooms stand."""

from __future__ import annotations

from farmbook.expr.functions import all_of, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.limits.stage import Stage
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC

__all__ = ["ColdRoomStage", "FruitingStage", "IncubationStage"]


class IncubationStage(Stage, words="incubation places"):
    """The incubation room."""

    title = "Incubation places"
    place = 5

    room = uses(IncubationRoom)

    @line("Incubation places: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return all_of(self.room.known, self.room.taken > 0)

    @line("Incubation places", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Places had over places taken, times the bags filled now: on average, not on the fullest day."""
        return self.room.places * self.frees

    @line(
        "A place more in the incubation room makes room for",
        unit="bag_filled/place/week",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.farm.bags_filled_a_week * self.known, self.room.taken)


class FruitingStage(Stage, words="fruiting places"):
    """The fruiting rooms."""

    title = "Fruiting places"
    place = 6

    room = uses(FruitingRoom)

    @line("Fruiting places: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return all_of(self.room.known, self.room.taken > 0)

    @line("Fruiting places", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Places had over places taken, times the bags filled now: on average, not on the fullest day."""
        return self.room.places * self.frees

    @line(
        "A place more in the fruiting rooms makes room for",
        unit="bag_filled/place/week",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.farm.bags_filled_a_week * self.known, self.room.taken)


class ColdRoomStage(Stage, words="the cold room"):
    """Where the crop waits for customers."""

    title = "The cold room"
    place = 8

    @line("The cold room: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return all_of(self.capacities.given(self.capacities.cold_room), self.capacities.stock > 0)

    @line("The cold room", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """What it holds over what lies in it, times the bags filled now."""
        return self.capacities.cold_room * self.frees

    @line(
        "More weight in the cold room makes room for",
        unit="bag_filled/kg_packed/week",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.farm.bags_filled_a_week * self.known, self.capacities.stock)
