"""The fingerprint by which farmbook knows its own unedited workbooks: a digest of all parts, kept in a document property."""

from __future__ import annotations

import hashlib
import re
import stat
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Final

__all__ = ["PLACEHOLDER", "PROPERTY", "is_workbook", "parts_of", "sealed", "unedited"]

PROPERTY: Final = "farmbook_fingerprint"
PLACEHOLDER: Final = "0" * 64
_PART: Final = "docProps/custom.xml"
_TYPES: Final = "[Content_Types].xml"
_WORKBOOK: Final = b"spreadsheetml.sheet.main+xml"
_LARGEST: Final = 100 * 2**20
"""Bytes of all parts of a workbook."""
_LARGEST_FILE: Final = 16 * 2**20
"""Bytes of the file, some thirty times what a farm's book has; the list of parts alone of a larger one may fill the memory."""
_PIECE: Final = 2**16
_UNREADABLE: Final = (
    OSError,
    EOFError,
    LookupError,
    OverflowError,
    RuntimeError,
    ValueError,
    struct.error,
    zipfile.BadZipFile,
    zlib.error,
)
"""All that reading a damaged file was seen to raise, and what the reader's code may raise besides."""


def sealed(parts: Mapping[str, bytes]) -> dict[str, bytes]:
    """A workbook's parts by name, with their fingerprint in place of the placeholder; all other bytes of every part stay."""
    digest = _digest((name, (content,)) for name, content in parts.items())
    return {**parts, _PART: parts[_PART].replace(PLACEHOLDER.encode(), digest.encode())}


def unedited(path: Path) -> bool:
    """Whether a file is a farmbook workbook that no program has saved since it was built; never raises for a strange file."""
    return _judged(path, _fits)


def is_workbook(path: Path) -> bool:
    """Whether a file is a workbook (.xlsx), whoever made it; never raises for a strange file."""
    return _judged(path, lambda archive: _WORKBOOK in _content(archive, _TYPES))


def parts_of(path: Path, most: int) -> dict[str, bytes]:
    """The parts of a workbook by name; none for what is no workbook, or holds more bytes; never raises for a strange file."""
    found: dict[str, bytes] = {}

    def read(archive: zipfile.ZipFile) -> bool:
        if sum(part.file_size for part in archive.infolist()) > most or _WORKBOOK not in _content(archive, _TYPES):
            return False
        found.update((name, _content(archive, name)) for name in archive.namelist())
        return True

    return found if _judged(path, read) else {}


def _judged(path: Path, judge: Callable[[zipfile.ZipFile], bool]) -> bool:
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode) or found.st_size > _LARGEST_FILE:
            return False
        with zipfile.ZipFile(path) as archive:
            return _within_bounds(archive) and judge(archive)
    except _UNREADABLE:
        return False


def _within_bounds(archive: zipfile.ZipFile) -> bool:
    """Whether it holds no more than a workbook may, packed in the one way that is read step by step."""
    parts = archive.infolist()
    packings = {part.compress_type for part in parts}
    return packings <= {zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED} and sum(part.file_size for part in parts) <= _LARGEST


def _fits(archive: zipfile.ZipFile) -> bool:
    match = re.search(rb">([0-9a-f]{64})<", _content(archive, _PART))
    return match is not None and match[1].decode() == _digest(
        (name, _pieces(archive, name)) for name in archive.namelist()
    )


def _content(archive: zipfile.ZipFile, name: str) -> bytes:
    return b"".join(_pieces(archive, name))


def _pieces(archive: zipfile.ZipFile, name: str) -> Iterator[bytes]:
    """A part a piece at a time: read in one go, a part that says it is small may still fill the memory."""
    with archive.open(name) as part:
        while piece := part.read(_PIECE):
            yield piece


def _digest(parts: Iterable[tuple[str, Iterable[bytes]]]) -> str:
    """One digest of all parts, in the order of their names, but the one that holds it; each part comes in pieces."""
    total = hashlib.sha256()
    for name, pieces in sorted(parts, key=lambda each: each[0]):
        if name != _PART:
            part = hashlib.sha256()
            for piece in pieces:
                part.update(piece)
            total.update(name.encode() + b"\0" + part.digest())
    return total.hexdigest()
