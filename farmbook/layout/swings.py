"""What a line comes to when one figure typed in is taken to each end of its usual range: as it is fixed in a book."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.sections.section import Bound

__all__ = ["NONE_SWUNG", "NOTHING_LEFT", "LeftOut", "Swing", "Swings"]

NOTHING_LEFT: Final = "No figure that moves a year's profit by itself is left to measure."
"""Said where every one is measured, quoted, decided or of no weight."""


@dataclass(frozen=True)
class Swing:
    """One figure, with its usual range in the book's unit, and how much more or less the line comes to at each end of it.

    `members` says by axis of whom it is the figure; `basis` how it is known.
    """

    bound: Bound
    name: str
    members: Mapping[str, str]
    value: float
    low: float
    high: float
    at_low: float
    at_high: float
    basis: str

    @property
    def loss(self) -> float:
        """How far the line falls at the worse end; 0 or below."""
        return min(self.at_low, self.at_high, 0.0)

    @property
    def gain(self) -> float:
        """How far it rises at the better end; 0 or above."""
        return max(self.at_low, self.at_high, 0.0)

    @property
    def size(self) -> float:
        """The highest less the lowest, the figure as it is among them."""
        return self.gain - self.loss


class LeftOut(Enum):
    """Why a figure is left out, and more on that; the first reason that holds counts."""

    OWN = ("Measured or quoted", "Your own already.")
    BLANK = ("Left blank", "The book works them out from other figures.")
    DECIDED = ("Decided, or 0 on purpose", "Such as the flushes you keep: there is nothing to measure.")
    STILL = ("Move a year's profit by nothing", "At either end, by less than half a unit of money.")
    BOUND = ("Cannot move alone", "At an end of the range a check of the book fails that holds now.")

    @property
    def label(self) -> str:
        """In a few words."""
        return self.value[0]

    @property
    def words(self) -> str:
        """In a sentence."""
        return self.value[1]


@dataclass(frozen=True)
class Swings:
    """All figures that move a line, the one that moves it most first; how many were left out, by why; and the line as it is `now`."""

    of: Line | None = None
    rows: tuple[Swing, ...] = ()
    left_out: Mapping[LeftOut, int] = field(default_factory=dict)
    now: float = 0.0

    @property
    def at_stake(self) -> float:
        """What all of them would take off at their worse ends, each swung alone; 0 or below."""
        return sum(one.loss for one in self.rows)


NONE_SWUNG = Swings()
"""In a book for which nothing was swung."""
