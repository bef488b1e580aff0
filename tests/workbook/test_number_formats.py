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
        ("money/m", 3),
        ("money/ft", 3),
        ("money/ft3", 3),
        ("money/L", 3),
        ("money/kJ", 3),
        ("money/grain_bag", 3),
        ("money/second_grain_bag", 3),
        # a month is no metre
        ("money/month", 2),
        ("money/year", 2),
        ("money/run", 2),
        ("money/week", 2),
        ("money/h", 2),
        ("money/person_hour", 2),
        ("money/cooker_run", 2),
        ("money/kW/month", 2),
        ("money/bag_live/week", 2),
        ("money", 2),
        ("degC", 1),
        ("degF", 1),
        ("delta_degC", 1),
        ("delta_degF", 1),
        ("kelvin", 2),
        ("h", 2),
        ("min", 1),
        ("day", 1),
        ("year", 2),
        ("kWh", 1),
        ("kW", 1),
        ("kJ", 1),
        ("kPa", 2),
        ("psi", 2),
        ("A", 1),
        ("V", 0),
        ("L", 1),
        ("gal", 1),
        ("m", 2),
        ("ft", 2),
        ("cm", 1),
        ("in", 1),
        ("bag_filled/run", 1),
        ("run/week", 1),
        ("batch/week", 1),
        ("place", 1),
        ("week", 1),
        ("spawn_bag/week", 1),
        ("grain_bag", 1),
        ("plate/week", 1),
        ("kWh/run", 1),
        ("kg_dry", 1),
        ("lb_dry", 1),
        ("g_dry", 1),
        ("oz_spawn", 1),
        ("t_wet", 1),
        ("ton_wet", 1),
        ("kg_dry/bag_filled", 3),
        ("kg_carbon/kg_nitrogen", 1),
        ("1", 2),
        ("flag", 0),
        ("count", 0),
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
