"""Changes of the plan from a given week on: more bags, loads, places or hands, or fewer."""

from __future__ import annotations

from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import STEP_UP
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import line, names, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["PlanChanges"]


class PlanChanges(Section):
    """Each row holds from its week to the end of the plan; a second row with a minus takes it back."""

    title = "Changes of the plan"

    shocks = uses(Shocks)

    names_given = names(STEP_UP, "Change of the plan", how="What changes: a new room, a second load, a helper.")
    from_week = number(
        "From week of the plan",
        unit="count",
        usual=(1, 156),
        hard=(1, 400),
        default=1,
        axes=(STEP_UP,),
        how="The week of the plan from which it holds.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    more_bags = number(
        "More bags filled a week",
        unit="bag_filled",
        usual=(-1000, 1000),
        hard=(-100000, 100000),
        default=0,
        axes=(STEP_UP,),
        how="Below zero for fewer. Rooms and hands do not grow by themselves.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    more_incubation = number(
        "More places in the incubation room",
        unit="place",
        usual=(0, 3000),
        hard=(-1000000, 1000000),
        default=0,
        axes=(STEP_UP,),
        how="Places that are ready in that week.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    more_fruiting = number(
        "More places in the fruiting room",
        unit="place",
        usual=(0, 3000),
        hard=(-1000000, 1000000),
        default=0,
        axes=(STEP_UP,),
        how="Places that are ready in that week.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    more_loads = number(
        "More loads that can be steamed a week",
        unit="run",
        usual=(-5, 5),
        hard=(-50, 50),
        default=0,
        axes=(STEP_UP,),
        how="With a second steamer, or more hours in which somebody is there.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    more_hours = number(
        "More hired hours a week",
        unit="person_hour",
        usual=(-40, 120),
        hard=(-10000, 10000),
        default=0,
        axes=(STEP_UP,),
        how="On the roster from that week on, and paid.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Week from which the change holds", unit="count", axes=(STEP_UP,))
    def holds_from(self) -> Expr:
        """As typed; later in a case in which it is late, unless it holds from the start."""
        return self.from_week + self.shocks.weeks_late * (self.from_week > 1)

    @property
    def in_use(self) -> Line:
        """The line that says which rows have a name."""
        return self.model.axes[STEP_UP].present
