"""How numbers are shown, by what they measure: the one table of it, which the book and the commands both read.

A pattern is written as spreadsheet programs have it: `0.00#` has two decimals, and a third where it is not 0. A form has at
most two parts, one below a turn and one from it on: of a form with three parts that have conditions, LibreOffice 7.4 drops the
minus of what the last one shows, and doubles it where it is written out.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from typing import Final

from farmbook.expr.nodes import Call, Expr, Joined, Line, Multiply, Number, Total, Where
from farmbook.units import MASS_KINDS, Unit, day_of

__all__ = [
    "DAY_AND_MONTH", "MONTH", "NOTHING", "NO_FIGURE", "Form", "change_form", "form_of", "limit_code", "limit_form",
    "line_form", "marked", "money_sign", "signed", "typed_form",
]  # fmt: skip

NO_FIGURE: Final = "no figure"
"""What a reader sees in place of 0 where 0 would mean that there is no such figure; few words, for a narrow cell shows hashes."""
NOTHING: Final = "\u2013"
"""0 in a table of money by time; a dash."""
GENERAL: Final = "General"
DAY: Final = "yyyy-mm-dd"
"""One date, read alike everywhere."""
YEAR: Final = "yyyy"
"""A date that bounds others, where there is no room for its day."""
DAY_AND_MONTH: Final = "d mmm"
"""A date of this year, where there is little room."""
MONTH: Final = "mmm yy"
"""The first day of a month, where the month is meant."""
_SIGNS: Final = {"USD": "$", "EUR": "€", "GBP": "£"}


@dataclass(frozen=True)
class Form:
    """How a number is shown: by `small` below `turn`, by `large` from it on; by `plain` where no turn may stand.

    `sign` stands before it, `zero` in place of 0, and before what is above 0 a `plus`.
    """

    small: str
    large: str = ""
    turn: float = 0
    plain: str = ""
    sign: str = ""
    zero: str = ""
    plus: str = ""

    @property
    def code(self) -> str:
        """The number format of a spreadsheet cell."""
        before = f'"{self.sign}"' if self.sign else ""
        if self.zero or self.plus:
            pattern = before + self._unturned
            return f'{self.plus}{pattern};-{pattern};"{self.zero}"'
        if not self.large:
            return before + self.small
        return f"[<{self.turn:.10g}]{before}{self.small};{before}{self.large}"

    def said(self, value: float) -> str:
        """The text that a spreadsheet program shows for a number by this form, with a comma at thousands."""
        if self.zero and value == 0:
            return self.zero
        text = _by_pattern(self._pattern(value), abs(value))
        before = "-" if value < 0 and text.strip("0.,%") else self.plus if value > 0 else ""
        return f"{before}{self.sign}{text}"

    def _pattern(self, value: float) -> str:
        if self.zero or self.plus:
            return self._unturned
        return self.large if self.large and value >= self.turn else self.small

    @property
    def _unturned(self) -> str:
        return self.plain or self.small


def _by_pattern(pattern: str, value: float) -> str:
    if pattern == DAY:
        return str(day_of(value) or f"{value:.10g}")
    if pattern == GENERAL:
        return f"{value:.10g}"
    decimals = pattern.partition(".")[2].rstrip("%")
    if "E" in pattern:
        return f"{value:.{decimals.index('E')}E}"
    exact = Decimal(f"{value:.15g}") * (100 if pattern.endswith("%") else 1)
    text = f"{exact.quantize(Decimal(1).scaleb(-len(decimals)), ROUND_HALF_UP):,f}"
    for _ in range(decimals.count("#")):
        text = text.removesuffix("0")
    text = text if "," in pattern else text.replace(",", "")
    return text + ("%" if pattern.endswith("%") else "")


_SHARE: Final = Form("0.0%", "0%", 0.1)
_SMALL_SHARE: Final = Form("0.00%")
_COUNT: Final = Form("#,##0")
_FEW: Final = Form("0.0", "#,##0", 10)
_MONEY: Final = Form("#,##0")
_MONEY_A_LOAD: Final = Form("#,##0.00", "#,##0", 100)
_MONEY_A_THING: Final = Form("0.00#", "#,##0.00", 0.1, plain="#,##0.00")
_MONEY_FOR_ENERGY: Final = Form("0.000", "#,##0.00", 1)
_AMOUNT: Final = Form("0.0", "#,##0", 100)
_AMOUNT_A_BAG: Final = Form("0.00", "#,##0", 100)
_PART: Final = Form("0.00", "#,##0.0", 10)
_COEFFICIENT: Final = Form("0.000", "#,##0.0", 10)
_SHORT_TIME: Final = Form("0.00", "#,##0", 10)
_TECHNICAL: Final = Form("#,##0.00", "0.000E+00", 1_000_000)  # steps of the steam equation run to twelve figures
_WHOLE: Final = Form("0")
_TENTHS: Final = Form("#,##0.0")
_TO_1: Final = _WHOLE
_OTHER: Final = Form("#,##0.00")

_BY_FIRST_SYMBOL: Final = {
    **dict.fromkeys(("flag", "count", "place", "spawn_bag", "V"), _COUNT),
    **dict.fromkeys(("bag_filled", "bag_steamed", "bag_inoculated", "bag_live"), _COUNT),
    **dict.fromkeys(("run", "batch", "cooker_run", "lab_batch", "week"), _FEW),
    **dict.fromkeys(("spawn_unit", "plate", "grain_bag", "second_grain_bag"), _FEW),
    **dict.fromkeys(("A", "kW", "min", "kPa", "delta_degC", "delta_degF"), _FEW),
    **dict.fromkeys(("degC", "degF"), _WHOLE),
    **dict.fromkeys(("year", "kelvin", "psi", "cm", "in"), _TENTHS),
    **dict.fromkeys(("h", "person_hour"), _AMOUNT),
    "day": Form("0.0", "#,##0", 1),
    "s": _SHORT_TIME,
}
_LOADS: Final = frozenset({"run", "batch", "cooker_run", "lab_batch"})
_PERIODS: Final = frozenset({"week", "month", "year"})
_TO_WHOLE: Final = frozenset({"whole_up", "whole_down", "whole_near"})
_ONE_OF: Final = frozenset({"minimum", "maximum"})
_ENERGIES: Final = frozenset({"kWh", "kJ"})
_MASSES: Final = frozenset(f"{name}{kind}" for name in ("kg", "g", "t", "lb", "oz", "ton") for kind in MASS_KINDS)
_AMOUNTS: Final = _MASSES | {"L", "gal", "m", "ft", "kWh", "kJ", "kWh_fuel", "therm_fuel", "kJ_fuel", "therm"}


@cache
def form_of(unit: Unit) -> Form:
    """How a number of a displayed unit is shown, without a sign of money."""
    if unit.date or unit.share:
        return Form(DAY) if unit.date else _share(unit)
    if not unit.powers:
        return _TECHNICAL
    if unit.shown() == "to 1":
        return _TO_1
    (first, power), *_ = unit.powers
    below = [name for name, exponent in unit.powers if exponent < 0]
    if first == "money":
        return _money(below)
    if "year" in below and power > 0:
        return _COUNT
    if first in _AMOUNTS and power > 0:
        return _amount(first, below)
    if power != 1:
        return _OTHER
    if first == "person_hour" and any(name.startswith("bag") for name in below):
        return _COEFFICIENT
    if first == "min" and below:
        return _SHORT_TIME
    return _BY_FIRST_SYMBOL.get(first, _OTHER)


def _share(unit: Unit) -> Form:
    return _SMALL_SHARE if any("nitrogen" in name for name, _ in unit.powers) else _SHARE


def _money(below: list[str]) -> Form:
    if not below or (len(below) == 1 and below[0] in _PERIODS):
        return _MONEY
    if len(below) > 1:
        return _MONEY_A_THING
    if below[0] in _LOADS:
        return _MONEY_A_LOAD
    return _MONEY_FOR_ENERGY if below[0].partition("_")[0] in _ENERGIES else _MONEY_A_THING


def _amount(first: str, below: list[str]) -> Form:
    """Weights, volumes, energies and lengths: alone or of a load or week, of one bag, of another measure."""
    things = ("bag", "spawn", "grain", "second", "plate")
    if any(name.startswith(things) for name in below):
        return _AMOUNT_A_BAG
    if not below or all(name in _LOADS | _PERIODS | {"h", "day"} for name in below):
        return _AMOUNT
    return _PART if first in _MASSES and below[0] in _MASSES else _COEFFICIENT


def line_form(line: Line, unit: Unit, sign: str = "", *, table: bool = False) -> Form:
    """How the values of a line are shown. A figure typed in shows the digits typed; what is worked up to whole units has no decimals.

    In a table the head says the money, and 0 in it is a dash where money runs by week, month or year.
    """
    before = "" if table else sign
    if line.kind == "used":
        return typed_form(unit, before)
    form = _by_steps(line, unit) or form_of(unit)
    zero = NOTHING if table and form is _MONEY else ""
    return replace(signed(form, unit, before), zero=NO_FIGURE if line.zero_is_none else zero)


def _by_steps(line: Line, unit: Unit) -> Form | None:
    """The form of a line that says which step of a list it is, or that is worked up to whole units."""
    if str(unit) == "h" and any(axis.ordered and axis.direction == "down" for axis in line.axes):
        return _OTHER  # a cook is followed by some minutes
    years = str(unit) == "year" and any(axis.ordered for axis in line.axes)
    return _COUNT if years or _whole(line) else None


def _whole(of: Expr) -> bool:
    """Whether all values are whole, by how they are worked out."""
    if isinstance(of, Line):
        return of.kind != "used" and (str(of.unit) == "flag" or _whole(of.expr))
    if isinstance(of, Call):
        return of.function in _TO_WHOLE or (of.function in _ONE_OF and all(map(_whole, of.arguments)))
    if isinstance(of, Where):
        return _whole(of.yes) and _whole(of.no)
    if isinstance(of, Multiply):
        return _whole(of.left) and _whole(of.right)
    return isinstance(of, Number) or (isinstance(of, (Joined, Total)) and _whole(of.expr))


def typed_form(unit: Unit, sign: str = "") -> Form:
    """How a figure typed in is shown: with the digits typed, and no fewer than money and shares always have."""
    if unit.date:
        return Form(DAY)
    if unit.share:
        return Form("0.00##%" if form_of(unit) is _SMALL_SHARE else "0.0##%")
    if form_of(unit) is _AMOUNT_A_BAG:
        return Form("0.0###")  # a bag of 28 g is weighed in ounces in some books, without end
    if not unit.powers or unit.powers[0][0] != "money":
        return Form(GENERAL)
    if form_of(unit) is _MONEY:
        return Form(GENERAL, "#,##0", 1000, sign=sign)
    return Form("#,##0.00####", sign=sign)


def limit_form(unit: Unit, shown: Unit, sign: str = "") -> Form:
    """How a usual limit is shown: as it was set, unless it had to be converted into the unit shown; of a day the year."""
    if unit.date:
        return Form(YEAR)
    return typed_form(shown, sign) if shown == unit or unit.share else signed(form_of(shown), shown, sign)


def change_form(form: Form, zero: str = NOTHING) -> Form:
    """How more or less of something is shown: with a plus or a minus."""
    return replace(form, zero=zero, plus="+")


def marked(code: str, mark: str) -> str:
    """A number format with a mark before each of its figures."""
    return ";".join(re.sub(r"^((?:\[[^\]]*\])?)", rf'\1"{mark} "', part, count=1) for part in code.split(";"))


def limit_code(unit: Unit) -> str:
    """The number format of a hard limit, in whatever digits it has; a number past all use stands for none. Of a day the year."""
    if unit.date:
        return YEAR
    return f'[>1E+90]"none";{"0.0##%" if unit.share else "#,##0.######"}'


def signed(form: Form, unit: Unit, sign: str) -> Form:
    """A form with the sign of money before it, if it is money."""
    return replace(form, sign=sign) if unit.powers and unit.powers[0][0] == "money" else form


def money_sign(currency: str) -> str:
    """What stands before an amount of money: a sign that everybody knows, or else the code of the currency."""
    return _SIGNS.get(currency, f"{currency} ")
