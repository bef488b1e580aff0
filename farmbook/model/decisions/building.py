"""This building or that: what a place to fruit in costs a day in each, rent and fit-out together."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_YEAR
from farmbook.calc.compare import INPUTS_KNOWN_TO
from farmbook.expr.functions import absolute, all_of, maximum, ratio, sentence
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.cost.owned import Owned
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["Building", "FirstBuilding", "SecondBuilding"]


class OneBuilding(Owned):
    """A building to rent and fit out. Places by the floor, as the fruiting room of now is shelved."""

    room = uses(FruitingRoom)

    rent = number(
        "Rent of the {} a year",
        unit="money/year",
        usual=(3000, 80000),
        hard=(0, 1e8),
        optional=True,
        how="With what the landlord adds; heat and power left out.",
        tried=True,
    )
    floor = number(
        "Floor for fruiting in the {}",
        unit="m2",
        usual=(20, 2000),
        hard=(0, 100000),
        optional=True,
        how="What can be shelved and kept moist: offices, dock and corridors left out.",
        tried=True,
    )
    price = number(
        "Fit-out of the {}",
        unit="money",
        usual=(2000, 200000),
        hard=(0, 1e8),
        default=20000,
        how="Walls, drains, fans, racks, power service: quotes. You may not get it back when you leave.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    life = number(
        "Years you can stay in the {}",
        unit="year",
        usual=(3, 15),
        hard=(0.5, 60),
        default=5,
        how="The lease with its options, no longer than the fit-out lasts.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    salvage = number(
        "Fit-out of the {} fetches at the end",
        unit="money",
        usual=(0, 20000),
        hard=(0, 1e8),
        default=0,
        how="Racks and fans that you take with you, sold.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @line("Places in the {}", unit="place", zero_is_none=True)
    def places(self) -> Expr:
        """Floor, share under shelves, shelves above one another, bags on a shelf: those of the fruiting room."""
        return self.floor * self.room.racked * self.room.shelves * self.room.density

    @line("Rent and fit-out of the {} a year", unit="money/year")
    def yearly(self) -> Expr:
        """The fit-out paid off over the years you stay."""
        return self.rent + self.owning_cost

    @line("A place in the {} costs a day", unit="money/place/day", source=ARITHMETIC, zero_is_none=True)
    def place_day(self) -> Expr:
        """Every day of the year, full or empty."""
        return ratio(self.yearly, self.places * DAYS_IN_A_YEAR)


class FirstBuilding(OneBuilding, words="first building"):
    """One of two."""

    title = "A building to compare"


class SecondBuilding(OneBuilding, words="second building"):
    """The other."""

    title = "Another building to compare"


class Building(Section):
    """Two buildings side by side, by what a place costs a day. Height, drains, power and neighbours are not ranked."""

    title = "This building or that"

    one = uses(FirstBuilding)
    two = uses(SecondBuilding)

    @line("Both buildings are given", unit="flag")
    def both_given(self) -> Expr:
        """Rent or fit-out, and floor."""
        return all_of(self.one.place_day > 0, self.two.place_day > 0)

    @line("A place in the second building costs more a day", unit="money/place/day")
    def difference(self) -> Expr:
        """Below zero: less."""
        return (self.two.place_day - self.one.place_day) * self.both_given

    @line("The buildings are alike in cost", unit="flag")
    def close(self) -> Expr:
        """Within what the inputs are known to."""
        return absolute(self.difference) <= self.dearer * INPUTS_KNOWN_TO

    @line("A place in the dearer building costs a day", unit="money/place/day")
    def dearer(self) -> Expr:
        """The difference is judged against it."""
        return maximum(self.one.place_day, self.two.place_day)

    @line("Building: which costs less", unit="1")
    def verdict(self) -> Expr:
        """For each place."""
        apart = 1 + (1 - self.close) * (1 + (self.difference > 0))
        return sentence(
            1 + self.both_given * apart,
            "Type rent and floor of two buildings on Inputs to compare them.",
            "Too close to call: let power, drains and the lease decide.",
            "A place costs less in the second building.",
            "A place costs less in the first building.",
        )

    @line("Buildings: what a place costs in each", unit="1")
    def costs(self) -> Expr:
        """By the place and day."""
        return say(
            "A place costs ",
            figure(self.one.place_day, 3, named=False),
            " a day in the first building, ",
            figure(self.two.place_day, 3, named=False),
            " in the second. ",
        )

    @line("This building or that, in a sentence", unit="1")
    def told(self) -> Expr:
        """Where both are given."""
        return say(either(self.both_given, self.costs, ""), self.verdict)
