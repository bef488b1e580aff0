"""How a new farm begins: when it first fills bags, how long until it is full, and how much worse it does at first."""

from __future__ import annotations

from farmbook.expr.functions import maximum, minimum, named, where
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.axes import WEEK
from farmbook.model.calendar.plan_weeks import ROWS_BEFORE, PlanWeeks
from farmbook.model.place.farm_plan import Farm
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["StartUp"]


class StartUp(Section):
    """Of a running farm nothing of this is read: it has its ordinary weeks behind it."""

    title = "How a new farm begins"
    table = "start_up"

    farm = uses(Farm)
    weeks = uses(PlanWeeks)
    shocks = uses(Shocks)

    first_filling = number(
        "New farm: first week in which bags are filled",
        unit="count",
        usual=(1, 30),
        hard=(1, 200),
        default=5,
        how="A week of the plan: rooms ready, steamer tried, spawn there.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    weeks_to_full = number(
        "New farm: weeks from the first filling until all bags are filled",
        unit="count",
        usual=(4, 52),
        hard=(1, 200),
        default=16,
        how="Bags a week grow evenly over these weeks.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    weeks_to_learn = number(
        "New farm: weeks of filling until yield, loss and sales are those of a typical year",
        unit="count",
        usual=(12, 78),
        hard=(1, 300),
        default=39,
        how="Ask growers who have started; be pessimistic. It grows evenly over these weeks.",
        source=COMMON_PRACTICE,
    )
    yield_at_first = number(
        "New farm: weight picked at first, of that of a typical year",
        unit="share",
        usual=(0.5, 1),
        hard=(0, 2),
        default=0.75,
        how="Of a bag that lives. First batches give less until rooms and hands are sure.",
        source=COMMON_PRACTICE,
    )
    loss_at_first = number(
        "New farm: bags lost at first, on top of those of a typical year",
        unit="share",
        usual=(0, 0.3),
        hard=(0, 1),
        default=0.08,
        how="Of the bags that would live in a typical year.",
        source=COMMON_PRACTICE,
    )
    sales_at_first = number(
        "New farm: what customers take at first, of the most they take later",
        unit="share",
        usual=(0.1, 1),
        hard=(0, 1),
        default=0.4,
        how="Promises in writing count, hopes do not.",
        source=COMMON_PRACTICE,
    )
    hands_from = number(
        "New farm: first week in which hired hands are paid",
        unit="count",
        usual=(1, 40),
        hard=(1, 200),
        default=5,
        how="A week of the plan. Pay follows the roster, not the bags.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("New farm: weeks until full, counted", unit="count")
    def full_over(self) -> Expr:
        """One at least."""
        return maximum(self.weeks_to_full, 1)

    @line("New farm: weeks until typical, counted", unit="count")
    def learned_over(self) -> Expr:
        """One at least."""
        return maximum(self.weeks_to_learn, 1)

    @line("New farm: week in which it fills its first bags", unit="count")
    def fills_from(self) -> Expr:
        """As typed; later in a case in which it opens late."""
        return self.first_filling + self.shocks.weeks_late

    @line("Bags filled, of those of a full week", unit="share", axes=(WEEK,))
    def filled_share(self) -> Expr:
        """Of a running farm always all; of a new one it grows from its first week of filling on."""
        return where(self.farm.is_new, self.grown(self.full_over), wrap(1))

    @line("Weeks learned, of those it takes", unit="share", axes=(WEEK,))
    def learned(self) -> Expr:
        """Of a running farm all."""
        return where(self.farm.is_new, self.grown(self.learned_over), wrap(1))

    def grown(self, weeks: Expr) -> Expr:
        """How far the weeks since the first filling have come of so many."""
        passed = (self.weeks.number + 1 - self.fills_from) / weeks
        return maximum(minimum(passed, 1), 0)

    @line("First week in which hired hands are on the roster", unit="count")
    def rostered_from(self) -> Expr:
        """Of a new farm the one that you give; of a running one the first that the book has."""
        return where(self.farm.is_new, self.hands_from + self.shocks.weeks_late, 1 - named(ROWS_BEFORE))

    @property
    def rostered(self) -> Expr:
        """Whether hired hands are on the roster in a week."""
        return self.weeks.number >= self.rostered_from
