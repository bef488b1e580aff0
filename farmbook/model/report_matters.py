"""Whether the table of what matters most, made with the book, still holds: in live sentences."""

from __future__ import annotations

from farmbook.expr.functions import all_of
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.report import Report
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["ReportMatters"]


class ReportMatters(Section):
    """The figures of the table are fixed with the book; these lines know whether anything was typed since."""

    title = "What to measure next"

    report = uses(Report)

    @line("How many inputs were changed since", unit="1")
    def changed_told(self) -> Expr:
        """Said where at least one was."""
        return say(
            figure(self.report.changed, 0, named=False),
            either(all_of(self.report.changed > 0, self.report.changed <= 1), " input was", " inputs were"),
            " changed since: make the book anew for a new table.",
        )

    @line("Does the table of what matters most still hold?", unit="1")
    def holds(self) -> Expr:
        """The table is worked out with the book; it does not follow what is typed."""
        return say(
            either(
                self.report.changed > 0,
                self.changed_told,
                "No input was changed since the book was made: the table holds.",
            )
        )

    @line("What to measure first, and whether the table holds", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        not_own = self.report.not_own_singles
        return say(
            figure(not_own, 0, named=False),
            " of the ",
            figure(self.report.all_singles, 0, named=False),
            " figures on Inputs are not your own",
            either(not_own > 0, ": measure what stands first here first. ", ". "),
            self.holds,
        )
