"""Pictures of some sheets as they print, for readers who have not made a book yet.

Run as `python docs/pictures.py [FOLDER]`; it needs LibreOffice (soffice) and the programs pdftotext and pdftoppm of Poppler.
"""

from __future__ import annotations

import struct
import subprocess
import sys
import tempfile
import zlib
from pathlib import Path

import numpy as np

import farmbook
from farmbook.layout.template import read_templates

ROOT = Path(__file__).resolve().parent.parent
PICTURED = {
    "kestrel_hollow": ("Start", "Inputs", "Cost", "Cash", "ThisWeek"),
    "hof_fennewald": ("Cabinet", "Cook", "MakeOrBuy"),
    "kestrel_second_room": ("BadYears", "Request"),
}
"""Scenario: the sheets of which the first side is drawn."""
DOTS_AN_INCH, COLOURS = 75, 24


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
                picture.write_bytes(drawn(pdf, first))
                print(f"{picture}: {picture.stat().st_size / 1000:.0f} kB")


def drawn(pdf: Path, side: int) -> bytes:
    """One side as a PNG file of few colours, each dot in the nearest of those that the side has most of."""
    plain = pdf.with_name("side")
    run("pdftoppm", "-f", side, "-l", side, "-singlefile", "-r", DOTS_AN_INCH, pdf, plain)
    _, size, _, dots = plain.with_suffix(".ppm").read_bytes().split(b"\n", 3)
    width, height = map(int, size.split())
    found, which, counts = np.unique(
        np.frombuffer(dots, np.uint8).reshape(-1, 3), axis=0, return_inverse=True, return_counts=True
    )
    kept = found[np.argsort(-counts)[:COLOURS]]
    apart = (found[:, None].astype(int) - kept[None].astype(int)) ** 2
    indices = apart.sum(axis=2).argmin(axis=1).astype(np.uint8)[which].reshape(height, width)
    rows = np.hstack([np.zeros((height, 1), np.uint8), indices])  # each row begins with its filter: none
    head = struct.pack(">IIBBBBB", width, height, 8, 3, 0, 0, 0)
    parts = (b"IHDR", head), (b"PLTE", kept.tobytes()), (b"IDAT", zlib.compress(rows.tobytes(), 9)), (b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunk(name, data) for name, data in parts)


def chunk(name: bytes, data: bytes) -> bytes:
    """A part of a PNG file: its length, name, data and sum."""
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


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
