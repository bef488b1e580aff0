"""The farm and its plan: who it is, how much it fills, what an hour of work costs."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import where, whole_up
from farmbook.expr.nodes import Constant, Expr
from farmbook.sections.declare import Option, choice, line, number, text
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["IN_DETAIL", "NEW_FARM", "ONE_FIGURE", "RUNNING_FARM", "Farm"]

RUNNING_FARM: Final = Option("running", "running farm")
NEW_FARM: Final = Option("new", "new farm")
ONE_FIGURE: Final = Option("one", "one figure")
IN_DETAIL: Final = Option("detail", "worked out")
"""Of what may be typed as one figure until its detail is chosen."""

USUAL_LOADS: Final = Constant(
    2,
    "usual_loads",
    label="Loads a week where the size of a load is not known",
    unit=unit("run/week"),
    source=COMMON_PRACTICE.key,
    note="From memory: small farms steam once or twice a week.",
)


class Farm(Section):
    """The farm and its plan."""

    title = "The farm and its plan"

    name = text("Farm", default="(farm not named)", how="As it should stand on every page.")
    place = text("Place", default="", how="Town and region.")
    prepared_by = text("Prepared by", default="", how="Who filled in this book.")
    plan_date = text("Date of the plan", default="", how="Year-month-day, such as 2026-03-01.")
    stage = choice(
        "New farm or running",
        RUNNING_FARM,
        NEW_FARM,
        default=RUNNING_FARM,
        how="A new farm reaches its typical year only after the first one.",
        source=COMMON_PRACTICE,
    )
    bags_filled_a_week = number(
        "Bags filled a week",
        unit="bag_filled/week",
        usual=(50, 4000),
        hard=(1, 100000),
        how="Count the bags filled over four ordinary weeks and divide by four.",
    )
    weeks_worked = number(
        "Weeks worked a year",
        unit="week/year",
        usual=(44, 52),
        hard=(1, 53),
        default=50,
        how="52 less the weeks in which no bags are filled.",
        source=COMMON_PRACTICE,
    )
    bags_per_load = number(
        "Bags in a load of the steam cabinet",
        unit="bag_filled/run",
        usual=(100, 3000),
        hard=(1, 20000),
        optional=True,
        how="Count the places in the cabinet that you really fill. Left empty, half of a week's bags; it then limits nothing.",
    )
    wage = number(
        "Pay for an hour of work",
        unit="money/person_hour",
        usual=(8, 40),
        hard=(0, 500),
        default=18,
        how="Pay slip; for your own hours, what you would pay someone else to do the work.",
        source=COMMON_PRACTICE,
        note="The default is the same number in every currency; replace it.",
    )
    payroll_extra = number(
        "Payroll tax and insurance on top of pay",
        unit="share",
        usual=(0, 0.4),
        hard=(0, 2),
        default=0.13,
        how="Employer's taxes and workers' insurance over a year, divided by the pay; 0 where they are in the pay typed.",
        source=COMMON_PRACTICE,
    )

    @line("Cost of an hour of work", unit="money/person_hour")
    def labour_rate(self) -> Expr:
        """Every hour is counted at this rate, whoever works it, so that the owner's own hours are never free."""
        return self.wage * (1 + self.payroll_extra)

    @line("Farm is new", unit="flag")
    def is_new(self) -> Expr:
        """1 for a farm that has no ordinary weeks behind it."""
        return self.chose(self.stage, NEW_FARM)

    @line("Bags in a load of the cabinet, counted", unit="bag_filled/run")
    def bags_in_a_load(self) -> Expr:
        """What you typed; else half of a week's bags, in whole ones."""
        return where(self.given(self.bags_per_load), self.bags_per_load, self.usual_load)

    @line("Bags in a load of a farm of this size", unit="bag_filled/run", source=COMMON_PRACTICE)
    def usual_load(self) -> Expr:
        """Half of a week's bags, in whole ones."""
        return whole_up(self.bags_filled_a_week / USUAL_LOADS)

    @line("Bags filled a year", unit="bag_filled/year")
    def bags_filled_a_year(self) -> Expr:
        """Weeks worked only; the weeks that are shut are left out."""
        return self.bags_filled_a_week * self.weeks_worked
