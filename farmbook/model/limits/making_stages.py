"""Stages from the heap of sawdust to the inoculated bag."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import any_of, joined, ratio
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.cost.mixing import Mixing
from farmbook.model.crop.crop import Crop
from farmbook.model.limits.stage import Stage
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import line, uses
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["BenchStage", "CoolingStage", "MixingStage", "SteamerStage"]

FILLED_A_LAB_DAY: Final = Constant(
    1,
    "filled_a_lab_day",
    label="Times a cooling place is filled for each lab day",
    unit=unit("1/day"),
    source=ARITHMETIC.key,
)


class MixingStage(Stage, words="mixing and filling"):
    """Mixer, bagger and hands."""

    title = "Mixing and filling"
    place = 1

    mixing = uses(Mixing)

    @line("Mixing and filling: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return self.capacities.given(self.capacities.mixing_hours)

    @line("Mixing and filling", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Hours there are, times the bags filled in one."""
        return self.capacities.mixing_hours * self.mixing.bags_per_hour

    @line(
        "An hour more of mixing and filling makes room for",
        unit="bag_filled/person_hour",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return self.mixing.bags_per_hour * self.known


class SteamerStage(Stage, words="the steamer"):
    """The steamer in use."""

    title = "The steamer"
    place = 2

    steamer_in_use = uses(SteamerInUse)

    @line("The steamer: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return any_of(self.steamer_in_use.vessel_heat.in_use, self.farm.given(self.farm.bags_per_load))

    @line("The steamer", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Loads that can be started in the hours when somebody is there, own spawn's places taken off."""
        return self.steamer_in_use.bags_possible * self.capacities.share_to_fruit * self.known

    @line("A load more makes room for", unit="bag_filled/run", source=ARITHMETIC, zero_is_none=True)
    def frees(self) -> Expr:
        """Bags to fill."""
        return self.steamer_in_use.bags_per_run * self.capacities.share_to_fruit * self.known


class CoolingStage(Stage, words="cooling"):
    """Where steamed bags wait."""

    title = "Cooling bags"
    place = 3

    spawn = uses(Spawn)

    @line("Cooling bags: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return self.capacities.given(self.capacities.cooling_places)

    @line("Cooling bags", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Places, each filled once for each lab day."""
        return self.capacities.cooling_places * self.frees

    @line("A place more to cool makes room for", unit="bag_filled/place/week", source=ARITHMETIC, zero_is_none=True)
    def frees(self) -> Expr:
        """Bags to fill."""
        return (
            joined(self.capacities.share_to_fruit, "bag_filled/place")
            * FILLED_A_LAB_DAY
            * self.spawn.lab_days
            * self.known
        )


class BenchStage(Stage, words="the inoculation bench"):
    """Hands at the flow hood."""

    title = "The inoculation bench"
    place = 4

    spawn = uses(Spawn)
    crop = uses(Crop)

    @line("The inoculation bench: known", unit="flag")
    def known(self) -> Expr:
        """Only then can it limit the farm."""
        return self.capacities.given(self.capacities.bench_hours)

    @line("The inoculation bench", unit="bag_filled/week", source=ARITHMETIC, zero_is_none=True)
    def capacity(self) -> Expr:
        """Hours on lab days, times the bags done in one; bags lost at steaming need none."""
        return self.capacities.bench_hours * self.spawn.lab_days * self.frees

    @line(
        "An hour more at the bench makes room for", unit="bag_filled/person_hour", source=ARITHMETIC, zero_is_none=True
    )
    def frees(self) -> Expr:
        """Bags to fill."""
        return ratio(self.spawn.bags_per_hour * self.known, self.crop.inoculated_per_filled)
