"""What a spreadsheet program lets a person type into an input cell, and what it tells them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from farmbook.expr.nodes import RawInput
from farmbook.layout.book import a1
from farmbook.layout.page import Plan
from farmbook.scenario.limits import hard_shown, usual_of
from farmbook.scenario.values import LONGEST_TEXT
from farmbook.sections.declare import BASES, Choice, NumberInput, TextInput
from farmbook.sections.section import Bound
from farmbook.units import Unit, displayed

__all__ = ["NOTE", "validation_of"]

TITLE, PROMPT, ERROR = 32, 255, 224
"""Longest texts that the file format allows (MS-OI29500 2.1.613)."""


def validation_of(cell: RawInput, bound: Bound, plan: Plan) -> Mapping[str, Any]:
    """XlsxWriter's description of the rule for one input cell."""
    declared = bound.declared
    if cell.kind == "basis":
        return _listed(
            list(BASES), "How you know this", "Measured and quoted figures count as your own; assumed is the book's."
        )
    if isinstance(declared, NumberInput):
        return _number(declared, plan)
    if isinstance(declared, Choice):
        return _listed(list(declared.labels), declared.label, declared.how)
    if isinstance(declared, TextInput) and declared.picks is not None:
        return _listed(_names_range(declared, plan), declared.label, declared.how)
    return _any_words(declared.label, declared.how)


def _names_range(declared: TextInput, plan: Plan) -> str:
    assert declared.picks is not None
    home = plan.homes[plan.model.axes[declared.picks].names]
    first, last = home.place({declared.picks: 0}), home.place({declared.picks: home.counts[0] - 1})
    corners = [a1(*place, row_fixed=True, column_fixed=True) for place in (first, last)]
    return f"={home.sheet}!{corners[0]}:{corners[1]}"


def _listed(source: list[str] | str, title: str, prompt: str) -> dict[str, Any]:
    return {
        "validate": "list",
        "source": source,
        "input_title": title[:TITLE],
        "input_message": prompt[:PROMPT],
        "error_title": "Not in the list",
        "error_message": "Pick one of the words in the list."[:ERROR],
    }


def _any_words(title: str, prompt: str) -> dict[str, Any]:
    """Any words, as long as a scenario file may hold them too."""
    return {
        "validate": "length",
        "criteria": "<=",
        "value": LONGEST_TEXT,
        "input_title": title[:TITLE],
        "input_message": prompt[:PROMPT],
        "error_title": "Too long",
        "error_message": f"At most {LONGEST_TEXT} characters fit here.",
    }


NOTE: Final = _any_words("Your note", "Whatever you want to remember of it.")


def _number(declared: NumberInput, plan: Plan) -> dict[str, Any]:
    shown = displayed(declared.measure, plan.system)
    usual = " to ".join(_spoken(limit, shown) for limit in usual_of(declared, plan.system))
    words = shown.shown(plan.currency)
    rule: dict[str, Any] = {
        "input_title": declared.label[:TITLE],
        "input_message": f"Usual: {usual}{'' if shown.share else ' ' + words}. {declared.how}"[:PROMPT],
        "error_title": "Not a possible number",
    }
    low, high = (float(f"{limit:.6g}") for limit in hard_shown(declared, plan.system, plan.currency))
    if high == float("inf"):
        limits = f"{_spoken(low, shown)} or more"
        rule |= {"validate": "decimal", "criteria": ">=", "value": low}
    else:
        limits = f"between {_spoken(low, shown)} and {_spoken(high, shown)}"
        rule |= {"validate": "decimal", "criteria": "between", "minimum": low, "maximum": high}
    return rule | {"error_message": f"Type a number {limits}{'' if shown.share else ' ' + words}."[:ERROR]}


def _spoken(value: float, shown: Unit) -> str:
    return f"{value * 100:.6g} %" if shown.share else f"{value:.10g}"
