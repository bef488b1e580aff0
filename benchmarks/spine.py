"""A book of the size to come, some 60,000 formulas at 36 months: how fast it is made, and how fast one edit is answered.

Run as `python -m benchmarks.spine` with the test extra installed. The model is the large test farm of `tests/spine`. Times
belong to the machine; compare the ratios.
"""

from __future__ import annotations

import gc
import os
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from itertools import cycle
from pathlib import Path
from statistics import median

from benchmarks.build import whole
from farmbook.expr.nodes import RawInput
from farmbook.interpret.numbers import Cells
from farmbook.layout.book import Home
from tests.engines import libreoffice
from tests.engines.cells import Book, formula_cells, typed
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook
from tests.language.books import Worked, address, work_out
from tests.spine.farm import NAMES, TITLE, Spine, spine
from tests.spine.months import Cash
from tests.spine.weeks import Weeks

HORIZONS = (12, 36, 84)
TIMES = 30


def made(months: int) -> tuple[Spine, Worked]:
    """The farm of so many months, worked out."""
    farm = spine(months)
    return farm, work_out(farm.model, "metric", farm.sizes, {}, names=NAMES, further=farm.further)


def build(months: int, path: Path) -> None:
    """Make the book from nothing; what is timed as a process of its own."""
    gc.disable()
    farm, found = made(months)
    found.written(path, farm.sheets(), TITLE)


def cold(months: int, path: Path) -> float:
    """Seconds of a whole process that makes the book, the middle of five."""
    command = ["benchmarks.spine", "--build", str(months), str(path)]
    return median(whole(command, path.parent) for _ in range(6))


def engine_ways(found: Worked) -> dict[str, Callable[[float], object]]:
    """What the engine may do about one edit."""
    edited, answer = found.model.inputs[Weeks.filled_a_week].cell, found.model.line(Cash.profit_a_year)
    before = found.engine.run(found.cells)

    def cells(value: float) -> dict[RawInput, Cells]:
        was = found.cells[edited]
        return {edited: Cells(was.numbers * 0 + value, was.texts)}

    return {
        "all lines": lambda value: found.engine.run({**found.cells, **cells(value)}),
        "what the edit reaches": lambda value: found.engine.what_if(before, cells(value)),
        "one answer": lambda value: found.engine.what_if(before, cells(value), [answer]),
    }


def asked(book: Book, edited: Home, answer: Home, value: float) -> object:
    """Type a value into a program that holds the book open, and read one answer."""
    book.set(*address(edited), typed(value))
    return book.read([address(answer)])


def timed(work: Callable[[float], object]) -> float:
    """The middle of several timings, in seconds; each with another value than the one before."""
    taken = []
    for value, _ in zip(cycle((640.0, 520.0)), range(TIMES), strict=False):
        start = time.perf_counter()
        work(value)
        taken.append(time.perf_counter() - start)
    return median(taken)


def main() -> None:
    """Print the table."""
    programs: dict[str, Callable[[Path], Book]] = {"formualizer": FormualizerBook}
    if libreoffice.available().usable:
        programs["LibreOffice"] = LibreOfficeBook
    with tempfile.TemporaryDirectory() as folder:
        for months in HORIZONS:
            path = Path(folder) / f"{months}.xlsx"
            seconds = cold(months, path)
            farm, found = made(months)
            homes = found.laid_out(farm.sheets(), TITLE)[0].homes
            size = f"{len(formula_cells(path)):,} formulas, {path.stat().st_size / 1e6:.2f} MB"
            print(f"{months} months: {size}, {seconds:.2f} s as a process of its own")
            ways = engine_ways(found)
            edited, answer = (
                homes[of] for of in (found.model.inputs[Weeks.filled_a_week].cell, found.model.line(Cash.profit_a_year))
            )
            for name, program in programs.items():
                ways[f"{name}, edit and one answer"] = partial(asked, program(path), edited, answer)
            rows = {name: timed(work) for name, work in ways.items()}
            for name, taken in rows.items():
                print(f"  {name:<34} {taken * 1000:8.2f} ms  {taken / rows['one answer']:7.1f} x one answer")
    print("load average", *(f"{load:.2f}" for load in os.getloadavg()))


if __name__ == "__main__":
    if sys.argv[1:2] == ["--build"]:
        build(int(sys.argv[2]), Path(sys.argv[3]))
    else:
        main()
