"""The way from plate to bags for spawn made on the farm: which generations it has, and what one of each does."""

from __future__ import annotations

from typing import Final

from farmbook.calc.spawn import usable_mass
from farmbook.expr.functions import any_of, joined, negation, ratio, running_sum, total, where
from farmbook.expr.nodes import Expr
from farmbook.model.axes import GENERATION
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.spawn.spawn_bought import GRAIN_SPAWN_MOISTURE, SAWDUST_SPAWN_MOISTURE, Spawn
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = [
    "IN_COOKER",
    "IN_STEAMER",
    "ONE_GRAIN",
    "ONE_GRAIN_SAWDUST",
    "TWO_GRAINS",
    "TWO_GRAINS_SAWDUST",
    "OwnSpawnWay",
]

ONE_GRAIN: Final = Option("one grain", "one grain, then bags")
TWO_GRAINS: Final = Option("two grains", "two grains, then bags")
ONE_GRAIN_SAWDUST: Final = Option("one grain and sawdust", "one grain, then sawdust spawn")
TWO_GRAINS_SAWDUST: Final = Option("two grains and sawdust", "two grains, then sawdust spawn")
IN_STEAMER: Final = Option("steamer", "steamer")
IN_COOKER: Final = Option("cooker", "pressure cooker")


class OwnSpawnWay(Section):
    """From a plate over grain to what goes into the bags."""

    title = "Own spawn: the way from plate to bags"
    table = "own_spawn"

    spawn = uses(Spawn)
    source = uses(SpawnSource)

    route = choice(
        "Own spawn: what comes between plate and bags",
        ONE_GRAIN,
        TWO_GRAINS,
        ONE_GRAIN_SAWDUST,
        TWO_GRAINS_SAWDUST,
        default=TWO_GRAINS,
        how="Every generation more makes the spawn cheaper and the culture older. What goes into the bags comes last.",
        source=COMMON_PRACTICE,
    )
    sawdust_cooked_in = choice(
        "Own spawn: sawdust spawn bags are cooked in",
        IN_STEAMER,
        IN_COOKER,
        default=IN_STEAMER,
        how="In the steamer each takes the place of a bag that would fruit. Grain and agar go in the cooker.",
        source=COMMON_PRACTICE,
    )
    generation_limit = number(
        "Own spawn: most generations you allow after the plate",
        unit="count",
        usual=(2, 3),
        hard=(1, 6),
        default=3,
        how="Count the grain and the sawdust spawn, not the plate and not the bags that fruit.",
        source=COMMON_PRACTICE,
        note="Cultures passed on too often grow slower and give less.",
    )
    grain_bag_mass = number(
        "Own spawn: grain spawn in one bag or jar",
        unit="kg_spawn/spawn_unit",
        usual=(0.4, 3),
        hard=(0.05, 20),
        default=2.27,
        how="Weigh some when they are grown through, without the bag.",
        source=COMMON_PRACTICE,
    )
    sawdust_bag_mass = number(
        "Own spawn: sawdust spawn in one bag",
        unit="kg_spawn/spawn_unit",
        usual=(1, 5),
        hard=(0.05, 20),
        default=2.27,
        how="Weigh some when they are grown through, without the bag.",
        source=COMMON_PRACTICE,
    )
    usable_share = number(
        "Own spawn: what can be used of a good bag or jar",
        unit="share",
        usual=(0.9, 1),
        hard=(0.05, 1),
        default=0.95,
        how="Weight used over weight in the bag, on one lab day; some stays in the corners or is spilt.",
        source=COMMON_PRACTICE,
    )
    grain_share = number(
        "Own spawn: grain in sawdust spawn, share of its wet weight",
        unit="share",
        usual=(0.03, 0.1),
        hard=(0.001, 1),
        default=0.05,
        how="Weight of grain spawn used over the wet weight of the sawdust spawn bags made with it.",
        source=COMMON_PRACTICE,
        note="From memory: one bag of grain does about nineteen bags of sawdust spawn of the same weight.",
    )
    grain_from_grain = number(
        "Own spawn: bags of second grain from one bag of grain",
        unit="1",
        usual=(8, 20),
        hard=(0.5, 200),
        default=10,
        how="Bags of grain started over bags of grain used for it, on one lab day.",
        source=COMMON_PRACTICE,
    )
    grain_from_plate = number(
        "Own spawn: bags of grain from one plate",
        unit="1",
        usual=(2, 10),
        hard=(0.1, 200),
        default=4,
        how="Bags of grain started over plates cut up for it, on one lab day.",
        source=COMMON_PRACTICE,
    )
    own_moisture = number(
        "Own spawn: share of water, your own figure",
        unit="kg_water/kg_spawn",
        usual=(0.43, 0.65),
        hard=(0, 0.95),
        optional=True,
        how="Weigh a handful, dry it to a steady weight, weigh again: the weight lost over the weight at the start.",
        source=COMMON_PRACTICE,
    )
    # The generations

    @line("Own spawn: there is sawdust spawn", unit="flag")
    def has_sawdust(self) -> Expr:
        """1 where what goes into the bags is sawdust spawn, 0 where it is grain."""
        return any_of(self.chose(self.route, ONE_GRAIN_SAWDUST), self.chose(self.route, TWO_GRAINS_SAWDUST))

    @line("Own spawn: there is second grain", unit="flag")
    def has_second_grain(self) -> Expr:
        """1 where grain spawn is made from grain spawn."""
        return any_of(self.chose(self.route, TWO_GRAINS), self.chose(self.route, TWO_GRAINS_SAWDUST))

    @line("Own spawn: step back from the bags", unit="count", axes=(GENERATION,))
    def step(self) -> Expr:
        """1 stands next to the bags."""
        return running_sum(1, GENERATION)

    @line("Own spawn: row of the sawdust spawn", unit="flag", axes=(GENERATION,))
    def is_sawdust(self) -> Expr:
        """Marks the first row, so that all rows can share one formula."""
        return self.step <= 1

    @line("Own spawn: row of the second grain", unit="flag", axes=(GENERATION,))
    def is_second_grain(self) -> Expr:
        """Marks the second row."""
        return (self.step - 1 <= 1) - self.is_sawdust

    @line("Own spawn: row of the grain", unit="flag", axes=(GENERATION,))
    def is_grain(self) -> Expr:
        """Marks the third row."""
        return (self.step - 1 - 1 <= 1) - self.is_sawdust - self.is_second_grain

    @line("Own spawn: generation is used", unit="flag", axes=(GENERATION,))
    def used_here(self) -> Expr:
        """Plate and grain always; the other two as you chose."""
        no_sawdust = self.is_sawdust * (1 - self.has_sawdust)
        return 1 - no_sawdust - self.is_second_grain * (1 - self.has_second_grain)

    @line("Own spawn: generations used so far, counted back", unit="count", axes=(GENERATION,))
    def used_so_far(self) -> Expr:
        """This one counted in."""
        return running_sum(self.used_here, GENERATION)

    @line("Own spawn: generation, counted from the plate", unit="count", axes=(GENERATION,))
    def generation_number(self) -> Expr:
        """0 for the plate; it rises towards the bags, and each step makes the culture older."""
        return total(self.used_here, GENERATION) - self.used_so_far

    @line("Own spawn: generations after the plate", unit="count")
    def generations(self) -> Expr:
        """Grain and sawdust spawn; the bags that fruit come on top."""
        return total(self.used_here, GENERATION) - 1

    # What one does

    @line("Own spawn: usable in a good bag of grain", unit="kg_spawn/spawn_unit")
    def usable_in_grain(self) -> Expr:
        """Without what stays in the bag."""
        return usable_mass(self.grain_bag_mass, self.usable_share)

    @line("Own spawn: usable in a good bag of sawdust spawn", unit="kg_spawn/spawn_unit")
    def usable_in_sawdust(self) -> Expr:
        """Without what stays in the bag."""
        return usable_mass(self.sawdust_bag_mass, self.usable_share)

    @line("Own spawn: usable in one of those that go into the bags", unit="kg_spawn/spawn_unit")
    def usable_in_last(self) -> Expr:
        """Sawdust spawn or grain, whichever comes last."""
        return where(self.has_sawdust, self.usable_in_sawdust, self.usable_in_grain)

    @line("Own spawn: bags to fruit that one does", unit="bag_inoculated/spawn_unit", source=ARITHMETIC)
    def bags_from_one(self) -> Expr:
        """At the share of spawn typed for bought spawn; type another there if you give more of your own."""
        return ratio(self.usable_in_last, self.spawn.spawn_per_bag)

    @line("Own spawn: grain in one bag of sawdust spawn", unit="kg_spawn/spawn_unit")
    def grain_in_sawdust(self) -> Expr:
        """Its share of the wet weight."""
        return self.sawdust_bag_mass * self.grain_share

    @line("Own spawn: mix in one bag of sawdust spawn", unit="kg_wet/spawn_unit", source=ARITHMETIC)
    def mix_in_sawdust(self) -> Expr:
        """Of the recipe chosen: what is not grain. It loses a little weight while it grows through."""
        return joined(self.sawdust_bag_mass - self.grain_in_sawdust, "kg_wet/spawn_unit")

    @line("Own spawn: bags of sawdust spawn from one bag of grain", unit="count", source=ARITHMETIC)
    def sawdust_from_grain(self) -> Expr:
        """What can be used of the grain, over what one bag of sawdust spawn takes."""
        return ratio(self.usable_in_grain, self.grain_in_sawdust)

    @line("Own spawn: grain started from one of the step before", unit="count", axes=(GENERATION,))
    def grain_from_one(self) -> Expr:
        """From a bag of grain, or from a plate."""
        return self.is_second_grain * self.grain_from_grain + self.is_grain * self.grain_from_plate

    @line("Own spawn: started from one of the step before", unit="count", axes=(GENERATION,))
    def started_from_one(self) -> Expr:
        """From one good plate or bag. The plate itself is started from the culture that you keep or buy."""
        return self.is_sawdust * self.sawdust_from_grain + self.grain_from_one

    # Dry matter

    @line("Own spawn: usual share of water", unit="kg_water/kg_spawn", source=COMMON_PRACTICE)
    def usual_moisture(self) -> Expr:
        """Of what goes into the bags: sawdust is wetter than grain."""
        return where(self.has_sawdust, SAWDUST_SPAWN_MOISTURE, GRAIN_SPAWN_MOISTURE)

    @line("Own spawn: share of water", unit="kg_water/kg_spawn")
    def moisture(self) -> Expr:
        """Your own figure wins over the usual one."""
        return where(self.given(self.own_moisture), self.own_moisture, self.usual_moisture)

    @line("Own spawn: dry matter in a bag", unit="kg_dry/bag_inoculated")
    def dry_spawn_per_bag(self) -> Expr:
        """As for bought spawn."""
        return joined(self.spawn.spawn_per_bag * (1 - self.moisture), "kg_dry/bag_inoculated")

    @check(
        "Own spawn is not passed on too often",
        kind="alert",
        says="More generations after the plate than you allow: choose a shorter way from plate to bags.",
    )
    def few_generations(self) -> Expr:
        """Silent as long as the spawn is bought."""
        return any_of(negation(self.source.made), self.generations <= self.generation_limit)
