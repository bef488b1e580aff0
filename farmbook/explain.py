"""Explaining a line: its formula in words, its value, and what feeds it, down to the inputs."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from typing import Final

from farmbook.expr.nodes import Constant, Line, RawInput
from farmbook.figures import spoken_cell, spoken_constant, spoken_values
from farmbook.finding import WIDTH, called, found, head_of
from farmbook.interpret.words import sentence_of
from farmbook.relevance import Read, reads
from farmbook.results import Computed

__all__ = ["DEPTH", "explanation"]

DEPTH: Final = 3
"""Levels below a line that are told unless more are asked for; a screen or two for most lines."""
MOST_FED: Final = 40
"""What feeds one line and is still told; only what counts cells of the whole book reads more."""
NARROWEST: Final = 50


def explanation(computed: Computed, what: str, depth: int = DEPTH) -> str:
    """A line and what feeds it, so many levels down (1 or more), each line explained once and indented by its distance.

    `what` is a name, a label or a part of one (see `finding.found`, which raises NoSuchLine and SeveralLines). What the
    options of this scenario leave without a say is named, with the reason, and not gone into.
    """
    telling = _Telling(computed, depth)
    one = found(computed, what)
    rows = list(telling.typed(one, 0) if isinstance(one, RawInput) else telling.of(one, 0))
    return "\n".join([*rows, *telling.left_out()])


class _Telling:
    """One explanation as it grows: the lines explained so far, and those that stand at its end."""

    def __init__(self, computed: Computed, depth: int) -> None:
        self._computed, self._depth = computed, depth
        self._explained: set[Line] = set()
        self._ends: dict[Line, None] = {}

    def of(self, line: Line, level: int) -> Iterator[str]:
        """The rows of a line and of all below it; signs beside cells and checks are not gone into by the way."""
        said = f"{line.head}: {spoken_values(self._computed, line)}"
        if line.hands_on is not None:
            yield from _row(level, said, f"[{called(line)}, input]")
        elif line.kind in ("flag", "error", "alert") and level:
            yield from _row(level, said, f"[{line.name}]")
        elif line in self._explained:
            yield from _row(level, said, f"[{line.name}, as above]")
        elif level >= self._depth:
            self._ends[line] = None
            yield from _row(level, said, f"[{line.name}] ...")
        else:
            self._explained.add(line)
            yield from _row(level, said, f"[{line.name}]")
            yield from _row(level + 1, f"= {sentence_of(line.expr)}")
            yield from self._feeding(line, level + 1)

    def _feeding(self, line: Line, level: int) -> Iterator[str]:
        feeding = reads(self._computed, line)
        if len(feeding) > MOST_FED:
            yield from _row(level, f"{len(feeding)} cells and lines are read, too many to tell")
            return
        for read, why in feeding.items():
            if why:
                yield from _row(level, f"{_head(read)}: not used, as {why}")
            elif isinstance(read, Constant):
                yield from _row(level, f"{read.label}: {spoken_constant(self._computed, read)}", f"[{read.name}]")
            elif isinstance(read, RawInput):
                yield from self.typed(read, level)
            elif read is not line:
                yield from self.of(read, level)

    def typed(self, cell: RawInput, level: int) -> Iterator[str]:
        """The row of a cell that is read as it was typed."""
        yield from _row(level, f"{cell.label}: {spoken_cell(self._computed, cell)}", f"[{cell.name}, input]")

    def left_out(self) -> Iterator[str]:
        """How many lines stand further down, and how to see them."""
        ends = [line for line in self._ends if line not in self._explained]
        if ends:
            below = self._below(ends) - self._explained
            yield ""
            yield from textwrap.wrap(
                f"... stands where more feeds a line: {len(below)} lines and inputs further down are left out; "
                f"--depth {self._depth + 1} goes one level deeper, and each line can be explained by its name.",
                WIDTH,
            )

    def _below(self, lines: Iterable[Line]) -> set[Line]:
        """All that feeds these lines in this scenario."""
        met: set[Line] = set()
        waiting = list(lines)
        while waiting:
            for read, why in reads(self._computed, waiting.pop()).items():
                if isinstance(read, Line) and not why and read not in met:
                    met.add(read)
                    waiting.append(read)
        return met - set(self._ends)


def _head(read: Read) -> str:
    return read.label if isinstance(read, Constant) else head_of(read)


def _row(level: int, text: str, name: str = "") -> Iterator[str]:
    """A row at its distance, on further ones where it is too long for the screen; its name is never broken."""
    pad = "  " * level
    room = max(WIDTH, len(pad) + NARROWEST)
    rows = textwrap.wrap(
        text, room, initial_indent=pad, subsequent_indent=f"{pad}    ", break_long_words=False, break_on_hyphens=False
    )
    if name and len(rows[-1]) + 3 + len(name) <= room:
        rows[-1] += f"   {name}"
    elif name:
        rows.append(f"{pad}    {name}")
    yield from rows
