"""What is bought and replaced month by month, and how what is owned loses in value."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import joined, maximum, minimum, previous, ratio, starting, total, where, whole_down
from farmbook.expr.nodes import Constant, Expr, wrap
from farmbook.model.axes import ITEM, MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.owning.capital import ONE_SUM, Capital
from farmbook.model.shocks.shocks import Shocks
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, FARM_MANAGEMENT
from farmbook.units import unit

__all__ = ["MonthCapital"]

ONE_YEAR_OLDER: Final = Constant(1, "one_year_older", label="One year of age", unit=unit("year"), source=ARITHMETIC.key)


class MonthCapital(Section):
    """Straight line from the month in which a thing is there; worn out, it is replaced at its price, less what it fetches."""

    title = "Bought, replaced and worn, month by month"
    table = "capital"

    months = uses(PlanMonths)
    capital = uses(Capital)
    shocks = uses(Shocks)

    age = number(
        "Years old when the plan starts",
        unit="year",
        usual=(0, 15),
        hard=(0, 60),
        default=0,
        axes=(ITEM,),
        how="Of what you own already. It is replaced when its years are over.",
        source=COMMON_PRACTICE,
    )
    steamer_bought_in = number(
        "Steamer: bought in month of the plan",
        unit="count",
        usual=(0, 36),
        hard=(0, 84),
        default=0,
        how="0 for one that you own already.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    lab_bought_in = number(
        "Spawn lab: bought in month of the plan",
        unit="count",
        usual=(0, 36),
        hard=(0, 84),
        default=0,
        how="0 for one that you own already. Read where you make your own spawn.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # Items

    @line("Item: months old when the plan starts", unit="count", axes=(ITEM,))
    def months_old(self) -> Expr:
        """At most its life: what is older still works, and is replaced in the first month. 0 for what is still to be bought."""
        old = minimum(self.age, self.capital.owned.life) / ONE_YEAR_OLDER * MONTHS_A_YEAR
        return old * (self.capital.owned.bought_in <= 0)

    @line("Item: share of its life that is over in a month", unit="share", axes=(ITEM,))
    def worn_a_month(self) -> Expr:
        """Nothing of what has no life."""
        return ratio(wrap(1), self.capital.owned.life / ONE_YEAR_OLDER * MONTHS_A_YEAR)

    @line("Times replaced by the end of the month", unit="count", axes=(ITEM, MONTH))
    def times_replaced(self) -> Expr:
        """Whole lives that are over, in the months owned with those before the plan; none until it is bought."""
        months_owned = self.months.number - self.capital.owned.bought_in + self.months_old
        return whole_down(maximum(months_owned, 0) * self.worn_a_month)

    @line("Item to buy: price in the month it is bought", unit="money", axes=(MONTH,))
    def items_bought(self) -> Expr:
        """Of the list."""
        month = self.months.number
        bought = self.capital.owned.bought_in
        return total(self.capital.owned.price * (bought > month - 1) * (bought <= month), ITEM)

    @line("Item replaced: price less what the old one fetches", unit="money", axes=(ITEM,))
    def net_price(self) -> Expr:
        """What a replacement takes out of the bank."""
        return self.capital.owned.price - self.capital.owned.salvage

    @line("Replacing items so far", unit="money", axes=(MONTH,))
    def replaced_so_far(self) -> Expr:
        """Of the list."""
        return starting(0, total(self.times_replaced * self.net_price, ITEM))

    @line("Replacing items in the month", unit="money", axes=(MONTH,))
    def replacing(self) -> Expr:
        """Price less what the old ones fetch."""
        return self.replaced_so_far - previous(self.replaced_so_far, MONTH)

    # Steamer and lab

    @line("Price of the steamer in use", unit="money")
    def steamer_price(self) -> Expr:
        """As typed with it."""
        steamer = self.capital.steamer
        return where(steamer.vessel_heat.in_use, steamer.vessel.price, steamer.cabinet.price)

    @line("Price of the spawn lab, if spawn is made", unit="money")
    def lab_price(self) -> Expr:
        """Nothing where it is bought."""
        return self.capital.lab_choice.lab_price * self.capital.source.made

    @line("Steamer bought in the month", unit="money", axes=(MONTH,))
    def steamer_bought(self) -> Expr:
        """In the month that you give."""
        return self.steamer_price * self._in(self.steamer_bought_in)

    @line("Spawn lab bought in the month", unit="money", axes=(MONTH,))
    def lab_bought(self) -> Expr:
        """In the month that you give."""
        return self.lab_price * self._in(self.lab_bought_in)

    def _in(self, month: Expr) -> Expr:
        """Whether this is the month; a part of one counts to the next whole one."""
        return (self.months.number >= month) * (self.months.number - 1 < month) * (month > 0)

    @line("Bought in the month", unit="money", axes=(MONTH,))
    def bought(self) -> Expr:
        """Items, steamer and lab."""
        return (self.items_bought + self.steamer_bought + self.lab_bought) * self.shocks.building

    # Loss in value

    @line("Items of the list: loss in value in the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def items_loss(self) -> Expr:
        """From the month in which they are bought."""
        a_year = total(self.capital.owned.yearly_loss * (self.capital.owned.bought_in <= self.months.number), ITEM)
        return joined(a_year, "money") / MONTHS_A_YEAR

    @line("Steamer: loss in value in the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def steamer_loss(self) -> Expr:
        """As if new when the plan starts, or when it is bought, until its years are over; it is not replaced in the plan."""
        held = (self.steamer_bought_in <= self.months.number) * (self.months.number <= self.steamer_worn_in)
        return joined(self.capital.steamer.yearly_loss, "money") / MONTHS_A_YEAR * held

    @line("Lab: loss in value in the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def lab_loss(self) -> Expr:
        """As if new when the plan starts, or when it is bought, until its years are over; it is not replaced in the plan."""
        held = (self.lab_bought_in <= self.months.number) * (self.months.number <= self.lab_worn_in)
        return joined(self.capital.lab_loss, "money") / MONTHS_A_YEAR * held

    @line("Years that the steamer in use lasts", unit="year")
    def steamer_life(self) -> Expr:
        """As typed with it."""
        steamer = self.capital.steamer
        return where(steamer.vessel_heat.in_use, steamer.vessel.life, steamer.cabinet.life)

    @line("Steamer: last month of its years", unit="count")
    def steamer_worn_in(self) -> Expr:
        """Of the plan; one that is bought loses value in the month in which it is bought already."""
        life = self.steamer_life / ONE_YEAR_OLDER * MONTHS_A_YEAR
        return self.steamer_bought_in + life - (self.steamer_bought_in > 0)

    @line("Lab: last month of its years", unit="count")
    def lab_worn_in(self) -> Expr:
        """Of the plan; one that is bought loses value in the month in which it is bought already."""
        life = self.capital.lab_choice.life / ONE_YEAR_OLDER * MONTHS_A_YEAR
        return self.lab_bought_in + life - (self.lab_bought_in > 0)

    @line("Loss in value in one sum, a month", unit="money")
    def one_sum(self) -> Expr:
        """A twelfth of your own figure, or of the usual one."""
        return joined(self.capital.in_one_sum, "money") / MONTHS_A_YEAR

    @line("Loss in value in the month", unit="money", axes=(MONTH,), source=FARM_MANAGEMENT)
    def loss(self) -> Expr:
        """One sum or the list, as you chose."""
        chosen = self.capital.chose(self.capital.counted, ONE_SUM)
        return where(chosen, self.one_sum, self.items_loss + self.steamer_loss + self.lab_loss)

    # In the books

    @line("Item: value lost before the plan", unit="money", axes=(ITEM,))
    def worn(self) -> Expr:
        """Over the months that it is old."""
        a_month = joined(self.capital.owned.yearly_loss, "money") / MONTHS_A_YEAR
        return a_month * self.months_old

    @line("Item in the books when the plan starts", unit="money", axes=(ITEM,))
    def item_book_value(self) -> Expr:
        """Price, less the loss of its years so far; no less than it fetches. Nothing of what is still to be bought."""
        worn = self.capital.owned.price - self.worn
        return maximum(worn, self.capital.owned.salvage) * (self.capital.owned.bought_in <= 0)

    @line("All items, steamer and lab in the books when the plan starts", unit="money")
    def opening_value(self) -> Expr:
        """Steamer and lab at their price, unless they are still to be bought."""
        steamer = self.steamer_price * (self.steamer_bought_in <= 0)
        return total(self.item_book_value, ITEM) + steamer + self.lab_price * (self.lab_bought_in <= 0)

    @line("In the books at the end of the month", unit="money", axes=(MONTH,))
    def value(self) -> Expr:
        """Before, with what was bought and replaced, less the loss in value."""
        return starting(self.opening_value, previous(self.value, MONTH) + self.bought + self.replacing - self.loss)
