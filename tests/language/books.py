"""Small books of a few test sections: worked out, laid out by templates, written, recalculated by other programs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from farmbook.expr.axis import Axis
from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Line, RawInput
from farmbook.interpret.numbers import Array, Cells, Engine
from farmbook.layout.book import Book, Home, a1
from farmbook.layout.page import Plan
from farmbook.layout.place import place
from farmbook.layout.template import Template
from farmbook.sections.model import Model
from farmbook.workbook.write import write_book
from tests.engines import Availability, libreoffice, require
from tests.engines.cells import Book as OpenBook
from tests.engines.cells import Cell, disagreements, formula_cells, stored_values
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook
from tests.model.helpers import Given, Names, _Filling

__all__ = ["ENGINES", "Worked", "cells_of", "differences", "opened", "work_out"]

ENGINES = ("formualizer", "LibreOffice")
CREATED = dt.date(2020, 1, 1)


@dataclass(frozen=True)
class Worked:
    """A few sections and any further lines, worked out for one set of cells in one system of units."""

    model: Model
    system: str
    sizes: Mapping[Axis, int]
    engine: Engine
    cells: Mapping[RawInput, Cells]
    values: Mapping[Line, Array]
    openings: Mapping[Line, Array]
    roots: Mapping[Line, Any]

    def __getitem__(self, name: str) -> Array:
        """The values of a line by its dotted name, without the axis of draws."""
        return self.values[self.line(name)][0, ...]

    def line(self, name: str) -> Line:
        return next(line for line in self.roots if line.name == name)

    def plan(self) -> Plan:
        return Plan(self.model, self.system, "USD", self.sizes, self.roots, {}, {"Scenario": "test", "Version": "0"})

    def laid_out(self, templates: Sequence[Template], title: str) -> tuple[Book, Plan]:
        """Every sheet; `title` names the line at the head of each."""
        plan = self.plan()
        return place(plan, templates, title_line=title, verdict_line=title), plan

    def written(self, path: Path, templates: Sequence[Template], title: str) -> Book:
        """Write the workbook to a file and return where everything stands."""
        book, plan = self.laid_out(templates, title)
        data = write_book(book, plan, self.values, self.openings, self.cells, paper="a4", created=CREATED)
        path.write_bytes(data)
        return book


def cells_of(
    model: Model, system: str, sizes: Mapping[Axis, int], given: Given, names: Names | None = None
) -> dict[RawInput, Cells]:
    """The cells of every input: what is given, in metric units, else its default."""
    filling = _Filling(system, given, names or {}, sizes)
    for declared, bound in model.inputs.items():
        filling.fill(declared, bound)
    return filling.cells


def work_out(
    model: Model,
    system: str,
    sizes: Mapping[Axis, int],
    given: Given,
    *,
    names: Names | None = None,
    further: Iterable[Line] = (),
) -> Worked:
    """Work out every line of a model, and further lines that rest on it."""
    cells = cells_of(model, system, sizes, given, names)
    roots = {line: lower(line, system, "$") for line in (*model.lines, *further)}
    engine = Engine(Graph(roots), sizes, system)
    values = engine.run(cells)
    return Worked(model, system, sizes, engine, cells, dict(values), values.openings, roots)


def opened(program: str, path: Path) -> OpenBook:
    """The workbook in another program, which works out every formula itself; skips with a reason where it is absent."""
    if program == "formualizer":
        return FormualizerBook(path)
    available: Availability = libreoffice.available()
    require(available)
    return LibreOfficeBook(path)


def differences(path: Path, book: OpenBook) -> list[str]:
    """Every formula cell whose stored result is not what the other program makes of it."""
    stored = stored_values(path)
    formulas = list(formula_cells(path))
    return disagreements({cell: stored.get(cell) for cell in formulas}, book.read(formulas))


def address(home: Home, at: Mapping[Axis, int] | None = None) -> Cell:
    """Sheet and A1 address of one member of a line or input."""
    return home.sheet, a1(*home.place(at or {}))
