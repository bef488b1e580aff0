"""What binds tighter and where whole numbers lie: programs differ, the language does not (rules 6 and 10)."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

import numpy as np
import pytest
import xlsxwriter

from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.interpret.formula import formula_of
from farmbook.interpret.numbers import Engine
from farmbook.units import unit
from tests.engines import gnumeric, require
from tests.language.books import opened


def _constant(value: float, name: str, of: str = "1") -> n.Constant:
    return n.Constant(value, name, label=name.replace("_", " "), unit=unit(of), source="arithmetic")


CONSTANTS = {
    "two": _constant(2, "two_whole"),
    "three": _constant(3, "three_whole"),
    "four": _constant(4, "four_whole"),
    "ten": _constant(10, "ten_whole"),
    "hundred": _constant(100, "one_hundred"),
    "tenth": _constant(0.1, "one_tenth"),
    "fifth": _constant(0.2, "one_fifth"),
    "seven": _constant(0.7, "seven_tenths"),
    "nine": _constant(0.9, "nine_tenths"),
    "cents": _constant(0.29, "some_cents"),
    "march": _constant(46813, "first_of_march_2028", "date"),
    "day": _constant(1, "one_day", "day"),
}
TWO, THREE, FOUR, TEN, HUNDRED, TENTH, FIFTH, SEVEN, NINE, CENTS, MARCH_2028, ONE_DAY = (
    f.named(each) for each in CONSTANTS.values()
)

EXPECTED: Mapping[str, tuple[n.Expr, float]] = {
    "minus a square": (-(TWO**2), -4),
    "the square of minus": ((-TWO) ** 2, 4),
    "a power of a power": ((TWO**THREE) ** 2, 64),
    "to a power of a power": (TWO ** (THREE**2), 512),
    "a - (b - c)": (TWO - (THREE - FOUR), 3),
    "a - b - c": (TWO - THREE - FOUR, -5),
    "a / (b * c)": (TWO / (FOUR * TWO), 0.25),
    "a / (b / c)": (TWO / (FOUR / TWO), 1),
    "a / b * c": (TWO / FOUR * TWO, 1),
    "a ** -1": (FOUR**-1, 0.25),
    "1 - a * b": (1 - TWO * THREE, -5),
    "(a < b) * c + 1": ((TWO < THREE) * FOUR + 1, 5),
    # 0.7999999999999999 x 10, 0.29 x 100 and 0.1 x 10 from below, 0.30000000000000004 x 10 from above
    "eight, rounded down": (f.whole_down((SEVEN + TENTH) * TEN), 8),
    "twenty-nine, rounded down": (f.whole_down(CENTS * HUNDRED), 29),
    "one, rounded down": (f.whole_down((1 - NINE) * TEN), 1),
    "three, rounded up": (f.whole_up((TENTH + FIFTH) * TEN), 3),
    "a little less, rounded down": (f.whole_down(-TENTH), -1),
    "a little more, rounded up": (f.whole_up(TWO + TENTH), 3),
    # half to even would make it 2; 28.999999999999996 / 2 is a half to nine digits
    "two and a half, to the nearest": (f.whole_near(TEN / FOUR), 3),
    "as much below zero": (f.whole_near(-(TEN / FOUR)), -3),
    "fourteen and a half, to the nearest": (f.whole_near(CENTS * HUNDRED / TWO), 15),
    "less than a half": (f.whole_near(TWO + TENTH), 2),
    "February, a day before March in a leap year": (f.calendar_month(MARCH_2028 - ONE_DAY), 2),
    "its year": (f.calendar_year(MARCH_2028 - ONE_DAY), 2028),
    "the month after the leap day, less one": (
        (f.month_start(MARCH_2028 - ONE_DAY, 1) - ONE_DAY - MARCH_2028) / ONE_DAY,
        -1,
    ),
    "not one and not two": (f.where(f.any_of(TWO <= 1, f.negation(THREE > TWO)), TEN, FOUR), 4),
}


@cache
def lines() -> Mapping[n.Line, n.Expr]:
    """Each expression as a line, lowered."""
    return {each: lower(each, "metric") for each in (_line(at, expr) for at, (expr, _) in enumerate(EXPECTED.values()))}


def _line(at: int, expr: n.Expr) -> n.Line:
    return n.Line(f"own.line_{at}", f"Line {at}", unit("1"), (), lambda: expr)


def _expected() -> list[float]:
    return [result for _, result in EXPECTED.values()]


def test_the_traps_are_there() -> None:
    """Python's own numbers fall short of the whole ones, or pass them."""
    assert (0.7 + 0.1) * 10 < 8
    assert (0.1 + 0.2) * 10 > 3
    assert 0.29 * 100 < 29


def test_the_engine_gives_what_is_meant() -> None:
    values = Engine(Graph(lines()), {}, "metric").run({})
    np.testing.assert_allclose([float(values[each][0]) for each in lines()], _expected(), rtol=1e-12)


@pytest.mark.parametrize("program", ["formualizer", "LibreOffice", "Gnumeric"])
def test_the_programs_give_what_is_meant(tmp_path: Path, program: str) -> None:
    path = tmp_path / "targets.xlsx"
    with xlsxwriter.Workbook(path) as workbook:
        sums, constants = workbook.add_worksheet("Sums"), workbook.add_worksheet("Constants")
        for row, constant in enumerate(CONSTANTS.values()):
            constants.write_number(row, 0, float(constant))
            workbook.define_name(constant.name, f"=Constants!$A${row + 1}")
        for row, (each, root) in enumerate(lines().items()):
            sums.write_formula(row, 0, "=" + "".join(str(part) for part in formula_of(each, root).step))
    cells = [("Sums", f"A{row + 1}") for row in range(len(EXPECTED))]
    if program == "Gnumeric":
        require(gnumeric.available())
        found = dict(gnumeric.recalculate(path))
        shown = [found[cell] for cell in cells]
    else:
        with opened(program, path) as book:
            shown = [value for value in book.read(cells).values() if value is not None]
    np.testing.assert_allclose(np.asarray(shown, dtype=float), _expected(), rtol=1e-12)
