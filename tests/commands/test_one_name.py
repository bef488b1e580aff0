"""One name for one input: in the scenario file, in the workbook and on the command line; earlier names are told."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.finding import NoSuchLine, called, found
from farmbook.interpret.formula import workbook_name
from farmbook.results import Computed
from farmbook.scenario.fields import tables_of
from farmbook.sections.declare import NumberInput
from tests.made import laid_out, results_of

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"

OTHER = SCENARIO.with_name("hof_fennewald.toml")


@cache
def farm() -> Computed:
    return results_of(SCENARIO)


def test_an_input_is_called_in_the_workbook_as_in_the_file() -> None:
    book, _ = laid_out(SCENARIO)
    named = {name.lower() for name in (*book.names, *book.areas)}
    tables = tables_of(type(section) for section in farm().model.sections)
    in_file = {
        f"{table}.{key}": place.declared
        for table, each in tables.items()
        for key, place in (*each.fields.items(), *each.row_fields.items())
    }
    assert set(in_file.values()) == set(farm().model.inputs)
    for name, declared in in_file.items():
        cell = farm().model.inputs[declared].cell
        assert cell.name == name == declared.dotted
        assert workbook_name(cell) == name.replace(".", "_")
        assert workbook_name(cell) in named, name


def test_an_input_is_explained_by_its_name_in_the_file() -> None:
    read = [one for one in farm().model.inputs if isinstance(one, NumberInput)]
    for declared in read:
        assert called(found(farm(), declared.dotted)) == declared.dotted


@pytest.mark.parametrize(
    ("old", "now"),
    [
        ("recipe.price", "ingredient.price"),
        ("recipe_price", "ingredient.price"),
        ("recipe.price_used", "ingredient.price"),
        ("vessel_heat.bags_per_run", "vessel.bags_per_run"),
        ("Cabinet_Run.Hold_Time", "cabinet.hold_time"),
        ("steriliser.kind", "steamer.kind"),
        ("loan.payments", "loans.payments"),
        ("steriliser.cost_per_bag", "steamer_in_use.cost_per_bag"),
    ],
)
def test_an_earlier_name_is_met_with_that_of_now(old: str, now: str) -> None:
    with pytest.raises(NoSuchLine) as caught:
        found(farm(), old)
    assert caught.value.hint == f"it is now called `{now}`"
    assert called(found(farm(), now)) == now


def test_every_name_that_is_told_is_a_name() -> None:
    from farmbook.sections.earlier import earlier_names

    earlier = earlier_names(farm().model.inputs, (line.name for line in farm().roots))
    cells = {bound.cell.name for bound in farm().model.inputs.values()}
    assert len(earlier) > 100
    assert set(earlier.values()) <= {*cells, *(line.name for line in farm().roots)}
    assert not set(earlier) & cells


def test_an_earlier_table_is_met_with_that_of_now(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old = tmp_path / "old.toml"
    old.write_text(
        re.sub(r"^\[steamer\]", "[steriliser]", OTHER.read_text(encoding="utf-8"), flags=re.MULTILINE), "utf-8"
    )
    assert main(["check", str(old)]) == 1
    said = capsys.readouterr().err
    assert "[steriliser]\n    no such table; it is now called [steamer]" in said
    assert "missing" not in said


def test_loans_as_one_sum_under_the_table_of_earlier_versions_are_sent_to_that_of_now(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    old = tmp_path / "old.toml"
    old.write_text(OTHER.read_text(encoding="utf-8").replace("[loans]\n", "[loan]\n"), "utf-8")
    assert main(["check", str(old)]) == 1
    said = capsys.readouterr().err
    assert said.startswith("error: 2 problems")
    assert re.search(r"\[loan\] payments = .*\n    no such field; it belongs in \[loans\]", said)
    assert re.search(r"\[loan\] interest_share = .*\n    no such field; it belongs in \[loans\]", said)
