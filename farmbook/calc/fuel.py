"""Fuels for raising steam: the heat in them, and the share of it that gets into the steam."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, ratio, where
from farmbook.expr.nodes import Constant
from farmbook.sources import COMMON_PRACTICE, EIA_UNITS
from farmbook.units import unit

__all__ = [
    "BURNER_EFFICIENCY",
    "ELECTRIC_EFFICIENCY",
    "NATURAL_GAS_HEAT",
    "PROPANE_HEAT",
    "heat_in_fuel",
    "price_of_heat",
    "usual_efficiency",
]

PROPANE_HEAT: Final = Constant(
    91_333,
    "propane_heat",
    label="Heat in propane",
    unit=unit("Btu_fuel/gal"),
    source=EIA_UNITS.key,
    note="Value of 2012; a later table prints 91,452.",
)
NATURAL_GAS_HEAT: Final = Constant(
    1_037,
    "natural_gas_heat",
    label="Heat in natural gas",
    unit=unit("Btu_fuel/ft3"),
    source=EIA_UNITS.key,
    note="United States mean; 1,025 to 1,039 from year to year. The gas bill states its own.",
)
ELECTRIC_EFFICIENCY: Final = Constant(
    0.96,
    "electric_efficiency",
    label="Share of the power that gets into the steam, electric steam generator",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="0.92 to 0.99.",
)
BURNER_EFFICIENCY: Final = Constant(
    0.80,
    "burner_efficiency",
    label="Share of the heat in the fuel that gets into the steam, gas burner",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="0.70 to 0.88; the rest leaves by the flue.",
)


def usual_efficiency(electric: Operand) -> Operand:
    """Share of the energy drawn that gets into the steam, where it was not measured.

    Units: electric [flag]; gives [share].
    Source: common_practice.
    """
    return where(electric, ELECTRIC_EFFICIENCY, BURNER_EFFICIENCY)


def heat_in_fuel(volume: Operand, heat_content: Operand | float) -> Operand:
    """Heat in an amount of fuel.

    Units: volume [gal], heat_content [Btu_fuel/gal]; gives [Btu_fuel].
    Source: arithmetic.
    """
    return volume * heat_content


def price_of_heat(price: Operand, efficiency: Operand) -> Operand:
    """Price of heat that is in the steam, where energy of that price is drawn.

    Units: price [money/kWh], efficiency [share]; gives [money/kWh].
    Source: arithmetic.
    """
    return ratio(price, efficiency)
