"""The fingerprint by which farmbook knows its own unedited workbooks: a digest of all parts, kept in a document property."""

from __future__ import annotations

import hashlib
import io
import re
import zipfile
from pathlib import Path
from typing import Final

__all__ = ["PLACEHOLDER", "PROPERTY", "sealed", "unedited"]

PROPERTY: Final = "farmbook_fingerprint"
PLACEHOLDER: Final = "0" * 64
_PART: Final = "docProps/custom.xml"
_LARGEST: Final = 100 * 2**20


def sealed(data: bytes) -> bytes:
    """The workbook with its fingerprint in place of the placeholder; all other bytes of every part stay."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as before, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as after:
        digest = _digest(before)
        for info in before.infolist():
            part = before.read(info)
            if info.filename == _PART:
                part = part.replace(PLACEHOLDER.encode(), digest.encode())
            after.writestr(info, part)
    return target.getvalue()


def unedited(path: Path) -> bool:
    """Whether a file is a farmbook workbook that no program has saved since it was built; never raises for a strange file."""
    try:
        with zipfile.ZipFile(path) as archive:
            if sum(info.file_size for info in archive.infolist()) > _LARGEST or _PART not in archive.namelist():
                return False
            match = re.search(rb">([0-9a-f]{64})<", archive.read(_PART))
            return match is not None and match[1].decode() == _digest(archive)
    except (OSError, zipfile.BadZipFile, EOFError, NotImplementedError, RuntimeError, ValueError):
        return False


def _digest(archive: zipfile.ZipFile) -> str:
    total = hashlib.sha256()
    for name in sorted(archive.namelist()):
        if name != _PART:
            total.update(name.encode() + b"\0" + hashlib.sha256(archive.read(name)).digest())
    return total.hexdigest()
