"""Picking and packing: how fast, and whether picking is paid by the hour or by the piece."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.cost.harvest import Harvest
from farmbook.model.place.farm_plan import Farm
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import Option, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["BY_PIECE", "BY_THE_HOUR", "Picking"]

BY_THE_HOUR: Final = Option("hour", "by the hour")
BY_PIECE: Final = Option("piece", "by the piece")


class Picking(Section):
    """Hands at the bags and at the packing table."""

    title = "Picking and packing"

    farm = uses(Farm)
    harvest = uses(Harvest)
    shocks = uses(Shocks)

    pick_rate = number(
        "Picked in an hour of work",
        unit="kg_picked/person_hour",
        usual=(9, 32),
        hard=(0.5, 500),
        default=15.4,
        how="Weight over the clock by picker, breaks and walking in it, a good and a poor day together.",
        source=COMMON_PRACTICE,
        note="From memory. Over the clock, so no part of the hour is to be taken off again.",
    )
    pack_rate = number(
        "Packed in an hour of work",
        unit="kg_packed/person_hour",
        usual=(13, 55),
        hard=(0.5, 1000),
        default=28,
        how="Weight over the clock, trimming, weighing, labelling and stacking in it, all kinds of box together.",
        source=COMMON_PRACTICE,
    )
    paid = choice(
        "How picking is paid",
        BY_THE_HOUR,
        BY_PIECE,
        default=BY_THE_HOUR,
        how="By the piece: pickers get so much for the weight picked.",
        source=COMMON_PRACTICE,
    )
    piece_rate = number(
        "Pay for the weight picked, if by the piece",
        unit="money/kg_picked",
        usual=(0.5, 3),
        hard=(0, 100),
        default=1.3,
        how="As agreed with the pickers, before payroll tax.",
        source=COMMON_PRACTICE,
    )
    minimum_wage = number(
        "Minimum wage",
        unit="money/person_hour",
        usual=(7, 25),
        hard=(0, 500),
        default=0,
        how="The law's, where you are. A picker paid by the piece must come to it: you top up the rest.",
        source=COMMON_PRACTICE,
        note="0 until you give it. The law of your place decides what counts as an hour.",
    )
    busiest_share = number(
        "Share of a week's crop picked on its busiest day",
        unit="share",
        usual=(0.14, 0.4),
        hard=(0, 1),
        default=0.2,
        how="Weight picked on the heaviest day over that of its week, the mean of ten weeks.",
        source=COMMON_PRACTICE,
    )

    @line("Picking is paid by the piece", unit="flag")
    def by_piece(self) -> Expr:
        """1 where it is; its hours are then no part of the hours paid."""
        return self.chose(self.paid, BY_PIECE)

    @line("Earned in an hour by the piece", unit="money/person_hour")
    def piece_earned(self) -> Expr:
        """At the weight picked in an hour."""
        return self.piece_rate * self.pick_rate

    @line("Topped up to the minimum wage, an hour", unit="money/person_hour")
    def top_up(self) -> Expr:
        """Nothing where the piece earns more than that. A mean: slow pickers need more."""
        return maximum(self.minimum_wage - self.piece_earned, 0)

    @line("Pay for an hour of picking", unit="money/person_hour")
    def paid_an_hour(self) -> Expr:
        """By the hour, what an hour is paid; by the piece, what it earns and the top-up."""
        return where(self.by_piece, self.piece_earned + self.top_up, self.farm.wage)

    @line("Cost of an hour of picking", unit="money/person_hour")
    def hour_cost(self) -> Expr:
        """With payroll tax and insurance."""
        return self.paid_an_hour * (1 + self.farm.payroll_extra)

    @line("Picking, work for the weight picked", unit="money/kg_picked", source=ARITHMETIC)
    def pick_cost(self) -> Expr:
        """An hour over what is picked in it."""
        return ratio(self.hour_cost, self.pick_rate)

    @line("Picking takes, hours a week", unit="person_hour/week")
    def pick_hours(self) -> Expr:
        """However it is paid."""
        return ratio(self.harvest.picked_a_week, self.pick_rate)

    @line("Packing takes, hours a week", unit="person_hour/week")
    def pack_hours(self) -> Expr:
        """Of what is left after trimming."""
        return ratio(self.harvest.packed_a_week, self.pack_rate)

    @line("Picking by the piece, cost a year", unit="money/year")
    def piece_cost(self) -> Expr:
        """Nothing where it is paid by the hour: then it is in the hours."""
        return self.pick_cost * self.harvest.picked_a_year * self.by_piece * self.shocks.weight_kept
