"""What a line reads in one scenario, and what of it the options chosen there leave without a say."""

from __future__ import annotations

import math
from collections.abc import Iterator
from operator import ge, gt, le, lt
from typing import Final

from farmbook.errors import visible
from farmbook.expr import nodes as n
from farmbook.expr.texts import fold
from farmbook.interpret.words import condition_of, in_sentence
from farmbook.results import Computed
from farmbook.units import unit

__all__ = ["Read", "reads"]

Read = n.Line | n.RawInput | n.Constant

_COMPARED: Final = {"<": lt, "<=": le, ">": gt, ">=": ge}
_FLAG: Final = unit("flag")


def reads(computed: Computed, line: n.Line) -> dict[Read, str]:
    """What a line reads, in reading order, each with why it has no say in this scenario, or "" where it has.

    Without a say are the way not taken at a condition that is the same for every member, and what a flag of 0 multiplies.
    """
    found: dict[Read, str] = {}
    for read, why in _reads(computed, computed.roots[line], ""):
        found[read] = why and found.get(read, why)
    return found


def _reads(computed: Computed, expr: n.Expr, why: str) -> Iterator[tuple[Read, str]]:
    if isinstance(expr, n.Named):
        yield expr.constant, why
    elif isinstance(expr, n.Line | n.RawInput):
        yield expr, why
    else:
        for child, reason in _below(computed, expr):
            yield from _reads(computed, child, why or reason)


def _below(computed: Computed, expr: n.Expr) -> Iterator[tuple[n.Expr, str]]:
    """The nodes below one, each with why it has no say here."""
    if isinstance(expr, n.Where):
        holds = _holds(computed, expr.condition)
        why = "" if holds is None else _told(computed, expr.condition, holds=holds)
        yield expr.condition, ""
        yield expr.yes, why if holds is False else ""
        yield expr.no, why if holds is True else ""
    elif isinstance(expr, n.Multiply):
        why = _made_nothing(computed, expr.right)
        yield expr.left, why
        yield expr.right, "" if why else _made_nothing(computed, expr.left)
    else:
        yield from ((child, "") for child in n.children(expr))


def _made_nothing(computed: Computed, by: n.Expr) -> str:
    """Why what is multiplied by this is nothing, or "" where it is not a flag of 0."""
    is_flag = isinstance(by, n.Line) and by.unit == _FLAG and _holds(computed, by) is False
    return _told(computed, by, holds=False) if is_flag else ""


def _holds(computed: Computed, condition: n.Expr) -> bool | None:
    """Whether a condition holds; None where that differs from member to member, or is not to be told from values alone."""
    if isinstance(condition, n.Line):
        return _alike(bool(value) for value in computed.values[condition].reshape(-1))
    if isinstance(condition, n.SameText):
        texts = _text(computed, condition.left), _text(computed, condition.right)
        return None if None in texts else fold(texts[0] or "") == fold(texts[1] or "")
    if isinstance(condition, n.IsNumber):
        return _alike(math.isfinite(each) for each in computed.scenario.cells[condition.source].numbers.reshape(-1))
    if isinstance(condition, n.Compare):
        left, right = _amount(computed, condition.left), _amount(computed, condition.right)
        return None if left is None or right is None else _COMPARED[condition.sign](left, right)
    return None


def _alike(answers: Iterator[bool]) -> bool | None:
    different = set(answers)
    return different.pop() if len(different) == 1 else None


def _amount(computed: Computed, expr: n.Expr) -> float | None:
    """The value of a single-valued line or a bare number."""
    if isinstance(expr, n.Number):
        return expr.value
    return float(computed.values[expr][0]) if isinstance(expr, n.Line) and not expr.axes else None


def _text(computed: Computed, side: n.RawInput | n.Word) -> str | None:
    """A word, or what is typed in a cell that stands alone."""
    if isinstance(side, n.Word):
        return side.text
    return None if side.axes else str(computed.scenario.cells[side].texts[0])


def _told(computed: Computed, condition: n.Expr, *, holds: bool) -> str:
    """A condition as it stands here: the option chosen, where it asks for one."""
    asked = computed.roots[condition] if isinstance(condition, n.Line) else condition
    if isinstance(asked, n.SameText) and isinstance(asked.left, n.RawInput):
        return f'{in_sentence(asked.left.label)} is "{visible(_text(computed, asked.left) or "")}"'
    said = condition_of(condition)
    return said if holds else f"it is not so that {said}"
