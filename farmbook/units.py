"""The only table of units: what each symbol measures, its exact size, and what a US customary book shows in its place.

A unit is a product of powers of symbols, written as in `kWh/run` or `m2*delta_degC/W`. Quantities that must not be mixed are
different base kinds (`kg_dry` and `kg_wet`), though all are weighed in kilograms.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from functools import cache, cached_property
from typing import Final

from farmbook.errors import ModelFault

__all__ = [
    "DAY_0", "MASS_KINDS", "SYMBOLS", "SYSTEMS", "Symbol", "Unit", "day_of", "displayed", "ice_point_shift", "serial_of", "unit"
]  # fmt: skip

DAY_0: Final = date(1899, 12, 30)
"""From which spreadsheets count days."""

SYSTEMS: Final = ("metric", "us")

MASS_KINDS: Final = {
    "": "",
    "_dry": "dry mix",
    "_wet": "wet",
    "_water": "water",
    "_nitrogen": "nitrogen",
    "_carbon": "carbon",
    "_protein": "protein",
    "_spawn": "spawn",
    "_fuel": "fuel",
    "_picked": "picked",
    "_packed": "packed",
    "_taken": "taken to customers",
    "_sold": "sold",
}
"""Ending of a mass symbol: what is weighed."""


NOT_SHARES: Final = {("carbon", "nitrogen"), ("wet", "dry"), ("water", "dry"), ("protein", "nitrogen")}
"""Kinds of mass of which one is no part of the other: shown as a plain ratio, not as a percentage."""


@dataclass(frozen=True)
class Symbol:
    """One unit symbol: `size` base units of `measures` (base kinds and their powers), shown as `shown`."""

    name: str
    shown: str
    size: Fraction
    measures: tuple[tuple[str, int], ...]
    us: str = ""
    point: bool = False


def _base(name: str, shown: str = "", *, us: str = "") -> Symbol:
    return Symbol(name, shown or name, Fraction(1), ((name, 1),), us)


def _sized(name: str, size: str, of: str, *, shown: str = "", us: str = "") -> Symbol:
    return Symbol(name, shown or name, Fraction(size), ((of, 1),), us)


def _mass_symbols() -> list[Symbol]:
    """Every kind of mass in every unit of mass. The pound is 0.45359237 kg and the ton 2,000 lb (NIST SP 811, appendix B.8)."""
    pound = Fraction("0.45359237")
    sizes = {
        "kg": Fraction(1),
        "g": Fraction(1, 1000),
        "t": Fraction(1000),
        "lb": pound,
        "oz": pound / 16,
        "ton": pound * 2000,
    }
    us = {"kg": "lb", "g": "oz", "t": "ton"}
    return [
        Symbol(f"{name}{kind}", name, size, ((f"kg{kind}", 1),), f"{us[name]}{kind}" if name in us else "")
        for kind in MASS_KINDS
        for name, size in sizes.items()
    ]


_COUNTS: Final = {
    "bag_filled": "bag filled",
    "bag_steamed": "bag steamed",
    "bag_inoculated": "bag inoculated",
    "bag_live": "surviving bag",
    "spawn_bag": "spawn bag",
    "grain_bag": "grain bag",
    "second_grain_bag": "second grain bag",
    "plate": "plate",
    "spawn_unit": "plate or bag",
    "cooker_run": "cooker run",
    "lab_batch": "lab batch",
    "run": "steam load",
    "batch": "mixer batch",
    "place": "place",
    "person_hour": "hour of work",
    "week": "week",
    "month": "month",
    "year": "year",
    "money": "money",
    "A": "A",
    "flag": "1 = yes",
}
"""Things that are counted, time that does not convert, money and amperes: how each is shown."""

_GALLON: Final = Fraction("0.003785411784")
"""The US gallon, 231 cubic inches, in cubic metres. A quart is a fourth of it, a pint an eighth (NIST Handbook 44, appendix C)."""


def _table() -> dict[str, Symbol]:
    """Exact sizes from NIST SP 811 appendix B.8 unless said otherwise."""
    rows = [
        *_mass_symbols(),
        *(_base(name, shown) for name, shown in _COUNTS.items()),
        _base("kelvin", "K"),
        _base("delta_degC", "degC", us="delta_degF"),
        _sized("delta_degF", "5/9", "delta_degC", shown="degF"),
        Symbol("degC", "degC", Fraction(1), (("point", 1),), "degF", point=True),
        Symbol("degF", "degF", Fraction(5, 9), (("point", 1),), point=True),
        _base("m", us="ft"),
        _sized("cm", "0.01", "m", us="in"),
        _sized("ft", "0.3048", "m"),
        _sized("in", "0.0254", "m"),
        _sized("yd", "0.9144", "m"),
        Symbol("L", "L", Fraction("0.001"), (("m", 3),), "gal"),
        Symbol("gal", "gal", _GALLON, (("m", 3),)),
        Symbol("qt", "qt", _GALLON / 4, (("m", 3),)),
        Symbol("pt", "pt", _GALLON / 8, (("m", 3),)),
        _base("h"),
        _sized("min", "1/60", "h"),
        _sized("s", "1/3600", "h"),
        _sized("day", "24", "h"),
        _sized("date", "24", "h"),
        _sized("person_min", "1/60", "person_hour", shown="minute of work"),
        _base("kJ"),
        _sized("kWh", "3600", "kJ"),
        _sized("Btu", "1.05505585262", "kJ"),
        _sized("therm", "105505.585262", "kJ"),
        _base("kJ_fuel", "kJ"),
        Symbol("kWh_fuel", "kWh", Fraction(3600), (("kJ_fuel", 1),), "therm_fuel"),
        _sized("therm_fuel", "105505.585262", "kJ_fuel", shown="therm"),
        _sized("Btu_fuel", "1.05505585262", "kJ_fuel", shown="Btu"),
        Symbol("kW", "kW", Fraction(3600), (("kJ", 1), ("h", -1))),
        Symbol("W", "W", Fraction("3.6"), (("kJ", 1), ("h", -1))),
        Symbol("V", "V", Fraction("3.6"), (("kJ", 1), ("h", -1), ("A", -1))),
        Symbol("kPa", "kPa", Fraction(1), (("kPa", 1),), "psi"),
        _sized("Pa", "0.001", "kPa"),
        _sized("MPa", "1000", "kPa"),
        _sized("psi", "6.894757293168", "kPa"),
        Symbol("count", "number", Fraction(1), (("flag", 1),)),
        Symbol("share", "%", Fraction(1), (("flag", 1),)),
        Symbol("percent", "%", Fraction(1, 100), (("flag", 1),)),
        Symbol("dozen", "dozen", Fraction(12), (("flag", 1),)),
        Symbol("hundred", "hundred", Fraction(100), (("flag", 1),)),
        Symbol("thousand", "thousand", Fraction(1000), (("flag", 1),)),
        _sized("cent", "0.01", "money"),
    ]
    return {row.name: row for row in rows}


SYMBOLS: Final[dict[str, Symbol]] = _table()

_WHOLE_UNITS_US: Final = {
    "m2*delta_degC/W": "ft2*h*delta_degF/Btu",
    "L/kg_dry": "ft3/lb_dry",
    "L/bag_filled": "ft3/bag_filled",
}
"""Composite units whose US counterpart is not made symbol by symbol."""

_SPOKEN: Final = {
    "bag_filled": ("bag filled", "bags filled"),
    "bag_steamed": ("bag steamed", "bags steamed"),
    "bag_inoculated": ("bag inoculated", "bags inoculated"),
    "bag_live": ("bag that fruits", "bags that fruit"),
    "spawn_bag": ("bag of spawn", "bags of spawn"),
    "grain_bag": ("bag of grain", "bags of grain"),
    "second_grain_bag": ("bag of second grain", "bags of second grain"),
    "plate": ("plate", "plates"),
    "spawn_unit": ("plate or bag", "plates or bags"),
    "cooker_run": ("cooker run", "cooker runs"),
    "lab_batch": ("lab batch", "lab batches"),
    "run": ("load", "loads"),
    "batch": ("mixer batch", "mixer batches"),
    "place": ("place", "places"),
    "person_hour": ("hour of work", "hours of work"),
    "person_min": ("minute", "minutes"),
    "h": ("hour", "hours"),
    "min": ("minute", "minutes"),
    "s": ("second", "seconds"),
    "day": ("day", "days"),
    "week": ("week", "weeks"),
    "month": ("month", "months"),
    "year": ("year", "years"),
    "A": ("amp", "amps"),
    "V": ("volt", "volts"),
    "gal": ("gallon", "gallons"),
    "L": ("litre", "litres"),
    "ft3": ("cubic foot", "cubic feet"),
    "ft2": ("square foot", "square feet"),
    "in2": ("square inch", "square inches"),
    "m3": ("m\u00b3", "m\u00b3"),
    "cm2": ("cm\u00b2", "cm\u00b2"),
    "m2": ("m\u00b2", "m\u00b2"),
    "therm_fuel": ("therm", "therms"),
    "degC": ("°C", "°C"),
    "degF": ("°F", "°F"),
    "delta_degC": ("°C", "°C"),
    "delta_degF": ("°F", "°F"),
}
"""One and many of a symbol, where a grower says more than is written."""

_WEIGHED: Final = {
    "dry": " dry",
    "wet": " wet",
    "water": " of water",
    "spawn": " of spawn",
    "picked": " picked",
    "packed": " packed",
    "taken": " to customers",
    "sold": " sold",
}
"""Kind of mass, as it is said after its unit."""

_FACTOR: Final = re.compile(r"^([A-Za-z_]+?)(-?\d+)?$")


@dataclass(frozen=True)
class Unit:
    """A product of powers of symbols. `1` (no symbols) is a plain number."""

    powers: tuple[tuple[str, int], ...]

    @cached_property
    def dimension(self) -> tuple[tuple[str, int], ...]:
        """Base kinds and their powers, zero powers left out. Two units convert only when these agree."""
        total: dict[str, int] = {}
        for name, power in self.powers:
            for base, exponent in SYMBOLS[name].measures:
                total[base] = total.get(base, 0) + exponent * power
        total.pop("flag", None)
        return tuple(sorted((base, power) for base, power in total.items() if power))

    @cached_property
    def size(self) -> Fraction:
        """How many base units one of this unit is; exact."""
        product = Fraction(1)
        for name, power in self.powers:
            product *= SYMBOLS[name].size ** power
        return product

    @cached_property
    def point(self) -> bool:
        """Whether this is a temperature on a scale (not a difference)."""
        return len(self.powers) == 1 and self.powers[0][1] == 1 and SYMBOLS[self.powers[0][0]].point

    @property
    def date(self) -> bool:
        """Whether this is a day of the calendar, counted as spreadsheets do."""
        return self.powers == (("date", 1),)

    @property
    def pure(self) -> bool:
        """Whether this is a plain number."""
        return not self.dimension

    @cached_property
    def share(self) -> bool:
        """Whether this is a mass per mass or bag per bag in the same symbol: shown as a percentage."""
        if self.powers == (("share", 1),):
            return True
        stems = {_stem(name) for name, _ in self.powers}
        if len(self.powers) != 2 or len(stems) != 1 or sum(power for _, power in self.powers) != 0:
            return False
        above, below = sorted(self.powers, key=lambda each: -each[1])
        return (_kind(above[0]), _kind(below[0])) not in NOT_SHARES

    def times(self, other: Unit, power: int = 1) -> Unit:
        """This unit times another raised to a power; equal symbols are gathered."""
        total = dict(self.powers)
        for name, exponent in other.powers:
            total[name] = total.get(name, 0) + exponent * power
        return Unit(tuple((name, exponent) for name, exponent in total.items() if exponent))

    def __str__(self) -> str:
        return self._spelled

    @cached_property
    def _spelled(self) -> str:
        """As scenario files spell it."""
        above = "*".join(_powered(name, power) for name, power in self.powers if power > 0)
        below = "".join("/" + _powered(name, -power) for name, power in self.powers if power < 0)
        return (above or "1") + below

    def plain(self, currency: str = "money") -> str:
        """How a program is told the unit of a bare number: a share of 0.72 is a share of 1, not 0.72 %."""
        return "share" if self.share else self.shown(currency)

    def shown(self, currency: str = "money") -> str:
        """How a reader sees the unit: kinds are not shown, shares say of what."""
        if self.share:
            return "%"
        if self.pure and not self.powers:
            return "number"
        if len(self.powers) == 2 and {_kind(name) for name, _ in self.powers} == {"carbon", "nitrogen"}:
            return "to 1"
        above = " x ".join(_shown(name, power, currency) for name, power in self.powers if power > 0)
        below = "".join("/" + _shown(name, -power, currency) for name, power in self.powers if power < 0)
        return (above or "1") + below

    def said(self, money: str = "") -> str:
        """How a grower says the unit after a figure: `lb a load`, `an hour of work`; nothing after shares and plain numbers.

        Amounts of money have their sign before them; where they have none, as in a table, `money` is said here.
        """
        if self.share or self.date or self.powers in ((), (("count", 1),)):
            return ""
        if str(self) == "person_hour/h":
            return "people"
        above = [(name, power) for name, power in self.powers if power > 0]
        if len(above) > 1 or self.shown() == "to 1":
            return self.shown(money or "money")
        many = [money if name == "money" else _spoken(name, power)[1] for name, power in above]
        each = [_each(name, -power) for name, power in self.powers if power < 0]
        return " ".join(filter(None, [*many, *each]))


def _spoken(name: str, power: int) -> tuple[str, str]:
    """One of a symbol and many of it, as they are said."""
    return _SPOKEN.get(_powered(name, power)) or (_shown(name, power, ""),) * 2


def _each(name: str, power: int) -> str:
    one = _spoken(name, power)[0]
    kind = _WEIGHED.get(_kind(name), "") if SYMBOLS[name].measures[0][0].startswith("kg") else ""
    return f"{'an' if one.startswith(('hour', 'oz', 'amp')) else 'a'} {one}{kind}"


def _stem(name: str) -> str:
    return name.split("_")[0]


def _kind(name: str) -> str:
    return name.partition("_")[2]


def _powered(name: str, power: int) -> str:
    return name if power == 1 else f"{name}{power}"


def _shown(name: str, power: int, currency: str) -> str:
    shown = currency if name == "money" else SYMBOLS[name].shown
    return shown if power == 1 else f"{shown}{power}"


@cache
def unit(text: str) -> Unit:
    """Read a unit such as `kWh/run`; raises ModelFault for a symbol that is not in the table."""
    total = Unit(())
    for position, part in enumerate(text.split("/")):
        for factor in part.split("*"):
            total = total.times(_one(factor.strip(), text), -1 if position else 1)
    return total


def _one(factor: str, whole: str) -> Unit:
    if factor in ("1", ""):
        return Unit(())
    match = _FACTOR.match(factor)
    if match is None or match[1] not in SYMBOLS:
        raise ModelFault(f"no unit `{factor}` in the table of units (reading `{whole}`)")
    return Unit(((match[1], int(match[2] or 1)),))


@cache
def displayed(of: Unit, system: str) -> Unit:
    """The unit that a book in this system ("metric" or "us") shows for a quantity declared in `of`."""
    if system == "metric":
        return of
    if str(of) in _WHOLE_UNITS_US:
        return unit(_WHOLE_UNITS_US[str(of)])
    total = Unit(())
    for name, power in of.powers:
        total = total.times(Unit(((SYMBOLS[name].us or name, power),)))
    return total


def serial_of(day: date) -> int:
    """The number by which spreadsheets know a day."""
    return (day - DAY_0).days


def day_of(serial: float) -> date | None:
    """The day behind such a number; None where no calendar has it."""
    try:
        return DAY_0 + timedelta(days=math.floor(serial))
    except (OverflowError, ValueError):
        return None


def ice_point_shift(of: Unit) -> Fraction:
    """What the freezing point of water reads on this temperature scale: 0 for degC, 32 for degF."""
    return Fraction(32) if of.powers[0][0] == "degF" else Fraction(0)
