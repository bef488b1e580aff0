"""The commands say every number as a spreadsheet program shows it in the book."""

from __future__ import annotations

import calendar
import csv
import datetime
import itertools
import shutil
import subprocess
from collections.abc import Iterator, Mapping

import pytest

from farmbook.expr.nodes import Line
from farmbook.figures import spoken
from farmbook.layout.forms import NOTHING
from tests.engines import libreoffice, require
from tests.workbook.shipped import SCENARIOS, ShippedBook, built

AS_SHOWN = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true,false,false,-1"
"""Every sheet as a file of its own, each cell with the text that is seen in it."""
Rows = list[list[str]]


@pytest.fixture(scope="module", params=SCENARIOS)
def shipped(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> ShippedBook:
    return built(SCENARIOS[request.param], tmp_path_factory.mktemp("shown"))


@pytest.fixture(scope="module")
def shown(shipped: ShippedBook) -> dict[str, Rows]:
    """What LibreOffice shows in every cell, by sheet."""
    require(libreoffice.available())
    book = shipped.path
    folder, profile = book.parent / "texts", (book.parent / "profile").as_uri()
    soffice = shutil.which("soffice") or "libreoffice"
    command = [soffice, f"-env:UserInstallation={profile}", "--headless", "--convert-to", AS_SHOWN]
    subprocess.run([*command, "--outdir", str(folder), str(book)], check=True, capture_output=True, timeout=300)
    found = {path.stem.removeprefix(f"{book.stem}-"): path for path in folder.glob("*.csv")}
    return {sheet: list(csv.reader(path.read_text(encoding="utf-8").splitlines())) for sheet, path in found.items()}


def differences(shipped: ShippedBook, shown: Mapping[str, Rows]) -> Iterator[str]:
    """Every number that is said otherwise than it is shown. A table shows no sign of money, and a dash for none."""
    plan = shipped.plan
    for line, home in plan.homes.items():
        if not isinstance(line, Line) or line.is_text or line.kind in ("error", "alert"):  # checks are shown in words
            continue
        for index in itertools.product(*map(range, home.counts)):
            row, column = home.place(dict(zip(home.axes, index, strict=True)))
            seen = shown[home.sheet][row][column]
            said = spoken(shipped.computed, line, shipped.computed.values[line][(0, *index)])
            if line.axes:
                seen, said = seen.replace(NOTHING, "0"), said.replace(plan.sign, "")
            seen = _month_meant(line, seen, said) if line.unit.date else seen
            if line.name in plan.quiet and not seen:  # 0 of what is only drawn
                seen = "0"
            if seen != said and not _as_long_as_there_is_room(line, seen, said):
                yield f"{line.name}{list(index)}: shown {seen!r}, said {said!r}"


def _month_meant(line: Line, seen: str, said: str) -> str:
    """The first day of a month, shown as the month, as the day it is."""
    day = datetime.date.fromisoformat(said)
    return said if day.day == 1 and seen == f"{calendar.month_abbr[day.month]} {day:%y}" else seen


def _as_long_as_there_is_room(line: Line, seen: str, said: str) -> bool:
    """A figure typed in another unit than the book's has no end; a cell shows as much of it as it can."""
    return line.kind == "used" and len(said) > 10 and seen.startswith(said[:-1])


def test_every_number_is_said_as_it_is_shown(shipped: ShippedBook, shown: dict[str, Rows]) -> None:
    assert list(differences(shipped, shown)) == []
    assert not [cell for rows in shown.values() for row in rows for cell in row if "###" in cell]


def test_a_number_said_otherwise_is_found(shipped: ShippedBook, shown: dict[str, Rows]) -> None:
    home = shipped.plan.homes[shipped.computed.line("farm.labour_rate")]
    falsified = shown | {home.sheet: [list(row) for row in shown[home.sheet]]}
    falsified[home.sheet][home.row][home.column] += "0"
    assert [each.partition("[")[0] for each in differences(shipped, falsified)] == ["farm.labour_rate"]
