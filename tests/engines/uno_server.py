"""LibreOffice at the end of a pipe: JSON lines in, JSON lines out, run by the Python that has LibreOffice's uno module.

Started by libreoffice.py as: python uno_server.py SOFFICE FOLDER. FOLDER is taken over: soffice keeps its profile and
its temporary files in it, and it is removed at the end. The first line out says {"ready": process group of soffice};
after that each line in is a list [command, argument, ...] and is answered by {"answer": ...} or {"failure": "reason"}.
When the input ends, for whatever reason, soffice is ended too.
"""

from __future__ import annotations

import importlib
import json
import os
import queue
import shutil
import signal
import socket
import subprocess
import sys
import threading
import time
from contextlib import suppress
from pathlib import Path
from typing import Any

START_ATTEMPTS = 3
START_SECONDS = 60.0
END_SECONDS = 10.0

PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/L10N">
<prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>en-US</value></prop></item>
</oor:items>
"""
"""Always recalculate on load; a known locale, because functions of text depend on it."""

CONTENT_FLAGS = 1 | 2 | 4 | 16
"""com.sun.star.sheet.CellFlags: value, date, string and formula; formats and validations stay."""


class RefusedError(Exception):
    """A request that LibreOffice did not carry out, with the reason in words."""


class Office:
    """One soffice process with its own profile, listening on a loopback port."""

    def __init__(self, soffice: str, folder: Path) -> None:
        self.soffice = soffice
        self.folder = folder
        # import uno sets variables that upset a soffice started later, so the environment is copied first.
        self.environment = dict(os.environ, TMPDIR=str(folder))
        self.uno: Any = importlib.import_module("uno")  # not among the packages of the tests' own Python
        self.process: subprocess.Popen[bytes] | None = None

    def start(self) -> Any:
        """Start soffice and return its desktop; another port is tried when somebody took the chosen one meanwhile."""
        profile = self.folder / "profile" / "user"
        profile.mkdir(parents=True)
        (profile / "registrymodifications.xcu").write_text(PROFILE)
        for _ in range(START_ATTEMPTS):
            port = free_port()
            self.process = self._launch(port)
            context = self._connect(port)
            if context is not None:
                return context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
            self.kill()
        raise RefusedError(f"{self.soffice} did not answer in {START_ATTEMPTS} attempts")

    def _launch(self, port: int) -> subprocess.Popen[bytes]:
        profile = (self.folder / "profile").as_uri()
        options = ["--headless", "--invisible", "--norestore", "--nologo", "--nodefault", "--nolockcheck"]
        accept = f"--accept=socket,host=127.0.0.1,port={port},tcpNoDelay=1;urp;"
        return subprocess.Popen(
            [self.soffice, f"-env:UserInstallation={profile}", *options, accept],
            env=self.environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,  # a group of its own, so that the launcher's children can be ended with it
        )

    def _connect(self, port: int) -> Any:
        """The component context of soffice, or None when it ended or stayed silent."""
        local = self.uno.getComponentContext()
        resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
        address = f"uno:socket,host=127.0.0.1,port={port},tcpNoDelay=1;urp;StarOffice.ComponentContext"
        not_yet = self.uno.getClass("com.sun.star.uno.Exception")
        deadline = time.monotonic() + START_SECONDS
        while time.monotonic() < deadline and self.process is not None and self.process.poll() is None:
            try:
                return resolver.resolve(address)
            except not_yet:
                time.sleep(0.05)
        return None

    def group(self) -> int | None:
        """The process group of soffice, None when there is none."""
        return None if self.process is None else self.process.pid

    def ended(self) -> bool:
        """Whether soffice is gone; it is given a moment, because a broken connection shows before an ended process."""
        if self.process is None:
            return True
        with suppress(subprocess.TimeoutExpired):
            self.process.wait(0.5)
        return self.process.returncode is not None

    def stop(self, desktop: Any) -> None:
        """Ask soffice to end, and end it by force when it does not."""
        if self.process is None:
            return
        if desktop is not None:
            with suppress(Exception):  # whatever a dying bridge raises, force comes next
                desktop.terminate()
                self.process.wait(END_SECONDS)
        self.kill()

    def kill(self) -> None:
        """End soffice and its children by force."""
        if self.process is None:
            return
        with suppress(ProcessLookupError):
            os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()


def free_port() -> int:
    """A loopback port that nobody listens on at this moment."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Document:
    """The open workbook and the commands on it."""

    def __init__(self, uno: Any, desktop: Any) -> None:
        self.uno = uno
        self.desktop = desktop
        self.document: Any = None
        self.sheets: dict[str, Any] = {}
        self.cells: dict[tuple[str, int, int], Any] = {}
        self.ranges: dict[tuple[Any, ...], Any] = {}

    def load(self, path: str) -> list[str]:
        """Open a workbook for reading and writing, work out every formula, and return the names of its sheets."""
        # Not read-only: there, clearing a cell is ignored without an error.
        hidden = self.uno.createUnoStruct("com.sun.star.beans.PropertyValue")
        hidden.Name, hidden.Value = "Hidden", True
        address = self.uno.systemPathToFileUrl(path)
        self.document = self.desktop.loadComponentFromURL(address, "_blank", 0, (hidden,))
        if self.document is None:
            raise RefusedError(f"LibreOffice could not open {path}")
        if self.document.isReadonly():
            raise RefusedError(f"LibreOffice opened {path} for reading only")
        self.document.getUndoManager().lock()
        self.document.enableAutomaticCalculation(True)
        self.document.calculateAll()
        return list(self.document.Sheets.getElementNames())

    def number(self, sheet: str, row: int, column: int, value: float) -> None:
        """Put a number into a cell; rows and columns count from 0."""
        cell = self._cell(sheet, row, column)
        cell.setValue(value)
        if cell.getType().value != "VALUE" or cell.getValue() != value:
            raise RefusedError(f"LibreOffice did not take the number {value}")

    def text(self, sheet: str, row: int, column: int, value: str) -> None:
        """Put a text into a cell as it is, also when it looks like a number or a formula."""
        cell = self._cell(sheet, row, column)
        cell.setString(value)
        if cell.getType().value != "TEXT" or cell.getString() != value:
            raise RefusedError(f"LibreOffice did not take the text {value!r}")

    def clear(self, sheet: str, row: int, column: int) -> None:
        """Make a cell blank; its format stays."""
        cell = self._cell(sheet, row, column)
        cell.clearContents(CONTENT_FLAGS)
        if cell.getType().value != "EMPTY":
            raise RefusedError("LibreOffice did not clear the cell")

    def values(self, blocks: list[list[Any]]) -> list[Any]:
        """Return the values of blocks [sheet, first column, first row, last column, last row].

        Numbers and texts are themselves, a blank is an empty text, an error is null.
        """
        return [self._range(*block).getDataArray() for block in blocks]

    def describe(self, places: list[tuple[str, int, int]]) -> list[int | str]:
        """Return of each cell its error number, or without an error its content: EMPTY, VALUE, TEXT or FORMULA."""
        cells = [self._cell(*place) for place in places]
        return [cell.getError() or cell.getType().value for cell in cells]

    # Looking a sheet, a range or a cell up takes about a millisecond, asking it anything a tenth of that: all are kept.

    def _sheet(self, sheet: str) -> Any:
        found = self.sheets.get(sheet)
        if found is None:
            found = self.sheets[sheet] = self.document.Sheets.getByName(sheet)
        return found

    def _cell(self, sheet: str, row: int, column: int) -> Any:
        found = self.cells.get((sheet, row, column))
        if found is None:
            found = self.cells[sheet, row, column] = self._sheet(sheet).getCellByPosition(column, row)
        return found

    def _range(self, sheet: str, *block: int) -> Any:
        found = self.ranges.get((sheet, *block))
        if found is None:
            found = self.ranges[sheet, *block] = self._sheet(sheet).getCellRangeByPosition(*block)
        return found


def read_requests(requests: queue.SimpleQueue[str | None], office: Office) -> None:
    """Pass the lines of the input on, and None at its end; soffice is killed if it holds the main thread up then."""
    for line in sys.stdin:
        requests.put(line)
    requests.put(None)
    time.sleep(2 * END_SECONDS)
    office.kill()


def answer(office: Office, document: Document, line: str) -> dict[str, Any]:
    """Carry out one request."""
    command, *arguments = json.loads(line)
    if command not in ("load", "number", "text", "clear", "values", "describe"):
        return {"failure": f"there is no command {command!r}"}
    refusals = (RefusedError, AttributeError, office.uno.getClass("com.sun.star.uno.Exception"))
    try:
        return {"answer": getattr(document, command)(*arguments)}
    except refusals as problem:
        if office.ended():
            return {"failure": f"{command} {arguments}: LibreOffice has ended by itself"}
        return {"failure": f"{command} {arguments}: {type(problem).__name__}: {problem}"}


def say(message: dict[str, Any]) -> None:
    """Write one line of output."""
    sys.stdout.write(json.dumps(message) + "\n")
    sys.stdout.flush()


def serve(office: Office) -> None:
    """Start soffice, answer requests until the input ends, and end soffice."""
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))  # as an exception, so that the lines below still end soffice
    requests: queue.SimpleQueue[str | None] = queue.SimpleQueue()
    threading.Thread(target=read_requests, args=(requests, office), daemon=True).start()
    desktop = None
    try:
        desktop = office.start()
        say({"ready": office.group()})
        document = Document(office.uno, desktop)
        while (line := requests.get()) is not None:
            say(answer(office, document, line))
    finally:
        office.stop(desktop)


if __name__ == "__main__":
    work_folder = Path(sys.argv[2])
    try:
        serve(Office(sys.argv[1], work_folder))
    finally:
        shutil.rmtree(work_folder, ignore_errors=True)
