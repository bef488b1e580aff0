"""What the workbook library reports, heard."""

from __future__ import annotations

from farmbook.errors import ModelFault

__all__ = ["done"]


def done(code: object, what: str) -> None:
    """XlsxWriter reports refusals by a negative code; none may pass unseen."""
    if isinstance(code, int) and code < 0:
        raise ModelFault(f"the workbook library refused a cell (code {code})", why=what[:80])
