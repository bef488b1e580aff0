"""Ending in one line when the person at the keyboard, or the system, says so; what is half-written is taken away first.

Nothing is loaded here that Python has not loaded by itself: until `end_in_one_line` has run, Python answers an interrupt in
its own words. That is why `signal` is used by its inner half, which is built in; the outer half loads enumerations.
"""

from __future__ import annotations

import _signal as signal  # type: ignore[import-not-found]
import os

TYPE_CHECKING = False  # what `typing` has, without loading it
if TYPE_CHECKING:
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
        if signal.getsignal(number) != signal.SIG_IGN:
            signal.signal(number, _end)


def _end(number: int, _frame: FrameType | None) -> None:
    for path in tuple(unfinished):
        try:  # noqa: SIM105 - contextlib takes its time to load
            os.unlink(path)
        except OSError:
            pass  # not made yet, or gone already
    try:  # noqa: SIM105
        os.write(2, b"stopped before the end\n")
    except OSError:
        pass  # nobody listens
    os._exit(128 + number)
