"""What the stages of the farm have: hours, places, cold room; and what customers take at a price that pays."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_COUNTED
from farmbook.calc.places import standing
from farmbook.expr.functions import joined, ratio, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import CALENDAR, CUSTOMER
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customer_months import CustomerMonths
from farmbook.model.steam.to_steam import ToSteam
from farmbook.model.year.floor_price import FloorPrice
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, LITTLE_2008

__all__ = ["Capacities"]


class Capacities(Section):
    """What is left empty never limits the farm."""

    title = "What the stages have"
    table = "limits"

    farm = uses(Farm)
    crop = uses(Crop)
    harvest = uses(Harvest)
    to_steam = uses(ToSteam)
    months = uses(CustomerMonths)
    floor = uses(FloorPrice)

    mixing_hours = number(
        "Hours of mixing and filling that a week can have",
        unit="person_hour/week",
        usual=(4, 200),
        hard=(0, 10000),
        optional=True,
        how="All hands, on the days when mixer and bagger can run.",
    )
    cooling_places = number(
        "Bags that can cool and wait for a lab day",
        unit="place",
        usual=(100, 3000),
        hard=(0, 1000000),
        optional=True,
        how="Places where steamed bags cool, clean and dry, until they are inoculated.",
    )
    bench_hours = number(
        "Hours at the bench on a lab day",
        unit="person_hour/day",
        usual=(2, 40),
        hard=(0, 1000),
        optional=True,
        how="All hands at the flow hood, setting up left out.",
    )
    cold_room = number(
        "Weight the cold room holds",
        unit="kg_packed",
        usual=(50, 5000),
        hard=(0, 1000000),
        optional=True,
        how="Fill it once with packed boxes, air gaps left, and count them. 8 by 10 ft hold about 900 lb.",
    )
    days_kept = number(
        "Days from the pick to the customer",
        unit="day",
        usual=(1, 7),
        hard=(0, 60),
        default=3,
        how="From the pick until it leaves for the customer, the mean of a week.",
        source=COMMON_PRACTICE,
    )
    day_hours = number(
        "Most hours of work on one day",
        unit="person_hour/day",
        usual=(6, 100),
        hard=(0, 10000),
        optional=True,
        how="All hands that can be there on the busiest day, own and hired.",
    )

    @line("Bags to fruit, of all places in the steamer", unit="share")
    def share_to_fruit(self) -> Expr:
        """Own spawn steamed with them takes the rest."""
        return ratio(self.farm.bags_filled_a_week, self.to_steam.places)

    @line("Stock in the cold room, on average", unit="kg_packed", source=LITTLE_2008)
    def stock(self) -> Expr:
        """What is packed in a day, times the days it stays."""
        return standing(self.harvest.packed_a_week, self.days_kept)

    @line("Customers take at prices that pay for a bag, a week", unit="kg_taken/week", source=ARITHMETIC)
    def saleable(self) -> Expr:
        """Most that they take in a year at or above their floor price with the bag in it, over the weeks worked."""
        at_floor = (self.floor.share_kept > 0) * self.floor.covers_a_bag
        return total(self.room_by_customer * at_floor, CUSTOMER)

    @line("Takes at a price that pays, a year", unit="kg_taken", axes=(CUSTOMER,))
    def saleable_by_customer(self) -> Expr:
        """Nothing where the price is below the floor price."""
        return joined(self.room_by_customer * self.floor.pays * self.farm.weeks_worked, "kg_taken")

    @line("Takes at most a week, the mean of the months", unit="kg_taken/week", axes=(CUSTOMER,))
    def room_by_customer(self) -> Expr:
        """Whatever it pays; nothing in a column without a name."""
        return total(self.months.room_a_week, CALENDAR) / MONTHS_COUNTED * (self.floor.customers.present > 0)

    @line("Customers, by number", unit="count")
    def customers(self) -> Expr:
        """Columns in use."""
        return total(self.floor.customers.present, CUSTOMER)

    @line("What the next customer would still take, in bags a week", unit="bag_filled/week", source=ARITHMETIC)
    def edge(self) -> Expr:
        """Beyond it another price counts; the mean of the months."""
        a_year = joined(total(self.next_room, CUSTOMER), "kg_taken/year")
        return ratio(a_year, self.farm.weeks_worked * self.crop.taken_per_filled)

    @line("Next to be served: would still take a year", unit="kg_taken", axes=(CUSTOMER,))
    def next_room(self) -> Expr:
        """In the months in which it gets the next one."""
        return total(self.months.takes_next * self.months.still_takes, CALENDAR)
