"""A small slice of the hostile scenario files; and that the script that runs them by the thousand does see faults."""

from __future__ import annotations

import queue
import subprocess
import sys
from collections.abc import Callable, Sequence

import pytest

import farmbook.cli
from tests.hostile import scenarios
from tests.hostile.mutations import KINDS, MAIN, hostile

SEED = 2


def test_a_slice_gives_words_and_nothing_else(pytestconfig: pytest.Config) -> None:
    """One file of each kind, three with `--whole`; some must still be farms, or `show` and `build` would never be reached."""
    count = (3 if pytestconfig.getoption("whole") else 1) * len(KINDS)
    found = scenarios.run(SEED, count, 1)
    assert [each.number for each in found] == list(range(count))
    assert [(each.number, fault) for each in found for fault in each.faults] == []
    assert {each.kind for each in found} == set(KINDS)
    assert [each for each in found if each.codes == [0, 0, 0]]
    assert [each for each in found if each.codes == [1, 1, 1]]
    assert all(each.peak_mb > 0 for each in found)


def test_the_same_number_makes_the_same_files() -> None:
    assert [hostile(SEED, number) for number in range(28)] == [hostile(SEED, number) for number in range(28)]
    assert hostile(SEED, 3) != hostile(SEED + 1, 3)
    assert all(MAIN in hostile(SEED, number).files for number in range(len(KINDS)))


def raises(_: Sequence[str]) -> int:
    raise ValueError("a user would see this")


def prints(text: str, code: int) -> Callable[[Sequence[str]], int]:
    def command(_: Sequence[str]) -> int:
        sys.stdout.write(text)
        return code

    return command


@pytest.mark.parametrize(
    ("command", "code", "faults"),
    [
        (raises, -1, ["check: ValueError: a user would see this"]),
        (prints("Input should be a number", 0), 0, ["check: raw text: Input should"]),
        (prints("cost: nan", 0), 0, ["check: no figure: nan"]),
        (prints("fine", 1), 1, ["check: no word of what is wrong"]),
        (prints("fine", 3), 3, ["check: exit code 3", "check: no word of what is wrong"]),
        (prints("nanny goat, inference, 5.0", 0), 0, []),
    ],
)
def test_a_fault_is_seen(
    monkeypatch: pytest.MonkeyPatch, command: Callable[[Sequence[str]], int], code: int, faults: list[str]
) -> None:
    monkeypatch.setattr(farmbook.cli, "main", command)
    assert scenarios.faults_of(["check", MAIN]) == (code, faults)


def test_a_command_that_promises_a_book_and_writes_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(farmbook.cli, "main", prints("fine", 0))
    assert scenarios.judged(SEED, 0).faults == ["build: a book where none was promised, or none where one was"]


def test_a_worker_that_hangs_or_dies_is_at_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(scenarios, "MOST_SECONDS", 0.5)
    for program, fault in (
        ("import time; time.sleep(60)", "hangs"),
        ("raise SystemExit('gone')", "the process ended: gone\n"),
    ):
        with subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE, stderr=subprocess.PIPE) as run:
            lines: queue.SimpleQueue[bytes] = queue.SimpleQueue()
            if fault != "hangs":
                lines.put(b"")
            assert scenarios.next_outcome(run, lines, 5).faults == [fault]
            run.kill()


@pytest.mark.parametrize(
    ("seconds", "peak", "faults"), [(1, 499, []), (1, 501, ["501 MB of memory"]), (21, 9, ["21 s"])]
)
def test_too_much_time_or_memory_is_at_fault(seconds: float, peak: float, faults: list[str]) -> None:
    lines: queue.SimpleQueue[bytes] = queue.SimpleQueue()
    lines.put(f'{{"number": 5, "kind": "sizes", "codes": [1], "seconds": {seconds}, "peak_mb": {peak}}}\n'.encode())
    with subprocess.Popen([sys.executable, "-c", ""], stdout=subprocess.PIPE, stderr=subprocess.PIPE) as run:
        assert scenarios.next_outcome(run, lines, 5).faults == faults


def test_the_report_counts_and_names() -> None:
    said = scenarios.report(
        [
            scenarios.Outcome(0, "sizes", [0, 0, 0], 1, 100),
            scenarios.Outcome(1, "sizes", [1, 1, 1], 2, 150, ["check: exit code 3"]),
        ]
    )
    assert "2 files, 6 runs; exit codes {0: 3, 1: 3}" in said
    assert "longest 2.0 s, largest 150 MB" in said
    assert "fault: number 1 (sizes): check: exit code 3" in said
