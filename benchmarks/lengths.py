"""A book at several lengths of its plan: how many formulas, how large, how fast it is made and worked out, in one run.

Run as `python -m benchmarks.lengths [SCENARIO]`. Times belong to the machine; compare the ratios to the shortest plan: what grows
with the months at all should grow by no more than they do.
"""

from __future__ import annotations

import io
import re
import sys
import tempfile
from pathlib import Path
from typing import Final, NamedTuple
from zipfile import ZipFile

from benchmarks.build import whole
from benchmarks.phases import SHIPPED, median_time
from farmbook.output import build_bytes
from farmbook.results import compute, load_scenario

LENGTHS: Final = (12, 36, 84)
BUILDS, EVALUATIONS = 5, 20


class Measured(NamedTuple):
    """One length: formulas, bytes, seconds of a whole process that builds, and of one warm evaluation of all lines."""

    formulas: int
    size: int
    build: float
    evaluation: float


def of_months(scenario: Path, months: int, folder: Path) -> Path:
    """The scenario with a plan of so many months, beside what it extends."""
    text = re.sub(r"(?m)^months = \d+", f"months = {months}", scenario.read_text(encoding="utf-8"))
    text = re.sub(r'(?m)^extends = "', f'extends = "{scenario.parent.as_posix()}/', text)
    path = folder / f"{months}.toml"
    path.write_text(text, encoding="utf-8")
    return path


def formulas_in(book: bytes) -> int:
    """Formula cells of all sheets."""
    with ZipFile(io.BytesIO(book)) as parts:
        sheets = [name for name in parts.namelist() if name.startswith("xl/worksheets/sheet")]
        return sum(parts.read(name).count(b"<f>") for name in sheets)


def measured(scenario: Path, folder: Path) -> Measured:
    """One length."""
    computed = compute(load_scenario(scenario))
    book = build_bytes(computed)
    command = ["farmbook", "build", str(scenario), "--out", str(folder / "book.xlsx"), "--replace"]
    whole(command, folder)
    build = median_time(lambda: whole(command, folder), BUILDS)
    evaluation = median_time(lambda: computed.again(computed.scenario.cells), EVALUATIONS)
    return Measured(formulas_in(book), len(book), build, evaluation)


def main(scenario: Path) -> None:
    """Print the table."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        found = {months: measured(of_months(scenario, months, folder), folder) for months in LENGTHS}
    base = found[LENGTHS[0]]
    print("months   formulas         size          build as a process   all lines, warm")
    for months, one in found.items():
        times = [own / first for own, first in zip(one, base, strict=True)]
        print(
            f"{months:>6} {one.formulas:>10,} {times[0]:4.2f} x {one.size / 1e6:6.2f} MB {times[1]:4.2f} x"
            f" {one.build:8.2f} s {times[2]:4.2f} x {one.evaluation * 1000:8.2f} ms {times[3]:4.2f} x"
        )


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
