"""The files to start from: what they leave to the book must suit a farm of their size."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from farmbook.results import Computed, compute, load_scenario

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
def test_the_cooker_of_the_lab_does_the_spawn_of_a_week_on_its_lab_days(path: Path, tmp_path: Path) -> None:
    """Two to three runs a day is what one cooker does; common practice, from memory."""
    found = started(path, tmp_path)
    runs, days = value(found, "own_spawn_work.cooker_runs_in_all"), value(found, "spawn.lab_days_used")
    assert 1 <= runs <= 2 * days
