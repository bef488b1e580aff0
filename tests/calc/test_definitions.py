"""Calculations against what defines them, worked out another way."""

from __future__ import annotations

import math

import numpy as np
import numpy_financial as npf
import pytest

from farmbook.calc import (
    calendar,
    climate,
    crop,
    electricity,
    heat,
    lethality,
    loss,
    mixing,
    own_figure,
    spawn,
    tolerance,
    worth,
)
from farmbook.units import unit
from tests.calc import chains

J0_ROOTS = np.array([2.404825557695773, 5.520078110286311, 8.653727912911013, 11.791534439014281])
J1_AT_ROOTS = np.array([0.5191474972894669, -0.3402648065583681, 0.2714522999283819, -0.2324598313647199])
"""From memory of the tables of Bessel functions."""


def slab_gap(diffusivity: float, thickness: float, time: float) -> float:
    """Gap in the middle of a slab by the whole series."""
    odd = 2 * np.arange(60) + 1
    signs = np.where(np.arange(60) % 2 == 0, 1.0, -1.0)
    return float((4 / np.pi * signs / odd * np.exp(-((odd * np.pi / thickness) ** 2) * diffusivity * time)).sum())


EARLY_AND_LATE = pytest.mark.parametrize(
    ("hours", "within"), [(3.0, 0.02), (9.0, 2e-4), (16.0, 1e-6)], ids=["3 h", "9 h", "16 h"]
)
"""The first term alone is a few hundredths off while the middle has hardly begun to warm, and exact later."""


@EARLY_AND_LATE
def test_middle_of_a_brick_warms_as_by_the_whole_series(hours: float, within: float) -> None:
    diffusivity, sides, seconds = 1.35e-7, (0.12, 0.20, 0.20), hours * 3600
    rate = lethality.brick_rate(*(lethality.slab_rate(diffusivity, side) for side in sides))
    found = lethality.late_gap(lethality.lateness_by_shape(lethality.BRICK_LAG_FACTOR), rate, seconds)
    series = np.prod([slab_gap(diffusivity, side, seconds) for side in sides])
    assert found == pytest.approx(series, abs=within)


def test_rate_from_a_probe_gives_the_curve_back() -> None:
    rate = 0.43
    earlier, later = (2.0 * np.exp(-rate * hours) * 80 for hours in (4.0, 9.0))
    assert lethality.measured_rate(lethality.gap_fall(earlier, later), 5.0) == pytest.approx(rate)
    assert lethality.measured_rate(lethality.gap_fall(20.0, 30.0), 5.0) == 0
    assert lethality.measured_rate(lethality.gap_fall(20.0, 0.0), 5.0) == 0


def test_middle_of_a_bar_warms_as_by_the_whole_series() -> None:
    """A bar is heated by two pairs of faces; after 9 h the first term of the series is all that is left of it."""
    diffusivity, sides, seconds = 1.35e-7, (0.12, 0.20), 9 * 3600.0
    rate = sum(lethality.slab_rate(diffusivity, side) for side in sides)
    found = lethality.late_gap(lethality.lateness_by_shape(lethality.BAR_LAG_FACTOR), rate, seconds)
    assert found == pytest.approx(np.prod([slab_gap(diffusivity, side, seconds) for side in sides]), abs=5e-4)


def test_middle_stays_at_the_start_until_its_lateness_is_over() -> None:
    """Lateness 0.7 at a rate of 0.1 an hour is 7 h; 10 h after that, one more part in e is left."""
    assert lethality.late_gap(0.7, 0.1, 2.0) == 1
    assert lethality.late_gap(0.7, 0.1, 17.0) == pytest.approx(1 / np.e)


def test_middle_is_cooler_by_the_share_of_the_first_gap_still_to_close() -> None:
    """A quarter of 80 degrees is 20 below 98."""
    assert lethality.core_by_gap(98.0, 80.0, 0.25) == 78


def test_course_goes_through_the_reading_that_its_lateness_came_from() -> None:
    """A gap four times smaller after 5 h at 0.2 an hour: lateness 1 - ln 4 = -0.386."""
    late = lethality.lateness_by_reading(0.2, 5.0, 4.0)
    assert late == pytest.approx(-0.386294, abs=1e-6)
    assert lethality.late_gap(late, 0.2, 5.0) == pytest.approx(0.25)
    assert lethality.lateness_by_reading(0.2, 5.0, 0.5) == 1, "a gap that grew counts as one that stayed"


def test_a_gap_that_has_closed_says_nothing_of_how_it_fell() -> None:
    assert lethality.gap_fall(20.0, 5.0) == 4
    assert lethality.gap_fall(20.0, 0.0) == 1


def test_time_until_the_gap_is_as_small_as_wanted() -> None:
    """Four times smaller, lateness 0.3: rate times time is 0.3 + ln 4 = 1.686; at 0.5 an hour, 3.37 h."""
    warming = lethality.warming_to_do(4.0, 0.3)
    assert warming == pytest.approx(1.686294, abs=1e-6)
    hours = lethality.time_until_close(warming, 0.5, 99.0)
    assert hours == pytest.approx(3.372589, abs=1e-6)
    assert lethality.late_gap(0.3, 0.5, hours) == pytest.approx(0.25)
    assert lethality.time_until_close(warming, 0.0, 99.0) == 99


@pytest.mark.parametrize(
    ("fall", "lateness", "warming"),
    [(1.0, 0.3, 0), (0.5, 0.3, 0), (-2.0, 0.3, 0), (4.0, -2.0, 0), (1.02, 0.3, 0.3 + np.log(1.02))],
    ids=["as close as wanted", "closer", "hotter than around it", "warm before", "hardly to warm"],
)
def test_no_warming_is_left_where_the_middle_is_warm_enough(fall: float, lateness: float, warming: float) -> None:
    assert lethality.warming_to_do(fall, lateness) == pytest.approx(warming)


def test_time_of_the_hold_that_did_not_count() -> None:
    """At a chamber rate of 0.3 a minute, 12 min of cooking take 40 of the 60 min."""
    assert lethality.time_lost(60.0, 12.0, 0.3) == pytest.approx(20)


@pytest.mark.parametrize(("warming", "fall"), [(1.0, 1 / (1 - 1 / math.e)), (3.0, 3 / (1 - math.exp(-3)))])
def test_an_even_rise_leaves_the_mean_of_all_its_small_steps(warming: float, fall: float) -> None:
    """The gap is the integral of exp(-u) from 0 to the warming, over the warming; counted from the end of the rise."""
    assert lethality.rise_fall(warming) == pytest.approx(fall)
    steps = (np.arange(100_000) + 0.5) / 100_000 * warming
    assert lethality.rise_fall(warming) == pytest.approx(1 / np.exp(-steps).mean())
    assert lethality.lateness_after_rise(0.7, lethality.rise_fall(warming)) == pytest.approx(0.7 - math.log(fall))


def test_a_rise_that_takes_no_time_changes_nothing() -> None:
    assert lethality.rise_fall(0.0) == 1


def test_ten_degrees_of_z_hotter_cook_ten_times_as_fast() -> None:
    cool, hot = lethality.lethal_rate(np.array([90.0, 100.0]), 121.1, np.array(10.0))
    assert hot == pytest.approx(10 * cool)


def test_a_mixed_batch_weighs_what_went_in() -> None:
    dry, shares = 400.0, np.array([0.55, 0.90])
    delivered = mixing.mass_as_delivered(dry * np.array([0.8, 0.2]), shares)
    water_inside = (delivered - mixing.dry_mass(delivered, shares)).sum()
    wet = mixing.mass_as_delivered(dry, mixing.dry_share(0.60))
    added = mixing.water_to_add(wet - dry, water_inside)
    assert delivered.sum() + added == pytest.approx(wet)
    assert mixing.moisture(water_inside + added, wet) == pytest.approx(0.60)


def test_dry_and_water_shares_make_up_the_whole() -> None:
    assert mixing.water_share(mixing.dry_share(0.62)) == pytest.approx(0.62)


def test_ingredients_too_wet_already_leave_water_below_zero() -> None:
    assert mixing.water_to_add(600.0, 650.0) == -50


def test_share_of_a_supplement_brings_the_mix_to_what_was_wanted() -> None:
    share = mixing.share_for_content(0.009, 0.0015, 0.0278)
    parts = np.array([1 - share, share])
    assert mixing.weighted_content(parts, np.array([0.0015, 0.0278])).sum() == pytest.approx(0.009)


def test_steam_bought_is_what_the_load_takes_and_the_drain_carries_off() -> None:
    steam, feed, condensate = 2665.0, 54.0, 391.0
    drained = heat.drained_multiplier(steam, feed, condensate)
    mass = heat.feed_water(heat.heat_to_supply(1000.0, drained), 1, steam, feed)
    assert mass * (steam - condensate) == pytest.approx(1000)
    assert heat.feed_water(1000.0, 0.8, steam, feed) == pytest.approx(800 / (steam - feed))
    assert heat.condensate_multiplier(drained, 1) == 1
    assert heat.condensate_multiplier(drained, 0) == drained > 1.1


def test_energy_of_a_load_accounts_for_every_kilojoule() -> None:
    power, efficiency, loss_at_hold, load, hold = 130000.0, 0.96, 9000.0, 600000.0, 14.0
    left = heat.power_left(heat.steam_power(power, efficiency), loss_at_hold)
    warming = heat.heat_up_time(load, left)
    energy = heat.energy_of_run(load, loss_at_hold * heat.hours_of_loss(warming, hold), efficiency)
    assert energy * efficiency == pytest.approx(load + loss_at_hold * (warming / 2 + hold))
    assert energy == pytest.approx(power * warming + heat.hold_power(loss_at_hold, efficiency) * hold)


def test_a_cabinet_that_never_gets_hot_shows_no_time() -> None:
    assert heat.heat_up_time(600000.0, heat.power_left(8000.0, 20000.0)) == 0


def test_vent_carries_off_the_heat_of_boiling_cold_feed_water() -> None:
    assert heat.vent_power(4.0, 2665.0, 54.0) == pytest.approx(4 * (2665 - 54))


def test_standing_loss_is_wall_and_vent() -> None:
    wall = heat.wall_loss(47.6, 78.0, 2.11)
    assert wall == pytest.approx(47.6 * 78.0 / 2.11)
    assert heat.wall_loss(47.6, 78.0, 0.0) == 0
    assert heat.standing_loss(wall, 1.15, 500.0) == pytest.approx(1.15 * wall + 500)


def test_current_on_one_phase_and_on_three() -> None:
    watts = float(36 * unit("kW").size / unit("W").size)
    assert electricity.single_phase_current(watts, 240.0) == pytest.approx(150)
    three = electricity.three_phase_current(watts, 208.0)
    assert 3 * (208 / np.sqrt(3)) * three == pytest.approx(watts)
    assert electricity.continuous_current(three) == pytest.approx(1.25 * three)


def test_one_more_load_a_month_makes_each_cheaper() -> None:
    assert electricity.demand_charge_per_run(30.0, 10.0, 4.0) == 75
    assert electricity.demand_charge_per_run(30.0, 10.0, 5.0) == 60
    assert electricity.demand_charge_per_run(30.0, 10.0, 0.0) == 0


def test_biological_efficiency_both_ways() -> None:
    picked = crop.picked_mass(0.85, 0.907)
    assert crop.biological_efficiency(picked, 0.907) == pytest.approx(0.85)
    assert crop.efficiency_with_spawn(picked, 0.907, 0.06) == pytest.approx(0.85 * 0.907 / 0.967)
    assert crop.percent_of_wet_weight(0.85, mixing.dry_share(0.60)) == pytest.approx(0.34)


def test_survival_is_backed_out_of_what_was_picked_over_all_bags() -> None:
    surviving = crop.surviving_share(0.04) * crop.surviving_share(0.015)
    assert surviving == pytest.approx(0.96 * 0.985)
    assert crop.efficiency_of_survivors(0.72 * surviving, surviving) == pytest.approx(0.72)


@pytest.mark.parametrize("months", [6, 36, 84])
@pytest.mark.parametrize("rate", [0.001, 0.006, 0.02])
def test_payments_agree_with_a_finance_library(rate: float, months: int) -> None:
    assert chains.level_payment(95000, rate, months) == pytest.approx(-npf.pmt(rate, months, 95000), rel=1e-11)


def test_worth_agrees_with_a_finance_library() -> None:
    flows = np.random.default_rng(7).normal(0, 5000, 12)
    assert chains.worth_of_flows(flows, 0.083) == pytest.approx(npf.npv(0.083, flows), rel=1e-11)


@pytest.mark.parametrize("life", [4, 10])
def test_yearly_cost_of_owning_agrees_with_a_finance_library(life: int) -> None:
    expected = -npf.pmt(0.08, life, 24000, -3000) + 1800
    assert chains.yearly_cost(24000, 3000, life, 0.08, 1800) == pytest.approx(expected, rel=1e-11)


def test_payback_that_never_comes_counts_every_year() -> None:
    assert chains.simple_payback([-1000.0, 100.0, 100.0, 100.0]) == 3
    assert chains.simple_payback([-1000.0, -50.0, 2100.0, -10.0]) == pytest.approx(1.5)


def test_a_balance_of_nothing_is_paid_back() -> None:
    assert worth.unpaid_share_of_year(-0.01, 0.5) == 0.5
    assert worth.unpaid_share_of_year(0.0, 0.5) == 0
    assert worth.unpaid_share_of_year(0.01, 0.5) == 0


def test_salvage_takes_off_what_it_is_worth_and_costs_its_interest() -> None:
    """Of 24,000 falling to 3,000, 21,000 are paid off at 0.15 a year, 3,150; 8 percent on 3,000 is 240."""
    assert worth.capital_recovery(24000.0, 3000.0, 0.15, 0.08) == pytest.approx(3390)
    assert worth.capital_recovery(24000.0, 0.0, 0.15, 0.08) == pytest.approx(3600)


def test_at_the_break_even_quantity_nothing_is_left() -> None:
    quantity = worth.break_even_quantity(42000.0, 11.0, 5.10)
    assert quantity * (11.0 - 5.10) == pytest.approx(42000)
    assert worth.break_even_quantity(42000.0, 5.0, 5.10) == 0


def test_spawn_is_a_share_of_the_wet_weight() -> None:
    """A twentieth of two tonnes."""
    assert spawn.spawn_mass(2000.0, 0.05) == pytest.approx(100)


def test_own_figure_is_compared_with_the_worked_one() -> None:
    """22 kWh above 88 kWh are a quarter of it, and 22 below."""
    assert own_figure.difference_from_worked(110.0, 88.0) == pytest.approx(0.25)
    assert own_figure.difference_from_worked(66.0, 88.0) == pytest.approx(-0.25)


def test_week_and_year_are_those_of_the_calendar() -> None:
    assert calendar.HOURS_IN_A_WEEK == 24 * calendar.DAYS_IN_A_WEEK == 168
    assert float(calendar.MONTHS_IN_A_YEAR) == float(calendar.MONTHS_COUNTED) == 12
    assert float(calendar.DAYS_IN_A_YEAR) == 365


def test_spawn_started_leaves_the_spawn_wanted_after_failures() -> None:
    mass = spawn.spawn_mass(1000 * 2.27, 0.05)
    bags = spawn.units_of_mass(mass, spawn.usable_mass(2.27, 0.95))
    started = spawn.units_needed(bags, 0.03)
    assert started * (1 - 0.03) * 2.27 * 0.95 == pytest.approx(mass)
    assert started != pytest.approx(bags * 1.03, rel=1e-4)
    assert spawn.parents_needed(started, 10.0) * 10 == pytest.approx(started)


def test_a_load_shared_with_its_own_spawn_is_full() -> None:
    fruiting = spawn.fruiting_places(1000.0, 0.054)
    own = spawn.places_for_spawn(fruiting, 0.054)
    assert fruiting + own == pytest.approx(1000)
    assert own / fruiting == pytest.approx(0.054)


def test_survivors_carry_all_that_was_spent() -> None:
    bags, share_lost = 1000, 0.04
    each = loss.cost_per_survivor(2.40, 0.31, share_lost, 1 - share_lost)
    assert each * bags * (1 - share_lost) == pytest.approx(bags * 2.40 + bags * share_lost * 0.31)


def test_a_lost_bag_costs_the_same_however_many_are_lost() -> None:
    spared = loss.cost_of_a_lost_bag(2.40, 0.31, loss.margin_lost(3.10, 0))
    missed = loss.cost_of_a_lost_bag(2.40, 0.31, loss.margin_lost(3.10, 1))
    assert spared == pytest.approx(2.71)
    assert missed == pytest.approx(5.81)
    assert loss.break_even_loss_gap(81.3, 1000.0, spared) == pytest.approx(0.03)


def test_common_practice_at_fifteen_and_twenty_pounds() -> None:
    """Common practice, no source: about 250 degF at 15 lb and 259 degF at 20 lb, within a degree."""
    psi, fahrenheit = unit("psi"), unit("degF")
    for pounds, common in ((15, 250), (20, 259)):
        hot = chains.vessel_temperature(float(pounds * psi.size / unit("kPa").size), 0)
        assert hot / float(fahrenheit.size) + 32 == pytest.approx(common, abs=1)


@pytest.mark.parametrize(("loss", "left"), [(0.0, 1), (0.3, 0.7), (1.0, 0), (1.2, 0)])
def test_no_more_than_all_can_be_lost(loss: float, left: float) -> None:
    assert crop.surviving_share(loss) == pytest.approx(left)


@pytest.mark.parametrize("sign", [1, -1])
@pytest.mark.parametrize(
    ("part", "other"), [(1000.0, 0.0), (0.0, 1000.0), (-1000.0, 0.0), (0.0, -1000.0), (-500.0, 500.0)]
)
def test_rounding_is_judged_by_the_size_of_the_parts(part: float, other: float, sign: int) -> None:
    """A thousandth of a thousand is no rounding; a thousand millionth of it is, whatever the signs."""
    assert tolerance.is_rounding(sign * 0.9e-6, part, other)
    assert not tolerance.is_rounding(sign * 1.1e-6, part, other)


def test_nothing_beside_nothing_is_rounding() -> None:
    assert tolerance.is_rounding(0.0, 0.0, 0.0)
    assert not tolerance.is_rounding(1e-12, 0.0, 0.0)


def test_a_room_at_rest_takes_in_what_it_loses() -> None:
    """Lost and evaporated less gained; put in while that is above zero, taken out while it is below, never both."""
    assert climate.wanted_at_rest(5.0, 1.0) == 4
    assert climate.wanted_at_rest(-1.0, 4.0) == -5
    assert (climate.heat_wanted(4.0, 10.0), climate.cold_wanted(5.0, 1.0, 10.0)) == (40, 0)
    assert (climate.heat_wanted(-5.0, 10.0), climate.cold_wanted(-1.0, 4.0, 10.0)) == (0, 50)
    assert (climate.heat_wanted(0.01, 10.0), climate.cold_wanted(1.01, 1.0, 10.0)) == (0.1, 0)


def test_energy_bought_is_heat_over_the_coefficient_of_performance() -> None:
    """A boiler that wastes a tenth (MacKay's example), a heat pump of three, and none given."""
    assert climate.energy_for_heat(90.0, 0.9) == pytest.approx(100)
    assert climate.energy_for_heat(90.0, 3.0) == 30
    assert climate.energy_for_heat(90.0, 0.0) == 0
