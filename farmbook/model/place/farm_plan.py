"""The farm and its plan: who it is, how much it fills, what an hour of work costs."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.sections.declare import line, number, text
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Farm"]


class Farm(Section):
    """The farm and its plan."""

    title = "The farm and its plan"

    name = text("Farm", default="(farm not named)", how="As it should stand on every page.")
    place = text("Place", default="", how="Town and region.")
    prepared_by = text("Prepared by", default="", how="Who filled in this book.")
    plan_date = text("Date of the plan", default="", how="Year-month-day, such as 2026-03-01.")
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
        how="Count the places in the cabinet that you really fill.",
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
        usual=(0.08, 0.4),
        hard=(0, 2),
        default=0.13,
        how="Employer's taxes and workers' insurance over a year, divided by the pay.",
        source=COMMON_PRACTICE,
    )

    @line("Cost of an hour of work", unit="money/person_hour")
    def labour_rate(self) -> Expr:
        """Every hour is counted at this rate, whoever works it, so that the owner's own hours are never free."""
        return self.wage * (1 + self.payroll_extra)

    @line("Bags filled a year", unit="bag_filled/year")
    def bags_filled_a_year(self) -> Expr:
        """Weeks worked only; the weeks that are shut are left out."""
        return self.bags_filled_a_week * self.weeks_worked
