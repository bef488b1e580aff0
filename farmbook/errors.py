"""One class per cause of failure: the facts are fields, the sentence is made in one place, the exit code stands on the class."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

__all__ = ["FarmbookError", "FileProblem", "KindMismatch", "ModelFault", "Problem", "ScenarioProblems"]


class FarmbookError(Exception):
    """Anything farmbook can explain to the person at the keyboard."""

    exit_code: ClassVar[int] = 1
    hint: str = ""


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
        title = f"{count} problem{'s' if count != 1 else ''} in `{path}`"
        super().__init__("\n\n".join([title, "\n".join(str(problem) for problem in self.problems)]))


class FileProblem(FarmbookError):
    """A file cannot be read or written."""

    def __init__(self, path: str, reason: str, *, hint: str = "") -> None:
        self.path, self.reason, self.hint = path, reason, hint
        super().__init__(f"`{path}` {reason}")
