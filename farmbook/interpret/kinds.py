"""Kinds: every line of a model is checked for units and axes; every fault names its line."""

from __future__ import annotations

from collections.abc import Iterable

from farmbook.errors import ModelFault
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Line
from farmbook.units import SYSTEMS

__all__ = ["check_kinds"]


def check_kinds(lines: Iterable[Line]) -> None:
    """Check all lines in both unit systems; raises one ModelFault that lists every fault."""
    faults: list[str] = []
    for line in lines:
        for system in SYSTEMS:
            try:
                lower(line, system)
            except ModelFault as fault:
                faults.append(str(fault))
                break
    if faults:
        raise ModelFault(f"{len(faults)} faults in the model", why="\n".join(faults))
