"""A workbook recalculated by Gnumeric in one go, through its converter ssconvert."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
from pathlib import Path

from tests.engines import Availability
from tests.engines.cells import Cell, Value, stored_values, wipe

SECONDS = 120.0


class GnumericError(Exception):
    """Gnumeric did not convert the workbook; the message holds what it said."""


def available() -> Availability:
    """Tell whether Gnumeric's converter is installed."""
    if shutil.which("ssconvert") is None:
        return Availability(False, "Gnumeric is not installed: there is no program named ssconvert")
    return Availability(True)


def recalculate(path: Path) -> dict[Cell, Value]:
    """Return every value of the workbook after Gnumeric worked it out from a copy with the stored results wiped.

    A formula that Gnumeric cannot parse comes back as a text that begins with #, not as an error. Raises GnumericError.
    """
    program = shutil.which("ssconvert")
    if program is None:
        raise GnumericError(available().reason)
    with tempfile.TemporaryDirectory(prefix="gnumeric-") as name:
        wiped, recalculated = Path(name) / "wiped.xlsx", Path(name) / "recalculated.xlsx"
        wipe(path, wiped)
        _convert([program, "--recalc", str(wiped), str(recalculated)])
        if not recalculated.exists():
            raise GnumericError("ssconvert wrote no workbook")
        return stored_values(recalculated)


def _convert(command: list[str]) -> None:
    try:
        done = subprocess.run(command, check=False, capture_output=True, text=True, errors="replace", timeout=SECONDS)
    except subprocess.TimeoutExpired as late:
        raise GnumericError(f"ssconvert did not finish in {SECONDS:.0f} seconds") from late
    if done.returncode != 0:
        raise GnumericError(f"ssconvert ended with code {done.returncode}: {done.stderr.strip()}")
