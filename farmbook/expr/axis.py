"""Axes: the lists over which a line has one value each (ingredients, flushes, weeks)."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Axis"]


@dataclass(frozen=True)
class Axis:
    """One list. `direction` is fixed for the whole book, so that one formula serves a whole row or column.

    `order` settles the order of dimensions in an array; time axes come last. A `named` axis takes its members' names
    from the scenario and carries spare rows; the others have the fixed `members`. `ordered` axes may be stepped.
    """

    name: str
    label: str
    direction: str
    order: int
    named: bool = False
    ordered: bool = False
    members: tuple[str, ...] = ()
    most: int = 60

    def __hash__(self) -> int:
        return hash(self.name)  # axes are looked up all the time, and a text keeps its hash

    def __repr__(self) -> str:
        return self.name
