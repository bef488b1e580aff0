"""One spell in which no bags are filled: what it costs, and when the farm is back."""

from __future__ import annotations

from farmbook.expr.functions import at, maximum, minimum, ratio, total
from farmbook.expr.nodes import Expr, wrap
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import FLUSH, WEEK
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.lags import Lags
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["Stop"]


class Stop(Section):
    """Beside the plan, which is not changed by it. Bags in process go on and are picked."""

    title = "Down for weeks"
    table = "stop"

    filling = uses(Filling)
    lags = uses(Lags)
    work = uses(WeekHours)
    cold = uses(ColdRoom)
    one_more = uses(OneMore)

    from_week = number(
        "Down: first week of the plan in which no bags are filled",
        unit="count",
        usual=(1, 156),
        hard=(1, 400),
        default=10,
        how="The week of the plan in which the steamer fails, say.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    weeks = number(
        "Down: weeks without filling",
        unit="count",
        usual=(0, 12),
        hard=(0, 52),
        default=3,
        how="Until the repair is done and the first load is steamed again.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    wages_kept = number(
        "Down: hired hands who are paid all the same",
        unit="share",
        usual=(0, 1),
        hard=(0, 1),
        default=1,
        how="Of the hours on the roster. Hands that go may not come back.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    insured = number(
        "Down: insurance pays",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        default=0,
        how="As the policy says, less what you bear yourself.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @property
    def _down(self) -> Expr:
        """Whether a week falls into it."""
        number = self.filling.weeks.number
        return (number >= self.from_week) * (number < self.from_week + self.weeks)

    @line("Down: bags not filled", unit="bag_filled")
    def bags(self) -> Expr:
        """Weeks that are shut anyway do not count."""
        return total(self.filling.filled * self._down, WEEK)

    @line("Down: hired hours not needed", unit="person_hour")
    def hours(self) -> Expr:
        """On the roster in those weeks, as far as hands are not paid all the same."""
        return total(self.work.hired * self._down, WEEK) * (1 - self.wages_kept)

    @property
    def _missed(self) -> Expr:
        """Whether less is picked in a week."""
        number = self.filling.weeks.number
        return (number >= self.first_missed) * (number < self.back)

    @line("Down: weight not there for customers", unit="kg_taken", source=ARITHMETIC)
    def not_ready(self) -> Expr:
        """Some weeks later."""
        return self.bags * self.one_more.crop.taken_per_filled

    @line("Down: planned for customers in the weeks in which less is picked", unit="kg_taken")
    def ready_then(self) -> Expr:
        """As if nothing happened."""
        return total(self.cold.picks.ready * self._missed, WEEK)

    @line("Down: sold in the weeks in which less is picked, as planned", unit="kg_taken")
    def sold_then(self) -> Expr:
        """As if nothing happened."""
        return total(self.cold.sold * self._missed, WEEK)

    @line("Down: part of it that would have been sold", unit="share")
    def sold_share(self) -> Expr:
        """What nobody takes is no loss."""
        return minimum(ratio(self.sold_then, self.ready_then), 1)

    @line("Down: weight that customers do not get", unit="kg_taken", source=ARITHMETIC)
    def weight(self) -> Expr:
        """Of what is not there, what they would have taken in those weeks."""
        return self.not_ready * self.sold_share

    @line("Down: takings lost, net of packing and fees", unit="money", source=PARTIAL_BUDGET)
    def takings_lost(self) -> Expr:
        """At what the last ones sold bring: those customers go without first."""
        return self.weight * self.one_more.customers.last_one

    @line("Down: saved on bags", unit="money", source=PARTIAL_BUDGET)
    def saved_on_bags(self) -> Expr:
        """Mix, bag, spawn, steam and water, and picking paid by the piece; hours on the roster aside."""
        return self.bags * self.saved_a_bag + self.not_ready * self.one_more.piece

    @line("Down: saved for each bag not filled", unit="money/bag_filled")
    def saved_a_bag(self) -> Expr:
        """In money."""
        goods = self.one_more.bag.material_cost + self.one_more.steam_goods
        spawn = self.one_more.spawn_goods * self.one_more.crop.inoculated_per_filled
        return goods + spawn

    @line("Down: saved on wages", unit="money", source=PARTIAL_BUDGET)
    def saved_on_wages(self) -> Expr:
        """With payroll tax and insurance."""
        return self.hours * self.one_more.farm.labour_rate

    @line("Down: what those weeks cost in all", unit="money", source=PARTIAL_BUDGET)
    def cost(self) -> Expr:
        """Rent, rooms and loans are paid as before. The repair itself is not in it."""
        return self.takings_lost - self.saved_on_bags - self.saved_on_wages - self.insured

    @line("Down: first week in which less is picked", unit="count")
    def first_missed(self) -> Expr:
        """Of the plan: those bags would have given their first pick then."""
        return self.from_week + at(self.lags.pick_whole, FLUSH, wrap(1))

    @line("Down: last flush that is picked", unit="count")
    def last_flush(self) -> Expr:
        """By its number."""
        return maximum(self.lags.harvest.crop.flushes_counted, 1)

    @line("Down: week in which the farm is back", unit="count")
    def back(self) -> Expr:
        """Of the plan: the last flush kept is picked as before; a week's bags may be picked in two weeks."""
        more = at(self.lags.pick_part, FLUSH, self.last_flush) > 0
        return self.from_week + self.weeks + at(self.lags.pick_whole, FLUSH, self.last_flush) + more

    @line("Down: in a sentence", unit="1")
    def told(self) -> Expr:
        """What it costs, and when it is over."""
        return say(
            "Down for ",
            figure(self.weeks, 0, named=False),
            " weeks from week ",
            figure(self.from_week, 0, named=False),
            ": ",
            figure(self.cost, -2, named=False),
            " lost, the repair aside. Less is picked from week ",
            figure(self.first_missed, 0, named=False),
            "; the farm is back in week ",
            figure(self.back, 0, named=False),
            ".",
        )
