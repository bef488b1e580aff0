"""Tasks from the pick to the customer, and those that go with any farm."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.model.labour.picking import Picking
from farmbook.model.labour.task import Task
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.sections.declare import line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["OfficeWork", "PackingWork", "PickingWork", "SellingWork", "UpkeepWork"]


class PickingWork(Task, words="Picking"):
    """However it is paid."""

    title = "Picking"

    picking = uses(Picking)

    @line("Picking, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Weight picked, over what an hour picks."""
        return self.picking.pick_hours


class PackingWork(Task, words="Packing"):
    """Trimming, weighing, labelling."""

    title = "Packing"

    picking = uses(Picking)

    @line("Packing, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Weight packed, over what an hour packs."""
        return self.picking.pack_hours


class SellingWork(Task, words="Selling and delivering"):
    """At the market and on the road."""

    title = "Selling and delivering"

    customers = uses(CustomerYear)

    @line("Selling and delivering, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """As typed with each customer, in the weeks you sell there."""
        return self.customers.hours_a_week


class UpkeepWork(Task, words="Upkeep of plant and house"):
    """Repairs and cleaning."""

    title = "Upkeep of plant and house"
    table = "hours"

    upkeep_hours = number(
        "Hours of upkeep of plant and house, a week",
        unit="person_hour/week",
        usual=(2, 10),
        hard=(0, 1000),
        default=4,
        how="Diary: repairs, filters, cleaning outside the rooms.",
        source=COMMON_PRACTICE,
    )

    @line("Upkeep of plant and house, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """The same for half as many bags."""
        return self.upkeep_hours


class OfficeWork(Task, words="Office"):
    """Orders, books, buying, planning."""

    title = "Office"
    table = "hours"

    office_hours = number(
        "Hours in the office, a week",
        unit="person_hour/week",
        usual=(5, 25),
        hard=(0, 1000),
        default=9,
        how="Diary: orders, invoices, books, buying, planning, inspections.",
        source=COMMON_PRACTICE,
    )

    @line("Office, hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """The same for half as many bags."""
        return self.office_hours
