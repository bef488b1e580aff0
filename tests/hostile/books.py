"""Damaged workbooks, and what is none, given as the existing output: `python -m tests.hostile.books --seed 1 --books 200`.

Each stands where `farmbook build` is to write, with and without `--replace`. A run fails that shows a traceback, raw text or
hangs, takes too much memory, loses what it says it left alone, or leaves a file behind.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import random
import stat
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from farmbook.workbook.fingerprint import unedited
from tests.hostile.damage import DAMAGES
from tests.hostile.watch import ROOT, Seen, watch
from tests.made import workbook_of

__all__ = ["Tried", "tried"]

SCENARIO: Final = ROOT / "scenarios" / "kestrel_hollow.toml"
GIVES_WAY: Final = {"flipped", "cut", "lying", "bomb", "swapped"}
"""Damages after which it may still be a workbook, and give way to `--replace`; nothing else ever does."""
STILL_UNEDITED: Final = {"flipped", "lying", "swapped"}
"""Damages that may leave the content of all parts as it was, so that it gives way by itself."""
WRITTEN: Final = "written over"
LEFT: Final = "left alone"


@dataclass(frozen=True)
class Tried:
    """One damaged book: how it was damaged, what the run showed, and every fault."""

    number: int
    damage: str
    replace: bool
    seen: Seen
    faults: list[str]

    @property
    def outcome(self) -> str:
        """In a word or two."""
        return WRITTEN if self.seen.code == 0 else LEFT


def tried(seed: int, count: int) -> Iterator[Tried]:
    """Run so many damaged books, every kind of damage in turn."""
    book = workbook_of(SCENARIO)
    for number in range(count):
        with tempfile.TemporaryDirectory() as folder:
            yield _one(number, random.Random(f"{seed} {number}"), book, Path(folder))


def _one(number: int, chance: random.Random, book: bytes, folder: Path) -> Tried:
    damage = DAMAGES[number % len(DAMAGES)]
    path = folder / "book.xlsx"
    damage(chance, book, path)
    replace = chance.random() < 0.4
    before = _standing(folder)
    may_go = damage.__name__ in (GIVES_WAY if replace else STILL_UNEDITED) or not path.exists()
    seen = watch(
        ["build", str(SCENARIO), "--out", path.name, *(["--replace"] if replace else [])], folder=folder, seconds=20
    )
    faults = [*seen.faults, *_losses(seen, path, before)]
    if seen.code == 0 and not may_go:
        faults.append("wrote over what is to stay")
    return Tried(number, damage.__name__, replace, seen, faults)


def _standing(folder: Path) -> dict[str, str]:
    """What stands in a folder and all below it: kind, permissions and content."""
    return {str(path.relative_to(folder)): _look(path) for path in sorted(folder.rglob("*"))}


def _look(path: Path) -> str:
    found = path.lstat()
    if stat.S_ISLNK(found.st_mode):
        return f"link to {os.readlink(path)}"
    plain = stat.S_ISREG(found.st_mode) and found.st_size < 2**27
    content = hashlib.sha256(path.read_bytes()).hexdigest() if plain else ""
    return f"{found.st_mode:o} {found.st_size if stat.S_ISREG(found.st_mode) else ''} {content}"


def _losses(seen: Seen, path: Path, before: dict[str, str]) -> list[str]:
    """What a run lost, or left behind."""
    after = _standing(path.parent)
    if seen.code != 0:
        return [] if after == before else ["says it wrote nothing, but something changed"]
    faults = [] if unedited(path) else ["says it wrote a workbook, but there is none"]
    target = os.path.realpath(path)
    new = set(after) - set(before) - {os.path.relpath(target, os.path.realpath(path.parent))}
    return [*faults, *(f"left behind: {name}" for name in sorted(new))]


def main() -> int:
    """Run what is asked for and print counts; returns 1 where any run has a fault."""
    parser = argparse.ArgumentParser(prog="python -m tests.hostile.books", description=__doc__)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--books", type=int, default=200)
    options = parser.parse_args()
    counts: Counter[tuple[str, str]] = Counter()
    slowest = largest = 0.0
    failed = 0
    for each in tried(options.seed, options.books):
        counts[each.damage, each.outcome] += 1
        slowest, largest = max(slowest, each.seen.seconds), max(largest, each.seen.peak_mb)
        failed += bool(each.faults)
        for fault in each.faults:
            sys.stdout.write(f"book {each.number} ({each.damage}, replace {each.replace}): {fault}\n")
    for (damage, outcome), count in sorted(counts.items()):
        sys.stdout.write(f"{damage:<14}{outcome:<14}{count:>5}\n")
    sys.stdout.write(f"{counts.total()} books, {failed} with a fault; at most {slowest:.1f} s and {largest:.0f} MB\n")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
