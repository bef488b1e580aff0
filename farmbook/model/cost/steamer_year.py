"""What a steamer costs in a year: owning it, running it, and the bags lost in it."""

from __future__ import annotations

from farmbook.calc.crop import surviving_share
from farmbook.calc.worth import equivalent_annual_cost
from farmbook.expr.functions import joined, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.owned import Owned
from farmbook.model.crop.crop import Crop
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.steamer_cost import SteamerCost
from farmbook.model.steam.vessel import Vessel
from farmbook.sections.declare import LineOf, NumberInput, check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, EQUIVALENT_ANNUAL_COST, FARM_MANAGEMENT

__all__ = ["CabinetYear", "SteamerInUseYear", "SteamerYear", "VesselYear"]


class SteamerYear(Owned):
    """A year with a steamer of any kind, for the bags that the farm fills."""

    farm = uses(Farm)
    growing = uses(GrowingCost)

    cost: SteamerCost
    upkeep: NumberInput
    lost: LineOf

    @line("Loads of the {} a year", unit="run/year")
    def loads_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.cost.run.loads_a_week * self.farm.weeks_worked

    @line("Running the {}, cost a year", unit="money/year")
    def running_cost(self) -> Expr:
        """Energy, highest kW, water and work of all its loads."""
        return self.cost.cost_per_run * self.loads_a_year

    @line("Work on the {} a year", unit="person_hour/year")
    def work_a_year(self) -> Expr:
        """Its cost is in running it."""
        return self.cost.labour_hours_per_run * self.loads_a_year

    @line("Owning and running the {}, cost a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def yearly_cost(self) -> Expr:
        """With its upkeep. Bags lost are not in it yet."""
        return equivalent_annual_cost(self.owning_cost, self.running_cost + self.upkeep)

    @line("Bags lost at steaming in the {}, cost a year", unit="money/year")
    def lost_cost(self) -> Expr:
        """What was spent on filling them, and taking them out; their steaming is in running it. Their crop is left out."""
        spent = self.growing.filled_cost + joined(self.growing.culling_cost, "money/bag_filled")
        return self.farm.bags_filled_a_year * self.lost * spent

    @line("Good bags out of the {} a year", unit="bag_inoculated/year", source=ARITHMETIC)
    def good_bags(self) -> Expr:
        """Bags filled, less those lost at steaming."""
        good = self.farm.bags_filled_a_year * surviving_share(self.lost)
        return joined(good, "bag_inoculated/year")

    @line(
        "Steaming in the {}, cost for each good bag", unit="money/bag_inoculated", source=ARITHMETIC, zero_is_none=True
    )
    def cost_per_good_bag(self) -> Expr:
        """Owning, running, upkeep and the bags lost, over the bags that come out good."""
        return ratio(self.yearly_cost + self.lost_cost, self.good_bags)

    @check(
        "The {} sells for no more than it cost",
        kind="error",
        says=(
            "What the {} sells for at the end is above its price, so that owning it would earn money: correct one of "
            "the two."
        ),
    )
    def salvage_fits(self) -> Expr:
        """Both steamers are compared, so it counts for the one not in use too."""
        return self.salvage <= self.price


class CabinetYear(SteamerYear, words="cabinet"):
    """A year with the steam cabinet."""

    title = "Steam cabinet: a year"
    table = "cabinet"

    cost = uses(Cabinet)
    crop = uses(Crop)

    price = number(
        "Price of the cabinet",
        unit="money",
        usual=(3000, 40000),
        hard=(0, 5000000),
        default=12000,
        how="Quote with steam generator, racks, wiring and plumbing; for one you own, what it would sell for today.",
        source=COMMON_PRACTICE,
        note="From memory, and the same number in every currency: replace it.",
    )
    life = number(
        "Years the cabinet will last",
        unit="year",
        usual=(6, 15),
        hard=(0.5, 60),
        default=10,
        how="Until door, lining or steam generator would have to be bought again.",
        source=COMMON_PRACTICE,
    )
    salvage = number(
        "What the cabinet sells for at the end",
        unit="money",
        usual=(0, 5000),
        hard=(0, 5000000),
        default=500,
        how="Second-hand prices; below zero is not allowed, so put hauling away into the upkeep.",
        source=COMMON_PRACTICE,
    )
    upkeep = number(
        "Upkeep of the cabinet",
        unit="money/year",
        usual=(100, 2000),
        hard=(0, 1000000),
        default=400,
        how="Elements, seals, descaling, tests of cut-outs, its part of the insurance.",
        source=COMMON_PRACTICE,
    )

    @line("Share of bags lost at steaming in the cabinet", unit="share")
    def lost(self) -> Expr:
        """As typed with the crop."""
        return self.crop.loss_at_steaming


class VesselYear(SteamerYear, words="pressure vessel"):
    """A year with the pressure vessel."""

    title = "Pressure vessel: a year"
    table = "vessel"

    cost = uses(Vessel)

    price = number(
        "Price of the pressure vessel",
        unit="money",
        usual=(35000, 250000),
        hard=(0, 10000000),
        default=95000,
        how="Quote, delivered and set up, with steam generator, floor, wiring, inspection and first training.",
        source=COMMON_PRACTICE,
        note="From memory, and the same number in every currency: replace it.",
    )
    life = number(
        "Years the pressure vessel will last",
        unit="year",
        usual=(10, 25),
        hard=(0.5, 60),
        default=15,
        how="As long as an inspector passes it.",
        source=COMMON_PRACTICE,
    )
    salvage = number(
        "What the pressure vessel sells for at the end",
        unit="money",
        usual=(0, 60000),
        hard=(0, 10000000),
        default=15000,
        how="Second-hand prices of vessels with papers; without papers it is scrap.",
        source=COMMON_PRACTICE,
    )
    upkeep = number(
        "Upkeep of the pressure vessel",
        unit="money/year",
        usual=(500, 8000),
        hard=(0, 1000000),
        default=2500,
        how="Inspection, test of relief valve and gauge, door seal, boiler insurance, licence, training each year.",
        source=COMMON_PRACTICE,
    )

    @line("Share of bags lost at steaming in the pressure vessel", unit="share")
    def lost(self) -> Expr:
        """As typed with the pressure vessel."""
        return self.cost.heat.loss_at_steaming


class SteamerInUseYear(Section):
    """Of the two steamers the one that feeds the rest of the book."""

    title = "The steamer in use: a year"

    vessel_heat = uses(VesselHeat)
    cabinet = uses(CabinetYear)
    vessel = uses(VesselYear)

    @line("Steamer in use: loss in value a year", unit="money/year", source=FARM_MANAGEMENT)
    def yearly_loss(self) -> Expr:
        """Its price, life and what it fetches stand with the steamer."""
        return where(self.vessel_heat.in_use, self.vessel.yearly_loss, self.cabinet.yearly_loss)

    @line("Steamer in use: cost a year to own", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def owning_cost(self) -> Expr:
        """With the return you want."""
        return where(self.vessel_heat.in_use, self.vessel.owning_cost, self.cabinet.owning_cost)

    @line("Steamer in use: upkeep a year", unit="money/year")
    def upkeep(self) -> Expr:
        """As typed with it."""
        return where(self.vessel_heat.in_use, self.vessel.upkeep, self.cabinet.upkeep)

    @line("Loads steamed a year", unit="run/year")
    def loads_a_year(self) -> Expr:
        """In the weeks worked."""
        return where(self.vessel_heat.in_use, self.vessel.loads_a_year, self.cabinet.loads_a_year)
