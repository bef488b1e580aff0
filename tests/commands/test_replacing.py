"""What stands where a workbook is to go: only a workbook ever gives way, and what gives way keeps its place and permissions."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

import farmbook
from farmbook.cli import main
from farmbook.errors import FileProblem
from farmbook.output import save
from farmbook.workbook.fingerprint import unedited
from tests.made import workbook_of

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"


@pytest.fixture(scope="module")
def data() -> bytes:
    """A finished workbook."""
    return workbook_of(SCENARIO)


def refused(data: bytes, path: str | Path, *, replace: bool = False) -> str:
    """Why it is not written, and what to do; nothing new is left in the folder."""
    folder = Path(path).parent
    before = set(folder.iterdir()) if folder.is_dir() else set()
    with pytest.raises(FileProblem) as caught:
        save(data, path, replace=replace)
    assert set(folder.iterdir() if folder.is_dir() else ()) == before
    return f"{caught.value.reason}; {caught.value.hint}"


def test_the_scenario_itself_is_never_replaced(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    farm = tmp_path / "farm.toml"
    farm.write_bytes(SCENARIO.read_bytes())
    assert main(["build", str(farm), "--out", str(farm), "--replace"]) == 1
    assert "is no name for a workbook" in capsys.readouterr().err
    disguised = tmp_path / "farm.xlsx"
    disguised.write_bytes(SCENARIO.read_bytes())
    assert main(["build", str(disguised), "--out", str(disguised), "--replace"]) == 1
    said = capsys.readouterr().err
    assert "exists and is not a workbook, so it was left as it is" in said
    assert "only a workbook is ever overwritten, also with --replace" in said
    assert farm.read_bytes() == disguised.read_bytes() == SCENARIO.read_bytes()


@pytest.mark.parametrize("content", [b"", b"just text", b"PK\x03\x04 not a zip"])
def test_what_is_no_workbook_stays(content: bytes, data: bytes, tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(content)
    assert refused(data, path).startswith("exists and is not an unedited farmbook workbook")
    assert "only a workbook is ever overwritten" in refused(data, path)
    assert refused(data, path, replace=True).startswith("exists and is not a workbook")
    assert path.read_bytes() == content


def test_a_pipe_and_a_device_are_not_opened(data: bytes, tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.xlsx"
    os.mkfifo(pipe)
    device = tmp_path / "zero.xlsx"
    device.symlink_to("/dev/zero")
    for replace in (False, True):
        assert refused(data, pipe, replace=replace).startswith("is a pipe or a device, not a file")
    # the link leads to a name without the ending, which is told first
    assert refused(data, device).startswith("is no name for a workbook")
    assert stat.S_ISFIFO(pipe.stat().st_mode)


@pytest.mark.parametrize("name", ["book", "book.toml", "book.xls", "book.xlsx.bak", ".xlsx.", "book.xlsx "])
def test_another_ending_is_refused(name: str, data: bytes, tmp_path: Path) -> None:
    such = "" if name == ".xlsx." else ", such as book.xlsx; every spreadsheet program opens it"
    assert refused(data, tmp_path / name) == f"is no name for a workbook; give a file name that ends in .xlsx{such}"


def test_another_ending_is_told_before_the_farm_is_worked_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", str(tmp_path / "none.toml"), "--out", str(tmp_path / "book.ods")]) == 1
    assert "is no name for a workbook" in capsys.readouterr().err


def test_capitals_in_the_ending_are_let_pass(data: bytes, tmp_path: Path) -> None:
    save(data, tmp_path / "BOOK.XLSX")
    assert unedited(tmp_path / "BOOK.XLSX")


def test_the_name_of_a_folder_is_refused(data: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["build", str(SCENARIO), "--out", f"{tmp_path}/book.xlsx/"]) == 1
    assert "is the name of a folder, not of a file" in capsys.readouterr().err
    (tmp_path / "folder.xlsx").mkdir()
    assert refused(data, tmp_path / "folder.xlsx").startswith("is a folder, not a file")
    assert main(["new", f"{tmp_path}/farm.toml/"]) == 1
    assert [path.name for path in tmp_path.iterdir()] == ["folder.xlsx"]


def test_a_link_is_followed(data: bytes, tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    real, link = tmp_path / "kept" / "real.xlsx", tmp_path / "link.xlsx"
    link.symlink_to(Path("kept") / "real.xlsx")
    for _ in range(2):  # first where the link leads to nothing yet, then over the book
        save(data, link)
        assert link.is_symlink()
        assert unedited(real)
    real.write_bytes(b"somebody's own")
    assert refused(data, link).startswith("exists and is not an unedited farmbook workbook")
    assert real.read_bytes() == b"somebody's own"


def test_links_in_a_circle(data: bytes, tmp_path: Path) -> None:
    (tmp_path / "a.xlsx").symlink_to("b.xlsx")
    (tmp_path / "b.xlsx").symlink_to("a.xlsx")
    assert refused(data, tmp_path / "a.xlsx") == "cannot be written: its links lead in a circle; "


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o664, 0o755])
def test_permissions_are_kept(mode: int, data: bytes, tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    save(data, path)
    path.chmod(mode)
    save(data, path)
    assert stat.S_IMODE(path.stat().st_mode) == mode


def test_a_new_book_has_the_permissions_of_new_files(data: bytes, tmp_path: Path) -> None:
    plain = tmp_path / "plain.txt"
    plain.write_text("x", encoding="utf-8")
    save(data, tmp_path / "book.xlsx")
    assert (tmp_path / "book.xlsx").stat().st_mode == plain.stat().st_mode


@pytest.mark.parametrize("replace", [False, True])
def test_a_book_that_may_only_be_read_stays(replace: bool, data: bytes, tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    save(data, path)
    path.chmod(0o444)
    said = refused(data, path, replace=replace)
    assert said == "may only be read, so it was left as it is; give another name, or permit writing to it"


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("x" * 300 + ".xlsx", "cannot be written: its name is too long"),
        ("a\0b.xlsx", "cannot be written: no file can have such a name"),
        ("none/book.xlsx", "cannot be written: its folder does not exist"),
    ],
)
def test_names_that_cannot_be(name: str, words: str, data: bytes, tmp_path: Path) -> None:
    assert refused(data, tmp_path / name) == f"{words}; "
    with pytest.raises(FileProblem):
        farmbook.load(tmp_path / name)


def test_the_longest_name_there_may_be(data: bytes, tmp_path: Path) -> None:
    path = tmp_path / ("x" * 250 + ".xlsx")
    save(data, path)
    assert [each.name for each in tmp_path.iterdir()] == [path.name]


def test_a_name_that_is_not_text(data: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    farm = os.fsdecode(os.fsencode(tmp_path) + b"/farm\xff.toml")
    book = os.fsdecode(os.fsencode(tmp_path) + b"/book\xff.xlsx")
    Path(farm).write_bytes(SCENARIO.read_bytes())
    assert main(["build", farm, "--out", book]) == 0
    assert "book\\uDCFF.xlsx" in capsys.readouterr().err
    assert unedited(Path(book))


@pytest.mark.parametrize("call", ["stat", "open", "replace"])
@pytest.mark.parametrize(
    ("number", "words"),
    [(13, "permission is denied"), (28, "the disk is full"), (5, "the system does not allow it")],
)
def test_what_the_system_refuses_is_told_in_words(
    call: str, number: int, words: str, data: bytes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise OSError(number, "raw words")

    monkeypatch.setattr(Path if call == "stat" else os, call, refuse)
    with pytest.raises(FileProblem) as caught:
        save(data, tmp_path / "book.xlsx")
    assert caught.value.reason == f"cannot be written: {words}"
    monkeypatch.undo()
    assert list(tmp_path.iterdir()) == []


@contextmanager
def without_privilege() -> Iterator[None]:
    """As a user whom permissions bind."""
    own = os.geteuid()
    if own == 0:
        os.seteuid(65534)  # nobody
    try:
        yield
    finally:
        os.seteuid(own)


def test_a_folder_that_cannot_be_searched(data: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    closed = tmp_path / "closed"
    closed.mkdir()
    closed.chmod(0)
    assert main(["check", str(SCENARIO)]) == 0  # now everything is loaded
    capsys.readouterr()
    with without_privilege():
        assert main(["check", str(closed / "farm.toml")]) == 1
        assert main(["new", str(closed / "farm.toml")]) == 1
        with pytest.raises(FileProblem, match="cannot be written: permission is denied"):
            save(data, closed / "book.xlsx")
    first, second = capsys.readouterr().err.splitlines()
    assert first.endswith("may not be read: permission is denied")
    assert second.endswith("cannot be written: permission is denied")
