"""Air pressure at a height; pressure and temperature of saturated steam (IAPWS-IF97, region 4), one step a function.

Both directions solve the same equation, a quadratic in the root of the pressure and in the scaled temperature.
From pressure: `root_of_pressure`, the three terms in it, `discriminant`, `scaled_from_root`, `temperature_sum` and
`temperature_product`, `discriminant` again, `temperature_from_scaled`. From temperature: `distance_from_limit`,
`scaled_temperature`, the three terms in it, `discriminant`, `root_from_scaled`, `pressure_from_root`.
Holds from 273.15 to 647.096 K.
"""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import Operand, mean, ratio, square_root
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC, IAPWS_R7_97, STANDARD_ATMOSPHERE_1976
from farmbook.units import unit

__all__ = [
    "ALTITUDE_STEP",
    "LAPSE_RATE",
    "PRESSURE_EXPONENT",
    "PRESSURE_SCALE",
    "QUADRATIC_FOUR",
    "SATURATION_COEFFICIENTS",
    "SEA_LEVEL_PRESSURE",
    "SEA_LEVEL_TEMPERATURE",
    "TABLE_GAUGE",
    "TEMPERATURE_SCALE",
    "TOP_OF_TROPOSPHERE",
    "absolute_pressure",
    "air_pressure",
    "constant_term_from_root",
    "constant_term_from_scaled",
    "discriminant",
    "distance_from_limit",
    "first_term_from_root",
    "first_term_from_scaled",
    "gauge_pressure",
    "pressure_from_root",
    "root_from_scaled",
    "root_of_pressure",
    "scaled_from_root",
    "scaled_temperature",
    "second_term_from_root",
    "second_term_from_scaled",
    "temperature_from_scaled",
    "temperature_product",
    "temperature_sum",
]

SEA_LEVEL_PRESSURE: Final = Constant(
    101.325,
    "sea_level_pressure",
    label="Air pressure at sea level",
    unit=unit("kPa"),
    source=STANDARD_ATMOSPHERE_1976.key,
)
SEA_LEVEL_TEMPERATURE: Final = Constant(
    288.15,
    "sea_level_temperature",
    label="Air temperature at sea level",
    unit=unit("kelvin"),
    source=STANDARD_ATMOSPHERE_1976.key,
)
LAPSE_RATE: Final = Constant(
    0.0065,
    "lapse_rate",
    label="Fall of air temperature with height",
    unit=unit("kelvin/m"),
    source=STANDARD_ATMOSPHERE_1976.key,
)
PRESSURE_EXPONENT: Final = Constant(
    5.255876,
    "pressure_exponent",
    label="Exponent of air pressure on air temperature",
    unit=unit("1"),
    source=STANDARD_ATMOSPHERE_1976.key,
)
PRESSURE_SCALE: Final = Constant(
    1000,
    "pressure_scale",
    label="Pressure that the steam equation is scaled by (1 MPa)",
    unit=unit("kPa"),
    source=IAPWS_R7_97.key,
)
TEMPERATURE_SCALE: Final = Constant(
    1,
    "temperature_scale",
    label="Temperature that the steam equation is scaled by",
    unit=unit("kelvin"),
    source=IAPWS_R7_97.key,
)
QUADRATIC_FOUR: Final = Constant(
    4,
    "quadratic_four",
    label="The 4 in the solution of a quadratic equation",
    unit=unit("1"),
    source=ARITHMETIC.key,
)
ALTITUDE_STEP: Final = Constant(
    1000,
    "altitude_step",
    label="Step from row to row of the table of heights",
    unit=unit("ft"),
    source=ARITHMETIC.key,
)
TABLE_GAUGE: Final = Constant(
    15,
    "table_gauge_pressure",
    label="Gauge pressure of the table of heights",
    unit=unit("psi"),
    source=ARITHMETIC.key,
    note="The pressure that most cookers and small vessels are made for.",
)


def _coefficient(number: int, value: float) -> Constant:
    return Constant(
        value,
        f"saturation_coefficient_{number}",
        label=f"Steam equation, coefficient {number}",
        unit=unit("1"),
        source=IAPWS_R7_97.key,
        note="Table 34.",
    )


N1: Final = _coefficient(1, 1167.0521452767)
N2: Final = _coefficient(2, -724213.16703206)
N3: Final = _coefficient(3, -17.073846940092)
N4: Final = _coefficient(4, 12020.824702470)
N5: Final = _coefficient(5, -3232555.0322333)
N6: Final = _coefficient(6, 14.915108613530)
N7: Final = _coefficient(7, -4823.2657361591)
N8: Final = _coefficient(8, 405113.40542057)
N9: Final = _coefficient(9, -0.23855557567849)
N10: Final = _coefficient(10, 650.17534844798)
SATURATION_COEFFICIENTS: Final = (N1, N2, N3, N4, N5, N6, N7, N8, N9, N10)


TOP_OF_TROPOSPHERE: Final = Constant(
    11000,
    "top_of_troposphere",
    label="Height up to which the standard atmosphere is worked out",
    unit=unit("m"),
    source=STANDARD_ATMOSPHERE_1976.key,
    note="Above it another rule holds; no farm stands there.",
)


def air_pressure(height: Operand) -> Operand:
    """Air pressure at a height above sea level, in the standard atmosphere below 11,000 m.

    Units: height [m]; gives [kPa].
    Source: standard_atmosphere_1976.
    """
    pressure: Operand = SEA_LEVEL_PRESSURE * (1 - height * LAPSE_RATE / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT
    return pressure


def absolute_pressure(gauge_pressure: Operand, air_pressure: Operand) -> Operand:
    """Pressure in a vessel: what its gauge shows, and the air pressure of the place.

    Units: gauge_pressure [kPa], air_pressure [kPa]; gives [kPa].
    Source: arithmetic.
    """
    return gauge_pressure + air_pressure


def gauge_pressure(pressure: Operand, air_pressure: Operand) -> Operand:
    """What a gauge shows of a pressure counted from a vacuum; below zero where it is less than that of the air.

    Units: pressure [kPa], air_pressure [kPa]; gives [kPa].
    Source: arithmetic.
    """
    return pressure - air_pressure


def discriminant(linear: Operand, product: Operand) -> Operand:
    """What stands under the root in the solution of a quadratic; `product` is that of the outer two terms.

    Units: linear [1], product [1]; gives [1].
    Source: arithmetic.
    """
    return linear**2 - product * QUADRATIC_FOUR


def root_of_pressure(pressure: Operand) -> Operand:
    """Fourth root of the scaled pressure: beta, equation 29a.

    Units: pressure [kPa]; gives [1].
    Source: iapws_r7_97.
    """
    return square_root(square_root(pressure / PRESSURE_SCALE))


def second_term_from_root(root: Operand) -> Operand:
    """Factor of the square of the scaled temperature: E, equation 31.

    Units: root [1]; gives [1].
    Source: iapws_r7_97.
    """
    return root**2 + N3 * root + N6


def first_term_from_root(root: Operand) -> Operand:
    """Factor of the scaled temperature: F, equation 31.

    Units: root [1]; gives [1].
    Source: iapws_r7_97.
    """
    return N1 * root**2 + N4 * root + N7


def constant_term_from_root(root: Operand) -> Operand:
    """The term without the scaled temperature: G, equation 31.

    Units: root [1]; gives [1].
    Source: iapws_r7_97.
    """
    return N2 * root**2 + N5 * root + N8


def scaled_from_root(first_term: Operand, constant_term: Operand, discriminant: Operand) -> Operand:
    """The scaled temperature that fits a pressure: D, equation 31.

    Units: first_term [1], constant_term [1], discriminant [1]; gives [1].
    Source: iapws_r7_97.
    """
    return ratio(constant_term + constant_term, -first_term - square_root(discriminant))


def temperature_sum(scaled: Operand) -> Operand:
    """Sum of the two temperatures that solve equation 31.

    Units: scaled [1]; gives [1].
    Source: iapws_r7_97.
    """
    return scaled + N10


def temperature_product(scaled: Operand) -> Operand:
    """Product of the two temperatures that solve equation 31.

    Units: scaled [1]; gives [1].
    Source: iapws_r7_97.
    """
    return scaled * N10 + N9


def temperature_from_scaled(temperature_sum: Operand, discriminant: Operand) -> Operand:
    """Boiling temperature, the lower of the two that solve equation 31.

    Units: temperature_sum [1], discriminant [1]; gives [kelvin].
    Source: iapws_r7_97.
    """
    return mean(temperature_sum, -square_root(discriminant)) * TEMPERATURE_SCALE


def distance_from_limit(absolute_temperature: Operand) -> Operand:
    """Distance of a temperature from the pole of equation 29b, just above the highest that steam and water share.

    Units: absolute_temperature [kelvin]; gives [1].
    Source: iapws_r7_97.
    """
    return absolute_temperature / TEMPERATURE_SCALE - N10


def scaled_temperature(absolute_temperature: Operand, distance: Operand) -> Operand:
    """Scaled temperature: theta, equation 29b, written over one bottom.

    Units: absolute_temperature [kelvin], distance [1]; gives [1].
    Source: iapws_r7_97.
    """
    return ratio(absolute_temperature / TEMPERATURE_SCALE * distance + N9, distance)


def second_term_from_scaled(scaled: Operand) -> Operand:
    """Factor of the square of the root of pressure: A, equation 30.

    Units: scaled [1]; gives [1].
    Source: iapws_r7_97.
    """
    return scaled**2 + N1 * scaled + N2


def first_term_from_scaled(scaled: Operand) -> Operand:
    """Factor of the root of pressure: B, equation 30.

    Units: scaled [1]; gives [1].
    Source: iapws_r7_97.
    """
    return N3 * scaled**2 + N4 * scaled + N5


def constant_term_from_scaled(scaled: Operand) -> Operand:
    """The term without the root of pressure: C, equation 30.

    Units: scaled [1]; gives [1].
    Source: iapws_r7_97.
    """
    return N6 * scaled**2 + N7 * scaled + N8


def root_from_scaled(first_term: Operand, constant_term: Operand, discriminant: Operand) -> Operand:
    """Fourth root of the scaled pressure that fits a temperature, from equation 30.

    Units: first_term [1], constant_term [1], discriminant [1]; gives [1].
    Source: iapws_r7_97.
    """
    return ratio(constant_term + constant_term, square_root(discriminant) - first_term)


def pressure_from_root(root: Operand) -> Operand:
    """Pressure of saturated steam, from its scaled fourth root.

    Units: root [1]; gives [kPa].
    Source: iapws_r7_97.
    """
    return PRESSURE_SCALE * (root**2) ** 2
