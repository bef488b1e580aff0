"""What safety costs in a year: inspection and insurance of a boiler, alarms, respirators."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.sections.declare import line, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["SafetyCosts"]


class SafetyCosts(Section):
    """Bills of their own, so that a plan without them can be seen."""

    title = "Safety: what it costs a year"
    table = "safety"

    inspection = number(
        "Boiler or pressure vessel: inspection and valve tests a year",
        unit="money/year",
        usual=(0, 2000),
        hard=(0, 1000000),
        default=0,
        how="Quote of the boiler inspector. Leave it out of your list of bills, it is added there; one sum of bills holds it.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    insurance = number(
        "Boiler or pressure vessel: insurance of it a year",
        unit="money/year",
        usual=(0, 5000),
        hard=(0, 1000000),
        default=0,
        how="Quote of your insurer, in writing. Leave it out of your list of bills, it is added there; one sum holds it.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    alarms = number(
        "Upkeep of gas alarms a year",
        unit="money/year",
        usual=(0, 1000),
        hard=(0, 1000000),
        default=0,
        how="Sensors and test gas. What an alarm costs to buy stands with the things owned.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    respirators = number(
        "Respirators and fit tests a year",
        unit="money/year",
        usual=(0, 3000),
        hard=(0, 1000000),
        default=0,
        how="Masks, filters and fit tests of all who pick. It is added to a list of bills; one sum holds it.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Safety: inspection, insurance, alarms and respirators a year", unit="money/year")
    def yearly(self) -> Expr:
        """Added to the bills where they are a list. One sum of all bills holds it already."""
        return self.inspection + self.insurance + self.alarms + self.respirators
