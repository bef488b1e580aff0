"""How a line is worked out, in the numbers of the lines on its sheet, to the letter and on a sheet of a small book."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

import pytest

from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.graph import sources_of
from farmbook.expr.ranking import before, nth_label, nth_value
from farmbook.interpret import words
from farmbook.layout.book import Book, Text
from farmbook.layout.line_numbers import LONGEST, Place, numbered_way
from farmbook.layout.place import place
from farmbook.layout.template import read_templates
from farmbook.results import whole_farm
from farmbook.sections.declare import line, number, text
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.language.books import Worked, work_out

MIX = Axis("mix", "ingredient", "down", 10, members=("straw", "bran"))
MONTH = Axis("month", "month", "across", 90, ordered=True, members=("1", "2", "3"))


def named(name: str, *axes: Axis) -> n.Line:
    """A line typed in elsewhere."""
    label = name.partition(".")[2].replace("_", " ").capitalize()
    return n.Line(name, label, unit("1"), axes, lambda: n.Number(0))


A, B, C, D = (named(f"bag.{each}") for each in "abcd")
PAY, RATE, PRICE = named("farm.pay"), named("farm.bags_filled_in_an_hour"), named("farm.price")
WEIGHT, COST = named("mix.weight", MIX), named("mix.cost", MIX)
FLOWS = named("cash.flows", MONTH)
SPENT = n.RawInput("cash.spent", "Spent a month", "number", unit("1"), (MONTH,))
HANDED_ON = n.Line("cash.spent_used", "Spent a month (used)", unit("1"), (MONTH,), lambda: n.Used(SPENT))
TYPED = n.RawInput("farm.hours", "Hours", "number", unit("1"), ())
KETTLE = n.Constant(2.5, "kettle", label="Kettle size", unit=unit("1"), source="arithmetic")
OTHER = n.Constant(2.5, "other", label="Other size", unit=unit("1"), source="arithmetic")

PLACES: Mapping[str, Place] = {
    "bag.here": Place("Bag", 30),
    "bag.a": Place("Bag", 9),
    "bag.b": Place("Bag", 12),
    "bag.c": Place("Bag", 15),
    "bag.d": Place("Bag", 20),
    "mix.weight": Place("Bag", 22, "Weight"),
    "mix.cost": Place("Bag", 22, "pH of it"),
    "mix.here": Place("Bag", 22, "Here"),
    "cash.flows": Place("Bag", 24, "Flows"),
    "farm.pay": Place("Inputs", 16),
    "farm.bags_filled_in_an_hour": Place("Inputs", 26),
    "farm.price": Place("Sales", 4),
    "farm.hours": Place("Inputs", 3),
    "kettle": Place("Constants", 5),
    "other": Place("Constants", 6),
}


def said(expr: n.Expr, of: str = "bag.here") -> str:
    return numbered_way(n.Line(of, "Here", unit("1"), (), lambda: expr), PLACES)


LONG = "a_name_that_goes_on_and_on"
SEVERAL = [named(f"{LONG}_{each}.{LONG}_{each}") for each in "abcd"]

SAID: Mapping[str, tuple[n.Expr, str]] = {
    "a quotient and a sum": (f.ratio(A, B) + C, "9 \u00f7 12 + 15"),
    "a product": (A * B, "9 \u00d7 12"),
    "the larger": (f.maximum(C, D), "the larger of 15 and 20"),
    "nothing is no line": (f.maximum(n.Number(0), D), "the larger of 0 and 20"),
    "a bare one is not line 1": (A * (1 - B), "9 \u00d7 (one - 12)"),
    "a bare power is not line 2": (A**2, "9 to the power two"),
    "one less": (f.where(A > B, -1, A), "minus one if 9 is above 12, otherwise 9"),
    "another sheet": (f.ratio(PAY, RATE), "pay \u00f7 bags filled in an hour (Inputs 16, 26)"),
    "two other sheets": (PAY * PRICE + A + PAY, "pay \u00d7 price + 9 + pay (Inputs 16; Sales 4)"),
    "a cell": (n.Raw(TYPED) + A, "hours as typed + 9 (Inputs 3)"),
    "constants that are the same number": (
        A * KETTLE + B * OTHER,
        "9 \u00d7 kettle size + 12 \u00d7 other size (Constants 5, 6)",
    ),
    "a line without a place": (named("bag.lost") + A, "lost + 9"),
    "a column of a table": (f.total(WEIGHT, MIX), "total over each ingredient of weight in 22"),
    "a head that starts with an abbreviation": (f.total(COST, MIX), "total over each ingredient of pH of it in 22"),
    "a step of a table": (f.previous(FLOWS, MONTH) + A, "flows in 24 one month earlier + 9"),
    "at the step that a line tells": (f.at(FLOWS, MONTH, A), "flows in 24 at the month in 9"),
    "at the first step": (f.at(FLOWS, MONTH, n.Number(1)), "flows in 24 at month one"),
    "at the step of a column typed in": (f.at(HANDED_ON, MONTH, A), "spent a month at the month in 9"),
    "by a rank that a line tells": (
        nth_value((A, B), C, D, (A, B)),
        "the value that ranks as the number in 15, the largest first, or 0 above the number in 20",
    ),
    "by the first rank": (
        nth_label((A, B), 1, n.Number(1), (A, B), "none"),
        'the label that ranks as number one, the largest first, or "none" above one',
    ),
    "how many are well": (n.CountWord((A, B), 1), "how many of these 2 lines are one"),
    "as long as a line may be": (named(f"bag.{'l' * 91}") + A, f"{'l' * 91} + 9"),
    "one more": (named(f"bag.{'l' * 92}") * A, "a product of 2 lines"),
}


@pytest.mark.parametrize("name", SAID)
def test_numbers_to_the_letter(name: str) -> None:
    expr, expected = SAID[name]
    assert said(expr) == expected


def test_within_a_table_its_columns_go_by_their_heads() -> None:
    assert said(WEIGHT * COST + A, "mix.here") == "weight \u00d7 pH of it + 9"


ALONE: Mapping[str, tuple[n.Expr, str, str]] = {
    "a sum": (A + B + C + D, "a sum of 9, 12, 15 and 20", "a sum of 4 lines"),
    "grouped otherwise": (A + (B + C) + D, "a sum of 9, 12, 15 and 20", "a sum of 4 lines"),
    "the largest": (f.maximum(f.maximum(A, B), C), "the largest of 9, 12 and 15", "the largest of 3 lines"),
    "the smallest, with nothing": (f.minimum(A, 0), "the smallest of 9 and 0", "the smallest of 2 amounts"),
    "largest of smallest": (
        f.maximum(f.minimum(A, B), C),
        "the largest of 2 amounts, worked out from 9, 12 and 15",
        "the largest of 2 amounts, worked out from 3 lines",
    ),
    "a sum of products": (
        A * B + A * C + D,
        "a sum of 3 amounts, worked out from 9, 12, 15 and 20",
        "a sum of 3 amounts, worked out from 4 lines",
    ),
    "a difference": (A + B - C, "a difference, worked out from 9, 12 and 15", "a difference, worked out from 3 lines"),
    "a division": (f.ratio(A, B, C), "a division, worked out from 9, 12 and 15", "a division, worked out from 3 lines"),
    "a condition": (
        A > 0,
        "1 if a condition holds, worked out from 9",
        "1 if a condition holds, worked out from 1 line",
    ),
    "a choice": (
        f.where(A > B, C, D),
        "a choice by a condition, worked out from 15, 9, 12 and 20",
        "a choice by a condition, worked out from 4 lines",
    ),
    "rounded": (
        f.whole_up(A * B),
        "an amount, rounded up to a whole number, worked out from 9 and 12",
        "an amount, rounded up to a whole number, worked out from 2 lines",
    ),
    "a total": (
        f.total(WEIGHT * COST, MIX),
        "a total over each ingredient, worked out from weight in 22 and pH of it in 22",
        "a total over each ingredient, worked out from 2 lines",
    ),
    "the same kind": (f.joined(A + B, "1"), "a sum of 9 and 12", "a sum of 2 lines"),
    "a figure or words": (
        f.shown(A, B > 0, "none yet"),
        "a figure, or words by a condition, worked out from 9 and 12",
        "a figure, or words by a condition, worked out from 2 lines",
    ),
    "a value by rank": (
        nth_value((A, B), C, D, (A, B)),
        "a value picked by its rank, worked out from 15 and 20",
        "a value picked by its rank, worked out from 2 lines",
    ),
    "a label by rank": (
        nth_label((A, B), C, D, (A, B), "none"),
        "a label picked by its rank, worked out from 15 and 20",
        "a label picked by its rank, worked out from 2 lines",
    ),
    "what comes before a row": (
        before(COST, WEIGHT, MIX),
        "a total over each ingredient that comes before, worked out from pH of it in 22 and weight in 22",
        "a total over each ingredient that comes before, worked out from 2 lines",
    ),
    "a number typed in": (
        n.Used(TYPED),
        "a number as typed, worked out from 3",
        "a number as typed, worked out from 1 line",
    ),
    "how many": (n.CountWord((A, B), 0), "a figure", "a figure"),
}


@pytest.mark.parametrize("name", ALONE)
def test_the_operation_alone(name: str) -> None:
    expr, listed, counted = ALONE[name]
    for parts, expected in ((words.operation_of(expr), listed), (words.operation_of(expr, listed=False), counted)):
        assert "".join(numbered(part) for part in parts) == expected


def numbered(part: words.Part) -> str:
    if isinstance(part, words.Sign):
        return part.among_numbers
    if isinstance(part, str):
        return part
    known = PLACES[part.of.name]
    return f"{words.in_sentence(known.head)} in {known.number}" if known.head else str(known.number)


def test_long_words_give_way_to_the_operation() -> None:
    first, second, third, fourth = SEVERAL
    assert said(f.maximum(f.maximum(first, second), f.maximum(third, fourth))) == "the largest of 4 lines"
    added = f.maximum(first, second) + third + fourth
    assert said(added) == "a sum of 3 amounts, worked out from 4 lines"
    long = f.ratio(A, B, C) * (1 - D)
    assert said(long + long + long) == "a sum of 3 amounts, worked out from 9, 12, 15 and 20"


def test_every_function_has_a_name_as_an_operation() -> None:
    for function, words_for in words._FUNCTIONS.items():
        operands = [A] * words_for.count("{}")
        parts = words.operation_of(n.Call(function, tuple(operands)), listed=False)
        assert "{" not in "".join(str(part) for part in parts)


# Lines of the farm, and a sheet


def test_no_line_of_the_farm_is_said_at_length() -> None:
    """Numbered as they come, each with the numbers of the lines it reads and of no others."""
    farm = whole_farm()
    places = {each.name: Place("Farm", 1000 + at, each.head if each.axes else "") for at, each in enumerate(farm.lines)}
    citations = 0
    for each in farm.lines:
        text = numbered_way(each, places)
        cited = {int(digits) for digits in re.findall(r"\b\d{4,}\b", text)}
        assert len(text) <= LONGEST, each.name
        assert cited <= {places[read.name].number for read in sources_of(each.expr) if isinstance(read, n.Line)}, text
        citations += len(cited)
    assert citations > 500


class Stall(Section):
    """A stall with three things to sell."""

    name = text("Name", default="", how="Any.")
    pay = number("Pay", unit="1", usual=(0, 90), default=12, how="Ask.")
    weight = number("Weight", unit="1", axes=(MIX,), usual=(0, 9), default=2, how="Weigh.")

    @line("Heading", unit="1")
    def heading(self) -> n.Expr:
        """On every sheet."""
        return n.Label(self.raw(Stall.name), "(none)")

    @line("Twice the weight", unit="1", axes=(MIX,))
    def twice(self) -> n.Expr:
        """Two of them."""
        return self.weight + self.weight

    @line("All of it", unit="1")
    def whole(self) -> n.Expr:
        """Weighed together."""
        return f.total(self.twice, MIX)

    @line("Pay for each", unit="1")
    def each(self) -> n.Expr:
        """Shared out."""
        return f.ratio(self.pay, self.whole)


SHEETS: Mapping[str, str] = {
    "10_stall.toml": """
sheet = "Stall"
title = "Stall"
question = "What is sold?"
class = "worked"
[[block]]
kind = "list"
lines = ["stall.heading", "stall.whole", "stall.each"]
[[block]]
kind = "table"
axis = "mix"
lines = ["stall.weight_used", "stall.twice"]
""",
    "30_inputs.toml": """
sheet = "Inputs"
title = "Inputs"
question = "What is typed in?"
class = "inputs"
[[block]]
kind = "inputs"
inputs = ["stall.name", "stall.pay"]
[[block]]
kind = "input_table"
title = "Weights"
inputs = ["stall.weight"]
""",
}


def texts(tmp_path: Path) -> list[str]:
    """The words that a sheet of a small book shows beside its figures."""
    for name, content in SHEETS.items():
        (tmp_path / name).write_text(content, encoding="utf-8")
    worked: Worked = work_out(Model([Stall]), "metric", {MIX: 2}, {})
    plan = worked.plan()
    book: Book = place(plan, read_templates(tmp_path), title_line="stall.heading", verdict_line="stall.heading")
    return [cell.content.words for cell in book.sheets[0].cells if isinstance(cell.content, Text)]


def test_a_sheet_cites_the_numbers_of_its_lines_and_of_inputs(tmp_path: Path) -> None:
    found = texts(tmp_path)
    for start in (
        "total over each ingredient of twice the weight in 4. ",
        "pay \u00f7 2 (Inputs 2). ",
        "weight + weight. ",
    ):
        assert [words for words in found if words.startswith(start)], start
