"""Finding a line or a cell by what a person calls it: a name, a label, or a part of either, in capitals or not."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache
from textwrap import wrap
from typing import Final

from farmbook.errors import FarmbookError, visible
from farmbook.expr.graph import Graph
from farmbook.expr.nodes import Line, RawInput
from farmbook.expr.texts import fold
from farmbook.interpret.formula import workbook_name
from farmbook.layout.template import shipped_templates
from farmbook.results import Computed, names_of
from farmbook.sections.earlier import earlier_names

__all__ = ["WIDTH", "Found", "NoSuchLine", "SeveralLines", "called", "called_in_book", "everything", "found", "head_of"]

Found = Line | RawInput
"""A line, or a cell that holds a text and so is handed on by no line of its own."""

WIDTH: Final = 100
"""Of a screen, in characters."""
MOST_LISTED: Final = 12
"""Lines that are read at a glance; who sees more does better to say more."""
LIKE_ENOUGH: Final = 0.75
"""Of 1; a slip or two of the keyboard in a name."""

_BETWEEN_WORDS: Final = re.compile(r"[\s!-/:-@\[-`{-~]+")
"""Spaces, and what a keyboard has that is no letter and no digit."""


class NoSuchLine(FarmbookError):
    """No line goes by these words."""

    def __init__(self, what: str, near: list[str], now: str = "") -> None:
        self.what, self.near, self.now = what, near, now
        self.hint = (
            f"it is now called `{now}`"
            if now
            else f"did you mean {' or '.join(f'`{one}`' for one in near)}?"
            if near
            else "give a word or two of its label; `farmbook show SCENARIO --all` lists every line"
        )
        super().__init__(f"there is no line called `{visible(what)}`")


class SeveralLines(FarmbookError):
    """Several lines have these words in them; the likeliest come first."""

    def __init__(self, what: str, lines: list[Found]) -> None:
        self.what, self.lines = what, tuple(lines)
        shown = lines[:MOST_LISTED]
        wide = max(len(called(line)) for line in shown)
        gap = "\n" + " " * (wide + 4)
        rows = [f"  {called(line):<{wide}}  {gap.join(wrap(head_of(line), WIDTH - wide - 4))}" for line in shown]
        if len(lines) > MOST_LISTED:
            rows.append(f"  and {len(lines) - MOST_LISTED} more")
        self.hint = f"give the name of one, such as {called(lines[0])}, or more of its label"
        super().__init__("\n".join([f"`{visible(what)}` fits {len(lines)} lines", "", *rows]))


def called(one: Found) -> str:
    """The name by which a person finds a line: that of its cell, if it is typed in."""
    return _bearer(one).name


def called_in_book(one: Found) -> str:
    """The same as it stands in the workbook, where a single value has a name of its own."""
    return called(one) if one.axes else workbook_name(_bearer(one))


def _bearer(one: Found) -> Found:
    """What bears the name: the cell of a number typed in."""
    return one if not isinstance(one, Line) or one.hands_on is None else one.hands_on


def head_of(one: Found) -> str:
    """The label that stands beside it."""
    return one.head if isinstance(one, Line) else one.label


def found(computed: Computed, what: str) -> Found:
    """The one line that a person means by `what`.

    That is a dotted name, a workbook name or a label, whole, or else a part of a label or name, or else words that all
    start a word in them; capitals and spaces do not matter. Raises NoSuchLine with near misses, and SeveralLines.
    """
    wanted = fold(" ".join(what.split()))
    known = everything(computed)
    if wanted in known:
        return known[wanted]
    if now := _now_called(computed, wanted):
        raise NoSuchLine(what, [now], now)
    fitting = _fitting([one for one in dict.fromkeys(known.values()) if _is_told(one)], wanted) if wanted else []
    if not fitting:
        near = difflib.get_close_matches(wanted, known, n=3, cutoff=LIKE_ENOUGH) if wanted else []
        raise NoSuchLine(what, list(dict.fromkeys(called(known[name]) for name in near)))
    if len(fitting) > 1:
        foremost = {name for sheet in shipped_templates() for name in sheet.comes_to}
        raise SeveralLines(what, sorted(fitting, key=lambda one: _rank(one, wanted, foremost)))
    return fitting[0]


def _now_called(computed: Computed, wanted: str) -> str:
    """The name of now of what an earlier version called so; empty where nothing was."""
    earlier = earlier_names(computed.model.inputs, (line.name for line in computed.roots))
    names = {fold(each): now for old, now in earlier.items() for each in (old, old.replace(".", "_"))}
    return names.get(wanted, names.get(wanted.removesuffix("_used"), ""))


def everything(computed: Computed) -> Mapping[str, Found]:
    """Every line, and every cell of text that lines read, by each of its names and its label, folded."""
    return _everything(computed.graph)


@lru_cache(maxsize=4)
def _everything(graph: Graph) -> Mapping[str, Found]:
    known: dict[str, Found] = {fold(name): line for name, line in names_of(graph.roots).items()}
    read = (cell for line in graph.roots for cell in graph.cells(line) if cell.kind in ("text", "choice"))
    ones: list[Found] = [*graph.roots, *dict.fromkeys(read)]
    for one in ones:
        for name in (one.name, workbook_name(one), one.label, head_of(one)):
            known.setdefault(fold(name), one)
    return known


def _is_told(one: Found) -> bool:
    """Whether it is worth offering: the flag beside an input has the same words as the input, and a line made again for
    another way of running the farm those of the line itself."""
    return isinstance(one, RawInput) or (one.kind != "flag" and not one.case)


def _fitting(ones: list[Found], wanted: str) -> list[Found]:
    """Those that have all of it in them at the start of a word, or else anywhere, or else each of its words."""
    plain = _plain(wanted)
    ways: tuple[Callable[[str], bool], ...] = (
        lambda text: plain in text,
        lambda text: plain.strip() in text,
        lambda text: all(f" {word}" in text for word in plain.split()),
    )
    texts = [(one, _plain(f"{fold(head_of(one))} / {called(one)}")) for one in ones]
    several: Iterable[list[Found]] = ([one for one, text in texts if fits(text)] for fits in ways)
    return next((fitting for fitting in several if fitting), []) if plain.strip() else []


def _plain(text: str) -> str:
    """Words alone, each with a space before it."""
    return " " + " ".join(_BETWEEN_WORDS.split(text)).strip()


def _rank(one: Found, wanted: str, foremost: set[str]) -> tuple[bool, bool, bool, int]:
    """Ahead stands what a sheet comes to; checks come last; then labels that start so; then short ones."""
    label = fold(head_of(one))
    is_check = isinstance(one, Line) and one.kind not in ("worked", "used")
    return one.name not in foremost, is_check, not label.startswith(wanted), len(label)
