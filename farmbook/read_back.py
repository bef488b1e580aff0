"""From an edited workbook back to a scenario file, judged by the loader before it is written."""

from __future__ import annotations

import itertools
import math
import tomllib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from farmbook.errors import FileProblem, Problem, ScenarioProblems
from farmbook.expr.axis import Axis
from farmbook.expr.texts import fold
from farmbook.expr.walk import ordered_axes
from farmbook.layout.typed import name_of
from farmbook.results import whole_farm
from farmbook.scenario.fields import tables_of
from farmbook.scenario.gather import Gathered, Given
from farmbook.scenario.load import given_in, load, read
from farmbook.scenario.quantity import converted, decimal_of
from farmbook.scenario.rewrite import Entry, rewritten
from farmbook.scenario.scenario import Scenario
from farmbook.scenario.words import Path as Place
from farmbook.scenario.words import listed, where_of
from farmbook.sections.declare import NumberInput, TextInput
from farmbook.sections.model import Model
from farmbook.units import displayed
from farmbook.workbook.reading import EditedBook
from farmbook.workbook.told import Told, told_by
from farmbook.writing import look_at, target_of, write_whole

__all__ = ["ReadBack", "read_back", "save_scenario"]

_CLOSE: Final = 1e-12
"""Relative difference below which a number has not been changed: a workbook keeps some 15 digits."""
_PIECE_BY_PIECE: Final = "is written in a way that cannot be changed piece by piece"
_APART: Final = "write a file of its own by leaving out --into"


@dataclass(frozen=True)
class ReadBack:
    """The text of a scenario file, and what there is to say of how the workbook was read."""

    text: str
    remarks: Sequence[Problem]


def read_back(book: str | Path, out: str | Path, into: str | Path | None = None) -> ReadBack:
    """The scenario of an edited workbook, to stand at `out`; with `into`, that scenario file with what the book changes.

    Raises FileProblem for a file that cannot be used, and ScenarioProblems, with every problem at once and by its cell, for a
    workbook that no scenario can be made of.
    """
    edited = EditedBook(Path(book))
    model = _model_of(edited)
    base = load(into, model) if into is not None else None
    told = told_by(edited, model, _names(base, model))
    if base is not None:
        _alike(str(into), base, told)
    text = _text(told, Gathered())
    _judge(str(book), told, text, out, model)
    if base is not None and into is not None:
        if base.paper == told.header["paper"]:
            del told.header["paper"]
        if str(base.months) == told.header["months"]:
            del told.header["months"]
        text = _text(told, given_in(into, model), Path(into))
        _judge_changed(str(into), told, text, out, model)
    return ReadBack(text, told.remarks)


def _model_of(edited: EditedBook) -> Model:
    """The farm's model with the parts that the book has cells to type into for."""
    whole = whole_farm()
    return whole.fitting({declared.table for declared in whole.inputs if edited.cells(name_of("value", declared))})


def save_scenario(text: str, path: str | Path, *, replace: bool = False) -> None:
    """Write a scenario file whole or not at all. Raises FileProblem where another file stands there, unless `replace`."""
    target, data = target_of(path), text.encode()
    if not str(path).lower().endswith(".toml"):
        raise FileProblem(str(path), "is no name for a scenario file", hint="give a file name that ends in .toml")
    found = look_at(target)
    if found is not None and not (target.is_file() and (replace or target.read_bytes() == data)):
        hint = "give another name, or --replace to overwrite it" if target.is_file() else "give another name"
        raise FileProblem(str(path), "exists already, so it was left as it is", hint=hint)
    write_whole(data, target)


def _names(base: Scenario | None, model: Model) -> Mapping[Axis, Mapping[str, str]]:
    """The names of a scenario's rows by their keys."""
    if base is None:
        return {}
    return {
        axis: dict(zip(keys, map(str, base.cells[model.axes[axis].names].texts[0]), strict=False))
        for axis, keys in base.rows.items()
    }


def _alike(path: str, base: Scenario, told: Told) -> None:
    """A book's numbers mean something else in a file of other units or another currency."""
    for key, own in (("units", base.system), ("currency", base.currency)):
        if told.header[key] != own:
            raise FileProblem(path, f"has the {key} {own}, the workbook {told.header[key]}", hint=_APART)


def _text(told: Told, given: Gathered, into: Path | None = None) -> str:
    """The scenario file of what a workbook says, changed only where it says something else than was given."""
    now = {entry.path for entry in told.entries}
    before = {found.path: found for found in given.values.values()}
    lists = {found.path: declared.axes for (declared, _), found in given.values.items()}
    system = told.header["units"]
    differing = [
        entry
        for entry in told.entries
        if not (_same(entry, before[entry.path], system, told) if entry.path in before else entry.standard)
    ]
    changed = [entry for entry in differing if not (entry.standard and before[entry.path].origin == "")]
    now -= {entry.path for entry in differing} - {entry.path for entry in changed}
    rows: list[Place] = [(axis.name, key) for axis, keys in told.rows.items() for key in keys]
    stood: list[Place] = [(axis.name, key) for axis, keys in given.rows.items() for key in keys]
    gone: dict[Place, tuple[str, ...]] = {path: () for path in stood if path not in rows}
    for path in before:
        if path not in now and path[:2] not in gone:
            gone[path] = next((axis.members for axis in lists[path] if path[-1] in axis.members), ())
    new = [path for path in rows if path not in stood]
    header = {key: word for key, word in told.header.items() if getattr(given.header, key) != word}
    start = into.read_bytes().decode("utf-8-sig") if into else ""
    text = rewritten(start, header, new, gone, changed)
    if text is None:
        raise FileProblem(str(into), _PIECE_BY_PIECE, hint=_APART)
    return text


def _same(entry: Entry, found: Given, system: str, told: Told) -> bool:
    """Whether a file says already what the workbook says."""
    declared = entry.field.declared
    if fold(entry.basis) != fold(found.basis) or entry.note != found.note:
        return False
    if isinstance(declared, NumberInput):
        return _near(entry.value, float(converted(found.number, declared.measure, displayed(declared.measure, system))))
    if isinstance(declared, TextInput) and declared.picks is not None:
        return fold(told.rows[declared.picks].get(found.text, found.text)) == fold(str(entry.value))
    return found.text == entry.value


def _near(value: float | str, other: float | str) -> bool:
    if isinstance(value, float) and isinstance(other, float):
        return math.isclose(value, other, rel_tol=_CLOSE, abs_tol=0.0)
    return isinstance(value, str) and isinstance(other, str) and fold(value) == fold(other)


def _judge(book: str, told: Told, text: str, out: str | Path, model: Model) -> None:
    """Let the loader read a workbook's scenario; every problem is told by the cell it stands in, all at once."""
    problems = list(told.problems)
    try:
        _loaded(text, out, model)
    except ScenarioProblems as complaint:
        problems += [_by_cell(each, told) for each in complaint.problems]
    if problems:
        raise ScenarioProblems(book, _once(problems), hint="mend these cells and save the workbook, then read it again")


def _judge_changed(into: str, told: Told, text: str, out: str | Path, model: Model) -> None:
    """Let the loader read a scenario file that was changed: it must be in order, and say what the workbook says."""
    try:
        scenario = _loaded(text, out, model)
    except (ScenarioProblems, tomllib.TOMLDecodeError):
        raise FileProblem(into, _PIECE_BY_PIECE, hint=_APART) from None
    lost = _differing(told, scenario, model)
    if lost:
        raise FileProblem(str(out), f"would not hold what the workbook says of {listed(lost, 5)}", hint=_APART)


def _loaded(text: str, out: str | Path, model: Model) -> Scenario:
    return read(tomllib.loads(text, parse_float=decimal_of), model, str(out))


def _differing(told: Told, scenario: Scenario, model: Model) -> list[str]:
    """The places of a scenario that do not hold what a workbook says, as where a file that it extends still gives a value."""
    said = {entry.path: entry for entry in told.entries}
    held = dict(_held(scenario, model))
    differing = [path for path, entry in said.items() if path not in held or not _equal(entry, *held[path])]
    return [where_of(path) for path in [*differing, *(path for path in held if path not in said)]]


def _held(scenario: Scenario, model: Model) -> Iterator[tuple[Place, tuple[float | str, str, str]]]:
    """Every value, basis and note of a scenario, by its place in the file; what is blank is left out."""
    for table in tables_of(type(section) for section in model.sections).values():
        for field in (*table.fields.values(), *table.row_fields.values()):
            bound, axes = model.inputs[field.declared], ordered_axes(field.declared.axes)
            cells, notes = scenario.cells[bound.cell], scenario.notes.get(bound.cell, {})
            members = [scenario.rows[axis] if axis.named else axis.members for axis in axes]
            for index in itertools.product(*(range(len(each)) for each in members)):
                keys = {axis: each[at] for axis, each, at in zip(axes, members, index, strict=True)}
                number = float(cells.numbers[(0, *index)]) if isinstance(field.declared, NumberInput) else math.nan
                value = str(cells.texts[(0, *index)]) if math.isnan(number) else number
                basis = "" if bound.basis is None else str(scenario.cells[bound.basis].texts[(0, *index)])
                if value != "":
                    yield field.path(keys), (value, basis, notes.get(index, ""))


def _equal(entry: Entry, value: float | str, basis: str, note: str) -> bool:
    return _near(entry.value, value) and fold(entry.basis) == fold(basis) and entry.note == note


def _by_cell(problem: Problem, told: Told) -> Problem:
    """A problem of the loader's, by the cell that it is about."""
    place = told.places.get(problem.where)
    return Problem(place or problem.where, problem.given, problem.wanted)


def _once(problems: Iterable[Problem]) -> list[Problem]:
    """Each cell's first problem only."""
    found: dict[str, Problem] = {}
    for problem in problems:
        found.setdefault(problem.where, problem)
    return list(found.values())
