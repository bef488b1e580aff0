"""Reading scenario files: the bytes, the TOML, and the chain of files joined by `extends`."""

from __future__ import annotations

import hashlib
import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, Final

from farmbook.errors import FileProblem, visible
from farmbook.scenario.words import closest

__all__ = ["MOST_STEPS", "SourceFile", "bases_of", "check_depth", "digest_of", "read_file"]

MOST_BYTES: Final = 1_000_000
MOST_DEPTH: Final = 6
MOST_STEPS: Final = 8
"""How many files may be joined below a scenario by `extends`."""

_TOO_DEEP: Final = f"is nested deeper than {MOST_DEPTH} tables"
_LONG_DOTTED_KEY: Final = re.compile(r"""(?<![\w-])(?:(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){16}""")
"""A key of so many parts would fill the memory before its depth could be seen."""

_PLACE: Final = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")
_TWICE: Final = "a key or a table is given twice"
_QUOTES: Final = "a text is not closed by its quotation mark on the same line"
_LEFT_OVER: Final = 'something is left over after the value; a number with its unit goes in quotes, as in "5 lb"'
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
    "Invalid date or datetime": "there is no such date",
    "Invalid initial character for a key part": "no key can be read here",
    "Invalid statement": "neither the heading of a table nor a key with its value stands here",
}
"""Start of the reader's message: our own words."""


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
            circle = " -> ".join(f"`{visible(file.path.name)}`" for file in chain)
            raise FileProblem(str(first.path), f"extends itself: {circle} -> `{visible(path.name)}`")
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
    if len(content) > room:
        together = "" if room == MOST_BYTES else "together with the files that extend it "
        raise _UnusableError(f"is {together}larger than 1 MB, far more than a scenario needs")
    if not content.strip():
        raise _UnusableError("is empty")
    return content


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
        raw = tomllib.loads(text, parse_float=_decimal)
    except RecursionError:
        raise _UnusableError(_TOO_DEEP) from None
    except tomllib.TOMLDecodeError as fault:
        raise _UnusableError(_toml_words(str(fault))) from None
    except ValueError:
        raise _UnusableError("holds a number of thousands of digits") from None
    if not raw:
        raise _UnusableError("is empty but for remarks")
    return raw


def _decimal(text: str) -> Decimal:
    """A number with all its digits; one beyond all bounds is infinite, and refused later like any infinite number."""
    try:
        return Decimal(text)
    except InvalidOperation:
        return Decimal("Infinity")


def _toml_words(message: str) -> str:
    match = _PLACE.search(message)
    place = f"at line {match[1]}, column {match[2]}" if match and match[1] else "at the end of the file"
    words = next(
        (words for start, words in _TOML_WORDS.items() if message.startswith(start)), "the line cannot be read"
    )
    return f"is not valid TOML {place}: {words}"


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
