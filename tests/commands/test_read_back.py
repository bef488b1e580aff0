"""A workbook that was edited, read back into a scenario file: what stands in it, and what is said of what cannot."""

from __future__ import annotations

import datetime as dt
import math
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from farmbook.cli import main
from farmbook.output import build_bytes
from farmbook.results import Computed, compute, load_scenario
from tests.engines.libreoffice import available

SCENARIOS = Path(__file__).parents[2] / "scenarios"
KESTREL = SCENARIOS / "kestrel_hollow.toml"
BOTH = pytest.mark.parametrize("scenario", sorted(SCENARIOS.glob("*.toml")), ids=lambda path: str(path.stem))
Edit = Callable[[Callable[..., Any]], None]


def built(scenario: Path, folder: Path) -> Path:
    book = folder / "book.xlsx"
    book.write_bytes(build_bytes(compute(load_scenario(scenario))))
    return book


def edited(book: Path, edit: Edit) -> Path:
    """The book saved again after an edit of cells, found by name and, in lists, by row and column counted from 0."""
    opened = openpyxl.load_workbook(book)

    def cell(name: str, row: int = 0, column: int = 0) -> Any:
        sheet, area = next(iter(opened.defined_names[name].destinations))
        found = opened[sheet][area.replace("$", "")]
        return found[row][column] if isinstance(found, tuple) else found

    edit(cell)
    opened.save(book)
    return book


def read(book: Path, *more: str) -> Path:
    out = book.with_name("read.toml")
    assert main(["read", str(book), "--out", str(out), *more]) == 0
    return out


def differing(one: Computed, other: Computed) -> list[str]:
    """Names of the lines, inputs and notes that differ by more than the digits a workbook keeps."""
    pairs = [(line.name, one.values[line], other.values[line]) for line in one.roots]
    for raw, cells in one.scenario.cells.items():
        again = other.scenario.cells[raw]
        pairs += [(raw.name, cells.numbers, again.numbers), (raw.name, cells.texts, again.texts)]
    found = {name for name, left, right in pairs if not alike(left.reshape(-1).tolist(), right.reshape(-1).tolist())}
    return sorted(found | ({"notes"} if one.scenario.notes != other.scenario.notes else set()))


def alike(left: list[Any], right: list[Any]) -> bool:
    return len(left) == len(right) and all(map(same, left, right))


def same(one: Any, other: Any) -> bool:
    if isinstance(one, str) or isinstance(other, str):
        return bool(one == other)
    return math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-12) or (math.isnan(one) and math.isnan(other))


@BOTH
def test_a_book_as_built_reads_back_to_the_same_farm(scenario: Path, tmp_path: Path) -> None:
    found = compute(load_scenario(read(built(scenario, tmp_path))))
    assert differing(compute(load_scenario(scenario)), found) == []


@BOTH
def test_a_book_as_built_changes_nothing_in_its_scenario(scenario: Path, tmp_path: Path) -> None:
    assert read(built(scenario, tmp_path), "--into", str(scenario)).read_bytes() == scenario.read_bytes()


@BOTH
def test_a_book_that_libreoffice_saved_reads_back_to_the_same_farm(scenario: Path, tmp_path: Path) -> None:
    if not available():
        pytest.skip(available().reason)
    book = built(scenario, tmp_path)
    saved = tmp_path / "saved"
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    command = ["soffice", profile, "--headless", "--convert-to", "xlsx", "--outdir", str(saved), str(book)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    shutil.copy(saved / "book.xlsx", book)
    assert differing(compute(load_scenario(scenario)), compute(load_scenario(read(book)))) == []
    assert read(book, "--into", str(scenario), "--replace").read_bytes() == scenario.read_bytes()


def changes(cell: Callable[..., Any]) -> None:
    cell("farm_wage").value = 19.25
    cell("farm_wage_basis").value = "quoted"
    cell("farm_wage_note").value = "since March\nfor all"
    cell("farm_plan_date").value = dt.datetime(2026, 5, 4)
    cell("energy_demand_charge_note").value = "from the last bill"
    cell("cabinet_own_energy").value = None
    cell("cook_standing").value = "stacked tight"
    cell("recipe_names", 0, 1).value = "Lean and cheap"
    cell("recipe_parts", 1, 1).value = 15
    cell("crop_efficiency_given", 2, 0).value = 0.125
    cell("crop_efficiency_given_note", 2, 0).value = "a guess of mine"


def test_what_was_typed_comes_back(tmp_path: Path) -> None:
    book = edited(built(KESTREL, tmp_path), lambda cell: (changes(cell), setattr(cell("cook_standing"), "value", None))[0])
    assert main(["read", str(book), "--out", str(tmp_path / "no.toml")]) == 1
    assert not (tmp_path / "no.toml").exists()


def test_only_what_changed_is_changed(tmp_path: Path) -> None:
    def some(cell: Callable[..., Any]) -> None:
        changes(cell)
        cell("cook_standing").value = "gap all round"

    book = edited(built(KESTREL, tmp_path), some)
    before = KESTREL.read_text(encoding="utf-8").splitlines()
    after = read(book, "--into", str(KESTREL)).read_text(encoding="utf-8").splitlines()
    assert [line for line in before if line not in after] == [
        'plan_date = "2026-03-02"',
        'wage = { value = 17.5, basis = "measured" }',
        'name = "Lean mix"',
        "soy_hull_pellets = 12",
        'demand_charge = { value = 11.4, basis = "quoted" }',
        'own_energy = { value = 168, basis = "measured", note = "meter, mean of 5 loads" }',
    ]
    assert 'plan_date = "2026-05-04"' in after
    assert 'name = "Lean and cheap"' in after


def test_read_with_and_without_the_scenario_it_is_the_same_farm(tmp_path: Path) -> None:
    book = edited(built(KESTREL, tmp_path), lambda cell: changes(cell))
    alone = compute(load_scenario(read(book)))
    into = compute(load_scenario(read(book, "--into", str(KESTREL), "--replace")))
    assert differing(alone, into) == []
    assert float(alone.values[alone.line("farm.wage")][0]) == 19.25
