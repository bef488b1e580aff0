"""A workbook that was edited, read back into a scenario file: what stands in it, and what is said of what cannot."""

from __future__ import annotations

import datetime as dt
import math
import re
import shutil
import subprocess
import zipfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl.utils import get_column_letter

from farmbook.cli import main
from farmbook.output import build_bytes
from farmbook.results import Computed, compute, load_scenario
from tests.demos import DEMOS
from tests.engines import gnumeric, require
from tests.engines.cells import Cell, Entry, named_areas, position, retype
from tests.engines.libreoffice import available
from tests.live.turns import turn_of
from tests.made import workbook_of

SCENARIOS = Path(__file__).parents[2] / "scenarios"
KESTREL = SCENARIOS / "kestrel_hollow.toml"
BOTH = pytest.mark.parametrize("scenario", DEMOS, ids=lambda path: str(path.stem))
Edit = Callable[[Callable[..., Any]], None]


def built(scenario: Path, folder: Path) -> Path:
    book = folder / "book.xlsx"
    book.write_bytes(
        workbook_of(scenario) if scenario.parent == SCENARIOS else build_bytes(compute(load_scenario(scenario)))
    )
    return book


@dataclass
class Typing:
    """One cell of a book and what is typed into it."""

    at: Cell
    value: Entry = None


def edited(book: Path, edit: Edit) -> Path:
    """The book after an edit of cells, found by name and, in lists, by row and column counted from 0."""
    areas, typed = named_areas(book), list[Typing]()

    def cell(name: str, row: int = 0, column: int = 0) -> Typing:
        sheet, area = areas[name]
        first_row, first_column = position(area.partition(":")[0])
        typed.append(Typing((sheet, f"{get_column_letter(first_column + column)}{first_row + row}")))
        return typed[-1]

    edit(cell)
    retype(book, {each.at: each.value for each in typed})
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
def test_a_book_that_libreoffice_saved_reads_back_to_the_same_farm(
    scenario: Path, tmp_path: Path, pytestconfig: pytest.Config
) -> None:
    require(available())
    if not pytestconfig.getoption("whole") and turn_of(DEMOS.index(scenario), len(DEMOS)):
        pytest.skip("this book is saved by LibreOffice at other commits, and with --whole")
    book = saved_by_libreoffice(built(scenario, tmp_path), tmp_path)
    assert differing(compute(load_scenario(scenario)), compute(load_scenario(read(book)))) == []
    assert read(book, "--into", str(scenario), "--replace").read_bytes() == scenario.read_bytes()


@BOTH
def test_a_book_that_gnumeric_saved_reads_back_to_the_same_farm(
    scenario: Path, tmp_path: Path, pytestconfig: pytest.Config
) -> None:
    require(gnumeric.available())
    if not pytestconfig.getoption("whole") and not turn_of(DEMOS.index(scenario), len(DEMOS)):
        pytest.skip("this book is saved by Gnumeric at other commits, and with --whole")
    book = built(scenario, tmp_path)
    subprocess.run(["ssconvert", book, tmp_path / "saved.xlsx"], check=True, capture_output=True, timeout=180)
    shutil.move(tmp_path / "saved.xlsx", book)
    assert read(book, "--into", str(scenario)).read_bytes() == scenario.read_bytes()


def saved_by_libreoffice(book: Path, folder: Path) -> Path:
    saved = folder / "saved"
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = ["soffice", profile, "--headless", "--convert-to", "xlsx", "--outdir", str(saved), str(book)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    shutil.copy(saved / "book.xlsx", book)
    return book


def changes(cell: Callable[..., Any]) -> None:
    cell("farm_wage").value = 19.25
    cell("farm_wage_basis").value = "quoted"
    cell("farm_wage_note").value = "since March\nfor all"
    cell("farm_plan_date").value = dt.date(2026, 5, 4)
    cell("energy_demand_charge_note").value = "from the last bill"
    cell("cabinet_own_energy").value = None
    cell("recipe_name", 0, 1).value = "Lean and cheap"
    cell("recipe_parts", 1, 1).value = 15
    cell("recipe_efficiency_given", 2, 0).value = 0.125
    cell("recipe_efficiency_given_note", 2, 0).value = "a guess of mine"


def test_only_what_changed_is_changed(tmp_path: Path) -> None:
    book = edited(built(KESTREL, tmp_path), changes)
    before = KESTREL.read_text(encoding="utf-8").splitlines()
    after = read(book, "--into", str(KESTREL)).read_text(encoding="utf-8").splitlines()
    assert [line for line in before if line not in after] == [
        'plan_date = "2026-03-02"',
        'wage = { value = 17.5, basis = "measured" }',
        '  "11 %",',
        'name = "Lean mix"',
        "soy_hull_pellets = 12",
        'demand_charge = { value = 11.4, basis = "quoted" }',
        'own_energy = { value = 168, basis = "measured", note = "meter, mean of 5 loads" }',
    ]
    assert 'plan_date = "2026-05-04"' in after
    assert 'name = "Lean and cheap"' in after


def test_read_with_and_without_the_scenario_it_is_the_same_farm(tmp_path: Path) -> None:
    book = edited(built(KESTREL, tmp_path), changes)
    alone = compute(load_scenario(read(book)))
    into = compute(load_scenario(read(book, "--into", str(KESTREL), "--replace")))
    assert differing(alone, into) == []
    assert float(alone.values[alone.line("farm.wage")][0]) == 19.25


def test_a_spare_row_comes_back_once_it_has_a_name(tmp_path: Path) -> None:
    def coffee(cell: Callable[..., Any]) -> None:
        cell("ingredient_name", 4).value = "Caf\u00e9 grounds"
        for name, value in {"dry_matter": 0.4, "nitrogen_tested": 0.022, "carbon": 0.5, "price": 0.01}.items():
            cell(f"ingredient_{name}", 4).value = value
            cell(f"ingredient_{name}_basis", 4).value = "guess"
        cell("ingredient_bulk_density", 4).value = 30
        cell("recipe_parts", 4, 0).value = 6
        cell("recipe_parts_basis", 4, 0).value = "guess"

    book = edited(built(KESTREL, tmp_path), coffee)
    into = read(book, "--into", str(KESTREL)).read_text(encoding="utf-8")
    assert "[ingredient.cafe_grounds]" in into
    assert "cafe_grounds = 6" in into
    found = load_scenario(book.with_name("read.toml"))
    names = next(cells for raw, cells in found.cells.items() if raw.name == "ingredient.name")
    assert names.texts[0, 4] == "Caf\u00e9 grounds"
    assert differing(compute(found), compute(load_scenario(read(book, "--replace")))) == []


def test_a_row_that_is_cleared_is_gone(tmp_path: Path) -> None:
    def without_oats(cell: Callable[..., Any]) -> None:
        for name in ("dry_matter", "protein", "carbon", "price", "bulk_density"):
            cell(f"ingredient_{name}", 2).value = None
            cell(f"ingredient_{name}_basis", 2).value = None
        cell("ingredient_name", 2).value = None
        cell("recipe_parts", 2, 1).value = None

    book = edited(built(KESTREL, tmp_path), without_oats)
    text = read(book, "--into", str(KESTREL)).read_text(encoding="utf-8")
    assert "oat_hulls" not in text
    assert "oven, 6 samples" in text


def test_a_formula_is_taken_by_its_result_and_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = edited(built(KESTREL, tmp_path), lambda cell: setattr(cell("farm_wage"), "value", "=15+4"))
    assert main(["read", str(book), "--out", str(tmp_path / "read.toml")]) == 1
    assert "holds a formula without a stored result; save the book in a spreadsheet program" in capsys.readouterr().err
    require(available())
    book = saved_by_libreoffice(book, tmp_path)
    assert 'wage = {value = 19, basis = "measured"}' in read(book).read_text(encoding="utf-8")
    assert "holds a formula; its result, 19, was taken" in capsys.readouterr().err


def wrongs(cell: Callable[..., Any]) -> None:
    cell("farm_wage").value = "about 19"
    cell("farm_weeks_worked").value = -3
    cell("bag_wet_fill").value = None
    cell("energy_voltage").value = "#N/A"
    cell("spawn_spawn_rate_basis").value = "heard it"
    cell("ingredient_name", 1).value = None
    cell("spawn_freight").value = dt.date(2026, 5, 4)
    cell("recipe_target_moisture", 0, 0).value = None


def test_everything_that_is_wrong_is_told_at_once_by_its_cell(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = edited(built(KESTREL, tmp_path), wrongs)
    stood = book.read_bytes()
    assert main(["read", str(book), "--out", str(tmp_path / "read.toml")]) == 1
    said = capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["book.xlsx"]
    assert book.read_bytes() == stood
    for words in TOLD:
        assert words in said, said


TOLD = (
    '= "about 19"\n    a number is wanted here, without words or unit; the unit stands beside the cell',
    "must be 1 week/year or more",
    "shows the error #N/A; type a value over it, or clear it",
    "no such word here",
    "the ingredient has no name in Tables B",
    '= "2026-05-04"\n    a number is wanted here',
    'is empty, but a file that leaves "Moisture aimed at',
)


def without_names(book: Path, *names: str) -> None:
    """Take names out of a workbook and leave the rest of it as it is."""
    with zipfile.ZipFile(book) as archive:
        parts = {part: archive.read(part) for part in archive.namelist()}
    for name in names:
        defined = rf'<definedName name="{name}"[^>]*>[^<]*</definedName>'.encode()
        parts["xl/workbook.xml"], times = re.subn(defined, b"", parts["xl/workbook.xml"])
        assert times == 1, name
    with zipfile.ZipFile(book, "w", zipfile.ZIP_DEFLATED) as archive:
        for part, content in parts.items():
            archive.writestr(part, content)


@pytest.mark.parametrize("lost", ["farm_wage", "recipe_parts", "farm_wage_note"])
def test_a_name_that_is_gone_is_told(lost: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = built(KESTREL, tmp_path)
    without_names(book, lost)
    assert main(["read", str(book), "--out", str(tmp_path / "read.toml")]) == 1
    assert f"the name {lost}, by which" in capsys.readouterr().err


def test_a_name_that_an_older_version_had_not_is_only_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = edited(built(KESTREL, tmp_path), lambda cell: setattr(cell("book_version"), "value", "0.0.9"))
    without_names(book, "crop_shrink", "crop_shrink_basis", "crop_shrink_note")
    assert "wage = {value = 17.5" in read(book).read_text(encoding="utf-8")
    said = capsys.readouterr().err
    assert "the name crop_shrink, by which" in said
    assert "the book is of version 0.0.9. Nothing was read for it" in said


def test_a_book_of_other_units_goes_into_no_scenario(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book, other = built(KESTREL, tmp_path), SCENARIOS / "hof_fennewald.toml"
    assert main(["read", str(book), "--out", str(tmp_path / "read.toml"), "--into", str(other)]) == 1
    assert "has the units metric, the workbook us" in capsys.readouterr().err


def test_what_another_file_still_gives_is_not_lost_in_silence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.copy(KESTREL, tmp_path / "base.toml")
    variant = tmp_path / "variant.toml"
    variant.write_text('extends = "base.toml"\n[farm]\nwage = 20 # since May\n', encoding="utf-8")
    book = built(variant, tmp_path)
    assert read(book, "--into", str(variant)).read_text(encoding="utf-8") == variant.read_text(encoding="utf-8")
    edited(book, lambda cell: setattr(cell("cabinet_own_energy"), "value", None))
    assert main(["read", str(book), "--out", str(tmp_path / "new.toml"), "--into", str(variant)]) == 1
    assert "would not hold what the workbook says of `[cabinet] own_energy`" in capsys.readouterr().err
    assert not (tmp_path / "new.toml").exists()


def test_another_file_is_overwritten_only_when_that_is_asked_for(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = built(KESTREL, tmp_path)
    out = read(book)
    assert main(["read", str(book), "--out", str(out)]) == 0
    out.write_text("# mine\n", encoding="utf-8")
    assert main(["read", str(book), "--out", str(out)]) == 1
    assert "exists already, so it was left as it is" in capsys.readouterr().err
    assert out.read_text(encoding="utf-8") == "# mine\n"
    assert main(["read", str(book), "--out", str(out), "--replace"]) == 0


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 not a zip", KESTREL.read_bytes()])
def test_what_is_no_workbook_is_told(content: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = tmp_path / "book.xlsx"
    book.write_bytes(content)
    assert main(["read", str(book), "--out", str(tmp_path / "read.toml")]) == 1
    assert "is not a workbook made by farmbook, or is damaged" in capsys.readouterr().err


def test_a_workbook_of_somebody_else_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = tmp_path / "book.xlsx"
    openpyxl.Workbook().save(book)
    for command in (["read", "--out", str(tmp_path / "a.toml")], ["print", "--out", str(tmp_path / "a.pdf")]):
        assert main([command[0], str(book), *command[1:]]) == 1
        assert "is not a workbook made by farmbook, or is damaged" in capsys.readouterr().err


def test_a_figure_of_nothing_may_be_cleared(tmp_path: Path) -> None:
    book = edited(built(KESTREL, tmp_path), lambda cell: setattr(cell("recipe_parts", 2, 1), "value", None))
    before = KESTREL.read_text(encoding="utf-8")
    assert read(book, "--into", str(KESTREL)).read_text(encoding="utf-8") == before.replace("oat_hulls = 9\n", "")


INLINE = """units = "us"
currency = "USD"
ingredient = { straw = { dry_matter = 0.9, carbon = 0.45, nitrogen_tested = 0.01, price = 0.1, bulk_density = 10 } }
recipe = { plain = { parts = { straw = 1 }, efficiency_given = [0.4, 0.2, 0.1, 0.05] } }
"""


def test_a_scenario_that_cannot_be_changed_is_left_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rest = KESTREL.read_text(encoding="utf-8")
    sections = rest[rest.index("[bag]") :]
    inline = tmp_path / "inline.toml"
    farm = rest[rest.index("[farm]") : rest.index("[ingredient.")]
    inline.write_text(f"{INLINE}{farm}{sections}", encoding="utf-8")
    book = built(inline, tmp_path)
    assert read(book, "--into", str(inline)).read_bytes() == inline.read_bytes()
    edited(book, lambda cell: setattr(cell("recipe_name", 0, 1), "value", "Second"))
    assert main(["read", str(book), "--out", str(tmp_path / "new.toml"), "--into", str(inline)]) == 1
    assert "hint:" in capsys.readouterr().err
    assert not (tmp_path / "new.toml").exists()
