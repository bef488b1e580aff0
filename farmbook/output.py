"""From results to a workbook file: laid out by the templates, written to a temporary name and renamed."""

from __future__ import annotations

import datetime
import os
import tempfile
from pathlib import Path

from farmbook import __version__
from farmbook.errors import FileProblem
from farmbook.layout.book import Book
from farmbook.layout.page import Plan
from farmbook.layout.place import place
from farmbook.layout.template import read_templates
from farmbook.model.farm_plan import Farm
from farmbook.results import Computed
from farmbook.workbook.fingerprint import unedited
from farmbook.workbook.write import write_book

__all__ = ["build_bytes", "lay_out", "save", "write_whole"]

UNDATED = datetime.date(2000, 1, 1)


def lay_out(computed: Computed) -> tuple[Book, Plan]:
    """Place every line and input of a scenario's book."""
    scenario = computed.scenario
    plan = Plan(
        computed.model,
        scenario.system,
        scenario.currency,
        scenario.sizes,
        computed.roots,
        scenario.notes,
        stamp_of(computed),
    )
    book = place(plan, read_templates(), title_line="report.farm_title", verdict_line="report.verdict")
    return book, plan


def stamp_of(computed: Computed) -> dict[str, str]:
    """What was fixed when the book was made, for the start sheet and the footers."""
    scenario = computed.scenario
    units = {"us": "US customary (lb, ft, degF)", "metric": "metric (kg, m, degC)"}[scenario.system]
    rows = ", ".join(f"{size} {axis.label}s" for axis, size in scenario.sizes.items() if axis.named)
    return {
        "Scenario": Path(scenario.path).name,
        "Scenario fingerprint": scenario.digest,
        "Version": __version__,
        "Units": units,
        "Currency": scenario.currency,
        "Paper": {"letter": "US letter", "a4": "A4"}[scenario.paper],
        "Rows in the tables": rows,
    }


def build_bytes(computed: Computed) -> bytes:
    """The finished workbook."""
    book, plan = lay_out(computed)
    scenario = computed.scenario
    return write_book(
        book, plan, computed.values, computed.openings, scenario.cells, paper=scenario.paper, created=_date_of(computed)
    )


def _date_of(computed: Computed) -> datetime.date:
    """The date of the plan if it is one; never today's, so that two builds are alike."""
    cell = computed.model.section(Farm).raw(Farm.plan_date)
    text = str(computed.scenario.cells[cell].texts.reshape(-1)[0])
    try:
        found = datetime.date.fromisoformat(text)
    except ValueError:
        return UNDATED
    return found if found.year >= 1980 else UNDATED


def save(data: bytes, path: Path, *, replace: bool = False) -> None:
    """Write to a temporary name beside the target and rename, so that a failure leaves nothing half-written.

    Raises FileProblem where the file cannot be written, and where another file, or a workbook that has been edited, stands
    there and `replace` is not given.
    """
    if path.is_dir():
        raise FileProblem(str(path), "is a folder, not a file", hint="give a file name that ends in .xlsx")
    if path.exists() and not replace and not unedited(path):
        raise FileProblem(
            str(path),
            "exists and is not an unedited farmbook workbook, so it was left as it is",
            hint="give another name, or --replace to overwrite it; what was typed into it is then lost",
        )
    write_whole(data, path)


def write_whole(data: bytes, path: Path) -> None:
    """Write a file whole or not at all; raises FileProblem where it cannot be written."""
    if not path.parent.is_dir():
        raise FileProblem(str(path), "cannot be written: its folder does not exist")
    temporary = None
    try:
        handle, temporary = tempfile.mkstemp(suffix=".tmp", prefix=path.stem, dir=path.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        os.chmod(temporary, 0o666 & ~_mask())
        os.replace(temporary, path)
    except OSError as error:
        if temporary is not None:
            Path(temporary).unlink(missing_ok=True)
        raise FileProblem(str(path), f"cannot be written: {error.strerror}") from None


def _mask() -> int:
    """The permissions that new files are not given here; a temporary file starts out private."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
