"""The commands as whole processes, beside a bare writer of the same book, in one run.

Run as `python -m benchmarks.build [SCENARIO]`. The bare writer is XlsxWriter alone: it writes the same cells, formulas,
results, formats and names from a prepared list; it leaves out merging and the blank cells under it, rules for typing, charts
and print settings.
Every process starts its own interpreter, with its modules compiled by a first turn that is not counted, as after an
installation. Times belong to the machine; compare the ratios.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from statistics import median

from benchmarks.bare_writer import prepare
from benchmarks.phases import SHIPPED

TIMES = 11


def whole(command: Sequence[str], folder: Path) -> float:
    """Seconds from the start of a process to its end; compiled modules are kept in the folder."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment["PYTHONPYCACHEPREFIX"] = str(folder / "compiled")
    start = time.perf_counter()
    subprocess.run([sys.executable, "-m", *command], check=True, capture_output=True, env=environment)  # noqa: S603 - ours
    return time.perf_counter() - start


def commands(scenario: Path, folder: Path) -> Mapping[str, Sequence[str]]:
    """What is timed, as modules and arguments of Python. Prepares the bare writer's list from a book built for it."""
    book, prepared = folder / "book.xlsx", folder / "prepared.pickle"
    build = ["farmbook", "build", str(scenario), "--out", str(book), "--replace"]
    whole(build, folder)
    prepare(book, prepared)
    return {
        "bare writer": ["benchmarks.bare_writer", str(prepared), str(folder / "bare.xlsx")],
        "build": build,
        "check": ["farmbook", "check", str(scenario)],
        "show": ["farmbook", "show", str(scenario)],
        "schema": ["farmbook", "schema"],
    }


def timed(scenario: Path) -> dict[str, float]:
    """The middle of several timings of each process, in seconds; they take turns, so that a slow moment meets all alike."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        asked = commands(scenario, folder)
        taken: dict[str, list[float]] = {**{each: [] for each in asked}, "new": []}
        for turn in range(TIMES + 1):
            for each, command in asked.items():
                taken[each].append(whole(command, folder))
            taken["new"].append(whole(["farmbook", "new", str(folder / f"new_{turn}.toml")], folder))
    return {each: median(seconds[1:]) for each, seconds in taken.items()}


def main(scenario: Path) -> None:
    """Print the table."""
    rows = timed(scenario)
    for each, seconds in rows.items():
        print(f"{each:<12} {seconds * 1000:7.0f} ms  {seconds / rows['bare writer']:5.2f} x the bare writer")
    print("load average", *(f"{load:.2f}" for load in os.getloadavg()))


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
