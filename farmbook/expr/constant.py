"""Constants: numbers that keep their name, unit and source."""

from __future__ import annotations

from typing import Self

from farmbook.units import Unit

__all__ = ["Constant"]


class Constant(float):
    """A number with a name, a unit and a source.

    Beside plain numbers it is a number; beside a node it keeps its name and gets a cell.
    """

    name: str
    label: str
    unit: Unit
    source: str
    note: str

    def __new__(cls, value: float, name: str, *, label: str, unit: Unit, source: str, note: str = "") -> Self:
        """Make the number and keep what is known of it."""
        self = super().__new__(cls, value)
        self.name, self.label, self.unit, self.source, self.note = name, label, unit, source, note
        return self
