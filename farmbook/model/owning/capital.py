"""What the farm owns: cost, life, what it fetches at the end, and what it loses in value each year."""

from __future__ import annotations

from typing import Final

from farmbook.calc.worth import straight_line
from farmbook.expr.functions import total, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import ITEM
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.owned import Owned
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.sections.declare import Option, choice, line, names, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, EQUIVALENT_ANNUAL_COST, FARM_MANAGEMENT
from farmbook.units import unit

__all__ = ["LISTED", "ONE_SUM", "Capital", "OwnedItems"]

ONE_SUM: Final = Option("sum", "one sum")
USUAL_LOSS_OF_A_PLACE: Final = Constant(
    2.5,
    "usual_loss_of_a_place",
    label="Usual loss in value for a fruiting place, steamer and lab aside",
    unit=unit("money/place/year"),
    source=COMMON_PRACTICE.key,
    note="From memory: some 30 for a place, rooms, cooler, racks and van together, over twelve years. The same in every currency.",
)
LISTED: Final = Option("list", "worked out from the list")


class OwnedItems(Owned, words="item", axes=(ITEM,)):
    """Whatever wears out, row by row; steamer and spawn lab have inputs of their own."""

    title = "Items owned"

    items = names(
        ITEM, "Owned", how="One row for each thing that wears out: van, cooler, racks. Steamer and lab are counted."
    )
    price = number(
        "Cost",
        unit="money",
        usual=(200, 100000),
        hard=(0, 10000000),
        axes=(ITEM,),
        how="What it cost, or would cost today, delivered and set up.",
        source=COMMON_PRACTICE,
    )
    life = number(
        "Years it lasts",
        unit="year",
        usual=(3, 20),
        hard=(0.5, 60),
        default=10,
        axes=(ITEM,),
        how="Vehicles and sensors some 6 years, coolers and clean rooms some 12.",
        source=COMMON_PRACTICE,
    )
    salvage = number(
        "Fetches at the end",
        unit="money",
        usual=(0, 20000),
        hard=(0, 10000000),
        default=0,
        axes=(ITEM,),
        how="Second-hand price at that age.",
        source=COMMON_PRACTICE,
    )
    bought_in = number(
        "Bought in month of the plan",
        unit="count",
        usual=(0, 36),
        hard=(0, 84),
        default=0,
        axes=(ITEM,),
        how="0 for what you own already; 1 for the first month of the plan.",
        source=COMMON_PRACTICE,
    )


class Capital(Section):
    """The list, with steamer and spawn lab added."""

    title = "What the farm owns"

    room = uses(FruitingRoom)
    steamer = uses(SteamerInUseYear)
    owned = uses(OwnedItems)
    source = uses(SpawnSource)
    lab_choice = uses(MakeOrBuy)

    counted = choice(
        "Loss in value a year: one sum, or a list",
        ONE_SUM,
        LISTED,
        default=LISTED,
        how="One sum, if your bookkeeper gives it: then it stands for everything, steamer and lab too.",
        source=COMMON_PRACTICE,
    )
    own_loss = number(
        "Loss in value of all you own, a year",
        unit="money/year",
        usual=(500, 50000),
        hard=(0, 10000000),
        optional=True,
        how="Depreciation in last year's books, as a manager counts it. Left empty, what a farm of your size usually loses.",
        source=COMMON_PRACTICE,
    )

    @line("Items listed: loss in value a year", unit="money/year")
    def items_loss(self) -> Expr:
        """All rows."""
        return total(self.owned.yearly_loss, ITEM)

    @line("Spawn lab: loss in value a year", unit="money/year", source=FARM_MANAGEMENT)
    def lab_loss(self) -> Expr:
        """Nothing where spawn is bought."""
        own = straight_line(self.lab_choice.lab_price, self.lab_choice.resale, self.lab_choice.life)
        return own * self.source.made

    @line("List, steamer and lab: loss in value a year", unit="money/year")
    def listed_loss(self) -> Expr:
        """Added up."""
        return self.items_loss + self.steamer.yearly_loss + self.lab_loss

    @line("Rooms, cooler, racks, van: usual loss in value a year", unit="money/year", source=COMMON_PRACTICE)
    def usual_rest(self) -> Expr:
        """So much for each fruiting place taken by the farm as it is."""
        return self.room.taken * USUAL_LOSS_OF_A_PLACE

    @line("A farm of this size: usual loss in value a year", unit="money/year", source=COMMON_PRACTICE)
    def usual_loss(self) -> Expr:
        """Steamer and lab, and all that is usual beside them."""
        return self.usual_rest + self.steamer.yearly_loss + self.lab_loss

    @line("Steamer of the farm as it is: loss in value a year", unit="money/year")
    def steamer_then(self) -> Expr:
        """It is in your own figure; where the book tries the other steamer, that moves by the difference."""
        return self.steamer.yearly_loss

    @line("Your own figure of the loss in value, with the steamer counted", unit="money/year")
    def own_loss_counted(self) -> Expr:
        """As typed, as long as it is the steamer of the farm as it is."""
        return self.own_loss + (self.steamer.yearly_loss - self.steamer_then)

    @line("Loss in value in one sum, a year", unit="money/year")
    def in_one_sum(self) -> Expr:
        """Your own figure, or the usual one."""
        return where(self.given(self.own_loss), self.own_loss_counted, self.usual_loss)

    @line("Loss in value of all you own, counted, a year", unit="money/year")
    def loss(self) -> Expr:
        """One sum or the list, as you chose. It is also what to put by each year to replace it at today's prices."""
        return where(self.chose(self.counted, ONE_SUM), self.in_one_sum, self.listed_loss)

    @line("All items listed: cost a year to own", unit="money/year")
    def items_owning(self) -> Expr:
        """With the return you want."""
        return total(self.owned.owning_cost, ITEM)

    @line("List, steamer and lab: cost a year to own", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def owning(self) -> Expr:
        """To compare ways of growing by; it is in no profit of this book."""
        return self.items_owning + self.steamer.owning_cost + self.lab_choice.owning * self.source.made

    @line("Items listed: cost", unit="money")
    def items_cost(self) -> Expr:
        """All rows."""
        return total(self.owned.price, ITEM)

    @line("Of these, still to be bought", unit="money")
    def to_buy(self) -> Expr:
        """Rows with a month of the plan."""
        return total(self.owned.price * (self.owned.bought_in > 0), ITEM)
