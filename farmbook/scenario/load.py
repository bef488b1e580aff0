"""Loading a scenario: files read, values gathered, cells filled, and every problem told at once."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

from farmbook.errors import Problem, ScenarioProblems
from farmbook.scenario.fields import Table, knows, tables_of
from farmbook.scenario.files import SourceFile, bases_of, check_depth, digest_of, read_file
from farmbook.scenario.fill import MOST_PROBLEMS, Missing, fill, sizes_of
from farmbook.scenario.gather import Gathered, Unknown, gather
from farmbook.scenario.header import MONTHS_USUAL
from farmbook.scenario.scenario import Scenario
from farmbook.scenario.words import listed, where_table
from farmbook.sections.model import Model

__all__ = ["given_in", "load", "read"]

_PAPERS: Final = {"us": "letter", "metric": "a4"}


def load(path: str | Path, model: Model) -> Scenario:
    """Load a scenario file and the files it extends.

    Raises FileProblem for a file that cannot be read, and ScenarioProblems, with every problem at once, for one that
    can be read but not used.
    """
    return _scenario(str(path), bases_of(read_file(Path(path))), model)


def read(mapping: Mapping[str, Any], model: Model, path: str = "scenario.toml") -> Scenario:
    """A scenario from tables already read, as if they stood in a file at `path`; raises as `load` does."""
    check_depth(mapping, path)
    content = json.dumps(mapping, sort_keys=True, default=str).encode()
    return _scenario(path, bases_of(SourceFile(Path(path), "", mapping, content)), model)


def given_in(path: str | Path, model: Model) -> Gathered:
    """What a scenario file and the files it extends give, as they give it; raises FileProblem for a file that cannot be read."""
    return _gathered(bases_of(read_file(Path(path))), _tables(model))


def _tables(model: Model) -> Mapping[str, Table]:
    return tables_of(type(section) for section in model.sections)


def _gathered(files: list[SourceFile], tables: Mapping[str, Table], others: Iterable[str] = ()) -> Gathered:
    gathered = Gathered()
    for file in reversed(files):
        gather(gathered, file.raw, tables, file.shown, others)
    return gathered


def _scenario(path: str, files: list[SourceFile], whole: Model) -> Scenario:
    model = whole.fitting({key for file in files for key in file.raw})
    tables = _tables(model)
    gathered = _gathered(files, tables, whole.parts)
    _told_what_they_need(gathered, whole, model)
    months = int(gathered.header.months or MONTHS_USUAL)
    sizes = sizes_of(model, gathered.rows, model.made_for(months))
    filled = fill(model, tables, gathered, sizes)
    problems = [*_header_problems(gathered), *gathered.problems, *_joined(gathered, filled.missing), *filled.problems]
    if problems:
        raise ScenarioProblems(path, _cut(problems))
    system = gathered.header.units
    return Scenario(
        path,
        digest_of(files),
        system,
        gathered.header.currency,
        gathered.header.paper or _PAPERS[system],
        months,
        {axis: tuple(gathered.rows.get(axis, ())) for axis in model.axes},
        sizes,
        filled.cells,
        filled.notes,
        (*filled.warnings, *_left_whole(model, gathered)),
        frozenset(model.parts),
    )


def _told_what_they_need(gathered: Gathered, whole: Model, model: Model) -> None:
    """Keys that are only known beside a table which the file does not have say so; few files have any."""
    for part in whole.parts.keys() - model.parts.keys() if gathered.unknown else ():
        tables = _tables(whole.fitting({part, *model.parts}))
        gathered.unknown = [
            replace(one, needed=part) if knows(tables, one.path) and not one.needed else one for one in gathered.unknown
        ]


def _left_whole(model: Model, gathered: Gathered) -> list[Problem]:
    """Tables of which a file gives nothing, though nearly every farm gives some of it."""
    given = {found.path[0] for found in gathered.values.values()}
    return [
        Problem(
            where_table((section.scenario_table(),)),
            "",
            f"left out whole, so the book fills all of it in; most farms give {listed(section.most_give)}",
        )
        for section in model.sections
        if section.most_give and section.scenario_table() not in given
    ]


def _header_problems(gathered: Gathered) -> list[Problem]:
    """What must stand at the top and does not; a key near to it is told of by the joining."""
    wanted = {
        "units": 'missing: what plain numbers mean, "us" or "metric"',
        "currency": 'missing: the currency in three capital letters, such as "USD"',
    }
    header = gathered.header
    return [
        Problem(key, "", words)
        for key, words in wanted.items()
        if not getattr(header, key)
        and (key,) not in gathered.bad
        and not any(other.near == key for other in gathered.unknown)
    ]


def _joined(gathered: Gathered, missing: list[Missing]) -> list[Problem]:
    """Unknown and missing keys; where one is the other misspelt, one problem tells both."""
    left = [one for one in missing if not _inside_unknown(one, gathered.unknown)]
    problems = []
    for unknown in gathered.unknown:
        here = {one.path[-1]: one for one in left if one.path[:-1] == unknown.path[:-1]}
        other = here.get(unknown.near)
        found = unknown.problem()
        if other is not None:
            left.remove(other)
            found = Problem(found.where, found.given, f"{found.wanted} That is missing: {other.wanted}")
        problems.append(found)
    return problems + [one.problem() for one in left]


def _inside_unknown(missing: Missing, unknown: list[Unknown]) -> bool:
    """Whether a missing field is given in a table whose name is misspelt."""
    return any(
        len(other.path) == 1
        and other.near == missing.path[0]
        and isinstance(other.value, Mapping)
        and missing.path[1] in other.value
        for other in unknown
    )


def _cut(problems: list[Problem]) -> list[Problem]:
    if len(problems) <= MOST_PROBLEMS:
        return problems
    return [
        *problems[:MOST_PROBLEMS],
        Problem("and more", "", "further problems are not shown; mend these first"),
    ]
