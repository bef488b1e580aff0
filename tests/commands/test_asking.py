"""Asking at the terminal: what is asked, what becomes of the answers, and that nothing is half-written."""

from __future__ import annotations

import io
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from farmbook import output
from farmbook.asking import QUESTIONS
from farmbook.cli import main
from farmbook.layout.template import starter
from farmbook.results import compute, load_scenario
from farmbook.workbook.fingerprint import unedited

UNITS = ("us", "metric")
BLANK = [""] * len(QUESTIONS)


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def answered(monkeypatch: pytest.MonkeyPatch, answers: Sequence[str], *options: str) -> int:
    """The exit code of a farm that is asked for, with these lines typed."""
    monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{answer}\n" for answer in answers)))
    return main(["new", "mine.toml", "--ask", *options])


def at(mapping: Any, path: Sequence[str]) -> Any:
    """What a file says in a place, without how it is known."""
    for key in path:
        mapping = mapping[key]
    return mapping.get("value", mapping) if isinstance(mapping, dict) else mapping


def test_some_two_dozen_figures_are_asked_for_and_both_starters_have_them() -> None:
    assert 20 <= len(QUESTIONS) <= 25
    for units in UNITS:
        mapping = tomllib.loads(starter(units))
        assert all(at(mapping, path) is not None for question in QUESTIONS for path in question.paths)


@pytest.mark.parametrize("units", UNITS)
def test_blank_answers_leave_the_starter_and_say_that_it_is_assumed(
    units: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answered(monkeypatch, BLANK, "--units", units) == 0
    assert "24 of 24" in (told := capsys.readouterr()).err
    assert "A typical year" in told.out
    mine, ours = tomllib.loads(Path("mine.toml").read_text(encoding="utf-8")), tomllib.loads(starter(units))
    for question in QUESTIONS:
        for path in question.paths:
            assert at(mine, path) == at(ours, path)
            assert at(mine, path[:-1])[path[-1]]["basis"] == "assumed"
    assert unedited(Path("mine.xlsx"))
    remarks = [row.partition("#")[2] for row in starter(units).splitlines()]
    assert remarks == [row.partition("#")[2] for row in Path("mine.toml").read_text(encoding="utf-8").splitlines()]


@pytest.fixture
def no_book(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where only the questions are looked at, no book is made of the answers."""
    monkeypatch.setattr(output, "build_bytes", lambda computed: b"")


def test_answers_go_into_the_file_and_the_book(monkeypatch: pytest.MonkeyPatch) -> None:
    given = ["new farm", "420", "4.5 lb", "0.9", "8 oz", "9 %", "0.71", "", "50", "12.5", "60", "7", "", "3.5", "5 %"]
    assert answered(monkeypatch, [*given, "25", "21", "48", "1,900", "19000", "", "2,400", "30000", "6000"]) == 0
    mine = tomllib.loads(Path("mine.toml").read_text(encoding="utf-8"))
    assert mine["farm"]["stage"] == "new farm"
    assert mine["fruiting_room"]["own_places"] == 1900
    assert mine["crop"]["later_weight"] == "8 oz"
    assert {mine["customer"][who]["unsold"] for who in ("best", "second", "rest")} == {"5 %"}
    computed = compute(load_scenario(Path("mine.toml")))
    assert float(computed.values[computed.line("crop.later_weight_used")].item()) == pytest.approx(0.5)
    assert str(computed.values[computed.line("front.answer")].item()).startswith("Once full, a typical year ")


@pytest.mark.usefixtures("no_book")
def test_an_answer_that_cannot_be_is_asked_for_again(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answered(monkeypatch, ["an old farm", "", "many", "-3", "500", *BLANK[2:]]) == 0
    said = capsys.readouterr().err
    assert said.count("\n1 of 24 ") == 2
    assert said.count("\n2 of 24 ") == 3
    assert '[farm] stage = "an old farm"' in said
    assert tomllib.loads(Path("mine.toml").read_text(encoding="utf-8"))["farm"]["bags_filled_a_week"] == 500


@pytest.mark.usefixtures("no_book")
def test_a_comma_parts_thousands_and_nothing_else(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answered(monkeypatch, ["", "4,50", "1.200,50", "1,500", *BLANK[2:]]) == 0
    assert capsys.readouterr().err.count("\n2 of 24 ") == 3
    assert tomllib.loads(Path("mine.toml").read_text(encoding="utf-8"))["farm"]["bags_filled_a_week"] == 1500


def test_nothing_is_written_where_the_answers_end(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answered(monkeypatch, BLANK[:7]) == 1
    assert "the answers ended after 7 of 24 questions" in capsys.readouterr().err
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize("name", ["mine.toml", "mine.xlsx"])
def test_what_is_there_is_left_and_nothing_is_asked(
    name: str, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    Path(name).write_bytes(b"somebody's own")
    assert answered(monkeypatch, BLANK) == 1
    said = capsys.readouterr().err
    assert "exists already" in said
    assert " of 24" not in said
    assert [path.name for path in folder.iterdir()] == [name]


def test_a_workbook_is_no_scenario_file(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "mine.xlsx", "--ask"]) == 1
    assert "`mine.xlsx` is no name for a scenario file" in capsys.readouterr().err
    assert list(folder.iterdir()) == []
