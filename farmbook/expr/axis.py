"""Axes: the lists over which a line has one value each (ingredients, flushes, weeks)."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Axis"]


@dataclass(frozen=True)
class Axis:
    """One list. `direction` is fixed for the whole book, so that one formula serves a whole row or column.

    `order` settles the order of dimensions in an array; time axes come last. A `named` axis takes its members' names
    from the scenario and carries spare rows. A `sized` one has as many members as the model is made for, called by their
    numbers; of these, so many `before` and `after` the plan are not drawn. The others have the fixed `members`. `ordered` axes
    may be stepped.
    """

    name: str
    label: str
    direction: str
    order: int
    named: bool = False
    ordered: bool = False
    members: tuple[str, ...] = ()
    most: int = 60
    sized: bool = False
    before: int = 0
    after: int = 0

    def called(self, place: int) -> str:
        """What the member in a place, counted from 0, is called where the scenario does not name it."""
        return str(place + 1) if self.sized else self.members[place]

    def __hash__(self) -> int:
        return hash(self.name)  # axes are looked up all the time, and a text keeps its hash

    def __repr__(self) -> str:
        return self.name
