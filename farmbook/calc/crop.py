"""Bags that survive, and fresh weight picked against dry substrate."""

from __future__ import annotations

from farmbook.expr.functions import Operand, ratio

__all__ = [
    "biological_efficiency",
    "efficiency_of_survivors",
    "efficiency_with_spawn",
    "percent_of_wet_weight",
    "picked_mass",
    "surviving_share",
]


def surviving_share(loss: Operand) -> Operand:
    """Share of bags left after one step.

    Units: loss [1]; gives [1].
    Source: arithmetic.
    """
    return 1 - loss


def biological_efficiency(picked: Operand, dry_mass: Operand) -> Operand:
    """Fresh weight picked over dry substrate, the spawn left out.

    Units: picked [kg_picked], dry_mass [kg_dry]; gives [kg_picked/kg_dry].
    Source: biological_efficiency.
    """
    return ratio(picked, dry_mass)


def picked_mass(efficiency: Operand, dry_mass: Operand) -> Operand:
    """Fresh weight picked from an amount of dry substrate.

    Units: efficiency [kg_picked/kg_dry], dry_mass [kg_dry]; gives [kg_picked].
    Source: biological_efficiency.
    """
    return efficiency * dry_mass


def efficiency_with_spawn(picked: Operand, dry_mass: Operand, dry_spawn: Operand) -> Operand:
    """Fresh weight picked over dry substrate and dry spawn together: the other way in use, always the smaller figure.

    Units: picked [kg_picked], dry_mass [kg_dry], dry_spawn [kg_dry]; gives [kg_picked/kg_dry].
    Source: biological_efficiency.
    """
    return ratio(picked, dry_mass + dry_spawn)


def percent_of_wet_weight(efficiency: Operand, dry_share: Operand) -> Operand:
    """Fresh weight picked over the wet weight of the bag, which some growers quote.

    Units: efficiency [kg_picked/kg_dry], dry_share [kg_dry/kg_wet]; gives [kg_picked/kg_wet].
    Source: arithmetic.
    """
    return efficiency * dry_share


def efficiency_of_survivors(efficiency_of_all: Operand, surviving_share: Operand) -> Operand:
    """Biological efficiency of the bags that reach a flush, from weight picked over all bags filled.

    Units: efficiency_of_all [kg_picked/kg_dry], surviving_share [1]; gives [kg_picked/kg_dry].
    Source: arithmetic.
    """
    return ratio(efficiency_of_all, surviving_share)
