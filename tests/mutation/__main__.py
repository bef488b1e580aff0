"""Change the source, run the tests, count what lives.

python -m tests.mutation --seed 1 --mutants 150

Draws changes of calc, expr, interpret, layout and one model section in ten. Each is made in a copy of the tree; the tests
nearest to it run first, then the rest but the live ones and those on the source itself. What lives is printed, and its share
at the end. Changes listed in equivalent.txt, with the reason, are not counted; once their lines have moved they are to be
judged anew. A result file lets a run be taken up again on the same tree.
"""

from __future__ import annotations

import argparse
import json
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from queue import Queue
from typing import Final

from tests.mutation.changes import Change, changes_of

ROOT: Final = Path(__file__).parents[2]
EQUIVALENT: Final = Path(__file__).with_name("equivalent.txt")
NEAREST: Final[dict[str, tuple[str, ...]]] = {
    "calc": ("tests/calc",),
    "expr": ("tests/language", "tests/calc"),
    "interpret": ("tests/language",),
    "layout": ("tests/workbook", "tests/language"),
    "model": ("tests/twin", "tests/model", "tests/checks"),
}
FIRST: Final = ("tests/workbook/test_picture.py",)
"""Seconds long, and sees most changes of what a book says."""
ALL: Final = ("tests/language", "tests/calc", "tests/model", "tests/twin", "tests/workbook", "tests/commands", "tests/scenario",
              "tests/checks", "tests/test_engines.py")  # fmt: skip
NOT_OF_USE: Final = ("--ignore=tests/commands/test_stopping.py", "-k", "not libreoffice")
"""Signals sent at many moments of a build, and a program that takes seconds to open: long; another engine runs the same cells."""
MOST_SECONDS: Final = 900
MOST_LIVING: Final = 0.03


def drawn(seed: int, number: int) -> list[Change]:
    """So many changes of the files that the run is for."""
    chance = random.Random(seed)
    package = ROOT / "farmbook"
    files = [
        path for folder in ("calc", "expr", "interpret", "layout") for path in sorted((package / folder).rglob("*.py"))
    ]
    files += sorted((package / "model").rglob("*.py"))[seed % 10 :: 10]
    every = [change for path in files for change in changes_of(path, ROOT)]
    return chance.sample(every, min(number, len(every)))


def fate(change: Change, tree: Path) -> str:
    """The first test that sees the change, or "" if it lives."""
    path = tree / change.file
    whole = path.read_text(encoding="utf-8")
    path.write_text(change.made_in(whole), encoding="utf-8")
    try:
        near = NEAREST[change.file.split("/")[1]]
        first = "" if change.file.startswith("farmbook/calc") else _seen(FIRST, tree)
        return first or _seen(near, tree) or _seen([folder for folder in ALL if folder not in near], tree)
    finally:
        path.write_text(whole, encoding="utf-8")


def _seen(tests: Sequence[str], tree: Path) -> str:
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *NOT_OF_USE, *tests]
    try:
        run = subprocess.run(command, cwd=tree, capture_output=True, timeout=MOST_SECONDS, check=False)
    except subprocess.TimeoutExpired:
        return "no end"
    if run.returncode == 0:
        return ""
    lines = run.stdout.decode(errors="replace").splitlines()
    return next((line for line in reversed(lines) if line.startswith(("FAILED", "ERROR"))), "no test could run")[:160]


def copied(folder: Path) -> Path:
    """A copy of the tree, without what git or a virtual environment keeps."""
    return Path(
        shutil.copytree(ROOT, folder / "tree", ignore=shutil.ignore_patterns(".*", "__pycache__", "*.egg-info"))
    )


def run(changes: Sequence[Change], results: Path, processes: int) -> dict[str, str]:
    """The fate of each change; written to `results` as it becomes known."""
    known: dict[str, str] = json.loads(results.read_text()) if results.exists() else {}
    with tempfile.TemporaryDirectory() as folder:
        trees: Queue[Path] = Queue()
        for number in range(processes):
            trees.put(copied(Path(folder) / str(number)))

        def one(change: Change) -> None:
            if str(change) in known:
                return
            tree = trees.get()
            known[str(change)] = fate(change, tree)
            trees.put(tree)
            results.write_text(json.dumps(known, indent=1))
            print("lives " if not known[str(change)] else "dies  ", change, known[str(change)], sep="  ", flush=True)  # noqa: T201

        with ThreadPoolExecutor(processes) as pool:
            list(pool.map(one, changes))
    return {str(change): known[str(change)] for change in changes}


def main() -> int:
    """The script."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--mutants", type=int, default=150)
    options.add_argument("--processes", type=int, default=2)
    options.add_argument("--results", type=Path, default=Path("mutation-results.json"))
    chosen = options.parse_args()
    found = run(drawn(chosen.seed, chosen.mutants), chosen.results, chosen.processes)
    equivalent = {line.partition("  # ")[0] for line in EQUIVALENT.read_text(encoding="utf-8").splitlines()}
    counted = {change: seen for change, seen in found.items() if change not in equivalent}
    living = [change for change, seen in counted.items() if not seen]
    print(f"\n{len(found)} changes, {len(found) - len(counted)} equivalent; {len(living)} of {len(counted)} live")  # noqa: T201
    print(*living, sep="\n")  # noqa: T201
    return int(len(living) > MOST_LIVING * len(counted))


if __name__ == "__main__":
    sys.exit(main())
