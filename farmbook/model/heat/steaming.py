"""What holds whichever steamer is used: which one it is, the hours somebody is there, the return wanted on money."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import any_of, joined, negation
from farmbook.expr.nodes import Expr
from farmbook.sections.declare import Option, choice, line, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["CABINET", "VESSEL", "Steaming", "if_in_use"]

CABINET: Final = Option("cabinet", "cabinet")
VESSEL: Final = Option("vessel", "pressure vessel")


class Steaming(Section):
    """Steaming in general."""

    title = "Steaming: which steamer, and the hours somebody is there"
    table = "steamer"

    kind = choice(
        "Steamer that the farm uses",
        CABINET,
        VESSEL,
        default=CABINET,
        how="Which do you use? Both are worked out; the one chosen feeds the rest of the book.",
        source=COMMON_PRACTICE,
    )
    staffed_hours = number(
        "Hours a day somebody is there to steam",
        unit="h/day",
        usual=(4, 16),
        hard=(0.5, 24),
        default=8,
        how="From the first to the last hour at which somebody can load, watch or unload, on a day with work.",
        source=COMMON_PRACTICE,
    )
    staffed_days = number(
        "Days a week somebody is there to steam",
        unit="day/week",
        usual=(3, 7),
        hard=(0.5, 7),
        default=5,
        how="Days that follow one another, such as Monday to Friday.",
        source=COMMON_PRACTICE,
    )
    yearly_return = number(
        "Yearly return you want on money put into a steamer",
        unit="share",
        usual=(0.03, 0.15),
        hard=(0, 1),
        default=0.08,
        how="What the money would bring elsewhere, or what a loan for it costs.",
        source=COMMON_PRACTICE,
    )

    @line("Yearly return on money in a steamer, as the sums use it", unit="1/year")
    def yearly_rate(self) -> Expr:
        """The same number, counted for each year."""
        return joined(self.yearly_return, "1/year")

    @line("Hours a week somebody is there to steam", unit="h/week")
    def staffed_week(self) -> Expr:
        """Hours a day times days a week."""
        return self.staffed_hours * self.staffed_days


def if_in_use(in_use: Expr, condition: Expr) -> Expr:
    """A condition that counts only for the steamer in use: a plan with the one is not stopped by the other."""
    return any_of(negation(in_use), condition)
