"""The bills of a year, and the energy in them: the bill wins, what is worked out explains it."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.expr.functions import any_of, negation, total, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import BILL
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.owning.capital import LISTED, ONE_SUM
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.room_energy import RoomEnergy
from farmbook.model.safety.safety_costs import SafetyCosts
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import check, choice, line, names, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Bills"]


class Bills(Section):
    """What is paid in a year whether or not a bag is filled, and all energy."""

    title = "Bills of a year"

    farm = uses(Farm)
    steamer_in_use = uses(SteamerInUse)
    steamer_year = uses(SteamerInUseYear)
    source = uses(SpawnSource)
    own_spawn = uses(OwnSpawnWork)
    lab_choice = uses(MakeOrBuy)
    rooms = uses(RoomEnergy)
    safety = uses(SafetyCosts)

    bills = names(
        BILL, "Bill", how="Rent, insurance, licences, van, telephone, books. Not energy, water, wages or loans."
    )
    amount = number(
        "Amount a year",
        unit="money/year",
        usual=(50, 40000),
        hard=(0, 10000000),
        axes=(BILL,),
        how="Add up the last twelve months.",
        source=COMMON_PRACTICE,
    )
    counted = choice(
        "Bills: one sum, or a list",
        ONE_SUM,
        LISTED,
        default=LISTED,
        how="One sum, if that is all you know: all bills with energy, water and repairs in them.",
        source=COMMON_PRACTICE,
    )
    in_all = number(
        "All bills a year, energy in them",
        unit="money/year",
        usual=(0, 150000),
        hard=(0, 100000000),
        default=0,
        how="All that is paid but wages, mix, bags, spawn, packing, selling, loans and your own drawings.",
        source=COMMON_PRACTICE,
    )
    energy = number(
        "Energy bills a year",
        unit="money/year",
        usual=(1000, 60000),
        hard=(0, 100000000),
        optional=True,
        how="Power, gas and propane of twelve months, fixed fees and the charge for the highest kW in them.",
        note="The bill wins. Left empty, what steamer, lab and rooms are worked out to take is counted.",
    )

    @line("Energy of steaming a year", unit="money/year")
    def steaming_energy(self) -> Expr:
        """The charge for your highest kW comes once a month, however many loads there are."""
        charge = self.steamer_in_use.demand_cost_per_month * MONTHS_IN_A_YEAR
        return self.steamer_in_use.energy_cost_per_run * self.steamer_year.loads_a_year + charge

    @line("Energy of the spawn lab a year", unit="money/year")
    def lab_energy(self) -> Expr:
        """Its pressure cooker; nothing where spawn is bought."""
        return self.own_spawn.cooking_cost * self.farm.weeks_worked * self.source.made

    @line("Energy of steamer and lab a year, worked out", unit="money/year")
    def worked_energy(self) -> Expr:
        """It is part of the energy bills."""
        return self.steaming_energy + self.lab_energy

    @line("Energy of steamer, lab and rooms a year, worked out", unit="money/year")
    def all_worked_energy(self) -> Expr:
        """What there is to go by where no bill is given."""
        return self.worked_energy + self.rooms.cost

    @line("Energy of steamer, lab and rooms when the bills came, a year", unit="money/year")
    def energy_then(self) -> Expr:
        """As it is worked out for the farm of now; where the book tries something else, the bills move by the difference."""
        return self.all_worked_energy

    @line("Energy in the bills of the farm as it is, a year", unit="money/year")
    def energy_billed(self) -> Expr:
        """Your bills where you give them, else what is worked out."""
        return where(self.given(self.energy), self.energy, self.energy_then)

    @line("Energy a year, counted", unit="money/year")
    def energy_cost(self) -> Expr:
        """The bills, or what is worked out; with what something else tried takes more or less."""
        return self.energy_billed + (self.all_worked_energy - self.energy_then)

    @line("Energy of rooms, cooler and the rest a year", unit="money/year")
    def energy_of_rooms(self) -> Expr:
        """The bills less what steamer and lab are worked out to take, which would count twice otherwise."""
        return self.energy_cost - self.worked_energy

    @line("Energy of rooms, cooler and the rest, less what the rooms are worked out to take", unit="money/year")
    def energy_not_explained(self) -> Expr:
        """Cooler, lights elsewhere, fixed fees. Below zero: the rooms take less than worked out, as sun and soil warm them."""
        return self.energy_of_rooms - self.rooms.cost

    @line("Water a year", unit="money/year")
    def water(self) -> Expr:
        """Of the loads, and misted in the rooms; other water is a bill."""
        return self.steamer_in_use.water_cost_per_run * self.steamer_year.loads_a_year + self.rooms.water_cost

    @line("Upkeep of steamer and lab a year", unit="money/year")
    def upkeep(self) -> Expr:
        """As typed with the steamer in use, and with the lab where spawn is made."""
        return self.steamer_year.upkeep + self.lab_choice.upkeep * self.source.made

    @line("Water, and upkeep of steamer and lab, a year", unit="money/year")
    def water_and_upkeep(self) -> Expr:
        """Worked out, or typed with the steamer and the lab."""
        return self.water + self.upkeep

    @line("Water and upkeep when the bills came, a year", unit="money/year")
    def water_and_upkeep_then(self) -> Expr:
        """As for the farm of now; where the book tries something else, one sum of all bills moves by the difference."""
        return self.water_and_upkeep

    @line("Bills listed, water, upkeep and safety, a year", unit="money/year")
    def listed(self) -> Expr:
        """Added up; energy stands apart."""
        return total(self.amount, BILL) + self.water_and_upkeep + self.safety.yearly

    @line("Bills without energy a year, in one sum", unit="money/year")
    def in_one_sum(self) -> Expr:
        """What the one sum leaves for all but energy."""
        return self.in_all - self.energy_billed + (self.water_and_upkeep - self.water_and_upkeep_then)

    @line("Bills without energy a year, counted", unit="money/year")
    def other(self) -> Expr:
        """One sum or the list, as you chose."""
        return where(self.chose(self.counted, ONE_SUM), self.in_one_sum, self.listed)

    @line("Bills: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Energy costs ",
            figure(self.energy_cost, -2, named=False),
            " a year, of which steaming takes ",
            figure(self.steaming_energy, -2, named=False),
            "; all other bills come to ",
            figure(self.other, -2, named=False),
            ".",
        )

    @check(
        "Energy bills are no less than steamer and lab take",
        kind="alert",
        says="Your energy bills are less than steamer and lab alone are worked out to take: check them, or meter a load.",
    )
    def energy_covers_steaming(self) -> Expr:
        """Fine where no bill is given."""
        return any_of(negation(self.given(self.energy)), self.energy_of_rooms >= 0)

    @check(
        "All bills are no less than the energy in them",
        kind="error",
        says="All bills of the year are less than the energy counted in them: one of the two is wrong.",
    )
    def energy_is_in_the_bills(self) -> Expr:
        """Else the other bills would be below zero."""
        return self.other >= 0
