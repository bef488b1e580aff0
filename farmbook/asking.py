"""Asking at the terminal: the few figures that give a first answer for the whole farm, and the file they make."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from farmbook.errors import FarmbookError, ModelFault, ScenarioProblems
from farmbook.layout.template import starter
from farmbook.results import whole_farm
from farmbook.scenario.fields import Field, Table, tables_of
from farmbook.scenario.load import read
from farmbook.scenario.rewrite import Entry, rewritten
from farmbook.scenario.words import Path, where_of
from farmbook.sections.declare import Choice, NumberInput
from farmbook.units import displayed

__all__ = ["QUESTIONS", "Question", "StoppedAsking", "asked"]

ASSUMED: Final = "assumed"
"""The basis of what is left as the book has it."""


@dataclass(frozen=True)
class Question:
    """One figure to ask for: where it goes in the file, and the words of the question where the input's own will not do."""

    paths: tuple[Path, ...]
    words: str = ""


def _one(name: str, words: str = "") -> Question:
    return Question((tuple(name.split(".")),), words)


QUESTIONS: Final = (
    _one("farm.stage"),
    _one("farm.bags_filled_a_week"),
    _one("bag.wet_fill"),
    _one("crop.first_weight"),
    _one("crop.later_weight"),
    _one("crop.never_fruits"),
    _one("bag.own_material_cost"),
    _one("spawn.own_cost"),
    _one("crop.own_days_until_dumped"),
    _one("customer.best.price", "Best price that you get"),
    _one("customer.best.most_a_week", "How much goes at that price, at most"),
    _one("customer.second.price", "Second price"),
    _one("customer.second.most_a_week", "How much goes at the second price, at most"),
    _one("customer.rest.price", "Price of the rest"),
    Question(tuple(("customer", who, "unsold") for who in ("best", "second", "rest"))),
    _one("hours.hired_hours"),
    _one("farm.wage", "Pay for an hour of hired work, payroll tax and insurance in it"),
    _one("hours.own_hours"),
    _one("fruiting_room.own_places"),
    _one("bills.in_all"),
    _one("bills.energy", "Of these, energy bills a year"),
    _one("loans.payments"),
    _one("household.needs"),
    _one("household.other_income"),
)
"""In the order of the first block of Inputs; the rest of the starter stays as it is."""


class StoppedAsking(FarmbookError):
    """The answers ended before the questions did."""

    hint = "nothing was written; without --ask you get a file to fill in"

    def __init__(self, answered: int) -> None:
        super().__init__(f"the answers ended after {answered} of {len(QUESTIONS)} questions")


def asked(units: str, answer: Callable[[str], str | None], complain: Callable[[str], None]) -> str:
    """The starter with the answers in it. What is left blank stays as the book has it, and is marked as assumed.

    `answer` gives what is typed after a prompt, None at the end of the answers; raises StoppedAsking then.
    """
    text = starter(units)
    for number, question in enumerate(QUESTIONS, 1):
        text = _with_answer(text, question, number, answer, complain)
    return text


def _with_answer(
    text: str, question: Question, number: int, answer: Callable[[str], str | None], complain: Callable[[str], None]
) -> str:
    """The file with one more answer: asked again until it can be used."""
    mapping = tomllib.loads(text)
    prompt = _prompt(question, number, mapping)
    while True:
        typed = answer(prompt)
        if typed is None:
            raise StoppedAsking(number - 1)
        answered = bool(typed.strip())
        given: Any = _as_written(typed.strip()) if answered else _at(mapping, question.paths[0])
        changed = _changed(text, question.paths, given, "" if answered else ASSUMED)
        problem = _problem(changed, question.paths[0]) if answered else ""
        if not problem:
            return changed
        complain(problem)


def _changed(text: str, paths: tuple[Path, ...], value: float | str, basis: str) -> str:
    """The file with this value in each of these places."""
    entries = [Entry(path, _field(path), value, basis, note="", standard=False) for path in paths]
    changed = rewritten(text, header={}, rows=(), gone={}, changed=entries)
    if changed is None:
        raise ModelFault("the starter cannot be rewritten", where=where_of(paths[0]))
    return changed


def _prompt(question: Question, number: int, mapping: Mapping[str, Any]) -> str:
    field = _field(question.paths[0])
    declared, standing = field.declared, _at(mapping, question.paths[0])
    words = question.words or declared.label
    unit = ""
    if isinstance(declared, NumberInput):
        shown = displayed(declared.measure, str(mapping["units"])).said(str(mapping["currency"]))
        unit = f", {shown}" if shown else ""
    options = f" ({' or '.join(declared.labels)})" if isinstance(declared, Choice) else ""
    return f"\n{number} of {len(QUESTIONS)}  {words}{unit}{options}\n   {declared.how}\n   [{standing}] "


THOUSANDS: Final = re.compile(r"[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?")
"""As people write 19,500 or 1,200.50."""


@cache
def _tables() -> Mapping[str, Table]:
    return tables_of(type(section) for section in whole_farm().sections)


def _field(path: Path) -> Field:
    table = _tables()[path[0]]
    return (table.row_fields if table.axis is not None and len(path) > 2 else table.fields)[path[-1]]


def _at(mapping: Mapping[str, Any], path: Path) -> Any:
    inside: Any = mapping
    for key in path:
        inside = inside[key]
    return inside


def _as_written(typed: str) -> float | int | str:
    """A plain number, or a text with a unit of its own. Commas are taken away only where they part thousands: 4,50 stays a
    text, which the reader of files refuses.
    """
    plain = typed.replace(",", "") if THOUSANDS.fullmatch(typed) else typed
    try:
        return int(plain)
    except ValueError:
        pass
    try:
        return float(plain)
    except ValueError:
        return typed


def _problem(text: str, path: Path) -> str:
    """What the scenario's reader has to say against one value, in its own words; nothing where it can be used."""
    try:
        read(tomllib.loads(text), whole_farm())
    except ScenarioProblems as found:
        here = [str(problem) for problem in found.problems if problem.where == where_of(path)]
        return "\n".join(here or map(str, found.problems))
    return ""
