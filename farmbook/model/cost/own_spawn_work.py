"""What spawn made on the farm takes and costs: hours, materials, cooking, and the price of what can be used."""

from __future__ import annotations

from farmbook.calc.spawn import fruiting_places, places_for_spawn
from farmbook.expr.functions import joined, ratio, total, where, whole_up
from farmbook.expr.nodes import Expr, wrap
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import GENERATION
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import IN_COOKER, OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["OwnSpawnWork"]


class OwnSpawnWork(Section):
    """Running costs of own spawn. What the lab itself costs is on the sheet MakeOrBuy and among the yearly bills."""

    title = "Own spawn: hours, materials and cost"
    table = "own_spawn"

    farm = uses(Farm)
    recipe = uses(Recipe)
    bag = uses(Bag)
    steamer_in_use = uses(SteamerInUse)
    spawn = uses(Spawn)
    way = uses(OwnSpawnWay)
    chain = uses(OwnSpawn)
    source = uses(SpawnSource)

    rate = number(
        "Own spawn: made in an hour of work, cooking inside",
        unit="spawn_unit/person_hour",
        axes=(GENERATION,),
        usual=(3, 60),
        hard=(0.1, 2000),
        default=(16, 5, 5, 30),
        how="Plates or bags started over the hours of all hands, from soaking and filling to labelling.",
        source=COMMON_PRACTICE,
    )
    set_up_hours = number(
        "Own spawn: hours to set up and clean for a batch",
        unit="person_hour/lab_batch",
        axes=(GENERATION,),
        usual=(0.2, 3),
        hard=(0, 24),
        default=0.5,
        how="The same for few as for many: clock it apart from the making.",
        source=COMMON_PRACTICE,
    )
    unit_cost = number(
        "Own spawn: materials of one, its container inside",
        unit="money/spawn_unit",
        axes=(GENERATION,),
        usual=(0.3, 5),
        hard=(0, 500),
        default=(None, 2.6, 2.6, 0.9),
        optional=True,
        how="Grain or agar, with bag, jar or dish; without cooking. Add up the last invoices.",
        source=COMMON_PRACTICE,
        note=(
            "From memory; the same number in every currency. Leave it empty for sawdust spawn made of your own mix in "
            "your own bags: it then costs what those cost."
        ),
    )
    in_cooker = number(
        "Own spawn: how many fill the pressure cooker",
        unit="spawn_unit/cooker_run",
        axes=(GENERATION,),
        usual=(4, 100),
        hard=(1, 5000),
        default=(20, 20, 20, 100),
        how="Count a full cooker, or all cookers that run together.",
        source=COMMON_PRACTICE,
        note="From memory: of the size that stands in a lab of the price assumed, two runs for the grain of 500 bags.",
    )
    cooker_cost = number(
        "Own spawn: power and water of a cooker run",
        unit="money/cooker_run",
        usual=(0.3, 5),
        hard=(0, 500),
        default=2,
        how="Its kW, times the hours it heats, times the price of a kWh; work is counted elsewhere.",
        source=COMMON_PRACTICE,
    )
    weekly_hours = number(
        "Own spawn: lab hours a week that do not grow with it",
        unit="person_hour/week",
        usual=(0.5, 5),
        hard=(0, 168),
        default=1.5,
        how="Keeping cultures, looking over and labelling stock, records, cleaning.",
        source=COMMON_PRACTICE,
    )
    own_hours = number(
        "Own spawn: hours a week in all, your own figure",
        unit="person_hour/week",
        usual=(2, 40),
        hard=(0, 1000),
        optional=True,
        how="Everything done for spawn in a week, all hands, from a diary of four weeks.",
        source=COMMON_PRACTICE,
        note="Wins over the worked hours.",
    )
    culture_cost = number(
        "Own spawn: cultures bought and tested, a year",
        unit="money/year",
        usual=(100, 1500),
        hard=(0, 100000),
        default=450,
        how="Invoices of a year.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
    )
    consumables = number(
        "Own spawn: lab supplies a year",
        unit="money/year",
        usual=(600, 5000),
        hard=(0, 100000),
        default=1500,
        how="Alcohol, gloves, blades, filters; only what inoculating bags would not need anyway.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
    )

    # Hours

    @line("Own spawn: hours of making it, a week", unit="person_hour/week", axes=(GENERATION,))
    def making_hours(self) -> Expr:
        """These grow with the spawn."""
        return self._making()

    @line("Own spawn: hours of making one", unit="person_hour/spawn_unit", axes=(GENERATION,))
    def hours_of_one(self) -> Expr:
        """Cooking inside."""
        return ratio(wrap(1), self.rate)

    def _making(self) -> Expr:
        return self.chain.started * self.hours_of_one

    @line("Own spawn: hours of setting up, a week", unit="person_hour/week", axes=(GENERATION,))
    def setting_up_hours(self) -> Expr:
        """These grow with the number of batches: fewer and larger ones save them, and make the spawn older."""
        return self._setting_up()

    def _setting_up(self) -> Expr:
        return self.set_up_hours * self.chain.batches

    @line("Own spawn: hours of making, all generations", unit="person_hour/week")
    def making_hours_in_all(self) -> Expr:
        """In an ordinary week."""
        return total(self._making(), GENERATION)

    @line("Own spawn: hours a week, as worked out", unit="person_hour/week")
    def worked_hours(self) -> Expr:
        """Making, setting up, and what the lab takes each week in any case."""
        return self.making_hours_in_all + total(self._setting_up(), GENERATION) + self.weekly_hours

    @line("Own spawn: hours a week", unit="person_hour/week")
    def hours_a_week(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.own_hours), self.own_hours, self.worked_hours)

    @line("Own spawn: hours a year", unit="person_hour/year")
    def hours_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.hours_a_week * self.farm.weeks_worked

    @line("Own spawn: share of the hours that grows with the bags", unit="share")
    def growing_share_of_hours(self) -> Expr:
        """The rest would be the same for half as many bags."""
        return ratio(self.making_hours_in_all, self.worked_hours)

    # Materials and cooking

    @line("Own spawn: mix and bag of one bag of sawdust spawn", unit="money/spawn_unit")
    def mix_and_bag(self) -> Expr:
        """The recipe chosen, and bag, tie and label, at the prices that you pay for the bags to fruit."""
        mix = self.way.mix_in_sawdust * self.recipe.ingredient_cost_per_wet
        return mix + joined(self.bag.packaging_cost, "money/spawn_unit")

    @line("Own spawn: materials of one, as counted", unit="money/spawn_unit", axes=(GENERATION,))
    def cost_of_one(self) -> Expr:
        """Your own figure where there is one; otherwise sawdust spawn costs its mix and bag."""
        return where(self.given(self.unit_cost), self.unit_cost, self.mix_and_bag * self.way.is_sawdust)

    @line("Own spawn: materials not given", unit="flag", axes=(GENERATION,))
    def materials_missing(self) -> Expr:
        """1 for grain or plates that are used and cost nothing for want of a figure."""
        return (1 - self.given(self.unit_cost)) * (1 - self.way.is_sawdust) * self.way.used_here

    @line("Own spawn: materials a week, by generation", unit="money/week", axes=(GENERATION,))
    def materials(self) -> Expr:
        """Those that fail are paid for like the others."""
        return self._materials()

    def _materials(self) -> Expr:
        return self.chain.started * self.cost_of_one

    @line("Own spawn: cooked in the pressure cooker", unit="flag", axes=(GENERATION,))
    def pressure_cooked(self) -> Expr:
        """Agar and grain always; sawdust spawn if you chose so."""
        sawdust = self.way.is_sawdust * self.way.chose(self.way.sawdust_cooked_in, IN_COOKER)
        return 1 - self.way.is_sawdust + sawdust

    @line("Own spawn: cooker runs for a batch", unit="cooker_run/lab_batch", axes=(GENERATION,))
    def runs_for_batch(self) -> Expr:
        """Whole runs; a half-full cooker takes as long as a full one."""
        runs = ratio(self.chain.started_in_batch, self.in_cooker)
        return joined(whole_up(runs), "cooker_run/lab_batch") * self.pressure_cooked

    @line("Own spawn: cooker runs a week, by generation", unit="cooker_run/week", axes=(GENERATION,))
    def cooker_runs(self) -> Expr:
        """The average over many weeks; a lab day may need more than the cooker does in a day."""
        return self._cooker_runs()

    def _cooker_runs(self) -> Expr:
        return self.runs_for_batch * self.chain.batches

    @line("Own spawn: cooker runs a week", unit="cooker_run/week")
    def cooker_runs_in_all(self) -> Expr:
        """Two to three a day is what one cooker does."""
        return total(self._cooker_runs(), GENERATION)

    # Places in the steamer

    @line("Places of a full load left for bags to fruit", unit="place/run", source=ARITHMETIC)
    def fruiting_places(self) -> Expr:
        """All places over 1 and the share that spawn takes: nothing has to be tried out."""
        return fruiting_places(joined(self.steamer_in_use.bags_per_run, "place/run"), self.chain.places_per_bag)

    @line("Places of a full load taken by spawn", unit="place/run", source=ARITHMETIC)
    def spawn_places(self) -> Expr:
        """The rest of the load."""
        return places_for_spawn(self.fruiting_places, self.chain.places_per_bag)

    # Cost

    @line("Own spawn: materials a week", unit="money/week")
    def materials_in_all(self) -> Expr:
        """All generations."""
        return total(self._materials(), GENERATION)

    @line("Own spawn: cooker, cost a week", unit="money/week")
    def cooking_cost(self) -> Expr:
        """Power and water of the pressure cooker."""
        return self.cooker_runs_in_all * self.cooker_cost

    @line("Own spawn: steaming, cost a week", unit="money/week")
    def steaming_cost(self) -> Expr:
        """What it adds: energy, water and work of its places.

        The steamer runs for the bags in any case, so it adds nothing to your highest kW.
        """
        return self.chain.steamed * joined(self.steamer_in_use.place_cost, "money/spawn_unit")

    @line("Own spawn: work, cost a week", unit="money/week")
    def work_cost(self) -> Expr:
        """Your own hours are counted like any other."""
        return self.hours_a_week * self.farm.labour_rate

    @line("Own spawn: yearly bills of the lab", unit="money/year")
    def yearly_bills(self) -> Expr:
        """Cultures and supplies: the same for half as many bags."""
        return self.culture_cost + self.consumables

    @line("Own spawn: materials and cooking, cost a week", unit="money/week")
    def goods_cost(self) -> Expr:
        """All that is bought for it week by week."""
        return self.materials_in_all + self.cooking_cost + self.steaming_cost

    @line("Own spawn: running cost a year", unit="money/year")
    def cost_a_year(self) -> Expr:
        """Materials, cooking, work and yearly bills. The lab itself and its upkeep are not in it."""
        return (self.goods_cost + self.work_cost) * self.farm.weeks_worked + self.yearly_bills

    @line("Own spawn: running cost of what is used", unit="money/kg_spawn", zero_is_none=True)
    def cost_per_weight(self) -> Expr:
        """To set beside the price of bought spawn that can be used; the lab itself is not in it."""
        used = self.spawn.spawn_a_week * self.farm.weeks_worked
        return ratio(self.cost_a_year, used)

    @line("Own spawn: running cost of the spawn in a bag", unit="money/bag_inoculated", zero_is_none=True)
    def cost_per_bag_inoculated(self) -> Expr:
        """As for bought spawn, only bags that came whole out of the steamer get any."""
        return self.spawn.spawn_per_bag * self.cost_per_weight

    @line("Own spawn: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            either(self.source.made, "Made on the farm, spawn costs ", "Made on the farm, spawn would cost "),
            figure(self.cost_per_bag_inoculated, 2),
            " without the lab. It takes ",
            figure(self.hours_a_week, 1),
            ".",
        )

    @check(
        "Materials of grain and plates are given",
        kind="error",
        says="What the materials of one bag of grain or one plate cost is not filled in: see the sheet Tables.",
    )
    def materials_given(self) -> Expr:
        """Only sawdust spawn can be worked out from your mix and bags."""
        return total(self.materials_missing, GENERATION) <= 0
