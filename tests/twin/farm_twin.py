"""A second, plain working-out of the farm, made from its description alone, against which the model is held."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from tests.twin.farm_twin_bag import bags, mixing
from tests.twin.farm_twin_choice import make_or_buy, make_or_buy_turn, make_or_buy_worth
from tests.twin.farm_twin_cook import cabinet_cook, core_heating, lethal_rates, vessel_cook
from tests.twin.farm_twin_cost import growing_cost, lost_bags
from tests.twin.farm_twin_crop import crop, harvest, spawn
from tests.twin.farm_twin_ground import Given, Numbers, Results
from tests.twin.farm_twin_lab import own_spawn, own_spawn_way, own_spawn_work, spawn_source, spawn_supply
from tests.twin.farm_twin_recipe import plan, recipe_checks, recipes, supplement
from tests.twin.farm_twin_steam import cabinet_cost, cabinet_heat, cabinet_run

__all__ = ["SUBJECTS", "twin"]

Subject = Callable[[Given, Results], Results]

ALWAYS = "farm.wage"
OWN_SPAWN = "spawn_source.supply"
SUBJECTS: Final[tuple[tuple[str, Subject], ...]] = (
    (ALWAYS, plan),
    (ALWAYS, recipes),
    (ALWAYS, recipe_checks),
    (ALWAYS, supplement),
    (ALWAYS, bags),
    (ALWAYS, mixing),
    (ALWAYS, cabinet_heat),
    (ALWAYS, cabinet_run),
    (ALWAYS, cabinet_cost),
    ("lethal_rates.z_value", lethal_rates),
    ("core_heating.thickness", core_heating),
    ("cabinet_cook.cabinet_step", cabinet_cook),
    ("vessel_cook.vessel_step", vessel_cook),
    (OWN_SPAWN, spawn_source),
    (ALWAYS, crop),
    (ALWAYS, spawn),
    (OWN_SPAWN, own_spawn_way),
    (OWN_SPAWN, own_spawn),
    (OWN_SPAWN, own_spawn_work),
    (OWN_SPAWN, spawn_supply),
    (ALWAYS, harvest),
    (ALWAYS, growing_cost),
    (ALWAYS, lost_bags),
    ("make_or_buy.lab_price", make_or_buy),
    ("make_or_buy.lab_price", make_or_buy_worth),
    ("make_or_buy_turn.bad_made", make_or_buy_turn),
)
"""In the order in which a farm is worked out, each after what it rests on, and the input without which it falls out."""


def twin(inputs: Given) -> dict[str, Numbers]:
    """Every worked line and check of the farm by its dotted name, in metric units, over its axes in their order.

    `inputs` holds, by dotted name and in metric units, numbers (zero where none stands or the row is spare), words, and
    the lists of names; beside an optional number stands `<name>_given`, 1 where it was typed. A line that shows one of
    several sentences is given as the place of the sentence, from 1.
    """
    out: Results = {}
    for needed, subject in SUBJECTS:
        if needed in inputs:
            out |= subject(inputs, out)
    return {name: np.asarray(value, dtype=float) for name, value in out.items()}
