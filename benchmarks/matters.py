"""The table of what to measure next beside the build that it is part of, and beside a whole rerun for every end of a range.

Run as `python -m benchmarks.matters [SCENARIO]`. Times belong to the machine; compare the ratios.
"""

from __future__ import annotations

import sys
from pathlib import Path
from statistics import median

from benchmarks.phases import SHIPPED, cold, median_time
from farmbook.layout.swings import LeftOut
from farmbook.matters import swings
from farmbook.results import compute, load_scenario, lowered

TIMES = 5


def first_time(path: Path) -> float:
    """The table of a farm that was just worked out, nothing of it remembered, in seconds."""
    lowered.cache_clear()
    computed = compute(load_scenario(path))
    assert computed.values
    return median_time(lambda: swings(computed), 1)


def main(path: Path) -> None:
    """Print the table."""
    build = median(cold(path) for _ in range(TIMES))
    table = median(first_time(path) for _ in range(TIMES))
    computed = compute(load_scenario(path))
    found = swings(computed)
    again = median_time(lambda: swings(computed), TIMES)
    rerun = median_time(lambda: computed.again(computed.scenario.cells), 50)
    tried = len(found.rows) + found.left_out[LeftOut.STILL] + found.left_out[LeftOut.BOUND]
    print(f"{tried} of {len(found.rows) + sum(found.left_out.values())} figures swung")
    rows = {
        "build, from the file to the bytes": build,
        "of that the table": table,
        "the table once more": again,
        "a whole rerun for each end": rerun * 2 * tried,
    }
    for name, seconds in rows.items():
        print(f"{name:<36} {seconds * 1000:9.1f} ms  {seconds / build:6.3f} x the build")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
