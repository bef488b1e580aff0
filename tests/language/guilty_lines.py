"""Sections with one guilty line each, and the way of a line from its declaration to its formula."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.interpret.formula import formula_of
from farmbook.interpret.numbers.program import Program
from farmbook.sections.declare import Option, choice, line, number, uses
from farmbook.sections.model import Model
from farmbook.sections.section import Section

__all__ = [
    "BATCH",
    "COLUMN",
    "MONTH",
    "ONE_PHASE",
    "ROW",
    "SPELL",
    "Ground",
    "Guilty",
    "Method",
    "model_of",
    "worked_out",
]

ROW = Axis("row", "row", "down", 10, members=("upper", "lower"))
COLUMN = Axis("column", "column", "across", 20, members=("left", "right"))
MONTH = Axis("month", "month", "across", 90, ordered=True, members=("1", "2", "3"))
SPELL = Axis("spell", "spell", "down", 95, ordered=True, members=("1", "2"))
BATCH = Axis("batch", "batch", "down", 99, members=("early", "late"))
"""Lies after the months, so that a cycle stepped by the month cannot read what runs along both."""
THREE_PHASE = Option("three", "three-phase")
ONE_PHASE = Option("one", "one-phase")


def _number(label: str, of: str, *axes: Axis) -> Any:
    return number(label, unit=of, axes=axes, usual=(0, 1), default=1, how="Count.")


class Ground(Section):
    """What the guilty lines use; nothing is wrong here."""

    supply = choice("Supply", THREE_PHASE, ONE_PHASE, default=ONE_PHASE, how="Look.")
    wet = _number("Wet", "kg_wet")
    dry = _number("Dry", "kg_dry")
    cash = _number("Cash", "money")
    cost = _number("Cost", "money/bag_filled")
    warm = _number("Warm", "degC")
    rise = _number("Rise", "delta_degC")
    hours = _number("Hours", "h")
    minutes = _number("Minutes", "min")
    energy = _number("Energy", "kWh")
    plain = _number("Plain", "1")
    percent = _number("Percent", "percent")
    rows = _number("Rows", "1", ROW)
    warm_rows = _number("Warm rows", "degC", ROW)
    cash_rows = _number("Cash rows", "money", ROW)
    columns = _number("Columns", "1", COLUMN)
    months = _number("Months", "1", MONTH)
    warm_months = _number("Warm months", "degC", MONTH)

    @line("Words", unit="1")
    def worded(self) -> n.Expr:
        """A text."""
        return f.sentence(self.plain, "one", "two")

    @line("Balance", unit="1", axes=(MONTH,))
    def balance(self) -> n.Expr:
        """Stepped, as it should be."""
        return f.starting(self.plain, f.previous(self.balance, MONTH) + self.months)


Method = Callable[[Any], Any]


@dataclass(frozen=True)
class Guilty:
    """A line that must not pass: its unit, its expression, what is said of it."""

    unit: str
    method: Method
    what: str
    why: str = ""
    axes: tuple[Axis, ...] = ()
    others: Mapping[str, tuple[Method, tuple[Axis, ...]]] = field(default_factory=dict)


def model_of(guilty: Guilty) -> Model:
    """The guilty line, named `guilty.alone`, in a section of its own."""
    body: dict[str, Any] = {
        "ground": uses(Ground),
        "alone": line("Guilty", unit=guilty.unit, axes=guilty.axes)(guilty.method),
    }
    for name, (method, axes) in guilty.others.items():
        body[name] = line(name.capitalize(), unit=guilty.unit, axes=axes)(method)
    return Model([Ground, type("Guilty", (Section,), body)])


def worked_out(guilty: Guilty, system: str) -> None:
    """Take a line through lowering, numbers and formula."""
    model = model_of(guilty)
    roots = {each: lower(each, system) for each in model.lines}
    Program(Graph(roots), {ROW: 2, COLUMN: 2, MONTH: 3, SPELL: 2, BATCH: 2}, system, single=True)
    for each, root in roots.items():
        formula_of(each, root)
