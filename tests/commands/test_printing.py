"""What is printed, and where it cannot be: nothing that a screen obeys, nothing lost in silence, an exit code and words."""

from __future__ import annotations

import csv
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.errors import FileProblem, visible
from tests.hostile.watch import environment, raw_text

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"
FORMULAS = ("=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1:A9)", "\uff1d1+1", "'=1+1")


def farm_named(name: str, folder: Path) -> Path:
    """A farm whose first ingredient has this name."""
    text = SCENARIO.read_text(encoding="utf-8")
    path = folder / "farm.toml"
    assert text.count('name = "Maple sawdust"') == 1
    path.write_text(text.replace('name = "Maple sawdust"', f"name = {json.dumps(name)}"), encoding="utf-8")
    return path


@pytest.mark.parametrize("name", FORMULAS)
def test_a_text_in_a_csv_file_is_no_formula(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", str(farm_named(name, tmp_path)), "--csv"]) == 0
    values = [row["value"] for row in csv.DictReader(io.StringIO(capsys.readouterr().out))]
    assert f"'{name}" in values
    assert [value for value in values if value.startswith(("=", "+", "@", "\uff1d"))] == []
    below = [value for value in values if value.startswith("-")]
    assert [float(value) for value in below] != []  # a number below zero stays a number


def test_json_keeps_a_text_as_it_is(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", str(farm_named("=1+1", tmp_path)), "--json"]) == 0
    assert "=1+1" in [row["value"] for row in json.loads(capsys.readouterr().out)]


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("plain, caf\u00e9 \u8611\u83c7 \u00a0 \U0001f344", "plain, caf\u00e9 \u8611\u83c7 \u00a0 \U0001f344"),
        ("\x1b[31m", "\\u001B[31m"),
        ("a\nb\tc\r\0", "a\\u000Ab\\u0009c\\u000D\\u0000"),
        ("\u202egnp\u2066", "\\u202Egnp\\u2066"),
        ("\x9b\u2028\ufeff\u200b", "\\u009B\\u2028\\uFEFF\\u200B"),
        ("\udcff", "\\uDCFF"),
        ("\U000e0041", "\\uDB40\\uDC41"),
    ],
)
def test_what_a_screen_would_obey_is_shown_as_its_number(text: str, shown: str) -> None:
    assert visible(text) == shown
    assert raw_text(visible(text)) == []
    assert str(FileProblem(text, "is")) == f"`{shown}` is"


def test_in_json_the_number_means_the_same() -> None:
    text = "\u202e\x7f\U000e0041\u2028"
    assert json.loads(visible(json.dumps(text, ensure_ascii=False))) == text


NAMES = ("\x1b[31mred", "a\u202eb", "line\nerror: none", "\x9b2J", "z\u200by", "\x1b[31mr\u202ee\nd\x9b2Jz\u200b")
"""The last has them all, and a book is built of it."""


@pytest.mark.parametrize("name", NAMES)
def test_no_command_prints_a_path_raw(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    farm, book = tmp_path / f"{name}.toml", tmp_path / f"{name}.xlsx"
    farm.write_bytes(SCENARIO.read_bytes())
    for arguments in (
        ["check", str(farm)],
        *([["build", str(farm), "--out", str(book)]] if name == NAMES[-1] else []),
        ["build", str(book), "--out", str(book)],
        ["show", str(tmp_path / f"none{name}")],
        ["explain", str(farm), name],
        ["new", f"{tmp_path}/new{name}.toml"],
        ["new", str(farm)],
    ):
        main(arguments)
        out, said = capsys.readouterr()
        assert raw_text(out + said) == []
        assert len(said.splitlines()) <= 3
        assert visible(name) in said


MARKS = ("\u200b", "\u2061", "\u00ad", "\U000e0041")


@pytest.mark.parametrize("command", [["show"], ["show", "--csv"], ["show", "--json"], ["explain", "recipe.chosen"]])
def test_no_table_holds_what_cannot_be_seen(
    command: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    farm = tmp_path / "farm.toml"
    text = SCENARIO.read_text(encoding="utf-8")
    farm.write_text(text.replace('name = "', f'name = "{"".join(MARKS)}x'), encoding="utf-8")
    main([command[0], str(farm), *command[1:]])
    out, said = capsys.readouterr()
    assert [mark for mark in MARKS if mark in out + said] == []


def printed_to(out: str, *arguments: str, encoding: str = "utf-8") -> tuple[int, str]:
    """Exit code and messages of a command whose results go to a file or device."""
    with open(out, "wb") as stream:
        done = subprocess.run(
            [sys.executable, "-m", "farmbook", *arguments],
            env=environment() | {"PYTHONIOENCODING": encoding},
            stdout=stream,
            stderr=subprocess.PIPE,
            check=False,
            timeout=60,
        )
    return done.returncode, done.stderr.decode()


WHAT = (
    ["show", str(SCENARIO)],
    ["show", str(SCENARIO), "--all"],
    ["explain", str(SCENARIO), "farm.labour_rate"],
    ["schema"],
    ["--help"],
    ["--version"],
)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
@pytest.mark.parametrize("arguments", WHAT, ids=lambda arguments: arguments[0])
def test_a_full_device(arguments: list[str]) -> None:
    assert printed_to("/dev/full", *arguments) == (1, "error: the output cannot be written: the disk is full\n")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_full_device_for_messages_leaves_the_exit_code(tmp_path: Path) -> None:
    with open("/dev/full", "wb") as full:
        for arguments, code in ((["check", str(SCENARIO)], 1), (["check", "none.toml"], 1), (["schema"], 0)):
            command = [sys.executable, "-m", "farmbook", *arguments]
            done = subprocess.run(
                command, cwd=tmp_path, env=environment(), stdout=subprocess.PIPE, stderr=full, check=False
            )
            assert done.returncode == code


@pytest.mark.parametrize("arguments", WHAT, ids=lambda arguments: arguments[0])
def test_a_closed_pipe(arguments: list[str]) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [sys.executable, "-m", "farmbook", *arguments],
        env=environment(),
        stdout=writing,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(writing)
    words = b"error: the output cannot be written: the program that was to read it has ended\n"
    assert (done.returncode, done.stderr) == (1, words)


def test_an_output_that_is_closed() -> None:
    command = f"exec '{sys.executable}' -m farmbook show '{SCENARIO}' >&-"
    done = subprocess.run(["sh", "-c", command], env=environment(), stderr=subprocess.PIPE, check=False)
    assert (done.returncode, done.stderr) == (1, b"error: the output cannot be written: it is closed\n")


@pytest.mark.parametrize("form", ["--csv", "--json"])
def test_an_encoding_that_lacks_a_letter(form: str, tmp_path: Path) -> None:
    farm = farm_named("Ahorn aus \u00dcberlingen", tmp_path)
    out = tmp_path / "out.txt"
    code, said = printed_to(str(out), "show", str(farm), form, encoding="ascii")
    assert code == 1
    assert said == (
        "error: the output cannot be written: its encoding, ascii, has no letter U+00DC\n\n"
        "hint: set PYTHONIOENCODING=utf-8 and run it again\n"
    )
    assert out.read_bytes() == b""
    assert printed_to(str(out), "show", str(farm), form) == (0, "")
    assert "\u00dcberlingen" in out.read_text(encoding="utf-8")


def test_a_message_is_never_lost_to_the_encoding(tmp_path: Path) -> None:
    code, said = printed_to(os.devnull, "check", str(tmp_path / "\u00dcber.toml"), encoding="ascii")
    assert code == 1
    assert said.endswith("\\xdcber.toml` does not exist\n")
