"""The steam cabinet: handbook heats, a load worked by hand, the balance of its water, its checks broken one by one."""

from __future__ import annotations

from typing import Any, Final

import numpy as np
import pytest

from farmbook.model.heat.cabinet_heat import RETURNED, CabinetHeat
from farmbook.model.heat.steaming import VESSEL, Steaming
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.energy import THREE_PHASE, Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.place.site import Site
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.sections.declare import Input, NumberInput
from tests.model.helpers import evaluate, systems_agree
from tests.model.steam_case import (
    BY_HAND,
    IN_FEED,
    IN_STEAM,
    LOAD,
    MULTIPLIER,
    NAMES,
    SECTIONS,
    STANDING,
    WATER,
    WOOD,
    failing,
    worked,
)

HEAT_UP: Final = LOAD / 3600 * MULTIPLIER / (11.4 - STANDING / 2)
ENERGY: Final = 12 * HEAT_UP + 10 * STANDING / 0.95
LITRES: Final = ENERGY * 0.95 * 3600 / (IN_STEAM - IN_FEED) / 0.99821
EXPECTED: Final = {
    "cabinet_heat.wood_capacity": 1.372056,
    "cabinet_heat.bound_share": 0.3,
    "cabinet_heat.bound_capacity": 0.4501926,
    "cabinet_heat.wood_heat": WOOD / 3600,
    "cabinet_heat.water_heat": WATER / 3600,
    "cabinet_heat.bag_heat": 3 * 1.7 * 70 / 3600,
    "cabinet_heat.steel_heat": 200 * 0.5 * 70 / 3600,
    "cabinet_heat.load_heat": LOAD / 3600,
    "cabinet_heat.water_share": WATER / LOAD,
    "cabinet_heat.inside_area": 24,
    "cabinet_heat.wall_loss": 0.84,
    "cabinet_heat.multiplier": MULTIPLIER,
    "cabinet_heat.vent_power": STANDING - 0.84 * MULTIPLIER,
    "cabinet_heat.standing_loss": STANDING,
    "cabinet_run.steam_power": 11.4,
    "cabinet_run.power_left": 11.4 - STANDING / 2,
    "cabinet_run.heat_up_time": HEAT_UP,
    "cabinet_run.hold_power": STANDING / 0.95,
    "cabinet_run.worked_energy": ENERGY,
    "cabinet_run.handling_hours": 2,
    "cabinet_run.handling_time": 1,
    "cabinet_run.cycle_time": 1 + HEAT_UP + 10 + 6,
    "cabinet_run.hours_between_loads": 56,
    "cabinet_run.hours_taken_a_week": 3 * (17 + HEAT_UP),
    "cabinet_run.loads_a_week": 3,
    "cabinet_run.days_of_a_load": 1,
    "cabinet_run.loads_started": 5,
    "cabinet_run.loads_out": 7,
    "steaming.staffed_week": 40,
    "cabinet_run.loads_handled": 40,
    "cabinet_run.loads_possible": 5,
    "cabinet_run.bags_possible": 500,
    "cabinet_run.electric_power": 12,
    "cabinet_run.amps": 50,
    "cabinet_run.circuit_amps": 62.5,
    "cabinet.energy_per_run": ENERGY,
    "cabinet.energy_per_bag": ENERGY / 100,
    "cabinet.energy_per_dry": ENERGY / 200,
    "cabinet.electricity_per_run": ENERGY,
    "cabinet.energy_cost_per_run": 0.20 * ENERGY,
    "cabinet.energy_price": 0.20,
    "cabinet.hold_hour_cost": STANDING / 0.95 * 0.20,
    "cabinet.loads_a_month": 12,
    "cabinet.demand_cost_per_month": 120,
    "cabinet.demand_cost_per_run": 10,
    "cabinet.make_up_water": LITRES * 0.99821,
    "cabinet.water_per_run": LITRES,
    "cabinet.water_cost_per_run": LITRES * 0.0025,
    "cabinet.labour_hours_per_run": 2.5,
    "cabinet.labour_cost_per_run": 50,
    "cabinet.cost_per_run": 0.20 * ENERGY + 10 + LITRES * 0.0025 + 50,
    "cabinet.cost_per_bag": (0.20 * ENERGY + 60 + LITRES * 0.0025) / 100,
}


# Handbook heats

LOAD_W14: Final[dict[Input, Any]] = {
    Farm.bags_per_load: 1000,
    Bag.wet_fill: 2.27,
    Bag.bag_mass: 0,
    Recipe.target_moisture: [0.62],
    CabinetHeat.steel: 500,
    CabinetHeat.start_temperature: 15,
    CabinetHeat.hold_temperature: 98,
}


BOUND_W14: Final = 862.6 * 1.3 * 30 * (-0.06191 + 2.36e-4 * 329.65 - 1.33e-4 * 30) * 83
"""What the water bound in the wood adds, by the Wood Handbook with water in percent, 30 at most, half way at 329.65 K."""


@pytest.mark.parametrize(
    ("line", "kilojoules"),
    [
        ("cabinet_heat.wood_heat", 98_649 + BOUND_W14),
        ("cabinet_heat.water_heat", 489_197),
        ("cabinet_heat.steel_heat", 20_750),
        ("cabinet_heat.load_heat", 608_596 + BOUND_W14),
    ],
)
def test_heat_of_a_thousand_bags_by_wood_handbook_and_steam_tables(line: str, kilojoules: float) -> None:
    """1,000 bags of 2.27 kg at 62 % and 500 kg of steel, 15 to 98 degC. Wood: integral of the Wood Handbook equation.

    Water: enthalpies of IAPWS R7-97 at 1 atm, 63.079 and 410.668 kJ/kg. Bags, walls and vent left out. Within 0.05 %: at
    its boiling pressure cold water holds 0.1 kJ/kg less.
    """
    assert worked(LOAD_W14)[line] * 3600 == pytest.approx(kilojoules, rel=5e-4)


def test_wood_alone_is_free_of_that_tolerance() -> None:
    """The half way temperature gives the integral of a straight line exactly: 98,649 kJ as printed, and bound water."""
    assert worked(LOAD_W14)["cabinet_heat.wood_heat"] * 3600 == pytest.approx(98_649 + BOUND_W14, abs=0.5)


def test_mean_heat_capacity_of_dry_wood_from_20_to_100_degrees() -> None:
    """1.39139 kJ/kg K: the Wood Handbook equation, integrated numerically."""
    found = worked({CabinetHeat.start_temperature: 20, CabinetHeat.hold_temperature: 100})
    assert found["cabinet_heat.wood_capacity"] == pytest.approx(1.39139, abs=1e-5)


def test_water_beyond_fibre_saturation_leaves_the_heat_of_wood_alone() -> None:
    """It adds its own heat by mass (Simpson and TenWolde 1999): 2 kg of dry mix take up the same heat."""
    lean = worked({Recipe.target_moisture: [0.5], Bag.wet_fill: 4})
    wet = worked({Recipe.target_moisture: [0.75], Bag.wet_fill: 8})
    assert lean["cabinet_heat.wood_heat"] == pytest.approx(wet["cabinet_heat.wood_heat"], rel=1e-12)


# The load worked by hand


@pytest.mark.parametrize("line", EXPECTED)
def test_load_worked_by_hand(line: str) -> None:
    assert worked()[line] == pytest.approx(EXPECTED[line], rel=2e-6)


def test_both_unit_systems_give_the_same_answers() -> None:
    assert systems_agree(SECTIONS, BY_HAND, NAMES) == []


def test_both_unit_systems_agree_on_own_figures_and_the_other_choices() -> None:
    given = {
        **BY_HAND,
        CabinetHeat.condensate: RETURNED,
        Energy.phases: THREE_PHASE,
        Energy.own_added_peak: 4,
        CabinetRun.own_heat_up_time: 5,
        Cabinet.own_energy: 100,
        Cabinet.own_water: 120,
    }
    assert systems_agree(SECTIONS, given, NAMES) == []


def test_american_book_shows_american_units() -> None:
    """24 m2 are 258.3339 ft2, 2 m2 K/W are R-11.3565, 90 degC are 194 degF (NIST SP 811)."""
    found = evaluate(SECTIONS, "us", BY_HAND, NAMES)
    assert found["cabinet_heat.inside_area"] == pytest.approx(258.3339, rel=1e-6)
    assert found["cabinet.insulation_used"] == pytest.approx(11.3565, rel=1e-5)
    assert found["cabinet.hold_temperature_used"] == pytest.approx(194)
    assert found["cabinet_heat.rise"] == pytest.approx(126)


def test_water_boiled_is_what_condenses_and_what_leaves_by_the_vent() -> None:
    """A balance of mass, by another way than the line itself: steam over heat left behind, plus the vent."""
    found = worked()
    hours = found["cabinet_run.heat_up_time"] / 2 + found["cabinet.hold_time_used"]
    left_behind = 3600 * (found["cabinet_heat.load_heat"] + found["cabinet_heat.wall_loss"] * hours)
    condensed = left_behind / (found["cabinet_heat.in_steam"] - found["cabinet_heat.in_drain"])
    assert found["cabinet.water_boiled"] == pytest.approx(condensed + 3.6 * hours, rel=1e-12)


def test_condensed_steam_that_goes_back_saves_heat_and_water() -> None:
    drained, returned = worked(), worked({CabinetHeat.condensate: RETURNED})
    assert returned["cabinet_heat.heat_to_supply"] == pytest.approx(LOAD / 3600, rel=2e-6)
    hours = returned["cabinet_run.heat_up_time"] / 2 + 10
    assert returned["cabinet.make_up_water"] == pytest.approx(3.6 * hours)
    assert returned["cabinet.energy_per_run"] < drained["cabinet.energy_per_run"]


def test_three_phases_share_the_current() -> None:
    """12 kW at 400 V on three phases: 12,000 / (1.7320508 x 400) = 17.3205 A."""
    found = worked({Energy.phases: THREE_PHASE, Energy.voltage: 400})
    assert found["cabinet_run.amps"] == pytest.approx(17.32051, rel=1e-6)


# What the farm can learn from it


def test_more_loads_a_month_share_the_same_charge_for_the_highest_kw() -> None:
    few, many = worked(), worked({Farm.bags_filled_a_week: 600})
    assert many["cabinet.demand_cost_per_run"] == pytest.approx(few["cabinet.demand_cost_per_run"] / 2)
    assert many["cabinet.demand_cost_per_month"] == few["cabinet.demand_cost_per_month"]
    assert many["cabinet.energy_cost_per_run"] == few["cabinet.energy_cost_per_run"]


def test_charge_for_the_highest_kw_never_enters_the_price_of_energy() -> None:
    cheap, dear = worked({Energy.demand_charge: 0}), worked({Energy.demand_charge: 25})
    same = ("cabinet.energy_cost_per_run", "cabinet.hold_hour_cost", "cabinet.water_cost_per_run")
    assert [cheap[name] for name in same] == [dear[name] for name in same]
    assert dear["cabinet.cost_per_run"] - cheap["cabinet.cost_per_run"] == pytest.approx(25 * 12 / 12)


def test_an_hour_more_of_hold_costs_what_the_book_says_and_its_water() -> None:
    before, after = worked(), worked({CabinetRun.hold_time: 11})
    energy = after["cabinet.energy_cost_per_run"] - before["cabinet.energy_cost_per_run"]
    assert energy == pytest.approx(before["cabinet.hold_hour_cost"])


def test_loading_grows_with_bags_and_watching_does_not() -> None:
    """150 bags at 50 an hour of work are 3 hours, and half an hour of watching stays half an hour."""
    assert worked({Farm.bags_per_load: 150})["cabinet.labour_hours_per_run"] == pytest.approx(3.5)


def test_more_hands_shorten_the_clock_and_not_the_work() -> None:
    found = worked({CabinetRun.people_loading: 4})
    assert found["cabinet_run.handling_time"] == pytest.approx(0.5)
    assert found["cabinet_run.handling_hours"] == pytest.approx(2)


# Own figures


def test_own_hours_from_cold_win_and_the_worked_ones_stay() -> None:
    found = worked({CabinetRun.own_heat_up_time: 5})
    assert found["cabinet_run.heat_up_time"] == 5
    assert found["cabinet_run.worked_heat_up_time"] == pytest.approx(HEAT_UP, rel=1e-6)
    assert found["cabinet_run.heat_up_difference"] == pytest.approx(5 / HEAT_UP - 1, rel=1e-5)
    assert found["cabinet_run.cycle_time"] == pytest.approx(1 + 5 + 10 + 6)


@pytest.mark.parametrize("hours", [0.5, 2, 30])
def test_hours_from_cold_that_are_typed_move_no_energy(hours: float) -> None:
    """The steam brings what the load takes and what is lost meanwhile, whatever the clock says."""
    found = worked({CabinetRun.own_heat_up_time: hours})
    assert found["cabinet_run.heat_lost"] == pytest.approx(STANDING * (HEAT_UP / 2 + 10), rel=1e-6)
    assert found["cabinet_run.worked_energy"] == pytest.approx(ENERGY, rel=1e-6)
    assert found["cabinet.energy_cost_per_run"] == worked()["cabinet.energy_cost_per_run"]


def test_own_meter_wins_and_the_worked_energy_stays() -> None:
    found = worked({Cabinet.own_energy: 100})
    assert found["cabinet.energy_per_run"] == 100
    assert found["cabinet.energy_cost_per_run"] == pytest.approx(20)
    assert found["cabinet_run.worked_energy"] == pytest.approx(ENERGY, rel=1e-6)
    assert found["cabinet.energy_difference"] == pytest.approx(100 / ENERGY - 1, rel=1e-5)


def test_own_water_wins_and_the_worked_water_stays() -> None:
    found = worked({Cabinet.own_water: 120})
    assert found["cabinet.water_cost_per_run"] == pytest.approx(0.3)
    assert found["cabinet.worked_water"] == pytest.approx(LITRES, rel=1e-6)
    assert found["cabinet.water_difference"] == pytest.approx(120 / LITRES - 1, rel=1e-5)


def test_own_peak_wins_even_if_it_is_nothing() -> None:
    assert worked({Energy.own_added_peak: 4})["cabinet.demand_cost_per_run"] == pytest.approx(40 / 12)
    assert worked({Energy.own_added_peak: 0})["cabinet.demand_cost_per_run"] == 0


def test_without_own_figures_nothing_differs() -> None:
    found = worked()
    differences = ("cabinet_run.heat_up_difference", "cabinet.energy_difference", "cabinet.water_difference")
    assert [found[name] for name in differences] == [0, 0, 0]


# Checks


def test_no_check_fails_on_the_load_worked_by_hand() -> None:
    assert failing({}) == set()


@pytest.mark.parametrize(
    ("check", "broken", "sound"),
    [
        (
            "cabinet_heat.temperatures_in_order",
            {CabinetHeat.start_temperature: 90},
            {CabinetHeat.start_temperature: 89.9},
        ),
        (
            "cabinet_heat.temperatures_in_order",
            {CabinetHeat.feed_temperature: 91},
            {CabinetHeat.feed_temperature: 89.9},
        ),
        ("cabinet_heat.temperatures_in_order", {CabinetHeat.surroundings: 95}, {CabinetHeat.surroundings: 89.9}),
        # IF97: 99.974 degC at sea level, 202.825 degF (94.903 degC) at 5,000 ft
        ("cabinet_heat.below_boiling", {CabinetHeat.hold_temperature: 99.98}, {CabinetHeat.hold_temperature: 99.97}),
        (
            "cabinet_heat.below_boiling",
            {Site.altitude: 1524, CabinetHeat.hold_temperature: 94.91},
            {Site.altitude: 1524, CabinetHeat.hold_temperature: 94.89},
        ),
        # 3.596 kW are lost at hold: 3.785 kW of input at 95 %
        ("cabinet_run.reaches_temperature", {CabinetRun.power: 3.78}, {CabinetRun.power: 3.79}),
        ("cabinet_run.reaches_temperature", {CabinetRun.own_efficiency: 0.29}, {CabinetRun.own_efficiency: 0.31}),
        # 50 A, a quarter more: 62.5 A
        ("cabinet_run.service_is_enough", {Energy.service_amps: 62.4}, {Energy.service_amps: 62.5}),
        # 20.797 h a load, one a day on five days
        ("cabinet_run.loads_fit", {Farm.bags_filled_a_week: 501}, {Farm.bags_filled_a_week: 500}),
        # a quarter either way
        ("cabinet.meter_agrees", {Cabinet.own_energy: ENERGY * 1.26}, {Cabinet.own_energy: ENERGY * 1.24}),
        ("cabinet.meter_agrees", {Cabinet.own_energy: ENERGY * 0.74}, {Cabinet.own_energy: ENERGY * 0.76}),
    ],
)
def test_check_speaks_just_past_its_limit_and_not_before(check: str, broken: Any, sound: Any) -> None:
    assert check in failing(broken)
    assert check not in failing(sound)


def test_check_on_boiling_holds_in_the_american_book_too() -> None:
    """At 5,000 ft water boils at 202.83 degF."""
    for fahrenheit, fine in ((202.8, 1), (202.9, 0)):
        changes = {Site.altitude: 1524, CabinetHeat.hold_temperature: (fahrenheit - 32) / 1.8}
        assert worked(changes, "us")["cabinet_heat.below_boiling"] == fine


def test_checks_of_the_cabinet_rest_while_the_vessel_is_in_use() -> None:
    """A farm too high for its old cabinet may plan with a vessel; the comparison still knows."""
    broken: dict[Input, Any] = {
        Site.altitude: 3000,
        CabinetHeat.hold_temperature: 95,
        CabinetRun.power: 1,
        Cabinet.own_energy: 900,
    }
    assert failing(broken) >= {
        "cabinet_heat.below_boiling",
        "cabinet_run.reaches_temperature",
        "cabinet.meter_agrees",
    }
    resting = {**broken, Steaming.kind: VESSEL, Energy.service_amps: 1000}
    assert not [name for name in failing(resting) if name.startswith("cabinet")]
    assert worked(resting)["cabinet_run.fits"] == 0


def test_heat_up_is_zero_and_not_negative_without_power_to_spare() -> None:
    assert worked({CabinetRun.power: 1})["cabinet_run.worked_heat_up_time"] == 0


NUMBERS: Final = tuple(
    declared
    for section in (Farm, Site, Steaming, Energy, CabinetHeat, CabinetRun, Cabinet)
    for declared in section.declared
    if isinstance(declared, NumberInput)
)


@pytest.mark.parametrize("declared", NUMBERS, ids=lambda declared: declared.dotted)
@pytest.mark.parametrize("value", [None, 0], ids=["cleared", "zero"])
def test_a_cleared_or_zero_cell_never_makes_an_error_value(declared: NumberInput, value: float | None) -> None:
    assert all(np.isfinite(found) for found in worked({declared: value}).values())
