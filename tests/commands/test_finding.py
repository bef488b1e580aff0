"""What a person may call a line: any of its names, its label, a part of them; and what is offered where that is not one."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.errors import FarmbookError, visible
from farmbook.finding import MOST_LISTED, WIDTH, NoSuchLine, SeveralLines, called, found, head_of
from farmbook.results import Computed, compute, load_scenario

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"


@cache
def farm() -> Computed:
    return compute(load_scenario(SCENARIO))


@pytest.mark.parametrize(
    ("what", "name"),
    [
        ("cabinet.cost_per_run", "cabinet.cost_per_run"),
        ("cabinet_cost_per_run", "cabinet.cost_per_run"),
        ("CABINET.Cost_Per_Run", "cabinet.cost_per_run"),
        ("Cost of a load of the cabinet", "cabinet.cost_per_run"),
        ("  cost of a LOAD   of the cabinet ", "cabinet.cost_per_run"),
        ("labour rate", "farm.labour_rate"),
        ("lost at steaming, steamer", "crop.loss_steamed"),
        ("lost steamer", "crop.loss_steamed"),
        ("Pay for an hour of work (used)", "farm.wage"),
        ("pay for an hour of work", "farm.wage"),
        ("steamer that the farm uses", "steamer.kind"),
        ("steamer_kind", "steamer.kind"),
    ],
)
def test_one_line_is_meant(what: str, name: str) -> None:
    assert called(found(farm(), what)) == name


def test_every_line_is_found_by_its_names_and_its_label() -> None:
    computed = farm()
    for line in list(computed.roots)[::40]:
        for what in (line.name, line.name.replace(".", "_").upper(), line.label):
            assert found(computed, what) is line, what


def test_of_several_the_likeliest_come_first() -> None:
    with pytest.raises(SeveralLines) as caught:
        found(farm(), "Cost of a LOAD")
    lines = caught.value.lines
    assert {"cabinet.cost_per_run", "vessel.cost_per_run", "steamer_in_use.cost_per_run"} == {
        one.name for one in lines[:3]
    }
    assert all("cost of a load" in head_of(one).lower() for one in lines)


def test_a_check_is_offered_last() -> None:
    with pytest.raises(SeveralLines) as caught:
        found(farm(), "cabinet")
    kinds = [getattr(one, "kind", "") in ("error", "alert", "says") for one in caught.value.lines]
    assert kinds == sorted(kinds)
    assert any(kinds)


def test_what_fits_several_is_listed_with_their_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(SCENARIO), "steam"]) == 1
    out, said = capsys.readouterr()
    assert out == ""
    assert said.startswith("error: `steam` fits ")
    assert [row for row in said.splitlines() if len(row) > WIDTH] == []
    rows = [row for row in said.splitlines() if re.match(r"  \S", row)]
    assert len(rows) == MOST_LISTED + 1
    assert "  steamer_in_use.cost_per_run  " in rows[0]
    assert rows[-1].startswith("  and ")
    assert "hint: give the name of one, such as steamer_in_use.cost_per_run, or more of its label" in said


@pytest.mark.parametrize(
    ("what", "near"),
    [
        ("farm.labor_rate", "farm.labour_rate"),
        ("grown cots of a bag filled", "growing_cost.grown_cost_per_filled"),
        ("Pay for an huor of work", "farm.wage"),
    ],
)
def test_a_slip_is_met_with_a_name(what: str, near: str) -> None:
    with pytest.raises(NoSuchLine) as caught:
        found(farm(), what)
    assert caught.value.near[0] == near
    assert f"did you mean `{near}`" in caught.value.hint


@pytest.mark.parametrize("what", ["[a", "%s{}", "(?P<", "a*", "a\nb"])
def test_signs_are_no_pattern(what: str) -> None:
    with pytest.raises(FarmbookError):
        found(farm(), what)


@pytest.mark.parametrize("what", ["", "   ", ".", "...", "_", "(", "\\", "\x00", "\u202e", "\udcff", "x" * 9000])
def test_nothing_else_is_found_and_nothing_breaks(what: str) -> None:
    with pytest.raises(NoSuchLine) as caught:
        found(farm(), what)
    assert visible(what) in str(caught.value)
    assert "give a word or two of its label" in caught.value.hint
