"""Thousands of hostile scenario files given to `check`, `show` or `explain`, and `build`: words and an exit code must come of each.

python -m tests.hostile.scenarios --seed 1 --files 5000

For speed many files go through one process, `--worker`, which calls the commands; it is watched from outside. Prints counts
and every fault with the seed and number that make the files again; ends with 1 if there is a fault.
"""

from __future__ import annotations

import argparse
import contextlib
import io
import json
import os
import queue
import re
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import IO, Final

from tests.hostile.mutations import KINDS, MAIN, ROOT, hostile
from tests.hostile.watch import MOST_MB, environment, raw_text

__all__ = ["Outcome", "faults_of", "judged", "next_outcome", "report", "run"]

MOST_SECONDS: Final = 20.0
FILES_A_PROCESS: Final = 100
ROOM: Final = 4 * 2**30
ONE_BUILD_IN: Final = 4
"""Every file goes to `check` and to `show` or `explain`; of those that give a farm, one in so many goes to `build`, which takes longest."""
NO_FIGURE: Final = re.compile(r"(?<![\w.])[+-]?(?:nan|inf|Infinity|NaN)\b")
TOLD: Final[tuple[list[str], ...]] = (
    ["show", MAIN],
    ["show", MAIN, "--json"],
    ["show", MAIN, "--csv"],
    ["show", MAIN, "--all"],
    ["show", MAIN, "recipe"],
    ["show", MAIN, "tables", "--names"],
    ["show", MAIN, "inputs"],
    ["explain", MAIN, "growing_cost.cost_per_taken", "--depth", "99"],
    ["explain", MAIN, "steamer"],
)
"""Ways of looking at results, which the numbers of a run take in turn; the last fits several lines, so that none is told."""


@dataclass
class Outcome:
    """What became of the files of one number."""

    number: int
    kind: str
    codes: list[int] = field(default_factory=list)
    seconds: float = 0
    peak_mb: float = 0
    faults: list[str] = field(default_factory=list)


def faults_of(arguments: Sequence[str]) -> tuple[int, list[str]]:
    """Run one command in this process: its exit code, and what is wrong with what it said."""
    from farmbook.cli import main  # after the room is limited

    out, err = (io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True) for _ in range(2))
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            code = main(arguments)
    except SystemExit as end:
        code = end.code if isinstance(end.code, int) else 1
    except BaseException as raised:  # noqa: BLE001 - whatever it is, a user would see a traceback
        return -1, [f"{arguments[0]}: {type(raised).__name__}: {str(raised)[:200]}"]
    said, complained = (stream.buffer.getvalue().decode("utf-8", "replace") for stream in (out, err))
    faults = [f"raw text: {piece}" for piece in raw_text(said) + raw_text(complained)]
    faults += [f"no figure: {match[0]}" for match in NO_FIGURE.finditer(said)] if code == 0 else []
    if code not in (0, 1):
        faults.append(f"exit code {code}")
    if code and not complained.strip():
        faults.append("no word of what is wrong")
    return code, [f"{arguments[0]}: {fault}" for fault in faults]


def judged(seed: int, number: int) -> Outcome:
    """Make the files of a number in a folder of their own and give them to every command."""
    files = hostile(seed, number)
    found = Outcome(number, files.kind)
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as name, contextlib.chdir(name):
        for path, content in files.files.items():
            Path(path).write_bytes(content)
        book = Path("book.xlsx")
        for arguments in (
            ["check", MAIN],
            TOLD[number % len(TOLD)],
            ["build", MAIN, "--out", str(book)],
        ):
            if arguments[0] == "build" and found.codes[0] == 0 and number // len(KINDS) % ONE_BUILD_IN:
                continue
            code, faults = faults_of(arguments)
            found.codes.append(code)
            found.faults += faults
        if book.exists() is not (found.codes[2:] == [0]):
            found.faults.append("build: a book where none was promised, or none where one was")
    found.seconds = time.monotonic() - start
    return found


def work(seed: int, numbers: Iterator[int]) -> None:
    """Judge numbers one after the other, a line of JSON for each."""
    import resource  # not on every system

    resource.setrlimit(resource.RLIMIT_AS, (ROOM, ROOM))
    line = os.fdopen(os.dup(1), "w", encoding="utf-8")
    for number in numbers:
        Path("/proc/self/clear_refs").write_text("5", encoding="ascii")  # the peak is counted anew
        found = judged(seed, number)
        status = Path("/proc/self/status").read_text(encoding="ascii")
        found.peak_mb = int(re.findall(r"VmHWM:\s+(\d+) kB", status)[0]) / 1024
        print(json.dumps(asdict(found)), file=line, flush=True)


def told(seed: int, numbers: range) -> Iterator[Outcome]:
    """The outcome of each number, from a process that is watched; one that hangs or dies is at fault, and the next takes over."""
    while numbers:
        left = f"{numbers.start}:{numbers.stop}:{numbers.step}"
        command = [sys.executable, "-m", "tests.hostile.scenarios", "--seed", str(seed), "--worker", left]
        with subprocess.Popen(
            command, cwd=ROOT, env=environment(), stdout=subprocess.PIPE, stderr=subprocess.PIPE
        ) as run:
            lines: queue.SimpleQueue[bytes] = queue.SimpleQueue()
            assert run.stdout is not None
            threading.Thread(target=_passed_on, args=(run.stdout, lines), daemon=True).start()
            while numbers and (found := next_outcome(run, lines, numbers[0])) is not None:
                yield found
                numbers = numbers[1:]
                if found.codes == [-1]:
                    break
            run.kill()


def _passed_on(stream: IO[bytes], lines: queue.SimpleQueue[bytes]) -> None:
    for line in stream:
        lines.put(line)
    lines.put(b"")


def next_outcome(run: subprocess.Popen[bytes], lines: queue.SimpleQueue[bytes], number: int) -> Outcome:
    """The next outcome a worker tells; what stands for it where it tells none."""
    try:
        line = lines.get(timeout=3 * MOST_SECONDS)
    except queue.Empty:
        return Outcome(number, "lost", [-1], faults=["hangs"])
    if not line:
        said = run.stderr.read().decode("utf-8", "replace")[-300:] if run.stderr else ""
        return Outcome(number, "lost", [-1], faults=[f"the process ended: {said}"])
    found = Outcome(**json.loads(line))
    if found.peak_mb > MOST_MB:
        found.faults.append(f"{found.peak_mb:.0f} MB of memory")
    if found.seconds > MOST_SECONDS:
        found.faults.append(f"{found.seconds:.0f} s")
    return found


def run(seed: int, files: int, processes: int, *, first: int = 0) -> list[Outcome]:
    """Judge so many files, spread over a few processes."""
    batches: queue.SimpleQueue[range] = queue.SimpleQueue()
    for start in range(first, first + files, FILES_A_PROCESS):
        batches.put(range(start, min(start + FILES_A_PROCESS, first + files)))
    found: list[Outcome] = []

    def take() -> None:
        with contextlib.suppress(queue.Empty):
            while True:
                found.extend(told(seed, batches.get_nowait()))
                at_fault = [each.number for each in found if each.faults]
                sys.stderr.write(f"{len(found)} of {files} files; at fault: {at_fault or 'none'}\n")

    threads = [threading.Thread(target=take) for _ in range(processes)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return sorted(found, key=lambda each: each.number)


def report(found: list[Outcome]) -> str:
    """Counts by kind of file, the longest and the largest, and every fault."""
    rows = [f"{'':12}  files  farms  refused  at fault"]
    for kind in sorted({each.kind for each in found}):
        own = [each for each in found if each.kind == kind]
        farms = sum(each.codes[0] == 0 for each in own)
        rows.append(
            f"{kind:12}  {len(own):5}  {farms:5}  {len(own) - farms:7}  {sum(bool(each.faults) for each in own):8}"
        )
    codes = Counter(code for each in found for code in each.codes)
    rows.append(f"{len(found)} files, {sum(codes.values())} runs; exit codes {dict(sorted(codes.items()))}")
    rows.append(
        f"longest {max(each.seconds for each in found):.1f} s, largest {max(each.peak_mb for each in found):.0f} MB"
    )
    rows += [f"fault: number {each.number} ({each.kind}): {fault}" for each in found for fault in each.faults]
    return "\n".join(rows)


def main() -> int:
    """Run the script."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--files", type=int, default=5000)
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--first", type=int, default=0, help="the first number, to make the files of a fault again")
    parser.add_argument("--worker", metavar="START:STOP:STEP", help=argparse.SUPPRESS)
    options = parser.parse_args()
    if options.worker:
        work(options.seed, iter(range(*map(int, options.worker.split(":")))))
        return 0
    found = run(options.seed, options.files, options.processes, first=options.first)
    sys.stdout.write(report(found) + "\n")
    complete = len(found) == options.files
    return 0 if complete and not any(each.faults for each in found) else 1


if __name__ == "__main__":
    sys.exit(main())
