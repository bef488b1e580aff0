"""What each customer gets, month by month: in the order you serve them, each up to what it takes."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import all_of, joined, maximum, minimum, total, where
from farmbook.expr.nodes import Expr
from farmbook.expr.ranking import before
from farmbook.model.axes import CALENDAR, CUSTOMER
from farmbook.model.cost.harvest import Harvest
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customers import Customers
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["CustomerMonths"]

MATRIX = (CUSTOMER, CALENDAR)


class CustomerMonths(Section):
    """Months are filled apart, as customers take more in some than in others; the crop is the same in each."""

    title = "What customers get, month by month"

    farm = uses(Farm)
    harvest = uses(Harvest)
    customers = uses(Customers)
    shocks = uses(Shocks)

    @line("Weeks worked in a month", unit="week", source=ARITHMETIC)
    def weeks(self) -> Expr:
        """The weeks worked a year over its twelve months: in weeks that are shut there is nothing to sell."""
        return joined(self.farm.weeks_worked / MONTHS_IN_A_YEAR, "week")

    @line("To sell a week", unit="kg_taken/week")
    def supply_a_week(self) -> Expr:
        """The crop of a week; less in a case in which it gives less."""
        return self.harvest.taken_a_week * self.shocks.weight_kept

    @line("To sell in a month", unit="kg_taken", source=ARITHMETIC)
    def supply(self) -> Expr:
        """The year's crop over its months."""
        return joined(self.harvest.taken_a_year / MONTHS_IN_A_YEAR, "kg_taken") * self.shocks.weight_kept

    @line("Of it, only a rounding of sums", unit="kg_taken", source=ARITHMETIC)
    def rounding(self) -> Expr:
        """Less than this is nothing."""
        return self.supply * SUM_TOLERANCE

    @line("Takes at most a week", unit="kg_taken/week", axes=MATRIX)
    def room_a_week(self) -> Expr:
        """A full week's most, times the month's share. By the week, as the weeks worked then change nothing in it."""
        return self.customers.most_a_week * self.customers.season

    @line("Those served before take at most a week", unit="kg_taken/week", axes=MATRIX)
    def earlier_a_week(self) -> Expr:
        """By the order in which you serve them."""
        return before(self.room_a_week, self.customers.turn_key, CUSTOMER)

    @line("Gets", unit="kg_taken", axes=MATRIX)
    def gets(self) -> Expr:
        """What is left when those before have theirs, up to the most it takes; nothing that is only a rounding of sums."""
        left = minimum(self.room_a_week, self.supply_a_week - self.earlier_a_week)
        return where(left > self.room_a_week * SUM_TOLERANCE, left * self.weeks, 0)

    @line("Would still take", unit="kg_taken", axes=MATRIX)
    def still_takes(self) -> Expr:
        """At its price; nothing that is only a rounding of what there is to sell."""
        left = self.room_a_week * self.weeks - self.gets
        return where(left > self.rounding, left, 0)

    @line("Gets the next one", unit="flag", axes=MATRIX)
    def takes_next(self) -> Expr:
        """The first, in your order, who would still take something: those before take no more than there is."""
        over = self.earlier_a_week * self.weeks - self.supply
        return all_of(self.still_takes > 0, over <= self.rounding)

    @line("Gets the last one", unit="flag", axes=MATRIX)
    def takes_last(self) -> Expr:
        """The last, in your order, who gets something: those before have all they take, and nothing is left for others."""
        later = self.placed - self.earlier_a_week * self.weeks - self.gets
        return all_of(self.gets > 0, later <= self.rounding)

    @line("Customers get in the month", unit="kg_taken", axes=(CALENDAR,))
    def placed(self) -> Expr:
        """All of them."""
        return total(self.gets, CUSTOMER)

    @line("No customer takes in the month", unit="kg_taken", axes=(CALENDAR,), source=ARITHMETIC)
    def homeless(self) -> Expr:
        """Grown and not to be sold: it is dried, given away or thrown out, and brings nothing here."""
        return maximum(self.supply - total(self.room_a_week, CUSTOMER) * self.weeks, 0)

    @line("The next one would bring in the month", unit="money/kg_taken", axes=(CALENDAR,))
    def next_brings(self) -> Expr:
        """From the customer who gets it; nothing where none would take it."""
        return total(self.takes_next * self.customers.brings, CUSTOMER)

    @line("The last one brings in the month", unit="money/kg_taken", axes=(CALENDAR,))
    def last_brings(self) -> Expr:
        """From the last customer served."""
        return total(self.takes_last * self.customers.brings, CUSTOMER)
