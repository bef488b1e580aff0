"""How many decimals a number shows, by its unit."""

from __future__ import annotations

import pytest

from farmbook.layout.looks import decimals, number_format, zero_in_words
from farmbook.units import unit


@pytest.mark.parametrize(
    ("symbols", "shown"),
    [
        ("money/kg_picked", 3),
        ("money/lb_wet", 3),
        ("money/bag_filled", 3),
        ("money/kWh", 3),
        ("money/gal", 3),
        ("money/plate", 3),
        ("money/spawn_unit", 3),
        ("money/m2", 3),
        # a month is no metre
        ("money/month", 2),
        ("money/year", 2),
        ("money/run", 2),
        ("money/person_hour", 2),
        ("money", 2),
        ("degC", 1),
        ("degF", 1),
        ("delta_degC", 1),
        ("delta_degF/h", 1),
        ("kelvin", 2),
        ("kWh/run", 1),
        ("kW", 1),
        ("kJ", 1),
        ("h/week", 2),
        ("min", 1),
        ("day", 1),
        ("L", 1),
        ("gal/run", 1),
        ("kPa", 2),
        ("psi", 2),
        ("m", 2),
        ("ft", 2),
        ("cm", 1),
        ("in", 1),
        ("A", 1),
        ("V", 0),
        ("bag_filled/week", 1),
        ("kg_dry", 1),
        ("kg_dry/bag_filled", 3),
        ("1", 2),
        ("flag", 0),
    ],
)
def test_decimals_by_unit(symbols: str, shown: int) -> None:
    assert decimals(unit(symbols)) == shown


@pytest.mark.parametrize(
    ("symbols", "form"),
    [
        ("share", "0.0%"),
        ("kg_nitrogen/kg_dry", "0.00%"),
        ("money/month", "#,##0.00"),
        ("flag", "#,##0"),
        ("1", "[>=1000000]0.000E+00;[<=-1000000]-0.000E+00;#,##0.00"),
    ],
)
def test_formats_by_unit(symbols: str, form: str) -> None:
    assert number_format(unit(symbols)) == form


def test_words_in_place_of_nothing_keep_the_last_part_of_a_format() -> None:
    assert zero_in_words("#,##0.00") == '#,##0.00;-#,##0.00;"no figure"'
    assert zero_in_words("[>=1000000]0.000E+00;#,##0.00") == '#,##0.00;-#,##0.00;"no figure"'
