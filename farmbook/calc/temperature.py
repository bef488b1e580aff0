"""Temperatures on a scale and above absolute zero."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, joined
from farmbook.expr.nodes import Constant
from farmbook.sources import NIST_SP_811
from farmbook.units import unit

__all__ = ["ICE_POINT", "ICE_POINT_KELVIN", "celsius", "kelvin"]

ICE_POINT: Final = Constant(0, "ice_point", label="Freezing point of water", unit=unit("degC"), source=NIST_SP_811.key)
ICE_POINT_KELVIN: Final = Constant(
    273.15,
    "ice_point_kelvin",
    label="Freezing point of water above absolute zero",
    unit=unit("kelvin"),
    source=NIST_SP_811.key,
)


def kelvin(temperature: Operand) -> Operand:
    """A temperature counted from absolute zero.

    Units: temperature [degC]; gives [kelvin].
    Source: nist_sp_811.
    """
    return joined(temperature - ICE_POINT, "kelvin") + ICE_POINT_KELVIN


def celsius(absolute_temperature: Operand) -> Operand:
    """A temperature counted from absolute zero, read on the common scale.

    Units: absolute_temperature [kelvin]; gives [degC].
    Source: nist_sp_811.
    """
    return ICE_POINT + joined(absolute_temperature - ICE_POINT_KELVIN, "delta_degC")
