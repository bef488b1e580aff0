"""How long each phase of making a book takes, as measured in this run, and as ratios to one warm evaluation of all lines.

Run as `python benchmarks/phases.py [SCENARIO]`. Absolute times belong to the machine; the ratios may be compared.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from farmbook.expr.nodes import RawInput
from farmbook.interpret.numbers import Cells
from farmbook.output import build_bytes
from farmbook.results import Computed, compiled, compute, load_scenario, lowered, whole_farm

SHIPPED = Path(__file__).resolve().parent.parent / "scenarios" / "kestrel_hollow.toml"
DRAWS = 200


def median_time(work: Callable[[], object], times: int) -> float:
    """The middle of several timings, in seconds."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def cold(path: Path) -> float:
    """One build from the file to the finished bytes with nothing prepared, in seconds."""
    whole_farm.cache_clear()
    lowered.cache_clear()
    compiled.cache_clear()
    start = time.perf_counter()
    build_bytes(compute(load_scenario(path)))
    return time.perf_counter() - start


def compiled_again(computed: Computed) -> None:
    """All lines compiled once more, and worked out."""
    compiled.cache_clear()
    assert compute(computed.scenario).values


def drawn(computed: Computed) -> dict[RawInput, Cells]:
    """The same scenario as many draws."""
    return {
        source: Cells(np.repeat(cells.numbers, DRAWS, axis=0), np.repeat(cells.texts, DRAWS, axis=0))
        for source, cells in computed.scenario.cells.items()
    }


def main(path: Path) -> None:
    """Print the table."""
    first = cold(path)
    computed = compute(load_scenario(path))
    warm = median_time(lambda: computed.again(computed.scenario.cells), 50)
    many = drawn(computed)
    rows = {
        "cold build, file to workbook": first,
        "load the file": median_time(lambda: load_scenario(path), 10),
        "compile all lines": median_time(lambda: compiled_again(computed), 5),
        f"evaluate all {len(computed.roots)} lines, warm": warm,
        f"evaluate {DRAWS} draws, for each draw": median_time(lambda: computed.again(many), 5) / DRAWS,
        "lay out and write": median_time(lambda: build_bytes(computed), 5),
    }
    for label, seconds in rows.items():
        print(f"{label:<42} {seconds * 1000:9.2f} ms  {seconds / warm:8.2f} x warm evaluation")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
