"""Ending in one line when the person at the keyboard, or the system, says so; what is half-written is taken away first.

Nothing but `os` and `signal` is loaded here: until `end_in_one_line` has run, Python answers an interrupt in its own words.
"""

from __future__ import annotations

import os
import signal
from types import FrameType

__all__ = ["end_in_one_line", "unfinished"]

unfinished: set[str] = set()
"""Files that are half-written now."""


def end_in_one_line() -> None:
    """From now on an interrupt ends the program with exit code 130, a request to end with 143, whatever it is doing.

    The program is left at once, not by an exception: one that is raised inside the import or the freeing of something is
    swallowed there, or comes out in Python's words. A signal that is being ignored stays ignored.
    """
    for number in (signal.SIGINT, signal.SIGTERM):
        if signal.getsignal(number) is not signal.SIG_IGN:
            signal.signal(number, _end)


def _end(number: int, _frame: FrameType | None) -> None:
    try:
        for path in tuple(unfinished):
            os.unlink(path)
    except OSError:
        pass  # gone already: the signal came between taking it away and striking it off
    try:  # noqa: SIM105 - contextlib takes its time to load
        os.write(2, b"stopped before the end\n")
    except OSError:
        pass  # nobody listens
    os._exit(128 + number)
