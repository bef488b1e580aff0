"""The files to start from: what they leave to the book must suit a farm of their size."""

from __future__ import annotations

import re
import shutil
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from farmbook.results import Computed, compute, load_scenario
from farmbook.scenario.report import check_report

STARTERS = sorted((Path(__file__).parents[2] / "templates_src").glob("starter_*.txt"))


def started(path: Path, folder: Path) -> Computed:
    """The farm of a file to start from, as it comes."""
    copy = folder / f"{path.stem}.toml"
    shutil.copy(path, copy)
    return compute(load_scenario(copy))


def value(computed: Computed, name: str) -> float:
    """A line of one value."""
    return next(float(found.item()) for line, found in computed.values.items() if line.name == name)


@pytest.mark.parametrize("path", STARTERS, ids=lambda each: each.stem)
def test_no_charge_for_the_highest_kw_is_made_up(path: Path, tmp_path: Path) -> None:
    """A charge that the bill may not have would be near half the cost of a load."""
    text = path.read_text(encoding="utf-8")
    assert "demand_charge = 0 " in text
    silent = tmp_path / path.name
    silent.write_text("\n".join(row for row in text.splitlines() if "demand_charge" not in row), encoding="utf-8")
    for each in (path, silent):
        assert value(started(each, tmp_path), "cabinet.demand_cost_per_run") == 0


@pytest.mark.parametrize("path", STARTERS, ids=lambda each: each.stem)
def test_nothing_is_said_against_the_file_as_it_comes(path: Path, tmp_path: Path) -> None:
    found = started(path, tmp_path)
    assert found.scenario.warnings == ()
    assert check_report(found.model, found.values) == ([], [])


@pytest.mark.parametrize("path", STARTERS, ids=lambda each: each.stem)
def test_it_asks_for_what_the_scale_says_at_each_pick(path: Path, tmp_path: Path) -> None:
    """A share of the dry mix is worked out by the book, not by somebody who begins."""
    text = path.read_text(encoding="utf-8")
    assert "efficiency" not in text
    heavier = tmp_path / "heavier.txt"
    heavier.write_text(re.sub(r'(first|later)_weight = "(\S+)', double, text), encoding="utf-8")
    before, after = (value(started(each, tmp_path), "crop.picked_per_filled") for each in (path, heavier))
    assert after == pytest.approx(2 * before)


def double(match: re.Match[str]) -> str:
    return f'{match[1]}_weight = "{2 * float(match[2])}'


@pytest.mark.parametrize("path", STARTERS, ids=lambda each: each.stem)
def test_it_is_short(path: Path) -> None:
    tables = tomllib.loads(path.read_text(encoding="utf-8"))
    figures = [key for key in keys(tables) if key not in ("units", "currency", "name", "yield_given")]
    assert len(figures) <= 55


def keys(table: Mapping[str, Any]) -> Iterator[str]:
    """The keys of all values, inner tables' too."""
    for key, inside in table.items():
        yield from keys(inside) if isinstance(inside, Mapping) else (key,)


def test_both_ask_for_the_same() -> None:
    us, metric = (list(keys(tomllib.loads(path.read_text(encoding="utf-8")))) for path in STARTERS)
    assert us == metric


@pytest.mark.parametrize("path", STARTERS, ids=lambda each: each.stem)
def test_the_cooker_of_the_lab_does_the_spawn_of_a_week_on_its_lab_days(path: Path, tmp_path: Path) -> None:
    """Two to three runs a day is what one cooker does; common practice, from memory."""
    found = started(path, tmp_path)
    runs, days = value(found, "own_spawn_work.cooker_runs_in_all"), value(found, "spawn.lab_days_used")
    assert 1 <= runs <= 2 * days
