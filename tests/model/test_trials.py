"""What is tried, worked by hand on a farm of round numbers: spawn rate, bag, spawn run, places, hours, loads, ready-made bags."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from farmbook.interpret.numbers import Array
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import MADE, SpawnSource
from farmbook.model.labour.hours import PAID, Hours
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.selling.customers import Customers
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.trials.bag_tried import BagTried
from farmbook.model.trials.buy_in import BuyIn
from farmbook.model.trials.run_days import RunDaysTrial
from farmbook.model.trials.spawn_rate import SpawnRateTrial
from farmbook.model.trials.widenings_tried import HoursTrial, LoadsTrial, PlacesTrial
from farmbook.sections.declare import Input
from tests.model.growing_case import one
from tests.model.trials_case import FULL, tried

Changes = Mapping[Input, Any]

ROOMY: Changes = {IncubationRoom.own_places: 6000}
"""The incubation room is known and limits nothing."""
MORE_SPAWN: Changes = {
    SpawnRateTrial.spawn_rate: 0.08,
    SpawnRateTrial.days_saved: 3,
    SpawnRateTrial.loss_saved: 0.02,
}


def agrees(found: Mapping[str, Array], section: str, **by_hand: float) -> None:
    assert {name: one(found, f"{section}.{name}") for name in by_hand} == pytest.approx(by_hand, rel=1e-9, abs=1e-9)


def says(found: Mapping[str, Array], name: str, *words: str) -> None:
    said = str(found[name])
    assert all(each in said for each in words), said


def test_the_farm_is_as_it_is_reckoned() -> None:
    found = tried(FULL)
    agrees(found, "one_more", bag_in_money=1.125, bag_leaves=3.375, grown_in_money=0)
    agrees(found, "limits", first=1000, second=10000 / 4.5, until_next=10000 / 4.5 - 1000, spare=0)
    agrees(found, "one_fewer", takes_away=3.375)


# Spawn rate


def test_more_spawn_where_nothing_limits() -> None:
    """0.1 kg more at 6.25 in 50,000 bags against 1,000 bags saved, at what was spent on them."""
    found = tried(MORE_SPAWN)
    agrees(found, "spawn_rate_trial", cost_now=0.625, cost_tried=1.25, spawn_more=31250, days=18, loss=0.08)
    agrees(found, "spawn_rate_trial", bags_saved=1000, saved_worth=1125, more_worth=0, fewer_cost=0)
    agrees(found, "spawn_rate_trial", gained=1125, spent=31250, change=-30125, outcome=1)
    says(found, "spawn_rate_trial.told", "Spawn at 8.0% does not pay: ", "30,100 a year less.")


def test_more_spawn_in_a_full_incubation_room() -> None:
    """18 days in place of 21 make room for a sixth more bags; each of them gets the dearer spawn. A bag saved is worth 5: the
    4.50 that it brings is spread over nine of ten, with what was spent on those lost.
    """
    found = tried({**FULL, **MORE_SPAWN})
    more = 1000 / 6
    agrees(found, "spawn_rate_trial", places=18000 / 7, freed=3000 / 7, ceiling=7000 / 6, bags_more=more)
    agrees(found, "spawn_rate_trial", more_worth=more * 50 * 3.375, saved_worth=5000, bags=50000 + more * 50)
    agrees(found, "spawn_rate_trial", spent=(50000 + more * 50) * 0.625, gained=28125 + 5000)
    says(found, "spawn_rate_trial.told", "is too close to call.")
    cheap = tried({**FULL, **MORE_SPAWN, Spawn.price: 1, Spawn.freight: 0})
    agrees(cheap, "spawn_rate_trial", weight_costs=1.25, outcome=2)
    says(cheap, "spawn_rate_trial.told", " pays: ", " a year more.")


def test_bags_more_go_no_further_than_the_next_stage() -> None:
    """Customers take 495 kg a week: 1,100 bags."""
    found = tried({**FULL, **MORE_SPAWN, Customers.most_a_week: 495})
    agrees(found, "limits", until_next=100)
    agrees(found, "spawn_rate_trial", bags_more=100, more_worth=100 * 50 * 3.375)


def test_less_spawn_and_a_longer_run() -> None:
    """Half the spawn, three days longer, one in a hundred more lost."""
    less: Changes = {
        SpawnRateTrial.spawn_rate: 0.02,
        SpawnRateTrial.days_saved: -3,
        SpawnRateTrial.loss_saved: -0.01,
    }
    found = tried({**ROOMY, **less})
    agrees(found, "spawn_rate_trial", gained=15625, spent=562.5, fewer_cost=0, outcome=2)
    # 24 days leave places for 875 bags: 125 fewer, and 500 of the others lost with their crop.
    full = tried({**FULL, **less})
    agrees(full, "spawn_rate_trial", bags_fewer=125, fewer_cost=125 * 50 * 3.375, saved_worth=-2500)
    agrees(full, "spawn_rate_trial", gained=0.3125 * 43750, spent=125 * 50 * 3.375 + 2500, outcome=1)


@pytest.mark.parametrize(
    "changes",
    [{SpawnRateTrial.spawn_rate: 0.04}, {SpawnRateTrial.spawn_rate: None}, {Farm.bags_filled_a_week: None}],
    ids=["the rate of now", "no rate", "no bags"],
)
def test_no_other_spawn_rate_changes_nothing(changes: Changes) -> None:
    found = tried({**FULL, **MORE_SPAWN, **changes})
    agrees(found, "spawn_rate_trial", tried=0, change=0, gained=0, spent=0, days=21, loss=0.1)
    says(found, "spawn_rate_trial.told", "is the rate of now: nothing is changed.")


def test_spawn_where_none_is_used_costs_what_it_would() -> None:
    found = tried({**MORE_SPAWN, Spawn.spawn_rate: 0})
    agrees(found, "spawn_rate_trial", cost_now=0, cost_tried=1.25, weight_costs=6.25)


def test_own_spawn_costs_its_goods_by_weight() -> None:
    found = tried({**MORE_SPAWN, SpawnSource.supply: MADE.label})
    goods = one(found, "own_spawn_work.goods_cost") / one(found, "spawn.spawn_a_week")
    agrees(found, "spawn_rate_trial", weight_costs=goods, cost_now=0.1 * goods, cost_tried=0.2 * goods)
    assert 0 < goods < 6.25


def test_no_more_bags_are_saved_than_are_lost_and_a_run_takes_a_day() -> None:
    found = tried({**MORE_SPAWN, SpawnRateTrial.loss_saved: 0.5, SpawnRateTrial.days_saved: 40})
    agrees(found, "spawn_rate_trial", loss=0, bags_saved=5000, days=1)


# Spawn run


def test_a_longer_run_in_a_full_room_loses_bags() -> None:
    found = tried({**FULL, RunDaysTrial.run_days: 25})
    agrees(found, "run_days_trial", places=25000 / 7, ceiling=840, bags_fewer=160, bags=-160, limits_then=1)
    agrees(found, "run_days_trial", change=-27000, a_day=6750, apart=0.16, outcome=2)
    says(found, "run_days_trial.told", "25 days matters: 160 bags fewer a week, ", "27,000 a year less")


def test_a_shorter_run_in_a_full_room_gains_bags() -> None:
    found = tried({**FULL, RunDaysTrial.run_days: 18})
    agrees(found, "run_days_trial", bags=1000 / 6, change=28125, a_day=9375, outcome=2)
    says(found, "run_days_trial.told", "18 days matters: 167 bags more a week, ", "28,100 a year more")


def test_a_run_a_day_longer_is_too_close_to_call() -> None:
    found = tried({**FULL, RunDaysTrial.run_days: 22})
    agrees(found, "run_days_trial", bags=-1000 / 22, outcome=1)
    says(found, "run_days_trial.told", "22 days is too close to call")


def test_a_room_with_places_to_spare_loses_nothing() -> None:
    found = tried({**ROOMY, RunDaysTrial.run_days: 25})
    agrees(found, "run_days_trial", bags=0, change=0, a_day=0, limits_then=1)
    says(found, "run_days_trial.told", "25 days changes nothing.")
    tight = tried({**ROOMY, RunDaysTrial.run_days: 25, FruitingRoom.own_places: 1600})
    agrees(tight, "run_days_trial", others=1600 * 7 / 10.8, limits_then=0)


def test_fullest_days_are_told_where_the_average_fits() -> None:
    """Loads of 500 come twice a week: on 25 whole days 7.1 of them, so 8 at times; 3,800 places hold the average only."""
    found = tried({IncubationRoom.own_places: 3800, Farm.bags_per_load: 500, RunDaysTrial.run_days: 25})
    agrees(found, "run_days_trial", bags=0, peak_loads=8, at_peak=4000, short=200)
    says(found, "run_days_trial.told", "changes nothing, but places are short when it is fullest.")


@pytest.mark.parametrize("days", [21, None], ids=["as now", "none"])
def test_no_other_run_changes_nothing(days: float | None) -> None:
    found = tried({**FULL, RunDaysTrial.run_days: days})
    agrees(found, "run_days_trial", tried=0, bags=0, change=0)
    says(found, "run_days_trial.told", "21 days is that of now: nothing is changed")


def test_an_unknown_room_cannot_be_judged() -> None:
    found = tried({RunDaysTrial.run_days: 30})
    agrees(found, "run_days_trial", bags=0, change=0, ceiling=0, limits_then=0, short=0)
    says(found, "run_days_trial.told", "cannot be judged")


def test_bags_that_no_customer_pays_for_are_no_loss() -> None:
    """At 2 a kilogram a bag brings 0.90 and costs 1.125."""
    found = tried({**FULL, RunDaysTrial.run_days: 25, Customers.price: 2})
    agrees(found, "one_fewer", takes_away=-0.225)
    agrees(found, "run_days_trial", bags=0, change=0)


# Bag

TWICE: Changes = {
    BagTried.wet_fill: 5,
    BagTried.bag_price: 0.4,
    BagTried.bag_places: 1.5,
    BagTried.efficiency: -0.1,
}


def test_a_bag_twice_as_heavy_by_what_a_weight_costs() -> None:
    """0.20 more mix, 0.12 more bag, twice the spawn: 2.07 for 0.81 kg."""
    found = tried(TWICE)
    agrees(
        found, "bag_tried", material_cost=0.82, spawn_goods=1.25, in_money=2.07, taken=0.81, weight_costs=2.07 / 0.81
    )
    agrees(
        found, "bag_trial", by_place=0, counts=1.8, bags=1000 / 1.8, gained=56250, spent=57500, change=-1250, outcome=0
    )
    says(found, "bag_trial.told", "A bag of 5.0 kg is too close to call.")
    says(found, "bag_trial.rule", "Places do not limit")


def test_a_bag_twice_as_heavy_by_what_a_place_leaves() -> None:
    """It leaves 8.10 - 2.07 in 1.5 places."""
    found = tried({**FULL, **TWICE})
    agrees(found, "bag_trial", by_place=1, left_now=3.375, left_tried=6.03, a_day_now=0.3125, bags=1000 / 1.5)
    agrees(found, "bag_trial", a_day_tried=6.03 / 0.9 / 12 / 1.5, gained=201000, spent=168750, change=32250, outcome=2)
    says(found, "bag_trial.told", "A bag of 5.0 kg pays: ", " a year more.")
    says(found, "bag_trial.rule", "Places limit")


def test_a_bag_that_gives_less_for_its_place_gives_up_what_the_last_one_brings() -> None:
    """Customers take just the crop of now, so one more would bring nothing; each weight less is missed at 10."""
    found = tried({**FULL, BagTried.wet_fill: 2.5, BagTried.efficiency: -0.2, Customers.most_a_week: 450})
    agrees(found, "bag_trial", by_place=1, less_to_sell=1, brings=10, left_now=3.375, left_tried=3.6 - 1.125)
    more = tried({**FULL, BagTried.wet_fill: 2.5, BagTried.efficiency: 0.2, Customers.most_a_week: 450})
    agrees(more, "bag_trial", less_to_sell=0, brings=0)


def test_what_is_left_empty_goes_by_weight() -> None:
    found = tried({BagTried.wet_fill: 5})
    agrees(found, "bag_tried", bigger=2, price=0.56, places=2, crop_of_it=2)


def test_handling_goes_by_the_bag_and_mixing_by_weight() -> None:
    found = tried({**TWICE, BagTried.bag_places: None})
    by_the_bag = one(found, "one_more.bench_hours") + one(found, "one_more.handling_hours")
    steaming = one(found, "one_more.steaming_hours")
    agrees(found, "bag_tried", hours_by_weight=1.2, bag_hours=1.2 + 2 * steaming + by_the_bag)


@pytest.mark.parametrize("fill", [2.5, None], ids=["as now", "none"])
@pytest.mark.parametrize("changes", [{}, FULL], ids=["by weight", "by place"])
def test_no_other_bag_changes_nothing(fill: float | None, changes: Changes) -> None:
    found = tried({**changes, BagTried.wet_fill: fill})
    agrees(found, "bag_tried", tried=0, in_money=1.125, taken=0.45, bigger=1)
    agrees(found, "bag_trial", change=0)
    says(found, "bag_trial.told", "A bag of 2.5 kg is the bag of now: nothing is changed.")


def test_a_bag_of_now_at_another_price_is_another_bag() -> None:
    found = tried({BagTried.wet_fill: 2.5, BagTried.bag_price: 0.08})
    agrees(found, "bag_tried", tried=1, in_money=0.925)
    agrees(found, "bag_trial", change=10000, outcome=2)


@pytest.mark.parametrize("changes", [{BagTried.efficiency: -1}, {Crop.trim: 1}, {Farm.bags_filled_a_week: None}])
def test_bags_that_give_nothing_cannot_be_compared(changes: Changes) -> None:
    found = tried({**TWICE, **changes})
    agrees(found, "bag_trial", compared=0)
    says(found, "bag_trial.told", "cannot be compared")


# More of a stage

ROOM: Changes = {FruitingRoom.own_places: 1500}
"""Of 1,543 places taken: so the fruiting room limits at 972 bags. One more place holds 0.648 bags a week, 109.375 a year."""


@pytest.mark.parametrize(
    ("more", "cost", "counts", "change", "words"),
    [
        (100, 5000, 100, 5937.5, "it pays, "),
        (100, 10937.5 * 0.95, 100, 10937.5 * 0.05, "too close to call."),
        (100, 20000, 100, -9062.5, "it does not pay, "),
        (4000, 5000, 1250 * 54 / 35, 1250 * 50 * 3.375 - 5000, ", only 1,929 count."),
        (0, 5000, 0, 0, "nothing is changed."),
    ],
)
def test_more_fruiting_places(more: float, cost: float, counts: float, change: float, words: str) -> None:
    found = tried({**ROOM, PlacesTrial.places_more: more, PlacesTrial.places_cost: cost})
    agrees(found, "limits", first=8750 / 9, until_next=1250)
    agrees(found, "places_trial", counts=counts, change=change, gained=counts * 109.375)
    says(found, "places_trial.told", words)


@pytest.mark.parametrize(
    ("changes", "state", "words"),
    [
        ({}, 2, "those of now are not known"),
        ({FruitingRoom.own_places: 3000}, 3, "first fill what can be filled"),
        ({FruitingRoom.own_places: 1550, IncubationRoom.own_places: 2900}, 4, "no use, not what limits"),
        ({**ROOM, Farm.bags_filled_a_week: None}, 2, "those of now are not known"),
    ],
    ids=["not known", "not full", "not what limits", "no bags"],
)
def test_more_fruiting_places_bring_nothing(changes: Changes, state: float, words: str) -> None:
    found = tried(changes)
    agrees(found, "places_trial", state=state, gained=0, counts=0)
    says(found, "places_trial.told", words)
    if state == 4:
        says(found, "widen_answer.answer", "Now limits: Incubation places.")


def test_more_hours_where_they_limit() -> None:
    """An hour brings what its bags leave, and the 12 that their hours were counted at, as none is to spare."""
    paid: Changes = {
        Hours.counted: PAID.label,
        Hours.own_hours: 20,
        Hours.hired_hours: 40,
        Farm.wage: 12,
        Farm.payroll_extra: 0,
    }
    found = tried({**paid, HoursTrial.hours_more: 10, HoursTrial.hour_cost: 15})
    agrees(found, "hours", hour_in_money=12)
    hour = one(found, "missing_hour.bag_leaves") / one(found, "hours.growing_with_a_bag") + 12
    agrees(found, "hours_trial", counts=10, gained=10 * 50 * hour, spent=10 * 50 * 15, state=7)
    own = tried({**paid, HoursTrial.hours_more: 10})
    agrees(own, "hours_trial", hour_costs=12, spent=6000)
    says(tried({HoursTrial.hours_more: 10}), "hours_trial.told", "10 more: hired as needed.")


def test_more_loads_where_they_limit() -> None:
    """Each of 100 bags that leave 3.375; beyond energy and work 60 for each."""
    few: Changes = {Farm.bags_per_load: 100, LoadsTrial.loads_more: 2}
    found = tried({**few, LoadsTrial.load_cost: 60})
    assert one(found, "limits.first") < 1000
    agrees(found, "loads_trial", counts=2, gained=2 * 50 * 337.5, spent=2 * 50 * 60, state=7)
    agrees(tried(few), "loads_trial", spent=0, state=7)


# Ready-made bags


@pytest.mark.parametrize(
    ("price", "ends", "change", "words"),
    [
        (1.2, 0, 0, "too close to call, "),
        (0.96, 0, 11250, "they pay, "),
        (1.92, 0, -33750, "they do not pay, "),
        (1.92, 60000, 26250, "they pay, "),
    ],
)
def test_ready_made_bags(price: float, ends: float, change: float, words: str) -> None:
    """A bag of one's own that is moved has cost 1.125 / 0.9 = 1.25; of 100 ready-made ones four never get there."""
    found = tried({BuyIn.ready_price: price, BuyIn.ready_lost: 0.04, BuyIn.ready_ends: ends, Hours.own_rate: 0})
    agrees(found, "buy_in", bought_in_money=1.25, ready=price / 0.96, change=change, change_in_full=change)
    agrees(found, "buy_in", ties_in_money=(1.25 + ends / 45000) * 0.96)
    says(found, "buy_in.told", words)


def test_ready_made_bags_may_pay_by_the_hours_they_free() -> None:
    """All hours are the owner's own: they cost no money, and 30 for each to the owner."""
    hours: Changes = {Hours.own_hours: 2000, Hours.own_rate: 30}
    found = tried({**hours, BuyIn.ready_price: 2, BuyIn.ready_lost: 0})
    work = one(found, "bag_to_fruiting.work") / 60 * 30
    agrees(found, "buy_in", ready=2, bought_in_full=(1.125 + work) / 0.9, with_hours_only=1)
    agrees(found, "buy_in", change=-33750, change_in_full=45000 * ((1.125 + work) / 0.9 - 2))
    says(found, "buy_in.told", "they pay only where your own hours can earn elsewhere")


def test_hired_hours_go_first_where_the_work_on_bags_ends() -> None:
    """10 hours are hired at 12, all others the owner's own at 30."""
    paid: Changes = {Hours.counted: PAID.label, Hours.hired_hours: 10, Farm.wage: 12, Farm.payroll_extra: 0}
    found = tried({**paid, Hours.own_hours: 100, Hours.own_rate: 30})
    week = one(found, "bag_to_fruiting.work") / 60 * 1000
    assert week > 10
    goods = 1.125 / 0.9
    agrees(found, "bag_to_fruiting", work_a_week=week, hired=10 / week, hour_in_money=120 / week)
    agrees(found, "bag_to_fruiting", in_money=goods + 120 / 900, in_full=goods + (120 + 30 * (week - 10)) / 900)
    many = tried({**paid, Hours.hired_hours: 500})
    agrees(many, "bag_to_fruiting", hired=1, hour_in_money=12, hour_in_full=12)


@pytest.mark.parametrize(
    "changes", [{BuyIn.ready_price: 0}, {Farm.bags_filled_a_week: None}, {Crop.loss_in_spawn_run: [1]}]
)
def test_without_a_price_or_a_bag_nothing_is_compared(changes: Changes) -> None:
    found = tried(changes)
    agrees(found, "buy_in", compared=0)
    says(found, "buy_in.told", "nothing to compare.")
