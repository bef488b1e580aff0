"""What a year loses with its weight: what nobody takes costs nothing, then the customers served last go short, month by month."""

from __future__ import annotations

from farmbook.expr.functions import joined, mean, previous, starting, total
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.axes import CALENDAR, CUSTOMER, HALVING, SERVED
from farmbook.model.labour.picking import Picking
from farmbook.model.schedule.in_turn import InTurn
from farmbook.model.selling.customer_months import CustomerMonths
from farmbook.model.selling.customers import Customers
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["WeightLost"]


class WeightLost(Section):
    """You go wherever you go as planned: stalls, driving and hired hours are paid all the same."""

    title = "What is lost with the weight"

    customers = uses(Customers)
    months = uses(CustomerMonths)
    in_turn = uses(InTurn)
    picking = uses(Picking)

    @line("Customer and those served before take at most a week", unit="kg_taken/week", axes=(CUSTOMER, CALENDAR))
    def up_to(self) -> Expr:
        """With less than this to sell, the customer goes short."""
        return self.months.earlier_a_week + self.months.room_a_week

    @line("Weight taken there brings, fees and packing paid", unit="money/kg_taken", axes=(CUSTOMER,))
    def brings(self) -> Expr:
        """Before stall, delivery, hours and waiting."""
        return joined(self.customers.after_fees * self.customers.share_sold, "money/kg_taken") - self.customers.packing

    @line("In turn: weight brings, fees and packing paid", unit="money/kg_taken", axes=(SERVED,))
    def in_turn_brings(self) -> Expr:
        """The same, first served first."""
        return self.in_turn.of_customer(self.brings)

    @line("Weight brings at the customer served next", unit="money/kg_taken", axes=(CUSTOMER,))
    def next_brings(self) -> Expr:
        """Nothing after the last."""
        is_next = (self.in_turn.number > self.in_turn.place) * (self.in_turn.number <= self.in_turn.place + 1)
        return total(is_next * self.in_turn_brings, SERVED)

    @line("Brings more than the next, in the weeks of a month", unit="money*week/kg_taken", axes=(CUSTOMER,))
    def more_than_next(self) -> Expr:
        """What each goes short costs, told as steps from customer to customer."""
        return (self.brings - self.next_brings) * self.customers.present * self.months.weeks

    @line("Short as planned, customer and those before, a week", unit="kg_taken/week", axes=(CUSTOMER,))
    def short_now(self) -> Expr:
        """Added up over the months."""
        return self.short_with(self.months.supply_a_week)

    @line("Short with nothing to sell, customer and those before, a week", unit="kg_taken/week", axes=(CUSTOMER,))
    def short_of_all(self) -> Expr:
        """All that they take."""
        return total(self.up_to, CALENDAR)

    @line("Picking by the piece that goes with the weight", unit="money")
    def piece(self) -> Expr:
        """Saved, as it is not picked."""
        return joined(self.picking.piece_cost, "money")

    @line("Lost with all of the weight", unit="money")
    def lost_with_all(self) -> Expr:
        """Nothing is sold."""
        return self.lost(self.short_of_all, wrap(1))

    @line("Width of the search", unit="share", axes=(HALVING,), source=ARITHMETIC)
    def width(self) -> Expr:
        """Half of the one before."""
        return starting(1, mean(previous(self.width, HALVING), wrap(0)))

    @line("Last width of the search", unit="share", source=ARITHMETIC)
    def last_width(self) -> Expr:
        """All widths together fall short of the whole by so much."""
        return 1 - total(self.width, HALVING)

    def short_with(self, supply: Expr) -> Expr:
        """How much each customer, and those served before, go short with so much to sell a week; added up over the months."""
        return total((self.up_to > supply) * (self.up_to - supply), CALENDAR)

    def lost(self, short: Expr, share: Expr) -> Expr:
        """Income lost where customers go short so much, as this share of the weight is gone."""
        return total(self.more_than_next * (short - self.short_now), CUSTOMER) - self.piece * share
