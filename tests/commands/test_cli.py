"""The commands: what they print and write, their exit codes, and that nothing is lost."""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.workbook.fingerprint import unedited
from tests.engines.cells import Cell, disagreements, formula_cells, named_areas, retype, stored_values
from tests.engines.formualizer_engine import FormualizerBook
from tests.made import workbook_of

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"


def test_build_writes_a_workbook_and_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = tmp_path / "book.xlsx"
    assert main(["build", str(SCENARIO), "--out", str(book)]) == 0
    assert f"wrote {book}" in capsys.readouterr().err
    assert unedited(book)
    assert [path.name for path in tmp_path.iterdir()] == ["book.xlsx"]


def test_an_unedited_build_is_replaced_an_edited_one_is_not(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = tmp_path / "book.xlsx"
    arguments = ["build", str(SCENARIO), "--out", str(book)]
    book.write_bytes(workbook_of(SCENARIO))
    assert main(arguments) == 0
    retype(book, {cell_of(book, "farm_wage"): 21})
    edited = book.read_bytes()
    assert not unedited(book)
    assert main(arguments) == 1
    said = capsys.readouterr().err
    assert "exists and is not an unedited farmbook workbook, so it was left as it is" in said
    assert "hint: give another name, or --replace" in said
    assert book.read_bytes() == edited
    assert main([*arguments, "--replace"]) == 0
    assert unedited(book)


def cell_of(book: Path, name: str) -> Cell:
    """Where the one cell of this name stands."""
    return named_areas(book)[name]


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 not a zip", b"just text"])
def test_a_foreign_file_is_left_alone(content: bytes, tmp_path: Path) -> None:
    target = tmp_path / "book.xlsx"
    target.write_bytes(content)
    assert main(["build", str(SCENARIO), "--out", str(target)]) == 1
    assert target.read_bytes() == content


@pytest.mark.parametrize(
    ("out", "words"),
    [("", "is a folder, not a file"), ("missing/book.xlsx", "cannot be written: its folder does not exist")],
)
def test_where_it_cannot_write_it_says_so(
    out: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", str(SCENARIO), "--out", str(tmp_path / out)]) == 1
    assert words in capsys.readouterr().err


def test_a_bad_scenario_gives_words_and_no_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text(SCENARIO.read_text().replace("wage = {", "wag = {"))
    book = tmp_path / "book.xlsx"
    assert main(["build", str(bad), "--out", str(book)]) == 1
    said = capsys.readouterr().err
    assert "[farm] wag" in said
    assert "wage" in said
    assert "Traceback" not in said
    assert not book.exists()


def test_check_reports_what_does_not_add_up(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    weak = tmp_path / "weak.toml"
    weak.write_text(SCENARIO.read_text().replace('power = { value = 24, basis = "quoted"', "power = { value = 1"))
    assert main(["check", str(weak)]) == 1
    said = capsys.readouterr().err
    assert said.startswith("the book does not add up:")
    assert "\nunusual:\n" in said
    assert "below the usual range of 12 to 120 kW" in said
    assert "adds up" not in said
    book = tmp_path / "book.xlsx"
    assert main(["build", str(weak), "--out", str(book)]) == 1
    assert "nothing was written: put these right first" in capsys.readouterr().err
    assert not book.exists()
    assert main(["check", str(SCENARIO)]) == 0
    assert "the book adds up" in capsys.readouterr().err


def test_show_prints_headlines_and_every_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", str(SCENARIO)]) == 0
    headlines = capsys.readouterr().out
    assert "It costs, in money  " in headlines
    assert "A typical year earns $" in headlines
    assert "Steaming a good bag: $" in headlines
    assert main(["show", str(SCENARIO), "--all", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)
    assert main(["show", str(SCENARIO), "--all", "--csv"]) == 0
    table = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert [row["name"] for row in rows] == [row["name"] for row in table]
    parts = [row for row in rows if row["name"] == "recipe.parts_used"]
    assert {"ingredient": "maple_sawdust", "recipe": "house"} in [row["members"] for row in parts]
    wage = next(row for row in rows if row["name"] == "farm.wage_used")
    assert (wage["value"], wage["unit"], wage["members"]) == (17.5, "USD/hour of work", {})
    extra = next(row for row in rows if row["name"] == "farm.payroll_extra_used")
    assert (extra["value"], extra["unit"]) == (0.125, "share")
    assert {isinstance(row["value"], str) for row in rows if not row["unit"]} == {True}
    assert {isinstance(row["value"], float) for row in rows if row["unit"]} == {True}
    assert [row["unit"] for row in rows] == [row["unit"] for row in table]
    assert "%" not in {row["unit"] for row in rows}


def test_explain_goes_down_to_the_inputs(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(SCENARIO), "farm.labour_rate"]) == 0
    assert capsys.readouterr().out.splitlines() == [
        "Cost of an hour of work: $19.69 an hour of work   [farm.labour_rate]",
        "  = Pay for an hour of work x (1 + payroll tax and insurance on top of pay)",
        "  Pay for an hour of work: $17.50 an hour of work   [farm.wage, input]",
        "  Payroll tax and insurance on top of pay: 12.5%   [farm.payroll_extra, input]",
    ]


@pytest.mark.parametrize("name", ["farm.wage", "farm_wage", "farm.wage_used", "farm_wage_used", " farm.wage "])
def test_explain_knows_a_number_typed_in_by_each_of_its_names(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(SCENARIO), name]) == 0
    assert capsys.readouterr().out == "Pay for an hour of work: $17.50 an hour of work   [farm.wage, input]\n"


def test_explain_offers_near_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(SCENARIO), "farm.labor_rate"]) == 1
    said = capsys.readouterr().err
    assert "there is no line called `farm.labor_rate`" in said
    assert "did you mean `farm.labour_rate`" in said


@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_new_scenario_builds_as_it_is(units: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    scenario, book = tmp_path / "mine.toml", tmp_path / "mine.xlsx"
    assert main(["new", str(scenario), "--units", units]) == 0
    assert main(["build", str(scenario), "--out", str(book)]) == 0
    assert capsys.readouterr().err.splitlines()[1:] == [f"wrote {book} ({book.stat().st_size / 1024:.0f} KB)"]
    cells = list(formula_cells(book))
    with FormualizerBook(book) as opened:
        stored = stored_values(book)
        assert disagreements({cell: stored[cell] for cell in cells}, opened.read(cells)) == []
    before = scenario.read_bytes()
    assert main(["new", str(scenario)]) == 1
    assert "exists already" in capsys.readouterr().err
    assert scenario.read_bytes() == before


def test_schema_knows_every_field_of_the_shipped_scenarios(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    schema = json.loads(capsys.readouterr().out)
    assert {"units", "currency", "farm", "ingredient", "recipe", "cabinet"} <= set(schema["properties"])


def test_the_module_runs_as_a_program(tmp_path: Path) -> None:
    import subprocess
    import sys

    done = subprocess.run(
        [sys.executable, "-m", "farmbook", "check", str(shutil.copy(SCENARIO, tmp_path))],
        check=False,
        capture_output=True,
        text=True,
    )
    assert (done.returncode, done.stdout) == (0, "")
    assert "the book adds up" in done.stderr


def test_wrong_usage_is_code_two(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="2"):
        main(["build"])
    assert "usage: farmbook build" in capsys.readouterr().err


@pytest.mark.parametrize(("scenario", "said"), [("kestrel_hollow", "190 degF"), ("hof_fennewald", "87.7778 degC")])
def test_explain_tells_a_temperature_in_the_units_of_the_book(
    scenario: str, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["explain", str(SCENARIO.with_name(f"{scenario}.toml")), "cabinet_cook.hold_past_mark"]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert set(re.findall(r": (\S+ \S+) \[core_hot\]", text)) == {said}
