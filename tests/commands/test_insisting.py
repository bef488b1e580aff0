"""A farm that fails its checks: refused by every command and from Python alike, unless one insists on looking."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import farmbook
from farmbook import output
from farmbook.cli import main
from farmbook.errors import DoesNotAddUp

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"
WORDS = "the book does not add up:"


@pytest.fixture
def weak(tmp_path: Path) -> Path:
    """A farm whose steamer is too weak to get hot."""
    path = tmp_path / "weak.toml"
    text = SCENARIO.read_text(encoding="utf-8")
    path.write_text(text.replace('power = { value = 24, basis = "quoted"', "power = { value = 1"), encoding="utf-8")
    return path


LOOKING = (
    ["show"],
    ["show", "--json"],
    ["show", "--csv"],
    ["show", "--all"],
    ["matters"],
    ["matters", "--json"],
    ["explain", "LINE"],
)


def arguments(command: list[str], farm: Path) -> list[str]:
    rest = ["farm.labour_rate" if each == "LINE" else each for each in command[1:]]
    return [command[0], str(farm), *rest]


@pytest.mark.parametrize("command", LOOKING, ids=" ".join)
def test_nothing_is_printed_of_a_farm_that_fails(
    command: list[str], weak: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments(command, weak)) == 1
    out, said = capsys.readouterr()
    assert out == ""
    assert WORDS in said
    assert "put these right first, or give --anyway to look at it all the same" in said


@pytest.mark.parametrize("command", LOOKING, ids=" ".join)
def test_one_may_insist_and_the_exit_code_stays(
    command: list[str], weak: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*arguments(command, weak), "--anyway"]) == 1
    out, said = capsys.readouterr()
    assert len(out) > 100
    assert WORDS in said
    assert "--anyway" not in said


@pytest.mark.parametrize("command", LOOKING, ids=" ".join)
def test_for_a_sound_farm_insisting_changes_nothing(command: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(arguments(command, SCENARIO)) == 0
    plain = capsys.readouterr()
    assert main([*arguments(command, SCENARIO), "--anyway"]) == 0
    assert capsys.readouterr() == plain
    assert WORDS not in plain.err


def test_a_book_is_written_only_for_one_who_insists(
    weak: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = tmp_path / "book.xlsx"
    assert main(["build", str(weak), "--out", str(book)]) == 1
    assert not book.exists()
    assert main(["build", str(weak), "--out", str(book), "--anyway"]) == 1
    assert book.exists()
    assert capsys.readouterr().err.count(WORDS) == 2


def test_from_python_it_is_the_same_rule(
    weak: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(output, "build_bytes", lambda computed: b"a book")
    scenario = farmbook.load(weak)
    with pytest.raises(DoesNotAddUp, match="does not add up") as caught:
        farmbook.compute(scenario)
    assert main(["check", str(weak)]) == 1
    said = capsys.readouterr().err
    assert all(str(problem) in said for problem in caught.value.problems)
    results = farmbook.compute(scenario, anyway=True)
    assert farmbook.frames(results)
    book = tmp_path / "book.xlsx"
    with pytest.raises(DoesNotAddUp):
        farmbook.build(results, book)
    assert not book.exists()
    assert farmbook.build(results, book, anyway=True) == book
    assert book.read_bytes() == b"a book"


def test_what_is_printed_all_the_same_says_which_check_fails(weak: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["show", str(weak), "--json", "--anyway"])
    found = {row["name"]: row["value"] for row in json.loads(capsys.readouterr().out)}
    assert 0 in found.values()


@pytest.mark.parametrize("command", ["build", "show", "matters", "explain"])
def test_help_tells_of_insisting(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="0"):
        main([command, "--help"])
    said = " ".join(capsys.readouterr().out.split())
    assert "--anyway" in said
    assert "even if checks of the farm fail, to look; the exit code stays 1" in said
