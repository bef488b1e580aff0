"""Sentences: what is said on both sides of each turn, here, in draws, and live in other programs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr.graph import Graph
from farmbook.expr.nodes import Line
from farmbook.expr.sentences import LONGEST_WORDS, MOST_PARTS, either, figure, say
from farmbook.interpret.numbers import Cells
from farmbook.interpret.numbers.helpers import figure as figure_said
from farmbook.interpret.words import sentence_of
from farmbook.sections.declare import Input, NumberInput
from farmbook.sections.model import Model
from farmbook.units import unit
from tests.engines import gnumeric, require
from tests.engines.cells import disagreements, formula_cells, stored_values
from tests.language.books import ENGINES, Worked, address, cells_of, opened, work_out
from tests.language.sentence_model import TITLE, Stall, sheets

MONEY: Mapping[float, tuple[str, str]] = {
    12.344: ("The day left $12.34.", "About $0"),
    -12.344: ("The day left -$12.34.", "About $0"),
    0.006: ("The day left $0.01.", "About $0"),
    0.004: ("The day left $0.00.", "About $0"),
    -0.004: ("The day left $0.00.", "About $0"),
    -0.006: ("The day left -$0.01.", "About $0"),
    0: ("The day left $0.00.", "About $0"),
    999.994: ("The day left $999.99.", "About $1,000"),
    999.996: ("The day left $1,000.00.", "About $1,000"),
    49.9: ("The day left $49.90.", "About $0"),
    50.1: ("The day left $50.10.", "About $100"),
    -49.9: ("The day left -$49.90.", "About $0"),
    -50.1: ("The day left -$50.10.", "About -$100"),
    1234567.891: ("The day left $1,234,567.89.", "About $1,234,600"),
}
"""Both sides of each turn of a figure, off ties, on which programs differ."""

DAYS: Mapping[str, tuple[dict[Input, Any], str]] = {
    "an ordinary one": (
        {Stall.name: "Corner"},
        "Corner sold 31.3 kg in 6 hours, brought home 12% and made money, an hour $1.98 an hour.",
    ),
    "a loss": (
        {Stall.left: -0.5, Stall.unsold: 0.996},
        "(no name) sold 31.3 kg in 6 hours, brought home 100% and lost money, an hour -$0.08 an hour.",
    ),
    "a day off": (
        {Stall.hours: 0, Stall.sold: 0, Stall.left: 0},
        "(no name) sold 0.0 kg in 0 hours, brought home 12% and made money, an hour no figure.",
    ),
    "below zero": (
        {Stall.sold: -1234.54, Stall.hours: -0.4},
        "(no name) sold -1,234.5 kg in 0 hours, brought home 12% and made money, an hour -$30.86 an hour.",
    ),
}

BY_MONEY: Sequence[Mapping[Input, Any]] = [{Stall.left: left} for left in MONEY]
EVERY: Sequence[Mapping[Input, Any]] = (*BY_MONEY, *(given for given, _ in DAYS.values()))


@cache
def model() -> Model:
    return Model([Stall])


@cache
def base() -> Worked:
    return work_out(model(), "metric", {}, {})


def found(given: Mapping[Input, Any]) -> dict[str, Any]:
    """Every line by name for one day."""
    values = base().engine.run(cells_of(model(), "metric", {}, given))
    return {line.name: value[0, ...] for line, value in values.items()}


@pytest.mark.parametrize("left", MONEY)
def test_money_turns_where_it_is_rounded(left: float) -> None:
    told = found({Stall.left: left})
    assert (told["stall.money"], told["stall.about"]) == MONEY[left]


def test_a_figure_of_any_size_is_said() -> None:
    assert figure_said(1e40, 2, "$", False, "", "") == f"$10{',000' * 13}.00"
    assert figure_said(float("nan"), 2, "$", False, "", "") == "no number"
    assert figure_said(float("inf"), 0, "", False, " lb", "") == "no number"


@pytest.mark.parametrize("name", DAYS)
def test_a_day_is_told(name: str) -> None:
    given, words = DAYS[name]
    assert found(given)["stall.day"] == words


def test_a_currency_that_is_written_out_and_other_units() -> None:
    worked = work_out(model(), "us", {}, {})
    assert (
        worked["stall.day"]
        == "(no name) sold 68.9 lb in 6 hours, brought home 12% and made money, an hour $1.98 an hour."
    )


def test_many_draws_are_the_single_runs() -> None:
    each = [cells_of(model(), "metric", {}, given) for given in EVERY]
    together = {
        cell: Cells(*(np.concatenate([getattr(one[cell], what) for one in each]) for what in ("numbers", "texts")))
        for cell in each[0]
    }
    values = base().engine.run(together)
    for draw, given in enumerate(EVERY):
        alone = found(given)
        assert [str(drawn[min(draw, len(drawn) - 1)]) for drawn in values.values()] == [
            str(alone[line.name]) for line in values
        ]


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Any]:
    path = tmp_path_factory.mktemp("sentences") / "stall.xlsx"
    return path, base().written(path, sheets(), TITLE)


@pytest.mark.parametrize("program", ENGINES)
def test_edits_turn_the_sentences_live(written: tuple[Path, Any], program: str) -> None:
    path, layout = written
    told = {line: address(layout.homes[line]) for line in model().lines if line.kind == "worked"}
    assert len(told) == 5
    with opened(program, path) as book:
        for given in EVERY:
            for declared, bound in model().inputs.items():
                wanted = given.get(declared, declared.default if isinstance(declared, NumberInput) else None)
                book.set(*address(layout.homes[bound.cell]), wanted)
            values = found(given)
            expected = {
                at: str(values[line.name]) if line.is_text else float(values[line.name]) for line, at in told.items()
            }
            assert disagreements(expected, book.read(list(expected))) == [], given


@pytest.mark.parametrize("name", DAYS)
def test_a_third_program_agrees(tmp_path: Path, name: str) -> None:
    require(gnumeric.available())
    path = tmp_path / "stall.xlsx"
    work_out(model(), "metric", {}, DAYS[name][0]).written(path, sheets(), TITLE)
    stored = stored_values(path)
    assert disagreements({cell: stored.get(cell) for cell in formula_cells(path)}, gnumeric.recalculate(path)) == []


def test_a_sentence_keeps_to_its_limits() -> None:
    assert say("a" * LONGEST_WORDS) is not None
    long = either(base().line("stall.left_used"), "a" * (LONGEST_WORDS + 1), "")
    for parts in (("a" * (LONGEST_WORDS + 1),), ("a",) * (MOST_PARTS + 1), (long,)):
        with pytest.raises(ModelFault, match=f"a sentence of {len(parts)} part"):
            say(*parts)


def test_nothing_is_worked_out_from_a_sentence() -> None:
    told = base().line("stall.money")
    with pytest.raises(ModelFault, match=r"stall\.money"):
        Graph({**base().roots, _line(told): told})


def test_a_sentence_stands_only_as_the_whole_of_a_line() -> None:
    with pytest.raises(ModelFault, match="guilty"):
        work_out(model(), "metric", {}, {}, further=[_line(1 + say("words"))])
    with pytest.raises(ModelFault, match="guilty"):
        work_out(model(), "metric", {}, {}, further=[_line(figure(base().line("stall.left_used"), 2))])


def test_the_ways_of_a_sentence_name_its_figures() -> None:
    assert sentence_of(base().line("stall.money").expr) == "A sentence that says money left over"


def _line(expr: Any) -> Line:
    return Line("guilty.alone", "Guilty", unit("1"), (), lambda: expr)
