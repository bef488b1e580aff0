"""A farm that lies too high for the temperature its cabinet is to hold: refused in the file, flagged in the book."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl.utils import get_column_letter

from farmbook.cli import main
from tests.engines.cells import Cell
from tests.engines.formualizer_engine import FormualizerBook
from tests.workbook.shipped import SCENARIOS, ShippedBook, built

FARM = """
extends = "{base}"
units = "us"
currency = "USD"

[cabinet]
hold_temperature = {hold}

[site]
altitude = "{feet} ft"

[steamer]
kind = "{kind}"
"""


def farm(folder: Path, feet: int, hold: float, kind: str) -> Path:
    """A scenario file on the base of a shipped one."""
    base = folder / "base.toml"
    base.write_text(SCENARIOS["kestrel_hollow"].read_text(encoding="utf-8"), encoding="utf-8")
    path = folder / "high.toml"
    path.write_text(FARM.format(base=base.name, feet=feet, hold=hold, kind=kind), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("feet", "hold", "kind", "refused"),
    [
        # water boils at 202.83 degF at 5,000 ft and at 199.16 degF at 7,000 ft
        (5000, 202.7, "cabinet", False),
        (5000, 202.9, "cabinet", True),
        (7000, 200.0, "cabinet", True),
        (7000, 200.0, "pressure vessel", False),
    ],
)
def test_a_file_is_refused_above_the_height_and_not_below(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], feet: int, hold: float, kind: str, refused: bool
) -> None:
    code = main(["check", str(farm(tmp_path, feet, hold, kind))])
    said = "".join(capsys.readouterr())
    assert (code != 0) == refused
    assert ("At this height water boils at or below the temperature held" in said) == refused
    assert ("hold below the boiling point of the site" in said) == refused


def cell_of(book: ShippedBook, name: str) -> Cell:
    """The one cell of a line or input."""
    (sheet, row, column) = next(placed.cells[0] for placed in book.placed if placed.name == name)
    return sheet, f"{get_column_letter(column)}{row}"


def test_the_workbook_flags_it_as_soon_as_the_height_is_typed(tmp_path: Path) -> None:
    book = built(farm(tmp_path, 0, 200.0, "cabinet"), tmp_path)
    check, altitude = cell_of(book, "cabinet_heat.below_boiling"), cell_of(book, "site.altitude")
    said = cell_of(book, "cabinet_heat.below_boiling_says")
    with FormualizerBook(book.path) as opened:
        assert opened.read([check]) == {check: 1.0}
        opened.set(*altitude, 7000.0)
        found = opened.read([check, said])
        assert found[check] == 0
        assert str(found[said]).startswith("At this height water boils at or below")
        opened.set(*altitude, 6500.0)
        assert opened.read([check, said]) == {check: 1.0, said: "ok"}
