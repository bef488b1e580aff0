"""The first, second and third of some lines, loans drawn in turn, and figures that give way to words."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Cells
from farmbook.layout.book import Book
from farmbook.sections.declare import Input
from farmbook.sections.model import Model
from tests.engines import gnumeric, require
from tests.engines.cells import Book as OpenBook
from tests.engines.cells import Cell, disagreements, formula_cells, stored_values
from tests.language.books import ENGINES, Worked, address, cells_of, opened, work_out
from tests.language.order_model import LOAN, SECTIONS, SIZES, TITLE, Changes, Loans, sheets

NAMES = {LOAN: ("Bank", "Family", "Shop", "", "")}
INPUTS: Sequence[Input] = (Changes.steamer, Changes.spawn, Changes.bags, Changes.market)
LABELS = tuple(declared.label for declared in INPUTS)
Amounts = tuple[float | None, ...]

BLOCKS: Mapping[str, Amounts] = {
    "in order": (4, 3, 2, 1),
    "the other way": (1, 2, 3, 4),
    "two lead alike": (1, 7, 3, 7),
    "three alike behind one": (5, 5, 9, 5),
    "all alike": (2.5, 2.5, 2.5, 2.5),
    "nothing but zeros": (0, 0, 0, 0),
    "all below zero": (-4, -1, -3, -1),
    "about zero": (0, -0.01, 0.01, 0),
    "less than a cent apart": (1.004, 1.001, 1.0, 0.999),
    "half cents, above and below zero": (0.005, 0.01, -0.005, -0.01),
    "alike but for the last binary digit": (0.1 + 0.2, 0.3, 0.7 + 0.1, 0.8),
    "large": (123456789.01, 123456789.02, -123456789.01, 123456789.02),
    "one that cannot be made": (None, 3, 2, 1),
    "one below zero beside one that cannot be made": (-900, None, None, -901),
    "one alone": (None, None, -5, None),
    "none": (None, None, None, None),
}


@cache
def model() -> Model:
    return Model(SECTIONS)


@cache
def base() -> Worked:
    return work_out(model(), "metric", SIZES, {}, names=NAMES)


def given(amounts: Amounts) -> dict[Input, Any]:
    return dict(zip(INPUTS, amounts, strict=True))


def found(changes: Mapping[Input, Any], names: Mapping[Any, Sequence[str]] = NAMES) -> dict[str, Any]:
    """Every line by name for one scenario."""
    values = base().engine.run(cells_of(model(), "metric", SIZES, changes, names))
    return {line.name: value[0, ...] for line, value in values.items()}


def in_order(amounts: Amounts) -> list[int]:
    """Those with a number, by whole cents, the largest first and of equal ones the first."""
    cents = [None if each is None else Decimal(repr(round(each * 100, 9))) for each in amounts]
    whole = {place: each.quantize(Decimal(1), ROUND_HALF_UP) for place, each in enumerate(cents) if each is not None}
    return sorted(whole, key=lambda place: -whole[place])


def assert_ranked(values: Mapping[str, Any], amounts: Amounts) -> None:
    """Names and worths against a plain sort."""
    order = in_order(amounts)
    labels = [*(LABELS[place] for place in order), *["none"] * 4][:4]
    worths = [*(amounts[place] for place in order), *[0.0] * 4][:4]
    assert values["ranked.many"] == len(order)
    assert [str(values["ranked.first"]), *values["ranked.name_of"][1:], str(values["ranked.last"])] == labels
    assert [values["ranked.first_worth"], *values["ranked.worth_of"][1:], values["ranked.last_worth"]] == worths
    behind = in_order(tuple(None if each is None else -each for each in amounts))
    assert str(values["ranked.smallest"]) == (LABELS[behind[0]] if behind else "none")


@pytest.mark.parametrize("name", BLOCKS)
def test_a_block_is_ranked(name: str) -> None:
    assert_ranked(found(given(BLOCKS[name])), BLOCKS[name])


def random_amounts(rng: random.Random) -> Amounts:
    """Cents and half cents, many alike, some missing."""
    return tuple(
        rng.choice([None, rng.randint(-2, 2) / 2, rng.randint(-9, 9) / 200, rng.uniform(-9, 9)]) for _ in INPUTS
    )


def test_blocks_at_random_are_ranked() -> None:
    rng = random.Random(5)
    for _ in range(200):
        amounts = random_amounts(rng)
        assert_ranked(found(given(amounts)), amounts)


def test_many_draws_are_the_single_runs() -> None:
    rng = random.Random(6)
    several = [given(random_amounts(rng)) | random_loans(rng) for _ in range(60)]
    each = [cells_of(model(), "metric", SIZES, changes, NAMES) for changes in several]
    together = {
        cell: Cells(*(np.concatenate([getattr(one[cell], what) for one in each]) for what in ("numbers", "texts")))
        for cell in each[0]
    }
    values = base().engine.run(together)
    for draw, changes in enumerate(several):
        alone = found(changes)
        for line, drawn in values.items():
            assert np.array_equal(drawn[min(draw, len(drawn) - 1)], alone[line.name]), (draw, line.name)


def random_loans(rng: random.Random) -> dict[Input, Any]:
    return {
        Loans.order: [rng.choice((1, 1, 2, 2.4, 3)) for _ in range(5)],
        Loans.limit: [rng.choice((0, 50, 200.25, 400)) for _ in range(3)] + [0, 0],
        Loans.needed: [rng.choice((0, 120, 333.5, 2000)) for _ in range(2)],
    }


def assert_drawn(values: Mapping[str, Any], changes: Mapping[Input, Any]) -> None:
    """Loans one after another, each to its limit, against a plain loop."""
    turns = sorted(range(3), key=lambda row: int(changes[Loans.order][row] + 0.5))
    for month, needed in enumerate(changes[Loans.needed]):
        left = needed
        for row in turns:
            drawn = min(left, changes[Loans.limit][row])
            assert values["loans.drawn_before"][row][month] == pytest.approx(needed - left)
            assert values["loans.drawn"][row][month] == pytest.approx(drawn)
            left -= drawn
        assert values["loans.drawn_in_all"][month] == pytest.approx(needed - left)


def assert_taken_up(values: Mapping[str, Any], changes: Mapping[Input, Any]) -> None:
    """As drawn, but a loan that is taken up once stays so: each month goes on where the one before stopped."""
    turns = sorted(range(3), key=lambda row: int(changes[Loans.order][row] + 0.5))
    room = list(changes[Loans.limit])
    for month, needed in enumerate(changes[Loans.needed]):
        left = needed
        for row in turns:
            taken = min(left, room[row])
            assert values["loans.taken"][row][month] == pytest.approx(taken)
            left, room[row] = left - taken, room[row] - taken


def test_loans_are_drawn_in_turn() -> None:
    rng = random.Random(7)
    for _ in range(200):
        changes = random_loans(rng)
        assert_drawn(found(changes), changes)
        assert_taken_up(found(changes), changes)


def test_spare_rows_are_not_among_the_largest() -> None:
    """A loan of nothing comes before a row without a name."""
    values = found({Loans.limit: [0, 200, 0, 900, 0]})
    assert list(values["loans.loan_of"]) == ["Family", "Bank", "Shop"]
    fewer = found({Loans.limit: [300, 300, 0, 0, 0]}, {LOAN: ("Bank", "Family", "", "", "")})
    assert list(fewer["loans.loan_of"]) == ["Bank", "Family", "no loan"]
    assert fewer["loans.largest"] == 300
    none = found({}, {LOAN: ("", "", "", "", "")})
    assert list(none["loans.loan_of"]) == ["no loan"] * 3
    assert none["loans.largest"] == 0


def test_a_figure_gives_way_to_words_and_comes_back() -> None:
    assert found(given((-1, -2, 0, -3)))["ranked.worth_or_words"] == "no change is worth making"
    assert found(given((-1, 2.5, 0, -3)))["ranked.worth_or_words"] == 2.5
    assert list(found(given((-1, 2.5, None, None)))["ranked.each_or_words"]) == [2.5, -1, "no further change"]


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Book]:
    path = tmp_path_factory.mktemp("orders") / "orders.xlsx"
    return path, base().written(path, sheets(), TITLE)


@pytest.fixture(scope="module", params=ENGINES)
def open_book(request: pytest.FixtureRequest, written: tuple[Path, Book]) -> Iterator[OpenBook]:
    with opened(request.param, written[0]) as book:
        yield book


def stand(book: Book, values: Mapping[str, Any]) -> dict[Cell, float | str]:
    """What every cell of every line should hold."""
    expected: dict[Cell, float | str] = {}
    for line, home in book.homes.items():
        if line.name in values:
            for index in np.ndindex(values[line.name].shape):
                value = values[line.name][index]
                at = address(home, dict(zip(ordered_axes(line.axes), index, strict=True)))
                expected[at] = str(value) if isinstance(value, str) else float(value)
    return expected


def put(book: OpenBook, layout: Book, changes: Mapping[Input, Any]) -> None:
    """Type values into their cells; None clears one."""
    for declared, value in changes.items():
        cell = model().inputs[declared].cell
        for index, each in np.ndenumerate(np.asarray(value, dtype=object)):
            place = address(layout.homes[cell], dict(zip(ordered_axes(cell.axes), index, strict=True)))
            book.set(*place, None if each is None else float(each))


def live_edits() -> Iterator[tuple[str, dict[Input, Any]]]:
    rng = random.Random(8)
    yield from ((name, given(amounts)) for name, amounts in BLOCKS.items())
    yield from ((f"loans {number}", random_loans(rng)) for number in range(8))


def test_edits_that_change_the_order_are_followed_live(written: tuple[Path, Book], open_book: OpenBook) -> None:
    made: dict[Input, Any] = {}
    for name, changes in live_edits():
        put(open_book, written[1], changes)
        made |= changes
        expected = stand(written[1], found(made))
        assert len(expected) > 80
        assert disagreements(expected, open_book.read(list(expected))) == [], name


def test_a_row_that_is_named_joins_the_order(written: tuple[Path, Book], open_book: OpenBook) -> None:
    loans = {Loans.limit: [300, 200, 400, 900, 0], Loans.order: [2, 1, 2, 1, 0], Loans.needed: [1150, 60]}
    changes = given(BLOCKS["in order"]) | loans
    names = {LOAN: ("Bank", "Family", "Shop", "Aunt", "")}
    put(open_book, written[1], changes)
    fourth = address(written[1].homes[model().axes[LOAN].names], {LOAN: 3})
    open_book.set(*fourth, "Aunt")
    expected = stand(written[1], found(changes, names))
    assert "Aunt" in expected.values()
    assert disagreements(expected, open_book.read(list(expected))) == []
    open_book.set(*fourth, None)


@pytest.mark.parametrize("name", ["two lead alike", "all below zero", "one below zero beside one that cannot be made"])
def test_a_third_program_agrees(tmp_path: Path, name: str) -> None:
    require(gnumeric.available())
    path = tmp_path / "orders.xlsx"
    work_out(model(), "metric", SIZES, given(BLOCKS[name]), names=NAMES).written(path, sheets(), TITLE)
    stored = stored_values(path)
    formulas = list(formula_cells(path))
    assert disagreements({cell: stored.get(cell) for cell in formulas}, gnumeric.recalculate(path)) == []
