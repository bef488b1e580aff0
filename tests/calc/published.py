"""One printed value: where it stands, what it was worked out from, and whether a calculation comes to it.

Units are never converted by hand: what is given goes into the unit that the calculation states, and the result comes
back into the unit in print, by the project's own table of units.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from typing import Any, Literal

import numpy as np

from farmbook.units import Unit, ice_point_shift, unit

HowKnown = Literal["seen", "copy", "library", "memory", "arithmetic"]
"""Read in print; read in a copy or quotation; computed with a library; recalled; worked out from printed figures."""

Given = str | tuple[str, ...]


@dataclass(frozen=True)
class Stated:
    """The units that a calculation's docstring states."""

    operands: Mapping[str, Unit]
    result: Unit


def stated_units(calculation: Callable[..., Any]) -> Stated:
    """Read the `Units:` paragraph of a docstring."""
    text = " ".join((calculation.__doc__ or "").split())
    found = re.search(r"Units: (.*?); gives \[([^\]]+)\]\.", text)
    assert found, f"{calculation.__name__} does not state its units"
    operands = re.findall(r"(\w+) \[([^\]]+)\]", found[1])
    return Stated({name: unit(symbols) for name, symbols in operands}, unit(found[2]))


def read_quantity(text: str) -> tuple[Decimal, Unit]:
    """`1,178 Btu/lb_water` as a number and a unit."""
    number, _, symbols = text.partition(" ")
    return Decimal(number.replace(",", "")), unit(symbols or "1")


def convert(value: Fraction, of: Unit, to: Unit) -> Fraction:
    """The same quantity in another unit; a percentage in print is a share of the masses that the calculation names."""
    if of.point and to.point:
        return (value - ice_point_shift(of)) * of.size / to.size + ice_point_shift(to)
    shares = (of.pure and _is_share(to)) or (to.pure and _is_share(of))
    assert of.dimension == to.dimension or shares, f"{of} is not {to}"
    return value * of.size / to.size


def _is_share(of: Unit) -> bool:
    return len(of.dimension) == 2 and sorted(power for _, power in of.dimension) == [-1, 1]


@dataclass(frozen=True)
class Published:
    """A value in print, to be met to half a unit of its last digit; a wider `within`, in the same unit, says why."""

    calculation: Callable[..., Any]
    source: str
    where: str
    how_known: HowKnown
    printed: str
    given: Mapping[str, Given] = field(default_factory=dict)
    within: str = ""
    because: str = ""

    def __str__(self) -> str:
        inputs = ", ".join(text if isinstance(text, str) else f"{len(text)} values" for text in self.given.values())
        return f"{self.calculation.__name__}({inputs})={self.printed}"

    @property
    def tolerance(self) -> float:
        """In the unit in print."""
        if self.within:
            return float(self.within)
        exponent = read_quantity(self.printed)[0].as_tuple().exponent
        assert isinstance(exponent, int)
        return 0.5 * 10.0**exponent

    def found(self) -> float:
        """What the calculation comes to, in the unit in print."""
        stated = stated_units(self.calculation)
        numbers = {name: _number(text, stated.operands[name]) for name, text in self.given.items()}
        result = Fraction(float(self.calculation(**numbers)))
        return float(convert(result, stated.result, read_quantity(self.printed)[1]))

    def check(self) -> None:
        """Compare with print."""
        printed = float(read_quantity(self.printed)[0])
        found = self.found()
        assert abs(found - printed) <= self.tolerance, f"{found} is not {self.printed} within {self.tolerance}"


def _number(text: Given, to: Unit) -> Any:
    if isinstance(text, tuple):
        return np.array([_number(each, to) for each in text])
    value, of = read_quantity(text)
    return float(convert(Fraction(value), of, to))
