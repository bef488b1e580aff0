"""Running farmbook under watch: time, memory, and whether anything but plain words comes out of it."""

from __future__ import annotations

import builtins
import os
import re
import resource
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Final

__all__ = ["MOST_MB", "Seen", "environment", "raw_text", "watch"]

ROOT: Final = Path(__file__).resolve().parents[2]
MOST_MB: Final = 500.0
PAUSE: Final = 0.02
ROOM: Final = 4 * 2**30
"""Address space that a run may take: far more than it may use, so that a run gone wrong does not stop the machine."""

_CLASSES: Final = sorted(
    name for name, found in vars(builtins).items() if isinstance(found, type) and issubclass(found, BaseException)
)
_RAW: Final = re.compile(
    "|".join(
        [
            r"Traceback",
            r"Exception ignored",
            rf"\b(?:{'|'.join(_CLASSES)})\b",
            r"\b[A-Z][a-z]\w*(?:Error|Exception|Warning)\b",
            r"\[Errno",
            r"<class ",
            r" object at 0x",
            r"site-packages",
            r"\w+\.py\b",
            r"\b(?:pydantic|tomllib|zipfile|zlib|openpyxl|xlsxwriter|numpy|pandas|pathlib|argparse|codecs)\b",
            r"Input should",
            r"Extra inputs",
            r"\btype=",
        ]
    )
)
_UNSEEN: Final = re.compile(
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff\ud800-\udfff]"
)
"""Control characters, direction marks and what else shows nothing; line ends and tabs are let pass."""


@dataclass(frozen=True)
class Seen:
    """What a run gave: exit code (minus the signal where one ended it), output, seconds, peak memory; what is wrong with it."""

    code: int
    out: bytes
    err: bytes
    seconds: float
    peak_mb: float
    faults: list[str]


def watch(arguments: list[str], *, stdin: bytes = b"", folder: Path, seconds: float = 20.0) -> Seen:
    """Run `farmbook` with these arguments in a folder; a run that takes longer than `seconds` is ended and at fault."""
    with tempfile.TemporaryFile() as given, tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        given.write(stdin)
        given.seek(0)
        start = time.monotonic()
        code, peak, late = _ended(_started(arguments, given, out, err, folder), start + seconds)
        took = time.monotonic() - start
        said, complained = _content(out), _content(err)
    faults = [f"still running after {seconds:g} s"] if late else _code_faults(code)
    if peak > MOST_MB:
        faults.append(f"{peak:.0f} MB of memory")
    faults += [*_byte_faults(said), *_byte_faults(complained)]
    return Seen(code, said, complained, took, peak, faults)


def environment() -> dict[str, str]:
    """The environment of a run: the package is found from any folder, and one thread works."""
    return os.environ | {"PYTHONPATH": str(ROOT), "OPENBLAS_NUM_THREADS": "1", "PYTHONIOENCODING": "utf-8"}


def raw_text(text: str) -> list[str]:
    """Every piece of a text that no user should see: names of exceptions and modules, a library's words, unseen characters."""
    unseen = [f"U+{ord(match[0]):04X}" for match in _UNSEEN.finditer(text)]
    return [match[0] for match in _RAW.finditer(text)] + unseen


def _started(
    arguments: list[str], given: IO[bytes], out: IO[bytes], err: IO[bytes], folder: Path
) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "farmbook", *arguments]
    run = subprocess.Popen(command, stdin=given, stdout=out, stderr=err, cwd=folder, env=environment())
    resource.prlimit(run.pid, resource.RLIMIT_AS, (ROOM, ROOM))
    return run


def _ended(run: subprocess.Popen[bytes], deadline: float) -> tuple[int, float, bool]:
    """Exit code, peak of memory in MB and whether it had to be ended."""
    peak, late = 0.0, False
    while True:
        peak = max(peak, _high_water(run.pid))
        pid, status, used = os.wait4(run.pid, os.WNOHANG)
        if pid:
            break
        if time.monotonic() > deadline and not late:
            run.kill()
            late = True
        time.sleep(PAUSE)
    run.returncode = os.waitstatus_to_exitcode(status)
    return run.returncode, max(peak, _own_peak(used.ru_maxrss)), late


def _high_water(pid: int) -> float:
    """The most memory that a running process has held so far, in MB."""
    try:
        found = re.search(r"VmHWM:\s+(\d+) kB", Path(f"/proc/{pid}/status").read_text(encoding="ascii"))
    except OSError:
        return 0.0
    return int(found[1]) / 1024 if found else 0.0


def _own_peak(kilobytes: int) -> float:
    """The peak told at the end, in MB. Below our own peak it says nothing: until it starts its program a child counts as us."""
    ours = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return kilobytes / 1024 if kilobytes > ours else 0.0


def _content(stream: IO[bytes]) -> bytes:
    stream.seek(0)
    return stream.read()


def _code_faults(code: int) -> list[str]:
    return [] if code in (0, 1, 2) else [f"exit code {code}"]


def _byte_faults(printed: bytes) -> list[str]:
    try:
        return [f"raw text: {piece}" for piece in raw_text(printed.decode())]
    except UnicodeDecodeError:
        return ["output that is not UTF-8"]
