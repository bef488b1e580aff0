"""What no file of the repository may say: paths of one machine, registry hosts, and how it came to be written."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from tests.repository.source_files import ROOT

# Each phrase is written in two halves, so that this file does not hold it.
PLACES = (
    "/wo" + "rk/",
    "/opt" + "/fb",
    "/tm" + "p/",
    "/ro" + "ot/",
    "/ho" + "me/",
    "/Us" + "ers/",
    "C:" + "\\Users",
    ".." + "/shared",
)
HOSTS = (
    "pyp" + "i.org",
    "python" + "hosted.org",
    "npm" + "js.",
    "crates" + ".io",
    "anaconda" + ".org",
    "rubygems" + ".org",
    "golang" + ".org",
    "hugging" + "face",
    "maven" + ".org",
)
WORDS = (
    "seed " + "document",
    "tran" + "script",
    "ses" + "sions",
    "this ses" + "sion",
    "assist" + "ant",
    "sub-" + "agent",
    "sub" + "agent",
    "artificial " + "intelligence",
    "language " + "model",
    "chat" + "bot",
)
IN_CAPITALS = ("A" + "I", "LL" + "M", "LL" + "Ms")
"""Whole words, and only in capitals."""

PATTERN = re.compile(
    "|".join(
        [
            *(re.escape(phrase) for phrase in (*PLACES, *HOSTS)),
            *(rf"\b{re.escape(phrase)}" for phrase in WORDS),
            *(rf"(?-i:\b{word}\b)" for word in IN_CAPITALS),
        ]
    ),
    re.IGNORECASE,
)


def repository_files(root: Path) -> list[Path]:
    """The files that belong to the repository: tracked, or new and not ignored; without git, every file."""
    git = shutil.which("git")
    if git and (root / ".git").exists():
        command = [git, "-C", str(root), "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
        listed = subprocess.run(command, capture_output=True, check=True, timeout=60).stdout
        paths = [root / name.decode() for name in listed.split(b"\0") if name]
    else:
        paths = [path for path in root.rglob("*") if not any(part.startswith(".") for part in path.parts)]
    return [path for path in paths if path.is_file()]


def texts(paths: Iterable[Path]) -> Iterator[tuple[Path, str]]:
    """The files that are text, with what they say."""
    for path in paths:
        content = path.read_bytes()
        if b"\0" not in content:
            yield path, content.decode("utf-8", errors="replace")


def faults(root: Path) -> list[str]:
    """Every place where a file says, or is called, what it may not."""
    found = []
    paths = repository_files(root)
    for path in paths:
        name = path.relative_to(root).as_posix()
        found += [f"{name}: called `{match[0]}`" for match in PATTERN.finditer(name)]
    for path, text in texts(paths):
        for number, line in enumerate(text.splitlines(), 1):
            found += [f"{path.relative_to(root).as_posix()}:{number}: `{match[0]}`" for match in PATTERN.finditer(line)]
    return found


def test_no_file_says_where_or_how_it_was_written() -> None:
    files = repository_files(ROOT)
    assert ROOT / "pyproject.toml" in files
    assert Path(__file__).resolve() in files
    assert faults(ROOT) == []


@pytest.mark.parametrize("phrase", [*PLACES, *HOSTS, *WORDS, *IN_CAPITALS, "TRAN" + "SCRIPTS"])
def test_each_phrase_is_caught(tmp_path: Path, phrase: str) -> None:
    (tmp_path / "notes.md").write_text(f"first line\nsee {phrase} for more\n", encoding="utf-8")
    assert [fault.partition(": ")[0] for fault in faults(tmp_path)] == ["notes.md:2"]


def test_ordinary_words_and_binary_files_pass(tmp_path: Path) -> None:
    plain = 'scope="session", tools, air, aim, MAIN, domain, said, a work folder: out/work\n'
    (tmp_path / "notes.md").write_text(plain, encoding="utf-8")
    (tmp_path / "book.xlsx").write_bytes(b"PK\0\0tr" + b"anscript")
    assert faults(tmp_path) == []


def test_a_name_of_a_file_is_caught(tmp_path: Path) -> None:
    (tmp_path / ("tran" + "script.md")).write_text("plain\n", encoding="utf-8")
    assert len(faults(tmp_path)) == 1
