"""A second, plain working-out of the farm, made from its description alone, against which the model is held."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from tests.twin.farm_twin_ahead import the_next_weeks
from tests.twin.farm_twin_bag import bags, mixing
from tests.twin.farm_twin_bank import crosswalk, the_bank
from tests.twin.farm_twin_beside import beside_the_plan
from tests.twin.farm_twin_buy_in import other_spawn
from tests.twin.farm_twin_calendar import calendar
from tests.twin.farm_twin_change_ranks import change_ranks
from tests.twin.farm_twin_choice import make_or_buy, make_or_buy_turn, make_or_buy_worth
from tests.twin.farm_twin_climate import climate
from tests.twin.farm_twin_compared import compared
from tests.twin.farm_twin_cook import cabinet_cook, cook_curve, core_heating, lethal_rates, vessel_cook
from tests.twin.farm_twin_cost import equipment_cost, growing_cost, lost_bags
from tests.twin.farm_twin_crop import crop, harvest, spawn
from tests.twin.farm_twin_customers import customers
from tests.twin.farm_twin_decisions import decisions
from tests.twin.farm_twin_flushes import as_it_is, flushes, stop_choice
from tests.twin.farm_twin_ground import Given, Numbers, Results
from tests.twin.farm_twin_hours import hours, picking, tasks
from tests.twin.farm_twin_lab import own_spawn, own_spawn_way, own_spawn_work, spawn_source, spawn_supply, to_steam
from tests.twin.farm_twin_limits import busiest, floor_price, limits, one_more
from tests.twin.farm_twin_loans import loans_by_month
from tests.twin.farm_twin_months import months
from tests.twin.farm_twin_other_recipe import recipe_beside, recipe_choice, recipe_turn, recipes_by_bag
from tests.twin.farm_twin_other_steamer import steamer_gap, steamer_whole
from tests.twin.farm_twin_recipe import plan, recipe_checks, recipes, supplement
from tests.twin.farm_twin_reverse import to_lose
from tests.twin.farm_twin_rooms import fruiting_room, incubation_room
from tests.twin.farm_twin_safety import safety, sales_tests
from tests.twin.farm_twin_statements import statements
from tests.twin.farm_twin_steam import cabinet_heat, vessel_heat
from tests.twin.farm_twin_steam_cost import cabinet_cost, steamer_in_use, vessel_cost
from tests.twin.farm_twin_steam_run import cabinet_run, steaming, vessel_run
from tests.twin.farm_twin_steamers import cabinet_year, steamer_choice, vessel_year
from tests.twin.farm_twin_stress import best_customer, cases_short, cases_uncovered, when_enough
from tests.twin.farm_twin_trials import trials
from tests.twin.farm_twin_water import altitude_boiling, altitude_pressure, site, vessel_steam, wanted_steam
from tests.twin.farm_twin_weeks import weeks
from tests.twin.farm_twin_year import bills, capital, year

__all__ = ["CHOICES", "SUBJECTS", "choices", "schedule", "twin", "whole_plan", "worked"]

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
    safety,
    sales_tests,
    year,
    one_more,
    floor_price,
    limits,
    decisions,
    compared,
    busiest,
    trials,
    flushes,
    recipe_beside,
    recipes_by_bag,
    recipe_turn,
    steamer_gap,
    calendar,
    loans_by_month,
)
"""In the order in which a farm is worked out: each may use what came before."""

CHOICES: Final[tuple[Subject, ...]] = (
    stop_choice,
    as_it_is,
    recipe_choice,
    steamer_whole,
    change_ranks,
    best_customer,
    cases_short,
    cases_uncovered,
)
"""What is chosen among whole farms run in other ways."""


def worked(inputs: Given) -> Results:
    """The farm as it is, subject by subject."""
    out: Results = {}
    for subject in SUBJECTS:
        out |= subject(inputs, out)
    return out


def twin(inputs: Given) -> dict[str, Numbers]:
    """Every worked line and check of the farm by its dotted name, in metric units, over its axes in their order.

    `inputs` holds, by dotted name and in metric units, numbers (zero where none stands or the row is spare), words, and
    the lists of names; beside an optional number stands `<name>_given`, 1 where it was typed. A line that shows one of
    several sentences is given as the place of the sentence, from 1.
    """
    out = worked(inputs)
    out |= other_spawn(inputs, out, worked)
    return {name: np.asarray(value, dtype=float) for name, value in out.items()}


def schedule(inputs: Given, found: Results) -> dict[str, Numbers]:
    """Every week of the plan, as `twin` gives the other lines, which are `found`."""
    return {name: np.asarray(value, dtype=float) for name, value in weeks(inputs, found).items()}


PLAN: Final[tuple[Subject, ...]] = (
    *(weeks, months, when_enough, to_lose, statements, beside_the_plan, the_next_weeks),
    *(the_bank, crosswalk),
)
"""What the plan is made of, after the loans."""


def whole_plan(inputs: Given, found: Results) -> dict[str, Numbers]:
    """Weeks, months and what is read from them, as `twin` gives the other lines, which are `found`."""
    out, more = {**found}, Results()
    for subject in PLAN:
        one = subject(inputs, out)
        out, more = {**out, **one}, {**more, **one}
    return {name: np.asarray(value, dtype=float) for name, value in more.items()}


def choices(inputs: Given, found: Results, ways: Results) -> dict[str, Numbers]:
    """What is chosen, and by how much, as `twin` gives the other lines, which are `found`.

    `ways` holds what the years of the farm run in other ways come to: bags, profit and takings. Working these out takes
    the whole twin once more for each, and is left to those who ask for it.
    """
    out, more = {**found, **ways}, Results()
    for subject in CHOICES:
        one = subject(inputs, out)
        out, more = {**out, **one}, {**more, **one}
    return {name: np.asarray(value, dtype=float) for name, value in more.items()}
