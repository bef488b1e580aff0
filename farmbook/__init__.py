"""farmbook writes live spreadsheet workbooks for the economics of an oyster-mushroom farm.

From Python: `scenario = farmbook.load("farm.toml")`, `results = farmbook.compute(scenario)`,
`farmbook.frames(results)` for tables, `farmbook.build(results, "farm.xlsx")` for the workbook.
"""

from __future__ import annotations

from farmbook.version import __version__

TYPE_CHECKING = False  # what `typing` has, without loading it
if TYPE_CHECKING:
    from pathlib import Path

    import pandas as pd

    from farmbook.results import Computed
    from farmbook.scenario.scenario import Scenario

__all__ = ["__version__", "build", "compute", "frames", "load"]

# What follows imports inside functions for start-up speed: `import farmbook` loads nothing that it may not need.


def load(path: str | Path) -> Scenario:
    """Read and check a scenario file.

    Raises errors.FileProblem for a file that cannot be read, errors.ScenarioProblems (every problem at once) for one that can.
    """
    from farmbook.results import load_scenario  # for start-up speed

    return load_scenario(path)


def compute(scenario: Scenario, *, anyway: bool = False) -> Computed:
    """Work out every line of the farm, in the scenario's display units.

    Raises errors.DoesNotAddUp, with every check that fails, for a farm that cannot work as it is described; `anyway` gives
    the results all the same, to look at.
    """
    from farmbook.results import compute as work_out  # for start-up speed
    from farmbook.scenario.report import require_sound  # for start-up speed

    results = work_out(scenario)
    if not anyway:
        require_sound(results.scenario, results.model, results.values)
    return results


def frames(results: Computed) -> dict[str, pd.DataFrame]:
    """Results as pandas frames, one for each section and list: see `farmbook.tables.frames`."""
    from farmbook.tables import frames as make  # for start-up speed

    return make(results)


def build(results: Computed, path: str | Path, *, replace: bool = False, anyway: bool = False) -> Path:
    """Write the workbook; an existing file is replaced only if it is an unedited farmbook workbook, or, with `replace`, an edited one.

    Raises errors.FileProblem where the file may not or cannot be written, and errors.DoesNotAddUp, unless `anyway`, where the
    checks of the farm fail; nothing is lost then.
    """
    from pathlib import Path  # for start-up speed

    from farmbook.output import build_bytes, save  # for start-up speed
    from farmbook.scenario.report import require_sound  # for start-up speed

    if not anyway:
        require_sound(results.scenario, results.model, results.values)
    save(build_bytes(results), path, replace=replace)
    return Path(path)
