"""Strange files where a workbook is looked for: told apart in bounded time and memory, without an error."""

from __future__ import annotations

import bz2
import io
import os
import tracemalloc
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from farmbook.workbook.fingerprint import is_workbook, unedited
from tests.workbook.shipped import ShippedBook

MB = 2**20


@pytest.fixture
def book(books: Mapping[str, ShippedBook]) -> bytes:
    """A built workbook."""
    return books["kestrel_hollow"].path.read_bytes()


def judged(content: bytes, folder: Path) -> tuple[bool, bool]:
    """Whether it is an unedited farmbook workbook, and whether it is a workbook at all."""
    path = folder / "strange.xlsx"
    path.write_bytes(content)
    return unedited(path), is_workbook(path)


def test_a_built_book_is_both_and_an_edited_one_a_workbook(book: bytes, tmp_path: Path) -> None:
    assert judged(book, tmp_path) == (True, True)
    assert judged(with_part(book, "docProps/app.xml", b"<edited/>"), tmp_path) == (False, True)


def with_part(book: bytes, name: str, content: bytes, packing: int = zipfile.ZIP_DEFLATED) -> bytes:
    """The book with one part in place of its own."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(book)) as before, zipfile.ZipFile(target, "w", packing) as after:
        for part in before.namelist():
            after.writestr(part, content if part == name else before.read(part))
    return target.getvalue()


def damaged(book: bytes, step: int) -> Iterator[bytes]:
    """Copies with one byte changed, one place after the other from end to end."""
    for place in range(0, len(book), step):
        yield book[:place] + bytes([book[place] ^ 0x55]) + book[place + 1 :]


def test_no_single_byte_changed_raises(book: bytes, tmp_path: Path) -> None:
    found = {judged(content, tmp_path) for content in damaged(book, len(book) // 150)}
    assert (False, True) in found


def test_every_byte_of_the_list_of_parts(book: bytes, tmp_path: Path) -> None:
    start = book.rindex(b"PK\x01\x02")
    found = {
        judged(book[:place] + bytes([book[place] ^ 0x55]) + book[place + 1 :], tmp_path)
        for place in range(start, len(book))
    }
    assert found <= {(False, False), (False, True), (True, True)}
    assert (False, False) in found


@pytest.mark.parametrize("share", [0.0, 0.1, 0.5, 0.9, 0.999])
def test_a_book_cut_short_is_no_workbook(book: bytes, share: float, tmp_path: Path) -> None:
    assert judged(book[: int(len(book) * share)], tmp_path) == (False, False)


def lying(book: bytes, name: str, content: bytes, size: int) -> bytes:
    """The book with a part that says it is of another size than it is."""
    whole = bytearray(with_part(book, name, content))
    local, listed = whole.index(name.encode()), whole.rindex(name.encode())
    for place in (local - 30 + 22, listed - 46 + 24):
        whole[place : place + 4] = size.to_bytes(4, "little")
    return bytes(whole)


def peak(content: bytes, folder: Path) -> float:
    """The most memory that judging takes, in MB."""
    tracemalloc.start()
    try:
        judged(content, folder)
        return tracemalloc.get_traced_memory()[1] / MB
    finally:
        tracemalloc.stop()


@pytest.mark.parametrize("name", ["docProps/custom.xml", "[Content_Types].xml", "xl/styles.xml"])
def test_a_part_that_lies_of_its_size_takes_no_memory(book: bytes, name: str, tmp_path: Path) -> None:
    bomb = lying(book, name, b" " * (200 * MB), 1000)
    assert peak(bomb, tmp_path) < 10 + 2 * len(bomb) / MB
    assert not judged(bomb, tmp_path)[0]


def test_a_part_packed_in_another_way_is_not_read(book: bytes, tmp_path: Path) -> None:
    bomb = with_part(book, "docProps/custom.xml", b"0" * (60 * MB), zipfile.ZIP_BZIP2)
    assert len(bz2.compress(b"0" * 60 * MB)) < 1000
    assert peak(bomb, tmp_path) < 10
    assert judged(bomb, tmp_path) == (False, False)


def test_a_book_larger_than_any_is_not_read(book: bytes, tmp_path: Path) -> None:
    assert judged(with_part(book, "xl/styles.xml", b" " * (101 * MB)), tmp_path) == (False, False)
    path = tmp_path / "long.xlsx"
    path.write_bytes(book)
    os.truncate(path, 10 * 2**30)
    assert (unedited(path), is_workbook(path)) == (False, False)


def test_an_archive_of_something_else_is_no_workbook(tmp_path: Path) -> None:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        archive.writestr("letter.txt", "spreadsheetml.sheet.main+xml")
    assert judged(target.getvalue(), tmp_path) == (False, False)


def test_what_is_no_file_is_not_opened(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.xlsx"
    os.mkfifo(pipe)
    for path in (pipe, tmp_path, Path("/dev/zero"), tmp_path / "none.xlsx", tmp_path / ("x" * 300)):
        assert (unedited(path), is_workbook(path)) == (False, False)
