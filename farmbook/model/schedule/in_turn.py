"""Customers put in the order in which they are served, and what they take at most in a week of each month."""

from __future__ import annotations

from farmbook.expr.functions import at, joined, maximum, running_sum, total
from farmbook.expr.nodes import Expr
from farmbook.expr.ranking import before
from farmbook.model.axes import CALENDAR, CUSTOMER, SERVED
from farmbook.model.selling.customers import Customers
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["InTurn"]


class InTurn(Section):
    """The same customers as on the sheet Customers, one a row, so that months can stand beside them."""

    title = "Customers in turn"

    customers = uses(Customers)

    @line("Place among the customers served", unit="count", axes=(CUSTOMER,))
    def place(self) -> Expr:
        """1 for whom you serve first; 0 for a column not in use."""
        earlier = before(self.customers.present, self.customers.turn_key, CUSTOMER)
        return self.customers.present * (1 + earlier)

    @line("Place in turn", unit="count", axes=(SERVED,))
    def number(self) -> Expr:
        """From 1."""
        return running_sum(1, SERVED)

    @line("Is the customer in this place", unit="flag", axes=(SERVED, CUSTOMER))
    def is_there(self) -> Expr:
        """One column for each place in use."""
        return (self.place >= self.number) * (self.place <= self.number)

    @line("Column of the customer in this place", unit="count", axes=(SERVED,))
    def column(self) -> Expr:
        """0 for a place not in use."""
        return total(self.customers.row * self.is_there, CUSTOMER)

    @line("Customer in this place", unit="1", axes=(SERVED,))
    def name(self) -> Expr:
        """As named; a place not in use shows the first."""
        return at(self.model.axes[CUSTOMER].label, CUSTOMER, maximum(self.column, 1))

    @line("In turn: place is in use", unit="flag", axes=(SERVED,))
    def in_use(self) -> Expr:
        """As many as there are customers."""
        return self.column > 0

    def of_customer(self, of: Expr) -> Expr:
        """A figure of each customer, for the customer in each place."""
        return total(of * self.is_there, CUSTOMER)

    @line("In turn: takes at most in a full week", unit="kg_taken/week", axes=(SERVED,))
    def most(self) -> Expr:
        """As typed."""
        return self.of_customer(self.customers.most_a_week)

    @line("In turn: takes in the month, of the most", unit="share", axes=(SERVED, CALENDAR))
    def season(self) -> Expr:
        """As typed."""
        return self.of_customer(self.customers.season)

    @line("In turn: takes at most in a week of the month", unit="kg_taken", axes=(SERVED, CALENDAR))
    def week_of_month(self) -> Expr:
        """In an ordinary week of that month."""
        return joined(self.most, "kg_taken") * self.season

    @line("All customers take at most in a week of the month", unit="kg_taken", axes=(CALENDAR,))
    def all_take(self) -> Expr:
        """Together."""
        return total(self.week_of_month, SERVED)

    @line("In turn: takings for what is taken there", unit="money/kg_taken", axes=(SERVED,))
    def takings(self) -> Expr:
        """Price without the tax passed on, for the share that is sold."""
        return joined(self.of_customer(self.customers.price_kept * self.customers.share_sold), "money/kg_taken")

    @line("In turn: fees and packing for what is taken there", unit="money/kg_taken", axes=(SERVED,))
    def selling(self) -> Expr:
        """Fees on what is sold, packing of all."""
        fees = joined(self.of_customer(self.customers.fee_taken * self.customers.share_sold), "money/kg_taken")
        return fees + self.of_customer(self.customers.packing)

    @line("In turn: stall and delivery in a week there", unit="money", axes=(SERVED,))
    def going(self) -> Expr:
        """Whatever is sold."""
        return joined(self.of_customer(self.customers.stall + self.customers.delivery), "money")

    @line("In turn: weight that the customer still takes, of that planned", unit="share", axes=(SERVED,))
    def weight_kept(self) -> Expr:
        """All, but in a case in which a customer is lost."""
        return self.of_customer(self.customers.weight_kept)

    @line("In turn: days until they pay", unit="day", axes=(SERVED,))
    def days_to_pay(self) -> Expr:
        """As typed."""
        return self.of_customer(self.customers.days_to_pay)
