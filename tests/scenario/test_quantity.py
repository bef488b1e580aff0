"""Quantities written as text: units against exact sizes typed here, and complaints about those that do not fit."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from farmbook.model.farm import SECTIONS
from farmbook.scenario.quantity import read_quantity, split_quantity
from farmbook.scenario.words import UnfitError, share_like
from farmbook.sections.declare import NumberInput
from farmbook.units import displayed, unit

SETTINGS = settings(max_examples=150, deadline=None, derandomize=True, database=None)

Sizes = Mapping[str, Fraction | int]

# Sizes in kg, m, h and kJ: NIST SP 811 appendix B.8 (pound 0.45359237 kg, foot 0.3048 m, gallon 231 cubic inches,
# Btu_IT 1.05505585262 kJ); the ton is 2,000 lb.
POUND = Fraction("0.45359237")
MASSES: Sizes = {
    "kg": 1,
    "g": Fraction(1, 1000),
    "t": 1000,
    "lb": POUND,
    "pounds": POUND,
    "oz": POUND / 16,
    "short ton": 2000 * POUND,
}
LENGTHS: Sizes = {
    "m": 1,
    "cm": Fraction(1, 100),
    "ft": Fraction("0.3048"),
    "feet": Fraction("0.3048"),
    "in": Fraction("0.0254"),
    "yd": Fraction("0.9144"),
    "yards": Fraction("0.9144"),
}
VOLUMES: Sizes = {
    "L": Fraction(1, 1000),
    "litres": Fraction(1, 1000),
    "gal": 231 * Fraction("0.0254") ** 3,
    "quarts": Fraction(231, 4) * Fraction("0.0254") ** 3,
    "pt": Fraction(231, 8) * Fraction("0.0254") ** 3,
    "cubic yard": Fraction("0.9144") ** 3,
    "yd3": Fraction("0.9144") ** 3,
    "ft3": Fraction("0.3048") ** 3,
    "cu ft": Fraction("0.3048") ** 3,
    "m3": 1,
    "m\u00b3": 1,
}
TIMES: Sizes = {
    "h": 1,
    "hours": 1,
    "min": Fraction(1, 60),
    "minutes": Fraction(1, 60),
    "s": Fraction(1, 3600),
    "days": 24,
}
ENERGIES: Sizes = {"kJ": 1, "kWh": 3600, "Btu": Fraction("1.05505585262"), "therm": Fraction("105505.585262")}
POWERS: Sizes = {"kW": 3600, "W": Fraction("3.6"), "Btu/h": Fraction("1.05505585262"), "kWh/day": 150}
MONEY: Sizes = {"EUR": 1, "eur": 1, "\u20ac": 1, "cents": Fraction(1, 100), "ct": Fraction(1, 100)}

CASES: list[tuple[str, Sizes, Sizes | None]] = [
    ("kg_wet", MASSES, None),
    ("m", LENGTHS, None),
    ("L/run", VOLUMES, None),
    ("h", TIMES, None),
    ("kW", POWERS, None),
    ("kWh/run", ENERGIES, None),
    ("money/kg_wet", MONEY, MASSES),
    ("money/kWh", MONEY, ENERGIES),
    ("kg_wet/m3", MASSES, VOLUMES),
    ("kg_water/h", MASSES, TIMES),
]
SIZES: Sizes = {"kWh/run": 3600, "L/run": Fraction(1, 1000), "kW": 3600, "money/kWh": Fraction(1, 3600)}

decimals = st.decimals(min_value="-99999", max_value="99999", places=4).filter(lambda value: value == value)


def parsed(text: str, target: str, currency: str = "EUR") -> Fraction:
    number, written = split_quantity(text)
    return read_quantity(number, written, unit(target), currency)


@SETTINGS
@given(st.data())
def test_every_unit_is_read_at_its_exact_size(data: st.DataObject) -> None:
    target, above, below = data.draw(st.sampled_from(CASES))
    number = data.draw(decimals)
    over = data.draw(st.sampled_from(sorted(above)))
    size, words = Fraction(above[over]), over
    if below is not None:
        under = data.draw(st.sampled_from(sorted(below)))
        size, words = size / Fraction(below[under]), words + data.draw(st.sampled_from(["/", " / ", " per "])) + under
    assert parsed(f"{number} {words}", target) == Fraction(number) * size / SIZES.get(target, 1)


INPUTS = [declared for section in SECTIONS for declared in section.declared if isinstance(declared, NumberInput)]


@SETTINGS
@given(st.sampled_from(INPUTS), st.sampled_from(["metric", "us"]), decimals)
def test_every_unit_that_a_book_shows_can_be_typed_back(declared: NumberInput, system: str, number: Decimal) -> None:
    target = displayed(declared.measure, system)
    if target.date or (target.pure and not share_like(target)):
        return
    found = read_quantity(Fraction(number), target.shown("CHF"), target, "CHF")
    assert found == (Fraction(number) / 100 if share_like(target) else Fraction(number))


@pytest.mark.parametrize(
    ("text", "target", "expected"),
    [
        ("212 degF", "degC", Fraction(100)),
        ("32 \u00b0F", "degC", Fraction(0)),
        ("-40 deg F", "degC", Fraction(-40)),
        ("18 F", "delta_degC", Fraction(10)),
        ("18 degF", "delta_degC", Fraction(10)),
        ("93.5 C", "degC", Fraction("93.5")),
        ("10 K", "delta_degC", Fraction(10)),
        ("55 %", "kg_dry/kg_wet", Fraction("0.55")),
        ("55%", "share", Fraction("0.55")),
        ("0.16 percent", "kg_nitrogen/kg_dry", Fraction("0.0016")),
        ("0.2 lb/lb", "kg_protein/kg_dry", Fraction("0.2")),
        ("7 %/year", "share/year", Fraction("0.07")),
        ("5 lb", "kg_wet/bag_filled", 5 * POUND),
        ("5 lb/bag", "kg_wet/bag_filled", 5 * POUND),
        ("600 bags a week", "bag_filled/week", Fraction(600)),
        ("600/week", "bag_filled/week", Fraction(600)),
        ("40 kWh per steam load", "kWh/run", Fraction(40)),
        ("90 min", "h/run", Fraction("1.5")),
        ("110 bags per person-hour", "bag_filled/person_hour", Fraction(110)),
        ("18 EUR/h", "money/person_hour", Fraction(18)),
        ("18 EUR per hour of work", "money/person_hour", Fraction(18)),
        ("10 EUR/kW-month", "money/kW/month", Fraction(10)),
        ("504 h", "day", Fraction(21)),
        ("3 weeks", "week", Fraction(3)),
        ("1_000 kg", "kg", Fraction(1000)),
        ("\u22125 degC", "degC", Fraction(-5)),
        ("1e3 kg", "kg", Fraction(1000)),
        (".5 kg", "kg", Fraction("0.5")),
        ("2.1 m2 K/W", "m2*delta_degC/W", Fraction("2.1")),
        # 1 ft2 h degF/Btu = 0.3048^2 m2 x 5/9 K / 1.05505585262 kJ/h
        (
            "12 ft2*h*degF/Btu",
            "m2*delta_degC/W",
            12 * Fraction("0.3048") ** 2 * Fraction(5, 9) * Fraction("3.6") / Fraction("1.05505585262"),
        ),
    ],
)
def test_a_text_with_a_unit_is_read(text: str, target: str, expected: Fraction) -> None:
    assert parsed(text, target) == expected


@pytest.mark.parametrize(
    ("text", "target", "wanted"),
    [
        ("5 gal", "kg_wet", "a mass is wanted, in kg or the like; `gal` is a volume"),
        ("5 kg", "m", "a length is wanted, in m or the like; `kg` is a mass"),
        ("5 kW", "kWh/run", "an energy per steam load is wanted, in kWh/steam load or the like; `kW` is a power"),
        ("5 degF", "kPa", "a pressure is wanted, in kPa or the like; `degF` is a temperature"),
        ("5 EUR/kg", "money/kWh", "money per energy is wanted, in EUR/kWh or the like; `EUR/kg` is money per mass"),
        ("5 kg", "share", "a share is wanted, in % or the like; `kg` is a mass"),
        ("3 weeks", "day", "a time is wanted, in day or the like; `weeks` is a number of weeks"),
        (
            "3 bags",
            "bag_filled/week",
            (
                "a number of bags filled per week is wanted, in bag filled/week or the like; "
                "`bags` is a number of bags filled"
            ),
        ),
        ("5 %", "kg_wet", "a mass is wanted, in kg or the like; `%` is a share"),
        (
            "600 %",
            "bag_filled/run",
            "a number of bags filled per steam load is wanted, in bag filled/steam load or the like; `%` is a share",
        ),
        (
            "18 EUR",
            "money/person_hour",
            "money per hour of work is wanted, in EUR/hour of work or the like; `EUR` is money",
        ),
        ("80 %", "1", "a plain number is wanted, without a unit"),
        ("3 kg", "count", "a plain number is wanted, without a unit"),
        ("48 USD/t", "money/kg_wet", "`USD` is not the file's currency: money in this file is in EUR"),
        ("48 $/t", "money/kg_wet", "`$` is not the file's currency: money in this file is in EUR"),
        ("48 usd/t", "money/kg_wet", "`usd` is not the file's currency: money in this file is in EUR"),
        ("5 galon", "L/run", "`galon` is not a unit known here; did you mean `gallon`?"),
        ("5 qqqq", "kg", "`qqqq` is not a unit known here"),
        ("5 kg/", "kg", "`kg/` is not a unit known here"),
        ("5 lb/lb/lb/lb/lb/lb", "kg", "`lb/lb/lb/lb/lb/lb` is too long to be a unit"),
        ("five lb", "kg", 'a number comes first, then its unit, as in "5 lb"'),
        ("$5", "money/kWh", "`$` is not the file's currency: money in this file is in EUR"),
        ("\u20ac5", "money/kWh", "money per energy is wanted, in EUR/kWh or the like; `\u20ac` is money"),
        ("\u20ac1,200", "money", 'a number comes first, then its unit, as in "5 lb"'),
        ("kWh 5", "kWh/run", 'a number comes first, then its unit, as in "5 lb"'),
        ("1,200 lb", "kg", "a number is written without commas: 1200 for a thousand and more, 0.55 for parts of one"),
        ("1e400 kg", "kg", "the number is too large"),
        ("1e-400 kg", "kg", "the number is too small; write 0"),
        ("1" * 401 + "e-300 kg", "kg", "the number has more than 400 digits"),
    ],
)
def test_a_text_that_does_not_fit_is_told_what_is_wanted(text: str, target: str, wanted: str) -> None:
    with pytest.raises(UnfitError) as caught:
        parsed(text, target)
    assert caught.value.wanted == wanted


@pytest.mark.parametrize(
    ("text", "target", "expected"),
    [
        # by the sack: 9.80 for 50 lb is 0.196 a pound
        ("9.80 EUR per 50 lb", "money/kg_wet", Fraction("0.196") / POUND),
        ("9.80 EUR per 50 lb sack", "money/kg_wet", Fraction("0.196") / POUND),
        ("9.80 EUR per 50-lb bag", "money/kg_wet", Fraction("0.196") / POUND),
        ("9.80 EUR a sack of 50 lb", "money/kg_wet", Fraction("0.196") / POUND),
        ("9.80 EUR/bag of 50 lb", "money/kg_wet", Fraction("0.196") / POUND),
        ("12 EUR / 25 kg", "money/kg_wet", Fraction("0.48")),
        ("12 EUR/12.5kg", "money/kg_wet", Fraction("0.96")),
        ("160 EUR per 1000", "money/bag_filled", Fraction("0.16")),
        ("160 EUR per 1000 bags", "money/bag_filled", Fraction("0.16")),
        ("45 EUR per 100 therms", "money/kWh_fuel", Fraction("0.45") / Fraction("105505.585262") * 3600),
        ("1/20", "share", Fraction("0.05")),
        # the sign of the money first
        ("\u20ac9.80 per 50 lb", "money/kg_wet", Fraction("0.196") / POUND),
        ("\u20ac 0.13/kWh", "money/kWh", Fraction("0.13")),
        ("\u20ac1200", "money", Fraction(1200)),
        # what is counted may be left out below alone
        ("300 bags", "bag_filled/run", Fraction(300)),
        ("20 plates", "plate/cooker_run", Fraction(20)),
        # cents
        ("12 cents/kWh", "money/kWh", Fraction("0.12")),
        ("12 ct/kWh", "money/kWh", Fraction("0.12")),
        ("12\u00a2 a kWh", "money/kWh", Fraction("0.12")),
        ("12.5 Cents per kWh", "money/kWh", Fraction("0.125")),
        # dozens
        ("25 dozen", "bag_filled/run", Fraction(300)),
        ("25 dozen bags a load", "bag_filled/run", Fraction(300)),
        ("3.60 EUR per dozen", "money/bag_filled", Fraction("0.3")),
        ("3.60 EUR per dozen bags", "money/bag_filled", Fraction("0.3")),
        ("85 EUR per thousand", "money/bag_filled", Fraction("0.085")),
        ("9 EUR per hundred bags", "money/bag_filled", Fraction("0.09")),
        # fuels as they are sold
        ("2.40 EUR per gallon of propane", "money/L", Fraction("2.40") / (231 * Fraction("0.0254") ** 3 * 1000)),
        ("0.62 EUR per litre of propane", "money/L", Fraction("0.62")),
        ("1.10 EUR per therm", "money/kWh_fuel", Fraction("1.10") / Fraction("105505.585262") * 3600),
        ("1.10 EUR per therm of gas", "money/kWh_fuel", Fraction("1.10") / Fraction("105505.585262") * 3600),
        ("550 lb per cubic yard", "kg_wet/m3", 550 * POUND / Fraction("0.9144") ** 3),
        # hours and minutes, feet and inches, pounds and ounces
        ("2:45 h", "h/run", Fraction("2.75")),
        ("2:45 hours a load", "h/run", Fraction("2.75")),
        ("0:05 h", "min", Fraction(5)),
        ("1 h 30 min", "h/run", Fraction("1.5")),
        ("1 hour and 30 minutes", "h", Fraction("1.5")),
        ("1h 30min", "h", Fraction("1.5")),
        ("-1 h 30 min", "h", Fraction("-1.5")),
        ("1 h 30 min", "person_hour/run", Fraction("1.5")),
        ("20 minutes", "person_hour/run", Fraction(1, 3)),
        ("2 bags a minute", "bag_filled/person_hour", Fraction(120)),
        ("5 ft 6 in", "m", Fraction("5.5") * Fraction("0.3048")),
        ("2 lb 8 oz per bag", "kg_wet/bag_filled", Fraction("2.5") * POUND),
    ],
)
def test_a_grower_s_way_of_writing_is_read(text: str, target: str, expected: Fraction) -> None:
    assert parsed(text, target) == expected


WEIGH = 'so weigh how much that is and write the weight, as in "30 EUR per 500 kg"'
ONE_OR_TWO = 'one number with one unit is wanted, or a smaller unit after it, as in "1 h 30 min"'
CLOCK = 'hours and minutes are written "2:45 h" or "2 h 45 min"'


@pytest.mark.parametrize(
    ("text", "target", "wanted"),
    [
        (
            "32 EUR per cubic yard",
            "money/kg_wet",
            f"money per mass is wanted, in EUR/kg or the like; `EUR per cubic yard` is money per volume, {WEIGH}",
        ),
        (
            "32 EUR per yard",
            "money/kg_wet",
            f"money per mass is wanted, in EUR/kg or the like; `EUR per yard` is money per length, {WEIGH}",
        ),
        (
            "9 EUR per sack",
            "money/kg_wet",
            'how much is in a `sack`? Write that with it, as in "12 EUR per 50 lb sack"',
        ),
        ("9 EUR per 0 lb", "money/kg_wet", "`EUR per 0 lb` is for none of it; write for how many or how much"),
        ("9 EUR/-5 lb", "money/kg_wet", "`EUR/-5 lb` is not a unit known here"),
        ("9 EUR per 1,000 lb", "money/kg_wet", "`1,000` is not a unit known here"),
        ("12 pence/kWh", "money/kWh", "`pence` is not known here for EUR; write parts of one, as in 0.12 EUR"),
        ("25 dozen", "kg_wet", "a mass is wanted, in kg or the like; `dozen` is a plain number"),
        (
            "25 dozen plates",
            "kg_wet",
            "a mass is wanted, in kg or the like; `dozen plates` is a number of plates",
        ),
        ("2:45", "h/run", CLOCK),
        ("2:75 h", "h/run", CLOCK),
        ("2.5:45 h", "h/run", CLOCK),
        ("1 h 90 min", "h", ONE_OR_TWO),
        ("6 in 5 ft", "m", ONE_OR_TWO),
        ("3 F 2 F", "degC", ONE_OR_TWO),
    ],
)
def test_a_grower_s_way_of_writing_that_does_not_fit(text: str, target: str, wanted: str) -> None:
    with pytest.raises(UnfitError) as caught:
        parsed(text, target)
    assert caught.value.wanted == wanted


def test_pence_are_read_in_pounds_and_cents_are_not_known_in_yen() -> None:
    assert parsed("12 pence/kWh", "money/kWh", "GBP") == Fraction("0.12")
    with pytest.raises(UnfitError) as caught:
        parsed("12 cents/kWh", "money/kWh", "JPY")
    assert caught.value.wanted == "`cents` is not known here for JPY; write parts of one, as in 0.12 JPY"


def test_a_dollar_sign_is_money_in_a_file_of_dollars() -> None:
    assert parsed("0.13 $/kWh", "money/kWh", "USD") == Fraction("0.13")


def test_heat_capacity_with_two_divisors() -> None:
    assert parsed("1 Btu/lb/degF", "kJ/kg_dry/delta_degC") == Fraction("1.05505585262") / POUND / Fraction(5, 9)
