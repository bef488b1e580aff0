"""Slips that are in print or in common use, each shown not to be made here."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from farmbook.calc import crop, heat, lethality, mixing, steam, temperature, worth
from farmbook.units import unit
from tests.calc import chains
from tests.calc.published import convert, read_quantity

REFERENCE = 121.1
Z_VALUE = 10.0


def measured(text: str, to: str) -> float:
    """A quantity in print, in another unit."""
    value, of = read_quantity(text)
    return float(convert(Fraction(value), of, unit(to)))


def rate_in_vessel(gauge: str, height: str) -> float:
    """Lethal rate at the temperature of a vessel."""
    hot = chains.vessel_temperature(measured(gauge, "kPa"), measured(height, "m"))
    return lethality.lethal_rate(hot, REFERENCE, Z_VALUE)


def test_fifteen_pounds_at_sea_level_is_short_of_250_degrees() -> None:
    hot = chains.vessel_temperature(measured("15 psi", "kPa"), 0)
    assert hot == pytest.approx(120.96, abs=0.01)
    assert hot < measured("250 degF", "degC") - 0.1
    assert rate_in_vessel("15 psi", "0 ft") == pytest.approx(0.967, abs=0.0005)


@pytest.mark.parametrize(
    ("height", "hot", "rate"), [("5,000 ft", 118.22, 0.515), ("7,000 ft", 117.19, 0.406)], ids=["5000 ft", "7000 ft"]
)
def test_gauge_pressure_adds_to_the_air_of_the_place(height: str, hot: float, rate: float) -> None:
    local = chains.vessel_temperature(measured("15 psi", "kPa"), measured(height, "m"))
    assert local == pytest.approx(hot, abs=0.02)
    assert rate_in_vessel("15 psi", height) == pytest.approx(rate, abs=0.002)
    at_sea_level = steam.absolute_pressure(measured("15 psi", "kPa"), steam.SEA_LEVEL_PRESSURE)
    assert chains.boiling_temperature(at_sea_level) > local + 2


@pytest.mark.parametrize(("core", "hours"), [(100.0, 17.2), (98.0, 27.2)], ids=str)
def test_steam_without_pressure_needs_most_of_a_day_for_eight_minutes(core: float, hours: float) -> None:
    wanted = measured("8 min", "h")
    assert wanted / lethality.lethal_rate(core, REFERENCE, Z_VALUE) == pytest.approx(hours, abs=0.05)
    assert chains.cooked_at(core, REFERENCE, Z_VALUE, measured("12 h", "min")) < 8


@pytest.mark.parametrize(
    ("reference", "minutes"), [("121.0 degC", 15.00), ("121.1 degC", 14.66), ("121.11 degC", 14.62)], ids=str
)
def test_the_reference_temperature_decides_the_last_digits(reference: str, minutes: float) -> None:
    found = chains.cooked_at(121.0, measured(reference, "degC"), Z_VALUE, 15)
    assert found == pytest.approx(minutes, abs=0.005)


def heat_capacity_of_wet_wood(water_over_dry: float, hot: float) -> float:
    """Of wood and its water together, for each kilogram of both, at a temperature above absolute zero; water at 4.19."""
    wood = mixing.dry_share(water_over_dry / (1 + water_over_dry))
    bound = heat.bound_share(water_over_dry)
    added = heat.for_dry_weight(heat.bound_water_correction(bound, hot), bound)
    return heat.sensible_heat(wood, heat.wood_heat_capacity(hot) + added, 1) + (1 - wood) * 4.19


def test_wet_wood_keeps_the_correction_for_the_water_that_it_binds() -> None:
    """The handbook's correction at 30 % water and 340 K, with its own figures in percent; one copy has its signs wrong.

    30 x (-0.06191 + 2.36e-4 x 340 - 1.33e-4 x 30) = 0.4302 kJ for each kilogram of wood and bound water.
    """
    assert heat.bound_water_correction(0.3, 340) == pytest.approx(0.4302, abs=1e-4)
    assert heat_capacity_of_wet_wood(1.5, 340) == pytest.approx((1.418 + 0.4302 * 1.3 + 4.19 * 1.5) / 2.5, abs=0.001)
    assert heat_capacity_of_wet_wood(0.12, 340) == pytest.approx(1.914629, abs=0.002)


def test_nitrogen_times_a_tabulated_ratio_is_no_carbon() -> None:
    """0.24 % of nitrogen times a C:N of 442, both in one handbook, would be 106 % of carbon."""
    found = mixing.carbon_to_nitrogen(0.4996, 0.0024)
    assert found == pytest.approx(208, abs=1)
    assert found < 442 / 2


def test_sawdust_nitrogen_spans_so_much_that_it_is_an_input() -> None:
    poor, handbook = (mixing.carbon_to_nitrogen(0.4996, nitrogen) for nitrogen in (0.0003, 0.0024))
    assert poor == pytest.approx(1665, abs=0.5)
    assert poor / handbook == pytest.approx(8)


def test_two_feed_tables_differ_by_two_fifths() -> None:
    newer, older = (mixing.nitrogen_from_protein(protein) for protein in (0.06975, 0.04))
    assert 1 - older / newer == pytest.approx(0.43, abs=0.005)


def test_ratios_of_ingredients_are_not_averaged() -> None:
    parts, carbon = np.array([4.0, 1.0]), np.array([0.5, 0.5])
    nitrogen = carbon / np.array([20.0, 80.0])
    found = chains.mix_carbon_to_nitrogen(parts, carbon, nitrogen)
    assert found == pytest.approx(23.53, abs=0.005)
    assert found != pytest.approx(32, abs=1)


def test_todays_flow_is_not_discounted() -> None:
    flows = np.array([-10000.0, 3000.0, 4200.0, 6800.0])
    assert chains.worth_of_flows(flows, 0.10) == pytest.approx(1307.29, abs=0.005)
    assert chains.worth_a_year_before(flows, 0.10) == pytest.approx(1188.44, abs=0.005)


def test_misprinted_yearly_cost_is_not_met() -> None:
    assert chains.yearly_cost(150000, 0, 8, 0.05, 7500) != pytest.approx(30780, abs=50)


def test_misprinted_biological_efficiency_is_not_met() -> None:
    found = crop.biological_efficiency(measured("399.70 g_picked", "kg_picked"), 1.0)
    assert found == pytest.approx(0.3997)
    assert found != pytest.approx(0.3940, abs=0.001)


def test_moisture_of_dry_mass_is_not_taken_for_moisture_of_wet() -> None:
    water, dry = 1.5, 1.0
    assert mixing.moisture(water, water + dry) == pytest.approx(0.60)
    assert mixing.dry_share(water / dry) < 0, "150 % on dry mass, taken as wet basis, leaves less than nothing"


def test_going_back_through_a_loss_is_no_raising_by_it() -> None:
    survivors = crop.surviving_share(0.10) * crop.surviving_share(0.20)
    assert survivors == pytest.approx(0.72)
    assert survivors != pytest.approx(1 - 0.30, abs=0.01)


def test_kelvin_of_a_mean_is_the_mean_of_kelvins() -> None:
    assert temperature.kelvin(56.5) == pytest.approx((temperature.kelvin(15) + temperature.kelvin(98)) / 2)
    assert temperature.celsius(temperature.kelvin(98)) == pytest.approx(98)


def test_payment_without_interest_is_an_equal_share() -> None:
    assert 12000 * worth.annuity_factor(0.0, 1.0, worth.equal_share(24.0)) == pytest.approx(500)
    factor = worth.annuity_factor(0.0, 1.0, worth.equal_share(4.0))
    assert factor == pytest.approx(0.25)
