"""An interrupt, or a request to end, at many moments: one line, its own exit code, and nothing left behind."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from farmbook import stopping
from tests.hostile.watch import environment, raw_text

ROOT = Path(__file__).parents[2]
SCENARIO = ROOT / "scenarios" / "kestrel_hollow.toml"
LINE = b"stopped before the end\n"
CODES = {signal.SIGINT: 130, signal.SIGTERM: 143}
MOMENTS, MOMENTS_IN_ALL = 4, 20
"""In which a run is stopped, half of them while the first things are loaded; all with `--whole`."""

# The program as it is, telling on a pipe when it is ready for signals, which is before anything is loaded.
PROGRAM = """
import os, runpy
from farmbook import stopping
ready = stopping.end_in_one_line
stopping.end_in_one_line = lambda: (ready(), os.write({pipe}, b"!"))
runpy.run_module("farmbook", run_name="__main__", alter_sys=True)
"""


def started(folder: Path) -> tuple[subprocess.Popen[bytes], int]:
    """A build that has come to its first line, and the pipe it told so on."""
    reading, writing = os.pipe()
    command = [sys.executable, "-c", PROGRAM.format(pipe=writing), "build", str(SCENARIO), "--out", "book.xlsx"]
    run = subprocess.Popen(
        command, cwd=folder, env=environment(), stdout=subprocess.PIPE, stderr=subprocess.PIPE, pass_fds=[writing]
    )
    os.close(writing)
    assert os.read(reading, 1) == b"!"
    return run, reading


def stopped(folder: Path, number: signal.Signals, after: float) -> tuple[int, bytes, bytes]:
    """Exit code and output of a build that is sent a signal some seconds after its first line."""
    run, pipe = started(folder)
    time.sleep(after)
    run.send_signal(number)
    out, err = run.communicate(timeout=20)
    os.close(pipe)
    return run.returncode, out, err


@pytest.fixture(scope="module")
def seconds_of_a_build(tmp_path_factory: pytest.TempPathFactory) -> float:
    """How long a build takes that nobody stops."""
    folder = tmp_path_factory.mktemp("whole")
    run, pipe = started(folder)
    start = time.monotonic()
    run.communicate(timeout=60)
    os.close(pipe)
    assert run.returncode == 0
    return time.monotonic() - start


@pytest.mark.parametrize("number", list(CODES), ids=lambda number: number.name)
def test_at_any_moment_it_ends_in_one_line(
    number: signal.Signals, seconds_of_a_build: float, tmp_path: Path, pytestconfig: pytest.Config
) -> None:
    moments = MOMENTS_IN_ALL if pytestconfig.getoption("whole") else MOMENTS
    early = moments // 2
    ended = 0
    for moment in range(moments):
        after = (
            0.03 * moment / early
            if moment < early
            else seconds_of_a_build * (moment - early + 1) / (moments - early + 1)
        )
        code, out, err = stopped(tmp_path, number, after)
        if code == 0 or code == -number:  # it had done its work, and Python was closing down or had
            assert err.startswith(b"wrote book.xlsx")
            (tmp_path / "book.xlsx").unlink()
        else:
            assert (code, out) == (CODES[number], b"")
            assert err.endswith(LINE)
            assert raw_text(err.decode()) == []
            assert err == LINE or after > 0.1  # once the farm is worked out its alerts come first
            ended += 1
            (tmp_path / "book.xlsx").unlink(missing_ok=True)
        assert list(tmp_path.iterdir()) == []
    assert ended > moments // 2


LOADED = """
import sys, runpy
from farmbook import stopping
before = set(sys.modules)
stopping.end_in_one_line = lambda: sys.exit(" ".join(sorted(set(sys.modules) - before)))
{start}
"""


@pytest.mark.parametrize(
    ("start", "loaded"),
    [
        ('runpy.run_module("farmbook", run_name="__main__")', b""),
        ("from farmbook.cli import main; main()", b"farmbook.cli"),
    ],
)
def test_it_is_ready_for_signals_before_anything_is_loaded(start: str, loaded: bytes, tmp_path: Path) -> None:
    command = [sys.executable, "-c", LOADED.format(start=start)]
    done = subprocess.run(command, cwd=tmp_path, env=environment(), capture_output=True, check=False)
    assert done.stderr.split() == loaded.split()


def test_getting_ready_loads_next_to_nothing(tmp_path: Path) -> None:
    statement = """
import os, sys
import __future__
before = set(sys.modules)
from farmbook import stopping
sys.exit(" ".join(sorted(set(sys.modules) - before)))
"""
    command = [sys.executable, "-c", statement]
    done = subprocess.run(command, cwd=tmp_path, env=environment(), capture_output=True, check=False)
    assert done.stderr.split() == [b"farmbook", b"farmbook.stopping", b"farmbook.version"]


def test_a_half_written_file_is_taken_away(tmp_path: Path) -> None:
    half = tmp_path / "half.tmp"
    statement = f"""
import os, signal
from farmbook import stopping
stopping.end_in_one_line()
stopping.unfinished.update([{str(tmp_path / "gone.tmp")!r}, {str(half)!r}])
open({str(half)!r}, "w").close()
os.kill(os.getpid(), signal.SIGTERM)
"""
    done = subprocess.run([sys.executable, "-c", statement], env=environment(), capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (143, LINE)
    assert not half.exists()


def test_a_signal_that_is_ignored_stays_ignored(tmp_path: Path) -> None:
    statement = """
import os, signal
from farmbook import stopping
signal.signal(signal.SIGINT, signal.SIG_IGN)
stopping.end_in_one_line()
os.kill(os.getpid(), signal.SIGINT)
print("went on")
"""
    done = subprocess.run([sys.executable, "-c", statement], env=environment(), capture_output=True, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (0, b"went on\n", b"")


def test_as_a_function_the_command_line_leaves_signals_alone() -> None:
    from farmbook.cli import main

    before = signal.getsignal(signal.SIGINT)
    assert main(["check", str(SCENARIO)]) == 0
    assert signal.getsignal(signal.SIGINT) is before


def test_an_interrupt_from_python_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from farmbook.writing import write_whole

    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "replace", interrupt)
    with pytest.raises(KeyboardInterrupt):
        write_whole(b"data", tmp_path / "book.xlsx")
    assert list(tmp_path.iterdir()) == []
    assert stopping.unfinished == set()
