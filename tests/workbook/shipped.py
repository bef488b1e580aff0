"""The books of the shipped scenarios: built once, and where their lines and inputs stand."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from farmbook.expr.nodes import Line, RawInput
from farmbook.layout.book import Home
from farmbook.layout.page import Plan
from farmbook.results import Computed
from tests.demos import DEMOS
from tests.made import laid_out, results_of, workbook_of
from tests.workbook.lints_placed import Placed
from tests.workbook.written import At, Written

__all__ = ["SCENARIOS", "ShippedBook", "built"]

ROOT = Path(__file__).resolve().parents[2]
SCENARIOS = {path.stem: path for path in DEMOS}
"""Every scenario in the repository by name."""


@dataclass(frozen=True)
class ShippedBook:
    """One scenario, its results and its workbook."""

    computed: Computed
    plan: Plan
    path: Path

    @cached_property
    def written(self) -> Written:
        """The workbook as a file."""
        return Written(self.path)

    @cached_property
    def placed(self) -> list[Placed]:
        """Every line and input with its cells."""
        return [
            Placed(of.name, kind_of(of), unit_of(of, self.plan), cells_of(home), sign_of(of, self.plan))
            for of, home in self.plan.homes.items()
        ]


def built(scenario: Path, folder: Path) -> ShippedBook:
    """Load a scenario, work it out and write its workbook into a folder."""
    path = folder / f"{scenario.stem}.xlsx"
    path.write_bytes(workbook_of(scenario))
    return ShippedBook(results_of(scenario), laid_out(scenario)[1], path)


def unit_of(of: Line | RawInput, plan: Plan) -> str:
    """The unit as the book should show it; a check says in the head of its column what 1 means."""
    if isinstance(of, Line) and of.kind in ("error", "alert"):
        return "1 = well"
    return plan.unit_words(of.unit) if of.axes else plan.unit_after(of.unit)


def sign_of(of: Line | RawInput, plan: Plan) -> str:
    """What stands with each figure: of a share its %, of single amounts the money."""
    if of.unit.share:
        return "%"
    return plan.sign if str(of.unit).startswith("money") and not of.axes else ""


def kind_of(of: Line | RawInput) -> str:
    """What stands in the cells of a line or input."""
    if isinstance(of, Line):
        return "worked words" if of.is_text else "worked number"
    return "limit" if of.kind in ("low", "high", "least", "most") else of.kind


def cells_of(home: Home) -> tuple[At, ...]:
    """The cells of a line or input, counted from 1; the opening cell left out."""
    every = itertools.product(*(range(count) for count in home.counts))
    places = [home.place(dict(zip(home.axes, index, strict=True))) for index in every]
    return tuple((home.sheet, row + 1, column + 1) for row, column in places)
