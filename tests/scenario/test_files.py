"""Files that cannot be read: the reason in plain words, never a library's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from farmbook.errors import FileProblem, visible
from farmbook.scenario.load import load
from tests.scenario.bakery import GOOD, MODEL, loaded, written


def reason(path: Path) -> str:
    with pytest.raises(FileProblem) as caught:
        load(path, MODEL)
    assert str(caught.value) == f"`{visible(caught.value.path)}` {caught.value.reason}"
    return caught.value.reason


def test_a_missing_file_is_compared_with_those_of_its_folder(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "oak_lane.toml")
    assert reason(tmp_path / "oak_lain.toml") == "does not exist; did you mean `oak_lane.toml`?"
    assert reason(tmp_path / "oak_lane") == "does not exist; did you mean `oak_lane.toml`?"
    assert reason(tmp_path / "zzz.toml") == "does not exist"
    assert reason(tmp_path / "no_folder" / "oak_lane.toml") == "does not exist"
    assert reason(tmp_path / "oak_lane.toml" / "inside.toml") == "does not exist"
    assert reason(Path("no\0such.toml")) == "does not exist"


def test_a_folder_is_not_a_file(tmp_path: Path) -> None:
    assert reason(tmp_path) == "is a folder, not a scenario file"


def test_a_device_is_not_read() -> None:
    assert reason(Path("/dev/zero")) == "is not a file that can be read"


@pytest.mark.parametrize(
    ("fault", "words"),
    [(PermissionError(13, "x"), "may not be read: permission is denied"), (OSError(5, "x"), "cannot be read")],
)
def test_an_unreadable_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: OSError, words: str) -> None:
    path = written(tmp_path, GOOD)

    def refuse(*_: object, **__: object) -> None:
        raise fault

    monkeypatch.setattr(Path, "open", refuse)
    assert reason(path) == words


WORKBOOK = (
    "is a workbook, not a scenario file; give the scenario file (.toml) that it was built from, or write one with "
    "`farmbook read BOOK.xlsx --out FILE.toml`"
)


def test_too_long_a_name(tmp_path: Path) -> None:
    assert reason(tmp_path / ("x" * 5000)) == "cannot be read"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "is empty"),
        (b" \n\t\n", "is empty"),
        (b"# only a remark\n", "is empty but for remarks"),
        (b'units = "us"\nname = "caf\xe9"\n', "is not UTF-8 text (line 2); save it again with the encoding UTF-8"),
        (b"\xff\xfeu\0n\0", "is not UTF-8 text (line 1); save it again with the encoding UTF-8"),
        (b"PK\x03\x04 and then xl/workbook.xml", WORKBOOK),
        (b"PK\x03\x04 and then xl/workbook.xml" + b"x" * 1_000_001, WORKBOOK),
        (b"PK\x03\x04mimetypeapplication/vnd.oasis.opendocument.spreadsheet", WORKBOOK),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", WORKBOOK),
        (b"PK\x03\x04 of pictures\n\xff", "is not UTF-8 text (line 2); save it again with the encoding UTF-8"),
        (b"#" * 1_000_001, "is larger than 1 MB, far more than a scenario needs"),
        (b"a = " + b"[" * 5000, "is nested deeper than 6 tables"),
        (b"[a.b.c.d.e.f.g]\nx = 1", "is nested deeper than 6 tables"),
        (b"a = [[[[[[[1]]]]]]]", "is nested deeper than 6 tables"),
        (b".".join([b"a"] * 300_000) + b" = 1", "is nested deeper than 6 tables"),
    ],
)
def test_content_that_is_no_scenario(tmp_path: Path, content: bytes, words: str) -> None:
    path = tmp_path / "oak_lane.toml"
    path.write_bytes(content)
    assert reason(path) == words


LEFT_OVER = 'something is left over after the value; a number with its unit goes in quotes, as in "5 lb"'
TWICE = "a key or a table is given twice"
OPEN_TEXT = "a text is not closed by its quotation mark on the same line"
COMMAS = "a number is written without commas: 1200 for a thousand and more, 0.55 for parts of one"
NO_DATE = "there is no such date"
TWO_DIGITS = "in a date the month and the day have two digits each, as in 2026-03-01"
NO_TIME = "there is no such time of day"
POINT = "a digit stands before the point, as in 0.5"
NOUGHT = "a number does not begin with 0, unless a point follows it"
BACKSLASH = "a backslash in a text in double quotation marks is written twice"


@pytest.mark.parametrize(
    ("content", "place", "words"),
    [
        ("price = 48 USD/ton", "at line 1, column 12", LEFT_OVER),
        ("x = 1\nshare = 55%", "at line 2, column 11", LEFT_OVER),
        (
            "price = USD 48",
            "at line 1, column 9",
            "no value can be read here; texts, and numbers with a unit, go in quotes",
        ),
        ("units", "at the end of the file", "a key is followed by = and its value"),
        ("x = 1\nx = 2\ny = 3", "at line 2, column 6", TWICE),
        ("[farm]\n[farm]\nx = 1", "at line 2, column 6", TWICE),
        ("a = {b = 1, b = 2}", "at line 1, column 18", TWICE),
        ("[farm\nx = 1", "at line 1, column 6", "the heading of a table is not closed by ]"),
        ("a = [1, 2", "at the end of the file", "a list is not closed by ]"),
        ("a = {b = 1", "at the end of the file", "a table in braces is not closed by } on the same line"),
        ('a = "x\ny"', "at line 1, column 7", OPEN_TEXT),
        ("a = 'x", "at the end of the file", OPEN_TEXT),
        ('a = "x\x07"', "at line 1, column 7", "a control character stands in a text"),
        ("# \x07", "at line 1, column 3", "a control character stands in a remark"),
        (r'a = "C:\dir"', "at line 1, column 10", BACKSLASH),
        ("a = 2026-02-30", "at line 1, column 5", "there is no such date"),
        ("x = 1\na = 0,11", "at line 2, column 6", COMMAS),
        ("a = 1.200,50", "at line 1, column 10", COMMAS),
        ("a = {value = 0,11, basis = 'guess'}", "at line 1, column 18", COMMAS),
        ("a = {value = 0,11}", "at line 1, column 18", COMMAS),
        ("a = 2026-13-01", "at line 1, column 9", NO_DATE),
        ("a = 2026-3-1", "at line 1, column 9", TWO_DIGITS),
        ("a = 2026-03-1", "at line 1, column 9", TWO_DIGITS),
        ("a = {value = 2026-13-01}", "at line 1, column 18", NO_DATE),
        ("a = 2026-03-01 and more", "at line 1, column 16", LEFT_OVER),
        ("a = 25:10:00", "at line 1, column 7", NO_TIME),
        ("a = 2:45", "at line 1, column 6", 'hours and minutes go in quotes with their unit, as in "2:45 h"'),
        ("a = 17:00 # h", "at line 1, column 7", 'hours and minutes go in quotes with their unit, as in "2:45 h"'),
        ("a = 2:75", "at line 1, column 6", NO_TIME),
        ("a = .5", "at line 1, column 5", POINT),
        ("a = 05", "at line 1, column 6", NOUGHT),
        ("= 1", "at line 1, column 1", "neither the heading of a table nor a key with its value stands here"),
        ("a.? = 1", "at line 1, column 3", "no key can be read here"),
    ],
)
def test_what_is_not_toml_is_told_with_its_place(tmp_path: Path, content: str, place: str, words: str) -> None:
    assert reason(written(tmp_path, content)) == f"is not valid TOML {place}: {words}"


def test_a_byte_order_mark_is_let_pass(tmp_path: Path) -> None:
    path = tmp_path / "oak_lane.toml"
    path.write_bytes(b"\xef\xbb\xbf" + GOOD.encode())
    assert load(path, MODEL).currency == "EUR"


def test_line_ends_of_either_kind(tmp_path: Path) -> None:
    path = tmp_path / "oak_lane.toml"
    path.write_bytes(GOOD.replace("\n", "\r\n").encode())
    assert load(path, MODEL).currency == "EUR"


def test_the_digest_follows_the_bytes_of_the_file(tmp_path: Path) -> None:
    first, again, other = loaded(tmp_path), loaded(tmp_path), loaded(tmp_path, GOOD + "# remark\n")
    assert first.digest == again.digest != other.digest
    assert len(first.digest) == 12
    assert int(first.digest, 16) >= 0
