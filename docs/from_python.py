"""Using farmbook from Python: what would a dearer kilowatt-hour do to the cost of a bag?

Run as `python docs/from_python.py [SCENARIO]`; a test runs it on a shipped scenario.
"""

from __future__ import annotations

import sys
from pathlib import Path

import farmbook
from farmbook.model.place.energy import Energy
from farmbook.scenario.scenario import with_cell

SHIPPED = Path(__file__).resolve().parent.parent / "scenarios" / "kestrel_hollow.toml"


def main(path: Path) -> None:
    """Print the energy lines of a steam load, then the cost of a bag at several prices of electricity."""
    scenario = farmbook.load(path)
    results = farmbook.compute(scenario)
    tables = farmbook.frames(results)
    print(tables["cabinet"].loc[["energy_per_run", "energy_cost_per_run", "demand_cost_per_run"], ["value", "unit"]])

    price = results.model.section(Energy).bound[Energy.electricity_price].cell
    cost = results.line("growing_cost.grown_cost_per_filled")
    now = float(scenario.cells[price].numbers[0])
    for rise in (1.0, 1.3, 1.6):
        dearer = with_cell(scenario, price, (), now * rise)
        bag = results.again(dearer.cells)[cost][0]
        print(f"electricity at {now * rise:.3f} {scenario.currency}/kWh: {bag:.3f} {scenario.currency} a bag filled")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHIPPED)
