"""What heats the cabinet, in each position, and how many loads a week the working days leave room for."""

from __future__ import annotations

from typing import Any, Final

import pytest

from farmbook.model.heat.steaming import Steaming
from farmbook.model.place.energy import ELECTRICITY, NATURAL_GAS, PROPANE, Energy
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.sections.declare import Input, Option
from tests.model.helpers import systems_agree
from tests.model.steam_case import BY_HAND, KWH_A_LITRE_OF_PROPANE, LOAD, MULTIPLIER, NAMES, SECTIONS, STANDING, worked

# What heats it

ON_GAS: Final[dict[Input, Any]] = {CabinetRun.fuel: NATURAL_GAS, CabinetRun.own_efficiency: None}
ON_PROPANE: Final[dict[Input, Any]] = {CabinetRun.fuel: PROPANE, CabinetRun.own_efficiency: None}
# At 80 % 9.6 of 12 kW get into the steam.
BURNED: Final = 12 * (LOAD / 3600 * MULTIPLIER / (9.6 - STANDING / 2)) + 10 * STANDING / 0.8


@pytest.mark.parametrize(("fuel", "efficiency"), [(ELECTRICITY, 0.96), (NATURAL_GAS, 0.80), (PROPANE, 0.80)])
def test_share_that_gets_into_the_steam_follows_the_fuel_until_it_is_measured(fuel: Option, efficiency: float) -> None:
    usual = worked({CabinetRun.fuel: fuel, CabinetRun.own_efficiency: None})
    assert usual["cabinet_run.efficiency"] == efficiency
    measured = worked({CabinetRun.fuel: fuel, CabinetRun.own_efficiency: 0.7})
    assert measured["cabinet_run.efficiency"] == 0.7
    assert measured["cabinet_run.usual_efficiency"] == efficiency


def test_load_on_natural_gas() -> None:
    """1,037 Btu a cubic foot (US Energy Information Administration)."""
    found = worked(ON_GAS)
    assert found["cabinet.energy_per_run"] == pytest.approx(BURNED, rel=1e-6)
    assert found["cabinet.gas_per_run"] == pytest.approx(BURNED, rel=1e-6)
    cubic_feet = BURNED * 3600 / 1.05505585262 / 1037
    assert found["cabinet.gas_volume_per_run"] == pytest.approx(cubic_feet * 0.3048**3, rel=1e-6)
    assert found["cabinet.energy_cost_per_run"] == pytest.approx(BURNED * 0.05, rel=1e-6)
    assert found["cabinet.hold_hour_cost"] == pytest.approx(STANDING / 0.8 * 0.05, rel=1e-6)
    assert found["cabinet.electricity_per_run"] == found["cabinet.propane_per_run"] == 0


def test_load_on_natural_gas_in_therms() -> None:
    """A therm is 100,000 Btu, a kWh 3,412 Btu (US Energy Information Administration)."""
    found = worked(ON_GAS, "us")
    assert found["cabinet.gas_per_run"] == pytest.approx(BURNED * 3412 / 100_000, rel=1e-4)
    assert found["energy.gas_price_used"] == pytest.approx(0.05 * 100_000 / 3412, rel=1e-4)
    assert found["cabinet.gas_volume_per_run"] == pytest.approx(BURNED * 3412 / 1037, rel=1e-4)
    assert found["cabinet.energy_cost_per_run"] == pytest.approx(BURNED * 0.05, rel=1e-6)


def test_load_on_propane() -> None:
    found = worked(ON_PROPANE)
    assert found["cabinet.propane_per_run"] == pytest.approx(BURNED / KWH_A_LITRE_OF_PROPANE, rel=1e-6)
    assert found["cabinet.energy_cost_per_run"] == pytest.approx(BURNED / KWH_A_LITRE_OF_PROPANE * 0.60, rel=1e-6)
    assert found["cabinet.electricity_per_run"] == found["cabinet.gas_per_run"] == 0


def test_a_hundred_gallons_of_propane_hold_91_33_therms() -> None:
    """Frontier Natural Gas, Btu guide: propane as natural gas at 0.9133 therm a gallon."""
    found = worked({**ON_PROPANE, Cabinet.own_propane: 100 * 3.785411784}, "us")
    assert found["cabinet.own_propane_used"] == pytest.approx(100)
    assert found["cabinet.propane_metered"] == pytest.approx(91.33, abs=0.005)


@pytest.mark.parametrize("fuel", [ON_GAS, ON_PROPANE], ids=["natural gas", "propane"])
def test_fuel_needs_no_amps_and_adds_nothing_to_the_highest_kw(fuel: dict[Input, Any]) -> None:
    found = worked({**fuel, Energy.own_added_peak: 9, Energy.service_amps: 0})
    assert found["cabinet_run.circuit_amps"] == 0
    assert found["cabinet_run.service_is_enough"] == 1
    assert found["cabinet.demand_cost_per_run"] == found["cabinet.demand_cost_per_month"] == 0


def test_figures_by_the_meter_count_only_for_the_fuel_in_use() -> None:
    """40 kWh, 50 kWh of gas and 10 L of propane, read in three winters."""
    metered: dict[Input, Any] = {Cabinet.own_energy: 40, Cabinet.own_gas: 50, Cabinet.own_propane: 10}
    energy = "cabinet.energy_per_run"
    assert worked(metered)[energy] == 40
    assert worked({**ON_GAS, **metered})[energy] == pytest.approx(50)
    assert worked({**ON_PROPANE, **metered})[energy] == pytest.approx(10 * KWH_A_LITRE_OF_PROPANE)
    assert worked({**ON_PROPANE, **metered})["cabinet.propane_per_run"] == pytest.approx(10)
    assert worked({**ON_GAS, Cabinet.own_energy: 40})[energy] == pytest.approx(BURNED, rel=1e-6)


def test_heat_in_the_steam_with_each_fuel() -> None:
    found = worked()
    assert found["energy.electric_steam"] == pytest.approx(0.20 / 0.96)
    assert found["energy.gas_steam"] == pytest.approx(0.05 / 0.80)
    assert found["energy.propane_heat"] == pytest.approx(0.60 / KWH_A_LITRE_OF_PROPANE)
    assert found["energy.propane_steam"] == pytest.approx(0.60 / KWH_A_LITRE_OF_PROPANE / 0.80)


@pytest.mark.parametrize("fuel", [ON_GAS, ON_PROPANE], ids=["natural gas", "propane"])
def test_both_unit_systems_agree_on_fuels(fuel: dict[Input, Any]) -> None:
    metered: dict[Input, Any] = {Cabinet.own_gas: 50, Cabinet.own_propane: 10}
    assert systems_agree(SECTIONS, {**BY_HAND, **fuel}, NAMES) == []
    assert systems_agree(SECTIONS, {**BY_HAND, **fuel, **metered}, NAMES) == []


# How many loads a week

WEEKS: Final = (
    # hours of a load, days with somebody there: days from start to start, loads started, loads out, loads
    (20.0, 5, 1, 5, 7, 5),
    (24.0, 5, 1, 5, 7, 5),
    (24.1, 5, 2, 3, 3, 3),  # Monday, Wednesday, Friday
    (40.6, 7, 2, 4, 3, 3),  # a fourth would be in the way of the next Monday
    (40.6, 4, 2, 2, 3, 2),
    (72.0, 5, 3, 2, 2, 2),  # Monday, Thursday
    (72.0, 7, 3, 3, 2, 2),
    (168.0, 5, 7, 1, 1, 1),
    (169.0, 5, 8, 1, 0, 0),
)


@pytest.mark.parametrize(("hours", "days", "apart", "started", "out", "loads"), WEEKS)
def test_loads_a_week_follow_working_days_and_not_the_clock(
    hours: float, days: int, apart: int, started: int, out: int, loads: int
) -> None:
    """One hour to load and unload, half an hour to heat up, and the rest held."""
    changes = {
        Steaming.staffed_days: days,
        CabinetRun.own_heat_up_time: 0.5,
        CabinetRun.cool_down_time: 0,
        CabinetRun.hold_time: hours - 1.5,
    }
    found = worked(changes)
    assert found["cabinet_run.cycle_time"] == pytest.approx(hours)
    assert found["cabinet_run.days_of_a_load"] == apart
    assert found["cabinet_run.loads_started"] == started
    assert found["cabinet_run.loads_out"] == out
    assert found["cabinet_run.loads_possible"] == loads
    assert found["cabinet_run.bags_possible"] == 100 * loads


def test_hands_for_loading_can_be_what_holds_the_week_back() -> None:
    """100 bags at 5 an hour: 20 h a load for one person; 40 hours a week are two loads."""
    found = worked({CabinetRun.handling_rate: 5, CabinetRun.people_loading: 1, CabinetRun.cool_down_time: 0})
    assert found["cabinet_run.loads_handled"] == 2
    assert found["cabinet_run.loads_possible"] == 2
