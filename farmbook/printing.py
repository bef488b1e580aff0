"""Printing a workbook as it was edited: a copy, worked out again, through LibreOffice where it is installed."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import Final

from farmbook.errors import FileProblem
from farmbook.workbook.hiding import copy_without
from farmbook.workbook.reading import EditedBook
from farmbook.writing import look_at, target_of, write_whole

__all__ = ["beside", "printed", "save_print"]

_SECONDS: Final = 180
"""Time that LibreOffice is given; a farm's book takes it some ten seconds."""
_FIRST_INPUT: Final = "farm_name"
"""The sheets before the one with this cell are the front sheets."""
_REQUEST: Final = "Request"
_LENDER: Final = (
    *(_REQUEST, "Project", "Basis", "Balance", "Income", "Cash", "Debts", "Ratios", "BadYears"),
    *("Security", "Record", "Permits", "Signature"),
)
"""The sheets that a lender is handed, in the order in which they are read."""
_ALWAYS: Final = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
"""Settings of a profile that works everything out again, whatever results the workbook has stored."""
_BY_HAND: Final = "install LibreOffice, or open the workbook in your spreadsheet program and print it there"


def printed(book: str | Path, sheets: str) -> bytes:
    """A workbook as PDF: of its "front" sheets, of those for a "lender", or of "all".

    Raises FileProblem where it cannot be printed; the book stays as it is.
    """
    edited = EditedBook(Path(book))
    office = shutil.which("soffice") or shutil.which("libreoffice")
    if office is None:
        raise FileProblem(str(book), "cannot be printed: LibreOffice is not installed", hint=_BY_HAND)
    kept = _kept(edited, sheets)
    with tempfile.TemporaryDirectory(prefix="farmbook-print-") as folder:
        copy = Path(folder) / "book.xlsx"
        copy.write_bytes(copy_without(edited.content, kept))
        _convert(office, copy, str(book))
        found = copy.with_suffix(".pdf")
        if not found.is_file():
            raise FileProblem(str(book), "could not be printed: LibreOffice made no file of it", hint=_BY_HAND)
        return found.read_bytes()


def beside(book: str | Path, sheets: str) -> Path:
    """Where a print goes that is given no place: beside the book, named after it and after what is printed."""
    path = Path(book)
    return path.with_name(f"{path.stem}.pdf" if sheets == "front" else f"{path.stem}_{sheets}.pdf")


def _kept(edited: EditedBook, sheets: str) -> list[int]:
    """The places of the sheets to print, in their order; none for all."""
    if sheets == "all":
        return []
    if sheets == "lender":
        kept = edited.places_of(_LENDER)
        if not edited.places_of([_REQUEST]):
            hint = "name the loan asked for under [request] in its scenario, and build it again"
            raise FileProblem(str(edited.path), "has no sheets for a lender, as it asks for no loan", hint=hint)
        return kept
    kept = edited.sheets_before(_FIRST_INPUT)
    if not kept:
        raise FileProblem(
            str(edited.path), "has no sheets before its inputs", hint="print all: farmbook print BOOK.xlsx all"
        )
    return kept


def _convert(office: str, copy: Path, book: str) -> None:
    """Run LibreOffice with a profile of its own, so that neither a window that is open nor old settings have a part in it."""
    profile = copy.parent / "profile"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(_ALWAYS, encoding="utf-8")
    command = [office, f"-env:UserInstallation={profile.as_uri()}", "--headless", "--norestore", "--convert-to", "pdf"]
    with subprocess.Popen(  # noqa: S603 - LibreOffice, on a copy of our own
        [*command, "--outdir", str(copy.parent), str(copy)],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    ) as run:
        try:
            run.wait(_SECONDS)
        except subprocess.TimeoutExpired:
            raise FileProblem(
                book,
                f"could not be printed: LibreOffice did not end within {_SECONDS} seconds",
                hint=_BY_HAND,
            ) from None
        finally:
            with suppress(ProcessLookupError):
                os.killpg(run.pid, signal.SIGKILL)


def save_print(data: bytes, path: str | Path, *, replace: bool = False) -> None:
    """Write a PDF whole or not at all; another PDF gives way only to `replace`, and no other file ever. Raises FileProblem."""
    target = target_of(path)
    if not str(path).lower().endswith(".pdf"):
        raise FileProblem(str(path), "is no name for a printed book", hint="give a file name that ends in .pdf")
    if look_at(target) is not None:
        pdf = target.is_file() and re.match(rb"%PDF-", target.read_bytes()[:5]) is not None
        if not (pdf and replace):
            hint = "give another name, or --replace to overwrite it" if pdf else "give another name"
            raise FileProblem(str(path), "exists already, so it was left as it is", hint=hint)
    write_whole(data, target)
