"""One class per cause of failure: the facts are fields, the sentence is made in one place, the exit code stands on the class."""

from __future__ import annotations

import errno
from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar, Final

__all__ = [
    "DoesNotAddUp",
    "FarmbookError",
    "FileProblem",
    "KindMismatch",
    "ModelFault",
    "OutputProblem",
    "Problem",
    "ScenarioProblems",
    "reason_of",
    "visible",
]

_SPACES: Final = "\u00a0\u202f"
_REASONS: Final = {
    errno.EACCES: "permission is denied",
    errno.EPERM: "permission is denied",
    errno.EROFS: "the disk may only be read",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.EFBIG: "it is too large for the disk",
    errno.ENAMETOOLONG: "its name is too long",
    errno.ELOOP: "its links lead in a circle",
    errno.ENOENT: "its folder does not exist",
    errno.ENOTDIR: "its folder does not exist",
    errno.EPIPE: "the program that was to read it has ended",
}


def visible(text: str, *, keep: str = "") -> str:
    r"""A text with \u and four digits for everything that a screen would obey, or not show, save the characters to keep.

    Those are control characters, marks of writing direction, and bytes of a file's name that are no letters. The same stands
    for a character in a JSON text, so that such a text still says the same.
    """
    return "".join(
        character if character.isprintable() or character in _SPACES or character in keep else _escaped(character)
        for character in text
    )


def _escaped(character: str) -> str:
    units = character.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[place : place + 2].hex().upper()}" for place in range(0, len(units), 2))


def reason_of(error: OSError) -> str:
    """Why the system refused, in our own words."""
    return _REASONS.get(error.errno or 0, "the system does not allow it")


class FarmbookError(Exception):
    """Anything farmbook can explain to the person at the keyboard."""

    exit_code: ClassVar[int] = 1
    hint: str = ""

    def __init__(self, words: str) -> None:
        super().__init__(visible(words, keep="\n"))


class ModelFault(FarmbookError):
    """The model itself is wrong: a mistake in farmbook's own code or templates, never in a scenario."""

    exit_code = 3

    def __init__(self, what: str, *, where: str = "", why: str = "") -> None:
        self.what, self.where, self.why = what, where, why
        lines = [what, *(f"  {part}" for part in why.splitlines())]
        if where:
            lines.append(f"  declared at {where}")
        super().__init__("\n".join(lines))


class KindMismatch(FarmbookError):
    """Two quantities that must not be mixed meet in one expression."""

    exit_code = 3

    def __init__(self, found: str, wanted: str) -> None:
        self.found, self.wanted = found, wanted
        super().__init__(f"found {found}, wanted {wanted}")


@dataclass(frozen=True)
class Problem:
    """One thing wrong in a scenario: where it stands, what was given, what is wanted."""

    where: str
    given: str
    wanted: str

    def __str__(self) -> str:
        head = f"{self.where} = {self.given}" if self.given else self.where
        return f"  {head}\n    {self.wanted}"


class ScenarioProblems(FarmbookError):
    """A scenario file cannot be used as it stands; carries every problem at once."""

    def __init__(self, path: str, problems: Sequence[Problem], *, hint: str = "") -> None:
        self.path, self.problems, self.hint = path, tuple(problems), hint
        count = len(self.problems)
        title = f"{count} problem{'s' if count != 1 else ''} in `{visible(path)}`"
        super().__init__("\n\n".join([title, "\n".join(str(problem) for problem in self.problems)]))


class DoesNotAddUp(FarmbookError):
    """A scenario is in order, but the farm it describes cannot work: carries every check that fails."""

    def __init__(self, path: str, problems: Sequence[Problem]) -> None:
        self.path, self.problems = path, tuple(problems)
        super().__init__("\n".join([f"the book of `{visible(path)}` does not add up", *map(str, self.problems)]))


class FileProblem(FarmbookError):
    """A file cannot be read or written."""

    def __init__(self, path: str, reason: str, *, hint: str = "") -> None:
        self.path, self.reason, self.hint = path, reason, hint
        super().__init__(f"`{visible(path)}` {reason}")


class OutputProblem(FarmbookError):
    """What was to be printed could not be, or not whole."""

    def __init__(self, reason: str, *, hint: str = "") -> None:
        self.reason, self.hint = reason, hint
        super().__init__(f"the output cannot be written: {reason}")
