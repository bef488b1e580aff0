"""A second, plain working-out of the farm, made from its description alone, against which the model is held."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from tests.twin.farm_twin_bag import bags, mixing
from tests.twin.farm_twin_buy_in import other_spawn
from tests.twin.farm_twin_changes import changes
from tests.twin.farm_twin_choice import make_or_buy, make_or_buy_turn, make_or_buy_worth
from tests.twin.farm_twin_climate import climate
from tests.twin.farm_twin_compared import compared
from tests.twin.farm_twin_cook import cabinet_cook, cook_curve, core_heating, lethal_rates, vessel_cook
from tests.twin.farm_twin_cost import equipment_cost, growing_cost, lost_bags
from tests.twin.farm_twin_crop import crop, harvest, spawn
from tests.twin.farm_twin_customers import customers
from tests.twin.farm_twin_decisions import decisions
from tests.twin.farm_twin_ground import Given, Numbers, Results
from tests.twin.farm_twin_hours import hours, picking, tasks
from tests.twin.farm_twin_lab import own_spawn, own_spawn_way, own_spawn_work, spawn_source, spawn_supply, to_steam
from tests.twin.farm_twin_limits import busiest, floor_price, limits, one_more
from tests.twin.farm_twin_recipe import plan, recipe_checks, recipes, supplement
from tests.twin.farm_twin_rooms import fruiting_room, incubation_room
from tests.twin.farm_twin_steam import cabinet_heat, vessel_heat
from tests.twin.farm_twin_steam_cost import cabinet_cost, steamer_in_use, vessel_cost
from tests.twin.farm_twin_steam_run import cabinet_run, steaming, vessel_run
from tests.twin.farm_twin_steamers import cabinet_year, steamer_choice, vessel_year
from tests.twin.farm_twin_trials import trials
from tests.twin.farm_twin_water import altitude_boiling, altitude_pressure, site, vessel_steam, wanted_steam
from tests.twin.farm_twin_year import bills, capital, year

__all__ = ["SUBJECTS", "twin"]

Subject = Callable[[Given, Results], Results]

SUBJECTS: Final[tuple[Subject, ...]] = (
    plan,
    recipes,
    recipe_checks,
    supplement,
    bags,
    site,
    altitude_boiling,
    wanted_steam,
    altitude_pressure,
    steaming,
    cabinet_heat,
    vessel_steam,
    vessel_heat,
    spawn_source,
    crop,
    spawn,
    own_spawn_way,
    own_spawn,
    to_steam,
    cabinet_run,
    cabinet_cost,
    vessel_run,
    vessel_cost,
    steamer_in_use,
    lethal_rates,
    core_heating,
    cabinet_cook,
    vessel_cook,
    cook_curve,
    own_spawn_work,
    spawn_supply,
    mixing,
    harvest,
    growing_cost,
    lost_bags,
    cabinet_year,
    vessel_year,
    steamer_choice,
    make_or_buy,
    make_or_buy_worth,
    make_or_buy_turn,
    equipment_cost,
    incubation_room,
    fruiting_room,
    climate,
    customers,
    picking,
    tasks,
    hours,
    capital,
    bills,
    year,
    one_more,
    floor_price,
    limits,
    decisions,
    compared,
    busiest,
    trials,
)
"""In the order in which a farm is worked out: each may use what came before."""
ALTERNATIVES: Final = (changes, other_spawn)
"""Whole farms beside the farm: each is given what works one out."""


def worked(inputs: Given) -> Results:
    """One farm, without what else it might be."""
    out: Results = {}
    for subject in SUBJECTS:
        out |= subject(inputs, out)
    return out


def twin(inputs: Given, *, alternatives: bool = False) -> dict[str, Numbers]:
    """Every worked line and check of the farm by its dotted name, in metric units, over its axes in their order.

    `inputs` holds, by dotted name and in metric units, numbers (zero where none stands or the row is spare), words, and
    the lists of names; beside an optional number stands `<name>_given`, 1 where it was typed. A line that shows one of
    several sentences is given as the place of the sentence, from 1. With `alternatives` the farm is worked out anew for each
    of them too, its lines under their names.
    """
    out = worked(inputs)
    for further in ALTERNATIVES if alternatives else ():
        out |= further(inputs, out, worked)
    return {name: np.asarray(value, dtype=float) for name, value in out.items()}
