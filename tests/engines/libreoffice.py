"""A workbook held open in LibreOffice Calc, driven over UNO by a helper process under the system's Python."""

from __future__ import annotations

import json
import os
import select
import shutil
import signal
import subprocess
import tempfile
import time
import weakref
from collections.abc import Collection
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any, Self

from tests.engines import Availability
from tests.engines.cells import Cell, Entry, ErrorValue, Rectangle, Value, position, rectangles, typed, wipe

START_SECONDS = 200.0
"""Longer than the helper's own three attempts to start soffice."""
REQUEST_SECONDS = 120.0
END_SECONDS = 15.0
"""Longer than the helper waits for soffice to end in peace."""

_HELPER = Path(__file__).with_name("uno_server.py")
_ERRORS = {
    503: "#NUM!",
    519: "#VALUE!",
    521: "#NULL!",
    524: "#REF!",
    525: "#NAME?",
    532: "#DIV/0!",
    32767: "#N/A",
}
"""LibreOffice's numbers of the errors that have a name; the others are shown as Err:502 and the like."""


class LibreOfficeError(Exception):
    """LibreOffice did not start, did not answer in time, or refused a request; the message says which."""


def available() -> Availability:
    """Tell whether soffice and a Python with the uno module are installed."""
    if _soffice() is None:
        return Availability(False, "LibreOffice is not installed: there is no program named soffice")
    if _uno_python() is None:
        return Availability(False, "LibreOffice cannot be driven: no system Python has its uno module (python3-uno)")
    return Availability(True)


def _soffice() -> str | None:
    return shutil.which("soffice") or shutil.which("libreoffice")


@cache
def _uno_python() -> str | None:
    """The Python that can import uno: the system's own, whatever environment the tests run in."""
    for candidate in ("/usr/bin/python3", shutil.which("python3")):
        if candidate and os.access(candidate, os.X_OK):
            probe = [candidate, "-I", "-c", "import uno"]
            if subprocess.run(probe, env=_environment(), check=False, capture_output=True, timeout=60).returncode == 0:
                return candidate
    return None


def _environment() -> dict[str, str]:
    """The environment without what leads another Python or a soffice to the libraries of the tests' own Python."""
    misleading = {"PYTHONHOME", "PYTHONPATH", "LD_LIBRARY_PATH", "VIRTUAL_ENV"}
    return {name: value for name, value in os.environ.items() if name not in misleading}


class LibreOfficeBook:
    """A workbook opened once from a copy with its stored results wiped, then edited and read any number of times.

    Each has a soffice of its own, ended by close(), by leaving a with block, and at the latest when the object or the
    test process is gone. Raises LibreOfficeError for whatever goes wrong in LibreOffice, and KeyError for a sheet that
    the workbook does not have.
    """

    def __init__(self, path: Path) -> None:
        self._helper = _Helper()
        try:
            copy = self._helper.folder / "book.xlsx"
            wipe(path, copy)
            self._sheets = frozenset[str](self._helper.ask("load", str(copy)))
        except BaseException:
            self.close()
            raise

    def set(self, sheet: str, cell: str, value: Entry) -> None:
        """Put a number, a text or a date into a cell, or clear it with None; dependents follow at the next reading."""
        self._must_exist(sheet)
        entry = typed(value)
        if entry is None:
            self._helper.ask("clear", *_place(sheet, cell))
        else:
            self._helper.ask("text" if isinstance(entry, str) else "number", *_place(sheet, cell), entry)

    def read(self, cells: Collection[Cell]) -> dict[Cell, Value | None]:
        """Return the present result of every cell asked for, None where the cell is blank."""
        blocks = rectangles(cells)
        for sheet in blocks:
            self._must_exist(sheet)
        answer = self._helper.ask("values", [_range(sheet, block) for sheet, block in blocks.items()])
        values = dict(zip(blocks, answer, strict=True))
        results: dict[Cell, Value | None] = {}
        for sheet, cell in cells:
            row, column = position(cell)
            results[sheet, cell] = values[sheet][row - blocks[sheet].first_row][column - blocks[sheet].first_column]
        # An error comes as None, and a blank looks like an empty text: these are asked for a second time.
        unclear = [cell for cell, value in results.items() if value is None or value == ""]
        return results | self._described(unclear)

    def _must_exist(self, sheet: str) -> None:
        if sheet not in self._sheets:
            raise KeyError(sheet)

    def _described(self, cells: list[Cell]) -> dict[Cell, Value | None]:
        if not cells:
            return {}
        answer = self._helper.ask("describe", [_place(*cell) for cell in cells])
        return {cell: _described(description) for cell, description in zip(cells, answer, strict=True)}

    @property
    def process_group(self) -> int:
        """The process group of the soffice behind this book."""
        return self._helper.office[0]

    def close(self) -> None:
        """End LibreOffice; closing twice does no harm."""
        self._helper.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        self.close()


def _described(description: int | str) -> Value | None:
    """Translate an error number or a kind of content; only an error, a blank or an empty text is ever described."""
    if isinstance(description, int):
        return ErrorValue(_ERRORS.get(description, f"Err:{description}"))
    return None if description == "EMPTY" else ""


def _place(sheet: str, cell: str) -> tuple[str, int, int]:
    """Sheet, row and column as UNO counts them, from 0."""
    row, column = position(cell)
    return sheet, row - 1, column - 1


def _range(sheet: str, block: Rectangle) -> tuple[str, int, int, int, int]:
    """Sheet and corners as UNO wants them: columns before rows, counted from 0."""
    return sheet, block.first_column - 1, block.first_row - 1, block.last_column - 1, block.last_row - 1


class _Helper:
    """The process that speaks UNO: one JSON line out, one JSON line back, each within a time limit."""

    def __init__(self) -> None:
        soffice, python = _soffice(), _uno_python()
        if soffice is None or python is None:
            raise LibreOfficeError(available().reason)
        self.folder = Path(tempfile.mkdtemp(prefix="libreoffice-"))
        self._process = subprocess.Popen(
            [python, "-I", str(_HELPER), soffice, str(self.folder)],
            env=_environment(),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            bufsize=0,
            start_new_session=True,  # an interrupted test run ends it by closing its input, not by a signal half-way
        )
        self.office: list[int] = []
        self.close = weakref.finalize(self, _end, self._process, self.office, self.folder)
        try:
            self.office.append(self._line(START_SECONDS)["ready"])
        except BaseException:
            self.close()
            raise

    def ask(self, command: str, *arguments: object) -> Any:
        """Send one request and return its answer."""
        if not self.close.alive:
            raise LibreOfficeError("the workbook is closed")
        try:
            self._send([command, *arguments])
            reply = self._line(REQUEST_SECONDS)
        except BaseException:
            self.close()  # half an exchange would put every later answer out of step
            raise
        if "failure" in reply:
            raise LibreOfficeError(reply["failure"])
        return reply["answer"]

    def _send(self, request: list[object]) -> None:
        assert self._process.stdin is not None
        try:
            self._process.stdin.write(json.dumps(request).encode() + b"\n")
        except BrokenPipeError as broken:
            raise LibreOfficeError(self._last_words()) from broken

    def _line(self, seconds: float) -> dict[str, Any]:
        """Wait for one whole line."""
        assert self._process.stdout is not None
        deadline = time.monotonic() + seconds
        received = bytearray()
        while not received.endswith(b"\n"):
            ready, _, _ = select.select([self._process.stdout], [], [], max(0.0, deadline - time.monotonic()))
            if not ready:
                _kill(self.office)
                raise LibreOfficeError(f"LibreOffice gave no answer in {seconds:.0f} seconds")
            piece = self._process.stdout.read(1 << 16)
            if not piece:
                raise LibreOfficeError(self._last_words())
            received += piece
        reply = json.loads(received)
        assert isinstance(reply, dict)
        return reply

    def _last_words(self) -> str:
        """Say that the helper ended, with what it wrote to its error output."""
        assert self._process.stderr is not None
        complaints = self._process.stderr.read().decode(errors="replace").strip()
        return f"the LibreOffice helper ended by itself: {complaints or 'it left no message'}"


def _end(process: subprocess.Popen[bytes], office: list[int], folder: Path) -> None:
    """Let the helper end soffice; end both by force when it does not; remove the copy and the profile."""
    if process.stdin is not None:
        process.stdin.close()
    if not _ended(process):
        _kill(office)  # which frees a helper that waits for an answer
        if not _ended(process):
            process.kill()
            process.wait()
    if process.returncode != 0:
        _kill(office)
    for stream in (process.stdout, process.stderr):
        if stream is not None:
            stream.close()
    shutil.rmtree(folder, ignore_errors=True)


def _ended(process: subprocess.Popen[bytes]) -> bool:
    with suppress(subprocess.TimeoutExpired):
        process.wait(END_SECONDS)
    return process.returncode is not None


def _kill(groups: list[int]) -> None:
    for group in groups:
        with suppress(ProcessLookupError):
            os.killpg(group, signal.SIGKILL)
