"""Damaged copies of a built workbook, and what is no workbook at all, each put where a workbook is to be written."""

from __future__ import annotations

import io
import os
import random
import socket
import zipfile
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Final

__all__ = ["DAMAGES", "Damage"]

Damage = Callable[[random.Random, bytes, Path], None]
"""Puts something at a path, made from a sound workbook."""

BOMB_MB: Final = 700
FIELDS: Final = {b"PK\x03\x04": (4, 6, 8, 14, 18, 22, 26, 28), b"PK\x01\x02": (6, 8, 10, 16, 20, 24, 28, 30, 32, 42)}
"""The two records a zip archive keeps of each part, and where in them versions, flags, packing, checks, sizes and places stand."""
HEADS: Final = (
    b"%PDF-1.7\n",
    b"\x89PNG\r\n\x1a\n",
    b"\x1f\x8b\x08\x00",
    b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
    b"7z\xbc\xaf'\x1c",
    b"#!/bin/sh\n",
    b'units = "us"\n',
    b"PK\x05\x06",
    b"",
)


def flipped(chance: random.Random, book: bytes, path: Path) -> None:
    """A few bytes changed anywhere."""
    content = bytearray(book)
    for _ in range(chance.choice((1, 1, 2, 20, 500))):
        content[chance.randrange(len(content))] ^= chance.randrange(1, 256)
    path.write_bytes(content)


def cut(chance: random.Random, book: bytes, path: Path) -> None:
    """The end, the start or a piece within missing, or a piece twice."""
    start, end = sorted(chance.sample(range(len(book)), 2))
    ways = (book[:start], book[start:], book[:start] + book[end:], book[:end] + book[start:])
    path.write_bytes(chance.choice(ways))


def lying(chance: random.Random, book: bytes, path: Path) -> None:
    """Records of parts with sizes, places, packings or flags that are not so."""
    content = bytearray(book)
    for _ in range(chance.randrange(1, 5)):
        mark, fields = chance.choice(list(FIELDS.items()))
        places = [place for place in range(len(book) - 46) if book.startswith(mark, place)]
        at = chance.choice(places) + chance.choice(fields)
        number = chance.choice((0, 1, 0xFFFF, 0x7FFFFFFF, 0xFFFFFFFE, 0xFFFFFFFF, chance.randrange(2**32)))
        width = chance.choice((2, 4))
        content[at : at + width] = (number % 2 ** (8 * width)).to_bytes(width, "little")
    path.write_bytes(content)


@cache
def bombed(book: bytes, name: str, packing: int) -> bytes:
    """The book with a part that unpacks to far more than the memory a run may take."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(book)) as before, zipfile.ZipFile(target, "w", packing, compresslevel=1) as after:
        for part in before.namelist():
            if part != name:
                after.writestr(part, before.read(part))
        with after.open(name, "w") as stream:
            for _ in range(BOMB_MB):
                stream.write(bytes(2**20))
    return target.getvalue()


def bomb(chance: random.Random, book: bytes, path: Path) -> None:
    """A part of hundreds of megabytes packed into little, which says so or says it is small."""
    name = chance.choice(("docProps/custom.xml", "[Content_Types].xml"))
    packing = chance.choice((zipfile.ZIP_DEFLATED, zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA))
    content = bytearray(bombed(book, name, packing))
    if chance.random() < 0.7:
        size = chance.choice((0, 1, 1000, 100_000)).to_bytes(4, "little")
        local, listed = content.index(name.encode()), content.rindex(name.encode())
        content[local - 8 : local - 4] = content[listed - 22 : listed - 18] = size
    path.write_bytes(content)


def crowded(chance: random.Random, book: bytes, path: Path) -> None:
    """An archive of many small parts, or the book's own parts many times over."""
    with zipfile.ZipFile(path, "w") as archive:
        archive.comment = b"x" * chance.randrange(65536)
        for number in range(chance.choice((1000, 40_000))):
            archive.writestr(f"{number}", b"")


def swapped(chance: random.Random, book: bytes, path: Path) -> None:
    """A sound archive whose parts stand under each other's names, or some missing."""
    with zipfile.ZipFile(io.BytesIO(book)) as before, zipfile.ZipFile(path, "w") as after:
        names = before.namelist()
        for name, other in zip(names, chance.sample(names, len(names)), strict=True):
            if chance.random() < 0.9:
                after.writestr(name, before.read(chance.choice((name, other))))


def another_kind(chance: random.Random, book: bytes, path: Path) -> None:
    """A file of some other kind."""
    path.write_bytes(chance.choice(HEADS) + chance.randbytes(chance.choice((0, 10, 1000, 100_000))))


def endless(chance: random.Random, book: bytes, path: Path) -> None:
    """A file of gigabytes that takes no room, sound at its start or its end."""
    with path.open("wb") as stream:
        if chance.random() < 0.5:
            stream.write(book)
        stream.truncate(chance.choice((2**24 + 1, 2**33)))
        if chance.random() < 0.5:
            stream.seek(0, os.SEEK_END)
            stream.write(book)


def no_file(chance: random.Random, book: bytes, path: Path) -> None:
    """A pipe, a socket, a folder, a device, or a link to one, to nothing or to itself."""
    other = path.with_name("other.xlsx")
    kind = chance.choice(("pipe", "socket", "folder", "full folder", "device", "pipe by link", "nothing", "itself"))
    if kind in ("pipe", "pipe by link"):
        os.mkfifo(other if kind == "pipe by link" else path)
    if kind == "socket":
        with socket.socket(socket.AF_UNIX) as listening:
            listening.bind(os.path.relpath(path))
    if kind in ("folder", "full folder"):
        path.mkdir()
    if kind == "full folder":
        (path / "inside.xlsx").write_bytes(book)
    targets = {"device": "/dev/zero", "pipe by link": other.name, "nothing": other.name, "itself": path.name}
    if kind in targets:
        path.symlink_to(targets[kind])


def guarded(chance: random.Random, book: bytes, path: Path) -> None:
    """A sound book that may only be read, or a link to one."""
    real = path.with_name("other.xlsx") if chance.random() < 0.5 else path
    real.write_bytes(book)
    real.chmod(0o444)
    if real != path:
        path.symlink_to(real.name)


DAMAGES: Final[tuple[Damage, ...]] = (
    flipped,
    cut,
    lying,
    bomb,
    crowded,
    swapped,
    another_kind,
    endless,
    no_file,
    guarded,
)
