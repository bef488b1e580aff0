"""Reading scenario files: the bytes, the TOML, and the chain of files joined by `extends`."""

from __future__ import annotations

import hashlib
import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from farmbook.errors import FileProblem, visible
from farmbook.scenario.quantity import COMMAS, decimal_of
from farmbook.scenario.words import closest

__all__ = ["MOST_STEPS", "SourceFile", "bases_of", "check_depth", "digest_of", "read_file"]

MOST_BYTES: Final = 1_000_000
MOST_DEPTH: Final = 6
MOST_COLUMNS: Final = 10_000
MOST_STEPS: Final = 8
"""How many files may be joined below a scenario by `extends`."""

_TOO_DEEP: Final = f"is nested deeper than {MOST_DEPTH} tables"
_LONG_DOTTED_KEY: Final = re.compile(r"""(?<![\w-])(?:(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){16}""")
"""A key of so many parts would fill the memory before its depth could be seen."""

_PLACE: Final = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")
_TWICE: Final = "a key or a table is given twice"
_QUOTES: Final = "a text is not closed by its quotation mark on the same line"
_LEFT_OVER: Final = 'something is left over after the value; a number with its unit goes in quotes, as in "5 lb"'
_NO_DATE: Final = "there is no such date"
_TWO_DIGITS: Final = "in a date the month and the day have two digits each, as in 2026-03-01"
_TOML_WORDS: Final = {
    "Expected newline or end of document": _LEFT_OVER,
    "Invalid value": "no value can be read here; texts, and numbers with a unit, go in quotes",
    "Expected '=' after a key": "a key is followed by = and its value",
    "Cannot overwrite": _TWICE,
    "Cannot declare": _TWICE,
    "Cannot redefine": _TWICE,
    "Cannot mutate": _TWICE,
    "Duplicate inline table key": _TWICE,
    "Expected ']": "the heading of a table is not closed by ]",
    "Unclosed array": "a list is not closed by ]",
    "Unclosed inline table": "a table in braces is not closed by } on the same line",
    "Unterminated string": _QUOTES,
    "Expected \"'": _QUOTES,
    "Expected '\"": _QUOTES,
    "Illegal character '\\n'": _QUOTES,
    "Illegal character": "a control character stands in a text",
    "Found invalid character": "a control character stands in a remark",
    "Unescaped '\\'": "a backslash in a text in double quotation marks is written twice",
    "Invalid hex value": "a backslash in a text in double quotation marks is written twice",
    "Escaped character": "a backslash in a text in double quotation marks is written twice",
    "Invalid date or datetime": _NO_DATE,
    "Invalid initial character for a key part": "no key can be read here",
    "Invalid statement": "neither the heading of a table nor a key with its value stands here",
}
"""Start of the reader's message: our own words."""
_SLIPS: Final = {
    re.compile(r"=\s*[+-]?[0-9.]+,[0-9.]+\s*[,}]?"): COMMAS,
    re.compile(r"=\s*[0-9]{4}-(?:[0-9]|[0-9]{2}-[0-9])(?![0-9])[-0-9]*"): _TWO_DIGITS,
    re.compile(r"=\s*[0-9]{4}-[0-9]{2}-[0-9]{2}"): _NO_DATE,
    re.compile(
        r"=\s*[0-9]{1,3}:[0-5][0-9](?![:0-9])"
    ): 'hours and minutes go in quotes with their unit, as in "2:45 h"',
    re.compile(r"=\s*[0-9]{1,2}:[0-9]{1,2}"): "there is no such time of day",
    re.compile(r"=\s*[+-]?\.[0-9]"): "a digit stands before the point, as in 0.5",
    re.compile(r"=\s*[+-]?0[0-9]+"): "a number does not begin with 0, unless a point follows it",
}
"""Ways of writing a value that people are used to and TOML does not have: what to say of each."""
_LONG_NUMBER: Final = re.compile(r"(?<![0-9_])[0-9_]{1000,}")


@dataclass(frozen=True)
class SourceFile:
    """One file as read. `shown` names it to the user: an empty text for the scenario's own file."""

    path: Path
    shown: str
    raw: Mapping[str, Any]
    content: bytes


def bases_of(first: SourceFile) -> list[SourceFile]:
    """The file and those it extends, itself first.

    Raises FileProblem for a missing file, a cycle, and a chain of too many files or of too many bytes in all.
    """
    chain = [first]
    seen = [_resolved(first.path)]
    while isinstance(named := chain[-1].raw.get("extends"), str) and named.strip():
        last = chain[-1]
        path = last.path.parent / named
        if _resolved(path) in seen:
            circle = " -> ".join(f"`{visible(step.name)}`" for step in [*(file.path for file in chain), path])
            raise FileProblem(str(first.path), f"extends itself: {circle}")
        if len(chain) > MOST_STEPS:
            raise FileProblem(str(first.path), f"extends more than {MOST_STEPS} files, one through the other")
        seen.append(_resolved(path))
        room = MOST_BYTES - sum(len(file.content) for file in chain)
        chain.append(read_file(path, shown=named, named_in=last.path.name, room=room))
    return chain


def digest_of(files: Iterable[SourceFile]) -> str:
    """Twelve hexadecimal digits that change when any byte of the files does."""
    total = hashlib.sha256()
    for file in files:
        total.update(file.content)
    return total.hexdigest()[:12]


def read_file(path: Path, *, shown: str = "", named_in: str = "", room: int = MOST_BYTES) -> SourceFile:
    """Read one file of at most so many bytes; `named_in` is the file that extends it.

    Raises FileProblem with the reason in plain words.
    """
    try:
        content = _bytes(path, room)
        raw = _parsed(_decoded(content))
        check_depth(raw)
    except _UnusableError as reason:
        tail = f" (`{visible(named_in)}` extends it)" if named_in else ""
        raise FileProblem(str(path), f"{reason}{tail}") from None
    return SourceFile(path, shown, raw, content)


class _UnusableError(Exception):
    """Why a file cannot be used."""


def _resolved(path: Path) -> Path:
    try:
        return path.resolve()
    except (OSError, ValueError, RuntimeError):
        return path


def _bytes(path: Path, room: int) -> bytes:
    try:
        if not path.exists():
            raise _UnusableError("does not exist" + _near(path))
        if path.is_dir():
            raise _UnusableError("is a folder, not a scenario file")
        if not path.is_file():
            raise _UnusableError("is not a file that can be read")
        with path.open("rb") as stream:
            content = stream.read(max(room, 0) + 1)
    except PermissionError:
        raise _UnusableError("may not be read: permission is denied") from None
    except (OSError, ValueError):
        raise _UnusableError("cannot be read") from None
    if _is_workbook(content):
        raise _UnusableError(
            "is a workbook, not a scenario file; give the scenario file (.toml) that it was built from, or write one with "
            "`farmbook read BOOK.xlsx --out FILE.toml`"
        )
    if len(content) > room:
        together = "" if room == MOST_BYTES else "together with the files that extend it "
        raise _UnusableError(f"is {together}larger than 1 MB, far more than a scenario needs")
    if not content.strip():
        raise _UnusableError("is empty")
    return content


def _is_workbook(content: bytes) -> bool:
    """Whether these are the first bytes of a file of a spreadsheet program, old or new."""
    packed = content.startswith(b"PK\x03\x04") and (b"xl/" in content or b"opendocument.spreadsheet" in content)
    return packed or content.startswith(b"\xd0\xcf\x11\xe0")


def _near(path: Path) -> str:
    """The file of the same folder that was probably meant."""
    try:
        names = [other.name for other in path.parent.glob("*.toml")]
    except (OSError, ValueError):
        return ""
    near = closest(path.name, names)
    return f"; did you mean `{visible(near)}`?" if near else ""


def _decoded(content: bytes) -> str:
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        row = content.count(b"\n", 0, fault.start) + 1
        raise _UnusableError(f"is not UTF-8 text (line {row}); save it again with the encoding UTF-8") from None


def _parsed(text: str) -> dict[str, Any]:
    if _LONG_DOTTED_KEY.search(text):
        raise _UnusableError(_TOO_DEEP)
    try:
        raw = _tables(text)
    except RecursionError:
        raise _UnusableError(_TOO_DEEP) from None
    except tomllib.TOMLDecodeError as fault:
        raise _UnusableError(_toml_words(str(fault), text)) from None
    if not raw:
        raise _UnusableError("is empty but for remarks")
    return raw


def _tables(text: str) -> dict[str, Any]:
    """The tables of a file. Python reads no number of thousands of digits, and no such number is of use: it is cut.

    What is left is still too large for any field, so that it is told of with its place.
    """
    try:
        return tomllib.loads(text, parse_float=decimal_of)
    except tomllib.TOMLDecodeError:
        raise
    except ValueError:
        return tomllib.loads(_LONG_NUMBER.sub(lambda run: run[0][:999].rstrip("_"), text), parse_float=decimal_of)


def _toml_words(message: str, text: str) -> str:
    match = _PLACE.search(message)
    if match is None or match[1] is None:
        return f"is not valid TOML at the end of the file: {_words_for(message)}"
    row, column = int(match[1]), int(match[2])
    words = _slip(text.split("\n")[row - 1], column - 1) or _words_for(message)
    return f"is not valid TOML at line {row}, column {column}: {words}"


def _words_for(message: str) -> str:
    return next((words for start, words in _TOML_WORDS.items() if message.startswith(start)), "the line cannot be read")


def _slip(row: str, column: int) -> str:
    """What to say of a value at this place that is written in a way that TOML does not have; empty for another fault."""
    found = (
        words
        for pattern, words in _SLIPS.items()
        if any(match.start() <= column < match.end() for match in pattern.finditer(row[:MOST_COLUMNS]))
    )
    return next(found, "")


def check_depth(raw: Mapping[str, Any], path: str = "") -> None:
    """Refuse tables nested too deep, without recursion; raises FileProblem if a path is given."""
    level: list[Any] = [raw]
    for _ in range(MOST_DEPTH + 1):
        level = [child for item in level for child in _children(item)]
    if any(isinstance(item, (Mapping, list)) for item in level):
        raise FileProblem(path, _TOO_DEEP) if path else _UnusableError(_TOO_DEEP)


def _children(item: Any) -> list[Any]:
    if isinstance(item, Mapping):
        return list(item.values())
    return list(item) if isinstance(item, list) else []
