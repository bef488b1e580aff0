"""What tests work out of a scenario file, once a process: its results, its book laid out, and its workbook as bytes.

Nobody may change them.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from farmbook.layout.book import Book
from farmbook.layout.page import Plan
from farmbook.output import lay_out, written
from farmbook.results import Computed, compute, load_scenario

__all__ = ["laid_out", "results_of", "workbook_of"]


@cache
def results_of(scenario: Path) -> Computed:
    """The scenario worked out."""
    return compute(load_scenario(scenario))


@cache
def laid_out(scenario: Path) -> tuple[Book, Plan]:
    """Its book with every line and input in its place."""
    return lay_out(results_of(scenario))


@cache
def workbook_of(scenario: Path) -> bytes:
    """Its workbook as it is written."""
    return written(results_of(scenario), *laid_out(scenario))
