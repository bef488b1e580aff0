"""What to measure next as text: the table of the book for a person, every figure swung for a program."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterator
from itertools import zip_longest
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.figures import plain_unit, spoken, spoken_change, spoken_usual, unit_words
from farmbook.finding import WIDTH
from farmbook.layout.swings import NOTHING_LEFT, Swing, Swings
from farmbook.matters import swings
from farmbook.results import Computed

__all__ = ["FIRST", "first_rows", "matters_json", "matters_text"]

FIRST: Final = 20
"""Figures that are told unless all are asked for."""
NAME, RANGE, LOW, HIGH = 42, 20, 16, 17
"""Characters of the columns; the rank before them takes what is left of a screen."""
INDENT: Final = " " * (WIDTH - NAME - RANGE - LOW - HIGH)


def matters_text(computed: Computed, first: int | None = FIRST) -> str:
    """The figures that swing a year's profit most, so many of them (None: all), each with how it is known and measured."""
    found = swings(computed)
    return "\n".join([*_table(computed, found, first), "", *_closing(found, first)])


def first_rows(computed: Computed, first: int) -> str:
    """The table alone, as the first sheet has it."""
    return "\n".join(_table(computed, swings(computed), first))


def _table(computed: Computed, found: Swings, first: int | None) -> list[str]:
    told = [row for rank, one in enumerate(found.rows[:first], 1) for row in _told(computed, _line(found), rank, one)]
    return [*_opening(computed, _line(found)), *told] if told else [NOTHING_LEFT]


def _line(found: Swings) -> Line:
    assert found.of is not None
    return found.of


def _opening(computed: Computed, profit: Line) -> list[str]:
    now = spoken(computed, profit, computed.values[profit].reshape(-1)[0])
    said = f"Profit is {now} {unit_words(computed, profit)}. Each figure alone at the ends of its usual range: so much more or less."
    heads = f"{INDENT}{'':<{NAME}}{'usual':>{RANGE}}{'at the low end':>{LOW}}{'at the high end':>{HIGH}}"
    return [*textwrap.wrap(said, WIDTH), "", heads]


def _told(computed: Computed, profit: Line, rank: int, one: Swing) -> Iterator[str]:
    """The rows of a figure: its name beside its range and what profit does, and below how it is known and measured."""
    used = one.bound.used
    assert used is not None
    usual = " to ".join(spoken_usual(computed, used, end) for end in (one.low, one.high))
    low, high = (spoken_change(computed, profit, change) for change in (one.at_low, one.at_high))
    figures = f"{usual:>{RANGE}}{low:>{LOW}}{high:>{HIGH}}"
    number = f"{rank:>{len(INDENT) - 2}}  "
    for before, name, beside in zip_longest([number], textwrap.wrap(one.name, NAME), [figures], fillvalue=""):
        yield f"{before or INDENT}{name:<{NAME}}{beside}".rstrip()
    now = f"{spoken(computed, used, one.value)} {unit_words(computed, used)}".rstrip()
    words = f"Now {now}, {one.basis}. {one.bound.declared.how}"
    yield from textwrap.wrap(words, WIDTH, initial_indent=INDENT, subsequent_indent=INDENT)


def _closing(found: Swings, first: int | None) -> list[str]:
    """How many figures were swung, and how many were left out."""
    count = len(found.rows)
    rest = (
        ""
        if first is None or count <= first
        else f", the first {first} stand here; `farmbook matters SCENARIO --all` gives the rest"
    )
    left_out = "; ".join(
        f"{why.label[:1].lower()}{why.label[1:]}, {each}" for why, each in found.left_out.items() if each
    )
    said = f"Figures swung: {count}{rest}. Left out: {left_out or 'none'}."
    return textwrap.wrap(said, WIDTH)


def matters_json(computed: Computed) -> str:
    """Every figure swung as a JSON list, the largest swing first; numbers in the units of the book, shares of 1."""
    found = swings(computed)
    return json.dumps([_record(computed, _line(found), one) for one in found.rows], indent=1, ensure_ascii=False)


def _record(computed: Computed, profit: Line, one: Swing) -> dict[str, object]:
    used = one.bound.used
    assert used is not None
    return {
        "name": one.bound.cell.name,
        "label": one.name,
        "members": dict(one.members),
        "value": one.value,
        "usual_low": one.low,
        "usual_high": one.high,
        "unit": plain_unit(computed, used),
        "basis": one.basis,
        "profit_at_low": one.at_low,
        "profit_at_high": one.at_high,
        "swing": one.size,
        "profit_unit": plain_unit(computed, profit),
        "how": one.bound.declared.how,
    }
