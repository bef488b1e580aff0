"""The whole twin run again on inputs edited: the farm with another stop, another recipe, or the other steamer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from tests.twin.farm_twin import worked
from tests.twin.farm_twin_ground import Given, Results, chosen_rows, same

__all__ = ["Way", "as_stop", "with_recipe", "with_steamer"]

Edits = dict[str, Any]


@dataclass(frozen=True)
class Way:
    """The farm run in one way: its stages with the bags of now, the bags it can fill, and the year with them."""

    stages: Results
    bags: float
    year: Results

    @property
    def profit(self) -> float:
        """Left in the year after loss in value and interest."""
        return float(self.year["year.profit"])

    @property
    def net_takings(self) -> float:
        """Takings less fees."""
        return float(self.year["customer_year.takings_in_all"]) - float(self.year["customer_year.fees_in_all"])

    @property
    def return_wanted(self) -> float:
        """What owning the steamer costs beyond what it loses in value."""
        owning, loss = (self.year[f"steamer_in_use_year.{name}"] for name in ("owning_cost", "yearly_loss"))
        return float(owning) - float(loss)


def run(given: Given, now: Results, edits: Edits) -> Way:
    """The farm with inputs edited, first with the bags of now, then with those that its stages let through."""
    stages = worked({**given, **edits})
    bags = float(stages["limits.first"] if stages["limits.many"] > 0 else given["farm.bags_filled_a_week"])
    filled = {**given, **edits, "farm.bags_filled_a_week": bags}
    year = worked({**filled, **papers_moved(given, now, worked(filled))})
    return Way(dict(stages), bags, dict(year))


def papers_moved(given: Given, now: Results, then: Results) -> Edits:
    """The bills and the loss in value that would be typed if the farm were run so: more or less of what is worked out.

    Nothing is owned more or less but the steamer, whatever stands in the rooms.
    """
    energy = float(then["bills.all_worked_energy"]) - float(now["bills.all_worked_energy"])
    rest = sum(float(then[f"bills.{name}"]) - float(now[f"bills.{name}"]) for name in ("water", "upkeep"))
    steamer = float(then["steamer_in_use_year.yearly_loss"]) - float(now["steamer_in_use_year.yearly_loss"])
    typed = given["capital.own_loss"] if given["capital.own_loss_given"] else now["capital.usual_loss"]
    return {
        "bills.energy": float(given["bills.energy"]) + energy,
        "bills.in_all": float(given["bills.in_all"]) + energy + rest,
        "capital.own_loss": float(typed) + steamer,
        "capital.own_loss_given": 1.0,
    }


def typed_yield(given: Given, rows: list[int], efficiency: list[float]) -> Edits:
    """A crop by efficiency, typed for some recipes."""
    table = np.array(given["recipe.efficiency_given"], dtype=float)
    table[rows] = efficiency
    return {"crop.yield_given": "biological efficiency", "recipe.efficiency_given": table}


def typed_loss(given: Given, now: Results, rows: list[int], lost: float) -> Edits:
    """A loss in the spawn run, typed for some recipes; own spawn's comes on top of what is typed."""
    table = np.array(given["recipe.loss_in_spawn_run"], dtype=float)
    table[rows] = lost - float(now["spawn_source.extra_loss_counted"])
    return {"crop.losses_given": "step by step", "recipe.loss_in_spawn_run": table}


def as_stop(given: Given, now: Results, flushes: int) -> Way:
    """Bags leave after so many flushes; days and weights are those of the sheet Flushes."""
    stays = float(now["flushes.days"][flushes - 1]) - float(given["crop.turn_round_days"])
    efficiency = [float(each) for each in now["flushes.efficiency"]]
    edits = {
        "crop.flushes_kept": float(flushes),
        "crop.days_given": "in one number",
        "crop.own_days_until_dumped": float(given["crop.spawn_run_days"]) + stays,
        **typed_yield(given, chosen_rows(given), efficiency),
    }
    lost = float(now["crop.chosen_loss_in_spawn_run"])
    return run(given, now, edits | typed_loss(given, now, chosen_rows(given), lost))


def with_recipe(given: Given, now: Results, mix: int) -> Way:
    """Another recipe is chosen; its loss, its crop and the cost of its bag are those of the sheet Recipes."""
    edits = {
        "mix.chosen_recipe": given["recipe.name"][mix],
        "bag.counted": "one figure",
        "bag.own_material_cost": float(now["recipes.materials"][mix]),
        **typed_yield(given, [mix], [float(each) for each in now["recipes.efficiency"][mix]]),
        **typed_loss(given, now, [mix], float(now["recipes.loss"][mix])),
    }
    return run(given, now, edits)


def with_steamer(given: Given, now: Results) -> Way:
    """The other steamer is in use; spawn run, yield and readings of the one in use say nothing of it."""
    in_vessel, rows = same(given["steamer.kind"], "pressure vessel"), chosen_rows(given)
    edits = {
        "steamer.kind": "cabinet" if in_vessel else "pressure vessel",
        "energy.own_added_peak_given": 0.0,
        **typed_yield(given, rows, [float(each) for each in now["crop.efficiency"]]),
        **typed_loss(given, now, rows, float(now["crop.chosen_loss_in_spawn_run"])),
    }
    return run(given, now, edits)
