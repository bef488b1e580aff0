"""The command `matters`: the table for a person, and for a program."""

from __future__ import annotations

import json
import re

import pytest

from farmbook.cli import main
from farmbook.finding import WIDTH
from farmbook.layout.swings import NOTHING_LEFT
from farmbook.matters import swings
from farmbook.matters_text import matters_text
from farmbook.sheet_text import sheet_text
from tests.matters.farms import SCENARIOS, farm, known_as

RANK = re.compile(r"^ {1,2}(\d+)  ", re.MULTILINE)


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_first_twenty_within_a_screen_s_width(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["matters", str(SCENARIOS[name])]) == 0
    said = capsys.readouterr().out
    assert [row for row in said.splitlines() if len(row) > WIDTH] == []
    assert [int(rank) for rank in RANK.findall(said)] == list(range(1, 21))
    assert f"Figures swung: {len(swings(farm(name)).rows)}, the first 20 stand here;" in said


def test_a_figure_is_told_with_its_range_its_swing_and_how_to_measure_it() -> None:
    assert (
        "  3  Weight lost in the cold room and on the          1.0% to 10.0%          +3,515           -9,138\n"
        "     road, share of weight packed\n"
        "     Now 3.5%, assumed. Weigh some packed boxes, and weigh them again when they reach the customer.\n"
    ) in matters_text(farm())
    assert matters_text(farm()).startswith("Profit is $57,682 a year. Each figure alone ")
    assert re.search(r"Left out: measured or quoted, 120; left blank, \d+; ", " ".join(matters_text(farm()).split()))


def test_all_of_them(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["matters", str(SCENARIOS["kestrel_hollow"]), "--all"]) == 0
    said = capsys.readouterr().out
    assert [int(rank) for rank in RANK.findall(said)] == list(range(1, len(swings(farm()).rows) + 1))
    assert "--all" not in said


def test_for_a_program(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["matters", str(SCENARIOS["hof_fennewald"]), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    found = swings(farm("hof_fennewald")).rows
    assert [one["label"] for one in told] == [one.name for one in found]
    first = told[0]
    assert (first["name"], first["members"], first["unit"]) == ("own_spawn.grain_bag_mass", {}, "kg/plate or bag")
    assert (first["value"], first["usual_low"], first["usual_high"], first["basis"]) == (2.27, 0.4, 3, "assumed")
    assert first["swing"] == first["profit_at_high"] - first["profit_at_low"]
    assert {one["profit_unit"] for one in told} == {"EUR/year"}
    of_a_list = next(one for one in told if one["name"] == "customer.fee")
    assert of_a_list["members"].keys() == {"customer"}


def test_the_sheet_as_text_has_the_table() -> None:
    said = sheet_text(farm(), "measure")
    assert [int(rank) for rank in RANK.findall(said)] == list(range(1, 11))
    assert "the table holds." in said


def test_where_nothing_is_left_it_says_so() -> None:
    said = matters_text(known_as(farm(), "measured"))
    assert said.startswith(NOTHING_LEFT)
    assert "Figures swung: 0. Left out: measured or quoted, " in " ".join(said.split())
