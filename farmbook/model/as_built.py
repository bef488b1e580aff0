"""Whether anything was typed since the book was made: it stands on every sheet for the bank."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.report import Report
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["AsBuilt"]


class AsBuilt(Section):
    """A side that goes round by itself must say whether it is the plan that was handed in."""

    title = "As the book was made"

    report = uses(Report)

    @line("Inputs changed since the book was made, in words", unit="1")
    def changed_told(self) -> Expr:
        """Where at least one was."""
        return say("Inputs changed since the book was made: ", figure(self.report.changed, 0, named=False), ".")

    @line("As made, or changed since", unit="1")
    def told(self) -> Expr:
        """Names and other words are not counted."""
        return say(either(self.report.changed > 0, self.changed_told, "No figure was changed since the book was made."))
