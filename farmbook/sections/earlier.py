"""What things were called in earlier versions, so that whoever knows the old word is told the new one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from farmbook.sections.declare import Input

__all__ = ["EARLIER_TABLES", "earlier_names"]

EARLIER_TABLES: Final[Mapping[str, str]] = {"steriliser": "steamer", "loan": "loans"}
"""Tables of a scenario file: what each was called, and what it is called now."""
_EARLIER_SECTIONS: Final[Mapping[str, str]] = {"steriliser": "steamer_in_use", "steriliser_choice": "steamer_choice"}
"""Sections of the model, by which lines that are worked out are named."""


def earlier_names(inputs: Iterable[Input], lines: Iterable[str]) -> dict[str, str]:
    """The names of now by those of earlier versions: of inputs, of the numbers they hand on, and of lines worked out."""
    now = {section: old for old, section in _EARLIER_SECTIONS.items()}
    tables = {table: old for old, table in EARLIER_TABLES.items()}
    found: dict[str, str] = {}
    for declared in inputs:
        older = [declared.older, *(f"{tables[table]}.{declared.key}" for table in tables if table == declared.table)]
        found.update((name, declared.dotted) for name in older if name != declared.dotted)
    for line in lines:
        section, _, name = line.partition(".")
        if section in now:
            found[f"{now[section]}.{name}"] = line
    return found
