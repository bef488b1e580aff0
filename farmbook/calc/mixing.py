"""Dry mass, water, nitrogen and carbon of a substrate mix.

Moisture is always on the wet basis: water over all that is weighed.
"""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, joined, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import IAPWS_R7_97, NITROGEN_IN_PROTEIN
from farmbook.units import unit

__all__ = [
    "PROTEIN_OVER_NITROGEN",
    "WATER_DENSITY",
    "carbon_to_nitrogen",
    "content_of_dry",
    "dry_mass",
    "dry_share",
    "mass_as_delivered",
    "moisture",
    "nitrogen_from_protein",
    "share_for_content",
    "water_share",
    "water_to_add",
    "weighted_content",
]

PROTEIN_OVER_NITROGEN: Final = Constant(
    6.25,
    "protein_over_nitrogen",
    label="Crude protein over nitrogen",
    unit=unit("kg_protein/kg_nitrogen"),
    source=NITROGEN_IN_PROTEIN.key,
)
WATER_DENSITY: Final = Constant(
    0.99821,
    "water_density",
    label="Weight of a volume of cold water",
    unit=unit("kg_water/L"),
    source=IAPWS_R7_97.key,
    note="At 20 degC and the air pressure of sea level, from region 1 of the release.",
)


def dry_share(moisture: Operand) -> Operand:
    """What is left of a wet mass without its water.

    Units: moisture [kg_water/kg_wet]; gives [kg_dry/kg_wet].
    Source: arithmetic.
    """
    return joined(1 - joined(moisture, "1"), "kg_dry/kg_wet")


def dry_mass(wet_mass: Operand, dry_share: Operand) -> Operand:
    """Dry mass in a wet mass.

    Units: wet_mass [kg_wet], dry_share [kg_dry/kg_wet]; gives [kg_dry].
    Source: arithmetic.
    """
    return wet_mass * dry_share


def mass_as_delivered(dry_mass: Operand, dry_share: Operand) -> Operand:
    """What to weigh out, as delivered, for a wanted dry mass; zero where the ingredient holds nothing dry.

    Units: dry_mass [kg_dry], dry_share [kg_dry/kg_wet]; gives [kg_wet].
    Source: arithmetic.
    """
    return ratio(dry_mass, dry_share)


def water_share(dry_share: Operand) -> Operand:
    """Share of a wet mass that is water: all that is not dry.

    Units: dry_share [kg_dry/kg_wet]; gives [kg_water/kg_wet].
    Source: arithmetic.
    """
    return joined(1 - joined(dry_share, "1"), "kg_water/kg_wet")


def water_to_add(water_wanted: Operand, water_in_ingredients: Operand) -> Operand:
    """Water to add to a mix; below zero where the ingredients are already too wet (a warning, never cut off at zero).

    Units: water_wanted [kg_water], water_in_ingredients [kg_water]; gives [kg_water].
    Source: arithmetic.
    """
    return water_wanted - water_in_ingredients


def moisture(water: Operand, wet_mass: Operand) -> Operand:
    """Share of water in a wet mass (wet basis).

    Units: water [kg_water], wet_mass [kg_wet]; gives [kg_water/kg_wet].
    Source: arithmetic.
    """
    return ratio(water, wet_mass)


def content_of_dry(content_as_delivered: Operand, dry_share: Operand) -> Operand:
    """A content stated on the mass as delivered (as feed tags do), on dry mass instead.

    Units: content_as_delivered [kg_protein/kg_wet], dry_share [kg_dry/kg_wet]; gives [kg_protein/kg_dry].
    Source: arithmetic.
    """
    return ratio(content_as_delivered, dry_share)


def nitrogen_from_protein(protein: Operand) -> Operand:
    """Nitrogen of dry mass from crude protein of dry mass.

    Units: protein [kg_protein/kg_dry]; gives [kg_nitrogen/kg_dry].
    Source: nitrogen_in_protein.
    """
    return protein / PROTEIN_OVER_NITROGEN


def weighted_content(share: Operand, content: Operand) -> Operand:
    """What one ingredient brings to the content of the mix; the content of the mix is the sum of these.

    Units: share [kg_dry/kg_dry], content [kg_nitrogen/kg_dry]; gives [kg_nitrogen/kg_dry].
    Source: compost_mixtures.
    """
    return share * content


def carbon_to_nitrogen(carbon: Operand, nitrogen: Operand) -> Operand:
    """C:N of a mix, from its carbon and its nitrogen: ratios of ingredients must not be averaged.

    Units: carbon [kg_carbon/kg_dry], nitrogen [kg_nitrogen/kg_dry]; gives [kg_carbon/kg_nitrogen].
    Source: compost_mixtures.
    """
    return ratio(carbon, nitrogen)


def share_for_content(wanted: Operand, base: Operand, supplement: Operand) -> Operand:
    """Share of a supplement that brings a base to a wanted content; zero where the two do not differ.

    Units: wanted [kg_nitrogen/kg_dry], base [kg_nitrogen/kg_dry], supplement [kg_nitrogen/kg_dry];
    gives [kg_dry/kg_dry].
    Source: compost_mixtures.
    """
    return ratio(wanted - base, supplement - base)
