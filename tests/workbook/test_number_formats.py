"""How numbers are shown: by what they measure, the same in the book and in the commands, and what a person would say."""

from __future__ import annotations

import pytest

from farmbook.layout.forms import Form, form_of, money_sign, typed_form
from farmbook.units import displayed, unit


@pytest.mark.parametrize(
    ("symbols", "value", "said"),
    [
        # money for a thing: cents, and tenths of a cent under ten cents
        ("money/kg_picked", 2.1452, "2.15"),
        ("money/lb_wet", 0.0255, "0.026"),
        ("money/bag_filled", 0.02, "0.02"),
        ("money/bag_filled", 0, "0.00"),
        ("money/bag_filled", -0.82, "-0.82"),
        ("money/bag_live/week", 0.3, "0.30"),
        ("money/kW/month", 11.4, "11.40"),
        ("money/person_hour", 19.6875, "19.69"),
        ("money/h", 0.55, "0.55"),
        ("money/gal", 2.4, "2.40"),
        ("money/ft3", 0.3895, "0.39"),
        ("money/plate", 0.4814, "0.48"),
        ("money/kWh", 0.118, "0.118"),
        ("money/kWh_fuel", 0.0896, "0.090"),
        ("money/kWh", 2, "2.00"),
        # money for a load, and by time
        ("money/run", 19.82, "19.82"),
        ("money/run", 174.93, "175"),
        ("money/cooker_run", 2, "2.00"),
        ("money/week", 1896.96, "1,897"),
        ("money/month", 273.6, "274"),
        ("money/year", -2392.4, "-2,392"),
        ("money/year", -0.3, "0"),
        ("money", 238960.2, "238,960"),
        # weights, volumes, energies
        ("lb_wet/bag_filled", 5.2617, "5.26"),
        ("kg_spawn/spawn_unit", 0.1135, "0.11"),
        ("kg_wet/batch", 14.52, "14.5"),
        ("lb_water/run", 1047.3, "1,047"),
        ("lb_packed/year", 37581.3, "37,581"),
        ("kWh/run", 79.04, "79.0"),
        ("kWh/run", 168.4, "168"),
        ("kWh/bag_filled", 0.5091, "0.51"),
        ("gal/run", 58.6, "58.6"),
        ("ft3/batch", 12.2, "12.2"),
        ("m2", 9.88, "9.9"),
        ("ft", 980, "980"),
        ("in", 4.72, "4.7"),
        # one measure of another
        ("kg_water/kg_dry", 1.2369, "1.24"),
        ("kg_carbon/kg_nitrogen", 80.98, "81"),
        ("ft3/lb_dry", 0.07446, "0.074"),
        ("kJ/kg_dry/delta_degC", 1.3664, "1.366"),
        ("kJ/kg_water", 2675.6, "2,675.6"),
        # what is counted
        ("bag_filled/week", 523.16, "523"),
        ("bag_filled/batch", 80.77, "81"),
        ("bag_inoculated/person_hour", 90, "90"),
        ("place/run", 330, "330"),
        ("spawn_bag/week", 26, "26"),
        ("run/week", 1.94, "1.9"),
        ("run/year", 95.03, "95"),
        ("batch/run", 4.086, "4.1"),
        ("spawn_unit/week", 0.63, "0.6"),
        ("flag", 1, "1"),
        ("count", 143, "143"),
        # time
        ("h/run", 3.2349, "3.2"),
        ("h/run", 0, "0.0"),
        ("person_hour/year", 631.1, "631"),
        ("person_hour/bag_filled", 0.00952, "0.010"),
        ("day", 22, "22"),
        ("day", 0.5, "0.5"),
        ("week", 8.57, "8.6"),
        ("year", 4.549, "4.5"),
        ("min", 30.9, "31"),
        ("min", 1.246, "1.2"),
        ("s/h", 1.675, "1.68"),
        # heat, pressure, current
        ("degC", 98.6, "99"),
        ("degF", 248.2, "248"),
        ("delta_degF", 138.9, "139"),
        ("kelvin", 394.262, "394.3"),
        ("psi", 14.18, "14.2"),
        ("kPa", 101.3, "101"),
        ("kW", 1.608, "1.6"),
        ("kW", 24, "24"),
        ("A", 57.74, "58"),
        ("V", 240, "240"),
        # shares
        ("share", 0.2652, "27%"),
        ("share", 0.0407, "4.1%"),
        ("share", -0.25, "-25.0%"),
        ("kg_picked/kg_dry", 0.44, "44%"),
        ("kg_nitrogen/kg_dry", 0.00584, "0.58%"),
        # plain numbers; steps of the steam equation run to twelve figures
        ("1", 1.14649, "1.15"),
        ("1", -255.914, "-255.91"),
        ("1", 1.67327e12, "1.673E+12"),
        ("1/h", 0.3336, "0.33"),
        ("1/year", 0.08, "0.08"),
        ("person_hour/year", 30.5, "31"),
        ("m2*delta_degC/W", 1.7, "1.700"),
    ],
)
def test_what_a_person_would_say(symbols: str, value: float, said: str) -> None:
    assert form_of(unit(symbols)).said(value) == said


@pytest.mark.parametrize(
    ("symbols", "code"),
    [
        ("share", "[<0.1]0.0%;0%"),
        ("kg_nitrogen/kg_dry", "0.00%"),
        ("money/month", "#,##0"),
        ("money/bag_filled", "[<0.1]0.00#;#,##0.00"),
        ("flag", "#,##0"),
        ("1", "[<1000000]#,##0.00;0.000E+00"),
    ],
)
def test_formats_by_unit(symbols: str, code: str) -> None:
    assert form_of(unit(symbols)).code == code


def test_a_format_has_at_most_one_turn() -> None:
    """Of three parts with conditions LibreOffice 7.4 shows the last without its minus."""
    form = Form("0.0", "#,##0", 100, sign="$", zero="no figure")
    assert form.code == '"$"0.0;-"$"0.0;"no figure"'
    assert [form.said(value) for value in (0, 250, -3)] == ["no figure", "$250.0", "-$3.0"]
    assert Form("0.0", "0", 1, plain="0.00", zero="none").code == '0.00;-0.00;"none"'


def test_halves_are_rounded_as_spreadsheets_do() -> None:
    """Away from zero, and by the fifteen digits that are kept: 2.675 lies a little under the half."""
    assert [Form("0.00").said(value) for value in (2.675, -1.005, 0.125)] == ["2.68", "-1.01", "0.13"]


@pytest.mark.parametrize(
    ("symbols", "value", "said"),
    [
        ("money/person_hour", 17.5, "$17.50"),
        ("money/kWh", 0.1185, "$0.1185"),
        ("money", 95000, "$95,000"),
        ("money/year", 412.5, "$412.5"),
        ("share", 0.61, "61.0%"),
        ("share", 0.6125, "61.25%"),
        ("kg_nitrogen/kg_dry", 0.0014, "0.14%"),
        ("lb_wet/bag_filled", 5.2, "5.2"),
        ("day", 22, "22"),
        ("oz/bag_filled", 0.9876709345882516, "0.9877"),
        ("kg_wet/bag_filled", 3, "3.0"),
        ("degF", 60.1, "60.1"),
    ],
)
def test_what_is_typed_is_shown_as_typed(symbols: str, value: float, said: str) -> None:
    assert typed_form(unit(symbols), "$").said(value) == said


def test_money_has_the_sign_that_everybody_knows_or_its_code() -> None:
    assert [money_sign(code) for code in ("USD", "EUR", "GBP", "CHF", "CAD")] == ["$", "€", "£", "CHF ", "CAD "]


@pytest.mark.parametrize(
    ("symbols", "after"),
    [
        ("money/bag_live", "a bag that fruits"),
        ("money/kg_picked", "a lb picked"),
        ("money/kg_dry", "a lb dry"),
        ("money/person_hour", "an hour of work"),
        ("money/m3", "a cubic foot"),
        ("money/bag_live/week", "a bag that fruits a week"),
        ("money", ""),
        ("share", ""),
        ("kg_picked/kg_dry", ""),
        ("1", ""),
        ("count", ""),
        ("1/year", "a year"),
        ("person_hour/h", "people"),
        ("flag", "1 = yes"),
        ("kg_wet/bag_filled", "lb a bag filled"),
        ("kg_water/kg_dry", "lb a lb dry"),
        ("kg_carbon/kg_nitrogen", "to 1"),
        ("bag_filled/run", "bags filled a load"),
        ("kWh/run", "kWh a load"),
        ("degC", "°F"),
        ("m2", "square feet"),
        ("m2*delta_degC/W", "ft2 x h x degF/Btu"),
    ],
)
def test_a_unit_is_said_after_its_figure(symbols: str, after: str) -> None:
    assert displayed(unit(symbols), "us").said() == after


def test_the_head_of_a_table_says_the_money() -> None:
    assert [unit(each).said("$") for each in ("money/year", "money", "h/run")] == ["$ a year", "$", "hours a load"]
