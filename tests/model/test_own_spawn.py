"""Spawn made on the farm: the chain back from the bags by hand, whole plates and bags, age, hours, cost, the choice."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

import numpy as np
import pytest

from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.crop.spawn_source import BOUGHT, MADE, SpawnSource
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import (
    IN_COOKER,
    IN_STEAMER,
    ONE_GRAIN,
    ONE_GRAIN_SAWDUST,
    TWO_GRAINS,
    TWO_GRAINS_SAWDUST,
    OwnSpawnWay,
)
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.sections.declare import Input, Option
from farmbook.sections.model import Model
from tests.model import growing_case
from tests.model.growing_case import one, table
from tests.model.helpers import systems_agree
from tests.model.spawn_case import LAB, OWN, SECTIONS, made, unchanged

both_systems = pytest.mark.parametrize("system", ["metric", "us"])


@both_systems
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("own_spawn_way.has_sawdust", 1),
        ("own_spawn_way.has_second_grain", 1),
        ("own_spawn_way.generations", 3),
        ("own_spawn_way.usable_in_grain", 1.6),  # 2.0 x 80 %
        ("own_spawn_way.usable_in_sawdust", 2.0),  # 2.5 x 80 %
        ("own_spawn_way.usable_in_last", 2.0),
        ("own_spawn_way.bags_from_one", 20),  # 2.0 / 0.1
        ("own_spawn_way.grain_in_sawdust", 0.2),  # 2.5 x 8 %
        ("own_spawn_way.sawdust_from_grain", 8),  # 1.6 / 0.2
        ("own_spawn_way.usual_moisture", 0.60),
        ("own_spawn_way.moisture", 0.7),
        ("own_spawn_way.dry_spawn_per_bag", 0.03),
        ("own_spawn.lead_days", 53),
        ("own_spawn.lead_weeks", 53 / 7),
        ("own_spawn.steamed", 50),
        ("own_spawn.places_per_bag", 0.05),  # 50 for 1,000 bags
        ("own_spawn_work.fruiting_places", 1000 / 1.05),
        ("own_spawn_work.spawn_places", 50 / 1.05),
        ("own_spawn.too_old", 1),  # the second grain
        ("own_spawn_work.making_hours_in_all", 4.7),
        ("own_spawn_work.worked_hours", 8.0),  # 4.7 + 1.5 + 1.8
        ("own_spawn_work.hours_a_week", 8.0),
        ("own_spawn_work.hours_a_year", 400),
        ("own_spawn_work.growing_share_of_hours", 0.5875),
        ("own_spawn_work.cooker_runs_in_all", 3 + 1 + 1 / 3),
        ("own_spawn_work.materials_in_all", 48),
        ("own_spawn_work.cooking_cost", 13),
        ("own_spawn_work.steaming_cost", 5),  # 50 at 0.10, as a bag to fruit
        ("own_spawn_work.goods_cost", 66),
        ("own_spawn_work.work_cost", 160),
        ("own_spawn_work.yearly_bills", 1000),
        ("own_spawn_work.cost_a_year", 12300),  # (66 + 160) x 50 + 1,000
        ("own_spawn_work.cost_per_weight", 12300 / 4900),
        ("own_spawn_work.cost_per_bag_inoculated", 1230 / 4900),
    ],
)
def test_own_spawn_by_hand(system: str, name: str, by_hand: float) -> None:
    assert one(unchanged(system), name) == pytest.approx(by_hand, rel=1e-12)


@both_systems
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        # sawdust spawn, second grain, grain, plate
        ("own_spawn_way.step", [1, 2, 3, 4]),
        ("own_spawn_way.is_sawdust", [1, 0, 0, 0]),
        ("own_spawn_way.is_second_grain", [0, 1, 0, 0]),
        ("own_spawn_way.is_grain", [0, 0, 1, 0]),
        ("own_spawn_way.used_here", [1, 1, 1, 1]),
        ("own_spawn_way.used_so_far", [1, 2, 3, 4]),
        ("own_spawn_way.generation_number", [3, 2, 1, 0]),
        ("own_spawn_way.grain_from_one", [0, 5, 4, 0]),
        ("own_spawn_way.started_from_one", [8, 5, 4, 0]),
        ("own_spawn.wanted", [49, 6.25, 1.6, 0.5]),  # 98 / 2; 50 / 8; 8 / 5; 2 / 4
        ("own_spawn.needed", [50, 7.8125, 2, 1]),  # over what is left of each after failures
        ("own_spawn.needed_for_batch", [50, 7.8125, 4, 2.5]),
        ("own_spawn.started_in_batch", [50, 8, 4, 3]),
        ("own_spawn.left_over", [0, 0.1875, 0, 0.5]),
        ("own_spawn.weeks_lasting", [1, 1.024, 2, 3]),
        ("own_spawn.keeps", [1, 0, 1, 1]),  # the second grain keeps 7 days and its last bag is used on day 7.2
        ("own_spawn.weeks_keeping", [30 / 7, 1, 30 / 7, 60 / 7]),
        ("own_spawn.thrown_out", [0, 0.1875, 0, 0]),
        ("own_spawn.started", [50, 8, 2, 1]),
        ("own_spawn.weeks_used", [1, 1, 2, 3]),  # the second grain is thrown out after a week
        ("own_spawn.batches", [1, 1, 0.5, 1 / 3]),
        ("own_spawn.taken_from_before", [6.25, 1.6, 0.5, 0]),
        ("own_spawn.wanted_before", [6.25, 1.6, 0.5, 0]),
        ("own_spawn.days_taken", [17, 11, 13, 12]),
        ("own_spawn.days_before", [17, 28, 41, 53]),
        ("own_spawn_work.making_hours", [2.5, 1.6, 0.5, 0.1]),
        ("own_spawn_work.setting_up_hours", [0.5, 0.4, 0.3, 0.3]),
        ("own_spawn_work.materials", [25, 16, 6, 1]),
        ("own_spawn_work.pressure_cooked", [0, 1, 1, 1]),
        ("own_spawn_work.runs_for_batch", [0, 3, 2, 1]),  # 8, 4 and 3, by 3, 3 and 10
        ("own_spawn_work.cooker_runs", [0, 3, 1, 1 / 3]),
    ],
)
def test_generations_by_hand(system: str, name: str, by_hand: list[float]) -> None:
    assert table(unchanged(system), name) == pytest.approx(by_hand, rel=1e-12, abs=1e-12)


NOTHING_FAILS: Final[Mapping[Input, Any]] = {OwnSpawn.failure: [0, 0, 0, 0], OwnSpawn.shelf_life: [365, 365, 365, 365]}
GRAIN_WEIGHT = 98 / 1.6  # good bags of grain a week where grain goes into the bags
SAWDUST_BAGS = 98 / 2


@both_systems
@pytest.mark.parametrize(
    ("route", "started", "generations", "days"),
    [
        (ONE_GRAIN, [0, 0, GRAIN_WEIGHT, GRAIN_WEIGHT / 4], 1, [0, 0, 13, 25]),
        (TWO_GRAINS, [0, GRAIN_WEIGHT, GRAIN_WEIGHT / 5, GRAIN_WEIGHT / 20], 2, [0, 11, 24, 36]),
        (ONE_GRAIN_SAWDUST, [SAWDUST_BAGS, 0, SAWDUST_BAGS / 8, SAWDUST_BAGS / 32], 2, [17, 17, 30, 42]),
        (
            TWO_GRAINS_SAWDUST,
            [SAWDUST_BAGS, SAWDUST_BAGS / 8, SAWDUST_BAGS / 40, SAWDUST_BAGS / 160],
            3,
            [17, 28, 41, 53],
        ),
    ],
)
def test_every_way_from_plate_to_bags(
    system: str, route: str, started: list[float], generations: int, days: list[float]
) -> None:
    found = made({OwnSpawnWay.route: route, **NOTHING_FAILS}, system)
    assert table(found, "own_spawn.started") == pytest.approx(started, rel=1e-12)
    assert one(found, "own_spawn_way.generations") == generations
    assert table(found, "own_spawn.days_before") == pytest.approx(days, rel=1e-12)
    sawdust = started[0] > 0
    assert one(found, "own_spawn_way.usual_moisture") == (0.60 if sawdust else 0.48)
    assert one(found, "own_spawn_way.usable_in_last") == pytest.approx(2.0 if sawdust else 1.6)
    assert one(found, "own_spawn.steamed") == pytest.approx(started[0])


def test_sawdust_spawn_in_the_cooker_takes_no_place_in_the_steamer() -> None:
    found = made({OwnSpawnWay.sawdust_cooked_in: IN_COOKER})
    assert one(found, "own_spawn_work.fruiting_places") == 1000
    assert one(found, "own_spawn_work.spawn_places") == 0
    assert one(found, "own_spawn_work.steaming_cost") == 0
    assert table(found, "own_spawn_work.cooker_runs") == pytest.approx([5, 3, 1, 1 / 3])  # 50 bags by 10


def test_places_in_a_load_need_no_trying_out() -> None:
    """A load is fruiting bags and their spawn, and the fruiting bags times the spawn for each is that spawn."""
    found = made({Farm.bags_per_load: 300})
    fruiting, spawn = one(found, "own_spawn_work.fruiting_places"), one(found, "own_spawn_work.spawn_places")
    assert fruiting + spawn == pytest.approx(300)
    assert spawn / fruiting == pytest.approx(50 / 1000)


@both_systems
@pytest.mark.parametrize(
    ("supply", "cooked_in", "places"), [(MADE, IN_STEAMER, 1050), (MADE, IN_COOKER, 1000), (BOUGHT, IN_STEAMER, 1000)]
)
def test_spawn_steamed_with_the_bags_is_part_of_the_loads(
    system: str, supply: str, cooked_in: str, places: float
) -> None:
    """1,000 bags to fruit and 50 bags of spawn, in loads of 400 in the cabinet and 100 in the vessel."""
    loads: dict[Input, Any] = {Farm.bags_per_load: 400, VesselHeat.bags_per_run: 100}
    found = made({SpawnSource.supply: supply, OwnSpawnWay.sawdust_cooked_in: cooked_in, **loads}, system)
    assert one(found, "to_steam.places") == pytest.approx(places)
    assert one(found, "cabinet_run.loads_a_week") == pytest.approx(places / 400)
    assert one(found, "vessel_run.loads_a_week") == pytest.approx(places / 100)
    assert one(found, "cabinet.loads_a_month") == pytest.approx(places / 400 * 50 / 12)
    possible = one(found, "cabinet_run.bags_possible")
    assert one(found, "steamer_in_use.room_to_spare") == pytest.approx(possible / places - 1)


@pytest.mark.parametrize(("supply", "fits"), [(BOUGHT, 1), (MADE, 0)])
def test_a_steamer_full_of_bags_has_no_place_for_spawn(supply: Option, fits: int) -> None:
    loads = one(unchanged("metric"), "cabinet_run.loads_possible")
    full = made({SpawnSource.supply: supply, Farm.bags_per_load: 1000 / loads})
    assert one(full, "cabinet_run.loads_fit") == fits


@both_systems
@pytest.mark.parametrize("supply", [BOUGHT, MADE])
def test_own_spawn_pays_for_what_it_adds_to_the_steamer_and_for_no_more(system: str, supply: Option) -> None:
    """36 kW at 10 a month are 4,320 a year, there with or without the spawn: 0.0864 for each of 50,000 bags.

    A place takes 5 hours of 20 for a load of 1,000, an hour to watch and four to load: 0.10.
    """
    found = made({SpawnSource.supply: supply, Energy.demand_charge: 10, CabinetRun.power: 36}, system)
    assert one(found, "cabinet.place_cost") == pytest.approx(0.1)
    assert one(found, "cabinet.demand_cost_per_bag") == pytest.approx(0.0864)
    assert one(found, "own_spawn_work.steaming_cost") == pytest.approx(50 * 0.1)
    spent = one(found, "steamer_in_use.loads_a_week") * one(found, "steamer_in_use.cost_per_run")
    shared_out = 1000 * one(found, "steamer_in_use.cost_per_bag") + one(found, "to_steam.spawn") * 0.1
    assert spent == pytest.approx(shared_out)
    assert spent == pytest.approx(4320 / 50 + (105 if supply == MADE else 100))


@both_systems
def test_sawdust_spawn_is_made_of_the_farms_own_mix_and_bags(system: str) -> None:
    """2.5 kg less 8 % of grain are 2.3 kg of mix at 0.08, and a bag at 0.30; fifty of them are started a week."""
    found = made({OwnSpawnWork.unit_cost: [None, 2, 3, 1]}, system)
    assert table(found, "own_spawn_work.cost_of_one") == pytest.approx([0.484, 2, 3, 1])
    assert table(found, "own_spawn_work.materials")[0] == pytest.approx(50 * 0.484)
    assert one(found, "own_spawn_work.mix_and_bag") == pytest.approx(0.484)
    dearer = made({OwnSpawnWork.unit_cost: [None, 2, 3, 1], Recipe.price: [0.2], Bag.bag_price: 0.48}, system)
    assert table(dearer, "own_spawn_work.cost_of_one") == pytest.approx([2.3 * 0.16 + 0.5, 2, 3, 1])


@both_systems
@pytest.mark.parametrize(("supply", "wet"), [(MADE, 2500 + 50 * 2.3), (BOUGHT, 2500)])
def test_a_week_of_ingredients_counts_the_spawn_made_of_them(system: str, supply: Option, wet: float) -> None:
    """40 % of the wet mix is dry, and the sawdust comes half dry, at 0.1."""
    found = made({SpawnSource.supply: supply}, system)
    assert one(found, "mixing.wet_per_week") == pytest.approx(wet)
    assert table(found, "mixing.delivered_per_week") == pytest.approx([wet * 0.4 / 0.5])
    assert table(found, "mixing.ingredient_bill_per_week") == pytest.approx([wet * 0.08])


@pytest.mark.parametrize(
    ("route", "costs", "fine"),
    [
        (TWO_GRAINS_SAWDUST, [None, 2, 3, 1], 1),
        (TWO_GRAINS_SAWDUST, [None, 0, 0, 0], 1),
        (TWO_GRAINS_SAWDUST, [0.5, None, 3, 1], 0),
        (TWO_GRAINS_SAWDUST, [0.5, 2, None, 1], 0),
        (TWO_GRAINS_SAWDUST, [0.5, 2, 3, None], 0),
        (ONE_GRAIN_SAWDUST, [0.5, None, 3, 1], 1),
        (ONE_GRAIN, [None, None, 3, 1], 1),
    ],
)
def test_materials_that_nothing_else_tells_must_be_given(route: Option, costs: list[float | None], fine: int) -> None:
    found = made({OwnSpawnWay.route: route, OwnSpawnWork.unit_cost: costs})
    assert one(found, "own_spawn_work.materials_given") == fine


def test_a_bag_of_grain_makes_ten_and_feeds_nineteen() -> None:
    """What the trade says of grain (common practice, no source) comes out of the defaults."""
    found = growing_case.worked({OwnSpawnWay.route: TWO_GRAINS_SAWDUST}, sections=SECTIONS)
    assert table(found, "own_spawn_way.started_from_one") == pytest.approx([19, 10, 4, 0])
    assert one(found, "own_spawn.lead_days") == 55  # from memory: some 55 days of lead


@both_systems
@pytest.mark.parametrize("draw", range(8))
def test_whole_plates_and_bags_never_fall_short(system: str, draw: int) -> None:
    """Whatever the farm: whole batches, less than one left over, and enough good ones for the step after."""
    random = np.random.default_rng(draw)
    changes: dict[Input, Any] = {
        Farm.bags_filled_a_week: float(random.integers(1, 4000)),
        Spawn.spawn_rate: random.uniform(0.01, 0.1),
        OwnSpawnWay.route: OwnSpawnWay.route.options[random.integers(len(OwnSpawnWay.route.options))],
        OwnSpawn.failure: random.uniform(0, 0.5, 4),
        OwnSpawn.batch_weeks: random.uniform(0.5, 8, 4),
        OwnSpawn.shelf_life: random.uniform(5, 60, 4),
    }
    found = made(changes, system)
    whole, left = found["own_spawn.started_in_batch"], found["own_spawn.left_over"]
    started, used = found["own_spawn.started"], found["own_spawn_way.used_here"]
    assert np.array_equal(whole, np.rint(whole))
    assert np.all(left >= -1e-8)
    assert np.all(left < 1)
    assert np.all(started >= found["own_spawn.needed"] * (1 - 1e-9))
    assert np.all((started > 0) == (used > 0))
    assert np.all(np.diff(found["own_spawn.days_before"]) >= 0)
    good = (started * (1 - np.asarray(changes[OwnSpawn.failure])))[used > 0]
    each = found["own_spawn_way.started_from_one"][used > 0]
    assert np.all(good[1:] * each[:-1] >= started[used > 0][:-1] * (1 - 1e-9))


@both_systems
def test_a_whole_number_is_not_rounded_up_by_a_conversion(system: str) -> None:
    """98 kg in bags that hold 2 kg of use, 2 % of them lost, are fifty bags; 2 kg is no round number of pounds."""
    assert table(unchanged(system), "own_spawn.started_in_batch")[0] == 50


def test_a_third_of_a_plate_a_week_is_one_plate_with_a_long_life() -> None:
    few: dict[Input, Any] = {
        OwnSpawn.batch_weeks: [1, 1, 2, 1],
        Farm.bags_filled_a_week: 300,
        OwnSpawn.shelf_life: [30, 30, 30, 60],
    }
    found = made(few)
    assert table(found, "own_spawn.needed")[3] == pytest.approx(0.3 * 7.8125 / 5 / 0.8 / 4 / 0.5)  # 0.29
    assert table(found, "own_spawn.started_in_batch")[3] == 1
    assert table(found, "own_spawn.weeks_lasting")[3] == pytest.approx(1 / 0.29296875)
    assert table(found, "own_spawn.keeps")[3] == 1  # 24 days of 60
    stale = made({**few, OwnSpawn.shelf_life: [30, 30, 30, 20]})
    assert table(stale, "own_spawn.started")[3] == pytest.approx(7 / 20)  # what is left is thrown out after 20 days
    assert table(stale, "own_spawn.weeks_used")[3] == pytest.approx(20 / 7)
    assert table(stale, "own_spawn.thrown_out")[3] == pytest.approx(7 / 20 - 0.29296875)


@pytest.mark.parametrize("weeks", [1, 2, 3])
def test_what_is_left_over_keeps_its_shelf_life_however_often_a_batch_is_meant_to_be_started(weeks: float) -> None:
    """0.29 plates a week are one plate, good for 20 days, whether the next is meant for in one, two or three weeks."""
    found = made(
        {
            Farm.bags_filled_a_week: 300,
            OwnSpawn.batch_weeks: [1, 1, 2, weeks],
            OwnSpawn.shelf_life: [30, 30, 30, 20],
        }
    )
    assert table(found, "own_spawn.started_in_batch")[3] == 1
    assert table(found, "own_spawn.started")[3] == pytest.approx(7 / 20)


def test_spawn_that_keeps_less_long_than_its_weeks_is_started_again_when_it_is_too_old() -> None:
    """Fifty bags a week in batches for two weeks that keep one: half of each hundred is thrown out."""
    found = made({OwnSpawn.batch_weeks: [2, 1, 2, 2.5], OwnSpawn.shelf_life: [7, 30, 30, 60]})
    assert table(found, "own_spawn.started_in_batch")[0] == 100
    assert table(found, "own_spawn.started")[0] == pytest.approx(100)
    assert table(found, "own_spawn.thrown_out")[0] == pytest.approx(50)


@pytest.mark.parametrize(("days", "fine"), [(6.99, 0), (7, 1), (7.01, 1)])
def test_spawn_that_grows_too_old_is_flagged_where_it_is_made(days: float, fine: int) -> None:
    """The sawdust spawn is started for one week."""
    life: dict[Input, Any] = {OwnSpawn.shelf_life: [days, 30, 30, 60]}
    assert one(made({**life, SpawnSource.supply: MADE}), "own_spawn.young_enough") == fine
    assert one(made({**life, SpawnSource.supply: BOUGHT}), "own_spawn.young_enough") == 1


@pytest.mark.parametrize(
    ("route", "limit", "fine"),
    [
        (TWO_GRAINS_SAWDUST, 3, 1),
        (TWO_GRAINS_SAWDUST, 2, 0),
        (TWO_GRAINS, 2, 1),
        (ONE_GRAIN_SAWDUST, 1, 0),
        (ONE_GRAIN, 1, 1),
    ],
)
def test_too_many_generations_are_flagged_where_it_is_made(route: Option, limit: int, fine: int) -> None:
    changes: dict[Input, Any] = {OwnSpawnWay.route: route, OwnSpawnWay.generation_limit: limit}
    assert one(made({**changes, SpawnSource.supply: MADE}), "own_spawn_way.few_generations") == fine
    assert one(made(changes), "own_spawn_way.few_generations") == 1


def test_own_hours_win_and_share_out_like_the_worked_ones() -> None:
    found = made({OwnSpawnWork.own_hours: 12})
    assert one(found, "own_spawn_work.worked_hours") == pytest.approx(8)
    assert one(found, "own_spawn_work.work_cost") == pytest.approx(240)
    assert one(found, "own_spawn_work.cost_a_year") == pytest.approx((66 + 240) * 50 + 1000)


def test_no_spawn_wanted_takes_nothing() -> None:
    found = made({Spawn.spawn_rate: 0})
    for name in ("started", "batches", "weeks_lasting"):
        assert table(found, f"own_spawn.{name}") == [0, 0, 0, 0]
    assert one(found, "own_spawn_work.cost_per_weight") == 0
    assert one(found, "own_spawn_work.worked_hours") == pytest.approx(1.8)


@pytest.mark.parametrize(("supply", "made_here"), [(BOUGHT, 0), (MADE, 1)])
def test_the_choice_feeds_the_farm(supply: Option, made_here: int) -> None:
    found = made({SpawnSource.supply: supply})
    expected = {
        "spawn_source.made": made_here,
        "spawn_source.extra_loss_counted": 0.02 * made_here,
        "spawn_supply.cost_per_bag_inoculated": 1230 / 4900 if made_here else 0.625,
        "spawn_supply.dry_spawn_per_bag": 0.03 if made_here else 0.05,
        "spawn_supply.hours_a_week": 8 * made_here,
        "to_steam.spawn": 50 * made_here,
        "spawn_supply.lead_weeks": 53 / 7 if made_here else 2,
    }
    assert {name: one(found, name) for name in expected} == pytest.approx(expected)


def test_units_agree_in_both_kinds_of_book() -> None:
    given = {**growing_case.GIVEN, **LAB, SpawnSource.supply: MADE}
    assert systems_agree(SECTIONS, given, growing_case.NAMES) == []


def test_every_line_says_what_it_is() -> None:
    model = Model(SECTIONS)
    lines = [line for section in OWN for line in model.section(section).lines]
    labels = [line.label for line in model.lines]
    assert [line.name for line in lines if not line.note or labels.count(line.label) > 1] == []
