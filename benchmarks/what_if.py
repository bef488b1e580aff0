"""One edit and its answer: the engine beside two spreadsheet programs that hold the book open, in one run.

Run as `python -m benchmarks.what_if [SCENARIO]` with the test extra installed. Times belong to the machine; compare the ratios.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from itertools import cycle
from pathlib import Path
from statistics import median

from benchmarks.phases import SHIPPED
from farmbook.expr.nodes import RawInput
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.numbers import Cells
from farmbook.layout.book import a1
from farmbook.model.place.farm_plan import Farm
from farmbook.output import build_bytes, lay_out
from farmbook.results import Computed, compute, load_scenario
from farmbook.scenario.scenario import with_cell
from tests.engines import libreoffice
from tests.engines.cells import Book, typed
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook

TIMES = 60
ANSWER = "growing_cost.cost_per_taken"


def engine_ways(computed: Computed) -> dict[str, Callable[[float], object]]:
    """What the engine may do about one edit: all lines, what the edit reaches, what one answer needs of that."""
    edited = computed.model.inputs[Farm.bags_filled_a_week].cell
    answer = computed.line(ANSWER)

    def cells(value: float) -> dict[RawInput, Cells]:
        return {edited: with_cell(computed.scenario, edited, (), typed(value)).cells[edited]}

    return {
        "all lines": lambda value: computed.again({**computed.scenario.cells, **cells(value)}),
        "what the edit reaches": lambda value: computed.what_if(cells(value)),
        "one answer": lambda value: computed.what_if(cells(value), [answer]),
    }


def peer_ways(computed: Computed, path: Path) -> Iterator[tuple[str, Callable[[float], object], Book]]:
    """The same edit typed into each program that is here, and the answer read."""
    book, _ = lay_out(computed)
    home = book.homes[computed.model.inputs[Farm.bags_filled_a_week].cell]
    sheet, row, column = book.names[workbook_name(computed.line(ANSWER))]
    typed_at, read_at = (home.sheet, a1(home.row, home.column)), (sheet, a1(row, column))
    peers: dict[str, Callable[[Path], Book]] = {"formualizer": FormualizerBook}
    if libreoffice.available().usable:
        peers["LibreOffice"] = LibreOfficeBook
    for name, program in peers.items():
        opened = program(path)

        def answer(value: float, opened: Book = opened) -> object:
            opened.set(*typed_at, value)
            return opened.read([read_at])

        yield f"{name}, edit and one answer", answer, opened


def timed(work: Callable[[float], object]) -> float:
    """The middle of several timings, in seconds; each with another value than the one before."""
    taken = []
    for value, _ in zip(cycle((500.0, 620.0)), range(TIMES), strict=False):
        start = time.perf_counter()
        work(value)
        taken.append(time.perf_counter() - start)
    return median(taken)


def main(path: Path) -> None:
    """Print the table."""
    computed = compute(load_scenario(path))
    rows = {f"engine, {name}": timed(work) for name, work in engine_ways(computed).items()}
    with tempfile.TemporaryDirectory() as folder:
        book = Path(folder) / "book.xlsx"
        book.write_bytes(build_bytes(computed))
        for name, work, opened in peer_ways(computed, book):
            with opened:
                rows[name] = timed(work)
    base = rows["engine, what the edit reaches"]
    for name, seconds in rows.items():
        print(f"{name:<40} {seconds * 1000:9.3f} ms  {seconds / base:8.2f} x what the edit reaches")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
