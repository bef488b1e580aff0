"""Income and every cost of a typical year, once each."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import absolute, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.mix.bag import Bag
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import Capital
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.year.loans import Loans
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_MANAGEMENT

__all__ = ["Year"]


class Year(Section):
    """Once the farm runs steadily: the bags typed are filled every week worked, whatever a limit says."""

    title = "A typical year"

    farm = uses(Farm)
    bag = uses(Bag)
    source = uses(SpawnSource)
    own_spawn = uses(OwnSpawnWork)
    lab_choice = uses(MakeOrBuy)
    steamer = uses(SteamerInUseYear)
    growing = uses(GrowingCost)
    harvest = uses(Harvest)
    room = uses(FruitingRoom)
    customers = uses(CustomerYear)
    hours = uses(Hours)
    capital = uses(Capital)
    bills = uses(Bills)
    loans = uses(Loans)
    shocks = uses(Shocks)

    # Costs in money

    @line("Mix, bags and ties a year", unit="money/year")
    def materials(self) -> Expr:
        """For all bags filled, lost ones too; the mix of own spawn is with the spawn."""
        return self.bag.material_cost * self.farm.bags_filled_a_year * self.shocks.materials

    @line("Spawn a year", unit="money/year")
    def spawn(self) -> Expr:
        """Bought; or the materials, cultures and supplies of your own. Its hours and energy are counted with the others."""
        return where(self.source.made, self.spawn_as_made, self.lab_choice.bought)

    @line("Spawn a year, if it is made: goods", unit="money/year")
    def spawn_as_made(self) -> Expr:
        """Materials, cultures and supplies."""
        return self.own_spawn.materials_in_all * self.farm.weeks_worked + self.own_spawn.yearly_bills

    @line("Room cost typed by the week, a year", unit="money/year")
    def rooms_by_the_week(self) -> Expr:
        """Nothing as long as rent and power stand with the bills."""
        fruiting = self.growing.fruiting_room_cost * self.harvest.live_a_week * self.farm.weeks_worked
        return self.growing.incubation_room_cost * self.lab_choice.bags_a_year + fruiting

    @line("Mix, bags and spawn a year", unit="money/year")
    def goods(self) -> Expr:
        """They grow with the bags."""
        return self.materials + self.spawn

    @line("Energy and bills a year", unit="money/year")
    def standing(self) -> Expr:
        """Energy, all other bills, and room cost typed by the week."""
        return self.bills.energy_cost * self.shocks.energy + self.bills.other + self.rooms_by_the_week

    @line("Selling a year, without hours", unit="money/year")
    def selling(self) -> Expr:
        """Fees, packing, stalls and delivery."""
        stalls = self.customers.stalls_in_all + self.customers.delivery_in_all
        return self.customers.fees_in_all + self.customers.packing_in_all + stalls

    @line("Costs paid in money a year", unit="money/year", source=FARM_MANAGEMENT)
    def cash_cost(self) -> Expr:
        """Each cost once. Loss in value, loans and your own hours come below."""
        return self.goods + self.standing + self.selling + self.hours.labour_cost

    # Profit

    @line("Left from sales after costs paid in money, a year", unit="money/year", source=FARM_MANAGEMENT)
    def cash_profit(self) -> Expr:
        """Before loans, tax and your own hours."""
        return self.customers.takings_in_all - self.cash_cost

    @line("Profit after loss in value and interest, a year", unit="money/year", source=FARM_MANAGEMENT)
    def profit(self) -> Expr:
        """What the farm earns for you and your family."""
        return self.cash_profit - self.capital.loss - self.loans.interest

    @line("Profit after your own hours too, a year", unit="money/year", source=FARM_MANAGEMENT)
    def profit_after_own_hours(self) -> Expr:
        """Below zero: you would earn more elsewhere, at what you said an hour is worth."""
        return self.profit - self.hours.own_value

    @line("An hour of yours earns", unit="money/person_hour")
    def earned_an_hour(self) -> Expr:
        """Profit after loss in value and interest, over own and family hours."""
        return ratio(self.profit, self.hours.own_a_year)

    # Full cost

    @line("Cost a year in money, loss in value and interest in it", unit="money/year")
    def cost_in_money(self) -> Expr:
        """Without your own hours."""
        return self.cash_cost + self.capital.loss + self.loans.interest

    @line("Full cost a year, own hours in it", unit="money/year")
    def full_cost(self) -> Expr:
        """What the farm takes of money, value and time."""
        return self.cost_in_money + self.hours.own_value

    @line("Cost of the weight sold, in money", unit="money/kg_sold", zero_is_none=True)
    def money_per_sold(self) -> Expr:
        """All costs of the year but your own hours, over all that is sold."""
        return ratio(self.cost_in_money, self.customers.sold_in_all)

    @line("Cost of the weight sold, own hours in it", unit="money/kg_sold", zero_is_none=True)
    def full_per_sold(self) -> Expr:
        """Set your average price beside it."""
        return ratio(self.full_cost, self.customers.sold_in_all)

    @line("Cost of a bag filled, in money", unit="money/bag_filled")
    def money_per_bag(self) -> Expr:
        """All costs of the year but your own hours, over the bags filled."""
        return ratio(self.cost_in_money, self.farm.bags_filled_a_year)

    @line("Cost of a bag filled, own hours in it", unit="money/bag_filled")
    def full_per_bag(self) -> Expr:
        """Growing, picking, selling and all bills."""
        return ratio(self.full_cost, self.farm.bags_filled_a_year)

    @line("Cost of a load, own hours in it", unit="money/run")
    def full_per_load(self) -> Expr:
        """All costs of the year over its steam loads."""
        return ratio(self.full_cost, self.steamer.loads_a_year)

    @line("Fruiting places taken, for a week each, a year", unit="place*week/year")
    def place_weeks(self) -> Expr:
        """Places taken on average, in the weeks worked."""
        return self.room.taken * self.farm.weeks_worked

    @line("Cost of a fruiting place for a week, own hours in it", unit="money/place/week")
    def full_per_place_week(self) -> Expr:
        """All costs of the year over the places taken."""
        return ratio(self.full_cost, self.place_weeks)

    @line("Year: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            either(self.farm.is_new, "Once full, a", "A"),
            either(self.profit < 0, " typical year loses ", " typical year leaves "),
            figure(absolute(self.profit), -2, named=False),
            " after loss in value and interest: ",
            figure(self.earned_an_hour, 2, named=False),
            " for each hour of yours. What you sell costs ",
            figure(self.money_per_sold, 2),
            ".",
        )

    @check(
        "Takings are costs and profit, each counted once",
        kind="error",
        says="Costs and profit of the year do not make up the takings: a formula of the sheet Year was changed.",
    )
    def adds_up(self) -> Expr:
        """Worked out from the parts once more: goods, bills, selling, hired work, loss in value, interest, profit."""
        apart = self.customers.takings_in_all - self.cost_in_money - self.profit
        return is_rounding(apart, self.cost_in_money, self.customers.takings_in_all)
