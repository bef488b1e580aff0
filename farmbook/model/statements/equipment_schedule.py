"""Equipment item by item: what each thing cost, and what it has lost in the months that it was there."""

from __future__ import annotations

from farmbook.expr.functions import joined, maximum, minimum, running_sum, total, where, whole_down, whole_up
from farmbook.expr.nodes import Expr
from farmbook.model.axes import ITEM, MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.owning.capital import ONE_SUM
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["EquipmentSchedule"]


class EquipmentSchedule(Section):
    """Another way to the value in the books: no month is made of the one before it."""

    title = "Equipment item by item"

    months = uses(PlanMonths)
    capital = uses(MonthCapital)

    @line("Item: months before it loses value", unit="count", axes=(ITEM,))
    def not_yet(self) -> Expr:
        """Of the plan; a part of a month counts to the next whole one."""
        return maximum(whole_up(self.capital.capital.owned.bought_in) - 1, 0)

    @line("Item: in the books when it is there", unit="money", axes=(ITEM,))
    def item_cost(self) -> Expr:
        """When the plan starts, or its price when it is bought."""
        owned = self.capital.capital.owned
        return self.capital.item_book_value + owned.price * (owned.bought_in > 0) * self.capital.shocks.building

    @line("Items, steamer and lab in the books, counted item by item", unit="money", axes=(MONTH,), source=ARITHMETIC)
    def value(self) -> Expr:
        """What each cost, less its loss for its months; or less the loss in one sum."""
        listed = self.items_value + self.steamer_value + self.lab_value
        return where(self.capital.capital.chose(self.capital.capital.counted, ONE_SUM), self.in_one_sum, listed)

    @line("Items, steamer and lab at cost, less loss in one sum", unit="money", axes=(MONTH,))
    def in_one_sum(self) -> Expr:
        """What was there, bought and replaced, less so many months of the one sum."""
        bought = self.capital.opening_value + self.bought_so_far + self.capital.replaced_so_far
        return bought - self.capital.one_sum * self.months.number

    @line("Items, steamer and lab bought so far", unit="money", axes=(MONTH,))
    def bought_so_far(self) -> Expr:
        """From the start of the plan."""
        return running_sum(self.capital.bought, MONTH)

    @line("Items of the list in the books, counted item by item", unit="money", axes=(MONTH,))
    def items_value(self) -> Expr:
        """Each from its month on."""
        months = self.months.number - self.not_yet
        a_month = self.item_loss * months
        there = total((self.item_cost - a_month) * (months > 0), ITEM)
        return there + self.capital.replaced_so_far

    @line("Item: loss in value in a month", unit="money", axes=(ITEM,))
    def item_loss(self) -> Expr:
        """A twelfth of a year's."""
        return joined(self.capital.capital.owned.yearly_loss, "money") / MONTHS_A_YEAR

    @line("Steamer: in the books when it is there", unit="money")
    def steamer_cost(self) -> Expr:
        """Its price; of one still to be bought what it comes to."""
        return self._paid(self.capital.steamer_price, self.capital.steamer_bought_in)

    def _paid(self, price: Expr, bought_in: Expr) -> Expr:
        return price * (1 + (self.capital.shocks.building - 1) * (bought_in > 0))

    @line("Steamer: months before it loses value", unit="count")
    def steamer_not_yet(self) -> Expr:
        """Of the plan; a part of a month counts to the next whole one."""
        return maximum(whole_up(self.capital.steamer_bought_in) - 1, 0)

    @line("Steamer: last whole month of its years", unit="count")
    def steamer_last(self) -> Expr:
        """Of the plan."""
        return whole_down(self.capital.steamer_worn_in)

    @line("Steamer: loss in value in a month of its years", unit="money")
    def steamer_a_month(self) -> Expr:
        """A twelfth of a year's."""
        return joined(self.capital.capital.steamer.yearly_loss, "money") / MONTHS_A_YEAR

    @line("Steamer: months of loss in value so far", unit="count", axes=(MONTH,))
    def steamer_months(self) -> Expr:
        """Until its years are over."""
        return maximum(minimum(self.months.number, self.steamer_last) - self.steamer_not_yet, 0)

    @line("Steamer in the books, counted by its months", unit="money", axes=(MONTH,))
    def steamer_value(self) -> Expr:
        """Price less loss."""
        there = self.capital.steamer_bought_in <= self.months.number
        return self.steamer_cost * there - self.steamer_a_month * self.steamer_months

    @line("Lab: in the books when it is there", unit="money")
    def lab_cost(self) -> Expr:
        """Its price; of one still to be bought what it comes to."""
        return self._paid(self.capital.lab_price, self.capital.lab_bought_in)

    @line("Lab: months before it loses value", unit="count")
    def lab_not_yet(self) -> Expr:
        """Of the plan; a part of a month counts to the next whole one."""
        return maximum(whole_up(self.capital.lab_bought_in) - 1, 0)

    @line("Lab: last whole month of its years", unit="count")
    def lab_last(self) -> Expr:
        """Of the plan."""
        return whole_down(self.capital.lab_worn_in)

    @line("Lab: loss in value in a month of its years", unit="money")
    def lab_a_month(self) -> Expr:
        """A twelfth of a year's."""
        return joined(self.capital.capital.lab_loss, "money") / MONTHS_A_YEAR

    @line("Lab: months of loss in value so far", unit="count", axes=(MONTH,))
    def lab_months(self) -> Expr:
        """Until its years are over."""
        return maximum(minimum(self.months.number, self.lab_last) - self.lab_not_yet, 0)

    @line("Lab in the books, counted by its months", unit="money", axes=(MONTH,))
    def lab_value(self) -> Expr:
        """Price less loss; nothing where spawn is bought."""
        there = self.capital.lab_bought_in <= self.months.number
        return self.lab_cost * there - self.lab_a_month * self.lab_months
