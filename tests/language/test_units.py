"""The table of units: sizes against print and definitions, reading and printing, display systems, factors."""

from __future__ import annotations

import random
import re
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr import nodes as n
from farmbook.expr.functions import joined, ratio
from farmbook.expr.lower import constant_value, factor_between, factor_value, lower
from farmbook.expr.walk import walk
from farmbook.interpret.formula import factor_name
from farmbook.units import MASS_KINDS, SYMBOLS, SYSTEMS, Unit, displayed, ice_point_shift, unit
from tests.engines.cells import disagreements
from tests.language.books import opened
from tests.language.test_nodes import sheets, worked

# NIST Special Publication 811 (2008), appendix B.8, as printed with up to seven digits. Known from memory; the British
# thermal unit and the pound per square inch were seen quoted in other works. (The therm is the one of 100,000 Btu.)
PRINTED: Mapping[str, tuple[str, str, str]] = {
    "lb": ("4.535 924 E-01", "kg", "pound, avoirdupois"),
    "oz": ("2.834 952 E-02", "kg", "ounce, avoirdupois"),
    "ton": ("9.071 847 E+02", "kg", "ton, short (2000 lb)"),
    "ft": ("3.048 E-01", "m", "foot"),
    "in": ("2.54 E-02", "m", "inch"),
    "yd": ("9.144 E-01", "m", "yard"),
    "gal": ("3.785 412 E-03", "m3", "gallon (U.S.)"),
    "qt": ("9.463 529 E-04", "m3", "quart (U.S. liquid)"),
    "pt": ("4.731 765 E-04", "m3", "pint (U.S. liquid)"),
    "L": ("1.0 E-03", "m3", "liter"),
    "psi": ("6.894 757 E+03", "Pa", "pound-force per square inch"),
    "Btu": ("1.055 056 E+03", "W*s", "British thermal unit IT"),
    "therm": ("1.055 06 E+08", "W*s", "therm (EC)"),
    "kWh": ("3.6 E+06", "W*s", "kilowatt hour"),
    "day": ("8.64 E+04", "s", "day"),
    "min": ("6.0 E+01", "s", "minute"),
    "delta_degF": ("5.555 556 E-01", "delta_degC", "degree Fahrenheit, temperature interval"),
}


@pytest.mark.parametrize("name", PRINTED)
def test_sizes_are_those_in_print(name: str) -> None:
    printed, of, _ = PRINTED[name]
    figures = printed.replace(" E", "E").replace(" ", "")
    digits = len(figures.split("E")[0].replace(".", ""))
    size = unit(name).size / unit(of).size
    assert f"{float(size):.{digits - 1}E}" == f"{float(figures):.{digits - 1}E}"


INCH, POUND = Fraction(3048, 120000), Fraction(45359237, 100000000)
# By definition: the international foot and pound of 1959; the gallon of 231 cubic inches, of
# which a quart is a fourth and a pint an eighth (NIST Handbook 44, appendix C, 57.75 and 28.875 cubic inches); the British thermal unit of
# the International Tables, 2326 J/kg for each Btu/lb; standard gravity of 9.80665 m/s2.
EXACT: Mapping[str, Fraction] = {
    "lb": POUND, "oz": POUND / 16, "ton": POUND * 2000, "g": Fraction(1, 1000), "t": Fraction(1000),
    "ft": INCH * 12, "in": INCH, "cm": Fraction(1, 100), "yd": INCH * 36, "gal": INCH**3 * 231, "L": Fraction(1, 1000),
    "qt": INCH**3 * 231 / 4, "pt": INCH**3 * 231 / 8, "dozen": Fraction(12), "hundred": Fraction(100),
    "thousand": Fraction(1000), "cent": Fraction(1, 100),
    "min": Fraction(1, 60), "s": Fraction(1, 3600), "day": Fraction(24), "date": Fraction(24),
    "kWh": Fraction(3600), "Btu": POUND * 2326 / 1000, "therm": POUND * 2326 * 100,
    "kW": Fraction(3600), "W": Fraction(36, 10), "V": Fraction(36, 10), "Pa": Fraction(1, 1000), "MPa": Fraction(1000),
    "percent": Fraction(1, 100), "delta_degF": Fraction(5, 9), "degF": Fraction(5, 9),
}  # fmt: skip


def test_sizes_are_exact_and_none_is_left_out() -> None:
    sized = {
        name: symbol.size
        for name, symbol in SYMBOLS.items()
        if symbol.size != 1 and "_" not in name.removeprefix("delta_")
    }
    rounded = sized.pop("psi")
    assert sized == EXACT
    psi = POUND * Fraction(980665, 100000) / INCH**2 / 1000
    assert abs(rounded / psi - 1) < Fraction(1, 10**12)


def test_every_kind_of_mass_has_the_same_units() -> None:
    for kind in MASS_KINDS:
        for name in ("kg", "g", "t", "lb", "oz", "ton"):
            assert unit(name + kind).dimension == ((f"kg{kind}", 1),)
    for name, symbol in SYMBOLS.items():
        stem, _, kind = name.partition("_")
        if f"_{kind}" in MASS_KINDS:
            assert symbol.size == SYMBOLS[stem].size


TEXTS = (
    "1", "kg_dry", "kWh/run", "m2*delta_degC/W", "money/bag_filled", "kg_water/kg_wet", "person_hour/bag_filled",
    "kJ/kg/delta_degC",
    "L/kg_dry", "1/week", "m3", "m-1", "kg_wet2/h3",
)  # fmt: skip


@pytest.mark.parametrize("text", TEXTS)
def test_a_unit_reads_back_as_it_prints(text: str) -> None:
    assert unit(str(unit(text))) == unit(text)


def test_any_product_of_powers_reads_back() -> None:
    rng = random.Random(811)
    for _ in range(400):
        names = rng.sample(sorted(SYMBOLS), rng.randint(0, 4))
        made = Unit(tuple((name, rng.choice((-3, -2, -1, 1, 2, 3))) for name in names))
        again = unit(str(made))
        assert dict(again.powers) == dict(made.powers)
        assert (again.dimension, again.size) == (made.dimension, made.size)


@pytest.mark.parametrize(
    ("text", "symbol"),
    [("furlong", "furlong"), ("kg_dried", "kg_dried"), ("kWh/fortnight", "fortnight"), ("m^2", "m^2"), ("KG", "KG")],
)
def test_an_unknown_symbol_is_named(text: str, symbol: str) -> None:
    with pytest.raises(ModelFault, match=re.escape(f"no unit `{symbol}` in the table of units (reading `{text}`)")):
        unit(text)


US: Mapping[str, str] = {
    "kg_wet/bag_filled": "lb_wet/bag_filled", "g_nitrogen": "oz_nitrogen", "t": "ton", "m": "ft", "cm": "in",
    "m2": "ft2", "m3": "ft3",
    "L": "gal", "degC": "degF", "delta_degC": "delta_degF", "kPa": "psi", "kWh/run": "kWh/run", "kW": "kW", "h": "h",
    "money/kg_dry": "money/lb_dry", "kg_water/kg_wet": "lb_water/lb_wet", "m2*delta_degC/W": "ft2*h*delta_degF/Btu",
    "L/kg_dry": "ft3/lb_dry", "bag_live/bag_filled": "bag_live/bag_filled", "kelvin": "kelvin", "share": "share",
}  # fmt: skip


@pytest.mark.parametrize("text", US)
def test_what_a_us_book_shows(text: str) -> None:
    assert str(displayed(unit(text), "us")) == US[text]
    assert displayed(unit(text), "metric") == unit(text)


def test_what_is_shown_measures_the_same() -> None:
    for name in SYMBOLS:
        shown = displayed(unit(name), "us")
        assert shown.dimension == unit(name).dimension
        assert displayed(shown, "us") == shown


def test_readers_do_not_see_kinds() -> None:
    assert unit("kg_wet/bag_filled").shown() == "kg/bag filled"
    assert displayed(unit("kg_water/kg_wet"), "us").shown() == "%"
    assert unit("money/kg_dry").shown("USD") == "USD/kg"
    assert [unit(name).shown() for name in ("share", "1", "degC")] == ["%", "number", "degC"]


def _point(value: float) -> n.Constant:
    return n.Constant(value, "some_point", label="Some point", unit=unit("degC"), source="arithmetic")


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40), (37, 98.6), (121.1, 249.98)])
def test_a_temperature_that_is_a_constant_moves_to_the_scale_of_the_book(celsius: float, fahrenheit: float) -> None:
    assert constant_value(_point(celsius), "us") == pytest.approx(fahrenheit, rel=1e-12)
    assert constant_value(_point(celsius), "metric") == celsius


def test_temperatures_are_points_and_differences_are_not() -> None:
    assert [unit(name).point for name in ("degC", "degF", "delta_degC", "kelvin", "degC2")] == [
        True,
        True,
        False,
        False,
        False,
    ]
    assert [ice_point_shift(unit(name)) for name in ("degC", "degF")] == [0, 32]
    assert factor_between(unit("delta_degF"), unit("delta_degC"))[0] == n.Factor((("delta_degF", 1),))


def _line(name: str, of: str, expr: n.Expr | None = None) -> n.Line:
    return n.Line(f"some.{name}", name, unit(of), (), lambda: n.Number(0) if expr is None else expr)


def _factors(expr: n.Expr, of: str, system: str) -> list[tuple[str, Fraction]]:
    root = lower(_line("line", of, expr), system)
    return [(factor_name(node.powers), factor_value(node.powers)) for node in walk(root) if isinstance(node, n.Factor)]


def test_a_term_has_one_factor_at_the_most() -> None:
    price, wet, hours = _line("price", "money/t"), _line("wet", "kg"), _line("power", "W")
    assert _factors(price * wet * hours, "money*kWh/h", "us") == [
        ("factor_w_lb_per_kwh_ton", POUND * Fraction(36, 10) / 3600 / (POUND * 2000))
    ]
    assert _factors(price * wet, "money", "metric") == [("factor_t", Fraction(1000))]
    assert _factors(wet + _line("grams", "g"), "kg", "metric") == [("factor_g", Fraction(1, 1000))]
    assert _factors(ratio(wet, _line("dry", "kg")), "1", "us") == []
    assert _factors(joined(wet, "kg_dry"), "kg_dry", "us") == []
    assert _factors(_line("length", "m") * _line("width", "m") * _line("depth", "cm"), "L", "us") == [
        ("factor_ft2_in_per_gal", Fraction(1728, 12 * 231))
    ]


def test_every_factor_of_a_book_is_one_named_cell(tmp_path: Path) -> None:
    found = worked("us")
    path = tmp_path / "factors.xlsx"
    book = found.written(path, sheets(), "pool.heading")
    factors = {node.powers for root in found.roots.values() for node in walk(root) if isinstance(node, n.Factor)}
    assert len(factors) > 4
    assert any(len(powers) > 1 for powers in factors)
    assert len({factor_name(powers) for powers in factors}) == len(factors)
    cells = {}
    for powers in factors:
        name = factor_name(powers)
        assert re.fullmatch(r"[a-z]+(_[a-z0-9]+)+", name)
        sheet, row, column = book.names[name]
        assert sheet == "Constants"
        cells[sheet, f"{chr(65 + column)}{row + 1}"] = float(factor_value(powers))
    assert len(cells) == len(factors)
    with opened("formualizer", path) as open_book:
        assert disagreements(cells, open_book.read(list(cells)), relative=1e-14, absolute=0) == []


def test_a_factor_is_the_quotient_of_the_sizes() -> None:
    rng = random.Random(84)
    plain = [name for name, symbol in SYMBOLS.items() if not symbol.point]
    for _ in range(300):
        found = Unit(tuple((name, rng.choice((-2, -1, 1, 2))) for name in rng.sample(plain, 3)))
        for system in SYSTEMS:
            target = displayed(found, system)
            factor, inverse = factor_between(found, target)
            size = factor_value(factor.powers) if factor is not None else Fraction(1)
            assert (1 / size if inverse else size) == found.size / target.size
            np.testing.assert_allclose(
                float(size), float(found.size / target.size) ** (-1 if inverse else 1), rtol=1e-14
            )
