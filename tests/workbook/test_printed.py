"""The books as LibreOffice prints them, on both papers: no block cut, no heading alone, the sheet's title on every side."""

from __future__ import annotations

import re
import runpy
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from farmbook.layout.book import Sheet, Text
from farmbook.layout.flow import FOOT, TITLE_ROWS, side_height
from farmbook.layout.grid import ROW_HEIGHT
from farmbook.layout.looks import LOOKS
from farmbook.layout.measure import width_of
from farmbook.output import lay_out, written
from farmbook.results import compute, load_scenario
from tests.engines import Availability, require
from tests.live.turns import turn_of
from tests.workbook.shipped import ROOT, SCENARIOS

FOR_THE_SCREEN = {
    *("ChangeCases", "FlushCases", "RecipeCases", "SpawnCases", "SteamerCases"),
    *("Timing", "WeekNotes", "Weeks", "MonthSales", "MonthBills", "LoanMonths", "LoanYears"),
    *("BadMonths", "Bad", "StartBalance"),
    *("Constants", "Sources"),
}
"""Sheets that are not printed."""
MOST_SIDES = 105
"""Of a whole book."""
RIGHT_MARGIN = 0.45 * 72
"""Points that nothing is printed on."""


@dataclass(frozen=True)
class Row:
    """A printed row: its height in pixels, and the words that surely stand on the first line of its first cell of words."""

    height: float
    words: list[str]


@dataclass(frozen=True)
class Side:
    """A printed side: its words from the top, and the right edge of the furthest, in points from the paper's right edge."""

    words: list[str]
    left_free: float


@dataclass(frozen=True)
class Printed:
    """A book on paper: the sheets that print, and the sides of each."""

    paper: str
    sheets: list[Sheet]
    sides: dict[str, list[Side]]


def tools() -> Availability:
    missing = [name for name in ("soffice", "pdftotext", "pdftoppm") if shutil.which(name) is None]
    return Availability(not missing, f"there is no program named {' or '.join(missing)}")


@pytest.fixture(
    scope="module", params=[(name, paper) for name in SCENARIOS for paper in ("letter", "a4")], ids="-".join
)
def printed(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, pytestconfig: pytest.Config
) -> Printed:
    """Each book on its own country's paper, and with `--whole` on both."""
    require(tools())
    name, paper = request.param
    if not pytestconfig.getoption("whole") and paper != load_scenario(SCENARIOS[name]).paper:
        pytest.skip("each book is printed on the other paper with --whole")
    folder = tmp_path_factory.mktemp("printed")
    computed = compute(replace(load_scenario(SCENARIOS[name]), paper=paper))
    book, plan = lay_out(computed)
    (folder / "book.xlsx").write_bytes(written(computed, book, plan))
    sides = printed_sides(folder)
    sheets = [sheet for sheet in book.sheets if sheet.prints]
    assert {sheet.name for sheet in book.sheets} - {sheet.name for sheet in sheets} == FOR_THE_SCREEN
    return Printed(paper, sheets, by_sheet(sheets, sides))


def printed_sides(folder: Path) -> list[Side]:
    """The sides of the workbook `book.xlsx` of a folder, as LibreOffice prints them."""
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    run("soffice", profile, "--headless", "--convert-to", "pdf", "--outdir", folder, folder / "book.xlsx")
    return read_sides(folder / "book.pdf")


def run(*command: object) -> str:
    words = [str(word) for word in command]
    return subprocess.run(words, check=True, capture_output=True, text=True, timeout=300).stdout


def read_sides(pdf: Path) -> list[Side]:
    texts = run("pdftotext", "-layout", pdf, "-").split("\f")[:-1]
    boxes = re.findall(r'<page width="([\d.]+)".*?</page>', found := run("pdftotext", "-bbox", pdf, "-"), re.DOTALL)
    pages = re.findall(r"<page .*?</page>", found, re.DOTALL)
    return [
        Side(text.split(), float(width) - max(map(float, re.findall(r'xMax="([\d.]+)"', page))))
        for text, width, page in zip(texts, boxes, pages, strict=True)
    ]


def by_sheet(sheets: list[Sheet], sides: list[Side]) -> dict[str, list[Side]]:
    """The sides of each sheet, in the order of the book: a side belongs to the sheet whose title it begins with."""
    found: dict[str, list[Side]] = {sheet.name: [] for sheet in sheets}
    names = {sheet.title: sheet.name for sheet in sheets}
    for number, side in enumerate(sides, 1):
        titles = [title for title in names if side.words[: len(title.split())] == title.split()]
        assert titles, f"side {number} does not begin with the title of a sheet: {side.words[:8]}"
        found[names[max(titles, key=len)]].append(side)
    return found


def blocks(sheet: Sheet) -> Iterator[list[Row]]:
    """The printed rows of each block, its heading first."""
    last = sheet.printed_rows or max(cell.row for cell in sheet.cells) + 1
    starts = [start for start in sheet.starts if start < last]
    for start, end in zip(starts, [*(start - 1 for start in starts[1:]), last], strict=True):
        yield [Row(sheet.heights.get(row, ROW_HEIGHT), first_words(sheet, row)) for row in range(start + 1, end)]


def first_words(sheet: Sheet, row: int) -> list[str]:
    """Words at the head of a row that the book itself wrote, as many as stand on one line with room to spare."""
    for cell in sorted((cell for cell in sheet.cells if cell.row == row), key=lambda cell: cell.column):
        if isinstance(cell.content, Text) and cell.content.words.strip() and cell.look != "number" and cell.column < 4:
            look, words = LOOKS[cell.look], cell.content.words.split()
            room = 0.7 * sum(sheet.widths[cell.column : cell.column + cell.across])
            while len(words) > 1 and width_of(" ".join(words), look.size, bold=look.bold) > room:
                words.pop()
            return words
    return []


def place_of(words: list[str], sides: list[Side], start: tuple[int, int]) -> tuple[int, int]:
    """Side and word at which these words next stand."""
    for side in range(start[0], len(sides)):
        text = sides[side].words
        for at in range(start[1] if side == start[0] else 0, len(text)):
            if text[at : at + len(words)] == words:
                return side, at + len(words)
    raise AssertionError(f"not printed, or not where it belongs: {' '.join(words)}")


def test_no_block_is_cut_and_no_heading_stands_alone(printed: Printed) -> None:
    cut, count = cut_blocks(printed)
    assert cut == []
    assert count > 300


def cut_blocks(printed: Printed) -> tuple[list[tuple[str, ...]], int]:
    """Blocks that stand on two sides without need, and how many rows were looked at."""
    cut, count = [], 0
    for sheet in printed.sheets:
        fits = (
            side_height(sheet.widths, printed.paper, sheet.grid)
            - sum(sheet.heights.get(row, ROW_HEIGHT) for row in range(TITLE_ROWS))
            - FOOT
        )
        at = (0, 0)
        for rows in blocks(sheet):
            stands = []
            for row in rows:
                if row.words:
                    at = place_of(row.words, printed.sides[sheet.name], at)
                    stands.append(at[0])
            together = stands if sum(row.height for row in rows) <= fits else stands[:2]
            count += len(stands)
            if len(set(together)) > 1:
                cut.append((sheet.name, *rows[0].words))
    return cut, count


def test_every_sheet_prints_and_nothing_reaches_into_the_right_margin(printed: Printed) -> None:
    assert [name for name, sides in printed.sides.items() if not sides] == []
    over = {name for name, sides in printed.sides.items() for side in sides if side.left_free < RIGHT_MARGIN - 1}
    assert over == set()


def test_the_book_is_no_longer_than_it_should_be(printed: Printed) -> None:
    taken = {name: len(sides) for name, sides in printed.sides.items()}
    assert sum(taken.values()) <= MOST_SIDES, taken


def test_no_number_is_too_wide_for_its_cell(printed: Printed) -> None:
    """Hashes are what programs print in place of it."""
    wide = {
        name: [word for side in sides for word in side.words if "##" in word] for name, sides in printed.sides.items()
    }
    assert {name: words for name, words in wide.items() if words} == {}


def test_pictures_for_the_documentation_are_drawn_and_small(tmp_path: Path, pytestconfig: pytest.Config) -> None:
    """Of one of the books, which is another one at another commit; of all with `--whole`."""
    require(tools())
    main = runpy.run_path(str(ROOT / "docs" / "pictures.py"))["main"]
    pictured = main.__globals__["PICTURED"]
    assert sum(map(len, pictured.values())) == 10
    if not pytestconfig.getoption("whole"):
        drawn = list(pictured)[turn_of(0, len(pictured))]
        main.__globals__["PICTURED"] = pictured = {drawn: pictured[drawn]}
    main(tmp_path)
    sizes = {path.name: path.stat().st_size for path in tmp_path.glob("*.png")}
    assert len(sizes) == sum(map(len, pictured.values())) > 0
    assert all(10_000 < size < 60_000 for size in sizes.values()), sizes
    assert all(path.read_bytes().startswith(b"\x89PNG") for path in tmp_path.glob("*.png"))
