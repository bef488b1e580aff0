"""Spawn counted back from the bags to be inoculated, through failures and expansion."""

from __future__ import annotations

from farmbook.expr.functions import Operand, ratio

__all__ = [
    "fruiting_places",
    "parents_needed",
    "places_for_spawn",
    "spawn_mass",
    "units_needed",
    "units_of_mass",
    "usable_mass",
]


def spawn_mass(wet_mass: Operand, spawn_rate: Operand) -> Operand:
    """Spawn for an amount of wet substrate; the rate is on wet weight.

    Units: wet_mass [kg_wet], spawn_rate [kg_spawn/kg_wet]; gives [kg_spawn].
    Source: arithmetic.
    """
    return wet_mass * spawn_rate


def usable_mass(unit_mass: Operand, usable_share: Operand) -> Operand:
    """Spawn that one good unit gives, after what stays in the bag.

    Units: unit_mass [kg_spawn/spawn_bag], usable_share [1]; gives [kg_spawn/spawn_bag].
    Source: arithmetic.
    """
    return unit_mass * usable_share


def units_of_mass(mass: Operand, usable_mass: Operand) -> Operand:
    """Good units that hold an amount of spawn, parts of a unit included.

    Units: mass [kg_spawn], usable_mass [kg_spawn/spawn_bag]; gives [spawn_bag].
    Source: arithmetic.
    """
    return ratio(mass, usable_mass)


def units_needed(wanted: Operand, failure: Operand) -> Operand:
    """What to start, or to order, so that a wanted amount comes out good: wanted over the share that does.

    Units: wanted [spawn_bag], failure [1]; gives [spawn_bag].
    Source: arithmetic.
    """
    return ratio(wanted, 1 - failure)


def parents_needed(units: Operand, expansion: Operand) -> Operand:
    """Good units of the generation before that inoculate a number of units.

    Units: units [second_grain_bag], expansion [second_grain_bag/grain_bag]; gives [grain_bag].
    Source: arithmetic.
    """
    return ratio(units, expansion)


def fruiting_places(places: Operand, spawn_per_fruiting_place: Operand) -> Operand:
    """Places of a steam load left for fruiting bags where their spawn is steamed in it too; in a typical week, no ramp.

    Units: places [place], spawn_per_fruiting_place [1]; gives [place].
    Source: arithmetic.
    """
    return ratio(places, 1 + spawn_per_fruiting_place)


def places_for_spawn(fruiting_places: Operand, spawn_per_fruiting_place: Operand) -> Operand:
    """Places of a steam load taken by the spawn for the fruiting bags in it.

    Units: fruiting_places [place], spawn_per_fruiting_place [1]; gives [place].
    Source: arithmetic.
    """
    return fruiting_places * spawn_per_fruiting_place
