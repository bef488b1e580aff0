"""Bags in process at what they have cost in money so far: steamed and waiting, in the spawn run, fruiting."""

from __future__ import annotations

from farmbook.expr.functions import (
    absolute,
    interpolated,
    joined,
    maximum,
    previous,
    ratio,
    starting,
    total,
    where,
)
from farmbook.expr.nodes import Expr, Line
from farmbook.model.axes import FLUSH, MONTH, WEEK
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.cost.harvest import Harvest
from farmbook.model.labour.hours import Hours
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.lags import Lags
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.model.year.one_more import OneMore
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["BagsValue"]


class BagsValue(Section):
    """Goods, energy, water and hired hours; your own hours and loss in value are not in it. Lost bags drop out at no value."""

    title = "Bags in process at cost"

    months = uses(PlanMonths)
    hours = uses(Hours)
    harvest = uses(Harvest)
    one_more = uses(OneMore)
    spawn = uses(MonthSpawn)
    work = uses(WeekHours)
    bags = uses(InProcess)
    lags = uses(Lags)
    totals = uses(MonthTotals)

    # What a bag has cost

    @line("Hired hours, of all that are paid and worked", unit="share")
    def hired_share(self) -> Expr:
        """Whoever does a task: hired and own hours are spread alike over all tasks."""
        return ratio(self.hours.hired, self.hours.had)

    @line("An hour of work in a bag, hired part of it", unit="money/person_hour")
    def hired_rate(self) -> Expr:
        """Own and family hours cost no money."""
        return self.hired_share * self.hours.farm.labour_rate

    @line("Bag in process: mixing and steaming, hired hours", unit="money/bag_filled")
    def steaming_work(self) -> Expr:
        """The hours of a typical week over its bags."""
        minutes = self.hours.mixing_work.per_bag + self.hours.steaming_work.per_bag
        return minutes * self.hired_rate

    @line("Bag in process: steamed and waiting, each", unit="money/bag_filled")
    def steamed(self) -> Expr:
        """Mix, bag and tie, steam and water, hired hours. What was spent on burst bags is lost."""
        return self.one_more.bag.material_cost + self.one_more.steam_goods + self.steaming_work

    @line("Bag in process: bench, spawn and shelving, hired hours", unit="money/bag_inoculated")
    def bench_work(self) -> Expr:
        """The hours of a typical week over the bags inoculated in it."""
        return ratio(self.bench_hours, self.one_more.spawn.bags_inoculated_a_week) * self.hired_rate

    @line("Bench, spawn and shelving, hours a week", unit="person_hour/week")
    def bench_hours(self) -> Expr:
        """From the steamer to the incubation room, whoever works them."""
        bench = self.hours.inoculating_work.hours_a_week + self.hours.spawn_work.hours_a_week
        return bench + self.hours.shelving_work.hours_a_week

    @line("Bag in process: spawn in it", unit="money/bag_inoculated")
    def spawn_in_it(self) -> Expr:
        """Bought, or the materials of your own."""
        return where(self.spawn.source.made, self.own_spawn, self.spawn.spawn.cost_per_bag_inoculated)

    @line("Bag in process: own spawn in it", unit="money/bag_inoculated")
    def own_spawn(self) -> Expr:
        """Materials of a typical week, over the bags that get any."""
        return ratio(self.spawn.materials_for_a_bag, self.spawn.spawn.crop.inoculated_per_filled)

    @line("Bag in process: in the spawn run, each", unit="money/bag_inoculated")
    def inoculated(self) -> Expr:
        """With spawn, bench and shelving."""
        return joined(self.steamed, "money/bag_inoculated") + self.spawn_in_it + self.bench_work

    @line("Bag in process: moving and opening, hired hours", unit="money/bag_live")
    def opening_work(self) -> Expr:
        """Of those that live."""
        return self.work.for_opening * self.hired_rate

    @line("Bag in process: just opened, each", unit="money/bag_live")
    def opened(self) -> Expr:
        """It gives this value up with what is picked of it."""
        return joined(self.inoculated, "money/bag_live") + self.opening_work

    # How many there are

    @line("Bags steamed and waiting", unit="bag_inoculated", axes=(WEEK,))
    def waiting_in_week(self) -> Expr:
        """In the steamer or cooling, at the end of the week."""
        return starting(0, previous(self.waiting_in_week, WEEK) + self.bags.whole - self.bags.inoculated)

    def _before(self, weekly: Line) -> Expr:
        """What stands at the ends of weeks, as it stands when the plan starts."""
        return interpolated(weekly, WEEK, whole=self.months.passed, part=self.months.begun)

    def _stock(self, weekly: Line) -> Expr:
        """What stands at the ends of weeks, as it stands at the end of each month."""
        return interpolated(weekly, WEEK, whole=self.months.whole, part=self.months.part)

    @line("Bags steamed and waiting at the end of the month", unit="bag_inoculated", axes=(MONTH,))
    def waiting(self) -> Expr:
        """Between the ends of two weeks, by days."""
        return self._stock(self.waiting_in_week)

    @line("Bags in the spawn run at the end of the month", unit="bag_inoculated", axes=(MONTH,))
    def incubating(self) -> Expr:
        """With those that will not live: they are found when their batch is opened."""
        return self._stock(self.bags.incubating)

    @line("Bags fruiting at the end of the month", unit="bag_live", axes=(MONTH,))
    def fruiting(self) -> Expr:
        """Whatever is left to pick of them."""
        return self._stock(self.bags.fruiting)

    @line("Bags opened by the end of the month", unit="bag_live", axes=(MONTH,))
    def opened_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.totals.weeks.to_date(self.bags.opened)

    @line("Rows of weeks of filling that have come to the pick", unit="count", axes=(FLUSH, MONTH))
    def rows_picked(self) -> Expr:
        """By the end of the month, by the middle of the pick."""
        return self.months.rows - self.lags.pick_in_weeks

    @line("Bags that have come to the pick", unit="bag_live", axes=(FLUSH, MONTH))
    def picked_so_far(self) -> Expr:
        """Counted, whatever they weighed: season, a slow start or a poor crop change no bag's value."""
        return self._come_to(self.rows_picked)

    def _come_to(self, reached: Line) -> Expr:
        """Bags that will live of so many rows of filling, the last counted by its part."""
        row = self.totals.weeks.row
        part = (reached + 1 - row) * (row > reached) * (row < reached + 1)
        return total(self.bags.alive * ((row <= reached) + part), WEEK)

    @line("Weight expected of a bag with the flush, of all flushes kept", unit="share", axes=(FLUSH,))
    def share_of_flush(self) -> Expr:
        """At a typical yield. All with the first where none is expected."""
        first = self.harvest.crop.flush_number <= 1
        return ratio(self.harvest.crop.fresh_per_live, self.harvest.crop.picked_per_live, otherwise=first)

    @line("Bags fruiting, by the weight still to come", unit="bag_live", axes=(MONTH,))
    def to_come(self) -> Expr:
        """A bag of which a third is still to be picked counts for a third."""
        return maximum(self.opened_so_far - total(self.share_of_flush * self.picked_so_far, FLUSH), 0)

    # When the plan starts

    @line("Bags steamed and waiting when the plan starts", unit="bag_inoculated")
    def waiting_at_start(self) -> Expr:
        """On a new farm only those of days of week 1 that fall before the first month."""
        return self._before(self.waiting_in_week)

    @line("Bags in the spawn run when the plan starts", unit="bag_inoculated")
    def incubating_at_start(self) -> Expr:
        """On a new farm only those of days of week 1 that fall before the first month."""
        return self._before(self.bags.incubating)

    @line("Bags fruiting when the plan starts", unit="bag_live")
    def fruiting_at_start(self) -> Expr:
        """On a new farm only those of days of week 1 that fall before the first month."""
        return self._before(self.bags.fruiting)

    @line("Rows of weeks of filling that had come to the pick when the plan starts", unit="count", axes=(FLUSH,))
    def rows_picked_before(self) -> Expr:
        """By the middle of the pick."""
        return self.months.rows_before - self.lags.pick_in_weeks

    @line("Bags that had come to the pick when the plan starts", unit="bag_live", axes=(FLUSH,))
    def picked_before(self) -> Expr:
        """Counted, whatever they weighed."""
        return self._come_to(self.rows_picked_before)

    @line("Bags opened when the plan starts", unit="bag_live")
    def opened_before(self) -> Expr:
        """From the first week that the book has."""
        return self.totals.weeks.come(self.bags.opened, whole=self.months.passed, part=self.months.begun)

    @line("Bags fruiting when the plan starts, by the weight still to come", unit="bag_live")
    def to_come_at_start(self) -> Expr:
        """A bag of which a third is still to be picked counts for a third."""
        return maximum(self.opened_before - total(self.share_of_flush * self.picked_before, FLUSH), 0)

    @line("Bags in process when the plan starts, value", unit="money")
    def value_at_start(self) -> Expr:
        """At what they have cost."""
        return self.closed_at_start + self.to_come_at_start * self.opened

    @line("Bags waiting and in the spawn run when the plan starts, value", unit="money")
    def closed_at_start(self) -> Expr:
        """At what they have cost."""
        return joined(self.waiting_at_start, "bag_filled") * self.steamed + self.incubating_at_start * self.inoculated

    # What they are worth in the books

    @line("Bags steamed and waiting, value at the end of the month", unit="money", axes=(MONTH,))
    def waiting_value(self) -> Expr:
        """At what they have cost."""
        return joined(self.waiting, "bag_filled") * self.steamed

    @line("Bags in the spawn run, value at the end of the month", unit="money", axes=(MONTH,))
    def incubating_value(self) -> Expr:
        """At what they have cost."""
        return self.incubating * self.inoculated

    @line("Bags fruiting, value at the end of the month", unit="money", axes=(MONTH,))
    def fruiting_value(self) -> Expr:
        """At what they have cost, for the share of the weight still to come."""
        return self.to_come * self.opened

    @line("Bags in process, value at the end of the month", unit="money", axes=(MONTH,))
    def value(self) -> Expr:
        """At cost in money, never at what the crop will sell for."""
        return starting(self.value_at_start, self.waiting_value + self.incubating_value + self.fruiting_value)

    # Whether they add up

    @line("Bags lost up to opening, by the end of the month", unit="bag_filled", axes=(MONTH,))
    def lost_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.totals.weeks.to_date(self.bags.lost_by_opening)

    @line("Bags dumped by the end of the month", unit="bag_live", axes=(MONTH,))
    def dumped_so_far(self) -> Expr:
        """From the first week that the book has."""
        return self.totals.weeks.to_date(self.bags.dumped)

    @line("Bags in process by what was filled, lost and dumped", unit="bag_filled", axes=(MONTH,), source=ARITHMETIC)
    def by_flows(self) -> Expr:
        """The same count from the other side."""
        return self.totals.filled_so_far - self.lost_so_far - joined(self.dumped_so_far, "bag_filled")

    @line("Bags in process, apart from what was filled, lost and dumped", unit="bag_filled", axes=(MONTH,))
    def apart(self) -> Expr:
        """Nothing but rounding."""
        before_opening = self.waiting + self.incubating
        in_rooms = joined(before_opening, "bag_filled") + joined(self.fruiting, "bag_filled")
        return absolute(in_rooms - self.by_flows)

    @check(
        "Bags in process on the balance sheet are those of the weeks, in every month",
        kind="error",
        says="In some month bags in process are not those filled less those lost and dumped: a formula was changed.",
    )
    def counts_add_up(self) -> Expr:
        """Stages and flows are worked out apart."""
        return total(self.apart, MONTH) <= self.bags.rounding
