"""What the owner would do if things go badly, in the owner's words beside the cases."""

from __future__ import annotations

from farmbook.expr.nodes import Expr, Label
from farmbook.sections.declare import line, text
from farmbook.sections.section import Section

__all__ = ["Answers"]

_TO_WRITE = "_" * 60
"""Where nothing is typed, room to write in by hand."""


class Answers(Section):
    """One answer for each kind of bad case; the one for a bad year stands in the request."""

    title = "If things go badly: what you would do"
    table = "request"

    if_prices_fall = text(
        "What you do if prices fall, or a customer goes or pays late",
        default="",
        how="In one line: who else would buy, what you would fill less, and when you would decide.",
    )
    if_less_is_picked = text(
        "What you do if less is picked, or the plant stops",
        default="",
        how="In one line: whom you would call, what stands ready, what insurance pays.",
    )
    if_costs_rise = text(
        "What you do if costs or rates rise, or it all opens late",
        default="",
        how="In one line: what you would charge more for, or do without.",
    )

    @line("Answer if prices fall, or a customer goes or pays late", unit="1")
    def prices_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.if_prices_fall, _TO_WRITE)

    @line("Answer if less is picked, or the plant stops", unit="1")
    def picked_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.if_less_is_picked, _TO_WRITE)

    @line("Answer if costs or rates rise, or it all opens late", unit="1")
    def costs_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.if_costs_rise, _TO_WRITE)
