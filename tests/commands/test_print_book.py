"""A workbook printed as it was edited: worked out again, its front sheets or all, and the workbook left as it is."""

from __future__ import annotations

import re
import shutil
import subprocess
from itertools import groupby
from pathlib import Path

import pytest

from farmbook.cli import main
from tests.engines import Availability, require
from tests.engines.cells import named_areas, retype
from tests.engines.libreoffice import available
from tests.made import results_of, workbook_of

SCENARIO = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"
ASKS = SCENARIO.parent / "kestrel_second_room.toml"
LENDER = (
    *("Loan request", "The project", "What the plan rests on", "Balance sheet", "Income, cash flow and coverage"),
    *(
        "Cash",
        "All debts",
        "Ratios and what is to be kept",
        "Security",
        "Record",
    ),
    *("Customers, harvests, permits and lease", "Cautions and signature"),
)
MOST_SIDES = 17
"""Of what a lender is handed."""


@pytest.fixture
def programs() -> None:
    """What prints a workbook, and what reads its print."""
    require(available())
    require(Availability(shutil.which("pdftotext") is not None, "there is no program named pdftotext"))


@pytest.fixture
def book(tmp_path: Path) -> Path:
    path = tmp_path / "book.xlsx"
    path.write_bytes(workbook_of(SCENARIO))
    return path


def words(pdf: Path) -> str:
    found = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, timeout=60)
    return found.stdout.decode()


@pytest.mark.usefixtures("programs")
def test_front_sheets_are_printed_as_they_were_edited(book: Path, tmp_path: Path) -> None:
    areas = named_areas(book)
    retype(book, {areas["farm_name"]: "A farm renamed", areas["farm_wage"]: 90})
    stood, pdf = book.read_bytes(), tmp_path / "front.pdf"
    assert main(["print", str(book), "--out", str(pdf)]) == 0
    assert book.read_bytes() == stood
    said = words(pdf)
    assert "A farm renamed" in said
    assert "Start here" in said
    assert "How long does a steam load take" not in said
    before = results_of(SCENARIO)
    assert cost_of_a_weight(said) > float(before.values[before.line("year.money_per_sold")][0]) + 1


def cost_of_a_weight(said: str) -> float:
    found = re.search(r"It costs, in money +\$([\d.]+)", said)
    assert found, said
    return float(found[1])


@pytest.mark.usefixtures("programs")
def test_all_sheets_are_printed_when_asked_for(book: Path, tmp_path: Path) -> None:
    pdf = tmp_path / "all.pdf"
    assert main(["print", str(book), "all", "--out", str(pdf)]) == 0
    assert "How long does a steam load take" in words(pdf)


def test_without_libreoffice_it_says_so(
    book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    assert main(["print", str(book), "--out", str(tmp_path / "a.pdf")]) == 1
    assert "cannot be printed: LibreOffice is not installed" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["book.xlsx"]


@pytest.mark.parametrize(("name", "content"), [("a.pdf", b"%PDF-1.7"), ("a.pdf", b"notes"), ("a.txt", None)])
def test_another_file_is_left_alone(
    name: str, content: bytes | None, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from farmbook.errors import FileProblem
    from farmbook.printing import save_print

    target = tmp_path / name
    if content is not None:
        target.write_bytes(content)
    with pytest.raises(FileProblem, match=r"was left as it is|is no name"):
        save_print(b"%PDF-1.7 new", target)
    assert not target.exists() if content is None else target.read_bytes() == content


@pytest.mark.usefixtures("programs")
def test_what_a_lender_is_handed_is_printed_in_its_order(tmp_path: Path) -> None:
    book, pdf = tmp_path / "book.xlsx", tmp_path / "lender.pdf"
    book.write_bytes(workbook_of(ASKS))
    assert main(["print", str(book), "lender", "--out", str(pdf)]) == 0
    titles = [side.split("\n")[0].split("   ")[0].strip() for side in words(pdf).split("\f") if side.strip()]
    in_order = [title for title, _ in groupby(titles) if title != "If things go badly"]
    assert in_order == list(LENDER)
    assert len(titles) <= MOST_SIDES
    assert "No figure was changed since the book was made" in words(pdf)


@pytest.mark.usefixtures("programs")
def test_every_sheet_for_a_lender_says_what_was_changed(tmp_path: Path) -> None:
    book, pdf = tmp_path / "book.xlsx", tmp_path / "lender.pdf"
    book.write_bytes(workbook_of(ASKS))
    retype(book, {named_areas(book)["farm_wage"]: 90})
    assert main(["print", str(book), "lender", "--out", str(pdf)]) == 0
    assert words(pdf).count("Inputs changed since the book was made: 1.") >= len(LENDER) - 4


def test_a_book_that_asks_for_no_loan_has_nothing_for_a_lender(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    require(available())
    assert main(["print", str(book), "lender", "--out", str(tmp_path / "a.pdf")]) == 1
    told = capsys.readouterr().err
    assert "asks for no loan" in told
    assert "[request]" in told
