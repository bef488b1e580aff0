"""The harvest in time: days from inoculation, weight a week and a year, and other ways of stating the yield."""

from __future__ import annotations

from typing import Final

from farmbook.calc.crop import biological_efficiency, efficiency_with_spawn, percent_of_wet_weight
from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import all_of, at, joined, maximum, ratio, running_sum, total, where
from farmbook.expr.nodes import Constant, Expr, wrap
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import FLUSH
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.crop.crop import STEP_BY_STEP, Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, BIOLOGICAL_EFFICIENCY, COMMON_PRACTICE, SARE_FNE13_786
from farmbook.units import unit

__all__ = ["Harvest"]

IN_ONE_NUMBER: Final = Option("number", "in one number")

LEAST_EFFICIENCY: Final = Constant(
    0.20,
    "least_biological_efficiency",
    label="Lowest believable biological efficiency",
    unit=unit("kg_picked/kg_dry"),
    source=COMMON_PRACTICE.key,
    note="Bare sawdust without any supplement can fall below it.",
)
MOST_EFFICIENCY: Final = Constant(
    2.0,
    "most_biological_efficiency",
    label="Highest believable biological efficiency",
    unit=unit("kg_picked/kg_dry"),
    source=COMMON_PRACTICE.key,
    note="Figures above it usually come of a wrong dry weight.",
)


class Harvest(Section):
    """When the weight comes, and how much of it in a week and a year."""

    title = "Days, and weight a week and a year"
    table = "crop"

    farm = uses(Farm)
    bag = uses(Bag)
    crop = uses(Crop)
    spawn = uses(Spawn)
    supply = uses(SpawnSupply)

    spawn_run_days = number(
        "Days of spawn run",
        unit="day",
        usual=(14, 28),
        hard=(1, 120),
        default=21,
        how="From inoculation to the day the bags are moved and opened, the mean of ten batches.",
        source=COMMON_PRACTICE,
    )
    days_to_first_pick = number(
        "Days from opening to the end of the first pick",
        unit="day",
        usual=(8, 15),
        hard=(1, 90),
        default=11,
        how="Pins after 3 to 6 days, grown 4 to 7 days later; count to the day the last bag of the batch is picked.",
        source=COMMON_PRACTICE,
    )
    added_days = number(
        "Days added by the flush",
        unit="day",
        axes=(FLUSH,),
        usual=(0, 18),
        hard=(0, 90),
        default=(0, 13, 14, 15),
        how="From the end of the flush before to the end of this one. 0 for the first: its days are typed above.",
        source=SARE_FNE13_786,
        note="One farm picked on days 15, 30, 45 and 60.",
    )
    days_given = choice(
        "How the days until a bag is dumped are given",
        STEP_BY_STEP,
        IN_ONE_NUMBER,
        default=STEP_BY_STEP,
        how="In one number, if you know only on which day bags leave; the spawn run is then taken off it.",
        source=COMMON_PRACTICE,
    )
    own_days_until_dumped = number(
        "Days from inoculation until dumped, your own figure",
        unit="day",
        usual=(35, 80),
        hard=(1, 365),
        default=46,
        how="From inoculation to the day the bags are taken out, the mean of ten batches.",
        source=COMMON_PRACTICE,
        note="From memory, for two flushes. Read where the days are given in one number.",
    )
    turn_round_days = number(
        "Days to clear and wash before the next bags",
        unit="day",
        usual=(0, 3),
        hard=(0, 30),
        default=1,
        how="Days a fruiting place stands empty between two batches.",
        source=COMMON_PRACTICE,
    )

    # Days

    @line("Days added so far", unit="day", axes=(FLUSH,))
    def added_so_far(self) -> Expr:
        """By this flush and those before it, after the first pick."""
        return running_sum(self.added_days, FLUSH)

    @line("Days from inoculation to the end of the first pick", unit="day")
    def days_to_first_harvest(self) -> Expr:
        """No money comes in before this; the first sale of a new farm is later by this and by the wait for spawn."""
        return self.spawn_run_days + self.days_to_first_pick

    @line("Days from inoculation to the end of the flush", unit="day", axes=(FLUSH,))
    def day_of_flush(self) -> Expr:
        """Shown for flushes that are not kept too, so that one more can be judged."""
        return self.days_to_first_harvest + self.added_so_far

    @line("Days in the fruiting room", unit="day")
    def days_in_fruiting(self) -> Expr:
        """From opening to dumping."""
        in_one_number = self.chose(self.days_given, IN_ONE_NUMBER)
        own = maximum(self.own_days_until_dumped - self.spawn_run_days, 0)
        return where(in_one_number, own, self.days_by_flush)

    @line("Days in the fruiting room, by the flushes kept", unit="day")
    def days_by_flush(self) -> Expr:
        """To the end of the first pick, and what each flush adds."""
        return self.days_to_first_pick + total(self.added_days * self.crop.flush_kept, FLUSH)

    @line("Days from inoculation until dumped", unit="day")
    def days_until_dumped(self) -> Expr:
        """The whole life of a bag that stands to the end."""
        return self.spawn_run_days + self.days_in_fruiting

    @line("Days a fruiting place is taken", unit="day")
    def days_place_taken(self) -> Expr:
        """Days of washing count: no other bag can stand there. A bag lost on the way leaves its place empty."""
        return self.days_in_fruiting + self.turn_round_days

    # Weight

    @line("Bags moved to fruiting a week", unit="bag_live/week")
    def live_a_week(self) -> Expr:
        """Once the farm runs steadily."""
        return self.farm.bags_filled_a_week * self.crop.live_per_filled

    @line("Picked a week", unit="kg_picked/week")
    def picked_a_week(self) -> Expr:
        """Once the farm runs steadily: the flushes of a week come from bags inoculated some weeks apart."""
        return self.farm.bags_filled_a_week * self.crop.picked_per_filled

    @line("Packed a week", unit="kg_packed/week")
    def packed_a_week(self) -> Expr:
        """After trimming."""
        return self.farm.bags_filled_a_week * self.crop.packed_per_filled

    @line("Taken to customers a week", unit="kg_taken/week")
    def taken_a_week(self) -> Expr:
        """What there is to sell in an ordinary week."""
        return self.farm.bags_filled_a_week * self.crop.taken_per_filled

    @line("Picked a year", unit="kg_picked/year")
    def picked_a_year(self) -> Expr:
        """From all bags filled in a year; in the first year of a farm less of it falls inside the year."""
        return self.picked_a_week * self.farm.weeks_worked

    @line("Packed a year", unit="kg_packed/year")
    def packed_a_year(self) -> Expr:
        """From all bags filled in a year."""
        return self.packed_a_week * self.farm.weeks_worked

    @line("Taken to customers a year", unit="kg_taken/year")
    def taken_a_year(self) -> Expr:
        """From all bags filled in a year."""
        return self.taken_a_week * self.farm.weeks_worked

    # The yield stated in other ways

    @line("Share of the crop", unit="share", axes=(FLUSH,))
    def share_of_crop(self) -> Expr:
        """How much of all that is picked comes with this flush."""
        return ratio(self.crop.fresh_per_filled, self.crop.picked_per_filled)

    @line("Biological efficiency in all, spawn counted", unit="kg_picked/kg_dry", source=BIOLOGICAL_EFFICIENCY)
    def efficiency_with_spawn(self) -> Expr:
        """The same crop over dry mix and dry spawn together, as some papers do; for comparing only."""
        spawn = joined(self.supply.dry_spawn_per_bag, "kg_dry/bag_live")
        return efficiency_with_spawn(self.crop.fresh_in_all_flushes, self.crop.dry_mix_per_live, spawn)

    @line("Fresh weight in all, share of wet bag weight", unit="kg_picked/kg_wet", source=ARITHMETIC)
    def share_of_wet_weight(self) -> Expr:
        """As growers often talk; well under half of the figure on dry mix, so never take one for the other."""
        return percent_of_wet_weight(self.crop.efficiency_in_all, ratio(self.bag.dry_mass, self.bag.wet_fill))

    @line("Biological efficiency over all bags filled", unit="kg_picked/kg_dry", source=BIOLOGICAL_EFFICIENCY)
    def efficiency_of_all_bags(self) -> Expr:
        """All weight picked over all dry mix filled, lost bags counted: what a year's records give when divided."""
        return biological_efficiency(self.crop.picked_per_filled, self.bag.dry_mass)

    # Checks

    @line("Picked, less all that became of it", unit="kg_picked/bag_filled", source=ARITHMETIC)
    def picked_unaccounted(self) -> Expr:
        """Picked less trimmed, dried away and taken to customers: nothing is left over."""
        gone = joined(self.crop.shrunk_per_filled, "kg_picked/bag_filled")
        taken = joined(self.crop.taken_per_filled, "kg_picked/bag_filled")
        return self.crop.picked_per_filled - self.crop.trimmed_per_filled - gone - taken

    @line("Crop: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "Of the bags filled, ",
            figure(self.crop.live_per_filled, 0, named=False),
            " reach fruiting. They bring ",
            figure(self.taken_a_week, 0),
            " to your customers.",
        )

    @check(
        "Picked is trimmed, dried away or taken to customers",
        kind="error",
        says="Weight picked does not agree with what became of it: a formula of the crop sheet was changed.",
    )
    def picked_adds_up(self) -> Expr:
        """Weight neither comes from nowhere nor vanishes between the pick and the customer."""
        return is_rounding(self.picked_unaccounted, self.crop.picked_per_filled, self.crop.trimmed_per_filled)

    @check(
        "Biological efficiency in all between 20% and 200%",
        kind="alert",
        says="The yield is hard to believe. Is it over dry mix, not wet weight? Are bag weight and moisture right?",
    )
    def efficiency_believable(self) -> Expr:
        """Oyster crops usually give 45 to 130% in all flushes; 200% is hardly ever reached."""
        in_all = self.crop.efficiency_in_all
        return all_of(in_all >= LEAST_EFFICIENCY, in_all <= MOST_EFFICIENCY)

    @check(
        "Days of the first flush typed once",
        kind="error",
        says="The first row of days added by the flush must be 0: type them as days to the end of the first pick.",
    )
    def first_days_once(self) -> Expr:
        """What is typed there would count on top."""
        return at(self.added_days, FLUSH, wrap(1)) <= 0
