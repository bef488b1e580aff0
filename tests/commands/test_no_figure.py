"""A figure that does not exist is said in words wherever it would be shown, never as 0."""

from __future__ import annotations

import io
import json
import math
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest

import farmbook
from farmbook.explain import explanation
from farmbook.output import build_bytes
from farmbook.results import Computed
from farmbook.show import as_json, headline_text

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"
HEADLINE = "It costs, in money"
NAME = "year.money_per_sold"


@pytest.fixture(scope="module")
def all_trimmed(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    """The farm of the shipped scenario, on which everything picked is trimmed off."""
    path = tmp_path_factory.mktemp("trimmed") / "trimmed.toml"
    lines = [line for line in SCENARIO.read_text(encoding="utf-8").splitlines() if not line.startswith("trim ")]
    head = lines.index("[crop]")
    path.write_text("\n".join([*lines[: head + 1], 'trim = "100 %"', *lines[head + 1 :]]), encoding="utf-8")
    return farmbook.compute(farmbook.load(path), anyway=True)


def test_headlines_and_explanations_say_it_in_words(all_trimmed: Computed) -> None:
    label = all_trimmed.line(NAME).label
    (headline,) = [line for line in headline_text(all_trimmed).splitlines() if line.startswith(HEADLINE)]
    assert headline.removeprefix(HEADLINE).strip() == "no figure"
    assert explanation(all_trimmed, NAME).splitlines()[0].startswith(f"{label}: no figure")


def test_programs_get_words_and_frames_no_number(all_trimmed: Computed) -> None:
    (row,) = [row for row in json.loads(as_json(all_trimmed)) if row["name"] == NAME]
    assert row["value"] == "no figure"
    assert math.isnan(farmbook.frames(all_trimmed)["year"].loc["money_per_sold", "value"])


WITHOUT_ONE = (
    "crop.recorded_efficiency",
    "cabinet.energy_difference",
    "cabinet.water_difference",
    "cabinet_run.heat_up_time",
    "growing_cost.grown_cost_per_live",
    "make_or_buy_turn.pays_from",
    "make_or_buy_turn.turning_hours",
    "make_or_buy_worth.payback",
    "make_or_buy_worth.discounted_payback",
    "make_or_buy_worth.rate",
    "mixing.mixer_filled_to",
    "recipe.mix_carbon_to_nitrogen",
    "spawn_supply.cost_per_bag_inoculated",
    "steamer_choice.break_even_gap",
    "vessel_year.cost_per_good_bag",
)
"""Costs, yields, shares and times that may not exist on a farm, and that a reader would take at their word."""


@pytest.mark.parametrize("name", WITHOUT_ONE)
def test_lines_that_may_not_exist_say_so(name: str, all_trimmed: Computed) -> None:
    assert all_trimmed.line(name).zero_is_none


def test_a_cost_of_nothing_that_is_a_cost_stays_a_number(all_trimmed: Computed) -> None:
    """Free sawdust, an hour that costs nothing and a week without lost bags are figures like any other."""
    for name in ("recipe.price_per_dry", "growing_cost.opening_cost", "lost_bags.bill_a_week", "crop.loss_steamed"):
        assert not all_trimmed.line(name).zero_is_none


@pytest.fixture(scope="module")
def trimmed_book(all_trimmed: Computed) -> openpyxl.Workbook:
    """The workbook of that farm."""
    return openpyxl.load_workbook(io.BytesIO(build_bytes(all_trimmed)))


def formats(book: openpyxl.Workbook) -> Iterator[str]:
    """The number format of every cell of the book that holds the cost of the weight sold."""
    (sheet, at), *_ = book.defined_names["year_money_per_sold"].destinations
    yield book[sheet][at.replace("$", "")].number_format
    for row in book["Start"].iter_rows():
        if row[2].value == "=year_money_per_sold":
            yield row[2].number_format


def test_the_book_says_it_at_home_and_where_it_is_repeated(trimmed_book: openpyxl.Workbook) -> None:
    """The words stand in the number format, so that they come and go as cells are edited."""
    assert list(formats(trimmed_book)) == ['"$"#,##0.00;-"$"#,##0.00;"no figure"'] * 2


def test_a_share_and_a_plain_number_keep_their_formats_behind_the_words(trimmed_book: openpyxl.Workbook) -> None:
    for name, form in (("supplement_share", "0.0%"), ("recipe_carbon_to_nitrogen", "0")):
        (sheet, at), *_ = trimmed_book.defined_names[name].destinations
        assert trimmed_book[sheet][at.replace("$", "")].number_format == f'{form};-{form};"no figure"'
