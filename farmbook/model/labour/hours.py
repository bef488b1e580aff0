"""All hours together: needed, paid and worked, and what an hour costs in money and with your own."""

from __future__ import annotations

from typing import Final

from farmbook.calc.tolerance import SUM_TOLERANCE, is_rounding
from farmbook.expr.functions import maximum, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.fruiting_tasks import ClearingWork, CullingWork, OpeningWork, RoundWork
from farmbook.model.labour.making_tasks import InoculatingWork, MixingWork, ShelvingWork, SpawnWork, SteamingWork
from farmbook.model.labour.other_tasks import OfficeWork, PackingWork, PickingWork, SellingWork, UpkeepWork
from farmbook.model.labour.picking import Picking
from farmbook.model.place.farm_plan import Farm
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, USDA_FARM_LABOR

__all__ = ["BY_TASK", "PAID", "Hours"]

PAID: Final = Option("paid", "hours paid")
BY_TASK: Final = Option("task", "worked out by task")


class Hours(Section):
    """Hours paid are what costs; the hours of tasks explain them."""

    title = "Hours of work"

    farm = uses(Farm)
    picking = uses(Picking)
    shocks = uses(Shocks)
    source = uses(SpawnSource)
    spawn = uses(Spawn)
    own_spawn = uses(OwnSpawnWork)
    mixing_work = uses(MixingWork)
    steaming_work = uses(SteamingWork)
    inoculating_work = uses(InoculatingWork)
    spawn_work = uses(SpawnWork)
    shelving_work = uses(ShelvingWork)
    opening_work = uses(OpeningWork)
    clearing_work = uses(ClearingWork)
    culling_work = uses(CullingWork)
    round_work = uses(RoundWork)
    picking_work = uses(PickingWork)
    packing_work = uses(PackingWork)
    selling_work = uses(SellingWork)
    upkeep_work = uses(UpkeepWork)
    office_work = uses(OfficeWork)

    counted = choice(
        "Hired hours: as paid, or worked out by task",
        PAID,
        BY_TASK,
        default=BY_TASK,
        how="As paid, if you have a payroll: then those hours cost, and the tasks explain them.",
        source=COMMON_PRACTICE,
    )
    hired_hours = number(
        "Hired hours paid a week",
        unit="person_hour/week",
        usual=(0, 400),
        hard=(0, 100000),
        default=0,
        how="Payroll of an ordinary month over its weeks, all hands; pickers paid by the piece left out.",
        source=COMMON_PRACTICE,
    )
    own_hours = number(
        "Own and family hours a week",
        unit="person_hour/week",
        usual=(10, 120),
        hard=(0, 2000),
        default=45,
        how="Write them down for two weeks, evenings and market days too.",
        source=COMMON_PRACTICE,
    )
    own_rate = number(
        "What an hour of your own is worth to you",
        unit="money/person_hour",
        usual=(10, 50),
        hard=(0, 1000),
        default=20,
        how="What you would be paid elsewhere, or would have to pay somebody to take your place.",
        source=USDA_FARM_LABOR,
        note="No money leaves the farm for it; it is counted apart, never among the bills.",
    )

    @line("From the heap to the shelf, hours a week", unit="person_hour/week")
    def making(self) -> Expr:
        """Mixing, steaming, inoculating, spawn, shelving."""
        bags = self.mixing_work.hours_a_week + self.steaming_work.hours_a_week + self.shelving_work.hours_a_week
        return bags + self.inoculating_work.hours_a_week + self.spawn_work.hours_a_week

    @line("In the fruiting rooms, hours a week", unit="person_hour/week")
    def fruiting(self) -> Expr:
        """Opening, clearing, taking out lost bags, rounds."""
        bags = self.opening_work.hours_a_week + self.clearing_work.hours_a_week
        return bags + self.culling_work.hours_a_week + self.round_work.hours_a_week

    @line("From the pick to the customer, hours a week", unit="person_hour/week")
    def harvesting(self) -> Expr:
        """Picking, packing, selling."""
        return self.picking_work.hours_a_week + self.packing_work.hours_a_week + self.selling_work.hours_a_week

    @line("Upkeep and office, hours a week", unit="person_hour/week")
    def running(self) -> Expr:
        """The same for half as many bags."""
        return self.upkeep_work.hours_a_week + self.office_work.hours_a_week

    @line("All tasks, hours a week", unit="person_hour/week")
    def needed(self) -> Expr:
        """Rates are over the clock, breaks inside, so nothing is added for them."""
        return self.making + self.fruiting + self.harvesting + self.running

    @line("Of these, paid by the piece, hours a week", unit="person_hour/week")
    def by_the_piece(self) -> Expr:
        """Picking, where it is paid so."""
        return self.picking_work.hours_a_week * self.picking.by_piece

    @line("All tasks but what is paid by the piece, hours a week", unit="person_hour/week")
    def by_the_hour(self) -> Expr:
        """What hired and own hours have to cover."""
        return self.needed - self.by_the_piece

    @line("Hired hours counted, a week", unit="person_hour/week")
    def hired(self) -> Expr:
        """As paid; or what the tasks need beyond your own."""
        by_task = maximum(self.by_the_hour - self.own_hours, 0)
        return where(self.chose(self.counted, PAID), self.hired_hours, by_task)

    @line("Hours had a week", unit="person_hour/week")
    def had(self) -> Expr:
        """Hired and own."""
        return self.hired + self.own_hours

    @line("Paid or worked, not explained by tasks, a week", unit="person_hour/week")
    def not_explained(self) -> Expr:
        """What no task accounts for: waiting, learning, or rates that flatter. Below zero: hours are missing."""
        return self.had - self.by_the_hour

    @line("Hours missing a week", unit="person_hour/week")
    def missing(self) -> Expr:
        """Work that nobody is there for."""
        return maximum(self.by_the_hour - self.had, 0)

    @line("The next hour of work has to be hired", unit="flag")
    def next_is_hired(self) -> Expr:
        """Your own are used up; or, where hours are typed as paid, all that are paid and worked have a task."""
        own = self.by_the_hour > self.own_hours
        return where(self.chose(self.counted, PAID), self.by_the_hour >= self.had, own)

    @line("The next hour of work in money", unit="money/person_hour")
    def hour_in_money(self) -> Expr:
        """What one more task costs, and one fewer saves: a hired hour, or nothing while own or paid hours are to spare."""
        return self.next_is_hired * self.farm.labour_rate

    @line("The next hour of work with your own at its worth", unit="money/person_hour")
    def hour_in_full(self) -> Expr:
        """Hired; or, while hours are to spare, what an hour of yours is worth to you."""
        return where(self.next_is_hired, self.hour_in_money, self.own_rate)

    @line("Rounds, washing, upkeep and office, hours a week", unit="person_hour/week")
    def fixed_rounds(self) -> Expr:
        """They do not grow with the bags."""
        rooms = self.shelving_work.check_hours + self.clearing_work.washing_hours + self.round_work.round_hours
        return rooms + self.running

    @line("Hours that do not grow with the bags, a week", unit="person_hour/week")
    def fixed(self) -> Expr:
        """With setting up the lab, the lab's own weekly hours and selling."""
        lab = self.own_spawn.weekly_hours * self.source.made
        return self.fixed_rounds + self.spawn.set_up_hours_a_week + self.selling_work.hours_a_week + lab

    @line("Hours that grow with the bags, for each bag filled", unit="person_hour/bag_filled")
    def growing_with_a_bag(self) -> Expr:
        """Filling, steaming, inoculating, carrying, picking and packing."""
        return ratio(self.by_the_hour - self.fixed, self.farm.bags_filled_a_week)

    @line("Tasks until the bag is opened, for each bag filled", unit="person_min/bag_filled")
    def early_tasks(self) -> Expr:
        """Five tasks, each by the bag."""
        bench = self.inoculating_work.per_bag + self.spawn_work.per_bag
        return self.mixing_work.per_bag + self.steaming_work.per_bag + self.shelving_work.per_bag + bench

    @line("Tasks in the fruiting rooms, for each bag filled", unit="person_min/bag_filled")
    def room_tasks(self) -> Expr:
        """Four tasks, each by the bag."""
        opened = self.opening_work.per_bag + self.clearing_work.per_bag
        return opened + self.culling_work.per_bag + self.round_work.per_bag

    @line("Tasks after the pick, for each bag filled", unit="person_min/bag_filled")
    def late_tasks(self) -> Expr:
        """Five tasks, each by the bag."""
        house = self.upkeep_work.per_bag + self.office_work.per_bag
        return self.picking_work.per_bag + self.packing_work.per_bag + self.selling_work.per_bag + house

    @line("All tasks by the bag, hours a week", unit="person_hour/week")
    def by_the_bag(self) -> Expr:
        """Must be all tasks."""
        return (self.early_tasks + self.room_tasks + self.late_tasks) * self.farm.bags_filled_a_week

    @line("Hired hours, cost a year", unit="money/year")
    def hired_cost(self) -> Expr:
        """With payroll tax and insurance, in the weeks worked."""
        return self.hired * self.farm.weeks_worked * self.farm.labour_rate

    @line("Hired work, cost a year", unit="money/year")
    def labour_cost(self) -> Expr:
        """By the hour and by the piece."""
        return (self.hired_cost + self.picking.piece_cost) * self.shocks.wages

    @line("Own and family hours a year", unit="person_hour/year")
    def own_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.own_hours * self.farm.weeks_worked

    @line("Own and family hours, worth a year", unit="money/year")
    def own_value(self) -> Expr:
        """At what an hour is worth to you; no money leaves for it."""
        return self.own_a_year * self.own_rate

    @line("Hours: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "The tasks of a week take ",
            figure(self.by_the_hour, 0, named=False),
            either(self.by_the_piece > 0, " hours beside piece work; ", " hours; "),
            figure(self.hired, 0, named=False),
            " are hired and ",
            figure(self.own_hours, 0, named=False),
            " your own.",
            either(self.enough, "", " Hours are missing."),
        )

    @check(
        "There are hours enough for the tasks",
        kind="alert",
        says="The tasks of a week take more hours than are paid and worked: see the sheet Hours for how many are missing.",
    )
    def enough(self) -> Expr:
        """Where hired hours are worked out by task, they always are."""
        return self.missing <= self.had * SUM_TOLERANCE

    @check(
        "Hours by task add up, by the week and by the bag",
        kind="error",
        says="The hours of the tasks by the bag are not those of the week: a formula of the sheet Hours was changed.",
    )
    def tasks_add_up(self) -> Expr:
        """Fourteen tasks, each counted once."""
        return is_rounding(self.by_the_bag - self.needed, self.by_the_bag, self.needed)
