"""Wages, energy and bills month by month, each in the month in which it falls due."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import at, joined, previous, ratio, starting, total, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import BILL, CALENDAR, MONTH
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR, PlanMonths
from farmbook.model.labour.picking import Picking
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import ONE_SUM
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.year.year import Year
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE
from farmbook.units import unit

__all__ = ["MonthBills"]

NEVER_STEAMED: Final = Constant(
    1000,
    "never_steamed",
    label="Months since the last load, of a farm that has steamed none",
    unit=unit("1"),
    source="arithmetic",
)
ONE_MONTH: Final = Constant(1, "one_month", label="One month", unit=unit("month"), source="arithmetic")


class MonthBills(Section):
    """Wages by the roster; energy by loads, season and the highest kW; bills when they are due."""

    title = "Wages, energy and bills month by month"
    table = "bills"

    months = uses(PlanMonths)
    totals = uses(MonthTotals)
    year = uses(Year)
    bills = uses(Bills)
    picking = uses(Picking)
    shocks = uses(Shocks)

    due_in = number(
        "Due in month of the calendar, 0 for every month",
        unit="count",
        usual=(0, 12),
        hard=(0, 12),
        default=0,
        axes=(BILL,),
        how="1 for January, if it is paid once a year; 0 if it is paid month by month. Twice a year: two rows.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    energy_season = number(
        "Energy of rooms and cooler in the month, of the mean",
        unit="share",
        usual=(0.5, 1.6),
        hard=(0, 12),
        default=1,
        axes=(CALENDAR,),
        how="Twelve bills, each over their mean. The twelve make 1,200% together.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    ratchet_share = number(
        "Highest kW of earlier months still charged: share of it",
        unit="share",
        usual=(0, 1),
        hard=(0, 1),
        default=0,
        how="Read your tariff: some charge, month after month, a share of the highest kW of the last year.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    ratchet_months = number(
        "Highest kW of earlier months still charged: for so many months",
        unit="count",
        usual=(0, 12),
        hard=(0, 36),
        default=0,
        how="0 where each month stands alone.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # Wages

    @line("Wages in the month, on the roster", unit="money", axes=(MONTH,))
    def wages(self) -> Expr:
        """With payroll tax and insurance; whatever is filled or picked."""
        return self.totals.hired * self.bills.farm.labour_rate * self.shocks.wages

    @line("Picking by the piece, for the weight picked as planned", unit="money/kg_picked")
    def for_a_weight(self) -> Expr:
        """Nothing where it is paid by the hour."""
        piece = self.picking.pick_cost * self.picking.by_piece
        return piece * self.shocks.wages * self.shocks.weight_kept

    @line("Picking by the piece in the month", unit="money", axes=(MONTH,))
    def piece(self) -> Expr:
        """Nothing where it is paid by the hour."""
        return self.totals.picked * self.for_a_weight

    # Energy

    @line("Months since the last load", unit="count", axes=(MONTH,))
    def since(self) -> Expr:
        """0 in a month with a load."""
        before = NEVER_STEAMED * self.bills.farm.is_new
        return starting(before, where(self.totals.loads > 0, 0, previous(self.since, MONTH) + 1))

    @line("Highest kW charged in the month, of that of a month with loads", unit="share", axes=(MONTH,))
    def peak(self) -> Expr:
        """All of it with a load, else what the tariff still charges."""
        still = self.ratchet_share * (self.since <= self.ratchet_months)
        return where(self.totals.loads > 0, 1, still)

    @line("Steaming in the month, energy", unit="money", axes=(MONTH,))
    def steaming(self) -> Expr:
        """By loads, and the charge for the highest kW."""
        charge = self.bills.steamer_in_use.demand_cost_per_month * ONE_MONTH
        return self.totals.loads * self.bills.steamer_in_use.energy_cost_per_run + self.peak * charge

    @line("Energy of the lab for each bag filled", unit="money/bag_filled")
    def lab_for_a_bag(self) -> Expr:
        """Nothing where spawn is bought."""
        return ratio(self.bills.lab_energy, self.bills.farm.bags_filled_a_year)

    @line("Energy of rooms, cooler and the rest in a mean month", unit="money")
    def rooms_a_month(self) -> Expr:
        """A twelfth of a typical year, whatever is filled."""
        return joined(self.bills.energy_of_rooms, "money") / MONTHS_A_YEAR

    @line("Energy of rooms, cooler and the rest in the month", unit="money", axes=(MONTH,))
    def rooms(self) -> Expr:
        """By season."""
        return self.rooms_a_month * at(self.energy_season, CALENDAR, self.months.month_of_year)

    @line("Energy in the month", unit="money", axes=(MONTH,))
    def energy(self) -> Expr:
        """Steamer, lab, rooms and cooler."""
        return (self.steaming + self.totals.filled * self.lab_for_a_bag + self.rooms) * self.shocks.energy

    # Bills

    @line("Bills paid every month, a month", unit="money")
    def every_month(self) -> Expr:
        """A twelfth of those with no month of their own, upkeep, and water of the rooms; or of the one sum; with rooms by the week."""
        sum_of_all = joined(self.bills.other + self.year.rooms_by_the_week, "money") / MONTHS_A_YEAR
        return where(self.bills.chose(self.bills.counted, ONE_SUM), sum_of_all, self.listed_every_month)

    @line("Bills listed with no month of their own, safety with them, a year", unit="money/year")
    def with_no_month(self) -> Expr:
        """A twelfth is paid each month."""
        return total(self.bills.amount * (self.due_in <= 0), BILL) + self.bills.safety.yearly

    @line("Bills listed and paid every month, a month", unit="money")
    def listed_every_month(self) -> Expr:
        """With water of the rooms, upkeep, and room cost typed by the week."""
        monthly = self.with_no_month + self.year.rooms_by_the_week
        return joined(monthly + self.bills.upkeep + self.bills.rooms.water_cost, "money") / MONTHS_A_YEAR

    @line("Water of loads in the month", unit="money", axes=(MONTH,))
    def water(self) -> Expr:
        """Nothing where one sum of bills holds it."""
        listed = 1 - self.bills.chose(self.bills.counted, ONE_SUM)
        return self.totals.loads * self.bills.steamer_in_use.water_cost_per_run * listed

    @line("Bills due in the month alone", unit="money", axes=(MONTH,))
    def due(self) -> Expr:
        """Those with a month of their own."""
        month = self.months.month_of_year
        due = total(self.bills.amount * (self.due_in > month - 1) * (self.due_in <= month), BILL)
        return joined(due, "money") * (1 - self.bills.chose(self.bills.counted, ONE_SUM))

    @line("Bills in the month, energy aside", unit="money", axes=(MONTH,))
    def bills_paid(self) -> Expr:
        """Every month's, and those that fall due in it."""
        return self.every_month + self.due + self.water
