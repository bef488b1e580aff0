"""The loan that is asked for: which one of the list, and what for."""

from __future__ import annotations

from farmbook.model.axes import LOAN
from farmbook.sections.declare import member, text
from farmbook.sections.section import Section

__all__ = ["Request"]


class Request(Section):
    """One loan of the list; a scenario with this table gets the sheets for the bank."""

    title = "The loan asked for"
    table = "request"

    loan = member(LOAN, "Loan asked for", how="One of the loans of the list, by its name.")
    purpose = text("What it is for", default="", how="In one line: what is bought or built with it.")
