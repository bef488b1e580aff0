"""Which input of the tables holds a cell that has no number, or one that cannot be."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from farmbook.expr.functions import all_of
from farmbook.expr.nodes import CountWord, Expr, FirstLabel, Line
from farmbook.sections.declare import LineOf, NumberInput, line
from farmbook.sections.model import Model
from farmbook.sections.section import IMPOSSIBLE, NOT_A_NUMBER, Bound, Section

__all__ = ["ReportTables"]


class ReportTables(Section):
    """A sign for each number input of the tables; after every section that asks for anything, so that it sees them all."""

    title = "The tables of the book"

    model: Model

    def __init__(self, model: Model) -> None:
        super().__init__(model)
        self.sound: tuple[Line, ...] = tuple(
            self._add(bound)
            for bound in model.inputs.values()
            if isinstance(bound.declared, NumberInput) and bound.cell.axes
        )

    def _add(self, bound: Bound) -> Line:
        """A line that no declaration in the class body makes: it bears the label of its input."""
        declared = LineOf(_sound(bound), f"{bound.declared.label} (on Tables)", "flag")
        declared.__set_name__(type(self), bound.cell.name.replace(".", "_"))
        made = self._lines[declared] = self._make(declared)
        return made

    @line("The first input of the tables to put right", unit="1")
    def first_unsound(self) -> Expr:
        """By its label on the sheet Tables."""
        return FirstLabel(self.sound, tuple(line.label for line in self.sound), 0, "see the sheet Checks")


def _sound(bound: Bound) -> Callable[[Any], Expr]:
    def method(_: Section) -> Expr:
        """1 where each cell in use holds a number that can be."""
        assert bound.flag is not None
        return all_of(CountWord((bound.flag,), NOT_A_NUMBER) <= 0, CountWord((bound.flag,), IMPOSSIBLE) <= 0)

    return method
