"""What tests work out of a scenario file, once a process: its results, and its workbook as bytes. Nobody may change them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from farmbook.output import build_bytes
from farmbook.results import Computed, compute, load_scenario

__all__ = ["results_of", "workbook_of"]


@cache
def results_of(scenario: Path) -> Computed:
    """The scenario worked out."""
    return compute(load_scenario(scenario))


@cache
def workbook_of(scenario: Path) -> bytes:
    """Its workbook as it is written."""
    return build_bytes(results_of(scenario))
