"""Change the source, run the tests, count what lives.

python -m tests.mutation --seed 1 --mutants 150

Draws changes of calc, expr, interpret, layout and one model section in ten. Each is made in a copy of the tree; the tests
nearest to it run first, then the rest but the live ones and those on the source itself. What lives is printed, and its share
at the end. Changes listed in equivalent.txt, with the reason, are not counted; once their lines have moved they are to be
judged anew. A result file lets a run be taken up again on the same tree.

The pictures of the shipped books see most changes, but cannot say which book is right: `--no-pictures` leaves them out, and
counts what tests that know the right figure see. Nothing is counted where a test fails without a change.
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
from threading import Lock
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
PICTURES: Final = "tests/workbook/test_picture.py"
"""Seconds long, and sees most changes of what a book says."""
WITHOUT_PICTURES: Final = f"--ignore={PICTURES}"
ALL: Final = ("tests/language", "tests/calc", "tests/model", "tests/twin", "tests/workbook", "tests/commands", "tests/scenario",
              "tests/checks", "tests/test_engines.py")  # fmt: skip
NOT_OF_USE: Final = ("--ignore=tests/commands/test_stopping.py", "-k", "not libreoffice")
"""Signals sent at many moments of a build, and a program that takes seconds to open: long; another engine runs the same cells."""
UNCHANGED: Final = "the tree as it is"
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


def stages(file: str, *, pictures: bool) -> list[list[str]]:
    """The tests in the order in which they run on a change of a file."""
    near = list(NEAREST[file.split("/")[1]])
    rest = [folder for folder in ALL if folder not in near]
    if not pictures:
        return [[WITHOUT_PICTURES, *near], [WITHOUT_PICTURES, *rest]]
    return [near, rest] if file.startswith("farmbook/calc") else [[PICTURES], near, rest]


def fate(change: Change, tree: Path, *, pictures: bool) -> str:
    """The first test that sees the change, or "" if it lives."""
    path = tree / change.file
    whole = path.read_text(encoding="utf-8")
    path.write_text(change.made_in(whole), encoding="utf-8")
    try:
        fates = (seen(tests, tree) for tests in stages(change.file, pictures=pictures))
        return next((found for found in fates if found), "")
    finally:
        path.write_text(whole, encoding="utf-8")


def seen(tests: Sequence[str], tree: Path) -> str:
    """The first of the tests that fails, or "" if all pass."""
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


def run(changes: Sequence[Change], results: Path, processes: int, *, pictures: bool) -> dict[str, str]:
    """The fate of each change; written to `results` as it becomes known. Ends the script where a test fails unchanged."""
    known: dict[str, str] = json.loads(results.read_text()) if results.exists() else {}
    writing = Lock()

    def told(what: str, found: str) -> None:
        with writing:
            known[what] = found
            results.write_text(json.dumps(known, indent=1))
            print("dies  " if found else "lives ", what, found, sep="  ", flush=True)  # noqa: T201

    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor(processes) as pool:
        trees: Queue[Path] = Queue()
        for number in range(processes):
            trees.put(copied(Path(folder) / str(number)))
        if UNCHANGED not in known:
            told(UNCHANGED, seen([*([] if pictures else [WITHOUT_PICTURES]), *ALL], Path(folder) / "0" / "tree"))
        if known[UNCHANGED]:
            sys.exit(f"nothing can be counted: without any change this fails: {known[UNCHANGED]}")

        def one(change: Change) -> None:
            tree = trees.get()
            try:
                told(str(change), fate(change, tree, pictures=pictures))
            finally:
                trees.put(tree)

        list(pool.map(one, [change for change in changes if str(change) not in known]))
    return {str(change): known[str(change)] for change in changes}


def main() -> int:
    """The script."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--mutants", type=int, default=150)
    options.add_argument("--processes", type=int, default=2)
    options.add_argument("--results", type=Path, default=Path("mutation-results.json"))
    options.add_argument("--no-pictures", action="store_true", help="with a result file of its own")
    chosen = options.parse_args()
    changes = drawn(chosen.seed, chosen.mutants)
    found = run(changes, chosen.results, chosen.processes, pictures=not chosen.no_pictures)
    equivalent = {line.partition("  # ")[0] for line in EQUIVALENT.read_text(encoding="utf-8").splitlines()}
    counted = {change: seen for change, seen in found.items() if change not in equivalent}
    living = [change for change, seen in counted.items() if not seen]
    print(f"\n{len(found)} changes, {len(found) - len(counted)} equivalent; {len(living)} of {len(counted)} live")  # noqa: T201
    print(*living, sep="\n")  # noqa: T201
    return int(len(living) > MOST_LIVING * len(counted))


if __name__ == "__main__":
    sys.exit(main())
