"""Independent spreadsheet programs that recalculate a workbook, driven from the tests."""

from __future__ import annotations

import os
from typing import NamedTuple

import pytest


class Availability(NamedTuple):
    """Whether a spreadsheet program can be driven on this machine, and the reason in words when it cannot."""

    usable: bool
    reason: str = ""


def require(availability: Availability) -> None:
    """Skip the running test with the reason when the program is absent; on continuous integration fail instead.

    A build server sets the environment variable CI to "true"; there every program must be installed, so that no
    comparison is lost unnoticed.
    """
    if availability.usable:
        return
    if os.environ.get("CI") == "true":
        pytest.fail(availability.reason)
    pytest.skip(availability.reason)
