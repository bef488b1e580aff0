"""The demo farms: two that are taken apart cell by cell, and those that show how a farm begins or grows."""

from __future__ import annotations

from pathlib import Path
from typing import Final

__all__ = ["DEMOS", "OTHERS"]

_FOLDER: Final = Path(__file__).parents[1] / "scenarios"
DEMOS: Final = tuple(_FOLDER / f"{name}.toml" for name in ("hof_fennewald", "kestrel_hollow"))
"""One in each unit system; every input is edited in one of them."""
OTHERS: Final = tuple(path for path in sorted(_FOLDER.glob("*.toml")) if path not in DEMOS)
"""Recalculated as they are built."""
