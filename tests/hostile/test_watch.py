"""The watch sees what it is there to see."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.hostile import watch as watching
from tests.hostile.watch import raw_text, watch

GREEDY = "import time; held = bytearray(600 * 2**20); time.sleep(0.5)"
"""Held for long enough to be seen at work: what is told at the end says nothing where the watcher itself has grown as large."""
ENDLESS = "while True: pass"
RAISING = "raise ValueError('x')"


def instead(code: str, monkeypatch: pytest.MonkeyPatch, folder: Path) -> watching.Seen:
    """Watch a program of one line in place of farmbook."""
    (folder / "farmbook.py").write_text(code, encoding="utf-8")
    monkeypatch.setattr(watching, "ROOT", folder)
    return watch([], folder=folder, seconds=2.0)


def test_a_good_run_has_no_fault(tmp_path: Path) -> None:
    seen = watch(["--help"], folder=tmp_path)
    assert (seen.code, seen.faults, seen.err) == (0, [], b"")
    assert seen.out.startswith(b"usage: farmbook")
    assert 5 < seen.peak_mb < 100
    assert 0 < seen.seconds < 20


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (GREEDY, ["MB of memory"]),
        (ENDLESS, ["still running after 2 s"]),
        (RAISING, ["raw text: Traceback", "raw text: ValueError"]),
        ("import sys; sys.exit(3)", ["exit code 3"]),
        ("print(chr(27))", ["raw text: U+001B"]),
        ("import sys; sys.stdout.buffer.write(bytes([255]))", ["output that is not UTF-8"]),
    ],
)
def test_each_fault_is_seen(code: str, words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    faults = instead(code, monkeypatch, tmp_path).faults
    assert [each for each in words if not any(each in fault for fault in faults)] == []
    assert faults


@pytest.mark.parametrize(
    "text", ["zipfile.BadZipFile", "in json_words.py", "[Errno 5] x", "KeyError: 'a'", "Input should be", "a\u202eb"]
)
def test_raw_text_is_recognised(text: str) -> None:
    assert raw_text(text)


def test_plain_words_pass() -> None:
    assert raw_text("error: `farm.toml` does not exist\n\nhint: an error of 5 % is a warning\n") == []
