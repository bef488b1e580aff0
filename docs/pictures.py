"""Pictures of six sheets as they print, for readers who have not made a book yet.

Run as `python docs/pictures.py [FOLDER]`; it needs LibreOffice (soffice) and the programs pdftotext and pdftoppm of Poppler.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

import farmbook
from farmbook.layout.template import read_templates

ROOT = Path(__file__).resolve().parent.parent
PICTURED = {
    "kestrel_hollow": ("Start", "Inputs", "Cost"),
    "hof_fennewald": ("Cabinet", "Cook", "MakeOrBuy"),
}
"""Scenario: the sheets of which the first side is drawn."""
DOTS_AN_INCH = 75


def main(folder: Path) -> None:
    """Print both books and draw the sheets into a folder, one PNG file each."""
    folder.mkdir(parents=True, exist_ok=True)
    titles = {template.sheet: template.title for template in read_templates()}
    for scenario, sheets in PICTURED.items():
        with tempfile.TemporaryDirectory() as place:
            pdf = printed(ROOT / "scenarios" / f"{scenario}.toml", Path(place))
            sides = run("pdftotext", "-layout", pdf, "-").split("\f")
            for sheet in sheets:
                first = next(number for number, side in enumerate(sides, 1) if side.lstrip().startswith(titles[sheet]))
                picture = folder / f"{sheet.lower()}.png"
                drawn = (
                    "-f",
                    first,
                    "-l",
                    first,
                    "-singlefile",
                    "-r",
                    DOTS_AN_INCH,
                    "-png",
                    pdf,
                    picture.with_suffix(""),
                )
                run("pdftoppm", *drawn)
                print(f"{picture}: {picture.stat().st_size / 1000:.0f} kB")


def printed(scenario: Path, place: Path) -> Path:
    """Build a book in a folder and print it to PDF there, with a LibreOffice profile of its own."""
    book = place / "book.xlsx"
    farmbook.build(farmbook.compute(farmbook.load(scenario)), book)
    profile = f"-env:UserInstallation={(place / 'profile').as_uri()}"
    run("soffice", profile, "--headless", "--convert-to", "pdf", "--outdir", place, book)
    return book.with_suffix(".pdf")


def run(*command: object) -> str:
    """Run a program to its end and return what it prints."""
    words = [str(word) for word in command]
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout  # noqa: S603  # no shell, fixed programs


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "docs" / "pictures")
