"""Spawn bought in: how much goes into a bag, what it costs landed, what to order, and the work of inoculating."""

from __future__ import annotations

from typing import Final

from farmbook.calc.spawn import spawn_mass, units_needed, units_of_mass
from farmbook.expr.functions import all_of, joined, ratio, where, whole_up
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import IN_DETAIL, ONE_FIGURE, Farm
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, ROYSE_2002
from farmbook.units import unit

__all__ = ["GRAIN", "SAWDUST", "Spawn"]

GRAIN: Final = Option("grain", "grain spawn")
SAWDUST: Final = Option("sawdust", "sawdust spawn")

GRAIN_SPAWN_MOISTURE: Final = Constant(
    0.48,
    "grain_spawn_moisture",
    label="Usual share of water in grain spawn",
    unit=unit("kg_water/kg_spawn"),
    source=COMMON_PRACTICE.key,
    note="From memory; 43 to 52%.",
)
SAWDUST_SPAWN_MOISTURE: Final = Constant(
    0.60,
    "sawdust_spawn_moisture",
    label="Usual share of water in sawdust spawn",
    unit=unit("kg_water/kg_spawn"),
    source=COMMON_PRACTICE.key,
    note="From memory; 55 to 65%.",
)
LEAST_SPAWN_RATE: Final = Constant(
    0.01,
    "least_spawn_rate",
    label="Lowest believable share of spawn",
    unit=unit("kg_spawn/kg_wet"),
    source=COMMON_PRACTICE.key,
    note="Half the least that growers usually give.",
)
MOST_SPAWN_RATE: Final = Constant(
    0.20,
    "most_spawn_rate",
    label="Highest believable share of spawn",
    unit=unit("kg_spawn/kg_wet"),
    source=COMMON_PRACTICE.key,
    note="Twice the most that growers usually give.",
)


class Spawn(Section):
    """Spawn bought in by weight, and the hands that put it into the bags."""

    title = "Spawn bought in, and inoculating"
    most_give = ("spawn_rate", "price")

    farm = uses(Farm)
    bag = uses(Bag)
    crop = uses(Crop)
    source = uses(SpawnSource)

    kind = choice(
        "Kind of spawn",
        GRAIN,
        SAWDUST,
        default=GRAIN,
        how="As the invoice says. It settles how wet the spawn is taken to be, unless you type your own figure.",
        source=COMMON_PRACTICE,
    )
    spawn_rate = number(
        "Spawn, share of wet bag weight",
        unit="kg_spawn/kg_wet",
        usual=(0.02, 0.10),
        hard=(0, 0.5),
        default=0.05,
        how="Weigh the spawn used on one lab day and divide by the wet weight of all bags inoculated that day.",
        source=ROYSE_2002,
        note="In one trial 3.75 to 5% of wet weight gave the best yield.",
    )
    counted = choice(
        "What bought spawn costs: one figure, or worked out",
        ONE_FIGURE,
        IN_DETAIL,
        default=IN_DETAIL,
        how="One figure, if you know only what goes into a bag in money.",
        source=COMMON_PRACTICE,
    )
    own_cost = number(
        "Spawn in a bag, your own figure in money",
        unit="money/bag_inoculated",
        usual=(0.2, 1.5),
        hard=(0, 50),
        default=0.75,
        how="Money paid for spawn and its freight over some months, over the bags inoculated in them.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
    )
    own_moisture = number(
        "Share of water in the spawn, your own figure",
        unit="kg_water/kg_spawn",
        usual=(0.43, 0.65),
        hard=(0, 0.95),
        optional=True,
        how="Weigh a handful, dry it to a steady weight, weigh again: the weight lost over the weight at the start.",
        source=COMMON_PRACTICE,
    )
    price = number(
        "Spawn, price before freight",
        unit="money/kg_spawn",
        usual=(3.0, 10.0),
        hard=(0, 500),
        default=5.29,
        how="Invoice before freight, over the weight of spawn on it.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency. Replace it early.",
    )
    freight = number(
        "Spawn, freight",
        unit="money/kg_spawn",
        usual=(0.2, 3.0),
        hard=(0, 500),
        default=1.21,
        how="Carrier's bill over the weight of spawn in the delivery.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency. Replace it early.",
    )
    bad_on_arrival = number(
        "Spawn that is bad on arrival",
        unit="share",
        usual=(0, 0.08),
        hard=(0, 0.95),
        default=0.02,
        how="Weight thrown away and not made good, over the weight delivered, last ten deliveries together.",
        source=COMMON_PRACTICE,
    )
    pack_weight = number(
        "Spawn in one bag as bought",
        unit="kg_spawn/spawn_bag",
        usual=(1, 12),
        hard=(0.1, 1000),
        default=2.27,
        how="Printed on the bag or the invoice; weigh one.",
        source=COMMON_PRACTICE,
    )
    lead_time = number(
        "Weeks from ordering spawn to having it",
        unit="week",
        usual=(1, 6),
        hard=(0, 26),
        default=3,
        how="From the day you order to the day you can use it, the slowest of the last five orders.",
        source=COMMON_PRACTICE,
    )
    bags_per_hour = number(
        "Bags inoculated and sealed in an hour of work",
        unit="bag_inoculated/person_hour",
        usual=(40, 180),
        hard=(1, 2000),
        default=95,
        how="Bags done over the hours of all hands at the bench, breaks inside, setting up left out.",
        source=COMMON_PRACTICE,
    )
    set_up_hours = number(
        "Hours to set up and clean, each lab day",
        unit="person_hour/day",
        usual=(0.5, 4),
        hard=(0, 24),
        default=1.5,
        how="Clock it from unlocking the lab to the first bag, and from the last bag to locking up, all hands.",
        source=COMMON_PRACTICE,
    )
    lab_days = number(
        "Lab days a week",
        unit="day/week",
        usual=(1, 5),
        hard=(0, 7),
        default=2,
        how="Days on which bags are inoculated.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # Spawn in a bag

    @line("Usual share of water in this kind of spawn", unit="kg_water/kg_spawn", source=COMMON_PRACTICE)
    def usual_moisture(self) -> Expr:
        """Grain is cooked and drained, sawdust is mixed wetter: so the kind you buy settles this."""
        grain = self.chose(self.kind, GRAIN) * GRAIN_SPAWN_MOISTURE
        return grain + self.chose(self.kind, SAWDUST) * SAWDUST_SPAWN_MOISTURE

    @line("Share of water in the spawn", unit="kg_water/kg_spawn")
    def moisture(self) -> Expr:
        """Your own figure wins over the usual one."""
        return where(self.given(self.own_moisture), self.own_moisture, self.usual_moisture)

    @line("Spawn in a bag", unit="kg_spawn/bag_inoculated", source=ARITHMETIC)
    def spawn_per_bag(self) -> Expr:
        """The rate is on the wet weight of the filled bag, not on its dry mix; the spawn comes on top."""
        return spawn_mass(joined(self.bag.wet_fill, "kg_wet/bag_inoculated"), self.spawn_rate)

    @line("Spawn as a share of the dry mix", unit="kg_spawn/kg_dry", source=ARITHMETIC, zero_is_none=True)
    def spawn_per_dry_mix(self) -> Expr:
        """Papers and sellers often state the rate this way: it is the same spawn, and always the larger figure."""
        return ratio(self.spawn_per_bag, joined(self.bag.dry_mass, "kg_dry/bag_inoculated"))

    @line("Dry matter of the spawn in a bag", unit="kg_dry/bag_inoculated", source=ARITHMETIC)
    def dry_spawn_per_bag(self) -> Expr:
        """It feeds the mushrooms too, yet biological efficiency is planned with the spawn left out."""
        return joined(self.spawn_per_bag * (1 - self.moisture), "kg_dry/bag_inoculated")

    # Cost of the spawn

    @line("Spawn, price with freight", unit="money/kg_spawn")
    def landed_price(self) -> Expr:
        """For every weight on the invoice, good or bad."""
        return self.price + self.freight

    @line("Spawn, price of what can be used", unit="money/kg_spawn", source=ARITHMETIC, zero_is_none=True)
    def usable_price(self) -> Expr:
        """What arrives bad is paid for as well: the price is divided by the share that is good."""
        return ratio(self.landed_price, 1 - self.bad_on_arrival)

    @line("Cost of the spawn in a bag, worked out", unit="money/bag_inoculated")
    def worked_cost(self) -> Expr:
        """Only bags that came whole out of the steamer get spawn."""
        return self.spawn_per_bag * self.usable_price

    @line("Cost of the spawn in a bag", unit="money/bag_inoculated")
    def cost_per_bag_inoculated(self) -> Expr:
        """Your one figure, or what is worked out, as you chose."""
        return where(self.chose(self.counted, ONE_FIGURE), self.own_cost, self.worked_cost)

    # What to order

    @line("Bags inoculated a week", unit="bag_inoculated/week")
    def bags_inoculated_a_week(self) -> Expr:
        """Bags filled, less those that burst or leak in the steamer."""
        return self.farm.bags_filled_a_week * self.crop.inoculated_per_filled

    @line("Spawn used a week", unit="kg_spawn/week")
    def spawn_a_week(self) -> Expr:
        """In an ordinary week."""
        return self.bags_inoculated_a_week * self.spawn_per_bag

    @line("Spawn to order a week", unit="kg_spawn/week", source=ARITHMETIC)
    def order_a_week(self) -> Expr:
        """More than is used, by what arrives bad."""
        return units_needed(self.spawn_a_week, self.bad_on_arrival)

    @line("Bags of spawn to order a week", unit="spawn_bag/week")
    def packs_a_week(self) -> Expr:
        """Whole bags: what is left over keeps for a few weeks in the cold, so some weeks need one less."""
        return whole_up(units_of_mass(self.order_a_week, self.pack_weight))

    @line("Spawn ordered and not yet here", unit="kg_spawn")
    def spawn_on_order(self) -> Expr:
        """At any time: a change of plan reaches the lab only after these weeks."""
        return self.order_a_week * self.lead_time

    # Inoculating

    @line("Hours at the bench a week", unit="person_hour/week")
    def bench_hours_a_week(self) -> Expr:
        """Inoculating and sealing only."""
        return ratio(self.bags_inoculated_a_week, self.bags_per_hour)

    @line("Hours of setting up the lab a week", unit="person_hour/week")
    def set_up_hours_a_week(self) -> Expr:
        """The same for a few bags as for many: fewer and longer lab days save them."""
        return self.set_up_hours * self.lab_days

    @line("Hours of inoculating for each bag", unit="person_hour/bag_inoculated", zero_is_none=True)
    def hours_per_bag(self) -> Expr:
        """Bench and setting up, over the bags inoculated."""
        return ratio(self.bench_hours_a_week + self.set_up_hours_a_week, self.bags_inoculated_a_week)

    @line("Work of inoculating a bag", unit="money/bag_inoculated")
    def inoculation_cost(self) -> Expr:
        """Your own hours are counted at the same rate."""
        return self.hours_per_bag * self.farm.labour_rate

    @line("Spawn: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            either(self.source.made, "Bought, spawn would cost ", "Bought spawn costs "),
            figure(self.cost_per_bag_inoculated, 2),
            either(self.source.made, "; to order would be ", ". Order "),
            figure(self.order_a_week, 0),
            ".",
        )

    @check(
        "Spawn between 1% and 20% of wet bag weight",
        kind="alert",
        says="Far from what growers give. Is the share on wet bag weight, and 5% not typed as 50%?",
    )
    def spawn_rate_believable(self) -> Expr:
        """A share typed on dry mix, or a slip of a digit, shows here."""
        return all_of(self.spawn_rate >= LEAST_SPAWN_RATE, self.spawn_rate <= MOST_SPAWN_RATE)
