"""The farm once more with something changed, worked out as far as its answers need it."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from functools import cached_property
from typing import ClassVar

from farmbook.expr.graph import Source, closure
from farmbook.expr.nodes import Expr, Line
from farmbook.sections.alike import Alike
from farmbook.sections.cases import Again, needed_for
from farmbook.sections.declare import LineOf, NumberInput

__all__ = ["Alternative"]


class Alternative(Alike):
    """A section whose lines are those of earlier sections made again: all that its changes reach on the way to `wanted`.

    What it declares itself speaks of the lines made again by `of`.
    """

    wanted: ClassVar[tuple[LineOf, ...]] = ()

    @property
    def behind(self) -> str:
        """What stands behind the labels of lines made again."""
        return self.words

    @abstractmethod
    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """What lines, and numbers typed in, are in this alternative."""

    def of(self, declared: LineOf | NumberInput) -> Line:
        """The line or number of a declaration here: made again, or the farm's own where no change reaches it."""
        return self._again.line(self._own(declared))

    @property
    def lines(self) -> list[Line]:
        """What this alternative declares itself, and the lines made again."""
        return [*super().lines, *self._again.made.values()]

    @cached_property
    def _again(self) -> Again:
        given = {self._own(declared): changed for declared, changed in self.changes().items()}
        reads = needed_for((self.model.line(each) for each in self.wanted), given)
        read_by: dict[Source, list[Line]] = {}
        for line, read in reads.items():
            for each in read:
                read_by.setdefault(each, []).append(line)
        # A line that is given as itself stays the farm's own, and so does all that rests on such lines alone.
        moved = [line for line, changed in given.items() if changed is not line]
        reached = closure(moved, read_by) | (set(moved) & reads.keys())
        return Again(self.model.in_order(reached), given, self.key(), self.behind)

    def _own(self, declared: LineOf | NumberInput) -> Line:
        return self.model.used(declared) if isinstance(declared, NumberInput) else self.model.line(declared)
