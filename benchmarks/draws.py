"""Many draws of one scenario, every number of it shaken: microseconds a draw, and memory where only what is wanted is kept.

Run as `python -m benchmarks.draws [SCENARIO]`. Times belong to the machine; compare the ratios.
"""

from __future__ import annotations

import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from benchmarks.phases import SHIPPED
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.numbers import Cells
from farmbook.layout.template import shipped_templates
from farmbook.results import Computed, compute, load_scenario

DRAWS, CHUNK = 10_000, 200
ANSWER = "growing_cost.cost_per_taken"


def shaken(computed: Computed, draws: int) -> dict[RawInput, Cells]:
    """Every number of the scenario some per cent higher or lower in each draw; seeded, so that two runs are alike."""
    random = np.random.default_rng(20250801)
    return {
        cell: Cells(found.numbers * random.normal(1, 0.01, (draws, *[1] * (found.numbers.ndim - 1))), found.texts)
        for cell, found in computed.scenario.cells.items()
    }


def first_sheet(computed: Computed) -> list[Line]:
    """The figures that the first sheet of the book leads with."""
    rows = (row for block in shipped_templates()[0].blocks if block.kind == "front" for row in block.rows)
    return [computed.line(name.removeprefix("show:")) for _, name in rows]


def for_each_draw(work: Callable[[], object], draws: int) -> float:
    """Microseconds of a draw, the best of three."""
    taken = []
    for _ in range(3):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return min(taken) / draws * 1e6


def main(path: Path) -> None:
    """Print the table."""
    computed = compute(load_scenario(path))
    few, many, wanted = shaken(computed, CHUNK), shaken(computed, DRAWS), first_sheet(computed)
    numbers = [line for line in computed.roots if not line.is_text]
    computed.again(few)  # compiled
    held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    rows = {
        f"{DRAWS} draws, the {len(wanted)} figures of the first sheet": for_each_draw(
            lambda: computed.engine.run_in_chunks(many, wanted, most=CHUNK), DRAWS
        ),
        f"{DRAWS} draws, one answer": for_each_draw(
            lambda: computed.engine.run_in_chunks(many, [computed.line(ANSWER)], most=CHUNK), DRAWS
        ),
    }
    grown = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - held
    rows[f"{CHUNK} draws, all {len(numbers)} lines of numbers kept"] = for_each_draw(
        lambda: computed.engine.run_in_chunks(few, numbers, most=CHUNK), CHUNK
    )
    rows[f"{CHUNK} draws, all {len(computed.roots)} lines kept, words too"] = for_each_draw(
        lambda: computed.again(few), CHUNK
    )
    for label, microseconds in rows.items():
        print(f"{label:<45} {microseconds:8.1f} microseconds a draw")
    print(f"memory beyond what one chunk of all lines took: {grown / 1024:.0f} MB")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
