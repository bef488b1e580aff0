"""From results to a workbook file: laid out by the templates, written to a temporary name and renamed."""

from __future__ import annotations

import datetime
import os
import stat
from pathlib import Path
from typing import Final

from farmbook.errors import FileProblem, visible
from farmbook.layout.book import Book
from farmbook.layout.page import Plan
from farmbook.layout.place import place
from farmbook.layout.template import fitting, shipped_templates
from farmbook.matters import swings
from farmbook.model.place.farm_plan import Farm
from farmbook.results import Computed
from farmbook.scenario.header import PAPERS_SAID, UNITS_SAID
from farmbook.version import __version__
from farmbook.workbook.fingerprint import is_workbook, unedited
from farmbook.workbook.write import write_book
from farmbook.writing import look_at, target_of, write_whole

__all__ = ["build_bytes", "free_target", "lay_out", "save", "workbook_target", "written"]

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
        swings(computed),
    )
    templates = fitting(shipped_templates(), scenario.parts)
    book = place(plan, templates, title_line="report.farm_title", verdict_line="report.verdict")
    return book, plan


def stamp_of(computed: Computed) -> dict[str, str]:
    """What was fixed when the book was made, for the start sheet and the footers."""
    scenario = computed.scenario
    rows = ", ".join(f"{size} {axis.label}s" for axis, size in scenario.sizes.items() if axis.named)
    return {
        "Scenario": visible(Path(scenario.path).name),
        "Scenario fingerprint": scenario.digest,
        "Version": __version__,
        "Units": UNITS_SAID[scenario.system],
        "Currency": scenario.currency,
        "Paper": PAPERS_SAID[scenario.paper],
        "Months": str(scenario.months),
        "Rows in the tables": rows,
    }


def build_bytes(computed: Computed) -> bytes:
    """The finished workbook."""
    return written(computed, *lay_out(computed))


def written(computed: Computed, book: Book, plan: Plan) -> bytes:
    """The workbook of what was laid out."""
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


def save(data: bytes, path: str | Path, *, replace: bool = False) -> None:
    """Write a workbook whole or not at all; a symbolic link is followed, and what is replaced keeps its permissions.

    Raises FileProblem where the file cannot be written, where its name does not end in .xlsx, and where another file stands
    there: only an unedited farmbook workbook gives way, or, with `replace`, any workbook that may be written.
    """
    write_whole(data, free_target(path, replace=replace))


def free_target(path: str | Path, *, replace: bool = False) -> Path:
    """The file that a workbook's name means, where nothing stands or what stands there gives way. Raises as `save` does."""
    target = workbook_target(path)
    if (found := look_at(target)) is not None:
        _let_give_way(target, found, replace=replace)
    return target


def workbook_target(path: str | Path) -> Path:
    """The file that a workbook's name means. Raises FileProblem for the name of a folder, or one with another ending."""
    target = target_of(path)
    for name in (str(path), str(target)):
        if not name.lower().endswith(".xlsx"):
            stem = Path(name).name.partition(".")[0].strip()
            hint = f"{_ENDING}, such as {visible(stem)}.xlsx; every spreadsheet program opens it" if stem else _ENDING
            raise FileProblem(name, "is no name for a workbook", hint=hint)
    return target


_ENDING: Final = "give a file name that ends in .xlsx"
_MINE_ONLY: Final = "give another name, or --replace to overwrite it; what was typed into it is then lost"
_NO_WORKBOOK: Final = "give another name; only a workbook is ever overwritten, also with --replace"


def _let_give_way(target: Path, found: os.stat_result, *, replace: bool) -> None:
    """Raise FileProblem where what stands at the target is to stay."""
    if not stat.S_ISREG(found.st_mode):
        raise FileProblem(str(target), "is a pipe or a device, not a file", hint=_ENDING)
    workbook = is_workbook(target)
    if not workbook if replace else not unedited(target):
        kind = "a workbook" if replace else "an unedited farmbook workbook"
        raise FileProblem(
            str(target),
            f"exists and is not {kind}, so it was left as it is",
            hint=_MINE_ONLY if workbook else _NO_WORKBOOK,
        )
    if not found.st_mode & 0o222 or not os.access(target, os.W_OK):
        raise FileProblem(
            str(target), "may only be read, so it was left as it is", hint="give another name, or permit writing to it"
        )
